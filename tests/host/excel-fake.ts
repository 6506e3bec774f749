/**
 * A strict stand-in for the parts of Excel's API that the host uses. What a lenient one would let pass fails here:
 * reading what was not loaded or synced, members that do not exist or are newer than the version, wrong shapes,
 * touching what may be missing before asking. Text is taken the way Excel takes it ("1/2" becomes a date).
 */
import type { CellValue } from "../../taskpane/host/host.ts";

interface Cell {
  value: CellValue;
  formula?: string;
  format?: string;
}
interface FakeTable {
  name: string;
  sheet: FakeSheet;
  top: number;
  left: number;
  rows: number;
  columns: number;
}
interface FakeSheet {
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
interface Area {
  sheet: FakeSheet;
  row: number;
  column: number;
  rows: number;
  columns: number;
}
type EventName = "selection" | "activated" | "changed" | "calculated";
type Listener = (event: Record<string, unknown>) => Promise<void>;

class FakeError extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}
const bad = (message: string) => new FakeError("InvalidArgument", message);

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

class FakeContext {
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

/** How the table collection sees the area of a range object. */
const AREA = Symbol("area");

interface Kind {
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

function object(context: FakeContext, kind: Kind, find: () => unknown, nullable = false): any {
  const loaded = new Map<string, unknown>();
  const children = new Map<string, any>();
  let target: any;
  let isNull: boolean | undefined;
  const resolve = (): any => {
    if (target !== undefined) return target;
    const found = find();
    if (found === null || found === undefined) {
      if (nullable) {
        isNull = true;
        return null;
      }
      throw new FakeError("ItemNotFound", `this ${kind.name} does not exist`);
    }
    isNull = false;
    target = found;
    return found;
  };
  const present = (what: string): any => {
    const t = resolve();
    if (t === null) throw new FakeError("InvalidOperation", `${what} of a ${kind.name} that does not exist`);
    return t;
  };
  const need = (since?: string) => since !== undefined && context.fake.since(since);
  const child = (name: string): any => {
    const nav = kind.navs![name]!;
    need(nav.since);
    if (!children.has(name))
      children.set(
        name,
        object(context, KINDS[nav.kind]!, () => nav.find(present(name), context.fake)),
      );
    return children.get(name);
  };
  const load = (path: string): void => {
    const [head = "", ...rest] = path.trim().split("/");
    if (head === "items" && kind.items) {
      const { items } = kind;
      context.ops.push(() => {
        const t = present("items");
        const had = loaded.get("items") as any[] | undefined;
        const list = had ?? items.list(t).map((item) => object(context, KINDS[items.kind]!, () => item));
        loaded.set("items", list);
        if (rest.length > 0) {
          const before = context.ops.length;
          for (const item of list) item.load(rest.join("/"));
          for (const op of context.ops.splice(before)) op();
        }
      });
      return;
    }
    if (kind.navs?.[head] && rest.length > 0) {
      child(head).load(rest.join("/"));
      return;
    }
    const prop = kind.props?.[head];
    if (prop?.get === undefined)
      throw new FakeError("InvalidArgument", `${kind.name} has no property "${head}" to load`);
    need(prop.since);
    context.ops.push(() => {
      const t = resolve();
      if (t !== null) loaded.set(head, prop.get!(t));
    });
  };
  return new Proxy(
    {},
    {
      get(_, key) {
        if (key === AREA) return () => present("area");
        if (typeof key !== "string" || key === "then" || key === "toJSON") return undefined;
        if (key === "context") return context.face;
        if (key === "isNullObject") {
          if (isNull === undefined) throw new FakeError("PropertyNotLoaded", "isNullObject was read before a sync");
          return isNull;
        }
        if (key === "load")
          return (names: string) => {
            if (typeof names !== "string" || names === "") throw bad("load without names");
            names.split(",").forEach(load);
          };
        if (key === "items" && kind.items) {
          if (!loaded.has("items")) throw new FakeError("PropertyNotLoaded", `items of ${kind.name} were not loaded`);
          return loaded.get("items");
        }
        const prop = kind.props?.[key];
        if (prop) {
          if (!loaded.has(key)) throw new FakeError("PropertyNotLoaded", `${key} of ${kind.name} was not loaded`);
          return loaded.get(key);
        }
        if (kind.navs?.[key]) return child(key);
        const event = kind.events?.[key];
        if (event) {
          need(event.since);
          return {
            add(listener: Listener) {
              context.ops.push(() => context.fake.listeners[event.name].add(listener));
              return {
                context: context.face,
                remove: () => context.ops.push(() => context.fake.listeners[event.name].delete(listener)),
              };
            },
          };
        }
        const method = kind.methods?.[key];
        if (method === undefined) throw new TypeError(`${kind.name} has no member "${key}"`);
        return (...args: any[]) => {
          need(method.since);
          if (method.check && !method.check(args)) throw bad(`${kind.name}.${key}(${JSON.stringify(args)})`);
          if (method.gives === undefined) {
            context.ops.push(() => void method.do(present(key), context.fake, args));
            return undefined;
          }
          let made: unknown;
          let done = false;
          const run = () => {
            if (!done) made = method.do(present(key), context.fake, args);
            done = true;
            return made;
          };
          context.ops.push(() => void run());
          return object(context, KINDS[method.gives]!, run, method.nullable);
        };
      },
      set(_, key, value) {
        const prop = typeof key === "string" ? kind.props?.[key] : undefined;
        if (prop?.set === undefined) throw new TypeError(`${kind.name}.${String(key)} cannot be set`);
        need(prop.since);
        loaded.delete(String(key));
        context.ops.push(() => prop.set!(present(String(key)), value, context.fake));
        return true;
      },
    },
  );
}

const at = (area: Area, r: number, c: number) => `${area.row + r},${area.column + c}`;

function grid<T>(area: Area, read: (cell: Cell | undefined) => T): T[][] {
  return Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (_, c) => read(area.sheet.cells.get(at(area, r, c)))),
  );
}

function checkShape(area: Area, block: unknown): asserts block is unknown[][] {
  if (
    !Array.isArray(block) ||
    block.length !== area.rows ||
    block.some((row) => !Array.isArray(row) || row.length !== area.columns)
  )
    throw bad(`the block is not ${area.rows} × ${area.columns}`);
}

const writable = (sheet: FakeSheet): void => {
  if (sheet.protected) throw new FakeError("AccessDenied", "the sheet is protected");
};

/** As typing it would: the apostrophe marks text, and much that looks like something becomes it. */
function take(input: unknown): Cell | undefined {
  if (typeof input === "number" || typeof input === "boolean") {
    if (typeof input === "number" && !Number.isFinite(input)) throw bad("not a finite number");
    return { value: input };
  }
  if (typeof input !== "string") throw bad(`a cell cannot hold ${typeof input}`);
  if (input === "") return undefined;
  if (input.startsWith("'")) return { value: input.slice(1) };
  if (/^[=+-]/.test(input) && Number.isNaN(Number(input))) return { value: 0, formula: `=${input.replace(/^=/, "")}` };
  if (/^\d{1,4}[/-]\d{1,2}$/.test(input)) return { value: 45_000, format: "d-mmm" };
  if (input.trim() !== "" && !Number.isNaN(Number(input))) return { value: Number(input) };
  if (/^(?:true|false)$/i.test(input)) return { value: input.toLowerCase() === "true" };
  return { value: input };
}

function write(area: Area, block: unknown, fake: FakeExcel): void {
  checkShape(area, block);
  writable(area.sheet);
  block.forEach((row, r) => {
    row.forEach((input, c) => {
      if (input === null) return; // null leaves a cell as it is
      const taken = take(input);
      const old = area.sheet.cells.get(at(area, r, c));
      if (taken === undefined) area.sheet.cells.delete(at(area, r, c));
      else area.sheet.cells.set(at(area, r, c), { format: old?.format, ...taken });
    });
  });
  fake.changed("add-in");
}

const isIndex = (value: unknown) => typeof value === "number" && Number.isInteger(value) && value >= 0;

function parseAddress(address: string): Omit<Area, "sheet"> {
  const found = /^\$?([A-Z]+)\$?(\d+)(?::\$?([A-Z]+)\$?(\d+))?$/.exec(address);
  if (!found) throw bad(`address ${address}`);
  const column = (name: string) => [...name].reduce((n, ch) => n * 26 + ch.charCodeAt(0) - 64, 0) - 1;
  const [, a, b, c = a, d = b] = found;
  const left = column(a!);
  return { row: Number(b) - 1, column: left, rows: Number(d) - Number(b) + 1, columns: column(c!) - left + 1 };
}

const tableArea = (table: FakeTable): Area => ({
  sheet: table.sheet,
  row: table.top,
  column: table.left,
  rows: table.rows + 1,
  columns: table.columns,
});

function used(sheet: FakeSheet): Area | null {
  const keys = [...sheet.cells].filter(([, cell]) => cell.value !== null).map(([key]) => key.split(",").map(Number));
  if (keys.length === 0) return null;
  const rows = keys.map(([r]) => r!);
  const columns = keys.map(([, c]) => c!);
  const row = Math.min(...rows);
  const column = Math.min(...columns);
  return { sheet, row, column, rows: Math.max(...rows) - row + 1, columns: Math.max(...columns) - column + 1 };
}

const KINDS: Record<string, Kind> = {
  application: {
    name: "Application",
    methods: {
      suspendApiCalculationUntilNextSync: { since: "1.6", do: (_t, f) => f.suspended.push("calculation") },
      suspendScreenUpdatingUntilNextSync: { since: "1.9", do: (_t, f) => f.suspended.push("screen") },
    },
  },
  workbook: {
    name: "Workbook",
    navs: {
      worksheets: { kind: "worksheets", find: (_t, f) => f },
      tables: { kind: "tables", find: (_t, f) => f },
      protection: { kind: "workbookProtection", find: (_t, f) => f, since: "1.7" },
    },
    methods: {
      getActiveCell: {
        since: "1.7",
        gives: "range",
        do: (_t, f) => ({ sheet: f.sheets[f.active]!, ...f.cursor, rows: 1, columns: 1 }),
      },
    },
    events: { onSelectionChanged: { name: "selection", since: "1.2" } },
  },
  workbookProtection: {
    name: "WorkbookProtection",
    props: { protected: { get: (f: FakeExcel) => f.structureProtected } },
  },
  worksheets: {
    name: "WorksheetCollection",
    methods: {
      getActiveWorksheet: { gives: "worksheet", do: (_t, f) => f.sheets[f.active] },
      getItem: { gives: "worksheet", check: ([n]) => typeof n === "string", do: (_t, f, [n]) => f.sheet(n) },
      getItemOrNullObject: {
        since: "1.4",
        gives: "worksheet",
        nullable: true,
        check: ([n]) => typeof n === "string",
        do: (_t, f, [n]) => f.sheet(n) ?? null,
      },
      add: {
        gives: "worksheet",
        check: ([n]) => typeof n === "string" && n.length > 0 && n.length <= 31 && !/[[\]:*?/\\]/.test(n),
        do(_t, f, [n]) {
          if (f.structureProtected) throw new FakeError("AccessDenied", "the workbook is protected");
          if (f.sheet(n)) throw new FakeError("ItemAlreadyExists", "a sheet of that name exists");
          return f.addSheet(n);
        },
      },
    },
    events: {
      onActivated: { name: "activated", since: "1.7" },
      onChanged: { name: "changed", since: "1.9" },
      onCalculated: { name: "calculated", since: "1.8" },
    },
  },
  worksheet: {
    name: "Worksheet",
    props: { name: { get: (s: FakeSheet) => s.name } },
    navs: {
      protection: { kind: "protection", find: (s) => s, since: "1.2" },
      tables: { kind: "sheetTables", find: (s) => s },
      freezePanes: { kind: "freezePanes", find: (s) => s, since: "1.7" },
      charts: { kind: "charts", find: (s) => s },
      pageLayout: { kind: "pageLayout", find: (s) => s, since: "1.9" },
    },
    methods: {
      getRange: {
        gives: "range",
        check: ([a]) => typeof a === "string",
        do: (s, _f, [a]) => ({ sheet: s, ...parseAddress(a) }),
      },
      getRangeByIndexes: {
        since: "1.7",
        gives: "range",
        check: ([r, c, n, m]) => [r, c, n, m].every(isIndex) && n > 0 && m > 0,
        do: (sheet, _f, [row, column, rows, columns]) => ({ sheet, row, column, rows, columns }),
      },
      getUsedRangeOrNullObject: { since: "1.4", gives: "range", nullable: true, do: (s) => used(s) },
      activate: {
        do(s, f) {
          f.active = f.sheets.indexOf(s);
          f.fire("activated", {});
        },
      },
    },
  },
  charts: {
    name: "ChartCollection",
    methods: {
      add: {
        gives: "chart",
        check: ([type, range, by]) =>
          type === "BarClustered" && range !== undefined && ["Auto", "Columns", "Rows"].includes(by),
        do(s: FakeSheet, _f, [type, range]) {
          const chart: FakeChart = { type, values: range[AREA](), legend: true, fromTop: false };
          s.charts.push(chart);
          return chart;
        },
      },
    },
  },
  chart: {
    name: "Chart",
    navs: {
      title: { kind: "chartTitle", find: (c) => c },
      legend: { kind: "chartLegend", find: (c) => c },
      series: { kind: "seriesCollection", find: (c) => c },
      axes: { kind: "chartAxes", find: (c) => c },
    },
    methods: {
      setPosition: {
        check: ([start]) => start !== undefined,
        do(c: FakeChart, _f, [start, end]) {
          const [a, b]: Area[] = [start[AREA](), end[AREA]()];
          if (b!.row < a!.row || b!.column < a!.column) throw bad("a chart ends before it begins");
          c.at = { ...a!, rows: b!.row - a!.row + 1, columns: b!.column - a!.column + 1 };
        },
      },
    },
  },
  chartTitle: {
    name: "ChartTitle",
    props: {
      text: {
        set(c: FakeChart, value) {
          c.title = value;
        },
      },
    },
  },
  chartLegend: {
    name: "ChartLegend",
    props: {
      visible: {
        set(c: FakeChart, value) {
          c.legend = value;
        },
      },
    },
  },
  chartAxes: { name: "ChartAxes", navs: { categoryAxis: { kind: "chartAxis", find: (c) => c } } },
  chartAxis: {
    name: "ChartAxis",
    props: {
      reversePlotOrder: {
        since: "1.7",
        set(c: FakeChart, value) {
          c.fromTop = value;
        },
      },
    },
  },
  seriesCollection: {
    name: "ChartSeriesCollection",
    methods: { getItemAt: { gives: "series", check: ([i]) => i === 0, do: (c) => c } },
  },
  series: {
    name: "ChartSeries",
    methods: {
      setXAxisValues: {
        since: "1.7",
        do(c: FakeChart, _f, [range]) {
          c.names = range[AREA]();
        },
      },
    },
  },
  pageLayout: {
    name: "PageLayout",
    props: {
      zoom: {
        set(s: FakeSheet, value) {
          if (Object.keys(value).some((key) => !/^(?:scale|horizontalFitToPages|verticalFitToPages)$/.test(key)))
            throw bad("zoom");
          s.page.across = value.horizontalFitToPages;
        },
      },
    },
    methods: {
      setPrintArea: {
        do(s: FakeSheet, f, [range]) {
          if (f.printerless) throw new FakeError("GeneralException", "no printer");
          s.page.area = range[AREA]();
        },
      },
      setPrintTitleRows: {
        check: ([rows]) => typeof rows === "string" && /^\$?\d+:\$?\d+$/.test(rows),
        do(s: FakeSheet, _f, [rows]) {
          s.page.titleRows = rows;
        },
      },
    },
  },
  protection: { name: "WorksheetProtection", props: { protected: { get: (s: FakeSheet) => s.protected } } },
  freezePanes: {
    name: "WorksheetFreezePanes",
    methods: {
      freezeRows: {
        check: ([n]) => isIndex(n),
        do(s, _f, [n]) {
          s.frozen = n;
        },
      },
    },
  },
  range: {
    name: "Range",
    props: {
      values: { get: (a: Area) => grid(a, (cell) => cell?.value ?? ""), set: write },
      formulas: { get: (a: Area) => grid(a, (cell) => cell?.formula ?? cell?.value ?? ""), set: write },
      numberFormat: {
        get: (a: Area) => grid(a, (cell) => cell?.format ?? "General"),
        set(area, block) {
          checkShape(area, block);
          writable(area.sheet);
          block.forEach((row, r) => {
            row.forEach((format, c) => {
              if (typeof format !== "string") throw bad("a number format is text");
              const key = at(area, r, c);
              area.sheet.cells.set(key, { ...(area.sheet.cells.get(key) ?? { value: null }), format });
            });
          });
        },
      },
      rowIndex: { get: (a: Area) => a.row },
      columnIndex: { get: (a: Area) => a.column },
    },
    navs: {
      format: { kind: "rangeFormat", find: (a) => a },
      dataValidation: { kind: "validation", find: (a) => a, since: "1.8" },
    },
    methods: {
      getEntireRow: { since: "1.2", gives: "range", do: (a: Area) => ({ ...a, column: 0, columns: 16_384 }) },
      getUsedRangeOrNullObject: {
        since: "1.4",
        gives: "range",
        nullable: true,
        do(a: Area) {
          const inside = [...a.sheet.cells]
            .filter(([, cell]) => cell.value !== null)
            .map(([key]) => key.split(",").map(Number) as [number, number])
            .filter(([r, c]) => r >= a.row && r < a.row + a.rows && c >= a.column && c < a.column + a.columns);
          if (inside.length === 0) return null;
          const row = Math.min(...inside.map(([r]) => r));
          const column = Math.min(...inside.map(([, c]) => c));
          return {
            sheet: a.sheet,
            row,
            column,
            rows: Math.max(...inside.map(([r]) => r)) - row + 1,
            columns: Math.max(...inside.map(([, c]) => c)) - column + 1,
          };
        },
      },
      select: {
        do(a, f) {
          f.active = f.sheets.indexOf(a.sheet);
          f.cursor = { row: a.row, column: a.column };
          f.fire("selection", {});
        },
      },
      getTables: {
        since: "1.9",
        gives: "scopedTables",
        do: (a: Area, f) =>
          f.tables.filter((t) => {
            const b = tableArea(t);
            return (
              t.sheet === a.sheet &&
              a.row < b.row + b.rows &&
              b.row < a.row + a.rows &&
              a.column < b.column + b.columns &&
              b.column < a.column + a.columns
            );
          }),
      },
    },
  },
  rangeFormat: {
    name: "RangeFormat",
    navs: { font: { kind: "font", find: (a) => a } },
    methods: { autofitColumns: { since: "1.2", do: () => undefined } },
  },
  font: { name: "RangeFont", props: { bold: { set: (a: Area, value) => value === true && a.sheet.bold.push(a) } } },
  validation: {
    name: "DataValidation",
    props: {
      rule: {
        set(a: Area, rule) {
          const source = rule?.list?.source;
          if (typeof source === "string" && source.length > 255)
            throw bad("a list of words is at most 255 characters long");
          if (source === undefined) throw bad("no list");
          a.sheet.validations.push({ row: a.row, column: a.column, rows: a.rows, rule });
        },
      },
    },
  },
  tables: {
    name: "TableCollection",
    methods: {
      getItemOrNullObject: {
        since: "1.4",
        gives: "table",
        nullable: true,
        do: (_t, f, [n]) => f.tables.find((t) => t.name.toLowerCase() === String(n).toLowerCase()) ?? null,
      },
    },
  },
  sheetTables: {
    name: "TableCollection",
    methods: {
      add: {
        gives: "table",
        check: ([a, headers]) => typeof headers === "boolean" && a !== undefined,
        do(s, f, [range]) {
          const area: Area = range[AREA]();
          const heads = grid(area, (cell) => cell?.value ?? "")[0]!;
          if (new Set(heads.map((t) => String(t).toLowerCase())).size !== heads.length)
            throw bad("headings of a table differ");
          return f.addTable(`Table${f.tables.length + 1}`, s, area.row, area.column, area.rows - 1, area.columns);
        },
      },
    },
  },
  scopedTables: { name: "TableScopedCollection", items: { kind: "table", list: (t) => t } },
  table: {
    name: "Table",
    props: {
      name: {
        get: (t: FakeTable) => t.name,
        set(t: FakeTable, value, f) {
          if (!/^[A-Za-z_\\][A-Za-z0-9_.]*$/.test(value)) throw bad(`table name ${value}`);
          if (f.tables.some((other) => other !== t && other.name.toLowerCase() === value.toLowerCase()))
            throw new FakeError("ItemAlreadyExists", "a table of that name exists");
          t.name = value;
        },
      },
      showTotals: { get: () => false },
    },
    navs: {
      worksheet: { kind: "worksheet", find: (t) => t.sheet },
      rows: { kind: "tableRows", find: (t) => t },
    },
    methods: {
      getRange: { gives: "range", do: (t) => tableArea(t) },
      resize: {
        since: "1.13",
        do(t: FakeTable, _f, [range]) {
          const area: Area = range[AREA]();
          if (area.row !== t.top || area.column !== t.left || area.columns !== t.columns)
            throw bad("the heading row of a table stays where it is");
          writable(t.sheet);
          // A calculated column runs on into new rows.
          for (let c = 0; c < t.columns; c++) {
            const formulas = Array.from({ length: t.rows }, (_, r) => t.sheet.cells.get(at(tableArea(t), r + 1, c)));
            const last = formulas.at(-1);
            if (last?.formula === undefined || formulas.some((cell) => cell?.formula !== last.formula)) continue;
            for (let r = t.rows; r < area.rows - 1; r++) t.sheet.cells.set(at(area, r + 1, c), { ...last });
          }
          t.rows = area.rows - 1;
        },
      },
    },
  },
  tableRows: {
    name: "TableRowCollection",
    props: { count: { get: (t: FakeTable) => t.rows } },
    methods: {
      add: {
        check: ([index, block]) => (index === undefined || index === null) && Array.isArray(block),
        do(t: FakeTable, f, [, block]) {
          const row = t.top + 1 + t.rows;
          t.rows += block.length;
          write({ sheet: t.sheet, row, column: t.left, rows: block.length, columns: t.columns }, block, f);
        },
      },
    },
  },
};
