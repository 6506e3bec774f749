/**
 * Planned row and made thing side by side: each rule at its limit and just over it. The limits are judgement and stand in the code;
 * the numbers here are worked out from them by hand.
 */
import { describe, expect, it } from "vitest";
import { compareHole, compareLine } from "../../src/program/compare-cuts.ts";
import { compareThread } from "../../src/program/compare-thread.ts";
import { compareArc, compareRound, wallDepth } from "../../src/program/compare-wall.ts";
import {
  compensation,
  type Difference,
  direction,
  fastest,
  passes,
  radius,
  speedAndFeed,
} from "../../src/program/differences.ts";
import type { Cornered, Cuts, Turned } from "../../src/program/made.ts";
import type { Hole, Round, Straight } from "../../src/program/shapes.ts";
import type { HoleShape, LineShape, RoundShape, RowFacts, ThreadShape } from "../../src/program/types.ts";
import { ARC, cutOf, DRILL, holeOf, ROUND, rowOf, SIDE, SLOT, THREAD, turnOf } from "./by-hand.ts";

/** "code what severity" of each. */
const told = (list: readonly Difference[]) =>
  list.map((d) => [d.code, ...("what" in d ? [d.what] : []), d.severity].join(" "));

describe("speed", () => {
  const speed = (rpm: number, row: Partial<RowFacts> = {}, spindle = 1) =>
    told(speedAndFeed(rowOf(ROUND, row), { line: 1, feed: 200, rpm, spindle }));
  it("within 3 %, and within one turn of slow ones", () => {
    expect([speed(1000), speed(1030), speed(970)]).toEqual([[], [], []]);
    expect([speed(1030.5), speed(969.5)]).toEqual([["speed value check"], ["speed value check"]]);
    expect([speed(21, { rpm: 20 }), speed(19, { rpm: 20 })]).toEqual([[], []]);
    expect([speed(21.1, { rpm: 20 }), speed(18.9, { rpm: 20 })]).toEqual([
      ["speed value check"],
      ["speed value check"],
    ]);
  });
  it("over a limit by more than its rounding", () => {
    const mostRpm = { value: 2000, of: "tool" } as const;
    // half in a thousand and half a turn
    expect(speed(2001.4, { mostRpm })).toEqual(["speed value check"]);
    expect(speed(2001.6, { mostRpm })).toEqual(["speed over stop"]);
    expect(speed(2001.4, { mostRpm, rpm: 2000 })).toEqual([]);
    expect(speed(2001.6, { mostRpm, rpm: 2000 })).toEqual(["speed over stop"]);
    expect(speedAndFeed(rowOf(ROUND, { mostRpm }), { line: 7, feed: 200, rpm: 3000, spindle: 1 })).toEqual([
      { code: "speed", what: "over", severity: "stop", line: 7, found: 3000, wanted: 1000, most: 2000, of: "tool" },
    ]);
  });
  it("of a spindle at rest, or one that turns back", () => {
    expect(speed(5000, {}, 0)).toEqual(["speed stopped stop"]);
    expect(speed(1000, {}, -1)).toEqual(["direction spindle stop"]);
    expect(speed(1100, {}, -1)).toEqual(["speed value check", "direction spindle stop"]);
  });
  it("of a row that has none is not looked at", () => {
    expect([speed(5000, { rpm: undefined }), speed(5000, { rpm: undefined }, 0)]).toEqual([[], []]);
    expect(speed(5000, { rpm: undefined }, -1)).toEqual(["direction spindle stop"]);
  });
});

describe("feed", () => {
  const feed = (found: number, row: Partial<RowFacts> = {}, contour = false) =>
    told(speedAndFeed(rowOf(ROUND, row), { line: 1, feed: found, rpm: 1000, spindle: 1 }, contour));
  it("within 5 %; over one and a half times it is a stop", () => {
    expect([feed(200), feed(209.9), feed(190.1)]).toEqual([[], [], []]);
    expect([feed(210.1), feed(189.9), feed(300)]).toEqual([
      ["feed value check"],
      ["feed value check"],
      ["feed value check"],
    ]);
    expect(feed(300.1)).toEqual(["feed value stop"]);
  });
  it("that is not told, or not wanted", () => {
    expect(feed(Number.NaN)).toEqual(["feed none check"]);
    expect(feed(Number.NaN, { feed: undefined })).toEqual([]);
    expect(feed(5000, { feed: undefined })).toEqual([]);
  });
  it("of the edge, within 3 %", () => {
    // the edge runs twice as fast as the centre
    const edge = { edgeFeed: 400 };
    expect([feed(400, edge), feed(411, edge), feed(389, edge)]).toEqual(Array(3).fill(["edge-feed edge stop"]));
    expect([feed(413, edge), feed(387, edge)]).toEqual(Array(2).fill(["feed value stop"]));
    expect([feed(200, edge), feed(400, edge, true)]).toEqual([[], ["edge-feed contour check"]]);
    // outside the edge is the slower one
    expect(feed(100, { edgeFeed: 100 })).toEqual(["edge-feed edge check"]);
    expect(feed(100, { edgeFeed: 100 }, true)).toEqual(["edge-feed contour check"]);
  });
  it("with the step from edge to centre twice", () => {
    const edge = { edgeFeed: 400 };
    expect([feed(100, edge), feed(102.9, edge), feed(97.1, edge)]).toEqual(Array(3).fill(["edge-feed twice check"]));
    expect([feed(103.1, edge), feed(96.9, edge)]).toEqual(Array(2).fill(["feed value check"]));
    // outside that is faster than planned: twice as fast breaks tools, a quarter faster does not
    expect(feed(400, { edgeFeed: 100 })).toEqual(["edge-feed twice stop"]);
    expect(feed(250, { edgeFeed: 160 })).toEqual(["edge-feed twice check"]);
    expect(feed(250)).toEqual(["feed value check"]);
  });
  it("of the run with the largest stands for all", () => {
    const runs = [turnOf({ feed: 100 }), turnOf({ feed: 300 }), turnOf({ feed: 300, line: 9 }), turnOf({ feed: 200 })];
    expect(fastest(runs)).toBe(runs[1]);
  });
});

describe("way round", () => {
  it("has climb milling counter-clockwise inside, clockwise outside", () => {
    for (const inside of [true, false])
      for (const climb of [true, false])
        for (const turn of [1, -1] as const) {
          const found = inside === (turn === 1) ? "climb" : "conventional";
          const line = { code: "direction", what: "way", severity: "check", line: 1, found, clockwise: turn === -1 };
          expect(direction({ inside, climb }, turnOf({ turn }))).toEqual((found === "climb") === climb ? [] : [line]);
        }
  });
});

describe("compensation", () => {
  // path on 10, contour on 15, cutter 10
  const at = (run: Partial<Round>, row: Partial<RowFacts> = {}, shape: Partial<RoundShape> = {}) => {
    const { list, contour } = compensation(rowOf(ROUND, row), { ...ROUND, ...shape }, turnOf(run));
    return [...told(list), ...(contour ? ["contour"] : [])];
  };
  it("has the cutter left of its way in climb milling", () => {
    expect([at({ compensation: 41 }), at({ compensation: 42 })]).toEqual([[], ["compensation side stop"]]);
    expect([at({ compensation: 42, turn: -1 }), at({ compensation: 41, turn: -1 })]).toEqual([
      [],
      ["compensation side stop"],
    ]);
    const outside = { inside: false };
    expect([at({ compensation: 41, turn: -1 }, {}, outside), at({ compensation: 42, turn: -1 }, {}, outside)]).toEqual([
      [],
      ["compensation side stop"],
    ]);
    expect(compensation(rowOf(ROUND), ROUND, turnOf({ compensation: 42, line: 5 })).list).toEqual([
      { code: "compensation", what: "side", severity: "stop", line: 5, found: 42, wanted: 41 },
    ]);
  });
  it("tells the contour from the centre's path by what is nearer", () => {
    const on = { compensation: 41 } as const;
    expect([at({ ...on, radius: 12.5 }), at({ ...on, radius: 12.6 }), at({ ...on, radius: 15 })]).toEqual([
      [],
      ["contour"],
      ["contour"],
    ]);
    expect(at({ radius: 12.6 })).toEqual([]);
  });
  it("is missing where the path is the contour, to a tenth of the cutter", () => {
    expect([at({ radius: 15 }), at({ radius: 15.9 }), at({ radius: 14.1 })]).toEqual(
      Array(3).fill(["compensation contour-off stop"]),
    );
    expect([at({ radius: 16 }), at({ radius: 14 })]).toEqual([[], []]);
    expect(at({ radius: 5 }, {}, { inside: false })).toEqual(["compensation contour-off stop"]);
  });
  it("brings in a wear value", () => {
    const told = ["compensation wear-unused check"];
    expect([at({}, { wearValue: 0.02 }), at({}, { wearValue: -0.02 }), at({}, { wearValue: 0 })]).toEqual([
      told,
      told,
      [],
    ]);
    expect(at({ compensation: 41 }, { wearValue: 0.02 })).toEqual([]);
  });
  it("stays as it is in a turn", () => {
    expect(at({ switched: true })).toEqual(["compensation switched check"]);
    expect(at({ switched: true, compensation: 42 })).toEqual(["compensation side stop", "compensation switched check"]);
  });
});

describe("path radius", () => {
  const at = (found: number, more: Partial<RoundShape> = {}, contour = false, comp: 0 | 41 = 0) =>
    told(radius({ ...ROUND, ...more }, turnOf({ radius: found, compensation: comp }), contour));
  it("within 0.004", () => {
    expect([at(10), at(10.0039), at(9.9961)]).toEqual([[], [], []]);
    expect([at(10.0041), at(9.9959)]).toEqual(Array(2).fill(["radius check"]));
  });
  it("inside the tolerance of the diameter, or 0.2 where none is given", () => {
    expect([at(10.25, { tolerance: 0.5 }), at(9.75, { tolerance: 0.5 })]).toEqual(Array(2).fill(["radius check"]));
    expect([at(10.2501, { tolerance: 0.5 }), at(9.7499, { tolerance: 0.5 })]).toEqual(Array(2).fill(["radius stop"]));
    expect([at(10.099), at(9.901), at(10.101), at(9.899)]).toEqual([
      ["radius check"],
      ["radius check"],
      ["radius stop"],
      ["radius stop"],
    ]);
  });
  it("of a thread inside half the width of its limits", () => {
    const shape: ThreadShape = { ...THREAD, limits: [7, 7.5] };
    const thread = (found: number, limits?: readonly [number, number]) =>
      radius({ ...shape, limits }, turnOf({ radius: found }), false);
    expect(thread(3.125, [7, 7.5])).toEqual([
      {
        code: "radius",
        severity: "check",
        line: 1,
        found: 3.125,
        wanted: 3,
        change: 0.25,
        thread: true,
        contour: false,
        within: true,
      },
    ]);
    expect(thread(3.126, [7, 7.5])).toMatchObject([{ severity: "stop", within: false }]);
    expect(thread(3.05)).toMatchObject([{ severity: "check", within: undefined }]);
    expect(thread(3.2)).toMatchObject([{ severity: "stop", within: undefined }]);
  });
  it("of the contour where that is programmed, and told as missing compensation where it is off", () => {
    expect([at(15, {}, true, 41), at(15.25, {}, true, 41), at(10, {}, true, 41)]).toEqual([
      [],
      ["radius stop"],
      ["radius stop"],
    ]);
    expect(radius(ROUND, turnOf({ radius: 15.05, compensation: 41 }), true)).toMatchObject([
      { wanted: 15, contour: true, thread: false, change: expect.closeTo(0.1, 9) },
    ]);
    expect([at(15.5), at(16.5), at(15.5, {}, false, 41)]).toEqual([[], ["radius stop"], ["radius stop"]]);
  });
});

describe("passes", () => {
  const shape: RoundShape = { ...ROUND, radii: [9, 9.5, 10, 10], springs: 1 };
  const of = (radii: readonly number[], found = radii.length, more: Partial<RoundShape> = {}, contour = false) =>
    told(passes({ ...shape, ...more }, radii, found, contour, 1));
  const right = [9, 9.5, 10, 10];
  it("as many as planned, spring passes apart", () => {
    expect([1, 2, 3, 4, 5].map((n) => of(right, n))).toEqual([
      ["passes missing stop"],
      ["passes missing stop"],
      ["passes springs check"],
      [],
      ["passes more ok"],
    ]);
    expect(passes(shape, right, 2, false, 8)).toMatchObject([{ line: 8, found: 2, wanted: 3 }]);
    expect(passes({ ...shape, springs: 2 }, right, 3, false, 8)).toMatchObject([{ found: 1, wanted: 2 }]);
  });
  it("steps of a quarter and 0.02 over the largest planned one", () => {
    // from 8, where nothing is cut, the first step is 1
    expect([of([9.26, 9.5, 10, 10]), of([9.28, 9.5, 10, 10])]).toEqual([[], ["passes step check"]]);
    expect(of([8.5, 8.7, 9.98, 10])).toEqual(["passes step check"]);
    expect(passes(shape, [9.5, 9.6, 10, 10], 4, false, 8)).toMatchObject([{ line: 8, found: 1.5, wanted: 1 }]);
    const boss = { inside: false, start: 31, radii: [20, 19.5], springs: 0 };
    expect([of([20, 19.5], 2, boss), of([19.8, 19.5], 2, boss)]).toEqual([[], ["passes step check"]]);
  });
  it("steps are not in a program of one radius, of the contour, or from solid", () => {
    expect([of([10, 10, 10, 10]), of([10, 10.0004, 10, 10])]).toEqual([[], []]);
    expect(of([10, 9.999, 10, 10])).toEqual(["passes step check"]);
    expect(of([9.5, 9.6, 10, 10], 4, {}, true)).toEqual([]);
    expect(of([9.5, 9.6, 10, 10], 4, { fall: 1 })).toEqual([]);
    expect(told(passes({ ...THREAD, radii: right, start: 20 }, [9.5, 9.6, 10, 10], 4, false, 1))).toEqual([
      "passes step check",
    ]);
  });
});

describe("threads", () => {
  /** Two passes from Z-2.75 of the tip (profile at -2) in 2.5 turns. */
  const pass = (more: Partial<Round> = {}) => turnOf({ radius: 3, z0: -2.75, z1: -0.25, degrees: 900, ...more });
  const first = pass({ radius: 2 });
  const of = (runs: readonly Round[], shape: Partial<ThreadShape> = {}, zero: "tip" | "profile" = "tip") => {
    const radii = runs.map((r) => r.radius);
    const made: Turned = {
      ...{ kind: "turned", runs, least: Math.min(...radii), most: Math.max(...radii), bottom: 0, rise: 1, line: 1 },
    };
    return compareThread(rowOf(THREAD), { ...THREAD, ...shape }, made, zero);
  };
  const last = (more: Partial<Round>, shape: Partial<ThreadShape> = {}) => told(of([first, pass(more)], shape));
  it("as planned", () => {
    expect(last({})).toEqual([]);
    expect(
      told(
        of(
          [first, pass()].map((r) => ({ ...r, z0: r.z0 + 0.75, z1: r.z1 + 0.75 })),
          {},
          "profile",
        ),
      ),
    ).toEqual([]);
    // leads and level turns beside the helices tell nothing
    expect(told(of([turnOf({ radius: 3, rpm: 9 }), first, pass()]))).toEqual([]);
  });
  it("of the other hand, and the other way round", () => {
    const both = (more: Partial<Round>) => told(of([{ ...first, ...more }, pass(more)]));
    const down = { z0: -0.25, z1: -2.75 };
    expect([both({ turn: -1 }), both(down)]).toEqual([["hand stop"], ["hand stop"]]);
    expect(both({ ...down, turn: -1 })).toEqual(["direction way check"]);
    expect(told(of([first, pass()], { hand: "left" }))).toEqual(["hand stop"]);
    expect(of([first, pass({ turn: -1, line: 4 })])).toMatchObject([{ line: 4, found: "left", wanted: "right" }]);
  });
  it("look at the pass that makes the size: the largest inside, the smallest outside", () => {
    expect(told(of([pass(), { ...first, compensation: 42 }]))).toEqual(["passes step check"]);
    expect(told(of([pass({ compensation: 42 }), first]))).toContain("compensation side stop");
    const outside = { inside: false, climb: false, radii: [4, 3], start: 4 } as const;
    expect(told(of([pass({ radius: 4 }), pass()], outside))).toEqual([]);
    expect(told(of([pass({ radius: 4 }), pass({ compensation: 41 })], outside))).toContain("compensation side stop");
    expect(told(of([pass({ radius: 4, compensation: 41 }), pass()], outside))).toEqual([]);
    // 0.02 from the size is the size
    expect(told(of([first, pass({ radius: 2.99, compensation: 42 }), pass()]))).toContain("compensation side stop");
  });
  it("of another pitch: 0.4 % and the rounding of both ends", () => {
    // over 2.5 turns: 0.004 + 0.006 / 2.5 = 0.0064
    const rise = (r: number, shape = {}) => last({ z1: -2.75 + 2.5 * r }, shape);
    expect([rise(1.006), rise(0.994)]).toEqual([[], []]);
    expect([rise(1.007), rise(0.993)]).toEqual(Array(2).fill(["pitch turn stop"]));
    // 2 mm: 0.008 + 0.0024
    const steep = (r: number) =>
      told(
        of(
          [2, r].map((p, n) => pass({ radius: 2 + n, z1: -2.75 + 2.5 * p })),
          { pitch: 2 },
        ),
      );
    expect([steep(2.01), steep(1.99), steep(2.011), steep(1.989)]).toEqual([
      [],
      [],
      ["pitch turn stop"],
      ["pitch turn stop"],
    ]);
  });
  it("of an uneven rise: a twentieth of the pitch, at least 0.03", () => {
    expect([last({ uneven: 0.05 }), last({ uneven: 0.051 })]).toEqual([[], ["pitch uneven stop"]]);
    const fine = (uneven: number) =>
      told(
        of(
          [2, 3].map((r) => pass({ radius: r, z1: -1.5, uneven })),
          { pitch: 0.5, endZ: -0.75, depth: 2 },
        ),
      );
    expect([fine(0.03), fine(0.031)].map((l) => l.includes("pitch uneven stop"))).toEqual([false, true]);
    expect(of([first, pass({ uneven: 0.1, unevenLine: 9 })])).toMatchObject([
      { code: "pitch", line: 9, off: 0.1, wanted: 1 },
    ]);
  });
  it("too shallow: over 0.3 pitches, from a pitch a stop", () => {
    const low = (z0: number) => told(of([first, pass()].map((r) => ({ ...r, z0, z1: z0 + 2.5 }))));
    expect([low(-2.5), low(-2.46)]).toEqual([[], []]);
    expect([low(-2.4), low(-1.76)]).toEqual(Array(2).fill(["depth shallow check"]));
    expect(low(-1.75)).toEqual(["depth shallow stop"]);
    expect(told(of([first, pass({ z0: -3.125, z1: -0.25, degrees: 1035 })]))).toEqual(["depth deep check"]);
    // in pitches: of a pitch of 2 it is 0.6
    const steep = (z0: number, z1: number) =>
      told(
        of(
          [2, 3].map((r) => pass({ radius: r, z0, z1, degrees: 180 * (z1 - z0) })),
          { pitch: 2, tipToProfile: 0 },
        ),
      );
    expect([steep(-1.5, 0.5), steep(-1.375, 0.5), steep(-2, -0.1875), steep(-2, -0.25)]).toEqual([
      ...[[], ["depth shallow check", "depth turn stop"], ["depth turn stop"], ["depth turn stop", "depth top check"]],
    ]);
    // the deepest of all passes counts
    expect(told(of([first, pass({ z0: -2.375, z1: 0.125 })]))).toEqual([]);
    expect(of([first, pass()].map((r) => ({ ...r, z0: -2.25, z1: 0.25, line: 6 })))).toMatchObject([
      { line: 6, found: -2.25, wanted: -2.75, otherZero: false },
    ]);
    expect(of([first, pass()].map((r) => ({ ...r, z0: -2, z1: 0.5 })))).toMatchObject([{ otherZero: true }]);
  });
  it("too deep, or into the bottom of the hole", () => {
    const low = (by: number, shape: Partial<ThreadShape> = {}) =>
      of(
        [first, pass()].map((r) => ({ ...r, z0: -2.75 - by })).map((r) => ({ ...r, z1: r.z0 + 2.5 })),
        shape,
      );
    const blind = { through: false, holeDepth: 3 };
    expect(told(low(0.29))).toEqual([]);
    expect(told(low(0.375))).toEqual(["depth deep check"]);
    expect(low(0.75)).toMatchObject([
      { what: "deep", otherZero: true, found: -3.5, wanted: -2.75 },
      { what: "top", otherZero: true },
    ]);
    expect(low(0.375, blind)).toEqual([
      { code: "depth", what: "bottom", severity: "stop", line: 1, found: -3.125, wanted: -3, otherZero: false },
    ]);
    for (const more of [
      { ...blind, holeDepth: 3.125 },
      { through: false },
      { holeDepth: 3 },
      { ...blind, inside: false, climb: false },
    ])
      expect(told(low(0.375, more)).filter((t) => t.startsWith("depth"))).toEqual(["depth deep check"]);
    // a quarter pitch deeper is a lead's habit, also where the hole is short
    expect(told(low(0.25, { through: false, holeDepth: 2.8 }))).toEqual([]);
  });
  it("that does not come out at the face: a tenth of a pitch, over a pitch a stop", () => {
    const high = (z: number) => of([first, pass()].map((r) => ({ ...r, z1: z - 0.75, degrees: 360 * (z + 2) })));
    expect([told(high(0)), told(high(-0.09))]).toEqual([[], []]);
    expect(told(high(-0.125))).toEqual(["depth top check"]);
    expect(told(high(-1))).toEqual(["depth top check"]);
    expect(high(-0.25)).toMatchObject([{ found: -1, wanted: -0.25, otherZero: true }]);
    expect(high(-0.375)).toMatchObject([{ otherZero: false }]);
    // every pass does, the least of them counts
    expect(told(of([{ ...first, z1: -0.875, degrees: 675 }, pass()]))).toEqual(["depth top check"]);
    const deep = { startZ: -4, depth: 4 };
    const long = (z: number) =>
      told(
        of(
          [2, 3].map((r) => pass({ radius: r, z0: -4.75, z1: z - 0.75, degrees: 360 * (z + 4) })),
          deep,
        ),
      );
    expect([long(-1), long(-1.125)]).toEqual([["depth top check"], ["depth top stop"]]);
    // a helix that is as a whole too high is told as such
    expect(
      told(
        of(
          [2, 3].map((r) => pass({ radius: r, z0: -4.25, z1: -1.25, degrees: 1080 })),
          deep,
        ),
      ),
    ).toEqual(["depth shallow check"]);
  });
  it("of less than a turn", () => {
    const turned = (degrees: number) =>
      last({ degrees, z0: -2.75, z1: -2.75 + degrees / 360 }, { endZ: -1, full: true, radii: [2, 3] });
    expect([turned(355), turned(354.5)]).toEqual([[], ["depth turn stop"]]);
    expect(of([first, pass({ degrees: 300, z1: -2.75 + 300 / 360 })], { full: true })).toMatchObject([
      { found: 300, wanted: 360 },
    ]);
  });
  it("of a full-profile cutter on each of its levels, told by half a pitch", () => {
    const full = { full: true, radii: [3], levels: [0, 2] };
    const level = (...z: number[]) =>
      told(
        of(
          z.map((z0) => pass({ z0, z1: z0 + 1, degrees: 360 })),
          full,
        ),
      );
    expect(level(-2.75, -0.75)).toEqual([]);
    expect(level(-2.75)).toEqual(["depth levels stop"]);
    expect(level(-2.75, -2.26)).toContain("depth levels stop");
    expect(level(-2.75, -2.25)).toEqual([]);
    // and every level has each pass
    const two = { ...full, radii: [2, 3] };
    const at = (...runs: [number, number][]) =>
      told(
        of(
          runs.map(([r, z0]) => pass({ radius: r, z0, z1: z0 + 1, degrees: 360 })),
          two,
        ),
      );
    expect(at([2, -2.75], [2, -0.75], [3, -2.75], [3, -0.75])).toEqual([]);
    expect(at([3, -2.75], [3, -0.75])).toEqual(["passes missing stop"]);
    expect(at([2, -2.75], [2, -0.75], [3, -2.75])).toEqual([]);
    const three = { ...full, radii: [2, 2.5, 3], start: 7 };
    const each = [-2.75, -0.75].flatMap((z0) =>
      [2, 2.5, 3].map((r) => pass({ radius: r, z0, z1: z0 + 1, degrees: 360 })),
    );
    expect(told(of(each, three))).toEqual([]);
    // radii that differ by less than 0.002 are one: the step is that between the passes and not back to the next level
    expect(at([2, -2.75], [3, -2.75], [2, -0.75], [3, -0.75])).toEqual([]);
  });
  it("look at nothing whose Z is not known", () => {
    const n = Number.NaN;
    expect(told(of([pass({ z0: n, z1: n, compensation: 42 }), first, pass()]))).toEqual([]);
  });
  it("at the feed of the fastest pass", () => {
    expect(told(of([{ ...first, feed: 280 }, pass()]))).toEqual(["feed value check"]);
    expect(told(of([{ ...first, feed: 100 }, pass()]))).toEqual([]);
  });
});

describe("walls", () => {
  it("to 0.03 of their depth, half a millimetre a stop", () => {
    const at = (bottom: number) => told(wallDepth(bottom, 8, 1));
    expect([at(-8), at(-8.0299), at(-7.9701)]).toEqual([[], [], []]);
    expect([at(-8.031), at(-8.5), at(-7.969), at(-7.5)]).toEqual([
      ...[["depth deep check"], ["depth deep check"], ["depth shallow check"], ["depth shallow check"]],
    ]);
    expect([at(-8.51), at(-7.49), at(Number.NaN)]).toEqual([
      ["depth deep stop"],
      ["depth shallow stop"],
      ["depth unknown check"],
    ]);
    expect(wallDepth(-9, 8, 3)).toEqual([
      { code: "depth", what: "deep", severity: "stop", line: 3, found: -9, wanted: -8 },
    ]);
  });
  const of = (runs: readonly Round[], shape: Partial<RoundShape> = {}, bottom = -8) => {
    const radii = runs.map((r) => r.radius);
    const made: Turned = {
      kind: "turned",
      runs,
      least: Math.min(...radii),
      most: Math.max(...radii),
      bottom,
      rise: 0,
      line: 1,
    };
    return compareRound(rowOf(ROUND), { ...ROUND, ...shape }, made);
  };
  it("circles as planned, and the other way round", () => {
    expect(told(of([turnOf()]))).toEqual([]);
    expect(told(of([turnOf({ turn: -1 })]))).toEqual(["direction way check"]);
    expect(told(of([turnOf()], {}, -9))).toContain("depth deep stop");
    expect(told(of([turnOf({ feed: 280 }), turnOf({ line: 2 })], { radii: [10, 10] }))).toEqual(["feed value check"]);
  });
  it("look at the circle that makes the size", () => {
    const two = { radii: [9, 10] };
    expect(told(of([turnOf({ radius: 9, turn: -1 }), turnOf()], two))).toEqual([]);
    expect(told(of([turnOf({ radius: 9 }), turnOf({ turn: -1 })], two))).toEqual(["direction way check"]);
    const boss = { inside: false, climb: false, radii: [11, 10], start: 14 };
    expect(told(of([turnOf({ radius: 11, turn: -1 }), turnOf()], boss))).toEqual([]);
    expect(told(of([turnOf({ radius: 11 }), turnOf({ turn: -1 })], boss))).toEqual(["direction way check"]);
    expect(told(of([turnOf({ radius: 9.99, turn: -1 }), turnOf()], two))).toContain("direction way check");
  });
  it("fewer passes are heavier work and a check", () => {
    expect(told(of([turnOf()], { radii: [9, 10] }))).toEqual(["passes missing check"]);
    expect(told(of([turnOf()], { radii: [10, 10], springs: 1 }))).toEqual(["passes springs check"]);
    expect(told(of([turnOf(), turnOf({ line: 2 })]))).toEqual(["passes more ok"]);
  });
  it("have no step over the plan's largest", () => {
    const steps = (...radii: number[]) =>
      told(
        of(
          radii.map((r) => turnOf({ radius: r })),
          { radii: [9, 9.5, 10] },
        ),
      );
    expect([steps(9, 9.5, 10), steps(9.5, 9.6, 10)]).toEqual([[], ["passes step check"]]);
  });
  it("count the passes at the depth alone", () => {
    const high = (z: number) => turnOf({ z0: z, z1: z });
    expect(told(of([high(-4), turnOf()]))).toEqual([]);
    expect(told(of([high(-7.96), turnOf()]))).toEqual(["passes more ok"]);
    expect(told(of([high(-7.94), turnOf()]))).toEqual([]);
  });
  it("a helix and the level turn that ends it are one pass", () => {
    const helix = (more: Partial<Round> = {}) => turnOf({ z0: 0, z1: -8, degrees: 1440, ...more });
    const solid = { fall: 2 };
    const level = (more: Partial<Round> = {}) => turnOf({ line: 5, ...more });
    expect(told(of([helix(), level()], solid))).toEqual([]);
    expect(told(of([helix()], solid))).toEqual([]);
    const more = ["passes more ok"];
    expect(told(of([helix({ radius: 9 }), level()], solid))).toEqual(more);
    expect(told(of([helix({ line: 9 }), level()], solid))).toEqual(more);
    expect(told(of([helix({ z1: -7.99 }), level()], solid))).toEqual(more);
    expect(told(of([helix(), level({ line: 400 })], solid))).toEqual([]);
    expect(told(of([helix(), level({ line: 401 })], solid))).toEqual(more);
    expect(told(of([helix(), level(), level({ line: 6, z0: -8 })], solid))).toEqual([]);
    expect(told(of([helix(), helix({ line: 2 })], solid))).toEqual(more);
  });
  it("fall into solid by no more than a quarter over the plan", () => {
    const fall = (f: number, shape = { fall: 2 }) =>
      told(of([turnOf({ z0: 0, z1: -8, degrees: (360 * 8) / f })], shape));
    expect([fall(2), fall(2.5), fall(2.56)]).toEqual([[], [], ["pitch fall check"]]);
    expect(fall(4, { fall: 0 })).toEqual([]);
    const steep = turnOf({ z0: 0, z1: -8, degrees: 720, line: 3 });
    expect(of([turnOf({ z0: 0, z1: -8, degrees: 1440 }), steep], { fall: 2, radii: [10, 10] })).toMatchObject([
      { what: "fall", line: 3, found: 4, wanted: 2 },
    ]);
  });
});

describe("arcs", () => {
  const of = (...runs: Partial<Round>[]) => {
    const made: Cornered = {
      ...{ kind: "cornered", radius: 10, bottom: -6, line: 1 },
      runs: runs.map((r) => turnOf({ turn: -1, degrees: 90, z0: -6, z1: -6, ...r })),
    };
    return told(compareArc(rowOf(ARC), ARC, made));
  };
  it("have way, side, radius and feed of their deepest", () => {
    expect(of({})).toEqual([]);
    expect(of({ turn: 1 })).toEqual(["direction way check"]);
    expect(of({ compensation: 42 })).toEqual(["compensation side stop"]);
    expect(of({ radius: 10.05 })).toEqual(["radius check"]);
    expect(of({ z0: -3, z1: -3, radius: 10.05, turn: 1 }, {})).toEqual([]);
    expect(of({}, { z0: -3, z1: -3, radius: 10.05 })).toEqual([]);
    expect(of({}, { feed: 280 })).toEqual(["feed value check"]);
    expect(
      told(
        compareArc(rowOf(ARC), ARC, {
          kind: "cornered",
          radius: 10,
          bottom: -5,
          line: 1,
          runs: [turnOf({ turn: -1, radius: 10 })],
        }),
      ),
    ).toEqual(["depth shallow stop"]);
  });
});

describe("straight cuts", () => {
  const of = (shape: LineShape, ...runs: Partial<Straight>[]) => {
    const made: Cuts = {
      kind: "cuts",
      length: 44,
      line: 1,
      runs: runs.map((r) => cutOf(r)),
      bottom: Math.min(...runs.map((r) => r.z ?? -6)),
    };
    return compareLine(rowOf(shape), shape, made);
  };
  it("as many as offsets and levels, spring passes apart", () => {
    expect([1, 2, 3, 4].map((n) => told(of(SLOT, ...Array(n).fill({}))))).toEqual([
      ...[["passes cuts stop"], ["passes cuts stop"], [], []],
    ]);
    const wall: LineShape = { ...SIDE, offsets: [6, 4, 4], levels: 2 };
    expect([3, 4, 5, 6].map((n) => told(of(wall, ...Array(n).fill({}))))).toEqual([
      ...[["passes cuts stop"], ["passes springs check"], ["passes springs check"], []],
    ]);
    expect(of(wall, {}, {}, {})).toMatchObject([{ found: 3, wanted: 4 }]);
    expect(of(wall, {}, {}, {}, {}, {})).toMatchObject([{ found: 1, wanted: 2 }]);
  });
  it("have the side of compensation of a wall alone, in the deepest cut", () => {
    const two = (side: Partial<Straight>, shape: LineShape = SIDE) => told(of(shape, { z: -3 }, side));
    expect([two({}), two({ compensation: 41 }), two({ compensation: 42 })]).toEqual([
      [],
      [],
      ["compensation side stop"],
    ]);
    const other: LineShape = { ...SIDE, climb: false };
    expect([two({ compensation: 42 }, other), two({ compensation: 41 }, other)]).toEqual([
      [],
      ["compensation side stop"],
    ]);
    expect(two({ compensation: 42 }, { ...SLOT, levels: 2 })).toEqual([]);
    expect(told(of(SIDE, { compensation: 42, z: -3 }, {}))).toEqual([]);
    expect(told(of(SIDE, {}, { compensation: 42, z: -3 }))).toEqual([]);
    expect(of(SIDE, {}, { compensation: 42, z: -6.01, line: 4 })).toMatchObject([{ line: 4, found: 42, wanted: 41 }]);
  });
  it("have the depth of the deepest and the feed of the fastest", () => {
    expect(told(of(SIDE, {}, { z: -6.1 }))).toEqual(["depth deep check"]);
    expect(told(of(SIDE, {}, { feed: 280 }))).toEqual(["feed value check"]);
    expect(told(of(SIDE, { feed: 280 }, {}))).toEqual(["feed value check"]);
    expect(told(of(SIDE, { feed: 100 }, {}))).toEqual([]);
  });
});

describe("holes", () => {
  const of = (made: Partial<Hole>, shape: Partial<HoleShape> = {}, row: Partial<RowFacts> = {}) => {
    const hole = { ...DRILL, ...shape };
    return told(compareHole(rowOf(hole, row), hole, holeOf(made)));
  };
  it("blind: to 0.05 and 2 % of the diameter; half a millimetre and a quarter of it a stop", () => {
    // 8 mm: 0.21 and 2.5
    expect([of({}), of({ bottom: -12.2 }), of({ bottom: -11.8 })]).toEqual([[], [], []]);
    expect([of({ bottom: -12.22 }), of({ bottom: -14.5 })]).toEqual(Array(2).fill(["depth deep check"]));
    expect(of({ bottom: -14.51 })).toEqual(["depth deep stop"]);
    expect([of({ bottom: -11.78 }), of({ bottom: -9.5 })]).toEqual(Array(2).fill(["depth shallow check"]));
    expect(of({ bottom: -9.49 })).toEqual(["depth shallow stop"]);
    expect(of({ bottom: Number.NaN })).toEqual(["depth unknown check"]);
  });
  it("without the drill's point, where that is more than the rounding of both", () => {
    expect([of({ bottom: -10 }), of({ bottom: -10.2 }), of({ bottom: -9.8 })]).toEqual(
      Array(3).fill(["depth no-point check"]),
    );
    expect([of({ bottom: -10.22 }), of({ bottom: -9.78 })]).toEqual(Array(2).fill(["depth shallow check"]));
    // a point of 0.42 and less is not told apart
    expect(of({ bottom: -10 }, { point: 0.43, bottoms: [-10.43] })).toEqual(["depth no-point check"]);
    expect(of({ bottom: -10 }, { point: 0.41, bottoms: [-10.41] })).toEqual(["depth shallow check"]);
  });
  it("through: the full diameter is out, and the way out is no longer than anyone minds", () => {
    // full diameter through at -12, planned to -13
    const through = { through: true, bottoms: [-13], out: 1 };
    expect([of({ bottom: -13 }, through), of({ bottom: -11.8 }, through), of({ bottom: -12 }, through)]).toEqual([
      [],
      [],
      [],
    ]);
    expect(of({ bottom: -11.78 }, through)).toEqual(["depth not-through stop"]);
    // half of 8 mm further out; of a small one 3 mm
    expect([of({ bottom: -17 }, through), of({ bottom: -17.01 }, through)]).toEqual([[], ["depth deep check"]]);
    const small = { ...through, diameter: 2 };
    expect([of({ bottom: -16 }, small), of({ bottom: -16.01 }, small)]).toEqual([[], ["depth deep check"]]);
  });
  it("pecks of a drill that are drilled in one stroke", () => {
    const pecks = { bottoms: [-6, -12] };
    expect([of({}, pecks), of({ strokes: 2 }, pecks), of({}, { bottoms: [-12] })]).toEqual([
      ["passes pecks check"],
      [],
      [],
    ]);
    expect(of({}, { ...pecks, what: "ream" })).toEqual([]);
  });
  it("speed and feed are those of any cut", () => {
    expect([of({ rpm: 1100 }), of({ feed: 230 })]).toEqual([["speed value check"], ["feed value check"]]);
    expect(of({ spindle: -1 })).toEqual(["direction spindle stop"]);
  });
  it("a tap has its hand by G84 and G74, or by its spindle where it is written out", () => {
    const tap = (made: Partial<Hole>, shape: Partial<HoleShape> = {}) => of(made, { what: "tap", point: 0, ...shape });
    expect([
      tap({ cycle: 84 }),
      tap({ cycle: 74 }),
      tap({ cycle: 74 }, { hand: "left" }),
      tap({ cycle: 84 }, { hand: "left" }),
    ]).toEqual([...[[], ["hand stop"], [], ["hand stop"]]]);
    expect([
      tap({ cycle: 0 }),
      tap({ cycle: 0, spindle: -1 }),
      tap({ cycle: 0, spindle: -1 }, { hand: "left" }),
    ]).toEqual([[], ["hand stop"], []]);
    // the sense of the spindle before a cycle is the cycle's own business; one at rest is not
    expect([tap({ cycle: 84, spindle: -1 }), tap({ cycle: 84, spindle: 0 })]).toEqual([[], ["speed stopped stop"]]);
    expect(of({ cycle: 74 })).toEqual([]);
  });
  it("a tap's feed is its pitch, to 0.6 %", () => {
    const tap = (made: Partial<Hole>, row: Partial<RowFacts> = {}) =>
      of({ cycle: 84, ...made }, { what: "tap", point: 0 }, row);
    // 200 a minute at 1000: 0.2
    expect([tap({ feed: 201.1 }), tap({ feed: 198.9 }), tap({ feed: 201.3 }), tap({ feed: 198.7 })]).toEqual([
      ...[[], [], ["pitch tap stop"], ["pitch tap stop"]],
    ]);
    expect(tap({ feed: 400 })).toEqual(["pitch tap stop"]);
    expect(tap({ feed: 100 })).toEqual(["pitch tap stop"]);
    expect(tap({ rpm: 900 })).toEqual(["pitch tap stop", "speed value check"]);
    expect(tap({ bottom: -14, feed: 100, rpm: 500 })).toEqual([
      "depth deep check",
      "speed value check",
      "feed value check",
    ]);
    // half the speed with half the feed is the same pitch
    expect(tap({ feed: 100, rpm: 500 })).toEqual(["speed value check", "feed value check"]);
    expect([tap({ feed: 400 }, { rpm: undefined }), tap({ feed: 400 }, { feed: undefined })]).toEqual([
      ["feed value stop"],
      [],
    ]);
    expect([tap({ feed: 0 }), tap({ rpm: 0 }), tap({ feed: Number.NaN })]).toEqual([
      ...[["feed value check"], ["speed value check"], ["feed none check"]],
    ]);
  });
});
