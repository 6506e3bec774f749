/**
 * Thread-mill forces the long way: axial slices of the profile, every point of the edge tested against the wall that the pass
 * before has left (a point cuts when it lies beyond that wall and on the advancing half). Shares no code with src.
 */
export interface BruteThread {
  holeDiameter: number;
  cutterDiameter: number;
  tipFlat: number;
  profileAngle: number;
  feedPerTooth: number;
  teeth: number;
  kc11: number;
  exponent: number;
  startDepth: number;
  endDepth: number;
  radialRatio: number;
  internal: boolean;
  edgeTangential?: number;
  edgeRadial?: number;
  way?: "climb" | "conventional";
  /** Profiles one above the other, each this much behind [rad]. */
  profiles?: number;
  trail?: number;
}

export function bruteThread(c: BruteThread, count: number, steps: number) {
  const R = c.holeDiameter / 2;
  const rc = c.cutterDiameter / 2;
  const alpha = (c.profileAngle * Math.PI) / 360;
  const e = c.internal ? R + c.endDepth - rc : R - c.endDepth + rc;
  const half = c.tipFlat / 2;
  const width = c.endDepth * Math.tan(alpha);
  const slices = [{ r: rc, u: 0, dx: half, sine: 1 }];
  for (let i = 0; i < count; i++) {
    const x = ((i + 0.5) / count) * width; // beside the flat
    const u = x / Math.tan(alpha);
    slices.push({ r: rc - u, u, dx: width / count, sine: Math.sin(alpha) });
  }
  const sum = { f: 0, t: 0, q: 0, n: 0, x: 0 };
  let [peak, peakT] = [0, 0];
  const sense = c.way === "conventional" ? -1 : 1;
  const p = (2 * Math.PI) / c.teeth;
  for (let k = 0; k < steps; k++) {
    let [n, x, t, q] = [0, 0, 0, 0];
    for (let j = 0; j < c.teeth * (c.profiles ?? 1); j++) {
      const behind = Math.floor(j / c.teeth) * (c.trail ?? 0);
      const turned = ((k + 0.5) / steps + (j % c.teeth)) * p - behind;
      const theta = turned - 2 * Math.PI * Math.floor(turned / (2 * Math.PI));
      if (theta >= Math.PI) continue;
      for (const { r, u, dx, sine } of slices) {
        const along = e + (c.internal ? 1 : -1) * r * Math.cos(theta);
        const distance = Math.hypot(along, r * Math.sin(theta));
        const before = c.internal ? Math.max(R, R + c.startDepth - u) : Math.min(R, R - c.startDepth + u);
        if (c.internal ? distance <= before : distance >= before) continue;
        const h = c.feedPerTooth * Math.sin(theta) * sine;
        const edge = (2 * dx) / sine; // both halves of the profile
        const chip = c.kc11 * h ** (1 - c.exponent) * edge;
        const ft = chip + (c.edgeTangential ?? 0) * edge;
        const fr = c.radialRatio * chip + (c.edgeRadial ?? 0) * edge;
        n += sense * ft * Math.sin(theta) + fr * Math.cos(theta);
        x += sense * ft * Math.cos(theta) - fr * Math.sin(theta);
        t += ft;
        q += ft * r;
      }
    }
    peak = Math.max(peak, Math.hypot(n, x));
    peakT = Math.max(peakT, t);
    sum.f += Math.hypot(n, x) / steps;
    sum.t += t / steps;
    sum.q += q / steps / 1000;
    sum.n += n / steps;
    sum.x += x / steps;
  }
  return {
    peak,
    peakTangential: peakT,
    mean: sum.f,
    meanTangential: sum.t,
    meanTorque: sum.q,
    meanNormal: sum.n,
    meanFeed: sum.x,
  };
}
