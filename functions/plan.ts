/** Worksheet function for the whole planning table. */
import { matchHeadings, ROW_COLUMNS } from "../src/plan/columns.ts";
import { planTable } from "../src/plan/evaluate.ts";
import { CellError, content, isBlank, toBlock } from "./cells.ts";

/** Cells as the plan reads them: data-type objects by their basic value, errors as objects with a code. */
function plainBlock(name: string, argument: any[][]): unknown[][] | CellError {
  const block = toBlock(argument).map((row) => row.map((cell) => content(cell)));
  const head = block[0]!;
  if (head.every((cell) => isBlank(cell))) {
    return new CellError("#VALUE!", `${name} is blank; a range with its heading row is wanted`);
  }
  const broken = head.find((cell) => cell instanceof CellError);
  return broken instanceof CellError ? broken : block;
}

/**
 * Plan of a whole table: one line of results per row, with a heading row.
 * @customfunction
 * @param rows Planning table with its heading row.
 * @param materials List of materials with its heading row.
 * @param tools List of tools with its heading row.
 * @param machines List of machines with its heading row.
 * @returns Results with a heading row, one line per row of the table, lengths in the row's units.
 * @example
 * =CUT.PLAN({"Row"}, {"Material"}, {"Tool"}, {"Machine"}) //=> #VALUE!
 */
export function PLAN(rows: any[][], materials: any[][], tools: any[][], machines: any[][]): any[][] {
  const blocks: unknown[][][] = [];
  for (const [name, argument] of [
    ["rows", rows],
    ["materials", materials],
    ["tools", tools],
    ["machines", machines],
  ] as const) {
    const block = plainBlock(name, argument);
    if (block instanceof CellError) return [[block]];
    blocks.push(block);
  }
  const [table, m, t, k] = blocks as [unknown[][], unknown[][], unknown[][], unknown[][]];
  const known = matchHeadings(table[0]!, ROW_COLUMNS);
  if (!known.some((match) => match.column.key === "operation")) {
    return [[new CellError("#VALUE!", "rows has no heading Operation; a range with its heading row is wanted")]];
  }
  const plan = planTable({ rows: table, materials: m, tools: t, machines: k });
  return [[...plan.header], ...plan.block.map((line) => [...line])];
}
