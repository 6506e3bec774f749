/** What a description of a tool tells: each form of it on a crib of two that differ in nothing else (independent: plain reading). */
import { describe, expect, it } from "vitest";
import { readLists } from "../../src/table/read.ts";

const HEAD = ["Tool", "Kind", "Units", "Diameter", "Teeth", "Substrate", "Pitch", "Point angle", "Size class"];
const crib = (...lines: readonly (readonly unknown[])[]) => readLists([], [HEAD, ...lines], []).tools;
const mill = (name: string, diameter: number, teeth = 4, units = "mm", substrate = "carbide") => [
  ...[name, "end mill", units, diameter, teeth, substrate],
];

describe("teeth", () => {
  const tools = crib(mill("three", 10, 3), mill("four", 10, 4), mill("twelve", 10, 12));
  it.each([
    ..."4 flute|4 flutes|4-flute|4fl|4 teeth|4 tooth|4 Schneider|4 Schneiden|4 Zähne|4 dent|4 dents|4 lèvres".split(
      "|",
    ),
    ..."4 diente|4 dientes|4 denti|4 taglienti|4枚刃|4刃|z4|Z 4|z=4|z = 4".split("|"),
  ])("%s are four", (said) => {
    expect(tools.find(`end mill 10 ${said}`)?.tool).toBe("four");
    expect(tools.find(`${said} 10 mm end mill`)?.tool).toBe("four");
  });
  it("may be of two digits, and none of three", () => {
    expect(tools.find("end mill 10 12 flute")?.tool).toBe("twelve");
    expect(tools.find("end mill 10 z12")?.tool).toBe("twelve");
    expect(tools.find("end mill 10 104 flute")).toBeUndefined();
    expect(tools.find("end mill 10 4 flutters")).toBeUndefined();
  });
});

describe("diameters", () => {
  const tools = crib(mill("mm", 12.5), mill("half", 0.5, 4, "in"), mill("point", 0.8), mill("long", 1.5, 4, "in"));
  it.each([
    ["end mill 12.5", "mm"],
    ["end mill 12,5", "mm"],
    ["12.5mm end mill", "mm"],
    ["end mill Ø12.5", "mm"],
    ["end mill ø 12.5 mm", "mm"],
    ["end mill 0.5", "half"],
    ["end mill .5", "half"],
    ['end mill 0.5"', "half"],
    ["end mill 0.5 inch", "half"],
    ["0.5 in end mill", "half"],
    ["end mill 0,5 Zoll", "half"],
    ["end mill 0.5 pouce", "half"],
    ["end mill 0.5 pouces", "half"],
    ["end mill 0.5 pulg", "half"],
    ["end mill 0.5 poll", "half"],
    ["1/2 end mill", "half"],
    ['1/2" end mill', "half"],
    ["1/2 inch end mill", "half"],
    ["1/2 Zoll end mill", "half"],
    ["end mill Ø1/2", "half"],
    ["end mill 1 1/2", "long"],
    ["end mill 1-1/2 in", "long"],
    ["end mill 12.7 mm", "half"],
    ["end mill 0.8", "point"],
    // Within two thousandths of it: 12.525 is the last.
    ["end mill 12.52", "mm"],
  ])("%s: %s", (text, tool) => expect(tools.find(text)?.tool).toBe(tool));
  it.each([
    "end mill 12.53",
    "end mill 12.47",
    "end mill 0.5 mm",
    "end mill 12.5 in",
    "end mill 1/3",
    "12.5",
    "end mill",
  ])("%s is none of them", (text) => expect(tools.find(text)).toBeUndefined());
  it("are of a text of 60 characters at the most", () => {
    const text = "end mill 12.5";
    expect(tools.find(text + " ".repeat(60 - text.length))?.tool).toBe("mm");
    // The blanks count: a cell of so many is no description.
    expect(tools.find(text + " ".repeat(61 - text.length))).toBeUndefined();
  });
  it("stand among words that say nothing of which tool it is, and not among others", () => {
    expect(tools.find("solid tool dia 12.5 end mill of the")?.tool).toBe("mm");
    expect(tools.find("end mill, 12.5; diameter,")?.tool).toBe("mm");
    expect(tools.find("end mill 12.5 please")).toBeUndefined();
    expect(tools.nearest("end mill 12.5 please")).toEqual(["mm"]);
    expect(tools.nearest("thing 12.5")).toEqual([]);
  });
});

describe("what it is made of", () => {
  const tools = crib(mill("C", 10, 4, "mm", "carbide"), mill("H", 10, 4, "mm", "hss"));
  it.each([
    ["carbide end mill 10", "C"],
    ["HSS end mill 10", "H"],
    ["10 mm VHM Schaftfräser", "C"],
    ["high speed steel end mill 10", "H"],
  ])("%s: %s", (text, tool) => expect(tools.find(text)?.tool).toBe(tool));
  it("is left open where nothing says it", () => expect(tools.nearest("end mill 10")).toEqual(["C", "H"]));
});

describe("threads", () => {
  const tap = (name: string, diameter: number, pitch: number | null, units = "mm") => [
    ...[name, "tap", units, diameter, null, "hss", pitch],
  ];
  const taps = crib(
    tap("six", 6, 1),
    tap("fine", 6, 0.75),
    tap("seven", 7, null),
    tap("T-1/4-20", 0.25, 1 / 20, "in"),
    tap("T-#10-32", 0.19, 1 / 32, "in"),
    tap("T-#10-24", 0.19, 1 / 24, "in"),
  );
  it.each([
    ["M6x1 tap", "six"],
    ["M6 x 0,75 tap", "fine"],
    ["M6×0.75 tap", "fine"],
    ["tap M7x1", "seven"],
    ["1/4-20 tap", "T-1/4-20"],
    ["1/4-20 UNC tap", "T-1/4-20"],
    ["#10-32 tap", "T-#10-32"],
    ["#10-32 UNF tap", "T-#10-32"],
    ["tap #10-24", "T-#10-24"],
  ])("%s: %s", (text, tool) => expect(taps.find(text)?.tool).toBe(tool));
  it.each(["M6x0.8 tap", "M8 tap", "1/4-28 tap", "#10-30 tap", "#8-32 tap", "M60 tap"])("%s is none of them", (text) =>
    expect(taps.find(text)).toBeUndefined(),
  );
  it("leave the pitch open where nothing says it", () => expect(taps.nearest("M6 tap")).toEqual(["six", "fine"]));
  const mills = (...names: string[]) =>
    crib(...names.map((name) => [name, name.startsWith("D") ? "drill" : "thread mill single", "mm", 4.5]));
  it("of thread mills stand in their names as words of their own, and those of drills say nothing", () => {
    expect(
      mills("TM-M6", "TM-M60", "TM-XM6", "TM-M6.5", "TM.M6", "M6-2", "M6B", "TM-M62-M6", "DM6").nearest(
        "M6 thread mill",
      ),
    ).toEqual(["TM-M6", "M6-2", "M6B", "TM-M62-M6"]);
    expect(mills("D-M6", "TM-M6").nearest("M6")).toEqual(["TM-M6"]);
  });
});

describe("drills and reamers", () => {
  const tools = crib(
    ["D-#7", "drill", "in", 0.201, null, "hss", null, 118],
    ["D-F", "drill", "in", 0.257, null, "hss", null, 118],
    ["CS-90", "countersink", "mm", 20, null, "hss", null, 90],
    ["CS-82", "countersink", "mm", 20, null, "hss", null, 82],
    ["R-8", "reamer", "mm", 8, null, "hss", null, null, null],
    ["R-8-H6", "reamer", "mm", 8, null, "hss", null, null, "H6"],
    ["R-10", "reamer", "mm", 10, null, "hss", null, null, "H7"],
  );
  it.each([
    ["#7 drill", "D-#7"],
    ["drill no. 7", "D-#7"],
    ["letter F drill", "D-F"],
    ["countersink 90°", "CS-90"],
    ["82 deg countersink", "CS-82"],
    ["reamer 8 H7", "R-8"],
    ["reamer 8H6", "R-8-H6"],
    ["H6 reamer 8", "R-8-H6"],
    ["reamer 8.0 h7", "R-8"],
  ])("%s: %s", (text, tool) => expect(tools.find(text)?.tool).toBe(tool));
  it.each(["#8 drill", "countersink 100°", "reamer 8 H8", "reamer 9 H7", "reamer 8 H7 10", "letter G drill"])(
    "%s is none of them",
    (text) => expect(tools.find(text)).toBeUndefined(),
  );
});

describe("what is offered where none fits", () => {
  const tools = crib(
    ...[4, 5, 6, 7, 8, 9, 10].map((d) => mill(`E${d}`, d)),
    mill("E1/4", 0.25, 4, "in"),
    ["D6", "drill", "mm", 6.2],
    ["T-M8", "tap", "mm", 8, null, "hss", 1.25],
    ["T-1/4-20", "tap", "in", 0.25, null, "hss", 0.05],
    ["none", "end mill", "mm", null],
  );
  it("are the three next in size of its kind, in the units that are said, in either where none is", () => {
    expect(tools.nearest("end mill 8.2 mm")).toEqual(["E8", "E9", "E7"]);
    // 0.3 in are 7.62 mm.
    expect(tools.nearest("end mill 0.3 in")).toEqual(["E8", "E7", "E1/4"]);
    expect(tools.nearest("end mill 0.3")[0]).toBe("E8");
    expect(tools.nearest("drill 9 mm")).toEqual(["D6"]);
  });
  it("are the likest by name where only a letter is said", () => {
    const drills = crib(
      ["tiny", "drill", "mm", 0.1],
      ["letter N", "drill", "in", 0.302],
      ["D-F", "drill", "in", 0.257],
    );
    expect(drills.nearest("letter M drill")[0]).toBe("letter N");
  });
  it("are the next in size to a metric thread", () => {
    expect(tools.nearest("M9 tap")).toEqual(["T-M8", "T-1/4-20"]);
    expect(tools.nearest("M5 tap")).toEqual(["T-1/4-20", "T-M8"]);
  });
  it("are five at the most of those that fit, and three of a kind that is named without a size", () => {
    const many = crib(...[1, 2, 3, 4, 5, 6].map((n) => mill(`E${n}`, 10)));
    expect(many.nearest("end mill 10")).toEqual(["E1", "E2", "E3", "E4", "E5"]);
    expect(many.nearest("end mill")).toHaveLength(3);
  });
});
