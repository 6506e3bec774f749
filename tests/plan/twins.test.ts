/** The same physical row in inches and in millimetres; and what must happen to a row when one thing changes. */
import { describe, expect, it } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planTable } from "../../src/plan/table.ts";
import type { ResultKey } from "../../src/table/results.ts";
import type { RowPlan } from "../../src/words/worded.ts";

type Cell = string | number | null;
type Table = readonly (readonly unknown[])[];
const lists = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };

const LENGTHS = [
  ...["Start diameter", "Finish diameter", "Depth", "Length", "Radial depth", "Axial depth", "Stick-out"],
  ...["Feed per tooth", "Hole depth", "Spacing", "Measured", "Wear value", "Size tolerance"],
];
const TOOL_LENGTHS = [
  ...["Diameter", "Cutting length", "Neck diameter", "Neck length", "Shank diameter", "Stick-out", "Corner radius"],
  ...["Tip flat", "Edge radius", "Tip to profile", "Runout", "Pitch"],
];

/** A fraction of an inch is text and means inches in any row. */
function inches(text: string): number | undefined {
  const f = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(text.trim());
  return f ? Number(f[1] ?? 0) + Number(f[2]) / Number(f[3]) : undefined;
}

/** The table with every row in the other system. */
function flipped(table: Table, lengths: readonly string[]): Cell[][] {
  const head = table[0]!.map(String);
  const unitsAt = head.indexOf("Units");
  return [
    head,
    ...table.slice(1).map((row) =>
      row.map((cell, i): Cell => {
        const from = row[unitsAt];
        const k = from === "in" ? 25.4 : from === "mm" ? 1 / 25.4 : undefined;
        if (i === unitsAt && k !== undefined) return from === "in" ? "mm" : "in";
        if (k === undefined || cell === null) return cell as Cell;
        if (head[i] === "Surface speed") return (cell as number) * (from === "in" ? 0.3048 : 1 / 0.3048);
        if (!lengths.includes(head[i]!)) return cell as Cell;
        if (typeof cell === "number") return cell * k;
        const inch = inches(String(cell));
        return inch === undefined ? (cell as Cell) : from === "in" ? inch * 25.4 : inch;
      }),
    ),
  ];
}

/** Physics of two plans of one row, in canonical units. */
function agree(a: RowPlan, b: RowPlan): void {
  const name = `row ${a.row}`;
  expect(b.verdict, name).toBe(a.verdict);
  expect(b.reasons.map((r) => r.code).sort(), name).toEqual(a.reasons.map((r) => r.code).sort());
  expect(Object.keys(b.results).sort(), name).toEqual(Object.keys(a.results).sort());
  for (const [key, value] of Object.entries(a.results)) {
    const twin = b.results[key as ResultKey];
    if (typeof value === "number") {
      expect(twin, `${name} ${key}`).toBeTypeOf("number");
      // a load on the size is a difference of sizes, which magnifies their rounding
      const loose = key === "load" ? 1e-8 * Math.abs(value) : 0;
      const miss = Math.abs((twin as number) - value);
      expect(miss, `${name} ${key}: ${value} and ${twin}`).toBeLessThanOrEqual(1e-9 * Math.abs(value) + 1e-12 + loose);
    } else if (!["reasons", "depths", "drill"].includes(key)) expect(twin, `${name} ${key}`).toBe(value);
  }
  // depths are text rounded to 3 places (mm) or 4 (in): half of the last place of each
  const depths = (l: RowPlan) =>
    typeof l.results.depths === "string" && /^\d[\d.]*( · |$)/.test(l.results.depths)
      ? l.results.depths.split(" · ").map((d) => Number(d) * (l.units === "in" ? 25.4 : 1))
      : [];
  expect(depths(b).length, name).toBe(depths(a).length);
  depths(a).forEach((d, i) => {
    expect(Math.abs(d - depths(b)[i]!), name).toBeLessThanOrEqual(0.0005 + 0.00127 + 1e-9);
  });
}

describe("a row in inches and the same row in millimetres (identity)", () => {
  const rows = flipped(DEMO, LENGTHS);
  const tools = flipped(TOOLS, TOOL_LENGTHS);
  const original = planTable({ rows: DEMO, ...lists }).lines;
  const rowTwins = planTable({ rows, ...lists }).lines;
  const bothTwins = planTable({ rows, ...lists, tools }).lines;
  const toolTwins = planTable({ rows: DEMO, ...lists, tools }).lines;
  for (const [i, line] of original.entries()) {
    it(`agrees for row ${line!.row}`, () => {
      if (line!.results.row !== 720) expect(rowTwins[i]!.units).not.toBe(line!.units);
      agree(line!, rowTwins[i]!);
      agree(line!, toolTwins[i]!);
      agree(line!, bothTwins[i]!);
    });
  }
});

// ---- what must follow from a change

interface Change {
  row: Record<string, Cell>;
  tool?: Record<string, Cell>;
  material?: Record<string, Cell>;
  machine?: Record<string, Cell>;
}
const withCells = (table: Table, name: unknown, over: Record<string, Cell> = {}) =>
  table.map((r) => (r[0] === name ? r.map((c, i) => over[String(table[0]![i])] ?? c) : r));

/** Plan of one row of its own, with cells of its tool, material and machine replaced. */
function planOf({ row, tool, material, machine }: Change): RowPlan {
  return planTable({
    rows: [Object.keys(row), Object.values(row)],
    tools: withCells(TOOLS, row.Tool, tool),
    materials: withCells(MATERIALS, row.Material, material),
    machines: withCells(MACHINES, row.Machine, machine),
  }).lines[0]!;
}
const number = (plan: RowPlan, key: ResultKey) => {
  expect(plan.results[key], `${key}: ${plan.results.reasons}`).toBeTypeOf("number");
  return plan.results[key] as number;
};

const STEEL = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3", Quantity: 4, Batch: 10 };
const BASES: Record<string, Record<string, Cell>> = {
  thread: {
    ...STEEL,
    Operation: "thread mill",
    Tool: "TM-M10-S",
    Thread: "M10",
    "Start diameter": 8.5,
    Depth: 15,
    Passes: 2,
    "Spring passes": 0,
  },
  bore: {
    ...STEEL,
    Operation: "bore",
    Tool: "EM-10-4",
    "Start diameter": 28,
    "Finish diameter": 30,
    Depth: 12,
    Passes: 1,
    "Spring passes": 0,
  },
  boss: {
    ...STEEL,
    Operation: "boss",
    Tool: "EM-10-4",
    "Start diameter": 32,
    "Finish diameter": 30,
    Depth: 12,
    Passes: 1,
    "Spring passes": 0,
  },
  side: {
    ...STEEL,
    Operation: "side",
    Tool: "EM-10-4",
    Length: 60,
    Depth: 12,
    "Radial depth": 1,
    Passes: 1,
    "Spring passes": 0,
  },
  slot: { ...STEEL, Operation: "slot", Tool: "EM-10-4", Length: 60, Depth: 4, "Axial depth": 2 },
  drill: { ...STEEL, Operation: "drill", Tool: "D-8.5", "Finish diameter": 8.5, Depth: 18 },
};
const milled = ["thread", "bore", "boss", "side", "slot"];

/** A result never falls (rises strictly when `strict`) along a series of changes. */
function rises(names: string[], key: ResultKey, series: (name: string) => Change[], strict = true): void {
  for (const name of names) {
    const values = series(name).map((change) => number(planOf(change), key));
    for (let i = 1; i < values.length; i++) {
      const what = `${name} ${key}: ${values.join(", ")}`;
      if (strict) expect(values[i]!, what).toBeGreaterThan(values[i - 1]!);
      else expect(values[i]!, what).toBeGreaterThanOrEqual(values[i - 1]! * (1 - 1e-12));
    }
  }
}
const varied =
  (heading: string, ...cells: Cell[]) =>
  (name: string) =>
    cells.map((cell) => ({ row: { ...BASES[name]!, [heading]: cell } }));

describe("what follows when one thing of a row changes (identity)", () => {
  it("bends more when it sticks out more", () => rises(milled, "deflection", varied("Stick-out", 30, 34, 40, 50)));
  it("is strained more when it sticks out more", () => rises(milled, "stress", varied("Stick-out", 34, 40, 50), false));
  it("pushes, bends, strains and draws more with more feed", () => {
    for (const key of ["force", "power", "deflection", "stress", "chipThickness", "tableFeed"] as const)
      rises(milled, key, varied("Feed per tooth", 0.01, 0.02, 0.035, 0.05));
    for (const key of ["force", "power", "chipThickness", "tableFeed"] as const)
      rises(["drill"], key, varied("Feed per tooth", 0.02, 0.05, 0.1));
  });
  it("takes less time with more feed", () =>
    rises([...milled, "drill"], "time", varied("Feed per tooth", 0.05, 0.035, 0.02, 0.01)));
  it("draws more power and no more force at a higher speed", () => {
    rises(milled, "power", varied("Surface speed", 40, 60, 70));
    for (const name of milled) {
      const [slow, fast] = [40, 70].map((v) =>
        number(planOf({ row: { ...BASES[name]!, "Surface speed": v } }), "force"),
      );
      expect(fast, name).toBeCloseTo(slow!, 9);
    }
  });
  it("pushes more with a worn edge, in proportion", () => {
    for (const name of [...milled, "drill"]) {
      const [sharp, worn] = [1, 1.4].map((w) =>
        number(planOf({ row: { ...BASES[name]!, "Wear factor": w } }), "force"),
      );
      expect(worn! / sharp!, name).toBeCloseTo(1.4, 9);
    }
  });
  it("pushes more in tougher stock", () =>
    rises([...milled, "drill"], "force", (name) =>
      [1500, 2000, 2600].map((k) => ({ row: BASES[name]!, material: { "kc1.1 [MPa]": k } })),
    ));
  it("bends less with a stiffer tool, a stiffer holder", () => {
    rises(milled, "deflection", (name) =>
      [640, 600, 400, 210].map((E) => ({ row: BASES[name]!, tool: { "Modulus [GPa]": E } })),
    );
    rises(milled, "deflection", (name) =>
      [80, 30, 10].map((k) => ({ row: BASES[name]!, machine: { "Holder stiffness [N/µm]": k } })),
    );
  });
  it("cuts a smaller chip and pushes less in more passes", () => {
    // a thread's smallest passes are fed faster for their thin chip, so its force need not fall
    rises(["bore", "boss"], "force", varied("Passes", 5, 3, 2, 1));
    rises(["thread", "bore", "boss"], "time", varied("Passes", 1, 2, 3, 5));
    rises(["thread", "bore", "boss"], "radialDepth", varied("Passes", 5, 3, 2, 1));
  });
  it("pushes more the deeper the radial cut", () => {
    // the edge feed may fall with the depth: the thin-chip compensation goes; so the row says its own chip is thick enough
    const at = (ae: number) => ({
      row: { ...BASES.side!, "Radial depth": ae, "Axial depth": 12, "Feed per tooth": 0.03 },
    });
    rises(["side"], "power", () => [2, 3, 4, 5, 7].map(at));
    rises(["side"], "radialDepth", () => [0.5, 1, 2].map(at));
  });
  it("takes longer, never shorter, for more holes, deeper holes, slower machines", () => {
    rises([...milled, "drill"], "time", varied("Quantity", 1, 2, 10));
    rises(["thread", "drill"], "timeEach", varied("Depth", 8, 12, 16));
    rises([...milled, "drill"], "time", (name) =>
      [8, 4, 1, 0.3].map((a) => ({ row: BASES[name]!, machine: { "Acceleration [m/s²]": a } })),
    );
    rises(
      [...milled, "drill"],
      "time",
      (name) => [40, 20, 8].map((v) => ({ row: BASES[name]!, machine: { "Rapid [m/min]": v } })),
      false, // on short ways the rapid is never reached
    );
  });
  it("costs less in larger batches and more at a higher rate", () => {
    rises([...milled, "drill"], "cost", varied("Batch", 1000, 50, 10, 1));
    rises([...milled, "drill"], "cost", (name) =>
      [40, 80, 160].map((rate) => ({ row: BASES[name]!, machine: { "Rate [per hour]": rate } })),
    );
  });
  it("pushes more the deeper a bore from solid is widened, and no more in a bore that the helix makes alone", () => {
    const solid = (finish: number, depth: number) =>
      number(
        planOf({
          row: {
            ...STEEL,
            Operation: "bore",
            Tool: "EM-10-4",
            "Start diameter": 0,
            "Finish diameter": finish,
            Depth: depth,
            "Spring passes": 0,
          },
        }),
        "force",
      );
    expect(solid(30, 10)).toBeGreaterThan(1.2 * solid(30, 5));
    expect(solid(17, 10)).toBeCloseTo(solid(17, 5), 9);
  });
  it("never turns faster than tool, machine and row allow, nor feeds faster than the machine", () => {
    for (const name of [...milled, "drill"])
      for (const cap of [500, 1200]) {
        expect(number(planOf({ row: { ...BASES[name]!, "Max rpm": cap } }), "spindleSpeed")).toBeLessThanOrEqual(cap);
        expect(number(planOf({ row: BASES[name]!, machine: { "Max rpm": cap } }), "spindleSpeed")).toBeLessThanOrEqual(
          cap,
        );
        expect(number(planOf({ row: BASES[name]!, tool: { "Max rpm": cap } }), "spindleSpeed")).toBeLessThanOrEqual(
          cap,
        );
        const slow = planOf({ row: BASES[name]!, machine: { "Max feed [m/min]": 0.02 } });
        expect(number(slow, "tableFeed")).toBeLessThanOrEqual(20 * (1 + 1e-12));
        // a feed that the row chose for a wall is held, others are capped: either is said
        expect(slow.reasons.map((r) => r.code).filter((c) => c === "feed-capped" || c === "feed-held")).toHaveLength(1);
      }
  });
  it("feeds the centre slower than the edge inside, faster outside", () => {
    const ratio = (name: string) => {
      const p = planOf({ row: BASES[name]! });
      const teeth = 4;
      return number(p, "tableFeed") / (number(p, "spindleSpeed") * teeth * number(p, "feedPerTooth"));
    };
    expect(ratio("bore")).toBeCloseTo((30 - 10) / 30, 9);
    expect(ratio("boss")).toBeCloseTo((30 + 10) / 30, 9);
    expect(ratio("side")).toBeCloseTo(1, 9);
  });
  it("turns the helix round for the other hand or way, and leaves the numbers alone", () => {
    const plans = [
      ["right", "climb", "bottom up, counter-clockwise"],
      ["left", "climb", "top down, counter-clockwise"],
      ["right", "conventional", "top down, clockwise"],
      ["left", "conventional", "bottom up, clockwise"],
    ].map(([Hand, Way, direction]) => {
      const p = planOf({ row: { ...BASES.thread!, Hand: Hand!, Way: Way! } });
      expect(p.results.direction).toBe(direction);
      return p;
    });
    for (const p of plans) {
      expect(p.results.pathRadius).toBe(plans[0]!.results.pathRadius);
      expect(p.results.force).toBeCloseTo(plans[0]!.results.force as number, 9);
    }
  });
  it("moves the size by twice the wear value, away from the wall when it is positive", () => {
    const size = (name: string, wear: number) =>
      number(planOf({ row: { ...BASES[name]!, "Wear value": wear, "Size tolerance": 0.1 } }), "size");
    // a path moved away from the wall cuts less and bends less: a little under twice the value
    const moved = (name: string, sign: number) => {
      const by = sign * (size(name, 0.01) - size(name, 0));
      expect(by, name).toBeGreaterThan(0.0185);
      expect(by, name).toBeLessThanOrEqual(0.02 + 1e-9);
    };
    for (const name of ["thread", "bore"]) moved(name, -1);
    moved("boss", 1);
  });
  it("comes nearer to the size with spring passes", () => {
    for (const name of ["thread", "bore", "boss"]) {
      const target = name === "thread" ? number(planOf({ row: BASES.thread! }), "sizeMin") : 30;
      const top = name === "thread" ? number(planOf({ row: BASES.thread! }), "sizeMax") : 30;
      const off = [0, 1, 2].map((n) => {
        const p = planOf({ row: { ...BASES[name]!, "Spring passes": n, "Size tolerance": 0.1 } });
        return Math.abs(number(p, "size") - (target + top) / 2);
      });
      expect(off[1]!, name).toBeLessThanOrEqual(off[0]!);
      expect(off[2]!, name).toBeLessThanOrEqual(off[1]!);
    }
  });
});
