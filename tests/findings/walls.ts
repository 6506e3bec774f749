/** Rules of walls. */
import type { Rules } from "./rule.ts";

export const walls: Rules = {};
