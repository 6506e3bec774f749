import { afterEach, describe, expect, it } from "vitest";
import type { CellValue } from "../../taskpane/host/host.ts";
import {
  followed,
  handMatches,
  headTexts,
  type Kept,
  keptText,
  NOTHING_KEPT,
  readKept,
  scoreOf,
  withAnswer,
} from "../../taskpane/work/answers.ts";
import { createSession } from "../../taskpane/work/session.ts";
import type { Session } from "../../taskpane/work/types.ts";
import { fakeHost } from "./fake-host.ts";
import { LISTS, samplePlanner } from "./sample.ts";

const HEADS = ["Op", "Operation", "Units", "Dia", "Feed", "Zeug", "Note"];
/** The row with one cell changed. */
const put = <T>(row: readonly T[], at: number, value: T): T[] => row.map((cell, i) => (i === at ? value : cell));
const said = (...of: [number, string][]): Kept =>
  of.reduce((kept, [at, key]) => withAnswer(kept, HEADS, at, key), NOTHING_KEPT);

describe("answers about headings (identity)", () => {
  it("come back from the text that the workbook keeps", () => {
    const kept = said([4, "in:feedPerTooth"], [5, ""], [6, "out:tableFeed"]);
    expect(readKept(keptText(kept)!)).toEqual(kept);
    expect(keptText(NOTHING_KEPT)).toBeNull();
    expect(readKept(undefined)).toEqual(NOTHING_KEPT);
    for (const text of [
      "",
      "{",
      "[]",
      "1",
      '{"is":2,"answers":[],"heads":[]}',
      '{"is":1,"answers":{},"heads":[]}',
      "null",
    ])
      expect(readKept(text), text).toEqual(NOTHING_KEPT);
    expect(
      readKept('{"is":1,"answers":[["a","in:depth","",""],["b"],["c","<x>","",""],7],"heads":[["x"],"y"]}'),
    ).toEqual({ answers: [{ heading: "a", key: "in:depth", between: ["", ""] }], heads: [["x"]] });
  });
  it("belong to the heading wherever its column is moved, whatever its unit, and to no other", () => {
    const kept = said([4, "in:feedPerTooth"]);
    expect(handMatches(kept, ["Feed [mm]", "Op", "Operation"])).toEqual({ feed: "in:feedPerTooth" });
    expect(followed(kept, ["Feed [mm]", "Op", "Operation"])).toEqual([]);
    expect(followed(kept, ["Op", "Operation"])).toEqual([]);
  });
  it("follow a renamed column that stands between the same two headings", () => {
    const kept = said([5, "in:depth"]);
    const renamed = put(HEADS, 5, "Gerät");
    expect(followed(kept, renamed)).toEqual([{ from: "zeug", to: "gerät", key: "in:depth" }]);
    expect(handMatches(kept, renamed)).toMatchObject({ gerät: "in:depth" });
    // At an end of the table.
    expect(followed(said([6, ""]), put(HEADS, 6, "Gerät"))).toEqual([{ from: "note", to: "gerät", key: "" }]);
  });
  it("do not follow where that is not sure", () => {
    const kept = said([5, "in:depth"]);
    // The old heading is there still.
    expect(followed(kept, [...HEADS, "Gerät"])).toEqual([]);
    // One of its neighbours is another.
    expect(followed(kept, put(put(HEADS, 5, "Gerät"), 6, "Kunde"))).toEqual([]);
    // The new heading says what it is, may say it, or was answered itself.
    expect(followed(kept, put(HEADS, 5, "Thread"))).toEqual([]);
    expect(followed(kept, put(HEADS, 5, "Speed"))).toEqual([]);
    expect(
      followed(
        {
          ...kept,
          answers: [...kept.answers, ...said([4, "in:feedPerTooth"]).answers.map((a) => ({ ...a, heading: "gerät" }))],
        },
        put(HEADS, 5, "Gerät"),
      ),
    ).toEqual([]);
    // Two answers for one column.
    const two: Kept = { ...kept, answers: [...kept.answers, { ...kept.answers[0]!, heading: "other", key: "" }] };
    expect(followed(two, put(HEADS, 5, "Gerät"))).toEqual([]);
  });
  it("give a meaning to one column of a table only, and leave other tables alone", () => {
    const kept = withAnswer(said([4, "in:depth"], [5, ""]), HEADS, 6, "in:depth");
    expect(handMatches(kept)).toEqual({ zeug: "", note: "in:depth" });
    const elsewhere = withAnswer(said([4, "in:depth"]), ["Operation", "Tief"], 1, "in:depth");
    expect(handMatches(elsewhere)).toEqual({ feed: "in:depth", tief: "in:depth" });
    expect(withAnswer(said([4, "in:depth"]), HEADS, 4, undefined)).toEqual(NOTHING_KEPT);
  });
  it("are put in the place of those that they followed", () => {
    const renamed = put(HEADS, 5, "Gerät");
    expect(handMatches(withAnswer(said([5, "in:depth"]), renamed, 5, ""), renamed)).toEqual({ gerät: "" });
  });
});

describe("rows that a person pointed at", () => {
  const kept: Kept = { answers: [], heads: [headTexts(["Alpha", "Beta", "Gamma", "Delta"])!] };
  it("are headings whatever they look like, with columns added, taken out, moved and renamed", () => {
    const score = scoreOf(kept);
    const usual = scoreOf(NOTHING_KEPT)(["Op", "Operation", "Material", "Dia", "Depth"]);
    expect(usual).toBeGreaterThan(0);
    for (const headings of [
      ["Alpha", "Beta", "Gamma", "Delta"],
      ["Delta", "New", "Beta (mm)", "ALPHA", "Gamma"],
      ["Alpha", "Other", "Another", "Delta"],
    ])
      expect(score(headings), headings.join()).toBeGreaterThan(usual);
    for (const headings of [
      ["Alpha", "x", "y", "z"],
      ["Alpha", "Alpha"],
      [null, 1],
    ])
      expect(score(headings)).toBe(0);
  });
  it("need two texts", () => {
    expect(headTexts(["Alpha", null, 3])).toBeUndefined();
    expect(headTexts(["Alpha", null, "Beta"])).toEqual(["alpha", "beta"]);
  });
});

describe("the session with a workbook that keeps answers", () => {
  let session: Session;
  let host: ReturnType<typeof fakeHost>;
  const state = () => session.store.get();
  const open = async () => {
    session = createSession(host, samplePlanner);
    session.open();
    await session.refresh();
  };
  const keys = () =>
    Object.fromEntries([
      ...state().matching!.inputs.map((m) => [m.at, `in:${m.column.key}`] as const),
      ...state().matching!.outputs.map((m) => [m.at, `out:${m.column.key}`] as const),
    ]);
  const again = async () => {
    session.destroy();
    await open();
  };
  const kept = async () => {
    // What is kept is written behind the answer.
    await expect.poll(() => host.kept.get("headings")).toBeDefined();
  };
  afterEach(() => session.destroy());
  const PLAN: CellValue[][] = [HEADS, [10, "drill", "mm", 8.5, 0.1, 12, "a"], [20, "drill", "mm", 8.5, 0.2, 14, "b"]];

  it("asks once, and reads and writes the column by the answer, also when it is opened again", async () => {
    host = fakeHost({ Plan: PLAN, ...LISTS });
    await open();
    expect(state().matching!.doubts).toEqual([{ at: 4, options: ["in:feedPerTooth", "out:tableFeed"] }]);
    expect(keys()[4]).toBeUndefined();
    session.match(4, "in:feedPerTooth");
    expect(state().matching!.doubts).toEqual([]);
    expect(keys()[4]).toBe("in:feedPerTooth");
    await kept();
    await again();
    expect(state().matching!.doubts).toEqual([]);
    expect(keys()[4]).toBe("in:feedPerTooth");
    // "not used" is an answer as well.
    session.match(4, "");
    await expect.poll(() => host.kept.get("headings")).toContain('["feed","",');
    await again();
    expect(state().matching!.doubts).toEqual([]);
    expect(keys()[4]).toBeUndefined();
  });

  it("keeps an answer through moved, renamed and inserted columns", async () => {
    host = fakeHost({ Plan: PLAN, ...LISTS });
    await open();
    session.match(5, "in:depth");
    await kept();
    // Moved to the front, with a column between.
    host.sheets.set(
      "Plan",
      PLAN.map((row, r) => [row[5]!, r === 0 ? "Kunde" : "x", ...row.filter((_, c) => c !== 5)]),
    );
    await again();
    expect(keys()[0]).toBe("in:depth");
    // Renamed where it stood.
    host.sheets.set(
      "Plan",
      PLAN.map((row, r) => (r === 0 ? put(row, 5, "Gerät") : [...row])),
    );
    await again();
    expect(keys()[5]).toBe("in:depth");
    // Renamed and moved: nobody can know.
    host.sheets.set(
      "Plan",
      PLAN.map((row, r) => [r === 0 ? "Gerät" : row[5]!, ...row.filter((_, c) => c !== 5)]),
    );
    await again();
    expect(Object.values(keys())).not.toContain("in:depth");
  });

  it("takes a row for headings that a person pointed at, and knows it again", async () => {
    const odd: CellValue[][] = [
      ["Alpha", "Beta", "Gamma"],
      ["drill", 8.5, 20],
      ["drill", 6.8, 12],
    ];
    host = fakeHost({ Plan: odd, ...LISTS });
    host.cursor = { row: 1, column: 0 };
    await open();
    expect(state().phase).toBe("none");
    // A row of numbers holds none.
    host.sheets.set("Plan", [...odd, [1, 2, 3]]);
    host.cursor = { row: 3, column: 0 };
    await session.pointAtHeadings();
    expect(state().message).toMatchObject({ kind: "failed", text: expect.stringMatching(/holds no headings/) });
    expect(state().phase).toBe("none");
    host.cursor = { row: 0, column: 1 };
    await session.pointAtHeadings();
    expect(state()).toMatchObject({ phase: "table", table: { top: 0, headings: ["Alpha", "Beta", "Gamma"] } });
    session.match(0, "in:operation");
    session.match(1, "in:finishDiameter");
    session.match(2, "in:depth");
    await expect.poll(() => host.kept.get("headings")).toContain("in:depth");
    await again();
    expect(state().phase).toBe("table");
    expect(keys()).toEqual({ 0: "in:operation", 1: "in:finishDiameter", 2: "in:depth" });
  });

  it("says when the workbook cannot keep the answer, and goes by it all the same", async () => {
    host = fakeHost({ Plan: PLAN, ...LISTS });
    const { HostError } = await import("../../taskpane/host/host.ts");
    host.keep = async () => {
      throw new HostError("protected", "The workbook is protected.");
    };
    await open();
    session.match(4, "in:feedPerTooth");
    await expect.poll(() => state().message?.text).toMatch(/holds while this pane is open.*protected/);
    expect(keys()[4]).toBe("in:feedPerTooth");
    await session.refresh();
    expect(keys()[4]).toBe("in:feedPerTooth");
  });

  it("reads what is kept with the table, and costs no second read where nothing is kept", async () => {
    host = fakeHost({ Plan: PLAN, ...LISTS });
    session = createSession(host, samplePlanner);
    await session.refresh();
    expect(host.log.filter((line) => line.startsWith("read ")).length).toBe(1);
    host.kept.set("headings", '{"is":1,"answers":[["feed","in:feedPerTooth","dia","zeug"]],"heads":[]}');
    await session.refresh();
    expect(host.log.filter((line) => line.startsWith("read ")).length).toBe(3);
    expect(keys()[4]).toBe("in:feedPerTooth");
    await session.refresh();
    expect(host.log.filter((line) => line.startsWith("read ")).length).toBe(4);
  });
});
