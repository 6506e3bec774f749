/** What a program needs of a row: from its cells and the list's tools by hand; speeds and feeds are the plan's own. */
import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { tableFacts } from "../../src/program/facts.ts";
import type { HoleShape, LineShape, RoundShape, RowFacts, Shape, ThreadShape } from "../../src/program/types.ts";
import { BONNET, BRACKET, COVER, HOUSING, LOCK_RING, MANIFOLD } from "./jobs.ts";
import { planned, type RowCells, table, toolOf } from "./shop.ts";

const factsOf = (...rows: RowCells[]) =>
  tableFacts({ rows: table(rows), materials: MATERIALS, tools: TOOLS, machines: MACHINES });
const fact = (row: RowCells | undefined, more: RowCells = {}): RowFacts => factsOf({ ...row!, ...more })[0]!;
const shape = <S extends Shape>(row: RowCells | undefined, more: RowCells = {}) => fact(row, more).shape as S;
const near = (value: number) => expect.closeTo(value, 6);
const [TAP_HOLE, THREAD, SEAT] = HOUSING.rows;
const [FACE, , INCH_THREAD, SOLID] = MANIFOLD.rows;
const [BOSS, OUTSIDE, ROUNDED] = LOCK_RING.rows;
const [FULL, LONG_FULL, TAP, REAM, SINK] = COVER.rows;
const [SLOT, SIDE, BORE, , THROUGH] = BRACKET.rows;

describe("what every row tells", () => {
  it("its name, or its line; how many; what it is called", () => {
    const rows = factsOf(TAP_HOLE!, { ...TAP_HOLE!, Row: null, Quantity: null }, { ...TAP_HOLE!, Row: "x" });
    expect(rows.map((r) => [r.index, r.name, r.quantity])).toEqual([
      [0, "10", 3],
      [1, "2", 1],
      [2, "x", 3],
    ]);
    const title = (row: RowCells | undefined, more: RowCells = {}) => fact(row, { Feature: "corner", ...more }).title;
    expect([title(TAP_HOLE), title(THREAD), title(TAP), title(REAM), title(SEAT)]).toEqual([
      "M8",
      "M8",
      "M5",
      "corner",
      "corner",
    ]);
    expect([title(TAP_HOLE, { Thread: null }), title(REAM, { Thread: "M8" }), fact(SEAT).title]).toEqual([
      "corner",
      "corner",
      "",
    ]);
    expect(fact(THREAD)).toMatchObject({
      operation: "thread mill",
      units: "mm",
      tool: "TM-M8-S",
      verdict: "ok",
      reason: "",
    });
    expect(fact(INCH_THREAD).units).toBe("in");
  });
  it("leaves out lines without content and keeps their numbers", () => {
    expect(
      factsOf(TAP_HOLE!, Object.fromEntries(Object.keys(TAP_HOLE!).map((k) => [k, null])), SEAT!).map((r) => r.index),
    ).toEqual([0, 2]);
  });
  it("speed and feed of the plan, and the weightiest reason where it is not ok", () => {
    const [plan] = planned([SEAT!]);
    expect(fact(SEAT)).toMatchObject({ rpm: plan!["Spindle speed"], feed: near(plan!["Table feed"]) });
    const none = fact(SEAT, { "Finish diameter": null });
    expect(none).toMatchObject({
      feed: undefined,
      shape: undefined,
      edgeFeed: undefined,
      wearValue: undefined,
      rounds: undefined,
    });
    expect(none.verdict).not.toBe("ok");
    expect(none.reason).toMatch(/Finish diameter/i);
  });
  it("the least of the limits of speed, and whose it is", () => {
    // the machine turns 12,000
    expect(fact(SEAT).mostRpm).toEqual({ value: 12000, of: "machine" });
    expect(fact(SEAT, { "Max rpm": 900 }).mostRpm).toEqual({ value: 900, of: "row" });
    expect(fact(SEAT, { "Max rpm": 13000 }).mostRpm).toEqual({ value: 12000, of: "machine" });
    const small = { Units: "mm", Material: "Aluminium EN AW-6082 T6 (AA 6061)", Machine: "Small centre S5" };
    expect(fact({ ...small, Operation: "drill", Tool: "D-5.0", "Finish diameter": 5, Depth: 12 }).mostRpm).toEqual({
      value: 15000,
      of: "tool",
    });
    expect(fact(SEAT, { Machine: null }).mostRpm).toEqual({ value: toolOf("EM-12-3")["Max rpm"], of: "tool" });
  });
  it("the feed of the edge on curved walls: chip, teeth and speed", () => {
    for (const [row, teeth] of [
      [THREAD, 3],
      [SEAT, 3],
      [ROUNDED, 4],
    ] as const) {
      const [plan] = planned([row!]);
      expect(fact(row).edgeFeed! / (plan!["Feed per tooth"] * teeth * plan!["Spindle speed"])).toBeCloseTo(1, 2);
    }
    for (const row of [SLOT, SIDE, FACE, TAP_HOLE, REAM]) expect(fact(row).edgeFeed).toBeUndefined();
  });
  it("the wear value where a wall has a size", () => {
    const wear = (row: RowCells | undefined) => fact(row, { "Wear value": 0.02 }).wearValue;
    expect([wear(THREAD), wear(SEAT), wear(ROUNDED), wear(SIDE)]).toEqual([0.02, 0.02, 0.02, 0.02]);
    expect([wear(SLOT), wear(TAP_HOLE), wear(TAP)]).toEqual([undefined, undefined, undefined]);
    expect(fact(SEAT).wearValue).toBeUndefined();
  });
});

describe("threads", () => {
  it("inside: from the depth up to a pitch over the face", () => {
    const [, plan] = planned(HOUSING.rows);
    const depths = String(plan!.Depths).split(" · ").map(Number);
    const end = plan!["Path radius"];
    expect(shape(THREAD)).toEqual({
      ...{
        kind: "thread",
        inside: true,
        hand: "right",
        climb: true,
        counterClockwise: true,
        up: true,
        pitch: 1.25,
        depth: 16,
      },
      ...{
        springs: 1,
        startZ: -16,
        endZ: near(1.25),
        levels: [0],
        full: false,
        tipToProfile: 0.6,
        cutter: 5.8,
        start: 6.8,
      },
      // ISO 965-1, 6H of M8: 7.188 to 7.348
      ...{ limits: [near(7.188), near(7.348)], holeDepth: 24, through: false },
      radii: depths.map((d) => expect.closeTo(end + d - depths.at(-1)!, 3)),
    });
    expect(depths).toHaveLength(3);
    expect(depths[0]).toBeLessThan(depths[1]!);
    expect(shape(THREAD, { "Hole depth": null, Through: "yes" })).toMatchObject({
      through: true,
      holeDepth: undefined,
    });
    expect(shape(THREAD, { "Spring passes": null, Passes: 1 })).toMatchObject({
      springs: 0,
      radii: [expect.any(Number)],
    });
  });
  it("by hand and way: right hand in climb milling goes up, each change turns it round", () => {
    const way = (more: RowCells) => {
      const { hand, climb, counterClockwise, up } = shape<ThreadShape>(THREAD, more);
      return [hand, climb, counterClockwise, up];
    };
    expect(way({ Hand: "left" })).toEqual(["left", true, true, false]);
    expect(way({ Way: "conventional" })).toEqual(["right", false, false, false]);
    expect(way({ Hand: "left", Way: "conventional" })).toEqual(["left", false, false, true]);
    expect(way({ Thread: "M8 LH" })[0]).toBe("left");
    expect(shape(BONNET.rows[0])).toMatchObject({
      hand: "left",
      pitch: near(25.4 / 16),
      holeDepth: near(0.9 * 25.4),
      springs: 2,
    });
  });
  it("outside: the passes come in", () => {
    const s = shape<ThreadShape>(OUTSIDE, { Passes: 2, "Spring passes": 0 });
    expect(s).toMatchObject({
      inside: false,
      hand: "right",
      counterClockwise: false,
      up: false,
      pitch: 1.5,
      cutter: 11.6,
      tipToProfile: 0.9,
      start: 19.8,
    });
    expect(s.radii.at(-1)).toBeCloseTo(planned([OUTSIDE!])[0]!["Path radius"], 3);
    s.radii.slice(1).forEach((r, n) => {
      expect(r).toBeLessThanOrEqual(s.radii[n]!);
    });
    expect(s.radii[0]).toBeGreaterThan(s.radii.at(-1)!);
  });
  it("in inches are in millimetres here", () => {
    expect(shape(INCH_THREAD)).toMatchObject({
      pitch: near(1.27),
      depth: near(12.7),
      cutter: near(0.17 * 25.4),
      start: near(0.201 * 25.4),
      startZ: near(-12.7),
    });
  });
  it("of a full-profile cutter: levels of whole pitches, as many as the depth takes", () => {
    expect(shape(FULL)).toMatchObject({ full: true, levels: [0] });
    // 21 of edge, 14 pitches of 1.5; a fiftieth of the step is rounding
    const levels = (depth: number) => shape<ThreadShape>(LONG_FULL, { Depth: depth, "Hole depth": 60 }).levels;
    expect([levels(21), levels(21.4), levels(21.45), levels(23), levels(42), levels(42.5)]).toEqual([
      [0],
      [0],
      [0, 21],
      [0, 21],
      [0, 21],
      [0, 21, 42],
    ]);
    expect(levels(10)).toEqual([0]);
  });
});

describe("walls", () => {
  it("a bore, its levels and tolerance", () => {
    expect(shape(BORE)).toMatchObject({
      ...{
        kind: "round",
        inside: true,
        climb: true,
        counterClockwise: true,
        depth: 16,
        levels: 2,
        cutter: 10,
        start: 19,
        tolerance: 0.1,
        fall: 0,
      },
    });
    const radii = (row: RowCells | undefined, more: RowCells = {}) => (shape(row, more) as RoundShape).radii;
    expect(radii(BORE).at(-1)).toBe(5);
    expect(radii(SEAT, { Passes: 2, "Spring passes": 1 })).toEqual([near(13.85), 14, 14]);
    expect(shape(SEAT, { Passes: 2, "Spring passes": 1 })).toMatchObject({ springs: 1 });
    expect(shape(BORE, { Way: "conventional", "Size tolerance": null })).toMatchObject({
      climb: false,
      counterClockwise: false,
      tolerance: undefined,
    });
    expect(radii(BOSS).at(-1)).toBe(23);
    expect(radii(BOSS, { Passes: 2, "Spring passes": 0 })).toEqual([near(23.25), 23]);
    expect(shape(BOSS)).toMatchObject({ inside: false, climb: true, counterClockwise: false, start: 31 });
  });
  it("a seat from solid falls by three degrees, at most a quarter of the cutter", () => {
    expect(shape(SOLID)).toMatchObject({
      start: 0,
      fall: near(Math.min(2 * Math.PI * 3.175 * Math.tan(Math.PI / 60), 9.525 / 4)),
    });
  });
  it("an arc sweeps what its length is of the circle, a circle at most", () => {
    expect(shape(ROUNDED)).toMatchObject({
      kind: "arc",
      inside: false,
      sweep: near((360 * 50) / (Math.PI * 40)),
      depth: 12,
      cutter: 12,
    });
    expect((shape(ROUNDED) as RoundShape).radii.at(-1)).toBe(26);
    expect(shape(ROUNDED, { Length: 500 })).toMatchObject({ sweep: 360 });
  });
  it("a slot and a face along their middle, over by the cutter or half of it", () => {
    expect(shape(SLOT)).toMatchObject({
      kind: "line",
      what: "slot",
      length: 60,
      over: 4,
      offsets: [0],
      depth: 6,
      levels: 3,
      cutter: 8,
      springs: 0,
      climb: true,
    });
    expect(shape(FACE)).toMatchObject({
      what: "face",
      length: near(203.2),
      over: near(50.8),
      cutter: near(50.8),
      levels: 1,
    });
  });
  it("a wider slot goes to its walls in turn, a wider face strip by strip", () => {
    const slot = shape<LineShape>(SLOT, { "Total width": 14 }).offsets;
    // 6 mm beside a cutter of 8: the walls are 3 to each side
    expect(slot[0]).toBe(0);
    expect(Math.max(...slot)).toBeCloseTo(3, 6);
    expect(Math.min(...slot)).toBeCloseTo(-3, 6);
    slot.slice(1).forEach((y, n) => {
      expect(Math.sign(y)).toBe(n % 2 === 0 ? 1 : -1);
    });
    const face = shape<LineShape>(FACE, { "Total width": 4 }).offsets;
    expect(face.length).toBeGreaterThan(1);
    face.slice(1).forEach((y, n) => {
      expect(y - face[n]!).toBeCloseTo(face[1]!, 6);
    });
    expect(face[1]).toBeGreaterThan(0);
  });
  it("a side stands off by half the cutter and the radial depth of each pass to come, left of its way in climb milling", () => {
    const s = shape<LineShape>(SIDE, { Passes: 2, "Spring passes": 1 });
    expect(s).toMatchObject({ what: "side", over: 8, offsets: [8.5, 8, 8], springs: 1 });
    expect(shape<LineShape>(SIDE, { Passes: 2, "Spring passes": 1, Way: "conventional" })).toMatchObject({
      climb: false,
      offsets: [-8.5, -8, -8],
    });
  });
});

describe("holes", () => {
  const pointOf = (tool: string, diameter: number) =>
    diameter / 2 / Math.tan((Number(toolOf(tool)["Point angle"] ?? 118) * Math.PI) / 360);
  it("drilled blind end at the point, through they come out by a millimetre", () => {
    const point = pointOf("D-6.8C", 6.8);
    const s = shape<HoleShape>(TAP_HOLE);
    expect(s).toMatchObject({
      kind: "hole",
      what: "drill",
      depth: 24,
      through: false,
      diameter: 6.8,
      hand: "right",
      point: near(point),
      out: 0,
    });
    expect(s.bottoms.at(-1)).toBeCloseTo(-24 - point, 6);
    const through = shape<HoleShape>(THROUGH);
    expect(through).toMatchObject({ through: true, out: 1, diameter: 9 });
    expect(through.bottoms.at(-1)).toBeCloseTo(-21 - pointOf("D-9.0", 9), 6);
  });
  it("deep ones are pecked, each deeper than the last", () => {
    const { bottoms } = shape<HoleShape>(TAP_HOLE, { Depth: 60, Tool: "D-6.8C" });
    expect(bottoms.length).toBeGreaterThan(2);
    bottoms.slice(1).forEach((z, n) => {
      expect(z).toBeLessThan(bottoms[n]!);
    });
    expect(bottoms.at(-1)).toBeCloseTo(-60 - pointOf("D-6.8C", 6.8), 6);
  });
  it("tapped have the thread's diameter and hand, and no point", () => {
    expect(shape(TAP)).toEqual({
      kind: "hole",
      what: "tap",
      depth: 10,
      through: false,
      diameter: 5,
      hand: "right",
      bottoms: [-10],
      point: 0,
      out: 0,
    });
    expect(shape(TAP, { Through: "yes" })).toMatchObject({ bottoms: [-11], out: 1, through: true });
    expect([shape(TAP, { Hand: "left" }), shape(TAP, { Thread: "M5 LH" })]).toMatchObject([
      { hand: "left" },
      { hand: "left" },
    ]);
    expect(shape(TAP, { Thread: "1/4-20 UNC-2B" })).toMatchObject({ diameter: near(6.35) });
    expect(shape(TAP, { Thread: "1/4-20 UNC-2B LH", Hand: "right" })).toMatchObject({ hand: "right" });
  });
  it("reamed and countersunk end at their depth", () => {
    expect(shape(REAM)).toMatchObject({ what: "ream", diameter: 8, bottoms: [-20], point: 0, out: 0, hand: "right" });
    expect(shape(REAM, { Through: "yes" })).toMatchObject({ bottoms: [-21], out: 1 });
    expect(shape(SINK)).toMatchObject({ what: "countersink", bottoms: [-4.5], out: 0 });
    expect(shape(SINK, { Through: "yes" })).toMatchObject({ bottoms: [-4.5], out: 0 });
  });
});

describe("rows without a shape", () => {
  it("have more than 10000 turns or cuts, and say how many", () => {
    const slot = (axial: number) => fact(SLOT, { Depth: 4, "Axial depth": axial });
    expect([slot(0.0004).rounds, (slot(0.0004).shape as LineShape).levels]).toEqual([undefined, 10_000]);
    expect(slot(0.00039)).toMatchObject({ rounds: Math.ceil(4 / 0.00039), shape: undefined });
    // one turn more than the depth has pitches, in three passes
    expect(fact(THREAD, { Depth: 12500, "Hole depth": 20000 })).toMatchObject({
      rounds: near(3 * 10_001),
      shape: undefined,
    });
    // levels by passes
    expect(fact(SEAT, { Depth: 1e6, "Axial depth": 10, Passes: 2, "Spring passes": 0 }).rounds).toBe(200_000);
    // from solid with an axial depth of 0.4 the helix falls as much a turn, and as many levels come on top
    const solid = (depth: number) => fact(SOLID, { Depth: depth, "Axial depth": 0.4, Passes: 1, "Spring passes": 0 });
    expect([solid(2000).rounds, solid(2000).shape]).toMatchObject([undefined, { fall: near(10.16), levels: 5000 }]);
    expect(solid(2000.4)).toMatchObject({ rounds: near(10_002), shape: undefined });
    expect(fact(ROUNDED, { Depth: 1e6, "Axial depth": 10, Passes: 2, "Spring passes": 0 }).rounds).toBe(200_000);
  });
  it("lack what determines them", () => {
    for (const [row, lost] of [
      [THREAD, "Depth"],
      [THREAD, "Thread"],
      [TAP_HOLE, "Depth"],
      [SLOT, "Length"],
      [SEAT, "Finish diameter"],
      [SEAT, "Operation"],
      [SEAT, "Material"],
    ] as const)
      expect(fact(row, { [lost]: null }).shape, lost).toBeUndefined();
    expect(fact(SEAT, { Operation: null }).operation).toBeUndefined();
    for (const row of [THREAD, TAP_HOLE, SLOT, SEAT]) expect(fact(row).shape).toBeDefined();
  });
});
