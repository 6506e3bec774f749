/** Where a text stands in the workbook. */
import type { Place } from "./address.ts";
import type { Model } from "./model.ts";

/** More than these nobody walks through. */
const MOST = 10_000;

/** Cells whose shown text, exact value or formula holds the text, without regard to case; the sheet given comes first. */
export function findText(model: Model, text: string, first: string): Place[] {
  const wanted = text.trim().toLowerCase();
  if (wanted === "") return [];
  const found: Place[] = [];
  const visible = model.sheets().filter((one) => one.state === "visible");
  const order = [...visible.filter((one) => one.name === first), ...visible.filter((one) => one.name !== first)];
  for (const sheet of order) {
    const rows = [...new Set([...sheet.cells.keys(), ...sheet.spills.keys()])].sort((a, b) => a - b);
    for (const row of rows) {
      const columns = [...new Set([...(sheet.cells.get(row)?.keys() ?? []), ...(sheet.spills.get(row)?.keys() ?? [])])];
      for (const column of columns.sort((a, b) => a - b)) {
        const has =
          model.shown(sheet.name, row, column).toLowerCase().includes(wanted) ||
          model.editable(sheet.name, row, column).toLowerCase().includes(wanted);
        if (has) found.push({ sheet: sheet.name, row, column });
        if (found.length >= MOST) return found;
      }
    }
  }
  return found;
}
