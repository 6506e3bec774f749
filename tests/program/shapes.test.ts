/** What is recognised of moves: turns, holes and straight cuts, each limit met and passed. Moves are given one by one. */
import { describe, expect, it } from "vitest";
import type { Modal } from "../../src/program/machine.ts";
import { Shapes } from "../../src/program/shapes.ts";

function recorder() {
  const shapes = new Shapes();
  const modal: Modal = { feed: 100, rpm: 900, spindle: 1, compensation: 0, segment: 1, offset: 540, line: 1 };
  shapes.modal = modal;
  return { shapes, modal };
}
type Piece = [degrees: number, z0: number, z1: number, more?: { x?: number; y?: number; r?: number; turn?: 1 | -1 }];
/** Runs of arcs about the origin on radius 5, one after the other. */
function turns(...pieces: Piece[]) {
  const { shapes, modal } = recorder();
  for (const [degrees, z0, z1, { x = 0, y = 0, r = 5, turn = 1 } = {}] of pieces) {
    shapes.arc(x, y, r, turn, degrees, z0, z1);
    modal.line++;
  }
  shapes.end();
  return shapes;
}
const count = (...pieces: Piece[]) => {
  const { rounds, arcs } = turns(...pieces);
  return rounds.length + arcs.length;
};

describe("turns", () => {
  it("are arcs that go on: degrees and Z add up, radii are weighed by their degrees", () => {
    const { rounds, arcs } = turns([90, -4, -4], [270, -4, -4, { r: 5.008 }]);
    expect(arcs).toEqual([]);
    expect(rounds).toEqual([
      {
        ...{
          kind: "round",
          x: 0,
          y: 0,
          turn: 1,
          degrees: 360,
          z0: -4,
          z1: -4,
          switched: false,
          uneven: 0,
          unevenLine: 1,
        },
        ...{
          line: 1,
          segment: 1,
          offset: 540,
          rpm: 900,
          spindle: 1,
          compensation: 0,
          feed: 100,
        },
        radius: expect.closeTo(5.006, 9),
      },
    ]);
    expect(turns([180, -4, -3.5], [180, -3.5, -3], [360, -3, -2]).rounds).toMatchObject([
      { degrees: 720, z0: -4, z1: -2 },
    ]);
  });
  it("of less than 225 degrees are leads and corners", () => {
    expect(turns([225, 0, 0])).toMatchObject({ rounds: [{ degrees: 225 }], arcs: [] });
    expect(turns([224.9, 0, 0])).toMatchObject({ rounds: [], arcs: [{ degrees: 224.9 }] });
    expect(turns([200, 0, 0], [25, 0, 0]).rounds).toHaveLength(1);
  });
  it("have one centre and one radius, one sense and one tool", () => {
    const first: Piece = [360, 0, 0];
    const then = (more: Piece[3]) => count(first, [360, 0, 0, more]);
    expect([then({ x: 0.02 }), then({ x: -0.02 }), then({ y: 0.02 }), then({ y: -0.02 })]).toEqual([1, 1, 1, 1]);
    expect([then({ x: 0.021 }), then({ x: -0.021 }), then({ y: 0.021 }), then({ y: -0.021 })]).toEqual([2, 2, 2, 2]);
    expect([then({ r: 5.011 }), then({ r: 4.989 }), then({ r: 5.013 }), then({ r: 4.987 })]).toEqual([1, 1, 2, 2]);
    expect(count([360, 0, 0, { r: 0.012 }], [360, 0, 0, { r: 0.024 }])).toBe(1);
    expect(then({ turn: -1 })).toBe(2);
    const { shapes, modal } = recorder();
    shapes.arc(0, 0, 5, 1, 360, 0, 0);
    modal.segment++;
    shapes.arc(0, 0, 5, 1, 360, 0, 0);
    shapes.end();
    expect(shapes.rounds).toHaveLength(2);
  });
  it("are about their centre wherever it is", () => {
    const far = { x: 30, y: -40 };
    expect(count([180, 0, 0, far], [180, 0, 0, far])).toBe(1);
    expect(turns([360, 0, 0, far]).rounds).toMatchObject([far]);
  });
  it("that are level after a helix are a run of their own, those of an uneven rise are not", () => {
    expect(count([360, -4, -3], [360, -3, -3])).toBe(2);
    expect(count([360, -4, -4], [360, -4, -3])).toBe(2);
    expect(count([360, -4, -3], [360, -3, -1.5])).toBe(1);
    expect(count([360, -4, -3], [360, -3, -4])).toBe(2);
    // rounding of Z: 0.02 over a quarter turn and more
    expect(count([360, 0, 0.015], [360, 0.015, 0])).toBe(1);
    expect(count([360, 0, 0.0625], [360, 0.0625, 0.0625])).toBe(2);
    expect(count([360, 0, 0.03], [360, 0.03, 0.045])).toBe(1);
    expect(count([360, 0, 0.015], [360, 0.015, 0.045])).toBe(1);
    // one is just level, the other is not, and they are no more than the rounding apart
    expect(count([360, 0, 0.02], [360, 0.02, 0.0575])).toBe(1);
    expect(count([360, 0, 0.015], [360, 0.015, 0.055])).toBe(2);
  });
  it("are level up to the rounding itself", () => {
    expect(count([360, 0, 0.02], [360, 0.02, 0.07])).toBe(2);
    expect(count([360, 0, 0.05], [360, 0, 0.02])).toBe(2);
    expect(count([360, 0, 0.021], [360, 0.021, 0.071])).toBe(1);
  });
  it("in short pieces may be further off: Z is rounded in each", () => {
    // 9 degrees: ten times the rounding, 0.2 a turn; 0.004 over 9 degrees is 0.16 a turn
    expect(count([9, 0, 0.004], [9, 0.004, 0])).toBe(1);
    expect(count([360, 0, 0.16], [9, 0.16, 0.16])).toBe(1);
    expect(count([9, 0, 0.004], [360, 0.004, 0.004])).toBe(1);
    expect(count([360, 0, 0.25], [9, 0.25, 0.25])).toBe(2);
    // over half a turn it is the same as over a quarter
    expect(count([180, 0, 0], [180, 0, 0.0125])).toBe(2);
  });
  it("of unknown Z go on with each other alone", () => {
    const { NaN: n } = Number;
    expect(count([360, n, n], [360, n, n])).toBe(1);
    expect(count([360, n, n], [360, -3, -3])).toBe(2);
    expect(count([360, -3, -3], [360, n, n])).toBe(2);
  });
  it("end with any other move", () => {
    for (const between of [
      (s: Shapes) => s.rapid(0, 0, 0, 5, 0, 0),
      (s: Shapes) => s.line(5, 0, 0, 5, 0, 0),
      (s: Shapes) => s.line(0, 0, 0, 5, 0, 0),
      (s: Shapes) => s.hole(5, 0, { code: 81, bottom: -5, peck: Number.NaN, from: 2 }),
      (s: Shapes) => s.other(),
      (s: Shapes) => s.segment(),
    ]) {
      const { shapes } = recorder();
      shapes.arc(0, 0, 5, 1, 360, 0, 0);
      between(shapes);
      shapes.arc(0, 0, 5, 1, 360, 0, 0);
      shapes.end();
      expect(shapes.rounds).toHaveLength(2);
    }
  });
  it("keep the state they begin with, the largest feed, and whether compensation changes", () => {
    const { shapes, modal } = recorder();
    const turn = () => shapes.arc(0, 0, 5, 1, 90, 0, 0);
    modal.compensation = 41;
    turn();
    Object.assign(modal, { feed: 300, line: 2 });
    turn();
    Object.assign(modal, { feed: 50, compensation: 0 });
    turn();
    Object.assign(modal, { feed: 200, compensation: 41 });
    turn();
    shapes.end();
    expect(shapes.rounds).toMatchObject([{ feed: 300, line: 1, compensation: 41, switched: true }]);
    const same = turns([180, 0, 0], [180, 0, 0]).rounds[0]!;
    expect(same).toMatchObject({ feed: 100, switched: false });
  });
  it("tell how far Z is off an even rise, and where", () => {
    // 4 mm in four turns; the third begins 0.25 late
    const { rounds } = turns([360, 0, 1], [360, 1, 1.75], [360, 1.75, 3], [360, 3, 4]);
    expect(rounds).toMatchObject([{ uneven: 0.25, unevenLine: 2 }]);
    const high = turns([360, 0, 1], [360, 1, 2.125], [360, 2.125, 2.75], [360, 2.75, 4]);
    expect(high.rounds).toMatchObject([{ uneven: 0.25, unevenLine: 3 }]);
    // by their degrees, from where they begin
    expect(turns([90, -8, -7.75], [270, -7.75, -7]).rounds).toMatchObject([{ uneven: 0 }]);
    // of the second run the first one's pieces are forgotten
    expect(turns([360, 0, 1], [360, 1, 3], [360, 3, 3], [360, 3, 3]).rounds).toMatchObject([
      { uneven: 0.5, unevenLine: 1 },
      { uneven: 0, unevenLine: 3 },
    ]);
  });
});

/** Moves of a tool: "r" at rapid and "f" at feed, to X and Z. */
function drilled(moves: [how: "r" | "f", x: number, z: number, more?: Partial<Modal>][], close = true) {
  const { shapes, modal } = recorder();
  let [x, z] = [0, 5];
  for (const [how, nx, nz, more] of moves) {
    Object.assign(modal, more);
    if (how === "r") shapes.rapid(x, 0, z, nx, 0, nz);
    else shapes.line(x, 0, z, nx, 0, nz);
    [x, z] = [nx, nz];
    modal.line++;
  }
  if (close) shapes.end();
  return shapes.holes;
}

describe("holes written out", () => {
  it("are moves down at feed and up again", () => {
    expect(
      drilled([
        ["f", 0, -9],
        ["r", 0, 5],
        ["r", 20, 5],
      ]),
    ).toEqual([
      {
        ...{ kind: "hole", x: 0, y: 0, top: 5, bottom: -9, strokes: 1, cycle: 0, reversed: false },
        ...{
          line: 1,
          segment: 1,
          offset: 540,
          rpm: 900,
          spindle: 1,
          compensation: 0,
          feed: 100,
        },
      },
    ]);
    expect(
      drilled([
        ["f", 0, -9],
        ["r", 0, 5],
        ["r", 20, 5],
        ["f", 20, -7],
        ["r", 20, 5],
      ]).map((h) => [h.x, h.bottom]),
    ).toEqual([
      [0, -9],
      [20, -7],
    ]);
  });
  it("end deeper than the face by more than 0.05", () => {
    expect(
      drilled([
        ["f", 0, -0.05],
        ["r", 9, 5],
      ]),
    ).toEqual([]);
    expect(
      drilled([
        ["f", 0, -0.06],
        ["r", 9, 5],
      ]),
    ).toHaveLength(1);
  });
  it("a move at rapid in Z alone goes on with the hole, one aside ends it, in X and in Y", () => {
    expect(
      drilled([
        ["f", 0, -3],
        ["r", 0, 1],
        ["f", 0, -6],
        ["r", 9, 1],
      ]),
    ).toHaveLength(1);
    for (const [x, y] of [
      [1, 0],
      [0, 1],
    ] as const) {
      const { shapes } = recorder();
      shapes.line(0, 0, 5, 0, 0, -9);
      shapes.rapid(0, 0, -9, x, y, -9);
      expect(shapes.holes).toHaveLength(1);
    }
  });
  it("a stroke is counted where the tool came up in between and goes deeper", () => {
    const strokes = (...moves: Parameters<typeof drilled>[0]) =>
      drilled(moves).map((h) => [h.strokes, h.bottom, h.feed])[0];
    expect(strokes(["f", 0, -3], ["f", 0, -6, { feed: 50 }])).toEqual([1, -6, 100]);
    expect(strokes(["f", 0, -3], ["f", 0, -6, { feed: 150 }])).toEqual([1, -6, 150]);
    expect(strokes(["f", 0, -3], ["r", 0, -2.5], ["f", 0, -6])).toEqual([2, -6, 100]);
    expect(strokes(["f", 0, -3], ["f", 0, -2.5], ["f", 0, -6])).toEqual([2, -6, 100]);
    // down again to where it was is no stroke
    expect(strokes(["f", 0, -3], ["r", 0, 2], ["f", 0, -3])).toEqual([1, -3, 100]);
    expect(strokes(["f", 0, -3], ["r", 0, 2], ["f", 0, -2])).toEqual([1, -3, 100]);
    expect(strokes(["f", 0, -3], ["r", 0, 2], ["f", 0, -4], ["r", 0, 2], ["f", 0, -5])).toEqual([3, -5, 100]);
  });
  it("a plunge that a cut follows is none; a retract to where it began, and then a move at feed, is one", () => {
    expect(
      drilled([
        ["f", 0, -3],
        ["f", 40, -3],
        ["r", 40, 5],
      ]),
    ).toEqual([]);
    expect(
      drilled([
        ["f", 0, -3],
        ["r", 0, 4.9],
        ["f", 40, 4.9],
      ]),
    ).toEqual([]);
    expect(
      drilled([
        ["f", 0, -3],
        ["r", 0, 5],
        ["f", 40, 5],
      ]),
    ).toHaveLength(1);
    expect(
      drilled([
        ["f", 0, -3],
        ["f", 0, 5],
        ["f", 40, 5],
      ]),
    ).toHaveLength(1);
    expect(
      drilled([
        ["f", 0, -3],
        ["r", 0, 9],
        ["f", 40, 9],
      ]),
    ).toHaveLength(1);
    for (const [up, holes] of [
      [-3, 0],
      [5, 1],
    ] as const) {
      const { shapes } = recorder();
      shapes.line(0, 0, 5, 0, 0, -3);
      shapes.rapid(0, 0, -3, 0, 0, up);
      shapes.arc(5, 0, 5, 1, 360, up, up);
      shapes.end();
      expect(shapes.holes).toHaveLength(holes);
      expect(shapes.rounds).toHaveLength(1);
    }
    // where the arc ends counts for what follows
    const { shapes } = recorder();
    shapes.arc(5, 0, 5, 1, 360, 5, -3);
    shapes.line(0, 0, -3, 0, 0, -6);
    shapes.line(0, 0, -6, 9, 0, -6);
    shapes.end();
    expect(shapes.holes).toEqual([]);
  });
  it("a plunge after a cut begins at its own height", () => {
    expect(
      drilled([
        ["f", 30, 5],
        ["f", 30, -4],
        ["r", 30, 5],
        ["r", 60, 5],
      ]).map((h) => [h.x, h.top, h.bottom]),
    ).toEqual([[30, 5, -4]]);
    expect(
      drilled([
        ["f", 0, -3],
        ["r", 0, 2],
        ["r", 0, -2],
        ["f", 30, -2],
        ["f", 30, -4],
        ["r", 30, 5],
      ]).map((h) => [h.x, h.top]),
    ).toEqual([[30, -2]]);
  });
  it("up at feed alone is no hole", () => {
    expect(
      drilled([
        ["r", 0, -9],
        ["f", 0, -3],
        ["r", 9, -3],
      ]),
    ).toEqual([]);
  });
  it("tell that the spindle turned back", () => {
    const reversed = (...more: Partial<Modal>[]) =>
      drilled([["f", 0, -9], ...more.map((m): ["f", number, number, Partial<Modal>] => ["f", 0, 5, m])])[0]!.reversed;
    expect(reversed({})).toBe(false);
    expect(reversed({ spindle: -1 })).toBe(true);
    expect(reversed({ spindle: 0 })).toBe(false);
    expect(reversed({ spindle: -1 }, { spindle: 1 })).toBe(true);
  });
  it("stay open where the spindle stops at the bottom, and are closed where the tool is back or the program ends", () => {
    const { shapes, modal } = recorder();
    shapes.line(0, 0, 5, 0, 0, -9);
    shapes.segment();
    expect(shapes.holes).toHaveLength(0);
    modal.spindle = -1;
    shapes.line(0, 0, -9, 0, 0, 5);
    shapes.segment();
    expect(shapes.holes).toMatchObject([{ reversed: true }]);
    shapes.end();
    expect(shapes.holes).toHaveLength(1);
    expect(drilled([["f", 0, -9]], false)).toEqual([]);
    expect(drilled([["f", 0, -9]])).toHaveLength(1);
  });
  it("are lost in a move that is not followed", () => {
    const { shapes } = recorder();
    shapes.line(0, 0, 5, 0, 0, -9);
    shapes.other();
    shapes.end();
    expect(shapes.holes).toEqual([]);
  });
});

describe("holes by a cycle", () => {
  const strokes = (code: number, bottom: number, peck: number) => {
    const { shapes } = recorder();
    shapes.hole(3, 4, { code, bottom, peck, from: 2 });
    return shapes.holes[0]!.strokes;
  };
  it("have the cycle's place, plane and bottom, and the state of the machine", () => {
    const { shapes } = recorder();
    shapes.hole(3, 4, { code: 83, bottom: -12, peck: 3, from: 2 });
    expect(shapes.holes).toEqual([
      {
        ...{ kind: "hole", x: 3, y: 4, top: 2, bottom: -12, strokes: 4, cycle: 83, reversed: false },
        ...{
          line: 1,
          segment: 1,
          offset: 540,
          rpm: 900,
          spindle: 1,
          compensation: 0,
          feed: 100,
        },
      },
    ]);
  });
  it("peck from the face in G83 and G73 alone", () => {
    expect([
      strokes(83, -12, 3),
      strokes(73, -12, 3),
      strokes(81, -12, 3),
      strokes(83, -12, Number.NaN),
      strokes(83, -12, 0),
    ]).toEqual([...[4, 4, 1, 1, 1]]);
    // the last twentieth of a peck is rounding
    expect([strokes(83, -12.1, 3), strokes(83, -12.3, 3), strokes(83, -0.1, 3), strokes(83, -3, 12)]).toEqual([
      4, 5, 1, 1,
    ]);
  });
  it("close a hole that is written out", () => {
    const { shapes } = recorder();
    shapes.line(0, 0, 5, 0, 0, -9);
    shapes.hole(3, 4, { code: 81, bottom: -12, peck: Number.NaN, from: 2 });
    expect(shapes.holes.map((h) => h.bottom)).toEqual([-9, -12]);
  });
});

/** Straight cuts through points (x, y, z). */
function cuts(...points: [number, number, number][]) {
  const { shapes, modal } = recorder();
  points.slice(1).forEach(([x, y, z], n) => {
    const [x0, y0, z0] = points[n]!;
    shapes.line(x0, y0, z0, x, y, z);
    modal.line++;
    modal.feed += 10;
  });
  return shapes.lines.map((l) => [l.x0, l.y0, l.x1, l.y1, l.z]);
}

describe("straight cuts", () => {
  it("are level and 2 mm long or longer", () => {
    expect(cuts([0, 0, -1], [2, 0, -1])).toEqual([[0, 0, 2, 0, -1]]);
    expect(cuts([0, 0, -1], [1.2, 1.6, -1])).toEqual([[0, 0, 1.2, 1.6, -1]]);
    expect(cuts([0, 0, -1], [1.99, 0, -1])).toEqual([]);
    expect(cuts([0, 0, -1], [20, 0, -2])).toEqual([]);
    expect(cuts([0, 0, -1], [0, 0, -9])).toEqual([]);
  });
  it("in pieces along one line are one", () => {
    expect(cuts([0, 0, -1], [1, 0, -1], [2, 0, -1], [9, 0, -1], [12, 0, -1])).toEqual([[0, 0, 12, 0, -1]]);
    expect(cuts([0, 0, -1], [3, 4, -1], [6, 8, -1])).toEqual([[0, 0, 6, 8, -1]]);
    expect(cuts([0, 0, -1], [3, 0, -1], [6, 4, -1])).toEqual([
      [0, 0, 3, 0, -1],
      [3, 0, 6, 4, -1],
    ]);
    // anywhere, and along Y
    expect(cuts([10, 20, -1], [15, 25, -1], [16, 26, -1])).toEqual([[10, 20, 16, 26, -1]]);
    expect(cuts([10, 20, -1], [10, 25, -1], [10, 30, -1])).toEqual([[10, 20, 10, 30, -1]]);
    expect(cuts([10, 20, -1], [11, 20, -1])).toEqual([]);
    expect(cuts([10, 20, -1], [10.5, 20, -1], [11, 20, -1])).toEqual([]);
    expect(cuts([10, 20, -1], [10, 20.5, -1], [10, 21, -1])).toEqual([]);
    expect(cuts([10, 20, -1], [10, 21, -1], [10, 22, -1], [10, 24, -1])).toEqual([[10, 20, 10, 24, -1]]);
    // the same way, by a ten-thousandth
    expect(cuts([0, 0, -1], [10, 0, -1], [20, 0.0009, -1])).toHaveLength(1);
    expect(cuts([0, 0, -1], [10, 0, -1], [20, 0.0011, -1])).toHaveLength(2);
    expect(cuts([0, 0, -1], [0, 10, -1], [-0.0011, 20, -1])).toHaveLength(2);
    expect(cuts([0, 0, -1], [10, 0, -1], [0, 0, -1])).toHaveLength(2);
    expect(cuts([0, 0, -1], [10, 10, -1], [20, 20, -1])).toHaveLength(1);
    expect(cuts([0, 0, -1], [10, 10, -1], [20, 0, -1])).toHaveLength(2);
    expect(cuts([0, 0, -1], [10, 5, -1], [15, -5, -1])).toHaveLength(2);
  });
  it("go on where they ended alone", () => {
    for (const [x, y, z] of [
      [10.5, 0, -1],
      [10, 0.5, -1],
      [10, 0, -2],
    ] as const) {
      const { shapes } = recorder();
      shapes.line(0, 0, -1, 10, 0, -1);
      shapes.line(x, y, z, 20, y, z);
      expect(shapes.lines).toHaveLength(2);
    }
  });
  it("end with any other move", () => {
    for (const between of [
      (s: Shapes) => s.rapid(10, 0, -1, 10, 0, -1),
      (s: Shapes) => s.line(10, 0, -1, 10, 0, -1),
      (s: Shapes) => s.line(10, 0, -1, 10, 9, -2),
      (s: Shapes) => s.arc(10, 5, 5, 1, 360, -1, -1),
      (s: Shapes) => s.hole(10, 0, { code: 81, bottom: -5, peck: Number.NaN, from: 2 }),
      (s: Shapes) => s.other(),
      (s: Shapes) => s.segment(),
    ]) {
      const { shapes } = recorder();
      shapes.line(0, 0, -1, 10, 0, -1);
      between(shapes);
      shapes.line(10, 0, -1, 20, 0, -1);
      expect(shapes.lines.map((l) => [l.x0, l.x1])).toEqual([
        [0, 10],
        [10, 20],
      ]);
    }
  });
  it("have the state they begin with and the feeds of all pieces", () => {
    const { shapes, modal } = recorder();
    shapes.line(0, 0, -1, 10, 0, -1);
    Object.assign(modal, { feed: 300, line: 2 });
    shapes.line(10, 0, -1, 20, 0, -1);
    expect(shapes.lines).toEqual([
      {
        ...{ kind: "line", x0: 0, y0: 0, x1: 20, y1: 0, z: -1, line: 1, segment: 1, offset: 540 },
        ...{ rpm: 900, spindle: 1, compensation: 0, feed: 300 },
      },
    ]);
  });
});
