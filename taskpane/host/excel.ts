/**
 * The workbook in Excel. This file and its folder are the only ones that name Office: everything asynchronous, batched
 * and versioned about it stays in there. Each action makes one read sync and one write sync; reading makes two, one to
 * look where things are and one for these alone.
 */
import { teller } from "./excel/events.ts";
import { createSheetNames } from "./excel/names.ts";
import { reader } from "./excel/reading.ts";
import { createRuns } from "./excel/runs.ts";
import { keeper } from "./excel/settings.ts";
import { sheetWriter } from "./excel/sheets.ts";
import { shownTeller } from "./excel/shown.ts";
import { writer } from "./excel/writing.ts";
import type { Host } from "./host.ts";

export function excelHost(): Host {
  const runs = createRuns();
  const names = createSheetNames();
  return {
    kind: "excel",
    ...reader(runs, names),
    ...sheetWriter(runs),
    ...writer(runs),
    ...keeper(runs),
    ...teller(runs, names),
    ...shownTeller(),
  };
}
