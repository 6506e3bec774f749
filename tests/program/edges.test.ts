/** Every rule just inside and just over its limit: what is rounding or habit is passed over, what is more is told. */
import { describe, expect, it } from "vitest";
import { BONNET, BRACKET, COVER, HOUSING, type JobOf, LOCK_RING, MANIFOLD } from "./jobs.ts";
import { hole, line, QUARTERS, round, scale, thread, WEAR, widen } from "./planted.ts";
import type { Style } from "./post.ts";
import { alarms, check } from "./shop.ts";
import { type Cut, writeProgram } from "./writer.ts";

const FULL: Style = { name: "full", arcs: "ij 360", lead: "half" };
interface Edge {
  readonly rule: string;
  readonly job: JobOf;
  readonly style?: Style;
  readonly inside: (cuts: Cut[]) => unknown;
  readonly over: (cuts: Cut[]) => unknown;
  readonly expect: string;
}

const lows = (by: number) => (cuts: Cut[]) => Object.assign(thread(cuts), { lows: [thread(cuts).lows[0]! + by] });
const EDGES: readonly Edge[] = [
  {
    rule: "path radius: rounding of the program, then a hundredth",
    job: HOUSING,
    inside: (c) => widen(thread(c), 0.003),
    over: (c) => widen(thread(c), 0.01),
    expect: "20 radius check",
  },
  {
    // M8 6H: pitch diameter 7.188 to 7.348, the middle is planned, so 0.04 on the radius is the end
    rule: "path radius: the pitch diameter inside its limits, then outside",
    job: HOUSING,
    inside: (c) => widen(thread(c), 0.003),
    over: (c) => widen(thread(c), 0.042),
    expect: "20 radius stop",
  },
  {
    rule: "pitch: 0.2 % is a rounded inch pitch, 0.8 % is another pitch",
    job: HOUSING,
    inside: (c) => Object.assign(thread(c), { pitch: 1.2525 }),
    over: (c) => Object.assign(thread(c), { pitch: 1.26 }),
    expect: "20 pitch stop",
  },
  {
    rule: "rise: a turn that is uneven by 0.02, then by a tenth of the pitch",
    job: HOUSING,
    inside: (c) => Object.assign(thread(c), { slip: 0.02 }),
    over: (c) => Object.assign(thread(c), { slip: 0.12 }),
    expect: "20 pitch stop",
  },
  {
    rule: "feed: 4 % is rounding of the shop, 8 % is another feed",
    job: HOUSING,
    inside: (c) => scale(thread(c), "feed", 1.04),
    over: (c) => scale(thread(c), "feed", 1.08),
    expect: "20 feed check",
  },
  {
    rule: "feed: half as much again is looked at, more breaks tools",
    job: BRACKET,
    inside: (c) => scale(line(c), "feed", 0.96),
    over: (c) => scale(line(c), "feed", 1.55),
    expect: "1 feed stop",
  },
  {
    rule: "speed: 2 %, then 5 %",
    job: HOUSING,
    inside: (c) => scale(round(c), "rpm", 0.98),
    over: (c) => scale(round(c), "rpm", 0.95),
    expect: "30 speed check",
  },
  {
    rule: "speed: the machine's own limit, then one per cent over it",
    job: HOUSING,
    inside: (c) => Object.assign(thread(c), { rpm: 12000 }),
    over: (c) => Object.assign(thread(c), { rpm: 12120 }),
    expect: "20 speed stop",
  },
  {
    rule: "start of a thread: a quarter pitch higher is a lead's habit, half a pitch is not",
    job: HOUSING,
    inside: lows(0.25 * 1.25),
    over: lows(0.5 * 1.25),
    expect: "20 depth check",
  },
  {
    rule: "start of a thread: a quarter pitch lower, then half a pitch",
    job: HOUSING,
    inside: lows(-0.25 * 1.25),
    over: lows(-0.5 * 1.25),
    expect: "20 depth check",
  },
  {
    // planned: ends 1.25 over the face with the profile; without the last turn it ends at the face
    rule: "end of a thread: at the face it is whole, 0.3 pitches below it is not",
    job: HOUSING,
    inside: (c) => Object.assign(thread(c), { turns: thread(c).turns - 1 }),
    over: (c) => Object.assign(thread(c), { turns: thread(c).turns - 1.3 }),
    expect: "20 depth check",
  },
  {
    rule: "a full-profile cutter's turn: the whole, then 350 degrees",
    job: COVER,
    inside: (c) => Object.assign(thread(c), { turns: 1.03 }),
    over: (c) => Object.assign(thread(c), { turns: 0.97 }),
    expect: "1 depth stop",
  },
  {
    rule: "depth of a wall: 0.02, then 0.05",
    job: HOUSING,
    inside: (c) => Object.assign(round(c), { levels: [-22.02] }),
    over: (c) => Object.assign(round(c), { levels: [-22.05] }),
    expect: "30 depth check",
  },
  {
    // 6.8 drill: 0.05 and 2 % of the diameter
    rule: "depth of a hole: 0.15 on a 6.8 mm drill, then 0.3",
    job: HOUSING,
    inside: (c) => Object.assign(hole(c), { bottom: hole(c).bottom + 0.15, pecks: [-20.4, hole(c).bottom + 0.15] }),
    over: (c) => Object.assign(hole(c), { bottom: hole(c).bottom + 0.3, pecks: [-20.4, hole(c).bottom + 0.3] }),
    expect: "10 depth check",
  },
  {
    rule: "way out of a through hole: 2 mm further, then 6",
    job: BRACKET,
    inside: (c) => Object.assign(hole(c), { bottom: hole(c).bottom - 2, pecks: [hole(c).bottom - 2] }),
    over: (c) => Object.assign(hole(c), { bottom: hole(c).bottom - 6, pecks: [hole(c).bottom - 6] }),
    expect: "5 depth check",
  },
  {
    rule: "a tap's pitch: 0.4 % of its feed, then 1.5 %",
    job: COVER,
    style: QUARTERS,
    inside: (c) => scale(hole(c), "feed", 1.004),
    over: (c) => scale(hole(c), "feed", 1.015),
    expect: "3 pitch stop",
  },
  {
    rule: "fall of a helix from solid: a fifth more, then 40 %",
    job: MANIFOLD,
    inside: (c) => scale(round(c), "fall", 1.2),
    over: (c) => scale(round(c), "fall", 1.4),
    expect: "D pitch check",
  },
  {
    // M8 in two equal areas from 6.8: the first of them goes to about 0.43 of 0.65
    rule: "the step of a pass: 0.05 further, then 0.15",
    job: HOUSING,
    inside: (c) => thread(c).radii.splice(0, 1, thread(c).radii[0]! + 0.05),
    over: (c) => thread(c).radii.splice(0, 1, thread(c).radii[0]! + 0.15),
    expect: "20 passes check",
  },
  {
    rule: "compensation on the right side, then on the other",
    job: LOCK_RING,
    style: WEAR,
    inside: (c) => Object.assign(thread(c), { compensation: 41 }),
    over: (c) => Object.assign(thread(c), { compensation: 42 }),
    expect: "2 compensation stop",
  },
  {
    rule: "all of the row, then one less",
    job: BONNET,
    inside: (c) => thread(c).places.reverse(),
    over: (c) => thread(c).places.pop(),
    expect: "1 not-in-program check",
  },
  {
    rule: "a hole at the thread's place, then half a millimetre beside it",
    job: HOUSING,
    inside: (c) => thread(c).places.splice(0, 1, [10.05, 10]),
    over: (c) => thread(c).places.splice(0, 1, [10.5, 10]),
    expect: "20 hole check",
  },
  {
    rule: "the hole's bottom just under the thread's tip, then just over it",
    job: HOUSING,
    inside: (c) => Object.assign(thread(c), { lows: [-16.6] }),
    over: (c) => Object.assign(hole(c), { bottom: -16.5, pecks: [-10, -16.5] }),
    expect: "20 hole stop",
  },
];

describe("limits of what is told (independent)", () => {
  const run = (edge: Edge, change: (cuts: Cut[]) => unknown) => {
    const cuts = edge.job.cuts();
    change(cuts);
    return check(writeProgram(cuts, edge.style ?? FULL), edge.job.rows);
  };
  for (const edge of EDGES)
    it(edge.rule, () => {
      const fine = run(edge, edge.inside);
      expect(alarms(fine), fine.map((f) => f.text).join("\n")).toEqual([]);
      const told = run(edge, edge.over);
      expect(alarms(told), told.map((f) => f.text).join("\n")).toContain(edge.expect);
    });
});

describe("programs of more than one part (identity)", () => {
  it("are told as such and are no alarm; one too many is", () => {
    const cuts = HOUSING.cuts();
    hole(cuts).places.push([10, 110], [40, 110], [70, 110]);
    const found = check(writeProgram(cuts, FULL), HOUSING.rows);
    expect(alarms(found)).toEqual([]);
    expect(found.find((f) => f.code === "not-in-plan")!.text).toBe("3 more than the row's 3");
  });
  it("with one of everything are taken for one place", () => {
    const cuts = HOUSING.cuts();
    for (const cut of cuts) if ("places" in cut) cut.places.splice(1);
    const found = check(writeProgram(cuts, FULL), HOUSING.rows);
    expect(alarms(found)).toEqual([]);
    expect(found.find((f) => f.row === "20")!.text).toBe(
      "as planned; one of 3 is in the program, the other places are not compared",
    );
  });
  it("find the same rows whatever the order of the table", () => {
    const text = writeProgram(HOUSING.cuts(), FULL);
    const back = check(text, [...HOUSING.rows].reverse());
    expect(alarms(back)).toEqual([]);
    const sorted = (lines: typeof back) => lines.map((l) => `${l.block} ${l.row} ${l.text}`).sort();
    expect(sorted(back)).toEqual(sorted(check(text, HOUSING.rows)));
  });
});
