/** How a tool is held: its parts from the tip to the holder, and what of it would meet the part, by hand. */
import { describe, expect, it } from "vitest";
import { about, planOf, type RowCells, STEEL } from "../findings/rule.ts";

const at = (row: RowCells, tools: readonly RowCells[]) => planOf({ row: { ...STEEL, ...row }, tools });
type Plan = ReturnType<typeof at>;
const facts = (plan: Plan, code: string) => plan.findings.find((f) => f.code === code)?.facts;
const codes = (plan: Plan) => plan.findings.map((f) => f.code);

const MILL = {
  ...{
    Tool: "mill",
    Kind: "end mill",
    Units: "mm",
    Diameter: 10,
    Teeth: 4,
    Substrate: "carbide",
    "Cutting length": 22,
  },
  ...{ "Stick-out": 34, "Shank diameter": 10, "Rupture strength [MPa]": 3500 },
};
const side = { Operation: "side", Tool: "mill", Depth: 10, Length: 60, "Radial depth": 0.5 };
const parts = (cells: RowCells, row: RowCells = {}) =>
  at({ ...side, ...row }, [{ ...MILL, ...cells }]).sketch!.tool!.map((p) => [p.part, p.diameter, p.length]);

describe("parts of a tool from the tip to the holder (by hand)", () => {
  it("of an end mill: flutes as a bar of 0.8 of their diameter, neck, shank", () => {
    expect(parts({})).toEqual([
      ["cutting part", 8, 22],
      ["shank", 10, 12],
    ]);
    expect(parts({ "Neck diameter": 9.4, "Neck length": 30, "Stick-out": 50, "Shank diameter": 12 })).toEqual([
      ["cutting part", 8, 22],
      ["neck", 9.4, 8],
      ["shank", 12, 20],
    ]);
    // a neck that widens to 11: the holder's end of it
    expect(parts({ "Neck diameter": 9.4, "Neck length": 30, "Neck end diameter": 11, "Stick-out": 50 })[1]).toEqual([
      "neck",
      11,
      8,
    ]);
    // a neck without a length is none, nor one that ends within the flutes
    expect(parts({ "Neck diameter": 9.4 })).toHaveLength(2);
    expect(parts({ "Neck diameter": 9.4, "Neck length": 22 })).toHaveLength(2);
    // an edge as long as it sticks out has no shank beside it, one that is not told is all shank
    expect(parts({ "Cutting length": 34 })).toEqual([["cutting part", 8, 34]]);
    expect(parts({ "Cutting length": 40 })).toEqual([["cutting part", 8, 34]]);
    expect(parts({ "Cutting length": null })).toEqual([["shank", 10, 34]]);
    expect(parts({ "Shank diameter": null })[1]).toEqual(["shank", 10, 12]);
  });
  it("a cone that the holder grips ends where it is gripped", () => {
    // from 9.4 to 11 over 8 mm, gripped after 4
    const cone = { "Neck diameter": 9.4, "Neck length": 30, "Neck end diameter": 11 };
    expect(parts(cone, { "Stick-out": 26 })).toEqual([
      ["cutting part", 8, 22],
      ["neck", about(10.2), 4],
    ]);
  });
  const CUTTER = {
    ...{ Tool: "mill", Units: "mm", Teeth: 4, Substrate: "carbide", "Profile angle": 60, Diameter: 7, "Tip flat": 0.1 },
    ...{ "Shank diameter": 8, "Stick-out": 25 },
  };
  const row = {
    Operation: "thread mill",
    Tool: "mill",
    Thread: "M10",
    "Start diameter": 8.5,
    Depth: 12,
    Through: "yes",
  };
  const cutter = (cells: RowCells) =>
    at(row, [{ ...CUTTER, ...cells }]).sketch!.tool!.map((p) => [p.part, p.diameter, p.length]);
  it("of a thread mill: a single profile is its neck, a full one its profiles, no thicker than the neck", () => {
    const single = { Kind: "thread mill single", "Neck diameter": 5, "Neck length": 18 };
    expect(cutter(single)).toEqual([
      ["neck", 5, 18],
      ["shank", 8, 7],
    ]);
    expect(cutter({ ...single, "Neck diameter": null, "Neck length": null, "Cutting length": 16 })).toEqual([
      ["cutting part", about(5.6), 16],
      ["shank", 8, 9],
    ]);
    const full = { Kind: "thread mill full", Pitch: 1.5, "Cutting length": 18 };
    expect(cutter(full)).toEqual([
      ["cutting part", about(5.6), 18],
      ["shank", 8, 7],
    ]);
    expect(cutter({ ...full, "Neck diameter": 5, "Neck length": 20 })).toEqual([
      ["cutting part", 5, 18],
      ["neck", 5, 2],
      ["shank", 8, 5],
    ]);
    expect(cutter({ ...full, "Neck diameter": 6, "Neck length": 20 })[0]).toEqual(["cutting part", about(5.6), 18]);
    // an end mill's flutes are what they are, whatever its neck
    expect(parts({ "Neck diameter": 7, "Neck length": 30 })[0]).toEqual(["cutting part", 8, 22]);
  });
});

describe("how far a tool sticks out (a machinist's rule: four diameters)", () => {
  const limit = (cells: RowCells, row: RowCells = {}) =>
    at({ ...side, ...row }, [{ ...MILL, ...cells }]).limits.find((l) => l.key === "stickOut");
  it("against the cutter; with a neck against the thicker of cutter and shank; by the tool's own limit", () => {
    expect(limit({})).toMatchObject({ value: 34, limit: 40 });
    expect(limit({ "Shank diameter": 16 })).toMatchObject({ limit: 40 });
    expect(limit({ "Neck diameter": 9.4, "Neck length": 30, "Shank diameter": 16 })).toMatchObject({ limit: 64 });
    expect(limit({ "Neck diameter": 9.4, "Neck length": 30, "Shank diameter": 8 })).toMatchObject({ limit: 40 });
    expect(limit({ "Neck diameter": 9.4, "Neck length": 30, "Shank diameter": null })).toMatchObject({ limit: 40 });
    expect(limit({ "Stick-out limit [of diameter]": 3 })).toMatchObject({ limit: 30 });
    expect(limit({}, { "Stick-out": 25 })).toMatchObject({ value: 25 });
    const over = at({ ...side, "Stick-out": 45 }, [{ ...MILL, "Stick-out limit [of diameter]": 3 }]);
    expect(facts(over, "stick-out")).toEqual({ value: 45, limit: 30, ratio: 4.5, most: 3 });
    expect(codes(at({ ...side, "Stick-out": 40 }, [MILL]))).not.toContain("stick-out");
  });
});

describe("what of a drill would meet the part (by hand)", () => {
  const DRILL = {
    ...{ Tool: "drill", Kind: "drill", Units: "mm", Diameter: 6, Teeth: 2, "Point angle": 180, Substrate: "HSS" },
    ...{ "Cutting length": 20, "Stick-out": 60, "Shank diameter": 8 },
  };
  const drilled = (cells: RowCells, row: RowCells = {}) =>
    at({ Operation: "drill", Tool: "drill", "Finish diameter": 6, Depth: 25, "Start diameter": 2, ...row }, [
      { ...DRILL, ...cells },
    ]);
  // a flat point: the tip goes as deep as the hole
  it("a shank that is thicker than the hole stays out of it", () => {
    expect(facts(drilled({}), "shank-hits")).toEqual({ value: 20, limit: 25, part: "shank" });
    expect(facts(drilled({}, { Depth: 20 }), "shank-hits")).toBeUndefined();
    expect(facts(drilled({ "Shank diameter": 6 }), "shank-hits")).toBeUndefined();
    expect(facts(drilled({ "Shank diameter": null }), "shank-hits")).toBeUndefined();
    // an edge of unknown length: all of it is shank
    expect(facts(drilled({ "Cutting length": null }), "shank-hits")).toEqual({ value: 0, limit: 25, part: "shank" });
  });
  it("a neck may follow the drill in; the shank begins behind it", () => {
    const neck = { "Neck diameter": 5, "Neck length": 40 };
    expect(facts(drilled(neck), "shank-hits")).toBeUndefined();
    expect(facts(drilled(neck, { Depth: 41 }), "shank-hits")).toEqual({ value: 40, limit: 41, part: "shank" });
    const thick = { "Neck diameter": 7, "Neck length": 40 };
    expect(facts(drilled(thick), "shank-hits")).toEqual({ value: 20, limit: 25, part: "neck" });
    // a cone from 5 to 7 over 20 mm is as thick as the hole half way
    const cone = { "Neck diameter": 5, "Neck length": 40, "Neck end diameter": 7 };
    expect(facts(drilled(cone, { Depth: 29 }), "shank-hits")).toBeUndefined();
    expect(facts(drilled(cone, { Depth: 31 }), "shank-hits")).toEqual({ value: about(30), limit: 31, part: "neck" });
    // a neck that the holder grips
    expect(facts(drilled({ ...thick, "Stick-out": 30 }, { Depth: 21 }), "shank-hits")).toMatchObject({ part: "neck" });
    // one without a length is none
    expect(facts(drilled({ "Neck diameter": 5 }), "shank-hits")).toEqual({ value: 20, limit: 25, part: "shank" });
  });
  it("the holder stays a millimetre above the face; a nose of known length may go in", () => {
    const thin = { "Shank diameter": 6 };
    expect(facts(drilled({ ...thin, "Stick-out": 25.9 }), "holder-hits")).toEqual({ value: 25.9, limit: 26 });
    expect(facts(drilled({ ...thin, "Stick-out": 26 }), "holder-hits")).toBeUndefined();
    const nose = { ...thin, "Stick-out": 20.5, "Holder diameter": 5.9, "Holder length": 10 };
    expect(facts(drilled(nose), "holder-hits")).toBeUndefined();
    expect(facts(drilled({ ...nose, "Holder length": 5 }), "holder-hits")).toEqual({ value: 20.5, limit: 21 });
    expect(facts(drilled({ ...nose, "Holder length": null }), "holder-hits")).toBeUndefined();
    expect(facts(drilled({ ...nose, "Holder diameter": 6.1 }), "holder-hits")).toEqual({ value: 20.5, limit: 26 });
    expect(facts(drilled({ ...nose, "Holder diameter": null }), "holder-hits")).toEqual({ value: 20.5, limit: 26 });
  });
  it("the holder grips the full shank: behind flutes and neck", () => {
    expect(facts(drilled({ "Stick-out": 19.9 }, { Depth: 5 }), "grips-flutes")).toEqual({ value: 19.9, limit: 20 });
    expect(facts(drilled({ "Stick-out": 20 }, { Depth: 5 }), "grips-flutes")).toBeUndefined();
    const neck = { "Neck diameter": 5, "Neck length": 40 };
    expect(facts(drilled({ ...neck, "Stick-out": 39 }, { Depth: 5 }), "grips-flutes")).toEqual({
      value: 39,
      limit: 40,
    });
    expect(facts(drilled({}, { Depth: 5, "Stick-out": 19 }), "grips-flutes")).toEqual({ value: 19, limit: 20 });
    // an arbor carries a face mill
    const face = { Operation: "face", Tool: "mill", Depth: 2, Length: 60, "Stick-out": 8 };
    expect(codes(at(face, [{ ...MILL, Kind: "face mill" }]))).not.toContain("grips-flutes");
    expect(codes(at({ ...face, Operation: "side", "Radial depth": 1 }, [MILL]))).toContain("grips-flutes");
  });
  it("a drill without a stick-out, or without a diameter, is not judged", () => {
    for (const none of [{ "Stick-out": null }, { Diameter: null }] as RowCells[]) {
      const all = codes(drilled(none));
      for (const code of ["shank-hits", "holder-hits", "grips-flutes"]) expect(all).not.toContain(code);
    }
  });
});
