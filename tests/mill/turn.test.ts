/** Means over a turn of loads that are known by hand. */
import { describe, expect, it } from "vitest";
import { overTurn } from "../../src/mill/turn.ts";

describe("mean over a turn (by hand)", () => {
  // a load that grows as x over half of a period of 2: ∫x dx from 0 to 1, over 2
  it.each([
    [0, "normal"],
    [1, "feed"],
  ] as const)("of a load along one axis alone, place %i: %s", (place, key) => {
    const turn = overTurn(
      2,
      [1],
      (x, out) => {
        out[place] = x < 1 ? x : 0;
      },
      2,
    );
    expect(turn.resultant).toBeCloseTo(0.25, 9);
    expect(Math.abs(turn[key])).toBeCloseTo(0.25, 9);
    expect(turn.peak).toBeCloseTo(1, 6);
  });
});
