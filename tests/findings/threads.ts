/** Rules of threads. */
import { expect } from "vitest";
import { about, above, below, type RowCells, type Rules, STEEL } from "./rule.ts";
import { M6, STEM } from "./thread-rows.ts";

const row = (cells: RowCells) => ({ row: { ...M6, ...cells } });
const tool = (cells: RowCells) => ({ row: M6, tool: cells });
const QT = { ...M6, Material: "Steel 42CrMo4 QT (AISI 4140)" };

export const threads: Rules = {
  "unknown-thread": {
    fires: row({ Thread: "M6.5" }),
    inside: row({ Thread: "M6" }),
    severity: "stop",
    facts: { error: expect.anything() },
    why: "ISO 261 has no M6.5",
  },
  "no-path": {
    fires: tool({ Diameter: 5.426 }),
    inside: tool({ Diameter: 5.424 }),
    severity: "stop",
    facts: { error: expect.anything() },
    why: "a cutter as large as the pitch diameter, middle of 5.350 to 5.500, has no path",
  },
  "profile-angle": {
    fires: tool({ "Profile angle": 55 }),
    inside: tool({ "Profile angle": 60 }),
    severity: "stop",
    facts: { value: 55, limit: 60 },
    why: "a 55° cutter makes no 60° thread",
  },
  "pitch-differs": {
    fires: { row: { ...M6, Tool: "TM-M6x1-F" }, tool: { Pitch: 1.001 } },
    inside: { row: { ...M6, Tool: "TM-M6x1-F" }, tool: { Pitch: 1 } },
    severity: "stop",
    facts: { value: 1.001, limit: 1 },
    why: "all profiles of a full-profile cutter stand a pitch apart",
  },
  "blank-diameter": [
    {
      fires: { row: { ...STEM, "Start diameter": 19.97 } },
      inside: { row: { ...STEM, "Start diameter": 19.96 } },
      severity: "stop",
      facts: { value: 19.97, limit: about(19.968, 3), low: about(19.732, 3) },
      why: "ISO 965: M20×1.5-6g is at most 19.968 over its crests",
    },
    {
      fires: { row: { ...STEM, "Start diameter": 19.73 } },
      inside: { row: { ...STEM, "Start diameter": 19.74 } },
      severity: "stop",
      facts: { value: 19.73, limit: about(19.968, 3), low: about(19.732, 3) },
      why: "and at least 19.732",
    },
  ],
  "flat-too-wide": {
    fires: tool({ "Tip flat": 0.1355 }),
    inside: tool({ "Tip flat": 0.1345 }),
    severity: "stop",
    facts: { value: about(6, 2), limit: 6, flat: 0.1355, inside: true, would: about(0.135, 3) },
    why: "the tip has to reach 6: at P/8 = 0.125 on a still profile, a little more at the middle of the limits, less by the sweep",
  },
  "no-depth": {
    fires: row({ "Start diameter": 6.07 }),
    inside: row({ "Start diameter": 6.05 }),
    severity: "stop",
    facts: { value: about(6.06, 2), limit: 6.07 },
    why: "the tip stands at 5.425 + (0.5 − 0.1)·√3 = 6.118 less the sweep of 0.05: a larger hole is not touched",
  },
  "neck-rubs": {
    fires: tool({ "Neck diameter": 3.04 }),
    inside: tool({ "Neck diameter": 3.03 }),
    severity: "stop",
    facts: { value: about((3.036 - 3.04) / 2, 3), limit: 0 },
    why: "the neck meets the wall when the profile is no higher than the thread is deep, (4.2 − 3.036)/2 = 0.582",
  },
  "neck-tight": {
    fires: tool({ "Neck diameter": 2.94 }),
    inside: tool({ "Neck diameter": 2.93 }),
    severity: "check",
    facts: { value: about((3.036 - 2.94) / 2, 3), limit: 0.05 },
    why: "0.05 mm for the chips (common practice): a neck 0.1 mm thinner than the one that rubs",
  },
  "profile-shallow": {
    fires: tool({ "Neck diameter": 3.04 }),
    inside: tool({ "Neck diameter": 3.03 }),
    severity: "stop",
    facts: { value: about(0.58), limit: about(0.582, 3) },
    why: "the profile has to be as high as the thread is deep",
  },
  "neck-short": {
    fires: row({ Depth: 14.6 }),
    inside: row({ Depth: 14.5 }),
    severity: "stop",
    facts: { value: 15, limit: about(15.1) },
    why: "a neck of 15 reaches 14.5 with 0.5 from the tip to the profile",
  },
  "hole-too-shallow": {
    fires: row({ "Hole depth": 9.4 }),
    inside: row({ "Hole depth": 9.5 }),
    severity: "stop",
    facts: { value: 9.4, limit: 9.5 },
    why: "9 of thread and 0.5 below the profile",
  },
  "hole-under-minor": {
    fires: row({ "Start diameter": 4.91 }),
    inside: row({ "Start diameter": 4.92 }),
    severity: "stop",
    facts: { value: 4.91, limit: about(4.917, 3), percent: about(109 / (0.75 * Math.sqrt(3))), beyond: true },
    why: "ISO 965: M6-6H minor 4.917 to 5.153",
  },
  "hole-over-minor": {
    fires: row({ "Start diameter": 5.16 }),
    inside: row({ "Start diameter": 5.15 }),
    severity: "stop",
    facts: { value: 5.16, limit: about(5.153, 3), percent: about(84 / (0.75 * Math.sqrt(3))) },
    why: "ISO 965: M6-6H minor 4.917 to 5.153",
  },
  "cutter-too-large": {
    fires: tool({ Diameter: 4.91 }),
    inside: tool({ Diameter: 4.89 }),
    severity: "stop",
    facts: { value: 4.91, limit: 4.9, into: "hole" },
    why: "the tap drill is 4.9",
  },
  "tool-incomplete": [
    {
      fires: tool({ "Tip flat": null }),
      inside: tool({}),
      severity: "stop",
      facts: { tool: "TM-M6-S", missing: "tipFlat" },
      why: "no path without the tip flat",
    },
    {
      fires: tool({ Teeth: null }),
      inside: tool({}),
      severity: "stop",
      facts: { tool: "TM-M6-S", missing: "teeth" },
      why: "no feed without the teeth",
    },
  ],
  "tool-kind": {
    fires: row({ Tool: "D-5.0" }),
    inside: row({}),
    severity: "stop",
    facts: { tool: "D-5.0", kind: "drill", wanted: "thread mill" },
    why: "a drill mills no thread",
  },
  "tool-proposed": {
    fires: row({ Tool: null }),
    inside: row({}),
    severity: "ok",
    facts: { tool: expect.stringMatching(/^TM-M6/), for: "thread", thread: expect.stringMatching(/^M6/) },
    why: "a blank Tool is filled and said so",
  },
  "no-tool-fits": {
    fires: row({ Tool: null, "Start diameter": null, Thread: "M2", Depth: 3 }),
    inside: row({ Tool: null, "Start diameter": null, Thread: "M3", Depth: 4.5 }),
    severity: "stop",
    facts: {
      operation: "thread mill",
      thread: expect.stringMatching(/^M2/),
      material: STEEL.Material,
      misses: expect.arrayContaining([["too large", above(0)]]),
    },
    why: "the smallest listed thread mill is 2 mm: it does not enter the hole of M2",
  },
  "list-thread-feed-blank": {
    fires: { row: M6, material: { "Thread feed [% of diameter]": null } },
    inside: { row: M6 },
    severity: "ok",
    facts: { material: STEEL.Material, percent: 0.8 },
    why: "a list without the column is read with 0.8 % and the row says so",
  },
  "list-thread-speed-blank": {
    fires: { row: M6, material: { "Speed thread mill high [m/min]": null } },
    inside: { row: M6 },
    severity: "ok",
    facts: { material: STEEL.Material, factor: 0.75 },
    why: "a list without the columns is read with three quarters of the end mill's speed and the row says so",
  },
  "chip-too-thick": [
    {
      // centre = edge·(6.063 − 4.2)/6.063, largest chip at an engagement beyond 79°: 0.302 of the edge's feed; list 0.0198
      fires: row({ "Feed per tooth": 0.073 }),
      inside: row({ "Feed per tooth": 0.0715 }),
      severity: "check",
      facts: {
        value: about(0.302 * 0.073, 3),
        limit: about(1.1 * 0.0198),
        listed: about(0.0198),
        would: about(0.0198 / 0.302, 3),
      },
      why: "a chip over 1.1 times the listed one",
    },
    {
      fires: row({ "Feed per tooth": 0.132 }),
      inside: row({ "Feed per tooth": 0.07 }),
      severity: "stop",
      facts: {
        value: about(0.302 * 0.132, 3),
        limit: about(2 * 0.0198),
        listed: about(0.0198),
        would: about(0.0198 / 0.302, 3),
      },
      why: "a chip over twice the listed one",
    },
  ],
  "chip-too-thin": [
    {
      fires: row({ "Feed per tooth": 0.0118 }),
      inside: row({ "Feed per tooth": 0.012 }),
      severity: "ok",
      facts: { value: about(0.151 * 0.0118, 4), limit: about(0.0018), flank: true },
      why: "half of 0.302 of the feed at the flank against 0.3 × 0.006: a note, few shops know the edge radius",
    },
    {
      fires: row({ "Feed per tooth": 0.0058 }),
      inside: row({ "Feed per tooth": 0.012 }),
      severity: "check",
      facts: { value: about(0.151 * 0.0058, 4), limit: about(0.0009), flank: true },
      why: "under half of that it rubs",
    },
  ],
  "feed-by-strength": {
    fires: { row: QT, tool: { "Neck diameter": 2.38 } },
    inside: { row: QT, tool: { "Neck diameter": 2.43 } },
    severity: "ok",
    facts: { value: above(0), centre: above(0) },
    why: "stress goes with 1/d³: a thinner neck stands a third of 3500 MPa only at a lower feed",
  },
  "tool-stress": {
    fires: { row: QT, tool: { "Neck diameter": 2.1 } },
    inside: { row: QT, tool: { "Neck diameter": 2.2 } },
    severity: "check",
    facts: { value: above(3500 / 3), limit: about(3500 / 3), nominal: below(3500 / 3) },
    why: "where the chip is as thin as the edge cuts, no lower feed helps",
  },
  "runout-idle": {
    fires: tool({ Runout: 0.0097 }),
    inside: tool({ Runout: 0.0095 }),
    severity: "ok",
    facts: { value: about(0.0101 - 0.0097 * Math.sin(Math.PI / 3), 4), limit: above(0), runout: 0.0097 },
    why: "0.0101 − 0.0097·sin 60° is under half the least chip on the flank, 0.0018",
  },
  "runout-thick": [
    {
      fires: tool({ Runout: 0.016 }),
      inside: tool({ Runout: 0.0155 }),
      severity: "ok",
      facts: {
        value: about(0.0101 + 0.016 * Math.sin(Math.PI / 3), 3),
        limit: about(1.2 * 0.0198),
        even: about(0.0101, 3),
        runout: 0.016,
      },
      why: "0.0101 + 0.016·sin 60° is over 1.2 × 0.0198",
    },
    {
      fires: tool({ Runout: 0.0227 }),
      inside: tool({ Runout: 0.0155 }),
      severity: "check",
      facts: {
        value: about(0.0101 + 0.0227 * Math.sin(Math.PI / 3), 3),
        limit: about(1.5 * 0.0198),
        even: about(0.0101, 3),
        runout: 0.0227,
      },
      why: "0.0101 + 0.0227·sin 60° is over 1.5 × 0.0198",
    },
  ],
};
