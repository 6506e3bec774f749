import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gridOf, plain } from "../../taskpane/desk/cells.ts";
import { Refused } from "../../taskpane/desk/model/refused.ts";
import type { Edit } from "../../taskpane/desk/model/types.ts";
import { modelOf, sheetOf } from "./model/make.ts";

const start = () =>
  modelOf([
    sheetOf("S", [
      ["a", "b"],
      [1, 2],
      [3, { formula: "A3*2", value: 6 }],
    ]),
  ]);

describe("the grid of a sheet", () => {
  const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
    fc.record({
      kind: fc.constant("cell" as const),
      sheet: fc.constant("S"),
      row: fc.nat(6),
      column: fc.nat(4),
      value: fc.oneof(fc.integer(), fc.string(), fc.constant(null)),
    }),
    fc.record({
      kind: fc.constantFrom("insert-rows" as const, "delete-rows" as const),
      sheet: fc.constant("S"),
      row: fc.nat(5),
      count: fc.integer({ min: 1, max: 2 }),
    }),
  );

  it("is what the cells hold after any edits, undo and redo (independent: each cell asked for)", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyEdit, fc.nat(4)), { maxLength: 14 }), (steps) => {
        const model = start();
        const sheet = model.sheet("S")!;
        for (const [edit, then] of steps) {
          gridOf(sheet);
          try {
            model.apply([edit], { by: "person" });
          } catch (problem) {
            expect(problem).toBeInstanceOf(Refused);
          }
          if (then === 1) model.undo();
          if (then === 2) model.redo();
          if (then === 3)
            model.answer("S", [
              {
                row: 2,
                column: 1,
                value: edit.kind.length,
                spill: [
                  [0, 7],
                  [8, 9],
                ],
              },
            ]);
          const { rows, columns } = sheet.used();
          const asked = Array.from({ length: rows }, (_, r) =>
            Array.from({ length: columns }, (_cell, c) => plain(model.cell("S", r, c)?.value)),
          );
          expect(gridOf(sheet)).toEqual(asked);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("keeps the rows that did not change, and all of it when nothing did", () => {
    const model = start();
    const sheet = model.sheet("S")!;
    const before = gridOf(sheet);
    expect(gridOf(sheet)).toBe(before);
    model.apply([{ kind: "cell", sheet: "S", row: 1, column: 0, value: 9 }], { by: "person" });
    const after = gridOf(sheet);
    expect([after[0] === before[0], after[1] === before[1], after[2] === before[2]]).toEqual([true, false, true]);
    expect(after[1]).toEqual([9, 2]);
  });
});
