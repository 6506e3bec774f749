/**
 * The crib of the invented shop. Codes are the shop's own: D drill, EM end mill, BM ball end mill, FM face mill, TM thread
 * mill (S single profile, F full profile, L long neck, X kept by mistake), T tap (B bottoming), R reamer, CS countersink. Lengths are in the row's own units.
 */
import { DRILLS, HOLE_TOOLS } from "./hole-tools.ts";
import { HEADINGS, JUDGED, toolRows } from "./tool-rows.ts";
import type { ListBlock } from "./types.ts";

const MILL = [
  "Tool",
  "Diameter",
  "Teeth",
  "Cutting length",
  "Neck diameter",
  "Neck length",
  "Shank diameter",
  "Stick-out",
  "Corner radius",
  "Helix",
  "Edge radius",
  "Price",
  "Substrate",
] as const;
const SOLID = { ...JUDGED, "Edge angle": 90, "Notch factor": 1.3, Edges: 1 };

// H high-speed steel, L long neck.
const END_MILLS = [
  ...toolRows(
    MILL,
    { ...SOLID, Kind: "end mill", Units: "mm", Runout: 0.01 },
    `
    EM-2-3   | 2  | 3 | 5  | 1.9  | 7  | 6  | 18 | 0   | 35 | 0.005 | 22  | carbide
    EM-3-4   | 3  | 4 | 8  | 2.9  | 10 | 6  | 20 | 0   | 35 | 0.006 | 22  | carbide
    EM-4-4   | 4  | 4 | 11 | 3.8  | 14 | 6  | 22 | 0.1 | 35 | 0.006 | 24  | carbide
    EM-5-4   | 5  | 4 | 13 | 4.8  | 16 | 6  | 24 | 0.1 | 35 | 0.007 | 26  | carbide
    EM-6-4   | 6  | 4 | 13 |      |    | 6  | 22 | 0.1 | 38 | 0.007 | 28  | carbide
    EM-6-4L  | 6  | 4 | 9  | 5.6  | 40 | 6  | 44 | 0.2 | 38 | 0.007 | 44  | carbide
    EM-8-3   | 8  | 3 | 20 |      |    | 8  | 30 | 0   | 45 | 0.004 | 38  | carbide
    EM-8-4   | 8  | 4 | 19 |      |    | 8  | 28 | 0.2 | 38 | 0.008 | 36  | carbide
    EM-10-4  | 10 | 4 | 22 |      |    | 10 | 34 | 0.2 | 38 | 0.008 | 48  | carbide
    EM-10-4L | 10 | 4 | 15 | 9.4  | 60 | 10 | 66 | 0.5 | 38 | 0.008 | 78  | carbide
    EM-12-3  | 12 | 3 | 26 |      |    | 12 | 40 | 0.2 | 45 | 0.005 | 64  | carbide
    EM-12-4  | 12 | 4 | 26 |      |    | 12 | 40 | 0.5 | 38 | 0.009 | 66  | carbide
    EM-12-4H | 12 | 4 | 26 |      |    | 12 | 45 | 0   | 30 | 0.015 | 26  | HSS
    EM-16-4  | 16 | 4 | 32 |      |    | 16 | 50 | 0.5 | 38 | 0.01  | 112 | carbide
    EM-20-4  | 20 | 4 | 38 |      |    | 20 | 58 | 0.5 | 38 | 0.01  | 165 | carbide
    EM-20-4H | 20 | 4 | 38 |      |    | 20 | 60 | 0   | 30 | 0.018 | 44  | HSS`,
  ),
  ...toolRows(
    MILL,
    { ...SOLID, Kind: "end mill", Units: "in", Runout: 0.0004 },
    `
    EM-1/8-4   | 0.125  | 4 | 0.375  | 0.118 | 0.45 | 0.25  | 0.8   | 0     | 35 | 0.00025 | 22  | carbide
    EM-3/16-4  | 0.1875 | 4 | 0.5625 | 0.18 | 0.65 | 0.25  | 0.95  | 0     | 35 | 0.00025 | 24  | carbide
    EM-1/4-4   | 0.25   | 4 | 0.625  |      |     | 0.25  | 0.95  | 0.005 | 38 | 0.0003  | 27  | carbide
    EM-3/8-3   | 0.375  | 3 | 0.875  |      |     | 0.375 | 1.3   | 0     | 45 | 0.0002  | 46  | carbide
    EM-3/8-4   | 0.375  | 4 | 0.875  |      |     | 0.375 | 1.3   | 0.01  | 38 | 0.0003  | 44  | carbide
    EM-3/8-4L  | 0.375  | 4 | 0.5625 | 0.35 | 2   | 0.375 | 2.2   | 0.01  | 38 | 0.0003  | 72  | carbide
    EM-1/2-4   | 0.5    | 4 | 1.125  |      |     | 0.5   | 1.65  | 0.015 | 38 | 0.00035 | 68  | carbide
    EM-1/2-4H  | 0.5    | 4 | 1.25   |      |     | 0.5   | 1.85  | 0     | 30 | 0.0006  | 24  | HSS
    EM-3/4-4   | 0.75   | 4 | 1.5    |      |     | 0.75  | 2.25  | 0.02  | 38 | 0.0004  | 150 | carbide`,
  ),
  ...toolRows(
    MILL,
    { ...SOLID, Kind: "ball end mill", Units: "mm", Runout: 0.008 },
    `
    BM-3-2  | 3  | 2 | 6  | 2.8 | 9  | 6  | 20 | 1.5 | 30 | 0.005 | 26 | carbide
    BM-6-2  | 6  | 2 | 10 |     |    | 6  | 22 | 3   | 30 | 0.006 | 34 | carbide
    BM-6-2L | 6  | 2 | 9  | 5.6 | 36 | 6  | 42 | 3   | 30 | 0.006 | 48 | carbide
    BM-10-2 | 10 | 2 | 16 |     |    | 10 | 34 | 5   | 30 | 0.008 | 58 | carbide`,
  ),
  ...toolRows(
    MILL,
    { ...SOLID, Kind: "ball end mill", Units: "in", Runout: 0.0003 },
    `
    BM-1/4-2 | 0.25 | 2 | 0.5 |  |  | 0.25 | 0.95 | 0.125 | 30 | 0.00025 | 34 | carbide`,
  ),
];

// Inserted teeth: the price is that of one set of inserts, the edges are the edges of an insert.
const FACE = [
  "Tool",
  "Units",
  "Diameter",
  "Teeth",
  "Cutting length",
  "Shank diameter",
  "Stick-out",
  "Corner radius",
  "Edge radius",
  "Edge angle",
  "Runout",
  "Max rpm",
  "Price",
  "Edges",
] as const;
const FACE_MILLS = toolRows(
  FACE,
  { ...JUDGED, Kind: "face mill", Substrate: "carbide", Helix: 0, "Notch factor": 1.2 },
  `
  FM-40-4  | mm | 40 | 4 | 9    | 16 | 40  | 0.8   | 0.03   | 90 | 0.03   | 18000 | 44 | 2
  FM-50-5  | mm | 50 | 5 | 5    | 22 | 45  | 0.8   | 0.035  | 45 | 0.03   | 14000 | 70 | 4
  FM-2in-5 | in | 2  | 5 | 0.22 | 0.75 | 1.75 | 0.03 | 0.0014 | 45 | 0.0012 | 14000 | 72 | 4`,
);

const SINGLE = [
  "Tool",
  "Diameter",
  "Teeth",
  "Cutting length",
  "Neck diameter",
  "Neck length",
  "Shank diameter",
  "Stick-out",
  "Tip flat",
  "Tip to profile",
  "Price",
] as const;
const FULL = [...SINGLE, "Pitch"] as const;
const THREAD_MILL = { ...JUDGED, Substrate: "carbide", "Profile angle": 60, "Notch factor": 1.4, Edges: 1 };
const METRIC_THREAD_MILL = { ...THREAD_MILL, Units: "mm", "Edge radius": 0.006, Runout: 0.008 };
const INCH_THREAD_MILL = { ...THREAD_MILL, Units: "in", "Edge radius": 0.00024, Runout: 0.0003 };

const THREAD_MILLS = [
  ...toolRows(
    SINGLE,
    { ...METRIC_THREAD_MILL, Kind: "thread mill single", Helix: 0 },
    `
    TM-M3-S  | 2.2  | 3 | 0.6 | 1.45 | 7.5  | 6  | 20 | 0.05 | 0.3  | 62
    TM-M4-S  | 2.9  | 3 | 0.8 | 1.9  | 10   | 6  | 22 | 0.07 | 0.4  | 62
    TM-M5-S  | 3.6  | 3 | 0.9 | 2.5  | 12.5 | 6  | 23 | 0.08 | 0.45 | 62
    TM-M6-S  | 4.2  | 3 | 1   | 2.9  | 15   | 6  | 23 | 0.1  | 0.5  | 64
    TM-M6-SL | 4.2  | 3 | 1   | 2.8  | 30   | 6  | 42 | 0.1  | 0.5  | 88
    TM-M6-SX | 4.2  | 3 | 1   | 3.6  | 15   | 6  | 23 | 0.1  | 0.5  | 60
    TM-M8-S  | 5.8  | 3 | 1.2 | 4.2  | 20   | 8  | 30 | 0.1  | 0.6  | 70
    TM-M10-S | 7.4  | 4 | 1.4 | 5.5  | 25   | 8  | 32 | 0.1  | 0.7  | 78
    TM-M12-S | 8.6  | 4 | 1.7 | 6.3  | 30   | 10 | 40 | 0.12 | 0.85 | 92
    TM-M16-S | 11.6 | 4 | 1.8 | 9.1  | 40   | 12 | 48 | 0.15 | 0.9  | 128`,
  ),
  ...toolRows(
    SINGLE,
    { ...INCH_THREAD_MILL, Kind: "thread mill single", Helix: 0 },
    `
    TM-4-S   | 0.078 | 3 | 0.026 | 0.045 | 0.28  | 0.125  | 0.48 | 0.0025 | 0.013  | 66
    TM-6-S   | 0.09  | 3 | 0.03  | 0.05  | 0.345 | 0.125  | 0.5  | 0.003  | 0.015  | 66
    TM-8-S   | 0.115 | 3 | 0.032 | 0.074 | 0.41  | 0.1875 | 0.74 | 0.003  | 0.016  | 66
    TM-10-S  | 0.13  | 3 | 0.038 | 0.077 | 0.475 | 0.1875 | 0.74 | 0.003  | 0.019  | 66
    TM-14-S  | 0.17  | 3 | 0.046 | 0.108 | 0.625 | 0.25   | 1    | 0.004  | 0.023  | 68
    TM-14-SL | 0.17  | 3 | 0.046 | 0.104 | 1.25  | 0.25   | 1.75 | 0.004  | 0.023  | 94
    TM-516-S | 0.215 | 3 | 0.05  | 0.146 | 0.78  | 0.25   | 1    | 0.0045 | 0.025  | 72
    TM-38-S  | 0.265 | 4 | 0.056 | 0.187 | 0.94  | 0.3125 | 1.25 | 0.0045 | 0.028  | 80
    TM-38-SX | 0.265 | 4 | 0.056 | 0.187 | 0.94  | 0.3125 | 1.25 | 0.0075 | 0.028  | 74
    TM-12-S  | 0.36  | 4 | 0.068 | 0.265 | 1.25  | 0.375  | 1.5  | 0.0055 | 0.034  | 96`,
  ),
  ...toolRows(
    FULL,
    { ...METRIC_THREAD_MILL, Kind: "thread mill full", Helix: 10 },
    `
    TM-M6x1-F    | 4.5 | 3 | 13 | 3.3 | 16 | 6 | 24 | 0.1  | 0.5   | 92  | 1
    TM-M8x1.25-F | 6   | 3 | 17 | 4.5 | 20 | 8 | 30 | 0.12 | 0.625 | 98  | 1.25
    TM-M10x1.5-F | 7.6 | 4 | 21 | 5.8 | 25 | 8 | 32 | 0.15 | 0.75  | 108 | 1.5`,
  ),
  ...toolRows(
    FULL,
    { ...INCH_THREAD_MILL, Kind: "thread mill full", Helix: 10 },
    `
    TM-14-20-F | 0.18  | 3 | 0.55 | 0.122 | 0.65 | 0.25   | 1    | 0.005 | 0.025  | 96  | 0.05
    TM-38-16-F | 0.285 | 4 | 0.75 | 0.212 | 0.95 | 0.3125 | 1.25 | 0.006 | 0.0313 | 108 | 0.0625
    TM-12-13-F | 0.37  | 4 | 1    | 0.28  | 1.25 | 0.375  | 1.5  | 0.008 | 0.0385 | 118 | 0.076923`,
  ),
];

/** The starting list of tools. */
export const TOOLS: ListBlock = [HEADINGS, ...DRILLS, ...HOLE_TOOLS, ...END_MILLS, ...FACE_MILLS, ...THREAD_MILLS];

/** Internal threads each thread mill was bought for; those with a long neck (L) or kept by mistake (X) are left out. */
export const THREAD_MILL_USE: Readonly<Record<string, readonly string[]>> = {
  "TM-M3-S": ["M3x0.5"],
  "TM-M4-S": ["M4x0.7"],
  "TM-M5-S": ["M5x0.8"],
  "TM-M6-S": ["M6x1"],
  "TM-M8-S": ["M8x1.25", "M8x1"],
  "TM-M10-S": ["M10x1.5", "M10x1.25", "M10x1"],
  "TM-M12-S": ["M12x1.75", "M12x1.5", "M12x1.25"],
  "TM-M16-S": ["M16x2", "M16x1.5"],
  "TM-4-S": ["#4-40 UNC"],
  "TM-6-S": ["#6-32 UNC"],
  "TM-8-S": ["#8-32 UNC"],
  "TM-10-S": ["#10-24 UNC", "#10-32 UNF"],
  "TM-14-S": ["1/4-20 UNC", "1/4-28 UNF"],
  "TM-516-S": ["5/16-18 UNC", "5/16-24 UNF"],
  "TM-38-S": ["3/8-16 UNC", "3/8-24 UNF"],
  "TM-12-S": ["1/2-13 UNC", "1/2-20 UNF"],
  "TM-M6x1-F": ["M6x1"],
  "TM-M8x1.25-F": ["M8x1.25"],
  "TM-M10x1.5-F": ["M10x1.5"],
  "TM-14-20-F": ["1/4-20 UNC"],
  "TM-38-16-F": ["3/8-16 UNC"],
  "TM-12-13-F": ["1/2-13 UNC"],
};
