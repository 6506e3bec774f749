import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TradeError } from "../../src/errors.ts";
import { fullShankFrom, leastStickOut, reachFault } from "../../src/tool/reach.ts";

const rod = (diameter: number, length: number) => ({ tipDiameter: diameter, holderDiameter: diameter, length });
const hole = (width: number, depth: number, more = {}) => ({
  width,
  depth,
  pathRadius: 0,
  clearance: 2,
  sideRoom: 0,
  ...more,
});

describe("reach (independent: looked at by hand)", () => {
  it("lets a drill go as deep as it sticks out, less the clearance", () => {
    // Jobber drill of 10, fluted 87, sticking out 96, shank of 10: all of it fits the hole, the holder does not.
    const shank = [rod(10, 9)];
    expect(reachFault(shank, 87, undefined, hole(10, 94))).toBeUndefined();
    expect(reachFault(shank, 87, undefined, hole(10, 94.1))).toEqual({ piece: 1, missing: expect.closeTo(0.1, 9) });
  });
  it("stops a stub drill whose shank is thicker than the hole at its flutes", () => {
    const shank = [rod(6, 8)];
    expect(reachFault(shank, 20, undefined, hole(3.3, 18))).toBeUndefined();
    expect(reachFault(shank, 20, undefined, hole(3.3, 19))).toEqual({ piece: 0, missing: expect.closeTo(1, 9) });
  });
  it("counts the path of a thread mill: the neck is moved towards the wall", () => {
    const pieces = [rod(3, 14), rod(6, 8)]; // neck, shank
    expect(reachFault(pieces, 1, undefined, hole(5, 12, { pathRadius: 0.9 }))).toBeUndefined();
    expect(reachFault(pieces, 1, undefined, hole(5, 12, { pathRadius: 1.05 }))?.piece).toBe(0);
    expect(reachFault(pieces, 1, undefined, hole(5, 12, { pathRadius: 0.9, sideRoom: 0.15 }))?.piece).toBe(0);
    expect(reachFault(pieces, 1, undefined, hole(5, 14))?.piece).toBe(1);
  });
  it("lets a slim holder into a wide bore, a thick one not", () => {
    const pieces = [rod(16, 30)];
    expect(reachFault(pieces, 20, 40, hole(60, 70))).toBeUndefined();
    expect(reachFault(pieces, 20, 63, hole(60, 70))).toEqual({ piece: 1, missing: 22 });
    expect(reachFault(pieces, 20, 40, hole(60, 70, { pathRadius: 12 }))?.piece).toBe(1);
    // 40 in a bore of 60 leaves 10 a side: what moves 10 sideways just enters, 10.01 does not.
    expect(reachFault(pieces, 20, 40, hole(60, 70, { pathRadius: 10 }))).toBeUndefined();
    expect(reachFault(pieces, 20, 40, hole(60, 70, { pathRadius: 10.01 }))?.piece).toBe(1);
    // without a size it is taken not to enter, however wide the bore
    expect(reachFault(pieces, 20, undefined, hole(600, 70))).toEqual({ piece: 1, missing: 22 });
  });
  it("lets a holder stand just above the face: what is as high as wanted is clear", () => {
    expect(reachFault([rod(16, 30)], 20, 63, hole(60, 48))).toBeUndefined();
    expect(reachFault([rod(16, 30)], 20, 63, hole(60, 48.001))).toEqual({
      piece: 1,
      missing: expect.closeTo(0.001, 9),
    });
  });
  it("lets in what is exactly as wide as the opening, whatever the last digit (6 × 0.1 against 0.6)", () => {
    expect(reachFault([rod(0.1 * 6, 30)], 0, undefined, hole(0.6, 20))).toBeUndefined();
    expect(reachFault([rod(0.601, 30)], 0, undefined, hole(0.6, 20))).toEqual({ piece: 0, missing: 22 });
    expect(reachFault([], 0, 0.1 * 6, hole(0.6, 20))).toBeUndefined();
  });
  it("lets a cone in up to where it is too thick", () => {
    const cone = [{ tipDiameter: 4, holderDiameter: 8, length: 20 }];
    // 6 wide halfway: height 5 + 10.
    expect(reachFault(cone, 5, undefined, hole(6, 13))).toBeUndefined();
    expect(reachFault(cone, 5, undefined, hole(6, 14))).toEqual({ piece: 0, missing: expect.closeTo(1, 9) });
    const narrowing = [{ tipDiameter: 8, holderDiameter: 4, length: 20 }];
    expect(reachFault(narrowing, 5, undefined, hole(6, 4))?.missing).toBeCloseTo(1, 9);
  });
});

describe("reach (independent: brute force in small steps)", () => {
  it("finds a fault exactly when some height of the tool below the face is too thick", () => {
    const size = fc.double({ min: 1, max: 20, noNaN: true });
    fc.assert(
      fc.property(
        size,
        size,
        size,
        size,
        size,
        fc.double({ min: 0, max: 60, noNaN: true }),
        (p, r, d, L1, L2, depth) => {
          const pieces = [{ tipDiameter: p, holderDiameter: r, length: L1 }, rod(d, L2)];
          const width = 10;
          const fault = reachFault(pieces, 3, 50, hole(width, depth, { clearance: 0 }));
          let hit = false;
          for (let k = 0; k <= 4000; k++) {
            const z = (k / 4000) * depth;
            if (z < 3 || z >= depth) continue;
            const at = z - 3;
            const wide = at < L1 ? p + ((r - p) * at) / L1 : at < L1 + L2 ? d : 50;
            if (wide > width + 0.03) hit = true;
          }
          if (hit) expect(fault).toBeDefined();
          if (fault && fault.missing > 0.1) {
            // Something too thick is below the face: raise the tool by what is missing and it is not.
            expect(
              reachFault(pieces, 3, 50, hole(width, Math.max(0, depth - fault.missing - 1e-6), { clearance: 0 }))
                ?.piece ?? 99,
            ).not.toBe(fault.piece);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe("reach (identity)", () => {
  it("adds and takes the longer", () => {
    expect(leastStickOut(0, 2)).toBe(2);
    expect(fullShankFrom(26, 0)).toBe(26);
    expect(fullShankFrom(9, 40)).toBe(40);
  });
  it("rejects what makes no sense, by name", () => {
    for (const [f, parameter] of [
      [() => leastStickOut(-1, 0), "depth"],
      [() => leastStickOut(1, -1), "clearance"],
      [() => fullShankFrom(-1, 0), "cuttingLength"],
      [() => fullShankFrom(1, -1), "neckLength"],
      [() => reachFault([], -1, undefined, hole(5, 1)), "from"],
      [() => reachFault([], 1, undefined, hole(0, 1)), "width"],
      [() => reachFault([], 1, 0, hole(5, 9)), "holderDiameter"],
      [() => reachFault([rod(3, 0)], 1, undefined, hole(5, 1)), "pieces"],
    ] as const) {
      try {
        f();
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
