/** Rules of holes. */
import type { Rules } from "./rule.ts";

export const holes: Rules = {};
