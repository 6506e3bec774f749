/** Ranges, their formats and rules. */
import { spokenAddress } from "../../../../taskpane/host/reference.ts";
import { at, checkShape, grid, overlap, tableArea, write } from "../cells.ts";
import { type Area, bad, FakeError, type Kind } from "../types.ts";

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
        set(area, block) {
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
