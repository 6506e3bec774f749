/** Application, workbook, its sheets. */
import type { FakeExcel } from "../excel.ts";
import { FakeError, type Kind } from "../types.ts";

export const WORKBOOK: Record<string, Kind> = {
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
      settings: { kind: "settings", find: (_t, f) => f, since: "1.4" },
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
  settings: {
    name: "SettingCollection",
    items: { kind: "setting", list: (f: FakeExcel) => [...f.settings.values()] },
    methods: {
      add: {
        since: "1.4",
        gives: "setting",
        writes: true,
        check: ([key, value]) =>
          typeof key === "string" && key !== "" && /^(?:string|number|boolean)$/.test(typeof value),
        do(_t, f, [key, value]) {
          f.settings.set(key, { key, value });
          return f.settings.get(key);
        },
      },
      getItemOrNullObject: {
        since: "1.4",
        gives: "setting",
        nullable: true,
        check: ([key]) => typeof key === "string",
        do: (_t, f, [key]) => f.settings.get(key) ?? null,
      },
    },
  },
  setting: {
    name: "Setting",
    props: {
      key: { get: (setting) => setting.key },
      value: { get: (setting) => setting.value },
    },
    methods: {
      delete: {
        since: "1.4",
        writes: true,
        do: ({ key }, f) => void f.settings.delete(key),
      },
    },
  },
  workbookProtection: {
    name: "WorkbookProtection",
    props: { protected: { get: (f: FakeExcel) => f.structureProtected } },
  },
  worksheets: {
    name: "WorksheetCollection",
    items: { kind: "worksheet", list: (f: FakeExcel) => f.sheets },
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
        writes: true,
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
};
