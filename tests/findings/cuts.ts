/** Rules of cuts, lists and tools' names. */
import type { Rules } from "./rule.ts";

export const cuts: Rules = {};
