import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clearEdits, copyBlock, enterEdits, fillEdits, pasteEdits } from "../../../taskpane/desk/model/blocks.ts";
import { findText } from "../../../taskpane/desk/model/find.ts";
import { Refused } from "../../../taskpane/desk/model/refused.ts";
import { regionAt, sortEdits } from "../../../taskpane/desk/model/tables.ts";
import { type Edit, LAST_ROW } from "../../../taskpane/desk/model/types.ts";
import { modelOf, sheetOf, snapshot, table } from "./make.ts";

const person = { by: "person" } as const;
const cell = (sheet: string, row: number, column: number, value: string | number | null): Edit => ({
  kind: "cell",
  sheet,
  row,
  column,
  value,
});
const code = (work: () => void): string | undefined => {
  try {
    work();
  } catch (problem) {
    if (problem instanceof Refused) return problem.code;
    throw problem;
  }
  return undefined;
};
const formula = (model: ReturnType<typeof modelOf>, row: number, column: number, sheet = "S") =>
  model.typed(sheet, row, column)?.formula;

describe("steps of undo (identity)", () => {
  const start = () =>
    modelOf([
      sheetOf(
        "S",
        [
          ["a", "b"],
          [1, 2],
          [3, { formula: "A3*2+Other!A1" }],
        ],
        { tables: [table("T", 0, 0, 2, 1)] },
      ),
      sheetOf("Other", [[{ formula: "S!A2+SUM(S!A2:A3)" }]]),
    ]);
  const anyEdit: fc.Arbitrary<Edit> = fc.oneof(
    fc.record({
      kind: fc.constant("cell" as const),
      sheet: fc.constantFrom("S", "Other"),
      row: fc.nat(6),
      column: fc.nat(4),
      value: fc.oneof(fc.integer(), fc.string(), fc.constant(null)),
      numberFormat: fc.constantFrom(undefined, "0.00", "General"),
    }),
    fc.record({
      kind: fc.constant("insert-rows" as const),
      sheet: fc.constantFrom("S", "Other"),
      row: fc.nat(5),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    fc.record({
      kind: fc.constant("delete-rows" as const),
      sheet: fc.constantFrom("S", "Other"),
      row: fc.nat(5),
      count: fc.integer({ min: 1, max: 2 }),
    }),
    fc.record({ kind: fc.constant("width" as const), sheet: fc.constant("S"), column: fc.nat(3), width: fc.nat(40) }),
    fc.record({
      kind: fc.constant("rename-sheet" as const),
      sheet: fc.constant("S"),
      to: fc.constantFrom("S", "My plan", "Q"),
    }),
    fc.record({ kind: fc.constant("add-sheet" as const), sheet: fc.constantFrom("New", "Other") }),
  );

  it("takes any steps back to where they began and does them again to where they ended", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.array(anyEdit, { minLength: 1, maxLength: 3 }), fc.boolean()), { maxLength: 12 }),
        (steps) => {
          const model = start();
          const states = [snapshot(model)];
          for (const [edits, joins] of steps) {
            const before = snapshot(model);
            const had = model.steps().length;
            try {
              model.apply(edits, { by: joins ? "planner" : "person", joins });
            } catch (problem) {
              // Refused: nothing has changed.
              expect(problem).toBeInstanceOf(Refused);
              expect(snapshot(model)).toEqual(before);
            }
            if (model.steps().length > had) states.push(snapshot(model));
            else states[states.length - 1] = snapshot(model);
          }
          const end = snapshot(model);
          for (let i = states.length - 1; i > 0; i--) {
            expect(snapshot(model)).toEqual(states[i]);
            expect(model.undo()).toBeDefined();
          }
          expect(model.canUndo()).toBe(false);
          expect(snapshot(model)).toEqual(states[0]);
          while (model.redo());
          expect(snapshot(model)).toEqual(end);
        },
      ),
      { numRuns: 300 },
    );
  });

  it("brings a row's only cell back that was emptied after rows above it had gone", () => {
    const model = start();
    model.apply([{ kind: "cell", sheet: "Other", row: 5, column: 4, value: "kept" }], person);
    model.apply([{ kind: "delete-rows", sheet: "Other", row: 1, count: 1 }], person);
    model.apply([{ kind: "cell", sheet: "Other", row: 4, column: 4, value: null }], person);
    model.undo();
    model.undo();
    expect(model.typed("Other", 5, 4)?.value).toBe("kept");
    model.redo();
    expect(model.typed("Other", 4, 4)?.value).toBe("kept");
  });

  it("lists edits that lead from the file to the same workbook (independent: replayed on a fresh one)", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyEdit, fc.nat(5)), { maxLength: 20 }), (steps) => {
        const model = start();
        for (const [edit, undo] of steps) {
          code(() => model.apply([edit], person));
          if (undo === 0) model.undo();
        }
        const fresh = start();
        if (model.edits().length > 0) fresh.apply(model.edits(), person);
        expect(snapshot(fresh)).toEqual(snapshot(model));
      }),
      { numRuns: 300 },
    );
  });

  it("puts what joins into the step before it, and does not lose redo when it comes after an undo", () => {
    const model = start();
    model.apply([cell("S", 1, 0, 10)], person);
    model.apply([cell("S", 1, 5, "ok")], { by: "planner", joins: true });
    model.apply([cell("S", 1, 0, 11)], person);
    model.undo();
    model.apply([cell("S", 1, 5, "check")], { by: "planner", joins: true });
    expect(model.canRedo()).toBe(true);
    model.redo();
    expect(model.typed("S", 1, 0)?.value).toBe(11);
    model.undo();
    model.undo();
    expect([model.typed("S", 1, 0)?.value, model.typed("S", 1, 5)]).toEqual([1, undefined]);
  });

  it("knows every kind of edit as unsaved, and what an undo leads back to as saved", () => {
    const kinds: Edit[] = [
      cell("S", 8, 8, 1),
      { kind: "cell", sheet: "S", row: 1, column: 0, value: 1, numberFormat: "0.000" },
      { kind: "insert-rows", sheet: "S", row: 1, count: 1 },
      { kind: "delete-rows", sheet: "S", row: 1, count: 1 },
      { kind: "table-area", sheet: "S", table: "T", area: { top: 0, left: 0, bottom: 4, right: 1 } },
      { kind: "width", sheet: "S", column: 1, width: 30 },
      { kind: "choices", sheet: "S", choices: { areas: [{ top: 1, left: 0, bottom: 5, right: 0 }], words: ["x"] } },
      { kind: "add-sheet", sheet: "New" },
      { kind: "rename-sheet", sheet: "S", to: "Z" },
      { kind: "hide-columns", sheet: "S", columns: [1], hidden: true },
    ];
    for (const edit of kinds) {
      const model = start();
      expect(model.unsaved()).toBe(false);
      model.apply([edit], person);
      expect(model.unsaved(), edit.kind).toBe(true);
      model.markSaved();
      expect(model.unsaved()).toBe(false);
      model.undo();
      expect(model.unsaved(), `${edit.kind} undone`).toBe(true);
      model.redo();
      expect(model.unsaved()).toBe(false);
    }
  });

  it("tells once which cells changed, and does nothing for what is there already", () => {
    const model = start();
    const told: number[] = [];
    model.onChange((change) => told.push(change.cells.length));
    model.apply([cell("S", 1, 0, 1)], person);
    expect(told).toEqual([]);
    model.apply([cell("S", 1, 0, 5), cell("S", 2, 0, 6)], person);
    expect(told).toEqual([2]);
  });
});

describe("rows (independent: worked out by hand)", () => {
  const start = () =>
    modelOf(
      [
        sheetOf(
          "S",
          [
            ["h", "x"],
            [1, { formula: "A2*2" }],
            [2, { formula: "A3*2" }],
            [3, { formula: "SUM(A2:A4)" }],
          ],
          {
            tables: [table("T", 0, 0, 3, 1)],
            choices: [{ areas: [{ top: 1, left: 0, bottom: LAST_ROW, right: 0 }], source: "$D$1:$D$4" }],
            merges: [{ top: 6, left: 0, bottom: 7, right: 1 }],
          },
        ),
        sheetOf("Other", [[{ formula: "S!A3+A3" }]]),
      ],
      { names: [{ name: "all", formula: "S!$A$2:$A$4" }] },
    );

  it("moves everything that points at them when some are inserted", () => {
    const model = start();
    model.apply([{ kind: "insert-rows", sheet: "S", row: 2, count: 2 }], person);
    expect([formula(model, 1, 1), formula(model, 4, 1), formula(model, 5, 1)]).toEqual(["A2*2", "A5*2", "SUM(A2:A6)"]);
    expect(formula(model, 0, 0, "Other")).toBe("S!A5+A3");
    expect(model.names()[0]!.formula).toBe("S!$A$2:$A$6");
    const sheet = model.sheet("S")!;
    expect(sheet.tables[0]!.area.bottom).toBe(5);
    expect(sheet.merges[0]!.top).toBe(8);
    expect(sheet.choices[0]).toMatchObject({ source: "$D$1:$D$6", areas: [{ top: 1, bottom: LAST_ROW }] });
  });

  it("shrinks ranges and marks what is lost when some are deleted", () => {
    const model = start();
    model.apply([{ kind: "delete-rows", sheet: "S", row: 2, count: 1 }], person);
    expect(formula(model, 2, 1)).toBe("SUM(A2:A3)");
    expect(formula(model, 0, 0, "Other")).toBe("S!#REF!+A3".replace("S!", ""));
    expect(model.sheet("S")!.tables[0]!.area.bottom).toBe(2);
  });

  it("keeps a table's headings and its last row", () => {
    expect(code(() => start().apply([{ kind: "delete-rows", sheet: "S", row: 0, count: 1 }], person))).toBe("table");
    expect(code(() => start().apply([{ kind: "delete-rows", sheet: "S", row: 1, count: 3 }], person))).toBe("table");
    expect(code(() => start().apply([{ kind: "delete-rows", sheet: "S", row: 1, count: 2 }], person))).toBeUndefined();
    expect(code(() => start().apply([{ kind: "delete-rows", sheet: "S", row: 0, count: 4 }], person))).toBeUndefined();
  });
});

describe("what is refused, whole", () => {
  it("protects locked cells, members of array formulas and covered cells", () => {
    const area = { top: 0, left: 3, bottom: 2, right: 3 };
    const model = modelOf(
      [
        sheetOf("S", [[1, null, null, { formula: "SEQUENCE(3)", value: 1, array: { area, dynamic: false } }]], {
          merges: [{ top: 4, left: 0, bottom: 5, right: 1 }],
        }),
        sheetOf("Locked", [[{ value: 1, style: 1 }, 2]], { protected: true }),
      ],
      { styles: [{ numberFormat: "General" }, { numberFormat: "General", locked: false }] },
    );
    expect(code(() => model.apply([cell("S", 0, 0, 9), cell("S", 1, 3, 5)], person))).toBe("array");
    expect(model.typed("S", 0, 0)?.value).toBe(1);
    expect(code(() => model.apply([cell("S", 5, 1, 5)], person))).toBe("merged");
    expect(code(() => model.apply([cell("S", 4, 0, 5)], person))).toBeUndefined();
    expect(code(() => model.apply([cell("Locked", 0, 1, 5)], person))).toBe("locked");
    expect(code(() => model.apply([cell("Locked", 0, 0, 5)], person))).toBeUndefined();
    expect(code(() => model.apply([cell("S", LAST_ROW + 1, 0, 5)], person))).toBe("outside");
    expect(code(() => model.apply([{ kind: "insert-rows", sheet: "S", row: 1, count: 1 }], person))).toBe("array");
    expect(code(() => model.apply([{ kind: "add-sheet", sheet: "locked" }], person))).toBe("name");
    expect(code(() => model.apply([{ kind: "rename-sheet", sheet: "S", to: "a/b" }], person))).toBe("name");
    expect(code(() => model.read("x".repeat(32_768), "S", 0, 0) as unknown as undefined)).toBe("long");
  });

  it("asks the file first", () => {
    const model = modelOf([sheetOf("S", [[1]])], { cannotStore: (edit) => (edit.kind === "cell" ? "No." : undefined) });
    expect(code(() => model.apply([cell("S", 0, 0, 2)], person))).toBe("file");
  });
});

describe("blocks", () => {
  const start = () =>
    modelOf(
      [
        sheetOf(
          "S",
          [
            ["Row", "Dia", "Twice"],
            [10, { value: 5, style: 1 }, { formula: "B2*2" }],
            [20, { value: 6, style: 1 }, { formula: "B3*2" }],
          ],
          { tables: [table("T", 0, 0, 2, 2)] },
        ),
      ],
      { styles: [{ numberFormat: "General" }, { numberFormat: "0.000" }] },
    );

  it("grows a table by the row under it, with formats and formulas of its columns", () => {
    const model = start();
    const { edits } = enterEdits(model, "S", 3, 1, "7");
    model.apply(edits, person);
    expect(model.sheet("S")!.tables[0]!.area.bottom).toBe(3);
    expect(formula(model, 3, 2)).toBe("B4*2");
    expect(model.shown("S", 3, 1)).toBe("7.000");
    model.undo();
    expect(model.sheet("S")!.tables[0]!.area.bottom).toBe(2);
  });

  it("does not grow over what is not its own, nor two rows below", () => {
    const model = start();
    model.apply([cell("S", 3, 0, "a note")], person);
    model.apply(enterEdits(model, "S", 3, 1, "7").edits, person);
    expect(model.sheet("S")!.tables[0]!.area.bottom).toBe(2);
    const other = start();
    other.apply(enterEdits(other, "S", 4, 1, "7").edits, person);
    expect(other.sheet("S")!.tables[0]!.area.bottom).toBe(2);
  });

  it("gives a table's column the name that is typed into its heading", () => {
    const model = start();
    model.apply(enterEdits(model, "S", 0, 1, "Diameter").edits, person);
    expect(model.sheet("S")!.tables[0]!.columns).toEqual(["Row", "Diameter", "Twice"]);
  });

  it("fills down with formulas that move along, one row alone from above", () => {
    const model = start();
    model.apply(fillEdits(model, "S", { top: 1, left: 1, bottom: 2, right: 2 }), person);
    expect([model.typed("S", 2, 1)?.value, formula(model, 2, 2)]).toEqual([5, "B3*2"]);
    model.apply(fillEdits(model, "S", { top: 2, left: 0, bottom: 2, right: 0 }), person);
    expect(model.typed("S", 2, 0)?.value).toBe(10);
  });

  it("repeats a pasted block in a multiple of it, and fixed references stay", () => {
    const model = start();
    model.apply([{ kind: "cell", sheet: "S", row: 0, column: 5, value: null, formula: "$A$2+B2+A$1" }], person);
    const own = copyBlock(model, "S", { top: 0, left: 5, bottom: 0, right: 5 }, new Set());
    const { edits } = pasteEdits(
      model,
      "S",
      { top: 4, left: 5, bottom: 5, right: 6 },
      own.map((row) => row.map((one) => ({ text: one.text, own: one }))),
    );
    model.apply(edits, person);
    expect([formula(model, 4, 5), formula(model, 5, 6)]).toEqual(["$A$2+B6+A$1", "$A$2+C7+B$1"]);
  });

  it("gives other programs every digit", () => {
    const model = start();
    model.apply([{ kind: "cell", sheet: "S", row: 1, column: 1, value: 1 / 3 }], person);
    expect(copyBlock(model, "S", { top: 1, left: 1, bottom: 1, right: 1 }, new Set())[0]![0]!.text).toBe(String(1 / 3));
  });

  it("clears a whole column without touching a million rows", () => {
    const model = start();
    const edits = clearEdits(model, "S", { top: 0, left: 0, bottom: LAST_ROW, right: 0 });
    expect(edits.filter((edit) => edit.kind === "cell").length).toBe(3);
  });
});

describe("order, filter, finding", () => {
  const rows = [
    ["name", "size", "ref"],
    ["M10", 3, { formula: "B2*10+$E$1" }],
    ["M6", null, { formula: "B3*10+E1" }],
    ["m8", 1, { formula: "B4*10" }],
    [null, 2, { formula: "B5*10" }],
  ];
  const start = () => modelOf([sheetOf("S", rows, { tables: [table("T", 0, 0, 4, 2)] })]);
  const column = (model: ReturnType<typeof modelOf>, c: number) =>
    [1, 2, 3, 4].map((r) => model.typed("S", r, c)?.value ?? null);

  it("sorts numbers and texts as a person does, blanks last whichever way", () => {
    const model = start();
    const sort = (c: number, down: boolean) =>
      model.apply(sortEdits(model, "S", regionAt(model, "S", 1, 0)!, c, down), person);
    sort(0, false);
    expect(column(model, 0)).toEqual(["M6", "m8", "M10", null]);
    expect(column(model, 1)).toEqual([null, 1, 3, 2]);
    // A formula follows its own row and keeps what it says of others.
    expect([1, 2, 3, 4].map((r) => formula(model, r, 2))).toEqual(["B2*10+E1", "B3*10", "B4*10+$E$1", "B5*10"]);
    sort(1, true);
    expect(column(model, 1)).toEqual([3, 2, 1, null]);
    model.undo();
    model.undo();
    expect(column(model, 0)).toEqual(["M10", "M6", "m8", null]);
  });

  it("leaves the totals row where it is, and does not sort across an array formula", () => {
    const model = modelOf([
      sheetOf("S", [["a"], [3], [1], [{ formula: "SUM(A2:A3)", value: 4 }]], {
        tables: [{ ...table("T", 0, 0, 3, 0), totals: true }],
      }),
    ]);
    model.apply(sortEdits(model, "S", regionAt(model, "S", 1, 0)!, 0, false), person);
    expect([1, 2, 3].map((r) => model.typed("S", r, 0)?.value)).toEqual([1, 3, 4]);
    const array = modelOf([
      sheetOf("S", [
        ["a"],
        [{ formula: "X", value: 1, array: { area: { top: 1, left: 0, bottom: 2, right: 0 }, dynamic: true } }],
        [2],
      ]),
    ]);
    expect(code(() => sortEdits(array, "S", { top: 0, left: 0, right: 0, bottom: 2 }, 0, false) as never)).toBe(
      "table",
    );
  });

  it("hides rows by text, keeps them hidden when rows move, and protects them", () => {
    const model = start();
    const region = regionAt(model, "S", 0, 0)!;
    model.filters.set("S", region, 0, new Set(["M6", "m8"]));
    expect([...model.filters.hidden("S")]).toEqual([1, 4]);
    model.apply([{ kind: "insert-rows", sheet: "S", row: 1, count: 1 }], person);
    // The new row is in view: it is there to be filled.
    expect([...model.filters.hidden("S")]).toEqual([2, 5]);
    model.undo();
    expect([...model.filters.hidden("S")]).toEqual([1, 4]);
    model.apply(clearEdits(model, "S", { top: 1, left: 1, bottom: 4, right: 1 }), person);
    expect(column(model, 1)).toEqual([3, null, null, 2]);
    expect(model.unsaved()).toBe(true);
    model.filters.clear("S");
    expect(model.filters.hidden("S").size).toBe(0);
  });

  it("finds shown text, exact numbers and formulas, the own sheet first", () => {
    const model = modelOf(
      [sheetOf("A", [["Bore 12"]]), sheetOf("B", [[{ value: 12.345, style: 1 }, { formula: "bore(1)" }]])],
      { styles: [{ numberFormat: "General" }, { numberFormat: "0" }] },
    );
    expect(findText(model, "bore", "B").map((p) => `${p.sheet}${p.row}${p.column}`)).toEqual(["B01", "A00"]);
    expect(findText(model, "12.345", "A")).toEqual([{ sheet: "B", row: 0, column: 0 }]);
  });
});

describe("choices", () => {
  it("come from words, ranges, whole columns, names and columns of tables", () => {
    const model = modelOf(
      [
        sheetOf("S", [[null]], {
          choices: [
            { areas: [{ top: 0, left: 0, bottom: LAST_ROW, right: 0 }], words: ["a", "b"] },
            { areas: [{ top: 0, left: 1, bottom: 9, right: 1 }], source: "Lists!$A$2:$A$900" },
            { areas: [{ top: 0, left: 2, bottom: 9, right: 2 }], source: "=Lists!A:A" },
            { areas: [{ top: 0, left: 3, bottom: 9, right: 3 }], source: "named" },
            { areas: [{ top: 0, left: 4, bottom: 9, right: 4 }], source: 'INDIRECT("T[kind]")' },
          ],
        }),
        sheetOf("Lists", [["kind"], ["mill"], ["drill"], ["mill"]], {
          tables: [{ ...table("T", 0, 0, 3, 0), columns: ["kind"] }],
        }),
      ],
      { names: [{ name: "Named", formula: "Lists!$A$2:$A$3" }] },
    );
    const at = (column: number) => model.choices("S", 3, column);
    expect(at(0)).toEqual(["a", "b"]);
    expect(at(1)).toEqual(["mill", "drill"]);
    expect(at(2)).toEqual(["kind", "mill", "drill"]);
    expect(at(3)).toEqual(["mill", "drill"]);
    expect(at(4)).toEqual(["mill", "drill"]);
    expect(at(5)).toBeUndefined();
  });
});

describe("answers of the calculator", () => {
  it("are no edits, spill beside their cell, and go with it", () => {
    const model = modelOf([sheetOf("S", [[{ formula: "SEQUENCE(2)" }]])]);
    model.answer("S", [{ row: 0, column: 0, value: 1, spill: [[1], [2]] }]);
    expect(model.cell("S", 1, 0)).toMatchObject({ value: 2, spill: { row: 0, column: 0 } });
    expect(model.typed("S", 1, 0)).toBeUndefined();
    expect([model.unsaved(), model.edits().length]).toEqual([false, 0]);
    expect(code(() => model.apply([cell("S", 1, 0, 5)], person))).toBe("array");
    model.apply([cell("S", 0, 0, 7)], person);
    expect(model.cell("S", 1, 0)).toBeUndefined();
    model.undo();
    expect(model.cell("S", 1, 0)?.value).toBe(2);
  });
});

describe("a table without headings", () => {
  it("sorts and counts its first row as data", () => {
    const model = modelOf([
      sheetOf("S", [["above"], [3], [1], [2]], { tables: [{ ...table("T", 1, 0, 3, 0), headings: false }] }),
    ]);
    model.apply(sortEdits(model, "S", regionAt(model, "S", 2, 0)!, 0, false), person);
    expect([0, 1, 2, 3].map((r) => model.typed("S", r, 0)?.value)).toEqual(["above", 1, 2, 3]);
    model.filters.set("S", regionAt(model, "S", 1, 0)!, 0, new Set(["2"]));
    expect([...model.filters.hidden("S")]).toEqual([1, 3]);
    expect(code(() => model.apply([{ kind: "delete-rows", sheet: "S", row: 1, count: 1 }], person))).toBeUndefined();
    expect(code(() => model.apply([{ kind: "delete-rows", sheet: "S", row: 1, count: 2 }], person))).toBeUndefined();
    // The whole of it may go.
    expect(model.sheet("S")!.tables).toEqual([]);
  });
});
