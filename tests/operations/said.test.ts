/** The same finding in each operation that has it: what it says there, by hand. */
import { describe, expect, it } from "vitest";
import { about, type Case, planOf, type RowCells, STEEL } from "../findings/rule.ts";

type Said = readonly [row: RowCells, code: string, facts: object, change?: Omit<Case, "row">];
const NO_FORCE = { material: { "kc1.1 [MPa]": null } };
const drill = { Operation: "drill", Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20 };
const ream = { Operation: "ream", Tool: "R-10", "Finish diameter": 10, "Start diameter": 9.8, Depth: 20 };
const sink = { Operation: "countersink", Tool: "CS-12.5", "Finish diameter": 10, "Start diameter": 6 };
const tap = { Operation: "tap", Tool: "T-M6", Thread: "M6", "Start diameter": 5, Depth: 10 };
const mill = { Operation: "thread mill", Tool: "TM-M6-S", Thread: "M6", "Start diameter": 5, Depth: 9 };
const bore = { Operation: "bore", Tool: "EM-10-4", "Start diameter": 28, "Finish diameter": 30, Depth: 10 };

const SAID: readonly Said[] = [
  [{ ...ream, Tool: null, "Finish diameter": 41 }, "tool-assumed", { operation: "ream" }],
  [{ ...sink, Tool: null, "Finish diameter": 60 }, "tool-assumed", { operation: "countersink" }],
  [{ ...tap, Tool: null, Thread: "M24", "Start diameter": 21 }, "tool-assumed", { operation: "tap" }],
  [{ ...drill, Tool: null, "Finish diameter": 10.3 }, "no-drill-listed", { size: 10.3, pointAngle: 118 }],
  [drill, "no-kc", { bending: false }, NO_FORCE],
  [tap, "no-kc", { bending: false }, NO_FORCE],
  [sink, "no-kc", { bending: false }, NO_FORCE],
  [mill, "no-kc", { bending: true }, NO_FORCE],
  [bore, "no-kc", { bending: true }, NO_FORCE],
  [drill, "no-kc", { bending: false }, { material: { Exponent: null } }],
  [mill, "no-kc", { bending: true }, { material: { Exponent: null } }],
  [bore, "no-kc", { bending: true }, { material: { Exponent: null } }],
  [drill, "no-strength", { tool: "D-10.2" }, { tool: { "Rupture strength [MPa]": null } }],
  [mill, "no-strength", { tool: "TM-M6-S" }, { tool: { "Rupture strength [MPa]": null } }],
  [mill, "no-stick-out", { tool: "TM-M6-S" }, { tool: { "Stick-out": null } }],
  [
    { ...drill, "Hole depth": 23 },
    "point-through-bottom",
    { value: about(20 + 5.1 / Math.tan((59 * Math.PI) / 180)), limit: 23 },
  ],
  [{ ...sink, "Finish diameter": 6 }, "no-stock", { value: 6, limit: 6 }],
  [{ ...bore, Operation: "boss" }, "no-stock", { value: 28, limit: 30 }],
  [{ ...bore, "Start diameter": 30 }, "no-stock", { value: 30, limit: 30 }],
  [{ ...bore, Depth: 22.5 }, "cutter-short", { value: 22.5, limit: 22 }],
  [{ ...bore, Tool: "EM-10-4L", Depth: 60.1 }, "cutter-short", { value: 60.1, limit: 60 }],
  [
    { ...bore, Tool: null, "Finish diameter": 1.5, "Start diameter": 0 },
    "no-tool-fits",
    { operation: "bore", kind: "end mill" },
  ],
  [
    { Operation: "face", Tool: "FM-40-4", Depth: 1, Length: 9, "Radial depth": 41 },
    "radial-over-diameter",
    { value: 41, limit: 40, operation: "face" },
  ],
  [
    { ...drill, "Feed per tooth": 0.3 },
    "feed-over-list",
    { value: 0.6, limit: about(3 * 0.17 * 1.02 ** 0.8), listed: about(0.17 * 1.02 ** 0.8) },
  ],
  [
    { ...sink, "Feed per tooth": 0.2 },
    "feed-over-list",
    { value: 0.2, limit: about(1.5 * 0.102), listed: about(0.102) },
  ],
  [{ ...ream, "Finish diameter": 10, "Start diameter": 10.1 }, "reamer-in-air", { value: 10.1, limit: 10 }],
  [{ ...ream, Tool: "D-9.7" }, "tool-kind", { tool: "D-9.7", kind: "drill", wanted: "reamer" }],
];
/** Rows that are near those, and say nothing of the kind. */
const SILENT: readonly Said[] = [
  [{ ...ream, Tool: null }, "tool-assumed", {}],
  [{ ...sink, Tool: null }, "tool-assumed", {}],
  [{ ...tap, Tool: null }, "tool-assumed", {}],
  [{ ...drill, Tool: null }, "no-drill-listed", {}],
  [ream, "no-kc", {}, NO_FORCE],
  ...[drill, tap, sink, mill, bore].map((row): Said => [row, "no-kc", {}]),
  [{ ...drill, "Hole depth": 23, Through: "yes" }, "point-through-bottom", {}],
  [{ ...drill, "Hole depth": 23.1 }, "point-through-bottom", {}],
  [{ ...bore, Depth: 22 }, "cutter-short", {}],
  [{ ...bore, Tool: "EM-10-4L", Depth: 60 }, "cutter-short", {}],
  // an edge that is not told is as long as it takes
  [{ ...bore, Depth: 30 }, "cutter-short", {}, { tool: { "Cutting length": null } }],
  [{ ...bore, Depth: 30, Tool: "EM-10-4L" }, "cutter-short", {}, { tool: { "Cutting length": null } }],
  [{ Operation: "face", Tool: "FM-40-4", Depth: 1, Length: 9, "Radial depth": 40 }, "radial-over-diameter", {}],
  [{ ...bore, Tool: null }, "no-tool-fits", {}],
];

const found = ([row, code, , change = {}]: Said) =>
  planOf({ row: { ...STEEL, ...row }, ...change }).findings.find((f) => f.code === code)?.facts;

describe("what is said (by hand)", () => {
  it.each(SAID.map((said) => [`${said[1]} of a ${said[0].Operation}: ${JSON.stringify(said[2])}`, said] as const))(
    "%s",
    (_, said) => expect(found(said)).toEqual(said[2]),
  );
  it.each(SILENT.map((said) => [`${said[1]} of a ${said[0].Operation}`, said] as const))("no %s", (_, said) =>
    expect(found(said)).toBeUndefined(),
  );
});
