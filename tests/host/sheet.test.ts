/** The desk's host on its model, with the calculator beside it, against the contract of all hosts. */
import { describe, expect, it } from "vitest";
import { calculate } from "../../taskpane/desk/calculating.ts";
import { createModel, type Model } from "../../taskpane/desk/model/model.ts";
import type { Book } from "../../taskpane/desk/model/types.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { type SheetHost, sheetHost } from "../../taskpane/host/sheet.ts";
import { sheetOf } from "../desk/model/make.ts";
import { type Bench, contract, SHEETS, type Sheets } from "./contract.ts";

function bookOf(sheets: Sheets): Book {
  const made = Object.entries(sheets).map(([name, rows]) => sheetOf(name, rows));
  return { sheets: made, active: 0, styles: [{ numberFormat: "General" }], names: [], date1904: false, kept: [] };
}

async function open(sheets: Sheets): Promise<Bench & { readonly host: SheetHost; readonly model: Model }> {
  const book = bookOf(sheets);
  const model = createModel(book, { locale: "en-US" });
  const calculator = calculate(model, book);
  const host = sheetHost(model);
  const settle = async () => {
    await calculator.ready();
    await Promise.resolve();
  };
  return {
    host,
    model,
    probe: {
      async type(sheet, row, column, content: CellValue) {
        const formula = typeof content === "string" && content.startsWith("=") ? content.slice(1) : undefined;
        model.apply(
          [
            {
              kind: "cell",
              sheet,
              row,
              column,
              value: formula === undefined ? content : null,
              ...(formula === undefined ? {} : { formula }),
            },
          ],
          { by: "person" },
        );
        await settle();
      },
      value: async (sheet, row, column) => host.valueAt({ sheet, row, column }),
      formula: async (sheet, row, column) => {
        const formula = model.typed(sheet, row, column)?.formula;
        return formula === undefined ? "" : `=${formula}`;
      },
      format: async (sheet, row, column) => model.style(model.typed(sheet, row, column))?.numberFormat ?? "General",
      async select(sheet, row, column) {
        model.select({ sheet, row, column });
      },
      activeSheet: async () => model.active(),
      sheets: async () => model.sheets().map((sheet) => sheet.name),
      async undo() {
        model.undo();
        await settle();
      },
      settle,
    },
    async close() {
      calculator.stop();
    },
  };
}

contract("sheet", open);

describe("the desk's host beyond the contract (independent)", () => {
  it("answers a formula of ours that the pane puts in, spilled, and gives way to nothing of it", async () => {
    const { host, model, probe } = await open(SHEETS);
    await host.insertFormula({ sheet: "Job", row: 2, column: 6 }, '=CUT.RPM({100;200},10,"mm")', [2, 1]);
    await probe.settle();
    expect(host.valueAt({ sheet: "Job", row: 3, column: 6 })).toBeCloseTo(200_000 / (10 * Math.PI), 9);
    const table = (await host.readTable((headings) => (headings.includes("Operation") ? 1 : 0)))!;
    await expect(host.writeCells(table, [{ row: 0, column: 6, value: "mine" }])).rejects.toThrow(/live results.*G3/);
    expect(model.cell("Job", 3, 6)?.spill).toEqual({ row: 2, column: 6 });
  });
  it("makes a list an ordinary table, grows it with its rows, and finds it by its name on any sheet", async () => {
    const { host, model } = await open(SHEETS);
    await host.addSheet({ name: "Tools", headings: ["Tool", "Teeth"], rows: [["T4", 2]] });
    await host.appendRows((await host.readList("Tools"))!, [["T5", 3]]);
    expect(model.sheet("Tools")!.tables).toMatchObject([
      { name: "Tools", area: { top: 0, left: 0, bottom: 2, right: 1 } },
    ]);
    model.apply([{ kind: "rename-sheet", sheet: "Tools", to: "Shelf" }], { by: "person" });
    expect((await host.readList("tools"))!.rows).toEqual([
      ["T4", 2],
      ["T5", 3],
    ]);
  });
  it("says why an error stands in a cell", async () => {
    const { host, probe } = await open(SHEETS);
    await probe.type("Job", 0, 6, '=CUT.RPM(Z99,10,"mm")');
    expect(host.valueAt({ sheet: "Job", row: 0, column: 6 })).toBe("#VALUE!");
    expect(host.reasonAt({ sheet: "Job", row: 0, column: 6 })).toMatch(/surfaceSpeed is blank/);
    expect(host.reasonAt({ sheet: "Job", row: 3, column: 2 })).toBe("");
  });
});
