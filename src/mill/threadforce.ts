/**
 * Forces of a thread mill on one pass, summed over the profile, teeth and one turn.
 *
 * At u below the tip the profile is a cutter of its own: diameter Dc − 2u, wall to be made t2 − u deep, wall left by the pass
 * before t1 − u deep (the bare hole once u > t1), all on the path of the same radius e. Its engagement follows from
 *   1 − cos φe = 2·ae/(Dc − 2u),   ae = |Rw² − Rm²|·4/(4·2e),   Rm, Rw radius of the wall after and before.
 * Because a profile's edge is straight, all of it is at the same θ, and what cuts at θ is the part with φe(u) > θ: at most one
 * stretch below the depth of the last pass and one above, both closed. The tip flat cuts the full chip fz·sin θ; a flank of half
 * angle α cuts fz·sin θ·sin α on an edge of du/cos α. The lead is neglected, and a helix within one profile; over the profiles of
 * a full-profile cutter it counts (profiles.ts).
 *
 * Directions as in force.ts: normal + away from the wall.
 */
import { count, notNegative, positive, within } from "../check.ts";
import { TradeError } from "../errors.ts";
import { powers } from "../numeric.ts";
import type { CutForces, Way } from "./force.ts";
import { profileTrail, sumProfiles, wallProfiles } from "./profiles.ts";
import { type Loads, MOST_TEETH, overTurn } from "./turn.ts";

/** Where one pass runs. */
export interface ThreadPass {
  /** Diameter of the hole; of the blank for an external thread [mm]. */
  readonly holeDiameter: number;
  /** Dc, over the tips [mm] */
  readonly cutterDiameter: number;
  /** Depth of the tip from the wall of the hole before and after the pass [mm]. */
  readonly startDepth: number;
  readonly endDepth: number;
  readonly internal: boolean;
}

export interface ThreadCut extends ThreadPass {
  /** f [mm] */
  readonly tipFlat: number;
  /** Included angle of the profile 2α [deg]. */
  readonly profileAngle: number;
  /** fz, of the cutter's centre [mm] */
  readonly feedPerTooth: number;
  /** z [-] */
  readonly teeth: number;
  /** kc1.1 [MPa] */
  readonly kc11: number;
  /** m [-] */
  readonly exponent: number;
  /** Radial over tangential force [-]. */
  readonly radialRatio: number;
  /** Share of the flanks' thrust that is radial [-]: 1 (default) applies radialRatio as it stands; sin α takes it normal to the edge. */
  readonly flankThrust?: number;
  /** Axial over tangential force [-]; 0 when omitted (the flanks balance each other). */
  readonly axialRatio?: number;
  /** Edge (ploughing) force per length of engaged edge, tangential and radial [N/mm]; 0 when omitted. */
  readonly edgeTangential?: number;
  readonly edgeRadial?: number;
  /** Profiles that cut at the same time [-]: 1 for a single-profile cutter, length over pitch for a full-profile one. */
  readonly turnsInCut?: number;
  /** Helix of the flutes [deg] and distance of the profiles [mm]: with both, and whole profiles, the helix spreads their entry. */
  readonly helixAngle?: number;
  readonly pitch?: number;
  readonly way?: Way;
}

export interface ThreadForces extends CutForces {
  /** Mean sum of the tangential forces [N]. */
  readonly meanTangential: number;
  /** Largest chip normal to the flank, and at the tip flat [mm]. */
  readonly flankChip: number;
  readonly tipChip: number;
  /** Radius of the path of the cutter's centre [mm]. */
  readonly pathRadius: number;
  /** Largest angle of engagement of any part of the profile [deg]. */
  readonly engagement: number;
}

/**
 * Radius of the path on which the tip of a thread mill stands at a depth from the wall.
 *
 *   e = Dh/2 + t − Dc/2 inside,   Db/2 − t + Dc/2 outside
 *
 * @param holeDiameter - Dh, hole; outside Db, blank [mm], scalar, > 0
 * @param depth - t, of the tip from the wall [mm], scalar
 * @param cutterDiameter - Dc [mm], scalar, > 0
 * @param internal - true for a thread in a hole
 * @returns e [mm]
 * @throws TradeError "range" when a diameter is not above 0
 * @source DERIVED
 * @example
 * tipPathRadius(5, 0.5, 4, true) //=> 1
 */
export function tipPathRadius(holeDiameter: number, depth: number, cutterDiameter: number, internal: boolean): number {
  const R = positive("holeDiameter", holeDiameter) / 2;
  const rc = positive("cutterDiameter", cutterDiameter) / 2;
  return internal ? R + depth - rc : R - depth + rc;
}

/**
 * Forces of one pass of a thread mill with Kienzle's specific force.
 *
 *   dFt = kc1.1·h^(1−m)·dl,   h = fz·sin θ, dl = f at the tip;   h = fz·sin θ·sin α, dl = du/cos α on each flank
 *
 * @param cut - the pass; cut.holeDiameter, cut.cutterDiameter, cut.tipFlat, cut.feedPerTooth, cut.startDepth, cut.endDepth [mm],
 *   cut.profileAngle [deg], cut.kc11 [MPa], cut.exponent, cut.radialRatio, cut.teeth, cut.turnsInCut [-],
 *   cut.edgeTangential and cut.edgeRadial [N/mm], cut.helixAngle [deg] and cut.pitch [mm]
 * @returns the figures of ThreadForces [N, N·m, mm, deg]
 * @throws TradeError "range" when a value is outside its limits (inside, the cutter is not larger than the hole; endDepth above
 *   startDepth and below half the cutter)
 * @source KIENZLE1952 MARTELLOTTI1941
 * @example
 * threadMillForces({ holeDiameter: 2.459, cutterDiameter: 2.35, tipFlat: 0.0625, profileAngle: 60, feedPerTooth: 0.01, teeth: 3, kc11: 800, exponent: 0.25, startDepth: 0, endDepth: 0.2706, radialRatio: 0.35, internal: true }).meanTangential //=> 3.39717
 */
export function threadMillForces(cut: ThreadCut): ThreadForces {
  const { p, e, fz, sine, ka, profiles, trail, phiTip, phiStep, phiTop, reach, at } = profileCut(cut);
  const turn = overTurn(p, [phiTip, phiStep, phiTop], at, 0);
  const largest = (phi: number) => (phi >= Math.PI / 2 ? 1 : Math.sin(phi));
  const spread = trail > 0 ? sumProfiles(p, at, profiles, trail, true) : undefined;
  const wall = trail > 0 ? wallProfiles(p, at, profiles, trail) : undefined;
  return {
    peak: spread?.peak ?? profiles * turn.peak,
    mean: spread?.mean ?? profiles * turn.resultant,
    peakTangential: spread?.peakTangential ?? profiles * turn.peakTangential,
    meanTangential: profiles * turn.tangential,
    meanTorque: (profiles * turn.torque) / 1000,
    meanNormal: profiles * turn.normal,
    meanFeed: profiles * turn.feed,
    meanAxial: profiles * ka * turn.tangential,
    wallNormal: wall?.high ?? profiles * turn.wallHigh,
    wallNormalLeast: wall?.low ?? profiles * turn.wallLow,
    flankChip: fz * sine * largest(reach),
    tipChip: fz * largest(phiTip),
    pathRadius: e,
    engagement: (reach * 180) / Math.PI,
  };
}

export type ThreadLoads = Pick<ThreadForces, "peak" | "peakTangential" | "meanTorque">;

/**
 * What loads tool and spindle: peak, peakTangential and meanTorque of threadMillForces alone; of a helical full-profile cutter the
 * torque within 0.5 %.
 *
 * @param cut - the pass as for threadMillForces
 * @returns peak and tangential peak [N], mean torque [N·m]
 * @throws TradeError "range" as threadMillForces does
 * @source KIENZLE1952 MARTELLOTTI1941
 * @example
 * threadLoads({ holeDiameter: 2.459, cutterDiameter: 2.35, tipFlat: 0.0625, profileAngle: 60, feedPerTooth: 0.01, teeth: 1, kc11: 800, exponent: 0, startDepth: 0, endDepth: 0.2706, radialRatio: 0, internal: true }).peak //=> 1.656860
 */
export function threadLoads(cut: ThreadCut): ThreadLoads {
  const { p, profiles, trail, phiTip, phiStep, phiTop, at } = profileCut(cut);
  if (trail > 0) {
    const { peak, peakTangential, torque } = sumProfiles(p, at, profiles, trail);
    return { peak, peakTangential, meanTorque: torque / 1000 };
  }
  const turn = overTurn(p, [phiTip, phiStep, phiTop], at, 0);
  return {
    peak: profiles * turn.peak,
    peakTangential: profiles * turn.peakTangential,
    meanTorque: (profiles * turn.torque) / 1000,
  };
}

/**
 * Checks where a pass of a thread mill runs.
 *
 * @param cut - the pass; cut.holeDiameter, cut.cutterDiameter, cut.startDepth, cut.endDepth [mm], cut.internal
 * @returns nothing
 * @throws TradeError "range" as threadMillForces does
 * @source DERIVED
 * @example
 * checkPass({ holeDiameter: 10, cutterDiameter: 5, startDepth: 0, endDepth: 0.5, internal: true }) //=> undefined
 */
export function checkPass(cut: ThreadPass): void {
  const R = positive("holeDiameter", cut.holeDiameter) / 2;
  const Dc = positive("cutterDiameter", cut.cutterDiameter);
  if (cut.internal) within("cutterDiameter", Dc, 0, 2 * R, "length", "low");
  const t1 = notNegative("startDepth", cut.startDepth);
  const deepest = cut.internal ? Dc / 2 : Math.min(Dc / 2, R);
  const t2 = within("endDepth", positive("endDepth", cut.endDepth), 0, deepest, "length", "both");
  if (!(t2 > t1)) {
    throw new TradeError(
      "range",
      "endDepth",
      t2,
      { is: "above-argument", argument: "startDepth", low: t1, dimension: "length" },
      "length",
    );
  }
}

/** Where a pass that was checked lies and how far round each part of its profile is engaged. */
function passGeometry(cut: ThreadPass) {
  const { cutterDiameter: Dc, startDepth: t1, endDepth: t2 } = cut;
  const R = cut.holeDiameter / 2;
  const side = cut.internal ? 1 : -1;
  const e = tipPathRadius(cut.holeDiameter, t2, Dc, cut.internal);
  const step = t2 - t1;
  const core = Dc - 2 * t2; // local cutter diameter where the profile meets the wall of the hole

  /** Angle of engagement of the profile at u from the tip. */
  const engagement = (u: number) => {
    const swept = u < t1 ? step * (2 * R + side * (t1 + t2 - 2 * u)) : (t2 - u) * (2 * R + side * (t2 - u));
    return 2 * Math.asin(Math.sqrt(Math.min(1, Math.max(0, swept / (2 * e * (Dc - 2 * u))))));
  };
  const phiTip = engagement(0);
  const phiStep = engagement(t1);
  // outside, the engagement above the last pass may have its top inside the stretch
  const v = cut.internal ? step : Math.min(step, (Math.sqrt(core * core + 4 * R * core) - core) / 2);
  const phiTop = engagement(t2 - v);
  return { R, Dc, t1, t2, side, e, step, core, phiTip, phiStep, phiTop, reach: Math.max(phiTip, phiStep, phiTop) };
}

/**
 * Largest angle of engagement of any part of the profile on a pass, exact on the arc.
 *
 *   cos φe = 1 − 2·ae/(Dc − 2u),   ae = |Rw² − Rm²|/(2·e),   largest over u
 *
 * The largest radial chip of the pass is the centre's feed times sin φe (times 1 from 90° on), within fz/(2e) of itself.
 *
 * @param pass - the pass; pass.holeDiameter, pass.cutterDiameter, pass.startDepth, pass.endDepth [mm], pass.internal
 * @returns φe [deg]
 * @throws TradeError "range" as threadMillForces does
 * @source DERIVED
 * @example
 * threadEngagement({ holeDiameter: 10, cutterDiameter: 5, startDepth: 0, endDepth: 0.5, internal: true }) //=> 49.458398
 */
export function threadEngagement(pass: ThreadPass): number {
  checkPass(pass);
  return (passGeometry(pass).reach * 180) / Math.PI;
}

/**
 * Checks a pass of a thread mill without working it out.
 *
 * @param cut - the pass as for threadMillForces
 * @returns angle from tooth to tooth p [rad]; profiles N that cut at once [-], each behind the one below it by trail δ [rad], 0 where
 *   all of them cut alike
 * @throws TradeError "range" as threadMillForces does
 * @source DERIVED
 * @example
 * checkedThreadCut({ holeDiameter: 2.459, cutterDiameter: 2.35, tipFlat: 0.0625, profileAngle: 60, feedPerTooth: 0.01, teeth: 3, kc11: 800, exponent: 0.25, startDepth: 0, endDepth: 0.2706, radialRatio: 0.35, internal: true }) //=> {"p":2.0943951,"profiles":1,"trail":0}
 */
export function checkedThreadCut(cut: ThreadCut): { p: number; profiles: number; trail: number } {
  checkPass(cut);
  notNegative("tipFlat", cut.tipFlat);
  within("profileAngle", cut.profileAngle, 0, 180, undefined, "both");
  within("exponent", cut.exponent, 0, 1, undefined, "high");
  const z = count("teeth", cut.teeth, 1, MOST_TEETH);
  positive("feedPerTooth", cut.feedPerTooth);
  positive("kc11", cut.kc11);
  notNegative("radialRatio", cut.radialRatio);
  within("flankThrust", cut.flankThrust ?? 1, 0, 1);
  notNegative("axialRatio", cut.axialRatio ?? 0);
  notNegative("edgeTangential", cut.edgeTangential ?? 0);
  notNegative("edgeRadial", cut.edgeRadial ?? 0);
  const profiles = positive("turnsInCut", cut.turnsInCut ?? 1);
  const helical = profiles > 1 && cut.helixAngle !== undefined && cut.pitch !== undefined;
  const trail = helical ? profileTrail(cut.pitch, cut.helixAngle, cut.cutterDiameter) : 0;
  if (trail > 0) count("turnsInCut", profiles, 1, MOST_TEETH);
  return { p: (2 * Math.PI) / z, profiles, trail };
}

/** One pass at every rotation: what threadMillForces and its quicker part share. */
function profileCut(cut: ThreadCut) {
  const { p, profiles, trail } = checkedThreadCut(cut);
  const { R, Dc, t1, t2, side, e, step, core, phiTip, phiStep, phiTop, reach } = passGeometry(cut);
  const { tipFlat: f, exponent: m, feedPerTooth: fz, radialRatio: kr } = cut;
  const alpha = (cut.profileAngle * Math.PI) / 360;
  const K = cut.kc11 * fz ** (1 - m);
  const thrust = cut.flankThrust ?? 1;
  const ka = cut.axialRatio ?? 0;
  const Et = cut.edgeTangential ?? 0;
  const Er = cut.edgeRadial ?? 0;
  const sense = cut.way === "conventional" ? -1 : 1;

  const power = powers(1 - m);
  const sine = Math.sin(alpha);
  const flankEdge = 2 / Math.cos(alpha); // of both flanks, per u
  const flankChip = flankEdge * sine ** (1 - m);

  const tooth = (x: number, out: Loads) => {
    const cosine = Math.cos(x);
    const c = 1 - cosine;
    // What cuts of the profile below the depth of the pass before, and above it: from one u to another.
    let low = 0;
    let high = 0;
    let lowAbove = 0;
    let highAbove = 0;
    // step·(2R ± (t1 + t2 − 2u)) ≥ c·e·(Dc − 2u), linear in u
    const slope = 2 * (c * e - side * step);
    const rest = step * (2 * R + side * (t1 + t2)) - c * e * Dc;
    if (slope < 0) high = Math.min(t1, rest / -slope);
    else [low, high] = [rest < 0 ? Math.min(t1, -rest / slope) : 0, t1];
    // v·(2R ± v) ≥ c·e·(Dc − 2·t2 + 2v) with v = t2 − u, quadratic in v
    const half = R - c * e;
    const last = c * e * core;
    // below 0 only behind the end of the engagement, where nothing is left of it
    const q = Math.sqrt(Math.max(0, half * half + side * last));
    if (cut.internal) {
      lowAbove = t1;
      highAbove = t2 - (half > 0 ? last / (half + q) : q - half);
    } else if (half > 0) {
      lowAbove = Math.max(t1, t2 - half - q);
      highAbove = t2 - last / (half + q);
    }
    const below = Math.max(0, high - low);
    const above = Math.max(0, highAbove - lowAbove);
    const length = below + above; // along u
    const moment = below * (Dc / 2 - (low + high) / 2) + above * (Dc / 2 - (lowAbove + highAbove) / 2); // ∫ radius du
    const flat = x < phiTip ? f : 0;
    const sin = Math.sin(x);
    const chip = K * power(sin);
    const t = chip * (flat + flankChip * length) + Et * (flat + flankEdge * length);
    const r = kr * chip * (flat + thrust * flankChip * length) + Er * (flat + thrust * flankEdge * length);
    out[0]! += sense * t * sin + r * cosine;
    out[1]! += sense * t * cosine - r * sin;
    out[2]! += t;
    out[3]! += (chip * flankChip + Et * flankEdge) * moment + (chip + Et) * flat * (Dc / 2);
  };
  const at = (tau: number, out: Loads) => {
    for (let x = tau; x < reach; x += p) tooth(x, out);
  };
  return { p, e, fz, sine, ka, profiles, trail, phiTip, phiStep, phiTop, reach, at };
}
