/** Counterbores: milled like a bore with a flat bottom, so planned as one. */
import { bore } from "./bore.ts";
import type { Operation } from "./operation.ts";

export const counterbore: Operation = bore;
