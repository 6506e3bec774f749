import { describe, expect, it } from "vitest";
import { forceSlope } from "../../src/mill/chatter-cut.ts";
import {
  type BandedCut,
  chatterDepth,
  likelyToChatter,
  measuredChatter,
  ORDINARY_RATIO,
  threadWidth,
} from "../../src/mill/chatter-rule.ts";
import { meanChip } from "../../src/mill/chip.ts";
import { type HeldTool, HOLDING, tipMode } from "../../src/tool/tip-mode.ts";

/** kc1.1, m, Kr, feed at 12 mm, surface speed: common practice for a few everyday materials. */
const MATERIALS = {
  "C45 steel": [2220, 0.14, 0.35, 0.07, 155],
  "42CrMo4 quenched and tempered": [2500, 0.26, 0.4, 0.058, 115],
  "stainless 316L": [2350, 0.21, 0.4, 0.056, 85],
  "aluminium 6082": [780, 0.23, 0.3, 0.1, 375],
  "titanium 6-4": [1400, 0.23, 0.45, 0.055, 55],
  "grey iron 250": [1160, 0.26, 0.4, 0.08, 135],
} as const;
type Name = keyof typeof MATERIALS;

/** Solid-carbide end mills as a shop holds them: diameter, teeth, stick-out, cutting length [mm]. */
const CUTTERS = [
  [4, 4, 20, 11],
  [6, 4, 22, 13],
  [8, 4, 28, 19],
  [8, 3, 30, 20],
  [10, 4, 34, 22],
  [12, 3, 40, 26],
  [12, 4, 40, 26],
  [16, 4, 50, 32],
  [20, 4, 58, 38],
] as const;

/** A full slot is taken in steps of half a diameter where the material is easy, of a quarter where it is tough (common practice). */
const SLOT_STEP: Readonly<Record<Name, number>> = {
  "C45 steel": 0.5,
  "42CrMo4 quenched and tempered": 0.25,
  "stainless 316L": 0.25,
  "aluminium 6082": 0.5,
  "titanium 6-4": 0.25,
  "grey iron 250": 0.5,
};

/** Everyday cuts beside a slot, radial and axial depth in diameters: roughing, then finishing of a wall (common practice). */
const CUTS = [
  [0.5, 0.5],
  [0.3, 1],
  [0.2, 1],
  [0.1, 1.5],
  [0.05, 1.5],
  [0.03, 1.5],
] as const;

const held = (D: number, stickOut: number, cutting: number): HeldTool => ({
  segments: [
    { tipDiameter: 0.8 * D, holderDiameter: 0.8 * D, length: cutting },
    { tipDiameter: D, holderDiameter: D, length: stickOut - cutting },
  ],
  shankDiameter: D,
  modulus: 600,
  poisson: 0.22,
  density: 14.5,
  holderStiffness: 22,
  damping: 0.03,
});

function cutOf(name: Name, D: number, teeth: number, ae: number): BandedCut {
  const [kc11, m, radialRatio, feed12, surfaceSpeed] = MATERIALS[name];
  const feed = (feed12 * D) / 12;
  return {
    teeth,
    radialDepth: ae,
    diameter: D,
    slope: forceSlope(kc11, m, meanChip(feed, ae, D, 90)),
    radialRatio,
    way: "climb",
    surfaceSpeed,
  };
}

const flagged = (name: Name, [D, z, L, cl]: readonly [number, number, number, number], ae: number, ap: number) => {
  const tool = held(D, L, cl);
  const modes = { firm: tipMode(tool, HOLDING.firm), nominal: tipMode(tool, HOLDING.nominal) };
  return likelyToChatter(cutOf(name, D, z, ae * D), modes, ap * D);
};

describe("likely to chatter (independent): what shops run and what they do not", () => {
  it("leaves at least 95 of 100 everyday cuts alone", () => {
    let all = 0;
    let bad = 0;
    for (const name of Object.keys(MATERIALS) as Name[]) {
      for (const cutter of CUTTERS) {
        // four flutes are for steel, three for aluminium
        if ((name === "aluminium 6082") !== (cutter[1] === 3)) continue;
        for (const [ae, ap] of [[1, SLOT_STEP[name]], ...CUTS] as const) {
          all++;
          if (flagged(name, cutter, ae, ap)) bad++;
        }
      }
    }
    expect(all).toBeGreaterThan(200);
    expect(bad / all).toBeLessThanOrEqual(0.05);
  });
  it("flags a bore 25 mm deep in one go in hardened and tempered steel with a 16 mm cutter", () => {
    expect(flagged("42CrMo4 quenched and tempered", [16, 4, 50, 32], 0.5, 25 / 16)).toBe(true);
    expect(flagged("42CrMo4 quenched and tempered", [16, 4, 50, 32], 0.03, 25 / 16)).toBe(false);
  });
  it("flags full slots as deep as a long tool reaches", () => {
    let all = 0;
    let bad = 0;
    for (const name of Object.keys(MATERIALS) as Name[]) {
      for (const L of [6.5, 7.5]) {
        for (const D of [6, 8, 12, 16, 20]) {
          const found = flagged(name, [D, 4, L * D, 2 * D], 1, L - 0.5);
          all++;
          if (found) bad++;
          // a small cutter at the slow speed of titanium is damped by the work itself
          if (D >= 12 || name !== "titanium 6-4") expect(found, `${name} ${D} × ${L}`).toBe(true);
        }
      }
    }
    expect(bad / all).toBeGreaterThan(0.9);
  });
  it("the advice helps in the order it is given: shorter, shallower, narrower, fewer teeth", () => {
    const steel = "42CrMo4 quenched and tempered";
    expect(flagged(steel, [16, 4, 100, 32], 0.5, 1)).toBe(true);
    expect(flagged(steel, [16, 4, 45, 32], 0.5, 0.5)).toBe(false);
    const tool = held(16, 50, 32);
    const depth = (z: number, ae: number) =>
      chatterDepth(cutOf(steel, 16, z, ae), tipMode(tool, HOLDING.nominal), "nominal");
    expect(chatterDepth(cutOf(steel, 16, 4, 8), tipMode(held(16, 40, 32), HOLDING.nominal), "nominal")).toBeGreaterThan(
      depth(4, 8),
    );
    expect(depth(4, 4)).toBeGreaterThan(depth(4, 8));
    expect(depth(2, 8)).toBeGreaterThan(depth(4, 8));
  });
});

describe("likely to chatter (identity)", () => {
  const steel = cutOf("C45 steel", 12, 4, 12);
  const tool = held(12, 40, 26);
  const [firm, nominal, soft] = (["firm", "nominal", "soft"] as const).map((end) => tipMode(tool, HOLDING[end]));
  it("needs both ends: the limit at the firm end, a hundred times that at the nominal end", () => {
    const b = [chatterDepth(steel, firm!, "firm"), ORDINARY_RATIO * chatterDepth(steel, nominal!, "nominal")];
    const turn = Math.max(...b);
    expect(likelyToChatter(steel, { firm: firm!, nominal: nominal! }, 0.99 * turn)).toBe(false);
    expect(likelyToChatter(steel, { firm: firm!, nominal: nominal! }, 1.01 * turn)).toBe(true);
  });
  it("the ends are in order", () => {
    const b = [
      chatterDepth(steel, soft!, "soft"),
      chatterDepth(steel, nominal!, "nominal"),
      chatterDepth(steel, firm!, "firm"),
    ];
    expect(b[0]).toBeLessThan(b[1]!);
    expect(b[1]).toBeLessThan(b[2]!);
  });
  it("more damping in the machine's row allows more depth, and so does a stiffer holder", () => {
    const depth = (over: Partial<HeldTool>) =>
      chatterDepth(steel, tipMode({ ...tool, ...over }, HOLDING.nominal), "nominal");
    expect(depth({ damping: 0.05 })).toBeGreaterThan(depth({}));
    expect(depth({ holderStiffness: 30 })).toBeGreaterThan(depth({}));
  });
  it("measured modes are judged at the end of the damping that favours the cut", () => {
    const modes = { x: [nominal!], y: [nominal!] };
    const b = chatterDepth(steel, modes, "firm");
    expect(measuredChatter(steel, modes, 0.99 * b)).toBe(false);
    expect(measuredChatter(steel, modes, 1.01 * b)).toBe(true);
  });
  it("a thread cuts as wide as its profile, at most nine tenths of the pitch", () => {
    // the profile of 60°: flat and two flanks
    expect(threadWidth(1.5, 0.5)).toBeCloseTo(1.5 / 8 + (2 * 0.5) / Math.sqrt(3), 12);
    expect(threadWidth(1.5, 2)).toBeCloseTo(1.35, 12);
    expect(() => threadWidth(0, 1)).toThrow(/pitch/);
  });
});
