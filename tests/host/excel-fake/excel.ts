/**
 * A strict stand-in for the parts of Excel's API that the host uses. What a lenient one would let pass fails here:
 * reading what was not loaded or synced, members that do not exist or are newer than the version, wrong shapes,
 * touching what may be missing before asking. Text is taken the way Excel takes it ("1/2" becomes a date). Batches
 * that fail leave what they had done; formulas spill and stop at what is in the way; fixed arrays cannot be changed in
 * part; tables fill their columns and have totals; filters, merged cells and protection get in the way.
 */
import type { CellValue, Place } from "../../../taskpane/host/host.ts";
import { isArea, tableArea } from "./cells.ts";
import { KINDS } from "./kinds.ts";
import { insertRows, moveCells } from "./moves.ts";
import { object } from "./proxy.ts";
import {
  type Area,
  type EventName,
  FakeError,
  type FakeSheet,
  type FakeTable,
  type Fault,
  type Listener,
  type Op,
} from "./types.ts";

export class FakeExcel {
  version = "1.17";
  sheets: FakeSheet[] = [];
  tables: FakeTable[] = [];
  active = 0;
  cursor = { row: 0, column: 0 };
  structureProtected = false;
  /** Settings of the document, by key. */
  settings = new Map<string, { readonly key: string; readonly value: unknown }>();
  editing: Promise<void> | undefined;
  /** Page layout fails, as it does on computers without a printer. */
  printerless = false;
  /** The fault to come. */
  fault: Fault | undefined;
  /** What others do between two syncs: run before the sync of that number, counted from now on; the next is 1. */
  between = new Map<number, () => void>();
  /** What a formula answers: a value, or rows of values that spill. Without an answer it shows 0. */
  calculate: ((formula: string, cell: Readonly<Place>) => CellValue | CellValue[][] | undefined) | undefined;
  /** Ranges move with what happens around them. */
  follows = true;
  /** Formulas of tables run down their column, as they do until a person switches it off. */
  autoFill = true;
  /** A recalculation is told after each write, and later than the write's own events. */
  recalculates = false;
  syncs = 0;
  /** Queued operations of each sync, and how many bytes went and came. */
  batches: { readonly ops: number; readonly writes: readonly number[]; request: number; response: number }[] = [];
  suspended: string[] = [];
  runs: Record<string, unknown>[] = [];
  listeners: Record<EventName, Set<Listener>> = {
    selection: new Set(),
    activated: new Set(),
    changed: new Set(),
    calculated: new Set(),
  };
  #saved: unknown[] = [];
  #made = 0;
  /** Who listens to the pane being opened and closed. */
  readonly visibility = new Set<(message: { visibilityMode: string }) => void>();
  /** The person opens or closes the pane; its page lives on. */
  pane(mode: "Taskpane" | "Hidden"): void {
    for (const listener of this.visibility) listener({ visibilityMode: mode });
  }

  addSheet(name: string, grid: readonly (readonly CellValue[])[] = []): FakeSheet {
    const sheet: FakeSheet = {
      id: `{sheet ${++this.#made}}`,
      name,
      cells: new Map(),
      protected: false,
      filtered: false,
      hidden: new Set(),
      merged: [],
      frozen: 0,
      validations: [],
      charts: [],
      page: {},
      bold: [],
    };
    grid.forEach((row, r) => {
      row.forEach((value, c) => {
        if (value !== null) sheet.cells.set(`${r},${c}`, { value });
      });
    });
    this.sheets.push(sheet);
    return sheet;
  }
  addTable(name: string, sheet: FakeSheet, top: number, left: number, rows: number, columns: number): FakeTable {
    const table = { name, sheet, top, left, rows, columns, totals: false, filtered: false };
    this.tables.push(table);
    return table;
  }
  sheet(name: string): FakeSheet | undefined {
    return this.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  }
  since(version: string): void {
    const [a = 0, b = 0] = version.split(".").map(Number);
    const [c = 0, d = 0] = this.version.split(".").map(Number);
    if (a > c || (a === c && b > d)) throw new FakeError("ApiNotFound", `needs ExcelApi ${version}`);
  }
  fire(name: EventName, event: Record<string, unknown>, turns = 0): void {
    if (turns > 0) setTimeout(() => this.fire(name, event, turns - 1), 0);
    else for (const listener of this.listeners[name]) setTimeout(() => void listener(event), 0);
  }
  /**
   * A range that a batch holds on to moves with what happens around it until its run ends (documentation of
   * TrackedObjects: "automatic adjustment based on surrounding changes in the document").
   */
  track(target: unknown): void {
    if (this.follows && isArea(target)) this.#held.push(target);
  }
  #held: Area[] = [];
  /** Whole rows come in: what stands below moves, ranges grow, formulas follow. */
  insertRows(sheet: FakeSheet, at: number, count: number, who: "user" | "remote" = "remote"): void {
    insertRows(this, this.#held, sheet, at, count);
    this.changed(who);
  }
  /** Somebody cuts a table out and puts it elsewhere. */
  moveTable(name: string, down: number, right: number): void {
    const table = this.tables.find((one) => one.name === name)!;
    moveCells(this.#held, tableArea(table), down, right);
    table.top += down;
    table.left += right;
    this.changed("remote");
  }
  /** A change as `who` makes it; with a place, of these cells alone. */
  changed(who: "user" | "remote" | "add-in", place?: { readonly sheet: FakeSheet; readonly address: string }): void {
    if (this.recalculates) this.fire("calculated", {}, 20);
    const where = place && { worksheetId: place.sheet.id, address: place.address, changeType: "RangeEdited" };
    const [, minor = 0] = this.version.split(".").map(Number);
    const trigger = minor < 14 ? undefined : who === "add-in" ? "ThisLocalAddin" : "Unknown";
    this.fire("changed", { source: who === "remote" ? "Remote" : "Local", triggerSource: trigger, ...where });
  }

  install(): void {
    this.#saved = [(globalThis as any).Excel, (globalThis as any).Office];
    const fake = this;
    Object.assign(globalThis, {
      Office: {
        HostType: { Excel: "Excel" },
        VisibilityMode: { hidden: "Hidden", taskpane: "Taskpane" },
        addin: {
          async onVisibilityModeChanged(listener: (message: { visibilityMode: string }) => void) {
            fake.visibility.add(listener);
            return async () => void fake.visibility.delete(listener);
          },
        },
        onReady: async () => ({ host: "Excel" }),
        context: {
          officeTheme: undefined,
          requirements: {
            isSetSupported(set: string, version: string) {
              if (set !== "ExcelApi") return set === "SharedRuntime" || set === "CustomFunctionsRuntime";
              try {
                fake.since(version);
                return true;
              } catch {
                return false;
              }
            },
          },
        },
      },
      Excel: {
        async run(first: any, second?: any) {
          const batch = second ?? first;
          const options = second === undefined || first?.ops !== undefined ? {} : first;
          fake.runs.push(options);
          if (fake.editing) {
            if (!options.delayForCellEdit)
              throw new FakeError("InvalidOperationInCellEditMode", "a cell is being edited");
            await fake.editing;
          }
          const context = first?.ops !== undefined ? first : new FakeContext(fake);
          try {
            return await batch(context.face);
          } finally {
            fake.#held = [];
          }
        },
      },
    });
  }
  uninstall(): void {
    Object.assign(globalThis, { Excel: this.#saved[0], Office: this.#saved[1] });
  }
}

/** The web version refuses requests and answers beyond this (Resource limits for Office Add-ins). */
const PAYLOAD = 5 * 1024 * 1024;

export class FakeContext {
  ops: Op[] = [];
  #answer = 0;
  readonly fake: FakeExcel;
  /** What the code under test sees. */
  readonly face: any;
  constructor(fake: FakeExcel) {
    this.fake = fake;
    this.face = {
      ops: this.ops,
      sync: () => this.sync(),
      workbook: object(this, KINDS.workbook!, () => fake),
      application: object(this, KINDS.application!, () => fake),
    };
    this.face.face = this.face;
  }
  look(run: () => void): void {
    this.ops.push({ run, writes: false, bytes: 60 });
  }
  change(run: () => void, content: unknown): void {
    this.ops.push({ run, writes: true, bytes: 60 + bytesOf(content) });
  }
  answered(value: unknown): void {
    this.#answer += bytesOf(value);
  }

  /**
   * What was queued is done in order up to the first fault, and stays done: a batch that fails is not rolled back
   * (Microsoft's notes on error handling name the failing statement; that nothing before it is undone is from memory).
   */
  async sync(): Promise<void> {
    const { fake } = this;
    fake.syncs++;
    const ops = this.ops.splice(0);
    await Promise.resolve();
    const others = fake.between.get(1);
    fake.between = new Map([...fake.between].flatMap(([n, act]) => (n > 1 ? [[n - 1, act] as const] : [])));
    others?.();
    const fault = fake.fault;
    if (fault !== undefined) {
      const times = (fault.times ?? 1) - (fault.sync === 1 ? 1 : 0);
      fake.fault = times === 0 ? undefined : { ...fault, times, sync: Math.max(1, fault.sync - 1) };
    }
    const breaks = fault?.sync === 1 ? fault.at : undefined;
    const broken = () => new FakeError(fault?.code ?? "GeneralException", "as the test wants it");
    const request = ops.reduce((sum, op) => sum + op.bytes, 0);
    const batch = {
      ops: ops.length,
      writes: ops.flatMap((op, i) => (op.writes ? [i] : [])),
      request,
      response: 0,
    };
    fake.batches.push(batch);
    if (breaks === "request") throw broken();
    if (request > PAYLOAD) throw new FakeError("RequestPayloadSizeLimitExceeded", `${request} bytes`);
    this.#answer = 0;
    for (const [i, op] of ops.entries()) {
      if (breaks === i) throw broken();
      op.run();
    }
    batch.response = this.#answer;
    if (breaks === "response" || (typeof breaks === "number" && breaks >= ops.length)) throw broken();
    if (this.#answer > PAYLOAD) throw new FakeError("ResponsePayloadSizeLimitExceeded", `${this.#answer} bytes`);
  }
}

const bytesOf = (value: unknown): number => {
  try {
    return Buffer.byteLength(JSON.stringify(value) ?? "");
  } catch {
    return 0;
  }
};
