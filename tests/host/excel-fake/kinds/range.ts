/** Ranges, their formats and rules. */
import { spokenAddress } from "../../../../taskpane/host/reference.ts";
import { at, checkShape, grid, isIndex, overlap, shifted, surrounding, tableArea, usedIn, write } from "../cells.ts";
import { AREA, type Area, bad, FakeError, type Kind } from "../types.ts";

/** What all are; null where they differ. */
const alike = (all: readonly boolean[]): boolean | null => (new Set(all).size > 1 ? null : (all[0] ?? false));

export const RANGE: Record<string, Kind> = {
  range: {
    name: "Range",
    props: {
      values: { get: (a: Area) => grid(a, (cell) => cell?.value ?? ""), set: write },
      // A cell that another one's formula spills into has no formula of its own: its value is given (from memory).
      formulas: { get: (a: Area) => grid(a, (cell) => cell?.formula ?? cell?.value ?? ""), set: write },
      // True, false, or null where the cells differ.
      hasSpill: {
        since: "1.12",
        get(a: Area) {
          const anchors = new Set([...a.sheet.cells.values()].flatMap((cell) => cell.spill ?? []));
          const all = Array.from({ length: a.rows }, (_, r) =>
            Array.from({ length: a.columns }, (_c, c) => at(a, r, c)),
          ).flat();
          return alike(all.map((key) => anchors.has(key) || a.sheet.cells.get(key)?.spill !== undefined));
        },
      },
      rowHidden: {
        since: "1.2",
        get: (a: Area) => alike(Array.from({ length: a.rows }, (_, r) => a.sheet.hidden.has(a.row + r))),
      },
      numberFormat: {
        get: (a: Area) => grid(a, (cell) => cell?.format ?? "General"),
        set(area, given) {
          // One format stands for all cells of a range (Microsoft's tutorial of Excel add-ins sets a column so).
          const one = Array.isArray(given) && given.length === 1 && given[0].length === 1 ? given[0][0] : undefined;
          const block = one === undefined ? given : grid(area, () => one);
          checkShape(area, block);
          // Unlocked cells of a protected sheet take content, but formats only where the protection allows them.
          if (area.sheet.protected) throw new FakeError("AccessDenied", "the sheet is protected");
          block.forEach((row, r) => {
            row.forEach((format, c) => {
              if (format === null) return;
              if (typeof format !== "string") throw bad("a number format is text");
              const key = at(area, r, c);
              area.sheet.cells.set(key, { ...(area.sheet.cells.get(key) ?? { value: null }), format });
            });
          });
        },
      },
      rowIndex: { get: (a: Area) => a.row },
      rowCount: { get: (a: Area) => a.rows },
      columnCount: { get: (a: Area) => a.columns },
      columnIndex: { get: (a: Area) => a.column },
    },
    navs: {
      format: { kind: "rangeFormat", find: (a) => a },
      dataValidation: { kind: "validation", find: (a) => a, since: "1.8" },
    },
    methods: {
      getCell: {
        gives: "range",
        check: ([r, c]) => isIndex(r) && isIndex(c),
        do: (a: Area, _f, [r, c]) => ({ ...a, row: a.row + r, column: a.column + c, rows: 1, columns: 1 }),
      },
      getColumn: {
        gives: "range",
        check: ([c]) => isIndex(c),
        do(a: Area, _f, [c]) {
          if (c >= a.columns) throw bad("the column is outside of the range");
          return { ...a, column: a.column + c, columns: 1 };
        },
      },
      getRow: {
        gives: "range",
        check: ([r]) => isIndex(r),
        do(a: Area, _f, [r]) {
          if (r >= a.rows) throw bad("the row is outside of the range");
          return { ...a, row: a.row + r, rows: 1 };
        },
      },
      getResizedRange: {
        since: "1.2",
        gives: "range",
        check: ([r, c]) => Number.isInteger(r) && Number.isInteger(c),
        do: (a: Area, _f, [r, c]) => ({ ...a, rows: a.rows + r, columns: a.columns + c }),
      },
      getIntersectionOrNullObject: {
        since: "1.4",
        gives: "range",
        nullable: true,
        check: ([range]) => range?.[AREA] !== undefined,
        do(a: Area, _f, [range]) {
          const b: Area = range[AREA]();
          if (!overlap(a, b)) return null;
          const row = Math.max(a.row, b.row);
          const column = Math.max(a.column, b.column);
          const rows = Math.min(a.row + a.rows, b.row + b.rows) - row;
          return {
            sheet: a.sheet,
            row,
            column,
            rows,
            columns: Math.min(a.column + a.columns, b.column + b.columns) - column,
          };
        },
      },
      getSurroundingRegion: { since: "1.7", gives: "range", do: (a: Area) => surrounding(a) },
      getEntireRow: { since: "1.2", gives: "range", do: (a: Area) => ({ ...a, column: 0, columns: 16_384 }) },
      getUsedRangeOrNullObject: {
        since: "1.4",
        gives: "range",
        nullable: true,
        do: (a: Area) => usedIn(a),
      },
      copyFrom: {
        since: "1.9",
        check: ([range, what]) => range?.[AREA] !== undefined && what === "Formulas",
        do(a: Area, f, [range]) {
          const source: Area = range[AREA]();
          if (source.rows !== 1 || source.columns !== 1) throw bad("only one cell is copied here");
          const { formula, value } = source.sheet.cells.get(at(source, 0, 0)) ?? { value: null };
          if (formula !== undefined && a.column !== source.column) throw bad("only down a column is copied here");
          const block = Array.from({ length: a.rows }, (_, r) =>
            new Array(a.columns).fill(formula === undefined ? value : shifted(formula, a.row + r - source.row)),
          );
          write(a, block, f);
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
        do: (a: Area, f) => f.tables.filter((t) => overlap(tableArea(t), a)),
      },
      getMergedAreasOrNullObject: {
        since: "1.13",
        gives: "rangeAreas",
        nullable: true,
        do(a: Area) {
          const found = a.sheet.merged.filter((one) => overlap(one, a));
          return found.length === 0 ? null : found;
        },
      },
    },
  },
  rangeAreas: {
    name: "RangeAreas",
    props: {
      address: {
        get: (areas: Area[]) =>
          areas
            .map((a) => spokenAddress("", a.row, a.column, a.rows, a.columns).trim())
            .map((text, i) => `${areas[i]!.sheet.name}!${text}`)
            .join(","),
      },
    },
  },
  rangeFormat: {
    name: "RangeFormat",
    navs: {
      font: { kind: "font", find: (a) => a },
      protection: { kind: "cellProtection", find: (a) => a, since: "1.2" },
    },
    methods: { autofitColumns: { since: "1.2", do: () => undefined } },
  },
  cellProtection: {
    name: "FormatProtection",
    props: { locked: { get: (a: Area) => alike(grid(a, (cell) => cell?.locked !== false).flat()) } },
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
          a.sheet.validations = a.sheet.validations.filter((v) => v.row !== a.row || v.column !== a.column);
          a.sheet.validations.push({ row: a.row, column: a.column, rows: a.rows, rule });
        },
      },
    },
  },
};
