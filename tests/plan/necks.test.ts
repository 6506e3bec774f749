import { describe, expect, it } from "vitest";
import { deflectionParts } from "../../src/tool/beam.ts";
import { planOf, STEEL } from "../findings/rule.ts";

const row = { ...STEEL, Operation: "thread mill", Tool: "TM-M6-SL", Thread: "M6", "Start diameter": 5, Depth: 20 };
const shown = (tool: Record<string, number> | undefined) => planOf({ row, tool });
const flexibility = (p: ReturnType<typeof shown>) => {
  const step = p.steps.find((s) => s.key === "deflection")!;
  return (step.value as number) / (step.facts as { force: number }).force;
};

describe("necks that are cones (independent: the beam by itself)", () => {
  it("bend as the same cone does, between the thin and the thick cylinder", () => {
    // TM-M6-SL: neck 2.8 to 30, shank 6 to 42; tip to profile 0.5; holder 22 N/µm on this machine
    const options = { modulus: 600, poisson: 0.22, shear: true, stepFlexibility: true, holderStiffness: 22 };
    const cone = deflectionParts(
      1,
      [
        { tipDiameter: 2.8, holderDiameter: 4.4, length: 30 },
        { tipDiameter: 6, holderDiameter: 6, length: 12 },
      ],
      { ...options, loadDistance: 0.5 },
    ).total;
    expect(flexibility(shown({ "Neck end diameter": 4.4 }))).toBeCloseTo(cone, 9);
    expect(flexibility(shown({ "Neck end diameter": 4.4 }))).toBeLessThan(flexibility(shown(undefined)));
    expect(flexibility(shown({ "Neck end diameter": 2.8 }))).toBeCloseTo(flexibility(shown(undefined)), 12);
  });
});
