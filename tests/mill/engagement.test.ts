import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { arcDepth, arcFeed, type Side } from "../../src/mill/arc.ts";
import { ballDiameter, scallop, stepover } from "../../src/mill/ball.ts";
import { largestChip, meanChip, thinnedFeed } from "../../src/mill/chip.ts";
import { engagedDepth, engagementAngle } from "../../src/mill/engagement.ts";
import reference from "../published/engagement.json" with { type: "json" };

const rad = Math.PI / 180;
const refuses = (f: () => unknown, parameter: string) => {
  try {
    f();
  } catch (e) {
    expect(e).toBeInstanceOf(TradeError);
    expect((e as TradeError).parameter).toBe(parameter);
    return;
  }
  throw new Error(`took a bad ${parameter}`);
};

describe("engagement against true tooth paths (independent)", () => {
  for (const r of reference.straight) {
    it(`agrees for ${r.mode} milling, D ${r.D}, ae ${r.ae}, fz ${r.fz}`, () => {
      expect(engagementAngle(r.ae, r.D) * rad).toBeCloseTo(r.brute.phi_e, 10);
      // the trochoid departs from the circle by a few times fz/D; at a tenth of a millimetre on D 10 that is 3 %
      const tolerance = 3 * (r.fz / r.D);
      expect(Math.abs(largestChip(r.fz, r.ae, r.D, 90) / r.brute.h_max - 1)).toBeLessThan(tolerance);
      expect(Math.abs(meanChip(r.fz, r.ae, r.D, 90) / r.brute.h_mean_over_rotation - 1)).toBeLessThan(tolerance);
    });
  }
  for (const r of reference.circular) {
    const side: Side = r.kind === "internal" ? "inside" : "outside";
    it(`agrees for a wall ${r.kind} Dm ${r.Dm}, Dw ${r.Dw}, Dc ${r.Dc}`, () => {
      const ae = arcDepth(r.Dw, r.Dm, r.Dc, side);
      expect(engagementAngle(ae, r.Dc) * rad).toBeCloseTo(r.phi_exact, 9);
      // the dexel count itself scatters by 1e-4
      expect(Math.abs(ae / r.brute_dexel.area_per_centre_travel - 1)).toBeLessThan(2e-4);
      const fz = arcFeed(r.fz_edge, r.Dm, r.Dc, side);
      expect(fz).toBeCloseTo(r.fz_centre, 10);
      expect(Math.abs(largestChip(fz, ae, r.Dc, 90) / r.brute.h_max - 1)).toBeLessThan(3 * (r.fz_centre / r.Dc));
    });
  }
});

describe("chip thickness by summation (independent)", () => {
  it("has the mean of fz·sin θ over the angle of engagement", () => {
    for (const [ae, D] of [
      [0.3, 12],
      [4, 12],
      [6, 12],
      [12, 12],
    ] as const) {
      const phi = Math.acos(1 - (2 * ae) / D);
      let sum = 0;
      for (let i = 0; i < 20000; i++) sum += Math.sin(((i + 0.5) / 20000) * phi) / 20000;
      expect(meanChip(0.08, ae, D, 60)).toBeCloseTo(0.08 * Math.sin(60 * rad) * sum, 9);
    }
  });
});

describe("straight walls (identity)", () => {
  it("engages 90° at half the cutter and 180° in a slot", () => {
    expect(engagementAngle(5, 10)).toBeCloseTo(90, 12);
    expect(engagementAngle(10, 10)).toBeCloseTo(180, 12);
  });
  it("keeps its figures at a depth of a millionth of the cutter", () =>
    expect(engagementAngle(1e-5, 10) * rad).toBeCloseTo(2 * Math.sqrt(1e-6) * (1 + 1e-6 / 6), 14));
  it("turns depth to angle and back", () =>
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1, noNaN: true }), (x) => {
        expect(engagedDepth(engagementAngle(20 * x, 20), 20) / (20 * x)).toBeCloseTo(1, 9);
      }),
    ));
  it("turns chip to feed and back, for any edge angle", () =>
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 1, noNaN: true }),
        fc.double({ min: 5, max: 90, noNaN: true }),
        (x, k) => {
          expect(thinnedFeed(largestChip(0.1, 16 * x, 16, k), 16 * x, 16, k)).toBeCloseTo(0.1, 12);
        },
      ),
    ));
  it("has its largest chip at half the cutter, and keeps it beyond", () => {
    expect(largestChip(0.1, 5, 10, 90)).toBeCloseTo(0.1, 14);
    expect(largestChip(0.1, 9, 10, 90)).toBe(0.1);
    expect(largestChip(0.1, 4.9, 10, 90)).toBeLessThan(0.1);
  });
  it("rejects a radial depth above the diameter, by name", () => {
    refuses(() => engagementAngle(10.1, 10), "radialDepth");
    refuses(() => largestChip(0.1, 11, 10, 90), "radialDepth");
    refuses(() => meanChip(0.1, 0, 10, 90), "radialDepth");
    refuses(() => thinnedFeed(0.1, 1, 10, 0), "edgeAngle");
    refuses(() => thinnedFeed(0.1, 1, 10, 91), "edgeAngle");
    refuses(() => meanChip(Number.NaN, 1, 10, 90), "feedPerTooth");
  });
});

describe("circular walls (identity)", () => {
  it("nears the straight wall as the radius grows", () => {
    for (const side of ["inside", "outside"] as const) {
      const Dm = 1e7;
      const Dw = side === "inside" ? Dm - 2 * 1.5 : Dm + 2 * 1.5;
      expect(arcDepth(Dw, Dm, 12, side)).toBeCloseTo(1.5, 5);
      expect(arcFeed(100, Dm, 12, side)).toBeCloseTo(100, 3);
    }
  });
  it("is deeper than the drawing inside, shallower outside", () => {
    expect(arcDepth(17, 20, 12, "inside")).toBeGreaterThan(1.5);
    expect(arcDepth(23, 20, 12, "outside")).toBeLessThan(1.5);
  });
  it("removes what lies between the two diameters, per travel of the centre", () => {
    expect(arcDepth(17, 20, 12, "inside") * Math.PI * (20 - 12)).toBeCloseTo((Math.PI * (20 ** 2 - 17 ** 2)) / 4, 10);
    expect(arcDepth(23, 20, 12, "outside") * Math.PI * (20 + 12)).toBeCloseTo((Math.PI * (23 ** 2 - 20 ** 2)) / 4, 10);
  });
  it("never exceeds the cutter, from solid, from a pilot, or into a thick boss", () => {
    expect(arcDepth(0, 20, 12, "inside")).toBeCloseTo(12, 12);
    expect(arcDepth(3.9, 20, 12, "inside")).toBeCloseTo(12, 12);
    expect(arcDepth(0, 100, 12, "inside")).toBeCloseTo(12, 12);
    expect(arcDepth(44, 20, 12, "outside")).toBeCloseTo(12, 12);
    expect(arcDepth(400, 20, 12, "outside")).toBeCloseTo(12, 12);
  });
  it("rejects a cutter that fills the bore and a start on the wrong side", () => {
    refuses(() => arcFeed(100, 12, 12, "inside"), "cutterDiameter");
    refuses(() => arcDepth(5, 12, 12, "inside"), "cutterDiameter");
    refuses(() => arcDepth(20, 20, 12, "inside"), "startDiameter");
    refuses(() => arcDepth(-1, 20, 12, "inside"), "startDiameter");
    refuses(() => arcDepth(20, 20, 12, "outside"), "startDiameter");
    refuses(() => arcDepth(Number.POSITIVE_INFINITY, 20, 12, "outside"), "startDiameter");
  });
});

describe("ball and bull nose (identity)", () => {
  it("is the chord of the ball at that height", () => {
    for (const ap of [0.01, 0.5, 3, 4.999]) {
      const De = ballDiameter(10, ap, 5);
      expect(Math.hypot(De / 2, 5 - ap)).toBeCloseTo(5, 12); // the point lies on the sphere
    }
  });
  it("meets the full diameter at the corner radius and keeps it beyond", () => {
    expect(ballDiameter(12, 2, 2)).toBe(12);
    expect(ballDiameter(12, 1.999999, 2)).toBeCloseTo(12, 5);
    expect(ballDiameter(12, 30, 2)).toBe(12);
    expect(ballDiameter(12, 0.1, 0)).toBe(12);
  });
  it("leaves the flat of a bull nose at no depth", () => expect(ballDiameter(12, 1e-12, 2)).toBeCloseTo(8, 4));
  it("puts the cusp on both circles", () => {
    for (const s of [0.01, 1, 6, 9.99]) {
      const h = scallop(5, s);
      expect(Math.hypot(s / 2, 5 - h)).toBeCloseTo(5, 12);
    }
  });
  it("nears s²/(8r) for small cusps and is more than it for large ones", () => {
    expect(scallop(5, 0.01) / (0.01 ** 2 / 40)).toBeCloseTo(1, 5);
    expect(scallop(5, 8)).toBeGreaterThan(64 / 40);
  });
  it("turns stepover to cusp and back", () =>
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 2, noNaN: true }), (x) => {
        expect(stepover(3, scallop(3, 3 * x)) / (3 * x)).toBeCloseTo(1, 7);
      }),
    ));
  it("rejects what has no cusp", () => {
    refuses(() => scallop(5, 10.1), "stepover");
    refuses(() => stepover(5, 5.1), "scallop");
    refuses(() => ballDiameter(10, 1, 5.1), "cornerRadius");
    refuses(() => ballDiameter(10, 0, 5), "axialDepth");
  });
});
