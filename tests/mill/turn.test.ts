/** Means and peaks over a turn of loads that are known by hand. */
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { type Loads, overTurn } from "../../src/mill/turn.ts";

/** Loads given one by one, the rest 0. */
const loads =
  (...parts: ((x: number) => number)[]) =>
  (x: number, out: Loads): void =>
    parts.forEach((part, i) => {
      out[i] = part(x);
    });
const none = () => 0;

describe("mean over a turn (by hand)", () => {
  // a load that grows as x over half of a period of 2: ∫x dx from 0 to 1, over 2
  it.each([
    [0, "normal"],
    [1, "feed"],
  ] as const)("of a load along one axis alone, place %i: %s", (place, key) => {
    const turn = overTurn(
      2,
      [1],
      (x, out) => {
        out[place] = x < 1 ? x : 0;
      },
      2,
    );
    expect(turn.resultant).toBeCloseTo(0.25, 9);
    expect(Math.abs(turn[key])).toBeCloseTo(0.25, 9);
    expect(turn.peak).toBeCloseTo(1, 6);
  });

  const wave = (mean: number, swing: number, turns: number, shift: number) => (x: number) =>
    mean + swing * Math.sin(turns * x + shift);
  it.each([3, 1.5])("of whole waves about a mean, period %d: the mean, crest and trough", (p) => {
    const turns = (2 * Math.PI) / p;
    const parts = [wave(-5, 2, turns, 0.3), none, wave(7, 3, turns, 1.1), wave(11, 4, turns, 2)];
    const turn = overTurn(p, [], loads(...parts), p);
    expect(turn.normal).toBeCloseTo(-5, 7);
    expect(turn.feed).toBe(0);
    expect(turn.resultant).toBeCloseTo(5, 7);
    expect(turn.tangential).toBeCloseTo(7, 7);
    expect(turn.torque).toBeCloseTo(11, 7);
    expect(turn.peak).toBeCloseTo(7, 8);
    expect(turn.peakTangential).toBeCloseTo(10, 8);
    expect(turn.wallHigh).toBeCloseTo(-3, 8);
    expect(turn.wallLow).toBeCloseTo(-7, 8);
  });
  // periods of every length of piece: each has its own number of points
  it.each([2.9, 1.5, 0.5, 0.2, 0.05])("of part of a wave, period %d: by its antiderivative", (p) => {
    const mean = (start: number, swing: number, shift: number) =>
      start + (swing * (Math.cos(shift) - Math.cos(2 * p + shift))) / (2 * p);
    const parts = [wave(-5, 2, 2, 0.3), none, wave(7, 3, 2, 1.1), wave(11, 4, 2, 2)];
    const turn = overTurn(p, [], loads(...parts), 0);
    expect(turn.normal).toBeCloseTo(mean(-5, 2, 0.3), 6);
    expect(turn.resultant).toBeCloseTo(-mean(-5, 2, 0.3), 6);
    expect(turn.tangential).toBeCloseTo(mean(7, 3, 1.1), 6);
    expect(turn.torque).toBeCloseTo(mean(11, 4, 2), 6);
  });

  it("two loads at right angles: 3 and 4 are 5, and a vector that only turns is as long everywhere", () => {
    expect(
      overTurn(
        2,
        [],
        loads(
          () => 3,
          () => -4,
        ),
        0,
      ),
    ).toMatchObject({ feed: expect.closeTo(-4, 12), normal: expect.closeTo(3, 12) });
    expect(
      overTurn(
        2,
        [],
        loads(
          () => 3,
          () => -4,
        ),
        0,
      ).resultant,
    ).toBeCloseTo(5, 12);
    const round = overTurn(
      2,
      [],
      loads(
        (x) => 5 * Math.sin(x),
        (x) => 5 * Math.cos(x),
      ),
      0,
    );
    expect(round.resultant).toBeCloseTo(5, 10);
    expect(round.peak).toBeCloseTo(5, 10);
    expect(round.feed).toBeCloseTo((5 * Math.sin(2)) / 2, 10);
  });
});

describe("pieces of a turn (by hand)", () => {
  // 1 up to the angle 1, then 5 up to 3: a mean of 11/3
  const steps = loads((x) => (x < 1 ? 1 : 5));
  it.each([[[1]], [[4]], [[-2]], [[1, 1, 1 + 1e-10]], [[2.5, 1, 2]], [[0, 1, 3]], [[1, 3 - 1e-10]]])(
    "a break may be told in any order, twice, in any turn: %j",
    (breaks) => {
      const turn = overTurn(3, breaks, steps, 0);
      expect(turn.normal).toBeCloseTo(11 / 3, 9);
      expect(turn.peak).toBe(5);
    },
  );
  it("the wall sees what comes up to its angle, a piece by its middle", () => {
    expect(overTurn(3, [1], steps, 1)).toMatchObject({ wallHigh: 1, wallLow: 1 });
    expect(overTurn(3, [1], steps, 3)).toMatchObject({ wallHigh: 5, wallLow: 1 });
    // the middle of the first piece lies at 0.5, of the second at 2
    expect(overTurn(3, [1], steps, 0.51)).toMatchObject({ wallHigh: 1, wallLow: 1 });
    expect(overTurn(3, [1], steps, 2)).toMatchObject({ wallHigh: 1, wallLow: 1 });
    expect(overTurn(3, [1], steps, 2.01)).toMatchObject({ wallHigh: 5, wallLow: 1 });
  });
  it("an edge that touches the wall at one angle only: the load just after it", () => {
    expect(overTurn(3, [1], steps, 0)).toMatchObject({ wallHigh: 1, wallLow: 1 });
    expect(
      overTurn(
        3,
        [],
        loads((x) => 2 - x),
        0,
      ).wallHigh,
    ).toBeCloseTo(2, 7);
  });
  it("where nothing cuts there is no load: it counts at the wall, and only there", () => {
    const gap = (load: number) => loads((x) => (x < 1 ? 0 : load));
    expect(overTurn(3, [1], gap(-2), 3)).toMatchObject({ wallHigh: 0, wallLow: -2, peak: 2 });
    expect(overTurn(3, [1], gap(2), 3)).toMatchObject({ wallHigh: 2, wallLow: 0, peak: 2 });
    expect(overTurn(3, [1], gap(2), 1)).toMatchObject({ wallHigh: 0, wallLow: 0, peak: 2 });
    expect(
      overTurn(
        3,
        [1],
        loads((x) => (x < 1 ? -2 : 0)),
        1,
      ),
    ).toMatchObject({ wallHigh: -2, wallLow: -2 });
  });
  it("a load along any one axis alone is a load", () => {
    for (const place of [0, 1, 2]) {
      const turn = overTurn(3, [1], (_, out) => out.fill(0, 0, place).fill(4, place, place + 1), 0);
      expect([turn.normal, turn.feed, turn.tangential]).toEqual(
        [0, 1, 2].map((i) => (i === place ? expect.closeTo(4, 9) : 0)),
      );
    }
  });
});

describe("peaks between the points (by hand)", () => {
  it("finds a crest and a trough wherever they stand", () => {
    for (let c = 0.05; c < 3; c += 0.0417) {
      const hill = (x: number) => 3 - (x - c) ** 2 + 0.2 * (x - c) ** 3;
      const turn = overTurn(
        3,
        [],
        loads((x) => -hill(x), none, hill),
        3,
      );
      expect(turn.peakTangential).toBeCloseTo(3, 9);
      // 3 − 9 + 5.4 and the like: the far end may weigh more than the hill
      const ends = [hill(0), hill(3)];
      expect(turn.wallLow).toBeCloseTo(-3, 9);
      expect(turn.wallHigh).toBeCloseTo(-Math.min(...ends), 7);
      expect(turn.peak).toBeCloseTo(Math.max(3, ...ends.map(Math.abs)), 7);
    }
  });
  it("the higher of two hills that are nearly as high", () => {
    for (let c = 0.05; c < 0.45; c += 0.0113) {
      const hills = (x: number) => 4 + Math.cos(2.5 * (x - c)) + (x > c + 0.6 ? 1e-3 : 0);
      const turn = overTurn(3, [], loads(hills, none, hills), 3);
      expect(turn.peak).toBeCloseTo(5.001, 8);
      expect(turn.peakTangential).toBeCloseTo(5.001, 8);
      expect(turn.wallHigh).toBeCloseTo(5.001, 8);
      expect(turn.wallLow).toBeCloseTo(3.001, 8);
    }
  });
});

describe("a load that passes through nothing (by hand)", () => {
  it("|x − c| has a mean of (c² + (p − c)²)/2p, wherever the bend lies", () => {
    for (let c = 0.1; c < 2; c += 0.0731) {
      const turn = overTurn(
        2,
        [],
        loads((x) => x - c),
        2,
      );
      expect(turn.resultant).toBeCloseTo((c * c + (2 - c) ** 2) / 4, 9);
      expect(turn.normal).toBeCloseTo(1 - c, 9);
      expect(turn.peak).toBeCloseTo(Math.max(c, 2 - c), 7);
    }
  });
  it("near nothing: √((x − 1)² + e²), the arc length of a parabola", () => {
    for (const e of [0.05, 0.2, 0.4]) {
      // ∫√(u² + e²) du from −1 to 1 = √(1 + e²) + e²·asinh(1/e)
      const turn = overTurn(
        2,
        [],
        loads(
          (x) => x - 1,
          () => e,
        ),
        0,
      );
      expect(turn.resultant * 2).toBeCloseTo(Math.sqrt(1 + e * e) + e * e * Math.asinh(1 / e), 5);
    }
  });
});

describe("how often the loads are asked for (by hand: 28 points in the longest piece, its two ends and its middle)", () => {
  const asked = (breaks: readonly number[], wallSpan: number, load: (x: number) => number): number => {
    let times = 0;
    overTurn(
      3,
      breaks,
      (x, out) => {
        times++;
        out[0] = out[2] = load(x);
      },
      wallSpan,
    );
    return times;
  };
  const hill = (x: number) => 5 + Math.cos(x - 1.3);
  it("31 times where nothing has a top inside, a few more for each top", () => {
    expect(asked([], 3, (x) => 5 + x)).toBe(31);
    // the magnitude, the tangential and the normal force, each by a parabola that is tried and one that holds
    expect(asked([], 3, hill)).toBeLessThanOrEqual(31 + 3 * 4);
  });
  it("no more often for a break that is told twice", () =>
    expect(asked([1, 1, 1 + 1e-12, 4, 0, 3 - 1e-12], 3, hill)).toBe(asked([1], 3, hill)));
  it("once where nothing cuts, and once more just behind the wall", () =>
    // the piece from 1 to 3 has 20 points
    expect(asked([1], 0, (x) => (x < 1 ? 0 : 5))).toBe(1 + (20 + 3) + 1));
});

describe("bad input", () => {
  it.each([0, -1, Number.NaN])("a period of %d is refused", (p) =>
    expect(() =>
      overTurn(
        p,
        [],
        loads(() => 1),
        0,
      ),
    ).toThrow(TradeError),
  );
});
