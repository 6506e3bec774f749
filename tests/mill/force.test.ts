import { gamma } from "mathjs";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { antiderivative } from "../../src/mill/antiderivative.ts";
import { linearEdgeForces, type MillCut, millForces } from "../../src/mill/force.ts";
import { overTurn } from "../../src/mill/turn.ts";
import reference from "../published/milling-force.json" with { type: "json" };
import { type BruteCut, bruteForces } from "./brute.ts";

const base: MillCut = {
  kc11: 1800,
  exponent: 0.25,
  feedPerTooth: 0.05,
  radialDepth: 1,
  axialDepth: 10,
  diameter: 10,
  teeth: 4,
  helixAngle: 30,
  radialRatio: 0.35,
};
const near = (value: number, wanted: number, relative: number, what = "") =>
  expect(Math.abs(value - wanted), `${what} ${value}, wanted ${wanted}`).toBeLessThanOrEqual(
    relative * Math.abs(wanted),
  );

describe("the axial force (by hand)", () => {
  it("is its share of the tangential one: Ka/Kt of the linear model without edges", () => {
    const cut = { ...base, tangential: 1500, radial: 500, edgeTangential: 0, edgeRadial: 0, way: "climb" as const };
    const f = linearEdgeForces({ ...cut, axial: 300 });
    // at the radius of 5 mm
    expect(f.meanAxial).toBeCloseTo((0.2 * 1000 * f.meanTorque) / 5, 9);
    expect(linearEdgeForces(cut).meanAxial).toBe(0);
  });
});

describe("one straight tooth in a slot (by hand)", () => {
  it("is loaded most half-way, by the chip and by its edge: ap·(kc1.1·fz^(1 − m) + Et)", () => {
    const cut = { ...base, teeth: 1, helixAngle: 0, radialDepth: 10, axialDepth: 3, edgeTangential: 12 };
    expect(millForces(cut).peakTangential).toBeCloseTo(3 * (1800 * 0.05 ** 0.75 + 12), 6);
  });
});

describe("the edge's own force (by hand: its integral over the angle of engagement)", () => {
  // over a turn each tooth cuts for φ: Fn = z·ap/2π·(±Et·(1 − cos φ) + Er·sin φ), Ff = z·ap/2π·(±Et·sin φ − Er·(1 − cos φ))
  for (const helixAngle of [0, 30])
    for (const way of ["climb", "conventional"] as const)
      for (const [Et, Er] of [
        [12, 0],
        [0, 9],
        [12, 9],
      ] as const)
        it(`tangential ${Et}, radial ${Er} N/mm, helix ${helixAngle}°, ${way}`, () => {
          const cut = { ...base, helixAngle, way, radialDepth: 3 };
          const [edged, sharp] = [millForces({ ...cut, edgeTangential: Et, edgeRadial: Er }), millForces(cut)];
          const phi = Math.acos(1 - (2 * 3) / 10);
          const [sense, length] = [way === "climb" ? 1 : -1, (4 * 10) / (2 * Math.PI)];
          const normal = length * (sense * Et * (1 - Math.cos(phi)) + Er * Math.sin(phi));
          expect(edged.meanNormal - sharp.meanNormal).toBeCloseTo(normal, 4);
          const feed = length * (sense * Et * Math.sin(phi) - Er * (1 - Math.cos(phi)));
          expect(edged.meanFeed - sharp.meanFeed).toBeCloseTo(feed, 4);
          expect(edged.meanTorque - sharp.meanTorque).toBeCloseTo((length * Et * phi * 5) / 1000, 6);
        });
});

describe("end-mill forces against a disc-by-disc sum (independent)", () => {
  for (const r of reference.end_mill) {
    it(`agrees for ${r.model}, ${r.mode}, D ${r.D}, z ${r.z}, helix ${r.helix_deg}, ae ${r.ae}, ap ${r.ap}`, () => {
      const cut = {
        feedPerTooth: r.fz,
        radialDepth: r.ae,
        axialDepth: r.ap,
        diameter: r.D,
        teeth: r.z,
        helixAngle: r.helix_deg,
        way: r.mode === "up" ? ("conventional" as const) : ("climb" as const),
      };
      const p = r.params as unknown as Record<string, number>;
      const f =
        r.model === "linear"
          ? linearEdgeForces({
              ...cut,
              tangential: p.Ktc!,
              radial: p.Krc!,
              axial: p.Kac!,
              edgeTangential: p.Kte!,
              edgeRadial: p.Kre!,
            })
          : millForces({ ...cut, kc11: p.kc11!, exponent: p.mc!, radialRatio: p.kr!, axialRatio: p.ka! });
      // The sum jumps by one disc of those in the cut when an edge enters or leaves: up to 1/240 in peaks, 3e-4 in means
      // (straight flutes: all discs jump at once, and the share is that of one of 1440 positions).
      near(f.peak, r.brute.Fxy_peak, 6e-3);
      near(f.peakTangential * (r.D / 2), r.brute.torque_peak_Nmm, 6e-3);
      near(f.mean, r.brute.Fxy_mean, 3e-4);
      near(f.meanTorque * 1000, r.brute.torque_mean_Nmm, 3e-4);
      near(f.meanFeed, r.brute.Fx_mean, 4e-4);
      near(f.meanNormal, (r.mode === "up" ? -1 : 1) * r.brute.Fy_mean, 4e-4);
      // closed means: to the figures printed
      near(f.meanTorque * 1000, (r.closed.Ft_mean_sum * r.D) / 2, 1e-7);
      if (r.model === "kienzle") near(f.meanAxial, p.ka! * r.closed.Ft_mean_sum, 1e-7);
    });
  }
});

describe("end-mill forces against slices ten times as fine (independent)", () => {
  const cases: Record<string, Partial<BruteCut>> = {
    "a shallow climb cut": {},
    "the same, conventional": { way: "conventional" },
    "a full slot": { radialDepth: 10 },
    "half the cutter": { radialDepth: 5, way: "conventional" },
    "one tooth": { teeth: 1, radialDepth: 3 },
    "forty teeth": { teeth: 40, diameter: 80, radialDepth: 60, axialDepth: 4, helixAngle: 10 },
    "a helix that wraps around the tool": { axialDepth: 45, helixAngle: 50, radialDepth: 4, teeth: 3 },
    "a helix of a tenth of a degree": { helixAngle: 0.1, radialDepth: 7, teeth: 2 },
    "edge forces, climb": { edgeTangential: 12, edgeRadial: 25, radialDepth: 2 },
    "edge forces, conventional": { edgeTangential: 12, edgeRadial: 25, radialDepth: 2, way: "conventional" },
    "edge forces in a slot, where the resultant passes near zero": {
      ...{ exponent: 0, kc11: 800, teeth: 2, radialDepth: 10, axialDepth: 5, feedPerTooth: 0.1 },
      ...{ edgeTangential: 15, edgeRadial: 12, radialRatio: 0.25 },
    },
    "a force that does not depend on the chip's thinness": { exponent: 0 },
    "a steep exponent": { exponent: 0.6, radialDepth: 2 },
    "a very thin radial depth": { radialDepth: 0.01 },
  };
  for (const [name, change] of Object.entries(cases)) {
    it(`agrees for ${name}`, () => {
      const cut = { ...base, ...change };
      const f = millForces(cut);
      const b = bruteForces(cut, 1000, 600);
      // midpoint slices of this number are good to 2e-6; means over 1000 steps to 4e-5 where the force has corners
      for (const key of ["peak", "peakTangential"] as const) near(f[key], b[key], 1e-5, key);
      for (const key of ["wallNormal", "wallNormalLeast", "meanNormal", "meanFeed"] as const) {
        expect(Math.abs(f[key] - b[key]) / b.peak, key).toBeLessThan(4e-5);
      }
      near(f.mean / f.meanTorque, b.mean / b.meanTorque, 1e-5, "mean"); // the error of the steps drops out
      near(f.meanTorque, b.meanTorque, 2e-3 / cut.teeth / Math.sqrt(cut.radialDepth / cut.diameter) / 10, "torque");
    });
  }
  for (const change of [{}, { radialDepth: 6, teeth: 3 }, { radialDepth: 10, teeth: 5 }]) {
    it(`agrees with straight flutes, ${JSON.stringify(change)}`, () => {
      const cut = { ...base, helixAngle: 0, ...change };
      const f = millForces(cut);
      const b = bruteForces(cut, 200_000, 1);
      for (const key of ["peak", "peakTangential", "mean", "meanTorque"] as const) near(f[key], b[key], 1e-5, key);
      expect(Math.abs(f.wallNormal - b.wallNormal) / b.peak).toBeLessThan(1e-6);
    });
  }
});

describe("mean forces by the closed formulas of a textbook (independent)", () => {
  // Y. Altintas, Manufacturing Automation, 2nd edition, 2012, section 2.8.1 (from memory): averages of the linear-edge model per turn.
  it("agrees with the averages of the linear-edge model over entry and exit angles", () => {
    const [Ktc, Krc, Kte, Kre, c, a, N, D] = [1900, 700, 30, 40, 0.06, 12, 4, 12];
    for (const [ae, way] of [
      [1.2, "climb"],
      [1.2, "conventional"],
      [12, "climb"],
    ] as const) {
      const phi = Math.acos(1 - (2 * ae) / D);
      const [st, ex] = way === "climb" ? [Math.PI - phi, Math.PI] : [0, phi];
      const part = (f: (x: number) => number) => f(ex) - f(st);
      const Fx =
        ((N * a * c) / (8 * Math.PI)) * part((x) => Ktc * Math.cos(2 * x) - Krc * (2 * x - Math.sin(2 * x))) +
        ((N * a) / (2 * Math.PI)) * part((x) => -Kte * Math.sin(x) + Kre * Math.cos(x));
      const Fy =
        ((N * a * c) / (8 * Math.PI)) * part((x) => Ktc * (2 * x - Math.sin(2 * x)) + Krc * Math.cos(2 * x)) -
        ((N * a) / (2 * Math.PI)) * part((x) => Kte * Math.cos(x) + Kre * Math.sin(x));
      const f = linearEdgeForces({
        ...{ tangential: Ktc, radial: Krc, edgeTangential: Kte, edgeRadial: Kre, feedPerTooth: c, axialDepth: a },
        ...{ radialDepth: ae, diameter: D, teeth: N, helixAngle: 38, way },
      });
      near(f.meanFeed, Fx, 1e-9);
      near(f.meanNormal, way === "climb" ? Fy : -Fy, 1e-9);
    }
  });
  // NIST Digital Library of Mathematical Functions 5.12.2: ∫ sin^p over 0..π/2 is a beta function
  it("integrates powers of the sine to the beta function", () => {
    for (const m of [0, 0.1, 0.25, 0.37, 0.9]) {
      const g = antiderivative(m);
      g.at(Math.PI);
      const beta = (p: number) => (Math.sqrt(Math.PI) * gamma((p + 1) / 2)) / gamma(p / 2 + 1);
      near(g.t, beta(1 - m), 1e-12);
      near(g.s, beta(2 - m), 1e-12);
      expect(Math.abs(g.c)).toBeLessThan(1e-15);
    }
  });
});

describe("antiderivatives by quadrature (independent)", () => {
  it("agree with fine midpoint sums at every angle", () => {
    const m = 0.27;
    const g = antiderivative(m);
    let [c, s, t] = [0, 0, 0];
    const n = 400_000;
    for (let i = 0; i < n; i++) {
      const u = (i + 0.5) / n; // θ = π·u², finer near 0
      const x = Math.PI * u * u;
      const f = Math.sin(x) ** (1 - m) * ((2 * Math.PI * u) / n);
      c += f * Math.cos(x);
      s += f * Math.sin(x);
      t += f;
      if ((i + 1) % 8000 === 0) {
        g.at(Math.PI * ((i + 1) / n) ** 2);
        expect(Math.abs(g.c - c)).toBeLessThan(2e-9);
        expect(Math.abs(g.s - s)).toBeLessThan(2e-9);
        expect(Math.abs(g.t - t) / t).toBeLessThan(2e-8);
      }
    }
  });
});

describe("end-mill forces (identity)", () => {
  it("takes the work of the cut from the torque: M·2π/turn = kc·volume, with the Kienzle mean in a slot at m = 0", () => {
    const f = millForces({ ...base, exponent: 0, radialDepth: 3 });
    near(f.meanTorque * 2 * Math.PI * 1000, 1800 * 3 * 10 * 0.05 * 4, 1e-12);
  });
  it("has the same magnitudes for climb and conventional without edge forces", () => {
    const [a, b] = [millForces(base), millForces({ ...base, way: "conventional" })];
    for (const key of ["peak", "mean", "peakTangential", "meanTorque"] as const) near(a[key], b[key], 1e-12);
  });
  it("pushes away from the wall when climbing, and pulls in when conventional at half the cutter", () => {
    expect(millForces({ ...base, radialDepth: 5 }).meanNormal).toBeGreaterThan(0);
    expect(millForces({ ...base, radialDepth: 5, way: "conventional" }).meanNormal).toBeLessThan(0);
  });
  it("has means that do not depend on the helix", () => {
    const [a, b] = [millForces({ ...base, helixAngle: 0 }), millForces({ ...base, helixAngle: 55 })];
    for (const key of ["meanTorque", "meanNormal", "meanFeed"] as const) near(a[key], b[key], 1e-12);
  });
  it("flattens to its mean when the flutes' trail is a whole number of tooth spaces", () => {
    const axialDepth = (Math.PI * 10) / 4 / Math.tan((30 * Math.PI) / 180);
    const f = millForces({ ...base, axialDepth });
    near(f.peak, f.mean, 1e-8);
  });
  it("nears the straight flute as the helix goes to nothing", () => {
    const straight = millForces({ ...base, helixAngle: 0 });
    for (const helixAngle of [1e-9, 1e-6, 1e-4]) {
      const f = millForces({ ...base, helixAngle });
      near(f.peak, straight.peak, 1e-4);
      near(f.mean, straight.mean, 1e-4);
    }
  });
  it("grows with (feed)^(1 − m) and in proportion to kc1.1", () => {
    const f = millForces(base).peak;
    near(millForces({ ...base, feedPerTooth: 0.1 }).peak, f * 2 ** 0.75, 1e-12);
    near(millForces({ ...base, kc11: 900 }).peak, f / 2, 1e-12);
  });
  it("has only the edge force at the wall with one straight tooth", () => {
    const f = millForces({ ...base, teeth: 1, helixAngle: 0, edgeTangential: 7, edgeRadial: 11 });
    near(f.wallNormal, 110, 1e-4);
    expect(millForces({ ...base, teeth: 1, helixAngle: 0 }).wallNormal).toBeLessThan(0.01);
  });
  it("gives finite figures at the edges of what is allowed", () => {
    for (const change of [
      { radialDepth: 1e-9 },
      { axialDepth: 1e-9 },
      { helixAngle: 89.99 },
      { teeth: 200 },
      { exponent: 0.999 },
      { feedPerTooth: 1e-12 },
      { radialRatio: 0 },
    ]) {
      for (const v of Object.values(millForces({ ...base, ...change }))) expect(Number.isFinite(v)).toBe(true);
    }
  });
  it("rejects what cannot be cut, by name", () => {
    for (const [parameter, value] of [
      ["radialDepth", 0],
      ["radialDepth", 10.01],
      ["axialDepth", 0],
      ["teeth", 0],
      ["teeth", 2.5],
      ["helixAngle", 90],
      ["helixAngle", -1],
      ["exponent", 1],
      ["exponent", -0.1],
      ["kc11", 0],
      ["feedPerTooth", Number.NaN],
      ["radialRatio", -0.1],
    ] as const) {
      try {
        millForces({ ...base, [parameter]: value });
        expect.unreachable(`took ${parameter} ${value}`);
      } catch (e) {
        expect(e).toBeInstanceOf(TradeError);
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});

describe("means and peaks over a turn (identity)", () => {
  it("finds the mean and the peak of a half wave", () => {
    const f = overTurn(
      2 * Math.PI,
      [Math.PI],
      (x, out) => {
        if (x < Math.PI) {
          out[0] = Math.sin(x);
          out[2] = Math.sin(x);
        }
      },
      0,
    );
    near(f.resultant, 1 / Math.PI, 1e-9);
    near(f.peak, 1, 1e-9);
    near(f.peakTangential, 1, 1e-9);
  });
  it("finds the top and the bottom of lopsided waves where calculus puts them: x^a·(π − x)^b at π·a/(a + b)", () => {
    for (const a of [0.8, 1, 1.7, 3, 5])
      for (const b of [0.9, 1, 2.3, 4]) {
        const wave = (x: number) => x ** a * (Math.PI - x) ** b;
        const wanted = wave((Math.PI * a) / (a + b));
        const at = (sign: number) =>
          overTurn(
            Math.PI,
            [],
            (x, out) => {
              out[0] = sign * wave(x);
              out[2] = wave(x);
            },
            Math.PI,
          );
        near(at(1).peak, wanted, 5e-9, `${a} ${b}`);
        near(at(1).peakTangential, wanted, 5e-9);
        near(at(1).wallHigh, wanted, 5e-9);
        near(at(-1).wallLow, -wanted, 5e-9);
      }
  });
  it("keeps the mean of a magnitude that passes through zero", () => {
    const f = overTurn(
      2 * Math.PI,
      [],
      (x, out) => {
        out[0] = Math.sin(x);
        out[2] = 1;
      },
      0,
    );
    near(f.resultant, 2 / Math.PI, 1e-6);
  });
});
