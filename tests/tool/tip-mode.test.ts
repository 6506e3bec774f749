import { describe, expect, it } from "vitest";
import { toolStiffness } from "../../src/tool/beam.ts";
import { toolFrequency } from "../../src/tool/frequency.ts";
import { type HeldTool, HOLDING, tipMode } from "../../src/tool/tip-mode.ts";
import published from "../published/chatter.json" with { type: "json" };

const bar: HeldTool = {
  segments: [
    { tipDiameter: 9.6, holderDiameter: 9.6, length: 26 },
    { tipDiameter: 12, holderDiameter: 12, length: 14 },
  ],
  shankDiameter: 12,
  modulus: 600,
  poisson: 0.22,
  density: 14.5,
  holderStiffness: 22,
  damping: 0.03,
};

describe("mode at the tip of a held tool (published)", () => {
  it("a 12 mm cutter lies near the modes fitted to cutting tests of one", () => {
    const [first] = published.steelTool.modes;
    const mode = tipMode(bar, HOLDING.nominal);
    // stick-out and holder of the test are not told: a factor of 1.5 is as near as a plausibility check can be
    expect(mode.frequency / first!.frequency).toBeGreaterThan(1 / 1.5);
    expect(mode.frequency / first!.frequency).toBeLessThan(1.5);
    expect(mode.stiffness / first!.stiffness).toBeGreaterThan(1 / 1.5);
    expect(mode.stiffness / first!.stiffness).toBeLessThan(1.5);
    // and both modes lie between the ends
    const [soft, firm] = [tipMode(bar, HOLDING.soft), tipMode(bar, HOLDING.firm)];
    for (const m of published.steelTool.modes) {
      expect(m.frequency).toBeGreaterThan(soft.frequency);
      expect(m.frequency).toBeLessThan(firm.frequency);
    }
  });
});

describe("mode at the tip of a held tool (identity)", () => {
  const rigid = { pushFactor: 1e9, endMass: 0, dampingFactor: 1, processDamping: 0 };
  it("in a rigid holder is the tool's own", () => {
    const mode = tipMode(bar, rigid);
    const beam = { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true };
    expect(mode.stiffness / toolStiffness(bar.segments, beam)).toBeCloseTo(1, 6);
    expect(mode.frequency / toolFrequency(bar.segments, { modulus: 600, density: 14.5 })).toBeCloseTo(1, 6);
    expect(mode.damping).toBe(0.03);
  });
  it("the end mass counts by the square of how far the holder swings", () => {
    const end = { ...HOLDING.nominal, endMass: 0 };
    const [without, with05] = [tipMode(bar, end), tipMode(bar, HOLDING.nominal)];
    expect(with05.stiffness).toBe(without.stiffness);
    const mass = (m: typeof without) => (1e6 * m.stiffness) / (2 * Math.PI * m.frequency) ** 2;
    const own = toolStiffness(bar.segments, { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true });
    const s = 1 - with05.stiffness / own;
    expect(mass(with05) - mass(without)).toBeCloseTo(0.05 * s * s, 9);
  });
  it("a holder of 10 N/µm alone on a very stout tool is its own spring and mass", () => {
    const stout = { ...bar, modulus: 6e7, density: 1e-6, holderStiffness: 10 };
    const mode = tipMode(stout, { pushFactor: 1, endMass: 0.05, dampingFactor: 1, processDamping: 0 });
    expect(mode.stiffness).toBeCloseTo(10, 3);
    expect(mode.frequency).toBeCloseTo(Math.sqrt(1e7 / 0.05) / (2 * Math.PI), 0);
  });
  it("longer is softer and slower", () => {
    const long = tipMode(
      { ...bar, segments: [bar.segments[0]!, { ...bar.segments[1]!, length: 40 }] },
      HOLDING.nominal,
    );
    const short = tipMode(bar, HOLDING.nominal);
    expect(long.stiffness).toBeLessThan(short.stiffness);
    expect(long.frequency).toBeLessThan(short.frequency);
  });
  it("rejects a damping and a holder of nothing, by name", () => {
    expect(() => tipMode({ ...bar, damping: 0 }, HOLDING.firm)).toThrow(/damping/);
    expect(() => tipMode({ ...bar, holderStiffness: 0 }, HOLDING.firm)).toThrow(/holderStiffness/);
    expect(() => tipMode({ ...bar, segments: [] }, HOLDING.firm)).toThrow(/segments/);
  });
});
