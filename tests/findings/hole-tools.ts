/** Rules of taps, reamers and countersinks, and of the reach of every tool. */
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
const D10 = { Tool: "D-10.2", "Finish diameter": 10.2, Depth: 20 } as const;

export const holeTools: Rules = {
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
      facts: { value: 80, limit: about(80.064389, 6) },
      why: "what is behind the nose never enters: 95, a point of 5.1/tan 59° = 3.064 and 1 of room are 99.064, the nose ends at 99",
    },
  ],
};
