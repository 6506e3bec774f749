import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { millForces } from "../../src/mill/force.ts";
import { type ThreadCut, threadLoads, threadMillForces, tipPathRadius } from "../../src/mill/threadforce.ts";
import reference from "../published/milling-force.json" with { type: "json" };
import { refusal } from "../refusal.ts";
import { bruteThread } from "./threadbrute.ts";

const base: ThreadCut = {
  holeDiameter: 2.459,
  cutterDiameter: 2.35,
  tipFlat: 0.0625,
  profileAngle: 60,
  feedPerTooth: 0.01,
  teeth: 3,
  kc11: 800,
  exponent: 0.25,
  startDepth: 0,
  endDepth: 0.2706,
  radialRatio: 0.35,
  internal: true,
};
/** Angle at which the circle of the tips leaves the hole's, by the law of cosines: e² + (Dc/2)² − 2·e·(Dc/2)·cos(π − φ) = Rw². */
function tipAngle({ holeDiameter, cutterDiameter, endDepth }: ThreadCut): number {
  const [Rw, r] = [holeDiameter / 2, cutterDiameter / 2];
  const e = Rw + endDepth - r;
  return Math.acos(Math.max(-1, (Rw * Rw - e * e - r * r) / (2 * e * r)));
}
const near = (value: number, wanted: number, relative: number, what = "") =>
  expect(Math.abs(value - wanted), `${what} ${value}, wanted ${wanted}`).toBeLessThanOrEqual(
    relative * Math.abs(wanted),
  );

describe("thread-mill forces against a slice-by-slice sum (independent)", () => {
  for (const r of reference.thread_mill) {
    it(`agrees for ${r.name}`, () => {
      const f = threadMillForces({
        holeDiameter: r.hole_d,
        cutterDiameter: r.Dc,
        tipFlat: r.tip_flat,
        profileAngle: 60,
        feedPerTooth: r.fz_centre,
        teeth: r.z,
        kc11: r.kc11,
        exponent: r.mc,
        startDepth: r.depth_before,
        endDepth: r.depth_after,
        radialRatio: 0.35,
        internal: true,
      });
      // the sum's own convergence is 2.2e-5
      near(f.meanTangential, r.result.Ft_mean_sum, r.convergence_rel);
      near(f.meanTorque * 1000, r.result.torque_mean, r.convergence_rel);
      near(f.pathRadius, r.result.orbit_radius, 1e-12);
    });
  }
  const cases: Record<string, Partial<ThreadCut>> = {
    "one pass in a small hole": {},
    "a second pass": { startDepth: 0.15 },
    "a thin last pass, conventional": { startDepth: 0.26, way: "conventional" },
    "six teeth": { teeth: 6, startDepth: 0.1, exponent: 0.3 },
    "an external thread": { internal: false, holeDiameter: 6, cutterDiameter: 10, endDepth: 0.6 },
    "twelve teeth on an external thread": {
      ...{ internal: false, holeDiameter: 6, cutterDiameter: 10, startDepth: 0.3, endDepth: 0.6, teeth: 12 },
    },
    "a small external thread, deep": {
      ...{ internal: false, holeDiameter: 2, cutterDiameter: 2.35, startDepth: 0.2, endDepth: 0.9 },
    },
    "a roomy hole with edge forces": {
      ...{ holeDiameter: 10, cutterDiameter: 5, startDepth: 0.4, endDepth: 0.9, edgeTangential: 3, edgeRadial: 8 },
    },
    "a small cutter that is fully engaged": { holeDiameter: 5, startDepth: 0.5, endDepth: 1.1, teeth: 4 },
    "the 55° profile": { profileAngle: 55 },
  };
  for (const [name, change] of Object.entries(cases)) {
    it(`agrees for ${name}`, () => {
      const cut = { ...base, ...change };
      const f = threadMillForces(cut);
      const b = bruteThread(cut, 2000, 3000);
      // slices and steps jump at the angles where the flat leaves: the sum is good to 3e-4, at peaks beside the jump to 1e-3
      for (const key of ["mean", "meanTangential", "meanTorque"] as const) near(f[key], b[key], 3e-4, key);
      for (const key of ["meanNormal", "meanFeed"] as const)
        expect(Math.abs(f[key] - b[key]) / b.mean, key).toBeLessThan(2e-4);
      for (const key of ["peak", "peakTangential"] as const) near(f[key], b[key], 1e-3, key);
    });
  }
});

describe("full-profile thread mills against a slice-by-slice sum (independent)", () => {
  const full: ThreadCut = {
    ...{ ...base, holeDiameter: 5, cutterDiameter: 4.5, tipFlat: 0.1, endDepth: 0.53, feedPerTooth: 0.006, kc11: 2200 },
    ...{ turnsInCut: 9, helixAngle: 10, pitch: 1 },
  };
  const cases: Record<string, Partial<ThreadCut>> = {
    "nine profiles at 10°": {},
    "a second pass, conventional": { startDepth: 0.3, way: "conventional" },
    "thirteen profiles at 27°: more than one tooth's turn": { turnsInCut: 13, helixAngle: 27, teeth: 4 },
    "two profiles of an external thread": {
      ...{
        internal: false,
        holeDiameter: 10,
        cutterDiameter: 12,
        pitch: 1.5,
        endDepth: 0.9,
        turnsInCut: 2,
        helixAngle: 15,
      },
    },
  };
  for (const [name, change] of Object.entries(cases)) {
    it(`agrees for ${name}`, () => {
      const cut = { ...full, ...change };
      const f = threadMillForces(cut);
      // the trail by hand: a point one pitch up a helix of angle β stands P·tan β further round the circumference
      const trail = (cut.pitch! * Math.tan((cut.helixAngle! * Math.PI) / 180)) / (cut.cutterDiameter / 2);
      const b = bruteThread({ ...cut, profiles: cut.turnsInCut, trail }, 100, 400);
      for (const key of ["mean", "meanTangential", "meanTorque"] as const) near(f[key], b[key], 5e-3, key);
      for (const key of ["meanNormal", "meanFeed"] as const)
        expect(Math.abs(f[key] - b[key]) / b.mean, key).toBeLessThan(2e-3);
      for (const key of ["peak", "peakTangential"] as const) near(f[key], b[key], 5e-3, key);
    });
  }
  it("the helix takes the peak down, never the torque; without one nothing changes", () => {
    const straight = threadMillForces({ ...full, helixAngle: 0 });
    const helical = threadMillForces(full);
    expect(straight.peak).toBeGreaterThan(1.05 * helical.peak);
    near(helical.meanTorque, straight.meanTorque, 1e-12);
    near(straight.peak, 9 * threadMillForces({ ...full, turnsInCut: 1 }).peak, 1e-12);
    expect(helical.peak).toBeGreaterThanOrEqual(helical.mean);
  });
  it("the axial force is its share of the tangential one, of one profile and of several", () => {
    for (const turnsInCut of [1, 7]) {
      const f = threadMillForces({ ...full, turnsInCut, axialRatio: 0.4 });
      expect(f.meanAxial).toBeCloseTo(0.4 * f.meanTangential, 9);
      expect(threadMillForces({ ...full, turnsInCut }).meanAxial).toBe(0);
    }
  });
  it("takes no more profiles than a sum ends with, and no part of one, where they trail", () => {
    for (const turnsInCut of [1001, 2.5])
      expect(refusal(() => threadMillForces({ ...full, turnsInCut }))).toMatch(
        new RegExp(`turnsInCut is ${turnsInCut}; a whole number of at least 1 and at most 1000`),
      );
    expect(() => threadMillForces({ ...full, turnsInCut: 2.5, helixAngle: 0 })).not.toThrow();
  });
  it("gives the loads alone as the whole calculation does, the torque of trailing profiles within 0.5 %", () => {
    for (const cut of [full, { ...full, turnsInCut: 1 }, { ...full, helixAngle: 0 }]) {
      const [loads, whole] = [threadLoads(cut), threadMillForces(cut)];
      expect(loads.peak).toBe(whole.peak);
      expect(loads.peakTangential).toBe(whole.peakTangential);
      near(loads.meanTorque, whole.meanTorque, 5e-3);
    }
  });
  it("wants whole profiles where they trail", () =>
    expect(() => threadMillForces({ ...full, turnsInCut: 2.5 })).toThrow(TradeError));
  it("the force at the wall nears the straight one as the helix goes", () => {
    const edged = { ...full, edgeRadial: 9, edgeTangential: 9 };
    const at = (helixAngle: number) => threadMillForces({ ...edged, helixAngle }).wallNormal;
    near(at(1e-6), at(0), 1e-4);
  });
  it("at the wall each profile meets the others where they stand then", () => {
    const edged = { ...full, teeth: 1, turnsInCut: 3, edgeRadial: 9, edgeTangential: 9 };
    const trail = Math.tan((10 * Math.PI) / 180) / 2.25;
    // one tooth: the profile above trails into the wall's far side (no cut), the one below is a trail further on; the load of a
    // profile at an angle is the brute sum of a slice-wise tooth there
    const { engagement } = threadMillForces(edged);
    expect((engagement * Math.PI) / 180).toBeGreaterThan(2 * trail);
    const top = threadMillForces(edged).wallNormal;
    const alone = threadMillForces({ ...edged, turnsInCut: 1 }).wallNormal;
    expect(top).toBeGreaterThan(alone);
    near(threadMillForces(edged).wallNormalLeast, alone, 1e-6);
  });
});

describe("thread-mill forces (identity)", () => {
  it("is an end mill with straight flutes when the profile is all flat", () => {
    // a huge flat makes the flanks negligible; the end mill has the compensated radial depth of that bore
    const cut = { ...base, tipFlat: 1e6, holeDiameter: 10, cutterDiameter: 5, endDepth: 0.5 };
    const f = threadMillForces(cut);
    const radialDepth = (11 ** 2 - 10 ** 2) / (4 * (11 - 5));
    const end = millForces({
      ...{ kc11: 800, exponent: 0.25, feedPerTooth: 0.01, radialDepth, axialDepth: 1e6, diameter: 5, teeth: 3 },
      ...{ helixAngle: 0, radialRatio: 0.35 },
    });
    for (const key of ["peak", "mean", "peakTangential", "meanTorque"] as const) near(f[key], end[key], 1e-5, key);
  });
  it("takes the work of the cut from the area at m = 0", () => {
    const f = threadMillForces({ ...base, exponent: 0 });
    // work per turn of the spindle = kc × area × travel of each slice's own engagement; on the axis that is ∫∫ r dr dφ / path
    const [R, t, n] = [base.holeDiameter / 2, base.endDepth, 200_000];
    let volume = 0; // of the groove per turn of the orbit
    for (let i = 0; i < n; i++) {
      const x = ((i + 0.5) / n) * (t * Math.tan(Math.PI / 6));
      const wall = R + t - x / Math.tan(Math.PI / 6);
      volume += (2 * Math.PI * (wall ** 2 - R ** 2) * t * Math.tan(Math.PI / 6)) / n;
    }
    volume += Math.PI * base.tipFlat * ((R + t) ** 2 - R ** 2);
    const turns = (2 * Math.PI * f.pathRadius) / (base.feedPerTooth * base.teeth);
    // Σ Ft over a turn times the local radius is the torque; at m = 0 work = kc × volume needs each slice's own radius
    near(f.meanTorque * 1000 * 2 * Math.PI * turns, 800 * volume, 1e-6);
  });
  it("spreads over passes: equal removal takes more work, because chips are thinner", () => {
    const one = threadMillForces(base).meanTorque;
    const a = threadMillForces({ ...base, endDepth: 0.15 });
    const b = threadMillForces({ ...base, startDepth: 0.15 });
    const turns = (f: { pathRadius: number; meanTorque: number }) => f.meanTorque * f.pathRadius;
    expect(turns(a) + turns(b)).toBeGreaterThan(one * threadMillForces(base).pathRadius);
  });
  it("fades as the last pass gets thin", () => {
    const f = (d: number) => threadMillForces({ ...base, startDepth: base.endDepth - d }).peak;
    expect(f(1e-3)).toBeLessThan(f(1e-2));
    expect(f(1e-9)).toBeGreaterThan(0);
    expect(f(1e-9)).toBeLessThan(f(1e-3) / 100);
  });
  it("has the chip of the largest engagement: fz·sin φ up to a quarter turn, fz beyond; the flank's is sin α of it", () => {
    // 2.459 mm hole: a small cutter is hardly engaged, one that nearly fills it more than a quarter turn
    for (const [cutterDiameter, beyond] of [
      [1.2, false],
      [2.44, true],
    ] as const) {
      const f = threadMillForces({ ...base, cutterDiameter });
      expect(f.engagement > 90).toBe(beyond);
      const sine = beyond ? 1 : Math.sin((f.engagement * Math.PI) / 180);
      near(f.flankChip, base.feedPerTooth * Math.sin((base.profileAngle * Math.PI) / 360) * sine, 1e-12);
      expect(f.tipChip).toBeLessThanOrEqual(base.feedPerTooth);
      // inside the tip is engaged as far as any part of the profile on a first pass
      near(f.tipChip, base.feedPerTooth * Math.sin(Math.min(Math.PI / 2, tipAngle({ ...base, cutterDiameter }))), 1e-9);
    }
  });
  it("takes the flank's chip as half the tip's at 60°", () => {
    const f = threadMillForces({ ...base, holeDiameter: 2.36, cutterDiameter: 2.35 });
    near(f.flankChip, f.tipChip / 2, 1e-12);
  });
  it("multiplies by the profiles that cut at once, chips excepted", () => {
    const [one, six] = [threadMillForces(base), threadMillForces({ ...base, turnsInCut: 6 })];
    for (const key of ["peak", "mean", "meanTorque", "meanNormal"] as const) near(six[key], 6 * one[key], 1e-12);
    expect(six.flankChip).toBe(one.flankChip);
  });
  it("lessens the resultant when the flanks' thrust is taken normal to the edge", () => {
    const normal = threadMillForces({ ...base, flankThrust: 0.5 });
    expect(normal.peak).toBeLessThan(threadMillForces(base).peak);
    near(normal.meanTorque, threadMillForces(base).meanTorque, 1e-12);
  });
  it("pushes away from the wall when climbing; conventional turns the tangential part", () => {
    const [a, b] = [threadMillForces(base), threadMillForces({ ...base, way: "conventional" })];
    expect(a.meanNormal).toBeGreaterThan(0);
    expect(b.meanNormal).toBeLessThan(0);
    near(a.peak, b.peak, 1e-12);
  });
  it("has only edge forces at the instant one tooth makes the wall", () => {
    const f = threadMillForces({ ...base, teeth: 1, edgeRadial: 10 });
    const edge = base.tipFlat + (2 * base.endDepth) / Math.cos(Math.PI / 6);
    near(f.wallNormal, 10 * edge, 1e-3);
  });
  it("stands the tip where the depth says", () => {
    expect(tipPathRadius(5, 0.5, 4, true) + 2).toBe(3);
    expect(tipPathRadius(6, 0.5, 10, false) - 5).toBe(2.5);
  });
  it("rejects what cannot be cut, by name", () => {
    for (const [parameter, change] of [
      ["cutterDiameter", { cutterDiameter: 2.46 }],
      ["endDepth", { endDepth: 0 }],
      ["endDepth", { startDepth: 0.3 }],
      ["endDepth", { endDepth: 1.2 }],
      ["startDepth", { startDepth: -0.1 }],
      ["tipFlat", { tipFlat: -0.1 }],
      ["teeth", { teeth: 0 }],
      ["exponent", { exponent: 1 }],
      ["feedPerTooth", { feedPerTooth: 0 }],
    ] as const) {
      try {
        threadMillForces({ ...base, ...change });
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect(e).toBeInstanceOf(TradeError);
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
