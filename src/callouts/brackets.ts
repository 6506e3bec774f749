/** Brackets of a callout, sizes that are written once more in them, and what stands around a place. */
import type { Units } from "../units.ts";
import { Cursor, isMark } from "./cursor.ts";
import { OPERATION } from "./marks.ts";
import type { Feature, Group, Placed, Size } from "./types.ts";

export const newGroup = (): Group => ({ times: [], counts: [], features: [], notes: [], asks: [], left: [] });

/** A size and the one in brackets behind it differ by rounding only up to this share. */
const SAME_SIZE = 0.004;

export class Brackets extends Cursor {
  protected readonly groups: Group[] = [newGroup()];
  /** Only separators, tolerances and the size once more stand between the feature's diameter and here. */
  protected sized = false;
  /** Round and square brackets that are open here, and whether the last one opened right behind a size. */
  protected readonly open: { readonly sign: string; readonly behind: Size | undefined }[] = [];

  protected get group(): Group {
    return this.groups[this.groups.length - 1]!;
  }
  protected get feature(): Feature | undefined {
    return this.group.features[this.group.features.length - 1];
  }
  protected bracket(sign: string | undefined): void {
    if (sign === "(" || sign === "[") {
      const before = this.tokens[this.at - 1];
      const { feature } = this;
      const sizes = [feature?.diameter, feature?.depth];
      const size = before?.kind === "length" ? sizes.find((s) => s === before.size) : undefined;
      // "⌀.098 THRU ALL (#40)": behind THRU the bracket goes on about the diameter.
      const through = isMark(before, "through") && feature?.depth === undefined ? feature?.diameter : undefined;
      this.open.push({ sign, behind: this.onlySize() ? (size ?? through) : undefined });
    } else if (sign === ")" || sign === "]") {
      const last = this.open.pop();
      if (last === undefined) this.group.asks.push({ code: "bracket-not-opened" });
    }
  }

  /** The bracket that opens here holds one size and nothing else. */
  protected onlySize(): boolean {
    const at = isMark(this.peek(), "diameter") ? 2 : 1;
    const close = this.peek(at + 1);
    return this.bare(at) && close?.kind === "separator" && (close.sign === ")" || close.sign === "]");
  }

  /** "⌀.250 THRU ±.005": only THRU stands between the size and here. */
  protected behindThrough(): boolean {
    let at = this.at - 1;
    while (this.tokens[at]?.kind === "separator") at--;
    return isMark(this.tokens[at], "through") && this.feature?.depth === undefined;
  }

  /** A size in brackets behind a size: the same once more, in words, figures or the other system, or a contradiction. */
  protected again(token: Placed, size: Size, known: Size): void {
    const feature = this.feature!;
    const is = (ratio: number) => Math.abs(size.value / known.value / ratio - 1) < SAME_SIZE;
    const set = (units: Units) => {
      const told = { ...known, units };
      if (feature.diameter === known) feature.diameter = told;
      if (feature.depth === known) feature.depth = told;
    };
    this.sized = feature.diameter === known;
    if (is(1)) return;
    if (known.units === undefined && is(25.4)) set("in");
    else if (known.units === undefined && is(1 / 25.4)) set("mm");
    else if (!(known.units === "in" && is(25.4)) && !(known.units === "mm" && is(1 / 25.4)))
      this.group.left.push(token);
  }

  /** A number that opens the callout and is followed by what only a hole has. */
  protected plainHole(): boolean {
    if (this.group.features.length > 0) return false;
    const before = this.tokens[this.at - 1];
    if (before && !["separator", "filler", "times", "count"].includes(before.kind)) return false;
    let ahead = 1;
    while (this.peek(ahead)?.kind === "filler") ahead++;
    // "27/64 (.4219) THRU"
    const sign = (token: Placed | undefined) => (token?.kind === "separator" ? token.sign : undefined);
    if (sign(this.peek(ahead)) === "(" && this.bare(ahead + 1) && sign(this.peek(ahead + 2)) === ")") ahead += 3;
    const next = this.peek(ahead);
    // "20 ±0.1" is a distance; ".250 +.001/-.000 REAM" is a hole.
    if (next?.kind === "tolerance") {
      const after = this.peek(ahead + 1);
      return after?.kind === "mark" && OPERATION[after.mark] !== undefined;
    }
    return next?.kind === "fit" || isMark(next, "through", "depth symbol", "tap");
  }

  /** "#7 (.201)": the size of a named drill, written once more. */
  protected repeats(size: Size): boolean {
    const named = this.feature?.drill !== undefined ? this.feature.diameter : undefined;
    return named !== undefined && Math.abs(named.value - size.value) < 0.0006;
  }
}
