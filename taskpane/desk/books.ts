/** The two workbooks of the desk, made once when it is built (bundle.mjs). */
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { blankPlan, planBook } from "./plan-book.ts";

const lists = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
export const demo = (): Uint8Array => planBook(DEMO, lists);
export const blank = (): Uint8Array => planBook(blankPlan(), lists);
