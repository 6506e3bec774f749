/** Parts unpacked by the platform itself, against those unpacked by fflate. */
import { describe, expect, it } from "vitest";
import { FileError } from "../../../taskpane/desk/model/types.ts";
import { LIMITS } from "../../../taskpane/desk/package/limits.ts";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { openUnpacked, unpack } from "../../../taskpane/desk/package/unpack.ts";
import { inflateEntry, readZip } from "../../../taskpane/desk/package/zip.ts";
import { cellOf, file, least } from "./packages.ts";

const FILES = ["exceljs.xlsx", "libreoffice.xlsx", "openpyxl.xlsx", "pivot.xlsx"];

/** A copy of a file in which one byte is another. */
function flipped(bytes: Uint8Array, place: number): Uint8Array {
  const copy = bytes.slice();
  copy[place]! ^= 0x10;
  return copy;
}

const failure = async (open: () => unknown): Promise<string> => {
  try {
    await open();
    return "opened";
  } catch (problem) {
    expect(problem).toBeInstanceOf(FileError);
    return (problem as FileError).message;
  }
};

describe("unpacking by the platform (independent: fflate)", () => {
  it.each(FILES)("gives every deflated part of %s", async (name) => {
    const bytes = file(name);
    const entries = readZip(bytes, LIMITS);
    const unpacked = await unpack(bytes, entries, LIMITS.part);
    for (const entry of entries)
      if (entry.method === 8) expect(unpacked.get(entry.name), entry.name).toEqual(inflateEntry(bytes, entry));
    expect(unpacked.size).toBeGreaterThan(3);
  });

  it("leaves out a part that is damaged, that is another than its checksum says, or that is too large", async () => {
    const bytes = file("openpyxl.xlsx");
    const entries = readZip(bytes, LIMITS);
    const [one] = entries.filter(({ method, packed }) => method === 8 && packed > 300);
    const middle = one!.data + Math.floor(one!.packed / 2);
    expect((await unpack(flipped(bytes, middle), entries, LIMITS.part)).has(one!.name)).toBe(false);
    const others = [
      { ...one!, crc: one!.crc ^ 1 },
      { ...one!, size: one!.size - 1 },
      { ...one!, size: one!.size + 1 },
    ];
    for (const other of others) expect((await unpack(bytes, [other], LIMITS.part)).size).toBe(0);
    expect((await unpack(bytes, [one!], one!.size - 1)).size).toBe(0);
    expect((await unpack(bytes, [one!], one!.size)).size).toBe(1);
  });

  it.each(FILES)("opens %s as one that is unpacked by a script, whole or with a bit flipped", async (name) => {
    const bytes = file(name);
    expect((await openUnpacked(bytes)).book).toEqual(openPackage(bytes).book);
    const entries = readZip(bytes, LIMITS);
    for (const { data, packed } of entries.filter(({ method }) => method === 8)) {
      const bad = flipped(bytes, data + Math.floor(packed / 3));
      const said = await failure(() => openPackage(bad));
      expect(said).not.toBe("opened");
      expect(await failure(() => openUnpacked(bad))).toBe(said);
    }
  });
});

describe("cells in the usual writing (identity: the same cells written in another way)", () => {
  const usual =
    '<row r="1"><c r="A1"/><c r="B1" s="0"/><c r="C1"><v>1.5e-3</v></c><c r="D1" t="b"><v>1</v></c><c r="E1" t="e"><v>#N/A</v></c>' +
    '<c r="F1" t="str"><f>C1&amp;"_x0041_"</f><v>a&lt;b&#13;</v></c><c r="G1" t="inlineStr"><is><t xml:space="preserve"> in &amp; out_x000D_</t></is></c>' +
    '<c r="H1"><f> 1+1 </f><v>2</v></c><c r="I1"><f></f><v>3</v></c><c r="J1" t="str"><v></v></c></row>';
  // The usual pattern knows neither of these: they are read tag by tag.
  const ways = {
    "other quotes": usual.replace(/"([A-Z]1|b|e|str|inlineStr|0)"/g, "'$1'"),
    "blanks in tags": usual.replaceAll("<c r=", "<c  r="),
    comments: usual.replaceAll("<c r=", "<!-- --><c r=").replaceAll("</v>", "<!-- --></v>"),
    lines: usual.replaceAll("<c r=", "\n <c r="),
    "kind before the place": usual.replace(/<c (r="\w+")((?: [st]="\w+")+)/g, "<c$2 $1"),
  };
  const cells = (data: string) =>
    [..."ABCDEFGHIJ"].map((letter) => cellOf(openPackage(least({ data })).book, "S", `${letter}1`));

  it.each(Object.entries(ways))("are read alike with %s", (_, other) => {
    expect(other).not.toBe(usual);
    expect(cells(usual)).toEqual(cells(other));
  });
  it("hold what ECMA-376 says", () => {
    expect(cells(usual).map((one) => one?.value)).toEqual([
      null,
      null,
      0.0015,
      true,
      { error: "#N/A" },
      "a<b\r",
      " in & out\r",
      2,
      3,
      "",
    ]);
    expect(cells(usual).map((one) => one?.formula)).toEqual([
      ...new Array(5).fill(undefined),
      'C1&"A"',
      undefined,
      "1+1",
      undefined,
      undefined,
    ]);
  });
  it("are refused alike in a wrong place, with a look that is not there, and when they are too many", () => {
    const said = (data: string, limits = {}) => {
      try {
        openPackage(least({ data }), { limits });
        return "opened";
      } catch (problem) {
        return (problem as Error).message;
      }
    };
    for (const bad of ['<c r="B1"/><c r="A1"/>', '<c r="A2"/>', '<c r="A1" s="7"/>', '<c r="A1"><v>x</v></c>']) {
      const own = said(`<row r="1">${bad}</row>`);
      expect(own).not.toBe("opened");
      expect(said(`<row r="1">${bad.replaceAll("<c r=", "<c  r=")}</row>`)).toBe(own);
    }
    const many = `<row r="1">${Array.from({ length: 20 }, (_, i) => `<c r="${String.fromCharCode(65 + i)}1"><v>1</v></c>`).join("")}</row>`;
    const other = many.replaceAll("<c r=", "<c  r=");
    const answers = Array.from({ length: 90 }, (_, elements) => said(many, { elements }));
    expect(new Set(answers).size).toBe(2);
    expect(answers).toEqual(Array.from({ length: 90 }, (_, elements) => said(other, { elements })));
  });
});
