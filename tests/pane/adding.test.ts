import { afterEach, describe, expect, it } from "vitest";
import { readCallouts } from "../../src/callouts/callouts.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { rowWords, thicknessOf } from "../../taskpane/ui/callouts.ts";
import { additionOf } from "../../taskpane/work/adding.ts";
import { match } from "../../taskpane/work/planning.ts";
import { createSession } from "../../taskpane/work/session.ts";
import type { Session } from "../../taskpane/work/types.ts";
import { fakeHost } from "./fake-host.ts";
import { LISTS, samplePlanner } from "./sample.ts";

const PASTED = "6X 3/8-16 UNC-2B ↧ .75\n4X ⌀8.5 THRU\nHONE TO SUIT";
const block = (headings: CellValue[], rows: CellValue[][]) => ({
  sheet: "Plan",
  top: 2,
  left: 0,
  headings,
  rows,
  reference: "",
  address: "",
});
const add = (headings: CellValue[], rows: CellValue[][], text = PASTED, units?: "mm" | "in", byHand = {}) =>
  additionOf(block(headings, rows), match(headings, byHand), units, readCallouts(text, { units: "mm" }).rows);

describe("callouts as rows of the table (independent)", () => {
  it("go under the user's own headings, in any order, and number on by tens", () => {
    const done = add(
      ["Qty", "Op", "Process", "Units", "Thread callout", "Dia", "Deep", "Thru", "Description"],
      [[1, 35, "drill", "mm", null, 5, 10, null, "x"]],
    );
    expect(done.rows).toEqual([
      [6, 40, "drill", "in", "3/8-16 UNC-2B", null, 0.875, null, "6X 3/8-16 UNC-2B ↧ .75"],
      [6, 50, "thread mill", "in", "3/8-16 UNC-2B", null, 0.75, null, "6X 3/8-16 UNC-2B ↧ .75"],
      [4, 60, "drill", "mm", null, 8.5, null, "yes", "4X ⌀8.5 THRU"],
      [null, 70, null, null, null, null, null, null, "HONE TO SUIT"],
    ]);
    expect(done.numbers).toEqual([40, 70]);
    expect(done.spare).toBe(0);
    expect(done.missing).toEqual([{ heading: "Hole depth", rows: 1 }]);
  });

  it("number on by ones where the table does, by nothing where its numbers are words", () => {
    const headings = ["Row", "Operation", "Units", "Finish diameter", "Depth", "Feature"];
    const numbers = (column: CellValue[]) =>
      add(
        headings,
        column.map((n) => [n, "drill", "mm", 5, 9, null]),
        "4X ⌀8.5 ↧ 10\n⌀9 ↧ 10",
      ).rows.map((row) => row[0]);
    expect(numbers([1, 2, 3])).toEqual([4, 5]);
    expect(numbers([10, 20, 40])).toEqual([50, 60]);
    expect(numbers([10])).toEqual([20, 30]);
    expect(numbers(["OP10", "OP20"])).toEqual([null, null]);
    expect(numbers([])).toEqual([10, 20]);
  });

  it("fill the rows that hold nothing but a number, and keep these numbers", () => {
    const headings = ["Row", "Operation", "Units", "Finish diameter", "Depth", "My notes"];
    const spare = (note: CellValue) => [
      [10, "drill", "mm", 5, 9, null],
      [20, null, null, null, null, note],
      [30, null, null, null, null, null],
    ];
    const text = "⌀8.5 ↧ 10\n⌀9 ↧ 11\n⌀9.5 ↧ 12";
    const done = add(headings, spare(null), text);
    expect(done.spare).toBe(2);
    expect(done.rows.map((row) => row[0])).toEqual([null, null, 40]);
    expect(done.numbers).toEqual([20, 40]);
    // A note in a column of the user's own keeps the row.
    expect(add(headings, spare("reserved"), text)).toMatchObject({ spare: 1, numbers: [30, 50] });
  });

  it("turn lengths into the units of a table that has no column for them", () => {
    const headings = ["Operation", "Dia", "Depth", "Feature"];
    // 0.375 in = 9.525 mm, 1 in = 25.4 mm
    expect(add(headings, [], "⌀.375 ↧ 1.00", "mm").rows).toEqual([["drill", 9.525, 25.4, "⌀.375 ↧ 1.00"]]);
    expect(add(headings, [], "⌀12.7 mm ↧ 25.4 mm", "in").rows[0]!.slice(1, 3)).toEqual([0.5, 1]);
    expect(add(["Operation", "Dia (mm)", "Depth [in]"], [], "⌀.375 ↧ 1.00").rows).toEqual([["drill", 9.525, 1]]);
  });

  it("go by columns that a person matched, and not into those taken out of use", () => {
    const done = add(["Operation", "Units", "Ream", "Depth"], [], "⌀8.5 ↧ 10", undefined, {
      ream: "in:finishDiameter",
      depth: "",
    });
    expect(done.rows).toEqual([["drill", "mm", 8.5, null]]);
    expect(done.missing.map((one) => one.heading)).toEqual(["Feature", "Depth"]);
  });

  it("say that the table has no column for remarks, where it has none", () => {
    expect(add(["Operation", "Dia"], [], "⌀8.5 ↧ 10").noRemark).toBe(true);
    const done = add(["Operation", "Dia", "Remark"], [], "⌀8.5 ↧ 10");
    expect(done.noRemark).toBe(false);
    expect(done.rows[0]![2]).toContain("mm assumed");
    expect(add(["Operation", "Dia"], [], "⌀8.5 ↧ 10").missing.map((m) => m.heading)).not.toContain("Remark");
  });

  it("take a thickness as a person types it", () => {
    expect(thicknessOf("", "mm")).toBe(undefined);
    expect(thicknessOf(" 20 ", "mm")).toEqual({ value: 20, units: "mm" });
    expect(thicknessOf("0,75 in", "mm")).toEqual({ value: 0.75, units: "in" });
    expect(thicknessOf('.5"', undefined)).toEqual({ value: 0.5, units: "in" });
    for (const bad of ["20", "0 mm", "-3 mm", "1/2 in", "x"]) expect(thicknessOf(bad, undefined), bad).toBe("bad");
  });

  it("are told in words", () => {
    const words = (text: string) => readCallouts(text, { units: "mm" }).rows.map((row) => rowWords(row.cells));
    expect(words("6X 3/8-16 UNC-2B ↧ .75")).toEqual([
      "6 × drill 3/8-16 UNC-2B tap drill, 0.875 deep [in]",
      "6 × thread mill 3/8-16 UNC-2B, 0.75 deep, hole 0.875 [in]",
    ]);
    expect(words("2X ⌀10 H7 THRU")).toEqual([
      "2 × drill ⌀9.7, through [mm]",
      "2 × ream ⌀10.0075 over ⌀9.7 ± 0.0075, through [mm]",
    ]);
    expect(words("⌀.266 THRU ⌴ ⌀.44 ↧ .25")[1]).toBe("1 × counterbore ⌀0.44 over ⌀0.266, 0.25 deep [in]");
  });
});

describe("the session adding callouts", () => {
  const HEADINGS: CellValue[] = ["Row", "Operation", "Units", "Quantity", "Thread", "Dia", "Depth", "Feature"];
  let session: Session | undefined;
  afterEach(() => session?.destroy());
  const start = async (more: CellValue[][] = []) => {
    const host = fakeHost({ Plan: [HEADINGS, [10, "drill", "mm", 1, null, 5, 9, null], ...more], ...LISTS });
    host.cursor = { row: 1, column: 1 };
    session = createSession(host, samplePlanner);
    await session.refresh();
    return { host, session, message: () => session!.store.get().message };
  };
  const { rows } = readCallouts(PASTED, { units: "mm" });

  it("writes the rows under the last one, goes there and says what it did", async () => {
    const { host, session, message } = await start();
    expect(await session.addCallouts(rows)).toBe(true);
    expect(
      host.sheets
        .get("Plan")!
        .slice(2)
        .map((row) => row.slice(0, 6)),
    ).toEqual([
      [20, "drill", "in", 6, "3/8-16 UNC-2B", null],
      [30, "thread mill", "in", 6, "3/8-16 UNC-2B", null],
      [40, "drill", "mm", 4, null, 8.5],
      [50, null, null, null, null, null],
    ]);
    expect(host.log.filter((line) => /append|write|insert/.test(line))).toEqual(["appendRows 4"]);
    expect(message()).toEqual({
      kind: "done",
      text: "4 rows added under the table, numbered 20 to 50, from line 3 of the sheet. 1 of them was not understood: fill in by hand.",
      action: "Press “Write numbers” to plan them.",
    });
    expect(host.cursor).toEqual({ row: 2, column: 0 });
    await expect.poll(() => session.store.get().plan?.operation).toBe("drill");
  });

  it("stops when there is something below the table, and writes nothing", async () => {
    const gap: CellValue[] = HEADINGS.map(() => null);
    const { host, session, message } = await start([gap, gap, [null, null, "signed: R. Hale"]]);
    const before = JSON.stringify(host.sheets.get("Plan"));
    expect(await session.addCallouts(rows)).toBe(false);
    expect(message()).toMatchObject({ kind: "failed", text: expect.stringContaining("in the way") });
    expect(JSON.stringify(host.sheets.get("Plan"))).toBe(before);
  });

  it("says that a protected sheet takes no rows", async () => {
    const { host, session, message } = await start();
    host.protectedSheets.add("Plan");
    expect(await session.addCallouts(rows)).toBe(false);
    expect(message()?.text).toMatch(/protected; nothing was written/);
  });
});
