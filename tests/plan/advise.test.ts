import { describe, expect, it } from "vitest";
import { ADVISE, PLAN } from "../../functions/plan.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { advise, advising } from "../../src/plan/advise.ts";
import { candidatesFor, situationOf, withChanges } from "../../src/plan/changes.ts";
import { RELIEF } from "../../src/plan/relief.ts";
import { planRow } from "../../src/plan/row.ts";
import { ADVICE_BUDGET } from "../../src/plan/search.ts";
import { ROW_COLUMNS } from "../../src/table/columns.ts";
import { type ReadRow, readLists, readRows } from "../../src/table/read.ts";
import { type DimensionName, fromCanonical } from "../../src/units.ts";
import { changeText } from "../../src/words/advice.ts";
import { en } from "../../src/words/en/index.ts";
import { blockOf, caseLists, caseRow, type RowCells } from "../findings/rule.ts";

const lists = readLists(MATERIALS, TOOLS, MACHINES);
const head = DEMO[0]!;
const rows = readRows(DEMO);
const row = (name: number) => rows.find((r) => r.name === name)!;
const cellsOf = (name: number) => [...DEMO.find((r) => r[0] === name)!] as unknown[];

/** PLAN of one row as a sheet gives it: a record by heading. */
function planned(cells: readonly unknown[]): Record<string, unknown> {
  const block = PLAN([[...head], [...cells]], MATERIALS as any[][], TOOLS as any[][], MACHINES as any[][]);
  return Object.fromEntries(block[0]!.map((h, i) => [String(h), block[1]![i]]));
}

/** The row with changes typed into its cells, in its own units. */
function typed(read: ReadRow, changes: readonly { key: string; to: number | string | null }[]): unknown[] {
  const cells = cellsOf(read.name as number);
  for (const { key, to } of changes) {
    const column = ROW_COLUMNS.find((c) => c.key === key)!;
    const value =
      typeof to === "number" && column.dimension
        ? fromCanonical(to, column.dimension as DimensionName, read.row.units!)
        : to;
    cells[(head as readonly unknown[]).indexOf(column.heading)] = value;
  }
  return cells;
}

describe("advice (identity: typed into the table and planned again)", () => {
  const helped = rows.map((read) => ({ read, ...advise(read, lists) })).filter((a) => a.advice.length > 0);
  it("finds something for a good part of the demo job, within its bound", () => {
    expect(helped.length).toBeGreaterThan(20);
    for (const { tried } of helped) expect(tried).toBeLessThanOrEqual(ADVICE_BUDGET);
  });
  it("rests before each time that the row is worked out, but the first", () => {
    for (const { read, tried, advice } of helped) {
      const steps = advising(read, lists);
      let rests = 0;
      let step = steps.next();
      for (; !step.done; step = steps.next()) rests++;
      expect(rests, String(read.name)).toBe(tried - 1);
      expect(step.value.advice).toEqual(advice);
    }
  });
  it("keeps its promise: the changed row has the verdict, time and load that were shown, never worse than it was", () => {
    for (const { read, advice } of helped) {
      for (const { changes, before, after } of advice) {
        const plan = planned(typed(read, changes));
        const at = `${String(read.name)}: ${changes.map((c) => changeText(c, read.row.units!, en)).join("; ")}`;
        expect(plan.Verdict, at).toBe(after.verdict);
        expect(after.verdict === "ok" || (before.verdict === "stop" && after.verdict === "check"), at).toBe(true);
        expect(plan.Time as number, at).toBeCloseTo(after.time!, 6);
        expect(plan.Load as number, at).toBeCloseTo(after.load!, 6);
      }
    }
  });
  it("offers a cheaper row only where it is cheaper, and small changes only to rows that do not hold", () => {
    for (const { advice, read } of helped) {
      for (const { kind, before, after, changes } of advice) {
        if (kind === "cheapest" && before.verdict === "ok" && before.cost !== null)
          expect(after.cost!, String(read.name)).toBeLessThan(before.cost);
        if (kind === "smallest change") {
          expect(before.verdict).not.toBe("ok");
          expect(changes.length).toBeLessThanOrEqual(2);
        }
      }
    }
  });
  it("holds no tool further out than it is (a machinist's rule: as short as may be)", () => {
    for (const { read, advice } of helped)
      for (const { changes } of advice)
        for (const { key, from, to } of changes)
          if (key === "stickOut" && typeof to === "number" && typeof from === "number")
            expect(to, String(read.name)).toBeLessThan(from);
  });
  it("leaves out of the cheapest row what it does as well without", () => {
    for (const { advice, read } of helped) {
      const fast = advice.find((a) => a.kind === "cheapest");
      if (!fast || fast.changes.length < 2) continue;
      for (const one of fast.changes) {
        const plan = planned(
          typed(
            read,
            fast.changes.filter((c) => c !== one),
          ),
        );
        const worse = plan.Verdict !== "ok" || (plan.Cost as number) > fast.after.cost! * (1 + 1e-9);
        expect(worse, `${String(read.name)} without ${one.heading}`).toBe(true);
      }
    }
  });
  it("is not beaten by other speeds of the same row", () => {
    for (const name of [50, 260, 590, 660]) {
      const read = row(name);
      const fast = advise(read, lists).advice.find((a) => a.kind === "cheapest");
      if (!fast) continue;
      const material = lists.materials.find(read.row.material!)!;
      const tool = lists.tools.find(String(planned(cellsOf(name)).Tool))!;
      const [low, high] =
        tool.substrate === "hss"
          ? [material.speedHssLow!, material.speedHssHigh!]
          : [material.speedCarbideLow!, material.speedCarbideHigh!];
      for (const s of [0, 0.3, 0.6, 1]) {
        const plan = planned(typed(read, [{ key: "surfaceSpeed", to: low + s * (high - low) }]));
        if (plan.Verdict === "ok")
          expect(fast.after.cost!, `${name} at ${s}`).toBeLessThanOrEqual((plan.Cost as number) * 1.03);
      }
    }
  });
  it("finds the middle of the speeds where an edge's price makes it the cheapest", () => {
    const one = {
      row: {
        ...{ Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3", Operation: "side" },
        ...{ Tool: "EM-12-4", Depth: 12, Length: 600, "Radial depth": 0.5, Quantity: 10, Batch: 100 },
      },
      tool: { Price: 100 },
    };
    const [read, own] = [caseRow(one), caseLists(one)];
    const { speedCarbideLow: low, speedCarbideHigh: high } = own.materials.find(read.row.material!)!;
    const at = (surfaceSpeed: number) => planRow({ ...read, row: { ...read.row, surfaceSpeed } }, own);
    const middle = at((low! + high!) / 2);
    expect(middle.verdict).toBe("ok");
    expect(middle.results.cost!).toBeLessThan(Math.min(at(low!).results.cost!, at(high!).results.cost!));
    const fast = advise(read, own).advice.find((a) => a.kind === "cheapest")!;
    expect(fast.after.cost!).toBeLessThanOrEqual(middle.results.cost! * (1 + 1e-9));
  });
  it("in titanium goes slower where a dear edge lives longer for it, and never faster", () => {
    const one = {
      row: {
        ...{ Units: "mm", Material: "Titanium Ti-6Al-4V (UNS R56400)", Machine: "Centre V3", Operation: "side" },
        ...{ Tool: "EM-12-4", Depth: 12, Length: 600, "Radial depth": 0.5, Quantity: 10, Batch: 100 },
      },
      tool: { Price: 2000 },
    };
    const [read, own] = [caseRow(one), caseLists({ ...one, tools: undefined })];
    const only = { ...own, tools: { ...own.tools, items: own.tools.items.filter((t) => t.tool === "EM-12-4") } };
    const at = (surfaceSpeed?: number) => planRow({ ...read, row: { ...read.row, surfaceSpeed } }, only);
    const low = own.materials.find(read.row.material!)!.speedCarbideLow!;
    expect(at(low).verdict).toBe("ok");
    expect(at(low).results.cost!).toBeLessThan(0.97 * at().results.cost!);
    const fast = advise(read, only).advice.find((a) => a.kind === "cheapest")!;
    expect(fast.after.cost!).toBeLessThanOrEqual(at(low).results.cost! * (1 + 1e-9));
    const speed = fast.changes.find((c) => c.key === "surfaceSpeed")!;
    expect(speed.to as number).toBeLessThan(at().results.surfaceSpeed!);
  });
  it.each([
    {
      Operation: "bore",
      Tool: "EM-12-4",
      "Start diameter": 36,
      "Finish diameter": 40,
      Depth: 12,
      Passes: 3,
      "Size tolerance": 0.05,
    },
    { Operation: "thread mill", Tool: "TM-M10-S", Thread: "M10", "Start diameter": 8.5, Depth: 12, Passes: 4 },
    { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20, "Surface speed": 10 },
    { Operation: "ream", Tool: "R-10", "Finish diameter": 10, Depth: 20, Through: "yes", "Feed per tooth": 0.05 },
  ] as readonly RowCells[])(
    "comes within a fifth of the best of all speeds, stick-outs, feeds and passes: %o",
    (cells) => {
      const one = {
        row: {
          ...{
            Units: "mm",
            Material: "Steel C45 (AISI 1045)",
            Machine: "Centre V3",
            Quantity: 20,
          },
          ...cells,
        },
        tool: { Price: 100 },
      };
      const [read, all] = [caseRow(one), caseLists(one)];
      const items = all.tools.items.filter((t) => t.tool === cells.Tool);
      const own = { ...all, tools: { ...all.tools, items } };
      const { row: typedRow } = read;
      const base = planRow(read, own, 1, false);
      const tool = items[0]!;
      const [speed, feed] = [base.results.surfaceSpeed!, base.results.feedPerTooth!];
      const shortest = Math.max(tool.neckLength ?? 0, tool.cuttingLength ?? 0, typedRow.depth ?? 0);
      let least = Number.POSITIVE_INFINITY;
      for (const surfaceSpeed of [0.75, 0.9, 1, 1.1, 1.3].map((f) => f * speed))
        for (const stickOut of [typedRow.stickOut, shortest])
          for (const feedPerTooth of [typedRow.feedPerTooth, 0.8 * feed, 0.5 * feed])
            for (const passes of [typedRow.passes, 1, 2, 3]) {
              const plan = planRow(
                { ...read, row: { ...typedRow, surfaceSpeed, stickOut, feedPerTooth, passes } },
                own,
                1,
                false,
              );
              if (plan.verdict === "ok") least = Math.min(least, plan.results.cost!);
            }
      expect(least).toBeLessThan(0.95 * base.results.cost!);
      const fast = advise(read, own).advice.find((a) => a.kind === "cheapest")!;
      expect(fast.after.cost!).toBeLessThanOrEqual(1.2 * least);
    },
  );
  it("offers the smallest change that holds, and of each cell one (independent: all single changes tried)", () => {
    let offered = 0;
    for (const { read, base, advice } of helped) {
      const small = advice.filter((a) => a.kind === "smallest change" && a.after.verdict === "ok");
      if (small.length === 0 || base === undefined) continue;
      const keys = small.map((a) => a.changes[0]!.key);
      expect(new Set(keys).size, String(read.name)).toBe(keys.length);
      expect(keys.length).toBeLessThanOrEqual(3);
      const [first] = small;
      if (first!.changes.length > 1) continue;
      const situation = situationOf(read.row, base, lists);
      const levers = new Set(base.findings.flatMap((f) => (f.severity === "ok" ? [] : RELIEF[f.code])));
      const holds = candidatesFor(situation, levers).find(({ change, along }) => {
        const row = withChanges(read.row, along ? [change, along] : [change]);
        return planRow({ ...read, row }, lists, 1, false).verdict === "ok";
      })!;
      offered++;
      expect({ key: first!.changes[0]!.key, to: first!.changes[0]!.to }, String(read.name)).toEqual({
        key: holds.change.key,
        to: holds.change.to,
      });
    }
    expect(offered).toBeGreaterThan(5);
  });
  it("is not beaten by fewer passes of the same row, where the row takes more than it needs", () => {
    for (const more of [
      { Operation: "bore", Tool: "EM-12-3", "Start diameter": 39, "Finish diameter": 40, Depth: 12, Passes: 6 },
      { Operation: "thread mill", Tool: "TM-M10-S", Thread: "M10", "Start diameter": 8.5, Depth: 12, Passes: 6 },
    ] as readonly RowCells[]) {
      const cells = { Units: "mm", Material: "Aluminium EN AW-6082 T6 (AA 6061)", Machine: "Centre V4", ...more };
      const read = readRows(blockOf([cells]))[0]!;
      const costs = [1, 2, 3, 4, 5, 6].flatMap((passes) => {
        const plan = planRow({ ...read, row: { ...read.row, passes } }, lists);
        return plan.verdict === "ok" ? [plan.results.cost!] : [];
      });
      const least = Math.min(...costs);
      expect(least, String(more.Operation)).toBeLessThan(0.9 * costs.at(-1)!);
      const fast = advise(read, lists).advice.find((a) => a.kind === "cheapest")!;
      expect(fast.after.cost!, String(more.Operation)).toBeLessThanOrEqual(least * (1 + 1e-9));
    }
  });
  it("names the drill that serves the pitch when the hole is too small", () => {
    const found = advise(row(250), lists).advice[0]!;
    expect(found.changes.map((c) => c.key)).toEqual(["startDiameter"]);
    expect(found.changes[0]!.takes).toBeCloseTo(8.7, 9);
  });
});

describe("CUT.ADVISE (identity)", () => {
  const call = (cells: readonly unknown[]) =>
    ADVISE([[...cells]], [[...head]], MATERIALS as any[][], TOOLS as any[][], MACHINES as any[][]);
  it("spills what the search found, under a heading row", () => {
    const block = call(cellsOf(510));
    const { advice } = advise(row(510), lists);
    expect(block).toHaveLength(1 + advice.length);
    expect(block.slice(1).map((line) => line[0])).toEqual(advice.map((a) => a.kind));
    expect(block[1]![3]).toBe("ok");
  });
  it("has nothing but its headings for a row that nothing listed would help", () => {
    expect(call(cellsOf(720))).toHaveLength(1);
  });
});
