/** What every finding says in English: the sentence with its number and limit, and a way out. A code without one does not compile. */
import type { FindingWords } from "../types.ts";
import { cutting } from "./findings/cutting.ts";
import { holes } from "./findings/holes.ts";
import { outcome } from "./findings/outcome.ts";
import { table } from "./findings/table.ts";
import { threads } from "./findings/threads.ts";
import { walls } from "./findings/walls.ts";

export const findings: FindingWords = { ...table, ...cutting, ...outcome, ...threads, ...holes, ...walls };
