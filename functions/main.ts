/** The classic script that Excel loads: gives every worksheet function to the custom-functions runtime. */
import { CellError, ERROR_CODES } from "./cells.ts";
import * as functions from "./index.ts";

interface Runtime {
  associate(id: string, run: (...args: unknown[]) => unknown): void;
  Error?: new (code: string, message?: string) => unknown;
}
declare const CustomFunctions: Runtime | undefined;

if (typeof CustomFunctions !== "undefined") {
  const runtime = CustomFunctions;
  /** Error objects of ours become the host's, in their place in the block. */
  const toHost = (cell: unknown) => {
    if (!(cell instanceof CellError) || !runtime.Error) return cell;
    // Newer errors such as #SPILL! cannot be handed back; their message still names them.
    const code = (ERROR_CODES as readonly string[]).includes(cell.code) ? cell.code : "#VALUE!";
    return new runtime.Error(code, cell.message);
  };
  for (const [id, run] of Object.entries(functions)) {
    runtime.associate(id, (...args) =>
      (run as (...a: unknown[]) => unknown[][])(...args).map((row) => row.map(toHost)),
    );
  }
}
