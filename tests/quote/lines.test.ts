/** The lines and sentences of the quote that was added up by hand. */
import { describe, expect, it } from "vitest";
import { type QuoteLine, quoteCells, quoteLines } from "../../src/quote/lines.ts";
import { quote } from "../../src/quote/quote.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { FIVE, fiveRows, made, SHOP } from "./five.ts";

const q = quote(FIVE, fiveRows(), SHOP);
const MONEY = 317 / 60 + 5.4 + 4.5;
/** A line by its section and how its item begins. */
const line = (of: typeof q, section: string, item: string): QuoteLine =>
  quoteLines(of).find((l) => l.section === section && l.item.startsWith(item))!;
/** Numbers of a line to nine digits; "" where it has none. */
const numbers = (l: QuoteLine) =>
  [l.count, l.minutes, l.money, l.share].map((n) => (n === undefined ? "" : Number(n.toPrecision(9))));
const rounded = (values: readonly (number | "")[]) => values.map((v) => (v === "" ? v : Number(v.toPrecision(9))));

describe("the lines of a quote (by hand)", () => {
  // At 60 an hour a second costs 1/60 of one, at 90 a fortieth.
  it.each<[section: string, item: string, numbers: (number | "")[]]>([
    ["Per part", "total", [5, 533 / 60, MONEY, 1]],
    ["Per part", "cutting", ["", 290 / 60, 170 / 60 + 120 / 40, (170 / 60 + 120 / 40) / MONEY]],
    ["Per part", "moving", ["", 51 / 60, 35 / 60 + 16 / 40, (35 / 60 + 16 / 40) / MONEY]],
    ["Per part", "waiting", ["", 10 / 60, 10 / 60, 10 / 60 / MONEY]],
    ["Per part", "tool changes", [4, 32 / 60, 12 / 60 + 20 / 40, (12 / 60 + 20 / 40) / MONEY]],
    ["Per part", "setup share", ["", 150 / 60, 90 / 60 + 60 / 40, 3 / MONEY]],
    ["Per part", "tools", ["", "", 4.5, 4.5 / MONEY]],
    ["Whole batch", "total", [20, (533 / 60) * 20, MONEY * 20, ""]],
    ["By machine", "A", [3, 317 / 60, 317 / 60 + 4, (317 / 60 + 4) / MONEY]],
    ["By operation", "drill", [15, (46 + 25 + 60) / 60, (46 + 25 + 60) / 60, (46 + 25 + 60) / 60 / MONEY]],
    ["Costs most", "Row 3: thread mill", [10, 186 / 60, 7.1, 7.1 / MONEY]],
    ["By tool", "T1: 1 row, 20 parts per edge, tools for the batch 80.00", [1, 2, 4, 0.05]],
    ["By tool", "F1: 1 row, 30 parts per edge, tools for the batch 60.00", [1, 1, 0.5, 1 / 30]],
    ["By tool", "D1: 2 rows, no tool life known", ["", 50 / 60, "", ""]],
    ["By tool", "Count: tools for the batch", ["", "", "", ""]],
  ])("%s, %s", (section, item, wanted) => expect(numbers(line(q, section, item))).toEqual(rounded(wanted)));
  it("are cells in their order, blank where there is nothing", () => {
    const cells = quoteCells(q);
    expect(cells).toHaveLength(quoteLines(q).length);
    expect(cells[0]!.slice(0, 3)).toEqual(["Per part", "total", 5]);
    expect(cells.find(([, item]) => item === "tools")).toEqual(["Per part", "tools", "", "", 4.5, 4.5 / MONEY]);
    for (const none of ["Not in the total", "Not in the money", "Stop", "Check"])
      expect(cells.map(([section]) => section)).not.toContain(none);
  });
  it("have shares of the time where there is no money, and none of nothing", () => {
    const timed = quote(FIVE, fiveRows(20, Array(5).fill("D")), SHOP);
    expect(numbers(line(timed, "Per part", "cutting"))).toEqual(rounded(["", 290 / 60, "", 290 / timed.seconds]));
    expect(line(timed, "Per part", "tools")).toBeUndefined();
    const none = quote([], [], SHOP);
    expect(numbers(line(none, "Per part", "total"))).toEqual([0, 0, "", ""]);
    expect(quoteLines(none).filter(({ section }) => section === "By tool" || section === "Whole batch")).toEqual([]);
  });
  it("tell of an edge that does not last one part, of one that lasts one, and leave the price out where there is none", () => {
    const life = (minutes: number, shop = SHOP) => {
      const cut = { cutting: 60, moving: 0, waiting: 0, ideal: 60, change: 0 };
      const one = quote([made("face", "F1", cut, { life: minutes })], fiveRows().slice(3, 4), shop);
      return quoteLines(one).filter(({ section }) => section === "By tool")[1]!.item;
    };
    expect(life(0.99)).toBe("F1: 1 row, an edge does not last one part, tools for the batch 360.00");
    expect(life(1)).toBe("F1: 1 row, 1 part per edge, tools for the batch 300.00");
    const free = readLists(
      [],
      [["Tool"], ["F1"]],
      [
        ["Machine", "Rate [per hour]"],
        ["B", 90],
      ],
    );
    expect(life(1, free)).toBe("F1: 1 row, 1 part per edge");
  });
  it("tell the range in minutes and money: cutting alone is cut to a tenth's scatter (log-normal, quantile 1.2816)", () => {
    const cut = { cutting: 600, moving: 0, waiting: 0, ideal: 600, change: 0 };
    const rows = readRows([
      ["Operation", "Units", "Machine"],
      ["face", "mm", "B"],
    ]);
    const one = quote([made("face", "E1", cut)], rows, SHOP);
    const low = line(one, "Range", "10 % come out below");
    const high = line(one, "Range", "10 % come out above");
    expect(low.minutes! / (10 * Math.exp(-0.12816))).toBeCloseTo(1, 2);
    expect(high.minutes! / (10 * Math.exp(0.12816))).toBeCloseTo(1, 2);
    expect(low.money! / (15 * Math.exp(-0.12816))).toBeCloseTo(1, 2);
    expect(high.money! / (15 * Math.exp(0.12816))).toBeCloseTo(1, 2);
  });
  it("name a stopped row by its weightiest reason, else send to the plan", () => {
    const stopped = FIVE.map((one) => ({ ...one, verdict: "stop" as const }));
    expect(line(quote(stopped, fiveRows(), SHOP), "Stop", "Row 1").item).toBe("Row 1: see the plan");
    const reasons = [{ severity: "stop", text: "too deep" }] as unknown as (typeof FIVE)[number]["reasons"];
    const told = stopped.map((one) => ({ ...one, reasons }));
    expect(line(quote(told, fiveRows(), SHOP), "Stop", "Row 1").item).toBe("Row 1: too deep");
  });
  it("name a row by what it is and what it makes", () => {
    expect(line(q, "Costs most", "Row 3").item).toBe("Row 3: thread mill");
    const rows = readRows([
      ["Row", "Feature", "Operation", "Units", "Machine"],
      [7, "lug", "face", "mm", "B"],
    ]);
    const cut = { cutting: 60, moving: 0, waiting: 0, ideal: 60, change: 0 };
    const one = quote([{ ...made("face", "F1", cut), row: 7 }], rows, SHOP);
    expect(line(one, "Costs most", "Row 7").item).toBe("Row 7: face, lug");
  });
});

describe("the sentences of a quote (by hand)", () => {
  const says = (of: typeof q) => of.assumptions.join("\n");
  it("tell what was counted", () => {
    expect(q.assumptions[0]).toMatch(/^One part is every row once, times its Quantity/);
    // Parts, changes, batch, tools, lives, own costs, acceleration, range, what is not in it.
    expect(q.assumptions).toHaveLength(9);
    expect(q.assumptions.at(-1)).toMatch(/^Not in the quote: stock/);
    expect(says(q)).toMatch(/4 changes per part\. Each row's own Time counts one; the quote counts 1 change fewer/);
    expect(says(q)).toMatch(/Batch of 20 parts: each machine is set up once/);
    // 32 s of 383 without setup.
    expect(says(q)).toMatch(/Acceleration costs 0\.53 min of the cutting time per part, 8 % of the time without setup/);
    expect(says(q)).toMatch(/from 10 % to 90 %.*10 % on cutting, 25 % on moves.*30 % on setup and 40 % on tool life/);
    expect(says(q)).toMatch(/No tool life is known for D1, E1: their tool cost is not in the total/);
    expect(says(quote(FIVE.slice(0, 1), fiveRows(1).slice(0, 1), SHOP))).toMatch(/Batch of 1 part:/);
  });
  it("tell how many rows are not in the total", () => {
    const out = quote(FIVE, fiveRows(), SHOP, { leave: new Map([[1, "by hand"]]) });
    expect(says(out)).toMatch(/^1 row not in the total, listed with the reason/m);
    expect(out.rows.map(({ name }) => name)).toEqual(["1", "3", "4", "5"]);
    const sections = quoteLines(out).filter(({ section }) => section === "Not in the total");
    expect(sections.map(({ item }) => item)).toEqual(["1 row has no time: not in the total", "Row 2: by hand"]);
  });
  it("tell of nothing that is not there", () => {
    for (const none of [
      /No Price/,
      /No Setup/,
      /No Tool change/,
      /not in the total, listed/,
      /\(stop\)/,
      /no rate/,
      /without money/,
    ])
      expect(says(q)).not.toMatch(none);
    const lives = FIVE.map((one) => ({ ...one, life: 30 }));
    expect(says(quote(lives, fiveRows(), SHOP))).not.toMatch(/No tool life/);
  });
  it("tell what the lists leave blank, four names at the most", () => {
    const bare = readLists(
      [],
      [["Tool"], ["T1"], ["F1"]],
      [["Machine", "Rate [per hour]"], ...["A", "B", "C", "D", "E"].map((name) => [name, 60])],
    );
    const two = quote(FIVE, fiveRows(), bare);
    expect(says(two)).toMatch(/No Setup in the list for A, B: none in the total/);
    expect(says(two)).toMatch(/No Tool change in the list for A, B: counted as no time/);
    expect(says(two)).toMatch(/No Price in the list for T1, F1: counted as free/);
    const many = (count: number) => {
      const rows = fiveRows(20, ["A", "B", "C", "D", "E"]).slice(0, count);
      return says(quote(FIVE.slice(0, count), rows, bare));
    };
    expect(many(4)).toMatch(/No Setup in the list for A, B, C, D: none/);
    expect(many(5)).toMatch(/No Setup in the list for A, B, C, D and 1 more: none/);
  });
  it("tell of rows without a rate and of rows without a batch, one or several", () => {
    const rated = (machines: string[]) => says(quote(FIVE, fiveRows(20, machines), SHOP));
    expect(rated(["A", "A", "A", "A", "D"])).toMatch(/1 row on D has no rate/);
    expect(rated(["A", "A", "A", "D", "D"])).toMatch(/2 rows on D have no rate/);
    const batches = (...all: (number | null)[]) => {
      const rows = readRows([
        ["Operation", "Units", "Machine", "Batch"],
        ...all.map((batch) => ["drill", "mm", "A", batch]),
      ]);
      return says(quote(FIVE.slice(0, all.length), rows, SHOP));
    };
    expect(batches(10, 30)).toMatch(/different batches \(10, 30\).*over its own batch\./);
    expect(batches(10, null)).toMatch(
      /different batches \(10, blank\).*over its own batch; 1 row without one bears none/,
    );
    expect(batches(10, null, null)).toMatch(/2 rows without one bear none/);
  });
  it("compare the rows' own costs with the quote's where they have some", () => {
    const own = FIVE.map((one) => ({ ...one, results: { ...one.results, cost: 2, time: 60 } }));
    const of = quote(own, fiveRows(), SHOP);
    expect(of.own).toEqual({ seconds: 300, money: 10 });
    expect(says(of)).toContain(`own costs add up to 10.00, the quote to ${MONEY.toFixed(2)}`);
  });
});
