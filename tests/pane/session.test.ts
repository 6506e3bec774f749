import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { RESULT_COLUMNS } from "../../src/table/columns.ts";
import { HostError } from "../../taskpane/host/host.ts";
import { createSession } from "../../taskpane/work/session.ts";
import type { Advisor, Session, Suggestion } from "../../taskpane/work/types.ts";
import { type FakeHost, fakeHost } from "./fake-host.ts";
import { LISTS, PLAN_SHEET, samplePlanner } from "./sample.ts";

const PLAIN = PLAN_SHEET.map((row) => (row.length > 10 ? row.slice(0, 10) : row));

describe("the session", () => {
  let host: FakeHost;
  let session: Session;
  const start = async (sheets: Parameters<typeof fakeHost>[0], advise?: Advisor) => {
    host = fakeHost(sheets);
    host.cursor = { row: 3, column: 1 };
    session = createSession(host, samplePlanner, advise);
    await session.refresh();
  };
  const state = () => session.store.get();
  const cell = (row: number, column: number, sheet = "Plan") => host.sheets.get(sheet)?.[row]?.[column] ?? null;
  beforeEach(() => start({ Plan: PLAN_SHEET, ...LISTS }));
  afterEach(() => session.destroy());

  it("plans the selected row, and another when the selection moves", async () => {
    expect(state().plan?.operation).toBe("thread mill");
    host.moveTo(4, 1);
    await expect.poll(() => state().plan?.operation).toBe("drill");
    host.moveTo(5, 1);
    await expect.poll(() => state().plan).toBeNull();
  });

  it("writes numbers into matched columns, the verdict beside the table, and touches no other cell", async () => {
    const before = JSON.parse(JSON.stringify(host.sheets.get("Plan")));
    await session.writeNumbers();
    expect(state().message).toMatchObject({
      kind: "done",
      text: "2 rows written: 1 ok, 1 check, 0 stop. The verdict and the basis stand beside the table.",
    });
    expect(host.sheets.get("Plan")![2]!.slice(13)).toEqual([
      null,
      "Row",
      "Verdict",
      "Reasons",
      "Limit",
      "Load",
      "Basis",
      "Changed",
    ]);
    expect([cell(3, 15), cell(4, 15), cell(5, 15)]).toEqual(["check", "ok", null]);
    for (const row of host.sheets.get("Plan")!) row.splice(13);
    expect([cell(3, 10), cell(3, 11)]).toEqual([2546.479, 98.217]);
    expect(cell(4, 11)).toBeCloseTo(5.6, 9);
    for (const row of before) if (row.length > 11) row[10] = row[11] = null;
    const after = host.sheets.get("Plan")!.map((row) => row.map((value, c) => (c === 10 || c === 11 ? null : value)));
    before[2][10] = before[2][11] = null;
    expect(after).toEqual(before);
  });

  it("puts a block beside a table without result columns, and brings it up to date the next time", async () => {
    session.destroy();
    await start({ Plan: PLAIN, ...LISTS });
    await session.writeNumbers();
    expect(state().message?.text).toMatch(/beside the table/);
    expect([cell(2, 10), cell(2, 11), cell(2, 12)]).toEqual([null, "Row", "Verdict"]);
    expect([cell(3, 12), cell(4, 12)]).toEqual(["check", "ok"]);
    expect(host.formulas.size).toBe(2);
    // A row more in the table, and another operation in the first.
    host.userEdits(5, 2, "drill");
    host.userEdits(5, 3, "in");
    host.userEdits(3, 2, "drill");
    await session.writeNumbers();
    expect(state().message).toMatchObject({ kind: "done" });
    expect([cell(3, 12), cell(4, 12), cell(5, 12)]).toEqual(["ok", "ok", "ok"]);
  });

  it("inserts one live formula beside the table, over the room it will fill", async () => {
    await session.insertLive();
    expect(state().message?.kind).toBe("done");
    expect([...host.formulas]).toEqual([
      ["Plan!2,14", "=CUT.PLAN(Plan!$A$3:$M$6,Materials!$A$1:$B$102,Tools!$A$1:$B$102,Machines!$A$1:$B$102)"],
    ]);
  });

  const beside = (column: number, formula?: string) => {
    RESULT_COLUMNS.forEach(({ heading }, c) => {
      host.userEdits(2, column + c, heading);
    });
    if (formula !== undefined) host.formulas.set(`Plan!2,${column}`, formula);
  };

  it("neither inserts a second live block nor writes numbers over one, which its formula tells", async () => {
    beside(14, "=CUT.PLAN(Plan!$A$3:$M$6)");
    await session.insertLive();
    expect(state().message).toMatchObject({ kind: "failed", text: "The live block is there already." });
    session.destroy();
    await start({ Plan: PLAIN, ...LISTS });
    beside(11, "=CUT.PLAN(Plan!$A$3:$J$6)");
    await session.writeNumbers();
    expect(state().message).toMatchObject({
      kind: "failed",
      text: expect.stringContaining("live block stands beside"),
    });
  });

  it("knows a live block that shows an error and no headings", async () => {
    session.destroy();
    await start({ Plan: PLAIN, ...LISTS });
    host.userEdits(2, 11, "#SPILL!");
    host.formulas.set("Plan!2,11", "=CUT.PLAN(Plan!$A$3:$J$6)");
    await session.insertLive();
    expect(state().message).toMatchObject({ kind: "failed", text: "The live block is there already." });
  });

  it("takes results without a formula and without a basis for neither, and leaves them alone", async () => {
    session.destroy();
    await start({ Plan: PLAIN, ...LISTS });
    beside(11);
    const before = JSON.stringify(host.sheets.get("Plan"));
    await session.insertLive();
    expect(state().message).toMatchObject({ kind: "failed", text: expect.stringContaining("Something else stands") });
    await session.writeNumbers();
    expect(state().message).toMatchObject({ kind: "failed", text: expect.stringContaining("nothing was written") });
    expect(JSON.stringify(host.sheets.get("Plan"))).toBe(before);
  });

  it("asks for units, and writes only once they are known", async () => {
    session.destroy();
    await start({ Plan: PLAN_SHEET.map((row) => (row.length > 5 ? row.filter((_, c) => c !== 3) : row)), ...LISTS });
    expect(state().plan).toBeNull();
    await session.writeNumbers();
    expect(state().message).toMatchObject({ kind: "failed", text: "The table does not say its units." });
    session.setUnits("mm");
    expect(state().plan?.operation).toBe("thread mill");
    await session.insertLive();
    expect(state().message?.text).toMatch(/reads the units from the table/);
    await session.writeNumbers();
    expect(state().message?.kind).toBe("done");
  });

  it("uses a column a person matched, and takes it back", async () => {
    session.match(12, "out:pathRadius");
    expect(state().matching?.outputs.map((m) => m.column.key)).toContain("pathRadius");
    session.match(10, "out:pathRadius");
    expect(state().matching?.outputs.map((m) => [m.column.key, m.at])).toEqual([
      ["pathRadius", 10],
      ["tableFeed", 11],
    ]);
    session.match(10, "auto");
    expect(state().matching?.outputs.map((m) => m.column.key)).toEqual(["spindleSpeed", "tableFeed"]);
  });

  it("says what a protected sheet means, and leaves it alone", async () => {
    host.protectedSheets.add("Plan");
    await session.writeNumbers();
    expect(state()).toMatchObject({
      busy: false,
      message: { kind: "failed", text: expect.stringContaining("protected") },
    });
    expect(cell(3, 10)).toBeNull();
  });

  it("keeps going after a failure that nobody thought of, with a sentence and not a stack", async () => {
    const writeCells = host.writeCells;
    host.writeCells = async () => {
      throw new TypeError("x is not a function");
    };
    const { error } = console;
    console.error = () => {};
    await session.writeNumbers();
    console.error = error;
    expect(state().message?.text).not.toMatch(/TypeError|function/);
    host.writeCells = writeCells;
    await session.writeNumbers();
    expect(state().message?.kind).toBe("done");
  });

  it("stays quiet while a cell is being edited", async () => {
    const { readTable } = host;
    host.readTable = async () => {
      throw new HostError("editing", "A cell is being edited.");
    };
    await session.refresh();
    expect(state().message).toBeUndefined();
    host.readTable = readTable;
    await session.refresh();
    expect(state().phase).toBe("table");
  });

  it("writes a selected row out on a sheet of its own, and says when it has done so before", async () => {
    await session.workOut();
    expect(cell(1, 0, "Worked 10")).toBe("Spindle speed");
    expect(host.formulas.get("Worked 10!1,5")).toBe('=CUT.RPM(60,7.5,"mm")');
    host.active = "Plan";
    host.moveTo(3, 1);
    await session.workOut();
    expect(state().message).toMatchObject({ kind: "failed", text: expect.stringContaining("Worked 10") });
  });

  it("writes a suggestion into the row's own columns in their units, and says when there is no column for it", async () => {
    session.destroy();
    const suggestions: Suggestion[] = [
      { change: "Less depth", before: "120 %", after: "80 %", writes: [{ key: "depth", value: 12.7 }] },
      { change: "One more pass", before: "120 %", after: "80 %", writes: [{ key: "passes", value: 4 }] },
    ];
    await start({ Plan: PLAN_SHEET, ...LISTS }, function* () {
      yield;
      return suggestions;
    });
    host.moveTo(4, 0);
    await expect.poll(() => state().plan?.operation).toBe("drill");
    await expect.poll(() => state().suggestions).toEqual(suggestions);
    await session.apply(suggestions[0]!);
    expect(cell(4, 8)).toBe(0.5); // 12.7 mm in an inch row
    await session.apply(suggestions[1]!);
    expect(state().message).toMatchObject({ kind: "failed", text: "The table has no column for this: Passes." });
  });

  it("adds the lists that are missing, and only these", async () => {
    session.destroy();
    await start({ Plan: PLAN_SHEET, Tools: LISTS.Tools });
    const sheet = (name: string) => ({ name, headings: [name, "x"], rows: [["a", 1]] });
    await session.addLists([sheet("Materials"), sheet("Tools"), sheet("Machines")]);
    expect(host.log.filter((line) => line.startsWith("addSheet"))).toEqual(["addSheet Materials", "addSheet Machines"]);
    expect(state().lists.map((list) => list?.rows.length)).toEqual([1, 1, 1]);
  });

  it("does nothing after it has been destroyed", async () => {
    session.destroy();
    const reads = host.log.length;
    vi.useFakeTimers();
    host.moveTo(4, 1);
    host.userEdits(4, 2, "bore");
    await vi.runAllTimersAsync();
    vi.useRealTimers();
    expect(host.log.length).toBe(reads);
  });
});
