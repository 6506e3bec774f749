/** CUT.PROGRAMWORDS and CUT.CHECKPROGRAM as cells: shapes, blanks, errors, and a program in a column or in one cell. */
import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { CHECKPROGRAM, PROGRAMWORDS } from "../../functions/program.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { HOUSING } from "../program/jobs.ts";
import { table } from "../program/shop.ts";
import { writeProgram } from "../program/writer.ts";

const lists = [MATERIALS, TOOLS, MACHINES] as unknown as [any[][], any[][], any[][]];
const rows = table(HOUSING.rows);
const text = writeProgram(HOUSING.cuts(), { name: "full", arcs: "ij 90", cycles: true });
const error = (answer: any[][]) => {
  expect(answer).toHaveLength(1);
  expect(answer[0]![0]).toBeInstanceOf(CellError);
  return answer[0]![0] as CellError;
};

describe("CUT.PROGRAMWORDS (identity)", () => {
  it("spills row and block under a heading, the caution first", () => {
    const answer = PROGRAMWORDS(rows, ...lists);
    expect(answer[0]).toEqual(["Row", "Block"]);
    expect(answer[1]![1]).toMatch(/NOT A PROGRAM TO RUN/);
    expect(answer.every((line) => line.length === 2 && typeof line[1] === "string")).toBe(true);
    expect(new Set(answer.slice(1).map((line) => line[0]))).toEqual(new Set(["", "10", "20", "30"]));
  });
  it("takes the tool zero as a word, tip when it is blank, and refuses anything else", () => {
    expect(PROGRAMWORDS(rows, ...lists, [[null]])).toEqual(PROGRAMWORDS(rows, ...lists, [[" Tip "]]));
    expect(PROGRAMWORDS(rows, ...lists, [["profile"]])).not.toEqual(PROGRAMWORDS(rows, ...lists));
    expect(error(PROGRAMWORDS(rows, ...lists, [["gauge"]])).message).toBe(
      'toolZero is "gauge"; "tip" or "profile" is allowed',
    );
    expect(error(PROGRAMWORDS(rows, ...lists, [["tip", "tip"]])).message).toMatch(/one cell/);
  });
  it("says which list is missing", () => {
    expect(error(PROGRAMWORDS(rows, [[null]], TOOLS as any[][], MACHINES as any[][])).message).toMatch(
      /materials is blank/,
    );
    expect(error(PROGRAMWORDS([["Row"]], ...lists)).message).toMatch(/no heading Operation/);
  });
});

describe("CUT.CHECKPROGRAM (identity)", () => {
  it("answers the same for a column of blocks, for one cell with line breaks, and for blocks parted over cells", () => {
    const one = CHECKPROGRAM([[text]], rows, ...lists);
    expect(one[0]).toEqual(["Block", "Row", "Severity", "Code", "Finding"]);
    const column = text
      .trimEnd()
      .split("\n")
      .map((line) => [line]);
    expect(CHECKPROGRAM(column, rows, ...lists)).toEqual(one);
    const parted = column.map(([line]) => {
      const words = line!.split(" ");
      return line!.includes("(") ? [line, null, ""] : [words[0], words.slice(1).join(" "), null];
    });
    expect(CHECKPROGRAM(parted, rows, ...lists)).toEqual(one);
    expect(one.slice(1).every((line) => line[2] === "ok")).toBe(true);
  });
  it("names the line of the range, blank cells counted", () => {
    const column = text
      .trimEnd()
      .split("\n")
      .flatMap((line) => [[line], [null]]);
    const answer = CHECKPROGRAM(column, rows, ...lists);
    for (const [block] of answer.slice(1)) expect(column[Number(block) - 1]![0]).toMatch(/^G(?:[23]|98 G83) /);
  });
  it("hands an error in a program cell on, and says when there is no program", () => {
    const broken = [["G0 X1"], [{ type: "Error", basicType: "Error", basicValue: "#N/A" }]];
    expect(error(CHECKPROGRAM(broken, rows, ...lists)).code).toBe("#N/A");
    for (const blank of [[[null]], [[""], ["  "]], [[]], undefined as any])
      expect(error(CHECKPROGRAM(blank, rows, ...lists)).message).toMatch(/program is blank/);
  });
  it("takes numbers in cells for text, and never changes the cells", () => {
    const cells = [["G0 X0 Y0 Z5"], [12], ["G1 Z-9 F100"]];
    const before = JSON.stringify(cells);
    expect(CHECKPROGRAM(cells, rows, ...lists)[0]![0]).toBe("Block");
    expect(JSON.stringify(cells)).toBe(before);
  });
  it("says so when the table has no rows", () => {
    const answer = CHECKPROGRAM([[text]], [rows[0]!], ...lists);
    expect(answer[answer.length - 1]![4]).toMatch(/no row to compare/);
  });
});
