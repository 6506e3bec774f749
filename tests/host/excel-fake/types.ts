/** What the stand-in for Excel is made of: cells, sheets, tables, and the kinds of objects that its API shows. */
import type { CellValue } from "../../../taskpane/host/host.ts";
import type { FakeExcel } from "./excel.ts";

export interface Cell {
  value: CellValue;
  formula?: string;
  format?: string;
  /** Key of the cell whose formula spills into this one. */
  spill?: string;
  /** Fixed array that was entered over several cells at once; each of them shows its formula. */
  array?: string;
  /** False for a cell that may be written on a protected sheet. */
  locked?: false;
}
export interface FakeTable {
  name: string;
  sheet: FakeSheet;
  top: number;
  left: number;
  /** Rows of data, without headings and totals. */
  rows: number;
  columns: number;
  totals: boolean;
  /** A filter hides rows of it. */
  filtered: boolean;
}
export interface FakeSheet {
  /** What events call it; stays when it is renamed. */
  readonly id: string;
  name: string;
  cells: Map<string, Cell>;
  protected: boolean;
  /** A filter of the sheet hides rows. */
  filtered: boolean;
  hidden: Set<number>;
  merged: Area[];
  frozen: number;
  validations: { row: number; column: number; rows: number; rule: unknown }[];
  charts: FakeChart[];
  page: { area?: Area; titleRows?: string; across?: number };
  bold: Area[];
}
export interface FakeChart {
  readonly type: string;
  readonly values: Area;
  names?: Area;
  title?: string;
  legend: boolean;
  fromTop: boolean;
  at?: Area;
}
/** What was queued: done at the sync, in order. */
export interface Op {
  readonly run: () => void;
  /** True for what changes the workbook. */
  readonly writes: boolean;
  /** Bytes of the request. */
  readonly bytes: number;
}
/** Where a batch breaks off, and how. */
export interface Fault {
  /** Which sync from now on: the next is 1. */
  readonly sync: number;
  /** Before anything is done; when all of it is done and the answer is lost; or at an operation, from 0. */
  readonly at: "request" | "response" | number;
  readonly code?: string;
  /** How many syncs in a row break off so; 1 unless said. */
  readonly times?: number;
}
export interface Area {
  sheet: FakeSheet;
  row: number;
  column: number;
  rows: number;
  columns: number;
}
export type EventName = "selection" | "activated" | "changed" | "calculated";
export type Listener = (event: Record<string, unknown>) => Promise<void>;

export class FakeError extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}
export const bad = (message: string) => new FakeError("InvalidArgument", message);

/** How the table collection sees the area of a range object. */
export const AREA = Symbol("area");

export interface Kind {
  readonly name: string;
  readonly props?: Record<
    string,
    { get?: (t: any, f: FakeExcel) => unknown; set?: (t: any, value: any, f: FakeExcel) => void; since?: string }
  >;
  readonly navs?: Record<string, { kind: string; find: (t: any, f: FakeExcel) => unknown; since?: string }>;
  readonly methods?: Record<
    string,
    {
      since?: string;
      /** What the call answers: an object found at the sync, which may be missing when `nullable`. */
      gives?: string;
      /** The call that gives it changes the workbook. */
      writes?: boolean;
      nullable?: boolean;
      do: (t: any, f: FakeExcel, args: any[]) => unknown;
      check?: (args: any[]) => boolean;
    }
  >;
  readonly events?: Record<string, { name: EventName; since: string }>;
  /** For collections whose items can be loaded. */
  readonly items?: { kind: string; list: (t: any, f: FakeExcel) => unknown[] };
}
