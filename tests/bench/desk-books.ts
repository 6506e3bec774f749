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

/** Callouts of a drawing, five usual kinds in turn, no two of the same depth: none is planned from memory. */
export function manyCallouts(count: number): string {
  const kinds = [
    (n: number) => `6X 3/8-16 UNC-2B ↧ ${(0.5 + n / 4000).toFixed(4)}`,
    (n: number) => `4X ⌀8.5 ↧ ${(12 + n / 100).toFixed(2)}`,
    (n: number) => `M8x1.25-6H ↧ ${(10 + n / 200).toFixed(3)}/${(16 + n / 200).toFixed(3)}`,
    (n: number) => `⌀.266 ↧ ${(0.6 + n / 4000).toFixed(4)} ⌴ ⌀.44 ↧ ${(0.2 + n / 8000).toFixed(4)}`,
    (n: number) => `2X ⌀24 H7 ↧ ${(8 + n / 100).toFixed(2)}`,
  ];
  return Array.from({ length: count }, (_, i) => kinds[i % kinds.length]!(i)).join("\n");
}
