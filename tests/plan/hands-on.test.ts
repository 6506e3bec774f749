/** Which row hands its wall to which, and that each row is worked out once for it. */
import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { finishes, handedOn, LOOK_BACK, roughedBy } from "../../src/plan/handed.ts";
import { planRows } from "../../src/plan/table.ts";
import { type Lists, readLists, readRows } from "../../src/table/read.ts";
import type { OperationName, Row } from "../../src/table/rows.ts";
import { blockOf, type RowCells } from "../findings/rule.ts";

const round = (operation: OperationName, before: number, middle: number, after: number): [Row, Row] => [
  { operation, units: "mm", material: "Steel", depth: 20, startDiameter: before, finishDiameter: middle },
  { operation, units: "mm", material: "Steel", depth: 20, startDiameter: middle, finishDiameter: after },
];
const side: [Row, Row] = [
  { operation: "side", units: "mm", material: "Steel", feature: "Flank", depth: 20, radialDepth: 4 },
  { operation: "side", units: "mm", material: "Steel", feature: "Flank", depth: 20, radialDepth: 0.5 },
];
const ROUND: readonly (readonly [string, [Row, Row]])[] = [
  ["bore", round("bore", 24, 29, 30)],
  ["boss", round("boss", 36, 31, 30)],
  ["counterbore", round("counterbore", 10, 17, 18)],
];

describe("a wall is finished by the row (definitions)", () => {
  it.each([...ROUND, ["side", side] as const])(
    "of a %s: same operation, units, material, and no deeper",
    (_, [rough, row]) => {
      expect(finishes(rough, row)).toBe(true);
      expect(finishes(row, rough)).toBe(false);
      const other = (a: Row, b: Row = {}) => finishes({ ...rough, ...a }, { ...row, ...b });
      for (const [a, b] of [
        [{ operation: "slot" }],
        [{ units: "in" }],
        [{ material: "Iron" }],
        [{ material: undefined }],
        [{ material: undefined }, { material: undefined }],
        [{ depth: 19 }],
        [{ depth: undefined }],
        [{}, { depth: 21 }],
        [{}, { depth: undefined }],
        [{ depth: undefined }, { depth: undefined }],
      ] as const satisfies [Row, Row?][])
        expect(other(a, b), JSON.stringify([a, b])).toBe(false);
      expect(other({ depth: 21 })).toBe(true);
      expect(other({ depth: 20 * (1 - 1e-10) })).toBe(true);
      expect(other({ depth: 20 * (1 - 1e-9) })).toBe(true);
      expect(other({ depth: 20 * (1 - 1e-8) })).toBe(false);
      // names without regard to case, as the lists are read
      expect(other({ material: "STEEL" })).toBe(true);
    },
  );
  it.each(ROUND)("of a %s: from the size that the other leaves", (_, [rough, row]) => {
    const at = (share: number) => finishes(rough, { ...row, startDiameter: row.startDiameter! * share });
    expect([at(1 + 1e-10), at(1 - 1e-10), at(1 + 1e-8), at(1 - 1e-8), at(-1)]).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(finishes({ ...rough, finishDiameter: undefined }, row)).toBe(false);
    expect(finishes(rough, { ...row, startDiameter: undefined })).toBe(false);
    expect(finishes({ ...rough, finishDiameter: undefined }, { ...row, startDiameter: undefined })).toBe(false);
    // its name is its size: the feature is no matter
    expect(finishes({ ...rough, feature: "A" }, { ...row, feature: "B" })).toBe(true);
  });
  it("of a side: of one feature and shape, by the thinner cut", () => {
    const other = (a: Row, b: Row = {}) => finishes({ ...side[0], ...a }, { ...side[1], ...b });
    expect(other({ feature: "FLANK" })).toBe(true);
    expect(other({ feature: "Other" })).toBe(false);
    expect(other({ feature: undefined })).toBe(false);
    expect(other({ feature: undefined }, { feature: undefined })).toBe(false);
    expect(other({ radialDepth: 0.5 })).toBe(false);
    expect(other({ radialDepth: undefined })).toBe(false);
    expect(other({}, { radialDepth: undefined })).toBe(false);
    expect(other({ side: "straight" })).toBe(true);
    expect(other({}, { side: "straight" })).toBe(true);
    expect(other({ side: "inside" })).toBe(false);
    expect(other({}, { side: "inside" })).toBe(false);
    expect(other({ side: "inside" }, { side: "inside" })).toBe(true);
    expect(other({ side: "inside" }, { side: "outside" })).toBe(false);
  });
  it.each(["slot", "face", "drill", "ream", "tap", "thread mill", "countersink", undefined] as const)(
    "is no matter of a %s",
    (operation) => {
      for (const [rough, row] of [...ROUND.map(([, rows]) => rows), side])
        expect(finishes({ ...rough, operation }, { ...row, operation })).toBe(false);
    },
  );
});

const shop = readLists(MATERIALS, TOOLS, MACHINES);
const COMMON = {
  Units: "mm",
  Material: "Steel C45 (AISI 1045)",
  Machine: "Centre V3",
  Operation: "bore",
  Tool: "EM-12-4",
};
const CHAIN: readonly RowCells[] = [24, 29, 29.6, 30].slice(1).map((size, i, all) => ({
  ...{ ...COMMON, Row: i + 1, Depth: 20, Passes: 1, "Spring passes": 0, "Feed per tooth": 0.06 },
  ...{ "Start diameter": i === 0 ? 24 : all[i - 1]!, "Finish diameter": size, "Size tolerance": 0.5 },
}));

/** The shop, and how often a row asked for its machine: once each time that it is worked out. */
function counted(): { lists: Lists; asked: () => number } {
  let asked = 0;
  const find = (name: string) => {
    asked++;
    return shop.machines.find(name);
  };
  return { lists: { ...shop, machines: { ...shop.machines, find } }, asked: () => asked };
}

describe("each row is worked out once (identity)", () => {
  it("in a table, however long the chain of walls", () => {
    const { lists, asked } = counted();
    const lines = planRows(readRows(blockOf(CHAIN)), lists, false);
    expect(lines.map((line) => line!.row)).toEqual([1, 2, 3]);
    expect(asked()).toBe(3);
  });
  it("where one row of it is asked for, and asked for again", () => {
    const { lists, asked } = counted();
    const handed = handedOn(readRows(blockOf(CHAIN)), lists);
    const first = handed(2);
    expect(first).toMatchObject({ row: 2 });
    // the two rows above it
    expect(asked()).toBe(2);
    expect(handed(2)).toBe(first);
    expect(handed(1)).toMatchObject({ row: 1 });
    expect(handed(0)).toBeUndefined();
    expect(asked()).toBe(2);
  });
  it("of a row that comes to nothing, nothing is handed on", () => {
    const rows = readRows(blockOf([{ ...CHAIN[0]!, Machine: "unheard of", Tool: "unheard of" }, CHAIN[1]!]));
    expect(roughedBy(rows, 1)).toBe(0);
    expect(handedOn(rows, shop)(1)).toBeUndefined();
  });
});

describe("the row that roughs (identity)", () => {
  it("is looked for above, not below, as far as a part's operations on one feature may stand", () => {
    const filler = { ...COMMON, Operation: "drill", "Finish diameter": 5, Depth: 5 };
    const at = (before: number, between: number) => {
      const rows = [
        ...Array<RowCells>(before).fill(filler),
        CHAIN[0]!,
        ...Array<RowCells>(between).fill(filler),
        CHAIN[1]!,
      ];
      return roughedBy(readRows(blockOf(rows)), rows.length - 1);
    };
    for (const before of [0, 3, 30]) {
      expect(at(before, LOOK_BACK - 1)).toBe(before);
      expect(at(before, LOOK_BACK)).toBeUndefined();
      expect(at(before, 0)).toBe(before);
    }
    expect(roughedBy(readRows(blockOf([CHAIN[1]!, CHAIN[0]!])), 0)).toBeUndefined();
  });
});
