/** What a row must say, and what is said of a tool that it names wrongly. */
import { describe, expect, it } from "vitest";
import { planOf, type RowCells, STEEL } from "../findings/rule.ts";

const found = (row: RowCells) => planOf({ row: { ...STEEL, ...row } }).findings;
const codes = (row: RowCells) => found(row).map((f) => f.code);
const missing = (row: RowCells) =>
  (found(row).find((f) => f.code === "row-incomplete")?.facts as { missing: readonly string[] } | undefined)?.missing;

/** A whole row of each operation, and what nobody could make the feature without. */
const ROWS: readonly (readonly [row: RowCells, needed: Readonly<Record<string, string>>])[] = [
  [
    { Operation: "drill", "Finish diameter": 10.2, Depth: 15 },
    { "Finish diameter": "finishDiameter", Depth: "depth" },
  ],
  [{ Operation: "drill", Thread: "M6", Depth: 15 }, { Depth: "depth" }],
  [
    { Operation: "tap", Thread: "M6", Depth: 9, Through: "yes" },
    { Thread: "thread", Depth: "depth" },
  ],
  [
    { Operation: "ream", "Finish diameter": 10, Depth: 15, Through: "yes" },
    { "Finish diameter": "finishDiameter", Depth: "depth" },
  ],
  [{ Operation: "countersink", "Finish diameter": 12, "Start diameter": 6 }, { "Finish diameter": "finishDiameter" }],
  [
    { Operation: "thread mill", Thread: "M10", Depth: 12, Through: "yes" },
    { Thread: "thread", Depth: "depth" },
  ],
  [
    { Operation: "bore", Tool: "EM-10-4", "Start diameter": 20, "Finish diameter": 22, Depth: 10 },
    { "Finish diameter": "finishDiameter", Depth: "depth" },
  ],
  [
    { Operation: "counterbore", Tool: "EM-10-4", "Start diameter": 9, "Finish diameter": 15, Depth: 9 },
    { "Finish diameter": "finishDiameter", Depth: "depth" },
  ],
  [
    { Operation: "boss", Tool: "EM-10-4", "Start diameter": 32, "Finish diameter": 30, Depth: 10 },
    { "Start diameter": "startDiameter", "Finish diameter": "finishDiameter", Depth: "depth" },
  ],
  [
    { Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60 },
    { Depth: "depth", Length: "length" },
  ],
  [
    { Operation: "side", Tool: "EM-10-4", Depth: 10, "Radial depth": 1, Length: 60 },
    { Depth: "depth", "Radial depth": "radialDepth", Length: "length" },
  ],
  [
    { Operation: "side", Side: "inside", Tool: "EM-10-4", Depth: 10, "Radial depth": 1, "Finish diameter": 40 },
    { Depth: "depth", "Radial depth": "radialDepth", "Finish diameter": "finishDiameter" },
  ],
  [
    { Operation: "face", Tool: "FM-40-4", Depth: 2, Length: 120 },
    { Depth: "axialDepth", Length: "length" },
  ],
];

describe("cells that an operation cannot do without (a machinist's rules)", () => {
  for (const [row, needed] of ROWS)
    it(`${row.Operation} ${row.Thread ?? row.Side ?? ""}: ${Object.keys(needed).join(", ")}`, () => {
      expect(missing(row)).toBeUndefined();
      for (const [heading, key] of Object.entries(needed))
        expect(missing({ ...row, [heading]: null }), heading).toContain(key);
    });
  it("names all that are missing at once", () => {
    expect(missing({ Operation: "side", Tool: "EM-10-4" })).toEqual(["depth", "radialDepth", "length"]);
    expect(missing({ Operation: "tap" })).toEqual(["thread", "depth"]);
  });
});

describe("a tool that the row names (a machinist's rules)", () => {
  it.each([
    { Operation: "tap", Thread: "M6", Depth: 9 },
    { Operation: "ream", "Finish diameter": 10, Depth: 15 },
    { Operation: "countersink", "Finish diameter": 12 },
    { Operation: "thread mill", Thread: "M10", Depth: 12 },
    { Operation: "drill", "Finish diameter": 10.2, Depth: 15 },
    { Operation: "slot", Depth: 5, Length: 60 },
  ] as RowCells[])("and that the list does not have is unknown, nothing else: %o", (row) => {
    const all = codes({ ...row, Tool: "no such" });
    expect(all).toContain("unknown-tool");
    for (const code of ["no-tool-fits", "tool-assumed", "tool-proposed", "no-drill-listed"])
      expect(all).not.toContain(code);
  });
  it.each([
    [{ Operation: "tap", Thread: "M6", Depth: 9 }, "D-5.0"],
    [{ Operation: "ream", "Finish diameter": 10, Depth: 15 }, "D-9.7"],
    [{ Operation: "countersink", "Finish diameter": 12 }, "D-14.0"],
    [{ Operation: "thread mill", Thread: "M10", Depth: 12 }, "EM-6-4"],
    [{ Operation: "drill", "Finish diameter": 10, Depth: 15 }, "R-10"],
    [{ Operation: "slot", Depth: 5, Length: 60 }, "FM-40-4"],
    [{ Operation: "bore", "Finish diameter": 60, Depth: 5 }, "FM-40-4"],
    [{ Operation: "face", Depth: 1, Length: 60 }, "D-14.0"],
  ] as const)("and that is of another kind is not used: %o with %s", (row, name) => {
    const plan = planOf({ row: { ...STEEL, ...row, Tool: name } });
    expect(plan.findings.map((f) => f.code)).toContain("tool-kind");
    expect(plan.verdict).toBe("stop");
    // No number of a cut that nobody makes: neither feed nor speed nor size nor time.
    for (const key of ["tableFeed", "feedPerTooth", "spindleSpeed", "size", "force", "passes", "time", "load"] as const)
      expect(plan.results[key] ?? null, key).toBeNull();
    expect(plan.limits).toEqual([]);
    expect(plan.sketch).toBeUndefined();
    expect(plan.path).toBeUndefined();
  });
  it("a face may be milled with an end mill, a side with a ball", () => {
    expect(codes({ Operation: "face", Tool: "EM-20-4", Depth: 1, Length: 60 })).not.toContain("tool-kind");
  });
});
