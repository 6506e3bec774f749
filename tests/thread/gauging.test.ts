import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bestWire,
  betweenBalls,
  gaugedPitchDiameter,
  overWires,
  wearChange,
  wireRange,
} from "../../src/thread/gauging.ts";
import { basicPitchDiameter } from "../../src/thread/profile.ts";
import { refusal } from "../refusal.ts";

describe("three wires (published)", () => {
  it("1-1/2 in, 6 per inch, wire 0.140: 1.6674 without the helix (Jones, Turning and Boring, 1914)", () => {
    const pitch = 1 / 6;
    const base = { pitch, wireDiameter: 0.14, profileAngle: 60, pitchDiameter: basicPitchDiameter(1.5, pitch, 60) };
    // The book leaves the lead angle out: a lead next to nothing.
    expect(Math.abs(overWires({ ...base, lead: 1e-9 }) - 1.6674)).toBeLessThanOrEqual(0.00005);
    // With it the reading is 0.0002 in more, the order the handbooks give for coarse threads.
    expect(overWires({ ...base, lead: pitch }) - overWires({ ...base, lead: 1e-9 })).toBeCloseTo(0.00015, 4);
  });
  it("1/2-12, wire 0.04811: 1.5155/n rule of the US Army ordnance course OD1645", () => {
    const got = overWires({
      pitchDiameter: basicPitchDiameter(0.5, 1 / 12, 60),
      pitch: 1 / 12,
      lead: 1e-9,
      wireDiameter: 0.04811,
      profileAngle: 60,
    });
    // m = D + 3W − 1.5155/n; the constant is printed to four places, /12.
    expect(Math.abs(got - (0.5 + 3 * 0.04811 - 1.5155 / 12))).toBeLessThanOrEqual(0.00001);
  });
  it("7/16-14, wire 0.045: 0.464 (worked example of a model engineers' society)", () => {
    const got = overWires({
      pitchDiameter: basicPitchDiameter(0.4375, 1 / 14, 60),
      pitch: 1 / 14,
      lead: 1 / 14,
      wireDiameter: 0.045,
      profileAngle: 60,
    });
    expect(Math.abs(got - 0.464)).toBeLessThanOrEqual(0.0005);
  });
  it("Whitworth: M = d − 1.6008·P + 3.1657·W (Jones 1914)", () => {
    const P = 1 / 8;
    const d = 1;
    const W = 0.07;
    const got = overWires({ pitchDiameter: d - 0.640327 * P, pitch: P, lead: 1e-9, wireDiameter: W, profileAngle: 55 });
    // Constants printed to four places: half a digit of each.
    expect(Math.abs(got - (d - 1.6008 * P + 3.1657 * W))).toBeLessThanOrEqual(0.00005 * (P + W));
  });
  it("best wires 0.57735·P and 0.5637·P (60°, 55°; common in gauge texts)", () => {
    expect(Math.abs(bestWire(1, 60) - 0.57735)).toBeLessThanOrEqual(0.000005);
    expect(Math.abs(bestWire(1, 55) - 0.5637)).toBeLessThanOrEqual(0.00005);
    // US Army OD1645: 8 per inch, 0.072.
    expect(Math.abs(bestWire(1 / 8, 60) - 0.072)).toBeLessThanOrEqual(0.0005);
  });
  it("range of wires 0.505182·P to 1.010363·P (60°), 0.506·P to 0.853·P (55°)", () => {
    const sixty = wireRange(1, 60, "external");
    // The printed figure comes from rounded constants: one in the sixth place.
    expect(Math.abs(sixty.clearFrom - 0.505182)).toBeLessThanOrEqual(0.000001);
    expect(sixty.touchesTo).toBeCloseTo(1.010363, 6);
    const whitworth = wireRange(1, 55, "external");
    expect(Math.abs(whitworth.clearFrom - 0.506)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs(whitworth.touchesTo - 0.853)).toBeLessThanOrEqual(0.0005);
  });
});

/**
 * A ball of diameter W pushed into the helicoid groove of a V thread, found by geometry in space: the smallest axis
 * distance at which no point of the ball lies inside the flank (external) — a grid over the ball's surface.
 */
function ballOnThread(d2: number, P: number, L: number, W: number, angle: number): number {
  const t = Math.tan((angle * Math.PI) / 360);
  // Flank of the ridge: axial half width of the groove at radius r and turn φ, centred on z = L·φ/2π.
  const groove = (r: number) => P / 4 + (r - d2 / 2) * t;
  const penetration = (x: number) => {
    let worst = Number.NEGATIVE_INFINITY;
    const n = 1200;
    for (let i = 0; i < n; i++) {
      // Direction near the contact: elevation a towards +z, sideways angle b.
      for (let j = -60; j <= 60; j++) {
        const a = (Math.PI / 2) * (i / n);
        const b = j * 0.003;
        const px = x - (W / 2) * Math.cos(a) * Math.cos(b);
        const py = (W / 2) * Math.cos(a) * Math.sin(b);
        const pz = (W / 2) * Math.sin(a);
        const r = Math.hypot(px, py);
        const phi = Math.atan2(py, px);
        worst = Math.max(worst, pz - (L * phi) / (2 * Math.PI) - groove(r));
      }
    }
    return worst;
  };
  let low = d2 / 2 - W;
  let high = d2 / 2 + W;
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    if (penetration(middle) > 0) low = middle;
    else high = middle;
  }
  return 2 * high + W;
}

describe("helix term (independent)", () => {
  it("follows a ball in a steep thread laid by geometry", () => {
    const d2 = 9.026;
    const P = 1.5;
    const W = 0.866;
    for (const L of [1.5, 3]) {
      const plain = overWires({ pitchDiameter: d2, pitch: P, lead: 1e-9, wireDiameter: W, profileAngle: 60 });
      const withHelix = overWires({ pitchDiameter: d2, pitch: P, lead: L, wireDiameter: W, profileAngle: 60 });
      const brute = ballOnThread(d2, P, L, W, 60);
      // The term is the leading one in tan²λ (λ = 3° and 6°): a tenth of itself.
      expect(Math.abs(withHelix - brute)).toBeLessThan(0.12 * (withHelix - plain) + 1e-5);
    }
  });
});

describe("gauging (identity)", () => {
  const any = fc.record({
    pitch: fc.double({ min: 0.3, max: 6, noNaN: true }),
    ratio: fc.double({ min: 4, max: 40, noNaN: true }),
    wire: fc.double({ min: 0.4, max: 0.8, noNaN: true }),
    profileAngle: fc.constantFrom(60, 55),
  });
  it("reads the pitch diameter back from wires and balls", () => {
    fc.assert(
      fc.property(any, ({ pitch, ratio, wire, profileAngle }) => {
        const g = { pitchDiameter: ratio * pitch, pitch, lead: pitch, wireDiameter: wire * pitch, profileAngle };
        for (const [M, kind] of [
          [overWires(g), "external"],
          [betweenBalls(g), "internal"],
        ] as const) {
          expect(gaugedPitchDiameter(M, g, kind) / g.pitchDiameter).toBeCloseTo(1, 12);
        }
      }),
    );
  });
  it("stands as far inside the pitch diameter with balls as outside with wires", () => {
    const g = { pitchDiameter: 27.7267, pitch: 3.5, lead: 3.5, wireDiameter: 2, profileAngle: 60 };
    expect(overWires(g) - g.pitchDiameter).toBeCloseTo(g.pitchDiameter - betweenBalls(g), 12);
  });
  it("does not depend on a small error of the angle with the best wire", () => {
    const wireDiameter = bestWire(1, 60);
    const at = (profileAngle: number) =>
      overWires({ pitchDiameter: 10, pitch: 1, lead: 1e-9, wireDiameter, profileAngle });
    expect(Math.abs(at(60.2) - at(59.8))).toBeLessThan(1e-5);
  });
  it("refuses wires that cannot touch the flanks", () => {
    const g = { pitchDiameter: 10, pitch: 1, lead: 1, profileAngle: 60 };
    expect(refusal(() => overWires({ ...g, wireDiameter: 1.1 }))).toMatch(/wireDiameter is 1.1; at least 0.288675/);
    expect(refusal(() => betweenBalls({ ...g, wireDiameter: 0.9 }))).toMatch(/ballDiameter is 0.9/);
    expect(refusal(() => gaugedPitchDiameter(10.6, { ...g, wireDiameter: 1.1 }, "external"))).toMatch(
      /wireDiameter is 1.1/,
    );
    expect(refusal(() => gaugedPitchDiameter(9.6, { ...g, wireDiameter: 0.9 }, "internal"))).toMatch(
      /ballDiameter is 0.9/,
    );
  });
  it("knows the range for 55° too, and asks nothing of an angle without a basic profile", () => {
    const g = { pitchDiameter: 10, pitch: 1, lead: 1 };
    // Jones 1914: Whitworth 0.506·P to 0.853·P for wires that stand clear
    expect(refusal(() => overWires({ ...g, profileAngle: 55, wireDiameter: 0.9 }))).toMatch(/wireDiameter is 0.9/);
    expect(overWires({ ...g, profileAngle: 55, wireDiameter: 0.84 })).toBeGreaterThan(10);
    expect(overWires({ ...g, profileAngle: 40, wireDiameter: 1.1 })).toBeGreaterThan(10);
  });
  it("turns a reading into a wear value of half the error", () => {
    expect(wearChange(5.38, 5.42)).toBeCloseTo(-0.02, 12);
    expect(wearChange(5.44, 5.42, 0.5)).toBeCloseTo(0.005, 12);
    expect(refusal(() => wearChange(5.4, 5.4, 0))).toMatch(/gain/);
  });
});
