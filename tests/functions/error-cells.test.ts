/** Error values in the cells of tables: Excel hands them over, and each spoils the row it stands in. */
import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { ADVISE, PLAN } from "../../functions/plan.ts";
import { QUOTE } from "../../functions/quote.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";

type Block = unknown[][];
/** The ways in which hosts write #N/A. */
const FORMS: Readonly<Record<string, unknown>> = {
  "an object of the functions' runtime": { code: "#N/A", message: "" },
  "an error data type": { type: "Error", basicType: "Error", basicValue: "#N/A", errorType: "NotAvailable" },
  text: "#N/A",
  "an error of another function of ours": new CellError("#N/A", "thread M99 is not known"),
};
const copy = (block: readonly (readonly unknown[])[]): Block => block.map((row) => [...row]);
const lists = () => [copy(MATERIALS), copy(TOOLS), copy(MACHINES)] as [Block, Block, Block];
const at = (heading: string) => DEMO[0]!.indexOf(heading);
const rows = () => copy(DEMO);
const plan = (table: Block, [materials, tools, machines]: [Block, Block, Block]) =>
  PLAN(table, materials, tools, machines);
const verdictAt = plan(rows(), lists())[0]!.indexOf("Verdict");

describe.each(Object.entries(FORMS))("#N/A as %s (identity)", (_, error) => {
  it("in a cell of a row stops that row, with the heading and the error in its reason, and no other", () => {
    const before = plan(rows(), lists());
    for (const heading of ["Depth", "Material", "Tool", "Units", "Through", "Operation", "Passes"]) {
      const table = rows();
      table[4]![at(heading)] = error;
      const after = plan(table, lists());
      expect(after.length).toBe(before.length);
      after.forEach((line, r) => {
        if (r !== 4) expect(line, `${heading}, row ${r}`).toEqual(before[r]);
      });
      expect(after[4]![verdictAt], heading).toBe("stop");
      expect(after[4]!.join(" "), heading).toMatch(new RegExp(`${heading} is "?#N/A`));
    }
  });

  it("in a row of a list reaches the rows that name it, and no other", () => {
    const before = plan(rows(), lists());
    let touched = 0;
    for (const [list, heading, column] of [
      [0, "Material", 3],
      [1, "Tool", 3],
      [2, "Machine", 2],
    ] as const) {
      const named = String(DEMO[3]![at(heading)]);
      const broken = lists();
      const row = broken[list].findIndex((line) => line[0] === named);
      expect(row, `${heading} "${named}" is in its list`).toBeGreaterThan(0);
      broken[list][row]![column] = error;
      const after = plan(rows(), broken);
      expect(after.length).toBe(before.length);
      after.forEach((line, r) => {
        // A row that names no tool looks through the whole list.
        if (r > 0 && (DEMO[r]![at(heading)] === named || DEMO[r]![at("Tool")] === null)) touched++;
        else expect(line, `${heading}, row ${r}`).toEqual(before[r]);
      });
    }
    expect(touched).toBeGreaterThan(2);
  });

  it("in the name of a list's row leaves the rest of the list", () => {
    const before = plan(rows(), lists());
    const broken = lists();
    broken[1][1]![0] = error;
    const gone = TOOLS[1]![0];
    const after = plan(rows(), broken);
    after.forEach((line, r) => {
      if (r === 0 || (DEMO[r]![at("Tool")] !== gone && DEMO[r]![at("Tool")] !== null))
        expect(line, `row ${r}`).toEqual(before[r]);
    });
  });

  it("leaves quote and advice standing", () => {
    const table = rows();
    table[4]![at("Depth")] = error;
    const quote = QUOTE(table, ...lists());
    expect(quote[0]![0]).toBe("Section");
    expect(quote.flat().some((cell) => cell instanceof CellError)).toBe(false);
    const row = [...DEMO[1]!] as unknown[];
    row[at("Depth")] = error;
    const advice = ADVISE([row], [[...DEMO[0]!]], ...lists());
    expect(advice[0]![0]).toBe("Advice");
  });
});
