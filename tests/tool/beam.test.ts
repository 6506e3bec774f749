import fc from "fast-check";
import { all, create } from "mathjs";
import { describe, expect, it } from "vitest";
import {
  deflectionParts,
  fromLoad,
  neckDeflection,
  type Segment,
  shearCoefficient,
  shoulderGive,
  toolDeflection,
  toolLength,
  toolStiffness,
} from "../../src/tool/beam.ts";
import { refusal } from "../refusal.ts";
import { anyTool, bar, beams, near, recorded, size, solids } from "./bars.ts";

const math = create(all!);
const bendingOnly = { modulus: 600, poisson: 0.22, shear: false, stepFlexibility: false };
const whole = { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true };

describe("beam deflection by textbooks' formulas (independent)", () => {
  it("a cantilever bends by F·L³/(3·E·I) with slope F·L²/(2·E·I) (Roark, Table 8.1 case 1a, from memory)", () => {
    const I = (Math.PI * 6 ** 4) / 64;
    const parts = deflectionParts(50, bar([6, 30]), { ...bendingOnly, modulus: 210 });
    expect(near(parts.total, (50 * 30 ** 3) / (3 * 210e3 * I))).toBeLessThan(1e-14);
    expect(near(parts.slope, (50 * 30 ** 2) / (2 * 210e3 * I))).toBeLessThan(1e-14);
  });
  it("a force short of the tip bends the tip by F·a²·(3·L − a)/(6·E·I) (Roark, Table 8.1 case 1a, from memory)", () => {
    const I = (Math.PI * 6 ** 4) / 64;
    const a = 22; // from the holder to the force
    const parts = deflectionParts(50, bar([6, 30]), { ...bendingOnly, loadDistance: 30 - a });
    expect(near(parts.tip, (50 * a * a * (3 * 30 - a)) / (6 * 600e3 * I))).toBeLessThan(1e-14);
    expect(near(parts.total, (50 * a ** 3) / (3 * 600e3 * I))).toBeLessThan(1e-14);
  });
  it("a round cone twice as thick at the holder bends by F·L³/(24·E·I of the tip) (Gere, Mechanics of Materials, from memory)", () => {
    const I = (Math.PI * 5 ** 4) / 64;
    expect(near(toolDeflection(10, bar([5, 10, 40]), bendingOnly), (10 * 40 ** 3) / (24 * 600e3 * I))).toBeLessThan(
      1e-14,
    );
  });
});

describe("shear coefficient of a round bar (published)", () => {
  // Cowper 1966, Table 1, circle: 0.857 at ν = 0, 0.886 at ν = 0.3, 0.900 at ν = 0.5 (from memory)
  for (const [nu, k] of [
    [0, 0.857],
    [0.3, 0.886],
    [0.5, 0.9],
  ] as const) {
    it(`Cowper's coefficient of a circle is ${k} at ν = ${nu}`, () =>
      expect(Math.abs(shearCoefficient(nu) - k)).toBeLessThan(0.0005));
  }
});

describe(`beam deflection (independent): ${beams.source}`, () => {
  for (const c of beams.cases) {
    it(`${c.name}: bending, shear and slope at the force`, () => {
      const opts = {
        modulus: 1,
        poisson: c.poisson,
        shear: true,
        stepFlexibility: false,
        loadDistance: c.loadDistance,
      };
      const parts = deflectionParts(c.force, recorded(c.segments), opts);
      expect(near(parts.bending, c.bending)).toBeLessThan(1e-12);
      expect(near(parts.slope, c.slope)).toBeLessThan(1e-12);
      expect(near(parts.total, c.withShear)).toBeLessThan(1e-12);
      expect(near(parts.tip, c.tipWithShear)).toBeLessThan(1e-12);
    });
    // The bar of 1.5 diameters is beyond any beam theory: its fixed face alone makes the solid 3.7 % stiffer.
    if (c.solidDeflection !== undefined && !c.name.startsWith("U4")) {
      it(`${c.name}: within 1.5 % of solid elements`, () => {
        const opts = {
          modulus: 1,
          poisson: c.poisson,
          shear: true,
          stepFlexibility: true,
          loadDistance: c.loadDistance,
        };
        expect(near(toolDeflection(c.force, recorded(c.segments), opts), c.solidDeflection!)).toBeLessThan(0.015);
      });
    }
  }
});

describe(`shoulders and cones (independent): ${solids.source}`, () => {
  for (const c of solids.cases) {
    it(`${c.name}: the whole model is within 1.2 % of solid elements`, () => {
      const opts = { ...whole, poisson: solids.poisson, modulus: solids.modulus / 1000 };
      expect(near(toolDeflection(solids.force, recorded(c.segments), opts), c.deflection)).toBeLessThan(0.012);
    });
  }
  it("without the give of the shoulders a 2.5:1 neck of 4 diameters comes out over 12 % too stiff", () => {
    const c = solids.cases.find((k) => k.name === "step 2.5, neck 4 x 16")!;
    const stiff = toolDeflection(solids.force, recorded(c.segments), { ...whole, stepFlexibility: false });
    expect(1 - stiff / c.deflection).toBeGreaterThan(0.12);
  });
  it("the solids were meshed round: area of the tip face within 0.01 %", () => {
    for (const c of solids.cases) expect(Math.abs(c.halfAreaRatio - 1)).toBeLessThan(1e-4);
  });
});

describe("beam deflection (independent): mathjs assembles the bar as finite elements", () => {
  /** Cubic elements give the exact end deflection of a stepped bar under an end force. */
  const byElements = (force: number, segments: Segment[], E: number, springs?: [number, number]): number => {
    const n = segments.length;
    const K = math.zeros(2 * n + 2, 2 * n + 2) as import("mathjs").Matrix;
    segments.forEach((s, e) => {
      const EI = (E * 1000 * Math.PI * s.tipDiameter ** 4) / 64;
      const L = s.length;
      const k = math.multiply(EI / L ** 3, [
        [12, 6 * L, -12, 6 * L],
        [6 * L, 4 * L * L, -6 * L, 2 * L * L],
        [-12, -6 * L, 12, -6 * L],
        [6 * L, 2 * L * L, -6 * L, 4 * L * L],
      ]) as unknown as number[][];
      for (let i = 0; i < 4; i++) {
        for (let j = 0; j < 4; j++) K.set([2 * e + i, 2 * e + j], K.get([2 * e + i, 2 * e + j]) + k[i]![j]!);
      }
    });
    const [k1, k2] = springs ?? [1e15, 1e15];
    K.set([2 * n, 2 * n], K.get([2 * n, 2 * n]) + k1);
    K.set([2 * n + 1, 2 * n + 1], K.get([2 * n + 1, 2 * n + 1]) + k2);
    const f = math.zeros(2 * n + 2, 1) as import("mathjs").Matrix;
    f.set([0, 0], force);
    return (math.lusolve(K, f) as import("mathjs").Matrix).get([0, 0]);
  };
  const tools = [
    bar([4, 12], [6, 15]),
    bar([3.84, 2], [3.4, 14], [6, 15]),
    bar([12.8, 30], [16, 25], [20, 20], [32, 25], [40, 20]),
  ];
  for (const tool of tools) {
    it(`bends ${tool.length} cylinders alike`, () =>
      expect(near(toolDeflection(30, tool, bendingOnly), byElements(30, tool, 600))).toBeLessThan(1e-6));
    it(`tilts and pushes the holder of ${tool.length} cylinders alike`, () => {
      const opts = { ...bendingOnly, holderStiffness: 25, holderTiltStiffness: 40_000 };
      expect(near(toolDeflection(30, tool, opts), byElements(30, tool, 600, [25_000, 4e7]))).toBeLessThan(1e-9);
    });
  }
  it("a cone bends like a stack of 2000 thin cylinders", () => {
    const n = 2000;
    const stack = Array.from({ length: n }, (_, i) => [4 + (6 * (i + 0.5)) / n, 25 / n]);
    const opts = { ...bendingOnly, shear: true };
    expect(near(toolDeflection(10, bar([4, 10, 25]), opts), toolDeflection(10, bar(...stack), opts))).toBeLessThan(
      1e-6,
    );
  });
});

describe("beam deflection (identity)", () => {
  it("does not care where a part is cut in two, cone or cylinder", () => {
    fc.assert(
      fc.property(anyTool, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (tool, share) => {
        const s = tool[0]!;
        const middle = s.tipDiameter + share * (s.holderDiameter - s.tipDiameter);
        const cut = [
          { ...s, holderDiameter: middle, length: share * s.length },
          { ...s, tipDiameter: middle, length: (1 - share) * s.length },
          ...tool.slice(1),
        ];
        expect(near(toolDeflection(7, cut, whole), toolDeflection(7, tool, whole))).toBeLessThan(1e-9);
      }),
    );
  });
  it("is a positive number, grows with the force, the length and a softer holder, shrinks with the diameter", () => {
    fc.assert(
      fc.property(anyTool, (tool) => {
        const base = toolDeflection(10, tool, bendingOnly);
        expect(base).toBeGreaterThan(0);
        expect(near(toolDeflection(20, tool, whole), 2 * toolDeflection(10, tool, whole))).toBeLessThan(1e-12);
        expect(toolDeflection(10, tool, whole)).toBeGreaterThan(base);
        expect(toolDeflection(10, tool, { ...bendingOnly, holderStiffness: 20 })).toBeGreaterThan(base);
        const longer = [{ ...tool[0]!, length: 1.1 * tool[0]!.length }, ...tool.slice(1)];
        expect(toolDeflection(10, longer, bendingOnly)).toBeGreaterThan(base);
        const thicker = tool.map((s) => ({
          ...s,
          tipDiameter: 1.1 * s.tipDiameter,
          holderDiameter: 1.1 * s.holderDiameter,
        }));
        expect(near(toolDeflection(10, thicker, bendingOnly), base / 1.1 ** 4)).toBeLessThan(1e-12);
      }),
    );
  });
  it("tells by its slope how the deflection changes as the force moves", () => {
    // Maxwell: the slope at the force is the deflection at the force of a moment there; here by finite differences of the tip.
    const tool = bar([4, 12], [4, 8, 10], [8, 12]);
    const h = 1e-4;
    const at = (a: number) => deflectionParts(10, tool, { ...whole, shear: false, loadDistance: a });
    const d = (at(3 + h).total - at(3 - h).total) / (2 * h);
    // total(a) = F·c(a): c falls at twice the slope, once for the place, once for the force's lever
    expect(near(-d, 2 * at(3).slope)).toBeLessThan(1e-6);
  });
  it("has no shoulder where diameters meet, and a hinge where they do not", () => {
    expect(deflectionParts(10, bar([4, 8, 10], [8, 12]), whole).shoulders).toBe(0);
    const hinge = deflectionParts(10, bar([4, 10], [10, 12]), whole);
    const turn = (10 * 10 * shoulderGive(4, 10)) / (600e3 * ((Math.PI * 4 ** 4) / 64));
    expect(near(hinge.shoulders, turn * 10)).toBeLessThan(1e-12);
  });
  it("gives at a shoulder more as the step grows, never more than 0.277 diameters", () => {
    fc.assert(
      fc.property(size, fc.double({ min: 1.001, max: 50, noNaN: true }), (d, ratio) => {
        const give = shoulderGive(d, ratio * d);
        expect(give).toBeGreaterThan(0);
        expect(give).toBeLessThan(0.277 * d);
        expect(shoulderGive(d, 1.1 * ratio * d)).toBeGreaterThan(give);
      }),
    );
  });
  it("a neck on a shank is the stepped bar without shear and shoulders", () => {
    expect(
      near(neckDeflection(20, 3.4, 15, 600, 6, 15), toolDeflection(20, bar([3.4, 15], [6, 15]), bendingOnly)),
    ).toBeLessThan(1e-14);
    expect(near(neckDeflection(20, 6, 10, 600, 6, 20), neckDeflection(20, 6, 30, 600))).toBeLessThan(1e-14);
  });
  it("stiffness times deflection is the force", () =>
    expect(toolStiffness(bar([6, 30]), whole) * 1000 * toolDeflection(1, bar([6, 30]), whole)).toBeCloseTo(1, 12));
  it("cuts a tool at the force, part by part", () => {
    expect(fromLoad(bar([4, 10], [6, 10]), 10)).toEqual(bar([6, 10]));
    expect(fromLoad(bar([4, 8, 10], [8, 10]), 5)).toEqual(bar([6, 8, 5], [8, 10]));
    expect(toolLength(bar([4, 10], [6, 12]))).toBe(22);
  });
  it("holds to the last part when the lengths add up to a hair more than they are: 0.1 + 0.2 + 0.3 against 0.6", () => {
    const tool = bar([4, 0.1], [5, 0.2], [6, 0.3]);
    expect(toolLength(tool)).toBeGreaterThan(0.6);
    expect(toolLength(tool)).toBeCloseTo(0.6, 12);
    expect(fromLoad(tool, 0.6)).toEqual([{ tipDiameter: 6, holderDiameter: 6, length: expect.closeTo(0, 12) }]);
    expect(toolDeflection(10, tool, { ...whole, loadDistance: 0.6 })).toBeCloseTo(0, 12);
  });
  it("rejects a force at the holder, an empty tool, a diameter of zero, half a shank", () => {
    expect(refusal(() => fromLoad(bar([4, 10]), 10))).toMatch(/loadDistance/);
    expect(refusal(() => toolDeflection(1, [], whole))).toMatch(/segments is blank/);
    expect(refusal(() => toolDeflection(1, bar([0, 10]), whole))).toMatch(/segments is 0/);
    expect(refusal(() => neckDeflection(1, 4, 10, 600, 6))).toMatch(/shankLength is blank/);
    expect(refusal(() => neckDeflection(1, 4, 10, 600, undefined, 20))).toMatch(/shankDiameter is blank/);
  });
});
