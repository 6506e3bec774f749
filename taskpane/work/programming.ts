/** The program of the planned rows as the pane needs it: facts of the selected row or of all, and a comparison in slices. */

import { ProgramCheck } from "../../src/program/check.ts";
import { rowFacts, tableFacts } from "../../src/program/facts.ts";
import type { RowFacts, ToolZero } from "../../src/program/types.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import type { Block, CellValue } from "../host/host.ts";
import { planningBlock, unitsGiven } from "./planning.ts";
import type { PlanBlocks, State } from "./types.ts";

const cellsOf = (block: Block | null | undefined): CellValue[][] =>
  block ? [[...block.headings], ...block.rows.map((row) => [...row])] : [];

/** Table and lists as the plan reads them, when the table tells its units. */
function blocksOf({ table, matching, asked, lists }: Readonly<State>): PlanBlocks | undefined {
  if (table === null || matching === null) return undefined;
  const given = unitsGiven(matching) ?? asked;
  if (given === undefined) return undefined;
  return {
    rows: planningBlock(table, matching, given === "given" ? undefined : given),
    materials: cellsOf(lists[0]),
    tools: cellsOf(lists[1]),
    machines: cellsOf(lists[2]),
  };
}

/** Facts by the plan they are of: the pane shows the same plan many times. */
const known = new WeakMap<RowPlan, RowFacts>();

/** The selected row, from the plan that the pane shows. */
export function selectedFacts(state: Readonly<State>): RowFacts | undefined {
  const { plan, table } = state;
  const selected = table?.selected ?? null;
  if (plan === null || table === null || selected === null) return undefined;
  const before = known.get(plan);
  if (before !== undefined) return before;
  const blocks = blocksOf({ ...state, table: { ...table, rows: [table.rows[selected] ?? []] } });
  if (blocks === undefined) return undefined;
  const [read] = readRows(blocks.rows);
  if (read === undefined || read.empty) return undefined;
  const facts = rowFacts(read, plan, readLists(blocks.materials, blocks.tools, blocks.machines), selected);
  known.set(plan, facts);
  return facts;
}

/** Every row of the table. */
export function allFacts(state: Readonly<State>): RowFacts[] {
  const blocks = blocksOf(state);
  return blocks === undefined ? [] : tableFacts(blocks);
}

export interface Comparison {
  /** Stops it; nothing more is told. */
  cancel(): void;
}

/** Longest time that the page stands still [ms], and blocks between two looks at the clock. */
const SLICE = 12;
const BLOCKS = 500;

/** Reads a program a little at a time, so that the page stays alive, then compares it. */
export function compareInSlices(
  text: string,
  rows: readonly RowFacts[],
  toolZero: ToolZero,
  tell: { progress(share: number): void; done(check: ProgramCheck): void; failed(thrown: unknown): void },
): Comparison {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let check: ProgramCheck | undefined;
  const slice = () => {
    try {
      check ??= new ProgramCheck(text, rows, toolZero);
      const until = performance.now() + SLICE;
      while (check.advance(BLOCKS)) {
        if (performance.now() < until) continue;
        tell.progress(check.progress);
        timer = setTimeout(slice);
        return;
      }
      tell.progress(1);
      tell.done(check);
    } catch (thrown) {
      tell.failed(thrown);
    }
  };
  timer = setTimeout(slice);
  return { cancel: () => clearTimeout(timer) };
}
