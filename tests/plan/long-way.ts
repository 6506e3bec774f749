/**
 * The physics of a planning row the long way: plain loops, bisection, sums over slices. Shares no code with src.
 * Lengths mm, forces N, moduli N/mm², angles rad, feeds mm/min, accelerations m/s², times s.
 */

/** Zero of a rising or falling function by halving. */
export function bisect(f: (x: number) => number, low: number, high: number): number {
  const rising = f(high) > f(low);
  for (let i = 0; i < 200 && high - low > 1e-16 * (Math.abs(high) + Math.abs(low)); i++) {
    const x = (low + high) / 2;
    if (f(x) > 0 === rising) high = x;
    else low = x;
  }
  return (low + high) / 2;
}

/** Largest value in [low, high]: a grid with the places where the function jumps or bends, then golden sections around the best. */
export function largest(f: (x: number) => number, low: number, high: number, breaks: number[] = [], n = 600): number {
  const at = Array.from({ length: n + 1 }, (_, i) => low + ((high - low) * (i + 1e-7)) / (n + 2e-7));
  for (const b of breaks) for (const d of [-1e-10, 1e-10]) if (b + d > low && b + d < high) at.push(b + d);
  at.sort((a, b) => a - b);
  const values = at.map(f);
  let best = values.indexOf(Math.max(...values));
  let top = values[best]!;
  for (const k of [best - 1, best]) {
    let a = at[Math.max(0, k)]!;
    let b = at[Math.min(at.length - 1, k + 1)]!;
    const g = (Math.sqrt(5) - 1) / 2;
    for (let i = 0; i < 45; i++) {
      const [x1, x2] = [b - g * (b - a), a + g * (b - a)];
      const [f1, f2] = [f(x1), f(x2)];
      top = Math.max(top, f1, f2);
      if (f1 > f2) b = x2;
      else a = x1;
    }
  }
  best = 0;
  return top;
}

/** Integral between breaks by midpoints that crowd towards the ends of each piece. */
export function integral(f: (x: number) => number, breaks: number[], n: number): number {
  const at = [...breaks].sort((a, b) => a - b);
  let sum = 0;
  for (let k = 0; k + 1 < at.length; k++) {
    const [a, b] = [at[k]!, at[k + 1]!];
    if (!(b - a > 1e-13)) continue;
    for (let i = 0; i < n; i++) {
      const u = (i + 0.5) / n;
      sum += f(a + (b - a) * u * u * u * (10 - 15 * u + 6 * u * u)) * ((b - a) / n) * 30 * (u * (1 - u)) ** 2;
    }
  }
  return sum;
}

// ---- threads

/** Half width of the groove at radius R: the widest that the V gets while it rises past (swept envelope). */
function grooveHalfWidth(e: number, R: number, Dc: number, flat: number, tan: number, lead: number): number {
  const width = (theta: number) => {
    const rho = Math.hypot(R * Math.cos(theta) - e, R * Math.sin(theta));
    return rho > Dc / 2 ? -1 : flat / 2 + (Dc / 2 - rho) * tan + (lead * theta) / (2 * Math.PI);
  };
  // contact ends where the point lies on the cutter's circle
  const end = bisect((theta) => Math.hypot(R * Math.cos(theta) - e, R * Math.sin(theta)) - Dc / 2, 0, Math.PI);
  return largest(width, 0, end, [], 200);
}

/** Path radius on which the groove is half a pitch wide at the wanted pitch diameter of an internal thread. */
export function threadPath(D2: number, P: number, Dc: number, flat: number): number {
  const tan = Math.tan(Math.PI / 6);
  const plain = D2 / 2 + (P / 4 - flat / 2) / tan - Dc / 2;
  return bisect((e) => grooveHalfWidth(e, D2 / 2, Dc, flat, tan, P) - P / 4, D2 / 2 - Dc / 2 + 1e-9, plain);
}

/** Depths that share the area t·(f + t·tan 30°) equally. */
export function equalAreas(total: number, flat: number, n: number): number[] {
  const area = (t: number) => t * flat + t * t * Math.tan(Math.PI / 6);
  return Array.from({ length: n }, (_, i) => bisect((t) => area(t) - (area(total) * (i + 1)) / n, 0, total));
}

/** Angle at the cutter's centre between the finished wall and the corner of stock that is left: law of cosines. */
export function engagement(startDiameter: number, finishDiameter: number, Dc: number): number {
  const e = (finishDiameter - Dc) / 2;
  const r = Dc / 2;
  const start = Math.max(startDiameter / 2, Math.abs(e - r));
  const c = (start * start - e * e - r * r) / (2 * e * r);
  return Math.acos(Math.max(-1, Math.min(1, c)));
}

// ---- forces

export interface Turn {
  peak: number;
  tangential: number;
  /** N·mm */
  torque: number;
  meanNormal: number;
  wallNormal: number;
}
type Loads = { normal: number; feed: number; tangential: number; torque: number };

function turnOf(
  teeth: number,
  tooth: (theta: number) => Loads,
  breaks: number[],
  reach: number,
  samples: number,
  signed = true,
): Turn {
  const p = (2 * Math.PI) / teeth;
  const at = (tau: number): Loads => {
    const sum = { normal: 0, feed: 0, tangential: 0, torque: 0 };
    for (let x = tau; x < reach; x += p) {
      const l = tooth(x);
      sum.normal += l.normal;
      sum.feed += l.feed;
      sum.tangential += l.tangential;
      sum.torque += l.torque;
    }
    return sum;
  };
  const wrapped = breaks.map((b) => b - p * Math.floor(b / p));
  const mean = (of: keyof Loads) =>
    (teeth / (2 * Math.PI)) * integral((x) => tooth(x)[of], [0, ...breaks.filter((b) => b < reach), reach], samples);
  return {
    peak: largest((t) => Math.hypot(at(t).normal, at(t).feed), 0, p, wrapped),
    tangential: largest((t) => at(t).tangential, 0, p, wrapped),
    torque: signed ? mean("torque") : 0,
    meanNormal: signed ? mean("normal") : 0,
    wallNormal: at(1e-10).normal,
  };
}

export interface ThreadPass {
  hole: number;
  Dc: number;
  flat: number;
  fz: number;
  teeth: number;
  kc11: number;
  m: number;
  ratio: number;
  from: number;
  to: number;
  /** N per mm of edge, against the motion and towards the axis. */
  edge: number;
  profiles: number;
}

/** One tooth of a thread mill (climb): the points of its profile that stand outside the wall of the pass before. */
function threadTooth(c: ThreadPass): (theta: number) => Loads {
  const R = c.hole / 2;
  const e = R + c.to - c.Dc / 2;
  const beyond = (u: number, cosine: number) => {
    const r = c.Dc / 2 - u;
    const before = u < c.from ? R + c.from - u : R;
    return Math.sqrt(e * e + r * r + 2 * e * r * cosine) - before;
  };
  const [sin30, cos30] = [0.5, Math.sqrt(0.75)];
  return (theta) => {
    const [sine, cosine] = [Math.sin(theta), Math.cos(theta)];
    let length = 0;
    let arm = 0;
    for (const [a, b] of [
      [0, c.from],
      [c.from, c.to],
    ] as const) {
      const n = 24;
      for (let i = 0; i < n && b > a; i++) {
        let [low, high] = [a + ((b - a) * i) / n, a + ((b - a) * (i + 1)) / n];
        const [f, g] = [beyond(low + 1e-12, cosine) > 0, beyond(high - 1e-12, cosine) > 0];
        if (!f && !g) continue;
        if (f !== g) {
          const edge = bisect((u) => beyond(u, cosine), low, high);
          if (f) high = edge;
          else low = edge;
        }
        length += high - low;
        arm += (high - low) * (c.Dc / 2 - (low + high) / 2);
      }
    }
    const flat = beyond(0, cosine) > 0 ? c.flat : 0;
    // Kienzle: chip fz·sin θ on the flat, half of it (sin 30°) on two flanks of du/cos 30°
    const onFlat = c.kc11 * (c.fz * sine) ** (1 - c.m);
    const onFlank = ((c.kc11 * (c.fz * sine * sin30) ** (1 - c.m)) / cos30) * 2;
    const chip = onFlat * flat + onFlank * length;
    const edge = c.edge * (flat + (2 / cos30) * length);
    const [t, r] = [chip + edge, c.ratio * chip + edge];
    return {
      normal: c.profiles * (t * sine + r * cosine),
      feed: c.profiles * (t * cosine - r * sine),
      tangential: c.profiles * t,
      torque: c.profiles * ((onFlat + c.edge) * flat * (c.Dc / 2) + (onFlank + (2 / cos30) * c.edge) * arm),
    };
  };
}

export function threadTurn(c: ThreadPass, samples = 3000): Turn {
  const tooth = threadTooth(c);
  // engagement of the tip, of the place where the last pass ended, and the last angle of any
  const R = c.hole / 2;
  const phi = (u: number) => engagement(2 * (u < c.from ? R + c.from - u : R), 2 * (R + c.to - u), c.Dc - 2 * u);
  // the path is the same for every u: e = R + to − Dc/2 holds for finish 2(R + to − u) and cutter Dc − 2u
  const angles = [phi(0), phi(c.from + 1e-12), phi(Math.max(0, c.from - 1e-12))];
  const reach = Math.max(
    ...angles,
    largest((u) => phi(u), 0, c.to * (1 - 1e-9), [c.from], 200),
  );
  return turnOf(c.teeth, tooth, angles, reach, samples);
}

/** Only what bending asks for: the force at the instant a tooth makes the wall, or the mean normal to it. */
export function threadNormal(c: ThreadPass, model: "wall" | "mean"): number {
  const tooth = threadTooth(c);
  const R = c.hole / 2;
  const phi = (u: number) => engagement(2 * (u < c.from ? R + c.from - u : R), 2 * (R + c.to - u), c.Dc - 2 * u);
  const angles = [phi(0), phi(c.from + 1e-12)];
  const reach = Math.max(
    ...angles,
    largest((u) => phi(u), 0, c.to * (1 - 1e-9), [c.from], 40),
  );
  const p = (2 * Math.PI) / c.teeth;
  if (model === "wall") {
    let sum = 0;
    for (let x = 1e-10; x < reach; x += p) sum += tooth(x).normal;
    return sum;
  }
  return (1 / p) * integral((x) => tooth(x).normal, [0, ...angles.filter((a) => a < reach), reach], 120);
}

export interface EndMillPass {
  D: number;
  /** Angle of engagement. */
  phi: number;
  ap: number;
  helix: number;
  fz: number;
  teeth: number;
  kc11: number;
  m: number;
  ratio: number;
  edge: number;
  way: "climb" | "conventional";
}

/** Force on the tool of a piece of edge dz at θ from the wall: chip fz·sin θ, the wall at θ = 0. */
function pieceOf(c: EndMillPass, theta: number, dz: number): Loads {
  const [sine, cosine] = [Math.sin(theta), Math.cos(theta)];
  const chip = c.kc11 * (c.fz * sine) ** (1 - c.m) * dz;
  const [t, r] = [chip + c.edge * dz, c.ratio * chip + c.edge * dz];
  // tooth at (sin θ, cos θ), the wall at +y; climb: it moves along (−cos θ, sin θ) and is held back along (cos θ, −sin θ)
  const s = c.way === "climb" ? 1 : -1;
  return { normal: s * t * sine + r * cosine, feed: s * t * cosine - r * sine, tangential: t, torque: (t * c.D) / 2 };
}

/** End mill: every flute cut into slices of its engaged stretch, the turn searched for its peaks. */
export function endMillTurn(c: EndMillPass): Turn {
  const lag = (2 * Math.tan(c.helix)) / c.D;
  const p = (2 * Math.PI) / c.teeth;
  const psi = lag * c.ap;
  const at = (tau: number, slices: number): Loads => {
    const sum = { normal: 0, feed: 0, tangential: 0, torque: 0 };
    // flutes whose leading end is at tau, tau + p … and trail by psi
    for (let x = tau; x - psi < c.phi; x += p) {
      const [low, high] = [Math.max(0, x - psi), Math.min(c.phi, x)];
      if (!(high > low)) continue;
      for (let i = 0; i < slices; i++) {
        const u = (i + 0.5) / slices;
        const theta = low + (high - low) * u * u * (3 - 2 * u);
        const dz = ((high - low) * 6 * u * (1 - u)) / slices / lag;
        const l = pieceOf(c, theta, dz);
        sum.normal += l.normal;
        sum.feed += l.feed;
        sum.tangential += l.tangential;
      }
    }
    return sum;
  };
  const breaks = [0, c.phi, psi, c.phi + psi].map((b) => b - p * Math.floor(b / p));
  const mean = (of: keyof Loads) => (1 / p) * integral((x) => pieceOf(c, x, c.ap)[of], [0, c.phi], 4000);
  const n = 500;
  return {
    peak: largest((t) => ((l) => Math.hypot(l.normal, l.feed))(at(t, n)), 0, p, breaks, 150),
    tangential: largest((t) => at(t, n).tangential, 0, p, breaks, 150),
    torque: mean("torque"),
    meanNormal: mean("normal"),
    wallNormal: largest((t) => at(t, n).normal, 0, Math.min(p, psi), breaks, 100),
  };
}

/** The same as endMillTurn's meanNormal or wallNormal, cheaper. */
export function endMillNormal(c: EndMillPass, model: "wall" | "mean"): number {
  const p = (2 * Math.PI) / c.teeth;
  if (model === "mean") return (1 / p) * integral((x) => pieceOf(c, x, c.ap).normal, [0, c.phi], 400);
  const lag = (2 * Math.tan(c.helix)) / c.D;
  const psi = lag * c.ap;
  const breaks = [0, c.phi, psi, c.phi + psi].map((b) => b - p * Math.floor(b / p));
  const normal = (tau: number) => {
    let sum = 0;
    for (let x = tau; x - psi < c.phi; x += p) {
      const [low, high] = [Math.max(0, x - psi), Math.min(c.phi, x)];
      if (!(high > low)) continue;
      for (let i = 0; i < 160; i++) {
        const u = (i + 0.5) / 160;
        const theta = low + (high - low) * u * u * (3 - 2 * u);
        sum += pieceOf(c, theta, ((high - low) * 6 * u * (1 - u)) / 160 / lag).normal;
      }
    }
    return sum;
  };
  return largest(normal, 0, Math.min(p, psi), breaks, 40);
}

// ---- the tool

export interface Bar {
  d: number;
  l: number;
}

/**
 * Deflection per force at the load of a stepped bar, by Simpson sums of the unit-load integrals (Roark, Timoshenko), with
 * Cowper's shear coefficient of the circle, a hinge of c·d thin diameters at each shoulder (see beam.ts for the fit) and
 * a holder that gives way across the axis.
 */
export function flexibility(bars: Bar[], E: number, nu: number, holder?: number): number {
  const k = (6 * (1 + nu)) / (7 + 6 * nu);
  const G = E / (2 * (1 + nu));
  let s = 0;
  let sum = holder === undefined ? 0 : 1 / holder;
  bars.forEach(({ d, l }, i) => {
    const I = (Math.PI * d ** 4) / 64;
    const A = (Math.PI * d * d) / 4;
    const n = 200;
    for (let j = 0; j <= n; j++) {
      const x = s + (l * j) / n;
      const weight = ((j === 0 || j === n ? 1 : j % 2 ? 4 : 2) * l) / n / 3;
      sum += weight * ((x * x) / (E * I) + 1 / (k * G * A));
    }
    s += l;
    const next = bars[i + 1];
    if (next && Math.abs(next.d - d) > 1e-9) {
      const thin = Math.min(d, next.d);
      const thick = Math.max(d, next.d);
      const give = thin * 0.277 * (1 - (thin / thick) ** 2.9) ** 1.85;
      sum += (s * s * give) / (E * ((Math.PI * thin ** 4) / 64));
    }
  });
  return sum;
}

/** Largest principal stress of a stepped bar in bending and torsion (torque in N·mm), notch factor at the thin side of shoulders. */
export function principal(bars: Bar[], force: number, torque: number, notch: number): number {
  let s = 0;
  let worst = 0;
  bars.forEach(({ d, l }, i) => {
    s += l;
    const M = force * s;
    const sigma = (32 * M) / (Math.PI * d ** 3);
    const tau = (16 * torque) / (Math.PI * d ** 3);
    const first = sigma / 2 + Math.sqrt((sigma / 2) ** 2 + tau ** 2); // Mohr's circle
    const next = bars[i + 1];
    worst = Math.max(worst, first * (next && next.d > d ? notch : 1));
  });
  return worst;
}

/** Depth of the wall after each pass of a tool that bends, p = t − c·F, with a blunt edge: the path by halving, then what the edge leaves, r∞·(1 − e^(−x/r∞)); edge forces rise to full at r∞. */
export function bluntly(
  depths: number[],
  give: number,
  force: (from: number, to: number, share: number) => number,
  layer: number,
): number[] {
  let wall = 0;
  return depths.map((t) => {
    const from = wall;
    const path = bisectShort(
      (p) => p - t + give * force(from, p, Math.min(1, (p - from) / layer)),
      from + 1e-9,
      2 * t - from,
    );
    wall = path - layer * (1 - Math.exp(-(path - from) / layer));
    return wall;
  });
}

function bisectShort(f: (x: number) => number, low: number, high: number): number {
  for (let i = 0; i < 28; i++) {
    const x = (low + high) / 2;
    if (f(x) > 0) high = x;
    else low = x;
  }
  return (low + high) / 2;
}

// ---- motion

/** Seconds of a move from rest to rest: accelerate, run, brake. */
export function move(distance: number, feed: number, acceleration: number): number {
  const a = 1000 * acceleration;
  const top = Math.min(feed / 60, Math.sqrt(distance * a)); // speed reached
  return (2 * top) / a + (distance - (top * top) / a) / top;
}

/** Arc or helix: the feed is held where a·(towards the axis) would be passed, ω²·r = a. */
export function arc(radius: number, turns: number, feed: number, acceleration: number, rise = 0): number {
  const perTurn = Math.hypot(2 * Math.PI * radius, rise);
  const omega = Math.sqrt((1000 * acceleration) / radius); // rad/s
  const held = ((60 * omega) / (2 * Math.PI)) * perTurn;
  return move(turns * perTurn, Math.min(feed, held), acceleration);
}
