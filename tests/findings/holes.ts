/** Rules of drilled holes. */
import { about, above, type RowCells, type Rules, STEEL } from "./rule.ts";

const drill = (cells: RowCells) => ({ row: { ...STEEL, Operation: "drill", ...cells } });
const tap = (cells: RowCells) => ({
  row: { ...STEEL, Operation: "tap", Thread: "M6", "Start diameter": 5, Depth: 10, "Hole depth": 15, ...cells },
});
const sink = (cells: RowCells) => ({
  row: { ...STEEL, Operation: "countersink", "Finish diameter": 12, "Start diameter": 6, ...cells },
});
/** Of half a point of 118°. */
const TAN = Math.tan((59 * Math.PI) / 180);
const D5 = { Tool: "D-5.0", "Finish diameter": 5, Depth: 10 } as const;
const D10 = { Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20 } as const;
/** A drill with long flutes. */
const LONG = {
  ...{ Tool: "Long 6", Kind: "drill", Units: "mm", Diameter: 6, Teeth: 2, "Cutting length": 150, "Shank diameter": 6 },
  ...{ "Stick-out": 165, "Point angle": 118, Substrate: "HSS", "Rupture strength [MPa]": 3500 },
};
const long = (cells: RowCells, tool: RowCells = {}) => ({
  ...drill({ Tool: "Long 6", "Finish diameter": 6, ...cells }),
  tools: [{ ...LONG, ...tool }],
});

export const holes: Rules = {
  "hole-under-minor": [
    {
      fires: drill({ Tool: "D-4.2", Thread: "M6", Depth: 12 }),
      inside: drill({ Tool: "D-5.0", Thread: "M6", Depth: 12 }),
      severity: "stop",
      facts: { value: about(4.2 + 0.0762 + (0.0254 * 1.025) / 3.175), limit: about(4.917, 3) },
      why: "ISO 965-1: least minor diameter of M6-6H is 4.917",
    },
    {
      fires: tap({ "Start diameter": 4.91 }),
      inside: tap({ "Start diameter": 4.92 }),
      severity: "stop",
      facts: { value: 4.91, limit: about(4.917, 3), percent: about(109 / (0.75 * Math.sqrt(3))), beyond: true },
      why: "a tap in a hole under the minor diameter breaks",
    },
  ],
  "hole-over-minor": [
    {
      fires: tap({ "Start diameter": 5.16 }),
      inside: tap({ "Start diameter": 5.15 }),
      severity: "stop",
      facts: { value: 5.16, limit: about(5.153, 3), percent: about(84 / (0.75 * Math.sqrt(3))) },
      why: "ISO 965-1: largest minor diameter of M6-6H is 5.153",
    },
    {
      fires: drill({ Tool: "D-5.0", Thread: "M6", Depth: 12, "Drilling oversize": 0.16 }),
      inside: drill({ Tool: "D-5.0", Thread: "M6", Depth: 12, "Drilling oversize": 0.15 }),
      severity: "check",
      facts: { value: about(5.16), limit: about(5.153, 3) },
      why: "the drill itself is inside, its mean hole is not",
    },
    {
      fires: drill({ Tool: "D-5.5", Thread: "M6", Depth: 12 }),
      inside: drill({ Tool: "D-5.0", Thread: "M6", Depth: 12 }),
      severity: "stop",
      facts: { value: about(5.5 + 0.0762 + (0.0254 * 2.325) / 3.175), limit: about(5.153, 3) },
      why: "the drill itself is over the limit",
    },
  ],
  "no-drill-listed": {
    fires: drill({ "Finish diameter": 10.25, Depth: 20 }),
    inside: drill({ "Finish diameter": 10.2, Depth: 20 }),
    severity: "check",
    facts: { size: 10.25, pointAngle: 118 },
    why: "the shop has no drill of that size",
  },
  "wrong-drill": {
    fires: drill({ Tool: "D-14.0", "Finish diameter": 13.98, Depth: 20 }),
    inside: drill({ Tool: "D-14.0", "Finish diameter": 13.99, Depth: 20 }),
    severity: "stop",
    facts: { value: 14, limit: 13.98, tool: "D-14.0", drill: null },
    why: "a drill more than a hundredth off is another drill",
  },
  "no-stock": {
    fires: drill({ ...D10, "Start diameter": 10.3 }),
    inside: drill({ ...D10, "Start diameter": 6 }),
    severity: "stop",
    facts: { value: 10.3, limit: 10.2 },
    why: "a hole that is larger than the drill",
  },
  "drill-too-short": {
    fires: drill({ ...D5, Depth: 51 }),
    inside: drill({ ...D5, Depth: 50 }),
    severity: "stop",
    facts: { value: 52, limit: about(51 + 2.5 / TAN) },
    why: "flutes of 52 mm end below the face: 51 and the point of 1.5 go deeper",
  },
  "flutes-full": [
    {
      fires: drill({ ...D5, Depth: 47.5 }),
      inside: drill({ ...D5, Depth: 44.4 }),
      severity: "check",
      facts: { value: 52, limit: about(47.5 + 5), open: 1 },
      why: "less than a diameter of open flute above the depth",
    },
    {
      fires: drill({ ...D5, Depth: 44.6 }),
      inside: drill({ ...D5, Depth: 44.4 }),
      severity: "ok",
      facts: { value: 52, limit: about(44.6 + 7.5), open: 1.5 },
      why: "common practice: flutes about 1.5 diameters longer than the hole is deep (52 − 7.5)",
    },
  ],
  "point-through-bottom": [
    {
      fires: drill({ Tool: "D-6.8", "Finish diameter": 6.8, Depth: 20, "Hole depth": 22 }),
      inside: drill({ Tool: "D-6.8", "Finish diameter": 6.8, Depth: 20, "Hole depth": 22.1 }),
      severity: "stop",
      facts: { value: about(20 + 3.4 / TAN), limit: 22 },
      why: "a point of 118° is 2.04 long at 6.8",
    },
    {
      fires: sink({ "Hole depth": 5.9 }),
      inside: sink({ "Hole depth": 6.1 }),
      severity: "stop",
      facts: { value: about(6), limit: 5.9 },
      why: "a pointed 90° countersink goes half its diameter deep",
    },
  ],
  "too-deep": {
    fires: drill({ Tool: "D-6.8", "Finish diameter": 6.8, Depth: 338.5 }),
    inside: drill({ Tool: "D-6.8", "Finish diameter": 6.8, Depth: 337 }),
    severity: "stop",
    facts: {
      value: about(338.5 + 3.4 / TAN),
      limit: about(340),
      diameters: about((338.5 + 3.4 / TAN) / 6.8),
      most: 50,
    },
    why: "fifty diameters: gun drilling",
  },
  "drill-torsion": [
    {
      fires: drill({ ...D5, "Feed per tooth": 0.094 }),
      inside: drill({ ...D5, "Feed per tooth": 0.091 }),
      severity: "check",
      facts: { value: above(0), limit: above(0), nominal: above(0) },
      why: "torque with its uncertainty over the breaking torque over 1.5",
    },
    {
      fires: drill({ ...D5, "Feed per tooth": 0.3 }),
      inside: drill({ ...D5, "Feed per tooth": 0.091 }),
      severity: "stop",
      facts: { value: above(0), limit: above(0), nominal: above(0) },
      why: "0.6 mm per turn twists a 5 mm drill off",
      near: 2,
    },
  ],
  "drill-buckles": [
    {
      fires: drill({ ...D5, "Feed per tooth": 0.17 }),
      inside: drill({ ...D5, "Feed per tooth": 0.163 }),
      severity: "check",
      facts: { value: above(0), limit: above(0), nominal: above(0) },
      why: "thrust with its uncertainty over Euler's over 2",
    },
    {
      fires: drill({ ...D5, "Feed per tooth": 0.5 }),
      inside: drill({ ...D5, "Feed per tooth": 0.163 }),
      severity: "stop",
      facts: { value: above(0), limit: above(0), nominal: above(0) },
      why: "thrust over Euler's own",
      near: 1.5,
    },
  ],
  "spot-first": {
    fires: drill({ Tool: "D-6.8", "Finish diameter": 6.8, Depth: 10 }),
    inside: drill({ Tool: "D-6.8", "Finish diameter": 6.8, Depth: 10, "Start diameter": 3 }),
    severity: "ok",
    facts: { value: above(0), limit: above(0) },
    why: "a jobber drill walks; a spot holds its point",
  },
  "pilot-wanted": {
    fires: long({ Depth: 72.1 }),
    inside: long({ Depth: 71.9 }),
    severity: "check",
    facts: { value: 72.1, limit: 72, diameter: 6 },
    why: "common practice: a pilot beyond 12 diameters",
  },
  "coolant-wanted": [
    {
      fires: long({ Depth: 30.1 }, { Substrate: "carbide" }),
      inside: long({ Depth: 29.9 }, { Substrate: "carbide" }),
      severity: "check",
      facts: { value: 30.1, limit: 30 },
      why: "common practice: solid carbide beyond 5 diameters wants coolant through it",
    },
    {
      fires: long({ Depth: 30.1 }, { Substrate: "carbide", "Coolant through": "no" }),
      inside: long({ Depth: 30.1 }, { Substrate: "carbide", "Coolant through": "yes" }),
      severity: "check",
      facts: { value: 30.1, limit: 30 },
      why: "the same drill with coolant through it",
    },
    {
      fires: long({ Depth: 90.1, "Start diameter": 6 }),
      inside: long({ Depth: 89.9, "Start diameter": 6 }),
      severity: "check",
      facts: { value: 90.1, limit: 90 },
      why: "common practice: high-speed steel beyond 15 diameters, pecks or not",
    },
  ],
  "hole-runs-off": {
    fires: drill({ ...D5, Depth: 40.1 }),
    inside: drill({ ...D5, Depth: 39.9 }),
    severity: "ok",
    facts: { drift: above(0) },
    why: "worth saying from eight diameters on",
  },
  "drilled-size-out": {
    fires: drill({ ...D10, "Size tolerance": 0.116 }),
    inside: drill({ ...D10, "Size tolerance": 0.13 }),
    severity: "stop",
    facts: {
      value: about(10.2 + 0.1016 + (0.0254 * 3.85) / 6.35),
      limit: about(10.316),
      low: about(10.084),
      high: about(10.316),
    },
    why: "Machinery's Handbook (from memory): a 10.2 drill cuts 0.117 over on average",
  },
  "drill-tolerance": [
    {
      fires: drill({ ...D10, "Size tolerance": 0.054, "Drilling oversize": 0 }),
      inside: drill({ ...D10, "Size tolerance": 0.056, "Drilling oversize": 0 }),
      severity: "check",
      facts: { value: about(0.108), limit: about(0.11), grade: 11 },
      why: "IT11 at 10.2 is 0.110: a jobber drill holds no less",
    },
    {
      fires: drill({ ...D10, Tool: "D-10.2C", "Size tolerance": 0.034, "Drilling oversize": 0 }),
      inside: drill({ ...D10, Tool: "D-10.2C", "Size tolerance": 0.036, "Drilling oversize": 0 }),
      severity: "check",
      facts: { value: about(0.068), limit: about(0.07), grade: 10 },
      why: "IT10 at 10.2 is 0.070: a carbide drill holds no less",
    },
  ],
  "hard-to-drill": {
    fires: drill({
      Tool: "D-5.0C",
      "Finish diameter": 5,
      Depth: 10,
      Material: "Hardened steel 58 HRC",
      Machine: "Centre V4",
    }),
    inside: drill({ Tool: "D-5.0C", "Finish diameter": 5, Depth: 10, Machine: "Centre V4" }),
    severity: "check",
    facts: { material: "Hardened steel 58 HRC" },
    why: "a common carbide drill does not last in 58 HRC",
  },
  "feed-over-list": [
    {
      fires: drill({ ...D10, "Feed per tooth": 0.131 }),
      inside: drill({ ...D10, "Feed per tooth": 0.128 }),
      severity: "check",
      facts: { value: about(0.262), limit: about(1.5 * 0.173, 2), listed: about(0.173, 3) },
      why: "half as much again as the list's 0.173 per turn",
    },
    {
      fires: drill({ ...D10, "Feed per tooth": 0.26 }),
      inside: drill({ ...D10, "Feed per tooth": 0.128 }),
      severity: "stop",
      facts: { value: about(0.52), limit: about(3 * 0.173, 2), listed: about(0.173, 3) },
      why: "three times the list's",
    },
  ],
};
