import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CellError } from "../functions/cells.ts";
import { PARTCOST } from "../functions/cost.ts";
import { breakEvenBatch, partCost } from "../src/cost.ts";
import { refusal } from "./refusal.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("cost of a part (independent)", () => {
  it("times the batch is what the clock and the tool crib charge for the batch", () => {
    // 25 parts of 4 min 12 s after 40 min of setup at 84 per hour, 1.35 of tools each: by hand
    const hours = (25 * 252 + 40 * 60) / 3600; // 2.41667 h
    expect(25 * partCost(252, 84, 25, 2400, 1.35)).toBeCloseTo(84 * hours + 25 * 1.35, 10);
    expect(partCost(252, 84, 25, 2400, 1.35)).toBeCloseTo(9.47, 10);
  });
  it("two machines cost the same at the break-even batch that a scan over batches brackets", () => {
    const slow = { cycleTime: 120, rate: 60, setupTime: 600 };
    const fast = { cycleTime: 60, rate: 75, setupTime: 3600, toolCostPerPart: 0.12 };
    const N = breakEvenBatch(slow, fast);
    const cheaper = (n: number) => partCost(120, 60, n, 600, 0) < partCost(60, 75, n, 3600, 0.12);
    let first = 1;
    while (cheaper(first)) first++;
    expect(N).toBeGreaterThan(first - 1);
    expect(N).toBeLessThanOrEqual(first);
    expect(partCost(120, 60, N, 600, 0)).toBeCloseTo(partCost(60, 75, N, 3600, 0.12), 12);
  });
});

describe("cost of a part (identity)", () => {
  it("falls with the batch towards the bare cycle, rises with every other argument", () => {
    fc.assert(
      fc.property(
        number(1, 5000),
        number(1, 300),
        number(1, 1000),
        number(1, 20_000),
        number(0, 50),
        (t, r, n, s, c) => {
          const cost = partCost(t, r, n, s, c);
          expect(partCost(t, r, 2 * n, s, c)).toBeLessThan(cost);
          expect(partCost(1.1 * t, r, n, s, c)).toBeGreaterThan(cost);
          expect(partCost(t, r, n, 1.1 * s, c)).toBeGreaterThan(cost);
          expect(partCost(t, r, n, s, c + 1)).toBeCloseTo(cost + 1, 9);
          expect(partCost(t, 2 * r, n, s, 0)).toBeCloseTo(2 * partCost(t, r, n, s, 0), 9);
          expect(partCost(t, r, 1e15, s, c)).toBeCloseTo((r * t) / 3600 + c, 6);
        },
      ),
    );
  });
  it("a machine that costs nothing leaves the tool, and tools left out are free", () => {
    expect(PARTCOST([[90]], [[0]], [[50]], [[1800]], [[0.4]])[0]![0]).toBe(0.4);
    expect(PARTCOST([[90]], [[60]], [[50]], [[1800]])[0]![0]).toBeCloseTo(2.1, 12);
  });
  it("there is no break-even when one machine is cheaper at every batch", () => {
    const slow = { cycleTime: 120, rate: 60, setupTime: 600 };
    expect(refusal(() => breakEvenBatch(slow, { ...slow, cycleTime: 60, setupTime: 300 }))).toMatch(/at every batch/);
    expect(refusal(() => breakEvenBatch(slow, slow))).toMatch(/at every batch/);
    // The same setup: their costs meet at no part at all.
    expect(refusal(() => breakEvenBatch(slow, { ...slow, cycleTime: 60 }))).toMatch(/at every batch/);
  });
  it("rejects a batch of zero and a blank rate by their names", () => {
    const message = (block: any[][]) => (block[0]![0] as CellError).message;
    expect(message(PARTCOST([[90]], [[60]], [[0]], [[1800]]))).toMatch(/^batch is 0/);
    expect(message(PARTCOST([[90]], [[]], [[50]], [[1800]]))).toMatch(/^rate is blank/);
    expect(message(PARTCOST([[0]], [[60]], [[50]], [[1800]]))).toMatch(/^cycleTime is 0/);
  });
});
