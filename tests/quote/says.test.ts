/** What a quote says of itself. */
import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { QUOTE } from "../../functions/quote.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { quoteCells, quoteLines } from "../../src/quote/lines.ts";
import { quote, quoteTable } from "../../src/quote/quote.ts";
import type { QuoteSummary } from "../../src/quote/types.ts";
import { readRows } from "../../src/table/read.ts";
import { all, consistent, demo, FIVE, fiveRows, LISTS, SHOP } from "./five.ts";

describe("what a quote says about itself (regression)", () => {
  const items = (q: QuoteSummary, section: string) =>
    quoteLines(q)
      .filter((l) => l.section === section)
      .map((l) => l.item);
  it("never drops a row: those without time are counted and named with the reason", () => {
    const rows = [
      ["Row", "Operation", "Units", "Quantity", "Material", "Machine", "Finish diameter", "Depth"],
      ["a", "drill", "mm", 1, MATERIALS[1]![0]!, "Centre V3", 5, 10],
      ["b", "drill", "mm", -1, MATERIALS[1]![0]!, "Centre V3", 5, 10],
      ["c", "drill", "mm", 1, "Unobtainium", "Centre V3", 5, 10],
      ["d", "drill", "mm", 1, MATERIALS[1]![0]!, null, 5, 10],
      ["e", "drill", "mm", 1, MATERIALS[1]![0]!, "Bare", 5, 10],
      ["f", null, "mm", 1, MATERIALS[1]![0]!, "Centre V3", 5, 10],
    ];
    const machines = [...MACHINES, ["Bare", 60, 8000, 11, 80, 10, null, 3, 6, 22, 0.03, 74, 35]];
    const q = quoteTable({ rows, ...LISTS, machines });
    expect(q.rows.map((r) => r.name)).toEqual(["a"]);
    const said = items(q, "Not in the total");
    expect(said[0]).toBe("5 rows have no time: not in the total");
    expect(said[1]).toMatch(/^Row b: Quantity is -1; a whole number of at least 1 is allowed/);
    expect(said[2]).toMatch(/^Row c: material "Unobtainium" is not in the list/);
    expect(said[3]).toMatch(/^Row d: Machine is blank/);
    expect(said[4]).toMatch(/^Row e: Bare has no Rapid in the list Machines/);
    expect(said[5]).toMatch(/^Row f: Operation is blank/);
  });
  it("of machines without a rate is one of time, without money and without error", () => {
    for (const machine of ["C", "D"]) {
      const q = quote(FIVE, fiveRows(20, Array(5).fill(machine)), SHOP);
      expect([q.money, q.paid, q.moneyBand, q.own.money]).toEqual([undefined, undefined, undefined, undefined]);
      expect(q.seconds).toBeGreaterThan(0);
      expect(q.dearest[0]!.name).toBe("3");
      expect(q.assumptions.join(" ")).toMatch(/without money/);
      expect(quoteCells(q).every((line) => line[4] === "")).toBe(true);
      consistent(q);
    }
  });
  it("of some rows without a rate says which money is missing", () => {
    const q = quote(FIVE, fiveRows(20, ["A", "A", "A", "D", "D"]), SHOP);
    expect(q.unpriced.map((r) => r.name)).toEqual(["4", "5"]);
    expect(q.money).toBeCloseTo(317 / 60 + 4, 10);
    expect(q.assumptions.join(" ")).toMatch(/2 rows on D have no rate: in the time, not in the money/);
    consistent(q);
  });
  it("says what a blank batch, a batch of one and batches that differ do", () => {
    const blank = quote(FIVE, fiveRows(null), SHOP);
    expect([blank.time.setup, blank.batch]).toEqual([0, undefined]);
    expect(blank.assumptions.join(" ")).toMatch(/Batch is blank: no setup/);
    expect(quote(FIVE, fiveRows(), SHOP, { batch: 1 }).time.setup).toBe(3000);
    const mixed = readRows([
      ["Operation", "Units", "Machine", "Batch"],
      ["drill", "mm", "A", 10],
      ["drill", "mm", "A", 30],
    ]);
    const q = quote(FIVE.slice(0, 2), mixed, SHOP);
    expect(q.time.setup).toBeCloseTo(900 / 10 + 900 / 30, 10);
    expect(q.assumptions.join(" ")).toMatch(/different batches \(10, 30\)/);
  });
  it("refuses a batch that is none", () => {
    for (const batch of [0, -1, 2.5, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => quote(FIVE, fiveRows(), SHOP, { batch })).toThrow(/batch/);
    const answer = QUOTE([["Operation"]], [["Material"]], [["Tool"]], [["Machine"]], [[-1]])[0]![0] as CellError;
    expect(answer).toBeInstanceOf(CellError);
    expect(answer.message).toMatch(/batch is -1; a whole number of at least 1 and at most 1000000000 is allowed/);
  });
  it("of no rows, or none with a time, is an empty one that says so", () => {
    for (const q of [quote([], [], SHOP), quoteTable({ rows: [["Operation"]], ...LISTS })]) {
      expect([q.seconds, q.money, q.rows.length]).toEqual([0, undefined, 0]);
      expect(q.assumptions).toEqual(["No row has a time: there is nothing to add up."]);
    }
  });
  it("warns of rows that are stopped but in the total", () => {
    const q = quoteTable({ rows: demo(all), ...LISTS });
    expect(q.stops.length).toBeGreaterThan(0);
    expect(items(q, "Stop")).toHaveLength(q.stops.length);
    expect(items(q, "Check")).toHaveLength(q.checks.length);
    expect(q.assumptions.join(" ")).toMatch(/cannot be made as planned \(stop\)/);
  });
});
