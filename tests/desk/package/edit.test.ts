import { describe, expect, it } from "vitest";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { refusal } from "../../../taskpane/desk/package/refusal.ts";
import { cell, insert, refused, remove, SHEET, save, sheetText } from "./edits.ts";
import { handmade } from "./handmade.ts";
import {
  cellOf,
  file,
  least,
  leastParts,
  MAIN,
  partText,
  relationships,
  sheetOf,
  types,
  unzipped,
  zipped,
} from "./packages.ts";

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
