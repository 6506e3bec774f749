/** What the numbers of a chain are: their dimensions by what they mean, and their formulas and sources by how they were made. */
import { describe, expect, it } from "vitest";
import { STEP, type StepKey } from "../../src/table/steps.ts";

/** By the meaning of each: what one would measure it with. A number of something, an angle, a share has none of these. */
const MEANT: Readonly<Record<string, string>> = {
  length: [
    "pitch pitchMin pitchMax minorMin minorMax startDiameter sweep pathRadius majorDiameter minorDiameter neckGap startZ tipZ",
    "depths left travel pecks tappedHole drillFeed edgeFeed handed radialDepth chip mostChip flankChip leastChip axialDepth rise",
    "deflection size scatter startWear wearChange",
  ].join(" "),
  torque: "torque breakingTorque tapTorque ringTorque",
  force: "thrust buckling force axialForce",
  power: "power",
  stress: "stress",
  feed: "edgeTable tableFeed",
  "surface speed": "speedRange surfaceSpeed",
  roughness: "roughness",
};
const UNITS: Readonly<Record<string, string>> = {
  "%": "percent",
  "1/min": "spindleSpeed",
  s: "timeEach time",
  min: "life",
  money: "toolCost cost",
};
const NEITHER = "turns";

describe("the numbers of a chain", () => {
  it("are what they mean, each once", () => {
    const all = [...Object.values(MEANT), ...Object.values(UNITS), NEITHER].flatMap((keys) => keys.split(" "));
    expect([...all].sort()).toEqual(Object.keys(STEP).sort());
    for (const [dimension, keys] of Object.entries(MEANT))
      for (const key of keys.split(" ")) expect(STEP[key as StepKey], key).toMatchObject({ dimension });
    for (const [unit, keys] of Object.entries(UNITS))
      for (const key of keys.split(" ")) {
        expect(STEP[key as StepKey], key).toMatchObject({ unit });
        expect(STEP[key as StepKey], key).not.toHaveProperty("dimension");
      }
    expect(STEP.turns).not.toHaveProperty("dimension");
    expect(STEP.turns).not.toHaveProperty("unit");
  });
});

describe("a number that is made in several ways", () => {
  const text = <K extends StepKey>(key: K, what: "formula" | "source", facts?: object) => {
    const own = STEP[key][what] as string | ((facts?: object) => string);
    return typeof own === "string" ? own : own(facts);
  };
  it.each<[StepKey, string, object | undefined]>([
    ["pitch", "ISO965", { standard: "metric" }],
    ["minorMax", "ISO228", { standard: "pipe" }],
    ["pitchMin", "ASMEB11", { standard: "unified" }],
    // Only a thin cut, engaged for a part of the turn, may be faster.
    ["speedRange", "COMMON", { engaged: 1 }],
    ["speedRange", "TATAR2020", { engaged: 0.4 }],
    ["speedRange", "COMMON", undefined],
    ["tableFeed", "DERIVED", { arc: "inside" }],
    ["tableFeed", "COMMON", { perTurn: "pitch" }],
    ["tableFeed", "MH", { rpm: 1, teeth: 1, feed: 1 }],
    ["tableFeed", "MH", undefined],
    ["radialDepth", "DERIVED", { side: "inside" }],
    ["radialDepth", "COMMON", undefined],
    ["chip", "MH", { drill: true }],
    ["chip", "MARTELLOTTI1941", { drill: false }],
    ["chip", "MARTELLOTTI1941", undefined],
    ["size", "KLINE1982", { of: "x" }],
    ["size", "MH", undefined],
  ])("%s comes from %s where %o", (key, source, facts) => expect(text(key, "source", facts)).toBe(source));
  // On the inside of a circle the centre travels on a smaller one than the edge cuts, on the outside on a larger.
  it.each<[StepKey, RegExp, object | undefined]>([
    ["pathRadius", /D2\/2.*P\/4/, { thread: "M6" }],
    ["pathRadius", /D2\/2.*P\/4/, undefined],
    ["pathRadius", /^\(Dm − Dc\)\/2$/, { side: "inside" }],
    ["pathRadius", /^\(Dm \+ Dc\)\/2$/, { side: "outside" }],
    ["turns", /^$/, { full: true }],
    ["turns", /depth\/P/, { full: false }],
    ["turns", /depth\/P/, undefined],
    ["edgeFeed", /h\//, { by: "chip" }],
    ["edgeFeed", /^$/, { by: "row" }],
    ["edgeFeed", /^$/, undefined],
    ["roughness", /8·r/, { of: "floor" }],
    ["roughness", /8·ρ/, { of: "wall" }],
    ["roughness", /8·ρ/, undefined],
    ["tableFeed", /Dm − Dc\)\/Dm/, { arc: "inside" }],
    ["tableFeed", /Dm \+ Dc\)\/Dm/, { arc: "outside" }],
    ["tableFeed", /^n·P$/, { perTurn: "pitch" }],
    ["tableFeed", /^n·f$/, { perTurn: "feed" }],
    ["tableFeed", /n·z·fz/, { rpm: 1, teeth: 1, feed: 1 }],
    ["tableFeed", /n·z·fz/, undefined],
    ["radialDepth", /^\(Dm² − Dw²\).*Dm − Dc/, { side: "inside" }],
    ["radialDepth", /^\(Dw² − Dm²\).*Dm \+ Dc/, { side: "outside" }],
    ["radialDepth", /^$/, undefined],
    ["chip", /f\/2/, { drill: true }],
    ["chip", /fz/, { drill: false }],
    ["chip", /fz/, undefined],
    // A hole that came out too large wants the cutter farther from its wall; a boss the other way round.
    ["wearChange", /^\(measured − wanted\)/, { inside: true }],
    ["wearChange", /^\(wanted − measured\)/, { inside: false }],
    ["wearChange", /^\(measured − wanted\)/, undefined],
    ["cost", /setup\/batch/, { batch: 10 }],
    ["cost", /^rate·time\//, { batch: undefined }],
    ["cost", /^rate·time\//, undefined],
  ])("%s is %s where %o", (key, formula, facts) => expect(text(key, "formula", facts)).toMatch(formula));
  // What no worksheet function gives has no formula to show.
  const call = <K extends StepKey>(key: K, facts: object) =>
    (STEP[key] as { call?: (facts: object, units: "mm") => readonly unknown[] | null }).call?.(facts, "mm");
  const drill = { diameter: 10, perRev: 0.2, kc11: 2000, exponent: 0.25, pointAngle: 118, chisel: 0.18 };
  const beam = { thread: false, force: 100, segments: [], modulus: 600, poisson: 0.22 };
  it.each<[StepKey, object, given: unknown]>([
    ["torque", { ...drill, cored: false }, "DRILLTORQUE"],
    ["torque", { ...drill, cored: true }, undefined],
    ["thrust", { ...drill, cored: true }, undefined],
    ["pathRadius", { side: "inside" }, undefined],
    ["pathRadius", { thread: "M6", cutter: 4, flat: 0.1 }, "THREADPATH"],
    ["neckGap", { side: "inside" }, undefined],
    ["spindleSpeed", { wanted: 1, diameter: 1, cap: null, slow: true }, undefined],
    ["spindleSpeed", { wanted: 1, diameter: 1, cap: null, slow: false }, "RPM"],
    ["tableFeed", { perTurn: "feed" }, undefined],
    ["tableFeed", { rpm: 1, teeth: 1, feed: 1 }, "TABLEFEED"],
    ["tableFeed", { arc: "inside", edge: 1, finish: 2, diameter: 1 }, "ARCFEED"],
    ["radialDepth", { side: "inside" }, undefined],
    ["radialDepth", { side: "inside", from: 1, to: 2, diameter: 1 }, "ARCDEPTH"],
    ["deflection", beam, "TOOLDEFLECTION"],
    ["deflection", { ...beam, poisson: 0.3 }, undefined],
    ["deflection", { ...beam, cones: true }, undefined],
    ["wearChange", { measured: 1, wanted: 1, inside: false }, undefined],
    ["wearChange", { measured: 1, wanted: 1, inside: true }, "WEARCHANGE"],
  ])("%s with %o is given by %s", (key, facts, name) => expect(call(key, facts)?.[0]).toBe(name));
});
