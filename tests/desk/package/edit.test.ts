import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Edit, FileError, LAST_ROW, type Value } from "../../../taskpane/desk/model/types.ts";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { movedSpan, type RowMove } from "../../../taskpane/desk/package/references.ts";
import { refusal } from "../../../taskpane/desk/package/refusal.ts";
import { movedRow } from "../../../taskpane/desk/package/rows.ts";
import { savePackage } from "../../../taskpane/desk/package/save.ts";
import { handmade, handmadeParts } from "./handmade.ts";
import {
  at,
  cellOf,
  file,
  least,
  leastParts,
  MAIN,
  partText,
  REL,
  relationships,
  sheetOf,
  types,
  unzipped,
  zipped,
} from "./packages.ts";

const SHEET = "xl/worksheets/sheet1.xml";
const cell = (address: string, value: Value, more: object = {}, sheet = "S"): Edit => ({
  kind: "cell",
  sheet,
  ...at(address),
  value,
  ...more,
});
const insert = (row: number, count = 1, sheet = "S"): Edit => ({ kind: "insert-rows", sheet, row: row - 1, count });
const remove = (row: number, count = 1, sheet = "S"): Edit => ({ kind: "delete-rows", sheet, row: row - 1, count });
const save = (bytes: Uint8Array, ...edits: Edit[]): Uint8Array => savePackage(openPackage(bytes).kept, edits);
const sheetText = (bytes: Uint8Array): string => partText(bytes, SHEET);
const refused = (bytes: Uint8Array, ...edits: Edit[]): string => {
  try {
    save(bytes, ...edits);
  } catch (problem) {
    expect(problem).toBeInstanceOf(FileError);
    return (problem as Error).message;
  }
  return "";
};

describe("changed cells (published, ECMA-376 part 1, 18.3.1)", () => {
  const data =
    '<row r="1"><c r="A1" s="1" t="s"><v>0</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">A1*2</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c><c r="B2"><f t="shared" si="0"/><v>4</v></c></row><row r="3"><c r="B3"><f t="shared" si="0"/><v>0</v></c></row>';
  const strings = `<sst xmlns="${MAIN}"><si><r><t>rich</t></r><r><t> text</t></r></si></sst>`;
  const styles = `<styleSheet xmlns="${MAIN}"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellXfs count="2"><xf numFmtId="0" fontId="0"/><xf numFmtId="2" fontId="0" xfId="0"><alignment wrapText="1"/></xf></cellXfs></styleSheet>`;
  const bytes = least({ data, strings, styles, before: '<dimension ref="A1:B3"/>' });

  it("keep their look, and nothing else of the sheet changes", () => {
    expect(sheetText(save(bytes, cell("A1", 5)))).toBe(
      sheetText(bytes).replace('<c r="A1" s="1" t="s"><v>0</v></c>', '<c r="A1" s="1"><v>5</v></c>'),
    );
    expect(sheetText(save(bytes, cell("A2", null)))).toContain('<c r="A2"/>');
    expect(sheetText(save(bytes, cell("A2", true)))).toContain('<c r="A2" t="b"><v>1</v></c>');
    expect(sheetText(save(bytes, cell("A2", { error: "#N/A" })))).toContain('<c r="A2" t="e"><v>#N/A</v></c>');
    expect(sheetText(save(bytes, cell("A2", { error: "#SPILL!" })))).toContain("<v>#VALUE!</v>");
    expect(sheetText(save(bytes, cell("D2", 1 / 3)))).toContain('</c><c r="D2"><v>0.3333333333333333</v></c></row>');
    expect(sheetText(save(bytes, cell("B7", 1)))).toContain(
      '</row><row r="7"><c r="B7"><v>1</v></c></row></sheetData>',
    );
    expect(sheetText(save(bytes, cell("D9", 1)))).toContain('<dimension ref="A1:D9"/>');
  });

  it("that hold the same again are left alone, so rich text survives an undone edit", () => {
    const saved = save(bytes, cell("A1", "x"), cell("A1", "rich text"));
    expect(sheetText(saved)).toBe(sheetText(bytes));
  });

  it("with the formula that was there only get its result; a shared one stays shared", () => {
    expect(sheetText(save(bytes, cell("B2", 44, { formula: "A2*2" })))).toBe(
      sheetText(bytes).replace("<v>4</v>", "<v>44</v>"),
    );
  });

  it("that held a shared formula for others: the others are spelled out", () => {
    const saved = openPackage(save(bytes, cell("B1", 1)));
    expect(["B1", "B2", "B3"].map((a) => cellOf(saved.book, "S", a)?.formula)).toEqual([undefined, "A2*2", "A3*2"]);
    expect(sheetText(save(bytes, cell("B2", 1)))).toContain('<f t="shared" si="0"/><v>0</v>');
  });

  it("shared formulas that speak of another sheet are spelled out together when rows move there", () => {
    const shared =
      '<row r="1"><c r="A1"><f t="shared" ref="A1:A9" si="3">T!A1</f></c></row><row r="9"><c r="A9"><f t="shared" si="3"/></c></row><row r="10"><c r="A10"><f t="shared" ref="A10:A11" si="4">B1</f></c></row><row r="11"><c r="A11"><f t="shared" si="4"/></c></row>';
    const two = save(least({ data: shared }), { kind: "add-sheet", sheet: "T" });
    const saved = save(two, { kind: "insert-rows", sheet: "T", row: 4, count: 1 });
    expect(sheetText(saved)).toContain('<f>T!A1</f></c></row><row r="9"><c r="A9"><f>T!A10</f></c></row>');
    expect(sheetText(saved)).toContain(
      '<f t="shared" ref="A10:A11" si="4">B1</f></c></row><row r="11"><c r="A11"><f t="shared" si="4"/>',
    );
  });

  it("get a new number format at the end of the styles; the rest of the styles stays as it is", () => {
    const saved = save(bytes, cell("A1", 5, { numberFormat: '0.000" mm"' }), cell("A2", 1, { numberFormat: "0.00" }));
    const text = partText(saved, "xl/styles.xml");
    expect(text).toBe(
      styles
        .replace(
          "<fonts",
          '<numFmts count="1"><numFmt numFmtId="164" formatCode="0.000&quot; mm&quot;"/></numFmts><fonts',
        )
        .replace('<cellXfs count="2">', '<cellXfs count="4">')
        .replace(
          "</cellXfs>",
          '<xf numFmtId="164" fontId="0" xfId="0" applyNumberFormat="1"><alignment wrapText="1"/></xf><xf numFmtId="2" fontId="0" applyNumberFormat="1"/></cellXfs>',
        ),
    );
    const { book } = openPackage(saved);
    expect(book.styles[cellOf(book, "S", "A1")!.style!]).toMatchObject({ numberFormat: '0.000" mm"', wrap: true });
  });

  it("drop the calculation chain only when formulas change", () => {
    const made = handmade();
    expect(unzipped(save(made, cell("B2", 1, {}, "Plan")))["xl/calcChain.xml"]).toBeDefined();
    const saved = unzipped(save(made, cell("C2", 1, {}, "Plan")));
    expect(saved["xl/calcChain.xml"]).toBeUndefined();
    expect(saved["xl/_rels/workbook.xml.rels"]).not.toContain("calcChain");
    expect(saved["[Content_Types].xml"]).not.toContain("calcChain");
  });
});

describe("array formulas (published, [MS-XLSX] and ECMA-376 part 1, 18.3.1.40)", () => {
  const old = least({
    data: '<row r="1"><c r="A1"><f t="array" ref="A1:A3">B1:B3*2</f><v>2</v></c></row><row r="2"><c r="A2"><v>4</v></c></row><row r="3"><c r="A3"><v>6</v></c></row>',
  });

  it("of the old kind are changed as a whole only: cells and rows inside are refused with a sentence", () => {
    const { book } = openPackage(old);
    expect(cellOf(book, "S", "A1")?.array).toEqual({ area: { top: 0, left: 0, bottom: 2, right: 0 }, dynamic: false });
    for (const edit of [cell("A2", 1), cell("A1", 1), insert(2), remove(2)]) {
      expect(refused(old, edit)).toContain("array formula in A1:A3");
      expect(refusal(book, edit)).toContain("array formula in A1:A3");
    }
    // Just outside.
    for (const edit of [cell("A4", 1), cell("B1", 1), insert(1), insert(4), remove(1, 3), remove(4)]) {
      expect(refused(old, edit)).toBe("");
      expect(refusal(book, edit)).toBeUndefined();
    }
    expect(sheetText(save(old, cell("A1", 3, { formula: "B1:B3*2" })))).toContain(
      '<f t="array" ref="A1:A3">B1:B3*2</f><v>3</v>',
    );
  });

  it("that grow are marked as current programs do, in a file that had none", () => {
    const area = { top: 0, left: 3, bottom: 1, right: 3 };
    const saved = save(
      old,
      cell("D1", 1, { formula: "FILTER(B1:B3,B1:B3>0)", array: { area, dynamic: true } }),
      cell("D2", 2),
    );
    expect(sheetText(saved)).toContain(
      '<c r="D1" cm="1"><f t="array" ref="D1:D2">_xlfn._xlws.FILTER(B1:B3,B1:B3&gt;0)</f><v>1</v></c>',
    );
    const parts = unzipped(saved);
    expect(parts["[Content_Types].xml"]).toContain(
      '<Override PartName="/xl/metadata.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml"/>',
    );
    expect(parts["xl/_rels/workbook.xml.rels"]).toMatch(
      /Type="[^"]*\/relationships\/sheetMetadata" Target="metadata.xml"/,
    );
    expect(parts["xl/metadata.xml"]).toContain('<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata>');
    expect(cellOf(openPackage(saved).book, "S", "D1")).toMatchObject({
      formula: "FILTER(B1:B3,B1:B3>0)",
      array: { area, dynamic: true },
    });
  });

  it("are added to a metadata part of other things without changing those", () => {
    const parts = leastParts();
    const metadata = `<metadata xmlns="${MAIN}"><metadataTypes count="1"><metadataType name="XLRICHVALUE" minSupportedVersion="120000"/></metadataTypes><futureMetadata name="XLRICHVALUE" count="1"><bk/></futureMetadata><valueMetadata count="1"><bk><rc t="1" v="0"/></bk></valueMetadata></metadata>`;
    const bytes = zipped({
      ...parts,
      "xl/metadata.xml": metadata,
      "xl/_rels/workbook.xml.rels": relationships([
        ["rId1", "worksheet", "worksheets/sheet1.xml"],
        ["m", "sheetMetadata", "metadata.xml"],
      ]),
      "[Content_Types].xml": types({ [SHEET]: "worksheet", "xl/metadata.xml": "sheetMetadata" }),
    });
    const array = { area: { top: 0, left: 0, bottom: 0, right: 0 }, dynamic: true };
    const saved = save(bytes, cell("A1", 1, { formula: "SEQUENCE(1)", array }));
    const text = partText(saved, "xl/metadata.xml");
    expect(text).toMatch(
      /<metadataTypes count="2"><metadataType name="XLRICHVALUE"[^>]*\/><metadataType name="XLDAPR"/,
    );
    expect(text).toMatch(
      /<\/futureMetadata><futureMetadata name="XLDAPR" count="1">.*<\/futureMetadata><cellMetadata count="1"><bk><rc t="2" v="0"\/><\/bk><\/cellMetadata><valueMetadata/,
    );
    expect(cellOf(openPackage(saved).book, "S", "A1")?.array).toEqual(array);
  });

  it("that grow let rows in; when the answer gets shorter the rest is blanked", () => {
    const made = handmade();
    const wider = openPackage(save(made, insert(3, 2, "Plan")));
    expect(cellOf(wider.book, "Plan", "E2")?.array?.area).toEqual({ top: 1, left: 4, bottom: 5, right: 4 });
    const array = { area: { top: 1, left: 4, bottom: 2, right: 4 }, dynamic: true };
    const shorter = openPackage(
      save(made, cell("E2", 7, { formula: "SORT(B2:B4)", array }, "Plan"), cell("E3", 8, {}, "Plan")),
    );
    expect(["E2", "E3", "E4"].map((a) => cellOf(shorter.book, "Plan", a)?.value)).toEqual([7, 8, null]);
    const gone = openPackage(save(made, cell("E2", "x", {}, "Plan")));
    expect(["E2", "E3", "E4"].map((a) => cellOf(gone.book, "Plan", a)?.value)).toEqual(["x", null, null]);
  });
});

describe("rows that come and go", () => {
  it("move a span like its cells move one by one (independent, brute force)", () => {
    const move = fc.record({
      kind: fc.constantFrom("insert" as const, "delete" as const),
      sheet: fc.constant("S"),
      row: fc.nat(14),
      count: fc.integer({ min: 1, max: 5 }),
    });
    fc.assert(
      fc.property(fc.nat(12), fc.nat(12), move, (a, b, m: RowMove) => {
        const [top, bottom] = [Math.min(a, b), Math.max(a, b)];
        const images = Array.from({ length: bottom - top + 1 }, (_, i) => movedRow(top + i, [m])).filter(
          (r) => r !== undefined,
        );
        const expected = images.length === 0 ? undefined : [Math.min(...images), Math.max(...images)];
        expect(movedSpan(top, bottom, m)).toEqual(expected);
      }),
      { numRuns: 2000 },
    );
  });

  it("take formulas, names, rules, merges, links, filters and the print set-up with them (identity)", () => {
    const after =
      '<autoFilter ref="A1:B9"><sortState ref="A2:B9"><sortCondition ref="A2:A9"/></sortState></autoFilter><mergeCells count="3"><mergeCell ref="D4:E4"/><mergeCell ref="D6:D7"/><mergeCell ref="G1:G2"/></mergeCells>' +
      '<conditionalFormatting sqref="A2:A9 C5"><cfRule type="expression" priority="1"><formula>AND($B2&gt;$B$6,B3=1)</formula></cfRule></conditionalFormatting><conditionalFormatting sqref="A:A"><cfRule type="expression" priority="2"><formula>$A1="x"</formula></cfRule></conditionalFormatting>' +
      '<dataValidations count="2"><dataValidation type="list" sqref="C4"><formula1>$H$4:$H$6</formula1></dataValidation><dataValidation type="custom" sqref="C2:C9"><formula1>C2&gt;1</formula1></dataValidation></dataValidations>' +
      '<hyperlinks><hyperlink ref="A4" location="S!A5"/><hyperlink ref="A6" location="S!A4"/></hyperlinks><rowBreaks count="1" manualBreakCount="1"><brk id="5"/></rowBreaks><colBreaks count="1"><brk id="5"/></colBreaks>';
    const data =
      '<row r="4"><c r="A4"><v>4</v></c></row><row r="6"><c r="A6"><f>SUM(A4:A5)+A4+$A$4+A:A+4:4+SUM(A1:A9)</f><v>1</v></c></row>';
    const workbook = `<workbook xmlns="${MAIN}" xmlns:r="${REL}"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets><definedNames><definedName name="_xlnm.Print_Area" localSheetId="0">S!$A$1:$B$9</definedName><definedName name="four">S!$A$4</definedName></definedNames></workbook>`;
    const bytes = least({ data, after, workbook });
    const down = save(bytes, insert(4, 2));
    expect(sheetText(down)).toContain(
      '<row r="6"><c r="A6"><v>4</v></c></row><row r="8"><c r="A8"><f>SUM(A6:A7)+A6+$A$6+A:A+6:6+SUM(A1:A11)</f>',
    );
    expect(sheetText(down)).toContain('<autoFilter ref="A1:B11"><sortState ref="A2:B11"><sortCondition ref="A2:A11"/>');
    expect(sheetText(down)).toContain(
      '<mergeCells count="3"><mergeCell ref="D6:E6"/><mergeCell ref="D8:D9"/><mergeCell ref="G1:G2"/></mergeCells>',
    );
    expect(sheetText(down)).toContain(
      'sqref="A2:A11 C7"><cfRule type="expression" priority="1"><formula>AND($B2&gt;$B$8,B3=1)</formula>',
    );
    expect(sheetText(down)).toContain(
      '<conditionalFormatting sqref="A:A"><cfRule type="expression" priority="2"><formula>$A1="x"</formula>',
    );
    expect(sheetText(down)).toContain(
      'sqref="C6"><formula1>$H$6:$H$8</formula1></dataValidation><dataValidation type="custom" sqref="C2:C11"><formula1>C2&gt;1</formula1>',
    );
    expect(sheetText(down)).toContain('<hyperlink ref="A6" location="S!A7"/><hyperlink ref="A8" location="S!A6"/>');
    expect(sheetText(down)).toContain('<brk id="7"/></rowBreaks><colBreaks count="1"><brk id="5"/>');
    expect(partText(down, "xl/workbook.xml")).toContain('S!$A$1:$B$11</definedName><definedName name="four">S!$A$6<');
    const top = save(bytes, insert(1));
    expect(sheetText(top)).toContain(
      'sqref="A3:A10 C6"><cfRule type="expression" priority="1"><formula>AND($B3&gt;$B$7,B4=1)</formula>',
    );
    expect(sheetText(top)).toContain(
      '<conditionalFormatting sqref="A:A"><cfRule type="expression" priority="2"><formula>$A1="x"</formula>',
    );
    const up = save(bytes, remove(4));
    expect(sheetText(up)).toContain(
      '<sheetData><row r="5"><c r="A5"><f>SUM(A4:A4)+#REF!+#REF!+A:A+#REF!+SUM(A1:A8)</f>',
    );
    expect(sheetText(up)).toContain(
      '<mergeCells count="2"><mergeCell ref="D5:D6"/><mergeCell ref="G1:G2"/></mergeCells>',
    );
    expect(sheetText(up)).toContain('<dataValidations count="1"><dataValidation type="custom" sqref="C2:C8">');
    expect(sheetText(up)).toContain('<hyperlinks><hyperlink ref="A5" location="S!#REF!"/></hyperlinks>');
    expect(partText(up, "xl/workbook.xml")).toContain("S!#REF!<");
    // There and back again, but for what the deletion took.
    const back = save(save(bytes, insert(4, 3)), remove(4, 3));
    expect(sheetText(back)).toBe(sheetText(bytes));
  });

  it("take notes, drawings, charts, sparklines, controls and the pivot's source with them (identity)", () => {
    const python = save(file("openpyxl.xlsx"), insert(6, 2, "Plan & shop"));
    const parts = unzipped(python);
    expect(parts["xl/comments/comment1.xml"]).toContain('ref="B2"');
    expect(parts["xl/comments/comment1.xml"]).toContain('ref="B9"');
    expect(parts["xl/drawings/drawing1.xml"]).toContain(
      "<xdr:row>11</xdr:row>".replaceAll(
        "xdr:",
        parts["xl/drawings/drawing1.xml"]!.includes("<xdr:row>") ? "xdr:" : "",
      ),
    );
    const charts = unzipped(save(file("openpyxl.xlsx"), insert(3, 1, "Plan & shop")));
    expect(charts["xl/charts/chart1.xml"]).toContain("'Plan &amp; shop'!$C$2:$C$6");
    const made = unzipped(save(handmade(), insert(3, 1, "Plan")));
    expect(made["xl/comments1.xml"]).toContain('ref="B4"');
    expect(made["xl/threadedComments/threadedComment1.xml"]).toContain('ref="B4"');
    expect(made["xl/drawings/vmlDrawing1.vml"]).toContain(
      "<x:Anchor>2, 15, 2, 10, 4, 15, 6, 4</x:Anchor><x:Row>3</x:Row>",
    );
    expect(made["xl/drawings/vmlDrawing1.vml"]).toContain("<x:Anchor>6, 0, 6, 0, 8, 0, 8, 0</x:Anchor>");
    expect(made["xl/ctrlProps/ctrlProp1.xml"]).toContain('fmlaLink="$A$9"');
    expect(made[SHEET]).toContain("<xm:f>Plan!B2:B5</xm:f><xm:sqref>F2</xm:sqref>");
    expect(made[SHEET]).toContain("<xm:f>$B2&gt;Lists!$A$3</xm:f></x14:cfRule><xm:sqref>C2:C5</xm:sqref>");
    expect(made[SHEET]).toContain('<cfvo type="formula" val="$A$7"/>');
    expect(made["xl/worksheets/sheet2.xml"]).toContain("<f>Plan!B5/2</f>");
    const lists = unzipped(save(handmade(), remove(2, 1, "Lists")));
    expect(lists[SHEET]).toContain("<xm:f>Lists!$A$1:$A$2</xm:f>");
    const note = unzipped(save(handmade(), remove(8, 1, "Plan")));
    expect(note["xl/comments1.xml"]).not.toContain("below");
    const pivot = unzipped(save(file("pivot.xlsx"), insert(3, 1, "Cuts")));
    expect(pivot["xl/pivotCache/pivotCacheDefinition1.xml"]).toContain('ref="A1:C5"');
    const book = openPackage(file("pivot.xlsx")).book;
    expect(refusal(book, insert(3, 1, "Summary"))).toContain("pivot table");
    expect(refused(file("pivot.xlsx"), insert(3, 1, "Summary"))).toContain("pivot table");
  });

  it("new ones take the look of the row above, at a table's first row of the row below", () => {
    const bytes = file("openpyxl.xlsx");
    const look = (row: number, count = 1) => {
      const { book } = openPackage(save(bytes, insert(row, count, "Plan & shop")));
      return cellOf(book, "Plan & shop", `C${row}`)?.style;
    };
    const { book } = openPackage(bytes);
    expect(look(4)).toBe(cellOf(book, "Plan & shop", "C3")?.style);
    expect(look(2)).toBe(cellOf(book, "Plan & shop", "C2")?.style);
  });

  it("are refused where cells would fall off the sheet", () => {
    const bytes = least({ data: `<row r="${LAST_ROW + 1}"><c r="A${LAST_ROW + 1}"><v>1</v></c></row>` });
    expect(refusal(openPackage(bytes).book, insert(3))).toContain("no room");
    expect(
      refusal(openPackage(least({ data: '<row r="9"><c r="A9"><v>1</v></c></row>' })).book, insert(3)),
    ).toBeUndefined();
  });
});

describe("tables (published, ECMA-376 part 1, 18.5)", () => {
  const bytes = file("openpyxl.xlsx");
  const on = (address: string, value: Value) => cell(address, value, {}, "Plan & shop");
  const table = (b: Uint8Array) => sheetOf(openPackage(b).book, "Plan & shop").tables[0]!;
  const area = (bottom: number, right = 6): Edit => ({
    kind: "table-area",
    sheet: "Plan & shop",
    table: "jobs",
    area: { top: 0, left: 0, bottom, right },
  });

  it("grow with a row inside, with a new area, and take new columns by their headings", () => {
    expect(table(save(bytes, insert(3, 2, "Plan & shop"))).area.bottom).toBe(6);
    expect(table(save(bytes, insert(6, 1, "Plan & shop"))).area.bottom).toBe(4);
    const longer = save(bytes, on("A6", "ream"), on("C6", 8), area(5));
    expect(table(longer)).toMatchObject({
      area: { bottom: 5 },
      columns: ["Op", "Feature", "Dia", "Depth", "Qty", "Cost", "When"],
    });
    expect(partText(longer, "xl/tables/table1.xml")).toContain('<autoFilter ref="A1:G6"');
    // The new row goes on in the look of the table's last one.
    const { book } = openPackage(longer);
    expect(book.styles[cellOf(book, "Plan & shop", "C6")!.style!]!.numberFormat).toBe("0.000");
    const wider = save(bytes, on("H1", "Basis"), area(4, 7));
    expect(table(wider).columns).toEqual(["Op", "Feature", "Dia", "Depth", "Qty", "Cost", "When", "Basis"]);
    expect(partText(wider, "xl/tables/table1.xml")).toMatch(
      /<tableColumns count="8">.*<tableColumn id="8" name="Basis"\/><\/tableColumns>/,
    );
    expect(table(save(bytes, on("C1", 1.5))).columns[2]).toBe("1.5");
    expect(sheetText(save(bytes, on("C1", 1.5)))).toContain('<c r="C1" s="1" t="inlineStr"><is><t>1.5</t></is></c>');
  });

  it("a heading that changes is followed by the formulas that name it, and no other (identity)", () => {
    const made = save(
      bytes,
      cell(
        "D9",
        0,
        { formula: 'Jobs[[#Totals],[Dia]]&Jobs[[Dia]:[Qty]]&"Jobs[Dia]"&Other[Dia]&Jobs[Op]' },
        "Plan & shop",
      ),
    );
    const saved = openPackage(
      save(
        made,
        on("C1", "Dia [mm]#"),
        cell("D10", 0, { formula: "SUM(Jobs[Dia '[mm']'#])" }, "Plan & shop"),
        on("A1", "Operation"),
      ),
    ).book;
    expect(cellOf(saved, "Plan & shop", "C7")?.formula).toBe("SUM(Jobs[Dia '[mm']'#])");
    expect(cellOf(saved, "Plan & shop", "D9")?.formula).toBe(
      "Jobs[[#Totals],[Dia '[mm']'#]]&Jobs[[Dia '[mm']'#]:[Qty]]&\"Jobs[Dia]\"&Other[Dia]&Jobs[Operation]",
    );
    expect(cellOf(saved, "Plan & shop", "D10")?.formula).toBe("SUM(Jobs[Dia '[mm']'#])");
    expect(sheetOf(saved, "Plan & shop").tables[0]!.columns.slice(0, 3)).toEqual(["Operation", "Feature", "Dia [mm]#"]);
  });

  it.each([
    ["a heading left blank", [on("C1", null)], "heading"],
    ["a heading twice", [on("C1", "op")], "already"],
    ["headings deleted", [remove(1, 1, "Plan & shop")], "headings"],
    ["all rows deleted", [remove(2, 4, "Plan & shop")], "must keep one row"],
    [
      "another beginning",
      [{ kind: "table-area", sheet: "Plan & shop", table: "Jobs", area: { top: 1, left: 0, bottom: 4, right: 6 } }],
      "must begin where it does",
    ],
    ["no rows", [area(0)], "must keep one row"],
    [
      "merged cells in the way",
      [{ kind: "table-area", sheet: "Plan & shop", table: "Jobs", area: { top: 0, left: 0, bottom: 4, right: 14 } }],
      "merged",
    ],
  ] as [string, Edit[], string][])("refuse %s", (_, edits, word) => {
    expect(refusal(openPackage(bytes).book, edits[0]!)).toContain(word);
  });

  it("with totals keep them: the table grows by rows inserted above", () => {
    const made = file("exceljs.xlsx");
    const { book } = openPackage(made);
    const own = sheetOf(book, "Jobs").tables[0]!;
    expect(own.totals).toBe(true);
    const grown: Edit = {
      kind: "table-area",
      sheet: "Jobs",
      table: "Jobs",
      area: { ...own.area, bottom: own.area.bottom + 1 },
    };
    expect(refusal(book, grown)).toContain("totals");
    expect(refused(made, grown)).toContain("totals");
    expect(sheetOf(openPackage(save(made, insert(5, 1, "Jobs"))).book, "Jobs").tables[0]!.area.bottom).toBe(
      own.area.bottom + 1,
    );
    expect(refusal(book, remove(5, 1, "Jobs"))).toContain("totals");
  });
});

describe("sheets, columns, choices", () => {
  it("a renamed sheet is followed everywhere (identity)", () => {
    const parts = unzipped(save(handmade(), { kind: "rename-sheet", sheet: "Plan", to: "Shop's plan" }));
    expect(parts["xl/workbook.xml"]).toContain('<sheet name="Shop\'s plan" sheetId="4"');
    expect(parts["xl/workbook.xml"]).toContain("'Shop''s plan'!$B$2:$B$4");
    expect(parts["xl/worksheets/sheet2.xml"]).toContain("<f>'Shop''s plan'!B4/2</f>");
    expect(parts[SHEET]).toContain("<xm:f>'Shop''s plan'!B2:B4</xm:f>");
    const charts = unzipped(save(file("openpyxl.xlsx"), { kind: "rename-sheet", sheet: "Plan & shop", to: "P" }));
    expect(charts["xl/charts/chart1.xml"]).toContain("P!$C$2:$C$5");
    const pivot = unzipped(save(file("pivot.xlsx"), { kind: "rename-sheet", sheet: "Cuts", to: "C" }));
    expect(pivot["xl/pivotCache/pivotCacheDefinition1.xml"]).toMatch(/ref="A1:C4" sheet="C"|sheet="C" ref="A1:C4"/);
  });

  it("a new sheet between others leaves names of one sheet with their sheet", () => {
    const saved = save(
      handmade(),
      { kind: "add-sheet", sheet: "Quote", after: "Plan", frozen: { rows: 1, columns: 0 }, page: { headings: 1 } },
      cell("A1", "Item", { look: "heading" }, "Quote"),
    );
    const { book } = openPackage(saved);
    expect(book.sheets.map((s) => s.name)).toEqual(["Plan", "Quote", "Lists"]);
    expect(book.names).toContainEqual({ name: "last", formula: "Lists!$A$3", sheet: "Lists" });
    expect(book.sheets[1]!.frozen).toEqual({ rows: 1, columns: 0 });
    expect(partText(saved, "xl/workbook.xml")).toContain(
      '<definedName name="_xlnm.Print_Titles" localSheetId="1">Quote!$1:$1</definedName>',
    );
    expect(book.styles[cellOf(book, "Quote", "A1")!.style!]).toMatchObject({ bold: true, wrap: true });
    const withTable = save(
      handmade(),
      { kind: "add-sheet", sheet: "T", table: { name: "Tools", area: { top: 0, left: 0, bottom: 1, right: 1 } } },
      cell("A1", "No", {}, "T"),
      cell("B1", "Name", {}, "T"),
      cell("A2", 1, {}, "T"),
    );
    expect(sheetOf(openPackage(withTable).book, "T").tables[0]).toMatchObject({
      name: "Tools",
      columns: ["No", "Name"],
    });
  });

  it("names of sheets are checked", () => {
    const { book } = openPackage(handmade());
    for (const name of ["", "plan", "a/b", "x".repeat(32), "'a"])
      expect(refusal(book, { kind: "add-sheet", sheet: name })).toBeTruthy();
    for (const name of ["x".repeat(31), "Plan 2", "a'b"])
      expect(refusal(book, { kind: "add-sheet", sheet: name })).toBeUndefined();
  });

  it("widths and hidden columns split ranges and leave the rest", () => {
    const bytes = least({
      before:
        '<cols><col min="1" max="5" width="9" style="0" customWidth="1"/><col min="9" max="9" width="3" hidden="1"/></cols>',
    });
    const saved = save(
      bytes,
      { kind: "width", sheet: "S", column: 2, width: 20 },
      { kind: "hide-columns", sheet: "S", columns: [3], hidden: true },
      { kind: "hide-columns", sheet: "S", columns: [8], hidden: false },
    );
    expect(sheetText(saved)).toContain(
      '<cols><col min="1" max="2" width="9" style="0" customWidth="1"/><col min="3" max="3" width="20" style="0" customWidth="1"/><col min="4" max="4" width="9" style="0" customWidth="1" hidden="1"/><col min="5" max="5" width="9" style="0" customWidth="1"/><col min="9" max="9" width="3"/></cols>',
    );
  });

  it("choices take their cells out of the rules before", () => {
    const after =
      '<dataValidations count="1"><dataValidation type="whole" sqref="A1:C9"><formula1>1</formula1></dataValidation></dataValidations>';
    const choices = { areas: [{ top: 1, left: 1, bottom: 2, right: 1 }], words: ['5"', "b"] };
    const saved = save(least({ after }), { kind: "choices", sheet: "S", choices });
    expect(sheetText(saved)).toContain(
      '<dataValidations count="2"><dataValidation type="whole" sqref="A1:C1 A2:A3 C2:C3 A4:C9"><formula1>1</formula1></dataValidation><dataValidation type="list"',
    );
    expect(openPackage(saved).book.sheets[0]!.choices).toEqual([choices]);
    const long = { ...choices, words: [`${"x".repeat(256)}`] };
    expect(refusal(openPackage(saved).book, { kind: "choices", sheet: "S", choices: long })).toContain(
      "256 characters",
    );
    expect(
      refusal(openPackage(saved).book, {
        kind: "choices",
        sheet: "S",
        choices: { ...choices, words: ["x".repeat(255)] },
      }),
    ).toBeUndefined();
  });

  it("edits are replayed with the names and places of their moment", () => {
    const saved = save(
      least({ data: '<row r="2"><c r="A2"><v>2</v></c></row>' }),
      cell("B1", 0, { formula: "A2*3" }),
      insert(2),
      cell("A2", 7),
      { kind: "rename-sheet", sheet: "S", to: "T" },
      cell("C1", 0, { formula: "T!A3+A2" }, "T"),
      remove(2, 1, "T"),
      cell("A9", "gone", {}, "T"),
      remove(9, 1, "T"),
    );
    const { book } = openPackage(saved);
    expect(cellOf(book, "T", "B1")?.formula).toBe("A2*3");
    expect(cellOf(book, "T", "C1")?.formula).toBe("T!A2+#REF!");
    expect(cellOf(book, "T", "A2")?.value).toBe(2);
    expect(cellOf(book, "T", "A9")).toBeUndefined();
  });

  it("cells under merged ones, too long texts and formulas are refused, the longest are not", () => {
    const { book } = openPackage(least({ after: '<mergeCells count="1"><mergeCell ref="A1:B2"/></mergeCells>' }));
    expect(refusal(book, cell("B1", 1))).toContain("merged cells A1:B2");
    expect(refusal(book, cell("A1", 1))).toBeUndefined();
    expect(refusal(book, cell("C1", "x".repeat(32_768)))).toContain("32,767");
    expect(refusal(book, cell("C1", "x".repeat(32_767)))).toBeUndefined();
    expect(refusal(book, cell("C1", 1, { formula: `1${"+1".repeat(4096)}` }))).toContain("8,192");
  });
});

it("the hand-made workbook is what it says (regression)", () => {
  expect(Object.keys(handmadeParts()).length).toBe(25);
});
