/** Lists are written as text tables, one line per row and "|" between the cells; this reads them. */

type Cell = string | number | null;

const NUMBER = /^-?\d+(?:\.\d+)?$/;

/** Cells of a text table: blank is null, what looks like a decimal number is one, everything else is text. */
export function readTable(text: string): Cell[][] {
  return text
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) =>
      line.split("|").map((cell) => {
        const word = cell.trim();
        return word === "" ? null : NUMBER.test(word) ? Number(word) : word;
      }),
    );
}
