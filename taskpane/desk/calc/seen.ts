/** The workbook as formulas see it: values that are up to date when they are read, ranges cut to what holds something. */
import type { Value } from "../model/types.ts";
import { type Formula, type Holding, idOf } from "./holding.ts";
import type { Source } from "./shapes.ts";
import { type Block, Reference, VALUE } from "./values.ts";
import type { World } from "./world.ts";

/**
 * @param upToDate - works a formula out where it has to be, and answers its value
 * @param now - days since the workbook's day 0
 */
export function worldOf(
  held: Holding,
  source: Source,
  upToDate: (formula: Formula) => Value,
  now: () => number,
): World {
  const world: World = {
    date1904: source.date1904,
    value(sheet, row, column) {
      const id = idOf(row, column);
      const own = held.formulas[sheet]!.get(id);
      if (own) return upToDate(own);
      const from = held.spilled[sheet]!.get(id);
      if (from) {
        upToDate(from);
        // It may have shrunk meanwhile.
        if (held.spilled[sheet]!.get(id) === from) return from.block?.[row - from.row]?.[column - from.column] ?? null;
        return null;
      }
      return held.cellAt(sheet, row, column)?.value ?? null;
    },
    used: (sheet) => held.used(sheet),
    block(sheet, area) {
      const { rows, columns } = held.used(sheet);
      const bottom = Math.min(area.bottom, Math.max(area.top, rows - 1));
      const right = Math.min(area.right, Math.max(area.left, columns - 1));
      // Only whole rows and columns are cut; a range of its own size stays that size.
      const tall = area.bottom - area.top > 100_000 ? bottom : area.bottom;
      const wide = area.right - area.left > 1_000 ? right : area.right;
      const made: Value[][] = new Array(tall - area.top + 1);
      for (let row = area.top; row <= tall; row++) {
        const line: Value[] = new Array(wide - area.left + 1);
        for (let column = area.left; column <= wide; column++)
          line[column - area.left] = world.value(sheet, row, column);
        made[row - area.top] = line;
      }
      return made;
    },
    read(operand, spot, array) {
      if (operand === undefined) return null;
      if (!(operand instanceof Reference)) return operand as Value | Block;
      const [area] = operand.areas;
      if (operand.areas.length !== 1 || area === undefined) return VALUE;
      if (area.top === area.bottom && area.left === area.right) return world.value(operand.sheet, area.top, area.left);
      if (!spot.single || array) return world.block(operand.sheet, area);
      if (area.left === area.right && spot.row >= area.top && spot.row <= area.bottom)
        return world.value(operand.sheet, spot.row, area.left);
      if (area.top === area.bottom && spot.column >= area.left && spot.column <= area.right)
        return world.value(operand.sheet, area.top, spot.column);
      return VALUE;
    },
    spill(sheet, row, column) {
      const own = held.formulas[sheet]!.get(idOf(row, column));
      if (own === undefined) return undefined;
      upToDate(own);
      return own.area ?? { top: row, bottom: row, left: column, right: column };
    },
    sheetNamed(name) {
      const found = held.sheetIndex(name);
      return found < 0 ? undefined : found;
    },
    sheetName: (sheet) => held.sheets[sheet]!.name,
    tableNamed: (name) => held.tableWhere((range) => range.name.toLowerCase() === name.toLowerCase()),
    tableAt: (sheet, row, column) => held.tableAt(sheet, row, column),
    name(name, sheet) {
      const own = held.sheets[sheet]?.name.toLowerCase();
      const like = source.names.filter((one) => one.name.toLowerCase() === name.toLowerCase());
      return (like.find((one) => one.sheet?.toLowerCase() === own) ?? like.find((one) => one.sheet === undefined))
        ?.formula;
    },
    now,
    hidden: (sheet, row) => held.sheets[sheet]!.hiddenRows.has(row),
    formula: (sheet, row, column) => held.cellAt(sheet, row, column)?.formula ?? "",
  };
  return world;
}
