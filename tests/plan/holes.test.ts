/** Holes seen by several rows, and proposals that are typed back in. */
import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { Plan } from "../../src/operations/shared/types.ts";
import { planRow } from "../../src/plan/row.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { fromCanonical, type Units } from "../../src/units.ts";

type Cells = Record<string, string | number | null>;
const lists = readLists(MATERIALS, TOOLS, MACHINES);
const plan = (cells: Cells): Plan => planRow(readRows([Object.keys(cells), Object.values(cells)])[0]!, lists);

const THREADS = [
  ...["M3", "M4", "M5", "M6", "M8", "M8x1", "M10", "M10x1.25", "M12", "M16", "M20x1.5", "G1/4"],
  ...[
    "#4-40",
    "#6-32",
    "#8-32",
    "#10-24",
    "#10-32",
    "1/4-20",
    "1/4-28",
    "5/16-18",
    "3/8-16",
    "3/8-24",
    "7/16-14",
    "1/2-13",
    "1/2-20",
  ],
  ...["9/16-18", "5/8-18", "3/4-10", "3/4-16", "7/8-14", "1-8", "1-12"],
];
const MATERIAL = MATERIALS.slice(1).map((row) => String(row[0]));
const MACHINE = MACHINES.slice(1).map((row) => String(row[0]));

/** Random numbers that are the same every time (Lehmer). */
function lehmer(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

function randomHole(random: () => number): Cells {
  const pick = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)]!;
  const units: Units = random() < 0.5 ? "mm" : "in";
  const own = (mm: number) => Number(fromCanonical(mm, "length", units).toPrecision(4));
  const base = { Units: units, Material: pick(MATERIAL), Machine: pick(MACHINE), Through: pick(["yes", "no"]) };
  const operation = pick(["drill", "drill thread", "tap", "ream", "countersink", "thread mill"]);
  const depth = own(4 + 30 * random());
  if (operation === "drill")
    return {
      ...base,
      Operation: "drill",
      "Finish diameter": own(pick([2.5, 3.3, 5, 6.8, 8.5, 10.2, 7.14, 11.1])),
      Depth: depth,
    };
  if (operation === "ream")
    return { ...base, Operation: "ream", "Finish diameter": own(pick([5, 6, 8, 10, 12, 9.525, 16])), Depth: depth };
  if (operation === "countersink")
    return { ...base, Operation: "countersink", "Finish diameter": own(5 + 10 * random()), "Start diameter": own(4) };
  return {
    ...base,
    Operation: operation === "drill thread" ? "drill" : operation,
    Thread: pick(THREADS),
    Depth: depth,
  };
}

/** What a plan says, but for the note that its tool is a proposal. */
const said = (p: Plan) => ({
  verdict: p.verdict,
  codes: p.findings.map((f) => f.code).filter((c) => c !== "tool-proposed"),
  results: Object.fromEntries(
    Object.entries(p.results).map(([k, v]) => [k, typeof v === "number" ? Number(v.toPrecision(9)) : v]),
  ),
});

describe("a proposal that is typed in (identity)", () => {
  it("keeps verdict, reasons and numbers: 300 random holes", () => {
    const random = lehmer(20);
    let typed = 0;
    for (let i = 0; i < 300; i++) {
      const cells = randomHole(random);
      const before = plan(cells);
      const own = (mm: number) => fromCanonical(mm, "length", cells.Units as Units);
      const proposals: Cells[] = [];
      const { tool, startDiameter } = before.results;
      const all: Cells = {};
      if (tool) all.Tool = tool;
      if (typeof startDiameter === "number" && cells["Start diameter"] === undefined)
        all["Start diameter"] = own(startDiameter);
      for (const [key, value] of Object.entries(all)) proposals.push({ [key]: value });
      proposals.push(all);
      for (const proposal of proposals) {
        const after = plan({ ...cells, ...proposal });
        expect(said(after), `${JSON.stringify(cells)} and ${JSON.stringify(proposal)}`).toEqual(said(before));
        typed++;
      }
    }
    expect(typed).toBeGreaterThan(300);
  });
});

describe("one hole: drill, tap and thread mill of a thread see the same drill (identity)", () => {
  it.each(THREADS)("%s", (thread) => {
    const rows = (["drill", "tap", "thread mill"] as const).map((Operation) =>
      plan({
        Operation,
        Units: "mm",
        Material: MATERIAL[2]!,
        Machine: "Centre V3",
        Thread: thread,
        Depth: 6,
        "Hole depth": Operation === "drill" ? null : 30,
      }),
    );
    const [drilled, tapped, milled] = rows as [Plan, Plan, Plan];
    expect(tapped.results.drill).toBe(drilled.results.drill);
    expect(milled.results.drill).toBe(drilled.results.drill);
    expect(milled.results.startDiameter).toBe(tapped.results.startDiameter);
    for (const row of rows) {
      const codes = row.findings.map((f) => f.code);
      expect(codes, row.operation).not.toContain("hole-under-minor");
      expect(codes, row.operation).not.toContain("hole-over-minor");
    }
  });
});

describe("a dowel hole (independent: what a shop runs)", () => {
  const base = {
    Units: "mm",
    Material: "Steel C45 (AISI 1045)",
    Machine: "Centre V3",
    Depth: 20,
    Through: "yes",
  } as const;
  it("10 H7: drill and reamer are both ok and take 10 to 40 s together, where boring from solid takes longer", () => {
    const reamed = plan({ ...base, Operation: "ream", "Finish diameter": 10, "Size class": "H7" });
    const drilled = plan({
      ...base,
      Operation: "drill",
      "Finish diameter": fromCanonical(reamed.results.startDiameter!, "length", "mm"),
    });
    const bored = plan({ ...base, Operation: "bore", "Finish diameter": 10, "Start diameter": 0, "Size class": "H7" });
    expect([reamed.verdict, drilled.verdict]).toEqual(["ok", "ok"]);
    expect(reamed.results.drill).toMatch(/^9\.[78] mm$/);
    const together = reamed.results.timeEach! + drilled.results.timeEach!;
    expect(together).toBeGreaterThan(8);
    expect(together).toBeLessThan(40);
    expect(bored.results.timeEach!).toBeGreaterThan(together);
    expect(reamed.results.sizeMin).toBe(10);
    expect(reamed.results.sizeMax).toBe(10.015);
  });
  it("a drill alone is told to be too coarse for H7", () => {
    const codes = plan({
      ...base,
      Operation: "drill",
      Tool: "D-9.7",
      "Finish diameter": 9.7,
      "Size class": "H7",
    }).findings.map((f) => f.code);
    expect(codes).toContain("drilled-size-out");
  });
});

describe("a blank Tool (independent: the list looked through)", () => {
  const base = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" } as const;
  it("is filled with the tool whose row is best, then cheapest", () => {
    for (const cells of [
      { ...base, Operation: "drill", "Finish diameter": 8.5, Depth: 20 },
      { ...base, Operation: "drill", "Finish diameter": 8.5, Depth: 60 },
      { ...base, Operation: "tap", Thread: "M6", "Start diameter": 5, Depth: 10, "Hole depth": 12.5 },
      { ...base, Operation: "bore", "Start diameter": 30, "Finish diameter": 32, Depth: 10, "Size tolerance": 0.02 },
    ] as Cells[]) {
      const weight = { ok: 0, check: 1, stop: 2 };
      const proposed = plan(cells);
      const kinds = {
        drill: ["D-8.5", "D-8.5C"],
        tap: ["T-M6", "T-M6B"],
        bore: ["EM-16-4", "EM-20-4", "EM-12-4", "EM-10-4"],
      };
      for (const Tool of kinds[cells.Operation as keyof typeof kinds]) {
        const other = plan({ ...cells, Tool });
        expect(weight[proposed.verdict], `${cells.Operation} ${Tool}`).toBeLessThanOrEqual(weight[other.verdict]);
        if (proposed.verdict === other.verdict)
          expect(proposed.results.cost!, `${cells.Operation} ${Tool}`).toBeLessThanOrEqual(other.results.cost! * 1.011);
      }
    }
  });
  it("of a thread is no worse than any tool of the list, and as cheap but for the preference of its own units", () => {
    const weight = { ok: 0, check: 1, stop: 2 };
    for (const thread of ["M4", "M6", "M8", "M10", "M12", "M20x1.5", "1/4-20", "1/2-13", "3/4-16", "1-8"]) {
      const cells = { ...base, Operation: "thread mill", Thread: thread, Depth: 12, Through: "yes" };
      const proposed = plan(cells);
      const others = TOOLS.slice(1).flatMap((row) => {
        const other = plan({ ...cells, Tool: String(row[0]) });
        return other.results.cost === undefined ? [] : [other];
      });
      expect(others.length, thread).toBeGreaterThan(0);
      const best = Math.min(...others.map((o) => weight[o.verdict]));
      expect(weight[proposed.verdict], thread).toBe(best);
      // where every tool of the list is stopped, none is proposed
      if (best === weight.stop) continue;
      for (const other of others.filter((o) => weight[o.verdict] === best)) {
        // a cutter of the row's own units is preferred to one that is hardly cheaper
        const own = lists.tools.find(String(other.results.tool))!.units === "mm";
        expect(proposed.results.cost!, thread).toBeLessThanOrEqual(other.results.cost! * (own ? 1.02 : 1.05));
      }
    }
  });
  it("is filled with a tool of the row's own units where both are worth the same", () => {
    const row = {
      ...base,
      Operation: "bore",
      "Start diameter": 30,
      "Finish diameter": 32,
      Depth: 10,
      "Size tolerance": 0.02,
    };
    const metric = lists.tools.find(String(plan(row).results.tool))!;
    expect(metric.units).toBe("mm");
  });
});
