/** The picture of a row and of what a program makes of it, point by point by hand. */
import { describe, expect, it } from "vitest";
import type { Cornered, Cuts, Made, Turned } from "../../src/program/made.ts";
import { type Picture, pictureOf } from "../../src/program/picture.ts";
import type { Round } from "../../src/program/shapes.ts";
import type { Shape } from "../../src/program/types.ts";
import { ARC, cutOf, DRILL, holeOf, ROUND, rowOf, SIDE, SLOT, THREAD, turnOf } from "./by-hand.ts";

const f = (value: number) => String(Number(value.toFixed(4)) + 0);
const draw = (shape: Shape, made?: Made, zero: "tip" | "profile" = "tip") => pictureOf(rowOf(shape), made, zero)!;
const said = (picture: Picture, view: "above" | "section") =>
  picture[view].lines.map(({ kind, points }) => `${kind}: ${points.map(([x, y]) => `${f(x)},${f(y)}`).join(" ")}`);
const of = (picture: Picture, view: "above" | "section", kind: string) =>
  said(picture, view).flatMap((line) => (line.startsWith(`${kind}: `) ? [line.slice(kind.length + 2)] : []));
/** Radius and sense of every point of a circle about the origin. */
const radii = (line: string) => [
  ...new Set(line.split(" ").map((p) => f(Math.hypot(...(p.split(",").map(Number) as [number, number]))))),
];

const turn = turnOf;
const turned = (runs: Round[], more: Partial<Turned> = {}): Turned => ({
  ...{ kind: "turned", runs, least: 0, most: 0, bottom: -8, rise: 0, line: 1 },
  ...more,
});
const cornered = (runs: Round[]): Cornered => ({ kind: "cornered", runs, radius: 10, bottom: -6, line: 1 });
const hole = (bottom: number) => holeOf({ bottom });
const cut = (z: number) => cutOf({ x1: 48, z });
const cuts = (...levels: number[]): Cuts => ({ kind: "cuts", runs: levels.map(cut), length: 48, bottom: -6, line: 1 });

describe("holes", () => {
  it("from above: the circle, its axes, and a cross where the program drills", () => {
    const lines = said(draw(DRILL, hole(-11)), "above");
    expect(radii(lines[0]!.replace("planned: ", ""))).toEqual(["4"]);
    expect(lines.slice(1)).toEqual([
      ...["axis: -5.2,0 5.2,0", "axis: 0,-5.2 0,5.2", "program: -1.2,-1.2 1.2,1.2", "program: -1.2,1.2 1.2,-1.2"],
    ]);
    expect(said(draw(DRILL), "above")).toHaveLength(3);
    expect(of(draw(DRILL, cuts(-1)), "above", "program")).toEqual([]);
  });
  it("in section: the wall, the point to its tip, every peck but the last", () => {
    expect(said(draw({ ...DRILL, bottoms: [-5, -9, -12] }, hole(-11)), "section")).toEqual([
      ...[
        "face: 0,0 6.4,0",
        "axis: 0,1 0,-11",
        "planned: 4,0 4,-10 0,-12",
        "planned: 0,-5 1.2,-5",
        "planned: 0,-9 1.2,-9",
      ],
      "program: 4,0 4,-9 0,-11",
    ]);
    // a spot does not come to the full diameter
    expect(of(draw(DRILL, hole(-1)), "section", "program")).toEqual(["4,0 4,0 0,-1"]);
    expect(of(draw(DRILL), "section", "program")).toEqual([]);
  });
  it("has a circle of sixty pieces that closes", () => {
    const points = said(draw(DRILL), "above")[0]!.replace("planned: ", "").split(" ");
    expect(points).toHaveLength(61);
    expect([points[0], points[15], points[30], points[45], points[60]]).toEqual(["4,0", "0,4", "-4,0", "0,-4", "4,0"]);
  });
});

describe("straight cuts", () => {
  it("a slot from above: its walls half a cutter from the middle, and where the program runs", () => {
    expect(said(draw(SLOT, cuts(-2)), "above")).toEqual([
      ...["planned: -4,0 40,0", "wall: 0,4 40,4", "wall: 0,-4 40,-4", "program: -4,0.8 44,0.8"],
    ]);
    expect(of(draw(SLOT), "above", "program")).toEqual([]);
    expect(of(draw(SLOT, hole(-1)), "above", "program")).toEqual([]);
  });
  it("a wall from above is drawn at Y 0, its last pass beside it", () => {
    expect(said(draw(SIDE, cuts(-6)), "above")).toEqual([
      "planned: -4,4 40,4",
      "wall: 0,0 40,0",
      "program: -4,4.8 44,4.8",
    ]);
  });
  it("in section: levels of the plan, and each of the program once", () => {
    expect(said(draw(SLOT, cuts(-3, -3, -6)), "section")).toEqual([
      ...["face: -3.2,0 11.2,0", "wall: 0,0 0,-6", "planned: 0,-2 8,-2", "planned: 0,-4 8,-4", "planned: 0,-6 8,-6"],
      ...["program: 0,-3 8,-3", "program: 0,-6 8,-6"],
    ]);
    expect(of(draw(SLOT), "section", "program")).toEqual([]);
    expect(of(draw(SLOT, cuts(...Array.from({ length: 60 }, (_, n) => -n / 10))), "section", "program")).toHaveLength(
      50,
    );
  });
});

describe("walls", () => {
  it("a bore from above: finished wall, wall before, path with its lead, way round", () => {
    const picture = draw(
      ROUND,
      turned([turn({ radius: 9, turn: -1 }), turn({ radius: 10.5, turn: -1 }), turn({ radius: 8 })]),
    );
    expect(picture.above.lines.map(({ kind }) => kind)).toEqual([
      ...["wall", "wall", "planned", "planned arrow", "program", "program arrow"],
    ]);
    expect(of(picture, "above", "wall").map(radii)).toEqual([["15"], ["13"]]);
    expect(of(picture, "above", "program").map(radii)).toEqual([["10.5"]]);
    // in by a half circle about 5,0, once around, out by the other half
    const path = of(picture, "above", "planned")[0]!.split(" ");
    expect(path).toHaveLength(31 + 61 + 31);
    expect([path[0], path[15], path[30], path[31], path[46], path[91], path[107], path.at(-1)]).toEqual([
      ...["0,0", "5,-5", "10,0", "10,0", "0,10", "10,0", "5,5", "0,0"],
    ]);
    expect(said(draw({ ...ROUND, start: 0 }), "above").filter((l) => l.startsWith("wall"))).toHaveLength(1);
    expect(draw(ROUND).above.lines.map(({ kind }) => kind)).toEqual(["wall", "wall", "planned", "planned arrow"]);
    expect(draw(ROUND, hole(-1)).above.lines).toHaveLength(4);
    expect(draw(ROUND, cornered([turn({})])).above.lines).toHaveLength(6);
  });
  it("an outside arc from above: in, clockwise along its sweep, and out", () => {
    // from 15,5 to 10,0 and 0,-10, out to -5,-15: see the path
    const points = of(draw(ARC), "above", "planned")[0]!.split(" ");
    expect(points).toHaveLength(16 + 16 + 16);
    const at = (x: number, y: number) => `${f(x)},${f(y)}`;
    expect([points[0], points[15], points[16], points[31], points[32], points[47]]).toEqual([
      ...["15,5", "10,0", "10,0", "0,-10", "0,-10", "-5,-15"],
    ]);
    // in pieces of 6 degrees: 54 degrees below the axis after nine of fifteen pieces
    expect(points[16 + 9]).toBe(at(10 * Math.cos(0.3 * Math.PI), -10 * Math.sin(0.3 * Math.PI)));
  });
  it("arrows have their point on the circle at half past one, and open against the way", () => {
    // 0.12 of the radius of 10, over 0.05 of the cutter of 10
    const arrow = (counter: boolean, cutter = 10) =>
      of(draw({ ...ROUND, counterClockwise: counter, cutter }), "above", "planned arrow")[0]!
        .split(" ")
        .map((p) => p.split(",").map(Number));
    const tip = 10 / Math.SQRT2;
    for (const counter of [true, false]) {
      const [a, b, c] = arrow(counter);
      expect(b).toEqual([Number(tip.toFixed(4)), Number(tip.toFixed(4))]);
      for (const end of [a!, c!]) expect(Math.hypot(end[0]! - tip, end[1]! - tip)).toBeCloseTo(1.2, 3);
      // the middle between the ends lies behind the tip: 1.2 · cos 0.5 against the way
      const [mx, my] = [(a![0]! + c![0]!) / 2 - tip, (a![1]! + c![1]!) / 2 - tip];
      const back = (1.2 * Math.cos(0.5)) / Math.SQRT2;
      expect(mx).toBeCloseTo(counter ? back : -back, 3);
      expect(my).toBeCloseTo(counter ? -back : back, 3);
      // and they stand apart across the way, by twice 1.2 · sin 0.5
      expect(Math.hypot(a![0]! - c![0]!, a![1]! - c![1]!)).toBeCloseTo(2.4 * Math.sin(0.5), 3);
    }
    const [a, b] = arrow(true, 100);
    expect(Math.hypot(a![0]! - b![0]!, a![1]! - b![1]!)).toBeCloseTo(5, 3);
    const [[c, d]] = [
      of(draw(ROUND, turned([turn({})])), "above", "program arrow")[0]!
        .split(" ")
        .map((p) => p.split(",").map(Number)),
    ];
    expect(Math.hypot(c![0]! - d![0]!, c![1]! - d![1]!)).toBeCloseTo(1.4 * 1.2, 3);
    const way = (sense: 1 | -1) => of(draw(ROUND, turned([turn({ turn: sense })])), "above", "program arrow")[0]!;
    expect(way(1).split(" ")[0]!.split(",").map(Number)[0]).toBeGreaterThan(tip);
    expect(way(-1).split(" ")[0]!.split(",").map(Number)[0]).toBeLessThan(tip);
  });
  it("a bore in section: wall and floor; a boss with what is left around it", () => {
    const bore = said(draw(ROUND, turned([turn({ radius: 10.5 })])), "section");
    expect(bore).toEqual([
      "face: 0,0 24,0",
      "axis: 0,0.8 0,-8.8",
      "planned: 15,0 15,-8 0,-8",
      "program: 15.5,0 15.5,-8 0,-8",
    ]);
    const boss = { ...ROUND, inside: false, radii: [20] };
    expect(
      said(draw(boss, turned([turn({ radius: 19 }), turn({ radius: 25 })], { bottom: -7 })), "section").slice(2),
    ).toEqual([...["planned: 0,0 15,0 15,-8 24,-8", "program: 0,0 14,0 14,-7 22.4,-7"]]);
    expect(said(draw(ROUND), "section")).toHaveLength(3);
    expect(said(draw(ROUND, hole(-1)), "section")).toHaveLength(3);
    expect(said(draw(ARC, cornered([turn({ radius: 10 })])), "section").slice(2)).toEqual([
      ...["planned: 0,0 5,0 5,-6 8,-6", "program: 0,0 5,0 5,-6 8,-6"],
    ]);
  });
  it("a program at the contour under compensation cuts at its own radius, one without cuts beside it", () => {
    const out = (more: Partial<Round>) => of(draw(ROUND, turned([turn(more)])), "section", "program")[0]!.split(" ")[0];
    expect(out({ radius: 15, compensation: 41 })).toBe("15,0");
    expect(out({ radius: 15 })).toBe("20,0");
    expect(out({ radius: 10, compensation: 41 })).toBe("15,0");
    // nearer to the contour than to the centre's path begins in the middle of both
    expect(out({ radius: 12.5, compensation: 41 })).toBe("17.5,0");
    expect(out({ radius: 12.75, compensation: 41 })).toBe("12.75,0");
  });
});

describe("threads", () => {
  // grooves from the wall of 3.5 to the root of 3 + 2: half as wide at the wall as half a pitch, of pitch 1
  const wide = (z: number, root = 5) => `3.5,${f(z - 0.5)} ${f(root)},${f(z)} 3.5,${f(z + 0.5)}`;
  it("in section: a groove at every pitch between the ends of the helix", () => {
    expect(said(draw(THREAD), "section")).toEqual([
      ...["face: 0,0 8,0", "axis: 0,0.2 0,-2.2", "wall: 3.5,0 3.5,-3"],
      `planned: ${[-2, -1, 0].map((z) => wide(z)).join(" ")}`,
    ]);
    expect(of(draw({ ...THREAD, startZ: 0.5, endZ: -2, start: 12 }), "section", "face")).toEqual(["0,0 9.6,0"]);
    expect(of(draw({ ...THREAD, startZ: 0.5, endZ: -2 }), "section", "planned")).toEqual([
      [-2, -1, 0].map((z) => wide(z)).join(" "),
    ]);
  });
  it("flanks of 60 degrees where the groove is no wider than its pitch", () => {
    // 0.5 deep: 0.5 · tan 30° to each side
    const half = 0.5 * Math.tan(Math.PI / 6);
    expect(of(draw({ ...THREAD, start: 9, startZ: -2, endZ: -2 }), "section", "planned")).toEqual([
      `4.5,${f(-2 - half)} 5,-2 4.5,${f(-2 + half)}`,
    ]);
  });
  it("of a full-profile cutter: grooves from the depth to the face", () => {
    const full = { ...THREAD, full: true, depth: 2.5, startZ: -2.5, endZ: -1.5 };
    expect(of(draw(full), "section", "planned")).toEqual([[-2.5, -1.5, -0.5].map((z) => wide(z)).join(" ")]);
    expect(of(draw({ ...full, depth: 2 }), "section", "planned")).toEqual([[-2, -1, 0].map((z) => wide(z)).join(" ")]);
    // its turn makes all grooves at once: those of the program reach as far as the plan's
    const made = turned([turn({ radius: 3, z0: -3.25, z1: -2.25 })], { rise: 1 });
    expect(of(draw(full, made), "section", "program")).toEqual([[-2.5, -1.5, -0.5].map((z) => wide(z)).join(" ")]);
  });
  it("of the program: its own radius, ends and rise, from the tip to the profile", () => {
    const made = (more: Partial<Round>, rise = 1.5) =>
      of(
        draw(THREAD, turned([turn({ radius: 2 }), turn({ z0: -2.75, z1: 0.25, radius: 3, ...more })], { rise })),
        "section",
        "program",
      );
    const grooves = (pitch: number, root: number, ...at: number[]) => {
      const half = Math.min((root - 3.5) * Math.tan(Math.PI / 6), pitch / 2);
      return [at.map((z) => `3.5,${f(z - half)} ${root},${z} 3.5,${f(z + half)}`).join(" ")];
    };
    expect(made({})).toEqual(grooves(1.5, 5, -2, -0.5, 1));
    expect(made({ z0: 0.25, z1: -2.75 }, -1.5)).toEqual(grooves(1.5, 5, -2, -0.5, 1));
    expect(made({ radius: 3.25 })).toEqual(grooves(1.5, 5.25, -2, -0.5, 1));
    expect(made({ radius: 5, compensation: 41 })).toEqual(grooves(1.5, 5, -2, -0.5, 1));
    expect(made({ radius: 5 })).toEqual(grooves(1.5, 7, -2, -0.5, 1));
    expect(
      of(draw(THREAD, turned([turn({ radius: 3, z0: -2, z1: -2 })], { rise: 1 }), "profile"), "section", "program"),
    ).toEqual(grooves(1, 5, -2));
    // where Z is not known there is nothing to draw
    expect(made({ z0: Number.NaN })).toEqual([]);
    expect(of(draw(THREAD, hole(-1)), "section", "program")).toEqual([]);
    expect(of(draw(THREAD), "section", "program")).toEqual([]);
  });
  it("draws no more than eighty grooves, and of no pitch none without an end", () => {
    const count = (line: string) => line.split(" ").length / 3;
    expect(count(of(draw({ ...THREAD, startZ: -200, endZ: 0 }), "section", "planned")[0]!)).toBe(80);
    const level = turned([turn({ radius: 3, z0: -2, z1: -1 })], { rise: 0 });
    expect(count(of(draw(THREAD, level, "profile"), "section", "program")[0]!)).toBe(21);
  });
});

describe("the frame", () => {
  it("holds every point, with six hundredths of the larger side around it", () => {
    const { box } = draw(SLOT, cuts(-2)).above;
    // X from -4 to 44, Y from -4 to 4
    expect([box.left, box.right, box.bottom, box.top].map(f)).toEqual(["-6.88", "46.88", "-6.88", "6.88"]);
    const deep = draw({ ...DRILL, bottoms: [-50], depth: 48 }).section.box;
    // X 0 to 6.4, Z from -52.8 to 4.8
    expect([deep.left, deep.right, deep.bottom, deep.top].map(f)).toEqual(["-3.456", "9.856", "-56.256", "8.256"]);
    const small = draw({ ...DRILL, diameter: 0.1, bottoms: [-0.1], depth: 0.1, point: 0 }).above.box;
    expect([small.left, small.right].map(f)).toEqual(["-0.125", "0.125"]);
  });
  it("leaves out points that are not known", () => {
    const { box } = draw(ROUND, turned([turn({})], { bottom: Number.NaN })).section;
    expect([box.left, box.right, box.bottom, box.top].every(Number.isFinite)).toBe(true);
  });
  it("is there for rows with a plan alone", () => {
    expect(pictureOf(rowOf(undefined), undefined, "tip")).toBeUndefined();
  });
});
