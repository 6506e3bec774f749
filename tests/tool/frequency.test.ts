import fc from "fast-check";
import { all, create, type Matrix } from "mathjs";
import { describe, expect, it } from "vitest";
import type { Segment } from "../../src/tool/beam.ts";
import { toolFrequency, uniformBarFrequency } from "../../src/tool/frequency.ts";
import { anyTool, bar, beams, near, recorded, solids } from "./bars.ts";

const math = create(all!);
const carbide = { modulus: 600, density: 14.5 };

describe("tool frequency (published)", () => {
  it("a uniform bar: λ₁ = 1.87510407 (Blevins, Table 8-1, from memory)", () => {
    const wave = Math.sqrt(600e9 / 14500) * 0.0025; // √(E/ρ)·d/4, d = 10 mm
    const wanted = (1.87510407 ** 2 / (2 * Math.PI * 0.04 ** 2)) * wave;
    expect(near(uniformBarFrequency(10, 40, 600, 14.5), wanted)).toBeLessThan(3e-9);
    expect(near(toolFrequency(bar([10, 40]), carbide), wanted)).toBeLessThan(3e-8);
  });
  // ω·L²·√(ρ·A/(E·I)) with A and I of the base; tip over base diameter 0.5, 0.2, 0.1: tables of tapered cantilevers
  // (Mabie and Rogers; Downs; Naguleswaran), 0: Kirchhoff 1879; all from memory
  const number = (ratio: number): number =>
    (2 * Math.PI * toolFrequency(bar([10 * ratio, 10, 60]), carbide) * 60 ** 2) / (1e6 * Math.sqrt(600 / 14.5) * 2.5);
  for (const [ratio, wanted, digits] of [
    [0.5, 4.6252, 4],
    [0.2, 6.1964, 4],
    [0.1, 7.2049, 4],
  ] as const) {
    it(`a cone of ${ratio}:1 fixed at its base: ${wanted}`, () =>
      expect(Math.abs(number(ratio) - wanted)).toBeLessThan(0.51 * 10 ** -digits));
  }
  it("a sharp cone fixed at its base, by going there from 1:500 and 1:1000: 8.719", () =>
    expect(Math.abs(2 * number(0.001) - number(0.002) - 8.719)).toBeLessThan(0.0005));
});

describe(`tool frequency (independent): ${beams.source}`, () => {
  for (const c of beams.cases) {
    it(`${c.name}: within 3e-7`, () =>
      expect(near(toolFrequency(recorded(c.segments), { modulus: 210, density: 8 }), c.frequency)).toBeLessThan(3e-7));
  }
});

describe("tool frequency (independent): exact transfer matrices of a stepped bar", () => {
  /** Smallest root of the determinant of the fixed end; state w, w′, M, V; exact for cylinders. */
  const byTransfer = (tool: Segment[], E: number, rho: number): number => {
    const determinant = (f: number): number => {
      let T = math.identity(4) as Matrix;
      for (const s of tool) {
        const EI = (E * 1e3 * Math.PI * s.tipDiameter ** 4) / 64;
        const mass = (rho * 1e-9 * Math.PI * s.tipDiameter ** 2) / 4;
        const b = ((mass * (2 * Math.PI * f) ** 2) / EI) ** 0.25;
        const x = b * s.length;
        const [c, sn, ch, sh] = [Math.cos(x), Math.sin(x), Math.cosh(x), Math.sinh(x)];
        const [k0, k1, k2, k3] = [(ch + c) / 2, (sh + sn) / 2, (ch - c) / 2, (sh - sn) / 2];
        const P = math.matrix([
          [k0, k1 / b, k2 / (b * b * EI), k3 / (b ** 3 * EI)],
          [b * k3, k0, k1 / (b * EI), k2 / (b * b * EI)],
          [b * b * EI * k2, b * EI * k3, k0, k1 / b],
          [b ** 3 * EI * k1, b * b * EI * k2, b * k3, k0],
        ]);
        T = math.multiply(P, T);
      }
      // free tip: M = V = 0; fixed holder: w = w′ = 0
      return T.get([0, 0]) * T.get([1, 1]) - T.get([0, 1]) * T.get([1, 0]);
    };
    let low = 1;
    const start = determinant(low);
    let high = low;
    while (determinant(high) * start > 0) {
      low = high;
      high *= 1.05;
    }
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (determinant(middle) * start > 0) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  for (const tool of [
    bar([3.84, 2], [3.4, 14], [6, 15]),
    bar([2, 20], [6, 10]),
    bar([16, 5], [3, 40], [12, 30], [20, 8]),
  ]) {
    it(`agrees within 1e-6 for ${tool.map((s) => `${s.tipDiameter} x ${s.length}`).join(", ")}`, () =>
      expect(near(toolFrequency(tool, carbide), byTransfer(tool, 600, 14.5))).toBeLessThan(1e-6));
  }
});

describe("tool frequency (independent): a rigid bar on the holder's springs", () => {
  it("a stiff bar on a tilting spring swings like a pendulum of its moment of inertia", () => {
    // mass m = ρ·A·L, J about the holder = m·L²/3 + m·d²/16 is left out with rotary inertia: f = √(k/J)/2π
    const m = 14.5e-3 * ((Math.PI * 1.6 ** 2) / 4) * 4; // kg/… : g/cm³ × cm³ = g → kg
    const J = (m * 0.04 ** 2) / 3;
    const f = toolFrequency(bar([16, 40]), { modulus: 1e7, density: 14.5, holderTiltStiffness: 200 });
    expect(near(f, Math.sqrt(200 / J) / (2 * Math.PI))).toBeLessThan(1e-3);
  });
  it("a stiff bar that can only be pushed bounces like its mass on the spring", () => {
    const m = 14.5e-3 * ((Math.PI * 1.6 ** 2) / 4) * 4;
    const f = toolFrequency(bar([16, 40]), { modulus: 1e7, density: 14.5, holderStiffness: 1 });
    expect(near(f, Math.sqrt(1e6 / m) / (2 * Math.PI))).toBeLessThan(1e-3);
  });
});

describe("tool frequency (identity)", () => {
  it("does not care where a part is cut in two, and scales with diameter over length squared", () => {
    fc.assert(
      fc.property(anyTool, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (tool, share) => {
        const f = toolFrequency(tool, carbide);
        expect(f).toBeGreaterThan(0);
        const s = tool[0]!;
        const middle = s.tipDiameter + share * (s.holderDiameter - s.tipDiameter);
        const cut = [
          { ...s, holderDiameter: middle, length: share * s.length },
          { ...s, tipDiameter: middle, length: (1 - share) * s.length },
          ...tool.slice(1),
        ];
        // other elements, so not to the last digit; random tools hold cones of 1:200 (worst of 30,000: 5e-7)
        expect(near(toolFrequency(cut, carbide), f)).toBeLessThan(2e-6);
        const inch = tool.map((p) => ({
          tipDiameter: p.tipDiameter / 25.4,
          holderDiameter: p.holderDiameter / 25.4,
          length: p.length / 25.4,
        }));
        expect(near(toolFrequency(inch, carbide), 25.4 * f)).toBeLessThan(1e-12);
        expect(near(toolFrequency(tool, { modulus: 150, density: 14.5 }), f / 2)).toBeLessThan(1e-12);
        expect(toolFrequency(tool, { ...carbide, holderTiltStiffness: 5000 })).toBeLessThan(f);
      }),
      { numRuns: 60 },
    );
  });
  it("takes a cone that is nearly a cylinder for one", () => {
    for (const e of [1e-6, 1e-9, 1e-12, 1e-15]) {
      expect(
        near(toolFrequency(bar([10, 10 * (1 + e), 40]), carbide), uniformBarFrequency(10, 40, 600, 14.5)),
      ).toBeLessThan(1e-7 + 2 * e);
    }
  });
  it("comes back to the rigid holder as its springs stiffen", () =>
    expect(
      near(
        toolFrequency(bar([4, 12], [6, 20]), { ...carbide, holderStiffness: 1e7, holderTiltStiffness: 1e9 }),
        toolFrequency(bar([4, 12], [6, 20]), carbide),
      ),
    ).toBeLessThan(1e-4));
  it("stands above solid elements, by under 5 % for slender tools and under 16 % for stubby necks", () => {
    for (const c of solids.cases) {
      const ratio = toolFrequency(recorded(c.segments), carbide) / c.frequency;
      expect(ratio, c.name).toBeGreaterThan(1);
      expect(ratio, c.name).toBeLessThan(c.name.startsWith("slender") ? 1.05 : 1.16);
    }
  });
});
