/** A worksheet. */
import { isIndex, parseAddress, used } from "../cells.ts";
import { FakeError, type FakeSheet, type Kind } from "../types.ts";

export const SHEET: Record<string, Kind> = {
  worksheet: {
    name: "Worksheet",
    props: { name: { get: (s: FakeSheet) => s.name }, id: { get: (s: FakeSheet) => s.id } },
    navs: {
      protection: { kind: "protection", find: (s) => s, since: "1.2" },
      tables: { kind: "sheetTables", find: (s) => s },
      freezePanes: { kind: "freezePanes", find: (s) => s, since: "1.7" },
      charts: { kind: "charts", find: (s) => s },
      autoFilter: { kind: "autoFilter", find: (s) => s, since: "1.9" },
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
      delete: {
        do(s: FakeSheet, f) {
          if (f.structureProtected) throw new FakeError("AccessDenied", "the workbook is protected");
          if (f.sheets.length === 1) throw new FakeError("InvalidOperation", "the last sheet stays");
          const active = f.sheets[f.active];
          f.sheets = f.sheets.filter((one) => one !== s);
          f.tables = f.tables.filter((table) => table.sheet !== s);
          f.active = Math.max(0, f.sheets.indexOf(active!));
        },
      },
      activate: {
        do(s, f) {
          f.active = f.sheets.indexOf(s);
          f.fire("activated", {});
        },
      },
    },
  },
  autoFilter: {
    name: "AutoFilter",
    props: { isDataFiltered: { get: (t: { filtered: boolean }) => t.filtered } },
  },
};
