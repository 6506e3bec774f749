/** What a quote holds. Times are seconds and money is in the list's currency, both for one part unless said otherwise. */
import type { Verdict } from "../words/worded.ts";

export interface QuoteOptions {
  /** Parts per batch for every row; without it each row's own Batch counts. */
  readonly batch?: number;
  /** Text for the currency of the lists, e.g. "EUR". */
  readonly currency?: string;
  /** Rows by place in the table that are left out of the total, with the reason. */
  readonly leave?: ReadonlyMap<number, string>;
}

/** What the time of a part goes into. */
export interface Spent {
  readonly cutting: number;
  readonly moving: number;
  readonly waiting: number;
  readonly change: number;
  readonly setup: number;
}

/** What the money of a part goes into. */
export interface Paid extends Spent {
  readonly tool: number;
}

/** One row of the table as the quote counts it. */
export interface QuoteRow {
  /** Place in the table, from 0. */
  readonly at: number;
  readonly name: string;
  readonly operation: string;
  readonly feature?: string;
  readonly tool: string;
  readonly machine: string;
  readonly verdict: Verdict;
  /** The weightiest reason. */
  readonly reason?: string;
  readonly quantity: number;
  readonly batch?: number;
  readonly time: Spent;
  readonly seconds: number;
  /** Cutting time at the programmed feed without acceleration. */
  readonly ideal: number;
  /** Undefined where the machine has no rate. */
  readonly paid?: Paid;
  readonly money?: number;
  /** Edges used up per part; undefined where no tool life is known. */
  readonly edges?: number;
  /** What the row's own Time and Cost say. */
  readonly own: { readonly seconds: number; readonly money?: number };
}

/** Rows that have something in common; the groups of a kind add up to the total. */
export interface QuoteGroup {
  readonly name: string;
  readonly rows: number;
  /** Features: the sum of the quantities. */
  readonly features: number;
  readonly seconds: number;
  readonly cutting: number;
  readonly money?: number;
  /** Of the total money; of the total time where the quote has no money. */
  readonly share: number;
}

export interface QuoteTool extends QuoteGroup {
  readonly toolMoney?: number;
  /** Edges used up per part by the rows with a known life; undefined where there are none. */
  readonly edges?: number;
  /** Parts that one edge makes, not rounded. */
  readonly partsPerEdge?: number;
  readonly rowsWithoutLife: number;
  /** For the batch, rounded up; undefined without a batch. */
  readonly edgesForBatch?: number;
  readonly toolsForBatch?: number;
  /** Price of the tools for the batch. */
  readonly bought?: number;
}

export interface LeftOut {
  readonly at: number;
  readonly name: string;
  readonly reason: string;
}

/** A quantity at 10 %, at its nominal and at 90 %. */
export interface Band {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

export interface QuoteSummary {
  readonly currency?: string;
  /** The batch of all counted rows; undefined when they have none, or not the same. */
  readonly batch?: number;
  readonly rows: readonly QuoteRow[];
  readonly time: Spent;
  readonly seconds: number;
  /** Undefined where no counted row has a rate. */
  readonly paid?: Paid;
  readonly money?: number;
  /** Tool changes of a part, and how many fewer than one per row. */
  readonly changes: number;
  readonly changesSaved: number;
  /** Cutting time that is lost to acceleration, and its share of the time without setup. */
  readonly acceleration: { readonly seconds: number; readonly share: number };
  readonly operations: readonly QuoteGroup[];
  readonly tools: readonly QuoteTool[];
  readonly machines: readonly QuoteGroup[];
  /** Up to five rows that cost most; that take longest where the quote has no money. */
  readonly dearest: readonly QuoteRow[];
  /** Rows that are not in the total. */
  readonly leftOut: readonly LeftOut[];
  /** Rows whose time is in the total and whose money is not. */
  readonly unpriced: readonly QuoteRow[];
  /** Rows in the total that the plan stops, or wants looked at. */
  readonly stops: readonly QuoteRow[];
  readonly checks: readonly QuoteRow[];
  readonly secondsBand: Band;
  readonly moneyBand?: Band;
  /** What the rows' own columns add up to. */
  readonly own: { readonly seconds: number; readonly money?: number };
  /** What was assumed and what is not in it, as sentences. */
  readonly assumptions: readonly string[];
}
