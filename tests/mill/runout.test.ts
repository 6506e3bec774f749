import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { runoutChips, runoutForce } from "../../src/mill/runout.ts";

/** Chips of every tooth by marching: 40 revolutions against the surface that is really there; shares no formula with src. */
function marched(chip: number, runout: number, teeth: number, phase: number) {
  const radius = Array.from({ length: teeth }, (_, i) => (runout / 2) * Math.cos(phase + (2 * Math.PI * i) / teeth));
  let surface = Number.NEGATIVE_INFINITY; // where the stock begins, along the feed
  const chips: number[] = [];
  for (let k = 0; k < 40 * teeth; k++) {
    const reach = k * chip + radius[k % teeth]!; // the cutter has moved k·chip
    if (k >= 20 * teeth) chips.push(Math.max(0, reach - surface));
    surface = Math.max(surface, reach);
  }
  return { most: Math.max(...chips), least: Math.min(...chips) };
}

const arguments_ = [
  fc.double({ min: 0.001, max: 0.1, noNaN: true }),
  fc.double({ min: 0, max: 0.1, noNaN: true }),
  fc.integer({ min: 1, max: 8 }),
] as const;

describe("chips of a cutter that runs out (independent)", () => {
  it("no tooth marched through the stock leaves the two ends, however the cutter sits", () => {
    fc.assert(
      fc.property(...arguments_, fc.double({ min: 0, max: 6.283, noNaN: true }), (chip, runout, teeth, phase) => {
        const { most, least } = runoutChips(chip, runout, teeth);
        const seen = marched(chip, runout, teeth, phase);
        expect(seen.most).toBeLessThanOrEqual(most + 1e-9);
        expect(seen.least).toBeGreaterThanOrEqual(least - 1e-9);
      }),
      { numRuns: 500 },
    );
  });
  it("the ends are reached at the worst seat", () => {
    fc.assert(
      fc.property(...arguments_, (chip, runout, teeth) => {
        const { most, least } = runoutChips(chip, runout, teeth);
        let [high, low] = [0, Number.POSITIVE_INFINITY];
        for (let i = 0; i < 240; i++) {
          const seen = marched(chip, runout, teeth, (2 * Math.PI * i) / 240);
          high = Math.max(high, seen.most);
          low = Math.min(low, seen.least);
        }
        expect(low).toBeLessThan(least + 0.02 * runout + 1e-9);
        // Where several earlier teeth bind at once the end is a bound, not reached. Marched over 1 to 8 teeth and runouts up to
        // 110 chips, the least that is reached is 0.798 of it (8 teeth, 18.5 chips).
        expect(high).toBeGreaterThan(0.79 * most);
      }),
      { numRuns: 100 },
    );
  });
});

describe("chips of a cutter that runs out (identity)", () => {
  it("takes at most the even chip and the runout, and at most the chips it replaces", () => {
    fc.assert(
      fc.property(...arguments_, (chip, runout, teeth) => {
        const { most, least } = runoutChips(chip, runout, teeth);
        expect(most).toBeLessThanOrEqual(Math.min(chip + runout, teeth * chip) + 1e-12);
        expect(most).toBeGreaterThanOrEqual(chip - 1e-12);
        expect(least).toBeGreaterThanOrEqual(0);
        expect(least).toBeLessThanOrEqual(chip + 1e-12);
        expect(runoutForce(chip, runout, teeth, 0.25)).toBeLessThanOrEqual(teeth ** 0.75 + 1e-9);
      }),
    );
  });
  it("keeps the even chip of a cutter that runs true, and of a single tooth", () => {
    expect(runoutChips(0.03, 0, 4)).toEqual({ most: 0.03, least: 0.03 });
    expect(runoutChips(0.03, 0.05, 1)).toEqual({ most: 0.03, least: 0.03 });
    expect(runoutForce(0, 0.01, 4, 0.2)).toBe(1);
  });
  it("does not grow without end as the feed falls", () => {
    expect(runoutForce(1e-6, 0.01, 3, 0)).toBeCloseTo(3, 9);
    expect(runoutForce(1e-9, 0.01, 3, 0)).toBeCloseTo(3, 9);
  });
  it("rejects what cannot be, by name", () => {
    for (const [parameter, run] of [
      ["chip", () => runoutChips(-1, 0, 3)],
      ["runout", () => runoutChips(0.01, -1, 3)],
      ["teeth", () => runoutChips(0.01, 0, 0)],
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
