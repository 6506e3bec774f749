/**
 * What is blank is asked for or done without; it is never a fault of the program. Every operation of the demo job, with each
 * named thing left out or unknown, and with each column of the line it names left blank.
 */
import { describe, expect, it } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planRow } from "../../src/plan/row.ts";
import { readLists, readRows } from "../../src/table/read.ts";

type Block = readonly (readonly unknown[])[];
const LISTS = { Material: MATERIALS, Tool: TOOLS, Machine: MACHINES } as const;
type Named = keyof typeof LISTS;
const NAMES = Object.keys(LISTS) as Named[];
const [head, ...rows] = DEMO as Block;
const at = (heading: string) => head!.indexOf(heading);

/** The first row of each operation and kind of tool that names all three. */
const chosen = new Map<string, readonly unknown[]>();
for (const row of rows) {
  if (NAMES.some((name) => !row[at(name)])) continue;
  const tool = TOOLS.find((line) => line[0] === row[at("Tool")]);
  const kind = `${row[at("Operation")]} with a ${tool?.[TOOLS[0]!.indexOf("Kind")]}`;
  if (!chosen.has(kind)) chosen.set(kind, row);
}

const put = (row: readonly unknown[], column: number, value: unknown) =>
  row.map((cell, c) => (c === column ? value : cell));

function planned(row: readonly unknown[], lists: Readonly<Record<Named, Block>> = LISTS) {
  const read = readRows([head!, row] as never)[0]!;
  const plan = planRow(read, readLists(lists.Material as never, lists.Tool as never, lists.Machine as never));
  const codes = plan.findings.map((f) => f.code);
  const broken = Object.entries(plan.results).filter(([, v]) => typeof v === "number" && !Number.isFinite(v));
  return { faults: codes.filter((code) => code === "fault"), broken, codes };
}

describe("blank cells (independent)", () => {
  it("are tried in every operation", () =>
    expect(new Set([...chosen.keys()].map((kind) => kind.split(" with")[0]))).toEqual(
      new Set(rows.map((row) => String(row[at("Operation")]))),
    ));
  it.each([...chosen])(
    "%s: without a material, a tool or a machine, alone and together, or with an unknown one",
    (_, row) => {
      for (let left = 1; left < 8; left++)
        for (const value of [null, "nothing of that name"]) {
          const less = NAMES.reduce((now, name, i) => (left & (1 << i) ? put(now, at(name), value) : now), row);
          const { faults, broken, codes } = planned(less);
          expect({ faults, broken }).toEqual({ faults: [], broken: [] });
          // Who names no material is told that one is wanted, or that the name is not known.
          if (left & 1) expect(codes.length).toBeGreaterThan(0);
        }
    },
  );
  it.each([...chosen])("%s: without each one column of the material, tool and machine", (_, row) => {
    for (const name of NAMES) {
      const list = LISTS[name] as Block;
      const line = list.findIndex((cells, i) => i > 0 && cells[0] === row[at(name)]);
      expect(line, `${row[at(name)]}`).toBeGreaterThan(0);
      for (let column = 1; column < list[0]!.length; column++) {
        const less = list.map((cells, i) => (i === line ? put(cells, column, null) : cells));
        const { faults, broken } = planned(row, { ...LISTS, [name]: less });
        expect({ column: list[0]![column], faults, broken }).toEqual({
          column: list[0]![column],
          faults: [],
          broken: [],
        });
      }
    }
  });
});
