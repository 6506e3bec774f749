import ExcelJS from "exceljs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readLines, writeHtml, writeLines } from "../../../taskpane/desk/model/clip.ts";

describe("blocks as text", () => {
  it("reads lines, tabs and quotes as spreadsheets write them (independent: written down by hand)", () => {
    expect(readLines("a\tb\r\nc\td\r\n")).toEqual([
      ["a", "b"],
      ["c", "d"],
    ]);
    expect(readLines('"two\nlines"\t"say ""hi"""')).toEqual([["two\nlines", 'say "hi"']]);
    expect(readLines('3/8"\t"A" side\t"open')).toEqual([['3/8"', '"A" side', '"open']]);
    expect(readLines("\t\n")).toEqual([["", ""]]);
    expect(readLines("one")).toEqual([["one"]]);
    expect(readLines("a\n\nb")).toEqual([["a"], [""], ["b"]]);
  });

  it("reads back what it wrote (identity)", () => {
    const text = fc.oneof(fc.string(), fc.stringMatching(/^["\t\n a]{0,6}$/)).map((t) => t.replaceAll("\r", ""));
    const block = fc
      .integer({ min: 1, max: 4 })
      .chain((wide) => fc.array(fc.array(text, { minLength: wide, maxLength: wide }), { minLength: 1, maxLength: 5 }))
      // One blank cell alone at the end cannot be told from the end of the last line.
      .filter((rows) => rows.at(-1)!.length > 1 || rows.at(-1)![0] !== "");
    fc.assert(
      fc.property(block, (rows) => {
        expect(readLines(writeLines(rows))).toEqual(rows);
      }),
      { numRuns: 3000 },
    );
  });

  it("agrees with a reader of delimited files (independent: exceljs)", async () => {
    const rows = [
      ["plain", 'say "A"', "1/4-20"],
      ["two\nlines", '"quoted"', "x"],
    ];
    const { Readable } = await import("node:stream");
    const book = new ExcelJS.Workbook();
    const sheet = await book.csv.read(Readable.from([writeLines(rows)]) as never, {
      parserOptions: { delimiter: "\t", quote: '"' },
      map: (value: string) => value,
    });
    expect(rows.map((row, r) => row.map((_, c) => sheet.getCell(r + 1, c + 1).value))).toEqual(rows);
  });

  it("writes a table whose texts are escaped and whose numbers are exact", () => {
    const html = writeHtml([[{ text: '<b> & "c"' }, { text: "0.33", number: 1 / 3 }, { text: "1/2", literal: true }]]);
    expect(html).toContain("<td>&lt;b&gt; &amp; &quot;c&quot;</td>");
    expect(html).toContain(`sdval="${1 / 3}"`);
    expect(html).toContain(">1/2</td>");
  });
});
