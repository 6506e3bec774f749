/** Every kind of object that the API shows. */
import { CHART } from "./kinds/chart.ts";
import { PAGE } from "./kinds/page.ts";
import { RANGE } from "./kinds/range.ts";
import { SHEET } from "./kinds/sheet.ts";
import { TABLE } from "./kinds/table.ts";
import { WORKBOOK } from "./kinds/workbook.ts";
import type { Kind } from "./types.ts";

export const KINDS: Record<string, Kind> = { ...WORKBOOK, ...SHEET, ...PAGE, ...CHART, ...RANGE, ...TABLE };
