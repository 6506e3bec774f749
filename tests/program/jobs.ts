/** Six jobs of the invented shop: their rows, and the cuts that are right for them. */
import type { Place } from "./post.ts";
import { arcCut, holeCut, lineCut, planned, type RowCells, roundCut, threadCut } from "./shop.ts";
import type { Cut } from "./writer.ts";

const ROW3: Place[] = [
  [10, 10],
  [40, 10],
  [70, 10],
];
const ROW4: Place[] = [
  [-20, -20],
  [20, -20],
  [20, 20],
  [-20, 20],
];
const STEEL = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" };
const ALU = { Units: "mm", Material: "Cast aluminium AlSi10Mg (EN AC-43000)", Machine: "Centre V4" };
const PLATE = { Units: "in", Material: "Aluminium EN AW-6082 T6 (AA 6061)", Machine: "Small centre S5" };
const VALVE = { Units: "in", Material: "Stainless X2CrNiMo17-12-2 (AISI 316L)", Machine: "Centre V4" };
const FLANGE = { Units: "mm", Material: "Steel 42CrMo4 QT (AISI 4140)", Machine: "Centre V3" };

export interface JobOf {
  readonly name: string;
  readonly rows: readonly RowCells[];
  cuts(): Cut[];
}

/** Tap holes, their threads in two passes and a spring pass, and a bearing seat. */
export const HOUSING: JobOf = {
  name: "housing",
  rows: [
    { Row: 10, ...ALU, Operation: "drill", Quantity: 3, Tool: "D-6.8C", Thread: "M8", Depth: 24, Through: "no" },
    {
      ...{ Row: 20, ...ALU, Operation: "thread mill", Quantity: 3, Tool: "TM-M8-S", Thread: "M8" },
      ...{ "Start diameter": 6.8, Depth: 16, "Hole depth": 24, Passes: 2, "Spring passes": 1 },
    },
    {
      ...{ Row: 30, ...ALU, Operation: "bore", Quantity: 1, Tool: "EM-12-3", "Start diameter": 39.4 },
      ...{ "Finish diameter": 40, Depth: 22, "Size tolerance": 0.06 },
    },
  ],
  cuts() {
    const [a, b, c] = planned(this.rows);
    return [
      holeCut(1, this.rows[0]!, a!, "drill", ROW3),
      threadCut(2, this.rows[1]!, b!, 1.25, true, ROW3),
      roundCut(3, this.rows[2]!, c!, [[100, 50]], 1, 0),
    ];
  },
};

/** Inch: facing, tap holes, threads, a seat from solid. */
export const MANIFOLD: JobOf = {
  name: "manifold plate",
  rows: [
    { Row: "A", ...PLATE, Operation: "face", Tool: "FM-2in-5", Length: 8, "Radial depth": 1.5, "Axial depth": 0.04 },
    { Row: "B", ...PLATE, Operation: "drill", Quantity: 4, Tool: "D-#7C", Thread: "1/4-20 UNC-2B", Depth: 0.75 },
    {
      ...{ Row: "C", ...PLATE, Operation: "thread mill", Quantity: 4, Tool: "TM-14-S", Thread: "1/4-20 UNC-2B" },
      ...{ "Start diameter": 0.201, Depth: 0.5, "Hole depth": 0.75 },
    },
    {
      ...{ Row: "D", ...PLATE, Operation: "bore", Tool: "EM-3/8-3", "Start diameter": 0, "Finish diameter": 0.625 },
      ...{ Depth: 0.5, "Size tolerance": 0.02 },
    },
  ],
  cuts() {
    const [a, b, c, d] = planned(this.rows);
    // from solid: 3 degrees of ramp on the first circle, at most a quarter of the cutter a turn
    const fall = Math.min(2 * Math.PI * 3.175 * Math.tan((3 * Math.PI) / 180), 0.25 * 9.525);
    return [
      lineCut(1, this.rows[0]!, a!, 1),
      holeCut(2, this.rows[1]!, b!, "drill", ROW4),
      threadCut(3, this.rows[2]!, c!, 1.27, true, ROW4),
      roundCut(4, this.rows[3]!, d!, [[60, 0]], 1, fall),
    ];
  },
};

/** Outside: a thread on a boss, the boss itself, a rounded end. */
export const LOCK_RING: JobOf = {
  name: "lock ring",
  rows: [
    {
      ...{ Row: 1, ...FLANGE, Operation: "boss", Tool: "EM-16-4", "Start diameter": 31, "Finish diameter": 30 },
      ...{ Depth: 10, "Size tolerance": 0.2 },
    },
    {
      ...{ Row: 2, ...FLANGE, Operation: "thread mill", Tool: "TM-M16-S", Thread: "M20x1.5-6g" },
      ...{ "Start diameter": 19.8, Depth: 15 },
    },
    {
      ...{ Row: 3, ...STEEL, Operation: "side", Tool: "EM-12-4", Side: "outside", "Finish diameter": 40 },
      ...{ Length: 50, Depth: 12, "Radial depth": 0.4, "Size tolerance": 0.2 },
    },
  ],
  cuts() {
    const [a, b, c] = planned(this.rows);
    return [
      roundCut(1, this.rows[0]!, a!, [[0, 0]], 1, 0),
      threadCut(2, this.rows[1]!, b!, 1.5, false, [[80, 0]]),
      arcCut(3, this.rows[2]!, c!),
    ];
  },
};

/** Left hand and conventional, inch stainless, with spring passes. */
export const BONNET: JobOf = {
  name: "bonnet",
  rows: [
    {
      ...{ Row: 1, ...VALVE, Operation: "thread mill", Quantity: 4, Tool: "TM-38-S", Thread: "3/8-16 UNC-2B LH" },
      ...{ "Start diameter": 0.3125, Depth: 0.5, "Hole depth": 0.9, "Spring passes": 2 },
    },
    {
      ...{ Row: 2, ...VALVE, Operation: "thread mill", Tool: "TM-12-S", Thread: "1/2-13 UNC-2B", Way: "conventional" },
      ...{ "Start diameter": "27/64", Depth: 1, "Hole depth": 1.3 },
    },
    {
      ...{ Row: 3, ...VALVE, Operation: "bore", Tool: "EM-1/2-4", "Start diameter": 1.2, "Finish diameter": 1.23 },
      ...{ Depth: 0.4, Way: "conventional", "Size tolerance": 0.01 },
    },
  ],
  cuts() {
    const [a, b, c] = planned(this.rows);
    return [
      threadCut(1, this.rows[0]!, a!, 25.4 / 16, true, ROW4),
      threadCut(2, this.rows[1]!, b!, 25.4 / 13, true, [[0, 60]]),
      roundCut(3, this.rows[2]!, c!, [[0, 0]], 1, 0),
    ];
  },
};

/** A full-profile cutter, one level and two; a tap and a reamer, a countersink. */
export const COVER: JobOf = {
  name: "cover",
  rows: [
    {
      ...{ Row: 1, ...ALU, Operation: "thread mill", Quantity: 3, Tool: "TM-M8x1.25-F", Thread: "M8" },
      ...{ "Start diameter": 6.8, Depth: 15, "Hole depth": 24 },
    },
    {
      ...{ Row: 2, ...ALU, Operation: "thread mill", Tool: "TM-M10x1.5-F", Thread: "M10" },
      ...{ "Start diameter": 8.5, Depth: 23, "Hole depth": 30 },
    },
    { Row: 3, ...ALU, Operation: "tap", Quantity: 3, Thread: "M5", Depth: 10 },
    { Row: 4, ...ALU, Operation: "ream", Quantity: 2, "Finish diameter": 8, Depth: 20 },
    { Row: 5, ...ALU, Operation: "countersink", Quantity: 4, "Finish diameter": 9, Depth: 4.5 },
  ],
  cuts() {
    const [a, b, c, d, e] = planned(this.rows);
    const two = threadCut(2, this.rows[1]!, b!, 1.5, true, [[90, 90]]);
    // the cutter is 21 long: the second level stands 14 pitches higher
    two.lows = [two.lows[0]!, two.lows[0]! + 21];
    return [
      threadCut(1, this.rows[0]!, a!, 1.25, true, ROW3),
      two,
      holeCut(3, this.rows[2]!, c!, "tap", [
        [0, 40],
        [10, 40],
        [20, 40],
      ]),
      holeCut(4, this.rows[3]!, d!, "ream", [
        [0, 60],
        [30, 60],
      ]),
      holeCut(5, this.rows[4]!, e!, "countersink", ROW4),
    ];
  },
};

/** Slot in levels, a straight wall, a seat with two levels of counterbore over a bore, a through hole. */
export const BRACKET: JobOf = {
  name: "bracket",
  rows: [
    { Row: 1, ...STEEL, Operation: "slot", Tool: "EM-8-4", Length: 60, Depth: 6, "Axial depth": 2 },
    {
      ...{ Row: 2, ...STEEL, Operation: "side", Tool: "EM-16-4", Length: 90, Depth: 20, "Radial depth": 0.5 },
      ...{ "Size tolerance": 0.2 },
    },
    {
      ...{ Row: 3, ...STEEL, Operation: "bore", Tool: "EM-10-4", "Start diameter": 19, "Finish diameter": 20 },
      ...{ Depth: 16, "Axial depth": 8, "Size tolerance": 0.1 },
    },
    {
      ...{ Row: 4, ...STEEL, Operation: "counterbore", Tool: "EM-10-4", "Start diameter": 20, "Finish diameter": 24 },
      ...{ Depth: 5, Passes: 2, "Size tolerance": 0.2 },
    },
    {
      Row: 5,
      ...STEEL,
      Operation: "drill",
      Quantity: 2,
      Tool: "D-9.0",
      "Finish diameter": 9,
      Depth: 20,
      Through: "yes",
    },
  ],
  cuts() {
    const [a, b, c, d, e] = planned(this.rows);
    return [
      lineCut(1, this.rows[0]!, a!, 3),
      lineCut(2, this.rows[1]!, b!, 1),
      // the same cutter makes both seats about one centre
      roundCut(3, this.rows[2]!, c!, [[30, 30]], 2, 0),
      roundCut(3, this.rows[3]!, d!, [[30, 30]], 1, 0),
      holeCut(4, this.rows[4]!, e!, "drill", [
        [5, 5],
        [55, 5],
      ]),
    ];
  },
};

export const JOBS: readonly JobOf[] = [HOUSING, MANIFOLD, LOCK_RING, BONNET, COVER, BRACKET];
