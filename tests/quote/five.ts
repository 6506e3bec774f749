/** Five rows whose quote was added up by hand, and what has to agree in any quote. */
import { expect } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { RowTime } from "../../src/operations/shared/types.ts";
import type { QuoteSummary } from "../../src/quote/types.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import type { RowPlan } from "../../src/words/worded.ts";

export const LISTS = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
export const lists = readLists(MATERIALS, TOOLS, MACHINES);
export const demo = (rows: readonly number[]) => [DEMO[0]!, ...rows.map((r) => DEMO[r]!)];
export const all = DEMO.slice(1).map((_, i) => i + 1);
export const sum = (values: readonly (number | undefined)[]) => values.reduce<number>((s, v) => s + (v ?? 0), 0);

/** A planned row with numbers chosen by hand; `tool` money per part as the plan would have it. */
export function made(
  operation: string,
  tool: string,
  time: RowTime,
  own: { life?: number; tool?: number } = {},
): RowPlan {
  return {
    row: null,
    operation,
    units: "mm",
    verdict: "ok",
    findings: [],
    plain: {},
    reasons: [],
    limits: [],
    steps: [],
    results: { tool },
    time,
    money: { machine: 0, setup: 0, tool: own.tool ?? 0 },
    life: own.life,
  };
}

export const SHOP = readLists(
  [["Material"]],
  [
    ["Tool", "Kind", "Units", "Diameter", "Price", "Edges"],
    ["T1", "thread mill single", "mm", 6, 80, 1],
    ["F1", "face mill", "mm", 50, 60, 4],
  ],
  [
    ["Machine", "Tool change [s]", "Rate [per hour]", "Setup [min]"],
    ["A", 6, 60, 30],
    ["B", 10, 90, 20],
    ["C", 10, 0, 20],
    ["D", 10, null, 20],
  ],
);

/** Five rows whose quote was added up with pencil and paper. */
export const FIVE = [
  made("drill", "D1", { cutting: 3, moving: 1, waiting: 0, ideal: 3, change: 6 }),
  made("drill", "D1", { cutting: 4, moving: 1, waiting: 0, ideal: 4, change: 6 }),
  // 10 × 12 s = 2 min of a 40 min edge: 0.05 edges at 80
  made("thread mill", "T1", { cutting: 12, moving: 2, waiting: 1, ideal: 10, change: 6 }, { life: 40, tool: 4 }),
  // 1 min of a 30 min edge, four edges for 60
  made("face", "F1", { cutting: 60, moving: 6, waiting: 0, ideal: 60, change: 10 }, { life: 30, tool: 0.5 }),
  made("bore", "E1", { cutting: 30, moving: 5, waiting: 0, ideal: 24, change: 10 }),
];
export const fiveRows = (batch: number | null = 20, machines = ["A", "A", "A", "B", "B"]) =>
  readRows([
    ["Row", "Operation", "Units", "Quantity", "Machine", "Batch"],
    ...[10, 5, 10, 1, 2].map((n, i) => [i + 1, FIVE[i]!.operation, "mm", n, machines[i], batch]),
  ]);
export const named = <T extends { name: string }>(groups: readonly T[], name: string) =>
  groups.find((g) => g.name === name)!;

/** Everything that has to agree in any quote. */
export function consistent(q: QuoteSummary): void {
  const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(b)));
  near(sum(Object.values(q.time)), q.seconds);
  if (q.paid) near(sum(Object.values(q.paid)), q.money!);
  for (const groups of [q.operations, q.tools, q.machines]) {
    near(sum(groups.map((g) => g.seconds)), q.seconds);
    near(sum(groups.map((g) => g.cutting)), q.time.cutting);
    if (q.money !== undefined) near(sum(groups.map((g) => g.money)), q.money);
    if ((q.money ?? q.seconds) > 0) near(sum(groups.map((g) => g.share)), 1);
    expect(sum(groups.map((g) => g.rows))).toBe(q.rows.length);
  }
  near(sum(q.tools.map((t) => t.toolMoney)), q.paid?.tool ?? 0);
  near(sum(q.rows.map((r) => r.seconds)), q.seconds);
  expect(q.secondsBand.low).toBeLessThanOrEqual(q.seconds * (1 + 1e-12));
  expect(q.secondsBand.high).toBeGreaterThanOrEqual(q.seconds * (1 - 1e-12));
  if (q.moneyBand) {
    expect(q.moneyBand.low).toBeLessThanOrEqual(q.money! * (1 + 1e-12));
    expect(q.moneyBand.high).toBeGreaterThanOrEqual(q.money! * (1 - 1e-12));
  }
}
