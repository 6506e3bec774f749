/** What is told of a program beside the alarms of the other files: each has a text that brings it up and a neighbour that does not. */
import { describe, expect, it } from "vitest";
import { ProgramCheck } from "../../src/program/check.ts";
import { BRACKET, HOUSING } from "./jobs.ts";
import { FULL, hole, round, thread } from "./planted.ts";
import { alarms, check, holeCut, planned } from "./shop.ts";
import { writeProgram } from "./writer.ts";

/** What is said of the reading, without what is compared. */
const read = (text: string) =>
  new ProgramCheck(text, [])
    .findings()
    .filter((f) => f.code === "unreadable")
    .map((f) => `${f.what}${f.what === "trouble" ? ` ${f.trouble.what}` : ""} ${f.severity}`);

const AT = "G21 G90 G94 S900 M3\nG0 X0 Y0 Z5\nG1 Z-1 F80\n";

describe("reading a program (independent: what ISO 6983 leaves open)", () => {
  it.each([
    ["no units", AT.replace("G21 ", ""), AT, "units ok"],
    ["blocks in both units", `${AT}G20\nG1 X1\n`, `${AT}G21\nG1 X1\n`, "both-units ok"],
    ["coordinates without a point", "G21 G90\nG0 X10000\nG1 Y25000 F80\n", `${AT}X10.000\n`, "increments ok"],
    ["whole numbers of fewer than four digits", "G21\nG0 X1000\n", "G21\nG0 X999\n", "increments ok"],
    ["nothing that moves", "G21 G90\nM3 S900\nM30\n", AT, "no-moves stop"],
    ["a block with a slash", `${AT}/G1 X5\n`, `${AT}G1 X5\n`, "skippable ok"],
    ["an M code of the builder's own", `${AT}M88\n`, `${AT}M8\n`, "words ok"],
    ["a G code of the builder's own", `${AT}G187\n`, `${AT}G64\n`, "words check"],
    ["an arc without a centre", `${AT}G3 X5 Y5\n`, `${AT}G3 X5 Y5 I5 J0\n`, "trouble arc-centre stop"],
    ["a radius under half the chord", `${AT}G3 X10 R4.9\n`, `${AT}G3 X10 R5\n`, "trouble arc-radius stop"],
    ["ends on two circles", `${AT}G3 X10 I3 J0\n`, `${AT}G3 X10 I5 J0\n`, "trouble arc stop"],
    ["an arc in another plane", `${AT}G18 G3 X10 I5 K0\n`, `${AT}G17 G3 X10 I5 J0\n`, "trouble plane check"],
    ["a shift of the zero", `${AT}G52 X5\nG1 X9\n`, `${AT}G52 X0\nG1 X9\n`, "trouble shift check"],
    ["feeds in inverse time", `${AT}G93 G1 X9 F2\n`, `${AT}G94 G1 X9 F20\n`, "trouble inverse-time check"],
    ["a subprogram", `${AT}M98 P7\n`, `${AT}M99\n`, "trouble subprogram check"],
    [
      "I J as the centre's own position",
      "G21\nG0 X15 Y0 Z5\nG3 X10 Y5 I10 J0\n",
      `${AT}G3 X10 I5\n`,
      "absolute-centres ok",
    ],
  ])("%s", (_, fires, beside, wanted) => {
    expect(read(fires)).toContain(wanted);
    expect(read(beside)).not.toContain(wanted);
  });
  it("says how many blocks may be skipped, and in which units increments count", () => {
    const told = (text: string, what: string) =>
      new ProgramCheck(text, []).findings().find((f) => f.code === "unreadable" && f.what === what);
    expect(told(`${AT}/G1 X5\n/2 G1 X6\nG1 X7\n/\n`, "skippable")).toMatchObject({ number: 2 });
    expect(told("G20\nG0 X10000\n", "increments")).toMatchObject({ units: "in" });
    expect(told("G21\nG0 X10000\n", "increments")).toMatchObject({ units: "mm" });
  });
});

describe("comparing with the plan (independent)", () => {
  const cutsOf = (change: (cuts: ReturnType<typeof HOUSING.cuts>) => unknown) => {
    const cuts = HOUSING.cuts();
    change(cuts);
    return writeProgram(cuts, FULL);
  };
  it("a spot of a centre drill is no alarm, a hole deeper than 3 mm is", () => {
    const spot = (z: number) => {
      const found = check(
        cutsOf((c) => c.push({ ...hole(c), tool: 9, rpm: 2000, feed: 100, bottom: z, pecks: [z], places: [[200, 0]] })),
        HOUSING.rows,
      );
      return found.find((f) => f.code === "not-in-plan")?.severity;
    };
    expect(spot(-2.9)).toBe("ok");
    expect(spot(-3.1)).toBe("check");
  });
  it("a pass more than planned is told and no alarm", () => {
    const told = (more: number) =>
      check(
        cutsOf((c) => {
          const { radii } = thread(c);
          for (let n = 0; n < more; n++) radii.push(radii.at(-1)!);
        }),
        HOUSING.rows,
      ).filter((f) => f.row === "20" && f.code === "passes");
    expect(told(1)).toMatchObject([{ severity: "ok", text: "4 passes; the plan has 3" }]);
    expect(told(0)).toEqual([]);
  });
  it("a wall in fewer passes is heavier work and a check, a thread in fewer is another thread and a stop", () => {
    const cuts = BRACKET.cuts();
    const text = writeProgram(cuts, FULL);
    expect(alarms(check(text, BRACKET.rows))).toEqual([]);
    const seat = round(cuts, 1);
    // Two passes and a spring pass are planned.
    for (const told of [/^no spring pass; the plan takes 1/, /^1 pass; the plan takes 2/]) {
      seat.radii.splice(0, 1);
      const found = check(writeProgram(cuts, FULL), BRACKET.rows);
      expect(alarms(found)).toEqual(["4 passes check"]);
      expect(found.filter((f) => f.code === "passes")).toMatchObject([{ text: expect.stringMatching(told) }]);
    }
    const thin = cutsOf((c) => thread(c).radii.splice(1));
    expect(alarms(check(thin, HOUSING.rows))).toContain("20 passes stop");
  });
  it.each([
    ["10", "hole"],
    ["20", "thread"],
    ["30", "round"],
  ])("row %s without its %s is told as not made", (row, op) => {
    const told = (gone: boolean) =>
      check(
        cutsOf(
          (c) =>
            gone &&
            c.splice(
              c.findIndex((cut) => cut.op === op),
              1,
            ),
        ),
        HOUSING.rows,
      );
    expect(told(true)).toContainEqual(expect.objectContaining({ row, code: "not-in-program", severity: "check" }));
    expect(told(false).map(({ code }) => code)).not.toContain("not-in-program");
  });
  it("a hole that is drilled with the spindle at rest stops its row", () => {
    const text = writeProgram(HOUSING.cuts(), FULL);
    const start = text.indexOf("M3");
    const still = `${text.slice(0, start)}M5${text.slice(start + 2)}`;
    expect(check(still, HOUSING.rows)).toContainEqual(
      expect.objectContaining({ row: "10", code: "speed", severity: "stop" }),
    );
    expect(alarms(check(text, HOUSING.rows))).toEqual([]);
  });
  it("a row whose plan is not whole is not compared, and says so", () => {
    const rows = HOUSING.rows.map((row) => (row.Row === 30 ? { ...row, "Finish diameter": null } : row));
    const text = writeProgram(HOUSING.cuts(), FULL);
    expect(alarms(check(text, rows))).toContain("30 unreadable check");
    expect(alarms(check(text, HOUSING.rows))).toEqual([]);
  });
  it("a depth that the program does not tell is not guessed", () => {
    const rows = HOUSING.rows.filter((row) => row.Row === 30);
    const [plan] = planned(rows);
    const seat = (down: string) =>
      `G21 G90 G94 S${plan!["Spindle speed"]} M3\nG0 X100 Y50\n${down}G1 X114 F${plan!["Table feed"]}\nG3 I-14 J0\nG1 X100\n`;
    const depth = (text: string) => check(text, rows).filter((f) => f.code === "depth");
    expect(depth(seat(""))).toMatchObject([
      { row: "30", severity: "check", text: expect.stringMatching(/Z is not known/) },
    ]);
    expect(depth(seat("G1 Z-22 F500\n"))).toEqual([]);
  });
  it.each([
    ["the row's", { "Max rpm": 1.1 }],
    ["the machine's", {}],
  ])("a speed over %s limit stops the row", (whose, more) => {
    const [, , bore] = planned(HOUSING.rows);
    const speed = bore!["Spindle speed"] as number;
    const cap = "Max rpm" in more ? more["Max rpm"]! * speed : 12000;
    const rows = HOUSING.rows.map((row) => (row.Row === 30 && "Max rpm" in more ? { ...row, "Max rpm": cap } : row));
    const at = (rpm: number) =>
      check(
        cutsOf((c) => Object.assign(round(c), { rpm })),
        rows,
      ).filter((f) => f.row === "30" && f.code === "speed");
    expect(at(cap + 20)).toMatchObject([{ severity: "stop", text: expect.stringContaining(`over ${whose} limit`) }]);
    expect(at(cap - 20)).toMatchObject([{ severity: "check" }]);
    expect(at(speed)).toEqual([]);
  });
  it("a tool's own limit counts where it is the least: 15,000 of high-speed steel on a spindle of 24,000", () => {
    const row = {
      ...{ Row: 1, Units: "mm", Material: "Aluminium EN AW-6082 T6 (AA 6061)", Machine: "Small centre S5" },
      ...{ Operation: "drill", Tool: "D-5.0", "Finish diameter": 5, Depth: 12 },
    };
    const [plan] = planned([row]);
    const at = (rpm: number) => {
      const cut = { ...holeCut(1, row, plan!, "drill", [[0, 0]]), rpm };
      return check(writeProgram([cut], FULL), [row]).filter((f) => f.code === "speed");
    };
    expect(at(15_100)).toMatchObject([{ severity: "stop", text: expect.stringContaining("over the tool's limit") }]);
    expect(at(14_900)).toMatchObject([{ severity: "check" }]);
  });
});
