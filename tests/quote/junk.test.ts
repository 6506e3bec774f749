/** A quote of anything is a table of numbers and texts. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import { QUOTE } from "../../functions/quote.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { all, demo } from "./five.ts";

describe("a quote of anything (identity)", () => {
  const junk = fc.oneof(
    fc.constantFrom(
      null,
      "",
      "mm",
      "in",
      "drill",
      "bore",
      "thread mill",
      "face",
      "slot",
      "M6",
      "1/4-20",
      "Centre V3",
      "#N/A",
    ),
    fc.constantFrom(0, 1, 5, 1e308, -1, 1e-300, true, {}),
    fc.string(),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
  );
  const rowHeadings = DEMO[0]!;
  const sample = demo(all.filter((r) => r % 4 === 1));
  const machineHeadings = MACHINES[0]!;
  const toolHeadings = TOOLS[0]!;
  const materialHeadings = MATERIALS[0]!;
  const spoiled = (source: readonly (readonly unknown[])[], from: readonly unknown[]) =>
    fc
      .array(
        fc.tuple(fc.integer({ min: 1, max: source.length - 1 }), fc.integer({ min: 0, max: from.length - 1 }), junk),
        {
          maxLength: 12,
        },
      )
      .map((hits) => {
        const block = source.map((line) => [...line]);
        for (const [r, c, value] of hits) block[r]![c] = value;
        return block;
      });
  it("answers six columns without NaN, whatever cells it is given", () => {
    fc.assert(
      fc.property(
        spoiled(sample, rowHeadings),
        spoiled(MATERIALS, materialHeadings),
        spoiled(TOOLS, toolHeadings),
        spoiled(MACHINES, machineHeadings),
        fc.oneof({ weight: 4, arbitrary: fc.option(fc.integer({ min: 1, max: 500 })) }, { weight: 1, arbitrary: junk }),
        (rows, materials, tools, machines, batch) => {
          const block = QUOTE(rows, materials, tools, machines, [[batch]]);
          for (const line of block) {
            if (line[0] instanceof CellError) return;
            expect(line).toHaveLength(6);
            for (const cell of line) {
              expect(["number", "string"]).toContain(typeof cell);
              if (typeof cell === "number") expect(Number.isFinite(cell)).toBe(true);
              else expect(cell).not.toMatch(/NaN|undefined|Infinity|should not happen/);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });
  it("says of a feed beyond all numbers how many times the list's it is, without naming what is none", () => {
    const rows = [
      ["Row", "Operation", "Units", "Material", "Machine", "Tool", "Finish diameter", "Depth", "Feed per tooth"],
      [1, "drill", "mm", "Steel C45 (AISI 1045)", "Centre V3", "D-5.0", 5, 10, 1e308],
      [2, "ream", "mm", "Steel C45 (AISI 1045)", "Centre V3", "R-10", 10, 20, 1e308],
    ];
    const copy = (block: readonly (readonly unknown[])[]) => block.map((line) => [...line]);
    const said = QUOTE(rows, copy(MATERIALS), copy(TOOLS), copy(MACHINES)).flat().join("\n");
    expect(said).toMatch(/per turn is ∞ × the list's/);
    expect(said).not.toMatch(/Infinity|NaN/);
  });
});
