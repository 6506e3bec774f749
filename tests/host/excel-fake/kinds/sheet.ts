/** A worksheet. */
import { isIndex, parseAddress, used } from "../cells.ts";
import type { FakeSheet, Kind } from "../types.ts";

export const SHEET: Record<string, Kind> = {
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
};
