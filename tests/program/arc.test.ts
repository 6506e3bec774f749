/** Arcs at the ends of what is still one: radii of start and end, chords and half circles, each limit by hand. */
import { describe, expect, it } from "vitest";
import { arcOf } from "../../src/program/arc.ts";

const NONE = Number.NaN;
const arc = (more: Partial<Parameters<typeof arcOf>[0]>) =>
  arcOf({ x0: 0, y0: 0, x1: 0, y1: 0, i: NONE, j: NONE, r: NONE, turn: 1, absolute: false, ...more });

describe("arcs by their centre", () => {
  it("end on the circle they begin on, to 0.02 and a ten-thousandth of the radius", () => {
    // about 10,0 from 0,0; radius 10: 0.021
    const end = (x1: number) => arc({ i: 10, j: 0, x1 });
    expect([end(20.0205), end(19.9795)]).toMatchObject([{ degrees: 180 }, { degrees: 180 }]);
    expect(end(20.0205)).toMatchObject({ x: 10, y: 0, radius: expect.closeTo(10.01025, 9), absolute: false });
    expect(end(20.0215)).toEqual({ what: "arc", startRadius: 10, endRadius: expect.closeTo(10.0215, 9) });
    expect(end(19.9785)).toMatchObject({ what: "arc" });
    // of 1000: 0.12
    const large = (x1: number) => arc({ i: 1000, j: 0, x1 });
    expect([large(2000.119), large(2000.121)]).toMatchObject([{ degrees: 180 }, { what: "arc" }]);
  });
  it("have a radius of more than 0.01", () => {
    expect([arc({ i: 0.011 }), arc({ i: 0.01 }), arc({ i: 0, j: 0 })]).toMatchObject([
      { degrees: 360 },
      { what: "arc" },
      { what: "arc" },
    ]);
  });
  it("are full where both ends coincide, and near nought where they nearly do", () => {
    expect(arc({ i: 5, x1: 0.9e-7, y1: -0.9e-7 })).toMatchObject({ degrees: 360 });
    expect((arc({ i: 5, y1: 2e-7 }) as { degrees: number }).degrees).not.toBe(360);
    expect((arc({ i: 5, j: 5, x1: 2e-7, y1: -2e-7 }) as { degrees: number }).degrees).not.toBe(360);
    expect((arc({ j: 5, x1: -2e-7 }) as { degrees: number }).degrees).not.toBe(360);
  });
  it("do not turn where their ends lie on one ray, whatever the sign of nought", () => {
    for (const turn of [1, -1] as const)
      for (const y1 of [0, -0])
        expect(Math.abs((arc({ i: 10, x1: 0.005, y1, turn }) as { degrees: number }).degrees)).toBe(0);
  });
  it("turn by their sense, through the angle where a circle's measure jumps", () => {
    // about the origin from 90 degrees to 270
    const half = (turn: 1 | -1) => arc({ x0: 0, y0: 5, x1: 0, y1: -5, i: 0, j: -5, turn });
    expect([half(1), half(-1)]).toMatchObject([{ degrees: 180 }, { degrees: 180 }]);
    const from = (a: number, b: number, turn: 1 | -1) => {
      const at = (d: number) => [8 + 5 * Math.cos((d * Math.PI) / 180), 3 + 5 * Math.sin((d * Math.PI) / 180)] as const;
      const [[x0, y0], [x1, y1]] = [at(a), at(b)];
      return (arc({ x0, y0, x1, y1, i: 8 - x0, j: 3 - y0, turn }) as { degrees: number }).degrees;
    };
    for (const [a, b, way] of [
      [10, 100, 90],
      [170, 190, 20],
      [190, 170, 340],
      [350, 10, 20],
      [10, 350, 340],
      [-100, 100, 200],
    ] as const) {
      expect(from(a, b, 1)).toBeCloseTo(way, 6);
      expect(from(a, b, -1)).toBeCloseTo(360 - way, 6);
    }
  });
  it("have I or J for nought where one is missing; as a position it is that of the start", () => {
    expect(arc({ x0: 7, y0: 2, x1: 7, y1: 2, i: 3 })).toMatchObject({ x: 10, y: 2, radius: 3, degrees: 360 });
    expect(arc({ x0: 7, y0: 2, x1: 7, y1: 2, j: 3 })).toMatchObject({ x: 7, y: 5, radius: 3, degrees: 360 });
    expect(arc({ x0: 7, y0: 2, x1: 7, y1: 2, i: 3, absolute: true })).toMatchObject({
      x: 3,
      y: 2,
      radius: 4,
      absolute: false,
    });
    expect(arc({ x0: 7, y0: 2, x1: 7, y1: 2, j: 3, absolute: true })).toMatchObject({ x: 7, y: 3, radius: 1 });
  });
  it("that fit only as a position are taken so, but not where positions are what is written", () => {
    expect(arc({ x0: 15, x1: 5, i: 10 })).toMatchObject({ x: 10, y: 0, radius: 5, degrees: 180, absolute: true });
    expect(arc({ y0: 15, y1: 5, j: 10 })).toMatchObject({ x: 0, y: 10, radius: 5, degrees: 180, absolute: true });
    expect(arc({ x0: 15, x1: 5, i: -5, absolute: true })).toEqual({ what: "arc", startRadius: 20, endRadius: 10 });
    expect(arc({ x0: 15, x1: 5, i: 9.9 })).toMatchObject({
      what: "arc",
      startRadius: expect.closeTo(9.9, 9),
      endRadius: expect.closeTo(19.9, 9),
    });
  });
  it("have them before R", () => {
    expect(arc({ x1: 10, i: 5, r: 99 })).toMatchObject({ radius: 5 });
    expect(arc({ x1: 10, j: 0, i: 5, r: 99 })).toMatchObject({ radius: 5 });
    expect([arc({ x1: 10 }), arc({ x1: 10, r: 0 }), arc({ r: 5 })]).toEqual(Array(3).fill({ what: "arc-centre" }));
    expect([arc({ x1: 10, r: 5 }), arc({ y1: 10, r: 5 })]).toMatchObject([
      { x: 5, degrees: 180 },
      { y: 5, degrees: 180 },
    ]);
  });
});

describe("arcs by their radius", () => {
  it("are the short one for a positive R, the long one for a negative, on the side of their sense", () => {
    // chord of 6 along X, radius 5: the centre is 4 beside its middle; the short arc takes twice asin 0.6
    const short = (2 * Math.asin(0.6) * 180) / Math.PI;
    for (const [turn, r, y, degrees] of [
      [1, 5, 4, short],
      [-1, 5, -4, short],
      [1, -5, -4, 360 - short],
      [-1, -5, 4, 360 - short],
    ] as const)
      expect(arc({ x0: 1, y0: 2, x1: 7, y1: 2, turn, r })).toMatchObject({
        ...{
          x: expect.closeTo(4, 9),
          y: expect.closeTo(2 + y, 9),
          radius: 5,
          degrees: expect.closeTo(degrees, 6),
          absolute: false,
        },
      });
    // the same along Y
    expect(arc({ x0: 1, y0: 2, x1: 1, y1: 8, r: 5 })).toMatchObject({
      x: expect.closeTo(-3, 9),
      y: expect.closeTo(5, 9),
    });
  });
  it("may be 0.02 too small for their chord, and are half circles near twice their radius", () => {
    const chord = (x1: number) => arc({ x1, r: 5 });
    expect([chord(10.0195), chord(10.0205)]).toMatchObject([
      { degrees: 180 },
      { what: "arc-radius", radius: 5, chord: 10.0205 },
    ]);
    expect(arc({ x1: 20, r: -5 })).toEqual({ what: "arc-radius", radius: 5, chord: 20 });
    expect([chord(9.9945), chord(10)]).toMatchObject([
      { y: 0, degrees: 180 },
      { y: 0, degrees: 180 },
    ]);
    // a little shorter than that it is an arc like any other: √(25 − 4.9965²)
    expect(chord(9.993)).toMatchObject({ y: expect.closeTo(Math.sqrt(25 - 4.9965 ** 2), 9) });
  });
});
