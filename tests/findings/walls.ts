/** Rules of walls: what fits, room for chips, surface. */
import { about, above, type RowCells, type Rules, STEEL } from "./rule.ts";

const ALUMINIUM = { Units: "mm", Material: "Aluminium EN AW-6082 T6 (AA 6061)", Machine: "Centre V4" } as const;
const side = { ...STEEL, Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 2 };
const slot = { ...STEEL, Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 };
const soft = { ...ALUMINIUM, Operation: "slot", Tool: "EM-10-4", Depth: 5, Length: 60, "Axial depth": 5 };
const bore = {
  ...STEEL,
  Operation: "bore",
  Tool: "EM-10-4",
  "Start diameter": 20,
  "Finish diameter": 22,
  Depth: 10,
};
const face = {
  ...STEEL,
  Operation: "face",
  Tool: "FM-40-4",
  "Axial depth": 1.5,
  "Radial depth": 30,
  Length: 120,
};
const pair = (base: RowCells, fires: RowCells, inside: RowCells) => ({
  fires: { row: { ...base, ...fires } },
  inside: { row: { ...base, ...inside } },
});

const roughing = {
  ...STEEL,
  Row: 1,
  Operation: "bore",
  Tool: "EM-12-4",
  "Start diameter": 24,
  "Finish diameter": 29,
  Depth: 20,
};
const finishing = { ...roughing, Row: 2, "Start diameter": 29, "Finish diameter": 30, "Size tolerance": 0.1 };

export const walls: Rules = {
  "cutter-too-large": [
    {
      ...pair(bore, { "Start diameter": 0, "Finish diameter": 10 }, { "Start diameter": 0, "Finish diameter": 10.1 }),
      severity: "stop",
      facts: { value: 10, limit: 10, into: "bore" },
      why: "a cutter that fills the bore has no circle to run on",
    },
    {
      ...pair(
        side,
        { Side: "inside", "Finish diameter": 10, "Radial depth": 0.2 },
        { Side: "inside", "Finish diameter": 10.1, "Radial depth": 0.2 },
      ),
      severity: "stop",
      facts: { value: 10, limit: 10, into: "arc" },
      why: "the same in an arc",
    },
    {
      ...pair(slot, { "Finish diameter": 9.9 }, { "Finish diameter": 10 }),
      severity: "stop",
      facts: { value: 10, limit: 9.9, into: "slot" },
      why: "a slot is no narrower than its cutter",
    },
    {
      ...pair(slot, { "Total width": 9.9 }, { "Total width": 10 }),
      severity: "stop",
      facts: { value: 10, limit: 9.9, into: "slot" },
      why: "the same by its own column",
    },
    {
      ...pair(side, { "Inside corner": 4.9 }, { "Inside corner": 5 }),
      severity: "stop",
      facts: { value: 10, limit: about(9.8), into: "arc" },
      why: "a corner is no tighter than the cutter's radius",
    },
  ],
  "slot-widened": [
    {
      ...pair(slot, { "Total width": 10.1 }, { "Total width": 10 }),
      severity: "ok",
      facts: { value: 10.1, limit: 10, passes: 2, step: about(0.05) },
      why: "a slot wider than the cutter wants its walls cut after the middle; one as wide is made by the cutter",
    },
    {
      ...pair(slot, { "Total width": 10.1, "Size tolerance": 0.2 }, { "Total width": 10, "Size tolerance": 0.2 }),
      severity: "check",
      facts: { value: 10.1, limit: 10, passes: 2, step: about(0.05) },
      why: "the walls of a widened slot are made by passes whose bending is not worked out",
    },
  ],
  "cutter-short": {
    ...pair(side, { Depth: 22.1 }, { Depth: 22 }),
    severity: "stop",
    facts: { value: 22.1, limit: 22 },
    why: "flutes of 22 mm in the list, no neck",
  },
  "no-stock": [
    {
      ...pair(bore, { "Start diameter": 22 }, { "Start diameter": 21.9 }),
      severity: "stop",
      facts: { value: 22, limit: 22 },
      why: "a bore is larger than the hole before it",
    },
    {
      ...pair({ ...bore, Operation: "boss" }, { "Start diameter": 22 }, { "Start diameter": 22.1 }),
      severity: "stop",
      facts: { value: 22, limit: 22 },
      why: "a boss is smaller than the blank before it",
    },
  ],
  "radial-over-diameter": [
    {
      ...pair(side, { "Radial depth": 10.1 }, { "Radial depth": 10 }),
      severity: "stop",
      facts: { value: 10.1, limit: 10, operation: "side" },
      why: "a cutter of 10 mm is 10 mm wide",
    },
    {
      ...pair(slot, { "Radial depth": 10.1 }, { "Radial depth": 10 }),
      severity: "stop",
      facts: { value: 10.1, limit: 10, operation: "slot" },
      why: "the same in a slot",
    },
  ],
  "stock-handed": {
    // 0.055 mm a side is left of the rough bore, or 0.045; a tenth of the finishing stock is 0.05
    fires: { row: finishing, above: { ...roughing, Measured: 28.89 } },
    inside: { row: finishing, above: { ...roughing, Measured: 28.91 } },
    severity: "ok",
    facts: { value: about(0.055), limit: about(0.05), row: 1, stock: about(0.5) },
    why: "the finishing cut meets what bending left in the row that roughs its wall",
  },
  "arc-length": {
    ...pair(
      side,
      { Side: "outside", "Finish diameter": 40, Length: null },
      { Side: "outside", "Finish diameter": 40, Length: 1 },
    ),
    severity: "ok",
    facts: {},
    why: "an arc without a length is timed as a full circle, and said",
  },
  "too-many-passes": [
    {
      ...pair(bore, { "Radial depth": 0.00497 }, { "Radial depth": 0.005 }),
      severity: "stop",
      facts: { value: 202, limit: 200 },
      why: "1 mm a side in steps of 0.005 are 200 passes, the most",
    },
    {
      ...pair(
        { ...STEEL, Operation: "slot", Tool: "EM-12-3", Depth: 4, Length: 60, "Radial depth": 1 },
        { "Total width": 210.1 },
        { "Total width": 210 },
      ),
      severity: "stop",
      facts: { value: 201, limit: 200 },
      why: "a slot of 210 mm takes one pass of 12 down the middle and 99 of 1 mm on each wall: 199; a hair more takes two more",
    },
    {
      ...pair(
        { ...STEEL, Operation: "face", Tool: "FM-40-4", "Axial depth": 1, Length: 100, "Radial depth": 1 },
        { "Total width": 200.5 },
        { "Total width": 200 },
      ),
      severity: "stop",
      facts: { value: 201, limit: 200 },
      why: "a face of 200 mm takes 200 strips of 1 mm, the most",
    },
  ],
  "slot-too-deep": [
    {
      ...pair(soft, { Depth: 5.1, "Axial depth": 5.1 }, {}),
      severity: "check",
      facts: { value: about(5.1), limit: about(5), teeth: 4, coolant: "flood" },
      why: "four flutes in aluminium: half a diameter a step (common practice)",
    },
    {
      ...pair(soft, { Depth: 10.1, "Axial depth": 10.1 }, {}),
      severity: "stop",
      facts: { value: about(10.1), limit: about(10), teeth: 4, coolant: "flood" },
      why: "double of that packs",
    },
    {
      ...pair(
        soft,
        { Tool: "EM-12-3", Depth: 12.1, "Axial depth": 12.1 },
        { Tool: "EM-12-3", Depth: 12, "Axial depth": 12 },
      ),
      severity: "check",
      facts: { value: about(12.1), limit: about(12), teeth: 3, coolant: "flood" },
      why: "three flutes: a diameter",
    },
    {
      ...pair(slot, { Depth: 5.1, "Axial depth": 5.1, Coolant: "dry" }, { Depth: 5.1, "Axial depth": 5.1 }),
      severity: "check",
      facts: { value: about(5.1), limit: about(5), teeth: 4, coolant: "dry" },
      why: "dry, half of the diameter that coolant clears in steel",
    },
  ],
  "gullet-full": {
    // (π/4)·(10² − 6²)/4/2 = 6.28 mm² a flute; 8 × the chip's 10 mm × feed
    ...pair(soft, { "Feed per tooth": 0.0786 }, { "Feed per tooth": 0.0785 }),
    severity: "check",
    facts: { value: about((8 * 10 * 0.0786) / ((Math.PI / 32) * 64), 3), limit: 1, teeth: 4 },
    why: "the loose chip of a tooth takes eight times its volume in aluminium (common practice)",
  },
  roughness: [
    {
      // one tooth of four makes the wall where runout is 0.01: 0.4²/(8·5·(1 − 0.4/31.4)²)
      ...pair(
        { ...side, "Feed per tooth": 0.1 },
        { Roughness: (1000 * 0.16) / 40 },
        { Roughness: (1.03 * 1000 * 0.16) / 40 },
      ),
      severity: "check",
      facts: { value: above(4), limit: 4, of: "wall" },
      why: "the feed per turn over the radius (Martellotti)",
    },
    {
      // level teeth leave 0.1²/(8·0.8) = 1.5625 µm; runout of an insert's corner makes more of it
      fires: { row: { ...face, "Feed per tooth": 0.1, Roughness: 1.56 }, tool: { Runout: 0 } },
      inside: { row: { ...face, "Feed per tooth": 0.1, Roughness: 1.57 }, tool: { Runout: 0 } },
      severity: "check",
      facts: { value: about(1.5625, 3), limit: 1.56, of: "floor" },
      why: "f²/8r, printed in every handbook",
    },
  ],
};
