/**
 * Text pasted from a drawing or a letter to planning rows. Nothing is dropped: what is not understood comes back
 * as a row without an operation, its text under Feature.
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
 * | `TYP`, `FAR SIDE`, `BOTH SIDES` | remark, remark, twice the quantity of that feature |
 *
 * A line that starts with a seat, a depth or a remark goes on with the line above; so does a thread above or below
 * the hole of its tap drill. Units: see `unitsOf`.
 * @source ASMEY145 ISO129 ISO6410
 */

import { matchHeadings, ROW_COLUMNS } from "../table/columns.ts";
import type { Units } from "../units.ts";
import { featuresOf } from "./features.ts";
import { rowsOf } from "./rows.ts";
import { plainText, tokensOf } from "./text.ts";
import type { CalloutCell, CalloutCells, Feature, Placed } from "./types.ts";
import { unitsOf } from "./units.ts";

export type { CalloutCell, CalloutCells, CalloutHeading } from "./types.ts";

export interface CalloutOptions {
  /** System of lines that do not tell. Without it such rows come back as not understood. */
  readonly units?: Units;
  /** Names to put into every row. */
  readonly material?: string;
  readonly machine?: string;
}

export interface CalloutRow {
  /** By the canonical headings of the planning table; a heading that is missing is blank. */
  readonly cells: CalloutCells;
  /** Where it stood: number of the first line (from 1), and the text as pasted. */
  readonly source: { readonly line: number; readonly text: string };
  readonly understood: boolean;
  /** What was assumed, and what was not understood. */
  readonly note: string;
}

interface Line {
  readonly number: number;
  readonly original: string;
  readonly plain: string;
  readonly bulleted: boolean;
  readonly tokens: readonly Placed[];
}

/** Bullets, numbering and the quote marks of letters. "(4)" is a quantity, not a number of the list. */
const BULLET = /^(?:[\s>]*(?:[-*•·▪◦‣–—]\s+|\d{1,3}[.)](?:\s+|(?=[⌀M#])) *|[a-z][.)]\s+|\d{1,3}\t)|[\s>]+)/i;

/** A stacked callout has no more lines. */
const MOST_LINES = 12;

/** Planning rows of pasted text, in the order of the text and, within a callout, of cutting. Never throws. */
export function readCallouts(text: string, options: CalloutOptions = {}): { rows: CalloutRow[] } {
  const items: Line[][] = [];
  let open = false;
  text.split(/\r\n|[\n\r\v\f\u0085\u2028\u2029]/).forEach((original, i) => {
    if (original.trim() === "") {
      open = false;
      return;
    }
    const item = items[items.length - 1];
    const above = open ? item?.[item.length - 1]?.tokens.at(-1) : undefined;
    const line = readLine(original, i + 1, above?.kind === "tolerance" && above.half === true);
    if (open && item && item.length < MOST_LINES && !line.bulleted && continues(line, item)) item.push(line);
    else items.push([line]);
    open = true;
  });
  return { rows: items.flatMap((lines) => itemRows(lines, options)) };
}

/** `halfAbove`: the line above ends in one side of a tolerance, so that a leading dash is the sign of the other. */
function readLine(original: string, number: number, halfAbove: boolean): Line {
  const bullet = halfAbove && /^\s*[+-]/.test(original) ? "" : (BULLET.exec(original)?.[0] ?? "");
  const plain = plainText(original);
  const body = " ".repeat(bullet.length) + plain.slice(bullet.length);
  return {
    number,
    original,
    plain,
    bulleted: bullet.trim().replace(/>/g, "") !== "",
    tokens: tokensOf(body).map((t) => ({ ...t, line: number })),
  };
}

/** Marks that go on with a callout when a line starts with them. */
const GOES_ON = new Set([
  ...["counterbore", "spotface", "countersink", "depth symbol", "depth", "hole depth", "through", "by", "equally"],
  ...["typical", "far", "near", "both", "least", "circle", "spaced", "left", "right"],
]);

function continues(line: Line, item: readonly Line[]): boolean {
  const above = featuresOf(tokensIn(item)).flatMap((g) => g.features);
  if (above.length === 0) return false;
  const first = line.tokens.find((t) => t.kind !== "separator" && t.kind !== "filler");
  if (first === undefined) return true;
  if (first.kind === "mark" && GOES_ON.has(first.mark)) return true;
  if (first.kind === "count" || first.kind === "tolerance" || first.kind === "fit") return true;
  const second = line.tokens[line.tokens.indexOf(first) + 1];
  if (first.kind === "length" && second?.kind === "mark" && second.mark === "depth") return true;
  return pairs(line, item, above);
}

/** A thread and the hole of its tap drill on lines of their own, the lower one without a quantity. */
function pairs(line: Line, item: readonly Line[], above: readonly Feature[]): boolean {
  if (line.tokens.some((t) => t.kind === "times" || t.kind === "count")) return false;
  const below = featuresOf(line.tokens).flatMap((g) => g.features);
  const holes = above.filter((f) => !["counterbore", "spotface", "countersink"].includes(f.kind));
  const both = [...holes, ...below];
  if (holes.length !== 1 || below.length !== 1 || both.filter((f) => f.thread).length !== 1) return false;
  const thread = both.find((f) => f.thread)!.thread!.thread;
  const hole = both.find((f) => !f.thread)!;
  if (!thread || thread.kind === "external" || !["hole", "drill", "pilot"].includes(hole.kind) || !hole.diameter)
    return false;
  const said = unitsOf(featuresOf(tokensIn([...item, line])), undefined).units;
  if (said !== thread.native) return false;
  const percent = (thread.major - hole.diameter.value) / (1.299 * thread.pitch);
  return percent > 0.4 && percent < 1;
}

function tokensIn(lines: readonly Line[]): Placed[] {
  return lines.flatMap((line, i) => [
    ...(i > 0 ? [{ kind: "separator", at: 0, end: 0, line: line.number } as const] : []),
    ...line.tokens,
  ]);
}

function itemRows(lines: readonly Line[], options: CalloutOptions): CalloutRow[] {
  const tokens = tokensIn(lines);
  const groups = featuresOf(tokens);
  const text = lines.map((l) => l.original.trim()).join("\n");
  const source = { line: lines[0]!.number, text };
  const named: CalloutCells = { Material: options.material ?? null, Machine: options.machine ?? null };
  const units = unitsOf(groups, options.units);
  const joined =
    lines.length > 1
      ? `lines ${lines[0]!.number} to ${lines[lines.length - 1]!.number} read as one callout`
      : undefined;
  const feature = text.replace(/\s*\n\s*/g, " · ");
  const rows: CalloutRow[] = [];
  const left: Placed[] = [];
  for (const group of groups) {
    const made = rowsOf(group, units.units, { Feature: feature, ...named });
    left.push(...made.left);
    for (const { cells, understood, notes } of made.rows) {
      const note = [...new Set([...notes, units.note, joined].filter((n) => n !== undefined))].join("; ");
      rows.push({ cells, source, understood: understood && units.understood, note });
    }
  }
  if (rows.length === 0) {
    const note = "not understood: no hole, thread or seat with a size was found";
    return [{ cells: { Feature: feature, Operation: null, ...named }, source, understood: false, note }];
  }
  const rest = leftover(left, lines);
  if (rest !== "") {
    const note = `not understood: this part of "${feature}"`;
    rows.push({ cells: { Feature: rest, Operation: null, ...named }, source, understood: false, note });
  }
  return rows;
}

/** The text of tokens that found no place, neighbours together, as it was pasted. */
function leftover(left: readonly Placed[], lines: readonly Line[]): string {
  const sorted = [...left].sort((a, b) => a.line - b.line || a.at - b.at);
  const parts: { line: number; at: number; end: number }[] = [];
  for (const { line, at, end } of sorted) {
    const last = parts[parts.length - 1];
    const original = lines.find((l) => l.number === line)!.original;
    if (
      last?.line === line &&
      /^[\s,;:()./-]*(?:and|on|an?|the|of|at|for|with|holes?)?\s*$/i.test(original.slice(last.end, at))
    )
      last.end = end;
    else parts.push({ line, at, end });
  }
  return parts
    .map((p) =>
      lines
        .find((l) => l.number === p.line)!
        .original.slice(p.at, p.end)
        .trim(),
    )
    .join(" … ");
}

/**
 * The rows as a block of cells under the given headings (canonical or any other spelling the planning table knows),
 * without the heading row. Lengths go under a heading that carries its own unit ("Dia (mm)") in that unit.
 */
export function calloutBlock(rows: readonly CalloutRow[], headings: readonly unknown[]): CalloutCell[][] {
  const matches = matchHeadings(headings, ROW_COLUMNS);
  return rows.map(({ cells }) => {
    const line: CalloutCell[] = headings.map(() => null);
    const units = cells.Units;
    for (const { at, column, units: own } of matches) {
      const value = (cells as Readonly<Record<string, CalloutCell | undefined>>)[column.heading] ?? null;
      const convert =
        typeof value === "number" && column.dimension === "length" && own !== undefined && units && own !== units;
      line[at] = convert ? Number((own === "mm" ? value * 25.4 : value / 25.4).toPrecision(12)) : value;
    }
    return line;
  });
}
