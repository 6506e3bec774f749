/** All rules in one list. */
import type { FindingCode } from "../../src/findings.ts";
import { cells } from "./cells.ts";
import { cuts } from "./cuts.ts";
import { holes } from "./holes.ts";
import { missing } from "./missing.ts";
import { plan } from "./plan.ts";
import type { Rule, Rules } from "./rule.ts";
import { threads } from "./threads.ts";
import { walls } from "./walls.ts";

export const FILES: readonly Rules[] = [cells, plan, missing, cuts, threads, holes, walls];

export const rulesOf = (code: FindingCode): readonly Rule[] => FILES.flatMap((file) => file[code] ?? []);

export const rules = (): Rule[] => FILES.flatMap((file) => Object.values(file).flatMap((rule) => rule ?? []));
