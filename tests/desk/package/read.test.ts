import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { FileError } from "../../../taskpane/desk/model/types.ts";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { savePackage } from "../../../taskpane/desk/package/save.ts";
import { quickest } from "../../quickest.ts";
import { at, cellOf, least, leastParts, MAIN, partText, REL, relationships, types, zipped } from "./packages.ts";

const STRICT = "http://purl.oclc.org/ooxml";
const value = (bytes: Uint8Array, address: string) => cellOf(openPackage(bytes).book, "S", address)?.value;
const row = (cells: string) => `<row r="1">${cells}</row>`;
const code = (bytes: Uint8Array): string => {
  try {
    openPackage(bytes);
    return "opened";
  } catch (problem) {
    expect(problem).toBeInstanceOf(FileError);
    return (problem as FileError).code;
  }
};

describe("cells by ECMA-376 part 1 (published)", () => {
  it("reads each type of value (18.18.11)", () => {
    const data = row(
      '<c r="A1"><v>1.5e-3</v></c><c r="B1" t="b"><v>1</v></c><c r="C1" t="e"><v>#DIV/0!</v></c><c r="D1" t="str"><f>A1&amp;"x"</f><v>a&lt;b</v></c>' +
        '<c r="E1" t="inlineStr"><is><t>in</t></is></c><c r="F1" t="s"><v>1</v></c><c r="G1" t="d"><v>2026-03-05T12:00:00</v></c><c r="H1"/><c r="I1"><f>1+1</f></c>',
    );
    const strings = `<sst xmlns="${MAIN}"><si><t>zero</t></si><si><r><t xml:space="preserve">rich </t></r><r><rPr><b/></rPr><t>text</t></r><rPh sb="0" eb="1"><t>reading</t></rPh></si></sst>`;
    const { book } = openPackage(least({ data, strings }));
    const read = (address: string) => cellOf(book, "S", address);
    expect(["A1", "B1", "C1", "D1", "E1", "F1", "G1", "H1", "I1"].map((a) => read(a)?.value)).toEqual([
      0.0015,
      true,
      { error: "#DIV/0!" },
      "a<b",
      "in",
      "rich text",
      46086.5,
      null,
      null,
    ]);
    expect(read("D1")?.formula).toBe('A1&"x"');
    expect(read("I1")?.formula).toBe("1+1");
  });

  it("counts dates from 1900 with its 29 February, and from 1904 (18.17.4.1)", () => {
    const cells = row(
      '<c r="A1" t="d"><v>1900-01-01</v></c><c r="B1" t="d"><v>1900-03-01</v></c><c r="C1" t="d"><v>2008-10-12T18:00:00Z</v></c><c r="D1" t="d"><v>13:30</v></c>',
    );
    const values = (bytes: Uint8Array) => ["A1", "B1", "C1", "D1"].map((a) => value(bytes, a));
    expect(values(least({ data: cells }))).toEqual([1, 61, 39733.75, 0.5625]);
    const workbook = `<workbook xmlns="${MAIN}" xmlns:r="${REL}"><workbookPr date1904="1"/><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`;
    const { book } = openPackage(least({ workbook, data: row('<c r="A1" t="d"><v>1904-01-02</v></c>') }));
    expect(book.date1904).toBe(true);
    expect(cellOf(book, "S", "A1")?.value).toBe(1);
  });

  it("counts cells and rows that do not say where they are (18.3.1.4, 18.3.1.73)", () => {
    const bytes = least({
      data: "<row><c><v>1</v></c><c/><c><v>3</v></c></row><row><c><v>4</v></c></row><row r='9'><c r='D9'><v>5</v></c><c><v>6</v></c></row>",
    });
    expect(["A1", "C1", "A2", "D9", "E9"].map((a) => value(bytes, a))).toEqual([1, 3, 4, 5, 6]);
    // A change in such a row leaves the others where they are.
    const saved = savePackage(openPackage(bytes).kept, [{ kind: "cell", sheet: "S", ...at("B1"), value: 2 }]);
    expect(["A1", "B1", "C1", "A2", "D9", "E9"].map((a) => value(saved, a))).toEqual([1, 2, 3, 4, 5, 6]);
    const moved = savePackage(openPackage(bytes).kept, [{ kind: "insert-rows", sheet: "S", row: 1, count: 2 }]);
    expect(["A1", "C1", "A4", "D11", "E11"].map((a) => value(moved, a))).toEqual([1, 3, 4, 5, 6]);
  });

  it("resolves _xHHHH_ and keeps it through a change of text (22.9.2.19)", () => {
    const bytes = least({ data: row('<c r="A1" t="inlineStr"><is><t>a_x0041__x000D_b_x005F_x0041_</t></is></c>') });
    expect(value(bytes, "A1")).toBe("aA\rb_x0041_");
    const text = "\u0007bell _x0041_ \r\n\ttab \ud83d\ude00 <&>\"' ";
    const saved = savePackage(openPackage(bytes).kept, [{ kind: "cell", sheet: "S", ...at("A1"), value: text }]);
    expect(value(saved, "A1")).toBe(text);
    expect(partText(saved, "xl/worksheets/sheet1.xml")).toContain("_x0007_bell _x005F_x0041_ &#13;\n");
  });

  it("spells shared formulas out from their first cell (18.3.1.40)", () => {
    const data =
      '<row r="1"><c r="B1"><f t="shared" ref="B1:C3" si="0">$A1+A$1+$A$1+SUM(A1:A2)+Other!A1</f><v>1</v></c><c r="C1"><f t="shared" si="0"/><v>2</v></c></row><row r="3"><c r="C3"><f t="shared" si="0"/><v>3</v></c></row>';
    const { book } = openPackage(least({ data }));
    expect(cellOf(book, "S", "C1")?.formula).toBe("$A1+B$1+$A$1+SUM(B1:B2)+Other!B1");
    expect(cellOf(book, "S", "C3")?.formula).toBe("$A3+B$1+$A$1+SUM(B3:B4)+Other!B3");
  });
});

describe("packages by ECMA-376 parts 2 and 3 (published)", () => {
  it("takes the strict variant, prefixes, absolute targets, other part names and letters' case", () => {
    const parts = {
      "[Content_Types].xml": types({}).replace("/xl/workbook.xml", "/Book/Main.xml"),
      "_rels/.rels": relationships([["a", `${STRICT}/officeDocument/relationships/officeDocument`, "/Book/Main.xml"]]),
      "Book/Main.xml": `<s:workbook xmlns:s="${STRICT}/spreadsheetml/main" xmlns:rel="${STRICT}/officeDocument/relationships" conformance="strict"><s:sheets><s:sheet name="S" sheetId="3" rel:id="x"/></s:sheets></s:workbook>`,
      "Book/_rels/Main.xml.rels": relationships([
        ["x", `${STRICT}/officeDocument/relationships/worksheet`, "../cells/%53HEET.xml"],
      ]),
      "cells/sheet.xml": `<q:worksheet xmlns:q="${STRICT}/spreadsheetml/main"><q:sheetData><q:row r="1"><q:c r="A1"><q:v>7</q:v></q:c></q:row></q:sheetData></q:worksheet>`,
    };
    const opened = openPackage(zipped(parts));
    expect(cellOf(opened.book, "S", "A1")?.value).toBe(7);
    const saved = savePackage(opened.kept, [
      { kind: "cell", sheet: "S", ...at("B1"), value: "eight", numberFormat: "0.00" },
      { kind: "insert-rows", sheet: "S", row: 0, count: 1 },
      { kind: "add-sheet", sheet: "T" },
    ]);
    expect(partText(saved, "cells/sheet.xml")).toContain(
      '<q:row r="2"><q:c r="A2"><q:v>7</q:v></q:c><q:c r="B2" s="1" t="inlineStr"><q:is><q:t>eight',
    );
    const again = openPackage(saved);
    expect(cellOf(again.book, "S", "B2")?.value).toBe("eight");
    expect(again.book.sheets.map((s) => s.name)).toEqual(["S", "T"]);
  });

  it("takes the alternative that it can read, and passes over what may be ignored", () => {
    const mc = "http://schemas.openxmlformats.org/markup-compatibility/2006";
    const sheetXml =
      `<worksheet xmlns="${MAIN}" xmlns:mc="${mc}" xmlns:n="urn:example:new" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main" mc:Ignorable="n"><n:sheetData><row r="1"><c r="A1"><v>0</v></c></row></n:sheetData><sheetData>` +
      row(
        '<c r="A1"><v>1</v></c><mc:AlternateContent><mc:Choice Requires="n"><c r="B1"><v>2</v></c></mc:Choice><mc:Choice Requires="x14"><c r="B1"><v>3</v></c></mc:Choice><mc:Fallback><c r="B1"><v>4</v></c></mc:Fallback></mc:AlternateContent>',
      ) +
      "</sheetData></worksheet>";
    expect(["A1", "B1"].map((a) => value(least({ sheetXml }), a))).toEqual([1, 3]);
    const must = sheetXml.replace("mc:Ignorable", "mc:MustUnderstand");
    expect(code(least({ sheetXml: must }))).toBe("unsupported");
  });

  it("reads parts in UTF-16 and writes them in UTF-8", () => {
    const text = `\ufeff<?xml version="1.0" encoding="UTF-16"?><worksheet xmlns="${MAIN}"><sheetData>${row('<c r="A1" t="inlineStr"><is><t>\u00e9\u4e2d</t></is></c>')}</sheetData></worksheet>`;
    const wide = new Uint8Array(new Uint16Array([...text].map((ch) => ch.charCodeAt(0))).buffer);
    const bytes = zipped({ ...leastParts(), "xl/worksheets/sheet1.xml": wide });
    expect(value(bytes, "A1")).toBe("\u00e9\u4e2d");
    const saved = savePackage(openPackage(bytes).kept, [{ kind: "cell", sheet: "S", ...at("B1"), value: 1 }]);
    expect(partText(saved, "xl/worksheets/sheet1.xml")).toContain('encoding="UTF-8"');
    expect(value(saved, "A1")).toBe("\u00e9\u4e2d");
  });

  it("keeps comments, CDATA and instructions between cells", () => {
    const bytes = least({
      data: '<!-- <row r="9"> --><row r="1"><c r="A1" t="inlineStr"><is><t><![CDATA[<row>]]>&amp;</t></is></c></row><?keep me?><row r="2"><c r="A2"><v>2</v></c></row>',
    });
    expect(value(bytes, "A1")).toBe("<row>&");
    const saved = savePackage(openPackage(bytes).kept, [{ kind: "cell", sheet: "S", ...at("A2"), value: 3 }]);
    expect(partText(saved, "xl/worksheets/sheet1.xml")).toContain(
      '<!-- <row r="9"> --><row r="1"><c r="A1" t="inlineStr"><is><t><![CDATA[<row>]]>&amp;</t></is></c></row><?keep me?><row r="2"><c r="A2"><v>3</v></c></row>',
    );
  });

  it("leaves areas areas: a rule, a look and a merge over whole columns cost nothing", () => {
    const after = `<mergeCells count="1"><mergeCell ref="C1:C1048576"/></mergeCells><dataValidations count="1"><dataValidation type="list" sqref="A:A B1:B1048576"><formula1>"a,b"</formula1></dataValidation></dataValidations>`;
    const whole = least({ before: '<cols><col min="1" max="16384" width="9" style="0"/></cols>', after });
    const { book } = openPackage(whole);
    expect(book.sheets[0]!.choices[0]).toEqual({
      areas: [
        { top: 0, left: 0, bottom: 1_048_575, right: 0 },
        { top: 0, left: 1, bottom: 1_048_575, right: 1 },
      ],
      words: ["a", "b"],
    });
    expect(book.sheets[0]!.merges).toEqual([{ top: 0, left: 2, bottom: 1_048_575, right: 2 }]);
    // cell by cell it would be millions
    const plain = least({});
    expect(quickest(() => openPackage(whole))).toBeLessThan(20 + 8 * quickest(() => openPackage(plain)));
  });
});

describe("the zip container (published, PKWARE APPNOTE)", () => {
  /** A package as streaming writers make it: sizes and checksum behind the data, in a descriptor. */
  function streamed(bytes: Uint8Array): Uint8Array {
    const out: number[] = [];
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    let end = bytes.length - 22;
    while (view.getUint32(end, true) !== 0x06054b50) end--;
    let at = view.getUint32(end + 16, true);
    const central: number[] = [];
    const count = view.getUint16(end + 10, true);
    for (let i = 0; i < count; i++) {
      const size = 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true);
      const record = bytes.slice(at, at + size);
      const local = view.getUint32(at + 42, true);
      const head = 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
      const packed = view.getUint32(at + 20, true);
      const start = out.length;
      const own = bytes.slice(local, local + head + packed);
      own[6]! |= 8;
      own.fill(0, 14, 26);
      out.push(...own, 0x50, 0x4b, 7, 8, ...bytes.slice(at + 16, at + 28));
      record[8]! |= 8;
      new DataView(record.buffer).setUint32(42, start, true);
      central.push(...record);
      at += size;
    }
    const tail = bytes.slice(end);
    new DataView(tail.buffer).setUint32(12, central.length, true);
    new DataView(tail.buffer).setUint32(16, out.length, true);
    return Uint8Array.from([...out, ...central, ...tail]);
  }

  it("takes sizes behind the data (4.3.9) and saves such a file", () => {
    const bytes = streamed(least({ data: row('<c r="A1"><v>5</v></c>') }));
    expect(value(bytes, "A1")).toBe(5);
    const saved = savePackage(openPackage(bytes).kept, [{ kind: "cell", sheet: "S", ...at("A1"), value: 6 }]);
    expect(value(saved, "A1")).toBe(6);
  });

  it("finds a flipped bit in the first byte and in the middle of each part's data", () => {
    const bytes = least({ data: row('<c r="A1"><v>12</v></c>'), strings: `<sst xmlns="${MAIN}"/>` });
    const { kept } = openPackage(bytes);
    for (const entry of kept.entries) {
      for (const offset of [0, entry.packed >> 1]) {
        const broken = bytes.slice();
        broken[entry.data + offset]! ^= 4;
        expect([entry.name, code(broken)]).toEqual([entry.name, "damaged"]);
      }
    }
  });
});

describe("what is no workbook gets a sentence of its own (published formats)", () => {
  const cfb = (name: string) => {
    const bytes = new Uint8Array(2048);
    bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
    [...name].forEach((ch, i) => {
      bytes[1024 + 2 * i] = ch.charCodeAt(0);
    });
    return bytes;
  };
  it.each([
    ["an .xls file", cfb("Workbook"), "old-format", ".xls"],
    ["an encrypted workbook", cfb("EncryptedPackage"), "encrypted", "password"],
    [
      "an .ods file",
      zipSync({
        mimetype: [strToU8("application/vnd.oasis.opendocument.spreadsheet"), { level: 0 }],
        "content.xml": strToU8("<a/>"),
      }),
      "unsupported",
      ".ods",
    ],
    ["CSV under another name", strToU8("Op,Dia\r\nslot,10\r\n"), "unsupported", "text file"],
    ["a web page", strToU8("<html><table></table></html>"), "unreadable", "web page"],
    [
      "a text document",
      zipped({
        ...leastParts(),
        "[Content_Types].xml": types(
          {},
          "application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml",
        ),
      }),
      "unreadable",
      "text document",
    ],
    [
      "an .xlsb file",
      zipped({
        ...leastParts(),
        "[Content_Types].xml": types({}, "application/vnd.ms-excel.sheet.binary.macroEnabled.main"),
      }),
      "unsupported",
      ".xlsb",
    ],
    ["an empty file", new Uint8Array(0), "unreadable", "empty"],
    ["a zip archive", zipped({ "a.txt": "x" }), "unreadable", "zip"],
    ["noise", Uint8Array.from({ length: 400 }, (_, i) => (i * 37) & 255), "unreadable", "not a workbook"],
  ])("%s", (_, bytes, wanted, word) => {
    expect(code(bytes as Uint8Array)).toBe(wanted);
    expect(() => openPackage(bytes as Uint8Array)).toThrow(word as string);
  });

  it("an encrypted zip item, and opening that was cancelled", () => {
    const bytes = least();
    const locked = bytes.slice();
    const view = new DataView(locked.buffer);
    for (let i = 0; i + 46 < locked.length; i++) if (view.getUint32(i, true) === 0x02014b50) locked[i + 8]! |= 1;
    expect(code(locked)).toBe("encrypted");
    const stop = new AbortController();
    stop.abort();
    expect(() => openPackage(bytes, { signal: stop.signal })).toThrow("cancelled");
  });
});
