/**
 * From the user's table to what is planned and what is written: headings matched, units settled, the cells of a fill,
 * and the basis that tells later whether a row's inputs have changed. Pure: no host, no page.
 */

import { SOURCES, type Source } from "../../src/sources.ts";
import { isBlank as blank } from "../../src/table/blank.ts";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  type Match,
  matchHeadings,
  normalHeading,
  RESULT_COLUMNS,
  ROW_COLUMNS,
  readHeadings,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import type { ResultKey } from "../../src/table/results.ts";
import type { RowKey } from "../../src/table/rows.ts";
import { meantBy } from "../../src/table/words.ts";
import { fromCanonical, symbol, type Units } from "../../src/units.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import type { Block, CellValue, Change, Written } from "../host/host.ts";
import { addressOf } from "../host/reference.ts";

/** What a person said about a heading: its text (normalised) → "in:depth", "out:tableFeed" or "" for "not used". */
export type HandMatches = Readonly<Record<string, string>>;

export interface Matching {
  readonly inputs: readonly Match<RowKey>[];
  readonly outputs: readonly Match<ResultKey>[];
  /** Columns for the basis and its marker, when the table has them. */
  readonly basisAt?: number;
  readonly changedAt?: number;
  /** Headings that may mean several things: asked about, neither read nor written until someone says. */
  readonly doubts: readonly Doubt[];
}

/** A heading with what it may mean: "in:depth", "out:tableFeed". */
export interface Doubt {
  readonly at: number;
  readonly options: readonly string[];
}

/** What was said of each heading. */
function saidOf(headings: readonly CellValue[], byHand: HandMatches): (string | undefined)[] {
  const said = new Map(Object.entries(byHand));
  return headings.map((heading) => (said.size === 0 ? undefined : said.get(normalHeading(heading))));
}

export const BASIS = "Basis";
export const CHANGED = "Changed";

/**
 * Which column is which. Each heading is an input first; a second column of the same name ("Passes" again, or
 * "Passes2" as tables number them) and headings that only results have are results. A heading that may be an input and
 * may be something else is neither.
 */
export function match(headings: readonly CellValue[], byHand: HandMatches = {}): Matching {
  const said = saidOf(headings, byHand);
  const free = headings.map((heading, at) => (said[at] === undefined ? heading : null));
  const { matches: inputs, doubts: open } = readHeadings(free, ROW_COLUMNS);
  const taken = new Set([...inputs, ...open].map((m) => m.at));
  const rest = free.map((heading, at) =>
    taken.has(at) ? null : typeof heading === "string" ? heading.replace(/([A-Za-z])[2-9]$/, "$1") : heading,
  );
  const results = readHeadings(rest, RESULT_COLUMNS);
  const outputs = results.matches.filter((m) => m.column.key !== "row");
  const withHand = <K extends string>(
    side: "in" | "out",
    found: Match<K>[],
    columns: readonly Column<K>[],
  ): Match<K>[] => {
    const own = said.flatMap((key, at): Match<K>[] => {
      const column = key?.startsWith(`${side}:`) ? columns.find((c) => `${side}:${c.key}` === key) : undefined;
      return column ? [{ at, heading: String(headings[at]), column }] : [];
    });
    return [...found.filter((m) => !own.some((o) => o.column.key === m.column.key)), ...own].sort(
      (a, b) => a.at - b.at,
    );
  };
  const at = (name: string) => headings.findIndex((heading) => normalHeading(heading) === normalHeading(name));
  return {
    inputs: withHand("in", inputs, ROW_COLUMNS),
    outputs: withHand("out", outputs, RESULT_COLUMNS),
    basisAt: at(BASIS) < 0 ? undefined : at(BASIS),
    changedAt: at(CHANGED) < 0 ? undefined : at(CHANGED),
    doubts: doubtsOf(open, results.doubts, new Set(said)),
  };
}

/** What the open headings may mean, as inputs and as results, without what someone else was said to be. */
function doubtsOf(
  inputs: ReturnType<typeof readHeadings<RowKey>>["doubts"],
  results: ReturnType<typeof readHeadings<ResultKey>>["doubts"],
  said: ReadonlySet<string | undefined>,
): Doubt[] {
  const asResult = (heading: string) => {
    const { matches, doubts } = readHeadings([heading], RESULT_COLUMNS);
    return [...matches.map((m) => m.column), ...doubts.flatMap((d) => d.columns)];
  };
  const all = [
    ...inputs.map(({ at, heading, columns }) => ({
      at,
      options: [
        ...columns.map((column) => `in:${column.key}`),
        ...asResult(heading).map((column) => `out:${column.key}`),
      ],
    })),
    ...results.map(({ at, columns }) => ({ at, options: columns.map((column) => `out:${column.key}`) })),
  ];
  return all
    .map(({ at, options }) => ({ at, options: options.filter((key) => !said.has(key)) }))
    .filter(({ options }) => options.length > 0)
    .sort((a, b) => a.at - b.at);
}

/** How many of the headings one set of columns knows and the other does not. */
function ownTo(columns: readonly Column[], others: readonly Column[], headings: readonly CellValue[]): number {
  const known = new Set(matchHeadings(headings, others).map((m) => m.at));
  return matchHeadings(headings, columns).filter((m) => !known.has(m.at)).length;
}

const LIST_COLUMNS: readonly (readonly Column[])[] = [TOOL_COLUMNS, MACHINE_COLUMNS, MATERIAL_COLUMNS];

/** True for the headings of a list of tools, machines or materials: it knows more of them that a plan does not. */
const isListHeading = (headings: readonly CellValue[]): boolean =>
  LIST_COLUMNS.some((columns) => {
    const own = ownTo(columns, ROW_COLUMNS, headings);
    return own > 0 && own >= ownTo(ROW_COLUMNS, columns, headings);
  });

/** How much headings look like those of a planning table: an operation, or a thread or size with a depth. */
export function planningScore(headings: readonly CellValue[], byHand: HandMatches = {}): number {
  const said = saidOf(headings, byHand);
  const free = headings.map((heading, at) => (said[at] === undefined ? heading : null));
  const keys = new Set<string>(matchHeadings(free, ROW_COLUMNS).map((m) => m.column.key));
  for (const key of said) if (key?.startsWith("in:")) keys.add(key.slice("in:".length));
  const sized = (keys.has("thread") || keys.has("finishDiameter")) && (keys.has("depth") || keys.has("material"));
  const score = keys.has("operation") ? (keys.size >= 2 ? keys.size + 5 : 0) : sized ? keys.size : 0;
  // Looked at last: most rows of a sheet are no headings at all.
  return score === 0 || isResultHeading(headings) || isListHeading(headings) ? 0 : score;
}

const isResultHeading = (headings: readonly CellValue[]): boolean => {
  const first = headings.slice(0, 3);
  const results = matchHeadings(first, RESULT_COLUMNS);
  const at = (key: string) => results.find((m) => m.column.key === key)?.at;
  return at("verdict") === 1 && at("reasons") === 2 && matchHeadings(first, ROW_COLUMNS)[0]?.column.key === "row";
};

/** How much headings look like a block of results that stands beside a table. */
export function resultScore(headings: readonly CellValue[]): number {
  return isResultHeading(headings) ? headings.length : 0;
}

/** The units that the table itself gives: a Units column, or headings that agree. */
export function unitsGiven({ inputs }: Matching): Units | "given" | undefined {
  if (inputs.some((m) => m.column.key === "units")) return "given";
  const lengths = inputs.filter((m) => m.column.dimension === "length");
  const said = new Set(lengths.flatMap((m) => m.units ?? []));
  return said.size === 1 ? [...said][0] : undefined;
}

/** True for a row in which nothing but its number is filled in. */
export function isEmptyRow(cells: readonly CellValue[], { inputs }: Matching): boolean {
  return inputs.every((m) => m.column.key === "row" || blank(cells[m.at]));
}

/**
 * The block that is planned: only the columns that were taken as inputs, by their own headings when these were
 * recognised and by ours when they were matched by hand; the units that were asked for in a column of their own.
 */
export function planningBlock(table: Block, matching: Matching, units: Units | undefined): CellValue[][] {
  const { inputs } = matching;
  const recognised = matchHeadings(table.headings, ROW_COLUMNS);
  const heading = (m: Match) =>
    recognised.some((r) => r.at === m.at && r.column === m.column) ? m.heading : m.column.heading;
  const needsUnits = units !== undefined && !inputs.some((m) => m.column.key === "units");
  const head = [...inputs.map(heading), ...(needsUnits ? ["Units"] : [])];
  return [
    head,
    ...table.rows.map((cells) => [
      ...inputs.map((m) => cells[m.at] ?? null),
      ...(needsUnits ? [isEmptyRow(cells, matching) ? null : units] : []),
    ]),
  ];
}

/** A result in the units of its column: those the heading names, else the row's. */
function resultCell(plan: RowPlan, column: Column<ResultKey>, headingUnits?: Units): CellValue {
  const value = plan.results[column.key];
  if (value === null || value === undefined || value === "") return null;
  if (typeof value === "string") return value;
  if (!Number.isFinite(value)) return null;
  return column.dimension ? fromCanonical(value, column.dimension, headingUnits ?? plan.units) : value;
}

function formatOf(column: Column, units: Units): string | undefined {
  return column.format?.[units === "in" ? 1 : 0];
}

const MILLIONTHS = 1_000_000;

/** Columns that no number follows from. */
const NAMES = ["row", "feature", "remark"];
const basisColumns = ({ inputs }: Matching) => inputs.filter((m) => !NAMES.includes(m.column.key));

/** What the row was worked out from, as one text: numbers in millionths, so that no decimal sign is in it. */
export function basisOf(cells: readonly CellValue[], matching: Matching): string {
  const part = ({ at, column }: Match): string => {
    const cell = cells[at] ?? "";
    if (typeof cell === "string") return cell;
    if (typeof cell === "boolean") return column.kind === "flag" ? String(Number(cell)) : String(cell).toUpperCase();
    const millionths = cell * MILLIONTHS;
    return String(Math.sign(millionths) * Math.round(Math.abs(millionths)) || 0);
  };
  return `of ${basisColumns(matching).map(part).join("|")}`;
}

/**
 * A plain built-in formula that is "" while the row's inputs are those of its basis, and says so when they are not.
 * It works wherever the file is opened, with the add-in or without.
 */
export function changedFormula(
  table: Block,
  row: number,
  matching: Matching,
  basis: { row: number; column: number },
): string {
  const parts = basisColumns(matching).map((m) => {
    const cell = addressOf(table.top + 1 + row, table.left + m.at);
    // A cell with nothing in it adds nothing to the text.
    const part = `IF(ISNUMBER(${cell}),ROUND(${cell}*10^6,0),${cell})`;
    // Words for true and false differ between languages, and some programs count them among the numbers.
    return m.column.kind === "flag" ? `IF(ISLOGICAL(${cell}),N(${cell}),${part})` : part;
  });
  const now = parts.length === 0 ? "" : `&${parts.join('&"|"&')}`;
  const own = addressOf(basis.row, basis.column);
  // Without a basis there is nothing to say: a table may run the formula down over rows that were not filled.
  return `=IF(OR(${own}="",EXACT(${own},"of "${now})),"","inputs changed")`;
}

/** True for a formula that marks changed inputs, as this program writes it. */
export const isMark = (formula: string): boolean => formula.includes('"inputs changed"');

/** Cells of a fill into the table's own result columns. Rows without inputs are left alone. */
export function changesFor(table: Block, matching: Matching, plans: readonly (RowPlan | undefined)[]): Change[] {
  const changes: Change[] = [];
  table.rows.forEach((cells, row) => {
    const plan = plans[row];
    if (plan === undefined || isEmptyRow(cells, matching)) return;
    for (const { at, column, units } of matching.outputs) {
      changes.push({
        row,
        column: at,
        value: resultCell(plan, column, units),
        format: formatOf(column, units ?? plan.units),
      });
    }
    const { basisAt, changedAt } = matching;
    if (basisAt === undefined) return;
    changes.push({ row, column: basisAt, value: basisOf(cells, matching) });
    if (changedAt === undefined) return;
    const basis = { row: table.top + 1 + row, column: table.left + basisAt };
    changes.push({
      row,
      column: changedAt,
      value: { formula: changedFormula(table, row, matching, basis), down: true },
    });
  });
  return changes;
}

/** What stands in a column of the block beside a table; undefined for one that is left alone. */
export type BesideColumn = Column<ResultKey> | typeof BASIS | typeof CHANGED | undefined;
const ALL_BESIDE: readonly BesideColumn[] = [...RESULT_COLUMNS, BASIS, CHANGED];

/**
 * The block of numbers beside a table: headings, then a line per row. `left` is the column of the block on the sheet.
 * Where rows are in different units the format is the finer one.
 */
export function besideBlock(
  table: Block,
  matching: Matching,
  plans: readonly (RowPlan | undefined)[],
  left: number,
  columns: readonly BesideColumn[] = ALL_BESIDE,
): { cells: (Written | undefined)[][]; formats: (string | undefined)[] } {
  const isColumn = (column: BesideColumn) => typeof column === "object";
  const cells: (Written | undefined)[][] = [columns.map((column) => (isColumn(column) ? column.heading : column))];
  const basisColumn = left + columns.indexOf(BASIS);
  let units: Units = "mm";
  table.rows.forEach((row, r) => {
    const plan = plans[r];
    const none = plan === undefined || isEmptyRow(row, matching);
    if (plan?.units === "in") units = "in";
    const basis = { row: table.top + 1 + r, column: basisColumn };
    cells.push(
      columns.map((column) => {
        if (column === undefined) return undefined;
        if (none) return null;
        if (column === BASIS) return basisOf(row, matching);
        if (column === CHANGED) return { formula: changedFormula(table, r, matching, basis), down: true };
        return isColumn(column) ? resultCell(plan, column) : null;
      }),
    );
  });
  return { cells, formats: columns.map((column) => (isColumn(column) ? formatOf(column, units) : undefined)) };
}

/** The one live formula for the whole table; lists may grow by a hundred lines before it has to be put in again. */
export function liveFormula(table: Block, lists: readonly (Block | null)[]): string {
  const grown = (list: Block | null) =>
    list === null ? "" : list.reference.replace(/(\d+)$/, (last) => String(Math.min(1_048_576, Number(last) + 100)));
  return `=CUT.PLAN(${[table.reference, ...lists.map(grown)].join(",").replace(/,+$/, "")})`;
}

/** Number formats of what a live block spills, by column: those of inches where a row is in inches, the finer ones. */
export function liveFormats(table: Block, matching: Matching): (string | undefined)[] {
  const own = matching.inputs.find((m) => m.column.key === "units");
  const inches = own
    ? table.rows.some((cells) => meantBy(String(cells[own.at] ?? ""), own.column).includes("in"))
    : unitsGiven(matching) === "in";
  return RESULT_COLUMNS.map((column) => formatOf(column, inches ? "in" : "mm"));
}

/** "Title, edition, where" of a source id; an id that is not in the bibliography is shown as it is. */
export function sourceText(id: string): string {
  const source = (SOURCES as Record<string, Source>)[id];
  if (source === undefined) return id;
  const edition = source.edition === "—" || source.edition === "" ? "" : `, ${source.edition}`;
  return `${source.title}${edition}${source.where ? `, ${source.where}` : ""}`;
}

export const WORKED_HEADINGS = [
  "Step",
  "Value",
  "Unit",
  "Formula",
  "Source",
  "The same by the single function",
] as const;

/** One row written out: each step with what the plan says, and the single worksheet function that says it again. */
export function workedRows(plan: RowPlan): Written[][] {
  return plan.steps.map(({ label, value, dimension, unit, formula, source, cell }) => {
    const own = typeof value === "number" && dimension ? fromCanonical(value, dimension, plan.units) : value;
    // A function that answers a list runs to the right here, where nothing is in its way.
    const isList = typeof value === "string" && value.includes(" · ");
    const again: Written = cell === undefined ? null : { formula: isList ? `=TRANSPOSE(${cell.slice(1)})` : cell };
    return [label, own, dimension ? symbol(dimension, plan.units) : (unit ?? null), formula, sourceText(source), again];
  });
}
