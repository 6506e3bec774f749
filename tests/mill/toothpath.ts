/**
 * The chip of a tooth on an arc, from paths alone: every tooth's point moves on its trochoid round the arc; looking from where the
 * cutter's axis stands, the chip is what lies between the tooth and the farthest of the wall left before and the paths of earlier
 * teeth. No formula of engagement or chip. Shares no code with src.
 */
export interface ToothPath {
  /** Radius of the wall before the pass at this level of the profile, and of the path of the cutter's centre. */
  wallRadius: number;
  pathRadius: number;
  cutterRadius: number;
  /** Per tooth, of the centre. */
  feed: number;
  teeth: number;
  inside: boolean;
  climb: boolean;
}

export function largestToothChip(c: ToothPath, steps = 600): number {
  const advance = c.feed / c.pathRadius; // angle of the centre per tooth
  // counter-clockwise path; a clockwise spindle climbs inside and goes conventionally outside
  const spin = (c.climb === c.inside ? -1 : 1) * ((2 * Math.PI) / c.teeth);
  const centre = (s: number) => [c.pathRadius * Math.cos(s * advance), c.pathRadius * Math.sin(s * advance)] as const;
  /** Where the tooth is at time q that comes past the same angle `behind` teeth before the one looked at. */
  const tooth = (q: number, behind: number) => {
    const [x, y] = centre(q);
    const angle = (q + behind) * spin;
    return [x + c.cutterRadius * Math.cos(angle), y + c.cutterRadius * Math.sin(angle)] as const;
  };
  let most = 0;
  // one turn of the tooth that is at angle s·spin, around s = 0
  for (let k = 0; k < steps; k++) {
    const s = ((k + 0.5) / steps - 0.5) * c.teeth;
    const [cx, cy] = centre(s);
    const [ux, uy] = [Math.cos(s * spin), Math.sin(s * spin)];
    // to the wall left before, along the ray
    const along = cx * ux + cy * uy;
    const root2 = along * along - (cx * cx + cy * cy) + c.wallRadius ** 2;
    let free: number;
    if (c.inside) free = root2 > 0 ? -along + Math.sqrt(root2) : 0;
    else {
      // stock is inside the circle: the ray is free to its near side
      if (root2 <= 0) continue;
      free = -along - Math.sqrt(root2);
      if (free < 0) continue;
    }
    for (let behind = 1; behind <= 3 * c.teeth; behind++) {
      // when it crossed this ray: near s − behind
      const across = (q: number) => {
        const [x, y] = tooth(q, behind);
        return ux * (y - cy) - uy * (x - cx);
      };
      let [a, b] = [s - behind - 0.2 * c.teeth, s - behind + 0.2 * c.teeth];
      const rising = across(b) > across(a);
      for (let i = 0; i < 50; i++) {
        const m = (a + b) / 2;
        if (across(m) > 0 === rising) b = m;
        else a = m;
      }
      const [x, y] = tooth((a + b) / 2, behind);
      free = Math.max(free, (x - cx) * ux + (y - cy) * uy);
    }
    most = Math.max(most, c.cutterRadius - free);
  }
  return most;
}
