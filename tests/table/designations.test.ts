import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { readLists } from "../../src/table/read.ts";

const { materials } = readLists(MATERIALS, TOOLS, MACHINES);

describe("materials by the words people use (independent: designations of open standards, from memory)", () => {
  it.each([
    ["C45", /C45/],
    ["1.0503", /C45/],
    ["aisi 1045", /C45/],
    ["304", /AISI 304/],
    ["SUS 304", /AISI 304/],
    ["6061", /AA 6061/],
    ["EN AW-6082", /6082/],
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
  it("chooses nothing that only resembles", () => {
    for (const name of ["305", "1.0504", "C46", "steel", "AISI", "", "unobtainium"])
      expect(materials.find(name), name).toBeUndefined();
  });
  it("finds every entry by each designation that is its own, and none by two", () => {
    for (const { material, designations } of materials.items) {
      expect(materials.find(material)?.material).toBe(material);
      for (const text of designations?.split(";") ?? [])
        expect(materials.find(text)?.material ?? material, text).toBe(material);
    }
  });
});
