/** Reading of programs: arcs in every way of saying them, modal state, bad input, size and slices. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arcOf } from "../../src/program/arc.ts";
import { BlockReader, MOST_CHARACTERS } from "../../src/program/blocks.ts";
import { ProgramCheck } from "../../src/program/check.ts";
import { report } from "../../src/program/report.ts";
import { ENGLISH } from "../../src/program/words/en.ts";
import { growth, LINEAR, quickest } from "../quickest.ts";
import { long } from "./long.ts";
import { alarms } from "./shop.ts";

const WORD = Number.NaN;
const shapesOf = (text: string) => {
  const reading = new ProgramCheck(text, []);
  reading.advance();
  return reading.shapes;
};
const sentences = (text: string) => report(new ProgramCheck(text, []).findings(), "mm");

describe("arcs (independent)", () => {
  it("agrees with geometry however the arc is said", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.double({ min: 0.1, max: 6.1, noNaN: true }),
        fc.constantFrom<1 | -1>(1, -1),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        (radius, from, sweep, turn, cx, cy) => {
          const [x0, y0] = [cx + radius * Math.cos(from), cy + radius * Math.sin(from)];
          const to = from + turn * sweep;
          const [x1, y1] = [cx + radius * Math.cos(to), cy + radius * Math.sin(to)];
          const ends = { x0, y0, x1, y1, turn };
          const ways = [
            { ...ends, i: cx - x0, j: cy - y0, r: WORD, absolute: false },
            { ...ends, i: cx, j: cy, r: WORD, absolute: true },
            // R tells the arc badly where it is nearly a half circle
            ...(Math.abs(sweep - Math.PI) > 0.3
              ? [{ ...ends, i: WORD, j: WORD, r: sweep > Math.PI ? -radius : radius, absolute: false }]
              : []),
          ];
          for (const way of ways) {
            const arc = arcOf(way);
            if ("what" in arc) throw new Error(arc.what);
            expect(arc.degrees).toBeCloseTo((sweep * 180) / Math.PI, 3);
            expect(Math.hypot(arc.x - cx, arc.y - cy)).toBeLessThan(1e-4);
            expect(arc.radius).toBeCloseTo(radius, 4);
          }
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });
  it("takes ends that coincide as a full circle by I J, and refuses them by R", () => {
    const full = { x0: 5, y0: 0, x1: 5, y1: 0, turn: 1 as const, absolute: false };
    expect(arcOf({ ...full, i: -5, j: 0, r: WORD })).toMatchObject({ x: 0, y: 0, radius: 5, degrees: 360 });
    expect(arcOf({ ...full, i: WORD, j: WORD, r: 5 })).toEqual({ what: "arc-centre" });
  });
  it("takes a missing I or J as nought, and a half circle by R whose chord is rounded", () => {
    expect(arcOf({ x0: 0, y0: 0, x1: 0, y1: 6, turn: 1, i: WORD, j: 3, r: WORD, absolute: false })).toMatchObject({
      y: 3,
      degrees: 180,
    });
    const half = arcOf({ x0: 0, y0: 0, x1: 6.999, y1: 0, turn: -1, i: WORD, j: WORD, r: 3.5, absolute: false });
    expect(half).toMatchObject({ degrees: 180 });
  });
  it("takes I J as the centre's own position only where nothing else fits", () => {
    // circle about (10, 0) from (15, 0) to (10, 5): from the start that is I−5 J0
    const words = { x0: 15, y0: 0, x1: 10, y1: 5, turn: 1 as const, r: WORD, absolute: false };
    expect(arcOf({ ...words, i: -5, j: 0 })).toMatchObject({ x: 10, y: 0, absolute: false });
    expect(arcOf({ ...words, i: 10, j: 0 })).toMatchObject({ x: 10, y: 0, absolute: true });
    expect(arcOf({ ...words, i: 4, j: 0 })).toMatchObject({ what: "arc" });
  });
});

const HELIX = "G0 X0 Y0 Z5\nG1 Z-10 F200\nG1 X3\nG3 X3 Y0 Z-9 I-3 J0\nG3 X3 Y0 Z-8 I-3 J0\nG1 X0\nG0 Z5\n";

describe("what is recognised (independent)", () => {
  it("a helix with its radius, pitch, turns and state", () => {
    const { rounds, holes } = shapesOf(`G21 G90 G94 S1200 M3\n${HELIX}`);
    expect(holes).toEqual([]);
    expect(rounds).toHaveLength(1);
    expect(rounds[0]).toMatchObject({
      x: 0,
      y: 0,
      turn: 1,
      degrees: 720,
      z0: -10,
      z1: -8,
      feed: 200,
      rpm: 1200,
      spindle: 1,
      line: 5,
    });
    expect(rounds[0]!.radius).toBeCloseTo(3, 12);
  });
  it("the same in inches, incremental, in feed per turn", () => {
    const { rounds } = shapesOf(
      "G20 G90 G95 S1000 M3\nG0 X0 Y0 Z.2\nG91 G1 Z-.6 F.01\nX.1\nG3 X-.2 I-.1 Z.025\nX.2 I.1 Z.025\nG1 X-.1\nG0 Z1.\n",
    );
    expect(rounds).toHaveLength(1);
    expect(rounds[0]!.radius).toBeCloseTo(2.54, 9);
    expect(rounds[0]!.degrees).toBeCloseTo(360, 9);
    expect(rounds[0]!.z0).toBeCloseTo(-10.16, 9);
    expect(rounds[0]!.z1 - rounds[0]!.z0).toBeCloseTo(1.27, 9);
    expect(rounds[0]!.feed).toBeCloseTo(0.01 * 1000 * 25.4, 9);
  });
  it("cycles: one hole a position, retracts, repeats in G91, none with L0, none after G80", () => {
    const { holes } = shapesOf(
      "G90 G0 X0 Y0 Z50\nG99 G81 X10 Y0 Z-12 R2 F100 L0\nX20\nX30\nG80\nX40\nG91 G98 G83 X5 Z-22 R-48 Q6 K3\nG80\n",
    );
    expect(holes.map((h) => [h.x, h.bottom, h.cycle, h.strokes])).toEqual([
      [20, -12, 81, 1],
      [30, -12, 81, 1],
      // R is from Z2 where the last cycle left the tool in G99, and the bottom from R
      [45, -68, 83, 12],
      [50, -68, 83, 12],
      [55, -68, 83, 12],
    ]);
  });
  it("holes written out: strokes, plunges before a cut and approaches are no holes", () => {
    const { holes } = shapesOf(
      "G0 X0 Y0 Z5\nG1 Z-5 F80\nG0 Z2\nG0 Z-4.5\nG1 Z-9\nG1 Z-11 F40\nG0 Z5\nG0 X20\nG1 Z1\nG1 Z-3\nG1 X60\nG0 Z5\nG0 X80\nG1 Z1\nG0 X100\n",
    );
    expect(holes.map((h) => [h.x, h.bottom, h.strokes, h.feed])).toEqual([[0, -11, 2, 80]]);
  });
  it("a dwell, an offset and a shift move nothing; a reference run makes Z unknown", () => {
    const { holes } = shapesOf("G0 X0 Y0 Z5\nG4 X9\nG92 X50\nG10 L2 P1 X7 Z7\nG1 Z-9 F80\nG0 Z5\nG28 Z0\nG0 X5\n");
    expect(holes).toMatchObject([{ x: 0, y: 0, bottom: -9 }]);
  });
  it("words without spaces, small letters, comments, skip marks, block numbers, a byte order mark and any line break", () => {
    const plain = shapesOf(HELIX).rounds[0]!;
    const odd = `\ufeff%\r:0001\rN1/g0x0y0z5(a Z-99 b)\rN2g1z-10f200;Z-50\r/2 N3 G1X+3.\rN4G3X3Y0Z-9.000I-3J0\rN5 G03 X3. Y.0 Z-8 I-3. J-0\rG01X0\rG00Z5\r%`;
    const { rounds } = shapesOf(odd);
    expect({ ...rounds[0], line: 0, unevenLine: 0 }).toEqual({ ...plain, line: 0, unevenLine: 0 });
  });
  it("tools: M6 changes, T alone only fetches where M6 is used, and changes where it is not", () => {
    const cut = "G0 X0 Y0 Z5\nG1 Z-9 F80\nG0 Z5\nG0 X9\n";
    expect(shapesOf(`T1 M6\nT2\n${cut}M6\nT3\n${cut}`).holes.map((h) => h.segment)).toEqual([1, 2]);
    expect(shapesOf(`T1\n${cut}T2\n${cut}`).holes.map((h) => h.segment)).toEqual([1, 2]);
  });
});

describe("bad input (regression and plain sense)", () => {
  const one = (text: string) => {
    const lines = sentences(text);
    expect(lines[0]).toMatchObject({ severity: "stop", code: "unreadable" });
    expect(lines[0]!.text.length).toBeGreaterThan(20);
    return lines[0]!;
  };
  it("refuses what is no text", () => {
    expect(one(`PK\u0003\u0004${"\u0000\u0001\u0007".repeat(400)}`).text).toMatch(/not text/);
    expect(one("\ufffd\ufffdG0 X1\ufffd").text).toMatch(/not text/);
  });
  it("refuses nothing, prose and a dialogue program with a sentence each", () => {
    expect(one("  \n\n  ").text).toMatch(/no block/);
    expect(one("This is the story of a part\nthat was never made.").text).toMatch(/no line of it has words/);
    expect(one("0 BEGIN PGM PART MM\nTOOL CALL\n").text).toMatch(/"CALL|no line/);
  });
  it("refuses 50 MB at once, and an endless line without reading it", () => {
    const large = "G1 X1.000 Y2.000 Z3.000 F100.\n".repeat(1_700_000);
    expect(large.length).toBeGreaterThan(50e6);
    expect(one(large).text).toMatch(/51 million characters; at most 20 million/);
    expect(one("X1".repeat(9_000_000)).text).toMatch(/this line has more than 2000 characters/);
    // refusing all of it costs no more than reading a fiftieth of it
    expect(quickest(() => one(large), 3)).toBeLessThan(
      20 + quickest(() => new ProgramCheck(large.slice(0, 1_000_000), []).findings(), 3),
    );
    expect(MOST_CHARACTERS).toBe(20e6);
  });
  it("names strange words once, with how often they come, and reads on", () => {
    const lines = sentences("G0 X0 Y0 Z5\nMSG(HELLO)\nG187 P1\nG187 P2\nSUPA\nG1 Z-9 F80\nG0 Z5\nX9\n");
    expect(lines[0]!.text).toBe("passed over, not words that are read here: MSG, G187 (2 times), SUPA");
    expect(lines[0]!.severity).toBe("check");
    expect(lines.some((l) => l.code === "not-in-plan")).toBe(true);
  });
  it("says so for every way of computing", () => {
    for (const block of [
      "#1=5",
      "X#1",
      "X[3+4]",
      "IF [#1 GT 3] GOTO 5",
      "WHILE",
      "R5=R5+1",
      "Q1=3",
      "X=5",
      "DEF REAL A",
    ]) {
      expect(one(`G0 X1\n${block}\nG0 X2`).text, block).toMatch(/computes or steers/);
    }
  });
  it("takes a tool by its name and words to a second spindle for what they are", () => {
    expect(
      sentences('T="DRILL 6.8"\nM6\nS2=1500 M2=3\nG0 X1\n')
        .map((l) => l.text)
        .join(),
    ).not.toMatch(/computes/);
  });
  it("passes over a heading above a column of blocks", () => {
    expect(sentences("Block\nG0 X0 Y0 Z5\nG1 Z-1 F9\nG0 Z5\nX4\n").some((l) => /BLOCK/.test(l.text))).toBe(false);
  });
  it("does not fall over anything", () => {
    const char = fc.constantFrom(..."GXYZIJKRFSMTNO0123456789.-+ ()%;/#\n\r=[]\"',ABCabc\t");
    fc.assert(
      fc.property(fc.array(char, { maxLength: 300 }), (chars) => {
        const text = chars.join("");
        const before = text;
        for (const line of report(new ProgramCheck(text, []).findings(), "in"))
          expect(line.text).not.toMatch(/undefined|NaN|\[object/);
        expect(text).toBe(before);
      }),
      { seed: 11, numRuns: 3000 },
    );
    const word = fc.tuple(fc.constantFrom(..."GGGXYZIJRFSMKLQ"), fc.double({ min: -99, max: 99, noNaN: true }));
    fc.assert(
      fc.property(fc.array(fc.array(word, { maxLength: 6 }), { maxLength: 40 }), (blocks) => {
        const text = blocks
          .map((b) => b.map(([l, v]) => `${l}${l === "G" ? Math.abs(Math.round(v)) % 100 : v.toFixed(3)}`).join(" "))
          .join("\n");
        for (const line of report(new ProgramCheck(text, []).findings(), "mm"))
          expect(line.text).not.toMatch(/undefined|NaN/);
      }),
      { seed: 12, numRuns: 1500 },
    );
  });
});

describe("long programs (independent)", () => {
  it("are read and compared to their end, 100,000 blocks, in a time that grows with their length", () => {
    const reading = new ProgramCheck(long(100_000), []);
    expect(reading.findings().some((f) => f.code === "not-in-plan")).toBe(true);
    expect(reading.shapes.rounds.length).toBeGreaterThan(6000);
    expect(growth((blocks) => new ProgramCheck(long(blocks), []).findings(), 8000, 3)).toBeLessThan(LINEAR);
  });
  it("come out the same in slices as at once, with a progress that only grows", () => {
    const text = long(5000);
    const whole = report(new ProgramCheck(text, []).findings(), "mm");
    const sliced = new ProgramCheck(text, []);
    let last = 0;
    let slices = 0;
    while (sliced.advance(97)) {
      expect(sliced.progress).toBeGreaterThanOrEqual(last);
      last = sliced.progress;
      slices++;
    }
    expect(slices).toBeGreaterThan(40);
    expect(sliced.progress).toBe(1);
    expect(report(sliced.findings(), "mm")).toEqual(whole);
  });
  it("a reader hands out each line once", () => {
    const reader = new BlockReader("G0 X1\r\n\r\nG1 X2\rG1 X3\n");
    const seen: string[] = [];
    for (let b = reader.next(); b !== undefined; b = reader.next())
      seen.push(`${b.line}:${b.letters.slice(0, b.count).map((l, i) => l + b.values[i])}`);
    expect(seen).toEqual(["1:G0,X1", "2:", "3:G1,X2", "4:G1,X3"]);
  });
});

describe("the languages (house)", () => {
  it("have a sentence for every stable code", () => {
    const codes = [
      "hand",
      "direction",
      "pitch",
      "radius",
      "edge-feed",
      "feed",
      "speed",
      "depth",
      "passes",
      "compensation",
    ];
    codes.push("hole", "not-in-plan", "not-in-program", "unreadable", "same");
    expect(Object.keys(ENGLISH.sentences).sort()).toEqual(codes.sort());
  });
  it("keep alarms apart from what is only told", () => {
    expect(alarms([{ block: "", row: "1", severity: "ok", code: "unreadable", text: "" }])).toEqual([]);
  });
});
