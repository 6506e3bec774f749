/** Ranges, their formats and rules. */
import { at, checkShape, grid, tableArea, writable, write } from "../cells.ts";
import { type Area, bad, type Kind } from "../types.ts";

export const RANGE: Record<string, Kind> = {
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
};
