/** Ranges with a heading row, as the functions for whole tables take them. */

import type { Blocks } from "../src/plan/table.ts";
import { isBlank } from "../src/table/blank.ts";
import { matchHeadings, ROW_COLUMNS } from "../src/table/columns.ts";
import { CellError, content, toBlock } from "./cells.ts";

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

/** The one cell of an argument that does not lift; throws where there are more. */
export function oneCell(name: string, argument: any[][] | undefined): unknown {
  const block = toBlock(argument);
  if (block.length > 1 || block[0]!.length > 1)
    throw new CellError("#VALUE!", `${name} is a range; one cell is allowed`);
  return block[0]![0];
}

/**
 * A planning table (`name` is its argument: whole, or its headings alone) and the three lists, or the error of the
 * first that cannot be read.
 */
export function readBlocks(
  name: string,
  table: any[][],
  materials: any[][],
  tools: any[][],
  machines: any[][],
): Blocks | CellError {
  const blocks: Record<string, unknown[][]> = {};
  for (const [key, argument] of Object.entries({ [name]: table, materials, tools, machines })) {
    const block = plainBlock(key, argument);
    if (block instanceof CellError) return block;
    blocks[key] = block;
  }
  const rows = blocks[name]!;
  if (!matchHeadings(rows[0]!, ROW_COLUMNS).some((match) => match.column.key === "operation")) {
    return new CellError("#VALUE!", `${name} has no heading Operation; a heading row of the planning table is wanted`);
  }
  return { rows, materials: blocks.materials!, tools: blocks.tools!, machines: blocks.machines! };
}
