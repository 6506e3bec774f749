/**
 * A strict stand-in for the parts of Excel's API that the host uses. What a lenient one would let pass fails here:
 * reading what was not loaded or synced, members that do not exist or are newer than the version, wrong shapes,
 * touching what may be missing before asking. Text is taken the way Excel takes it ("1/2" becomes a date).
 */
import type { CellValue } from "../../../taskpane/host/host.ts";
import { KINDS } from "./kinds.ts";
import { object } from "./proxy.ts";
import { type EventName, FakeError, type FakeSheet, type FakeTable, type Listener } from "./types.ts";

export class FakeExcel {
  version = "1.17";
  sheets: FakeSheet[] = [];
  tables: FakeTable[] = [];
  active = 0;
  cursor = { row: 0, column: 0 };
  structureProtected = false;
  editing: Promise<void> | undefined;
  /** Page layout fails, as it does on computers without a printer. */
  printerless = false;
  /** Thrown at the next sync. */
  failWith: string | undefined;
  syncs = 0;
  suspended: string[] = [];
  runs: Record<string, unknown>[] = [];
  listeners: Record<EventName, Set<Listener>> = {
    selection: new Set(),
    activated: new Set(),
    changed: new Set(),
    calculated: new Set(),
  };
  #saved: unknown[] = [];

  addSheet(name: string, grid: readonly (readonly CellValue[])[] = []): FakeSheet {
    const sheet: FakeSheet = {
      name,
      cells: new Map(),
      protected: false,
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
    const table = { name, sheet, top, left, rows, columns };
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
  fire(name: EventName, event: Record<string, unknown>): void {
    for (const listener of this.listeners[name]) setTimeout(() => void listener(event), 0);
  }
  /** A change as `who` makes it. */
  changed(who: "user" | "remote" | "add-in"): void {
    const [, minor = 0] = this.version.split(".").map(Number);
    const trigger = minor < 14 ? undefined : who === "add-in" ? "ThisLocalAddin" : "Unknown";
    this.fire("changed", { source: who === "remote" ? "Remote" : "Local", triggerSource: trigger });
  }

  install(): void {
    this.#saved = [(globalThis as any).Excel, (globalThis as any).Office];
    const fake = this;
    Object.assign(globalThis, {
      Office: {
        HostType: { Excel: "Excel" },
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
          return batch(context.face);
        },
      },
    });
  }
  uninstall(): void {
    Object.assign(globalThis, { Excel: this.#saved[0], Office: this.#saved[1] });
  }
}

export class FakeContext {
  ops: (() => void)[] = [];
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
  async sync(): Promise<void> {
    this.fake.syncs++;
    const ops = this.ops.splice(0);
    await Promise.resolve();
    if (this.fake.failWith !== undefined) {
      const code = this.fake.failWith;
      this.fake.failWith = undefined;
      throw new FakeError(code, "as the test wants it");
    }
    for (const op of ops) op();
  }
}
