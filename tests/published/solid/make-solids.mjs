/**
 * Makes tests/published/solid-beams.json: round stepped and tapered cantilevers as solid finite elements, so that
 * the beam formulas can be held against a model that knows nothing of beam theory.
 *
 *   node tests/published/solid/make-solids.mjs            (needs `ccx`: CalculiX, Debian package calculix-ccx)
 *
 * Half of the bar (y ≥ 0) as 20-node bricks with reduced integration, quarter-square core with rings around it, fine
 * at the shoulders (sharp corners, no fillet). The face at the holder is fixed; the force stands across the axis as a
 * uniform traction on the tip face; the deflection is read on the axis at the tip. N, mm, MPa, t/mm³, Hz.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const E = 600_000;
const NU = 0.22;
const RHO = 14.5e-9;
const FORCE = 100;

/** Segments from the tip to the holder: [diameter at the tip end, diameter at the holder end, length]. */
const CASES = [
  { name: "uniform 4 x 16", segments: [[4, 4, 16]] },
  { name: "uniform 10 x 40", segments: [[10, 10, 40]] },
  {
    name: "step 1.1, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [4.4, 4.4, 7],
    ],
  },
  {
    name: "step 1.25, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [5, 5, 8],
    ],
  },
  {
    name: "step 1.5, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [6, 6, 9],
    ],
  },
  {
    name: "step 1.75, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [7, 7, 11],
    ],
  },
  {
    name: "step 2, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [8, 8, 12],
    ],
  },
  {
    name: "step 2.5, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [10, 10, 15],
    ],
  },
  {
    name: "step 3, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [12, 12, 18],
    ],
  },
  {
    name: "step 4, neck 4 x 16",
    segments: [
      [4, 4, 16],
      [16, 16, 24],
    ],
  },
  {
    name: "step 2.5, neck 4 x 8",
    segments: [
      [4, 4, 8],
      [10, 10, 15],
    ],
  },
  {
    name: "slender neck 2 x 20 on 5 x 10",
    segments: [
      [2, 2, 20],
      [5, 5, 10],
    ],
  },
  {
    name: "slender neck 3.4 x 24 on 6 x 15",
    segments: [
      [3.4, 3.4, 24],
      [6, 6, 15],
    ],
  },
  {
    name: "flutes 9.6 x 30 on shank 12 x 20",
    segments: [
      [9.6, 9.6, 30],
      [12, 12, 20],
    ],
  },
  {
    name: "head 3.84 x 2, neck 3.4 x 14, shank 6 x 15",
    segments: [
      [3.84, 3.84, 2],
      [3.4, 3.4, 14],
      [6, 6, 15],
    ],
  },
  {
    name: "neck 4 x 10, shoulder 6 x 6, shank 10 x 15",
    segments: [
      [4, 4, 10],
      [6, 6, 6],
      [10, 10, 15],
    ],
  },
  {
    name: "cone 5 to 10 x 20 on shank 10 x 15",
    segments: [
      [5, 10, 20],
      [10, 10, 15],
    ],
    taper: true,
  },
  {
    name: "neck 4 x 12, cone 4 to 8 x 10, shank 8 x 12",
    segments: [
      [4, 4, 12],
      [4, 8, 10],
      [8, 8, 12],
    ],
    taper: true,
  },
];

/** Lengths of layers from a fine to a coarse end that fill `length`; fine at the start, at the end or at both. */
function layers(length, fine, coarse, atStart, atEnd) {
  const size = (x) => {
    let from = Number.POSITIVE_INFINITY;
    if (atStart) from = Math.min(from, x);
    if (atEnd) from = Math.min(from, length - x);
    return Math.min(coarse, fine + 0.35 * from);
  };
  const cuts = [0];
  for (let x = 0; x < length - 1e-9; ) {
    x += size(x + size(x) / 2);
    cuts.push(x);
  }
  const scale = length / cuts.at(-1);
  return cuts.map((x) => x * scale);
}

/** Quads of the half disc as maps from (u, v) in {0, ½, 1}² to a point; `rings` are radii from inside to outside. */
function disc(rings, m) {
  const core = 0.5 * rings[0];
  const edge = (k) => {
    // point on the core's edge, k = 0…4m counter-clockwise from (core, 0)
    if (k <= m) return [core, (core * k) / m];
    if (k <= 3 * m) return [core - (core * (k - m)) / m, core];
    return [-core, core - (core * (k - 3 * m)) / m];
  };
  const circle = (k, r) => {
    const angle = (Math.PI * k) / (4 * m);
    return [r * Math.cos(angle), r * Math.sin(angle)];
  };
  const quads = [];
  for (let i = 0; i < 2 * m; i++) {
    for (let j = 0; j < m; j++) {
      quads.push({ ring: 0, at: (u, v) => [core * (-1 + (i + u) / m), (core * (j + v)) / m] });
    }
  }
  let inner = null;
  rings.forEach((radius, ring) => {
    const thickness = ring === 0 ? radius - core : radius - rings[ring - 1];
    const n = ring === 0 ? 2 : Math.max(1, Math.min(3, Math.round(thickness / (0.2 * rings[0]))));
    for (let a = 0; a < n; a++) {
      for (let k = 0; k < 4 * m; k++) {
        const inside = inner;
        quads.push({
          ring,
          at: (u, v) => {
            const t = (a + u) / n;
            const outer = circle(k + v, radius);
            const start = inside === null ? edge(k + v) : circle(k + v, inside);
            return [start[0] + t * (outer[0] - start[0]), start[1] + t * (outer[1] - start[1])];
          },
        });
      }
    }
    inner = radius;
  });
  return quads;
}

const CORNERS = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];
const MIDDLES = [
  [0.5, 0],
  [1, 0.5],
  [0.5, 1],
  [0, 0.5],
];

function mesh({ segments, taper }) {
  const radii = taper ? [segments[0][0] / 2] : [...new Set(segments.map((s) => s[0] / 2))].sort((a, b) => a - b);
  const quads = disc(radii, 3);
  const nodes = [];
  const known = new Map();
  const node = (x, y, z) => {
    const key = `${Math.round(x * 1e6)},${Math.round(y * 1e6)},${Math.round(z * 1e6)}`;
    let id = known.get(key);
    if (id === undefined) {
      id = nodes.push([x, y, z]);
      known.set(key, id);
    }
    return id;
  };
  const elements = [];
  const faces = [];
  let z0 = 0;
  segments.forEach(([tip, holder, length], s) => {
    const thin = Math.min(tip, segments[s - 1]?.[1] ?? tip, segments[s + 1]?.[0] ?? tip);
    const cuts = layers(length, 0.05 * thin, 0.4 * tip, s > 0 && !taper, s < segments.length - 1 && !taper);
    const scale = (z) => (taper ? (tip + ((holder - tip) * (z - z0)) / length) / (2 * radii[0]) : 1);
    for (const quad of quads) {
      if (!taper && radii[quad.ring] > tip / 2 + 1e-9) continue;
      const at = ([u, v], z) => {
        const [x, y] = quad.at(u, v);
        return node(x * scale(z), y * scale(z), z);
      };
      for (let k = 0; k + 1 < cuts.length; k++) {
        const a = z0 + cuts[k];
        const b = z0 + cuts[k + 1];
        elements.push([
          ...CORNERS.map((c) => at(c, a)),
          ...CORNERS.map((c) => at(c, b)),
          ...MIDDLES.map((c) => at(c, a)),
          ...MIDDLES.map((c) => at(c, b)),
          ...CORNERS.map((c) => at(c, (a + b) / 2)),
        ]);
      }
      if (s === 0) faces.push([...CORNERS, ...MIDDLES].map((c) => at(c, 0)));
    }
    z0 += length;
  });
  return { nodes, elements, faces, length: z0 };
}

/** Consistent nodal forces of a uniform traction over 8-node faces; their sum is the area. */
function traction(nodes, faces) {
  const force = new Map();
  const g = Math.sqrt(0.6);
  const gauss = [
    [-g, 5 / 9],
    [0, 8 / 9],
    [g, 5 / 9],
  ];
  const place = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [0, -1],
    [1, 0],
    [0, 1],
    [-1, 0],
  ];
  const shape = (x, y) =>
    place.map(([a, b]) => {
      if (a === 0) return 0.5 * (1 - x * x) * (1 + b * y);
      if (b === 0) return 0.5 * (1 + a * x) * (1 - y * y);
      return 0.25 * (1 + a * x) * (1 + b * y) * (a * x + b * y - 1);
    });
  for (const face of faces) {
    for (const [x, wx] of gauss) {
      for (const [y, wy] of gauss) {
        const h = 1e-6;
        const dx = shape(x + h, y).map((n, i) => (n - shape(x - h, y)[i]) / (2 * h));
        const dy = shape(x, y + h).map((n, i) => (n - shape(x, y - h)[i]) / (2 * h));
        const sum = (d, c) => face.reduce((t, id, i) => t + d[i] * nodes[id - 1][c], 0);
        const jacobian = sum(dx, 0) * sum(dy, 1) - sum(dx, 1) * sum(dy, 0);
        const n = shape(x, y);
        for (let i = 0; i < 8; i++) force.set(face[i], (force.get(face[i]) ?? 0) + n[i] * jacobian * wx * wy);
      }
    }
  }
  return force;
}

function solve(entry, folder) {
  const { nodes, elements, faces, length } = mesh(entry);
  const weights = traction(nodes, faces);
  const area = [...weights.values()].reduce((a, b) => a + b, 0);
  const where = (test) => nodes.flatMap((p, i) => (test(p) ? [i + 1] : [])).join(",\n");
  const centre = nodes.findIndex((p) => Math.hypot(p[0], p[1], p[2]) < 1e-6) + 1;
  const input = `*NODE
${nodes.map((p, i) => [i + 1, ...p.map((v) => v.toFixed(9))].join(",")).join("\n")}
*ELEMENT, TYPE=C3D20R, ELSET=ALL
${elements.map((e, i) => `${[i + 1, ...e.slice(0, 15)].join(",")},\n${e.slice(15).join(",")}`).join("\n")}
*NSET, NSET=HOLDER
${where((p) => Math.abs(p[2] - length) < 1e-6)}
*NSET, NSET=MIRROR
${where((p) => Math.abs(p[1]) < 1e-6)}
*NSET, NSET=CENTRE
${centre}
*MATERIAL, NAME=M
*ELASTIC
${E},${NU}
*DENSITY
${RHO}
*SOLID SECTION, ELSET=ALL, MATERIAL=M
*BOUNDARY
HOLDER,1,3
MIRROR,2,2
*STEP
*STATIC
*CLOAD
${[...weights].map(([id, w]) => `${id},1,${((FORCE / 2) * w) / area}`).join("\n")}
*NODE PRINT, NSET=CENTRE
U
*END STEP
*STEP
*FREQUENCY
1
*CLOAD, OP=NEW
*END STEP
`;
  writeFileSync(join(folder, "bar.inp"), input);
  execFileSync("ccx", ["-i", "bar"], { cwd: folder, stdio: "pipe", env: { ...process.env, OMP_NUM_THREADS: "1" } });
  const dat = readFileSync(join(folder, "bar.dat"), "utf8");
  const row = new RegExp(`^\\s+${centre}\\s+(\\S+)\\s+\\S+\\s+\\S+$`, "m").exec(dat);
  const mode = /^\s+1\s+\S+\s+\S+\s+(\S+)\s+\S+$/m.exec(dat.slice(dat.indexOf("E I G E N V A L U E")));
  return {
    name: entry.name,
    segments: entry.segments,
    deflection: Number(row[1]),
    frequency: Number(mode[1]),
    nodes: nodes.length,
    elements: elements.length,
    halfAreaRatio: Number((area / ((Math.PI * entry.segments[0][0] ** 2) / 8)).toFixed(8)),
  };
}

const folder = mkdtempSync(join(tmpdir(), "solid-"));
const only = process.argv[2];
const results = CASES.filter((c) => !only || c.name.includes(only)).map((entry) => {
  const result = solve(entry, folder);
  process.stdout.write(`${JSON.stringify(result)}\n`);
  return result;
});
if (!only) {
  const version = /\d+(?:\.\d+)+/.exec(spawnSync("ccx", ["-v"], { encoding: "utf8" }).stdout)?.[0] ?? "unknown";
  const about = {
    about:
      "Round cantilevers as solid finite elements. Deflection on the axis at the tip, first bending frequency; segments from the tip to the holder: [diameter at the tip end, diameter at the holder end, length].",
    source: `computed by CalculiX ccx ${version}, 20-node bricks with reduced integration, by tests/published/solid/make-solids.mjs`,
    units: "N, mm, MPa, t/mm³, Hz",
    force: FORCE,
    modulus: E,
    poisson: NU,
    density: RHO,
  };
  const file = fileURLToPath(new URL("../solid-beams.json", import.meta.url));
  writeFileSync(
    file,
    `${JSON.stringify(about, null, 2).slice(0, -2)},\n  "cases": [\n${results.map((r) => `    ${JSON.stringify(r)}`).join(",\n")}\n  ]\n}\n`,
  );
}
