/** Rules of cells, lists and tools' names. */
import type { Rules } from "./rule.ts";

export const cells: Rules = {};
