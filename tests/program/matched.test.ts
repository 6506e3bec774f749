/** What is made at one place, what is alike, and which row it is: by brute force over small cases, and by hand. */
import { describe, expect, it } from "vitest";
import { bottomOf, groupsOf, isHelix, riseOf } from "../../src/program/made.ts";
import { contourOf, finalRadius, type Groups, matchGroups } from "../../src/program/match.ts";
import { holesUnder } from "../../src/program/prepared.ts";
import { type Hole, type Round, Shapes, type Straight } from "../../src/program/shapes.ts";
import type { RowFacts } from "../../src/program/types.ts";
import { ARC, cutOf, DRILL, holeOf, ROUND, rowOf, SLOT, THREAD, turnOf } from "./by-hand.ts";

interface Parts {
  readonly rounds?: readonly Round[];
  readonly arcs?: readonly Round[];
  readonly holes?: readonly Hole[];
  readonly lines?: readonly Straight[];
}
function made({ rounds = [], arcs = [], holes = [], lines = [] }: Parts) {
  const shapes = new Shapes();
  shapes.rounds.push(...rounds);
  shapes.arcs.push(...arcs);
  shapes.holes.push(...holes);
  shapes.lines.push(...lines);
  return groupsOf(shapes);
}
const turned = (...rounds: Round[]) => made({ rounds }).turned.flatMap((g) => g.made);
const helixOf = (more: Partial<Round> = {}) => turnOf({ radius: 3, z0: -2.75, z1: -0.25, degrees: 900, ...more });

describe("a run", () => {
  it("rises per turn, has a bottom, and is a helix over 0.03 a turn", () => {
    expect(riseOf(turnOf({ z0: -3, z1: -2, degrees: 720 }))).toBe(0.5);
    expect(riseOf(turnOf({ z0: -2, z1: -3, degrees: 180 }))).toBe(-2);
    expect([bottomOf(turnOf({ z0: -2, z1: -3 })), bottomOf(turnOf({ z0: -3, z1: -2 }))]).toEqual([-3, -3]);
    expect([0.031, -0.031, 0.03, -0.03, 0].map((r) => isHelix(turnOf({ z0: 0, z1: r })))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });
});

describe("turns at one place", () => {
  it("are those about one centre, with one tool and one offset", () => {
    const at = (more: Partial<Round>) => turned(turnOf(), turnOf({ radius: 9, ...more })).length;
    expect(at({})).toBe(1);
    expect([at({ x: 0.09 }), at({ x: -0.09 }), at({ y: 0.09 }), at({ y: -0.09 }), at({ x: 0.06, y: 0.06 })]).toEqual([
      1, 1, 1, 1, 1,
    ]);
    expect([at({ x: 0.11 }), at({ x: -0.11 }), at({ y: 0.11 }), at({ y: -0.11 }), at({ x: 0.08, y: 0.08 })]).toEqual([
      2, 2, 2, 2, 2,
    ]);
    expect([at({ segment: 2 }), at({ offset: 550 })]).toEqual([2, 2]);
    // in whatever order they come, and wherever the centre lies
    const two = [0, 30.07].flatMap((x) => [turnOf({ x }), turnOf({ x: x + 0.05, radius: 9 })]);
    expect(turned(two[0]!, two[2]!, two[1]!, two[3]!).map((t) => t.runs.map((r) => r.x))).toEqual([
      [0, 0.05],
      [30.07, 30.12],
    ]);
    // three places in the cells of one another's
    expect(
      turned(
        turnOf({ x: 0.01 }),
        turnOf({ x: 0.15 }),
        turnOf({ x: 0.02, radius: 9 }),
        turnOf({ x: 0.16, radius: 9 }),
      ).map((t) => t.runs.length),
    ).toEqual([2, 2]);
  });
  it("have least and largest radius, the depth, the first line, and the rise of their longest helix", () => {
    const [t] = turned(
      turnOf({ radius: 10, line: 7 }),
      turnOf({ radius: 9, z0: 0, z1: -8, degrees: 1440 }),
      turnOf({ radius: 11, z0: -4, z1: -8, degrees: 1440 }),
      turnOf({ radius: 9.5, z0: -8, z1: -4, degrees: 360 }),
    );
    expect(t).toMatchObject({ kind: "turned", least: 9, most: 11, bottom: -8, line: 7, rise: -2 });
    expect(turned(turnOf())[0]!.rise).toBe(0);
    expect(turned(turnOf({ degrees: 1440 }), turnOf({ z0: -6, z1: -8 }))[0]!.rise).toBe(-2);
    expect(turned(turnOf({ x: -20, y: 30 }), turnOf({ x: -20, y: 30, radius: 9 }))).toHaveLength(1);
    expect(turned(helixOf({ degrees: 360, z0: -2, z1: -1 }), helixOf({ degrees: 720, z0: -2, z1: 2 }))[0]!.rise).toBe(
      2,
    );
  });
  it("are parted by depth: a counterbore and the bore below it are two", () => {
    const bore = turnOf({ radius: 5, z0: -16, z1: -16 });
    const above = turnOf({ radius: 7, z0: -4, z1: -4 });
    expect(turned(bore, above).map((t) => [t.bottom, t.runs.length])).toEqual([
      [-16, 1],
      [-4, 1],
    ]);
    // the levels of one radius belong to its depth
    expect(turned(turnOf({ radius: 5, z0: -8, z1: -8 }), above, bore).map((t) => [t.bottom, t.runs.length])).toEqual([
      [-16, 2],
      [-4, 1],
    ]);
    // radii within 0.02 are one, and depths within 0.05
    expect(turned(bore, turnOf({ radius: 5.02, z0: -8, z1: -8 }))).toHaveLength(1);
    expect(turned(bore, turnOf({ radius: 4.98, z0: -8, z1: -8 }))).toHaveLength(1);
    expect(turned(bore, turnOf({ radius: 5.04, z0: -8, z1: -8 }))).toHaveLength(2);
    expect(turned(bore, turnOf({ radius: 6, z0: -15.96, z1: -15.96 }))).toHaveLength(1);
    expect(turned(bore, turnOf({ radius: 6, z0: -15.94, z1: -15.94 }))).toHaveLength(2);
    expect(turned(bore, turnOf({ radius: 6, z0: -16.06, z1: -16.06 }))).toHaveLength(2);
  });
  it("of unknown depth are together", () => {
    const n = Number.NaN;
    expect(turned(turnOf({ z0: n, z1: n }), turnOf({ z0: n, z1: n, radius: 12 }), turnOf({ radius: 14 }))).toHaveLength(
      2,
    );
  });
});

describe("what is alike", () => {
  const groups = (...rounds: Round[]) => made({ rounds }).turned.map((g) => [g.made.length, g.left]);
  const at = (x: number, more: Partial<Round> = {}) => turnOf({ x, ...more });
  it("turns: by tool, number, sizes, depth, rise, speed, feed, compensation and sense", () => {
    expect(groups(at(0), at(30), at(60))).toEqual([[3, 3]]);
    for (const more of [
      { segment: 2 },
      { radius: 10.1 },
      { z0: -9, z1: -9 },
      { z0: -7 },
      { rpm: 900 },
      { feed: 100 },
      { compensation: 41 },
      { turn: -1 },
    ] as const)
      expect(groups(at(0), at(30, more)), JSON.stringify(more)).toEqual([
        [1, 1],
        [1, 1],
      ]);
    expect(groups(at(0), at(30), at(30))).toHaveLength(2);
    expect(groups(at(0), at(0, { radius: 9 }), at(30), at(30, { radius: 8 }))).toHaveLength(2);
    // within hundredths
    expect(groups(at(0), at(30, { radius: 10.005, z0: -8.005, z1: -8.005 }))).toEqual([[2, 2]]);
  });
  it("holes: by tool, bottom, speed, feed, cycle and strokes", () => {
    const holes = (more: Partial<Hole>) => made({ holes: [holeOf(), holeOf({ x: 9, ...more })] }).holes.length;
    expect(holes({})).toBe(1);
    for (const more of [{ segment: 2 }, { bottom: -12.1 }, { rpm: 900 }, { feed: 100 }, { cycle: 83 }, { strokes: 2 }])
      expect(holes(more), JSON.stringify(more)).toBe(2);
    expect(holes({ bottom: -12.005 })).toBe(1);
  });
  it("arcs and turns of one radius, sense and tool are one corner", () => {
    const corner = (more: Partial<Round>) =>
      made({ arcs: [turnOf({ degrees: 90, line: 3 }), turnOf({ degrees: 90, z0: -2, z1: -9, ...more })] }).cornered;
    expect(corner({})).toMatchObject([
      { made: [{ kind: "cornered", radius: 10, bottom: -9, line: 3, runs: [{}, {}] }], left: 1 },
    ]);
    for (const more of [{ segment: 2 }, { radius: 10.1, line: 4 }, { turn: -1, line: 4 }] as const)
      expect(
        corner({ line: 4, ...more }).flatMap((g) => g.made),
        JSON.stringify(more),
      ).toHaveLength(2);
    expect(made({ arcs: [turnOf({ degrees: 90 })], rounds: [turnOf()] }).cornered[0]!.made[0]!.runs).toHaveLength(2);
  });
  it("straight cuts of one length and tool are one", () => {
    const cuts = (more: Partial<Straight>) => made({ lines: [cutOf({ line: 3 }), cutOf({ z: -9, ...more })] }).cuts;
    expect(cuts({ x1: 44.04 })).toMatchObject([
      { made: [{ kind: "cuts", length: 44, bottom: -9, line: 3, runs: [{}, {}] }], left: 1 },
    ]);
    expect(cuts({ x0: 10, x1: 10, y0: 5, y1: 49 })[0]!.made[0]!.runs).toHaveLength(2);
    for (const more of [{ segment: 2 }, { x1: 44.2 }, { y1: 9 }])
      expect(
        cuts({ line: 4, ...more }).flatMap((g) => g.made),
        JSON.stringify(more),
      ).toHaveLength(2);
    const [far] = made({ lines: [cutOf({ x0: 100, x1: 130, y0: 200, y1: 240 })] }).cuts;
    expect(far!.made[0]!.length).toBe(50);
  });
});

const match = (rows: readonly RowFacts[], parts: Parts | Groups, zero: "tip" | "profile" = "tip") => {
  const groups = "turned" in parts ? parts : made(parts);
  return { groups, matches: matchGroups(rows, groups, zero) };
};
/** Whether a row takes a made thing for its own. */
const takes = (row: RowFacts, parts: Parts, zero: "tip" | "profile" = "tip") =>
  match([row], parts, zero).matches.length > 0;

describe("the contour", () => {
  it("is half a cutter from the path, and the last pass makes the size", () => {
    expect(contourOf(10, { inside: true, cutter: 6 })).toBe(13);
    expect(contourOf(10, { inside: false, cutter: 6 })).toBe(7);
    expect(finalRadius({ radii: [8, 9] })).toBe(9);
  });
});

/**
 * The cost of a row for a thing is a sum: size and pitch count 2, depth 1, speed and feed a half each, of which a difference d takes
 * d / (d + h): a half where it is h (size 0.1, pitch 0.05, depth 0.5 mm, speed and feed a tenth in logarithm).
 */
describe("how far off a thing may be", () => {
  const thread = (more: Partial<Round>, row: Partial<RowFacts> = {}, zero: "tip" | "profile" = "tip") =>
    takes(rowOf({ ...THREAD, radii: [3] }, row), { rounds: [helixOf(more)] }, zero);
  it("a thread: one of size, pitch and depth may be wrong, with speed and feed, but not all", () => {
    expect(thread({})).toBe(true);
    expect(thread({ radius: 300 })).toBe(true);
    expect(thread({ z1: 500 })).toBe(true);
    expect(thread({ rpm: 1e9, feed: 1e9 })).toBe(true);
    expect(thread({ radius: 300, rpm: 1e9, feed: 1e9 })).toBe(true);
    expect(thread({ radius: 300, z1: 500 })).toBe(false);
    // size 2, and depth 1, come to 3; with speed or feed to more than 3.3
    const deep = { z0: -500, z1: -497.5 };
    expect(thread({ radius: 300, ...deep })).toBe(true);
    expect(thread({ radius: 300, ...deep, rpm: 1e9 })).toBe(false);
    expect(thread({ radius: 300, ...deep, feed: 1e9 })).toBe(false);
    expect(thread({ ...deep, rpm: 1e9, feed: 1e9 })).toBe(true);
    // not known is half off: 2 + 1 + 0.25
    expect(thread({ radius: 300, ...deep, rpm: 0 })).toBe(true);
    expect(thread({ radius: 300, ...deep, rpm: 0, feed: 0 })).toBe(false);
    expect(thread({ radius: 300, ...deep }, { rpm: undefined })).toBe(true);
    expect(thread({ radius: 300, ...deep }, { rpm: undefined, feed: undefined })).toBe(false);
    expect(thread({ z0: -2.75, z1: -2.75 })).toBe(false);
  });
  it("a thread's size is that of its path or its contour, its depth that of the tip or the profile", () => {
    const deep = { z0: -500, z1: -497.5, rpm: 1e9 };
    // 1 for depth, 0.5 for speed: 1.8 are left, which a size takes at 0.9
    expect([thread({ ...deep, radius: 2.11 }), thread({ ...deep, radius: 2.04 })]).toEqual([true, false]);
    expect([thread({ ...deep, radius: 5.89 }), thread({ ...deep, radius: 5.96 })]).toEqual([true, false]);
    // 3.3 less the size: 1.3, depth takes 0.8 where it is 2 off, feed 0.5
    const off = { radius: 1e6, feed: 1e99 };
    const low = (by: number, zero: "tip" | "profile") => {
      const z0 = -2 - (zero === "tip" ? 0.75 : 0) - by;
      return thread({ ...off, z0, z1: z0 + 2.5 }, {}, zero);
    };
    for (const zero of ["tip", "profile"] as const)
      expect([low(1.98, zero), low(2.02, zero), low(-1.98, zero), low(-2.02, zero)]).toEqual([
        true,
        false,
        true,
        false,
      ]);
    // the feed is that of the centre or of the edge
    expect(thread({ ...off, z0: -502.75, z1: -500.25 }, { edgeFeed: 1e99 })).toBe(true);
    expect(thread({ ...off, z0: -502.75, z1: -500.25 }, { edgeFeed: 1e8 })).toBe(false);
  });
  it("a thread's pitch", () => {
    // depth and speed and feed are all wrong: 2, and 1.3 are left for the pitch, 0.65 of it: 0.05 · 0.65 / 0.35
    const at = (rise: number) => thread({ z0: -5002.75, z1: -5002.75 + 2.5 * rise, rpm: 1e99, feed: 1e99 });
    expect([at(1.0928), at(1.094), at(0.9072), at(0.906), at(-1.0928)]).toEqual([true, false, true, false, true]);
  });
  it("a circle: its size may be wrong, or its depth with speed and feed", () => {
    const round = (more: Partial<Round>) => takes(rowOf(ROUND), { rounds: [turnOf(more)] });
    const deep = { z0: -1e6, z1: -1e6 };
    expect([round({}), round({ radius: 1e6 }), round(deep), round({ ...deep, rpm: 1e99, feed: 1e99 })]).toEqual([
      true,
      true,
      true,
      true,
    ]);
    expect([
      round({ radius: 1e6, ...deep }),
      round({ radius: 1e6, rpm: 1e99 }),
      round({ radius: 1e6, rpm: 1e99, feed: 1e99 }),
    ]).toEqual([...[false, true, false]]);
    // 0.6 are left for the depth where the size is wrong: 0.75 mm
    expect([-8.74, -8.76, -7.26, -7.24].map((z) => round({ radius: 1e9, z0: z, z1: z }))).toEqual([
      true,
      false,
      true,
      false,
    ]);
    // turns that rise are a thread's: 2 more, so that no more than 0.6 is left
    const up = (more: Partial<Round> = {}) => round({ z0: -8, z1: -6, ...more });
    expect([
      up(),
      up({ rpm: 1e99 }),
      up({ rpm: 1e99, feed: 1e99 }),
      round({ z0: -6, z1: -8, rpm: 1e99, feed: 1e99 }),
    ]).toEqual([true, true, false, true]);
    expect(takes(rowOf(ROUND), { rounds: [turnOf({ z0: -8, z1: -6, rpm: 1e99, feed: 1e99 }), turnOf()] })).toBe(true);
    expect(
      takes(rowOf({ ...ROUND, inside: false, radii: [9] }), {
        rounds: [turnOf({ radius: 9, ...deep, rpm: 1e99 }), turnOf({ radius: 20, ...deep })],
      }),
    ).toBe(true);
    expect(
      takes(rowOf({ ...ROUND, radii: [9] }), {
        rounds: [turnOf({ radius: 9, ...deep, rpm: 1e99 }), turnOf({ radius: 20, ...deep })],
      }),
    ).toBe(false);
  });
  it("a corner: its size may be wrong, and other angles count a little", () => {
    const arc = (more: Partial<Round>) =>
      takes(rowOf(ARC), { arcs: [turnOf({ degrees: 90, z0: -6, z1: -6, turn: -1, ...more })] });
    expect([arc({}), arc({ radius: 1e6 }), arc({ radius: 1e6, rpm: 1e99 })]).toEqual([true, true, false]);
    const deep = { z0: -1e6, z1: -1e6, rpm: 1e99, feed: 1e99 };
    expect([arc(deep), arc({ ...deep, degrees: 180 }), arc({ ...deep, radius: 10.2 })]).toEqual([true, true, false]);
    // 2 by the size, 0.2 are left: half of it where 90 degrees are missing, so 0.1 for the depth
    const z = (by: number, degrees: number) => arc({ radius: 1e9, degrees, z0: -6 + by, z1: -6 + by });
    expect([z(0.12, 90), z(0.13, 90), z(0.05, 180), z(0.06, 180), z(0.05, 0.001)]).toEqual([
      true,
      false,
      true,
      false,
      true,
    ]);
  });
  it("a cut: as long as the row, less a cutter at the most, and not much longer", () => {
    // 40 long, 4 over, cutter 8: from 31.5 to 70
    const cut = (length: number, more: Partial<Straight> = {}) =>
      takes(rowOf(SLOT), { lines: [cutOf({ x1: length, ...more })] });
    expect([cut(31.5), cut(31.4), cut(70), cut(70.1)]).toEqual([true, false, true, false]);
    expect([
      cut(44, { z: -1e6 }),
      cut(44, { rpm: 1e99 }),
      cut(44, { z: -1e6, rpm: 1e99 }),
      cut(44, { z: -1e6, rpm: 1e99, feed: 1e99 }),
    ]).toEqual([...[true, true, true, false]]);
    // 2 by depth and speed: 0.2 left, which the length takes where it is a quarter cutter off
    const off = (length: number) => cut(length, { z: -1e9, rpm: 1e99 });
    expect([off(45.9), off(46.1), off(42.1), off(41.9)]).toEqual([true, false, true, false]);
    expect([-6.12, -6.13].map((z) => cut(44, { z, rpm: 1e99, feed: 1e99 }))).toEqual([true, false]);
  });
  it("a hole: its depth counts double, and so do speed and feed", () => {
    const hole = (more: Partial<Hole>, what: "drill" | "tap" | "ream" | "countersink" = "drill") =>
      takes(rowOf({ ...DRILL, what }), { holes: [holeOf(more)] });
    expect([hole({ bottom: -1e6 }), hole({ bottom: -1e6, rpm: 1e99 }), hole({ rpm: 1e99, feed: 1e99 })]).toEqual([
      true,
      false,
      true,
    ]);
    // depth 2: 0.6 left, which a speed takes at e^0.15
    expect([hole({ bottom: -1e9, rpm: 1161 }), hole({ bottom: -1e9, rpm: 1163 })]).toEqual([true, false]);
    // tapping where none is planned, or none where it is, costs 1.5: 1.1 left, which the depth takes at 0.55: 0.61 mm
    for (const [what, made] of [
      ["drill", { cycle: 84 }],
      ["drill", { cycle: 74 }],
      ["drill", { cycle: 0, reversed: true }],
      ["tap", { cycle: 81 }],
      ["tap", { cycle: 0 }],
    ] as const)
      expect([hole({ ...made, bottom: -12.6 }, what), hole({ ...made, bottom: -12.62 }, what)], what).toEqual([
        true,
        false,
      ]);
    // a cycle that is not for it costs 0.5: 2.1 left beside a depth of 2, so that speed has 0.1: e^0.0111
    const other = (what: "drill" | "tap" | "ream" | "countersink", cycle: number) =>
      !hole({ bottom: -1e9, rpm: 1050, cycle }, what) || !hole({ bottom: -1e9, rpm: 1100, cycle }, what);
    const cycles = [0, 73, 81, 82, 83, 85, 86, 87, 88, 89, 76];
    const own = (what: "drill" | "ream" | "countersink") => cycles.filter((cycle) => !other(what, cycle));
    expect(own("drill")).toEqual([0, 73, 81, 82, 83]);
    expect(own("ream")).toEqual([0, 81, 82, 85, 86, 87, 88, 89, 76]);
    expect(own("countersink")).toEqual([0, 81, 82]);
    for (const made of [{ cycle: 74 }, { cycle: 84 }, { cycle: 0, reversed: true }])
      expect(hole({ ...made, bottom: -1e9, rpm: 1100 }, "tap"), JSON.stringify(made)).toBe(true);
  });
  it("of another kind it is never the row", () => {
    const all: Parts = {
      rounds: [helixOf()],
      holes: [holeOf()],
      lines: [cutOf()],
      arcs: [turnOf({ degrees: 90, z0: -6, z1: -6, turn: -1 })],
    };
    const kinds = [THREAD, DRILL, SLOT, ARC].map((shape) =>
      match([rowOf(shape)], all).matches.map((m) => m.group.made[0]!.kind),
    );
    expect(kinds).toEqual([["turned"], ["hole"], ["cuts"], ["cornered"]]);
    expect(match([rowOf(undefined)], all).matches).toEqual([]);
  });
});

describe("which row it is", () => {
  const numbers = (rows: RowFacts[], parts: Parts) => {
    const { matches, groups } = match(rows, parts);
    const left = [...groups.turned, ...groups.holes, ...groups.cornered, ...groups.cuts].map((g) => g.left);
    return { took: matches.map((m) => `${m.row.name}:${m.number}`), left };
  };
  const holes = (n: number, more: Partial<Hole> = {}) =>
    Array.from({ length: n }, (_, x) => holeOf({ x: 10 * x, ...more }));
  it("as many as it wants; the rest stays", () => {
    expect(numbers([rowOf(DRILL, { quantity: 2 })], { holes: holes(3) })).toEqual({ took: ["1:2"], left: [1] });
    expect(numbers([rowOf(DRILL, { quantity: 5 })], { holes: holes(3) })).toEqual({ took: ["1:3"], left: [0] });
    expect(numbers([rowOf(SLOT, { quantity: 5 })], { lines: [cutOf(), cutOf({ segment: 2, line: 9 })] })).toEqual({
      took: ["1:1"],
      left: [0, 1],
    });
    expect(
      numbers([rowOf(ARC, { quantity: 5 })], {
        arcs: [1, 2].map((segment) => turnOf({ degrees: 90, z0: -6, z1: -6, turn: -1, segment, line: segment })),
      }),
    ).toEqual({
      took: ["1:1"],
      left: [0, 1],
    });
  });
  it("the nearest first, whatever the order of rows and things", () => {
    const deep = rowOf({ ...DRILL, bottoms: [-20] }, { name: "deep" });
    const flat = rowOf(DRILL, { name: "flat" });
    const parts = { holes: [holeOf({ bottom: -20.1 }), holeOf({ bottom: -12.1, x: 9 })] };
    expect(numbers([flat, deep], parts).took.sort()).toEqual(["deep:1", "flat:1"]);
    const { matches } = match([flat, deep], parts);
    expect(
      matches.every((m) => Math.abs((m.group.made[0] as Hole).bottom - (m.row.name === "deep" ? -20.1 : -12.1)) < 1e-9),
    ).toBe(true);
  });
  it("rows that are alike share, and a row that no other is nearer to goes first", () => {
    const [a, b] = ["a", "b"].map((name) => rowOf(DRILL, { name, quantity: 2 }));
    expect(numbers([a!, b!], { holes: [...holes(2), ...holes(2, { segment: 2 })] })).toEqual({
      took: ["a:2", "b:2"],
      left: [0, 0],
    });
    expect(numbers([a!, b!], { holes: holes(4) })).toEqual({ took: ["a:2", "b:2"], left: [0] });
    // "b" fits neither as well as "a", and takes what "a" leaves
    const worse = rowOf(DRILL, { name: "b", quantity: 2, rpm: 1500 });
    expect(numbers([worse, a!], { holes: holes(3) })).toEqual({ took: ["a:2", "b:1"], left: [0] });
    // a row that is nearly as near has a group of its own before another takes a second; one that is further off has not
    const spread = { holes: [...holes(1), ...holes(1, { segment: 2, rpm: 1002 })] };
    const few = (rpm: number) =>
      numbers([rowOf(DRILL, { name: "many", quantity: 9 }), rowOf(DRILL, { name: "few", rpm })], spread).took;
    expect([few(998), few(980)]).toEqual([
      ["many:1", "few:1"],
      ["many:1", "many:1"],
    ]);
    // each row its own group before the rest of another's is given
    const wants = rowOf(DRILL, { name: "many", quantity: 9 });
    const near = rowOf(DRILL, { name: "few", quantity: 1, rpm: 1001 });
    const groups = { holes: [...holes(1), ...holes(1, { segment: 2, rpm: 1002 })] };
    expect(numbers([wants, near], groups).took.sort()).toEqual(["few:1", "many:1"]);
  });
});

describe("the hole under a thread or a reamer", () => {
  const drill = rowOf({ ...DRILL, diameter: 7, bottoms: [-12] }, { name: "drill", quantity: 9 });
  const thread = rowOf({ ...THREAD, radii: [3], through: false }, { name: "thread", quantity: 9 });
  interface Case {
    readonly rows?: readonly RowFacts[];
    readonly holes?: readonly Hole[];
    readonly run?: Partial<Round>;
    readonly zero?: "tip" | "profile";
  }
  const under = ({ rows = [drill, thread], holes = [holeOf()], run = {}, zero = "tip" }: Case) => {
    const { groups, matches } = match(rows, { holes, rounds: [helixOf({ line: 50, segment: 2, ...run })] }, zero);
    const own = matches.find((m) => m.group.made[0]!.kind === "turned")!;
    const shape = own.row.shape as typeof THREAD;
    return holesUnder(shape, own, matches, groups, zero).map(
      ({ severity, line, ...rest }) => [`${(rest as { what: string }).what} ${severity} ${line}`, rest] as const,
    );
  };
  const told = (asked: Case) => under(asked).map(([text]) => text);
  it("stands at its place, to a tenth of a millimetre, in its offset", () => {
    expect(told({})).toEqual([]);
    expect([told({ run: { x: 0.1 } }), told({ run: { y: -0.1 } }), told({ run: { x: 0.08, y: 0.08 } })]).toEqual([
      [],
      [],
      ["none check 50"],
    ]);
    expect([told({ run: { x: 0.11 } }), told({ run: { y: 0.11 } }), told({ run: { offset: 550 } })]).toEqual(
      Array(3).fill(["none check 50"]),
    );
    expect(under({ run: { x: 3, y: 4 } })[0]![1]).toMatchObject({ x: 3, y: 4 });
    expect(told({ holes: [holeOf({ x: 30, y: 40 })], run: { x: 30, y: 40 } })).toEqual([]);
  });
  it("is drilled before", () => {
    expect([told({ holes: [holeOf({ line: 50 })] }), told({ holes: [holeOf({ line: 51 })] })]).toEqual([
      [],
      ["later stop 50"],
    ]);
    expect(under({ holes: [holeOf({ line: 60 })] })[0]![1]).toMatchObject({ drilled: 60 });
  });
  it("is deeper than the tip, unless it goes through", () => {
    const at = (z0: number, asked: Case = {}) =>
      told({
        run: { z0, z1: z0 + 2.5 },
        holes: [holeOf({ bottom: -3 })],
        rows: [{ ...drill, shape: { ...DRILL, diameter: 7, bottoms: [-3] } }, thread],
        ...asked,
      });
    expect([at(-2.75), at(-2.99), at(-3), at(-3.1)]).toEqual([[], [], ["shallow stop 50"], ["shallow stop 50"]]);
    // measured at the profile the tip is 0.75 lower
    expect([at(-2.2, { zero: "profile" }), at(-2.3, { zero: "profile" })]).toEqual([[], ["shallow stop 50"]]);
    const through = { ...DRILL, diameter: 7, bottoms: [-3], through: true };
    expect(at(-3.1, { rows: [{ ...drill, shape: through }, thread] })).toEqual([]);
    expect(under({ run: { z0: -12.5, z1: -10 } })[0]![1]).toMatchObject({ bottom: -12, tip: -12.5 });
  });
  it("is looked for where a drill of its size is planned, to 15 %, under an internal thread alone", () => {
    const size = (diameter: number) =>
      told({ rows: [{ ...drill, shape: { ...DRILL, diameter, bottoms: [-12] } }, thread], run: { x: 5 } });
    expect([size(7), size(8.04), size(5.96), size(8.06), size(5.94)]).toEqual([
      ...Array(3).fill(["none check 50"]),
      [],
      [],
    ]);
    const far = (shape: Partial<typeof THREAD>) =>
      told({ rows: [drill, { ...thread, shape: { ...THREAD, radii: [3], ...shape } }], run: { x: 5 } });
    expect([
      far({}),
      far({ inside: false, radii: [3] }),
      far({ start: 0 }),
      told({ rows: [thread], run: { x: 5 } }),
    ]).toEqual([["none check 50"], [], [], []]);
    const tap = rowOf({ ...DRILL, what: "ream", diameter: 7, bottoms: [-12] }, { name: "other" });
    expect(told({ rows: [tap, thread], run: { x: 5 } })).toEqual([]);
  });
  it("is looked for among many, and under the deepest of all passes", () => {
    const many = Array.from({ length: 6 }, (_, k) => holeOf({ x: 20 * k, line: 60 }));
    expect(told({ holes: many })).toEqual(["later stop 50"]);
    const { groups, matches } = match([drill, thread], {
      holes: [holeOf()],
      rounds: [
        helixOf({ z0: -12.5, z1: -10, segment: 2, line: 50 }),
        helixOf({ z0: -11.5, z1: -9, segment: 2, line: 51 }),
      ],
    });
    const own = { row: thread, group: groups.turned[0]!, number: 1 };
    expect(holesUnder(thread.shape as typeof THREAD, own, matches, groups, "tip")).toMatchObject([
      { what: "shallow", tip: -12.5 },
    ]);
  });
  it("may be another row's, and is not told where more than one or four stand at one place", () => {
    const other = (x: number) => holeOf({ x, bottom: -30, segment: 7, rpm: 9 });
    expect([
      told({ holes: [holeOf(), other(5)], run: { x: 5 } }),
      told({ holes: [holeOf(), other(6)], run: { x: 5 } }),
    ]).toEqual([[], ["none check 50"]]);
    expect([
      told({ holes: [holeOf({ line: 60 }), holeOf({ line: 61 })] }),
      told({ holes: [holeOf({ line: 60 }), holeOf({ line: 61, x: 9 })] }),
    ]).toEqual([...[[], ["later stop 50"]]]);
    const crowd = (n: number) =>
      told({
        holes: [
          holeOf({ line: 60 }),
          ...Array.from({ length: n }, (_, k) => holeOf({ bottom: -30 - k, segment: 7, rpm: 9 })),
        ],
      });
    expect([crowd(3), crowd(4)]).toEqual([["later stop 50"], []]);
  });
  it("a reamer's own hole is not the one under it; its size is the drill's", () => {
    const ream = rowOf({ ...DRILL, what: "ream", diameter: 7, bottoms: [-10], point: 0 }, { name: "ream" });
    const at = (holes: readonly Hole[], row = ream) => {
      const { groups, matches } = match([drill, row], {
        holes: [...holes, holeOf({ cycle: 85, bottom: -10, line: 50, segment: 2 })],
      });
      const own = matches.find((m) => m.row === row)!;
      expect((own.group.made[0] as Hole).cycle).toBe(85);
      return holesUnder(row.shape as typeof DRILL, own, matches, groups, "tip").map(
        (d) => `${(d as { what: string }).what} ${d.severity}`,
      );
    };
    expect([at([holeOf()]), at([holeOf({ x: 5 })]), at([holeOf({ line: 60 })])]).toEqual([
      [],
      ["none check"],
      ["later stop"],
    ]);
    expect(
      at([holeOf({ bottom: -12 })], { ...ream, shape: { ...DRILL, what: "countersink", diameter: 7, bottoms: [-10] } }),
    ).toEqual([]);
    // as many of the group as are the row's
    const two = match([drill, ream], {
      holes: [holeOf(), ...[0, 5].map((x) => holeOf({ x, cycle: 85, bottom: -10, line: 50, segment: 2 }))],
    });
    const own = two.matches.find((m) => m.row === ream)!;
    expect([own.number, own.group.made.length]).toEqual([1, 2]);
    expect(holesUnder(ream.shape as typeof DRILL, own, two.matches, two.groups, "tip")).toEqual([]);
  });
});
