/**
 * One invented job of Harrow Lane Machine Works: a pump housing, a bracket, a manifold plate, a valve body, a flange and a
 * hub, in inch and in metric. About a third of the rows are wrong in the ways that happen in shops, so that the plan shows
 * what it is for; the notes say what a skilled person expects of each row, and why. Nothing here is a real part.
 */
import { readTable } from "./table.ts";
import type { ListBlock } from "./types.ts";

const HEADINGS = [
  "Row",
  "Feature",
  "Operation",
  "Units",
  "Quantity",
  "Material",
  "Machine",
  "Tool",
  "Thread",
  "Start diameter",
  "Finish diameter",
  "Depth",
  "Through",
  "Hand",
  "Way",
  "Length",
  "Side",
  "Radial depth",
  "Axial depth",
  "Passes",
  "Spring passes",
  "Stick-out",
  "Surface speed",
  "Feed per tooth",
  "Max rpm",
  "Hole depth",
  "Batch",
  "Spacing",
  "Wear factor",
  "Measured",
  "Wear value",
  "Size tolerance",
  "Remark",
] as const;

type Heading = (typeof HEADINGS)[number];
type Cell = string | number | null;

/** What a skilled person expects of a row, in one sentence. */
export interface DemoNote {
  readonly expect: "ok" | "check" | "stop";
  readonly why: string;
}

interface DemoRow {
  readonly cells: readonly Cell[];
  readonly note: DemoNote;
}

/** Rows under their own headings; the last two columns are the note. A row's own cell beats the shared one. */
function demoRows(headings: readonly Heading[], shared: Partial<Record<Heading, Cell>>, text: string): DemoRow[] {
  return readTable(text).map((cells) => {
    const own = Object.fromEntries(headings.map((h, i) => [h, cells[i] ?? null])) as Partial<Record<Heading, Cell>>;
    const [expect, why] = cells.slice(-2) as [DemoNote["expect"], string];
    return { cells: HEADINGS.map((h) => own[h] ?? shared[h] ?? null), note: { expect, why } };
  });
}

const HOUSING = {
  Units: "mm",
  Material: "Cast aluminium AlSi10Mg (EN AC-43000)",
  Machine: "Centre V4",
  Batch: 40,
};
const BRACKET = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3", Batch: 12 };
const PLATE = { Units: "in", Material: "Aluminium EN AW-6082 T6 (AA 6061)", Machine: "Small centre S5", Batch: 25 };
const VALVE = { Units: "in", Material: "Stainless X2CrNiMo17-12-2 (AISI 316L)", Machine: "Centre V4", Batch: 10 };
const FLANGE = { Units: "mm", Material: "Steel 42CrMo4 QT (AISI 4140)", Machine: "Centre V3", Batch: 8 };
const HUB = { Units: "mm", Material: "Titanium Ti-6Al-4V (UNS R56400)", Machine: "Centre V4", Batch: 6 };

const DRILL = ["Row", "Feature", "Quantity", "Tool", "Thread", "Finish diameter", "Depth", "Through"] as const;
const THREAD = ["Row", "Feature", "Quantity", "Tool", "Thread", "Start diameter", "Depth", "Hole depth"] as const;
const BORE = ["Row", "Feature", "Tool", "Start diameter", "Finish diameter", "Depth", "Size tolerance"] as const;
const SLOT = ["Row", "Feature", "Tool", "Length", "Depth", "Axial depth"] as const;
const SIDE = [
  "Row",
  "Feature",
  "Tool",
  "Side",
  "Finish diameter",
  "Length",
  "Depth",
  "Radial depth",
  "Size tolerance",
] as const;
const FACE = ["Row", "Feature", "Tool", "Length", "Radial depth", "Axial depth"] as const;

const drill = { Operation: "drill" };
const mill = { Operation: "thread mill" };

const ROWS: readonly DemoRow[] = [
  // Pump housing
  ...demoRows(
    FACE,
    { ...HOUSING, Operation: "face" },
    `
    10 | Joint face | FM-50-5 | 320 | 38 | 2 | ok | light facing with a 45° cutter`,
  ),
  ...demoRows(
    BORE,
    { ...HOUSING, Operation: "bore", "Spring passes": 1 },
    `
    20 | Bearing seat, rough  | EM-12-3 | 0    | 39.4 | 22 | 0.3  | ok | helix from solid with a cutter a third of the bore
    30 | Bearing seat, finish | EM-12-3 | 39.4 | 40   | 22 | 0.06 | ok | 0.3 mm a side with a short stiff cutter`,
  ),
  ...demoRows(
    DRILL,
    { ...HOUSING, ...drill },
    `
    40 | Tap holes for cover screws | 8  | D-6.8C | M8 |     | 24 | no  | ok | the usual drill, carbide, under 4 × D
    50 | Clearance holes            | 10 | D-6.6  |    | 6.6 | 18 | yes | ok | plain through holes`,
  ),
  ...demoRows(
    THREAD,
    { ...HOUSING, ...mill },
    `
    60 | Cover screws             | 8 | TM-M8-S      | M8   | 6.8  | 16 | 24 | ok   | two diameters deep with a stout neck in aluminium
    70 | Cover screws, other side | 8 | TM-M8x1.25-F | M8   | 6.8  | 16 | 24 | ok   | full-profile cutter of the right pitch
    80 | Sensor boss              | 2 | TM-M10-S     | M10x1 | 9   | 12 | 16 | ok   | fine pitch in its own larger hole
    90 | Drain plug               | 1 | TM-M12-S     | G1/4 | 11.8 | 12 | 16 | stop | a 60° cutter cannot make a 55° pipe thread`,
  ),
  ...demoRows(
    SLOT,
    { ...HOUSING, Operation: "slot" },
    `
    100 | Seal groove | EM-4-4 | 210 | 3 | 1.5 | ok | shallow groove in two steps`,
  ),
  ...demoRows(
    SIDE,
    { ...HOUSING, Operation: "side" },
    `
    110 | Outer wall         | EM-16-4 | straight |    | 640 | 28 | 1.5 | 0.4 | ok   | short stiff cutter, open tolerance
    120 | Pocket corner R8   | EM-20-4 | inside   | 16 | 12  | 20 | 0.5 | 0.2 | stop | a 20 mm cutter does not go into a 16 mm arc
    130 | Pocket corner R13  | EM-10-4 | inside   | 26 | 20  | 18 | 0.3 | 0.2 | ok   | cutter well under the arc's diameter`,
  ),
  // Bracket
  ...demoRows(
    [...FACE, "Machine"],
    { ...BRACKET, Operation: "face" },
    `
    140 | Top face                  | FM-40-4 | 120 | 30 | 1.5 | Centre V3    | ok   | light facing in steel
    150 | Top face on the knee mill | FM-50-5 | 120 | 40 | 4   | Knee mill K1 | stop | more than 3 kW of cut on a 1.5 kW machine`,
  ),
  ...demoRows(
    DRILL,
    { ...BRACKET, ...drill },
    `
    160 | Tap holes                        | 4 | D-5.0  | M6       |   | 18 | no  | ok   | the usual drill, 75 to 80 % of thread
    170 | Dowel clearance                  | 2 | D-9.0  |          | 9 | 20 | yes | ok   | plain through hole
    180 | Tap holes for the adjuster       | 2 | D-8.5  | M10x1.25 |   | 22 | no  | stop | 8.5 is the drill of the coarse pitch: the hole is under the minor limit
    190 | Tap holes, depth left off        | 2 | D-5.0  | M6       |   |    | no  | stop | no depth: the row is incomplete`,
  ),
  ...demoRows(
    DRILL,
    { ...BRACKET, ...drill, Material: "Hardened steel 50 HRC" },
    `
    200 | Hardened insert, twist drill | 1 | D-5.0 | | 5 | 10 | yes | stop | high-speed steel does not drill 50 HRC`,
  ),
  ...demoRows(
    THREAD,
    { ...BRACKET, ...mill },
    `
    210 | Clamp screws             | 4 | TM-M6-S  | M6       | 5   | 12 | 18 | ok    | two diameters deep with the cutter bought for it
    220 | Clamp screws, other tool | 4 | TM-M6-SX | M6       | 5   | 12 | 18 | stop  | the thick neck rubs in the hole
    230 | Long screw, short neck   | 1 | TM-M6-S  | M6       | 5   | 24 | 30 | stop  | the neck is shorter than the thread is deep
    240 | Long screw, long neck    | 1 | TM-M6-SL | M6       | 5   | 24 | 30 | check | by hand: 20 N bend five diameters of 2.8 mm neck by 0.1 mm: the first one comes 0.2 mm small, can be cut again, and wants a wear value
    250 | Adjuster                 | 2 | TM-M10-S | M10x1.25 | 8.5 | 18 | 24 | stop  | hole under the minor limit of the fine pitch
    260 | Adjuster, right drill    | 2 | TM-M10-S | M10x1.25 | 8.8 | 18 | 24 | ok    | right hole, stout neck
    270 | Blind thread to the end  | 2 | TM-M8-S  | M8       | 6.8 | 20 | 20 | stop  | the tip stands below the profile and meets the bottom`,
  ),
  ...demoRows(
    SLOT,
    { ...BRACKET, Operation: "slot" },
    `
    280 | Adjusting slot           | EM-8-4  | 60 | 6 | 2 | ok   | full width, a quarter of the diameter at a time
    290 | Adjusting slot, long arm | EM-6-4L | 60 | 9 | 9 | stop | full width, one and a half diameters deep with a long neck: it breaks`,
  ),
  ...demoRows(
    SIDE,
    { ...BRACKET, Operation: "side" },
    `
    300 | Flank        | EM-16-4 | straight |    | 90 | 20 | 0.5 | 0.2 | ok | stiff cutter, open tolerance
    310 | Round end R20 | EM-12-4 | outside  | 40 | 63 | 12 | 0.4 | 0.2 | ok | outside arc: less chip than on a straight wall`,
  ),
  ...demoRows(
    BORE,
    { ...BRACKET, Operation: "boss" },
    `
    320 | Spring seat | EM-16-4 | 31 | 30 | 10 | 0.2 | ok | half a millimetre a side, open tolerance`,
  ),
  // Manifold plate
  ...demoRows(
    FACE,
    { ...PLATE, Operation: "face" },
    `
    330 | Port face | FM-2in-5 | 8 | 1.5 | 0.04 | ok | light cut, little torque wanted`,
  ),
  ...demoRows(
    DRILL,
    { ...PLATE, ...drill },
    `
    340 | Tap holes, cover      | 12 | D-#7C | 1/4-20 UNC-2B |     | 0.75 | no  | ok    | the customary drill, carbide
    350 | Tap holes, gauge port | 2  | D-5/16 | 3/8-24 UNF-2B |    | 0.9  | no  | stop  | 5/16 is the drill of the coarse pitch: under the minor limit of 24
    360 | Tap holes, bracket    | 4  | D-#29 | #8-32 UNC-2B  |     | 0.5  | no  | check | a twist drill cuts oversize and this hole is near its upper limit
    370 | Cross port            | 1  | D-F   |               | 0.257 | 2.6 | yes | ok   | deep, but a jobber drill reaches, with pecks`,
  ),
  ...demoRows(
    THREAD,
    { ...PLATE, ...mill },
    `
    380 | Cover screws             | 12 | TM-14-S    | 1/4-20 UNC-2B | 0.201 | 0.5   | 0.75 | ok    | two diameters deep in aluminium
    390 | Fine cover screws        | 4  | TM-14-S    | 1/4-28 UNF-2B | 0.213 | 0.5   | 0.75 | ok    | the same cutter makes the finer pitch, in its own hole
    400 | Union                    | 2  | TM-38-S    | 3/8-16 UNC-2B | 5/16  | 0.75  | 1    | ok    | two diameters deep with a stout neck
    410 | Gauge port               | 2  | TM-38-S    | 3/8-24 UNF-2B | 5/16  | 0.75  | 1    | stop  | drilled for the coarse pitch: hole under the minor limit
    420 | Gauge port, right drill  | 2  | TM-38-S    | 3/8-24 UNF-2B | 0.332 | 0.75  | 1    | ok    | Q drill for the fine pitch
    430 | Gauge port, other cutter | 2  | TM-38-SX   | 3/8-24 UNF-2B | 0.332 | 0.75  | 1    | stop  | tip flat wider than an eighth of this pitch
    440 | Supply port              | 2  | TM-12-13-F | 1/2-13 UNC-2B | 27/64 | 0.6   | 1.1  | ok    | full-profile cutter of the right pitch
    450 | Supply port, other tool  | 2  | TM-38-16-F | 1/2-13 UNC-2B | 27/64 | 0.7   | 1.1  | stop  | full-profile cutter of another pitch
    460 | Small port, large cutter | 2  | TM-516-S   | 1/4-20 UNC-2B | 0.201 | 0.5   | 0.75 | stop  | cutter larger than the hole it has to enter
    470 | Sensor                   | 2  | TM-10-S    | #10-32 UNF-2B | 0.159 | 0.375 | 0.6  | ok    | two diameters deep in aluminium`,
  ),
  ...demoRows(
    THREAD,
    { ...PLATE, ...mill, "Spring passes": 2 },
    `
    480 | Name plate               | 4  | TM-4-S     | #4-40 UNC-2B  | 0.089 | 0.22  | 0.4  | ok    | a neck of 0.045 in: a good share of the tolerance goes into bending, gauge the first one`,
  ),
  ...demoRows(
    BORE,
    { ...PLATE, Operation: "bore" },
    `
    490 | Filter seat          | EM-3/8-3 | 0.72 | 0.75  | 0.5 | 0.004 | ok    | 15 thou a side with a short cutter
    500 | Filter seat from solid | EM-3/8-3 | 0   | 0.625 | 0.5 | 0.02  | ok    | helix from solid, open tolerance`,
  ),
  ...demoRows(
    [...BORE, "Feed per tooth"],
    { ...PLATE, Operation: "bore", Machine: "Retrofit mill R2" },
    `
    510 | O-ring seat on the slow axes | EM-12-3 | 1.17 | 1.18 | 0.4 | 0.006 | 0.008 | check | a feed carried over from another machine: fast spindle, slow axes, it is not reached in the circle`,
  ),
  ...demoRows(
    SIDE,
    { ...PLATE, Operation: "side" },
    `
    520 | Outline            | EM-1/2-4 | straight |     | 14  | 0.75 | 0.05  | 0.02  | ok    | short stiff cutter, open tolerance
    530 | Outline corner R1.5 | EM-1/2-4 | outside  | 3   | 4.7 | 0.75 | 0.04  | 0.02  | ok    | outside arc
    540 | Pocket corner R1/4 | EM-1/2-4 | inside   | 0.5 | 0.4 | 0.5  | 0.01  | 0.01  | stop  | arc of the cutter's own diameter: no circle left to run on`,
  ),
  // Valve body
  ...demoRows(
    DRILL,
    { ...VALVE, ...drill },
    `
    550 | Tap hole, stem | 1 | D-27/64C | 1/2-13 UNC-2B | | 1.2 | no | ok | carbide, under 3 × D`,
  ),
  ...demoRows(
    THREAD,
    { ...VALVE, ...mill },
    `
    560 | Stem           | 1 | TM-12-S  | 1/2-13 UNC-2B    | 27/64 | 1    | 1.3 | ok    | two diameters deep, neck of half the thread
    570 | Bonnet, long   | 4 | TM-14-SL | 1/4-20 UNC-2B    | 0.201 | 1    | 1.3 | stop  | by hand: 15 N bend five diameters of neck by 0.1 mm (0.004 in), twice that of pitch diameter against 0.0025 in allowed`,
  ),
  ...demoRows(
    THREAD,
    { ...VALVE, ...mill, "Spring passes": 2 },
    `
    580 | Bonnet, left   | 4 | TM-38-S  | 3/8-16 UNC-2B LH | 0.3125 | 0.5  | 0.9 | ok    | left hand is only another way round the helix`,
  ),
  ...demoRows(
    [...SLOT, "Machine"],
    { ...VALVE, Operation: "slot" },
    `
    590 | Key slot on the knee mill | EM-1/2-4H | 2 | 0.25 | 0.0625 | Knee mill K1 | ok | slow, shallow steps with high-speed steel`,
  ),
  ...demoRows(
    [...SIDE, "Feed per tooth"],
    { ...VALVE, Operation: "side" },
    `
    600 | Flat, polishing feed | EM-1/2-4H | straight | | 3 | 0.5 | 0.002 | 0.01 | 0.0001 | check | chip thinner than a third of the edge radius: it rubs and hardens the wall`,
  ),
  ...demoRows(
    THREAD,
    { ...VALVE, ...mill, Material: "Stainless 310" },
    `
    610 | Vent | 1 | TM-10-S | #10-32 UNF-2B | 0.159 | 0.3 | 0.6 | stop | this material is not in the list`,
  ),
  // Flange
  ...demoRows(
    DRILL,
    { ...FLANGE, ...drill },
    `
    620 | Tap holes, bolts | 6 | D-10.2C | M12 | | 30 | no | ok | carbide at three diameters
    630 | Bolt hole, wrong drill | 6 | D-14.0 | | 13.5 | 20 | yes | stop | the drill is 14, the drawing says 13.5`,
  ),
  ...demoRows(
    THREAD,
    { ...FLANGE, ...mill },
    `
    640 | Bolts     | 6 | TM-M12-S | M12        | 10.2 | 20 | 28 | ok | under two diameters deep with a stout neck
    650 | Lock ring | 1 | TM-M16-S | M20x1.5-6g | 19.8 | 15 |    | ok | outside thread on a turned boss, cutter runs around it`,
  ),
  ...demoRows(
    [...BORE, "Stick-out"],
    { ...FLANGE, Operation: "bore" },
    `
    660 | Pilot               | EM-16-4  | 51   | 52 | 15 | 0.2  | 50 | ok    | half a millimetre a side, open tolerance
    670 | Deep pilot          | EM-10-4L | 47.6 | 48 | 14 | 0.03 | 66 | check | six and a half diameters out of the holder and a tight size
    680 | Pilot, hanging out  | EM-16-4  | 51   | 52 | 15 | 0.2  | 90 | check | stick-out over four diameters for a shallow bore`,
  ),
  // Hub
  ...demoRows(
    DRILL,
    { ...HUB, ...drill },
    `
    690 | Tap holes | 6 | D-5.0C | M6 | | 15 | no | ok | carbide at three diameters, slow`,
  ),
  ...demoRows(
    THREAD,
    { ...HUB, ...mill },
    `
    700 | Blade screws             | 6 | TM-M6-S | M6 | 5 | 10 | 15 | ok | under two diameters deep`,
  ),
  ...demoRows(
    THREAD,
    { ...HUB, ...mill, Machine: null },
    `
    710 | Blade screws, no machine yet | 6 | TM-M6-S | M6 | 5 | 10 | 15 | check | nobody has said which machine: no time, no cost`,
  ),
  ...demoRows(
    THREAD,
    { ...HUB, ...mill, Units: null },
    `
    720 | Balance screw | 2 | TM-M6-S | M6 | 5 | 10 | 15 | stop | units left off: they are never guessed`,
  ),
  ...demoRows(
    SIDE,
    { ...HUB, Operation: "side", Way: "climb" },
    `
    730 | Blade seat | EM-12-4 | straight | | 60 | 12 | 0.3 | 0.15 | ok | light climb cut, open tolerance`,
  ),
];

/** The demo job as a planning table. */
export const DEMO: ListBlock = [HEADINGS, ...ROWS.map((row) => row.cells)];

/** What a skilled person expects of each row of the demo, by its Row number. */
export const DEMO_NOTES: Readonly<Record<number, DemoNote>> = Object.fromEntries(
  ROWS.map((row) => [row.cells[0] as number, row.note]),
);

const BLANK_ROWS = 20;

/** An empty planning table. */
export const BLANK_PLAN: ListBlock = [HEADINGS, ...Array.from({ length: BLANK_ROWS }, () => HEADINGS.map(() => null))];
