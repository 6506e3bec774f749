/** English with the steps of a row's chain, for what shows one row: cells do without. */
import { chain } from "../chain.ts";
import type { Words } from "../types.ts";
import { en } from "./index.ts";
import { steps } from "./steps.ts";

const withSteps = (words: Words): Words => ({ ...words, chain: (plan) => chain(plan, words, steps) });

export const full: Words = /* @__PURE__ */ withSteps(en);
