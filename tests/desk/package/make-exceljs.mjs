// Makes files/exceljs.xlsx with everything that exceljs 4.4 (MIT) can write. Run: node make-exceljs.mjs
import path from "node:path";
import ExcelJS from "exceljs";

const book = new ExcelJS.Workbook();
book.creator = "the shop";
book.created = new Date(Date.UTC(2026, 0, 2));
book.modified = book.created;
book.properties.date1904 = true;
const sheet = book.addWorksheet("Jobs", {
  views: [{ state: "frozen", xSplit: 1, ySplit: 1 }],
  pageSetup: { orientation: "landscape", printArea: "A1:F20", printTitlesRow: "1:1" },
  headerFooter: { oddHeader: "Jobs &D" },
});
sheet.addTable({
  name: "Jobs",
  ref: "A1",
  headerRow: true,
  totalsRow: true,
  style: { theme: "TableStyleMedium4", showRowStripes: true },
  columns: [
    { name: "Op", totalsRowLabel: "Total", filterButton: true },
    { name: "Dia", totalsRowFunction: "sum" },
    { name: "Note" },
  ],
  rows: [
    ["drill", 6.8, "thru"],
    ["bore", 24, "H7"],
    ["tap", 8, "M8x1.25"],
  ],
});
sheet.getCell("E1").value = "shared";
sheet.fillFormula("E2:E4", "B2*2+$B$2", [20.4, 54.8, 22.8]);
sheet.getCell("G1").value = { richText: [{ text: "neck " }, { font: { bold: true }, text: "rubs" }] };
sheet.getCell("G2").value = new Date(Date.UTC(2026, 2, 5));
sheet.getCell("G2").numFmt = "yyyy-mm-dd";
sheet.getCell("G3").value = { text: "drawing", hyperlink: "https://example.org/a?b=1&c=2", tooltip: "open" };
sheet.getCell("G4").value = { error: "#N/A" };
sheet.getCell("G5").value = { formula: '_xlfn.CONCAT(A2," ",B2)', result: "drill 6.8" };
sheet.getCell("G6").value = { formula: '_xldudf_CUT_RPM(120,10,"mm")', result: 3819.718634 };
sheet.getCell("B2").note = { texts: [{ text: "measured " }, { font: { bold: true }, text: "twice" }] };
sheet.dataValidations.add("A2:A1048576", { type: "list", allowBlank: true, formulae: ['"drill,bore,tap"'] });
sheet.dataValidations.add("H2:H90", { type: "list", allowBlank: true, formulae: ["Words!$A$1:$A$3"] });
sheet.addConditionalFormatting({
  ref: "B2:B90",
  rules: [
    {
      type: "expression",
      priority: 1,
      formulae: ["$B2>20"],
      style: { font: { bold: true, color: { argb: "FF8A1410" } } },
    },
    { type: "dataBar", priority: 2, cfvo: [{ type: "min" }, { type: "max" }], color: { argb: "FF638EC6" } },
  ],
});
sheet.getColumn(1).width = 18;
sheet.getColumn(9).hidden = true;
sheet.getColumn(9).width = 12;
sheet.mergeCells("J1:K2");
sheet.getCell("J1").value = "merged";
for (const address of ["A7", "B7"]) {
  sheet.getCell(address).fill = { type: "pattern", pattern: "solid", fgColor: { argb: "FFFBEAC2" } };
  sheet.getCell(address).value = "beside and below";
}
const dot = book.addImage({
  base64: "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==",
  extension: "png",
});
sheet.addImage(dot, { tl: { col: 1, row: 9 }, br: { col: 3, row: 14 }, editAs: "oneCell" });
const words = book.addWorksheet("Words", { state: "hidden" });
["one", "two", "three"].forEach((word, i) => {
  words.getCell(i + 1, 1).value = word;
});
words.getCell("B1").value = { formula: "Jobs!B3*2", result: 48 };
await sheet.protect("secret", { selectLockedCells: true });
sheet.getCell("A2").protection = { locked: false };
book.definedNames.add("Jobs!$B$2:$B$4", "dias");
await book.xlsx.writeFile(path.join(import.meta.dirname, "files", "exceljs.xlsx"));
