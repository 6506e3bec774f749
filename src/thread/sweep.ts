/**
 * What a single-profile cutter really leaves on its helix. While the cutter passes a point of the thread it also
 * rises, so the groove comes out wider than the profile: oversize inside, undersize outside.
 *
 * A point of the groove at radius R sees the cutter's axis pass at path radius e. When the axis is an angle θ away,
 * the point is ρ = √(R² + e² − 2·R·e·cos θ) from it, where the profile is f/2 + (Rc − ρ)·t wide to each side
 * (Rc = Dc/2, t = tan(α/2)), and it stands c·θ higher, c = L/2π. The flank is the envelope
 *
 *   W(R) = max over θ of  f/2 + (Rc − ρ)·t + c·θ,   ρ ≤ Rc.
 *
 * Setting the slope to zero, ρ = k·sin θ with k = t·R·e/c; squared, a quadratic in cos θ whose larger root is the
 * maximum. Near the tip the cutter leaves the point before that angle is reached, and the end of contact (ρ = Rc)
 * rules. Everything here is exact for a sharp-cornered profile; no series, no small angles.
 */
import { notNegative, positive, within } from "../check.ts";
import { root } from "../numeric.ts";
import { flankTangent, plainPathRadius, type ThreadKind } from "./path.ts";

/** A round cutter with one V profile, and the helix it runs on. Lengths in any one unit. */
export interface SingleProfile {
  /** Dc, diameter over the tips. */
  readonly cutterDiameter: number;
  /** f, flat at the tip. */
  readonly tipFlat: number;
  /** Included angle of the profile [deg]. */
  readonly profileAngle: number;
  /** L, lead of the helix. */
  readonly lead: number;
  /** Radial height of the V; behind it the profile gets no wider. Without it the V has no end. */
  readonly profileHeight?: number;
}

interface Constants {
  readonly Rc: number;
  readonly t: number;
  readonly c: number;
  readonly height: number;
}

function constants(cutter: SingleProfile): Constants {
  return {
    Rc: positive("cutterDiameter", cutter.cutterDiameter) / 2,
    t: flankTangent(cutter.profileAngle),
    c: positive("lead", cutter.lead) / (2 * Math.PI),
    height:
      cutter.profileHeight === undefined ? Number.POSITIVE_INFINITY : positive("profileHeight", cutter.profileHeight),
  };
}

/** Angle at which a circle of radius ρ about the axis on path e passes radius R; 0 or π when it never does. */
function angleAt(rho: number, R: number, e: number): number {
  const s2 = (rho - R + e) * (rho + R - e);
  if (s2 <= 0) return 0;
  const s = s2 / (4 * R * e);
  return s >= 1 ? Math.PI : 2 * Math.asin(Math.sqrt(s));
}

/** W(R) − f/2, the half width that profile and helix add to the tip flat. */
function beyondFlat({ Rc, t, c, height }: Constants, e: number, R: number): number {
  const value = (theta: number) => {
    const sine = Math.sin(theta / 2);
    const rho = Math.sqrt((R - e) ** 2 + 4 * R * e * sine * sine);
    return Math.min(Math.max(Rc - rho, 0), height) * t + c * theta;
  };
  const end = angleAt(Rc, R, e);
  let best = value(end);
  if (t * Math.min(R, e) > c) {
    const k = (t * R * e) / c;
    const A = k * k - R * e;
    const B = Math.sqrt((k - R) * (k + R) * (k - e) * (k + e));
    const top = 2 * Math.asin(Math.min(1, Math.abs(R - e) / Math.sqrt(2 * (A + B))));
    const shoulder = Rc > height ? angleAt(Rc - height, R, e) : 0;
    best = Math.max(best, value(Math.min(Math.max(top, shoulder), end)));
  }
  return best;
}

/**
 * Half width of the groove at a radius: exact envelope of the cutter on its helix.
 *
 *   W(R) = max over θ of f/2 + (Rc − ρ)·t + c·θ,   ρ = √(R² + e² − 2·R·e·cos θ) ≤ Rc
 *
 * @param cutter - cutter and helix; cutter.cutterDiameter, cutter.tipFlat, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pathRadius - e, radius of the cutter-centre circle [mm], scalar, > 0
 * @param radius - R, where the groove is measured [mm], scalar, |e − Rc| ≤ R ≤ e + Rc
 * @returns W [mm]
 * @throws TradeError "range" when an argument is outside its limits, or the cutter does not reach that radius
 * @source DERIVED
 * @example
 * grooveHalfWidth({ cutterDiameter: 6, tipFlat: 0.15625, profileAngle: 60, lead: 1.25 }, 1, 3.59405059) //=> 0.33758376
 */
export function grooveHalfWidth(cutter: SingleProfile, pathRadius: number, radius: number): number {
  const k = constants(cutter);
  const e = positive("pathRadius", pathRadius);
  const slack = 1e-12 * (e + k.Rc);
  within("radius", radius, Math.abs(e - k.Rc) - slack, e + k.Rc + slack, "length");
  return notNegative("tipFlat", cutter.tipFlat) / 2 + beyondFlat(k, e, radius);
}

/**
 * Pitch diameter that a given path really cuts: where the groove is half a pitch wide.
 *
 *   2·W(D2/2) = P/2
 *
 * @param cutter - cutter and helix; cutter.cutterDiameter, cutter.tipFlat, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pitch - P [mm], scalar, > 0
 * @param pathRadius - e [mm], scalar, > 0; external: > Dc/2
 * @param kind - internal or external thread
 * @returns D2 [mm]
 * @throws TradeError "range" when an argument is outside its limits; "unsolvable" when the groove is nowhere that wide
 * @source DERIVED
 * @example
 * sweptPitchDiameter({ cutterDiameter: 6, tipFlat: 0.15625, profileAngle: 60, lead: 1.25 }, 1.25, 1, "internal") //=> 7.27539117
 */
export function sweptPitchDiameter(cutter: SingleProfile, pitch: number, pathRadius: number, kind: ThreadKind): number {
  const k = constants(cutter);
  const wanted = widthBeyondFlat(cutter, k, pitch);
  const e = positive("pathRadius", pathRadius);
  if (kind === "external") within("cutterDiameter", cutter.cutterDiameter, 0, 2 * e, "length", "both");
  const tip = kind === "internal" ? e + k.Rc : e - k.Rc;
  const reach = Math.min(k.Rc, k.height);
  const foot = kind === "internal" ? Math.max(tip - reach, 0.01 * tip) : tip + reach;
  return 2 * root((R) => beyondFlat(k, e, R) - wanted, foot, tip, 1e-15 * tip, "pitchDiameter");
}

/**
 * Radius of the cutter-centre circle that gives a wanted pitch diameter, helical sweep included.
 *
 *   W(D2/2) = P/4, solved for e
 *
 * @param cutter - cutter and helix; cutter.cutterDiameter, cutter.tipFlat, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pitch - P [mm], scalar, > 0
 * @param pitchDiameter - D2, wanted [mm], scalar, > 0
 * @param kind - internal or external thread
 * @returns e [mm]
 * @throws TradeError "range" when an argument is outside its limits; a cutter as large as the pitch diameter names the limit
 * @source DERIVED
 * @example
 * sweptPathRadius({ cutterDiameter: 6, tipFlat: 0.15625, profileAngle: 60, lead: 1.25 }, 1.25, 7.188101184, "internal") //=> 0.95356661
 */
export function sweptPathRadius(cutter: SingleProfile, pitch: number, pitchDiameter: number, kind: ThreadKind): number {
  const k = constants(cutter);
  const wanted = widthBeyondFlat(cutter, k, pitch);
  const { cutterDiameter, tipFlat, profileAngle } = cutter;
  const plain = plainPathRadius(pitchDiameter, pitch, cutterDiameter, tipFlat, profileAngle, kind);
  const R = pitchDiameter / 2;
  if (kind === "internal") within("cutterDiameter", cutterDiameter, 0, pitchDiameter, "length", "both");
  // At the first end the tip just touches the pitch cylinder, at the other the still profile is wide enough already.
  const touching = kind === "internal" ? R - k.Rc : R + k.Rc;
  let far = plain;
  if (beyondFlat(k, plain, R) <= wanted) return plain;
  if (kind === "internal") {
    // Contact at the tip grows only until the path radius reaches √(R² − Rc²): look below it first.
    const turn = Math.sqrt((R - k.Rc) * (R + k.Rc));
    if (beyondFlat(k, turn, R) >= wanted) far = Math.min(turn, far);
  }
  return root((e) => beyondFlat(k, e, R) - wanted, touching, far, 1e-15 * R, "cutterDiameter");
}

/**
 * Change of the pitch diameter that the helical sweep causes on the plain path for a pitch diameter.
 *
 *   ΔD2 = D2 cut − D2;   positive (oversize) inside, negative (undersize) outside
 *
 * @param cutter - cutter and helix; cutter.cutterDiameter, cutter.tipFlat, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pitch - P [mm], scalar, > 0
 * @param pitchDiameter - D2 that the plain path aims at [mm], scalar, > 0
 * @param kind - internal or external thread
 * @returns ΔD2 [mm]
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * pitchDiameterSweep({ cutterDiameter: 4.8, tipFlat: 0.125, profileAngle: 60, lead: 1 }, 1, 5.350480947, "internal") //=> 0.10113
 */
export function pitchDiameterSweep(
  cutter: SingleProfile,
  pitch: number,
  pitchDiameter: number,
  kind: ThreadKind,
): number {
  const { cutterDiameter, tipFlat, profileAngle } = cutter;
  const plain = plainPathRadius(pitchDiameter, pitch, cutterDiameter, tipFlat, profileAngle, kind);
  return sweptPitchDiameter(cutter, pitch, plain, kind) - pitchDiameter;
}

/**
 * Widest tip flat with which the corrected path still brings the tip to a wanted root diameter.
 *
 *   e from the tip (2·(e ± Rc) = Dr), then f = P/2 − 2·(W(D2/2) − f/2)
 *
 * For an internal thread Dr is the basic major diameter (the GO gauge enters), for an external one the basic minor.
 *
 * @param cutter - cutter and helix (its own flat does not matter); cutter.cutterDiameter, cutter.lead, cutter.profileHeight [mm], cutter.profileAngle [deg]
 * @param pitch - P [mm], scalar, > 0
 * @param pitchDiameter - D2, wanted [mm], scalar, > 0
 * @param rootDiameter - Dr that the tip must reach [mm], scalar, internal: > D2, external: < d2
 * @param kind - internal or external thread
 * @returns f [mm], or null where not even a sharp tip would do
 * @throws TradeError "range" when an argument is outside its limits
 * @source DERIVED
 * @example
 * widestTipFlat({ cutterDiameter: 6, profileAngle: 60, lead: 1.25 }, 1.25, 7.188101184, 8, "internal") //=> 0.10608247
 * widestTipFlat({ cutterDiameter: 7.5, profileAngle: 60, lead: 1.25 }, 1.25, 7.188101184, 8, "internal") //=> null
 */
export function widestTipFlat(
  cutter: Omit<SingleProfile, "tipFlat">,
  pitch: number,
  pitchDiameter: number,
  rootDiameter: number,
  kind: ThreadKind,
): number | null {
  const k = constants({ ...cutter, tipFlat: 0 });
  positive("pitch", pitch);
  positive("pitchDiameter", pitchDiameter);
  if (kind === "internal") {
    within("rootDiameter", rootDiameter, pitchDiameter, Number.POSITIVE_INFINITY, "length", "low");
    within("cutterDiameter", cutter.cutterDiameter, 0, rootDiameter, "length", "both");
  } else within("rootDiameter", rootDiameter, 0, pitchDiameter, "length", "both");
  const e = kind === "internal" ? rootDiameter / 2 - k.Rc : rootDiameter / 2 + k.Rc;
  const f = pitch / 2 - 2 * beyondFlat(k, e, pitchDiameter / 2);
  return f >= 0 ? f : null;
}

/** P/4 − f/2, checked; the V must be high enough for it. */
function widthBeyondFlat(cutter: SingleProfile, k: Constants, pitch: number): number {
  positive("pitch", pitch);
  const wanted = pitch / 4 - within("tipFlat", cutter.tipFlat, 0, pitch / 2, "length", "high") / 2;
  within("profileHeight", Math.min(k.height, Number.MAX_VALUE), wanted / k.t, Number.POSITIVE_INFINITY, "length");
  return wanted;
}
