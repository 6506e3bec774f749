/** What a row is held to: spindle, feed, tool. Each load is worked out again from what the row shows. */
import { describe, expect, it } from "vitest";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

type More = { tool?: RowCells; machine?: RowCells; material?: RowCells };
const at = (row: RowCells, more: More = {}) => planOf({ row: { ...STEEL, ...row }, ...more });
type Plan = ReturnType<typeof at>;
const limit = (plan: Plan, key: string) => plan.limits.find((l) => l.key === key)!;
const step = (plan: Plan, key: string) => plan.steps.find((s) => s.key === key)!;
const found = (plan: Plan, code: string) => plan.findings.find((f) => f.code === code);

const drill = { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 15 };
const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 10, Length: 60, "Axial depth": 10 };
const ROWS = [
  drill,
  slot,
  { Operation: "tap", Tool: "T-M8", Thread: "M8", "Start diameter": 6.8, Depth: 12, Through: "yes" },
];

describe("spindle of a row (identity: P = 2·π·n·M)", () => {
  it.each(ROWS.map((row) => [row.Operation, row] as const))(
    "%s: a band lies as far below its load as above",
    (_, row) => {
      // but of a mill's stress, whose runout only adds
      const banded = at(row).limits.filter(({ key, band }) => band !== undefined && key !== "stress");
      expect(banded.length).toBeGreaterThan(0);
      for (const { key, load, band } of banded) {
        expect(band![0] + band![1], key).toBeCloseTo(2 * load, 9);
        expect(band![0], key).toBeLessThan(load);
      }
    },
  );
  it.each(ROWS.map((row) => [row.Operation, row] as const))("%s: power and torque belong to one speed", (_, row) => {
    const plan = at(row);
    const torque = limit(plan, "torque");
    const { spindleSpeed, power } = plan.results;
    // N·m at rpm to kW
    expect(power).toBeCloseTo((2 * Math.PI * spindleSpeed! * torque.value) / 60_000, 9);
    expect(limit(plan, "power").value).toBeCloseTo(power!, 12);
  });
  it.each(ROWS.map((row) => [row.Operation, row] as const))(
    "%s: the load is a share of what the machine has, give or take the force's 15 %%",
    (_, row) => {
      for (const key of ["power", "torque"]) {
        const one = limit(at(row, { machine: { "Power [kW]": 7, "Torque [N·m]": 60 } }), key);
        expect(one.limit).toBe(key === "power" ? 7 : 60);
        expect(one.load).toBeCloseTo(one.value / one.limit, 12);
        expect(one.band![0]).toBeCloseTo(0.85 * one.load, 12);
        expect(one.band![1]).toBeCloseTo(1.15 * one.load, 12);
      }
    },
  );
  it("a machine that names neither is not judged by them", () => {
    const plan = at(drill, { machine: { "Power [kW]": null, "Torque [N·m]": null } });
    expect(limit(plan, "power")).toBeUndefined();
    expect(limit(plan, "torque")).toBeUndefined();
    expect(plan.results.power).toBeGreaterThan(0);
  });
  it("too little power: looked at where the bad end is over, stopped where the nominal is, by the half-hour power where there is one", () => {
    const power = at(drill).results.power!;
    const judged = (cells: RowCells) => found(at(drill, { machine: cells }), "power-over");
    expect(judged({ "Power [kW]": 1.16 * power })).toBeUndefined();
    expect(judged({ "Power [kW]": 1.14 * power })).toMatchObject({
      severity: "check",
      facts: {
        value: expect.closeTo(power, 9),
        most: expect.closeTo(1.15 * power, 9),
        limit: expect.closeTo(1.14 * power, 9),
      },
    });
    expect(judged({ "Power [kW]": 0.99 * power })?.severity).toBe("stop");
    const half = { "Power [kW]": 0.9 * power, "Power 30 min [kW]": 1.01 * power };
    expect(judged(half)).toMatchObject({ severity: "check", facts: { short: expect.closeTo(1.01 * power, 9) } });
    expect(judged({ ...half, "Power 30 min [kW]": 0.99 * power })?.severity).toBe("stop");
  });
  it("too little torque: a drill that fills its hole stalls, a cutter can be relieved", () => {
    const torque = (row: RowCells) => limit(at(row), "torque").value;
    const judged = (row: RowCells, share: number) =>
      found(at(row, { machine: { "Torque [N·m]": share * torque(row) } }), "torque-over");
    expect(judged(drill, 1.16)).toBeUndefined();
    expect(judged(drill, 1.14)).toMatchObject({ severity: "check", facts: { stalls: false } });
    expect(judged(drill, 0.86)).toMatchObject({ severity: "check", facts: { stalls: false } });
    expect(judged(drill, 0.84)).toMatchObject({ severity: "stop", facts: { stalls: true } });
    const typed = { ...slot, "Feed per tooth": 0.05 };
    expect(judged(typed, 0.5)).toMatchObject({ severity: "check", facts: { stalls: false } });
  });
});

describe("feed of a row against the machine (a machinist's rules)", () => {
  it("a typed feed is capped, and the row says so; a chosen one is held", () => {
    const typed = { ...slot, "Feed per tooth": 0.05, "Surface speed": 150 };
    const wanted = at(typed).results.tableFeed!;
    // 0.05 for each of four teeth at 4775 rpm
    expect(wanted).toBeCloseTo(0.05 * 4 * ((1000 * 150) / (Math.PI * 10)), 6);
    const capped = at(typed, { machine: { "Max feed [m/min]": 0.9 } });
    expect(capped.results.tableFeed).toBeCloseTo(900, 9);
    expect(found(capped, "feed-capped")).toMatchObject({ facts: { value: expect.closeTo(wanted, 6), limit: 900 } });
    expect(limit(capped, "feed").load).toBeCloseTo(1, 9);
    expect(found(at(typed, { machine: { "Max feed [m/min]": wanted / 999 } }), "feed-capped")).toBeUndefined();
    const free = at({ ...slot, "Surface speed": 150 }).results.tableFeed!;
    const held = at({ ...slot, "Surface speed": 150 }, { machine: { "Max feed [m/min]": 0.9 * free * 1e-3 } });
    expect(held.results.tableFeed).toBeCloseTo(0.9 * free, 6);
    expect(found(held, "feed-held")).toMatchObject({ facts: { by: "machine", limit: expect.closeTo(0.9 * free, 6) } });
    expect(found(held, "feed-capped")).toBeUndefined();
  });
  it("on a circle the acceleration allows v²/r: a chosen feed is held there, a typed one is told", () => {
    const bore = {
      Operation: "bore",
      Tool: "EM-10-4",
      "Start diameter": 12,
      "Finish diameter": 12.4,
      Depth: 5,
      Passes: 1,
    };
    const machine = { "Acceleration [m/s²]": 0.05, "Ramp time [s]": 0 };
    // √(a·r) with r = 1.2 mm: √(50·1.2) mm/s
    const arc = 60 * Math.sqrt(50 * 1.2);
    const held = at(bore, { machine });
    expect(limit(held, "arcFeed").limit).toBeCloseTo(arc, 6);
    expect(held.results.tableFeed).toBeLessThanOrEqual(arc * (1 + 1e-9));
    expect(found(held, "feed-held")).toMatchObject({ facts: { by: "arc" } });
    const told = at({ ...bore, "Feed per tooth": 0.3 }, { machine });
    expect(found(told, "feed-not-reached")).toMatchObject({ facts: { limit: expect.closeTo(arc, 6) } });
    expect(told.results.tableFeed).toBeGreaterThan(arc);
  });
});

describe("stress of a tool (identity)", () => {
  const side = { Operation: "side", Tool: "EM-10-4", Depth: 20, Length: 60, "Radial depth": 2, "Feed per tooth": 0.05 };
  it("is held to the rupture strength over 3; double the strength is half the load", () => {
    const load = (strength: number) => limit(at(side, { tool: { "Rupture strength [MPa]": strength } }), "stress");
    expect(load(3000).limit).toBeCloseTo(1000, 9);
    expect(load(3000).load / load(6000).load).toBeCloseTo(2, 9);
    expect(load(3000).band![0]).toBeCloseTo(0.85 * load(3000).load, 9);
    expect(at(side, { tool: { "Rupture strength [MPa]": 3000 } }).results.stress).toBeCloseTo(load(3000).load, 9);
  });
  it("without runout the bad end is 15 % over, with runout it is more", () => {
    const band = (runout: number) => limit(at(side, { tool: { Runout: runout } }), "stress");
    expect(band(0).band![1] / band(0).load).toBeCloseTo(1.15, 9);
    expect(band(0.02).band![1] / band(0.02).load).toBeGreaterThan(1.15);
  });
  it("a notch counts once: the stress at it is as much larger", () => {
    const stress = (notch: number) => step(at(side, { tool: { "Notch factor": notch } }), "stress").value as number;
    // flutes of 0.8 of the diameter bear half of the moment of the shank's foot, at half of its strength
    expect(stress(1.3) / stress(1)).toBeGreaterThan(1);
    expect(stress(1.3) / stress(1)).toBeLessThanOrEqual(1.3 + 1e-9);
  });
  it("a tool without a strength is not judged, and the row says so", () => {
    const plan = at(side, { tool: { "Rupture strength [MPa]": null, Substrate: null } });
    expect(found(plan, "no-strength")).toBeDefined();
    expect(limit(plan, "stress")).toBeUndefined();
  });
});

describe("chip against the edge (identity)", () => {
  const side = { Operation: "side", Tool: "EM-10-4", Depth: 5, Length: 60, "Radial depth": 5 };
  it("a chip thinner than the edge cuts is a note, thinner than half of that a check", () => {
    const plan = at({ ...side, "Feed per tooth": 0.02 });
    const least = step(plan, "leastChip").value as number;
    // the material's share of the edge radius of 0.008
    expect(limit(plan, "leastChip").value).toBeCloseTo(least, 12);
    // half of the cutter in: the thickest chip is the feed per tooth
    const thin = (share: number) => found(at({ ...side, "Feed per tooth": share * least }), "chip-too-thin");
    expect(thin(1.01)).toBeUndefined();
    expect(thin(0.99)?.severity).toBe("ok");
    expect(thin(0.51)?.severity).toBe("ok");
    expect(thin(0.49)?.severity).toBe("check");
  });
  it("is not judged where the list has no edge radius", () => {
    for (const radius of [null, 0])
      expect(
        limit(at({ ...side, "Feed per tooth": 1e-4 }, { tool: { "Edge radius": radius } }), "leastChip"),
      ).toBeUndefined();
  });
});

describe("holder and grip (a machinist's rules)", () => {
  const side = { Operation: "side", Tool: "EM-10-4", Depth: 20, Length: 60, "Radial depth": 0.5 };
  const codes = (cells: RowCells, tool: RowCells = {}) =>
    at({ ...side, ...cells }, { tool }).findings.map((f) => f.code);
  it("the holder grips the full shank: flutes of 22 mm run out above, and stick out", () => {
    expect(codes({ "Stick-out": 34 })).not.toContain("grips-flutes");
    expect(codes({ "Stick-out": 20.5 })).toContain("grips-flutes");
  });
  it("a nose that is wider than the bore stays out of it by a millimetre; one that is narrower may enter", () => {
    const bore = { Operation: "bore", "Start diameter": 28, "Finish diameter": 30, Depth: 20, "Radial depth": null };
    const nose = (diameter: number, length: number | null) => ({
      "Holder diameter": diameter,
      "Holder length": length,
    });
    expect(codes({ ...bore, "Stick-out": 30 }, nose(40, null))).not.toContain("holder-hits");
    const out = (stick: number) =>
      codes({ ...bore, Tool: "EM-10-4", "Stick-out": stick }, nose(40, null)).includes("holder-hits");
    expect(out(21.1)).toBe(false);
    expect(out(20.9)).toBe(true);
  });
});
