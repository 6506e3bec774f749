/** The worksheet functions of this project, CUT.*: blocks in, a block out, each error with its sentence. */
import { CellError } from "../../../../functions/cells.ts";
import * as functions from "../../../../functions/index.ts";
import type { Value } from "../../model/types.ts";
import { error, isBlock, isError, type Operand } from "../values.ts";
import type { Definitions, World } from "../world.ts";
import { blockOf, whole } from "./arguments.ts";

const NAMESPACE = "CUT";

/** What a function gets for a value: errors in the shape that carries their sentence on. */
const given = (value: Value): unknown => (isError(value) ? { code: value.error, message: value.reason ?? "" } : value);

function argument(operand: Operand, world: World): unknown[][] {
  if (operand === undefined) return [[null]];
  return blockOf(operand, world).map((row) => row.map(given));
}

function taken(cell: unknown): Value {
  if (cell instanceof CellError) return error(cell.code, cell.message);
  if (typeof cell === "number" || typeof cell === "string" || typeof cell === "boolean") return cell;
  return cell === null || cell === undefined ? "" : String(cell);
}

type Run = (...args: unknown[][][]) => unknown[][];

export const ours: Definitions = Object.fromEntries(
  Object.entries(functions as unknown as Record<string, Run>).map(([id, run]) => [
    `${NAMESPACE}.${id}`,
    whole(
      0,
      255,
      (args, _, world): Operand => {
        const block = run(...args.map((arg) => argument(arg, world))).map((row) => row.map(taken));
        return isBlock(block) && block.length === 1 && block[0]!.length === 1 ? block[0]![0]! : block;
      },
      { arrays: true },
    ),
  ]),
);
