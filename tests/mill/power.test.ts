import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { specificForce, spindlePower, spindleTorque } from "../../src/mill/power.ts";
import { DIMENSIONS } from "../../src/units.ts";

describe("specific force and power (published)", () => {
  // Common conversion constants of the trade (Machinery's Handbook, from memory): hp = torque [lbf·in]·rpm/63025, kW = N·m·rpm/9549.
  it("has 9549 and 63025 between power and torque", () => {
    expect(spindleTorque(1, 1)).toBeCloseTo(9549.3, 1);
    expect(Math.round(spindleTorque(DIMENSIONS.power.factor, 1) / DIMENSIONS.torque.factor)).toBe(63025);
  });
  // Unit power: 1 hp per in³/min is 396,000 lbf/in² (12 in × 33,000 ft·lbf/min; from memory)
  it("has 396 ksi for one horsepower per cubic inch a minute", () => {
    const kc = 396 * DIMENSIONS.stress.factor;
    expect(spindlePower(DIMENSIONS["removal rate"].factor, kc, 1)).toBeCloseTo(DIMENSIONS.power.factor, 10);
  });
});

describe("specific force and power (independent)", () => {
  it("takes the logarithm's straight line between chips", () => {
    // on log paper kc1.1 = 1700 at 1 mm and a slope of −0.25: a tenth of the chip, 10^0.25 = 1.77828 times the force
    expect(specificForce(1700, 0.25, 0.1, 0) / 1700).toBeCloseTo(1.7782794, 7);
    expect(specificForce(1700, 0.25, 0.01, 0) / 1700).toBeCloseTo(3.1622777, 7);
  });
  it("agrees with force times speed", () => {
    // 2 mm × 0.2 mm chip at 150 m/min under 2500 MPa: 1000 N × 2.5 m/s = 2.5 kW; Q = 2·0.2·150 cm³/min
    expect(spindlePower(2 * 0.2 * 150, 2500, 1)).toBeCloseTo(2.5, 12);
    expect(spindlePower(2 * 0.2 * 150, 2500, 0.8)).toBeCloseTo(3.125, 12);
  });
});

describe("specific force and power (identity)", () => {
  it("is kc1.1 at 1 mm, and 1.5 % less per degree of rake", () => {
    expect(specificForce(2100, 0.3, 1, 0)).toBe(2100);
    expect(specificForce(2100, 0.3, 1, 10)).toBeCloseTo(2100 * 0.85, 10);
    expect(specificForce(2100, 0.3, 1, -6)).toBeCloseTo(2100 * 1.09, 10);
  });
  it("rejects what makes no sense, by name", () => {
    for (const [f, parameter] of [
      [() => specificForce(1800, 1, 0.1, 0), "exponent"],
      [() => specificForce(1800, 0.2, 0, 0), "chipThickness"],
      [() => specificForce(1800, 0.2, 0.1, 67), "rakeAngle"],
      [() => spindlePower(1, 2000, 0), "efficiency"],
      [() => spindlePower(1, 2000, 1.01), "efficiency"],
      [() => spindleTorque(1, 0), "rpm"],
    ] as const) {
      try {
        f();
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
    expect(() => spindleTorque(Number.NaN, 100)).toThrow(TradeError);
  });
});
