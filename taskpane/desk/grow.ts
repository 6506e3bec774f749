/** Rows typed or pasted below the range of the live block are taken into it. */
import type { SheetHost } from "../host/sheet.ts";
import { planningScore } from "../work/planning.ts";
import { SPARE_ROWS } from "./book.ts";
import type { facade } from "./engine.ts";

const LIVE = /^(=CUT\.PLAN\((?:'(?:[^']|'')+'!|[A-Za-z_][\w.]*!)?\$?[A-Z]+\$?\d+:\$?[A-Z]+\$?)(\d+)(?=,)/i;
/** The formula that repeats a column of the block: its end grows with it. */
const COPY = /^(=\$[A-Z]+\$\d+:\$[A-Z]+\$)(\d+)(?=&""$)/i;

/** @returns whether the block had to grow */
export async function growLive(api: ReturnType<typeof facade>, host: SheetHost): Promise<boolean> {
  const sheet = api.getActiveWorkbook()?.getActiveSheet();
  if (!sheet) return false;
  const name = sheet.getSheetName();
  const table = await host.readTable(planningScore);
  if (!table || table.sheet !== name) return false;
  const end = table.top + 1 + table.rows.length;
  const last = sheet.getLastColumn();
  const row = sheet.getRange(table.top, 0, 1, last + 1).getFormulas()[0] ?? [];
  const live = row.findIndex((formula) => LIVE.test(formula));
  const match = live < 0 ? null : LIVE.exec(row[live]!);
  const covered = Number(match?.[2]);
  if (!match || covered >= end) return false;
  const wanted = end + SPARE_ROWS;
  const more = wanted - sheet.getMaxRows();
  if (more > 0) sheet.insertRowsAfter(sheet.getMaxRows() - 1, more);
  // The look of the last row that was covered goes on below it.
  const styles = sheet.getRange(covered - 1, 0, 1, last + 1).getCellDatas()[0] ?? [];
  styles.forEach((cell, column) => {
    const style = sheet.getRange(covered - 1, column).getCellStyleData();
    const pattern = style?.n?.pattern;
    if (cell?.s && pattern) sheet.getRange(covered, column, wanted - covered, 1).setNumberFormat(pattern);
  });
  row.forEach((formula, column) => {
    const found = column === live ? match : COPY.exec(formula);
    if (!found || Number(found[2]) !== covered) return;
    sheet.getRange(table.top, column).setValue({ f: `${found[1]}${wanted}${formula.slice(found[0].length)}`, v: null });
  });
  return true;
}
