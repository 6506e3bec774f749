/** What a language has to say for the reader of callouts: regular expressions, without anchors, for any letter case. */
import type { Mark } from "../types.ts";

export interface Words {
  /** In the order in which they are tried. */
  readonly marks: readonly (readonly [source: string, mark: Mark])[];
  /** Nouns that make a number in front of them a quantity: 4 HOLES, 4 箇所. */
  readonly counted: readonly string[];
  /** Words that make a number behind them a quantity: QTY 4. */
  readonly quantity?: readonly string[];
  /** Words without a meaning of their own between these. */
  readonly fillers?: readonly string[];
}
