/** Rules of cuts, lists and tools' names. */
import { about, above, below, type RowCells, type Rules, STEEL } from "./rule.ts";

// Full slot with a 10 mm cutter in C45. List: feed 0.03 + (0.07 − 0.03)·4/6 = 0.05667; speed (120 + 190)/2 = 155, in a full slot
// × 0.5^0.25 = 0.8409: 130.3 m/min, 4149/min, 940 mm/min with four teeth.
const LISTED = 0.03 + (0.07 - 0.03) * (4 / 6);
const RPM = (1000 * 155 * 0.5 ** 0.25) / (10 * Math.PI);
const slot = { ...STEEL, Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60, "Axial depth": 4 };
// Bore from 28 to 30 with it: ae 1.45, sin φ 0.704, centre feed 0.0805; thin, so × 1.35: 6660/min, 2144 mm/min on a radius of 10.
const bore = {
  ...STEEL,
  Operation: "bore",
  Tool: "EM-10-4",
  "Start diameter": 28,
  "Finish diameter": 30,
  Depth: 10,
  Passes: 1,
};
const wall = { ...STEEL, Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60 };
const with12 = { ...slot, Tool: "EM-12-4" };
const full10 = { ...STEEL, Operation: "thread mill", Tool: "TM-M10x1.5-F", Thread: "M10" };
const MODES = "1243/2.92/0.0619; 1747/12/0.0288";
const pair = (base: RowCells, fires: RowCells, inside: RowCells) => ({
  fires: { row: { ...base, ...fires } },
  inside: { row: { ...base, ...inside } },
});
const machines = (row: RowCells, heading: string, fires: number, inside: number) => ({
  fires: { row, machine: { [heading]: fires } },
  inside: { row, machine: { [heading]: inside } },
});
const NO_FEEDS = Object.fromEntries([3, 6, 12, 20].map((d) => [`Feed ${d} mm [mm per tooth]`, null]));

export const cuts: Rules = {
  "no-speed": {
    ...pair(
      { ...slot, Material: "Hardened steel 50 HRC", "Axial depth": 0.5 },
      { Tool: "EM-12-4H" },
      { Tool: "EM-12-4H", "Surface speed": 10 },
    ),
    severity: "stop",
    facts: { material: "Hardened steel 50 HRC", hss: true },
    why: "the list has no speed for high-speed steel in hardened steel; a typed one does",
  },
  "no-feed": {
    fires: { row: slot, material: NO_FEEDS },
    inside: { row: { ...slot, "Feed per tooth": 0.05 }, material: NO_FEEDS },
    severity: "stop",
    facts: { material: STEEL.Material },
    why: "neither list nor row tells a feed",
  },
  "list-insert-blank": {
    fires: {
      row: { ...STEEL, Operation: "face", Tool: "FM-40-4", "Axial depth": 1, Length: 100 },
      material: { "Feed insert [mm per tooth]": null },
    },
    inside: { row: { ...STEEL, Operation: "face", Tool: "FM-40-4", "Axial depth": 1, Length: 100 } },
    severity: "ok",
    facts: { material: STEEL.Material, factor: 2 },
    why: "a list without the column falls back to a stated factor, said in the row",
  },
  "speed-under-machine": {
    ...machines(slot, "Min rpm", 4180, 4140),
    severity: "check",
    facts: { value: 4180, limit: about(RPM) },
    why: "4149/min is wanted",
  },
  "speed-over-material": {
    ...pair(slot, { "Surface speed": 160 }, { "Surface speed": 159.5 }),
    severity: "check",
    facts: { value: about(160), limit: about(190 * 0.5 ** 0.25) },
    why: "190 m/min is the top of the list, 159.8 in a full slot",
  },
  "speed-capped": {
    ...pair(slot, { "Max rpm": 4140 }, { "Max rpm": 4160 }),
    severity: "ok",
    facts: { value: about(RPM), limit: 4140, by: "row" },
    why: "4149/min is wanted",
  },
  "feed-capped": {
    ...machines({ ...slot, "Feed per tooth": 0.05 }, "Max feed [m/min]", 0.82, 0.84),
    severity: "check",
    facts: { value: about(4 * 0.05 * RPM), limit: about(820) },
    why: "4 × 0.05 × 4149 = 830 mm/min were typed",
  },
  "feed-not-reached": {
    // 0.1 at the edge is 0.0667 at the centre: 1777 mm/min = 29.6 mm/s; v²/r = 87.7 mm/s²
    ...machines({ ...bore, "Feed per tooth": 0.1 }, "Acceleration [m/s²]", 0.086, 0.089),
    severity: "check",
    facts: {
      value: about((4 * 0.1 * (20 / 30) * 1000 * 1.35 * 155) / (10 * Math.PI)),
      limit: about(60 * Math.sqrt(86 * 10)),
    },
    why: "a typed feed that the axes do not reach on a radius of 10 mm",
  },
  "feed-held": [
    {
      ...machines(slot, "Max feed [m/min]", 0.93, 0.95),
      severity: "ok",
      facts: { value: about(4 * LISTED * RPM), limit: about(930), by: "machine" },
      why: "940 mm/min are wanted; a chosen feed is held, and that is said",
    },
    {
      // 2144 mm/min = 35.7 mm/s; v²/r = 127.7 mm/s²
      ...machines(bore, "Acceleration [m/s²]", 0.126, 0.13),
      severity: "ok",
      facts: { value: about(2144, -1), limit: about(60 * Math.sqrt(126 * 10)), by: "arc" },
      why: "a chosen feed is what the axes reach",
    },
  ],
  "feed-for-spindle": {
    ...machines(slot, "Torque [N·m]", 4.4, 9),
    near: 0.6,
    severity: "ok",
    facts: { value: below(LISTED), limit: about(LISTED) },
    why: "a chosen feed is what the spindle drives",
  },
  "chip-too-thin": [
    {
      // least chip 0.3 × 0.008 = 0.0024
      ...pair(slot, { "Feed per tooth": 0.0011 }, { "Feed per tooth": 0.00241 }),
      severity: "check",
      facts: { value: about(0.0011), limit: about(0.0012), flank: false },
      why: "under half of the least chip an edge rubs, whatever its radius is to a micrometre or two",
    },
    {
      ...pair(slot, { "Feed per tooth": 0.00239 }, { "Feed per tooth": 0.00241 }),
      severity: "ok",
      facts: { value: about(0.00239), limit: about(0.0024), flank: false },
      why: "between half of it and the whole a note: few shops know the edge radius",
    },
  ],
  "chip-too-thick": [
    {
      ...pair(slot, { "Feed per tooth": 0.0624 }, { "Feed per tooth": 0.0623 }),
      severity: "check",
      facts: { value: about(0.0624), limit: about(1.1 * LISTED), listed: about(LISTED), would: about(LISTED) },
      why: "1.1 × 0.05667 = 0.06233",
    },
    {
      ...pair(slot, { "Feed per tooth": 0.1134 }, { "Feed per tooth": 0.0623 }),
      severity: "stop",
      facts: { value: about(0.1134), limit: about(2 * LISTED), listed: about(LISTED), would: about(LISTED) },
      why: "twice the list's chip breaks edges",
    },
  ],
  "chip-under-list": [
    {
      ...pair(slot, { "Feed per tooth": 0.0283 }, { "Feed per tooth": 0.0284 }),
      severity: "ok",
      facts: { value: about(0.0283), limit: about(LISTED / 2), by: "row" },
      why: "half of 0.05667 is 0.02833",
    },
    {
      ...pair(wall, { "Radial depth": 0.0695 }, { "Radial depth": 0.0705 }),
      severity: "ok",
      facts: { value: about(3 * LISTED * Math.sqrt(1 - (1 - 0.0695 / 5) ** 2)), limit: about(LISTED / 2), by: "tooth" },
      why: "three times the list at the centre: sin φ = 1/6 at ae = 0.0699",
    },
    {
      ...pair({ ...wall, "Size tolerance": 0.1 }, { "Radial depth": 0.383 }, { "Radial depth": 0.388 }),
      severity: "ok",
      facts: {
        value: about(1.3 * LISTED * Math.sqrt(1 - (1 - 0.383 / 5) ** 2)),
        limit: about(LISTED / 2),
        by: "finish",
      },
      why: "a finishing cut takes 1.3 times the list: sin φ = 0.3846 at ae = 0.3846",
    },
    {
      ...pair(
        bore,
        { "Start diameter": 0, "Finish diameter": 11.99 },
        { "Start diameter": 0, "Finish diameter": 12.01 },
      ),
      severity: "ok",
      facts: { value: about((3 * LISTED * 1.99) / 11.99), limit: about(LISTED / 2), by: "edge" },
      why: "three times the list at the edge, which in 12 mm runs six times the centre of a 10 mm cutter",
    },
    {
      ...machines(slot, "Max feed [m/min]", 0.468, 0.472),
      severity: "ok",
      facts: { value: about(468 / 4 / RPM), limit: about(LISTED / 2), by: "feed" },
      why: "half of 940 mm/min",
    },
    {
      // 17.87 mm/s; v²/r = 31.9 mm/s²
      ...machines(bore, "Acceleration [m/s²]", 0.0315, 0.0325),
      severity: "ok",
      facts: { value: below(LISTED / 2), limit: about(LISTED / 2), by: "arc" },
      why: "half of what the chip wants is all that the axes reach",
    },
  ],
  chatter: [
    {
      ...pair(with12, { Depth: 4.9, "Axial depth": 4.9 }, { Depth: 4.4, "Axial depth": 4.4 }),
      severity: "check",
      facts: { value: about(4.9), limit: below(4.9), allows: above(0), nominal: above(0), measured: false },
      why: "a hundred times the depth that a plain holder allows at every speed",
    },
    {
      fires: { row: { ...with12, "Axial depth": 0.1 }, tool: { "Tip modes x": MODES } },
      inside: { row: { ...with12, "Axial depth": 0.09 }, tool: { "Tip modes x": MODES } },
      severity: "check",
      facts: { value: about(0.1), limit: below(0.1), allows: below(0.1), nominal: below(0.1), measured: true },
      why: "with measured modes their own limit counts",
    },
    {
      fires: { row: { ...with12, "Axial depth": 0.1 }, tool: { "Tip modes x": MODES, "Tip modes on": "Centre V3" } },
      inside: { row: { ...with12, "Axial depth": 0.1 }, tool: { "Tip modes x": MODES, "Tip modes on": "Centre V4" } },
      severity: "check",
      facts: { value: about(0.1), limit: below(0.1), allows: below(0.1), nominal: below(0.1), measured: true },
      why: "modes count on the machine they were measured on",
    },
    {
      // eleven profiles of 1.08 mm in one pass against ten
      ...pair({ ...full10, Passes: 1 }, { Depth: 16.5 }, { Depth: 15 }),
      severity: "check",
      facts: {
        value: about(11 * 1.08, 1),
        limit: below(11 * 1.09),
        allows: above(0),
        nominal: above(0),
        measured: false,
        profiles: 11,
      },
      why: "a full-profile thread mill cuts as wide as all its profiles together",
    },
    {
      ...pair({ ...full10, Depth: 16.5 }, { Passes: 1 }, {}),
      severity: "check",
      facts: {
        value: about(11 * 1.08, 1),
        limit: below(11 * 1.09),
        allows: above(0),
        nominal: above(0),
        measured: false,
        profiles: 11,
      },
      why: "a row that chooses its passes takes more of them, as shops do with full-profile cutters in steel",
    },
    {
      ...pair({ ...slot, Tool: "EM-12-4", "Axial depth": null, Depth: 12 }, { "Axial depth": 6 }, {}),
      severity: "check",
      near: 0.3,
      facts: { value: about(6), limit: below(6), allows: above(0), nominal: above(0), measured: false },
      why: "steps that a row chooses are not ones that it then calls likely to chatter",
    },
  ],
  "tip-modes-unreadable": {
    fires: { row: with12, tool: { "Tip modes x": "1243/2.92" } },
    inside: { row: with12, tool: { "Tip modes x": "1243 / 2.92 / 0.0619", "Tip modes y": MODES } },
    severity: "check",
    facts: { tool: "EM-12-4", text: "1243/2.92" },
    why: "a mode is a frequency, a stiffness and a damping",
  },
};
