/** Worksheet function for the quote of a whole planning table. */

import { QUOTE_HEADINGS, quoteCells } from "../src/quote/lines.ts";
import { quoteTable } from "../src/quote/quote.ts";
import { LARGEST_BATCH } from "../src/quote/rows.ts";
import { oneCell, readBlocks } from "./blocks.ts";
import { CellError, toCellError } from "./cells.ts";
import { count, optional } from "./params.ts";

const batchParam = optional(count("batch", 1, LARGEST_BATCH));

/**
 * Quote of a planning table: time and cost of a part by operation, machine and tool, its range, what is not in it and what was assumed.
 * @customfunction
 * @remarks Share is of the money, or of the time where no machine has a rate. The range is a judgement from stated uncertainties.
 * @param rows Planning table with its heading row.
 * @param materials List of materials with its heading row.
 * @param tools List of tools with its heading row.
 * @param machines List of machines with its heading row.
 * @param [batch] Parts per batch for every row; each row's own Batch when blank.
 * @returns Lines of section, item, count, minutes, money and share, with a heading row.
 * @example
 * =CUT.QUOTE({"Row"}, {"Material"}, {"Tool"}, {"Machine"}, 25) //=> #VALUE!
 */
export function QUOTE(rows: any[][], materials: any[][], tools: any[][], machines: any[][], batch?: any[][]): any[][] {
  const blocks = readBlocks("rows", rows, materials, tools, machines);
  if (blocks instanceof CellError) return [[blocks]];
  try {
    const lot = batchParam.read(oneCell("batch", batch), undefined);
    const summary = quoteTable(blocks, { batch: lot });
    return [[...QUOTE_HEADINGS], ...quoteCells(summary)];
  } catch (thrown) {
    return [[toCellError(thrown)]];
  }
}
