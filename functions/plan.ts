/** Worksheet function for the whole planning table: its plan, and what to change. */

import { advise, type Outcome } from "../src/plan/advise.ts";
import { planBlock, planMemory } from "../src/plan/table.ts";
import { isBlank } from "../src/table/blank.ts";
import { readLists, readRows } from "../src/table/read.ts";
import { changeText, nothingText } from "../src/words/advice.ts";
import { en } from "../src/words/en/index.ts";
import { readBlocks } from "./blocks.ts";
import { CellError, content, toBlock } from "./cells.ts";

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
  "Cost before",
  "Cost after",
] as const;

/**
 * What to change in one row: the smallest change that makes it hold, and the cheapest row that holds every limit.
 * @customfunction
 * @param row One row of the planning table.
 * @param headings The table's heading row, as wide as the row.
 * @param materials List of materials with its heading row.
 * @param tools List of tools with its heading row.
 * @param machines List of machines with its heading row.
 * @returns A heading row and one line per piece of advice, with verdict, largest load, seconds and money per part before and after.
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
  const { advice, base, open } = advise(read, readLists(blocks.materials, blocks.tools, blocks.machines));
  const units = read.row.units ?? "mm";
  const nothing = base === undefined ? "" : nothingText(open, base, en);
  return [
    [...ADVICE_HEADINGS],
    ...advice.map(({ kind, changes, before, after }) => [
      en.advice.kinds[kind],
      changes.map((c) => changeText(c, units, en)).join("; "),
      ...adviceCells(before, after),
    ]),
    ...(nothing === "" ? [] : [[en.advice.kinds.nothing, nothing, ...ADVICE_HEADINGS.slice(2).map(() => "")]]),
  ];
}

const adviceCells = (before: Outcome, after: Outcome) => [
  before.verdict,
  after.verdict,
  ...[before, after].flatMap(({ limit, load }) => [limit === null ? "" : en.limits[limit], load ?? ""]),
  ...[before.time, after.time, before.cost, after.cost].map((value) => value ?? ""),
];
