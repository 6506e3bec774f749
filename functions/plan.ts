/** Worksheet function for the whole planning table: its plan, and what to change. */

import { advise, changeText } from "../src/plan/advise.ts";
import { planBlock, planMemory } from "../src/plan/table.ts";
import { readLists, readRows } from "../src/table/read.ts";
import { en } from "../src/words/en/index.ts";
import { readBlocks } from "./blocks.ts";
import { CellError, content, isBlank, toBlock } from "./cells.ts";

/** A sheet calls again at every edit, with all but one row as before. */
const memory = planMemory();

/**
 * Plan of a whole table: one line of results per row, with a heading row.
 * @customfunction
 * @param rows Planning table with its heading row.
 * @param materials List of materials with its heading row.
 * @param tools List of tools with its heading row.
 * @param machines List of machines with its heading row.
 * @returns Results with a heading row, one line per row of the table, lengths in the row's units.
 * @example
 * =CUT.PLAN({"Row"}, {"Material"}, {"Tool"}, {"Machine"}) //=> #VALUE!
 */
export function PLAN(rows: any[][], materials: any[][], tools: any[][], machines: any[][]): any[][] {
  const blocks = readBlocks("rows", rows, materials, tools, machines);
  return blocks instanceof CellError ? [[blocks]] : planBlock(blocks, memory);
}

const ADVICE_HEADINGS = [
  "Advice",
  "Change",
  "Verdict before",
  "Verdict after",
  "Limit before",
  "Load before",
  "Limit after",
  "Load after",
  "Time before",
  "Time after",
] as const;

/**
 * What to change in one row: the smallest change that makes it hold, and the fastest row that holds every limit.
 * @customfunction
 * @param row One row of the planning table.
 * @param headings The table's heading row, as wide as the row.
 * @param materials List of materials with its heading row.
 * @param tools List of tools with its heading row.
 * @param machines List of machines with its heading row.
 * @returns A heading row and one line per piece of advice, with verdict, largest load and seconds per part before and after.
 * @example
 * =CUT.ADVISE({1}, {"Row"}, {"Material"}, {"Tool"}, {"Machine"}) //=> #VALUE!
 */
export function ADVISE(
  row: any[][],
  headings: any[][],
  materials: any[][],
  tools: any[][],
  machines: any[][],
): any[][] {
  const blocks = readBlocks("headings", headings, materials, tools, machines);
  if (blocks instanceof CellError) return [[blocks]];
  const head = blocks.rows[0]!;
  const cells = toBlock(row).map((line) => line.map((cell) => content(cell)));
  if (cells.every((line) => line.every((cell) => isBlank(cell)))) {
    return [[new CellError("#VALUE!", "row is blank; one row of the planning table, as wide as headings, is allowed")]];
  }
  if (cells.length !== 1 || cells[0]!.length !== head.length) {
    const size = `${cells.length} × ${cells[0]!.length}`;
    return [
      [new CellError("#VALUE!", `row is ${size} cells; one row as wide as headings, ${head.length}, is allowed`)],
    ];
  }
  const read = readRows([head, cells[0]!])[0]!;
  const { advice } = advise(read, readLists(blocks.materials, blocks.tools, blocks.machines));
  const units = read.row.units ?? "mm";
  return [
    [...ADVICE_HEADINGS],
    ...advice.map(({ kind, changes, before, after }) => [
      kind,
      changes.map((c) => changeText(c, units)).join("; "),
      before.verdict,
      after.verdict,
      before.limit === null ? "" : en.limits[before.limit],
      before.load ?? "",
      after.limit === null ? "" : en.limits[after.limit],
      after.load ?? "",
      before.time ?? "",
      after.time ?? "",
    ]),
  ];
}
