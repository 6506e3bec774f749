/** Tools of the invented shop that go straight into a hole. */
import { toolRows } from "./tool-rows.ts";

const DRILL = ["Tool", "Diameter", "Cutting length", "Shank diameter", "Stick-out", "Price"] as const;
const HSS_DRILL = { Kind: "drill", Teeth: 2, Helix: 30, "Point angle": 118, Substrate: "HSS", "Notch factor": 1.2 };
const CARBIDE_DRILL = { ...HSS_DRILL, "Point angle": 140, Substrate: "carbide" };

// Jobber lengths in high-speed steel, stub lengths (C) in carbide; edges: how often a drill is ground before it is replaced.
export const DRILLS = [
  ...toolRows(
    DRILL,
    { ...HSS_DRILL, Units: "mm", "Edge radius": 0.015, Runout: 0.03, Edges: 3 },
    `
    D-2.5  | 2.5  | 30  | 2.5  | 36  | 3
    D-3.3  | 3.3  | 36  | 3.3  | 42  | 3
    D-4.2  | 4.2  | 43  | 4.2  | 50  | 4
    D-5.0  | 5    | 52  | 5    | 58  | 4
    D-5.5  | 5.5  | 57  | 5.5  | 63  | 5
    D-5.8  | 5.8  | 57  | 5.8  | 63  | 5
    D-6.6  | 6.6  | 63  | 6.6  | 70  | 6
    D-6.8  | 6.8  | 69  | 6.8  | 76  | 6
    D-7.7  | 7.7  | 75  | 7.7  | 83  | 8
    D-8.5  | 8.5  | 75  | 8.5  | 83  | 9
    D-9.0  | 9    | 81  | 9    | 90  | 10
    D-9.7  | 9.7  | 87  | 9.7  | 96  | 12
    D-10.2 | 10.2 | 87  | 10.2 | 96  | 13
    D-11.7 | 11.7 | 94  | 11.7 | 104 | 17
    D-14.0 | 14   | 108 | 14   | 118 | 24`,
  ),
  ...toolRows(
    DRILL,
    { ...CARBIDE_DRILL, Units: "mm", "Edge radius": 0.01, Runout: 0.01, Edges: 2 },
    `
    D-3.3C  | 3.3  | 20 | 6  | 28 | 34
    D-5.0C  | 5    | 28 | 6  | 36 | 40
    D-6.8C  | 6.8  | 34 | 8  | 43 | 48
    D-8.5C  | 8.5  | 42 | 10 | 53 | 62
    D-10.2C | 10.2 | 50 | 12 | 63 | 80`,
  ),
  ...toolRows(
    DRILL,
    { ...HSS_DRILL, Units: "in", "Edge radius": 0.0006, Runout: 0.0012, Edges: 3 },
    `
    D-#43   | 0.089  | 1.25   | 0.089  | 1.45 | 3
    D-#36   | 0.1065 | 1.4375 | 0.1065 | 1.65 | 3
    D-#29   | 0.136  | 1.75   | 0.136  | 2    | 3
    D-#25   | 0.1495 | 1.875  | 0.1495 | 2.1  | 4
    D-#21   | 0.159  | 2      | 0.159  | 2.25 | 4
    D-#7    | 0.201  | 2.4375 | 0.201  | 2.7  | 4
    D-#3    | 0.213  | 2.5    | 0.213  | 2.8  | 5
    D-F     | 0.257  | 2.875  | 0.257  | 3.2  | 6
    D-I     | 0.272  | 2.9375 | 0.272  | 3.3  | 6
    D-5/16  | 0.3125 | 3.1875 | 0.3125 | 3.5  | 7
    D-Q     | 0.332  | 3.4375 | 0.332  | 3.8  | 8
    D-27/64 | 0.4219 | 3.9375 | 0.4219 | 4.3  | 13
    D-29/64 | 0.4531 | 4.1875 | 0.4531 | 4.6  | 15`,
  ),
  ...toolRows(
    DRILL,
    { ...CARBIDE_DRILL, Units: "in", "Edge radius": 0.0004, Runout: 0.0004, Edges: 2 },
    `
    D-#7C    | 0.201  | 1.1  | 0.25  | 1.5 | 42
    D-5/16C  | 0.3125 | 1.5  | 0.375 | 1.9 | 58
    D-27/64C | 0.4219 | 1.97 | 0.5   | 2.5 | 84`,
  ),
];

// Hole tools of high-speed steel: machine taps (T metric or inch size, B bottoming chamfer), reamers for H7, countersinks of 90° and 82°.
const HOLE_TOOL = { Substrate: "HSS", Runout: 0.02, "Edge radius": 0.012, "Notch factor": 1.3, Edges: 1 };
const INCH_HOLE_TOOL = { ...HOLE_TOOL, Units: "in", Runout: 0.0008, "Edge radius": 0.0005 };
const TAP = [
  "Tool",
  "Diameter",
  "Pitch",
  "Teeth",
  "Cutting length",
  "Neck diameter",
  "Neck length",
  "Shank diameter",
  "Stick-out",
  "Chamfer [pitches]",
  "Price",
] as const;
const REAMER = [
  "Tool",
  "Diameter",
  "Teeth",
  "Cutting length",
  "Neck diameter",
  "Neck length",
  "Shank diameter",
  "Stick-out",
  "Price",
] as const;
const SINK = [
  "Tool",
  "Units",
  "Diameter",
  "Teeth",
  "Cutting length",
  "Shank diameter",
  "Stick-out",
  "Point angle",
  "Price",
] as const;
export const HOLE_TOOLS = [
  ...toolRows(
    TAP,
    { ...HOLE_TOOL, Kind: "tap", Units: "mm", "Profile angle": 60 },
    `
    T-M3   | 3  | 0.5  | 3 | 9  | 2.2 | 18 | 3.5 | 34  | 4 | 9
    T-M4   | 4  | 0.7  | 3 | 12 | 2.9 | 21 | 4.5 | 38  | 4 | 9
    T-M5   | 5  | 0.8  | 3 | 13 | 3.7 | 25 | 6   | 42  | 4 | 10
    T-M6   | 6  | 1    | 3 | 15 | 4.5 | 30 | 6   | 50  | 4 | 11
    T-M6B  | 6  | 1    | 3 | 15 | 4.5 | 30 | 6   | 50  | 2 | 12
    T-M8   | 8  | 1.25 | 3 | 18 | 6   | 35 | 8   | 58  | 4 | 13
    T-M8B  | 8  | 1.25 | 3 | 18 | 6   | 35 | 8   | 58  | 2 | 14
    T-M10  | 10 | 1.5  | 3 | 20 | 7.6 | 39 | 10  | 64  | 4 | 17
    T-M12  | 12 | 1.75 | 4 | 23 | 9   | 45 | 10  | 70  | 4 | 23`,
  ),
  ...toolRows(
    TAP,
    { ...INCH_HOLE_TOOL, Kind: "tap", "Profile angle": 60 },
    `
    T-10-32 | 0.19  | 0.03125  | 3 | 0.5  | 0.145 | 0.9  | 0.194 | 1.6 | 4 | 9
    T-14-20 | 0.25  | 0.05     | 3 | 0.6  | 0.185 | 1.05 | 0.255 | 1.8 | 4 | 10
    T-38-16 | 0.375 | 0.0625   | 3 | 0.75 | 0.29  | 1.4  | 0.381 | 2.2 | 4 | 14`,
  ),
  ...toolRows(
    REAMER,
    { ...HOLE_TOOL, Kind: "reamer", Units: "mm", Helix: 7, Runout: 0.008 },
    `
    R-6  | 6  | 6 | 26 | 5.6  | 55 | 6  | 60  | 28
    R-8  | 8  | 6 | 33 | 7.5  | 70 | 8  | 76  | 32
    R-10 | 10 | 6 | 38 | 9.4  | 84 | 10 | 90  | 38
    R-12 | 12 | 6 | 44 | 11.3 | 98 | 12 | 104 | 46`,
  ),
  ...toolRows(
    SINK,
    { ...HOLE_TOOL, Kind: "countersink" },
    `
    CS-12.5  | mm | 12.5 | 3 | 14  | 8    | 34  | 90 | 26
    CS-25    | mm | 25   | 3 | 22  | 10   | 44  | 90 | 48`,
  ),
  ...toolRows(
    SINK,
    { ...INCH_HOLE_TOOL, Kind: "countersink" },
    `
    CS-1/2 | in | 0.5 | 3 | 0.55 | 0.25 | 1.4 | 82 | 30`,
  ),
];
