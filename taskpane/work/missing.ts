/** What it means that a list is missing. */
import type { Block } from "../host/host.ts";
import { LISTS } from "./types.ts";

/** What becomes of the rows of a plan, in the order of LISTS. */
const MEANS: Readonly<Record<(typeof LISTS)[number], string>> = {
  Materials: "every row stops, as no material is known",
  Tools:
    "a row that names a tool stops, and where Tool is blank only drilled holes are planned, with a plain jobber drill",
  Machines:
    "a row that names a machine stops, and where Machine is blank spindle, power and feed limits are not checked, and there is no time and no cost",
};

/** Names of the lists that the workbook has not. */
export const missingLists = (lists: readonly (Block | null)[]): (typeof LISTS)[number][] =>
  LISTS.filter((_, i) => lists[i] === null);

/** A sentence for each list that is missing: "No list Tools in this workbook: …". */
export const missingSentences = (lists: readonly (Block | null)[]): string[] =>
  missingLists(lists).map((name) => `No list ${name} in this workbook: ${MEANS[name]}.`);
