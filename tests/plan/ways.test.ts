/** Advice for rows that are far from holding, or far from cheap, against what a search of everything finds. */
import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { OPERATIONS } from "../../src/operations/index.ts";
import { COMMON_LEVERS } from "../../src/operations/operation.ts";
import { advise } from "../../src/plan/advise.ts";
import { type Candidate, type Change, candidatesFor, situationOf, withChanges } from "../../src/plan/changes.ts";
import { RELIEF } from "../../src/plan/relief.ts";
import { planRow } from "../../src/plan/row.ts";
import { type ReadRow, readLists, readRows } from "../../src/table/read.ts";
import { blockOf, type RowCells } from "../findings/rule.ts";

const lists = readLists(MATERIALS, TOOLS, MACHINES);
const readOf = (cells: RowCells) => readRows(blockOf([{ Units: "mm", ...cells }]))[0]!;
const planWith = (read: ReadRow, changes: readonly Change[]) =>
  planRow({ ...read, row: withChanges(read.row, changes) }, lists, 1, false);
const all = ({ change, along }: Candidate) => (along ? [change, along] : [change]);

const QT = "Steel 42CrMo4 QT (AISI 4140)";
const C45 = "Steel C45 (AISI 1045)";
const ALU = "Aluminium EN AW-6082 T6 (AA 6061)";

/** Every single change that is offered for what is wrong with a row, planned. */
function singles(read: ReadRow) {
  const base = planWith(read, []);
  const levers = new Set(base.findings.flatMap((f) => (f.severity === "ok" ? [] : RELIEF[f.code])));
  return candidatesFor(situationOf(read.row, base, lists), levers).map((c) => ({ c, plan: planWith(read, all(c)) }));
}

describe("a row that no single change mends (independent: all of them planned)", () => {
  it("two changes are offered, and the first is the one that leaves the least load where as little is wrong", () => {
    const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 20, "Axial depth": 5, Length: 80, "Stick-out": 60 };
    const read = readOf({ ...slot, Material: QT, Machine: "Small centre S5", "Feed per tooth": 0.02 });
    const tried = singles(read);
    const base = planWith(read, []);
    expect(tried.map(({ plan }) => plan.verdict)).not.toContain("ok");
    const [small] = advise(read, lists).advice;
    expect(small!.kind).toBe("smallest change");
    expect(small!.changes).toHaveLength(2);
    for (const one of small!.changes) expect(planWith(read, [one]).verdict).not.toBe("ok");
    // the first: of all that leave as little wrong, the one that leaves the least load
    const wrong = (plan: typeof base) => plan.findings.filter((f) => f.severity !== "ok").length;
    const alone = planWith(read, small!.changes.slice(0, 1));
    expect(wrong(alone)).toBe(Math.min(...tried.map(({ plan }) => wrong(plan))));
    for (const { plan } of tried)
      if (wrong(plan) === wrong(alone)) expect(plan.results.load!).toBeGreaterThanOrEqual(alone.results.load!);
    expect(planWith(read, small!.changes).verdict).toBe("ok");
  });
  it("what goes with the change that helps most is not all that is tried", () => {
    const slot = { Operation: "slot", Tool: "EM-12-4", Depth: 24, "Axial depth": 12, Length: 80, "Stick-out": 48 };
    const read = readOf({ ...slot, Material: C45, Machine: "Small centre S5", "Feed per tooth": 0.24 });
    const tried = singles(read);
    expect(tried.map(({ plan }) => plan.verdict)).not.toContain("ok");
    // both typed cells cleared: a pair that holds, so one is to be offered
    const cleared = tried.filter(
      ({ c }) => c.change.to === null && ["axialDepth", "feedPerTooth"].includes(c.change.key),
    );
    expect(
      planWith(
        read,
        cleared.flatMap(({ c }) => all(c)),
      ).verdict,
    ).toBe("ok");
    const [small] = advise(read, lists).advice;
    expect([small!.kind, small!.after.verdict, small!.changes.length]).toEqual(["smallest change", "ok", 2]);
  });
  it.each([
    {
      Operation: "face",
      Tool: "EM-16-4",
      Depth: 4,
      "Axial depth": 4,
      Length: 100,
      "Radial depth": 40,
      "Stick-out": 96,
    },
  ])("what takes the stop away is offered, the smallest such change: %o", (cells) => {
    const read = readOf({
      ...cells,
      Material: C45,
      Machine: "Knee mill K1",
      "Feed per tooth": 0.032,
      "Surface speed": 250,
    });
    const tried = singles(read);
    expect(planWith(read, []).verdict).toBe("stop");
    expect(tried.map(({ plan }) => plan.verdict)).not.toContain("ok");
    const lighter = tried.find(({ plan }) => plan.verdict === "check")!;
    const [small] = advise(read, lists).advice;
    expect(small!.kind).toBe("smallest change");
    expect(small!.changes.map(({ key, to }) => [key, to])).toEqual(all(lighter.c).map(({ key, to }) => [key, to]));
    expect(small!.after.verdict).toBe("check");
  });
});

const FAR: readonly RowCells[] = [
  {
    ...{ Material: C45, Machine: "Knee mill K1", Operation: "face", Tool: "EM-16-4", Depth: 4, Length: 100 },
    ...{ "Radial depth": 40, "Axial depth": 4, "Feed per tooth": 0.032, "Stick-out": 96, "Surface speed": 250 },
  },
  {
    ...{ Material: QT, Machine: "Centre V3", Operation: "face", Tool: "FM-40-4", Depth: 4, Length: 100 },
    ...{ "Radial depth": 40, "Axial depth": 1, "Feed per tooth": 0.2 },
  },
  {
    ...{ Material: ALU, Machine: "Centre V3", Operation: "side", Tool: "EM-8-4L", Depth: 16, Length: 80 },
    ...{ "Radial depth": 6.4, Passes: 4 },
  },
  {
    ...{ Material: QT, Machine: "Knee mill K1", Operation: "bore", Tool: "EM-6-4L", Depth: 12, Passes: 4 },
    ...{ "Start diameter": 12, "Finish diameter": 13.2, "Stick-out": 18 },
  },
  {
    ...{ Material: ALU, Machine: "Centre V3", Operation: "bore", Tool: "EM-10-4L", Depth: 20, Passes: 4 },
    ...{ "Start diameter": 20, "Finish diameter": 25, "Stick-out": 30 },
  },
  {
    ...{ Material: C45, Machine: "Centre V4", Operation: "side", Tool: "EM-6-4", Depth: 12, Length: 80 },
    ...{ "Radial depth": 3, Passes: 1, "Stick-out": 24 },
  },
];

describe("advice for a row far from cheap (identity)", () => {
  it.each(FAR)(
    "stays within the cells that the operation has, names none twice, holds no tool further out: %o",
    (cells) => {
      const read = readOf(cells);
      const { operation, stickOut, radialDepth, passes = 1 } = read.row;
      const own: readonly string[] = [...OPERATIONS[operation!].levers, ...COMMON_LEVERS];
      for (const { changes } of advise(read, lists).advice) {
        const to = Object.fromEntries(changes.map((c) => [c.key, c.to]));
        expect(Object.keys(to)).toHaveLength(changes.length);
        // cells that go along with a pass that is changed
        const along = operation === "side" ? ["passes"] : ["depth", "totalWidth"];
        for (const key of Object.keys(to)) expect([...own, ...along]).toContain(key);
        if (operation === "side" && "passes" in to)
          expect(Number(to.passes) * Number(to.radialDepth ?? radialDepth)).toBeCloseTo(passes * radialDepth!, 9);
        if (stickOut !== undefined && typeof to.stickOut === "number") expect(to.stickOut).toBeLessThan(stickOut);
      }
    },
  );
});

describe("the cheapest row where the listed feed is too much (independent: every speed and feed of a grid)", () => {
  it.each([
    {
      ...{ Material: QT, Machine: "Knee mill K1", Operation: "side", Tool: "EM-12-4", Depth: 24, Length: 80 },
      ...{ "Radial depth": 6, "Feed per tooth": 0.024 },
    },
    {
      ...{ Material: QT, Machine: "Centre V4", Operation: "bore", Tool: "EM-12-4", Depth: 24 },
      ...{ "Start diameter": 24, "Finish diameter": 30, "Feed per tooth": 0.24 },
    },
  ] as readonly RowCells[])("is found within a twentieth: %o", (cells) => {
    const read = readOf(cells);
    const { speedCarbideLow: low, speedCarbideHigh: high } = lists.materials.find(read.row.material!)!;
    const feed = read.row.feedPerTooth!;
    let least = Number.POSITIVE_INFINITY;
    for (const tool of [read.row.tool, undefined])
      for (const surfaceSpeed of [read.row.surfaceSpeed, low!, (low! + high!) / 2, high!])
        for (const share of [1, 0.8, 0.6, 0.4])
          for (const passes of read.row.operation === "side" ? [undefined] : [undefined, 1, 2, 3]) {
            const row = { ...read.row, tool, surfaceSpeed, feedPerTooth: share * feed, passes };
            const plan = planRow({ ...read, row }, lists, 1, false);
            if (plan.verdict === "ok") least = Math.min(least, plan.results.cost!);
          }
    const offered = advise(read, lists).advice.filter((a) => a.after.verdict === "ok");
    expect(Math.min(...offered.map((a) => a.after.cost!))).toBeLessThanOrEqual(1.05 * least);
  });
});
