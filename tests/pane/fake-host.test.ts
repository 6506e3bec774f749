/** The pane's tests stand on this workbook in memory, so it keeps the contract that the real ones keep. */
import { type Bench, contract, type Sheets } from "../host/contract.ts";
import { fakeHost } from "./fake-host.ts";

contract("the pane's fake", async (sheets: Sheets): Promise<Bench> => {
  const host = fakeHost(
    Object.fromEntries(Object.entries(sheets).map(([name, rows]) => [name, rows.map((r) => [...r])])),
  );
  const key = (sheet: string, row: number, column: number) => `${sheet}!${row},${column}`;
  return {
    host,
    probe: {
      async type(sheet, row, column, content) {
        const before = host.active;
        host.active = sheet;
        const formula = typeof content === "string" && content.startsWith("=") ? content : undefined;
        host.userEdits(row, column, formula === undefined ? content : "");
        if (formula !== undefined) host.formulas.set(key(sheet, row, column), formula);
        host.active = before;
      },
      value: async (sheet, row, column) => host.sheets.get(sheet)?.[row]?.[column] ?? null,
      formula: async (sheet, row, column) => host.formulas.get(key(sheet, row, column)) ?? "",
      format: async (sheet, row, column) => host.formats.get(key(sheet, row, column)) ?? "General",
      async select(sheet, row, column) {
        host.active = sheet;
        host.moveTo(row, column);
      },
      activeSheet: async () => host.active,
      sheets: async () => [...host.sheets.keys()],
      // Everything here happens at once.
      settle: async () => {},
    },
    close: async () => {},
  };
});
