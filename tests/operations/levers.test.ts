/** What advice may change of a row: every cell that sets how the feature is cut, but for those that are the feature itself. */
import { describe, expect, it } from "vitest";
import { OPERATIONS, usesCell } from "../../src/operations/index.ts";
import { COMMON_CELLS, COMMON_LEVERS } from "../../src/operations/operation.ts";
import { OPERATION_NAMES, type OperationName, type RowKey } from "../../src/table/rows.ts";

/** Cells that set how something is cut. */
const CUT: readonly RowKey[] = [
  ...(["passes", "springPasses", "feedPerTooth", "surfaceSpeed", "stickOut", "tool"] as const),
  ...(["axialDepth", "radialDepth", "wearValue"] as const),
];
/** Those that are not offered, for a reason; and the cells of the hole before a thread or a reamer, which are. */
const NOT: Partial<Record<OperationName, readonly RowKey[]>> = {
  // The tool is bought as long as it is: only drills and mills are held shorter.
  ...{ tap: ["stickOut"], ream: ["stickOut"], countersink: ["stickOut"] },
  // The width of a slot is the cutter's, the passes beside it follow from the width.
  slot: ["passes", "springPasses", "radialDepth", "wearValue"],
  // Passes of a side go along with its radial depth.
  side: ["passes"],
  // A face has no size, and its cutter sits on an arbor.
  face: ["passes", "springPasses", "stickOut"],
};
const HOLE: Partial<Record<OperationName, readonly RowKey[]>> = {
  ...{ tap: ["startDiameter"], ream: ["startDiameter"], "thread mill": ["startDiameter", "holeDepth"] },
};

describe("cells that advice may change (a machinist's rules)", () => {
  it.each(OPERATION_NAMES)("%s", (name) => {
    const cut = CUT.filter((key) => usesCell(name, key) && !NOT[name]?.includes(key));
    expect([...OPERATIONS[name].levers].sort()).toEqual([...cut, ...(HOLE[name] ?? [])].sort());
  });
  it("the machine and its speed, whatever is cut", () =>
    expect([...COMMON_LEVERS].sort()).toEqual(["machine", "maxRpm"]));
  it("what every operation reads: who it is for, what it is of, on which machine, how often, how fast", () =>
    expect([...COMMON_CELLS].sort()).toEqual([
      ...["batch", "feature", "machine", "material", "maxRpm", "operation", "quantity", "row", "spacing"],
      ...["surfaceSpeed", "units"],
    ]));
});
