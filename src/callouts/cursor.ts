/** A place in the tokens of a callout, and what can be seen from there. */

import { OPERATION } from "./marks.ts";
import type { Content, Feature, Mark, Placed, Size } from "./types.ts";

export const isMark = (token: Content | undefined, ...marks: Mark[]): boolean =>
  token?.kind === "mark" && marks.includes(token.mark);

export const needsDiameter = (feature: Feature): boolean => feature.kind !== "thread" && feature.diameter === undefined;

export class Cursor {
  protected at = 0;

  constructor(protected readonly tokens: readonly Placed[]) {}

  protected peek(ahead = 1): Placed | undefined {
    return this.tokens[this.at + ahead];
  }

  /** The token stands right behind that size (a bracket may open between). */
  protected rightBehind(token: Placed, size: Size | undefined): boolean {
    const before = this.tokens
      .slice(0, this.tokens.indexOf(token))
      .filter((t) => t.kind !== "separator")
      .pop();
    return before?.kind === "length" && before.size === size;
  }

  /** Whether the operation word `ahead` of here brings its own diameter behind it. */
  protected ownDiameter(ahead: number): boolean {
    for (let i = ahead + 1; ; i++) {
      const token = this.peek(i);
      if (!token) return false;
      if (token.kind === "filler" || token.kind === "angle") continue;
      if (isMark(token, "by")) continue;
      if (isMark(token, "diameter", "diameter word")) return true;
      if (token.kind !== "length") return false;
      const after = this.peek(i + 1);
      if (after?.kind === "mark" && OPERATION[after.mark]) return false;
      return !isMark(after, "depth") || this.bare(i + 2);
    }
  }

  /** How far ahead the word for depth stands behind the number here ("DEEP", "MIN DEEP"); 0 where it does not. */
  protected depthWord(): number {
    const at = isMark(this.peek(), "least", "most") ? 2 : 1;
    return isMark(this.peek(at), "depth") ? at : 0;
  }

  /** A bare length stands that far ahead: what precedes it is a prefix. */
  protected bare(ahead: number): boolean {
    return this.peek(ahead)?.kind === "length";
  }

  /** The circle's own size stands behind its word: "⌀7 BC ⌀100", "⌀7 BC 100". A bolt circle is larger than its holes. */
  protected circleBehind(hole: Size): boolean {
    const token = this.peek(isMark(this.peek(2), "diameter") ? 3 : 2);
    return token?.kind === "length" && token.size.value > hole.value;
  }
}
