import { describe, expect, it } from "vitest";
import { THREAD_MILL_USE, TOOLS } from "../../src/lists/tools.ts";
import { averagedCut } from "../../src/mill/chatter-cut.ts";
import { type ThreadPassCut, threadParts, threadWidth } from "../../src/mill/chatter-rule.ts";
import { planOf } from "../findings/rule.ts";

type Way = "climb" | "conventional";
const STATE = { teeth: 4, radialRatio: 0.4, surfaceSpeed: 100, processDamping: 2.5e5 };

/**
 * The same matrices by brute force, without any formula of engagement: thin slices of the profile, small steps of a turn. An edge
 * point of a slice cuts where it stands in metal: outside the wall that was there before, as the crow flies from the hole's
 * middle, and on the side of the cutter that moves into it.
 */
function brute(pass: ThreadPassCut, way: Way): { A: number[]; P: number[] } {
  const { holeDiameter, side, cutterDiameter, startDepth, endDepth, pitch, feedPerTooth, kc11, exponent } = pass;
  const { teeth, radialRatio, surfaceSpeed, processDamping } = STATE;
  const inside = side === "inside";
  const tan = Math.tan((pass.halfAngle * Math.PI) / 180);
  const sin = Math.sin((pass.halfAngle * Math.PI) / 180);
  const path = inside
    ? holeDiameter / 2 + endDepth - cutterDiameter / 2
    : holeDiameter / 2 - endDepth + cutterDiameter / 2;
  const A = [0, 0, 0, 0];
  const P = [0, 0, 0, 0];
  const SLICES = 300;
  const STEPS = 4000;
  const slice = (u: number, width: number, sine: number) => {
    const r = cutterDiameter / 2 - u;
    const gone = Math.max(0, startDepth - u);
    const before = holeDiameter / 2 + (inside ? gone : -gone);
    // θ of the tooth from the line to the wall, against the feed; only the half of the cutter that moves into the metal counts
    const engaged: number[] = [];
    for (let i = 0; i < STEPS; i++) {
      const theta = (Math.PI * (i + 0.5)) / STEPS;
      // distance from the hole's middle of the point of the edge that is θ from the finished wall
      const toWall = inside ? r * Math.cos(theta) : -r * Math.cos(theta);
      const across = r * Math.sin(theta);
      const far = Math.hypot(path + toWall, across);
      if (inside ? far > before : far < before) engaged.push(theta);
    }
    if (engaged.length === 0) return;
    const dTheta = Math.PI / STEPS;
    const mean = engaged.reduce((s, t) => s + feedPerTooth * Math.sin(t), 0) / engaged.length;
    const slope = (1 - exponent) * kc11 * (sine * mean) ** -exponent;
    for (const t of engaged) {
      // x along the feed, y across it; the chip grows with sin and cos of the angle of the tooth
      const at = way === "climb" ? Math.PI - t : t;
      const [s, c] = [Math.sin(at), Math.cos(at)];
      const w = (teeth / (2 * Math.PI)) * dTheta * width;
      // the chip of a displacement (x, y) is x·sin + y·cos: force along the edge's way (cos, −sin), and Kr of it inwards
      const along = [c, -s];
      const inwards = [s, c];
      const chip = [s, c];
      for (const [row, col] of [
        [0, 0],
        [0, 1],
        [1, 0],
        [1, 1],
      ] as const) {
        A[2 * row + col]! += w * slope * (along[row]! + radialRatio * inwards[row]!) * chip[col]!;
        P[2 * row + col]! += (w * 1e-6 * processDamping * 60 * inwards[row]! * chip[col]!) / surfaceSpeed;
      }
    }
  };
  slice(0, pitch / 8, 1);
  for (let i = 0; i < SLICES; i++) slice((endDepth * (i + 0.5)) / SLICES, (2 * endDepth * tan) / SLICES, sin);
  const whole = pitch / 8 + 2 * endDepth * tan;
  return { A: A.map((a) => a / whole), P: P.map((p) => p / whole) };
}

const M10: ThreadPassCut = {
  holeDiameter: 8.5,
  side: "inside",
  cutterDiameter: 7.6,
  startDepth: 0,
  endDepth: 0.82,
  pitch: 1.5,
  halfAngle: 30,
  feedPerTooth: 0.014,
  kc11: 2220,
  exponent: 0.14,
};

describe("what a thread mill's profile engages, as chatter sees it (independent: points of the edge in metal)", () => {
  const cases: readonly (readonly [string, ThreadPassCut])[] = [
    ["M10 in one pass", M10],
    ["M10, the first of two", { ...M10, endDepth: 0.55 }],
    ["M10, the second of two", { ...M10, startDepth: 0.55 }],
    ["M16 with a cutter half as large", { ...M10, holeDiameter: 14, cutterDiameter: 8, endDepth: 1.1, pitch: 2 }],
    ["on a bolt", { ...M10, side: "outside", holeDiameter: 20, cutterDiameter: 11.6, endDepth: 0.95 }],
    ["pipe thread of 55°", { ...M10, halfAngle: 27.5, exponent: 0.25, kc11: 1400 }],
  ];
  it.each(cases)("%s", (_, pass) => {
    for (const way of ["climb", "conventional"] as const) {
      const parts = threadParts(pass);
      expect(parts.reduce((s, p) => s + p.share, 0)).toBeCloseTo(1, 9);
      const { A, P } = averagedCut({ ...STATE, ...parts[0]!, way, parts });
      const wanted = brute(pass, way);
      const size = Math.max(...wanted.A.map(Math.abs));
      const damping = Math.max(...wanted.P.map(Math.abs));
      for (let i = 0; i < 4; i++) {
        expect(Math.abs(A[i]! - wanted.A[i]!) / size, `A${i} ${way}`).toBeLessThan(0.01);
        expect(Math.abs(P[i]! - wanted.P[i]!) / damping, `P${i} ${way}`).toBeLessThan(0.01);
      }
    }
  });
});

describe("what a thread mill's profile engages, as chatter sees it (identity)", () => {
  it("an edge whose parts are all alike is the cut itself", () => {
    const cut = { ...STATE, radialDepth: 2, diameter: 10, slope: 2500, way: "climb" as const };
    const part = { radialDepth: 2, diameter: 10, slope: 2500 };
    const { A } = averagedCut({
      ...cut,
      parts: [
        { ...part, share: 0.3 },
        { ...part, share: 0.7 },
      ],
    });
    averagedCut(cut).A.forEach((a, i) => {
      expect(A[i]!).toBeCloseTo(a, 9);
    });
  });
  it("a width of a profile is never more than nine tenths of its pitch", () => {
    expect(10 * threadWidth(1.5, 5)).toBeCloseTo(13.5, 12);
  });
});

describe("full-profile thread mills in everyday threads (independent: shops run them)", () => {
  // One and a half diameters deep in everyday metals, passes as the row chooses: shops take one to five and get on.
  const MATERIALS = [
    ...["Steel S235 (0.17 % C)", "Steel C45 (AISI 1045)", "Steel 11SMn30 (AISI 1215)"],
    ...["Steel 42CrMo4 annealed (AISI 4140)", "Grey iron EN-GJL-250", "Aluminium EN AW-6082 T6 (AA 6061)"],
    ...["Brass CuZn39Pb3 (UNS C38500)", "Stainless X6Cr17 (AISI 430)"],
  ];
  const DEPTH: Readonly<Record<string, number>> = {
    ...{ M6x1: 9, "M8x1.25": 12, "M10x1.5": 15 },
    ...{ "1/4-20 UNC": 0.375, "3/8-16 UNC": 0.5625, "1/2-13 UNC": 0.75 },
  };
  const at = (heading: string) => (TOOLS[0] as string[]).indexOf(heading);
  const rows = TOOLS.filter((t) => t[at("Kind")] === "thread mill full").flatMap((t) =>
    THREAD_MILL_USE[String(t[0])]!.flatMap((Thread) =>
      MATERIALS.map((Material) => ({
        Operation: "thread mill",
        Units: String(t[at("Units")]),
        Material,
        Machine: "Centre V4",
        Tool: String(t[0]),
        Thread,
        Depth: DEPTH[Thread]!,
      })),
    ),
  );
  it("at most 5 of 100 are likely to chatter", () => {
    expect(rows.length).toBeGreaterThan(40);
    const bad = rows.filter((row) => planOf({ row }).findings.some((f) => f.code === "chatter"));
    expect(bad.length / rows.length, bad.map((r) => `${r.Tool} ${r.Material}`).join()).toBeLessThanOrEqual(0.05);
  });
  it("a row that chooses its passes takes no more than it would without chatter, where one pass is quiet already", () => {
    const aluminium = rows.filter((r) => r.Material.startsWith("Aluminium") && r.Units === "mm");
    for (const row of aluminium) expect(planOf({ row }).results.passes).toBe(1);
  });
});
