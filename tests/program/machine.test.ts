/**
 * What the words do, block by block: ISO 6983 for the preparatory functions, its table of codes for what is only set, common
 * practice for the canned cycles. Moves are worked out by hand.
 */
import { describe, expect, it } from "vitest";
import { BlockReader } from "../../src/program/blocks.ts";
import { Machine, type Recorder } from "../../src/program/machine.ts";

/** Figures without the noise of binary numbers. */
const f = (value: number) => String(Number(value.toFixed(6)));
const at = (...values: number[]) => values.map(f).join(",");

interface Asked {
  readonly assumed?: "mm" | "in";
  readonly increments?: boolean;
}

/** Everything that moves, as a line each; and the machine after it. */
function run(text: string, { assumed = "mm", increments = false }: Asked = {}) {
  const log: string[] = [];
  const recorder: Recorder = {
    rapid: (x0, y0, z0, x1, y1, z1) => log.push(`rapid ${at(x0, y0, z0)} ${at(x1, y1, z1)}`),
    line: (x0, y0, z0, x1, y1, z1) => log.push(`line ${at(x0, y0, z0)} ${at(x1, y1, z1)}`),
    arc: (cx, cy, radius, turn, degrees, z0, z1) => log.push(`arc ${at(cx, cy, radius, turn, degrees, z0, z1)}`),
    hole: (x, y, { code, bottom, peck, from }) => log.push(`hole ${at(x, y)} G${code} ${at(bottom, peck, from)}`),
    other: () => log.push("other"),
    segment: () => log.push("segment"),
  };
  const machine = new Machine(recorder, assumed, increments);
  const reader = new BlockReader(text);
  for (let block = reader.next(); block !== undefined && !machine.ended && !machine.refused; block = reader.next())
    machine.run(block);
  return { log, machine };
}
const moves = (text: string, asked?: Asked) => run(text, asked).log;
const modal = (text: string, asked?: Asked) => run(text, asked).machine.modal;
const unknown = (text: string) =>
  [...run(text).machine.unknown].map(([word, { count, line }]) => `${word}*${count}@${line}`);
const troubles = (text: string) => run(text).machine.troubles;

describe("straight moves", () => {
  it("begin at X0 Y0 with Z not known, and keep what a block does not say", () => {
    expect(moves("X1\nY2\nZ3\nG1 X4 Y5\nZ6")).toEqual([
      "rapid 0,0,NaN 1,0,NaN",
      "rapid 1,0,NaN 1,2,NaN",
      "rapid 1,2,NaN 1,2,3",
      "line 1,2,3 4,5,3",
      "line 4,5,3 4,5,6",
    ]);
  });
  it("are absolute in G90 and differences in G91", () => {
    expect(moves("G0 X1 Y2 Z3\nG91 X1 Y1 Z1\nG1 X-2 Y.5\nG90 X7")).toEqual([
      "rapid 0,0,NaN 1,2,3",
      "rapid 1,2,3 2,3,4",
      "line 2,3,4 0,3.5,4",
      "line 0,3.5,4 7,3.5,4",
    ]);
  });
  it("are counted, blocks that move nothing are not", () => {
    expect(run("G0\nG1 F100\nS100 M3\nI5 J5\nR2 Q3").machine.moves).toBe(0);
    expect(run("G0 X1\nG1 Y1\nG2 X3 I1\nG81 Z-5 R2 X1\nX2\nG80").machine.moves).toBe(5);
  });
  it("G0 to G3 stay on until another of them; a code that is none of them is named", () => {
    expect(moves("G1 X1\nX2\nG00 X3\nX4\nG01\nX5").map((m) => m.split(" ")[0])).toEqual([
      "line",
      "line",
      "rapid",
      "rapid",
      "line",
    ]);
    expect(unknown("G-1 X1\nG.1 X2\nG3.1\nG4.1\nG03 X2 I1")).toEqual(["G-1*1@1", "G0.1*1@2", "G3.1*1@3", "G4.1*1@4"]);
    expect(moves("G-1 X1\nG.1 X2")).toEqual(["rapid 0,0,NaN 1,0,NaN", "rapid 1,0,NaN 2,0,NaN"]);
  });
});

describe("units", () => {
  it("inches are 25.4 mm, by G20 or G70; G21 and G71 are millimetres", () => {
    for (const [text, x] of [
      ["G20 X1", 25.4],
      ["G70 X1", 25.4],
      ["G21 X1", 1],
      ["G71 X1", 1],
    ] as const) {
      expect(moves(text)).toEqual([`rapid 0,0,NaN ${x},0,NaN`]);
      expect(moves(text, { assumed: x > 1 ? "mm" : "in" })).toEqual([`rapid 0,0,NaN ${x},0,NaN`]);
    }
    expect(moves("X1 Y1 Z1", { assumed: "in" })).toEqual(["rapid 0,0,NaN 25.4,25.4,25.4"]);
    expect(moves("X1")).toEqual(["rapid 0,0,NaN 1,0,NaN"]);
  });
  it("least increments are 0.001 mm and 0.0001 in, of lengths and not of feeds", () => {
    expect(moves("X1000", { increments: true })).toEqual(["rapid 0,0,NaN 1,0,NaN"]);
    expect(moves("X10000", { increments: true, assumed: "in" })).toEqual(["rapid 0,0,NaN 25.4,0,NaN"]);
    expect(moves("G20 X10000\nG21 X1000", { increments: true })).toEqual([
      "rapid 0,0,NaN 25.4,0,NaN",
      "rapid 25.4,0,NaN 1,0,NaN",
    ]);
    expect(moves("G3 X2000 I1000 J0\nG3 X0 R1000", { increments: true })).toEqual([
      "arc 1,0,1,1,180,NaN,NaN",
      "arc 1,0,1,1,180,NaN,NaN",
    ]);
    expect(moves("G3 Y2000 J1000", { increments: true })).toEqual(["arc 0,1,1,1,180,NaN,NaN"]);
    expect(moves("G0 Z5000\nG83 X1000 Z-9000 R2000 Q3000 K1", { increments: true }).at(-1)).toBe("hole 1,0 G83 -9,3,2");
    expect(modal("G1 X1000 F200", { increments: true }).feed).toBe(200);
    expect(modal("G20 G1 X1000 F10", { increments: true }).feed).toBe(254);
  });
  it("what was said of them", () => {
    expect(run("X1").machine.saidUnits).toBeUndefined();
    expect(run("G21\nG71").machine.saidUnits).toBe("mm");
    expect(run("G20\nG70").machine.saidUnits).toBe("in");
    expect(run("G20\nG21").machine.saidUnits).toBe("both");
    expect(run("G21\nG20\nG20").machine.saidUnits).toBe("both");
  });
});

describe("feed, speed and spindle", () => {
  it("F is per minute in G94, per turn in G95, and nothing of both in G93", () => {
    expect(modal("G1 X1").feed).toBeNaN();
    expect(modal("F100").feed).toBe(100);
    expect(modal("G95 F.1 S2000").feed).toBe(200);
    expect(modal("G95 F.1\nS2000\nS3000").feed).toBeCloseTo(300, 9);
    expect(modal("G95 F.1 S2000\nG94 F150").feed).toBe(150);
    expect(modal("G20 G95 F.01 S1000").feed).toBeCloseTo(254, 9);
    expect(modal("G93 F2").feed).toBeNaN();
    expect(modal("G93 F2\nG94 F3").feed).toBe(3);
    expect(modal("G93 F2\nG95 F.1 S10").feed).toBe(1);
    // the block that moves has the F it says
    expect(modal("F10\nG1 X1 F20").feed).toBe(20);
  });
  it("inverse time is told once for each time that it is turned on", () => {
    expect(troubles("G93 F1\nG93\nG94\nG93")).toEqual([
      { what: "inverse-time", line: 1 },
      { what: "inverse-time", line: 4 },
    ]);
    expect(troubles("G94 F1\nG95")).toEqual([]);
  });
  it("M3 and M13 turn clockwise, M4 and M14 the other way, M5 stops after the block", () => {
    for (const [text, sense] of [
      ["M3", 1],
      ["M13", 1],
      ["M4", -1],
      ["M14", -1],
      ["M3\nM5", 0],
      ["M4\nM05", 0],
      ["M3 M5", 0],
      ["M5\nM3", 1],
      ["X1", 0],
      ["M3\nM8\nM9\nM0\nM1", 1],
    ] as const)
      expect(modal(text).spindle, text).toBe(sense);
    expect(modal("S800.5").rpm).toBe(800.5);
    expect(modal("S800\nS900").rpm).toBe(900);
    expect(moves("M3\nM5 X1\nX2")).toEqual(["rapid 0,0,NaN 1,0,NaN", "segment", "rapid 1,0,NaN 2,0,NaN"]);
    expect(modal("M3\nM5 X1").segment).toBe(1);
    expect(modal("M3").segment).toBe(0);
  });
  it("M2 and M30 end the program with their block", () => {
    for (const code of ["M2", "M02", "M30"]) {
      const { log, machine } = run(`X1\nX2 ${code}\nX3`);
      expect(log).toHaveLength(2);
      expect(machine.ended).toBe(true);
    }
    expect(run("X1\nM0\nM1\nM99\nX2").log).toHaveLength(2);
  });
  it("remembers line, offset and compensation", () => {
    expect(modal("\n\nX1")).toMatchObject({ line: 3, offset: 0, compensation: 0 });
    expect(modal("G54").offset).not.toBe(modal("G55").offset);
    expect(modal("G54").offset).not.toBe(0);
    expect(modal("G59").offset).not.toBe(0);
    expect(modal("G59.9").offset).not.toBe(modal("G59").offset);
    expect(unknown("G54\nG59.9\nG54.1\nG59")).toEqual([]);
    expect(unknown("G53.9")).toEqual(["G53.9*1@1"]);
    expect(modal("G41 D1").compensation).toBe(41);
    expect(modal("G42").compensation).toBe(42);
    expect(modal("G41\nG40").compensation).toBe(0);
    expect(unknown("G40\nG41\nG42")).toEqual([]);
  });
});

describe("tools", () => {
  it("are called by T where no M6 is used, and by M6 with the last T where it is", () => {
    expect(modal("T3")).toMatchObject({ segment: 1 });
    expect(modal("T3\nT4")).toMatchObject({ segment: 2 });
    expect(modal("T3 M6\nT4")).toMatchObject({ segment: 1 });
    expect(modal("T3 M6\nT4\nM6")).toMatchObject({ segment: 2 });
    expect(modal("M6")).toMatchObject({ segment: 1 });
    expect(modal("X1")).toMatchObject({ segment: 0 });
    expect(modal("T0")).toMatchObject({ segment: 1 });
  });
  it("are called before the block moves", () => {
    expect(moves("X1 T1\nX2")).toEqual(["segment", "rapid 0,0,NaN 1,0,NaN", "rapid 1,0,NaN 2,0,NaN"]);
  });
});

describe("arcs", () => {
  it("turn clockwise in G2 and counter-clockwise in G3, with I J from the start", () => {
    expect(moves("X5\nZ1\nG3 X0 Y5 I-5 J0 Z2")).toContain("arc 0,0,5,1,90,1,2");
    expect(moves("X5\nZ1\nG2 X0 Y5 I-5 J0 Z2")).toContain("arc 0,0,5,-1,270,1,2");
    expect(moves("X5\nG3 I-5")).toContain("arc 0,0,5,1,360,NaN,NaN");
    expect(moves("Y5\nG2 J-5")).toContain("arc 0,0,5,-1,360,NaN,NaN");
    expect(moves("X5\nG91 G3 X-5 Y5 I-5")).toContain("arc 0,0,5,1,90,NaN,NaN");
    expect(moves("X5\nG3 X0 Y5 R5")).toContain("arc 0,0,5,1,90,NaN,NaN");
    expect(moves("X5\nG3\nX0 Y5 I-5\nX-5 Y0 J-5").slice(1)).toEqual([
      "arc 0,0,5,1,90,NaN,NaN",
      "arc 0,0,5,1,90,NaN,NaN",
    ]);
  });
  it("have I J as a position after G90.1, and from the start after G91.1", () => {
    expect(moves("X15\nG90.1 G3 X10 Y5 I10 J0")).toContain("arc 10,0,5,1,90,NaN,NaN");
    expect(moves("X15\nG90.1\nG91.1 G3 X10 Y5 I-5 J0")).toContain("arc 10,0,5,1,90,NaN,NaN");
    expect(run("X15\nG90.1 G3 X10 Y5 I10 J0").machine.absoluteCentres).toBe(false);
    expect(run("X15\nG3 X10 Y5 I10 J0\nX5 Y0 I0 J-5").machine.absoluteCentres).toBe(true);
    expect(unknown("G90.1\nG91.1")).toEqual([]);
  });
  it("that do not close are told, and the tool goes on from their end", () => {
    expect(moves("X5\nG3 X0 Y6 I-5\nG1 X1")).toEqual(["rapid 0,0,NaN 5,0,NaN", "other", "line 0,6,NaN 1,6,NaN"]);
    expect(troubles("X5\nG3 X0 Y6 I-5")).toEqual([{ what: "arc", line: 2, startRadius: 5, endRadius: 6 }]);
    expect(troubles("G3 R5 X0 Y0\nG3 X10 R2")).toEqual([
      { what: "arc-centre", line: 1 },
      { what: "arc-radius", line: 2, radius: 2, chord: 10 },
    ]);
    expect(moves("G3 R5\nG3 K5\nG3")).toEqual([]);
  });
  it("in G18 and G19 are not followed, which is told once; G17 is", () => {
    expect(troubles("G18\nG1 X1\nG2 X3 I1\nG3 X1 I-1\nG19 G3 X3 I1")).toEqual([
      { what: "plane", line: 3, word: "G18" },
    ]);
    expect(troubles("G19 G2 X3 I1")).toEqual([{ what: "plane", line: 1, word: "G19" }]);
    expect(moves("G18 G2 X3 I1.5\nG17 X0 I-1.5")).toEqual(["other", "arc 1.5,0,1.5,-1,180,NaN,NaN"]);
    expect(troubles("G18\nG17 G2 X3 I1.5")).toEqual([]);
    expect(troubles("M98 P1\nG18 G2 X3 I1").map(({ what }) => what)).toEqual(["subprogram", "plane"]);
  });
});

describe("canned cycles (common practice)", () => {
  it.each([73, 74, 76, 81, 82, 83, 84, 85, 86, 87, 88, 89])("G%i makes a hole at each position", (code) => {
    expect(moves(`Z9\nG${code} X1 Y2 Z-5 R2\nX3\nG80 X4`)).toEqual([
      "rapid 0,0,NaN 0,0,9",
      "rapid 0,0,9 1,2,9",
      `hole 1,2 G${code} -5,NaN,2`,
      "rapid 1,2,9 3,2,9",
      `hole 3,2 G${code} -5,NaN,2`,
      "rapid 3,2,9 4,2,9",
    ]);
    expect(unknown(`G${code} X1 Y2 Z-5 R2\nG80`)).toEqual([]);
  });
  it("codes between them are none", () => {
    expect(unknown("G72\nG75\nG77\nG78\nG79\nG81.5\nG73.1\nG90.5").map((w) => w.split("*")[0])).toEqual([
      ...["G72", "G75", "G77", "G78", "G79", "G81.5", "G73.1", "G90.5"],
    ]);
    expect(moves("Z9\nG81.5 X1 Z-5 R2")).toHaveLength(2);
  });
  it("end with G80 and with a move of G0 to G3", () => {
    expect(moves("Z9\nG81 X1 Z-5 R2\nG0 X3").at(-1)).toBe("rapid 1,0,9 3,0,9");
    expect(moves("G1 Z9\nG81 X1 Z-5 R2\nG80\nX3").at(-1)).toBe("line 1,0,9 3,0,9");
    expect(moves("Z9\nG81 X1 Z-5 R2\nG80").filter((m) => /^hole/.test(m))).toHaveLength(1);
  });
  it("need a position, a depth or R to make one", () => {
    expect(moves("Z9\nG81\nF100\nK2")).toHaveLength(1);
    expect(moves("Z9\nG81 R2\nX1")).toHaveLength(1);
    expect(moves("Z9\nG81 R2\nZ-5").slice(1)).toEqual(["rapid 0,0,9 0,0,9", "hole 0,0 G81 -5,NaN,2"]);
    expect(moves("Z9\nG81 Z-5 R2\nR3").slice(1)).toEqual([
      "rapid 0,0,9 0,0,9",
      "hole 0,0 G81 -5,NaN,2",
      "rapid 0,0,9 0,0,9",
      "hole 0,0 G81 -5,NaN,3",
    ]);
  });
  it("come back to where they began in G98, to R in G99", () => {
    expect(moves("Z9\nG98 G81 X1 Z-5 R2\nG80 X2").at(-1)).toBe("rapid 1,0,9 2,0,9");
    expect(moves("Z9\nG99 G81 X1 Z-5 R2\nG80 X2").at(-1)).toBe("rapid 1,0,2 2,0,2");
    expect(moves("Z9\nG99 G81 X1 Z-5 R2\nG98 X2\nG80 X3").at(-1)).toBe("rapid 2,0,9 3,0,9");
    // a cycle that follows another keeps the height that the first began at
    expect(moves("Z9\nG99 G81 X1 Z-5 R2\nG98 G83 X2 Q1\nG80 X3").slice(-2)).toEqual([
      "hole 2,0 G83 -5,1,2",
      "rapid 2,0,9 3,0,9",
    ]);
    expect(unknown("G98\nG99")).toEqual([]);
  });
  it("in G91 have R from the height they began at, Z from R, and the position from the last", () => {
    expect(moves("X10 Y20 Z50\nG91 G81 X5 Y1 Z-22 R-48 K2\nX1").slice(1)).toEqual([
      "rapid 10,20,50 15,21,50",
      "hole 15,21 G81 -20,NaN,2",
      "rapid 15,21,50 20,22,50",
      "hole 20,22 G81 -20,NaN,2",
      "rapid 20,22,50 21,22,50",
      "hole 21,22 G81 -20,NaN,2",
    ]);
  });
  it("repeat K or L times, a thousand at the most, and none for 0", () => {
    const holes = (word: string) => moves(`Z9\nG91 G81 X1 Z-5 R-2 ${word}`).filter((m) => /^hole/.test(m)).length;
    expect([holes(""), holes("K3"), holes("L4"), holes("K0"), holes("L0"), holes("K2 L5"), holes("K2.4")]).toEqual([
      ...[1, 3, 4, 0, 0, 2, 2],
    ]);
    expect(holes("K999")).toBe(999);
    expect(holes("K1001")).toBe(1000);
    expect(run("Z9\nG81 X1 Z-5 R2 L0").machine.moves).toBe(1);
  });
  it("peck by Q, whatever its sign, until another cycle begins", () => {
    expect(moves("Z9\nG83 X1 Z-9 R2 Q-3\nX2\nX3 Q1").filter((m) => /^hole/.test(m))).toEqual([
      ...["hole 1,0 G83 -9,3,2", "hole 2,0 G83 -9,3,2", "hole 3,0 G83 -9,1,2"],
    ]);
    expect(moves("Z9\nG83 X1 Z-9 R2 Q3\nG81 X2").at(-1)).toBe("hole 2,0 G81 -9,NaN,2");
  });
});

describe("codes that move nothing (ISO 6983's table and common practice)", () => {
  it.each([4, 10, 52, 92])("G%i has its numbers for itself", (code) => {
    expect(moves(`Z9\nG${code} X0 Y0 Z0 P5\nX1`).slice(1)).toEqual(["rapid 0,0,9 1,0,9"]);
  });
  it("G28, G30 and G53 leave the axes they name where the program does not tell", () => {
    for (const code of [28, 30, 53]) {
      expect(moves(`X1 Z9\nG${code} Z0\nX2`)).toEqual(["rapid 0,0,NaN 1,0,9", "rapid 1,0,NaN 2,0,NaN"]);
      expect(moves(`X1 Z9\nG${code}\nX2`)).toEqual(["rapid 0,0,NaN 1,0,9", "rapid 1,0,NaN 2,0,NaN"]);
      for (const axis of ["X0", "Y0"])
        expect(moves(`X1 Z9\nG${code} ${axis}\nX2`)).toEqual([
          ...["rapid 0,0,NaN 1,0,9", "rapid 1,0,9 NaN,NaN,NaN", "rapid 1,0,9 2,0,9"],
        ]);
    }
  });
  it.each([
    ...[9, 15, 43, 44, 49, 50, 50.1, 60, 61, 61.1, 62, 64, 67, 69, 97, 23, 22, 80.5, 5.1, 8.1],
    ...[40, 80, 90, 91, 93, 94, 95, 98, 99, 17, 18, 19, 20, 21, 70, 71, 54, 59, 10, 52, 92, 4, 28, 30, 53],
  ])("G%f is known", (code) => {
    expect(unknown(`G${code}`)).toEqual([]);
  });
  it.each([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 17, 18, 19, 29, 30, 34, 35, 36, 37, 48, 49, 97, 98, 99])(
    "M%i is known",
    (code) => {
      expect(unknown(`M${code}`)).toEqual([]);
    },
  );
  it("others are named with their first line and how often: G codes and axes want a look, M codes do not", () => {
    const { unknown: found } = run("M88\nG187 P1\nG187\nM88\nA5\nFOO\nFOO B1\nG1.5").machine;
    expect([...found]).toEqual([
      ["M88", { line: 1, count: 2, harmless: true }],
      ["G187", { line: 2, count: 2, harmless: false }],
      ["A", { line: 5, count: 1, harmless: false }],
      ["FOO", { line: 6, count: 2, harmless: false }],
      ["B", { line: 7, count: 1, harmless: false }],
      ["G1.5", { line: 8, count: 1, harmless: false }],
    ]);
    expect(
      unknown("A1 B1 C1 U1 V1 W1 E1")
        .map((w) => w[0])
        .join(""),
    ).toBe("ABCUVWE");
    expect(unknown("D1 H1 P1 Q1 K1 L1 R1 I1 J1 X1 Y1 Z1 F1 S1 T1")).toEqual([]);
    expect(run(Array.from({ length: 60 }, (_, n) => `M${100 + n}`).join("\n")).machine.unknown.size).toBe(50);
    // what is known already is still counted
    expect(
      run(`${Array.from({ length: 50 }, (_, n) => `M${100 + n}`).join("\n")}\nM100`).machine.unknown.get("M100")?.count,
    ).toBe(2);
  });
  it("blocks that may be skipped are counted where they hold a word", () => {
    expect(run("/X1\n/\n/2 M8\nX2").machine.skippable).toBe(2);
  });
});

describe("what is not followed", () => {
  it.each([
    ["G68 X0 Y0 R30", "turned", "G68"],
    ["G68.2", "turned", "G68.2"],
    ["G16", "turned", "G16"],
    ["G51 X0 P2", "turned", "G51"],
    ["G51.1 X0", "turned", "G51.1"],
    ["G65 P9010", "macro", "G65"],
    ["G66 P9010", "macro", "G66"],
    ["G66.1", "macro", "G66.1"],
  ])("%s refuses the program, and its block does not move", (block, why, word) => {
    const { log, machine } = run(`X1\n${block} X5\nX9`);
    expect(machine.refused).toEqual({ why, line: 2, word });
    expect(log).toHaveLength(1);
  });
  it("M97 and M98 call subprograms", () => {
    expect(troubles("X1\nM98 P7\nM97 P8\nM99")).toEqual([
      { what: "subprogram", line: 2, word: "M98" },
      { what: "subprogram", line: 3, word: "M97" },
    ]);
  });
  it("a shift of the zero is told once; one of nought, of other words, and what G10 stores are none", () => {
    expect(troubles("G52 X5\nG52 Y5\nG92 X9")).toEqual([{ what: "shift", line: 1, word: "G52" }]);
    for (const axis of ["X", "Y", "Z"])
      expect(troubles(`G92 ${axis}-1`)).toEqual([{ what: "shift", line: 1, word: "G92" }]);
    for (const text of ["G52 X0 Y0 Z0", "G92 S3000", "G10 L2 P1 X5", "G52", "G92 A5 X0"])
      expect(troubles(text), text).toEqual([]);
    // the words of the block before are gone
    expect(troubles("G1 X5 Y5 Z5 F5\nG52 X0")).toEqual([]);
    expect(troubles("M98 P1\nG92 Z1")).toHaveLength(2);
  });
});
