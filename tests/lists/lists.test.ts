import { describe, expect, it } from "vitest";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIAL_SOURCES, MATERIALS } from "../../src/lists/materials.ts";
import { readTable } from "../../src/lists/table.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { ListBlock } from "../../src/lists/types.ts";
import { MACHINE_COLUMNS, MATERIAL_COLUMNS, TOOL_COLUMNS } from "../../src/table/columns.ts";
import { readLists } from "../../src/table/read.ts";

const records = (block: ListBlock) =>
  block.slice(1).map((row) => Object.fromEntries(block[0]!.map((h, i) => [String(h), row[i] ?? null])));
const materials = records(MATERIALS);
const tools = records(TOOLS);
const machines = records(MACHINES);
const num = (value: unknown) => {
  expect(typeof value).toBe("number");
  return value as number;
};

const MATERIAL_HEADINGS =
  "Material|Group|Hardness|kc1.1 [MPa]|Exponent|Radial ratio|Axial ratio|Least chip|Thread feed [% of diameter]|Speed carbide low [m/min]|Speed carbide high [m/min]|Speed HSS low [m/min]|Speed HSS high [m/min]|Feed 3 mm [mm per tooth]|Feed 6 mm [mm per tooth]|Feed 12 mm [mm per tooth]|Feed 20 mm [mm per tooth]|Feed insert [mm per tooth]|Speed insert low [m/min]|Speed insert high [m/min]|Speed thread mill low [m/min]|Speed thread mill high [m/min]|Drill speed carbide [m/min]|Drill speed HSS [m/min]|Drill feed carbide [mm per turn at 10 mm]|Drill feed HSS [mm per turn at 10 mm]|Taylor n|Reference life [min]|Thick chip [of feed]|Breaking chip [of feed]|Slot step [of diameter]|Designations|Source";
const TOOL_HEADINGS =
  "Tool|Kind|Units|Diameter|Teeth|Cutting length|Neck diameter|Neck length|Shank diameter|Stick-out|Corner radius|Tip flat|Profile angle|Helix|Point angle|Edge radius|Edge angle|Tip to profile|Rupture strength [MPa]|Modulus [GPa]|Notch factor|Runout|Substrate|Pitch|Chamfer [pitches]|Max rpm|Price|Edges|Safety factor|Stick-out limit [of diameter]";
const MACHINE_HEADINGS =
  "Machine|Min rpm|Max rpm|Power [kW]|Torque [N·m]|Max feed [m/min]|Rapid [m/min]|Acceleration [m/s²]|Tool change [s]|Holder stiffness [N/µm]|Damping|Rate [per hour]|Setup [min]|Ramp time [s]|Bending share [%]|Size scatter [%]|Seat repeats [mm]|Part warmth [K]|Chatter ratio";

describe("text tables (independent)", () => {
  it("reads numbers, text and blanks", () => {
    expect(readTable("\n a 1 | 2.5 | | -0.1 | 1/4-20 \n")).toEqual([["a 1", 2.5, null, -0.1, "1/4-20"]]);
  });
});

describe("headings and cells of the lists (regression)", () => {
  it("carries the canonical headings", () => {
    expect(MATERIALS[0]!.join("|")).toBe(MATERIAL_HEADINGS);
    expect(TOOLS[0]!.join("|")).toBe(TOOL_HEADINGS);
    expect(MACHINES[0]!.join("|")).toBe(MACHINE_HEADINGS);
  });
  it("agrees with the declared columns", () => {
    // What only a measurement tells is a column that few fill; the starting lists do without.
    const measured = [
      ...["power30", "cycleFactor", "tipModesX", "tipModesY", "tipModesOn"],
      ...["edgeTangential", "edgeRadial"],
      ...["neckEndDiameter", "holderDiameter", "holderLength", "coolantThrough", "chiselRatio", "sizeClass"],
    ];
    expect(MATERIALS[0]).toEqual(MATERIAL_COLUMNS.filter((c) => !measured.includes(c.key)).map((c) => c.heading));
    expect(TOOLS[0]).toEqual(TOOL_COLUMNS.filter((c) => !measured.includes(c.key)).map((c) => c.heading));
    const machine = MACHINE_COLUMNS.filter((c) => !measured.includes(c.key));
    expect(MACHINES[0]).toEqual(machine.map((c) => c.heading));
  });
  it("is rectangular, with names that occur once", () => {
    for (const block of [MATERIALS, TOOLS, MACHINES]) {
      for (const row of block) expect(row.length, String(row[0])).toBe(block[0]!.length);
      const names = block.slice(1).map((row) => String(row[0]).toLowerCase());
      expect(new Set(names).size).toBe(names.length);
    }
  });
  it("is read without a single problem", () => {
    const lists = readLists(MATERIALS, TOOLS, MACHINES);
    expect([...lists.materials.problems, ...lists.tools.problems, ...lists.machines.problems]).toEqual([]);
    expect(lists.materials.items.length).toBe(materials.length);
    expect(lists.tools.items.length).toBe(tools.length);
    expect(lists.machines.items.length).toBe(machines.length);
  });
  it("is large enough to work with", () => {
    expect(materials.length).toBeGreaterThanOrEqual(24);
    expect(tools.length).toBeGreaterThanOrEqual(45);
    expect(machines.length).toBe(5);
    expect(new Set(materials.map((m) => m.Group))).toEqual(new Set(["P", "M", "K", "N", "S", "H"]));
    expect(new Set(tools.map((t) => t.Kind)).size).toBe(9);
    expect(new Set(tools.map((t) => t.Units))).toEqual(new Set(["mm", "in"]));
  });
});

describe("materials (independent)", () => {
  it("notes a source for every value and none for a blank", () => {
    for (const m of materials) {
      const notes = MATERIAL_SOURCES[String(m.Material)]!;
      for (const [heading, value] of Object.entries(m)) {
        if (heading === "Source") continue;
        const note = notes[heading];
        if (value === null) expect(note, `${m.Material} ${heading}`).toBeUndefined();
        else {
          expect(["published", "common practice", "from memory"], `${m.Material} ${heading}`).toContain(note?.kind);
          expect(note!.text.length).toBeGreaterThan(20);
          if (note!.kind === "from memory") expect(note!.text).toMatch(/check before use/);
        }
      }
      expect(String(m.Source)).toMatch(/check before use/i);
    }
  });
  it("names materials by plain words and numbers of standards only", () => {
    const plain =
      /^(?:Steel|Tool steel|Stainless|Grey iron|Nodular iron|Aluminium|Cast aluminium|Brass|Bronze|Copper|Magnesium|Plastic|Titanium|Iron alloy|Nickel alloy|Cobalt alloy|Hardened steel) /;
    // After the plain word: chemical symbols with numbers, EN, AISI, UNS, AA numbers, and conditions of delivery.
    const words = /^(?:EN|AISI|UNS|AA|AW|AC|HRC|QT|T\d|C|grade|annealed|aged|acetal|POM|Ti|Al|V|Cu|ETP|GJ[LS]|%)$/;
    const number =
      /^(?:[A-Z]{0,3}\d[\dA-Z]*(?:\.\d+)?|X?\d*(?:C|Cr|Ni|Mo|Ti|V|B|Cu|Nb|Si|Mn|Mg|Zn|Pb|Sn|Al|Co|N|S|W|X)[\dA-Za-z]*)$/;
    for (const m of materials) {
      const name = String(m.Material);
      expect(name).toMatch(plain);
      for (const word of name.replace(plain, "").split(/[\s()/-]+/)) {
        if (word !== "") expect(words.test(word) || number.test(word), `${name}: ${word}`).toBe(true);
      }
    }
  });
  it("keeps every value in the range the trade knows", () => {
    for (const m of materials) {
      const at = String(m.Material);
      expect(num(m["kc1.1 [MPa]"]), at).toBeGreaterThanOrEqual(100);
      expect(num(m["kc1.1 [MPa]"]), at).toBeLessThanOrEqual(5000);
      expect(num(m.Exponent), at).toBeGreaterThanOrEqual(0.1);
      expect(num(m.Exponent), at).toBeLessThanOrEqual(0.35);
      expect(num(m["Least chip"]), at).toBeGreaterThanOrEqual(0.2);
      expect(num(m["Least chip"]), at).toBeLessThanOrEqual(0.4);
      expect(num(m["Radial ratio"]), at).toBeLessThan(0.8);
      expect(num(m["Axial ratio"]), at).toBeLessThan(num(m["Radial ratio"]));
      expect(num(m["Speed carbide low [m/min]"]), at).toBeLessThan(num(m["Speed carbide high [m/min]"]));
      if (m["Speed HSS low [m/min]"] !== null) {
        expect(num(m["Speed HSS low [m/min]"]), at).toBeLessThan(num(m["Speed HSS high [m/min]"]));
        expect(num(m["Speed HSS high [m/min]"]), at).toBeLessThanOrEqual(num(m["Speed carbide low [m/min]"]));
      }
      const feeds = [3, 6, 12].map((d) => num(m[`Feed ${d} mm [mm per tooth]`]) / d);
      for (const share of feeds) {
        expect(share, at).toBeGreaterThan(0.002);
        expect(share, at).toBeLessThan(0.011);
      }
      expect(num(m["Feed 3 mm [mm per tooth]"]), at).toBeLessThan(num(m["Feed 6 mm [mm per tooth]"]));
      expect(num(m["Feed 6 mm [mm per tooth]"]), at).toBeLessThan(num(m["Feed 12 mm [mm per tooth]"]));
    }
  });
  it("gives a reference life wherever it gives a Taylor exponent", () => {
    for (const m of materials)
      expect(m["Taylor n"] === null, String(m.Material)).toBe(m["Reference life [min]"] === null);
  });
  it("gives no speed for high-speed steel in hardened steel", () => {
    for (const m of materials.filter((x) => x.Group === "H")) expect(m["Speed HSS high [m/min]"]).toBeNull();
  });
});

describe("machines (independent)", () => {
  it("has torque above power over full speed, and feeds and limits in order", () => {
    for (const m of machines) {
      const at = String(m.Machine);
      // P = 2π·n·T: at full speed the motor cannot hold more torque than this, at low speed it holds the stated one.
      const atFullSpeed = (num(m["Power [kW]"]) * 60000) / (2 * Math.PI * num(m["Max rpm"]));
      expect(num(m["Torque [N·m]"]), at).toBeGreaterThanOrEqual(atFullSpeed);
      expect(num(m["Min rpm"]), at).toBeLessThan(num(m["Max rpm"]));
      expect(num(m["Max feed [m/min]"]), at).toBeLessThanOrEqual(num(m["Rapid [m/min]"]));
      expect(num(m.Damping), at).toBeLessThan(0.1);
    }
  });
  it("goes from slow to fast", () => {
    for (const heading of ["Acceleration [m/s²]", "Max feed [m/min]", "Rate [per hour]"]) {
      const values = machines.map((m) => num(m[heading]));
      expect([...values].sort((a, b) => a - b)).toEqual(values);
    }
  });
});
