/** The rows of a table as a quote counts them: which have a time, what each spends, who bears the setup, who changes the tool. */

import type { Lists, Machine, ReadRow } from "../table/read.ts";
import { en } from "../words/en/index.ts";
import { errorText } from "../words/errors.ts";
import { tidy } from "../words/say.ts";
import type { RowPlan } from "../words/worded.ts";
import type { LeftOut, Paid, QuoteOptions, QuoteRow, Spent } from "./types.ts";

/** Seconds or money that nobody quotes; keeps sums finite. */
const BEYOND = 1e15;
/** Parts that nobody makes in one batch. */
export const LARGEST_BATCH = 1e9;

interface Timed {
  readonly at: number;
  readonly line: RowPlan;
  readonly read: ReadRow;
  readonly machine: Machine;
}

export function countedRows(
  lines: readonly (RowPlan | undefined)[],
  rows: readonly ReadRow[],
  lists: Lists,
  options: QuoteOptions,
): { counted: QuoteRow[]; leftOut: LeftOut[]; changes: number } {
  const timed: Timed[] = [];
  const leftOut: LeftOut[] = [];
  const changing = new Set<number>();
  const spindles = new Map<string, string>();
  lines.forEach((line, at) => {
    const read = rows[at];
    if (line === undefined || read === undefined) return;
    const machine = read.row.machine === undefined ? undefined : lists.machines.find(read.row.machine);
    const tool = `${toolLabel(line, read) ?? `row ${at}`}`.toLowerCase();
    const place = read.row.machine?.trim().toLowerCase() ?? "";
    const reason = options.leave?.get(at) ?? whyLeftOut(line, read, machine);
    if (reason === undefined) {
      timed.push({ at, line, read, machine: machine! });
      if (spindles.get(place) !== tool) changing.add(at);
    } else leftOut.push({ at, name: rowName(line, at), reason });
    // A row without a time still leaves its tool in the spindle.
    spindles.set(place, tool);
  });
  const sharing = new Map<Machine, number>();
  for (const { machine } of timed) sharing.set(machine, (sharing.get(machine) ?? 0) + 1);
  const counted: QuoteRow[] = [];
  for (const t of timed) {
    const row = countRow(t, changing.has(t.at), sharing.get(t.machine)!, options.batch);
    const sane = row.seconds < BEYOND && (row.money ?? 0) < BEYOND && (row.edges ?? 0) < BEYOND;
    if (sane && (row.batch ?? 1) <= LARGEST_BATCH) counted.push(row);
    else
      leftOut.push({
        at: t.at,
        name: row.name,
        reason: "its time, cost or batch is beyond any number that means something",
      });
  }
  leftOut.sort((a, b) => a.at - b.at);
  return { counted, leftOut, changes: counted.filter((row) => changing.has(row.at)).length };
}

const rowName = (line: RowPlan, at: number): string => String(line.row ?? at + 1);

/** Why a row cannot be in the total; undefined when it can. */
function whyLeftOut(line: RowPlan, read: ReadRow, machine: Machine | undefined): string | undefined {
  const quantity = read.problems.find((p) => p.key === "quantity");
  if (quantity) return errorText(quantity.error, en.errors);
  const t = line.time;
  if (t && machine && [t.cutting, t.moving, t.waiting, t.ideal, t.change].every(Number.isFinite)) return undefined;
  const stop = line.reasons.find((r) => r.severity === "stop");
  if (stop) return stop.text;
  if (machine && (machine.rapid === undefined || machine.acceleration === undefined)) {
    const missing = [machine.rapid === undefined && "Rapid", machine.acceleration === undefined && "Acceleration"];
    return `${machine.machine} has no ${missing.filter(Boolean).join(" and no ")} in the list Machines`;
  }
  return line.reasons[0]?.text ?? "no time could be worked out";
}

/** The tool as the quote names it: the list's, else what the row needs; undefined when nothing tells. */
function toolLabel(line: RowPlan, { row }: ReadRow): string | undefined {
  const used = line.results.tool ?? row.tool;
  if (typeof used === "string" && used !== "") return used;
  const drill = line.results.drill;
  if (line.operation === "drill" && typeof drill === "string") return `drill ${drill} (not in the list)`;
  const size = line.operation === "tap" ? row.thread : undefined;
  const diameter = row.finishDiameter;
  if (size !== undefined) return `${line.operation} ${size} (not in the list)`;
  if (diameter === undefined) return undefined;
  const shown = line.units === "in" ? `${tidy(diameter / 25.4, 4)} in` : `${tidy(diameter)} mm`;
  return `${line.operation} ${shown} (not in the list)`;
}

function countRow({ at, line, read, machine }: Timed, changes: boolean, sharing: number, forced?: number): QuoteRow {
  const { row } = read;
  const t = line.time!;
  const quantity = row.quantity ?? 1;
  const batch = forced ?? row.batch;
  const time: Spent = {
    cutting: t.cutting * quantity,
    moving: t.moving * quantity,
    waiting: t.waiting * quantity,
    change: changes ? t.change : 0,
    setup: batch === undefined ? 0 : ((machine.setup ?? 0) * 60) / sharing / batch,
  };
  const seconds = time.cutting + time.moving + time.waiting + time.change + time.setup;
  const rate = machine.rate ? machine.rate / 3600 : undefined;
  const paid: Paid | undefined =
    rate === undefined
      ? undefined
      : {
          cutting: rate * time.cutting,
          moving: rate * time.moving,
          waiting: rate * time.waiting,
          change: rate * time.change,
          setup: rate * time.setup,
          tool: line.money?.tool ?? 0,
        };
  const { time: ownSeconds, cost } = line.results;
  return {
    at,
    name: rowName(line, at),
    operation: line.operation,
    feature: row.feature,
    tool: toolLabel(line, read) ?? "tool not known",
    machine: machine.machine,
    verdict: line.verdict,
    reason: line.reasons[0]?.text,
    quantity,
    batch,
    time,
    seconds,
    ideal: t.ideal * quantity,
    paid,
    money: paid && seconds * rate! + paid.tool,
    edges: line.life === undefined ? undefined : time.cutting / 60 / line.life,
    own: {
      seconds: typeof ownSeconds === "number" ? ownSeconds : 0,
      money: typeof cost === "number" ? cost : undefined,
    },
  };
}
