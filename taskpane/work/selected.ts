/** The plan of the selected row, and advice for it. */
import type { Units } from "../../src/units.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import type { Block, CellValue } from "../host/host.ts";
import { looking } from "./looking.ts";
import { isEmptyRow, type Matching, planningBlock, unitsGiven } from "./planning.ts";
import type { Store } from "./state.ts";
import type { Advisor, PlanBlocks, Planner, State } from "./types.ts";

export interface Selected {
  /** Plans the selected row alone: quick, whatever the length of the table. */
  plan(): void;
  /** What is planned: the table's inputs and the lists. */
  blocks(table: Block, matching: Matching): PlanBlocks;
  /** Units of a table that has no column for them; undefined where it has, or where nobody said. */
  columnUnits(matching: Matching): Units | undefined;
  /** True where the table's cells or the person say in what units it is. */
  hasUnits(matching: Matching): boolean;
  stop(): void;
}

const blockCells = (block: Block | null | undefined): CellValue[][] =>
  block ? [[...block.headings], ...block.rows.map((row) => [...row])] : [];

export function createSelected(
  { get, set }: Store<State>,
  planner: Planner,
  advise: Advisor | undefined,
  fail: (thrown: unknown) => void,
  isAlive: () => boolean,
): Selected {
  const advising = looking();
  const settled = (matching: Matching): Units | "given" | undefined => unitsGiven(matching) ?? get().asked;
  const hasUnits = (matching: Matching) => settled(matching) !== undefined;
  const columnUnits = (matching: Matching): Units | undefined => {
    const units = settled(matching);
    return units === "given" ? undefined : units;
  };
  const blocks = (table: Block, matching: Matching): PlanBlocks => {
    const [materials, tools, machines] = get().lists.map(blockCells);
    return {
      rows: planningBlock(table, matching, columnUnits(matching)),
      materials: materials!,
      tools: tools!,
      machines: machines!,
    };
  };

  /** Table and lists as they are planned, and the selected row; undefined where that cannot be planned. */
  function toPlan(): { all: PlanBlocks; row: number } | undefined {
    const { table, matching } = get();
    const row = table?.selected ?? null;
    if (table === null || matching === null || row === null) return;
    if (isEmptyRow(table.rows[row]!, matching) || !hasUnits(matching)) return;
    return { all: blocks(table, matching), row };
  }

  function plan(): void {
    advising.stop();
    const asked = toPlan();
    let line: RowPlan | null = null;
    try {
      if (asked) line = planner(asked.all, asked.row)[asked.row] ?? null;
    } catch (thrown) {
      fail(thrown);
    }
    set({ plan: line, suggestions: [] });
    if (asked === undefined || line === null || advise === undefined) return;
    advising.start(
      () => advise(asked.all, asked.row),
      () => isAlive() && get().plan === line,
      (suggestions) => set({ suggestions }),
      fail,
    );
  }

  return { plan, blocks, columnUnits, hasUnits, stop: advising.stop };
}
