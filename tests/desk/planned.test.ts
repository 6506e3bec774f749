/** Results that follow edits, against the worksheet function CUT.PLAN on the same cells. */
import { beforeAll, describe, expect, it } from "vitest";
import { PLAN } from "../../functions/plan.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { demo } from "../../taskpane/desk/books.ts";
import { rowOf } from "../../taskpane/desk/cells.ts";
import { createModel, type Model } from "../../taskpane/desk/model/model.ts";
import type { Cell, Edit, Sheet, Value } from "../../taskpane/desk/model/types.ts";
import { openPackage } from "../../taskpane/desk/package/open.ts";
import { keepPlanned, type Planned } from "../../taskpane/desk/planned.ts";
import type { CellValue } from "../../taskpane/host/host.ts";

let bytes: Uint8Array;
beforeAll(() => {
  bytes = demo();
});

function open(): { model: Model; planned: Planned } {
  const model = createModel(openPackage(bytes).book, { locale: "en-US" });
  return { model, planned: keepPlanned(model, () => ({ byHand: {}, asked: undefined })) };
}

const cell = (sheet: string, row: number, column: number, value: Value): Edit => ({
  kind: "cell",
  sheet,
  row,
  column,
  value,
});
const cellsOf = (model: Model, sheet: string): CellValue[][] => {
  const state = model.sheet(sheet)!;
  const { rows, columns } = state.used();
  return Array.from({ length: rows }, (_, r) => rowOf(state, r, 0, columns));
};

const RESULTS = ["Verdict", "Spindle speed", "Table feed", "Time", "Cost", "Deflection"];

/** Where the table says something else than the worksheet function. */
function differences(model: Model): string[] {
  const cells = cellsOf(model, "Plan");
  const [head = []] = cells;
  const [first, last] = [head.indexOf("Row"), head.indexOf("Reasons")];
  const list = (name: string) => cellsOf(model, name) as any[][];
  const inputs = cells.map((row) => row.slice(first, last));
  const answers = PLAN(inputs as any[][], list("Materials"), list("Tools"), list("Machines")) as CellValue[][];
  const found: string[] = [];
  cells.slice(1).forEach((row, r) => {
    for (const name of RESULTS) {
      const [mine, theirs] = [row[head.indexOf(name)] ?? "", answers[r + 1]![answers[0]!.indexOf(name)] ?? ""];
      const same =
        typeof mine === "number" && typeof theirs === "number"
          ? Math.abs(mine - theirs) <= 1e-12 * Math.abs(theirs)
          : mine === theirs;
      if (!same) found.push(`row ${r + 2}, ${name}: ${mine} for ${theirs}`);
    }
  });
  return found;
}
const column = (model: Model, heading: string) => cellsOf(model, "Plan")[0]!.indexOf(heading);

describe("results kept fresh (independent: CUT.PLAN on the same cells)", () => {
  it("are right in the demo as it comes, and nothing of it has to be mended", async () => {
    const { model, planned } = open();
    expect(differences(model)).toEqual([]);
    expect(await planned.bringUpToDate()).toBe(0);
    expect(model.unsaved()).toBe(false);
  });

  it("follow an edit at once, in its own step of undo", () => {
    const { model } = open();
    const [depth, time] = [column(model, "Depth"), column(model, "Time")];
    const before = cellsOf(model, "Plan");
    model.apply([cell("Plan", 4, depth, 13.5)], { by: "person" });
    expect(cellsOf(model, "Plan")[4]![time]).not.toBe(before[4]![time]);
    expect(differences(model)).toEqual([]);
    model.undo();
    expect(cellsOf(model, "Plan")).toEqual(before);
    expect(model.canUndo()).toBe(false);
  });

  it("follow in every row that shares the setup when a row changes its machine", async () => {
    const { model, planned } = open();
    const [machine, cost] = [column(model, "Machine"), column(model, "Cost")];
    const before = cellsOf(model, "Plan");
    const other = cellsOf(model, "Machines").map((row) => row[0])[2]!;
    model.apply([cell("Plan", 1, machine, other)], { by: "person" });
    await planned.settled();
    expect(differences(model)).toEqual([]);
    const moved = cellsOf(model, "Plan").filter((row, r) => r > 1 && row[cost] !== before[r]![cost]);
    expect(moved.length).toBeGreaterThan(1);
    model.undo();
    await planned.settled();
    expect(cellsOf(model, "Plan")).toEqual(before);
  });

  it("follow in the row that finishes the wall of the one that is edited, and when that one goes", async () => {
    const { model, planned } = open();
    const [depth, bent] = [column(model, "Depth"), column(model, "Deflection")];
    const before = cellsOf(model, "Plan");
    const [rough, finish] = [2, 3];
    expect(before[finish]![column(model, "Start diameter")]).toBe(before[rough]![column(model, "Finish diameter")]);
    const settledTo = async (edit: Edit) => {
      model.apply([edit], { by: "person" });
      await planned.settled();
      expect(differences(model)).toEqual([]);
    };
    await settledTo(cell("Plan", rough, depth, 25));
    expect(cellsOf(model, "Plan")[finish]![bent]).not.toBe(before[finish]![bent]);
    model.undo();
    await planned.settled();
    expect(cellsOf(model, "Plan")).toEqual(before);
    await settledTo(cell("Plan", rough, column(model, "Finish diameter"), 39.3));
    await settledTo(cell("Plan", rough, column(model, "Finish diameter"), 39.4));
    await settledTo({ kind: "delete-rows", sheet: "Plan", row: rough, count: 1 });
  });

  it("follow a list: a machine that costs twice as much", async () => {
    const { model, planned } = open();
    const machines = cellsOf(model, "Machines");
    const rate = machines[0]!.indexOf("Rate [per hour]");
    model.apply([cell("Machines", 1, rate, 2 * Number(machines[1]![rate]))], { by: "person" });
    await planned.settled();
    expect(differences(model)).toEqual([]);
    model.undo();
    await planned.settled();
    expect(differences(model)).toEqual([]);
  });

  it("come in rows that still wait when another row is put in or deleted", async () => {
    const { model, planned } = open();
    const machines = cellsOf(model, "Machines");
    const rate = machines[0]!.indexOf("Rate [per hour]");
    const partly = async (times: number) => {
      model.apply([cell("Machines", 1, rate, times * Number(machines[1]![rate]))], { by: "person" });
      const all = planned.waiting();
      await new Promise<void>((resolve) => planned.onWaiting((left) => left < all && resolve()));
      expect(planned.waiting()).toBeGreaterThan(0);
    };
    // A row of another machine: the share of the setup stays for those that wait.
    const [name, at] = [machines[1]![0], column(model, "Machine")];
    const other = cellsOf(model, "Plan").findIndex((row, r) => r > 0 && row[at] !== name);
    await partly(3);
    model.apply([{ kind: "delete-rows", sheet: "Plan", row: other, count: 1 }], { by: "person" });
    await planned.settled();
    expect(differences(model)).toEqual([]);
    await partly(5);
    model.apply([{ kind: "insert-rows", sheet: "Plan", row: 30, count: 1 }], { by: "person" });
    await planned.settled();
    expect(differences(model).filter((text) => !text.startsWith("row 31,"))).toEqual([]);
  });

  it("go with a row that is emptied or deleted, and come with one that is put in", async () => {
    const { model, planned } = open();
    const head = cellsOf(model, "Plan")[0]!;
    const last = head.indexOf("Reasons");
    const empty = Array.from({ length: last - 2 }, (_, i) => cell("Plan", 3, i + 2, null));
    model.apply(empty, { by: "person" });
    await planned.settled();
    const row = cellsOf(model, "Plan")[3]!;
    expect(row[0]).toBeNull();
    expect(row.slice(last).filter((value) => value !== null)).toEqual([]);
    model.apply([{ kind: "delete-rows", sheet: "Plan", row: 5, count: 2 }], { by: "person" });
    await planned.settled();
    expect(differences(model).filter((text) => !text.startsWith("row 4,"))).toEqual([]);
    model.apply([{ kind: "insert-rows", sheet: "Plan", row: 6, count: 1 }], { by: "person" });
    const given = cellsOf(model, "Plan")[7]!.slice(1, last);
    model.apply(
      given.flatMap((value, c) => (value === null ? [] : [cell("Plan", 6, c + 1, value)])),
      { by: "person" },
    );
    await planned.settled();
    expect(cellsOf(model, "Plan")[6]![0]).not.toBeNull();
    expect(differences(model).filter((text) => !text.startsWith("row 4,"))).toEqual([]);
  });

  it("are mended where another program changed inputs and left the results", async () => {
    const { model, planned } = open();
    planned.destroy();
    const depth = column(model, "Depth");
    model.apply([cell("Plan", 4, depth, 13.5)], { by: "person" });
    expect(differences(model).length).toBeGreaterThan(0);
    const next = keepPlanned(model, () => ({ byHand: {}, asked: undefined }));
    expect(await next.bringUpToDate()).toBeGreaterThan(0);
    expect(differences(model)).toEqual([]);
  });

  it("carry their basis, and a mark that is empty while it holds", () => {
    const { model } = open();
    const [basis, changed, depth] = [column(model, "Basis"), column(model, "Changed"), column(model, "Depth")];
    model.apply([cell("Plan", 4, depth, 13.5)], { by: "person" });
    expect(String(model.typed("Plan", 4, basis)?.value)).toMatch(/^of .*\|13500000\|/);
    expect(model.typed("Plan", 4, changed)).toMatchObject({ value: "" });
    expect(model.typed("Plan", 4, changed)!.formula).toMatch(/^IF\(OR\([A-Z]+5=/);
  });
});

describe("a shop's own numbers (identity)", () => {
  const cells = new Map<number, Map<number, Cell>>();
  const rows: CellValue[][] = [
    ["Op", "Operation", "Material", "Units", "Dia", "Depth", "RPM"],
    [10, "drill", String(MATERIALS[1]![0]), "mm", 8, 20, 1234],
  ];
  rows.forEach((row, r) => {
    cells.set(r, new Map(row.flatMap((value, c) => (value === null ? [] : [[c, { value }] as const]))));
  });
  const sheet = (name: string, own: Map<number, Map<number, Cell>>): Sheet => ({
    name,
    state: "visible",
    cells: own,
    widths: new Map(),
    hiddenColumns: new Set(),
    hiddenRows: new Set(),
    frozen: { rows: 0, columns: 0 },
    merges: [],
    choices: [],
    tables: [],
    protected: false,
    kept: [],
  });

  it("are never written over in a table that was not filled from here", async () => {
    const model = createModel(
      {
        sheets: [sheet("Job", cells)],
        active: 0,
        styles: [{ numberFormat: "General" }],
        names: [],
        date1904: false,
        kept: [],
      },
      { locale: "en-US" },
    );
    const planned = keepPlanned(model, () => ({ byHand: {}, asked: undefined }));
    model.apply([cell("Job", 1, 5, 25)], { by: "person" });
    await planned.settled();
    expect(await planned.bringUpToDate()).toBe(0);
    expect(planned.sites()).toEqual([]);
    expect(model.typed("Job", 1, 6)?.value).toBe(1234);
    expect([MACHINES.length, TOOLS.length].every((n) => n > 1)).toBe(true);
  });
});
