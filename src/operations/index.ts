/** The operations that a row can name. Exhaustive: a name without a file, or a file without a name, does not compile. */
import type { OperationName, Row, RowKey } from "../table/rows.ts";
import { bore } from "./bore.ts";
import { boss } from "./boss.ts";
import { counterbore } from "./counterbore.ts";
import { countersink } from "./countersink.ts";
import { drill } from "./drill.ts";
import { face } from "./face.ts";
import { COMMON_CELLS, type Operation } from "./operation.ts";
import { ream } from "./ream.ts";
import { side } from "./side.ts";
import { slot } from "./slot.ts";
import { tap } from "./tap.ts";
import { threadMill } from "./thread-mill.ts";

export const OPERATIONS: Readonly<Record<OperationName, Operation>> = {
  drill,
  "thread mill": threadMill,
  bore,
  boss,
  slot,
  side,
  face,
  tap,
  ream,
  countersink,
  counterbore,
};

/** Whether a row's operation looks at a cell at all: what it does not look at can stay out of the way. */
export function usesCell(operation: OperationName | undefined, key: RowKey, row: Row = {}): boolean {
  if (operation === undefined || COMMON_CELLS.includes(key)) return true;
  const { needs, uses } = OPERATIONS[operation];
  return uses.includes(key) || needs(row).includes(key);
}
