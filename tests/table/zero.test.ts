/** An empty cell that comes as 0, as older desktop programs hand it over, is an empty cell wherever 0 says nothing. */
import { describe, expect, it } from "vitest";
import { PLAN } from "../../functions/plan.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  RESULT_COLUMNS,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { sentence } from "../refusal.ts";

/** Where 0 is an answer of its own, written down from what the column means: none of it, free of charge, no. */
const ZERO_SAYS: Readonly<Record<string, readonly string[]>> = {
  rows: ["Start diameter", "Through", "Spring passes", "Drilling oversize", "Spacing", "Wear value"],
  materials: ["Exponent", "Radial ratio", "Axial ratio", "Least chip", "Kte [N/mm]", "Kre [N/mm]"],
  tools: [
    ...["Corner radius", "Tip flat", "Helix", "Edge radius", "Tip to profile", "Runout", "Price", "Coolant through"],
    "Chisel ratio",
  ],
  machines: ["Min rpm", "Tool change [s]", "Rate [per hour]", "Setup [min]", "Ramp time [s]"],
};

const says = (list: string, column: Column) => ZERO_SAYS[list]!.includes(column.heading);

describe("a 0 in a row", () => {
  const read = (column: Column, cell: unknown) => {
    const others = ["Units", "Operation"].filter((heading) => heading !== column.heading);
    const row = readRows([
      [...others, column.heading],
      [...others.map((heading) => (heading === "Units" ? "mm" : "slot")), cell],
    ])[0]!;
    return { values: row.row, problems: row.problems.map(({ error }) => sentence(error)) };
  };
  it.each(ROW_COLUMNS.filter((column) => !says("rows", column)).map((c) => [c.heading, c] as const))(
    "under %s is a blank",
    (_, column) => {
      expect(read(column, 0)).toEqual(read(column, null));
    },
  );
  it.each(ROW_COLUMNS.filter((column) => says("rows", column)).map((c) => [c.heading, c] as const))(
    "under %s is a 0",
    (_, column) => {
      const { values, problems } = read(column, 0);
      expect(problems).toEqual([]);
      expect([0, false]).toContain((values as Record<string, unknown>)[column.key]);
    },
  );
  it("typed as text is what it says, not a blank", () => {
    expect(read(ROW_COLUMNS.find((c) => c.key === "tool")!, "0").values).toMatchObject({ tool: "0" });
    expect(read(ROW_COLUMNS.find((c) => c.key === "depth")!, "0").problems).toEqual([
      expect.stringContaining("Depth is"),
    ]);
  });
});

describe("a 0 in a list", () => {
  for (const [list, columns, name] of [
    ["materials", MATERIAL_COLUMNS, "Material"],
    ["tools", TOOL_COLUMNS, "Tool"],
    ["machines", MACHINE_COLUMNS, "Machine"],
  ] as const) {
    const read = (column: Column, cell: unknown) => {
      const block = [
        [name, ...(list === "tools" && column.heading !== "Units" ? ["Units"] : []), column.heading],
        ["X", ...(list === "tools" && column.heading !== "Units" ? ["mm"] : []), cell],
      ];
      const none: unknown[][] = [];
      const all = readLists(
        list === "materials" ? block : none,
        list === "tools" ? block : none,
        list === "machines" ? block : none,
      );
      return {
        items: all[list].items,
        problems: [...all[list].problems.values()].flat().map(({ error }) => sentence(error)),
      };
    };
    const others = (columns as readonly Column[]).filter((column) => column.heading !== name);
    it.each(others.map((c) => [c.heading, c] as const))(`of ${list}, under %s, is what it can be`, (_, column) => {
      if (says(list, column)) expect(read(column, 0).items).not.toEqual(read(column, null).items);
      else expect(read(column, 0).items).toEqual(read(column, null).items);
      expect(read(column, 0).problems).toEqual([]);
    });
  }
  it("that stands for a whole line is no entry", () => {
    expect(
      readLists(
        [],
        [
          ["Tool", "Kind", "Diameter"],
          [0, 0, 0],
        ],
        [],
      ).tools.items,
    ).toEqual([]);
  });
});

describe("CUT.PLAN", () => {
  const zeros = (block: readonly (readonly unknown[])[], keep: readonly string[]) =>
    block.map((row, r) =>
      row.map((cell, c) => (r > 0 && cell === null && !keep.includes(String(block[0]![c])) ? 0 : cell)),
    );
  const copy = (block: readonly (readonly unknown[])[]) => block.map((row) => [...row]);

  // Of these four a program that hands over 0 for nothing cannot say which it means: none is taken.
  it("answers the same where blanks come as 0 (the demo job)", () => {
    const plain = PLAN(copy(DEMO), copy(MATERIALS), copy(TOOLS), copy(MACHINES));
    const old = PLAN(
      zeros(DEMO, ["Spring passes", "Drilling oversize", "Spacing", "Wear value"]),
      zeros(MATERIALS, ZERO_SAYS.materials!),
      zeros(TOOLS, ZERO_SAYS.tools!),
      zeros(MACHINES, ZERO_SAYS.machines!),
    );
    expect(old).toEqual(plain);
  });

  it("leaves rows of nothing but zeros blank", () => {
    const spare = [...copy(DEMO).slice(0, 3), DEMO[0]!.map(() => 0)];
    const answer = PLAN(spare, copy(MATERIALS), copy(TOOLS), copy(MACHINES));
    const verdict = RESULT_COLUMNS.findIndex((column) => column.key === "verdict");
    expect(answer.map((row) => row[verdict])).toEqual(["Verdict", expect.any(String), expect.any(String), ""]);
  });
});
