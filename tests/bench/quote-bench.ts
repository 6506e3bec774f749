/** From pasted callouts to a filled plan and a quote, without a screen. */

import { calloutBlock, readCallouts } from "../../src/callouts/callouts.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planTable } from "../../src/plan/table.ts";
import { quote } from "../../src/quote/quote.ts";
import { ROW_COLUMNS } from "../../src/table/columns.ts";
import { readLists, readRows } from "../../src/table/read.ts";

const CALLOUTS = [
  (i: number) => `${2 + (i % 7)}X ⌀.201 ↧ .${50 + (i % 40)}`,
  (i: number) => `${1 + (i % 5)}X 3/8-16 UNC-2B ↧ .${70 + (i % 25)}`,
  (i: number) => `M8×1.25-6H ↧${10 + (i % 9)} / ⌀6.8 ↧${20 + (i % 9)}`,
  (i: number) => `2X ⌀12 H7 ↧${8 + (i % 20)}`,
  (i: number) => `M6 ↧${8 + (i % 8)}`,
];

/** The same, each at a depth of its own. */
const UNLIKE = [
  (i: number) => `${2 + (i % 7)}X ⌀.201 ↧ .${5000 + i}`,
  (i: number) => `${1 + (i % 5)}X 3/8-16 UNC-2B ↧ .${7000 + i}`,
  (i: number) => `M8×1.25-6H ↧${10 + i / 100} / ⌀6.8 ↧${20 + i / 100}`,
  (i: number) => `2X ⌀12 H7 ↧${8 + i / 50}`,
  (i: number) => `M6 ↧${8 + i / 100}`,
];

export const quoteBench = () => [
  timed("500 callouts to rows, plan and quote", CALLOUTS),
  timed("the same, no two of one depth", UNLIKE),
];

function timed(name: string, callouts: readonly ((i: number) => string)[]) {
  const text = Array.from({ length: 500 }, (_, i) => callouts[i % callouts.length]!(i)).join("\n");
  const headings = ROW_COLUMNS.map((c) => c.heading);
  const machine = String(MACHINES[2]![0]);
  const start = performance.now();
  const { rows } = readCallouts(text, { material: "Steel C45 (AISI 1045)", machine });
  const table = [headings, ...calloutBlock(rows, headings)];
  // Without steps, as the pane and the worksheet function plan a table.
  const { lines } = planTable({ rows: table, materials: MATERIALS, tools: TOOLS, machines: MACHINES }, false);
  const summary = quote(lines, readRows(table), readLists(MATERIALS, TOOLS, MACHINES), { batch: 25 });
  const value = performance.now() - start;
  const note = `${rows.length} rows, ${summary.rows.length} with a time, ${(summary.seconds / 60).toFixed(0)} min a part`;
  return { name, value, unit: "ms", note };
}
