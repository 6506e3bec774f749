/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** New sheets. */
import { formatAt, type Host, HostError, type NewSheet } from "../host.ts";
import { blockOf } from "./cells.ts";
import { hold, put } from "./put.ts";
import { refuseHuge } from "./refusals.ts";
import type { Runs } from "./runs.ts";

export function sheetWriter({ write }: Runs): Pick<Host, "addSheet"> {
  return {
    async addSheet(sheet: NewSheet, activate = false) {
      return write(async (context) => {
        const there = context.workbook.worksheets.getItemOrNullObject(sheet.name);
        there.load("name");
        const namesake = context.workbook.tables.getItemOrNullObject(sheet.name);
        namesake.load("name");
        context.workbook.protection.load("protected");
        await context.sync();
        if (!there.isNullObject)
          throw new HostError(
            "occupied",
            `There is a sheet "${sheet.name}" already. Rename or delete it, then try again.`,
          );
        if (context.workbook.protection.protected)
          throw new HostError(
            "protected",
            "The workbook's structure is protected; no sheet was added. Unprotect it (Review, Protect Workbook) and try again.",
          );
        const width = sheet.headings.length;
        refuseHuge((sheet.rows.length + 1) * width);
        hold(context);
        const made = context.workbook.worksheets.add(sheet.name);
        const body = sheet.rows.map((row) => Array.from({ length: width }, (_, c) => row[c] ?? null));
        put(
          made,
          0,
          0,
          [sheet.headings, ...body],
          [
            sheet.headings.map(() => undefined),
            ...body.map((row, r) => row.map((cell, c) => formatAt(sheet, r, c, cell))),
          ],
        );
        const height = Math.max(body.length, 1);
        sheet.choices?.forEach((choice, c) => {
          if (choice === undefined) return;
          const column = made.getRangeByIndexes(1, c, height, 1);
          const source = typeof choice === "string" ? rangeOf(context, choice) : choice.join(",");
          column.dataValidation.rule = { list: { inCellDropDown: true, source } };
        });
        // A list of answers cannot spill inside a table: where there are formulas, plain cells it is.
        const plain = body.every((row) => row.every((cell) => typeof cell !== "object" || cell === null));
        if (!sheet.page && plain && width > 1 && namesake.isNullObject && new Set(sheet.headings).size === width) {
          const table = made.tables.add(made.getRangeByIndexes(0, 0, height + 1, width), true);
          if (/^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet.name)) table.name = sheet.name;
        }
        made.freezePanes.freezeRows(1);
        made.getRangeByIndexes(0, 0, height + 1, width).format.autofitColumns();
        if (sheet.page) made.getRangeByIndexes(0, 0, 1, width).format.font.bold = true;
        if (activate) made.activate();
        await context.sync();
        await dress(context, made, sheet, height);
        return blockOf(sheet.name, 0, 0, [
          [...sheet.headings],
          ...body.map((row) => row.map((cell) => (typeof cell === "object" && cell !== null ? null : cell))),
        ]);
      });
    },
  };
}

/** Chart and page of a new sheet. What is refused here, as without a printer, is left out: the numbers stand. */
async function dress(
  context: Excel.RequestContext,
  made: Excel.Worksheet,
  { headings, chart, page }: NewSheet,
  height: number,
): Promise<void> {
  if (!page && chart === undefined) return;
  try {
    if (chart !== undefined) {
      const cells = (column: number) => made.getRangeByIndexes(chart.from + 1, column, chart.count, 1);
      const bars = made.charts.add("BarClustered", cells(chart.values), "Columns");
      bars.title.text = chart.title;
      bars.legend.visible = false;
      bars.series.getItemAt(0).setXAxisValues(cells(chart.names));
      // Bars begin at the bottom; the list begins at the top.
      bars.axes.categoryAxis.reversePlotOrder = true;
      const left = headings.length + 1;
      const tall = Math.max(12, 2 * chart.count + 4);
      bars.setPosition(made.getRangeByIndexes(1, left, 1, 1), made.getRangeByIndexes(tall, left + 8, 1, 1));
    }
    if (page) {
      made.pageLayout.setPrintArea(made.getRangeByIndexes(0, 0, height + 1, headings.length));
      made.pageLayout.setPrintTitleRows("$1:$1");
      made.pageLayout.zoom = { horizontalFitToPages: 1 };
    }
    await context.sync();
  } catch (thrown) {
    console.warn(thrown);
  }
}

/** The range that a reference such as `Tools!$A$2:$A$200` or `'Our tools'!$A$2` names. */
function rangeOf(context: Excel.RequestContext, ref: string): Excel.Range {
  const [, quoted, plain, address] = /^=?(?:'((?:[^']|'')+)'|([^'!]+))!(.+)$/.exec(ref) ?? [];
  if (address === undefined) throw new HostError("failed", `"${ref}" does not name a range.`);
  return context.workbook.worksheets.getItem((quoted ?? plain!).replaceAll("''", "'")).getRange(address);
}
