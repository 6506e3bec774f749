/** The classic script that Excel loads: gives every worksheet function to the custom-functions runtime. */
import { CellError } from "./cells.ts";
import * as functions from "./index.ts";

interface Runtime {
  associate(id: string, run: (...args: unknown[]) => unknown): void;
  Error?: new (code: string, message?: string) => unknown;
}
declare const CustomFunctions: Runtime | undefined;

if (typeof CustomFunctions !== "undefined") {
  const runtime = CustomFunctions;
  /** Error objects of ours become the host's, in their place in the block. */
  const toHost = (cell: unknown) =>
    cell instanceof CellError && runtime.Error ? new runtime.Error(cell.code, cell.message) : cell;
  for (const [id, run] of Object.entries(functions)) {
    runtime.associate(id, (...args) =>
      (run as (...a: unknown[]) => unknown[][])(...args).map((row) => row.map(toHost)),
    );
  }
}
