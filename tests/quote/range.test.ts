/** How sure a quote is. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalQuantile, QUOTE_UNCERTAINTY, scatterBand } from "../../src/quote/band.ts";
import { sum } from "./five.ts";

describe("range of a quote (published)", () => {
  // Quantiles of the normal distribution, any table (from memory): four decimals; the approximation is good to 0.00045.
  it.each([
    [0.5, 0],
    [0.75, 0.6745],
    [0.9, 1.2816],
    [0.95, 1.6449],
    [0.975, 1.96],
    [0.99, 2.3263],
    [0.001, -3.0902],
  ])("the normal quantile at %f is %f", (p, x) => {
    expect(Math.abs(normalQuantile(p) - x)).toBeLessThan(0.0005);
  });
});

describe("range of a quote (independent)", () => {
  const z = 1.2815516;
  it.each([
    ["cutting", { cutting: 100, moves: 0, setup: 0, tool: 0 }, QUOTE_UNCERTAINTY.cutting],
    ["moves", { cutting: 0, moves: 100, setup: 0, tool: 0 }, QUOTE_UNCERTAINTY.moves],
    ["setup", { cutting: 0, moves: 0, setup: 100, tool: 0 }, QUOTE_UNCERTAINTY.setup],
    ["tool", { cutting: 0, moves: 0, setup: 0, tool: 100 }, QUOTE_UNCERTAINTY.life],
  ] as const)("of %s alone is the log-normal one", (_, parts, deviation) => {
    const band = scatterBand(parts);
    expect(band.low / (100 * Math.exp(-z * deviation))).toBeCloseTo(1, 2);
    expect(band.high / (100 * Math.exp(z * deviation))).toBeCloseTo(1, 2);
  });
  it("of two parts agrees with the sum's distribution integrated on a grid", () => {
    const [A, B, s, t] = [60, 40, QUOTE_UNCERTAINTY.cutting, QUOTE_UNCERTAINTY.life];
    const density = (x: number) => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
    const below = (value: number) => {
      let p = 0;
      const h = 0.01;
      for (let x = -6; x < 6; x += h) {
        const rest = value - A * Math.exp(s * (x + h / 2));
        if (rest <= 0) continue;
        // Share of the second part under what the first leaves: normal distribution of its logarithm, by Simpson.
        const edge = Math.log(rest / B) / t;
        let q = 0;
        const n = 60;
        const from = -7;
        if (edge <= from) continue;
        for (let k = 0; k <= n; k++)
          q += (k === 0 || k === n ? 1 : k % 2 ? 4 : 2) * density(from + ((Math.min(edge, 7) - from) * k) / n);
        p += h * density(x + h / 2) * ((q * (Math.min(edge, 7) - from)) / n / 3);
      }
      return p;
    };
    const band = scatterBand({ cutting: A, moves: 0, setup: 0, tool: B });
    // Four thousand samples: a quarter of a percent of probability.
    expect(below(band.low)).toBeCloseTo(0.1, 2);
    expect(below(band.high)).toBeCloseTo(0.9, 2);
  });
});

describe("range of a quote (identity)", () => {
  const part = fc.double({ min: 0, max: 1e6, noNaN: true });
  it("covers the nominal, and grows with it", () => {
    fc.assert(
      fc.property(part, part, part, part, (cutting, moves, setup, tool) => {
        const band = scatterBand({ cutting, moves, setup, tool });
        expect(band.low).toBeLessThanOrEqual(band.nominal);
        expect(band.high).toBeGreaterThanOrEqual(band.nominal);
        const twice = scatterBand({ cutting: 2 * cutting, moves: 2 * moves, setup: 2 * setup, tool: 2 * tool });
        expect(twice.high).toBeCloseTo(2 * band.high, 5);
      }),
      { numRuns: 60 },
    );
  });
  it("is narrower than the sum of the ranges of its parts", () => {
    const whole = scatterBand({ cutting: 50, moves: 50, setup: 50, tool: 50 });
    const alone = (["cutting", "moves", "setup", "tool"] as const).map((key) =>
      scatterBand({ cutting: 0, moves: 0, setup: 0, tool: 0, [key]: 50 }),
    );
    expect(whole.high - whole.low).toBeLessThan(sum(alone.map((b) => b.high - b.low)));
  });
});
