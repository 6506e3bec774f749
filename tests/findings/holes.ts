/** Rules of holes: drills, taps, reamers, countersinks, and the reach of every tool. */
import { expect } from "vitest";
import { about, above, type RowCells, type Rules, STEEL } from "./rule.ts";

const drill = (cells: RowCells) => ({ row: { ...STEEL, Operation: "drill", ...cells } });
const tap = (cells: RowCells) => ({
  row: { ...STEEL, Operation: "tap", Thread: "M6", "Start diameter": 5, Depth: 10, "Hole depth": 15, ...cells },
});
const ream = (cells: RowCells) => ({
  row: {
    ...STEEL,
    Operation: "ream",
    "Finish diameter": 10,
    "Start diameter": 9.8,
    Depth: 20,
    Through: "yes",
    ...cells,
  },
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
  "unknown-class": [
    {
      fires: ream({ "Size class": "H77" }),
      inside: ream({ "Size class": "H7" }),
      severity: "stop",
      facts: { error: expect.anything() },
      why: "no such class of ISO 286",
    },
    {
      fires: ream({ "Size class": "h7" }),
      inside: ream({ "Size class": "H7" }),
      severity: "stop",
      facts: { error: expect.anything() },
      why: "small letters are shafts",
    },
  ],
  "tool-assumed": {
    fires: tap({ Thread: "M24", "Start diameter": 21, "Hole depth": 40, Machine: "Centre V4" }),
    inside: tap({}),
    severity: "ok",
    facts: { operation: "tap" },
    why: "the shop has no M24 tap",
  },
  "torque-over": [
    {
      fires: tap({ Thread: "M24", "Start diameter": 21, "Hole depth": 40 }),
      inside: tap({ Thread: "M12", "Start diameter": 10.2, "Hole depth": 20 }),
      severity: "stop",
      facts: { value: above(80), limit: 80, stalls: true },
      why: "about 90 N·m at the tap stall a spindle of 80",
      near: 0.5,
    },
    {
      fires: tap({ Thread: "M24", "Start diameter": 21, "Hole depth": 40, Machine: "Centre V4" }),
      inside: tap({ Thread: "M12", "Start diameter": 10.2, "Hole depth": 20, Machine: "Centre V4" }),
      severity: "check",
      facts: { value: above(95 / 1.15), limit: 95, stalls: false },
      why: "95 N·m may be enough or not",
    },
  ],
  "not-internal": {
    fires: tap({ Thread: "M6-6g" }),
    inside: tap({ Thread: "M6-6H" }),
    severity: "stop",
    facts: { thread: expect.stringMatching(/^M6.*6g/) },
    why: "taps cut internal threads",
  },
  "tap-differs": {
    fires: tap({ Tool: "T-M5" }),
    inside: tap({ Tool: "T-M6" }),
    severity: "stop",
    facts: { value: 5, limit: 6, tool: "T-M5", thread: expect.stringMatching(/^M6/) },
    why: "an M5 tap makes no M6 thread",
  },
  "pitch-differs": {
    fires: tap({ Tool: "T-M8", Thread: "M8x1", "Start diameter": 7 }),
    inside: tap({ Tool: "T-M8", Thread: "M8", "Start diameter": 6.8 }),
    severity: "stop",
    facts: { value: 1.25, limit: 1 },
    why: "the tap has the coarse pitch",
    near: 0.3,
  },
  "tap-torsion": [
    {
      fires: tap({ Tool: "T-M6", "Wear factor": 2.25 }),
      inside: tap({ Tool: "T-M6", "Wear factor": 2.15 }),
      severity: "check",
      facts: { value: above(0), limit: above(0), nominal: above(0) },
      why: "torque with its uncertainty over the tap's breaking torque over 1.5",
    },
    {
      fires: { ...tap({ Tool: "T-M6" }), material: { "kc1.1 [MPa]": 9000 } },
      inside: tap({ Tool: "T-M6" }),
      severity: "stop",
      facts: { value: above(0), limit: above(0), nominal: above(0) },
      why: "torque over what breaks the tap",
      near: 1,
    },
  ],
  "tap-hole-depth": {
    fires: tap({ "Hole depth": null }),
    inside: tap({ "Hole depth": 15 }),
    severity: "ok",
    facts: { needed: about(14), chamfer: 4 },
    why: "a blind hole of unknown depth",
  },
  "tap-bottoms": [
    {
      fires: tap({ Tool: "T-M6", "Hole depth": 13.9 }),
      inside: tap({ Tool: "T-M6", "Hole depth": 14 }),
      severity: "stop",
      facts: { value: 13.9, limit: about(14), chamfer: 4 },
      why: "10 of thread and a plug chamfer of 4 pitches",
    },
    {
      fires: tap({ Tool: "T-M6B", "Hole depth": 11.9 }),
      inside: tap({ Tool: "T-M6B", "Hole depth": 12 }),
      severity: "stop",
      facts: { value: 11.9, limit: about(12), chamfer: 2 },
      why: "a bottoming chamfer of 2 pitches",
    },
  ],
  "tap-deep": {
    fires: tap({ Depth: 18.1, "Hole depth": 30 }),
    inside: tap({ Depth: 17.9, "Hole depth": 30 }),
    severity: "check",
    facts: { value: 18.1, limit: 18, most: 3 },
    why: "common practice: three diameters",
  },
  "reamer-differs": {
    fires: ream({ Tool: "R-10", "Finish diameter": 10.02 }),
    inside: ream({ Tool: "R-10", "Finish diameter": 10.01 }),
    severity: "stop",
    facts: { value: 10, limit: 10.02, tool: "R-10" },
    why: "a reamer has one size",
  },
  "reamer-in-air": {
    fires: ream({ "Start diameter": 10 }),
    inside: ream({ "Start diameter": 9.95 }),
    severity: "stop",
    facts: { value: 10, limit: 10 },
    why: "a hole as large as the reamer",
  },
  "ream-stock": [
    {
      fires: ream({ "Start diameter": 9.91 }),
      inside: ream({ "Start diameter": 9.89 }),
      severity: "check",
      facts: { value: about(0.09), limit: about(0.1), least: about(0.1), most: about(0.3) },
      why: "common practice: at least 0.1 at 10 mm",
    },
    {
      fires: ream({ "Start diameter": 9.69 }),
      inside: ream({ "Start diameter": 9.71 }),
      severity: "check",
      facts: { value: about(0.31), limit: about(0.3), least: about(0.1), most: about(0.3) },
      why: "common practice: at most 0.3 at 10 mm",
    },
    {
      fires: ream({ "Start diameter": 9.39 }),
      inside: ream({ "Start diameter": 9.71 }),
      severity: "stop",
      facts: { value: about(0.61), limit: about(0.6), least: about(0.1), most: about(0.3) },
      why: "twice the most",
    },
  ],
  "reamer-bottoms": {
    fires: ream({ Through: "no", "Hole depth": 20.95 }),
    inside: ream({ Through: "no", "Hole depth": 21.05 }),
    severity: "stop",
    facts: { value: 20.95, limit: 21, lead: 1 },
    why: "the lead of a tenth of the diameter",
  },
  "reamed-size": [
    {
      fires: ream({ "Size class": "H6" }),
      inside: ream({ "Size class": "H7" }),
      severity: "check",
      facts: { value: about(10.015), limit: about(10.009), low: about(10), high: about(10.015) },
      why: "a reamer for H7 (0 to 0.015) makes H6 (0 to 0.009) now and then",
    },
    {
      fires: ream({ "Size tolerance": 0.005 }),
      inside: ream({ "Size tolerance": 0.015 }),
      severity: "stop",
      facts: { value: about(10.015), limit: about(10.005), low: about(10), high: about(10.015) },
      why: "the middle of its holes is over the limit",
    },
  ],
  "countersink-small": {
    fires: sink({ Tool: "CS-12.5", "Finish diameter": 12.6 }),
    inside: sink({ Tool: "CS-12.5", "Finish diameter": 12.4 }),
    severity: "stop",
    facts: { value: 12.5, limit: 12.6 },
    why: "the cone is wider than the tool",
  },
  "cone-angle": {
    fires: sink({ Tool: "CS-12.5", Depth: 2.85 }),
    inside: sink({ Tool: "CS-12.5", Depth: 2.95 }),
    severity: "check",
    facts: { value: 2.85, limit: about(3), angle: 90 },
    why: "a 90° cone from 6 to 12 is 3 deep; 2.85 is one of 93°",
  },
  "grips-flutes": [
    {
      fires: drill({ ...D10, "Stick-out": 86.9 }),
      inside: drill({ ...D10, "Stick-out": 87.1 }),
      severity: "stop",
      facts: { value: 86.9, limit: 87 },
      why: "flutes of 87 mm",
    },
    {
      fires: {
        row: {
          ...STEEL,
          Operation: "thread mill",
          Tool: "TM-M6-S",
          Thread: "M6",
          "Start diameter": 5,
          Depth: 8,
          "Stick-out": 14.9,
        },
      },
      inside: {
        row: {
          ...STEEL,
          Operation: "thread mill",
          Tool: "TM-M6-S",
          Thread: "M6",
          "Start diameter": 5,
          Depth: 8,
          "Stick-out": 15.1,
        },
      },
      severity: "stop",
      facts: { value: 14.9, limit: 15 },
      why: "a neck of 15 mm",
    },
  ],
  "shank-hits": [
    {
      fires: drill({ Tool: "D-3.3C", "Finish diameter": 3.3, Depth: 19.5 }),
      inside: drill({ Tool: "D-3.3C", "Finish diameter": 3.3, Depth: 19.3 }),
      severity: "stop",
      facts: { value: about(20), limit: about(19.5 + 1.65 / Math.tan((70 * Math.PI) / 180)), part: "shank" },
      why: "the shank of 6 begins 20 from the tip",
    },
    {
      fires: tap({ Tool: "T-M6", Depth: 31, Through: "yes", "Hole depth": null }),
      inside: tap({ Tool: "T-M6", Depth: 24, Through: "yes", "Hole depth": null }),
      severity: "stop",
      facts: { value: about(30), limit: about(36), part: "shank" },
      why: "the shank of 6 begins 30 from the tip; through, the chamfer and 1 mm go further",
    },
  ],
  "holder-hits": [
    {
      fires: drill({ ...D10, Depth: 92 }),
      inside: drill({ ...D10, Depth: 91.9 }),
      severity: "stop",
      facts: { value: 96, limit: about(93 + 5.1 / TAN) },
      why: "92, the point of 3.06 and 1 of room are more than a stick-out of 96",
    },
    {
      fires: {
        row: {
          ...STEEL,
          Operation: "bore",
          Tool: "EM-12-4",
          "Start diameter": 40,
          "Finish diameter": 41,
          Depth: 25.1,
          "Stick-out": 26,
        },
      },
      inside: {
        row: {
          ...STEEL,
          Operation: "bore",
          Tool: "EM-12-4",
          "Start diameter": 40,
          "Finish diameter": 41,
          Depth: 24.9,
          "Stick-out": 26,
        },
      },
      severity: "stop",
      facts: { value: 26, limit: about(26.1) },
      why: "25.1 and 1 of room",
    },
    {
      fires: {
        row: {
          ...STEEL,
          Operation: "thread mill",
          Tool: "TM-M6-S",
          Thread: "M6",
          "Start diameter": 5,
          Depth: 12,
          "Stick-out": 13.4,
        },
      },
      inside: {
        row: {
          ...STEEL,
          Operation: "thread mill",
          Tool: "TM-M6-S",
          Thread: "M6",
          "Start diameter": 5,
          Depth: 12,
          "Stick-out": 13.6,
        },
      },
      severity: "stop",
      facts: { value: 13.4, limit: about(13.5) },
      why: "12, half a millimetre of tip and 1 of room",
    },
    {
      fires: { ...drill({ ...D10, Depth: 95 }), tool: { "Holder diameter": 10.3, "Holder length": 40 } },
      inside: { ...drill({ ...D10, Depth: 95 }), tool: { "Holder diameter": 10.1, "Holder length": 40 } },
      severity: "stop",
      facts: { value: 96, limit: about(96 + 5.1 / TAN) },
      why: "a nose thinner than the hole follows it in",
    },
    {
      fires: {
        ...drill({ ...D10, Depth: 95, "Stick-out": 80 }),
        tool: { "Holder diameter": 10.1, "Holder length": 19, "Point angle": 118 },
      },
      inside: {
        ...drill({ ...D10, Depth: 95, "Stick-out": 80 }),
        tool: { "Holder diameter": 10.1, "Holder length": 19.1, "Point angle": 118 },
      },
      severity: "stop",
      facts: { value: 80, limit: expect.closeTo(80.064389, 6) },
      why: "what is behind the nose never enters: 95, a point of 5.1/tan 59° = 3.064 and 1 of room are 99.064, the nose ends at 99",
    },
  ],
};
