import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CellError } from "../functions/cells.ts";
import { ECONOMICSPEED, TOOLLIFE } from "../functions/cost.ts";
import { economicLife, economicSpeed, quickestSpeed, speedForLife, toolLife } from "../src/life.ts";

const near = (value: number, wanted: number): number => Math.abs(value / wanted - 1);
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("tool life (published)", () => {
  // M. P. Groover, Fundamentals of Modern Manufacturing, worked examples of the chapters on cutting-tool technology and
  // on economics of machining; from memory, printed values with the digits given there
  it("Groover: 5 min at 160 m/min and 41 min at 100 m/min give n = 0.223 and C = 229", () => {
    const n = Math.log(160 / 100) / Math.log(41 / 5);
    expect(Math.abs(n - 0.223)).toBeLessThan(0.0005);
    expect(Math.abs(speedForLife(1, 160, 5, n) - 229)).toBeLessThan(0.5);
    expect(Math.abs(toolLife(100, 160, 5, 0.223) - 41)).toBeLessThan(0.5);
  });
  it("Groover: n = 0.125, C = 70 m/min, change 2.0 min, edge $3.00, $30 per hour: quickest 50, cheapest 42 m/min", () => {
    expect(Math.abs(quickestSpeed(70, 1, 0.125, 120) - 50)).toBeLessThan(0.5);
    expect(Math.abs(economicSpeed(70, 1, 0.125, 120, 3, 30) - 42)).toBeLessThan(0.5);
    expect(Math.abs(economicLife(0.125, 120, 3, 30) - 56)).toBeLessThan(1e-9);
  });
  it("Kalpakjian: n = 0.5: half the speed gives four times the life (from memory)", () =>
    expect(toolLife(60, 120, 1, 0.5)).toBeCloseTo(4, 12));
});

describe("economic speed (independent)", () => {
  /** Cost of cutting a length of path once, straight from its parts: machine time, changes, edges. */
  const costAt = (v: number, vr: number, tr: number, n: number, tc: number, ct: number, rate: number): number => {
    const minutes = 1000 / v; // any path: only its share of the life counts
    const life = tr * (vr / v) ** (1 / n);
    const edges = minutes / life;
    return (rate / 60) * (minutes + (edges * tc) / 60) + edges * ct;
  };
  const cases = [
    [100, 60, 0.25, 120, 5, 60],
    [180, 15, 0.2, 20, 12, 95],
    [30, 45, 0.125, 300, 0, 40],
    [250, 20, 0.3, 0, 8, 70],
  ] as const;
  for (const [vr, tr, n, tc, ct, rate] of cases) {
    it(`is where the cost summed from its parts is least: n = ${n}, change ${tc} s, edge ${ct}, ${rate} per hour`, () => {
      const f = (v: number) => costAt(v, vr, tr, n, tc, ct, rate);
      let [low, high] = [vr / 20, vr * 20];
      for (let i = 0; i < 300; i++) {
        const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
        if (f(a) < f(b)) high = b;
        else low = a;
      }
      // a search for a minimum knows its place to about the root of the precision
      expect(near(economicSpeed(vr, tr, n, tc, ct, rate), (low + high) / 2)).toBeLessThan(1e-6);
    });
  }
  it("the quickest speed is the cheapest with a free edge", () =>
    expect(near(quickestSpeed(100, 60, 0.25, 120), economicSpeed(100, 60, 0.25, 120, 0, 77))).toBeLessThan(1e-14));
});

describe("tool life (identity)", () => {
  it("turns back into its speed, falls with the speed, keeps its reference", () => {
    fc.assert(
      fc.property(number(1, 1000), number(1, 1000), number(0.1, 500), number(0.1, 0.9), (v, vr, tr, n) => {
        const T = toolLife(v, vr, tr, n);
        expect(near(speedForLife(T, vr, tr, n), v)).toBeLessThan(1e-9);
        expect(toolLife(1.1 * v, vr, tr, n)).toBeLessThan(T);
        expect(near(toolLife(vr, vr, tr, n), tr)).toBeLessThan(1e-14);
      }),
    );
  });
  it("the cheapest speed falls with dearer edges and slower changes, rises with a dearer machine, never above the quickest", () => {
    fc.assert(
      fc.property(number(0.1, 0.6), number(1, 600), number(0.1, 100), number(5, 300), (n, tc, ct, rate) => {
        const v = economicSpeed(100, 30, n, tc, ct, rate);
        expect(economicSpeed(100, 30, n, tc, 1.2 * ct, rate)).toBeLessThan(v);
        expect(economicSpeed(100, 30, n, 1.2 * tc, ct, rate)).toBeLessThan(v);
        expect(economicSpeed(100, 30, n, tc, ct, 1.2 * rate)).toBeGreaterThan(v);
        expect(v).toBeLessThan(quickestSpeed(100, 30, n, tc));
      }),
    );
  });
  it("names what is wrong", () => {
    const message = (block: any[][]) => (block[0]![0] as CellError).message;
    const speed = (...args: unknown[]) =>
      ECONOMICSPEED(...(args.map((a) => [[a]]) as Parameters<typeof ECONOMICSPEED>));
    expect(message(speed(100, 60, 0.25, 120, 5, 0))).toMatch(/^rate is 0/);
    expect(message(speed(100, 60, 0.25, 120, 5, null))).toMatch(/^rate is blank/);
    expect(message(speed(100, 60, 1, 120, 5, 60))).toMatch(/^exponent is 1/);
    const free = speed(100, 60, 0.25, 0, 0, 60)[0]![0] as CellError;
    expect(free.code).toBe("#NUM!");
    expect(free.message).toMatch(/faster is always cheaper/);
    expect(message(TOOLLIFE([[0]], [[100]], [[60]], [[0.25]]))).toMatch(/^speed is 0/);
    // Too long and too short for a number.
    for (const speed of [1, 1e10])
      expect(() => toolLife(speed, 1e5, 60, 0.001)).toThrow(
        expect.objectContaining({ code: "unsolvable", parameter: "speed", value: speed }),
      );
    expect((TOOLLIFE([[1]], [[1000]], [[60]], [[0.001]])[0]![0] as CellError).code).toBe("#NUM!");
  });
});
