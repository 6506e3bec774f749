import fs from "node:fs";
import { describe, expect, it } from "vitest";
import * as functions from "../../functions/index.ts";

/** Signatures that workbooks in the field depend on: a name or an order here is never changed, only added to. */
const SIGNATURES = `
RPM(surfaceSpeed, diameter, units, [maxRpm])
SURFACESPEED(rpm, diameter, units)
TABLEFEED(rpm, teeth, feedPerTooth, [maxFeed])
FEEDPERTOOTH(tableFeed, rpm, teeth)
REMOVALRATE(radialDepth, axialDepth, tableFeed, units)
ENGAGEANGLE(radialDepth, diameter)
CHIPTHICKNESS(feedPerTooth, radialDepth, diameter, [which], [edgeAngle])
THINNEDFEED(chipThickness, radialDepth, diameter, [edgeAngle])
BALLDIAMETER(diameter, axialDepth, [cornerRadius])
SCALLOP(cornerRadius, stepover)
STEPOVER(cornerRadius, scallop)
ARCFEED(edgeFeed, arcDiameter, cutterDiameter, side)
ARCDEPTH(startDiameter, finishDiameter, cutterDiameter, side)
THREADLEAD(thread, units)
THREADSIZE(thread, element, limit, units)
THREADPERCENT(thread, holeDiameter, units)
TAPDRILL(thread, units, [percent], [sets])
DRILLNAME(diameter, units, [sets])
DRILLSIZE(name, units)
NECKCLEARANCE(thread, holeDiameter, cutterDiameter, neckDiameter, tipFlat, units)
THREADPATH(thread, cutterDiameter, tipFlat, units, [pitchDiameter], [sweep])
THREADPASSES(thread, holeDiameter, tipFlat, passes, units, [springPasses], [cutterDiameter], [pitchDiameter])
THREADSWEEP(thread, cutterDiameter, tipFlat, units)
OVERWIRES(thread, wireDiameter, units, [pitchDiameter])
BESTWIRE(thread, units)
BETWEENBALLS(thread, ballDiameter, units, [pitchDiameter])
WEARCHANGE(measuredPitchDiameter, wantedPitchDiameter, [gain])
SPECIFICFORCE(kc11, exponent, chipThickness, units, [rakeAngle])
SPINDLEPOWER(removalRate, specificForce, units, [efficiency])
SPINDLETORQUE(power, rpm, units)
MILLFORCE(kc11, exponent, feedPerTooth, radialDepth, axialDepth, diameter, teeth, helixAngle, units, [which], [radialRatio])
THREADMILLFORCE(thread, holeDiameter, cutterDiameter, tipFlat, feedPerTooth, teeth, kc11, exponent, units, [startDepth], [endDepth], [which], [radialRatio])
DRILLTHRUST(diameter, feedPerRev, kc11, exponent, units, [pointAngle], [chiselFactor], [chiselRatio])
DRILLTORQUE(diameter, feedPerRev, kc11, exponent, units, [pointAngle], [chiselRatio])
TAPTORQUE(thread, holeDiameter, kc11, exponent, units, [chamferThreads], [flutes])
CLASSSIZE(diameter, toleranceClass, limit, units)
NECKDEFLECTION(force, neckDiameter, neckLength, units, [modulus], [shankDiameter], [shankLength])
TOOLDEFLECTION(force, segments, units, [modulus], [holderStiffness], [shear], [stepFlexibility])
TOOLSTRESS(force, segments, units, [torque], [notchFactor])
TOOLFREQUENCY(segments, units, [modulus], [density])
STICKOUTLIMIT(force, deflectionLimit, diameter, units, [modulus])
FORCELIMIT(deflectionLimit, segments, units, [modulus])
STABLEDEPTH(rpm, teeth, radialDepth, diameter, kc, segments, units, [damping], [radialRatio], [modulus], [density])
DRILLPOINT(diameter, [pointAngle])
DRILLTRAVEL(depth, diameter, [pointAngle], [breakthrough])
MOVETIME(distance, feed, acceleration, units, [rampTime])
ARCTIME(radius, turns, feed, acceleration, units, [risePerTurn], [rampTime])
ARCFEEDLIMIT(radius, acceleration, units)
TOOLLIFE(speed, referenceSpeed, referenceLife, exponent)
ECONOMICSPEED(referenceSpeed, referenceLife, exponent, toolChangeTime, toolCost, rate)
PARTCOST(cycleTime, rate, batch, setupTime, [toolCostPerPart])
PLAN(rows, materials, tools, machines)
ADVISE(row, headings, materials, tools, machines)
QUOTE(rows, materials, tools, machines, [batch])
PROGRAMWORDS(rows, materials, tools, machines, [toolZero])
CHECKPROGRAM(program, rows, materials, tools, machines, [toolZero])
`
  .trim()
  .split("\n");

interface Described {
  id: string;
  name: string;
  description: string;
  parameters: { name: string; description: string; type: string; dimensionality: string; optional?: boolean }[];
  result: { dimensionality?: string };
}
const { functions: described } = JSON.parse(
  fs.readFileSync(new URL("../../functions/generated/functions.json", import.meta.url), "utf8"),
) as { functions: Described[] };
const signature = (f: Described) =>
  `${f.name}(${f.parameters.map((p) => (p.optional ? `[${p.name}]` : p.name)).join(", ")})`;

describe("the contract of the worksheet functions (regression)", () => {
  for (const wanted of SIGNATURES) {
    const name = wanted.slice(0, wanted.indexOf("("));
    it(`keeps ${wanted}`, () => {
      const f = described.find((d) => d.id === name);
      expect(f, "not in functions.json").toBeDefined();
      expect(signature(f!)).toBe(wanted);
      expect(f!.name).toBe(f!.id);
    });
  }
  it("knows every function there is: a new one is added here, and stays as it is from then on", () => {
    const listed = SIGNATURES.map((line) => line.slice(0, line.indexOf("(")));
    expect(listed.sort()).toEqual(described.map((f) => f.id).sort());
  });
  it("declares every argument and every answer as a range, with a description", () => {
    for (const f of described) {
      expect(f.description.length, f.id).toBeGreaterThan(10);
      expect(f.result.dimensionality, f.id).toBe("matrix");
      for (const p of f.parameters) {
        expect([p.type, p.dimensionality], `${f.id} ${p.name}`).toEqual(["any", "matrix"]);
        expect(p.description.length, `${f.id} ${p.name}`).toBeGreaterThan(3);
      }
      // optional arguments stand at the end
      const marks = f.parameters.map((p) => p.optional === true);
      expect(marks, f.id).toEqual([...marks].sort());
    }
  });
  it("describes what is exported, no more and no less, with the parameters of the code", () => {
    const exported = Object.keys(functions).sort();
    expect(described.map((f) => f.id).sort()).toEqual(exported);
    for (const f of described) {
      const run = (functions as unknown as Record<string, (...a: unknown[]) => unknown>)[f.id]!;
      const named = /^function\s*\w*\s*\(([^)]*)\)/.exec(run.toString())![1]!;
      expect(
        named.split(",").map((s) => s.trim()),
        f.id,
      ).toEqual(f.parameters.map((p) => p.name));
    }
  });
});
