/** The cheapest way to make a row that holds, where it is made up what each way costs. */
import { describe, expect, it } from "vitest";
import { cheapest } from "../../src/plan/cheapest.ts";
import { ADVICE_BUDGET, type Found } from "../../src/plan/search.ts";
import type { Row } from "../../src/table/rows.ts";
import { type RowCells, STEEL } from "../findings/rule.ts";
import { end, type Outcome, planOf, said, searchOf } from "./made-up.ts";

// A list of its own. Carbide cutters of 12 mm hang on 26 mm of flutes; 20 mm is the stiffest, then 16, 14, 12 and 10.
const cutter = (name: string, diameter: number, more: RowCells = {}): RowCells => ({
  ...{ Tool: name, Kind: "end mill", Units: "mm", Substrate: "carbide", Diameter: diameter, Teeth: 4 },
  ...{ "Cutting length": 26, "Stick-out": 40, ...more },
});
const drill = { Tool: "D10", Kind: "drill", Units: "mm", Substrate: "hss", Diameter: 10, "Cutting length": 60 };
const TOOLS = [
  ...[10, 12, 14, 16, 20, 8].map((d) => cutter(`E${d}`, d)),
  ...[drill, { ...drill, Tool: "D11", Diameter: 11 }],
];
const BORE: RowCells = {
  ...{ ...STEEL, Operation: "bore", Tool: "E12", "Start diameter": 30, "Finish diameter": 40, Depth: 20 },
  ...{ "Feed per tooth": 0.1, "Stick-out": 60 },
};
// Centre V3 and C45: a range of 100 to 200 m/min for carbide.
const RANGE = { "Speed carbide low [m/min]": 100, "Speed carbide high [m/min]": 200 };

interface Asked {
  readonly cells?: RowCells;
  readonly tools?: readonly RowCells[];
  readonly held?: (search: ReturnType<typeof searchOf>["search"]) => readonly Found[];
  readonly tried?: number;
  readonly findings?: Outcome["wrong"];
  readonly material?: RowCells;
}
/** What is found, and all rows that were worked out. As it stands a row turns 150 m/min, in two passes and a spring pass. */
function find(outcome: (row: Row) => Outcome, { cells, tools = TOOLS, held, tried, material = RANGE }: Asked = {}) {
  const bare = { ...BORE, ...cells };
  const row = Object.fromEntries(Object.entries(bare).filter(([, cell]) => cell !== null));
  const made = searchOf({ row, tools, material }, (now) => ({
    ...{ surfaceSpeed: now.surfaceSpeed ?? 150, passes: now.passes ?? 2, springPasses: 1, cost: 10, time: 100 },
    ...outcome(now),
  }));
  if (tried !== undefined) made.search.tried = tried;
  const found = end(cheapest(made.search, held?.(made.search) ?? []));
  return { ...made, found, said: said(found?.changes) };
}
const stop = { wrong: { "tool-stress": "stop" } } as const;
const cost = (price: number): Outcome => ({ cost: price, time: 10 * price });
/** The row's own tool alone: nothing else is in the list. */
const alone = { tools: TOOLS.filter(({ Tool }) => Tool === "E12") };

describe("the cheapest way (made-up costs)", () => {
  it("is none where no other way is cheaper, or not by three in a hundred", () => {
    expect(find(() => ({})).found).toBeUndefined();
    expect(find((row) => cost(row.surfaceSpeed === 200 ? 9.8 : 10)).found).toBeUndefined();
    expect(find((row) => cost(row.surfaceSpeed === 200 ? 9.6 : 10)).said).toEqual(["surfaceSpeed 200"]);
    // what comes to no more than that is no saving
    expect(find((row) => cost(row.passes === 1 ? 9.7 : 10)).found).toBeUndefined();
    expect(find((row) => cost(row.passes === 1 ? 9.6 : 10)).said).toEqual(["passes 1"]);
    expect(find((row) => cost(row.surfaceSpeed === 200 ? 9.7 : 10)).found).toBeUndefined();
  });
  it("is the end or the middle of the speeds, whichever costs least", () => {
    for (const speed of [100, 150, 200])
      expect(find((row) => cost(row.surfaceSpeed === speed ? 5 : 10), alone).said).toEqual([`surfaceSpeed ${speed}`]);
    // all three cheaper: the cheapest of them
    const all = find((row) => cost({ 100: 6, 150: 5, 200: 7 }[row.surfaceSpeed ?? 0] ?? 10), alone);
    expect([all.said, all.found!.plan.results.cost]).toEqual([["surfaceSpeed 150"], 5]);
  });
  it("goes no faster in a material that forbids it, or where the spindle gives no more", () => {
    const cheap = (row: Row) => cost(row.surfaceSpeed === 200 ? 5 : row.surfaceSpeed === 100 ? 8 : 10);
    expect(find(cheap, alone).said).toEqual(["surfaceSpeed 200"]);
    const titanium = find(cheap, { ...alone, cells: { Material: "Titanium Ti-6Al-4V (UNS R56400)" } });
    expect(titanium.said).toEqual(["surfaceSpeed 100"]);
    // as fast as it runs is no faster
    expect(titanium.rows.map((row) => row.surfaceSpeed)).toContain(150);
    const capped = find((row) => ({ ...cheap(row), wrong: { "speed-capped": "ok" } }), alone);
    expect(capped.said).toEqual(["surfaceSpeed 100"]);
    // nor where nothing is known of how fast it runs
    const unknown = find((row) => ({ ...cheap(row), surfaceSpeed: null, wrong: { "speed-capped": "ok" } }), alone);
    expect(unknown.found).toBeUndefined();
  });
  it("does without a range of speeds", () => {
    const { rows } = find(() => ({}), { ...alone, material: { ...RANGE, "Speed carbide low [m/min]": null } });
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row.surfaceSpeed).toBeUndefined();
  });
  it("never is one that does not hold, however cheap", () => {
    const { said } = find((row) =>
      row.surfaceSpeed === 200 ? { ...cost(1), ...stop } : cost(row.surfaceSpeed === 100 ? 9 : 10),
    );
    expect(said).toEqual(["surfaceSpeed 100"]);
  });
  it("of a row that does not hold is whatever holds, the cheapest of it", () => {
    const { said } = find((row) => {
      if (row.surfaceSpeed === 100) return cost(30);
      return row.surfaceSpeed === 200 ? cost(20) : { ...cost(10), ...stop };
    }, alone);
    expect(said).toEqual(["surfaceSpeed 200"]);
  });
  it("counts seconds where there is no money", () => {
    const { said } = find((row) => ({ cost: null, time: row.surfaceSpeed === 200 ? 50 : 100 }), alone);
    expect(said).toEqual(["surfaceSpeed 200"]);
  });
  it("holds the tool as short as it may be: 26 mm of flutes", () => {
    expect(find((row) => cost(row.stickOut === 26 ? 5 : 10), alone).said).toEqual(["stickOut 26"]);
    // held so already: nothing to try
    const short = find(() => ({}), { ...alone, cells: { "Stick-out": 26 } });
    expect(new Set(short.rows.map((row) => row.stickOut))).toEqual(new Set([26]));
    // both at once
    const both = find((row) => cost(row.stickOut === 26 && row.surfaceSpeed === 200 ? 5 : 10), alone);
    expect(both.said).toEqual(["stickOut 26", "surfaceSpeed 200"]);
  });
  it("takes fewer passes where fewer hold: of two with a spring pass, one", () => {
    expect(find((row) => cost(row.passes === 1 ? 7 : 10), alone).said).toEqual(["passes 1"]);
    const more = find((row) => (row.passes === 4 ? cost(12) : { ...cost(10), ...stop }), alone);
    expect(more.said).toEqual(["passes 4"]);
    // as many as it takes is no change
    const { rows } = find(() => stop, alone);
    expect(rows.map((row) => row.passes)).not.toContain(2);
    expect(new Set(rows.map((row) => row.passes))).toEqual(new Set([undefined, 1, 3, 4, 6]));
  });
  it("lowers the feed where the listed one does not hold, and no further than it has to: each step costs time", () => {
    const { said } = find((row) => {
      const share = row.feedPerTooth! / 0.1;
      return share < 0.7 ? cost(10 / share) : { ...cost(10 / share), ...stop };
    }, alone);
    expect(said).toEqual(["feedPerTooth 0.06"]);
    // where it holds, a lower feed cannot be cheaper: none is tried
    for (const row of find(() => ({}), alone).rows) expect(row.feedPerTooth).toBe(0.1);
    // with the passes and the feed at once
    const both = find(
      (row) => (row.passes === 1 && row.feedPerTooth! < 0.05 ? cost(9) : { ...cost(10), ...stop }),
      alone,
    );
    expect(both.said).toEqual(["passes 1", "feedPerTooth 0.04"]);
  });
  it("of a blank feed the list's is the whole", () => {
    // 0.06 at 12 mm
    const material = { ...RANGE, "Feed 6 mm [mm per tooth]": 0.03, "Feed 12 mm [mm per tooth]": 0.06 };
    const outcome = (row: Row) =>
      row.feedPerTooth === undefined ? { ...cost(10), ...stop } : cost(20 - row.feedPerTooth);
    expect(find(outcome, { ...alone, material, cells: { "Feed per tooth": null } }).said).toEqual([
      "feedPerTooth 0.048",
    ]);
    const none = { ...RANGE, ...Object.fromEntries([3, 6, 12, 20].map((d) => [`Feed ${d} mm [mm per tooth]`, null])) };
    const blank = find(outcome, { ...alone, material: none, cells: { "Feed per tooth": null } });
    expect(blank.found).toBeUndefined();
    expect(blank.rows.length).toBeGreaterThan(0);
  });
});

describe("other tools (made-up costs)", () => {
  it("are the four stiffest, as they are and at their own speeds", () => {
    const { rows } = find((row) => cost(row.tool === "E12" ? 10 : 20));
    expect(new Set(rows.map((row) => row.tool))).toEqual(new Set(["E12", "E20", "E16", "E14", "E10"]));
    expect(find((row) => cost(row.tool === "E10" ? 5 : 20)).said).toEqual(["tool E10"]);
    expect(find((row) => cost(row.tool === "E8" ? 5 : 20)).found).toBeUndefined();
    expect(find((row) => cost(row.tool === "E20" && row.surfaceSpeed === 100 ? 5 : 10)).said).toEqual([
      "tool E20",
      "surfaceSpeed 100",
    ]);
  });
  it("are all there is for a row whose own is not listed", () => {
    const { rows } = find(() => ({}), { cells: { Tool: "E99" } });
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect(row.tool).not.toBe("E99");
  });
  it("a drill has its speeds and feeds, and neither passes nor a cutter's", () => {
    const cells = {
      Operation: "drill",
      Tool: "D10",
      "Start diameter": null,
      "Finish diameter": 10,
      "Feed per tooth": 0.1,
    };
    const tools = TOOLS.filter(({ Tool }) => Tool === "D10");
    const drilled = { passes: null, springPasses: null, feedPerTooth: 0.1 };
    // a lower feed is tried where the row's own does not hold, and only there
    for (const row of find(() => drilled, { cells, tools }).rows) expect(row.feedPerTooth).toBe(0.1);
    const { rows, said } = find(
      (row) => (row.feedPerTooth! < 0.09 ? { ...drilled, ...cost(12) } : { ...drilled, ...stop }),
      {
        cells,
        tools,
      },
    );
    expect(said).toEqual(["feedPerTooth 0.08"]);
    for (const row of rows) expect([row.passes, row.tool]).toEqual([undefined, "D10"]);
  });
  it("a tap's feed is its pitch, and it is held as it is", () => {
    const tools = [
      { Tool: "T8", Kind: "tap", Units: "mm", Substrate: "hss", Diameter: 8, "Cutting length": 20, "Stick-out": 60 },
    ];
    const cells = { Operation: "tap", Tool: "T8", Thread: "M8", "Finish diameter": null, "Feed per tooth": null };
    const { rows } = find(() => stop, { cells, tools });
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) expect([row.feedPerTooth, row.stickOut, row.passes]).toEqual([undefined, 60, undefined]);
  });
});

describe("what is offered already (made-up costs)", () => {
  const change = (key: "feedPerTooth" | "passes" | "surfaceSpeed" | "stickOut", to: number) => ({
    key,
    heading: key,
    from: undefined,
    to,
  });
  const held =
    (...all: [Parameters<typeof change>[0], number, Outcome][]): Asked["held"] =>
    ({ situation }) =>
      all.map(([key, to, outcome]) => ({
        changes: [change(key, to)],
        plan: planOf({ tool: situation.row.tool, passes: 2, surfaceSpeed: 150, ...outcome }),
      }));
  it("must be beaten by three in a hundred", () => {
    const at = (price: number) =>
      find((row) => (row.surfaceSpeed === 200 ? cost(price) : { ...cost(50), ...stop }), {
        ...alone,
        held: held(["feedPerTooth", 0.05, cost(10)]),
      });
    expect(at(9.8).found).toBeUndefined();
    expect(at(9.6).said).toContain("surfaceSpeed 200");
  });
  it("of several the cheapest must be", () => {
    const two = held(["feedPerTooth", 0.05, cost(20)], ["passes", 3, cost(10)]);
    const at = (price: number) =>
      find((row) => (row.surfaceSpeed === 200 ? cost(price) : { ...cost(50), ...stop }), { ...alone, held: two });
    expect(at(15).found).toBeUndefined();
    expect(at(9).said).toContain("surfaceSpeed 200");
  });
  it("what takes only the stop away need not be", () => {
    const check = held(["feedPerTooth", 0.05, { ...cost(5), wrong: { chatter: "check" } }]);
    const { said } = find((row) => (row.surfaceSpeed === 200 ? cost(15) : { ...cost(50), ...stop }), {
      ...alone,
      held: check,
    });
    expect(said).toEqual(["surfaceSpeed 200"]);
  });
  it("is gone on from, at its own cells: the cheapest change with another speed, its feed left alone", () => {
    const outcome = (row: Row) => {
      if (row.feedPerTooth === 0.03) return row.surfaceSpeed === 200 ? cost(6) : cost(9);
      return { ...cost(8), ...stop };
    };
    const two = held(["passes", 3, cost(12)], ["feedPerTooth", 0.03, cost(9)]);
    const { said, rows } = find(outcome, { ...alone, held: two });
    expect(said).toEqual(["feedPerTooth 0.03", "surfaceSpeed 200"]);
    for (const row of rows.filter((r) => r.feedPerTooth === 0.03)) expect(row.passes).not.toBe(3);
    // nothing is changed twice
    expect(rows.some((row) => row.feedPerTooth === 0.03 && row.stickOut === 26)).toBe(true);
  });
  it("a change of the tool goes on with that tool's own speeds and lengths", () => {
    const tools = [...alone.tools, cutter("H12", 12, { Substrate: "hss", "Cutting length": 30 })];
    const material = { ...RANGE, "Speed HSS low [m/min]": 20, "Speed HSS high [m/min]": 30 };
    const { rows } = find(
      (row) => (row.tool === "H12" ? { tool: "H12", surfaceSpeed: 25, ...cost(9) } : { ...cost(10), ...stop }),
      {
        ...{ tools, material },
        held: () => [
          {
            changes: [{ key: "tool", heading: "Tool", from: "E12", to: "H12" }],
            plan: planOf({ tool: "H12", surfaceSpeed: 25, ...cost(9) }),
          },
        ],
      },
    );
    const other = rows.filter((row) => row.tool === "H12");
    expect(new Set(other.map((row) => row.surfaceSpeed))).toEqual(new Set([undefined, 20, 25, 30]));
    expect(new Set(other.map((row) => row.stickOut))).toEqual(new Set([60, 30]));
  });
});

describe("what is not worth trying (made-up costs)", () => {
  // Two passes and a spring pass at a price of 10: half of it goes with the passes, so one pass is 10·(1/2 + 1/6) = 6.67 at the least.
  const ones = (offered: number) =>
    find(() => ({ ...cost(10), ...stop }), {
      ...alone,
      held: () => [{ changes: [], plan: planOf(cost(offered / 0.97)) }],
    }).rows.filter((row) => row.passes === 1).length;
  it("is fewer passes where even they could not save enough", () => {
    expect(ones(6.6)).toBe(0);
    expect(ones(6.7)).toBeGreaterThan(0);
  });
  it("is more than the bound: it ends there, with what it has", () => {
    const cheap = (row: Row) => cost(row.surfaceSpeed === 200 ? 5 : 10);
    for (const tried of [ADVICE_BUDGET, ADVICE_BUDGET - 1, ADVICE_BUDGET - 3, ADVICE_BUDGET - 10]) {
      const { rows, search } = find(() => ({ ...cost(10), ...stop }), { tried });
      expect(rows).toHaveLength(ADVICE_BUDGET - tried);
      expect(search.tried).toBe(ADVICE_BUDGET);
    }
    expect(find(cheap, { tried: ADVICE_BUDGET }).found).toBeUndefined();
    expect(find(cheap, { tried: ADVICE_BUDGET - 10 }).said).toEqual(["surfaceSpeed 200"]);
    expect(find(() => ({}), { tried: 1 }).search.tried).toBeLessThanOrEqual(ADVICE_BUDGET);
  });
  it("is the row as it is: that is known", () => {
    for (const outcome of [stop, {}]) {
      const { rows, search } = find(() => outcome, alone);
      expect(rows.length).toBeGreaterThan(5);
      for (const row of rows) expect(row).not.toEqual(search.situation.row);
      // and nothing is tried twice
      expect(new Set(rows.map((row) => JSON.stringify(row))).size).toBe(rows.length);
      expect(search.tried).toBe(1 + rows.length);
    }
  });
});
