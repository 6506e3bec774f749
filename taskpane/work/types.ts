/** What the pane knows, and what it is asked to do: the shapes that session, commands and screen share. */
import type { CalloutRow } from "../../src/callouts/callouts.ts";
import type { Choice } from "../../src/quote/compare.ts";
import type { QuoteOptions } from "../../src/quote/types.ts";
import { normalHeading } from "../../src/table/columns.ts";
import type { Units } from "../../src/units.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import type { Beside, Block, CellValue, NewSheet, Place, Table } from "../host/host.ts";
import type { Message } from "../ui/message.ts";
import { BASIS, type HandMatches, type Matching } from "./planning.ts";
import type { Store } from "./state.ts";

export const LISTS = ["Materials", "Tools", "Machines"] as const;

export interface PlanBlocks {
  readonly rows: CellValue[][];
  readonly materials: CellValue[][];
  readonly tools: CellValue[][];
  readonly machines: CellValue[][];
}

/**
 * Plans a table, a line per row (none for an empty row); `only` asks for one row and may leave the others out.
 * Injected, so that the session can be tried without the trade.
 */
export type Planner = (blocks: PlanBlocks, only?: number) => readonly (RowPlan | undefined)[];

/** A change that would help a row; `writes` holds inputs by key, numbers in canonical units. */
export interface Suggestion {
  readonly change: string;
  readonly before: string;
  readonly after: string;
  readonly writes: readonly { readonly key: string; readonly value: number | string | null }[];
}

/** Looks for changes that would help one row, in short steps. */
export type Advisor = (blocks: PlanBlocks, only: number) => Generator<void, readonly Suggestion[]>;

export interface State {
  readonly phase: "reading" | "none" | "table";
  readonly table: Table | null;
  readonly matching: Matching | null;
  readonly byHand: HandMatches;
  /** How much a row looks like headings, by what is known of this workbook. */
  readonly score: (headings: readonly CellValue[]) => number;
  /** Units a person chose for a table that does not say them. */
  readonly asked: Units | undefined;
  readonly lists: readonly (Block | null)[];
  /** Results that stand beside the table already: numbers of an earlier fill, or a live block. */
  readonly beside: Beside | null;
  readonly plan: RowPlan | null;
  readonly suggestions: readonly Suggestion[];
  /** The table that a quote was written from, to go back to. */
  readonly from: Place | null;
  readonly message: Message | undefined;
  readonly busy: boolean;
}

export interface Session {
  readonly store: Store<State>;
  /** From now on what the pane shows is read, and read again as it changes, whenever the pane is to be seen. */
  open(): void;
  /** Reads everything again. */
  refresh(): Promise<void>;
  setUnits(units: Units): void;
  match(index: number, key: string): void;
  /** The selected row holds the headings of the table, whatever they look like. */
  pointAtHeadings(): Promise<void>;
  writeNumbers(): Promise<void>;
  insertLive(): Promise<void>;
  workOut(): Promise<void>;
  apply(suggestion: Suggestion): Promise<void>;
  /** Adds rows read from a drawing under the table; answers whether they were written. */
  addCallouts(callouts: readonly CalloutRow[]): Promise<boolean>;
  /** Puts the quote of the whole table on a sheet of its own. */
  writeQuote(options: QuoteOptions): Promise<void>;
  /** Puts the same rows on two machines, or in two materials, side by side on a sheet of their own. */
  writeComparison(choice: Choice, options: QuoteOptions): Promise<void>;
  addLists(starting: readonly NewSheet[]): Promise<void>;
  addTable(sheet: NewSheet): Promise<void>;
  /** Puts the card of the selected row on a sheet, to be printed by the spreadsheet program. */
  addCard(lines: readonly (readonly [string, string])[]): Promise<void>;
  /** Shows the table again that the last quote was written from. */
  goBack(): Promise<void>;
  say(message: Message | undefined): void;
  destroy(): void;
}

/**
 * What stands one column beside the table: a live block is told by the formula in its first cell, whatever it shows;
 * numbers of a fill by the basis they carry. Anything else is the user's own.
 */
export function besideKind(beside: Beside | null): "none" | "live" | "numbers" | "other" {
  if (beside === null) return "none";
  if (beside.formula !== "") return /\bCUT[._]PLAN\(/i.test(beside.formula) ? "live" : "other";
  return beside.headings.some((heading) => normalHeading(heading) === normalHeading(BASIS)) ? "numbers" : "other";
}
