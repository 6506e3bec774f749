/** Worksheet functions for the program of a planning table: the words of its rows, and a posted program compared with them. */

import { ProgramCheck } from "../src/program/check.ts";
import { tableFacts } from "../src/program/facts.ts";
import { listing } from "../src/program/listing.ts";
import { report } from "../src/program/report.ts";
import { TOOL_ZEROS, type ToolZero } from "../src/program/types.ts";
import { ENGLISH } from "../src/program/words/en.ts";
import { isBlank } from "../src/table/blank.ts";
import { oneCell, readBlocks } from "./blocks.ts";
import { CellError, content, toBlock, toCellError } from "./cells.ts";
import { optional, word } from "./params.ts";

const zeroParam = optional(word("toolZero", TOOL_ZEROS), "tip");

/** One cell that says where tools are measured to; throws what is wrong with it. */
const readZero = (toolZero: any[][] | undefined): ToolZero => zeroParam.read(oneCell("toolZero", toolZero), undefined);

/**
 * The words of ISO 6983 that each row of a planning table means, one block a cell: a plain listing to compare a posted program with. Not a program to run.
 * @customfunction
 * @remarks Cutter's centre path and feed at the centre, one feature of each row from its own centre, Z 0 at its face. G41 or G42 carries the wear value only.
 * @param rows Planning table with its heading row.
 * @param materials List of materials with its heading row.
 * @param tools List of tools with its heading row.
 * @param machines List of machines with its heading row.
 * @param [toolZero] "tip" (default) or "profile": where a thread mill's length is measured to, its tip or the middle of its lowest profile.
 * @returns Row and block, with a heading row; millimetres (G21) or inches (G20) as the row's units.
 * @example
 * =CUT.PROGRAMWORDS({"Row"}, {"Material"}, {"Tool"}, {"Machine"}, "tip") //=> #VALUE!
 */
export function PROGRAMWORDS(
  rows: any[][],
  materials: any[][],
  tools: any[][],
  machines: any[][],
  toolZero?: any[][],
): any[][] {
  const blocks = readBlocks("rows", rows, materials, tools, machines);
  if (blocks instanceof CellError) return [[blocks]];
  try {
    return [["Row", "Block"], ...listing(tableFacts(blocks), readZero(toolZero))];
  } catch (thrown) {
    return [[toCellError(thrown)]];
  }
}

/**
 * A posted program compared with the planned rows: hand, direction, pitch, path radius, edge or centre feed, speed, depth, passes, compensation, holes, and what is missing on either side.
 * @customfunction
 * @remarks Reads the words of ISO 6983 and the usual canned cycles; names what it passes over; refuses variables. Never changes a program and replaces no prove-out.
 * @param program Column of cells with one block each, or one cell with line breaks.
 * @param rows Planning table with its heading row.
 * @param materials List of materials with its heading row.
 * @param tools List of tools with its heading row.
 * @param machines List of machines with its heading row.
 * @param [toolZero] "tip" (default) or "profile": where the program's Z of a thread mill is measured to, its tip or the middle of its lowest profile.
 * @returns Block (line of the program), row, severity (ok, check, stop), code and finding, with a heading row; values in the row's units.
 * @example
 * =CUT.CHECKPROGRAM("G0 X0", {"Row"}, {"Material"}, {"Tool"}, {"Machine"}) //=> #VALUE!
 */
export function CHECKPROGRAM(
  program: any[][],
  rows: any[][],
  materials: any[][],
  tools: any[][],
  machines: any[][],
  toolZero?: any[][],
): any[][] {
  const blocks = readBlocks("rows", rows, materials, tools, machines);
  if (blocks instanceof CellError) return [[blocks]];
  try {
    const text = programText(program);
    const facts = tableFacts(blocks);
    const check = new ProgramCheck(text, facts, readZero(toolZero));
    const lines = report(check.findings(), facts[0]?.units ?? "mm");
    return [
      ["Block", "Row", "Severity", "Code", "Finding"],
      ...lines.map((line) => [line.block ?? "", line.row, line.severity, line.code, line.text]),
      ...(facts.length === 0 ? [["", "", "check", "not-in-program", ENGLISH.noRows]] : []),
    ];
  } catch (thrown) {
    return [[toCellError(thrown)]];
  }
}

/** The program's text, a line for each row of cells; blank cells are blank lines, so that lines are the rows of the range. */
function programText(program: any[][]): string {
  const lines = toBlock(program).map((row) =>
    row
      .map((cell) => {
        const value = content(cell);
        if (value instanceof CellError) throw value;
        return isBlank(value) ? "" : String(value);
      })
      .join(" ")
      .trimEnd(),
  );
  const text = lines.join("\n");
  if (text.trim() === "")
    throw new CellError("#VALUE!", "program is blank; a column of blocks, or one cell with line breaks, is wanted");
  return text;
}
