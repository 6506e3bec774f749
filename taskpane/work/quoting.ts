/** The quote and the comparison as sheets of their own: what stands in which cell. */

import { type Choice, type Comparison, compare } from "../../src/quote/compare.ts";
import { QUOTE_HEADINGS, QUOTE_SECTIONS, quoteLines } from "../../src/quote/lines.ts";
import { quoteTable } from "../../src/quote/quote.ts";
import { breakEvenText, plural } from "../../src/quote/says.ts";
import type { QuoteOptions, QuoteSummary } from "../../src/quote/types.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import type { BarChart, NewSheet } from "../host/host.ts";
import type { PlanBlocks } from "./types.ts";

type Cell = string | number | null;

/** Characters of the longest bar. */
const BAR = 24;
/** Sections whose minutes are drawn; bars of text print and travel everywhere, and need no chart of the host. */
const DRAWN: ReadonlySet<string> = new Set([QUOTE_SECTIONS.operation, QUOTE_SECTIONS.machine, QUOTE_SECTIONS.dearest]);

/** A bar of text, in proportion to the largest of its section; never empty for something that takes time. */
function bar(value: number | undefined, most: number): string {
  if (value === undefined || !(value > 0) || !(most > 0)) return "";
  return "█".repeat(Math.max(1, Math.round((BAR * value) / most)));
}

/** Characters that fit the column of text beside the numbers, on the screen and on paper. */
const LINE = 58;

/** A sentence in lines that fit the page, broken between words; each further line begins with two spaces. */
function folded(text: string): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line.trim() !== "" && line.length + 1 + word.length > LINE) {
      lines.push(line);
      line = `  ${word}`;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

const money = (heading: string, currency: string | undefined) => (currency ? `${heading} [${currency}]` : heading);

/** A sheet without its name yet, and what the person should know of it at once. */
export interface Made {
  readonly sheet: Omit<NewSheet, "name">;
  readonly warning?: string;
}

/** Rows that are not in a total must not be learnt of from the last page alone. */
function warningOf({ rows, leftOut, stops }: QuoteSummary): string | undefined {
  if (rows.length === 0) return "No row has a time: there is nothing to add up. The sheet says why, row by row.";
  const said = [
    leftOut.length > 0 &&
      `${plural(leftOut.length, "row")} without a time ${leftOut.length === 1 ? "is" : "are"} not in it.`,
    stops.length > 0 && `${plural(stops.length, "row")} in it cannot be made as planned (stop).`,
  ].filter((text) => text !== false);
  return said.length > 0 ? said.join(" ") : undefined;
}

/** The quote of a table: one line per number, with bars of the minutes. */
export function quoteSheet(blocks: PlanBlocks, options: QuoteOptions): Made {
  const summary = quoteTable(blocks, options);
  const lines = quoteLines(summary);
  const most = new Map<string, number>();
  for (const { section, minutes } of lines) most.set(section, Math.max(most.get(section) ?? 0, minutes ?? 0));
  let last = "";
  const rows = lines.flatMap(({ section, item, count, minutes, money: paid, share }): Cell[][] => {
    // The name of a section once, where it begins: the page reads in groups.
    const shown = section === last ? null : section;
    last = section;
    const [text = "", ...more] = folded(item);
    const drawn = DRAWN.has(section) ? bar(minutes, most.get(section)!) : null;
    return [
      [shown, text, count ?? null, minutes ?? null, paid ?? null, share ?? null, drawn],
      ...more.map((rest): Cell[] => [null, rest, null, null, null, null, null]),
    ];
  });
  const headings = [...QUOTE_HEADINGS, "Minutes drawn"].map((h) => (h === "Money" ? money(h, options.currency) : h));
  const from = rows.findIndex(([section]) => section === QUOTE_SECTIONS.operation);
  const chart: BarChart | undefined =
    from < 0
      ? undefined
      : { title: "Minutes per part, by operation", names: 1, values: 3, from, count: summary.operations.length };
  return {
    sheet: { headings, rows, formats: [undefined, undefined, "0", "0.00", "0.00", "0.0%"], page: true, chart },
    warning: warningOf(summary),
  };
}

/** Two quotes of the same rows side by side, the difference, and where the one begins to pay. */
export function compareSheet(blocks: PlanBlocks, choice: Choice, options: QuoteOptions): Made {
  const lists = readLists(blocks.materials, blocks.tools, blocks.machines);
  const done = compare(readRows(blocks.rows), lists, choice, options);
  const [a, b] = done.quotes;
  const both = (item: string, of: (q: QuoteSummary) => number | undefined): Cell[] => {
    const [x, y] = [of(a), of(b)];
    return [item, x ?? null, y ?? null, x === undefined || y === undefined ? null : y - x];
  };
  const minutes = (item: string, of: (q: QuoteSummary) => number) => both(`${item} [min]`, (q) => of(q) / 60);
  const paid = (item: string, of: (q: QuoteSummary) => number | undefined) => both(money(item, options.currency), of);
  const rows: Cell[][] = [
    minutes("Time per part", (q) => q.seconds),
    minutes("… cutting", (q) => q.time.cutting),
    minutes("… moving", (q) => q.time.moving),
    minutes("… waiting", (q) => q.time.waiting),
    minutes("… tool changes", (q) => q.time.change),
    minutes("… share of the setup", (q) => q.time.setup),
    minutes("Time per part, 10 % of cases are below", (q) => q.secondsBand.low),
    minutes("Time per part, 10 % of cases are above", (q) => q.secondsBand.high),
    minutes("Lost to acceleration", (q) => q.acceleration.seconds),
    paid("Cost per part", (q) => q.money),
    paid("… tools", (q) => q.paid?.tool),
    paid("Cost per part, 10 % of cases are below", (q) => q.moneyBand?.low),
    paid("Cost per part, 10 % of cases are above", (q) => q.moneyBand?.high),
    both("Rows in the total", (q) => q.rows.length),
    both("Rows not in the total", (q) => q.leftOut.length),
    both("Rows that stop", (q) => q.stops.length),
    both("Rows to check", (q) => q.checks.length),
    ["Break-even batch", "batch" in done.breakEven ? done.breakEven.batch : null, null, null],
    ...sentence(breakEvenText(done.breakEven, done.names)),
    ...leftOut(done),
  ];
  return {
    sheet: {
      headings: [`Same rows, two ${done.what}s`, ...done.names, "Difference"],
      rows,
      formats: [undefined, "0.00", "0.00", "0.00"],
      rowFormats: rows.map(([item]) => (String(item).startsWith("Rows ") ? "0" : undefined)),
      page: true,
    },
    warning: comparisonWarning(done),
  };
}

function comparisonWarning({ quotes: [a, b], names, breakEven }: Comparison): string | undefined {
  if (a.rows.length === 0) return breakEvenText(breakEven, names);
  const out = a.leftOut.length;
  const said = [
    out > 0 && `${plural(out, "row")} ${out === 1 ? "has" : "have"} no time on one side or both: in neither total.`,
    a.stops.length + b.stops.length > 0 &&
      `Cannot be made as planned (stop): ${plural(a.stops.length, "row")} with ${names[0]}, ${b.stops.length} with ${names[1]}.`,
  ].filter((text) => text !== false);
  return said.length > 0 ? said.join(" ") : undefined;
}

/** Rows in neither total: once where both sides have the same reason, else what each side says. */
function leftOut({ quotes, names }: Comparison): Cell[][] {
  const [a, b] = quotes;
  return a.leftOut.flatMap((row) => {
    const other = b.leftOut.find(({ at }) => at === row.at)?.reason;
    // A side that has a time says what the other says, and that it is the other.
    const reason =
      other === undefined || row.reason.endsWith(other)
        ? row.reason
        : other.endsWith(row.reason)
          ? other
          : `${names[0]}: ${row.reason}; ${names[1]}: ${other}`;
    return sentence(`Not in the totals: row ${row.name}, ${reason}`);
  });
}

/** Rows of the comparison that hold nothing but a sentence. */
const sentence = (text: string): Cell[][] => folded(text).map((line): Cell[] => [line, null, null, null]);
