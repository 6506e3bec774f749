/** The listing of a row, word for word: blocks by hand from the path, comments as ISO 6983 writes them. */
import { describe, expect, it } from "vitest";
import { comment, LISTING_CAUTION, listing, rowBlocks } from "../../src/program/listing.ts";
import { ARC, DRILL, ROUND, rowOf, SIDE, SLOT, THREAD } from "./by-hand.ts";

const round = { ...ROUND, radii: [10] };

describe("blocks of a row", () => {
  it("a bore: head, speed, compensation from the arc in to the way out, F once, Z where it changes", () => {
    const row = rowOf(round, {
      name: "30",
      operation: "bore",
      title: "seat",
      tool: "EM-10",
      quantity: 4,
      rpm: 999.6,
      feed: 200.04,
    });
    expect(rowBlocks(row, "tip")).toEqual([
      ...["(ROW 30 BORE SEAT)", "(TOOL EM-10, CUTTER 10.000)", "(ONE OF 4)", "(X Y FROM THE CENTRE, Z 0 AT THE FACE)"],
      ...["(TOOL ZERO AT THE TIP)", "(CLIMB: COUNTER-CLOCKWISE)", "G17 G21 G40 G90 G94", "S1000 M3", "(PASS 1 OF 1)"],
      ...["G0 X0.000 Y0.000", "G0 Z2.000", "G0 Z-8.000", "G41", "G3 X10.000 Y0.000 I5.000 J0.000 F200.0"],
      ...["G3 X10.000 Y0.000 I-10.000 J0.000", "G3 X0.000 Y0.000 I-5.000 J0.000", "G40", "G0 Z2.000", "M5"],
    ]);
  });
  it("in inches has four places, and two of the feed", () => {
    const row = rowOf({ ...round, depth: 12.7, radii: [6.35], cutter: 12.7 }, { units: "in", feed: 254 });
    expect(rowBlocks(row, "tip")).toEqual([
      ...["(ROW 1)", "(CUTTER 0.5000)", "(X Y FROM THE CENTRE, Z 0 AT THE FACE)", "(TOOL ZERO AT THE TIP)"],
      ...["(CLIMB: COUNTER-CLOCKWISE)", "G17 G20 G40 G90 G94", "S1000 M3", "(PASS 1 OF 1)"],
      ...["G0 X0.0000 Y0.0000", "G0 Z0.0787", "G0 Z-0.5000", "G41", "G3 X0.2500 Y0.0000 I0.1250 J0.0000 F10.00"],
      ...["G3 X0.2500 Y0.0000 I-0.2500 J0.0000", "G3 X0.0000 Y0.0000 I-0.1250 J0.0000", "G40", "G0 Z0.0787", "M5"],
    ]);
  });
  it("a helix from solid feeds down without compensation, which begins with the arc", () => {
    const blocks = rowBlocks(rowOf({ ...round, fall: 8, radii: [4] }), "tip");
    expect(blocks.slice(blocks.indexOf("G0 Z2.000"))).toEqual([
      ...[
        "G0 Z2.000",
        "G1 Z0.000 F200.0",
        "G41",
        "G3 X4.000 Y0.000 I2.000 J0.000",
        "G3 X4.000 Y0.000 Z-8.000 I-4.000 J0.000",
      ],
      ...["G3 X4.000 Y0.000 I-4.000 J0.000", "G3 X0.000 Y0.000 I-2.000 J0.000", "G40", "G0 Z2.000", "M5"],
    ]);
  });
  it("a wall has compensation along its cut, and F in each pass", () => {
    const blocks = rowBlocks(rowOf(SIDE), "tip");
    expect(blocks.slice(1)).toEqual([
      ...[
        "(CUTTER 8.000)",
        "(X FROM THE START OF THE CUT, Y FROM THE FINISHED WALL, Z 0 AT THE FACE)",
        "(TOOL ZERO AT THE TIP)",
      ],
      ...["G17 G21 G40 G90 G94", "S1000 M3"],
      ...[
        "(PASS 1 OF 1)",
        "G0 X-4.000 Y6.000",
        "G0 Z2.000",
        "G0 Z-6.000",
        "G41",
        "G1 X40.000 F200.0",
        "G40",
        "G0 Z2.000",
      ],
      ...[
        "(SPRING PASS 1 OF 1)",
        "G0 X-4.000 Y4.000",
        "G0 Z2.000",
        "G0 Z-6.000",
        "G41",
        "G1 X40.000 F200.0",
        "G40",
        "G0 Z2.000",
      ],
      "M5",
    ]);
  });
  it("an arc turns clockwise where its way wants it", () => {
    const blocks = rowBlocks(rowOf({ ...ARC, radii: [10, 10], springs: 1 }), "tip");
    expect(blocks.slice(blocks.indexOf("(SPRING PASS 1 OF 1)"))).toEqual([
      ...["(SPRING PASS 1 OF 1)", "G0 X15.000 Y5.000", "G0 Z2.000", "G0 Z-6.000", "G41"],
      ...["G3 X10.000 Y0.000 I0.000 J-5.000 F200.0", "G2 X0.000 Y-10.000 I-10.000 J0.000"],
      ...["G3 X-5.000 Y-15.000 I0.000 J-5.000", "G40", "G0 Z2.000", "M5"],
    ]);
  });
  it("a slot has none, and Y from its middle", () => {
    const blocks = rowBlocks(rowOf({ ...SLOT, levels: 1 }), "tip");
    expect(blocks.slice(2)).toEqual([
      ...["(X FROM THE START OF THE CUT, Y FROM THE MIDDLE OF THE CUT, Z 0 AT THE FACE)", "(TOOL ZERO AT THE TIP)"],
      ...["G17 G21 G40 G90 G94", "S1000 M3", "(PASS 1 OF 1)", "G0 X-4.000 Y0.000", "G0 Z2.000", "G0 Z-6.000"],
      ...["G1 X40.000 F200.0", "G0 Z2.000", "M5"],
    ]);
  });
  it("a drill", () => {
    expect(rowBlocks(rowOf({ ...DRILL, bottoms: [-5, -12] }, { tool: "D-8" }), "tip")).toEqual([
      ...["(ROW 1)", "(TOOL D-8)", "(X Y FROM THE CENTRE, Z 0 AT THE FACE)", "(TOOL ZERO AT THE TIP)"],
      ...["(FULL DIAMETER TO 10.000, POINT 2.000 MORE)", "G17 G21 G40 G90 G94", "S1000 M3", "(2 PECKS)"],
      ...[
        "G0 X0.000 Y0.000",
        "G0 Z2.000",
        "G1 Z-5.000 F200.0",
        "G0 Z2.000",
        "G0 Z-4.500",
        "G1 Z-12.000",
        "G0 Z2.000",
        "M5",
      ],
    ]);
  });
  it("a tap turns back before it leaves, to the other side for the left hand", () => {
    const tap = (hand: "right" | "left", what: "tap" | "ream" = "tap") => {
      const blocks = rowBlocks(rowOf({ ...DRILL, what, hand, bottoms: [-10] }), "tip");
      return [blocks[3], ...blocks.slice(blocks.indexOf("G17 G21 G40 G90 G94") + 1)];
    };
    const body = ["G0 X0.000 Y0.000", "G0 Z2.000", "G1 Z-10.000 F200.0"];
    const note = "(THE LEAD OF THE TAP IS NOT IN THE DEPTH)";
    expect(tap("right")).toEqual([note, "S1000 M3", ...body, "M5", "M4", "G1 Z2.000", "M5"]);
    expect(tap("left")).toEqual([note, "S1000 M4", ...body, "M5", "M3", "G1 Z2.000", "M5"]);
    const reamer = "(THE LEAD OF THE REAMER IS NOT IN THE DEPTH, OUT AT FEED)";
    expect(tap("left", "ream")).toEqual([reamer, "S1000 M3", ...body, "G1 Z2.000", "M5"]);
    expect(rowBlocks(rowOf({ ...DRILL, what: "countersink", hand: "left" }), "tip")).toContain("S1000 M3");
    expect(rowBlocks(rowOf({ ...DRILL, what: "countersink" }), "tip")).toContain(
      "(DEPTH OF THE TIP: FOR A SHARP POINT THE SIZE AND THE ANGLE DECIDE, CHECK IT)",
    );
  });
});

describe("what is said before a thread and an arc", () => {
  const notes = (...[row, zero = "tip"]: [Parameters<typeof rowBlocks>[0], ("tip" | "profile")?]) => {
    const blocks = rowBlocks(row, zero);
    return blocks.slice(1, blocks.indexOf("G17 G21 G40 G90 G94"));
  };
  it("tool zero, pitch, hand and way of a thread", () => {
    expect(notes(rowOf(THREAD))).toEqual([
      ...[
        "(CUTTER 4.000)",
        "(X Y FROM THE CENTRE, Z 0 AT THE FACE)",
        "(TOOL ZERO AT THE TIP, 0.750 BELOW THE MIDDLE OF THE PROFILE)",
      ],
      "(PITCH 1.000, RIGHT HAND, CLIMB: BOTTOM UP, COUNTER-CLOCKWISE)",
    ]);
    const other = {
      ...THREAD,
      hand: "left" as const,
      climb: false,
      up: false,
      counterClockwise: false,
      full: true,
      through: false,
    };
    expect(notes(rowOf(other), "profile").slice(2)).toEqual([
      ...[
        "(TOOL ZERO AT THE MIDDLE OF THE LOWEST PROFILE)",
        "(PITCH 1.000, LEFT HAND, CONVENTIONAL: TOP DOWN, CLOCKWISE)",
      ],
      "(HALF CIRCLE AT THE BOTTOM IS LEVEL: NO ROOM BELOW THE THREAD IS KNOWN)",
    ]);
  });
  it("where an arc lies, and its way", () => {
    expect(notes(rowOf({ ...ARC, climb: false }))).toEqual([
      ...[
        "(CUTTER 10.000)",
        "(X Y FROM THE CENTRE, Z 0 AT THE FACE)",
        "(TOOL ZERO AT THE TIP)",
        "(CONVENTIONAL: CLOCKWISE)",
      ],
      "(THE ARC BEGINS AT +X OF ITS CENTRE: WHERE IT LIES THE ROW DOES NOT TELL)",
    ]);
    expect(notes(rowOf({ ...ROUND, climb: false, counterClockwise: false })).slice(3)).toEqual([
      "(CONVENTIONAL: CLOCKWISE)",
    ]);
  });
  it("that the plan says stop, and nothing of one that is looked at", () => {
    expect(notes(rowOf(SLOT, { verdict: "stop", reason: "too deep" }))[0]).toBe("(THE PLAN SAYS STOP: TOO DEEP)");
    expect(notes(rowOf(SLOT, { verdict: "check", reason: "too deep" }))[0]).toBe("(CUTTER 8.000)");
    expect(notes(rowOf(SLOT, { quantity: 2 }))).toContain("(ONE OF 2)");
    expect(notes(rowOf(SLOT, { quantity: 1 })).join()).not.toMatch(/ONE OF/);
    // a row of a drill without a tool says nothing of it
    expect(notes(rowOf(DRILL))[0]).toBe("(X Y FROM THE CENTRE, Z 0 AT THE FACE)");
  });
});

describe("rows without words", () => {
  it("say why: too many turns, the plan's reason, or that it is not determined", () => {
    expect(rowBlocks(rowOf(undefined, { rounds: 20_000, reason: "x" }), "tip")).toEqual([
      ...["(ROW 1)", "(NO WORDS: MORE THAN 10000 TURNS OR CUTS WOULD BE NEEDED)"],
    ]);
    expect(rowBlocks(rowOf(undefined, { reason: "depth is blank" }), "tip")[1]).toBe("(NO WORDS: DEPTH IS BLANK)");
    for (const row of [rowOf(undefined), rowOf(SLOT, { rpm: undefined }), rowOf(SLOT, { feed: undefined })])
      expect(rowBlocks(row, "tip")).toEqual(["(ROW 1)", "(NO WORDS: THE ROW DOES NOT DETERMINE THEM)"]);
  });
  it("stand in the listing with their names, behind the caution", () => {
    const rows = [rowOf(undefined, { name: "A" }), rowOf(undefined, { name: "B", operation: "tap" })];
    expect(listing(rows, "tip")).toEqual([
      ...LISTING_CAUTION.map((block) => ["", block]),
      ...[
        ["A", "(ROW A)"],
        ["A", "(NO WORDS: THE ROW DOES NOT DETERMINE THEM)"],
      ],
      ...[
        ["B", "(ROW B TAP)"],
        ["B", "(NO WORDS: THE ROW DOES NOT DETERMINE THEM)"],
      ],
    ]);
  });
  it("the caution is that of a listing and says so", () => {
    expect(LISTING_CAUTION[0]).toContain("NOT A PROGRAM TO RUN");
    expect(LISTING_CAUTION).toHaveLength(5);
  });
});

describe("comments", () => {
  it.each([
    ["a  b\t c ", "(A B C)"],
    ["⌀6 Ø7 ø8", "(DIA 6 DIA 7 DIA 8)"],
    ["2×3", "(2X3)"],
    ["a·b;c", "(A,B,C)"],
    ["a–b—c−d", "(A-B-C-D)"],
    ["f(x)[y]{z}", "(F/X//Y//Z/)"],
    ["50%", "(50 PERCENT)"],
    ["Größe é", "(GROE E)"],
    ["a~b", "(A~B)"],
    ["¼", "(14)"],
  ])("%j is %s", (text, wanted) => {
    expect(comment(text)).toBe(wanted);
  });
  it("are cut to 120 characters", () => {
    expect(comment("a".repeat(120))).toBe(`(${"A".repeat(120)})`);
    expect(comment("a".repeat(121))).toBe(`(${"A".repeat(117)}...)`);
  });
});

describe("numbers", () => {
  it("are never minus nought, and small ones keep their sign", () => {
    const y = (offset: number) =>
      rowBlocks(rowOf({ ...SLOT, levels: 1, offsets: [offset] }), "tip").find((b) => b.startsWith("G0 X"));
    expect(y(-0.0004)).toBe("G0 X-4.000 Y0.000");
    expect(y(-0.0006)).toBe("G0 X-4.000 Y-0.001");
    expect(y(-0.25)).toBe("G0 X-4.000 Y-0.250");
    expect(y(-10.0001)).toBe("G0 X-4.000 Y-10.000");
  });
});
