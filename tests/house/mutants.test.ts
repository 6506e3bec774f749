/** The sample of planted faults, and what its score says about all of them. */
import { describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { draw, wilson } from "../run/draw.mjs";

const ITEMS = Array.from({ length: 20 }, (_, i) => `fault ${i}`);

describe("sample of planted faults (house)", () => {
  it("holds so many different ones, the same for the same seed, and a larger one holds them too", () => {
    const some: string[] = draw(ITEMS, 7, 3);
    expect(new Set(some).size).toBe(7);
    expect(draw(ITEMS, 7, 3)).toEqual(some);
    expect(draw(ITEMS, 12, 3).slice(0, 7)).toEqual(some);
    expect(draw(ITEMS, 7, 4)).not.toEqual(some);
    expect(ITEMS).toHaveLength(20);
  });
  it("is all of them where there are no more, and none of none", () => {
    expect([...draw(ITEMS, 20, 1)].sort()).toEqual([...ITEMS].sort());
    expect([...draw(ITEMS, 1e9, 1)].sort()).toEqual([...ITEMS].sort());
    expect(draw([], 5, 1)).toEqual([]);
  });
  it("is fair: over 4000 seeds each fault and each pair comes as often as another", () => {
    const single = new Map<string, number>();
    const pairs = new Map<string, number>();
    const add = (map: Map<string, number>, key: string) => map.set(key, (map.get(key) ?? 0) + 1);
    for (let seed = 0; seed < 4000; seed++) {
      const some: string[] = draw(ITEMS, 5, seed);
      some.forEach((one, i) => {
        add(single, one);
        for (const other of some.slice(i + 1)) add(pairs, [one, other].sort().join());
      });
    }
    expect([single.size, pairs.size]).toEqual([20, 190]);
    // binomial: 4000 of 1/4 and of (5·4)/(20·19), six standard deviations either way
    for (const [map, p] of [
      [single, 1 / 4],
      [pairs, 1 / 19],
    ] as const)
      for (const [key, count] of map)
        expect(Math.abs(count - 4000 * p), key).toBeLessThan(6 * Math.sqrt(4000 * p * (1 - p)));
  });
});

describe("score interval of a share", () => {
  // R. G. Newcombe: Two-sided confidence intervals for the single proportion. Stat. Med. 17 (1998), table I, method 3 (from memory).
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])("of %i in %i (published)", (hits, n, low, high) => {
    expect(wilson(hits, n)[0]).toBeCloseTo(low, 4);
    expect(wilson(hits, n)[1]).toBeCloseTo(high, 4);
  });
  it("ends where the share that was seen is 1.96 standard errors of that share away (identity)", () => {
    for (const [hits, n] of [
      [85, 100],
      [3, 7],
      [29, 30],
    ] as const)
      for (const p of wilson(hits, n) as number[])
        expect(Math.abs(hits / n - p) / Math.sqrt((p * (1 - p)) / n)).toBeCloseTo(1.959964, 5);
  });
  it("of what was not found is the other side of it (identity)", () => {
    const [low, high] = wilson(12, 30);
    expect(wilson(18, 30)[0]).toBeCloseTo(1 - high, 12);
    expect(wilson(18, 30)[1]).toBeCloseTo(1 - low, 12);
    expect(wilson(30, 30)[1]).toBe(1);
  });
});
