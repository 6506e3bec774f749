/**
 * Section of a twist drill on a grid: torsion by Prandtl's stress function (∇²φ = −2, φ = 0 on the edge, relaxed), bending
 * by counting cells. Diameter 1. The flutes are circles through the corners of the lands and the middle of the web.
 */
export interface Section {
  readonly area: number;
  /** Second moments of area about the axes of symmetry, weaker first. */
  readonly weak: number;
  readonly strong: number;
  /** Torsion constant J and torque over largest shear stress. */
  readonly torsion: number;
  readonly torsionModulus: number;
}

export function solidSection(cells: number): Section {
  return section(cells, (x, y) => x * x + y * y < 0.25);
}

/** Two flutes: `web` thickness at the middle, `land` width as a chord of the rim, both over the diameter. */
export function flutedSection(cells: number, web: number, land: number): Section {
  const half = Math.PI / 2 - Math.asin(land);
  const [px, py] = [0.5 * Math.cos(half), 0.5 * Math.sin(half)];
  const a = (px * px + py * py - (web / 2) ** 2) / (2 * (px - web / 2));
  const r = a - web / 2;
  const flute = (x: number, y: number) => (x - a) ** 2 + y * y < r * r;
  return section(cells, (x, y) => x * x + y * y < 0.25 && !flute(x, y) && !flute(-x, y));
}

function section(cells: number, inside: (x: number, y: number) => boolean): Section {
  const n = cells + 4;
  const h = 1 / cells;
  const at = (i: number) => (i - (n - 1) / 2) * h;
  const index: number[] = [];
  const is = new Uint8Array(n * n);
  let [area, ix, iy] = [0, 0, 0];
  for (let j = 0; j < n; j++) {
    for (let i = 0; i < n; i++) {
      if (!inside(at(i), at(j))) continue;
      is[j * n + i] = 1;
      index.push(j * n + i);
      area += h * h;
      ix += at(j) ** 2 * h * h;
      iy += at(i) ** 2 * h * h;
    }
  }
  const phi = new Float64Array(n * n);
  const omega = 2 / (1 + Math.sin(Math.PI / (0.45 * cells))); // over-relaxation, for the width of a land
  for (let k = 0, change = 1; k < 5000 && change > 1e-9; k++) {
    change = 0;
    for (const q of index) {
      const d = omega * ((phi[q - 1]! + phi[q + 1]! + phi[q - n]! + phi[q + n]! + 2 * h * h) / 4 - phi[q]!);
      phi[q] = phi[q]! + d;
      change = Math.max(change, Math.abs(d));
    }
  }
  let torsion = 0;
  let steepest = 0;
  for (const q of index) {
    torsion += 2 * phi[q]! * h * h;
    // One cell away from the stairs of the edge.
    if (is[q - 1] && is[q + 1] && is[q - n] && is[q + n])
      steepest = Math.max(steepest, Math.hypot(phi[q + 1]! - phi[q - 1]!, phi[q + n]! - phi[q - n]!) / (2 * h));
  }
  return {
    area,
    weak: Math.min(ix, iy),
    strong: Math.max(ix, iy),
    torsion,
    torsionModulus: torsion / steepest,
  };
}
