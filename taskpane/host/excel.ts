/**
 * The workbook in Excel. This file and its folder are the only ones that name Office: everything asynchronous, batched
 * and versioned about it stays in there. Each action makes one read sync and one write sync (a list: two reads, as it
 * may be missing).
 */
import { teller } from "./excel/events.ts";
import { reader } from "./excel/reading.ts";
import { createRuns } from "./excel/runs.ts";
import { sheetWriter } from "./excel/sheets.ts";
import { writer } from "./excel/writing.ts";
import type { Host } from "./host.ts";

export function excelHost(): Host {
  const runs = createRuns();
  return { kind: "excel", ...reader(runs), ...sheetWriter(runs), ...writer(runs), ...teller(runs) };
}
