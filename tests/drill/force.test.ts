import { describe, expect, it } from "vitest";
import { drillChip, drillThrust, drillTorque } from "../../src/drill/force.ts";
import type { TradeError } from "../../src/errors.ts";

describe("drilling forces (independent)", () => {
  it("agrees with forces summed along the two lips", () => {
    const [D, f, kc11, m, point] = [8.5, 0.18, 1900, 0.26, 130];
    const half = (point * Math.PI) / 360;
    const n = 100_000;
    let [torque, axial] = [0, 0];
    for (let i = 0; i < n; i++) {
      const r = ((i + 0.5) / n) * (D / 2);
      const edge = D / 2 / n / Math.sin(half); // length of lip over dr
      const h = (f / 2) * Math.sin(half);
      const force = kc11 * h ** (1 - m) * edge; // cutting force of one lip's element
      torque += 2 * force * r;
      axial += 2 * 0.5 * force * Math.sin(half); // thrust normal to the lip, half the cutting force (common practice)
    }
    expect(drillTorque(D, f, kc11, m, point)).toBeCloseTo(torque / 1000, 8);
    expect(drillThrust(D, f, kc11, m, point, 1)).toBeCloseTo(axial, 8);
  });
  it("spends in torque the work of the chip: 2π·M = kc·f·π·D²/4", () => {
    const [D, f] = [12, 0.25];
    const kc = 1500 * drillChip(f, 140) ** -0.2;
    expect(drillTorque(D, f, 1500, 0.2, 140) * 1000 * 2 * Math.PI).toBeCloseTo((kc * f * Math.PI * D * D) / 4, 8);
  });
});

describe("drilling forces (identity)", () => {
  it("grows with the square of the diameter in torque and its first power in thrust", () => {
    expect(drillTorque(10, 0.2, 1800, 0.25, 118) / drillTorque(5, 0.2, 1800, 0.25, 118)).toBeCloseTo(4, 12);
    expect(drillThrust(10, 0.2, 1800, 0.25, 118, 1.5) / drillThrust(5, 0.2, 1800, 0.25, 118, 1.5)).toBeCloseTo(2, 12);
  });
  it("is in proportion to the chisel factor", () =>
    expect(drillThrust(6, 0.1, 1800, 0.25, 118, 3)).toBeCloseTo(3 * drillThrust(6, 0.1, 1800, 0.25, 118, 1), 9));
  it("cuts half the feed with a flat point", () => expect(drillChip(0.2, 180)).toBeCloseTo(0.1, 15));
  it("rejects what makes no sense, by name", () => {
    for (const [f, parameter] of [
      [() => drillTorque(0, 0.2, 1800, 0.25, 118), "diameter"],
      [() => drillTorque(10, 0, 1800, 0.25, 118), "feedPerRev"],
      [() => drillTorque(10, 0.2, 1800, 0.25, 181), "pointAngle"],
      [() => drillThrust(10, 0.2, 1800, 1, 118, 1.5), "exponent"],
      [() => drillThrust(10, 0.2, 1800, 0.25, 118, 0), "chiselFactor"],
    ] as const) {
      try {
        f();
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
