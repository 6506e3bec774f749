/**
 * Packages that are broken, hostile or odd, and what must come of each: the right content, or a FileError with a sentence.
 * Seeded, so that a case can be repeated by its number.
 */
import { isDeepStrictEqual } from "node:util";
import { strToU8, unzipSync, zipSync } from "fflate";
import { type Book, type Edit, FileError } from "../../../taskpane/desk/model/types.ts";
import { type Opened, openPackage } from "../../../taskpane/desk/package/open.ts";
import { savePackage } from "../../../taskpane/desk/package/save.ts";
import { openUnpacked } from "../../../taskpane/desk/package/unpack.ts";
import { handmade } from "./handmade.ts";
import { file, least, leastParts, MAIN, REL, zipped } from "./packages.ts";

export interface Outcome {
  readonly kinds: Record<string, { cases: number; refused: number }>;
  /** Longest case in ms of processor time. */
  readonly slowest: number;
  readonly slowestCase: string;
  /** Highest resident memory seen between cases, in MB. */
  readonly memory: number;
  readonly faults: string[];
}

/** mulberry32, a small public-domain generator. */
function random(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const LAUGHS = `<!DOCTYPE x [<!ENTITY a "lol"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;"><!ENTITY d "&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;">]>`;
const row = (cells: string) => `<row r="1">${cells}</row>`;
const sheetXml = (data: string, head = "") =>
  `${head}<worksheet xmlns="${MAIN}" xmlns:r="${REL}"><sheetData>${data}</sheetData></worksheet>`;

/** A zip whose first item has another name in both of its directories. */
function renamed(bytes: Uint8Array, from: string, to: string): Uint8Array {
  const out = bytes.slice();
  const [a, b] = [strToU8(from), strToU8(to.padEnd(from.length, "x").slice(0, from.length))];
  for (let i = 0; i + a.length <= out.length; i++) if (a.every((byte, k) => out[i + k] === byte)) out.set(b, i);
  return out;
}

/** Packages that must be refused, by name. */
export const HOSTILE: Readonly<Record<string, () => Uint8Array>> = {
  "a bomb in the sheet": () => least({ data: " ".repeat(100_000_000) }),
  "a bomb in a part that is only kept": () =>
    zipped({ ...leastParts(), "xl/media/a.bin": new Uint8Array(150_000_000) }),
  "a bomb of cells": () =>
    least({
      data:
        `<row>${"<c/>".repeat(16_000)}</row>`.repeat(150) + `<row>${"<c><v>1</v></c>".repeat(16_000)}</row>`.repeat(80),
    }),
  "a bomb of shared formulas": () =>
    least({
      data: row(
        `<c><f t="shared" si="0" ref="A1:XFD1">${"A1+".repeat(2500)}1</f></c>${'<c><f t="shared" si="0"/></c>'.repeat(16_000)}`,
      ),
    }),
  "a bomb of columns": () =>
    least({ before: `<cols>${'<col min="1" max="16384" width="9"/>'.repeat(200_000)}</cols>` }),
  "a bomb of ranges": () =>
    least({
      after: `<dataValidations><dataValidation type="list" sqref="${"A1 ".repeat(400_000)}"><formula1>"a"</formula1></dataValidation></dataValidations>`,
    }),
  "a bomb of merged cells": () =>
    least({ after: `<mergeCells>${'<mergeCell ref="A1:B2"/>'.repeat(400_000)}</mergeCells>` }),
  "a bomb of depth": () => least({ after: `${"<extLst>".repeat(5000)}${"</extLst>".repeat(5000)}` }),
  "entities in the sheet": () => least({ sheetXml: sheetXml(row('<c t="inlineStr"><is><t>&d;</t></is></c>'), LAUGHS) }),
  "entities in the texts": () => least({ strings: `${LAUGHS}<sst xmlns="${MAIN}"><si><t>&d;</t></si></sst>` }),
  "an outside entity": () => least({ sheetXml: sheetXml("", `<!DOCTYPE x SYSTEM "file:///etc/passwd">`) }),
  "an unknown entity": () => least({ data: row(`<c t="inlineStr"><is><t>&file;</t></is></c>`) }),
  "a null character": () => least({ data: row(`<c t="inlineStr"><is><t>&#0;</t></is></c>`) }),
  "a path upwards": () => renamed(zipped({ "xx/evil.xml": "<a/>", ...leastParts() }), "xx/evil", "../evil"),
  "an absolute path": () => renamed(zipped({ "xx/evil.xml": "<a/>", ...leastParts() }), "xx/evil", "/x/evil"),
  "a path with backslashes": () => renamed(zipped({ "xx/evil.xml": "<a/>", ...leastParts() }), "xx/evil", "x\\\\evil"),
  "a drive": () => renamed(zipped({ "xx/evil.xml": "<a/>", ...leastParts() }), "xx/evil", "C:/evil"),
  "a part twice": () =>
    renamed(zipped({ ...leastParts(), "xl/workbooK.xml": "<a/>" }), "xl/workbooK.xml", "xl/workbook.xml"),
  "a target outside": () =>
    zipped({
      ...leastParts(),
      "xl/_rels/workbook.xml.rels": (leastParts()["xl/_rels/workbook.xml.rels"] as string).replace(
        "worksheets/sheet1.xml",
        "../../../etc/passwd",
      ),
    }),
  "an address as target": () =>
    zipped({
      ...leastParts(),
      "xl/_rels/workbook.xml.rels": (leastParts()["xl/_rels/workbook.xml.rels"] as string).replace(
        "worksheets/sheet1.xml",
        "http://example.org/sheet.xml",
      ),
    }),
  "a missing sheet": () => {
    const { "xl/worksheets/sheet1.xml": _, ...rest } = leastParts();
    return zipped(rest);
  },
  "one part as two sheets": () =>
    least({
      workbook: `<workbook xmlns="${MAIN}" xmlns:r="${REL}"><sheets><sheet name="A" sheetId="1" r:id="rId1"/><sheet name="B" sheetId="2" r:id="rId1"/></sheets></workbook>`,
    }),
  "tags that do not match": () => least({ data: "<row><c></row></c>" }),
  "a tag that does not end": () => least({ data: '<row r="1' }),
  "no prefix": () => least({ data: "<q:row/>" }),
  "an attribute twice": () => least({ data: '<row r="1" r="2"/>' }),
  "a text index that is not there": () => least({ data: row('<c t="s"><v>7</v></c>') }),
  "a number that is none": () => least({ data: row("<c><v>0x10</v></c>") }),
  "a cell in a wrong row": () => least({ data: row('<c r="A2"><v>1</v></c>') }),
  "rows out of order": () => least({ data: '<row r="2"/><row r="1"/>' }),
  "letters that are no UTF-8": () =>
    zipped({ ...leastParts(), "xl/worksheets/sheet1.xml": new Uint8Array([0x3c, 0x61, 0xff, 0xfe, 0x3e]) }),
  nothing: () => new Uint8Array(0),
  "a zip of nothing": () => zipSync({}),
  "four bytes": () => new Uint8Array([0x50, 0x4b, 3, 4]),
};

const EDITS = (book: Book): Edit[] => {
  const sheet = book.sheets[0]!.name;
  return [
    { kind: "cell", sheet, row: 3, column: 2, value: "<&\"'\u0001 x" },
    { kind: "insert-rows", sheet, row: 2, count: 3 },
    { kind: "delete-rows", sheet, row: 9, count: 1 },
    { kind: "cell", sheet, row: 4, column: 1, value: 3, formula: "A1*2" },
    { kind: "choices", sheet, choices: { areas: [{ top: 1, left: 0, bottom: 9, right: 0 }], words: ["a", "b"] } },
    { kind: "width", sheet, column: 3, width: 20 },
  ];
};

const same = (a: Opened, b: Opened): boolean => isDeepStrictEqual(a.book, b.book);

/** Content of every part, by a general library. */
function contents(bytes: Uint8Array): Record<string, string> | undefined {
  try {
    return Object.fromEntries(
      Object.entries(unzipSync(bytes)).map(([name, part]) => [name, Buffer.from(part).toString("base64")]),
    );
  } catch {
    return undefined;
  }
}

/** Runs `count` cases, the hostile ones among them. */
export async function fuzz(count: number, seed = 1, tell?: (n: number) => void): Promise<Outcome> {
  const next = random(seed);
  const whole = (n: number) => Math.floor(next() * n);
  const sources = [
    ["openpyxl", file("openpyxl.xlsx")],
    ["exceljs", file("exceljs.xlsx")],
    ["libreoffice", file("libreoffice.xlsx")],
    ["pivot", file("pivot.xlsx")],
    ["handmade", handmade()],
  ] as const;
  const originals = sources.map(([name, bytes]) => ({
    name,
    bytes,
    opened: openPackage(bytes),
    parts: unzipSync(bytes),
    content: contents(bytes)!,
  }));
  const kinds: Outcome["kinds"] = {};
  const faults: string[] = [];
  let slowest = 0;
  let slowestCase = "";
  let memory = 0;

  const run = async (kind: string, label: string, act: () => Promise<"refused" | "accepted">) => {
    const entry = kinds[kind] ?? { cases: 0, refused: 0 };
    kinds[kind] = entry;
    entry.cases++;
    // Processor time: the machine may be busy with other work.
    const start = process.cpuUsage();
    try {
      if ((await act()) === "refused") entry.refused++;
    } catch (problem) {
      const text = problem instanceof Error ? `${problem.name}: ${problem.message}` : String(problem);
      faults.push(`${kind} ${label}: ${text.slice(0, 200)}`);
    }
    const { user, system } = process.cpuUsage(start);
    const time = (user + system) / 1000;
    if (time > slowest) {
      slowest = time;
      slowestCase = `${kind} ${label}`;
    }
    memory = Math.max(memory, process.memoryUsage.rss() / 2 ** 20);
  };
  // As the desk opens a file; what it must be is read by the other way.
  const opened = async (bytes: Uint8Array): Promise<Opened | undefined> => {
    try {
      return await openUnpacked(bytes);
    } catch (problem) {
      if (problem instanceof FileError && /^[A-Z].*[.!]$/s.test(problem.message)) return undefined;
      throw problem;
    }
  };

  for (const [name, make] of Object.entries(HOSTILE)) {
    const bytes = make();
    await run("hostile", name, async () => {
      if (await opened(bytes)) throw new Error("was accepted");
      return "refused";
    });
  }
  const rest = Math.max(0, count - Object.keys(HOSTILE).length);
  for (let n = 0; n < rest; n++) {
    tell?.(n);
    const source = originals[whole(originals.length)]!;
    const label = `#${n} of ${source.name}`;
    const choice = whole(10);
    if (choice < 4) {
      // One to three bits anywhere in the file.
      const bytes = source.bytes.slice();
      for (let k = whole(3); k >= 0; k--) bytes[whole(bytes.length)]! ^= 1 << whole(8);
      await run("flipped bits", label, async () => {
        const result = await opened(bytes);
        if (!result) return "refused";
        if (!same(result, source.opened)) throw new Error("changed content was accepted");
        const content = contents(
          savePackage(result.kept, [{ kind: "width", sheet: result.book.sheets[0]!.name, column: 0, width: 9 }]),
        );
        const first = Object.keys(source.content).filter((part) => content?.[part] !== source.content[part]);
        if (first.length > 1) throw new Error(`changed parts were accepted: ${first.join(", ")}`);
        return "accepted";
      });
    } else if (choice < 6) {
      const bytes = source.bytes.slice(0, whole(source.bytes.length));
      await run("cut off", label, async () => {
        if (await opened(bytes)) throw new Error("was accepted");
        return "refused";
      });
    } else {
      // Text of a part changed, and packed again with a right checksum: opens with what it says, or is refused; then saved.
      const names = Object.keys(source.parts).filter((part) => /\.(?:xml|rels|vml)$/.test(part));
      const name = names[whole(names.length)]!;
      const text = mangled(new TextDecoder().decode(source.parts[name]), next);
      const bytes = zipSync({ ...source.parts, [name]: strToU8(text) }, { level: 1 });
      await run("changed text", `${label} ${name}`, async () => {
        const result = await opened(bytes);
        if (!result) return "refused";
        let saved: Uint8Array;
        try {
          saved = savePackage(result.kept, EDITS(result.book));
        } catch (problem) {
          if (problem instanceof FileError) return "refused";
          throw problem;
        }
        await openUnpacked(saved);
        return "accepted";
      });
    }
  }
  return { kinds, slowest, slowestCase, memory, faults };
}

const SNIPPETS = [
  "<",
  ">",
  "&",
  '"',
  "'",
  "<!--",
  "-->",
  "<![CDATA[",
  "]]>",
  "<?x ?>",
  "<!DOCTYPE a>",
  "&amp;",
  "&#x41;",
  "&z;",
  "/>",
  "</row>",
  "<row>",
  "<c/>",
  "\u0000",
  "\ufffe",
  "99999999999",
  "-1",
  'xmlns=""',
  "A1:XFD1048576",
  "#REF!",
  " ",
];

function mangled(text: string, next: () => number): string {
  const whole = (n: number) => Math.floor(next() * n);
  let out = text;
  for (let k = whole(3); k >= 0; k--) {
    const at = whole(out.length + 1);
    const length = whole(4) === 0 ? whole(200) : whole(8);
    switch (whole(5)) {
      case 0:
        out = out.slice(0, at) + out.slice(at + length);
        break;
      case 1:
        out = out.slice(0, at) + out.slice(at, at + length) + out.slice(at);
        break;
      case 2:
        out = out.slice(0, at) + SNIPPETS[whole(SNIPPETS.length)]! + out.slice(at);
        break;
      case 3: {
        // Another number in place of one.
        const numbers = [...out.matchAll(/\d+/g)];
        const hit = numbers[whole(numbers.length)];
        if (hit)
          out =
            out.slice(0, hit.index) +
            ["0", "1", "7", "16385", "1048577", "4294967296", "-3", "1e9"][whole(8)]! +
            out.slice(hit.index + hit[0].length);
        break;
      }
      default: {
        // An attribute away.
        const attributes = [...out.matchAll(/ [\w:]+="[^"]*"/g)];
        const hit = attributes[whole(attributes.length)];
        if (hit) out = out.slice(0, hit.index) + out.slice(hit.index + hit[0].length);
      }
    }
  }
  return out;
}
