/** The lines of pasted text: what each holds, and which of them are one callout. */
import { featuresOf } from "./features.ts";
import { mend } from "./misread.ts";
import { frameAt, type OtherKind, otherKind } from "./others.ts";
import type { Remark } from "./remarks/remark.ts";
import { tokensOf } from "./text.ts";
import type { Feature, Mark, Placed } from "./types.ts";
import { unitsOf } from "./units.ts";

export interface Line {
  readonly number: number;
  readonly original: string;
  readonly bulleted: boolean;
  readonly tokens: readonly Placed[];
  readonly notes: readonly Remark[];
}

/** Bullets, numbering and the quote marks of letters. "(4)" is a quantity, not a number of the list. */
const BULLET = /^(?:[\s>]*(?:[-*•·▪◦‣–—]\s+|\d{1,3}[.)](?:\s|(?=[⌀M#]))\s*|[a-z][.)]\s+|\d{1,3}\t)|[\s>]+)/i;

/** No callout is longer. */
export const LONGEST_LINE = 500;

/** `halfAbove`: the line above ends in one side of a tolerance, so that a leading dash is the sign of the other. */
export function readLine(
  original: string,
  number: number,
  halfAbove: boolean,
): { line?: Line; rest?: string; what?: OtherKind } {
  if (original.trim().replace(/\s+/g, " ").length > LONGEST_LINE)
    return { line: { number, original, bulleted: true, tokens: [], notes: [{ code: "too-long" }] } };
  const bullet =
    halfAbove && /^\s*[+-]/.test(original) ? "" : (BULLET.exec(original.slice(0, LONGEST_LINE))?.[0] ?? "");
  const { line, notes } = mend(" ".repeat(bullet.length) + original.slice(bullet.length));
  const what = otherKind(line.text) ?? (bullet.trim() === "" ? undefined : otherKind(mend(original).line.text));
  if (what) return { rest: original.trim(), what };
  const frame = frameAt(line.text);
  const body = frame < 0 ? line.text : line.text.slice(0, frame);
  const rest = frame < 0 ? undefined : original.slice(line.stretch(frame, frame + 1).at).trim();
  const tokens = tokensOf(body).map((t) => ({ ...t, ...line.stretch(t.at, t.end), line: number }));
  const bulleted = bullet.trim().replace(/>/g, "") !== "";
  return { line: { number, original, bulleted, tokens, notes }, rest, what: "tolerance frame" };
}

/** Marks that go on with a callout when a line starts with them. */
const GOES_ON = new Set([
  ...["counterbore", "spotface", "countersink", "counterdrill", "depth symbol", "depth", "hole depth", "through"],
  ...["equally", "typical", "far", "near", "both", "least", "circle", "spaced", "left", "right", "insert"],
]);

const SIGNS = new Set<Mark>(["diameter", "diameter word", "depth symbol", "depth", "through"]);

export function continues(line: Line, item: readonly Line[]): boolean {
  const above = featuresOf(tokensIn(item)).flatMap((g) => g.features);
  const times = (lines: readonly Line[]) =>
    lines.every((l) => l.tokens.every((t) => t.kind === "times" || t.kind === "count"));
  if (above.length === 0)
    return times(item) && !line.tokens.some((t) => t.kind === "times" || t.kind === "count") && item.length === 1;
  const first = line.tokens.find((t) => t.kind !== "separator" && t.kind !== "filler");
  if (first === undefined) return true;
  if (first.kind === "mark" && GOES_ON.has(first.mark)) return true;
  // "X 20 DEEP" goes on; a bare "X 15.000" may be anything.
  const marks = line.tokens.filter((t) => t.kind === "mark").map((t) => t.mark);
  if (first.kind === "mark" && first.mark === "by" && (marks.includes("depth") || marks.includes("depth symbol")))
    return true;
  if (first.kind === "count" || first.kind === "tolerance") return true;
  // A sign that was not read, with a size behind it: the callout above may be different for it.
  if (first.kind === "unknown" && line.tokens.some((t) => t.kind === "mark" && SIGNS.has(t.mark))) return true;
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

export function tokensIn(lines: readonly Line[]): Placed[] {
  return lines.flatMap((line, i) => [
    ...(i > 0 ? [{ kind: "separator", at: 0, end: 0, line: line.number } as const] : []),
    ...line.tokens,
  ]);
}
