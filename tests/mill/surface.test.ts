import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ballDiameter, noseAngle, scallop } from "../../src/mill/ball.ts";
import { largestChip } from "../../src/mill/chip.ts";
import { CHIP_BULK, fluteArea, fluteFill, slotStep } from "../../src/mill/chip-space.ts";
import { engagedSpeed, SPEED_SPAN } from "../../src/mill/engaged-speed.ts";
import { floorRoughness, type MilledWall, markHeight, wallRoughness } from "../../src/mill/roughness.ts";

/** Wall that teeth on their trochoids leave, by points: the deepest that any comes at each place. Rz over the last turns. */
function wallByPoints({ edgeFeed, teeth, diameter, runout, way }: MilledWall): number {
  const R = diameter / 2;
  const perTurn = edgeFeed * teeth;
  const bins = 3000;
  const deepest = new Float64Array(bins).fill(-Infinity);
  for (let tooth = 0; tooth < teeth; tooth++) {
    const r = R + (runout / 2) * Math.cos((2 * Math.PI * tooth) / teeth);
    for (let turn = -2; turn <= 3; turn++) {
      const span = (2 * perTurn) / R; // where a tooth is near the wall
      for (let i = -20_000; i <= 20_000; i++) {
        const angle = (i / 20_000) * span; // from the lowest point
        const time = turn + (tooth + angle / ((2 * Math.PI) / teeth)) / teeth; // in turns
        // at its lowest point a tooth moves with the travel (conventional) or against it (climb)
        const x = perTurn * time + (way === "climb" ? -1 : 1) * r * Math.sin(angle);
        const y = r * Math.cos(angle);
        const bin = Math.floor((x / perTurn) * bins);
        if (bin >= 0 && bin < bins) deepest[bin] = Math.max(deepest[bin]!, y);
      }
    }
  }
  return Math.max(...deepest) - Math.min(...deepest);
}

describe("theoretical roughness (published)", () => {
  it("a corner of 0.8 mm at 0.2 mm leaves 6.25 µm (f²/8r, printed in every handbook on turning)", () =>
    expect(floorRoughness(0.2, 5, 0.8, 0)).toBeCloseTo(0.00625, 12));
  it("Martellotti's tooth mark h = f²/(8(R ± f·z/π)), from memory, is its first order", () => {
    for (const way of ["climb", "conventional"] as const) {
      const [f, z, R] = [0.05, 4, 6];
      const h = (f * f) / (8 * (R + ((way === "climb" ? -1 : 1) * f * z) / Math.PI));
      const found = wallRoughness({ edgeFeed: f, teeth: z, diameter: 2 * R, runout: 0, way });
      expect(Math.abs(found / h - 1)).toBeLessThan(1e-3);
    }
  });
});

describe("theoretical roughness (independent): the wall by points", () => {
  for (const wall of [
    { edgeFeed: 0.1, teeth: 4, diameter: 10, runout: 0, way: "climb" },
    { edgeFeed: 0.1, teeth: 4, diameter: 10, runout: 0, way: "conventional" },
    { edgeFeed: 0.1, teeth: 4, diameter: 10, runout: 0.02, way: "climb" },
    { edgeFeed: 0.1, teeth: 4, diameter: 10, runout: 0.001, way: "climb" },
    { edgeFeed: 0.15, teeth: 3, diameter: 12, runout: 0.001, way: "conventional" },
    { edgeFeed: 0.2, teeth: 2, diameter: 16, runout: 0.0004, way: "climb" },
    { edgeFeed: 0.08, teeth: 6, diameter: 10, runout: 0.004, way: "climb" },
  ] as const) {
    it(`${wall.teeth} teeth, ${wall.edgeFeed} mm, D ${wall.diameter}, runout ${wall.runout}, ${wall.way}`, () => {
      // marks farther than a turn apart do not matter; the parabola stands for the trochoid within a few f/R
      expect(Math.abs(wallRoughness(wall) / wallByPoints(wall) - 1)).toBeLessThan(0.02);
    });
  }
  it("an inside wall is smoother than a straight one, an outside wall rougher: circles by points", () => {
    for (const [side, Rw] of [
      ["inside", 9],
      ["outside", 9],
    ] as const) {
      const [R, f] = [6, 0.3];
      const rc = side === "inside" ? Rw - R : Rw + R;
      // half-way between two marks: how far the nearer circle stays off the wall
      const half = f / Rw / 2;
      const reach = rc * Math.cos(half) + (side === "inside" ? 1 : -1) * Math.sqrt(R * R - (rc * Math.sin(half)) ** 2);
      const gap = Math.abs(Rw - reach);
      const found = wallRoughness({
        edgeFeed: f,
        teeth: 1,
        diameter: 2 * R,
        runout: 0,
        way: "climb",
        arc: { diameter: 2 * Rw, side },
      });
      // the points know no trochoid: R·(1 − f/2πR)² instead of R is 1.6 % of 1/R
      expect(Math.abs(found / gap - 1)).toBeLessThan(side === "inside" ? 0.06 : 0.02);
    }
  });
});

describe("theoretical roughness (identity)", () => {
  it("level teeth leave the cusp of a scallop, for small feeds", () =>
    expect(floorRoughness(0.05, 4, 1, 0) / scallop(1, 0.05)).toBeCloseTo(1, 3));
  it("with much runout one tooth makes the wall: the feed per turn counts", () => {
    expect(markHeight([0.05, 0, 0, 0], 0.1, 5)).toBeCloseTo(0.4 ** 2 / 40, 12);
    expect(markHeight([0.3], 0.1, 5)).toBeCloseTo(0.1 ** 2 / 40, 12);
  });
  it("grows with runout up to that, and never beyond", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.05, noNaN: true }), fc.integer({ min: 1, max: 8 }), (runout, teeth) => {
        const h = (r: number) => floorRoughness(0.1, teeth, 0.8, r);
        expect(h(runout)).toBeGreaterThanOrEqual(0.1 ** 2 / 6.4 - 1e-12);
        expect(h(runout)).toBeLessThanOrEqual((0.1 * teeth) ** 2 / 6.4 + 1e-12);
        expect(h(1.2 * runout)).toBeGreaterThanOrEqual(h(runout) - 1e-12);
      }),
    );
  });
  it("rejects no feed and no corner, by name", () => {
    expect(() => floorRoughness(0, 4, 0.8, 0)).toThrow(/feedPerTooth/);
    expect(() => floorRoughness(0.1, 4, 0, 0)).toThrow(/cornerRadius/);
    expect(() => wallRoughness({ edgeFeed: 0.1, teeth: 0, diameter: 10, runout: 0, way: "climb" })).toThrow(/teeth/);
  });
});

describe("edge angle of a ball or corner radius (independent)", () => {
  it("the chip is thickest at the top of the cut: slice by slice", () => {
    for (const [D, r, ap, ae] of [
      [10, 5, 0.5, 0.4],
      [10, 5, 3, 6],
      [12, 2, 1, 0.8],
      [12, 0.5, 0.2, 9],
      [6, 3, 2.9, 0.05],
    ] as const) {
      let most = 0;
      for (let i = 1; i <= 2000; i++) {
        const h = (ap * i) / 2000; // height of a slice over the tip
        const width = Math.sqrt(h * (2 * r - h)); // half chord of the rounded part
        const Dh = D - 2 * r + 2 * width;
        const sine = ae < Dh / 2 ? 2 * Math.sqrt((ae / Dh) * (1 - ae / Dh)) : 1;
        most = Math.max(most, 0.1 * sine * (width / r));
      }
      const De = ballDiameter(D, ap, r);
      expect(largestChip(0.1, Math.min(ae, De), De, noseAngle(ap, r)) / most).toBeCloseTo(1, 6);
    }
  });
  it("is upright from the corner radius on", () => {
    expect(noseAngle(0.5, 0.5)).toBe(90);
    expect(noseAngle(5, 0)).toBe(90);
    expect(noseAngle(2.5, 5)).toBeCloseTo(60, 12);
    expect(() => noseAngle(0, 1)).toThrow(/axialDepth/);
  });
});

describe("room for chips (identity)", () => {
  it("four flutes in a full slot one diameter deep in aluminium are too many, three are not", () => {
    expect(slotStep("N", 10, 4, "flood")).toBeLessThan(10);
    expect(slotStep("N", 10, 3, "flood")).toBe(10);
    expect(slotStep("P", 10, 4, "flood")).toBe(10);
  });
  it("of what the material allows: soft chips pack in four flutes and more, others in five and more (common practice)", () => {
    const steps = (group: "N" | "P" | "M") => [2, 3, 4, 5, 8].map((z) => slotStep(group, 10, z, "flood"));
    expect(steps("N")).toEqual([10, 10, 5, 2.5, 2.5]);
    expect(steps("P")).toEqual([10, 10, 10, 5, 5]);
    expect(steps("M")).toEqual([7.5, 7.5, 7.5, 3.75, 3.75]);
  });
  it("dry takes from it, a jet through the tool adds", () => {
    expect(slotStep("P", 10, 4, "dry")).toBeLessThan(slotStep("P", 10, 4, "flood"));
    expect(slotStep("P", 10, 4, "through")).toBeGreaterThan(slotStep("P", 10, 4, "flood"));
  });
  it("the flutes together are half the ring around the core", () => {
    expect(4 * fluteArea(10, 4)).toBeCloseTo((Math.PI / 8) * (100 - 36), 12);
    for (let z = 1; z < 8; z++) expect(fluteArea(10, z + 1)).toBeLessThan(fluteArea(10, z));
  });
  it("a flute of as much room as its loose chip is full", () => {
    const feed = fluteArea(10, 3) / (CHIP_BULK.P * 10);
    expect(fluteFill("P", feed, 10, 10, 3)).toBeCloseTo(1, 12);
    expect(() => fluteFill("P", 0.1, 11, 10, 3)).toThrow(/radialDepth/);
    expect(() => slotStep("P", 0, 3, "flood")).toThrow(/diameter/);
  });
});

describe("surface speed against engagement", () => {
  it("(published) keeps the life of Tatar et al. 2020: one per cent less depth pays for a quarter of a per cent of speed", () => {
    const [ae, n] = [3, 0.25];
    const gain = engagedSpeed(0.99 * ae, 10, n) / engagedSpeed(ae, 10, n) - 1;
    // life ~ V^−4·ae^−1 stays
    expect((1 + gain) ** -4 / 0.99).toBeCloseTo(1, 9);
  });
  it("(identity) is 1 at half the cutter, within the span, and never rises with the depth", () => {
    expect(engagedSpeed(5, 10, 0.3)).toBe(1);
    let last = Number.POSITIVE_INFINITY;
    for (let ae = 0.01; ae <= 10; ae *= 1.2) {
      const f = engagedSpeed(ae, 10, 0.3);
      expect(f).toBeLessThanOrEqual(last);
      expect(f).toBeGreaterThanOrEqual(SPEED_SPAN.least);
      expect(f).toBeLessThanOrEqual(SPEED_SPAN.most);
      last = f;
    }
    // thin cuts run 25 to 60 % faster than full slots (common practice)
    const ratio = engagedSpeed(1, 10, 0.25) / engagedSpeed(10, 10, 0.25);
    expect(ratio).toBeGreaterThan(1.25);
    expect(ratio).toBeLessThanOrEqual(1.61);
    expect(() => engagedSpeed(11, 10, 0.25)).toThrow(/radialDepth/);
  });
});
