/** What the stand-in for Excel is made of: cells, sheets, tables, and the kinds of objects that its API shows. */
import type { CellValue } from "../../../taskpane/host/host.ts";
import type { FakeExcel } from "./excel.ts";

export interface Cell {
  value: CellValue;
  formula?: string;
  format?: string;
}
export interface FakeTable {
  name: string;
  sheet: FakeSheet;
  top: number;
  left: number;
  rows: number;
  columns: number;
}
export interface FakeSheet {
  name: string;
  cells: Map<string, Cell>;
  protected: boolean;
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
    { get?: (t: any) => unknown; set?: (t: any, value: any, f: FakeExcel) => void; since?: string }
  >;
  readonly navs?: Record<string, { kind: string; find: (t: any, f: FakeExcel) => unknown; since?: string }>;
  readonly methods?: Record<
    string,
    {
      since?: string;
      /** What the call answers: an object found at the sync, which may be missing when `nullable`. */
      gives?: string;
      nullable?: boolean;
      do: (t: any, f: FakeExcel, args: any[]) => unknown;
      check?: (args: any[]) => boolean;
    }
  >;
  readonly events?: Record<string, { name: EventName; since: string }>;
  /** For collections whose items can be loaded. */
  readonly items?: { kind: string; list: (t: any) => unknown[] };
}
