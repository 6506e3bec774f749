import { afterEach, describe, expect, it } from "vitest";
import { QUOTE } from "../../functions/quote.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { planner } from "../../taskpane/work/planner.ts";
import { planningScore } from "../../taskpane/work/planning.ts";
import { createSession } from "../../taskpane/work/session.ts";
import type { Session } from "../../taskpane/work/types.ts";
import { type FakeHost, fakeHost } from "./fake-host.ts";

const copy = (block: readonly (readonly CellValue[])[]) => block.map((row) => [...row]);
const few = [0, 4, 5, 6, 7, 16, 17].map((i) => DEMO[i]!);

let session: Session | undefined;
afterEach(() => session?.destroy());

async function open(
  machines: readonly (readonly CellValue[])[] = MACHINES,
): Promise<{ host: FakeHost; session: Session }> {
  const host = fakeHost({ Plan: copy(few), Materials: copy(MATERIALS), Tools: copy(TOOLS), Machines: copy(machines) });
  host.moveTo(1, 0);
  session = createSession(host, planner);
  await session.refresh();
  return { host, session };
}

/** Sentences folded over several rows, in one again. */
const unfold = (sheet: CellValue[][], column: number): CellValue[][] => {
  const rows: CellValue[][] = [];
  for (const row of sheet) {
    const text = String(row[column] ?? "");
    const above = rows[rows.length - 1];
    if (text.startsWith("  ") && above !== undefined) above[column] = `${above[column]} ${text.trim()}`;
    else rows.push([...row]);
  }
  return rows;
};

const numbers = (sheet: CellValue[][], item: string) => sheet.find((row) => row[0] === item || row[1] === item)!;

describe("the quote on a sheet (identity: the worksheet function and the rows' own sums)", () => {
  it("holds the numbers of CUT.QUOTE, line by line", async () => {
    const { host, session } = await open();
    await session.writeQuote({ batch: 25, currency: "Taler" });
    const sheet = host.sheets.get("Quote")!;
    expect(sheet[0]!.slice(0, 7)).toEqual([
      "Section",
      "Item",
      "Count",
      "Minutes",
      "Money [Taler]",
      "Share",
      "Minutes drawn",
    ]);
    const wanted = QUOTE(copy(few), copy(MATERIALS), copy(TOOLS), copy(MACHINES), [[25]]);
    const unfolded = unfold(sheet, 1);
    expect(unfolded.length).toBe(wanted.length);
    wanted.slice(1).forEach((line, i) => {
      const mine = unfolded[i + 1]!.slice(1, 6).map((cell) => cell ?? "");
      expect(mine, String(line[1])).toEqual(line.slice(1));
    });
  });
  it("has no line that is too long to print, and none that passes for the headings of a planning table", async () => {
    const { host, session } = await open();
    await session.writeQuote({});
    host.active = "Plan";
    host.moveTo(1, 0);
    await session.refresh();
    await session.writeComparison({ material: [String(MATERIALS[1]![0]), String(MATERIALS[2]![0])] }, {});
    for (const [name, column] of [
      ["Quote", 1],
      ["Compare", 0],
    ] as const)
      for (const row of host.sheets.get(name)!) {
        expect(planningScore(row), row.join(" | ")).toBe(0);
        expect(String(row[column] ?? "").length).toBeLessThanOrEqual(64);
      }
  });
  it("draws the operations in proportion to their minutes", async () => {
    const { host, session } = await open();
    await session.writeQuote({});
    const sheet = host.sheets.get("Quote")!;
    const from = sheet.findIndex((row) => row[0] === "By operation");
    const end = sheet.findIndex((line, i) => i > from && line[0] !== null && line[0] !== undefined);
    const drawn = sheet.slice(from, end);
    const most = Math.max(...drawn.map((row) => Number(row[3])));
    for (const row of drawn) expect(String(row[6]).length).toBe(Math.max(1, Math.round((24 * Number(row[3])) / most)));
  });
  it("takes a free name when there is a quote already, and loses nothing", async () => {
    const { host, session } = await open();
    await session.writeQuote({});
    const first = copy(host.sheets.get("Quote")!);
    host.active = "Plan";
    host.moveTo(1, 0);
    await session.refresh();
    await session.writeQuote({ batch: 10 });
    expect(host.sheets.has("Quote 2")).toBe(true);
    expect(host.sheets.get("Quote")).toEqual(first);
    expect(host.sheets.get("Plan")).toEqual(copy(few));
  });
  for (const [called, none] of [
    ["blank", null],
    ["zero", 0],
  ] as const)
    it(`is a quote without money where the rate of every machine is ${called}`, async () => {
      const rate = MACHINES[0]!.indexOf("Rate [per hour]");
      const { host, session } = await open(
        MACHINES.map((row, i) => row.map((c, k) => (i > 0 && k === rate ? none : c))),
      );
      await session.writeQuote({ batch: 5 });
      const sheet = host.sheets.get("Quote")!;
      expect(session.store.get().message?.kind).toBe("done");
      for (const row of sheet.slice(1)) expect(row[4] ?? null).toBe(null);
      expect(Number(sheet[1]![3])).toBeGreaterThan(0);
      host.active = "Plan";
      host.moveTo(1, 0);
      await session.writeComparison({ machine: [String(MACHINES[2]![0]), String(MACHINES[3]![0])] }, { batch: 5 });
      const both = unfold(host.sheets.get("Compare")!, 0);
      expect(numbers(both, "Cost per part").slice(1)).toEqual([null, null, null]);
      expect(Number(numbers(both, "Time per part [min]")[1])).toBeGreaterThan(0);
      expect(both[both.findIndex((row) => row[0] === "Break-even batch") + 1]![0]).toMatch(/^A machine has no rate/);
    });
  it("says at once, and on the sheet, that a row without a time is not in the total", async () => {
    const { host, session } = await open();
    await session.writeQuote({ batch: 5 });
    const whole = Number(host.sheets.get("Quote")![1]![3]);
    host.active = "Plan";
    const [row, material] = [3, few[0]!.indexOf("Material")];
    host.userEdits(row, material, "Unobtainium 7");
    host.moveTo(1, 0);
    await session.writeQuote({ batch: 5 });
    expect(session.store.get().message).toMatchObject({
      kind: "done",
      action: expect.stringMatching(/^1 row without a time is not in it\./),
    });
    const sheet = host.sheets.get("Quote 2")!;
    expect(Number(sheet[1]![3])).toBeLessThan(whole);
    const from = sheet.findIndex((line) => line[0] === "Not in the total");
    expect(sheet[from]![1]).toBe("1 row has no time: not in the total");
    expect(unfold(sheet, 1).some((line) => /^Row .+: .*Unobtainium 7/.test(String(line[1])))).toBe(true);
  });
  it("says that there is nothing to add up where no row has a time", async () => {
    const { host, session } = await open();
    for (let row = 1; row < few.length; row++) host.userEdits(row, few[0]!.indexOf("Material"), "Unobtainium 7");
    await session.writeQuote({});
    expect(session.store.get().message?.action).toMatch(/^No row has a time/);
    expect(host.sheets.get("Quote")![1]![3]).toBe(0);
  });
  it("says that there is nothing to compare where no row has a time on both sides", async () => {
    const { host, session } = await open();
    for (let row = 1; row < few.length; row++) host.userEdits(row, few[0]!.indexOf("Material"), "Unobtainium 7");
    await session.writeComparison({ machine: [String(MACHINES[2]![0]), String(MACHINES[3]![0])] }, {});
    expect(session.store.get().message?.action).toMatch(/^No row has a time on both sides/);
  });
  it("leads back to the row it was written from", async () => {
    const { host, session } = await open();
    host.moveTo(4, 0);
    await session.writeQuote({});
    expect(session.store.get()).toMatchObject({ phase: "none", from: { sheet: "Plan", row: 4 } });
    await session.goBack();
    expect([host.active, host.cursor.row]).toEqual(["Plan", 4]);
    expect(session.store.get()).toMatchObject({ phase: "table", from: null });
  });
});

describe("the comparison on a sheet", () => {
  it("sets two machines side by side, with their difference and a break-even or why there is none (identity)", async () => {
    const { host, session } = await open();
    const [a, b] = [String(MACHINES[2]![0]), String(MACHINES[3]![0])];
    await session.writeComparison({ machine: [a, b] }, { batch: 20 });
    const sheet = host.sheets.get("Compare")!;
    expect(sheet[0]!.slice(1, 4)).toEqual([a, b, "Difference"]);
    // Each side is the quote of the table with that machine typed into every row.
    const at = few[0]!.indexOf("Machine");
    for (const [k, name] of [a, b].entries()) {
      const own = few.map((row, i) => row.map((c, column) => (i > 0 && column === at ? name : c)));
      const alone = QUOTE(copy(own), copy(MATERIALS), copy(TOOLS), copy(MACHINES), [[20]]);
      expect(Number(numbers(sheet, "Time per part [min]")[1 + k])).toBeCloseTo(Number(alone[1]![3]), 9);
      expect(Number(numbers(sheet, "Cost per part")[1 + k])).toBeCloseTo(Number(alone[1]![4]), 9);
    }
    const cost = numbers(sheet, "Cost per part");
    expect(Number(cost[3])).toBeCloseTo(Number(cost[2]) - Number(cost[1]), 12);
    const kinds = ["cutting", "moving", "waiting", "tool changes", "share of the setup"];
    for (const side of [1, 2]) {
      const added = kinds.reduce((sum, kind) => sum + Number(numbers(sheet, `… ${kind} [min]`)[side]), 0);
      expect(added).toBeCloseTo(Number(numbers(sheet, "Time per part [min]")[side]), 9);
    }
    const whole = unfold(sheet, 0);
    const said = String(whole[whole.findIndex((row) => row[0] === "Break-even batch") + 1]![0]);
    expect(said).toMatch(/^(?:Both cost|There is no|The costs meet)/);
  });
  it("shows counts without decimals, and a row in neither total once (identity)", async () => {
    const { host, session } = await open();
    host.userEdits(2, few[0]!.indexOf("Depth"), null);
    host.moveTo(1, 0);
    await session.writeComparison({ machine: [String(MACHINES[2]![0]), String(MACHINES[3]![0])] }, {});
    const sheet = host.sheets.get("Compare")!;
    const at = (item: string) => sheet.findIndex((row) => row[0] === item);
    expect(host.formats.get(`Compare!${at("Rows in the total")},1`)).toBe("0");
    expect(host.formats.get(`Compare!${at("Cost per part")},1`)).toBe("0.00");
    expect(numbers(sheet, "Rows not in the total").slice(1)).toEqual([1, 1, 0]);
    const said = unfold(sheet, 0).filter((row) => /^Not in the totals: row /.test(String(row[0])));
    expect(said.length).toBe(1);
    expect(session.store.get().message?.action).toMatch(/^1 row has no time/);
  });
  it("says so when a name is not in its list, and writes nothing", async () => {
    const { host, session } = await open();
    await session.writeComparison({ machine: ["Centre V4", "No such machine"] }, {});
    expect(session.store.get().message?.kind).toBe("failed");
    expect(session.store.get().message?.text).toContain("No such machine");
    expect(host.sheets.has("Compare")).toBe(false);
  });
});
