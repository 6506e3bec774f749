/** The path of the cutter's centre, move by move, by hand. */
import { describe, expect, it } from "vitest";
import { type PathPass, pathOf, roomBelow } from "../../src/program/path.ts";
import { ARC, DRILL, ROUND, SIDE, SLOT, THREAD } from "./by-hand.ts";

const f = (value: number) => String(Number(value.toFixed(6)) + 0);
/** "G3 x,y,z i,j sweep" of every move. */
const said = ({ moves }: PathPass) =>
  moves.map(({ g, x, y, z, i, j, sweep }) =>
    [`G${g} ${[x, y, z].map(f)}`, ...(g >= 2 ? [`${f(i!)},${f(j!)}`, f(sweep!)] : [])].join(" "),
  );
const heads = (passes: readonly PathPass[]) =>
  passes.map(({ note, compensation, reverse }) => [note, compensation, reverse]);
/** Z in turn, arcs marked. */
const heights = ({ moves }: PathPass) => moves.map(({ g, z }) => `${g >= 2 ? "~" : ""}${f(z)}`).join(" ");

describe("threads", () => {
  it("go down the middle, in by a half circle that rises a quarter pitch, up the helix, and out in the same way", () => {
    const passes = pathOf(THREAD, "tip");
    expect(heads(passes)).toEqual([
      ["PASS 1 OF 2", "G41", undefined],
      ["PASS 2 OF 2", "G41", undefined],
    ]);
    // the tip stands 0.75 below the profile
    expect(said(passes[1]!)).toEqual([
      "G0 0,0,2",
      "G0 0,0,2",
      "G0 0,0,-3",
      "G3 3,0,-2.75 1.5,0 180",
      "G3 3,0,-1.75 -3,0 360",
      "G3 3,0,-0.75 -3,0 360",
      "G3 -3,0,-0.25 -3,0 180",
      "G3 0,0,0 1.5,0 180",
      "G0 0,0,2",
    ]);
    expect(said(passes[0]!)[3]).toBe("G3 2,0,-2.75 1,0 180");
    expect(said(pathOf(THREAD, "profile")[0]!)[3]).toBe("G3 2,0,-2 1,0 180");
  });
  it("from the top go down, and the other way round", () => {
    const down = {
      ...THREAD,
      up: false,
      startZ: 0.5,
      endZ: -2,
      counterClockwise: false,
      climb: false,
      tipToProfile: 0,
    };
    const [pass] = pathOf(down, "tip");
    expect(pass!.compensation).toBe("G42");
    expect(said(pass!)).toEqual([
      ...["G0 0,0,2", "G0 0,0,2", "G0 0,0,0.75", "G2 2,0,0.5 1,0 180", "G2 2,0,-0.5 -2,0 360", "G2 2,0,-1.5 -2,0 360"],
      ...["G2 -2,0,-2 -2,0 180", "G2 0,0,-2.25 1,0 180", "G0 0,0,2"],
    ]);
  });
  it("outside come in against their sense from twice the radius, or from clear of the blank", () => {
    const outside = {
      ...THREAD,
      inside: false,
      counterClockwise: false,
      up: false,
      startZ: 1,
      endZ: -1,
      tipToProfile: 0,
    };
    const first = (radius: number, start: number) => said(pathOf({ ...outside, radii: [radius], start }, "tip")[0]!);
    // blank of 6 and cutter of 4: clear from 3 + 2 + 2
    expect(first(5, 6).slice(0, 5)).toEqual([
      ...["G0 10,0,2", "G0 10,0,2", "G0 10,0,1.25", "G3 5,0,1 -2.5,0 180", "G2 5,0,0 -5,0 360"],
    ]);
    expect(first(3, 6)[0]).toBe("G0 7,0,2");
    expect(first(5, 6).slice(-2)).toEqual(["G3 10,0,-1.25 2.5,0 180", "G0 10,0,2"]);
  });
  it("have a level half circle below where no room is known, on their lowest level alone", () => {
    const blind = { ...THREAD, through: false, radii: [3], tipToProfile: 0 };
    expect(heights(pathOf(blind, "tip")[0]!)).toBe("2 2 -2 ~-2 ~-1 ~0 ~0.5 ~0.75 2");
    const down = { ...blind, up: false, startZ: 0.5, endZ: -2 };
    expect(heights(pathOf(down, "tip")[0]!)).toBe("2 2 0.75 ~0.5 ~-0.5 ~-1.5 ~-2 ~-2 2");
    const two = pathOf({ ...blind, levels: [0, 3] }, "tip");
    expect(two.map(heights)).toEqual(["2 2 -2 ~-2 ~-1 ~0 ~0.5 ~0.75 2", "2 2 0.75 ~1 ~2 ~3 ~3.5 ~3.75 2"]);
    expect(heights(pathOf({ ...down, levels: [0, 3] }, "tip")[1]!)).toBe("2 2 3.75 ~3.5 ~2.5 ~1.5 ~1 ~0.75 2");
    expect(two.map(({ note }) => note)).toEqual(["PASS 1 OF 1, LEVEL 1 OF 2", "PASS 1 OF 1, LEVEL 2 OF 2"]);
  });
  it("room below is a quarter pitch under the tip, or a through hole", () => {
    const blind = { ...THREAD, through: false };
    // 2 deep, 0.75 to the tip, a quarter of 1
    expect(roomBelow({ ...blind, holeDepth: 3 })).toBe(true);
    expect(roomBelow({ ...blind, holeDepth: 2.99 })).toBe(false);
    expect(roomBelow(blind)).toBe(false);
    expect(roomBelow({ ...blind, inside: false, holeDepth: 30 })).toBe(false);
    expect(roomBelow({ ...THREAD, holeDepth: 1 })).toBe(true);
  });
  it("whole turns have no piece left over, and every piece rises by its share", () => {
    const turns = (n: number) =>
      pathOf({ ...THREAD, radii: [3], startZ: 0, endZ: n, tipToProfile: 0 }, "tip")[0]!
        .moves.slice(4, -2)
        .map(({ sweep, z }) => [f(sweep!), f(z)]);
    expect(turns(2)).toEqual([
      ["360", "1"],
      ["360", "2"],
    ]);
    expect(turns(1.25)).toEqual([
      ["360", "1"],
      ["90", "1.25"],
    ]);
    expect(turns(0.75)).toEqual([["270", "0.75"]]);
    expect(turns(2 - 1e-10)).toHaveLength(2);
    expect(turns(2 + 1e-8)).toHaveLength(2);
    expect(turns(2.00001)).toHaveLength(3);
  });
  it("leave towards the middle from where the last piece ends", () => {
    // 2.25 turns of pitch 2 end at +Y
    const steep = { ...THREAD, pitch: 2, startZ: 0, endZ: 4.5, radii: [3], tipToProfile: 0 };
    expect(said(pathOf(steep, "tip")[0]!)).toEqual([
      ...["G0 0,0,2", "G0 0,0,2", "G0 0,0,-0.5", "G3 3,0,0 1.5,0 180", "G3 3,0,2 -3,0 360", "G3 3,0,4 -3,0 360"],
      ...["G3 0,3,4.5 -3,0 90", "G3 0,0,5 0,-1.5 180", "G0 0,0,2"],
    ]);
    // an eighth of a turn more: along the line of 45 degrees
    const d = 3 / Math.SQRT2;
    const eighth = said(pathOf({ ...steep, endZ: 4.25 }, "tip")[0]!);
    expect(eighth[6]).toBe(`G3 ${f(d)},${f(d)},4.25 -3,0 45`);
    expect(eighth[7]).toBe(`G3 0,0,4.75 ${f(-d / 2)},${f(-d / 2)} 180`);
  });
  it("whole turns end where they begin, to the last bit", () => {
    for (const endZ of [2, 2 - 1e-10]) {
      const turns = pathOf({ ...THREAD, startZ: 0, endZ, radii: [3] }, "tip")[0]!.moves.filter(
        ({ sweep }) => sweep === 360,
      );
      expect(turns).toHaveLength(2);
      for (const { x, y } of turns) expect([x, Math.abs(y)]).toEqual([3, Math.abs(turns[0]!.y)]);
      expect(turns[1]!.y).toBe(turns[0]!.y);
    }
    const at = (n: number) => pathOf(ROUND, "tip")[0]!.moves[n]!;
    expect([at(4).x, at(4).y]).toEqual([at(3).x, at(3).y]);
  });
  it("names cutting and spring passes", () => {
    const names = pathOf({ ...THREAD, radii: [2, 3, 3, 3], springs: 2 }, "tip").map(({ note }) => note);
    expect(names).toEqual(["PASS 1 OF 2", "PASS 2 OF 2", "SPRING PASS 1 OF 2", "SPRING PASS 2 OF 2"]);
  });
});

describe("circles", () => {
  it("of a bore: level half circles in and out, one turn on each level", () => {
    const passes = pathOf({ ...ROUND, levels: 2, radii: [9, 10], springs: 1 }, "tip");
    expect(heads(passes)).toEqual([
      ["PASS 1 OF 1, LEVEL 1 OF 2", "G41", undefined],
      ["PASS 1 OF 1, LEVEL 2 OF 2", "G41", undefined],
      ["SPRING PASS 1 OF 1, LEVEL 1 OF 2", "G41", undefined],
      ["SPRING PASS 1 OF 1, LEVEL 2 OF 2", "G41", undefined],
    ]);
    expect(said(passes[0]!)).toEqual([
      ...[
        "G0 0,0,2",
        "G0 0,0,2",
        "G0 0,0,-4",
        "G3 9,0,-4 4.5,0 180",
        "G3 9,0,-4 -9,0 360",
        "G3 0,0,-4 -4.5,0 180",
        "G0 0,0,2",
      ],
    ]);
    expect(heights(passes[3]!)).toBe("2 2 -8 ~-8 ~-8 ~-8 2");
  });
  it("of a boss come from outside", () => {
    const boss = { ...ROUND, inside: false, counterClockwise: false, climb: true, radii: [20], start: 31 };
    expect(said(pathOf(boss, "tip")[0]!)).toEqual([
      ...[
        "G0 40,0,2",
        "G0 40,0,2",
        "G0 40,0,-8",
        "G3 20,0,-8 -10,0 180",
        "G2 20,0,-8 -20,0 360",
        "G3 40,0,-8 10,0 180",
        "G0 40,0,2",
      ],
    ]);
  });
  it("from solid: a helix to the depth, once around at it; later passes are level", () => {
    const passes = pathOf({ ...ROUND, fall: 3.2, radii: [4, 10], levels: 2, start: 0 }, "tip");
    expect(passes.map(({ note }) => note)).toEqual([
      "PASS 1 OF 2, HELIX FROM SOLID",
      "PASS 2 OF 2, LEVEL 1 OF 2",
      "PASS 2 OF 2, LEVEL 2 OF 2",
    ]);
    expect(said(passes[0]!)).toEqual([
      ...["G0 0,0,2", "G0 0,0,2", "G1 0,0,0", "G3 4,0,0 2,0 180", "G3 4,0,-3.2 -4,0 360", "G3 4,0,-6.4 -4,0 360"],
      ...["G3 -4,0,-8 -4,0 180", "G3 -4,0,-8 4,0 360", "G3 0,0,-8 2,0 180", "G0 0,0,2"],
    ]);
    expect(passes[0]!.compensation).toBe("G41");
  });
  it("whose depth is no multiple of its levels end at the depth to the last bit", () => {
    const depths = pathOf({ ...ROUND, depth: 0.7, levels: 3 }, "tip").map(({ moves }) => moves[2]!.z);
    expect(depths).toEqual([-0.7 / 3, (-0.7 * 2) / 3, -0.7]);
  });
});

describe("arcs of a wall", () => {
  it("outside: a quarter circle in from beyond the wall, the sweep, a quarter circle out", () => {
    const [pass] = pathOf(ARC, "tip");
    expect(heads([pass!])).toEqual([["PASS 1 OF 1", "G41", undefined]]);
    expect(said(pass!)).toEqual([
      ...[
        "G0 15,5,2",
        "G0 15,5,2",
        "G0 15,5,-6",
        "G3 10,0,-6 0,-5 90",
        "G2 0,-10,-6 -10,0 90",
        "G3 -5,-15,-6 0,-5 90",
        "G0 -5,-15,2",
      ],
    ]);
  });
  it("of any sweep leave on their own tangent", () => {
    // a twelfth of a turn less than a quarter: 60 degrees of a radius of 10, out about half the radius
    const [c, r] = [0.5, Math.sqrt(3) / 2];
    const [pass] = pathOf({ ...ARC, inside: true, counterClockwise: true, sweep: 60 }, "tip");
    const [, , , , turn, out] = said(pass!);
    expect(turn).toBe(`G3 ${f(10 * c)},${f(10 * r)},-6 -10,0 60`);
    // the quarter's centre stands at 5 on that line, and its end 5 further along the way: (-r, c)
    expect(out).toBe(`G3 ${f(5 * c - 5 * r)},${f(5 * r + 5 * c)},-6 ${f(-5 * c)},${f(-5 * r)} 90`);
  });
  it("inside: from within", () => {
    const inside = {
      ...ARC,
      inside: true,
      counterClockwise: true,
      climb: false,
      levels: 2,
      radii: [10, 10],
      springs: 1,
    };
    const passes = pathOf(inside, "tip");
    expect(heads(passes).slice(0, 3)).toEqual([
      ["PASS 1 OF 1, LEVEL 1 OF 2", "G42", undefined],
      ["PASS 1 OF 1, LEVEL 2 OF 2", "G42", undefined],
      ["SPRING PASS 1 OF 1, LEVEL 1 OF 2", "G42", undefined],
    ]);
    expect(said(passes[0]!)).toEqual([
      ...[
        "G0 5,-5,2",
        "G0 5,-5,2",
        "G0 5,-5,-3",
        "G3 10,0,-3 0,5 90",
        "G3 0,10,-3 -10,0 90",
        "G3 -5,5,-3 0,-5 90",
        "G0 -5,5,2",
      ],
    ]);
  });
});

describe("straight cuts", () => {
  it("a slot on each level, without compensation", () => {
    const passes = pathOf(SLOT, "tip");
    expect(heads(passes)).toEqual([1, 2, 3].map((n) => [`PASS 1 OF 1, LEVEL ${n} OF 3`, undefined, undefined]));
    expect(said(passes[1]!)).toEqual(["G0 -4,0,2", "G0 -4,0,2", "G0 -4,0,-4", "G1 40,0,-4", "G0 40,0,2"]);
    expect(pathOf({ ...SLOT, what: "face" }, "tip")[0]!.compensation).toBeUndefined();
  });
  it("a wall on each offset, with compensation on the side of its way", () => {
    const passes = pathOf(SIDE, "tip");
    expect(heads(passes)).toEqual([
      ["PASS 1 OF 1", "G41", undefined],
      ["SPRING PASS 1 OF 1", "G41", undefined],
    ]);
    expect(passes.map((p) => said(p)[3])).toEqual(["G1 40,6,-6", "G1 40,4,-6"]);
    expect(pathOf({ ...SIDE, climb: false }, "tip")[0]!.compensation).toBe("G42");
  });
});

describe("holes", () => {
  const drilled = { ...DRILL, bottoms: [-5, -9, -12] };
  it("drills leave at rapid and come back to just above where they were", () => {
    const [pass, ...more] = pathOf(drilled, "tip");
    expect(more).toEqual([]);
    expect(heads([pass!])).toEqual([["3 PECKS", undefined, false]]);
    expect(said(pass!)).toEqual([
      ...["G0 0,0,2", "G0 0,0,2", "G1 0,0,-5", "G0 0,0,2", "G0 0,0,-4.5", "G1 0,0,-9", "G0 0,0,2"],
      ...["G0 0,0,-8.5", "G1 0,0,-12", "G0 0,0,2"],
    ]);
    expect(pathOf(DRILL, "tip")[0]!.note).toBe("");
    expect(said(pathOf({ ...DRILL, what: "countersink" }, "tip")[0]!).at(-1)).toBe("G0 0,0,2");
  });
  it("taps and reamers leave at feed; the spindle turns back for a tap", () => {
    for (const what of ["tap", "ream"] as const) {
      const [pass] = pathOf({ ...DRILL, what }, "tip");
      expect(said(pass!)).toEqual(["G0 0,0,2", "G0 0,0,2", "G1 0,0,-12", "G1 0,0,2"]);
      expect(pass!.reverse).toBe(what === "tap");
    }
  });
});
