import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { startWear } from "../../src/mill/wear.ts";
import { wearChange } from "../../src/thread/gauging.ts";
import { wallsLeft } from "./walls.ts";

/** Wall after two passes of a blunt tool that bends, the last one to a depth. */
const wallOf = (flexibility: number, push: number, edge: number, springs: number) => (depth: number) =>
  wallsLeft({
    depths: [0.7 * depth, ...Array.from({ length: springs + 1 }, () => depth)],
    flexibility,
    layer: 0.004,
    normalForce: (a, b, share) => push * (b - a) + edge * share,
  }).at(-1)!;

describe("wear value to start with (identity)", () => {
  it("a path moved by it leaves the wall where it is wanted", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 0.004, noNaN: true }),
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (wanted, flexibility, push, edge, springs) => {
          const wall = wallOf(flexibility, push, edge, springs);
          const wear = startWear(wanted, wall, 5 * wanted);
          expect(wear).not.toBeNull();
          expect(wear!).toBeLessThanOrEqual(0); // into the wall
          expect(wall(wanted - wear!)).toBeCloseTo(wanted, 7);
          // deeper by at least what is missing
          expect(-wear!).toBeGreaterThanOrEqual(wanted - wall(wanted) - 1e-9);
        },
      ),
    );
  });
  it("by hand: the geometric case w = t/(1 + q) wants q·T, not q·T/(1 + q)", () => {
    expect(startWear(1, (t) => t / 1.4, 2)).toBeCloseTo(-0.4, 8);
  });
  it("moves away from the wall when the tool is pulled in, and has the sign of WEARCHANGE", () => {
    const wear = startWear(0.5, (t) => 1.1 * t, 1)!;
    expect(wear).toBeCloseTo(0.5 - 0.5 / 1.1, 8);
    // an internal thread that measured 0.1 over (0.05 in the radius): WEARCHANGE too is positive
    expect(Math.sign(wear)).toBe(Math.sign(wearChange(5.52, 5.42)));
    expect(Math.sign(startWear(0.5, (t) => 0.9 * t, 1)!)).toBe(Math.sign(wearChange(5.32, 5.42)));
  });
  it("is nothing for a rigid, sharp tool, and null when the wall is out of reach", () => {
    expect(startWear(0.5, (t) => t, 1)).toBe(0);
    expect(startWear(0.5, (t) => Math.min(t, 0.4), 1)).toBeNull();
    expect(startWear(0.5, (t) => 0.8 * t, 0.12)).toBeNull();
    expect(startWear(0.5, (t) => 0.8 * t, 0.126)).toBeCloseTo(-0.125, 8);
  });
  it("rejects what cannot be, by name", () => {
    for (const [parameter, run] of [
      ["wanted", () => startWear(0, (t) => t, 1)],
      ["reach", () => startWear(1, (t) => t, 0)],
    ] as const) {
      try {
        run();
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect(e).toBeInstanceOf(TradeError);
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
