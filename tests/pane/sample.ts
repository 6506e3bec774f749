/**
 * A made-up row of Harrow Lane Machine Works, as a plan would come out; the numbers only have to look like numbers.
 * Tests of the trade are elsewhere: here only what the pane makes of a plan is looked at.
 */
import type { RowPlan } from "../../src/words/worded.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import type { Planner } from "../../taskpane/work/types.ts";

export const PLAN_SHEET: CellValue[][] = [
  ["Harrow Lane Machine Works", null, null],
  [],
  [
    "Op",
    "Callout",
    "Operation",
    "Units",
    "Matl",
    "Machine",
    "Cutter",
    "Thread",
    "Depth",
    "Dia",
    "RPM",
    "Table feed",
    "Inspector",
  ],
  [
    10,
    "Manifold port",
    "thread mill",
    "mm",
    "Alloy steel, hardened",
    "Bay 3",
    "TM 7.5 long neck",
    "M12x1.75-6H",
    24,
    null,
    null,
    null,
    "A. Hale",
  ],
  [20, "Dowel", "drill", "in", "Alloy steel, hardened", "Bay 3", null, null, 0.75, 0.25, null, null, "A. Hale"],
  [30, null, null, null, null, null, null, null, null, null, null, null, null],
];

export const LISTS = {
  Materials: [
    ["Material", "Group"],
    ["Alloy steel, hardened", "H"],
  ] as CellValue[][],
  Tools: [
    ["Tool", "Kind"],
    ["TM 7.5 long neck", "thread mill single"],
  ] as CellValue[][],
  Machines: [
    ["Machine", "Max rpm"],
    ["Bay 3", 12000],
  ] as CellValue[][],
};

export const THREAD_PLAN: RowPlan = {
  row: 10,
  operation: "thread mill",
  units: "mm",
  verdict: "check",
  findings: [],
  plain: {},
  reasons: [
    {
      code: "deflection-high",
      severity: "check",
      text: "The tip bends 0.031 mm, over its share of the tolerance, 0.025 mm.",
      wayOut: "One more pass, or 6 mm less stick-out.",
      value: 0.031,
      limit: 0.025,
      dimension: "length",
    },
    {
      code: "stick-out-long",
      severity: "check",
      text: "Stick-out is 5.2 × the shank diameter; over 4 × it is to be looked at.",
      wayOut: "Set the tool shorter: 34 mm clears this hole.",
    },
  ],
  limits: [
    {
      key: "deflection",
      name: "deflection",
      load: 1.24,
      value: 0.031,
      limit: 0.025,
      dimension: "length",
      band: [0.92, 1.55],
    },
    {
      key: "stress",
      name: "tool stress",
      load: 0.61,
      value: 710,
      limit: 1160,
      dimension: "stress",
      band: [0.48, 0.74],
    },
    { key: "power", name: "spindle power", load: 0.014, value: 0.21, limit: 15, dimension: "power" },
    { key: "spindleSpeed", name: "spindle speed", load: 0.21, value: 2546, limit: 12000 },
  ],
  binding: {
    key: "deflection",
    name: "deflection",
    load: 1.24,
    value: 0.031,
    limit: 0.025,
    dimension: "length",
    band: [0.92, 1.55],
  },
  results: {
    row: 10,
    verdict: "check",
    reasons: "The tip bends 0.031 mm, over its share of the tolerance, 0.025 mm.",
    limit: "deflection",
    load: 1.55,
    tool: "TM 7.5 long neck",
    startDiameter: 10.25,
    drill: "10.2 mm",
    spindleSpeed: 2546.479,
    surfaceSpeed: 60,
    tableFeed: 98.217,
    feedPerTooth: 0.0321,
    passes: 3,
    springPasses: 1,
    depths: "0.54 · 0.77 · 0.94",
    pathRadius: 2.2934,
    startZ: -24,
    endZ: 1.75,
    direction: "bottom up, counter-clockwise",
    deflection: 0.031,
    timeEach: 41.2,
  },
  steps: [
    {
      key: "spindleSpeed",
      label: "Spindle speed",
      value: 2546.479,
      unit: "1/min",
      formula: "n = 1000·vc/(π·D)",
      cell: '=CUT.RPM(60,7.5,"mm")',
      source: "COMMON",
    },
    {
      key: "pathRadius",
      label: "Path radius",
      value: 2.2934,
      dimension: "length",
      formula: "r = D2/2 + … − Dc/2",
      cell: '=CUT.THREADPATH("M12x1.75-6H",7.5,0.1,"mm")',
      source: "MH",
    },
    {
      key: "depths",
      label: "Radial depth after each pass",
      value: "0.54 · 0.77 · 0.94",
      formula: "equal area each",
      cell: '=CUT.THREADPASSES("M12x1.75-6H",10.25,0.1,3,"mm")',
      source: "COMMON",
    },
    {
      key: "force",
      label: "Tangential force",
      value: 132.4,
      dimension: "force",
      formula: "F = kc·A",
      source: "COMMON",
    },
  ],
  sketch: {
    kind: "thread mill",
    holeDiameter: 10.25,
    startDiameter: 10.25,
    depth: 24,
    through: false,
    pathRadius: 2.2934,
    inside: true,
    cutterDiameter: 7.5,
    tipFlat: 0.1,
    pitch: 1.75,
    depths: [0.54, 0.77, 0.94, 0.94],
    deflection: 0.031,
    tool: [
      { length: 27, diameter: 4.8, part: "neck" },
      { length: 14, diameter: 8, part: "shank" },
    ],
  },
};

export const DRILL_PLAN: RowPlan = {
  row: 20,
  operation: "drill",
  units: "in",
  verdict: "ok",
  findings: [],
  plain: {},
  reasons: [],
  limits: [{ key: "torque", name: "spindle torque", load: 0.08, value: 2.4, limit: 30, dimension: "torque" }],
  binding: { key: "torque", name: "spindle torque", load: 0.08, value: 2.4, limit: 30, dimension: "torque" },
  results: {
    row: 20,
    verdict: "ok",
    reasons: "",
    tool: "Drill 1/4",
    drill: "1/4",
    spindleSpeed: 1528,
    tableFeed: 142.24,
    startDiameter: 6.35,
  },
  steps: [],
  sketch: {
    kind: "drill",
    holeDiameter: 6.35,
    depth: 19.05,
    through: true,
    cutterDiameter: 6.35,
    tool: [
      { length: 62, diameter: 6.35, part: "cutting part" },
      { length: 10, diameter: 6.35, part: "shank" },
    ],
  },
};

/** Answers by the Operation column, as the real one would: a line per row. */
export const samplePlanner: Planner = ({ rows }) => {
  const at = (rows[0] ?? []).indexOf("Operation");
  return rows.slice(1).map((cells) => {
    if (cells[at] === "thread mill") return THREAD_PLAN;
    return cells[at] === "drill" ? DRILL_PLAN : undefined;
  });
};
