/** What the columns hold: the ends of what each takes, and its own unit in a cell. */
import { describe, expect, it } from "vitest";
import { MOST_TEETH } from "../../src/mill/turn.ts";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  RESULT_COLUMNS,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import { readLists, readRows } from "../../src/table/read.ts";

const COLUMNS = { rows: ROW_COLUMNS, materials: MATERIAL_COLUMNS, tools: TOOL_COLUMNS, machines: MACHINE_COLUMNS };
type Table = keyof typeof COLUMNS;
const NAMES = { materials: "Material", tools: "Tool", machines: "Machine" } as const;

/** What a cell under a heading is read as; undefined where it is refused. */
function read(table: Table, heading: string, cell: unknown): unknown {
  const { key } = (COLUMNS[table] as readonly Column[]).find((c) => c.heading === heading)!;
  if (table === "rows") return (readRows([[heading], [cell]], "mm")[0]!.row as Record<string, unknown>)[key];
  const block = [
    [NAMES[table], ...(table === "tools" ? ["Units"] : []), heading],
    ["x", ...(table === "tools" ? ["mm"] : []), cell],
  ];
  const list = { materials: [], tools: [], machines: [], [table]: block } as Record<string, unknown[][]>;
  const found = readLists(list.materials!, list.tools!, list.machines!)[table].items[0];
  return (found as Record<string, unknown> | undefined)?.[key];
}

describe("the ends of what a column takes (by its meaning: shares of a whole, angles of a tool, slips of the finger)", () => {
  it.each<[Table, string, least: number, most: number, step: number]>([
    ["rows", "Passes", 1, 200, 1],
    ["rows", "Spring passes", 0, 200, 1],
    ["rows", "Wear factor", 1, 3, 0.01],
    ["materials", "Exponent", 0, 0.9, 0.01],
    ["materials", "Radial ratio", 0, 2, 0.01],
    ["materials", "Least chip", 0, 2, 0.01],
    ["materials", "Thick chip [of feed]", 1, 5, 0.01],
    ["materials", "Breaking chip [of feed]", 1, 10, 0.01],
    ["tools", "Helix", 0, 80, 0.1],
    ["tools", "Point angle", 30, 180, 0.1],
    ["tools", "Notch factor", 1, 5, 0.01],
    ["tools", "Safety factor", 1, 10, 0.01],
    ["tools", "Stick-out limit [of diameter]", 1, 20, 0.1],
    ["tools", "Chisel ratio", 0, 0.4, 0.01],
    ["machines", "Ramp time [s]", 0, 1, 0.01],
    ["machines", "Cycle factor", 0.5, 3, 0.01],
  ])("%s: %s from %d to %d", (table, heading, least, most, step) => {
    expect(read(table, heading, least)).toBe(least);
    expect(read(table, heading, most)).toBe(most);
    expect(read(table, heading, least - step)).toBeUndefined();
    expect(read(table, heading, most + step)).toBeUndefined();
  });
  it.each<[Table, string, most: number]>([
    ["materials", "Thread feed [% of diameter]", 10],
    ["materials", "Taylor n", 1],
    ["materials", "Slot step [of diameter]", 5],
    ["tools", "Profile angle", 120],
    ["tools", "Edge angle", 90],
    ["tools", "Chamfer [pitches]", 15],
    ["machines", "Damping", 1],
    ["machines", "Bending share [%]", 100],
    ["machines", "Size scatter [%]", 100],
    ["machines", "Seat repeats [mm]", 0.1],
    ["machines", "Part warmth [K]", 50],
    ["machines", "Chatter ratio", 1e6],
  ])("%s: %s above 0, to %d", (table, heading, most) => {
    expect(read(table, heading, most)).toBe(most);
    expect(read(table, heading, most / 1000)).toBe(most / 1000);
    expect(read(table, heading, most * 1.001)).toBeUndefined();
    expect(read(table, heading, -most / 1000)).toBeUndefined();
    // As text a 0 is no blank.
    expect(read(table, heading, "0")).toBeUndefined();
  });
  it("are those of a number of teeth: whole, from 1", () => {
    expect(read("tools", "Teeth", 1)).toBe(1);
    expect(read("tools", "Teeth", MOST_TEETH)).toBe(MOST_TEETH);
    for (const none of [0.5, 1.5, -1, MOST_TEETH + 1]) expect(read("tools", "Teeth", none)).toBeUndefined();
  });
});

describe("a unit of a column's own", () => {
  const own = Object.entries(COLUMNS).flatMap(([table, columns]) =>
    (columns as readonly Column[])
      .filter(({ unit }) => unit !== undefined && !unit.startsWith("money"))
      .map((column) => [table as Table, column.heading, column] as const),
  );
  it.each(own)("is read in a cell: %s, %s (identity)", (table, heading, { unit, high = 50 }) => {
    expect(read(table, heading, `${high} ${unit}`)).toBeCloseTo(high, 12);
    if (!/^\d/.test(unit!)) expect(read(table, heading, `${high}${unit}`.toLowerCase())).toBeCloseTo(high, 12);
    expect(read(table, heading, `${high} furlongs`)).toBeUndefined();
  });
  it("stands in the heading where it is no matter of the row", () => {
    for (const [, heading, { unit }] of own) {
      const said = /\[([^ \]]*)/.exec(heading)?.[1];
      if (said !== undefined && said !== "per") expect(unit, heading).toBe(said);
    }
    expect(own.filter(([, heading]) => heading.includes("[")).length).toBeGreaterThan(25);
  });
  it("is money where it is one: any", () => {
    expect(read("tools", "Price", "12 €")).toBe(12);
    expect(read("tools", "Price", "12.50 USD")).toBe(12.5);
    expect(read("machines", "Rate [per hour]", "60 €/h")).toBe(60);
    expect(read("tools", "Price", "12 mm")).toBeUndefined();
  });
  it("of a result is none of an input: each number of the answer has a dimension, a unit or neither, and a format", () => {
    for (const column of RESULT_COLUMNS as readonly Column[]) {
      expect(column.dimension !== undefined && column.unit !== undefined, column.heading).toBe(false);
      if (column.kind === "number") expect(column.format, column.heading).toHaveLength(2);
    }
  });
});

describe("a name or a designation", () => {
  it("is told to a spreadsheet as text, so that 1/4-20 is no date and 1045 no number; a remark may be anything", () => {
    const formats = new Map((ROW_COLUMNS as readonly Column[]).map(({ heading, format }) => [heading, format]));
    for (const heading of ["Feature", "Material", "Machine", "Tool", "Thread", "Size class"])
      expect(formats.get(heading), heading).toEqual(["@", "@"]);
    for (const heading of ["Row", "Remark"]) expect(formats.get(heading), heading).toBeUndefined();
  });
});

describe("a length of a row (identity: an inch is 25.4 mm)", () => {
  it.each(
    (ROW_COLUMNS as readonly Column[])
      .filter(({ dimension }) => dimension === "length")
      .map(({ heading, key }) => [heading, key]),
  )("follows the row's units: %s", (heading, key) => {
    const row = readRows([[heading], [0.5]], "in")[0]!.row as Record<string, unknown>;
    expect(row[key]).toBeCloseTo(12.7, 12);
    expect(read("rows", heading, -0.5)).toBe(heading === "Wear value" ? -0.5 : undefined);
  });
});
