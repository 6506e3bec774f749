/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** New sheets. */
import { isBlank } from "../../../src/table/blank.ts";
import { type Block, type Done, formatAt, type Host, HostError, type NewSheet, type Written } from "../host.ts";
import { OUTCOMES, type Step, said, untouched } from "./carry.ts";
import { blockOf, toCells } from "./cells.ts";
import { toHostError } from "./errors.ts";
import { batches, holds } from "./parts.ts";
import { hold, put } from "./put.ts";
import type { Runs } from "./runs.ts";

const ATTEMPTS = 4;

export function sheetWriter({ write }: Runs): Pick<Host, "addSheet"> {
  return {
    async addSheet(sheet: NewSheet, activate = false) {
      return write(async (context) => {
        const { fresh, named } = await untouched(() => free(context, sheet));
        const job = jobOf(context, sheet, activate, named);
        const done = await make(context, job, fresh);
        await dress(context, job.home(), sheet, job.height);
        const block: Block = blockOf(sheet.name, 0, 0, [
          [...sheet.headings],
          ...job.body.map((row) => row.map((cell) => (typeof cell === "object" && cell !== null ? null : cell))),
        ]);
        return { ...block, ...done };
      });
    },
  };
}

/**
 * Whether the sheet is to be added, or an earlier try left it half made, and whether its name is free for a table;
 * "occupied" when there is anything else under the name.
 */
async function free(context: Excel.RequestContext, sheet: NewSheet): Promise<{ fresh: boolean; named: boolean }> {
  const namesake = context.workbook.tables.getItemOrNullObject(sheet.name);
  namesake.load("name");
  const there = context.workbook.worksheets.getItemOrNullObject(sheet.name);
  there.load("name");
  context.workbook.protection.load("protected");
  await context.sync();
  if (there.isNullObject) {
    if (!context.workbook.protection.protected) return { fresh: true, named: namesake.isNullObject };
    throw new HostError(
      "protected",
      "The workbook's structure is protected; no sheet was added. Unprotect it (Review, Protect Workbook) and try again.",
    );
  }
  const used = there.getUsedRangeOrNullObject(true);
  used.load("formulas,values,rowIndex,columnIndex");
  await context.sync();
  const halfMade = { fresh: false, named: namesake.isNullObject };
  if (used.isNullObject) return halfMade;
  const all: readonly (readonly Written[])[] = [sheet.headings, ...sheet.rows];
  const width = used.values[0]!.length;
  const cells = used.values.map((_, r) =>
    Array.from({ length: width }, (_cell, c) => all[used.rowIndex + r]?.[used.columnIndex + c] ?? null),
  );
  const filled = toCells(used.values)
    .flat()
    .filter((cell) => !isBlank(cell)).length;
  const whole = all.flat().filter((cell) => cell !== null && cell !== "").length;
  if (filled < whole && holds(used, cells, true)) return halfMade;
  throw new HostError(
    "occupied",
    `There is a sheet "${sheet.name}" already; nothing was written. Rename or delete it, then try again.`,
  );
}

interface Job {
  readonly name: string;
  readonly body: readonly (readonly Written[])[];
  readonly height: number;
  /** The sheet, once it is there. */
  home(): Excel.Worksheet;
  /** Writes in this order; each of them may be done twice. */
  readonly steps: readonly Pick<Step, "cells" | "bytes" | "write">[];
  /** Ranges with what is to stand in them. */
  readonly ranges: readonly { readonly top: number; readonly cells: readonly (readonly Written[])[] }[];
  /** Lists to choose from, the table, panes; with the table that is there already. */
  finish(table?: Excel.Table): void;
}

const ROWS_AT_ONCE = 2000;

function jobOf(context: Excel.RequestContext, sheet: NewSheet, activate: boolean, named: boolean): Job {
  const width = sheet.headings.length;
  const body = sheet.rows.map((row) => Array.from({ length: width }, (_, c) => row[c] ?? null));
  const height = Math.max(body.length, 1);
  const home = () => context.workbook.worksheets.getItem(sheet.name);
  const all: (readonly Written[])[] = [sheet.headings, ...body];
  const formats = [
    sheet.headings.map(() => undefined),
    ...body.map((row, r) => row.map((cell, c) => formatAt(sheet, r, c, cell))),
  ];
  const ranges = Array.from({ length: Math.ceil(all.length / ROWS_AT_ONCE) }, (_, i) => ({
    top: i * ROWS_AT_ONCE,
    cells: all.slice(i * ROWS_AT_ONCE, (i + 1) * ROWS_AT_ONCE),
  }));
  const steps = ranges.map(({ top, cells }) => ({
    cells: cells.length * width,
    bytes: JSON.stringify(cells).length,
    write: () => put(home(), top, 0, cells, formats.slice(top, top + cells.length)),
  }));
  return {
    name: sheet.name,
    body,
    height,
    home,
    steps,
    ranges,
    finish(existing) {
      const made = home();
      sheet.choices?.forEach((choice, c) => {
        if (choice === undefined) return;
        const column = made.getRangeByIndexes(1, c, height, 1);
        const source = typeof choice === "string" ? rangeOf(context, choice) : choice.join(",");
        column.dataValidation.rule = { list: { inCellDropDown: true, source } };
      });
      // A list of answers cannot spill inside a table: where there are formulas, plain cells it is.
      const plain = body.every((row) => row.every((cell) => typeof cell !== "object" || cell === null));
      if (named && !sheet.page && plain && width > 1 && new Set(sheet.headings).size === width) {
        const table = existing ?? made.tables.add(made.getRangeByIndexes(0, 0, height + 1, width), true);
        if (/^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet.name) && existing?.name !== sheet.name) table.name = sheet.name;
      }
      made.freezePanes.freezeRows(1);
      made.getRangeByIndexes(0, 0, height + 1, width).format.autofitColumns();
      if (sheet.page) made.getRangeByIndexes(0, 0, 1, width).format.font.bold = true;
      if (activate) made.activate();
    },
  };
}

/** Makes the sheet, or finishes what an earlier try left; after a fault it is whole, or it is not there. */
async function make(context: Excel.RequestContext, job: Job, fresh: boolean): Promise<Done> {
  const groups = batches(job.steps);
  try {
    for (const [i, group] of groups.entries()) {
      hold(context);
      if (i === 0 && fresh) context.workbook.worksheets.add(job.name);
      for (const step of group) step.write();
      if (i === groups.length - 1) job.finish();
      await context.sync();
    }
    return {};
  } catch (thrown) {
    return mend(context, job, fresh, toHostError(thrown));
  }
}

async function mend(context: Excel.RequestContext, job: Job, fresh: boolean, problem: HostError): Promise<Done> {
  let taken = false;
  let whole = false;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    try {
      const there = context.workbook.worksheets.getItemOrNullObject(job.name);
      there.load("name");
      await context.sync();
      if (there.isNullObject) throw said(problem, taken ? OUTCOMES.undone : OUTCOMES.nothing);
      const made = job.home();
      const { tables } = made;
      tables.load("items/name");
      whole = !taken;
      for (const { top, cells } of job.ranges) {
        const range = made.getRangeByIndexes(top, 0, cells.length, cells[0]!.length);
        range.load("formulas,values");
        await context.sync();
        whole &&= holds(range, cells, false);
      }
      if (whole) {
        job.finish(tables.items[0]);
        await context.sync();
        return { note: OUTCOMES.finished };
      }
      if (!fresh) throw said(problem, `The sheet "${job.name}" is half made; the next try finishes it.`);
      taken = true;
      made.delete();
      await context.sync();
    } catch (thrown) {
      if (thrown instanceof HostError) throw thrown;
    }
  }
  if (whole) return { note: OUTCOMES.finished };
  throw said(problem, OUTCOMES.unknown);
}

/** Asks twice: what stopped it may have passed. What is refused again is left out: the numbers stand. */
async function twice(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch {
    await work().catch(console.warn);
  }
}

/** Chart and page of a new sheet. What is refused here, as without a printer, is left out: the numbers stand. */
async function dress(
  context: Excel.RequestContext,
  made: Excel.Worksheet,
  { headings, chart, page }: NewSheet,
  height: number,
): Promise<void> {
  if (chart !== undefined)
    await twice(async () => {
      // A first try may have left a chart that is not finished.
      const { charts } = made;
      charts.load("count");
      await context.sync();
      for (let i = charts.count - 1; i >= 0; i--) charts.getItemAt(i).delete();
      const cells = (column: number) => made.getRangeByIndexes(chart.from + 1, column, chart.count, 1);
      const bars = charts.add("BarClustered", cells(chart.values), "Columns");
      bars.title.text = chart.title;
      bars.legend.visible = false;
      bars.series.getItemAt(0).setXAxisValues(cells(chart.names));
      // Bars begin at the bottom; the list begins at the top.
      bars.axes.categoryAxis.reversePlotOrder = true;
      const left = headings.length + 1;
      const tall = Math.max(12, 2 * chart.count + 4);
      bars.setPosition(made.getRangeByIndexes(1, left, 1, 1), made.getRangeByIndexes(tall, left + 8, 1, 1));
      await context.sync();
    });
  if (page)
    await twice(async () => {
      made.pageLayout.setPrintArea(made.getRangeByIndexes(0, 0, height + 1, headings.length));
      made.pageLayout.setPrintTitleRows("$1:$1");
      made.pageLayout.zoom = { horizontalFitToPages: 1 };
      await context.sync();
    });
}

/** The range that a reference such as `Tools!$A$2:$A$200` or `'Our tools'!$A$2` names. */
function rangeOf(context: Excel.RequestContext, ref: string): Excel.Range {
  const [, quoted, plain, address] = /^=?(?:'((?:[^']|'')+)'|([^'!]+))!(.+)$/.exec(ref) ?? [];
  if (address === undefined) throw new HostError("failed", `"${ref}" does not name a range.`);
  return context.workbook.worksheets.getItem((quoted ?? plain!).replaceAll("''", "'")).getRange(address);
}
