/** Sums over profiles that trail one another, by hand and by plain sums. */
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { slidingSums, sumProfiles, wallProfiles } from "../../src/mill/profiles.ts";
import type { Loads } from "../../src/mill/turn.ts";

const TURN = 2 * Math.PI;
/** Adds a load of one profile: normal, along the feed, tangential, torque, each a mean and a wave of its own. */
const waves =
  (p: number, ...parts: readonly (readonly [mean: number, swing: number, shift: number])[]) =>
  (tau: number, out: Loads): void =>
    parts.forEach(([mean, swing, shift], i) => {
      out[i]! += mean + swing * Math.cos((TURN * tau) / p + shift);
    });
/** Swing of N waves that trail by δ: |Σ e^(−i·k·δ)| = sin(N·δ/2)/sin(δ/2). */
const together = (N: number, delta: number) => Math.abs(Math.sin((N * delta) / 2) / Math.sin(delta / 2));

describe("all profiles together (waves that add up by hand)", () => {
  it.each([
    [1, 0.4],
    [3, 0.4],
    [5, 1.1],
    [7, 5.9],
    [4, 9],
  ])("%d profiles, each %d rad behind the one before, period 2", (N, trail) => {
    const delta = (TURN * trail) / 2;
    const swing = together(N, delta);
    const at = waves(2, [10, 1, 0], [0, 0, 0], [20, 3, 0.7], [5, 2, 1]);
    const { peak, mean, peakTangential, torque } = sumProfiles(2, at, N, trail, true);
    // 240 places a period: a crest is missed by (π/240)²/2, a line between two places by as much again
    expect(Math.abs(peak - (10 * N + swing))).toBeLessThan(2e-4 * N);
    expect(mean).toBeCloseTo(10 * N, 9);
    expect(Math.abs(peakTangential - (20 * N + 3 * swing))).toBeLessThan(6e-4 * N);
    expect(torque).toBeCloseTo(5 * N, 9);
  });
  it("two loads at right angles: the largest of both, wherever either alone is largest", () => {
    // normal √(9 − f²), along the feed f: always 3 long but for a bump where the load along the feed is largest
    const at = (tau: number, out: Loads) => {
      const along = 2 * Math.sin(TURN * tau);
      out[0]! += Math.sqrt(9 - along * along);
      out[1]! += along + (along > 1.99 ? 0.5 : 0);
    };
    expect(sumProfiles(1, at, 1, 0).peak).toBeCloseTo(Math.hypot(Math.sqrt(5), 2.5), 3);
    const round = (tau: number, out: Loads) => {
      out[0]! += 3 * Math.cos(TURN * tau);
      out[1]! += 3 * Math.sin(TURN * tau);
    };
    const { peak, mean } = sumProfiles(1, round, 1, 0, true);
    expect(peak).toBeCloseTo(3, 12);
    expect(mean).toBeCloseTo(3, 12);
    // half a period apart they cancel
    expect(sumProfiles(1, round, 2, 0.5).peak).toBeCloseTo(0, 12);
    expect(sumProfiles(1, round, 2, 0).mean).toBeUndefined();
  });
});

describe("each profile in turn at the wall (plain sums)", () => {
  const brute = (N: number, f: (d: number) => number) => {
    const sums = Array.from({ length: N }, (_, k) =>
      Array.from({ length: N }, (_, j) => f(k - j)).reduce((a, b) => a + b, 0),
    );
    return { high: Math.max(...sums), low: Math.min(...sums) };
  };
  it.each([1, 2, 3, 7, 12])("%d profiles", (N) => {
    for (const f of [
      (d: number) => Math.sin(3 * d + 1),
      (d: number) => d * d - 3 * d,
      (d: number) => (d < 0 ? 5 : -2) + d / 7,
      (d: number) => -Math.abs(d - 2),
    ]) {
      const wanted = brute(N, f);
      const found = slidingSums(N, f);
      expect(found.high).toBeCloseTo(wanted.high, 10);
      expect(found.low).toBeCloseTo(wanted.low, 10);
    }
  });
  it.each([
    [3, 0.3],
    [5, 1.7],
  ])("%d profiles that trail by %d of a period of 1", (N, trail) => {
    const load = (tau: number) => 4 + Math.cos(TURN * tau + 0.4) + (tau < 0.2 ? 1 : 0);
    const place = (d: number) => Math.min(Math.max((((d * trail) % 1) + 1) % 1, 1e-9), 1 - 1e-9);
    const wanted = brute(N, (d) => load(place(d)));
    const found = wallProfiles(1, (tau, out) => (out[0] = out[0]! + load(tau)), N, trail);
    expect(found.high).toBeCloseTo(wanted.high, 9);
    expect(found.low).toBeCloseTo(wanted.low, 9);
  });
});

describe("bad input", () => {
  it("is refused by its name", () => {
    const at = () => undefined;
    for (const [call, parameter] of [
      [() => sumProfiles(0, at, 1, 0), "period"],
      [() => sumProfiles(1, at, 0, 0), "profiles"],
      [() => sumProfiles(1, at, 1, -1), "trail"],
      [() => wallProfiles(-1, at, 1, 0), "period"],
      [() => wallProfiles(1, at, 1.5, 0), "profiles"],
      [() => wallProfiles(1, at, 1, Number.NaN), "trail"],
      [() => slidingSums(0, () => 1), "profiles"],
    ] as const)
      expect(call).toThrow(expect.objectContaining({ parameter, constructor: TradeError }));
  });
});
