/** The batch at which two machines cost the same, by the equation of their costs: r₁·(t + s₁/N) = r₂·(t + s₂/N). */
import { describe, expect, it } from "vitest";
import type { TradeError } from "../../src/errors.ts";
import { compare } from "../../src/quote/compare.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { sentence } from "../refusal.ts";
import { met } from "./met.ts";

const rows = readRows([
  ["Row", "Operation", "Units", "Material", "Machine", "Finish diameter", "Depth", "Surface speed", "Feed per tooth"],
  [1, "drill", "mm", "Steel", "one", 10, 20, 30, 0.1],
]);
/** Two machines that differ in nothing but their rates [per hour] and setups [min]. */
const shop = (rates: readonly (number | null)[], setups: readonly (number | null)[]) =>
  readLists(
    [["Material"], ["Steel"], ["Steel too"]],
    [],
    [
      ["Machine", "Rapid [m/min]", "Acceleration [m/s²]", "Tool change [s]", "Rate [per hour]", "Setup [min]"],
      ...["one", "two"].map((name, i) => [name, 12, 2, 6, rates[i], setups[i]]),
    ],
  );
const told = (rates: readonly (number | null)[], setups: readonly (number | null)[], batch?: number) =>
  compare(rows, shop(rates, setups), { machine: ["one", "two"] }, batch === undefined ? {} : { batch });

describe("the batch at which two machines cost the same (by hand)", () => {
  const t = told([60, 60], [10, 10]).quotes[0].seconds;
  it("is where their lines of cost meet, and says which is cheaper on either side", () => {
    const N = (60 * 60 * 60 - 90 * 10 * 60) / (t * (90 - 60));
    for (const batch of [undefined, 7]) {
      const breakEven = met(told([60, 90], [60, 10], batch));
      expect(breakEven.batch).toBeCloseTo(N, 9);
      expect(breakEven.text).toContain(
        `up to ${Math.floor(N)} parts two costs less or the same, from ${Math.floor(N) + 1} on one.`,
      );
    }
    const turned = met(told([90, 60], [10, 60]));
    expect(turned.batch).toBeCloseTo(N, 9);
    expect(turned.text).toContain(
      `up to ${Math.floor(N)} parts one costs less or the same, from ${Math.floor(N) + 1} on two.`,
    );
  });
  it("may lie below one part: then the one that is cheaper by its part is so at every batch", () => {
    // A part of t seconds costs more than the setups differ by: 0.01 min at 60 against none.
    const below = told([60, 90], [0.01, 0]);
    expect(met(below).batch).toBeLessThan(1);
    expect(met(below).text).toBe("The costs meet below one part: one costs less at every batch.");
    expect(met(told([90, 60], [0, 0.01])).text).toContain(": two costs less");
  });
  it("counts no setup where the list has none", () => {
    const N = (60 * 60 * 60) / (t * (90 - 60));
    expect(met(told([60, 90], [60, null])).batch).toBeCloseTo(N, 9);
  });
  it("is none where one is cheaper in all, or in one and the same in the other", () => {
    const every = (name: string, more = "") =>
      `There is no break-even: ${name} costs less at every batch, by its setup and by its part${more}.`;
    expect(met(told([60, 90], [10, 10]))).toEqual({ text: every("one") });
    expect(met(told([90, 60], [10, 10]))).toEqual({ text: every("two") });
    expect(met(told([60, 60], [10, 20]))).toEqual({ text: every("one", " or at the same") });
    expect(met(told([60, 60], [20, 10]))).toEqual({ text: every("two", " or at the same") });
    expect(met(told([60, 90], [30, 20]))).toEqual({ text: every("one", " or at the same") });
    expect(met(told([60, 60], [10, 10])).text).toMatch(/^Both cost the same at every batch/);
  });
  it("is not told where a rate is missing, or no row has a time", () => {
    for (const rates of [
      [60, null],
      [null, 60],
      [null, null],
    ])
      expect(met(told(rates, [10, 10])).text).toMatch(/^A machine has no rate/);
    const none = compare([], shop([60, 60], [10, 10]), { machine: ["one", "two"] });
    expect(met(none)).toEqual({ text: "No row has a time on both sides: nothing to compare." });
  });
  it("turns round with no batch between two materials: the first where both cost the same", () => {
    const both = compare(rows, shop([60, 60], [10, 10]), { material: ["Steel too", "Steel"] });
    expect(both.names).toEqual(["Steel too", "Steel"]);
    expect(met(both).text).toContain("Steel too costs less to machine at every batch");
  });
});

describe("what is compared (independent)", () => {
  it("takes the other machine for every row, and forgets what was wrong with its own", () => {
    const bad = readRows([
      [
        "Row",
        "Operation",
        "Units",
        "Material",
        "Machine",
        "Finish diameter",
        "Depth",
        "Surface speed",
        "Feed per tooth",
      ],
      [1, "drill", "mm", "Steel", { code: "#N/A" }, 10, 20, 30, 0.1],
      [2, "drill", "mm", "Steel", "one", 10, "abc", 30, 0.1],
      [null, null, null, null, null, null, null, null, null],
    ]);
    expect(bad[0]!.problems).toHaveLength(1);
    const { quotes } = compare(bad, shop([60, 60], [10, 10]), { machine: ["one", "two"] });
    for (const [i, of] of quotes.entries()) {
      expect(of.rows.map(({ name, machine }) => [name, machine])).toEqual([["1", ["one", "two"][i]]]);
      expect(of.leftOut.map(({ name }) => name)).toEqual(["2"]);
      expect(of.leftOut[0]!.reason).toMatch(/^Depth is/);
    }
  });
  it("leaves a row out on both sides that has no time on one, and says on which", () => {
    const lists = readLists(
      [["Material"], ["Steel"]],
      [],
      [
        ["Machine", "Rapid [m/min]", "Acceleration [m/s²]", "Rate [per hour]"],
        ["one", 12, 2, 60],
        ["two", null, 2, 60],
      ],
    );
    const { quotes } = compare(rows, lists, { machine: ["one", "two"] });
    expect(quotes[0].leftOut).toMatchObject([{ reason: expect.stringMatching(/^not with two: .*no Rapid/) }]);
    expect(quotes[1].leftOut).toMatchObject([{ reason: expect.stringMatching(/^two has no Rapid/) }]);
    const left = compare(rows, lists, { machine: ["one", "two"] }, { leave: new Map([[0, "by hand"]]) });
    for (const of of left.quotes) expect(of.leftOut).toMatchObject([{ reason: "by hand" }]);
  });
  it("wants a name that is in the list", () => {
    const lists = shop([60, 60], [10, 10]);
    const thrown = (machine: readonly [string, string]) => {
      try {
        compare(rows, lists, { machine });
      } catch (error) {
        return error as TradeError;
      }
      return undefined;
    };
    expect(thrown(["one", " "])).toMatchObject({ code: "blank", parameter: "machine" });
    expect(thrown(["ona", "two"])).toMatchObject({ code: "unknown" });
    expect(sentence(thrown(["ona", "two"])!)).toMatch(/nearest in the list: one/);
    expect(sentence(thrown(["zzzz", "two"])!)).toMatch(/nothing like it is in the list/);
  });
});
