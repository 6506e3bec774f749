import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { familyOf } from "../../src/table/families.ts";
import { readLists } from "../../src/table/read.ts";

const { materials } = readLists(MATERIALS, TOOLS, MACHINES);

/**
 * Kind that each designation belongs to, by EN, AISI/SAE, UNS, JIS and AA, from memory; written down before the list was
 * looked at. Stainless steels with ferrite, martensite or hardening stand in group P of ISO 513, not in M.
 */
const KINDS: Readonly<Record<string, readonly [group: string, kind: RegExp, designations: string]>> = {
  "wrought aluminium": [
    "n",
    /^Aluminium EN AW/,
    "6061|6061-T6|6082|7075-T651|2024|5083|EN AW-6060|AlMgSi1|A5052|A2017|AA 7050|EN AW-5754",
  ],
  "cast aluminium": ["n", /^Cast aluminium/, "A356|AlSi10Mg|ADC12|AlSi12|EN AC-43000"],
  austenitic: [
    "m",
    /AISI 30[34]|316L/,
    "304|304L|316L|303|1.4301|1.4404|X5CrNi18-10|SUS304|SUS 316L|S30400|321|1.4571",
  ],
  hardening: ["p", /S17400/, "17-4PH|17-4 PH|1.4542|SUS630|15-5PH"],
  duplex: ["m", /S32205/, "2205|1.4462|S31803|SUS329J3L"],
  chromium: ["p", /AISI 4[23]0/, "416|420|1.4021|430|440C|X46Cr13"],
  "alloy steel": ["p", /AISI (?:4140|4340|5115)/, "4140|AISI 4140|42CrMo4|1.7225|SCM440|4340|8620|16MnCr5|4130|51CrV4"],
  "carbon steel": [
    "p",
    /S235|C22|C45/,
    "A36|ASTM A36|S235JR|SS400|1018|1.0037|C45|1.0503|1045|S45C|G10450|S355J2|C60|mild steel",
  ],
  "free-cutting steel": ["p", /11SMn30/, "12L14|11SMnPb30|1215|1.0718|SUM24L"],
  "tool steel": ["p", /^Tool steel/, "D2|1.2379|SKD11|O1|H13|1.2344|A2|X210Cr12"],
  "grey iron": ["k", /GJL/, "GG25|EN-GJL-250|FC250|GG30|0.6025"],
  "nodular iron": ["k", /GJS/, "GGG40|EN-GJS-400-15|FCD450|0.7050|65-45-12"],
  titanium: ["s", /^Titanium/, "Ti-6Al-4V|Grade 5 titanium|3.7165|R56400|titanium"],
  nickel: ["s", /^Nickel/, "NiCr19NbMo|2.4668|N07718|alloy 625|2.4856"],
  brass: ["n", /^Brass/, "C360|CuZn39Pb3|C3604|CW614N|brass|Messing"],
  copper: ["n", /^Copper/, "C110|Cu-ETP|C11000|CW004A"],
  bronze: ["n", /^Bronze/, "CuSn8|C93200|bronze"],
  plastic: ["n", /^Plastic/, "acetal|POM|PEEK|nylon|PA6|PTFE|polycarbonate|UHMW-PE"],
};

describe("materials by the words people use (independent: designations of open standards, from memory)", () => {
  it.each(Object.entries(KINDS))(
    "finds or offers nothing but %s for what is that",
    (_, [group, kind, designations]) => {
      for (const name of designations.split("|")) {
        const found = materials.find(name);
        const offered = found ? [found.material] : materials.nearest(name);
        expect(offered.length, name).toBeGreaterThan(0);
        for (const material of offered) {
          expect(material, name).toMatch(kind);
          expect(materials.find(material)!.group, name).toBe(group);
        }
      }
    },
  );
  it.each([
    ["C45", /C45/],
    ["1.0503", /C45/],
    ["aisi 1045", /C45/],
    ["304", /AISI 304/],
    ["SUS 304", /AISI 304/],
    ["6061", /AA 6061/],
    ["EN AW-6082", /6082/],
    ["7075-T651", /7075/],
    ["A36", /S235/],
    ["ASTM A36", /S235/],
    ["acetal", /POM/],
    ["17-4 PH", /S17400/],
    ["N07718", /N07718/],
  ])("finds %s", (name, wanted) => {
    expect(materials.find(name)?.material).toMatch(wanted);
  });
  it("chooses neither of two that share a designation, and offers both", () => {
    expect(materials.find("4140")).toBeUndefined();
    expect(materials.nearest("4140")).toEqual(["Steel 42CrMo4 annealed (AISI 4140)", "Steel 42CrMo4 QT (AISI 4140)"]);
    expect(materials.find("4140 QT")?.material).toMatch(/QT/);
  });
  it("chooses nothing that only resembles: the next grade, another temper, a word for many", () => {
    for (const name of [
      "305",
      "1.0504",
      "C46",
      "1018",
      "304L",
      "6061-O",
      "7075-T73",
      "2024-T6",
      "steel",
      "AISI",
      "",
      "x",
    ])
      expect(materials.find(name), name).toBeUndefined();
  });
  it("offers nothing where nothing is of its kind, and nothing for what says nothing", () => {
    for (const name of ["unobtainium", "9999", "", "qqq"]) expect(materials.nearest(name), name).toEqual([]);
    // A list without a steel has none to offer for one.
    const { materials: soft } = readLists(
      [["Material"], ["Aluminium EN AW-7075 T6"], ["Brass CuZn39Pb3"]],
      [["Tool"]],
      [["Machine"]],
    );
    for (const name of ["A36", "304", "1.0503", "GG25", "H13"]) expect(soft.nearest(name), name).toEqual([]);
    expect(soft.nearest("6061")).toEqual(["Aluminium EN AW-7075 T6"]);
  });
  it("offers the likest of a kind first", () => {
    const names = [["Material"], ["Steel 16MnCr5"], ["Steel 51CrV4"], ["Steel 34CrNiMo6"]];
    const { materials: own } = readLists(names, [["Tool"]], [["Machine"]]);
    expect(own.nearest("34CrNiMo8")[0]).toBe("Steel 34CrNiMo6");
    expect(own.nearest("51CrV5")[0]).toBe("Steel 51CrV4");
    expect(own.nearest("16MnCr6")[0]).toBe("Steel 16MnCr5");
  });
  it("takes the shop's own names by the designation that is in them", () => {
    const { materials: own } = readLists(
      [["Werkstoff"], ["Alu 6082"], ["VA 1.4301"], ["Bar 1045"], ["Guss GG25"]],
      [["Tool"]],
      [["Machine"]],
    );
    expect(own.nearest("5083")).toEqual(["Alu 6082"]);
    expect(own.nearest("316L")).toEqual(["VA 1.4301"]);
    expect(own.nearest("A36")).toEqual(["Bar 1045"]);
    expect(own.nearest("FC200")).toEqual(["Guss GG25"]);
  });
  it("finds every entry by each designation that is its own, and none by two", () => {
    for (const { material, designations } of materials.items) {
      expect(materials.find(material)?.material).toBe(material);
      for (const text of designations?.split(";") ?? [])
        expect(materials.find(text)?.material ?? material, text).toBe(material);
    }
  });
  it("knows the kind of every entry of the starting list, and reads no text that is too long for a name", () => {
    for (const { material } of materials.items) expect(familyOf(material), material).toBeDefined();
    for (const junk of ["(", "1.", "x5cr", "-", "al", "c1"]) {
      expect(materials.find(junk.repeat(50_000))).toBeUndefined();
      expect(materials.nearest(junk.repeat(50_000)), junk).toEqual([]);
    }
  });
});
