import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Edit, LAST_ROW, type Value } from "../../../taskpane/desk/model/types.ts";
import { openPackage } from "../../../taskpane/desk/package/open.ts";
import { movedSpan, type RowMove } from "../../../taskpane/desk/package/references.ts";
import { refusal } from "../../../taskpane/desk/package/refusal.ts";
import { movedRow } from "../../../taskpane/desk/package/rows.ts";
import { cell, insert, refused, remove, SHEET, save, sheetText } from "./edits.ts";
import { handmade } from "./handmade.ts";
import { cellOf, file, least, MAIN, partText, REL, sheetOf, unzipped } from "./packages.ts";

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
