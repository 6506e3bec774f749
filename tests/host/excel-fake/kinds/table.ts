/** Tables and their rows. */
import { at, grid, tableArea, writable, write } from "../cells.ts";
import { AREA, type Area, bad, FakeError, type FakeTable, type Kind } from "../types.ts";

export const TABLE: Record<string, Kind> = {
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
