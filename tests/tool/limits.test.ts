import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { neckDeflection, toolDeflection } from "../../src/tool/beam.ts";
import { forceLimit, stickOutLimit } from "../../src/tool/limits.ts";
import { refusal } from "../refusal.ts";
import { anyTool, near, size } from "./bars.ts";

describe("stick-out and force for a deflection (independent)", () => {
  it("finds the stick-out that bisection of F·L³/(3·E·I) finds", () => {
    const I = (Math.PI * 8 ** 4) / 64;
    let [low, high] = [1, 500];
    for (let i = 0; i < 100; i++) {
      const L = (low + high) / 2;
      if ((75 * L ** 3) / (3 * 210e3 * I) < 0.02) low = L;
      else high = L;
    }
    expect(near(stickOutLimit(75, 0.02, 8, 210), low)).toBeLessThan(1e-12);
  });
});

describe("stick-out and force for a deflection (identity)", () => {
  it("is the inverse of the neck's deflection", () => {
    fc.assert(
      fc.property(size, fc.double({ min: 1, max: 500, noNaN: true }), (d, F) => {
        const L = stickOutLimit(F, 0.01, d, 600);
        expect(near(neckDeflection(F, d, L, 600), 0.01)).toBeLessThan(1e-12);
      }),
    );
  });
  it("is the inverse of the tool's deflection", () => {
    const opts = { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true, holderStiffness: 30 };
    fc.assert(
      fc.property(anyTool, (tool) => {
        expect(near(toolDeflection(forceLimit(0.01, tool, opts), tool, opts), 0.01)).toBeLessThan(1e-12);
      }),
    );
  });
  it("rejects a limit of zero by its name", () => {
    expect(refusal(() => stickOutLimit(10, 0, 8, 600))).toMatch(/deflectionLimit is 0/);
    expect(refusal(() => stickOutLimit(0, 0.1, 8, 600))).toMatch(/force is 0/);
  });
});
