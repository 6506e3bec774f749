/** English with the steps of a row's chain, for what shows one row: cells do without. */
import { chain } from "../chain.ts";
import type { Words } from "../types.ts";
import { en } from "./index.ts";
import { steps } from "./steps.ts";

export const full: Words = { ...en, chain: (plan) => chain(plan, en, steps) };
