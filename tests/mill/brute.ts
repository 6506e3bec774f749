/** End-mill forces the long way: every tooth, the flute cut into slices, the turn into steps. Shares no code with src. */

export interface BruteCut {
  kc11: number;
  exponent: number;
  feedPerTooth: number;
  radialDepth: number;
  axialDepth: number;
  diameter: number;
  teeth: number;
  helixAngle: number;
  radialRatio: number;
  edgeTangential?: number;
  edgeRadial?: number;
  way?: "climb" | "conventional";
}

/**
 * Angles as in the literature: φ from the normal of the feed, chip fz·sin φ, entry at 0 (conventional) or exit at π (climb).
 * `steps` rotations per tooth period, `slices` along each engaged stretch of a flute.
 */
export function bruteForces(cut: BruteCut, steps: number, slices: number) {
  const climb = cut.way !== "conventional";
  const D = cut.diameter;
  const phiE = Math.acos(1 - (2 * cut.radialDepth) / D);
  const [start, exit] = climb ? [Math.PI - phiE, Math.PI] : [0, phiE];
  const lagPerMm = (2 * Math.tan((cut.helixAngle * Math.PI) / 180)) / D;
  const p = (2 * Math.PI) / cut.teeth;
  const Et = cut.edgeTangential ?? 0;
  const Er = cut.edgeRadial ?? 0;

  /** Forces on the tool in x (travel) and y at tip angle τ, the sum of tangential forces, and whether an edge is at the wall. */
  const at = (tau: number): { x: number; y: number; t: number; wall: boolean } => {
    let [fx, fy, ft] = [0, 0, 0];
    let wall = false;
    const add = (phi: number, dz: number) => {
      const h = cut.feedPerTooth * Math.max(0, Math.sin(phi));
      const chip = h > 0 ? cut.kc11 * h ** (1 - cut.exponent) : 0;
      const t = (chip + Et) * dz;
      const r = (cut.radialRatio * chip + Er) * dz;
      fx += -t * Math.cos(phi) - r * Math.sin(phi);
      fy += t * Math.sin(phi) - r * Math.cos(phi);
      ft += t;
    };
    for (let j = 0; j < cut.teeth; j++) {
      const tip = tau + j * p; // the flute trails: φ(z) = tip − lag·z
      const least = tip - lagPerMm * cut.axialDepth;
      for (
        let turn = Math.floor((least - exit) / (2 * Math.PI));
        turn <= Math.ceil((tip - start) / (2 * Math.PI));
        turn++
      ) {
        const low = Math.max(start + turn * 2 * Math.PI, least);
        const high = Math.min(exit + turn * 2 * Math.PI, tip);
        const wallAngle = (climb ? exit : start) + turn * 2 * Math.PI;
        if (
          lagPerMm > 0
            ? wallAngle >= least && wallAngle <= tip
            : tip > start && tip < exit && Math.abs(wallAngle - tip) < 2e-9
        )
          wall = true;
        if (lagPerMm === 0) {
          if (low <= high && tip < exit + turn * 2 * Math.PI) add(tip - turn * 2 * Math.PI, cut.axialDepth);
          continue;
        }
        if (!(low < high)) continue;
        // midpoint slices, finer towards both ends, where the chip starts from nothing
        for (let i = 0; i < slices; i++) {
          const u = (i + 0.5) / slices;
          const place = u * u * (3 - 2 * u);
          const width = (6 * u * (1 - u)) / slices;
          add(low + (high - low) * place - turn * 2 * Math.PI, ((high - low) * width) / lagPerMm);
        }
      }
    }
    return { x: fx, y: fy, t: ft, wall };
  };

  const sum = { f: 0, t: 0, x: 0, n: 0 };
  let [peak, peakT, high, low] = [0, 0, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const look = (tau: number) => {
    const { x, y, t, wall } = at(tau);
    const n = climb ? y : -y;
    peak = Math.max(peak, Math.hypot(x, y));
    peakT = Math.max(peakT, t);
    if (wall) {
      high = Math.max(high, n);
      low = Math.min(low, n);
    }
    return { x, n, t };
  };
  for (let i = 0; i < steps; i++) {
    const { x, n, t } = look(((i + 0.5) / steps) * p);
    sum.f += Math.hypot(x, n) / steps;
    sum.x += x / steps;
    sum.n += n / steps;
    sum.t += t / steps;
  }
  // peaks may sit where an edge enters or leaves: look right beside those angles too
  const trail = lagPerMm * cut.axialDepth;
  for (const corner of [start, exit, start + trail, exit + trail])
    for (const side of [-1e-9, 1e-9]) look(corner + side);
  return {
    peak,
    mean: sum.f,
    peakTangential: peakT,
    meanTorque: (sum.t * D) / 2000,
    meanNormal: sum.n,
    meanFeed: sum.x,
    wallNormal: high,
    wallNormalLeast: low,
  };
}
