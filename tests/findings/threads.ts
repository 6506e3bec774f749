/** Rules of threads. */
import type { Rules } from "./rule.ts";

export const threads: Rules = {};
