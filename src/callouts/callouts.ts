/**
 * Text pasted from a drawing or a letter to planning rows. Nothing is dropped: what is not understood comes back
 * as a row without an operation, its text under Feature; lines that are something else (tolerance frames, notes,
 * hardware …) are listed as what they are. A callout with words or sizes in doubt is never "understood".
 *
 * | written | read as |
 * | --- | --- |
 * | `4X`, `(4)`, `4-M6`, `4 HOLES`, `2 PLACES`, `QTY 4` | quantity; one in front and one behind multiply |
 * | `⌀.201`, `.201 DIA`, `DRILL .201`, `#7 DRILL`, `15/64 DRILL` | drilled hole |
 * | `THRU`, `THRU ALL` · `↧ .75`, `.75 DEEP`, `DP .75`, `X .75`, `× 20` (ISO 6410) | through · depth |
 * | `1/4-20 UNC-2B ↧ .5`, `M8×1.25-6H`, `G1/4` | drill, then thread mill; a hole of tap-drill size beside it is its drill |
 * | `M8 × 16/20`, `M8 ↧16 / ⌀6.8 ↧20`, `HOLE DEPTH 20` | depth of the thread, depth of the hole |
 * | `⌴`, `CBORE`, `C'BORE`, `SPOTFACE`, `SF` | counterbore |
 * | `⌵ ⌀10 X 90°`, `82° CSK TO .35 DIA` | countersink |
 * | `±.005`, `+.001/-.000`, `.500/.502`, `12.00-12.02`, `H7`, `js6` | limits: finish diameter in the middle, size tolerance half |
 * | `REAM`, `BORE`, `TAP DRILL`, `h6` | ream, bore, the thread's drill, boss |
 * | `6X … EQ SP ON ⌀80 BC` | spacing: chord of the bolt circle |
 * | `(#40)`, `(.4219)`, `[6.35]` behind a size | the same size once more |
 * | `↧ 2×D`, `1.5D DEEP` | depth in diameters of the thread or the hole |
 * | `.500-13 STI`, `EG M8`, `INSERT` | refused by name: the thread for an insert is another |
 * | `C'DRILL` | a drill of its own depth |
 * | `TYP`, `FAR SIDE`, `BOTH SIDES` | remark, remark, twice the quantity of that feature |
 *
 * A line that starts with a seat, a depth or a remark goes on with the line above; so does a thread above or below
 * the hole of its tap drill. Units: see `unitsOf`; doubts: see `PLAUSIBLE`; faults of reading: see `mend`.
 * @source ASMEY145 ISO129 ISO6410
 */

import { matchHeadings, ROW_COLUMNS } from "../table/columns.ts";
import type { Units } from "../units.ts";
import { featuresOf } from "./features.ts";
import { continues, type Line, LONGEST_LINE, readLine, tokensIn } from "./lines.ts";
import type { OtherKind } from "./others.ts";
import { PLAUSIBLE, type Plausible } from "./plausible.ts";
import { ENGLISH } from "./remarks/en.ts";
import type { Remark } from "./remarks/remark.ts";
import { allSaid, said } from "./remarks/say.ts";
import { rowsOf } from "./rows.ts";
import { statedUnits } from "./stated.ts";
import type { CalloutCell, CalloutCells, Feature, Placed, RowDraft } from "./types.ts";
import { type Said, unitsOf } from "./units.ts";

export type { OtherKind } from "./others.ts";
export type { CalloutCell, CalloutCells, CalloutHeading } from "./types.ts";

export interface CalloutOptions {
  /** Units of the drawing. They hold for all lengths but those that carry a unit; a statement in the text beats them. */
  readonly units?: Units;
  /** Thickness of the part: the Depth of holes that go through. */
  readonly thickness?: { readonly value: number; readonly units: Units };
  /** Names to put into every row. */
  readonly material?: string;
  readonly machine?: string;
  /** Sizes beyond these are asked about; blank: `PLAUSIBLE`. */
  readonly limits?: Partial<Plausible>;
}

export interface CalloutRow {
  /** By the canonical headings of the planning table; a heading that is missing is blank. */
  readonly cells: CalloutCells;
  /** Where it stood: number of the first line (from 1), and the text as pasted. */
  readonly source: { readonly line: number; readonly text: string };
  readonly understood: boolean;
  /** What was assumed, and what was not understood. The same stands in the row's Remark. */
  readonly note: string;
}

/** A line, or the end of one, that gives no row. */
export interface OtherLine {
  readonly line: number;
  readonly text: string;
  readonly what: OtherKind;
}

export interface Callouts {
  readonly rows: CalloutRow[];
  readonly others: OtherLine[];
}

/** A stacked callout has no more lines. */
const MOST_LINES = 12;
/** More text than a drawing has. */
const LONGEST_TEXT = 2_000_000;
/** Of a text that is not read, a row keeps so much. */
const KEPT = 120;

/** Lines that may stand between the lines of one callout. */
const BETWEEN = new Set<OtherKind>(["tolerance frame", "surface mark", "datum"]);

/**
 * Planning rows of pasted text, in the order of the text and, within a callout, of cutting; and the lines that give no
 * row with what they are. Never throws.
 */
export function readCallouts(text: string, options: CalloutOptions = {}): Callouts {
  if (text.length > LONGEST_TEXT) {
    const cells = { Feature: `${text.slice(0, KEPT)} …`, Operation: null };
    return { rows: [refused(cells, { line: 1, text }, { code: "too-much", characters: text.length })], others: [] };
  }
  const items: Line[][] = [];
  const others: OtherLine[] = [];
  const stated = new Set<Units>();
  let open = false;
  text.split(/\r\n|[\n\r\v\f\u0085\u2028\u2029]/).forEach((original, i) => {
    if (original.trim() === "") {
      open = false;
      return;
    }
    const item = items[items.length - 1];
    const above = open ? item?.[item.length - 1]?.tokens.at(-1) : undefined;
    const half = above?.kind === "tolerance" && above.half === true;
    const { line, rest, what } = readLine(original, i + 1, half);
    if (rest !== undefined && what !== undefined) {
      others.push({ line: i + 1, text: rest, what });
      const said = statedUnits(rest);
      if (said) stated.add(said);
    }
    if (line === undefined) {
      if (!BETWEEN.has(what!)) open = false;
      return;
    }
    if (open && item && item.length < MOST_LINES && !line.bulleted && continues(line, item)) item.push(line);
    else items.push([line]);
    open = true;
  });
  const units = stated.size === 1 ? [...stated][0] : options.units;
  const rows = items.map((lines) => itemRows(lines, { ...options, units }, stated.size === 1));
  pairOfLimits(items, rows);
  return { rows: rows.flat(), others };
}

/** Two bare diameters that nearly agree, one under the other: limits of one hole, or two holes. */
const NEARLY = 0.01;
function pairOfLimits(items: readonly (readonly Line[])[], rows: CalloutRow[][]): void {
  const opening = (i: number, alone: boolean) => {
    const tokens = items[i]![0]!.tokens.filter((t) => t.kind !== "times");
    const [first, second] = tokens;
    const sign = first?.kind === "mark" && first.mark === "diameter";
    const size = sign ? second : alone ? undefined : first;
    if (size?.kind !== "length" || (alone && (tokens.length > 2 || items[i]!.length > 1))) return undefined;
    return size.size.value;
  };
  for (let i = 1; i < items.length; i++) {
    const [a, b] = [opening(i - 1, true), opening(i, false)];
    if (a === undefined || b === undefined || a === b || Math.abs(a / b - 1) > NEARLY) continue;
    if (items[i]![0]!.number !== items[i - 1]![0]!.number + 1) continue;
    for (const at of [i - 1, i]) rows[at] = rows[at]!.map((row) => ask(row, { code: "two-sizes" }));
  }
}

function ask(row: CalloutRow, why: Remark): CalloutRow {
  const note = `${said(why, ENGLISH)}; ${row.note}`;
  return { ...row, cells: { ...row.cells, Remark: note }, understood: false, note };
}

/** A text that is not planned, kept as a row. */
function refused(cells: CalloutCells, source: CalloutRow["source"], why: Remark): CalloutRow {
  const note = said(why, ENGLISH);
  return { cells: { ...cells, Remark: note }, source, understood: false, note };
}

/** Rows in the units of the callout; where its numbers speak against the drawing's units, in those that make sense. */
function itemRows(lines: readonly Line[], options: CalloutOptions, told: boolean): CalloutRow[] {
  const stated = unitsOf(featuresOf(tokensIn(lines)), options.units);
  const rows = draftRows(lines, options, stated);
  const { units: drawing, rival: written } = stated;
  if (written === undefined || drawing === null) return rows;
  const against = (taken: boolean): Remark => ({ code: "units-against", written, drawing, taken });
  const other = draftRows(lines, options, { units: written, note: against(true), understood: true });
  const sound = (list: readonly CalloutRow[]) => list.every((row) => row.understood);
  // A choice of the reader's is for callouts that do not tell; leading points throughout do, unless the drawing says so.
  const tells = stated.throughout === true && written === "in" && !told;
  if ((tells || !sound(rows)) && sound(other)) return other;
  return rows.map((row) => ask(row, against(false)));
}

function draftRows(lines: readonly Line[], options: CalloutOptions, units: Said): CalloutRow[] {
  const groups = featuresOf(tokensIn(lines));
  const text = lines.map((l) => l.original.trim()).join("\n");
  const source = { line: lines[0]!.number, text };
  const named: CalloutCells = { Material: options.material ?? null, Machine: options.machine ?? null };
  const feature = short(lines.map((l) => l.original.trim()).join(" · "));
  const given = { thickness: options.thickness, limits: { ...PLAUSIBLE, ...options.limits } };
  const drafts: RowDraft[] = [];
  const left: Placed[] = [];
  for (const group of groups) {
    if (group.features.some((f) => f.diameter || f.thread) && twice(group.features))
      group.asks.push({ code: "same-hole" });
    const made = rowsOf(group, units.units, { Feature: feature, ...named }, given);
    left.push(...made.left);
    drafts.push(...made.rows);
  }
  const mended = lines.flatMap((l) => l.notes);
  if (drafts.length === 0) {
    const because: readonly Remark[] = lines[0]!.tokens.length === 0 ? mended : [{ code: "nothing-found" }];
    const cells = { Feature: feature, Operation: null, ...named };
    return [refused(cells, source, { code: "not-understood", because })];
  }
  const rest = leftover(left, lines);
  // A word that was not understood may turn the meaning of the others.
  const words: Remark[] = rest === "" ? [] : [{ code: "words-left", words: short(rest) }];
  // The rows of a callout are one hole: a doubt about one is a doubt about all.
  const sound = units.understood && rest === "" && drafts.every((d) => d.understood);
  const rows: CalloutRow[] = drafts.map(({ cells, notes }) => {
    const remarks = (joined: Remark) =>
      allSaid([...words, ...notes, units.note, ...(lines.length > 1 ? [joined] : []), ...mended], ENGLISH);
    const note = remarks({ code: "lines-joined", first: lines[0]!.number, last: lines.at(-1)!.number });
    // The lines move when the text is pasted anew: a row does not remember their numbers.
    const remark = remarks({ code: "lines-counted", count: lines.length });
    return { cells: { ...cells, Remark: remark }, source, understood: sound, note };
  });
  if (rest !== "")
    rows.push(refused({ Feature: short(rest), Operation: null, ...named }, source, { code: "part-left", of: feature }));
  return rows;
}

const short = (text: string): string => (text.length > LONGEST_LINE ? `${text.slice(0, KEPT)} …` : text);

/** "⌀8 THRU ⌀8 THRU": two plain holes of one size in one callout. */
function twice(features: readonly Feature[]): boolean {
  const sizes = features.filter((f) => f.kind === "hole" && f.diameter).map((f) => f.diameter!.value);
  return new Set(sizes).size < sizes.length;
}

/** The text of tokens that found no place, neighbours together, as it was pasted. */
function leftover(left: readonly Placed[], lines: readonly Line[]): string {
  const original = new Map(lines.map((l) => [l.number, l.original]));
  const sorted = [...left].sort((a, b) => a.line - b.line || a.at - b.at);
  const parts: { line: number; at: number; end: number }[] = [];
  for (const { line, at, end } of sorted) {
    const last = parts[parts.length - 1];
    const between = last?.line === line ? original.get(line)!.slice(last.end, at).trim() : undefined;
    if (between !== undefined && /^[,;:()./-]*(?:and|on|an?|the|of|at|for|with|holes?)?$/i.test(between))
      last!.end = end;
    else parts.push({ line, at, end });
  }
  return parts.map((p) => original.get(p.line)!.slice(p.at, p.end)).join(" … ");
}

/** What a row has under a heading of the planning table; blank under those that no callout fills. */
export function cellUnder({ cells }: Pick<CalloutRow, "cells">, heading: string): CalloutCell {
  const own: Readonly<Partial<Record<string, CalloutCell>>> = cells;
  return own[heading] ?? null;
}

/**
 * The rows as a block of cells under the given headings (canonical or any other spelling the planning table knows),
 * without the heading row. Lengths go under a heading that carries its own unit ("Dia (mm)") in that unit.
 */
export function calloutBlock(rows: readonly CalloutRow[], headings: readonly unknown[]): CalloutCell[][] {
  const matches = matchHeadings(headings, ROW_COLUMNS);
  return rows.map((row) => {
    const line: CalloutCell[] = headings.map(() => null);
    const units = row.cells.Units;
    for (const { at, column, units: own } of matches) {
      const value = cellUnder(row, column.heading);
      const convert =
        typeof value === "number" && column.dimension === "length" && own !== undefined && units && own !== units;
      line[at] = convert ? Number((own === "mm" ? value * 25.4 : value / 25.4).toPrecision(12)) : value;
    }
    return line;
  });
}
