/** The whole table: every row worked out by its operation, then time, tool life and cost. */
import { partCost } from "../cost.ts";
import { TradeError } from "../errors.ts";
import { toolLife } from "../life.ts";
import { planDrill } from "../operations/drill.ts";
import { planHole } from "../operations/hole.ts";
import { type Done, type Job, startJob } from "../operations/shared/job.ts";
import type { RowPlan } from "../operations/shared/types.ts";
import { tidy } from "../operations/shared/work.ts";
import { planThreadMill } from "../operations/thread-mill.ts";
import { planWall } from "../operations/wall.ts";
import { RESULT_COLUMNS } from "../table/columns.ts";
import { type Cells, type Lists, type ReadRow, readLists, readRows } from "../table/read.ts";
import { type DimensionName, fromCanonical } from "../units.ts";

export interface Blocks {
  readonly rows: Cells;
  readonly materials: Cells;
  readonly tools: Cells;
  readonly machines: Cells;
}

export interface TablePlan {
  /** One per input row; undefined for a row without content. */
  readonly lines: readonly (RowPlan | undefined)[];
  readonly header: readonly string[];
  /** One line per input row under `header`; lengths etc. in the row's units, "" where there is nothing. */
  readonly block: readonly (readonly (number | string)[])[];
}

/** Works out a table given as blocks of cells, each with its heading row. Without `detail` the steps are left out. */
export function planTable(blocks: Blocks, detail = true): TablePlan {
  const lists = readLists(blocks.materials, blocks.tools, blocks.machines);
  const rows = readRows(blocks.rows);
  const lines = planRows(rows, lists, detail);
  return { lines, header: RESULT_COLUMNS.map((c) => c.heading), block: lines.map((line) => resultCells(line)) };
}

/** Result lines of rows that were worked out before, for one set of lists and headings. */
export interface PlanMemory {
  basis: string;
  readonly lines: Map<string, (number | string)[]>;
}
/** Lines that are remembered at the most. */
const REMEMBERED = 20_000;

/**
 * The block of planTable with its heading row. A row whose cells, lists and share of the setup are as they were when
 * `memory` saw it is not worked out again: after an edit, one row is.
 */
export function planBlock(blocks: Blocks, memory: PlanMemory): (number | string)[][] {
  const named = [...blocks.materials, [], ...blocks.tools, [], ...blocks.machines, blocks.rows[0] ?? []];
  const basis = named.map(rowText).join("\n");
  if (basis !== memory.basis || memory.lines.size > REMEMBERED) {
    memory.basis = basis;
    memory.lines.clear();
  }
  let lists: Lists | undefined;
  const rows = readRows(blocks.rows);
  const sharing = sharedSetups(rows);
  const lines = rows.map((read, i) => {
    const share = sharing(read);
    const key = `${share} ${rowText(blocks.rows[i + 1]!)}`;
    let line = memory.lines.get(key);
    if (line === undefined) {
      lists ??= readLists(blocks.materials, blocks.tools, blocks.machines);
      line = resultCells(read.empty ? undefined : planRow(read, lists, share, false));
      memory.lines.set(key, line);
    }
    return [...line];
  });
  return [RESULT_COLUMNS.map((c) => c.heading), ...lines];
}

/** Cells as text that tells kinds apart: a blank is not 0, a number not its text, a NaN not a blank. */
const rowText = (cells: readonly unknown[]) =>
  cells
    .map((cell) => {
      if (cell === null || cell === undefined) return "";
      if (typeof cell === "string") return JSON.stringify(cell);
      if (typeof cell !== "object") return String(cell);
      return `#${String((cell as { code?: unknown }).code)}`;
    })
    .join(",");

/** How many rows share the setup of a row's machine. */
function sharedSetups(rows: readonly ReadRow[]): (read: ReadRow) => number {
  const perMachine = new Map<string, number>();
  for (const { row, empty } of rows) {
    const key = row.machine?.toLowerCase();
    if (!empty && key !== undefined) perMachine.set(key, (perMachine.get(key) ?? 0) + 1);
  }
  return ({ row }) => perMachine.get(row.machine?.toLowerCase() ?? "") ?? 1;
}

/** Works out rows that are read already. A machine's setup is shared by the rows planned on it. */
export function planRows(rows: readonly ReadRow[], lists: Lists, detail = true): (RowPlan | undefined)[] {
  const sharing = sharedSetups(rows);
  return rows.map((read) => (read.empty ? undefined : planRow(read, lists, sharing(read), detail)));
}

/** One row. `sharing` rows of the table share the setup of its machine. */
export function planRow(read: ReadRow, lists: Lists, sharing = 1, detail = true): RowPlan {
  const job = startJob(read, lists, detail);
  const more = kept(job, () => {
    const done = read.row.operation === undefined || read.row.units === undefined ? {} : operate(job);
    return timeAndCost(job, done, sharing);
  });
  return { ...job.work.finish(read.name, read.row.operation ?? ""), ...more };
}

/** Whatever ends the working out of a row becomes a reason of that row and leaves the other rows alone. */
function kept<T>({ work }: Job, run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    const trade = error instanceof TradeError;
    // A value that is no number any more says nothing to the person who typed the sizes behind it.
    const beyond = trade && typeof error.value === "number" && !Number.isFinite(error.value);
    work.reason(
      "stop",
      trade ? "cannot-be-computed" : "fault",
      beyond
        ? "a size in the row or in its lists leads beyond any number that means something"
        : trade
          ? error.text((v, d) => work.say(v, (d ?? "length") as DimensionName))
          : `this should not happen, please report it: ${String(error)}`,
      "check the sizes in the row and in the lists it names",
    );
    return undefined;
  }
}

function operate(job: Job): Done {
  switch (job.operation) {
    case "drill":
      return planDrill(job);
    case "thread mill":
      return planThreadMill(job);
    case "tap":
    case "ream":
    case "countersink":
      return planHole(job);
    default:
      return planWall(job);
  }
}

function timeAndCost(job: Job, done: Done, sharing: number): Pick<RowPlan, "time" | "money" | "life"> {
  const { work, row, machine } = job;
  const t = done.time;
  if (!t || !machine) return {};
  const each = t.cutting + t.moving + t.waiting;
  const quantity = row.quantity ?? 1;
  const change = machine.toolChange ?? 0;
  const time = each * quantity + change;
  if (!Number.isFinite(time) || time <= 0) {
    work.reason("stop", "no-time", "the time of the row is beyond any number that means something", "check its sizes");
    return {};
  }
  STEPS: work.step("time", "time per part", time, "time each × quantity + one tool change", "COMMON", { unit: "s" });
  work.set({ timeEach: each, time });
  if (t.cutting > 1.2 * t.ideal && t.cutting - t.ideal > 0.5) {
    work.reason(
      "ok",
      "acceleration-time",
      `acceleration costs ${((t.cutting - t.ideal) * quantity).toFixed(1)} s of the cutting time per part`,
      "a machine that accelerates faster, or fewer and longer moves",
      { value: t.cutting, limit: t.ideal },
    );
  }
  const seconds = { ...t, change };
  const life = edgeLife(job, done);
  if (machine.rate === undefined) return { time: seconds, life };
  let toolCost = 0;
  if (done.cutting && done.tool?.price !== undefined && life !== undefined) {
    const share = (done.cutting.seconds * quantity) / 60 / life;
    toolCost = (share * done.tool.price) / (done.tool.edges ?? 1);
    STEPS: work.step("toolCost", "tool cost per part", toolCost, "cutting time / life × price / edges", "COMMON", {
      unit: "money",
    });
  }
  const setup = row.batch === undefined ? 0 : ((machine.setup ?? 0) * 60) / sharing;
  if (!Number.isFinite(machine.rate * (time + setup) + toolCost)) {
    work.reason("stop", "no-cost", "the cost is beyond any number that means something", "check Rate, Setup and Price");
    return { time: seconds, life };
  }
  const cost = partCost(time, machine.rate, row.batch ?? 1, setup, toolCost);
  STEPS: work.step(
    "cost",
    "cost per part",
    cost,
    row.batch === undefined
      ? "rate·time/3600 + tool cost; no setup, because Batch is blank"
      : `rate·(time + setup/batch)/3600 + tool cost; ${sharing > 1 ? `the setup is shared by the ${sharing} rows on this machine` : "setup of the machine"}`,
    "COMMON",
    { unit: "money", cell: work.formula("PARTCOST", time, machine.rate, row.batch ?? 1, setup, toolCost) },
  );
  work.set({ cost });
  const money = {
    machine: (machine.rate * time) / 3600,
    setup: (machine.rate * setup) / (3600 * (row.batch ?? 1)),
    tool: toolCost,
  };
  return { time: seconds, money, life };
}

/**
 * Life of an edge [min]. The list's reference life belongs to carbide at the top of its speed range; for HSS nothing
 * is known.
 */
function edgeLife({ work, material }: Job, { tool, cutting }: Done): number | undefined {
  const reference = material?.speedCarbideHigh;
  if (!cutting || tool === undefined || tool.substrate === "hss" || reference === undefined) return undefined;
  if (!material?.taylorN || !material.referenceLife) return undefined;
  const speed = cutting.surfaceSpeed;
  try {
    const life = toolLife(speed, reference, material.referenceLife, material.taylorN);
    STEPS: work.step(
      "life",
      "tool life (estimate)",
      life,
      "Taylor V·T^n = C from the top of the material's speed range",
      "TAYLOR1907",
      { unit: "min", cell: work.formula("TOOLLIFE", speed, reference, material.referenceLife, material.taylorN) },
    );
    return life;
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    work.reason(
      "check",
      "no-life",
      `no tool life: ${error.text((v) => tidy(v, 1))}`,
      "check Taylor n, Reference life and speed; tool cost is not in the cost",
    );
    return undefined;
  }
}

/** A row's results as cells in its own units, in the order of RESULT_COLUMNS. */
function resultCells(line: RowPlan | undefined): (number | string)[] {
  return RESULT_COLUMNS.map((column) => {
    const value = line?.results[column.key];
    if (value === null || value === undefined) return "";
    if (typeof value !== "number") return value;
    if (!Number.isFinite(value)) return "";
    return column.dimension ? fromCanonical(value, column.dimension as DimensionName, line!.units) : value;
  });
}
