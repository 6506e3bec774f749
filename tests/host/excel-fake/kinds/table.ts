/** Tables and their rows. */
import { at, grid, isIndex, overlap, shifted, tableArea, write } from "../cells.ts";
import type { FakeExcel } from "../excel.ts";
import { AREA, type Area, bad, FakeError, type FakeSheet, type FakeTable, type Kind } from "../types.ts";

/** Moves what stands in the columns of a table from a row on. */
function shiftBelow(t: FakeTable, from: number, count: number): void {
  const cells = [...t.sheet.cells].flatMap(([key, cell]) => {
    const [row = 0, column = 0] = key.split(",").map(Number);
    return row >= from && column >= t.left && column < t.left + t.columns ? [{ key, row, column, cell }] : [];
  });
  for (const { key } of cells) t.sheet.cells.delete(key);
  for (const { row, column, cell } of cells) t.sheet.cells.set(`${row + count},${column}`, cell);
}

export const TABLE: Record<string, Kind> = {
  tables: {
    name: "TableCollection",
    items: { kind: "table", list: (f: FakeExcel) => f.tables },
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
    items: { kind: "table", list: (s: FakeSheet, f) => f.tables.filter((t) => t.sheet === s) },
    methods: {
      add: {
        gives: "table",
        writes: true,
        check: ([a, headers]) => typeof headers === "boolean" && a !== undefined,
        do(s, f, [range]) {
          const area: Area = range[AREA]();
          if (f.tables.some((other) => overlap(tableArea(other), area)))
            throw new FakeError("InvalidOperation", "a table cannot overlap another one");
          if (s.merged.some((one: Area) => overlap(one, area)))
            throw new FakeError("MergedRangeConflict", "merged cells");
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
      showTotals: { get: (t: FakeTable) => t.totals },
    },
    navs: {
      worksheet: { kind: "worksheet", find: (t) => t.sheet },
      rows: { kind: "tableRows", find: (t) => t },
      autoFilter: { kind: "autoFilter", find: (t) => t, since: "1.9" },
    },
    methods: {
      getRange: { gives: "range", do: (t) => tableArea(t) },
      getDataBodyRange: {
        gives: "range",
        do: (t: FakeTable) => ({ sheet: t.sheet, row: t.top + 1, column: t.left, rows: t.rows, columns: t.columns }),
      },
      getTotalRowRange: {
        gives: "range",
        do(t: FakeTable) {
          if (!t.totals) throw new FakeError("ItemNotFound", "this table has no totals");
          return { sheet: t.sheet, row: t.top + 1 + t.rows, column: t.left, rows: 1, columns: t.columns };
        },
      },
      resize: {
        since: "1.13",
        do(t: FakeTable, _f, [range]) {
          const area: Area = range[AREA]();
          if (area.row !== t.top || area.column !== t.left || area.columns !== t.columns)
            throw bad("the heading row of a table stays where it is");
          if (t.sheet.protected) throw new FakeError("AccessDenied", "the sheet is protected");
          if (t.totals) throw new FakeError("InvalidArgument", "a table with totals is not resized over them");
          // A calculated column runs on into new rows.
          for (let c = 0; c < t.columns; c++) {
            const formulas = Array.from({ length: t.rows }, (_, r) => t.sheet.cells.get(at(tableArea(t), r + 1, c)));
            const last = formulas.at(-1);
            const own = (r: number) => shifted(last!.formula!, r - t.rows + 1);
            if (last?.formula === undefined || formulas.some((cell, r) => cell?.formula !== own(r))) continue;
            for (let r = t.rows; r < area.rows - 1; r++)
              t.sheet.cells.set(at(area, r + 1, c), { ...last, formula: own(r) });
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
          if (t.sheet.protected) throw new FakeError("AccessDenied", "the sheet is protected");
          if (t.filtered) throw new FakeError("FilteredRangeConflict", "the table is filtered");
          const row = t.top + 1 + t.rows;
          // Cells below, the totals first, go down within the columns of the table.
          shiftBelow(t, row, block.length);
          t.rows += block.length;
          write({ sheet: t.sheet, row, column: t.left, rows: block.length, columns: t.columns }, block, f);
        },
      },
      getItemAt: {
        gives: "tableRow",
        check: ([index]) => isIndex(index),
        do(t: FakeTable, _f, [index]) {
          if (index >= t.rows) throw new FakeError("InvalidArgument", "no such row");
          return { table: t, index };
        },
      },
    },
  },
  tableRow: {
    name: "TableRow",
    methods: {
      delete: {
        do({ table: t, index }: { table: FakeTable; index: number }) {
          if (t.sheet.protected) throw new FakeError("AccessDenied", "the sheet is protected");
          const row = t.top + 1 + index;
          for (let c = t.left; c < t.left + t.columns; c++) t.sheet.cells.delete(`${row},${c}`);
          shiftBelow(t, row + 1, -1);
          t.rows--;
        },
      },
    },
  },
};
