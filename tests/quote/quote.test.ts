import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { QUOTE } from "../../functions/quote.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { RowTime } from "../../src/operations/shared/types.ts";
import { planRows } from "../../src/plan/table.ts";
import { normalQuantile, QUOTE_UNCERTAINTY, scatterBand } from "../../src/quote/band.ts";
import { compare } from "../../src/quote/compare.ts";
import { quoteCells, quoteLines } from "../../src/quote/lines.ts";
import { quote, quoteTable } from "../../src/quote/quote.ts";
import type { QuoteSummary } from "../../src/quote/types.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import type { RowPlan } from "../../src/words/worded.ts";

const LISTS = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
const lists = readLists(MATERIALS, TOOLS, MACHINES);
const demo = (rows: readonly number[]) => [DEMO[0]!, ...rows.map((r) => DEMO[r]!)];
const all = DEMO.slice(1).map((_, i) => i + 1);
const sum = (values: readonly (number | undefined)[]) => values.reduce<number>((s, v) => s + (v ?? 0), 0);

/** A planned row with numbers chosen by hand; `tool` money per part as the plan would have it. */
function made(operation: string, tool: string, time: RowTime, own: { life?: number; tool?: number } = {}): RowPlan {
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

const SHOP = readLists(
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
const FIVE = [
  made("drill", "D1", { cutting: 3, moving: 1, waiting: 0, ideal: 3, change: 6 }),
  made("drill", "D1", { cutting: 4, moving: 1, waiting: 0, ideal: 4, change: 6 }),
  // 10 × 12 s = 2 min of a 40 min edge: 0.05 edges at 80
  made("thread mill", "T1", { cutting: 12, moving: 2, waiting: 1, ideal: 10, change: 6 }, { life: 40, tool: 4 }),
  // 1 min of a 30 min edge, four edges for 60
  made("face", "F1", { cutting: 60, moving: 6, waiting: 0, ideal: 60, change: 10 }, { life: 30, tool: 0.5 }),
  made("bore", "E1", { cutting: 30, moving: 5, waiting: 0, ideal: 24, change: 10 }),
];
const fiveRows = (batch: number | null = 20, machines = ["A", "A", "A", "B", "B"]) =>
  readRows([
    ["Row", "Operation", "Units", "Quantity", "Machine", "Batch"],
    ...[10, 5, 10, 1, 2].map((n, i) => [i + 1, FIVE[i]!.operation, "mm", n, machines[i], batch]),
  ]);
const named = <T extends { name: string }>(groups: readonly T[], name: string) => groups.find((g) => g.name === name)!;

describe("a quote of five rows (independent)", () => {
  const q = quote(FIVE, fiveRows(), SHOP);
  it("adds up the seconds as pencil and paper do", () => {
    expect(q.time).toEqual({ cutting: 290, moving: 51, waiting: 10, change: 32, setup: 150 });
    expect(q.seconds).toBe(533);
    expect([q.changes, q.changesSaved]).toEqual([4, 1]);
  });
  it("adds up the money: 317 s at 60 and 216 s at 90 an hour, and 4.50 of tools", () => {
    expect(q.money).toBeCloseTo(317 / 60 + 5.4 + 4.5, 10);
    expect(q.paid!.tool).toBeCloseTo(4.5, 12);
    expect(q.paid!.setup).toBeCloseTo(90 / 60 + 1.5, 12);
    expect(named(q.machines, "A").money).toBeCloseTo(317 / 60 + 4, 10);
    expect(named(q.machines, "B").money).toBeCloseTo(5.9, 10);
    expect(named(q.operations, "drill")).toMatchObject({ rows: 2, features: 15 });
    expect(named(q.operations, "drill").money).toBeCloseTo((46 + 25 + 60) / 60, 10);
  });
  it("names the dearest rows in their order, and what acceleration costs", () => {
    expect(q.dearest.map((r) => r.name)).toEqual(["3", "4", "5", "1", "2"]);
    expect(q.dearest[0]!.money).toBeCloseTo(7.1, 10);
    expect(q.acceleration.seconds).toBe(32);
    expect(q.acceleration.share).toBeCloseTo(32 / 383, 12);
  });
  it("counts edges and tools for the batch, rounded up", () => {
    expect(named(q.tools, "T1")).toMatchObject({ edgesForBatch: 1, toolsForBatch: 1, bought: 80 });
    expect(named(q.tools, "T1").partsPerEdge).toBeCloseTo(20, 10);
    const hundred = quote(FIVE, fiveRows(), SHOP, { batch: 100 });
    expect(named(hundred.tools, "T1")).toMatchObject({ edgesForBatch: 5, toolsForBatch: 5, bought: 400 });
    expect(named(hundred.tools, "F1")).toMatchObject({ edgesForBatch: 4, toolsForBatch: 1, bought: 60 });
    expect(named(hundred.tools, "E1").toolsForBatch).toBeUndefined();
    expect(hundred.time.setup).toBe(30);
  });
  it("of a drilled row agrees with the hole worked out by hand, through the worksheet function", () => {
    // 31.4159 m/min on 10 mm: 1000/min, 2 lips × 0.1: 200 mm/min. Travel 20 + point (10/2)/tan 59° + 2 of clearance.
    const travel = 20 + 5 / Math.tan((59 * Math.PI) / 180) + 2;
    const [v, a, fast] = [200 / 60, 2000, 200];
    const cutting = travel / v + v / a;
    const moving = (25 + 20 + travel) / fast + (3 * fast) / a;
    const each = cutting + moving;
    const block = QUOTE(
      [
        [
          "Row",
          "Operation",
          "Units",
          "Quantity",
          "Material",
          "Machine",
          "Finish diameter",
          "Depth",
          "Surface speed",
          "Feed per tooth",
        ],
        [1, "drill", "mm", 4, "Steel", "Mill", 10, 20, 10 * Math.PI, 0.1],
      ],
      [["Material"], ["Steel"]],
      [["Tool"], ["none"]],
      [
        ["Machine", "Rapid [m/min]", "Acceleration [m/s²]", "Tool change [s]", "Rate [per hour]", "Setup [min]"],
        ["Mill", 12, 2, 6, 72, 20],
      ],
      [[60]],
    );
    expect(block[0]).toEqual(["Section", "Item", "Count", "Minutes", "Money", "Share"]);
    const [, , , minutes, money] = block[1]!;
    expect(minutes).toBeCloseTo((4 * each + 6 + 20) / 60, 9);
    expect(money).toBeCloseTo(((4 * each + 6) * 72) / 3600 + 0.4, 9);
  });
});

describe("economics of one operation (published)", () => {
  // M. P. Groover, Fundamentals of Modern Manufacturing, 4th edition 2010, example on machining economics (from memory):
  // n = 0.125, C = 70 m/min, bar 100 mm × 500 mm, feed 0.25 mm/rev, handling 5 min, tool change 2 min, 30 per hour,
  // 3.00 per edge. Least cost: 42 m/min, 3 parts per edge, 20.63 min and 11.32 a part. Quickest: 50 m/min, 1 part per
  // edge, 19.57 min and 12.79 a part.
  for (const [speed, parts, minutes, cost] of [
    [42, 3, 20.63, 11.32],
    [50, 1, 19.57, 12.79],
  ] as const) {
    it(`at ${speed} m/min gives ${parts} parts per edge, ${minutes} min and ${cost} a part`, () => {
      const shop = readLists(
        [["Material"]],
        [
          ["Tool", "Price", "Edges"],
          ["insert", 3, 1],
        ],
        [
          ["Machine", "Rate [per hour]"],
          ["lathe", 30],
        ],
      );
      const rows = readRows([
        ["Operation", "Units", "Machine"],
        ["side", "mm", "lathe"],
      ]);
      const cutting = (60 * Math.PI * 100 * 500) / (0.25 * speed * 1000);
      const life = (70 / speed) ** 8;
      // The tool is changed once in so many whole parts.
      const line = made(
        "side",
        "insert",
        { cutting, moving: 300, waiting: 0, ideal: cutting, change: 120 / parts },
        { life },
      );
      const q = quote([line], rows, shop, { batch: parts });
      const tool = q.tools[0]!;
      expect(Math.floor(tool.partsPerEdge!)).toBe(parts);
      expect(tool.toolsForBatch).toBe(1);
      // Half the last digit printed; the money was printed from the rounded minutes, half of 0.005 min more.
      expect(Math.abs(q.seconds / 60 - minutes)).toBeLessThanOrEqual(0.005);
      expect(Math.abs(q.money! + tool.bought! / parts - cost)).toBeLessThanOrEqual(0.0075);
    });
  }
});

describe("range of a quote (published)", () => {
  // Quantiles of the normal distribution, any table (from memory): four decimals; the approximation is good to 0.00045.
  it.each([
    [0.5, 0],
    [0.75, 0.6745],
    [0.9, 1.2816],
    [0.95, 1.6449],
    [0.975, 1.96],
    [0.99, 2.3263],
    [0.001, -3.0902],
  ])("the normal quantile at %f is %f", (p, x) => {
    expect(Math.abs(normalQuantile(p) - x)).toBeLessThan(0.0005);
  });
});

describe("range of a quote (independent)", () => {
  const z = 1.2815516;
  it.each([
    ["cutting", { cutting: 100, moves: 0, setup: 0, tool: 0 }, QUOTE_UNCERTAINTY.cutting],
    ["moves", { cutting: 0, moves: 100, setup: 0, tool: 0 }, QUOTE_UNCERTAINTY.moves],
    ["setup", { cutting: 0, moves: 0, setup: 100, tool: 0 }, QUOTE_UNCERTAINTY.setup],
    ["tool", { cutting: 0, moves: 0, setup: 0, tool: 100 }, QUOTE_UNCERTAINTY.life],
  ] as const)("of %s alone is the log-normal one", (_, parts, deviation) => {
    const band = scatterBand(parts);
    expect(band.low / (100 * Math.exp(-z * deviation))).toBeCloseTo(1, 2);
    expect(band.high / (100 * Math.exp(z * deviation))).toBeCloseTo(1, 2);
  });
  it("of two parts agrees with the sum's distribution integrated on a grid", () => {
    const [A, B, s, t] = [60, 40, QUOTE_UNCERTAINTY.cutting, QUOTE_UNCERTAINTY.life];
    const density = (x: number) => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    const below = (value: number) => {
      let p = 0;
      const h = 0.01;
      for (let x = -6; x < 6; x += h) {
        const rest = value - A * Math.exp(s * (x + h / 2));
        if (rest <= 0) continue;
        // Share of the second part under what the first leaves: normal distribution of its logarithm, by Simpson.
        const edge = Math.log(rest / B) / t;
        let q = 0;
        const n = 60;
        const from = -7;
        if (edge <= from) continue;
        for (let k = 0; k <= n; k++)
          q += (k === 0 || k === n ? 1 : k % 2 ? 4 : 2) * density(from + ((Math.min(edge, 7) - from) * k) / n);
        p += h * density(x + h / 2) * ((q * (Math.min(edge, 7) - from)) / n / 3);
      }
      return p;
    };
    const band = scatterBand({ cutting: A, moves: 0, setup: 0, tool: B });
    // Four thousand samples: a quarter of a percent of probability.
    expect(below(band.low)).toBeCloseTo(0.1, 2);
    expect(below(band.high)).toBeCloseTo(0.9, 2);
  });
});

describe("range of a quote (identity)", () => {
  const part = fc.double({ min: 0, max: 1e6, noNaN: true });
  it("covers the nominal, and grows with it", () => {
    fc.assert(
      fc.property(part, part, part, part, (cutting, moves, setup, tool) => {
        const band = scatterBand({ cutting, moves, setup, tool });
        expect(band.low).toBeLessThanOrEqual(band.nominal);
        expect(band.high).toBeGreaterThanOrEqual(band.nominal);
        const twice = scatterBand({ cutting: 2 * cutting, moves: 2 * moves, setup: 2 * setup, tool: 2 * tool });
        expect(twice.high).toBeCloseTo(2 * band.high, 5);
      }),
      { numRuns: 60 },
    );
  });
  it("is narrower than the sum of the ranges of its parts", () => {
    const whole = scatterBand({ cutting: 50, moves: 50, setup: 50, tool: 50 });
    const alone = (["cutting", "moves", "setup", "tool"] as const).map((key) =>
      scatterBand({ cutting: 0, moves: 0, setup: 0, tool: 0, [key]: 50 }),
    );
    expect(whole.high - whole.low).toBeLessThan(sum(alone.map((b) => b.high - b.low)));
  });
});

/** Everything that has to agree in any quote. */
function consistent(q: QuoteSummary): void {
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

describe("a quote (identity)", () => {
  it("has parts that add up to the total, whatever rows it holds", () => {
    fc.assert(
      fc.property(fc.subarray(all, { minLength: 1 }), fc.option(fc.integer({ min: 1, max: 500 })), (rows, batch) => {
        const q = quoteTable({ rows: demo(rows), ...LISTS }, { batch: batch ?? undefined });
        consistent(q);
        expect(q.rows.length + q.leftOut.length).toBe(rows.length);
      }),
      { numRuns: 25 },
    );
  });
  it("of one row is the row's own time with its setup, and its own cost", () => {
    for (const at of all) {
      const rows = readRows(demo([at]));
      const [line] = planRows(rows, lists, false);
      const q = quote([line], rows, lists);
      if (q.rows.length === 0) continue;
      expect(q.seconds - q.time.setup).toBeCloseTo(line!.results.time as number, 9);
      expect(q.money).toBeCloseTo(line!.results.cost as number, 9);
    }
  });
  it("does not depend on the order of the rows but for the tool changes", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: all.length, maxLength: all.length }), (order) => {
        const [a, b] = [all, order].map((rows) => quoteTable({ rows: demo(rows), ...LISTS }, { batch: 10 }));
        for (const key of ["cutting", "moving", "waiting", "setup"] as const)
          expect(b!.time[key]).toBeCloseTo(a!.time[key], 6);
        expect(b!.paid!.tool).toBeCloseTo(a!.paid!.tool, 8);
        expect(b!.money! - b!.paid!.change).toBeCloseTo(a!.money! - a!.paid!.change, 6);
      }),
      { numRuns: 10 },
    );
  });
  it("loses its setup and nothing else as the batch grows", () => {
    const at = (batch: number) => quoteTable({ rows: demo(all), ...LISTS }, { batch });
    const [one, two, huge] = [at(1), at(2), at(1e9)];
    expect(two.time.setup).toBeCloseTo(one.time.setup / 2, 9);
    expect(two.paid!.setup).toBeCloseTo(one.paid!.setup / 2, 9);
    expect(huge.money).toBeCloseTo(one.money! - one.paid!.setup, 4);
    expect(huge.seconds).toBeCloseTo(one.seconds - one.time.setup, 4);
  });
  it("charges a machine's whole setup, though some of its rows have no time", () => {
    const rows = demo(all);
    const q = quoteTable({ rows, ...LISTS }, { batch: 1 });
    const setups = q.machines.map((g) => MACHINES.find((m) => m[0] === g.name)![12] as number);
    expect(q.leftOut.length).toBeGreaterThan(0);
    expect(q.time.setup / 60).toBeCloseTo(sum(setups), 9);
  });
  it("changes a tool only when the spindle holds another one", () => {
    const rows = [1, 1, 1, 2, 1].map((r) => FIVE[r === 1 ? 0 : 2]!);
    const q = quote(rows, fiveRows(20, ["A", "A", "B", "A", "A"]), SHOP);
    // first on A, held, first on B, other on A, back on A
    expect(q.rows.map((r) => r.time.change > 0)).toEqual([true, false, true, true, true]);
  });
  it("adds one and the same material over inch and metric rows", () => {
    const base = ["Row", "Operation", "Units", "Material", "Machine", "Finish diameter", "Depth"];
    const material = MATERIALS[1]![0]!;
    const mm = quoteTable({ rows: [base, [1, "drill", "mm", material, "Centre V3", 12.7, 25.4]], ...LISTS });
    const inch = quoteTable({ rows: [base, [1, "drill", "in", material, "Centre V3", 0.5, 1]], ...LISTS });
    expect(inch.seconds).toBeCloseTo(mm.seconds, 9);
    expect(inch.money).toBeCloseTo(mm.money!, 9);
  });
});

describe("what a quote says about itself (regression)", () => {
  const items = (q: QuoteSummary, section: string) =>
    quoteLines(q)
      .filter((l) => l.section === section)
      .map((l) => l.item);
  it("never drops a row: those without time are counted and named with the reason", () => {
    const rows = [
      ["Row", "Operation", "Units", "Quantity", "Material", "Machine", "Finish diameter", "Depth"],
      ["a", "drill", "mm", 1, MATERIALS[1]![0]!, "Centre V3", 5, 10],
      ["b", "drill", "mm", -1, MATERIALS[1]![0]!, "Centre V3", 5, 10],
      ["c", "drill", "mm", 1, "Unobtainium", "Centre V3", 5, 10],
      ["d", "drill", "mm", 1, MATERIALS[1]![0]!, null, 5, 10],
      ["e", "drill", "mm", 1, MATERIALS[1]![0]!, "Bare", 5, 10],
      ["f", null, "mm", 1, MATERIALS[1]![0]!, "Centre V3", 5, 10],
    ];
    const machines = [...MACHINES, ["Bare", 60, 8000, 11, 80, 10, null, 3, 6, 22, 0.03, 74, 35]];
    const q = quoteTable({ rows, ...LISTS, machines });
    expect(q.rows.map((r) => r.name)).toEqual(["a"]);
    const said = items(q, "Not in the total");
    expect(said[0]).toBe("5 rows have no time: not in the total");
    expect(said[1]).toMatch(/^Row b: Quantity is -1; a whole number of at least 1 is allowed/);
    expect(said[2]).toMatch(/^Row c: material "Unobtainium" is not in the list/);
    expect(said[3]).toMatch(/^Row d: Machine is blank/);
    expect(said[4]).toMatch(/^Row e: Bare has no Rapid in the list Machines/);
    expect(said[5]).toMatch(/^Row f: Operation is blank/);
  });
  it("of machines without a rate is one of time, without money and without error", () => {
    for (const machine of ["C", "D"]) {
      const q = quote(FIVE, fiveRows(20, Array(5).fill(machine)), SHOP);
      expect([q.money, q.paid, q.moneyBand, q.own.money]).toEqual([undefined, undefined, undefined, undefined]);
      expect(q.seconds).toBeGreaterThan(0);
      expect(q.dearest[0]!.name).toBe("3");
      expect(q.assumptions.join(" ")).toMatch(/without money/);
      expect(quoteCells(q).every((line) => line[4] === "")).toBe(true);
      consistent(q);
    }
  });
  it("of some rows without a rate says which money is missing", () => {
    const q = quote(FIVE, fiveRows(20, ["A", "A", "A", "D", "D"]), SHOP);
    expect(q.unpriced.map((r) => r.name)).toEqual(["4", "5"]);
    expect(q.money).toBeCloseTo(317 / 60 + 4, 10);
    expect(q.assumptions.join(" ")).toMatch(/2 rows on D have no rate: in the time, not in the money/);
    consistent(q);
  });
  it("says what a blank batch, a batch of one and batches that differ do", () => {
    const blank = quote(FIVE, fiveRows(null), SHOP);
    expect([blank.time.setup, blank.batch]).toEqual([0, undefined]);
    expect(blank.assumptions.join(" ")).toMatch(/Batch is blank: no setup/);
    expect(quote(FIVE, fiveRows(), SHOP, { batch: 1 }).time.setup).toBe(3000);
    const mixed = readRows([
      ["Operation", "Units", "Machine", "Batch"],
      ["drill", "mm", "A", 10],
      ["drill", "mm", "A", 30],
    ]);
    const q = quote(FIVE.slice(0, 2), mixed, SHOP);
    expect(q.time.setup).toBeCloseTo(900 / 10 + 900 / 30, 10);
    expect(q.assumptions.join(" ")).toMatch(/different batches \(10, 30\)/);
  });
  it("refuses a batch that is none", () => {
    for (const batch of [0, -1, 2.5, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => quote(FIVE, fiveRows(), SHOP, { batch })).toThrow(/batch/);
    const answer = QUOTE([["Operation"]], [["Material"]], [["Tool"]], [["Machine"]], [[-1]])[0]![0] as CellError;
    expect(answer).toBeInstanceOf(CellError);
    expect(answer.message).toMatch(/batch is -1; a whole number of at least 1 and at most 1000000000 is allowed/);
  });
  it("of no rows, or none with a time, is an empty one that says so", () => {
    for (const q of [quote([], [], SHOP), quoteTable({ rows: [["Operation"]], ...LISTS })]) {
      expect([q.seconds, q.money, q.rows.length]).toEqual([0, undefined, 0]);
      expect(q.assumptions).toEqual(["No row has a time: there is nothing to add up."]);
    }
  });
  it("warns of rows that are stopped but in the total", () => {
    const q = quoteTable({ rows: demo(all), ...LISTS });
    expect(q.stops.length).toBeGreaterThan(0);
    expect(items(q, "Stop")).toHaveLength(q.stops.length);
    expect(items(q, "Check")).toHaveLength(q.checks.length);
    expect(q.assumptions.join(" ")).toMatch(/cannot be made as planned \(stop\)/);
  });
});

describe("the same rows on two machines (independent)", () => {
  const rows = readRows(demo(all.slice(0, 17)));
  it("cost the same at the break-even batch that quotes of single batches bracket", () => {
    const c = compare(rows, lists, { machine: ["Centre V3", "small centre s5"] });
    const N = c.breakEven.batch!;
    const dearer = (batch: number) => {
      const { quotes } = compare(rows, lists, { machine: ["Centre V3", "Small centre S5"] }, { batch });
      return quotes[0].money! - quotes[1].money!;
    };
    expect(N).toBeGreaterThan(1);
    expect(Math.sign(dearer(Math.floor(N)))).not.toBe(Math.sign(dearer(Math.ceil(N))));
    expect(c.breakEven.text).toContain(`from ${Math.floor(N) + 1} on ${dearer(1e6) > 0 ? "Small" : "Centre V3"}`);
  });
  it("count the same rows on both sides, and say why the others are not there", () => {
    const c = compare(rows, lists, { machine: ["Knee mill K1", "Centre V4"] }, { batch: 10 });
    const [a, b] = c.quotes;
    expect(a.rows.map((r) => r.at)).toEqual(b.rows.map((r) => r.at));
    expect(a.rows.length + a.leftOut.length).toBe(rows.filter((r) => !r.empty).length);
    for (const q of c.quotes) consistent(q);
  });
  it("have no break-even when one is cheaper in setup and in each part, or when it is the same machine", () => {
    const machines = [...MACHINES, ["Dear centre", 60, 8000, 11, 80, 10, 24, 3, 6, 22, 0.03, 148, 70]];
    const more = readLists(MATERIALS, TOOLS, machines);
    const c = compare(rows, more, { machine: ["Dear centre", "Centre V3"] });
    expect(c.breakEven.batch).toBeUndefined();
    expect(c.breakEven.text).toMatch(/no break-even: Centre V3 costs less at every batch/);
    expect(compare(rows, more, { machine: ["Centre V3", "Centre V3"] }).breakEven.text).toMatch(/Both cost the same/);
  });
  it("are timed but not priced when a machine has no rate", () => {
    const machines = MACHINES.map((m) => (m[0] === "Centre V4" ? [...m.slice(0, 11), null, 30] : m));
    const c = compare(rows, readLists(MATERIALS, TOOLS, machines), { machine: ["Centre V3", "Centre V4"] });
    expect(c.breakEven.text).toMatch(/no rate/);
    expect(c.quotes[1].seconds).toBeGreaterThan(0);
  });
  it("name what is nearest when a machine or material is not in its list", () => {
    expect(() => compare(rows, lists, { machine: ["Centre V9", "Centre V3"] })).toThrow(
      /nearest in the list: Centre V/,
    );
    expect(() => compare(rows, lists, { material: ["Granite", ""] })).toThrow(/material/);
    expect(() => compare(rows, lists, {})).toThrow(/pair/);
  });
  it("in two materials cost less in the one that cuts faster, at every batch", () => {
    const soft = "Aluminium EN AW-6082 T6 (AA 6061)";
    const hard = "Titanium Ti-6Al-4V (UNS R56400)";
    const c = compare(rows, lists, { material: [hard, soft] }, { batch: 5 });
    expect(c.names).toEqual([hard, soft]);
    expect(c.quotes[1].time.cutting).toBeLessThan(c.quotes[0].time.cutting);
    expect(c.breakEven.text).toContain(`${soft} costs less to machine at every batch`);
  });
});

describe("a quote of anything (identity)", () => {
  const junk = fc.oneof(
    fc.constantFrom(
      null,
      "",
      "mm",
      "in",
      "drill",
      "bore",
      "thread mill",
      "face",
      "slot",
      "M6",
      "1/4-20",
      "Centre V3",
      "#N/A",
    ),
    fc.constantFrom(0, 1, 5, 1e308, -1, 1e-300, true, {}),
    fc.string(),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
  );
  const rowHeadings = DEMO[0]!;
  const sample = demo(all.filter((r) => r % 4 === 1));
  const machineHeadings = MACHINES[0]!;
  const toolHeadings = TOOLS[0]!;
  const materialHeadings = MATERIALS[0]!;
  const spoiled = (source: readonly (readonly unknown[])[], from: readonly unknown[]) =>
    fc
      .array(
        fc.tuple(fc.integer({ min: 1, max: source.length - 1 }), fc.integer({ min: 0, max: from.length - 1 }), junk),
        {
          maxLength: 12,
        },
      )
      .map((hits) => {
        const block = source.map((line) => [...line]);
        for (const [r, c, value] of hits) block[r]![c] = value;
        return block;
      });
  it("answers six columns without NaN, whatever cells it is given", () => {
    fc.assert(
      fc.property(
        spoiled(sample, rowHeadings),
        spoiled(MATERIALS, materialHeadings),
        spoiled(TOOLS, toolHeadings),
        spoiled(MACHINES, machineHeadings),
        fc.oneof({ weight: 4, arbitrary: fc.option(fc.integer({ min: 1, max: 500 })) }, { weight: 1, arbitrary: junk }),
        (rows, materials, tools, machines, batch) => {
          const block = QUOTE(rows, materials, tools, machines, [[batch]]);
          for (const line of block) {
            if (line[0] instanceof CellError) return;
            expect(line).toHaveLength(6);
            for (const cell of line) {
              expect(["number", "string"]).toContain(typeof cell);
              if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
              else expect(cell).not.toMatch(/NaN|undefined|Infinity|should not happen/);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
