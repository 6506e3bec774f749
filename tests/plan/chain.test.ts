/**
 * Six rows of an invented shop, each worked out a second time from the published formulas, step by step, with mathjs
 * carrying the units. Sums and integrals come from long-way.ts (plain loops); nothing here calls the formulas under test.
 */
import { evaluate, type MathType, type Unit, unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { PLAN } from "../../functions/plan.ts";
import * as way from "./long-way.ts";

// ---- the shop

const MATERIALS = [
  [
    ...["Material", "Group", "kc1.1 [MPa]", "Exponent", "Radial ratio", "Axial ratio", "Least chip"],
    ...["Speed carbide low [m/min]", "Speed carbide high [m/min]", "Speed HSS low [m/min]", "Speed HSS high [m/min]"],
    ...["Feed 3 mm [mm per tooth]", "Feed 6 mm [mm per tooth]", "Feed 12 mm [mm per tooth]"],
    ...["Taylor n", "Reference life [min]"],
  ],
  ["Steel HL-1", "P", 1700, 0.25, 0.4, 0.1, 0.3, 80, 160, 18, 30, 0.02, 0.04, 0.08, 0.25, 30],
  ["Alloy HL-2", "N", 700, 0.22, 0.3, 0.05, 0.25, 200, 500, 60, 100, 0.03, 0.06, 0.11, 0.35, 45],
];
const TOOLS = [
  [
    ...["Tool", "Kind", "Units", "Diameter", "Teeth", "Cutting length", "Neck diameter", "Neck length"],
    ...[
      "Shank diameter",
      "Stick-out",
      "Tip flat",
      "Helix",
      "Point angle",
      "Edge radius",
      "Edge angle",
      "Tip to profile",
    ],
    ...["Rupture strength [MPa]", "Modulus [GPa]", "Notch factor", "Substrate", "Pitch", "Max rpm", "Price", "Edges"],
  ],
  // biome-ignore format: one tool a line
  ["Drill 7", "drill", "in", 0.201, 2, 1.4, null, null, 0.25, 2, null, 30, 130, 0.0003, null, null, 3000, 550, null, "carbide", null, 20000, 40, 5],
  // biome-ignore format: one tool a line
  ["Single 4.6", "thread mill single", "mm", 4.6, 3, null, 3.4, 14, 6, 30, 0.08, null, null, 0.004, null, 0.2, 3500, 580, 1.3, "carbide", null, null, 75, 1],
  // biome-ignore format: one tool a line
  ["Full 13", "thread mill full", "in", 0.37, 4, 0.7, null, null, 0.375, 1.3, 0.008, null, null, 0.0002, null, null, 3200, 600, 1.4, "carbide", 0.076923, null, 110, 1],
  // biome-ignore format: one tool a line
  ["Mill 10", "end mill", "mm", 10, 3, 22, null, null, 10, 32, null, 40, null, 0.006, null, null, 3000, 600, 1.2, "carbide", null, null, 45, 1],
  // biome-ignore format: one tool a line
  ["Mill 1/2", "end mill", "in", "1/2", 4, 1, null, null, 0.5, 1.6, null, 30, null, 0.0003, null, null, 3100, 620, 1.1, "carbide", null, 8000, 60, 2],
  // biome-ignore format: one tool a line
  ["Mill 8", "end mill", "mm", 8, 3, 20, 7.6, 26, 8, 30, null, 35, null, 0.005, null, null, 3000, 590, 1.2, "carbide", null, null, 38, 1],
];
const MACHINES = [
  [
    ...["Machine", "Min rpm", "Max rpm", "Power [kW]", "Torque [N·m]", "Max feed [m/min]", "Rapid [m/min]"],
    ...["Acceleration [m/s²]", "Tool change [s]", "Holder stiffness [N/µm]", "Rate [per hour]", "Setup [min]"],
  ],
  ["Mill A", 50, 9000, 12, 80, 8, 24, 2, 4, 25, 72, 20],
  ["Mill B", 60, 12000, 9, 40, 10, 30, 4, 3, null, 90, 15],
];
const ROWS: unknown[][] = [
  [
    ...["Row", "Operation", "Units", "Quantity", "Material", "Machine", "Tool", "Thread", "Start diameter"],
    ...["Finish diameter", "Depth", "Through", "Way", "Length", "Side", "Radial depth", "Passes", "Spring passes"],
    ...["Max rpm", "Batch", "Spacing", "Wear factor", "Size tolerance"],
  ],
  // biome-ignore format: one row a line
  ["drill", "drill", "in", 6, "Steel HL-1", "Mill A", "Drill 7", "1/4-20 UNC-2B", null, null, 0.9, "no", null, null, null, null, null, null, 6000, 20, null, 1.2, null],
  // biome-ignore format: one row a line
  ["single", "thread mill", "mm", 4, "Steel HL-1", "Mill A", "Single 4.6", "M6", null, null, 12, "no", "climb", null, null, null, 3, 1, null, 20, 30, null, null],
  // biome-ignore format: one row a line
  ["full", "thread mill", "in", 2, "Alloy HL-2", "Mill B", "Full 13", "1/2-13 UNC-2B", "27/64", null, 0.6, "yes", null, null, null, null, 2, 0, null, 50, 2, null, null],
  // biome-ignore format: one row a line
  ["bore", "bore", "mm", 1, "Alloy HL-2", "Mill B", "Mill 10", null, 0, 24, 15, "yes", null, null, null, null, null, null, null, 50, null, null, null],
  // biome-ignore format: one row a line
  ["arc", "side", "in", 1, "Steel HL-1", "Mill A", "Mill 1/2", null, null, 1.25, 0.6, null, "climb", 1.1, "inside", 0.03, 2, 0, null, 20, null, null, 0.004],
  // biome-ignore format: one row a line
  ["wall", "side", "mm", 2, "Steel HL-1", "Mill B", "Mill 8", null, null, null, 18, null, "conventional", 120, "straight", 0.25, 1, 1, null, 50, null, 1.3, 0.05],
];
const SHARING: Record<string, number> = { "Mill A": 3, "Mill B": 3 };

const block = PLAN(ROWS, MATERIALS, TOOLS, MACHINES);
const cellOf = (row: string, heading: string): unknown =>
  block.find((line) => line[0] === row)![block[0]!.indexOf(heading)];

// ---- units

type Scope = Record<string, Unit | number>;
const calc = (formula: string, scope: Scope = {}): MathType => evaluate(formula, { ...scope });
const q = (formula: string, scope: Scope = {}): Unit => calc(formula, scope) as Unit;
const n = (formula: string, scope: Scope = {}): number => calc(formula, scope) as number;
const mm = (x: Unit) => x.toNumber("mm");

/** What a cell of each kind is written in; hp is 550 ft·lbf/s. */
const IN_UNITS = {
  length: ["mm", "in"],
  surface: ["m/minute", "ft/minute"],
  feed: ["mm/minute", "in/minute"],
  force: ["N", "lbf"],
  power: ["kW", "ft lbf/s"],
} as const;

/** A cell against a quantity; 1e-9 unless a looser tolerance is given with its reason. */
function same(row: string, heading: string, kind: keyof typeof IN_UNITS, wanted: Unit, relative = 1e-9): void {
  const inch = ROWS.find((r) => r[0] === row)![2] === "in";
  let value = wanted.toNumber(IN_UNITS[kind][inch ? 1 : 0]);
  if (kind === "power" && inch) value /= 550;
  plain(row, heading, value, relative);
}
function plain(row: string, heading: string, wanted: number, relative = 1e-9): void {
  const got = cellOf(row, heading);
  expect(got, `${row} ${heading}`).toBeTypeOf("number");
  expect(Math.abs((got as number) - wanted), `${row} ${heading}: ${got}, wanted ${wanted}`).toBeLessThanOrEqual(
    relative * Math.max(Math.abs(wanted), 1e-12),
  );
}
/** Sums over slices and searched peaks agree with the closed sums to about this. */
const BRUTE = 2e-6;
/** The wall force of the plan is a sampled largest value, its brute force here another: sizes agree to a few nanometres. */
const SOLVED = 3e-6; // mm

// ---- shared steps

const byName = (table: unknown[][], name: string) => {
  const line = table.find((r) => r[0] === name)!;
  return (heading: string) => line[table[0]!.indexOf(heading)] as number;
};
const steel = byName(MATERIALS, "Steel HL-1");
const alloy = byName(MATERIALS, "Alloy HL-2");
const millA = byName(MACHINES, "Mill A");
const millB = byName(MACHINES, "Mill B");

/** A list without speeds for thread mills: three quarters of the end mill's (common practice). */
const THREAD_SPEED = 0.75;

/** n = vc/(π·D) (Machinery's Handbook), held under tool, machine and row; the speed lies at a place in the material's range. */
function speed(
  material: typeof steel,
  place: number,
  D: Unit,
  caps: number[],
  engaged = 1,
): { rpm: Unit; vc: Unit; listVc: Unit } {
  const vc = q("engaged * (low + place * (high - low))", {
    engaged,
    low: unit(material("Speed carbide low [m/min]"), "m/minute"),
    high: unit(material("Speed carbide high [m/min]"), "m/minute"),
    place,
  });
  const free = q("vc / (pi * D)", { vc, D }).toNumber("minute^-1");
  const rpm = unit(Math.min(free, ...caps), "minute^-1");
  const real = q("pi * D * n", { D, n: rpm });
  // the speed that wears as much in the list's own cut
  return { rpm, vc: real, listVc: q("vc / k", { vc: real, k: engaged }) };
}

/**
 * Factor on the list's speeds for the engagement: measured life goes with V^(−1/n) and ae^(−1) (Tatar et al. 2020), so V goes with
 * (D/2/ae)^n from the list's half cutter on; common practice keeps it between 0.84 and 1.35.
 */
const engagedBy = (material: typeof steel, phi: number) =>
  Math.min(1.35, Math.max(0.84, (0.5 / ((1 - Math.cos(phi)) / 2)) ** material("Taylor n")));

/** Feed per tooth of the list: straight lines between 3, 6 and 12 mm; a list without the column of 20 mm. */
function listed(material: typeof steel, D: Unit): Unit {
  const [f3, f6, f12] = [3, 6, 12].map((d) => unit(material(`Feed ${d} mm [mm per tooth]`), "mm"));
  const d = mm(D);
  if (d < 3) return q("f * D / (3 mm)", { f: f3!, D });
  if (d < 6) return q("f3 + (f6 - f3) * (D - 3 mm) / (3 mm)", { f3: f3!, f6: f6!, D });
  if (d < 12) return q("f6 + (f12 - f6) * (D - 6 mm) / (6 mm)", { f6: f6!, f12: f12!, D });
  return q("f * sqrt(D / (12 mm))", { f: f12!, D }); // above the last size with the root of the diameter (common practice)
}

/**
 * Feed of a thread mill's centre: 0.8 % of the diameter per tooth at the edge (common practice, the list is silent) times
 * (Dm − Dc)/Dm, held where its largest chip fz·sin φ would be more than the listed one.
 */
function threadCentre(material: typeof steel, D: Unit, k: number, phi: number): Unit {
  const sine = phi >= Math.PI / 2 ? 1 : Math.sin(phi);
  return unit(Math.min(0.008 * mm(D) * k, mm(listed(material, D)) / sine), "mm");
}

/** Radial depth with that angle of engagement: φ = arccos(1 − 2·ae/D) (Martellotti 1941), turned round. */
const depthOf = (phi: number, D: Unit) => q("D * (1 - cos(phi)) / 2", { D, phi });

/**
 * Feed of the centre whose largest chip fz·sin φ is the listed one, at most three times the list (a corner makes the chip as thick as
 * the feed); finishing at most 1.3 times it at centre and edge; inside a wall at most three times at the edge. `k` centre over edge.
 */
function centreFeed(list: Unit, phi: number, finishing: boolean, k = 1): Unit {
  const sine = phi >= Math.PI / 2 ? 1 : Math.sin(phi);
  const most = [1 / sine, 3, ...(finishing ? [1.3, 1.3 * k] : []), ...(k < 1 ? [3 * k] : [])];
  return q("list * k", { list, k: Math.min(...most) });
}

const chipOf = (fz: Unit, phi: number) => q("fz * s", { fz, s: phi >= Math.PI / 2 ? 1 : Math.sin(phi) });

/** P = 2π·n·T/η (Machinery's Handbook), η = 0.85 from motor to tool; T in N·mm. */
const power = (rpm: Unit, torque: number) => q("2 pi * n * T / 0.85", { n: rpm, T: unit(torque / 1000, "N m") });

interface Timed {
  cutting: number;
  moving: number;
}

/** Rapids from the last feature (25 mm unless the row says) and down to 2 mm above the face: 20 mm. */
const arrive = (machine: typeof millA, spacing = 25): Timed => ({
  cutting: 0,
  moving: rapid(machine, spacing) + rapid(machine, 20),
});
const rapid = (machine: typeof millA, distance: number) =>
  way.move(distance, 1000 * machine("Rapid [m/min]"), machine("Acceleration [m/s²]"));

/** Time and cost: C = R·(t + ts/N)/3600 + tool share (Boothroyd); Taylor V·Tⁿ = C from the top of the speed range. */
function timeAndCost(
  row: string,
  t: Timed,
  material: typeof steel,
  machineName: string,
  vc: Unit,
  quantity: number,
  batch: number,
  price: number,
  edges: number,
): void {
  const machine = byName(MACHINES, machineName);
  const each = t.cutting + t.moving;
  plain(row, "Time each", each, 1e-9);
  const time = q("each * quantity + change", {
    each: unit(each, "s"),
    quantity,
    change: unit(machine("Tool change [s]"), "s"),
  });
  plain(row, "Time", time.toNumber("s"), 1e-9);
  const life = q("Tr * (Vr / V)^(1/n)", {
    Tr: unit(material("Reference life [min]"), "minute"),
    Vr: unit(material("Speed carbide high [m/min]"), "m/minute"),
    V: vc,
    n: material("Taylor n"),
  });
  const cost = n("rate * ((time + setup / (batch * sharing)) / (1 hour)) + cutting * quantity / life * price / edges", {
    rate: machine("Rate [per hour]"),
    time,
    setup: unit(machine("Setup [min]"), "minute"),
    batch,
    sharing: SHARING[machineName]!,
    cutting: unit(t.cutting, "s"),
    quantity,
    life,
    price,
    edges,
  });
  plain(row, "Cost", cost, 1e-9);
}

/** Depths as the row writes them, to its places. */
function depthsWritten(row: string, wanted: number[], places: number): void {
  const got = String(cellOf(row, "Depths")).split(" · ").map(Number);
  expect(got.length, row).toBe(wanted.length);
  // the cell is text rounded to 3 places (mm) or 4 (in): half of the last place
  for (const [i, d] of got.entries())
    expect(Math.abs(d - wanted[i]!), `${row} depth ${i}`).toBeLessThanOrEqual(0.51 * 10 ** -places);
}

/** Force 15 % and flexibility 20 % down, and both up: what the errors of bending are taken times. */
const ENDS = [0.85 * 0.8, 1.15 * 1.2];
/** Middle of the band of what the two force models leave at both ends. */
function sized(row: string, programmed: number, errors: number[], perUnit: number): void {
  const wanted = programmed + (Math.min(...errors) + Math.max(...errors)) / 2;
  const got = (cellOf(row, "Size") as number) * perUnit;
  expect(Math.abs(got - wanted), `${row} Size ${got}, wanted ${wanted}`).toBeLessThanOrEqual(SOLVED);
}

describe("a drilled tap hole in inch, worked out a second time (independent)", () => {
  const D = unit(0.201, "in");
  it("has the sizes of ASME B1.1 and the drill of the charts", () => {
    // ASME B1.1: minor min = D − 1.0825318·P, three places from No. 6 on; tolerance 2B 0.25·P − 0.4·P² (P in inches)
    const min = n("round((D - 1.08253175 * P) / (1 in), 3)", { D: unit(0.25, "in"), P: unit(0.05, "in") });
    const max = n("round((D - 1.08253175 * P + 0.25 * P - 0.4 * P^2 / (1 in)) / (1 in), 3)", {
      D: unit(0.25, "in"),
      P: unit(0.05, "in"),
    });
    expect([min, max]).toEqual([0.196, 0.207]); // printed in the standard; from memory
    plain("drill", "Size min", min);
    plain("drill", "Size max", max);
    // Machinery's Handbook: hole = D − 1.299038·P·75 %; of #6 0.204, #7 0.201, #8 0.199, 13/64 the nearest
    const hole = n("(D - 2 * 0.649519 * 0.75 * P) / (1 in)", { D: unit(0.25, "in"), P: unit(0.05, "in") });
    const sizes: Record<string, number> = { "#6": 0.204, "#7": 0.201, "#8": 0.199, "13/64": 13 / 64 };
    const nearest = Object.keys(sizes).sort((a, b) => Math.abs(sizes[a]! - hole) - Math.abs(sizes[b]! - hole))[0];
    expect(cellOf("drill", "Drill")).toBe(nearest); // the row names it; its hole lies inside the limits
    // Machinery's Handbook, mean oversize 0.003 in at 1/8, 0.004 in at 1/4; a third of it for carbide (from memory)
    same("drill", "Size", "length", q("D + (0.003 in + 0.001 in * (D - 0.125 in) / (0.125 in)) / 3", { D }));
  });
  // Depth over diameter 4.478: Metal Cutting Tool Handbook (from memory) 4: 0.8 and 0.9, 5: 0.7 and 0.8, joined by lines.
  const deep = n("0.9 in / D", { D }) - 4;
  const [slower, finer] = [0.8 - 0.1 * deep, 0.9 - 0.1 * deep];
  // No drilling speed in the list: 0.6 of the carbide milling range, a quarter up it (common practice).
  const share = 0.6 * slower;
  const vc = q("k * (low + (high - low) / 4)", {
    k: share,
    low: unit(steel("Speed carbide low [m/min]"), "m/minute"),
    high: unit(steel("Speed carbide high [m/min]"), "m/minute"),
  });
  const rpm = q("vc / (pi * D)", { vc, D });
  const lip = q("1.5 * k * f", { f: listed(steel, D), k: finer }); // common practice: half as much again per lip as per tooth
  it("turns and feeds as the handbook says", () => {
    expect(rpm.toNumber("minute^-1")).toBeLessThan(6000);
    plain("drill", "Spindle speed", rpm.toNumber("minute^-1"));
    same("drill", "Surface speed", "surface", vc);
    same("drill", "Feed per tooth", "length", lip);
    same("drill", "Table feed", "feed", q("n * 2 * fz", { n: rpm, fz: lip })); // vf = n·z·fz
    same("drill", "Chip thickness", "length", q("fz * sin(65 deg)", { fz: lip }));
  });
  // Shaw and Oxford, in inches: M = K·f^0.8·D^1.8·A, F = 2·K·f^0.8·D^0.8·B + K·D²·J; K from Kienzle at 1/2 in and 0.23 mm,
  // × 1.2 for the confined chip, × 1.2 for the worn edge; split point c/D = 0.03 (Machinery's Handbook: A 1.000, B 1.100, J 0.001).
  const kc = 1.2 * 1700 * ((0.23 / 2) * Math.sin((65 * Math.PI) / 180)) ** -0.25; // MPa
  const K = (1.2 * kc * (0.23 / 25.4) * 0.5 ** 2) / 8 / ((0.23 / 25.4) ** 0.8 * 0.5 ** 1.8); // MPa
  it("pushes, turns and draws power", () => {
    const [f, d, r] = [2 * lip.toNumber("in"), 0.201, 0.03];
    const A = (1 - r * r) / (1 + r) ** 0.2 + 3.2 * r ** 1.8;
    const B = (1 - r) / (1 + r) ** 0.2 + 2.2 * r ** 0.8;
    const square = 25.4 ** 2; // MPa·in² to N
    same("drill", "Force", "force", unit(square * (2 * K * f ** 0.8 * d ** 0.8 * B + K * d * d * r * r), "N"));
    same("drill", "Power", "power", power(rpm, square * 25.4 * K * f ** 0.8 * d ** 1.8 * A));
  });
  it("takes its time and money, with pecks that shrink from three diameters and end at the bottom", () => {
    const feed = q("n * 2 * fz", { n: rpm, fz: lip }).toNumber("mm/minute");
    const travel = mm(q("0.9 in + D / 2 / tan(65 deg)", { D })); // Machinery's Handbook: point D/2·cot(σ/2)
    const d = mm(D);
    const t = arrive(millA);
    // 3 and 1.8 diameters would reach 4.8; the travel is 4.71 of them: both shortened in that ratio
    expect(travel).toBeGreaterThan(3 * d);
    expect(travel).toBeLessThan(4.8 * d);
    const bottoms = [(travel * 3) / 4.8, travel];
    // from 2 mm above the face; later from half a millimetre above the bottom
    t.cutting += way.move(bottoms[0]! + 2, feed, 2);
    t.moving += rapid(millA, bottoms[0]! + 2) + rapid(millA, bottoms[0]! + 1.5);
    t.cutting += way.move(bottoms[1]! - bottoms[0]! + 0.5, feed, 2);
    t.moving += rapid(millA, travel + 2);
    plain("drill", "Passes", 2);
    timeAndCost("drill", t, steel, "Mill A", vc, 6, 20, 40, 5);
  });
});

describe("a thread in metric with a single-profile cutter, worked out a second time (independent)", () => {
  // ISO 965-1, M6 6H: pitch diameter 5.350 to 5.500, minor 4.917 to 5.153 (printed; from memory)
  const [low, high] = [5.35, 5.5];
  const [P, Dc, flat, depth] = [1, 4.6, 0.08, 12];
  const D = unit(Dc, "mm");
  const start = 5; // the only metric drill that lies, with its hole, inside 4.917 to 5.153: 5.0 and 0.0911 more; 4.9 lies under, 5.1 cuts 5.19
  const e = way.threadPath((low + high) / 2, P, Dc, flat);
  const tip = 2 * e + Dc;
  const T = (tip - start) / 2;
  const depths = way.equalAreas(T, flat, 3);
  const walls = [start, ...depths.map((t) => start + 2 * t)];
  const phi = Math.max(...depths.map((_, i) => way.engagement(walls[i]!, walls[i + 1]!, Dc)));
  const { rpm, vc, listVc } = speed(steel, 0.5, D, [9000], THREAD_SPEED);
  const centre = threadCentre(steel, D, (tip - Dc) / tip, phi);
  const edge = q("fz / k", { fz: centre, k: (tip - Dc) / tip });
  const feed = q("n * 3 * fz", { n: rpm, fz: centre });
  it("has sizes, drill, path and gap", () => {
    same("single", "Size min", "length", unit(low, "mm"));
    same("single", "Size max", "length", unit(high, "mm"));
    // Machinery's Handbook, mean oversize 0.0762 mm at 3.175, 0.1016 at 6.35 (from memory)
    const oversize = 0.0762 + (0.0254 * (5.035 - 3.175)) / 3.175;
    expect([4.9, 5, 5.1].filter((d) => d >= 4.917 && d + oversize <= 5.153)).toEqual([5]);
    same("single", "Start diameter", "length", unit(start, "mm"));
    expect(cellOf("single", "Drill")).toBe("5 mm");
    // envelope of the profile on its helix, searched
    same("single", "Path radius", "length", unit(e, "mm"), 1e-8);
    same("single", "Major diameter", "length", unit(tip, "mm"), 1e-8);
    same("single", "Neck gap", "length", q("5 mm / 2 - e - 3.4 mm / 2", { e: unit(e, "mm") }), 1e-7); // a difference
    plain("single", "Start Z", -12);
    plain("single", "End Z", 1);
    expect(cellOf("single", "Direction")).toBe("bottom up, counter-clockwise");
  });
  it("turns, feeds and divides the depth", () => {
    plain("single", "Spindle speed", rpm.toNumber("minute^-1"));
    same("single", "Surface speed", "surface", vc);
    same("single", "Radial depth", "length", depthOf(phi, D), 1e-7);
    same("single", "Feed per tooth", "length", edge, 1e-7);
    same("single", "Table feed", "feed", feed, 1e-7);
    same("single", "Chip thickness", "length", chipOf(centre, phi), 1e-7);
    depthsWritten("single", [...depths, T], 3);
  });
  const cut = (from: number, to: number, ploughing: number): way.ThreadPass => ({
    ...{ hole: start, Dc, flat, fz: mm(centre), teeth: 3, kc11: 1700, m: 0.25, ratio: 0.4 },
    ...{ from, to, edge: ploughing * 1700 * 0.004, profiles: 1 },
  });
  const turns = depths.map((t, i) => way.threadTurn(cut(i === 0 ? 0 : depths[i - 1]!, t, 0)));
  const peak = Math.max(...turns.map((x) => x.peak));
  const torque = Math.max(...turns.map((x) => x.torque));
  // neck of 14 less the 0.2 below the profile, shank to the stick-out
  const bars = [
    { d: 3.4, l: 13.8 },
    { d: 6, l: 16 },
  ];
  const give = way.flexibility(bars, 580000, 0.22, 25000);
  it("pushes, bends, strains and draws power", () => {
    same("single", "Force", "force", unit(Math.max(...turns.map((x) => x.tangential)), "N"), BRUTE);
    same("single", "Power", "power", power(rpm, torque), BRUTE);
    same("single", "Deflection", "length", unit(give * peak, "mm"), BRUTE);
    plain("single", "Stress", way.principal(bars, peak, torque, 1.3) / (3500 / 3), BRUTE);
  });
  it("predicts the pitch diameter from the two force models", () => {
    // wall and mean, at both ends; the layer on a 60° flank is twice the least chip
    const errors = ENDS.flatMap((k) =>
      [
        (from: number, to: number, share: number) => way.threadNormal(cut(from, to, share), "wall"),
        (from: number, to: number) => way.threadNormal(cut(from, to, 0), "mean"),
      ].map((force) => -2 * (T - way.bluntly([...depths, T], k * give, force, (0.3 * 0.004) / 0.5)[3]!)),
    );
    sized("single", (low + high) / 2, errors, 1);
  });
  it("takes its time and money", () => {
    const t = arrive(millA, 30);
    const f = feed.toNumber("mm/minute");
    for (const d of [...depths, T]) {
      const r = e - (T - d);
      t.moving += 2 * rapid(millA, depth + 2);
      // half-circles in and out, a turn per pitch of depth and one more, rising a pitch a turn
      t.cutting += 2 * way.arc(r / 2, 0.5, f, 2) + way.arc(r, depth / P + 1, f, 2, P);
    }
    timeAndCost("single", t, steel, "Mill A", listVc, 4, 20, 75, 1);
  });
});

describe("a thread in inch with a full-profile cutter, worked out a second time (independent)", () => {
  const P = unit(1 / 13, "in");
  const D = unit(0.37, "in");
  const start = unit(27 / 64, "in");
  const flat = unit(0.008, "in");
  // ASME B1.1: d2 = D − 0.64951905·P to four places; TD2(2B) = 1.3·(0.0015·D^⅓ + 0.0015·√LE + 0.015·P^⅔) to four places
  const low = n("round((0.5 in - 0.64951905 * P) / (1 in), 4)", { P });
  const high = n("low + round(1.3 * round(0.0015 * 0.5^(1/3) + 0.0015 * sqrt(0.5) + 0.015 * (1/13)^(2/3), 6), 4)", {
    low,
  });
  const e = unit(way.threadPath((25.4 * (low + high)) / 2, mm(P), mm(D), mm(flat)), "mm");
  const tip = q("2 e + D", { e, D });
  const T = q("(tip - start) / 2", { tip, start });
  const depths = way.equalAreas(mm(T), mm(flat), 2);
  const walls = [mm(start), ...depths.map((t) => mm(start) + 2 * t)];
  const phi = Math.max(...depths.map((_, i) => way.engagement(walls[i]!, walls[i + 1]!, mm(D))));
  const { rpm, vc, listVc } = speed(alloy, 0.5, D, [12000], THREAD_SPEED);
  const share = n("(tip - D) / tip", { tip, D });
  const centre = threadCentre(alloy, D, share, phi);
  const edge = q("fz / k", { fz: centre, k: share });
  const wantedFeed = q("n * 4 * fz", { n: rpm, fz: centre });
  const feed = unit(Math.min(10000, wantedFeed.toNumber("mm/minute")), "mm/minute");
  it("has the sizes of ASME B1.1, path and passes", () => {
    expect([low, high]).toEqual([0.45, 0.4565]); // printed in the standard; from memory
    plain("full", "Size min", low);
    plain("full", "Size max", high);
    expect(cellOf("full", "Drill")).toBe("27/64");
    same("full", "Path radius", "length", e, 1e-8);
    same("full", "Major diameter", "length", tip, 1e-8);
    same("full", "Start Z", "length", unit(-0.6, "in"));
    same("full", "End Z", "length", q("-0.6 in + P", { P }));
    depthsWritten(
      "full",
      depths.map((t) => t / 25.4),
      4,
    );
  });
  it("turns and feeds", () => {
    plain("full", "Spindle speed", rpm.toNumber("minute^-1"));
    same("full", "Surface speed", "surface", vc);
    same("full", "Radial depth", "length", depthOf(phi, D), 1e-7);
    same("full", "Feed per tooth", "length", edge, 1e-7);
    same("full", "Table feed", "feed", feed, 1e-7);
    same("full", "Chip thickness", "length", chipOf(centre, phi), 1e-7);
  });
  // 0.6 in of thread: eight profiles cut at once
  const profiles = Math.round(0.6 * 13);
  const cut = (from: number, to: number, ploughing: number): way.ThreadPass => ({
    ...{ hole: mm(start), Dc: mm(D), flat: mm(flat), fz: mm(centre), teeth: 4, kc11: 700, m: 0.22, ratio: 0.3 },
    ...{ from, to, edge: ploughing * 700 * 0.0002 * 25.4, profiles },
  });
  const turns = depths.map((t, i) => way.threadTurn(cut(i === 0 ? 0 : depths[i - 1]!, t, 0)));
  const peak = Math.max(...turns.map((x) => x.peak));
  const torque = Math.max(...turns.map((x) => x.torque));
  // load in the middle of the 0.6 in that cut; the fluted part bends like 0.8 of its diameter
  const bars = [
    { d: mm(q("0.8 D", { D })), l: mm(unit(0.4, "in")) },
    { d: mm(unit(0.375, "in")), l: mm(unit(0.6, "in")) },
  ];
  const give = way.flexibility(bars, 600000, 0.22);
  it("pushes with eight profiles, bends, strains and draws power", () => {
    same("full", "Force", "force", unit(Math.max(...turns.map((x) => x.tangential)), "N"), BRUTE);
    same("full", "Power", "power", power(rpm, torque), BRUTE);
    same("full", "Deflection", "length", unit(give * peak, "mm"), BRUTE);
    plain("full", "Stress", way.principal(bars, peak, torque, 1.4) / (3200 / 3), BRUTE);
  });
  it("predicts the pitch diameter from the two force models", () => {
    const errors = ENDS.flatMap((k) =>
      [
        (from: number, to: number, share: number) => way.threadNormal(cut(from, to, share), "wall"),
        (from: number, to: number) => way.threadNormal(cut(from, to, 0), "mean"),
      ].map((force) => -2 * (mm(T) - way.bluntly(depths, k * give, force, (0.25 * 0.0002 * 25.4) / 0.5)[1]!)),
    );
    sized("full", (25.4 * (low + high)) / 2, errors, 25.4);
  });
  it("takes its time and money: one turn a pass", () => {
    const t = arrive(millB, 50.8);
    const f = feed.toNumber("mm/minute");
    for (const d of depths) {
      const r = mm(e) - (mm(T) - d);
      t.moving += 2 * rapid(millB, 0.6 * 25.4 + 2);
      t.cutting += 2 * way.arc(r / 2, 0.5, f, 4) + way.arc(r, 1, f, 4, mm(P));
    }
    timeAndCost("full", t, alloy, "Mill B", listVc, 2, 50, 110, 1);
  });
});

describe("a bore from solid in metric, worked out a second time (independent)", () => {
  const D = unit(10, "mm");
  // common practice: a first circle of 1.9 × the cutter leaves no core, then equal passes of at most half the cutter
  const first = 19;
  const diameters = [first, 24];
  const angles = [Math.PI, way.engagement(19, 24, 10)]; // down into solid: full width
  const rise = mm(q("2 pi * r * tan(3 deg)", { r: unit((first - 10) / 2, "mm") })); // ramp of 3°
  const { rpm, vc, listVc } = speed(alloy, 0.5, D, [12000], engagedBy(alloy, Math.PI));
  const centre = centreFeed(listed(alloy, D), Math.PI, false, (24 - 10) / 24);
  const edge = q("fz * 24 / (24 - 10)", { fz: centre });
  const feed = q("n * 3 * fz", { n: rpm, fz: centre });
  it("turns, feeds and divides the stock", () => {
    plain("bore", "Spindle speed", rpm.toNumber("minute^-1"));
    same("bore", "Surface speed", "surface", vc);
    same("bore", "Radial depth", "length", D);
    same("bore", "Feed per tooth", "length", edge);
    same("bore", "Table feed", "feed", feed);
    same("bore", "Chip thickness", "length", centre);
    same("bore", "Path radius", "length", unit(7, "mm"));
    plain("bore", "Passes", 2);
    depthsWritten("bore", [9.5, 12], 3);
    expect(cellOf("bore", "Direction")).toBe("top down, counter-clockwise");
  });
  // the helix cuts its rise; the wider circle, over a quarter of the cutter wide, at most a diameter: 15 in two levels
  const heights = [rise, 7.5];
  const turns = angles.map((phi, i) =>
    way.endMillTurn({
      ...{ D: 10, phi, ap: heights[i]!, helix: (40 * Math.PI) / 180, fz: mm(centre), teeth: 3 },
      ...{ kc11: 700, m: 0.22, ratio: 0.3, edge: 0, way: "climb" as const },
    }),
  );
  const barsAt = (ap: number) => [
    { d: 8, l: 22 - ap / 2 },
    { d: 10, l: 10 },
  ];
  const gives = heights.map((ap) => way.flexibility(barsAt(ap), 600000, 0.22));
  it("pushes, bends, strains and draws power", () => {
    const torque = Math.max(...turns.map((x) => x.torque));
    same("bore", "Force", "force", unit(Math.max(...turns.map((x) => x.tangential)), "N"), BRUTE);
    same("bore", "Power", "power", power(rpm, torque), BRUTE);
    const bends = turns.map((x, i) => gives[i]! * x.peak);
    const worst = bends[0]! > bends[1]! ? 0 : 1;
    same("bore", "Deflection", "length", unit(bends[worst]!, "mm"), BRUTE);
    const stress = way.principal(barsAt(heights[worst]!), turns[worst]!.peak, torque, 1.2);
    plain("bore", "Stress", stress / 1000, BRUTE);
  });
  it("takes its time and money: a helix down, one turn on the size at each of two levels", () => {
    const t = arrive(millB);
    const f = feed.toNumber("mm/minute");
    diameters.forEach((d, i) => {
      const r = (d - 10) / 2;
      for (let level = 0; level < (i === 0 ? 1 : 2); level++) {
        t.moving += 2 * rapid(millB, 17);
        t.cutting += 2 * way.arc(r / 2, 0.5, f, 4) + way.arc(r, i === 0 ? 15 / rise + 1 : 1, f, 4, i === 0 ? rise : 0);
      }
    });
    timeAndCost("bore", t, alloy, "Mill B", listVc, 1, 50, 45, 1);
  });
});

describe("an inside arc in inch, worked out a second time (independent)", () => {
  const D = unit(0.5, "in");
  const finish = unit(1.25, "in");
  const stock = mm(unit(0.06, "in"));
  const dm = mm(finish);
  const walls = [dm - 2 * stock, dm - stock, dm];
  const angles = [0, 1].map((i) => way.engagement(walls[i]!, walls[i + 1]!, mm(D)));
  const phi = Math.max(...angles);
  const { rpm, vc, listVc } = speed(steel, 0.5, D, [9000, 8000], engagedBy(steel, phi));
  // under a tenth of the cutter, with a size to hold: a finishing cut
  const finishing = (1 - Math.cos(phi)) / 2 < 0.1;
  const centre = centreFeed(listed(steel, D), phi, finishing, (dm - mm(D)) / dm);
  const edge = q("fz * Dm / (Dm - D)", { fz: centre, Dm: finish, D });
  const feed = q("n * 4 * fz", { n: rpm, fz: centre });
  it("turns and feeds at the centre", () => {
    plain("arc", "Spindle speed", rpm.toNumber("minute^-1"));
    same("arc", "Surface speed", "surface", vc);
    same("arc", "Radial depth", "length", depthOf(phi, D), 1e-8);
    same("arc", "Feed per tooth", "length", edge, 1e-8);
    same("arc", "Table feed", "feed", feed, 1e-8);
    same("arc", "Chip thickness", "length", chipOf(centre, phi), 1e-8);
    depthsWritten("arc", [0.03, 0.06], 4);
    expect(cellOf("arc", "Direction")).toBe("counter-clockwise");
  });
  const ap = mm(unit(0.6, "in"));
  const cut = (phiOf: number, ploughing: number): way.EndMillPass => ({
    ...{ D: mm(D), phi: phiOf, ap, helix: (30 * Math.PI) / 180, fz: mm(centre), teeth: 4, kc11: 1700, m: 0.25 },
    ...{ ratio: 0.4, edge: ploughing * 1700 * 0.0003 * 25.4, way: "climb" as const },
  });
  const turns = angles.map((a) => way.endMillTurn(cut(a, 0)));
  const peak = Math.max(...turns.map((x) => x.peak));
  const torque = Math.max(...turns.map((x) => x.torque));
  const bars = [
    { d: mm(unit(0.4, "in")), l: mm(unit(0.7, "in")) },
    { d: mm(D), l: mm(unit(0.6, "in")) },
  ];
  const give = way.flexibility(bars, 620000, 0.22, 25000);
  it("pushes, bends, strains and draws power", () => {
    same("arc", "Force", "force", unit(Math.max(...turns.map((x) => x.tangential)), "N"), BRUTE);
    same("arc", "Power", "power", power(rpm, torque), BRUTE);
    same("arc", "Deflection", "length", unit(give * peak, "mm"), BRUTE);
    plain("arc", "Stress", way.principal(bars, peak, torque, 1.1) / (3100 / 3), BRUTE);
  });
  it("predicts the diameter from the two force models", () => {
    const start = walls[0]!;
    const angle = (from: number, to: number) => way.engagement(start + 2 * from, start + 2 * to, mm(D));
    // wall and mean, at both ends; the layer on a wall is the least chip
    const errors = ENDS.flatMap((k) =>
      (["wall", "mean"] as const).map((model) => {
        const force = (from: number, to: number, share: number) =>
          way.endMillNormal(cut(angle(from, to), model === "wall" ? share : 0), model);
        return -2 * (stock - way.bluntly([stock / 2, stock], k * give, force, 0.3 * 0.0003 * 25.4)[1]!);
      }),
    );
    plain("arc", "Size min", 1.246);
    plain("arc", "Size max", 1.254);
    sized("arc", dm, errors, 25.4);
  });
  it("takes its time and money", () => {
    const t = arrive(millA);
    const f = feed.toNumber("mm/minute");
    const r = (dm - mm(D)) / 2;
    const turnsOfArc = (1.1 * 25.4) / (Math.PI * dm);
    for (let i = 0; i < 2; i++) {
      // down, the arc, a half-circle off the wall, up, and back over the length and half the cutter
      t.moving += 2 * rapid(millA, ap + 2) + rapid(millA, 1.1 * 25.4 + mm(D) / 2);
      t.cutting += way.arc(r, turnsOfArc, f, 2) + way.arc(r / 2, 0.5, f, 2);
    }
    timeAndCost("arc", t, steel, "Mill A", listVc, 1, 20, 60, 2);
  });
});

describe("a thin straight cut in metric, worked out a second time (independent)", () => {
  const D = unit(8, "mm");
  const angleOf = (ae: number) => Math.acos(1 - (2 * ae) / 8); // Martellotti 1941
  const phi = angleOf(0.25);
  const { rpm, vc, listVc } = speed(steel, 0.5, D, [12000], engagedBy(steel, phi));
  const edge = centreFeed(listed(steel, D), phi, true);
  const feed = q("n * 3 * fz", { n: rpm, fz: edge });
  it("turns, feeds and meets the limit of a finishing cut", () => {
    plain("wall", "Spindle speed", rpm.toNumber("minute^-1"));
    same("wall", "Surface speed", "surface", vc);
    same("wall", "Radial depth", "length", unit(0.25, "mm"));
    expect(1 / Math.sin(phi)).toBeGreaterThan(2);
    same("wall", "Feed per tooth", "length", q("1.3 f", { f: listed(steel, D) }));
    same("wall", "Table feed", "feed", feed);
    same("wall", "Chip thickness", "length", chipOf(edge, phi));
    depthsWritten("wall", [0.25, 0.25], 3);
  });
  const kc11 = 1700 * 1.3; // worn edge
  const cut = (ae: number, ploughing: number): way.EndMillPass => ({
    ...{ D: 8, phi: angleOf(ae), ap: 18, helix: (35 * Math.PI) / 180, fz: mm(edge), teeth: 3, kc11, m: 0.25 },
    ...{ ratio: 0.4, edge: ploughing * kc11 * 0.005, way: "conventional" as const },
  });
  const turn = way.endMillTurn(cut(0.25, 0));
  // load in the middle of the 18: fluted part, neck, shank
  const bars = [
    { d: 6.4, l: 11 },
    { d: 7.6, l: 6 },
    { d: 8, l: 4 },
  ];
  const give = way.flexibility(bars, 590000, 0.22);
  it("pushes, bends, strains and draws power", () => {
    same("wall", "Force", "force", unit(turn.tangential, "N"), BRUTE);
    same("wall", "Power", "power", power(rpm, turn.torque), BRUTE);
    same("wall", "Deflection", "length", unit(give * turn.peak, "mm"), BRUTE);
    plain("wall", "Stress", way.principal(bars, turn.peak, turn.torque, 1.2) / 1000, BRUTE);
  });
  it("predicts the error of the wall from the two force models", () => {
    const errors = ENDS.flatMap((k) =>
      (["wall", "mean"] as const).map((model) => {
        const force = (from: number, to: number, share: number) =>
          way.endMillNormal(cut(to - from, model === "wall" ? share : 0), model);
        return 0.25 - way.bluntly([0.25, 0.25], k * give, force, 0.3 * 0.005)[1]!;
      }),
    );
    plain("wall", "Size min", -0.05);
    plain("wall", "Size max", 0.05);
    sized("wall", 0, errors, 1);
  });
  it("takes its time and money", () => {
    const t = arrive(millB);
    const f = feed.toNumber("mm/minute");
    for (let i = 0; i < 2; i++) {
      t.moving += 2 * rapid(millB, 20) + rapid(millB, 124);
      t.cutting += way.move(124, f, 4);
    }
    timeAndCost("wall", t, steel, "Mill B", listVc, 2, 50, 38, 1);
  });
});
