/** Ranges with a heading row, as the functions for whole tables take them. */
import { matchHeadings, ROW_COLUMNS } from "../src/plan/columns.ts";
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

/** Blocks by name, or the first that cannot be read. */
export function readBlocks(named: readonly (readonly [string, any[][]])[]): unknown[][][] | CellError {
  const blocks: unknown[][][] = [];
  for (const [name, argument] of named) {
    const block = plainBlock(name, argument);
    if (block instanceof CellError) return block;
    blocks.push(block);
  }
  return blocks;
}

/** The error of a block that is no planning table. */
export function withoutOperation(name: string, block: unknown[][]): CellError | undefined {
  const known = matchHeadings(block[0]!, ROW_COLUMNS);
  if (known.some((match) => match.column.key === "operation")) return undefined;
  return new CellError("#VALUE!", `${name} has no heading Operation; a heading row of the planning table is wanted`);
}
