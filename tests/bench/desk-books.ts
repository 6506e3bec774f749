/** The workbooks of the desk's figures, and the same cells for a plain page to compare with. */
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planBook } from "../../taskpane/desk/plan-book.ts";

export const DEMO_ROWS = DEMO.length - 1;

/** The demo job over and over, each row a little deeper or shallower than the one it repeats. */
export function longPlan(rows: number): Uint8Array {
  const [head, ...jobs] = DEMO;
  const [number, depth] = [head!.indexOf("Row"), head!.indexOf("Depth")];
  const made = Array.from({ length: rows }, (_, i) => {
    const row = [...jobs[i % jobs.length]!];
    row[number] = (i + 1) * 10;
    const deep = row[depth];
    if (typeof deep === "number" && i >= jobs.length) row[depth] = Math.round(deep * (900 + (i % 97)) * 10) / 10_000;
    return row;
  });
  return planBook([head!, ...made], { materials: MATERIALS, tools: TOOLS, machines: MACHINES });
}

/** Callouts of a drawing as five hundred lines of the usual kinds. */
export function manyCallouts(count: number): string {
  const five = [
    "6X 3/8-16 UNC-2B ↧ .75",
    "4X ⌀8.5 ↧ 20",
    "M8x1.25-6H ↧ 16/20",
    "⌀.266 ↧ .8 ⌴ ⌀.44 ↧ .25",
    "2X ⌀24 H7 ↧ 12",
  ];
  return Array.from({ length: count }, (_, i) => five[i % five.length]).join("\n");
}
