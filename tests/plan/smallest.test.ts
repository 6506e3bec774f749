/** The smallest change that makes a row hold, where it is made up what helps. */
import { describe, expect, it } from "vitest";
import type { Verdict } from "../../src/findings.ts";
import { badness, price } from "../../src/plan/search.ts";
import { smallest } from "../../src/plan/smallest.ts";
import type { Row } from "../../src/table/rows.ts";
import { type RowCells, STEEL } from "../findings/rule.ts";
import { end, type Outcome, planOf, said, searchOf } from "./made-up.ts";

// 12 mm, four flutes of 26 mm; the feed is typed, so that 0.1 is where it starts.
const BORE: RowCells = {
  ...{ ...STEEL, Operation: "bore", Tool: "EM-12-4", "Start diameter": 30, "Finish diameter": 40, Depth: 20 },
  ...{ "Feed per tooth": 0.1, "Stick-out": 60, Passes: 2, "Spring passes": 1 },
};
const results = (row: Row) => ({ passes: row.passes ?? 2, springPasses: row.springPasses ?? 1, feedPerTooth: 0.1 });
const search = (outcome: (row: Row) => Outcome, cells: RowCells = {}) => {
  const made = searchOf({ row: { ...BORE, ...cells } }, (row) => ({ ...results(row), ...outcome(row) }));
  const found = end(smallest(made.search));
  return { ...made, found };
};
const stress = (severity: Verdict) => ({ "tool-stress": severity }) as const;
const feed = ({ feedPerTooth = 1 }: Row) => feedPerTooth;
const passes = (row: Row) => row.passes ?? 2;

describe("the smallest change that makes a row hold (made-up outcomes)", () => {
  it("is none for a row that holds, and nothing is tried", () => {
    const { found, rows } = search(() => ({}));
    expect([found, rows]).toEqual([[], []]);
    // what is only said is no reason to change anything
    expect(search(() => ({ wrong: stress("ok") })).rows).toEqual([]);
  });
  it("is the first of its cell that holds, and one of each cell", () => {
    // Of 60 mm down to 26 the second quarter, ln(60/43) = 0.33. Of 3, 4, 5 passes the second, ln(5/3) = 0.51 with the spring pass.
    // Of the feeds 0.085, 0.07, 0.055 the third, ln(1/0.55) = 0.60.
    const { found, search: after } = search((row) => {
      const holds = feed(row) <= 0.06 || passes(row) >= 4 || (row.stickOut ?? 99) < 50;
      return holds ? {} : { wrong: stress("check") };
    });
    expect(found.map(({ changes }) => said(changes))).toEqual([["stickOut 43"], ["passes 4"], ["feedPerTooth 0.055"]]);
    for (const { plan } of found) expect(plan.verdict).toBe("ok");
    expect(after.tried).toBeLessThan(20);
  });
  it("of four cells that help the three smallest are offered, and the search ends there", () => {
    const { found, rows } = search((row) => {
      const all = { ...results(row), ...row };
      const same = all.feedPerTooth === 0.1 && all.passes === 2 && all.stickOut === 60 && all.tool === "EM-12-4";
      return same && row.radialDepth === undefined ? { wrong: stress("stop"), radialDepth: 2 } : { radialDepth: 2 };
    });
    expect(found).toHaveLength(3);
    expect(rows).toHaveLength(3);
    expect(new Set(found.map(({ changes }) => changes[0]!.key)).size).toBe(3);
  });
  it("changes only what may help: a blank diameter that is wrong is no matter of feeds", () => {
    const { rows, found } = search((row) => (row.feedPerTooth === 0.1 ? { wrong: { "holder-hits": "stop" } } : {}));
    expect(found).toEqual([]);
    expect(rows.length).toBeGreaterThan(4);
    for (const row of rows) expect(row.feedPerTooth).toBe(0.1);
  });
  it("a pass that is thinner comes with more of them", () => {
    const side = { Operation: "side", "Radial depth": 4, Length: 80, "Finish diameter": null, "Start diameter": null };
    const { found } = search(
      (row) => (row.radialDepth! > 2 ? { wrong: { "radial-over-diameter": "stop" } } : {}),
      side,
    );
    expect(said(found[0]!.changes)).toEqual(["radialDepth 2", "passes 4"]);
  });
  it("where nothing helps, singles are tried 33 times and no pair", () => {
    for (const severity of ["stop", "check"] as const) {
      const { found, search: after, rows } = search(() => ({ wrong: stress(severity), load: 2, radialDepth: 2 }));
      expect([found, after.tried, rows.length]).toEqual([[], 34, 33]);
    }
  });
});

describe("two changes where one is not enough (made-up outcomes)", () => {
  const both = (row: Row) => (feed(row) < 0.09 ? 1 : 0) + (passes(row) > 2 ? 1 : 0);
  it("are found where each alone helps and both together hold", () => {
    for (const first of ["stop", "check"] as const) {
      const { found } = search(
        (row) => [{ wrong: stress(first), load: 2 }, { wrong: stress(first), load: 1 }, {}][both(row)]!,
      );
      expect(found).toHaveLength(1);
      expect(found[0]!.plan.verdict).toBe("ok");
      const to = Object.fromEntries(found[0]!.changes.map((c) => [c.key, c.to]));
      expect(Object.keys(to).sort()).toEqual(["feedPerTooth", "passes"]);
      expect(to.feedPerTooth).toBeLessThan(0.09);
      expect(to.passes).toBeGreaterThan(2);
    }
  });
  it("start from the change that leaves the least wrong: fewer stops, then fewer checks, then less load", () => {
    // what is left with another feed, and with another number of passes; answers which of the two the first pair keeps
    const left = (a: Outcome, b: Outcome) => {
      const { rows } = search((row) => {
        if (feed(row) < 0.09) return a;
        return passes(row) > 2
          ? b
          : { wrong: { "tool-stress": "stop", chatter: "stop", "power-over": "stop" }, load: 9 };
      });
      const pair = rows[33]!;
      if (feed(pair) < 0.09) return "feed";
      return passes(pair) > 2 ? "passes" : "neither";
    };
    const one = { wrong: { "tool-stress": "stop" }, load: 9 } as const;
    const two = { wrong: { "tool-stress": "stop", chatter: "stop" }, load: 0.1 } as const;
    expect(left(one, two)).toBe("feed");
    expect(left(two, one)).toBe("passes");
    const checks = { wrong: { "tool-stress": "stop", chatter: "check" }, load: 0.1 } as const;
    expect(left(one, checks)).toBe("feed");
    expect(left(checks, one)).toBe("passes");
    expect(left({ ...one, load: 3 }, { ...one, load: 4 })).toBe("feed");
    expect(left({ ...one, load: 4 }, { ...one, load: 3 })).toBe("passes");
  });
  it("change two cells, with what relieves what is left, and are tried twenty times", () => {
    // each of five cells helps a little, nothing holds: four times five
    const {
      rows,
      found,
      search: { situation },
    } = search((row) => {
      const cells = [
        feed(row) < 0.09,
        passes(row) > 2,
        row.stickOut! < 60,
        row.radialDepth !== undefined,
        row.tool !== "EM-12-4",
      ];
      return { wrong: stress("stop"), load: 6 - cells.filter(Boolean).length, radialDepth: 2 };
    });
    expect(found).toEqual([]);
    expect(rows).toHaveLength(33 + 20);
    const [singles, pairs] = [rows.slice(0, 33), rows.slice(33)];
    for (const pair of pairs) for (const single of singles) expect(pair).not.toEqual(single);
    // each of four is kept five times
    const keys = ["feedPerTooth", "passes", "stickOut", "radialDepth", "tool"] as const;
    const kept = [0, 5, 10, 15].map((at) => {
      const five = pairs.slice(at, at + 5);
      return keys.filter((key) => five.every((row) => row[key] === five[0]![key] && row[key] !== situation.row[key]));
    });
    for (const cells of kept) expect(cells).toHaveLength(1);
    expect(new Set(kept.flat()).size).toBe(4);
    // where one cell alone helps, all twenty go with it
    const alone = search((row) => ({ wrong: stress("stop"), load: feed(row) < 0.09 ? 1 : 2, radialDepth: 2 }));
    expect(alone.rows).toHaveLength(33 + 20);
    for (const row of alone.rows.slice(33)) expect(row.feedPerTooth).toBeCloseTo(0.085, 9);
  });
  it("of what one change leaves only that is relieved: a hole too shallow after a feed that was too high", () => {
    const { rows } = search((row) =>
      feed(row) < 0.09 ? { wrong: { "holder-hits": "check" } } : { wrong: { "feed-over-list": "stop" } },
    );
    const after = rows.filter((row) => feed(row) < 0.09).slice(1);
    expect(after.some((row) => row.stickOut !== 60 && row.passes === 2)).toBe(true);
    for (const row of rows) expect(row.passes).toBe(2);
  });
});

describe("what takes a stop away where nothing makes the row hold (made-up outcomes)", () => {
  it("is the smallest such change, for a row that stops and for no other", () => {
    const at = (base: Verdict) =>
      search((row) => ({ wrong: stress(feed(row) < 0.08 ? "check" : base), load: feed(row) < 0.09 ? 1 : 2 })).found;
    const [lighter, ...more] = at("stop");
    expect(more).toEqual([]);
    expect(lighter!.plan.verdict).toBe("check");
    expect(said(lighter!.changes)).toEqual(["feedPerTooth 0.07"]);
    expect(at("check")).toEqual([]);
  });
  it("is nothing where it stops in any case, however much lighter", () => {
    expect(search((row) => ({ wrong: stress("stop"), load: feed(row) })).found).toEqual([]);
  });
});

describe("how bad a row is, and what it costs (definitions)", () => {
  it("a stop is worse than checks, a check worse than any load, and what is only said is nothing", () => {
    const bad = (outcome: Outcome) => badness(planOf(outcome));
    expect(bad({})).toBe(0);
    expect(bad({ wrong: stress("ok") })).toBe(0);
    expect(bad({ wrong: stress("stop") })).toBeGreaterThan(
      bad({ wrong: { chatter: "check", roughness: "check" }, load: 99 }),
    );
    expect(bad({ wrong: stress("check") })).toBeGreaterThan(bad({ load: 99 }));
    expect(bad({ load: 2 })).toBeGreaterThan(bad({ load: 1 }));
    expect(bad({ wrong: { chatter: "check", roughness: "check" } })).toBe(2 * bad({ wrong: stress("check") }));
  });
  it("is money, else seconds, else beyond all", () => {
    expect(price(planOf({ cost: 3, time: 60 }))).toBe(3);
    expect(price(planOf({ time: 60 }))).toBe(60);
    expect(price(planOf({}))).toBe(Number.POSITIVE_INFINITY);
  });
});
