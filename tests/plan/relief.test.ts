/** What a machinist would reach for first: the cell is tried, and one of the values tried takes the finding away. */
import { describe, expect, it } from "vitest";
import type { FindingCode } from "../../src/findings.ts";
import type { Lever } from "../../src/operations/operation.ts";
import { candidatesFor, situationOf, withChanges } from "../../src/plan/changes.ts";
import { RELIEF } from "../../src/plan/relief.ts";
import { planRow } from "../../src/plan/row.ts";
import { rulesOf } from "../findings/all.ts";
import { type Case, caseLists, caseRow, STEEL } from "../findings/rule.ts";

const HELPS: Partial<Record<FindingCode, readonly Lever[]>> = {
  // a name that the list does not have, or a tool that cannot do it
  "cannot-be-computed": ["stickOut"],
  "unknown-machine": ["machine"],
  "list-tool": ["tool"],
  "list-machine": ["machine"],
  "tool-kind": ["tool"],
  "tool-incomplete": ["tool"],
  "wrong-drill": ["tool"],
  "no-speed": ["tool"],
  "tap-differs": ["tool"],
  "reamer-differs": ["tool"],
  "reamed-size": ["tool"],
  "countersink-small": ["tool"],
  "cutter-short": ["tool"],
  // a spindle that turns slower, a table that travels slower
  "speed-under-machine": ["machine", "surfaceSpeed"],
  "speed-over-material": ["surfaceSpeed", "maxRpm"],
  "feed-capped": ["feedPerTooth", "maxRpm", "surfaceSpeed", "machine"],
  "feed-not-reached": ["feedPerTooth", "maxRpm", "surfaceSpeed", "machine"],
  "feed-over-list": ["feedPerTooth"],
  // the chip
  "chip-too-thin": ["feedPerTooth"],
  "chip-too-thick": ["feedPerTooth"],
  "runout-thick": ["feedPerTooth"],
  "gullet-full": ["feedPerTooth"],
  roughness: ["feedPerTooth"],
  "slot-too-deep": ["axialDepth"],
  // load: less of everything, held shorter, or a stiffer tool
  chatter: ["stickOut", "axialDepth", "tool"],
  "power-over": ["axialDepth", "feedPerTooth", "machine"],
  "torque-over": ["tool"],
  "stick-out": ["stickOut"],
  "no-stick-out": ["tool"],
  "tool-stress": ["feedPerTooth", "stickOut", "passes", "tool"],
  "drill-torsion": ["feedPerTooth", "tool"],
  "drill-buckles": ["feedPerTooth", "stickOut", "tool"],
  "tap-torsion": ["tool"],
  "size-out": ["wearValue", "springPasses", "stickOut", "tool"],
  "size-may-be-out": ["wearValue", "springPasses", "stickOut", "tool"],
  "size-scatter": ["springPasses", "stickOut", "tool"],
  // the thread's cutter and its hole
  "no-path": ["tool"],
  "profile-angle": ["tool"],
  "pitch-differs": ["tool"],
  "flat-too-wide": ["tool"],
  "neck-rubs": ["tool"],
  "neck-tight": ["tool"],
  "neck-short": ["tool"],
  "blank-diameter": ["startDiameter"],
  "no-thread": ["wearValue", "feedPerTooth", "tool"],
  "no-depth": ["startDiameter"],
  "profile-shallow": ["startDiameter"],
  "hole-too-shallow": ["holeDepth"],
  "hole-under-minor": ["startDiameter"],
  "hole-over-minor": ["startDiameter"],
  "cutter-too-large": ["tool", "startDiameter"],
  "reamer-in-air": ["startDiameter"],
  "ream-stock": ["startDiameter"],
  // depth and room
  "drill-too-short": ["tool"],
  "point-through-bottom": ["tool"],
  "flutes-full": ["tool"],
  "drilled-size-out": ["tool"],
  "drill-tolerance": ["tool"],
  "tap-bottoms": ["tool"],
  "grips-flutes": ["stickOut"],
  "holder-hits": ["stickOut"],
  "shank-hits": ["tool"],
  "radial-over-diameter": ["radialDepth", "tool"],
  "too-many-passes": ["radialDepth"],
};

/** The levers of a code that, in a row where it stands, have a value tried that takes it away. */
function relieving(code: FindingCode, one: Case): Lever[] {
  const [read, lists] = [caseRow(one), caseLists(one)];
  const gone = ({ findings }: { findings: readonly { code: string }[] }) => findings.every((f) => f.code !== code);
  const situation = situationOf(read.row, planRow(read, lists), lists);
  return candidatesFor(situation, new Set(RELIEF[code]))
    .filter(({ change, along }) => {
      const row = withChanges(read.row, along ? [change, along] : [change]);
      return gone(planRow({ ...read, row }, lists, 1, false));
    })
    .map(({ change }) => change.key);
}

describe("what relieves a finding (independent: each value tried and planned)", () => {
  for (const [code, levers] of Object.entries(HELPS) as [FindingCode, readonly Lever[]][])
    it(`${code}: ${levers.join(", ")}`, () => {
      const helped = rulesOf(code).flatMap(({ fires }) => (fires.above ? [] : relieving(code, fires)));
      for (const lever of levers) expect(helped, lever).toContain(lever);
    });
  it("what only a person or a list can put right has no lever (common sense)", () => {
    for (const code of ["bad-cell", "units-blank", "material-blank", "unknown-material", "hard-to-drill"] as const)
      expect(RELIEF[code], code).toEqual([]);
  });
  it("of a tool that is not listed another is tried, but for a slot that the cutter gives its width: nobody knows which", () => {
    const side = { ...STEEL, Operation: "side", Tool: "EM-99", Depth: 6, Length: 50, "Radial depth": 0.5 };
    expect(relieving("unknown-tool", { row: side })).toContain("tool");
    const slot = { ...STEEL, Operation: "slot", Tool: "EM-99", Depth: 6, Length: 50 };
    expect(relieving("unknown-tool", { row: slot })).toEqual([]);
    expect(relieving("unknown-tool", { row: { ...slot, "Total width": 12 } })).toContain("tool");
  });
  it("of a hole that no listed cutter enters, the one that the thread itself wants is tried", () => {
    const M10 = { Operation: "thread mill", Thread: "M10", Depth: 12, "Start diameter": 1.5 };
    expect(relieving("no-tool-fits", { row: { ...STEEL, ...M10 } })).toContain("startDiameter");
  });
});
