import { describe, expect, it } from "vitest";
import { THREAD_MILL_USE, TOOLS } from "../../src/lists/tools.ts";

type Tool = Record<string, string | number | null>;
const tools: Tool[] = TOOLS.slice(1).map((row) =>
  Object.fromEntries(TOOLS[0]!.map((h, i) => [String(h), row[i] ?? null])),
);
const byName = new Map(tools.map((t) => [String(t.Tool), t]));
const at = (tool: Tool, heading: string) => {
  expect(typeof tool[heading], `${tool.Tool} ${heading}`).toBe("number");
  return tool[heading] as number;
};
/** Length in millimetres. */
const mm = (tool: Tool, heading: string) => at(tool, heading) * (tool.Units === "in" ? 25.4 : 1);

/**
 * Major diameter, pitch, least and largest minor diameter of internal threads, 2B and 6H, as the standards print them.
 * From memory of ASME B1.1 and ISO 965-2 tables.
 */
const THREADS: Record<string, readonly [units: "mm" | "in", major: number, pitch: number, low: number, high: number]> =
  {
    "M3x0.5": ["mm", 3, 0.5, 2.459, 2.599],
    "M4x0.7": ["mm", 4, 0.7, 3.242, 3.422],
    "M5x0.8": ["mm", 5, 0.8, 4.134, 4.334],
    M6x1: ["mm", 6, 1, 4.917, 5.153],
    "M8x1.25": ["mm", 8, 1.25, 6.647, 6.912],
    M8x1: ["mm", 8, 1, 6.917, 7.153],
    "M10x1.5": ["mm", 10, 1.5, 8.376, 8.676],
    "M10x1.25": ["mm", 10, 1.25, 8.647, 8.912],
    M10x1: ["mm", 10, 1, 8.917, 9.153],
    "M12x1.75": ["mm", 12, 1.75, 10.106, 10.441],
    "M12x1.5": ["mm", 12, 1.5, 10.376, 10.676],
    "M12x1.25": ["mm", 12, 1.25, 10.647, 10.912],
    M16x2: ["mm", 16, 2, 13.835, 14.21],
    "M16x1.5": ["mm", 16, 1.5, 14.376, 14.676],
    "#4-40 UNC": ["in", 0.112, 1 / 40, 0.0849, 0.0939],
    "#6-32 UNC": ["in", 0.138, 1 / 32, 0.104, 0.114],
    "#8-32 UNC": ["in", 0.164, 1 / 32, 0.13, 0.139],
    "#10-24 UNC": ["in", 0.19, 1 / 24, 0.145, 0.156],
    "#10-32 UNF": ["in", 0.19, 1 / 32, 0.156, 0.164],
    "1/4-20 UNC": ["in", 0.25, 1 / 20, 0.196, 0.207],
    "1/4-28 UNF": ["in", 0.25, 1 / 28, 0.211, 0.22],
    "5/16-18 UNC": ["in", 0.3125, 1 / 18, 0.252, 0.265],
    "5/16-24 UNF": ["in", 0.3125, 1 / 24, 0.267, 0.277],
    "3/8-16 UNC": ["in", 0.375, 1 / 16, 0.307, 0.321],
    "3/8-24 UNF": ["in", 0.375, 1 / 24, 0.33, 0.34],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: a minor diameter, not a logarithm
    "1/2-13 UNC": ["in", 0.5, 1 / 13, 0.417, 0.434],
    "1/2-20 UNF": ["in", 0.5, 1 / 20, 0.446, 0.457],
  };

/** Sizes of a thread in millimetres. */
function thread(name: string) {
  const [units, major, pitch, low, high] = THREADS[name]!;
  const k = units === "in" ? 25.4 : 1;
  return { major: major * k, pitch: pitch * k, low: low * k, high: high * k };
}

/**
 * How far the tip goes beyond the wall of a hole [mm]: a cutter with tip flat f reaches the pitch line of a 60° groove
 * when its tip stands (P/4 − f/2)·√3 outside it. The helix, which takes a little of it back, is left out.
 */
function tipDepth(name: string, flat: number, hole: number): number {
  const { major, pitch } = thread(name);
  const pitchRadius = (major - 0.75 * (Math.sqrt(3) / 2) * pitch) / 2;
  return pitchRadius + (pitch / 4 - flat / 2) * Math.sqrt(3) - hole / 2;
}

describe("sizes of the tools (independent)", () => {
  it("fills what every kind needs", () => {
    const always = [
      "Diameter",
      "Teeth",
      "Cutting length",
      "Shank diameter",
      "Stick-out",
      "Edge radius",
      "Rupture strength [MPa]",
      "Modulus [GPa]",
      "Notch factor",
      "Runout",
      "Max rpm",
      "Price",
      "Edges",
    ];
    const own: Record<string, string[]> = {
      drill: ["Point angle", "Helix"],
      tap: ["Pitch", "Chamfer [pitches]", "Neck diameter", "Neck length", "Profile angle"],
      reamer: ["Neck diameter", "Neck length", "Helix"],
      countersink: ["Point angle"],
      "end mill": ["Corner radius", "Helix", "Edge angle"],
      "ball end mill": ["Corner radius", "Helix", "Edge angle"],
      "face mill": ["Corner radius", "Helix", "Edge angle"],
      "thread mill single": ["Neck diameter", "Neck length", "Tip flat", "Profile angle", "Helix", "Tip to profile"],
      "thread mill full": [
        "Neck diameter",
        "Neck length",
        "Tip flat",
        "Profile angle",
        "Helix",
        "Tip to profile",
        "Pitch",
      ],
    };
    for (const t of tools) for (const heading of [...always, ...own[String(t.Kind)]!]) at(t, heading);
  });
  it("keeps strength and stiffness to the substrate", () => {
    for (const t of tools) {
      expect(["carbide", "HSS"]).toContain(t.Substrate);
      expect(at(t, "Modulus [GPa]"), String(t.Tool)).toBe(t.Substrate === "HSS" ? 210 : 600);
      expect(at(t, "Notch factor")).toBeGreaterThanOrEqual(1.2);
      expect(at(t, "Notch factor")).toBeLessThanOrEqual(1.6);
    }
  });
  it("has edges as sharp as such tools are, in millimetres, whatever the row's units", () => {
    for (const t of tools) {
      const r = mm(t, "Edge radius");
      expect(r, String(t.Tool)).toBeGreaterThanOrEqual(0.003);
      expect(r, String(t.Tool)).toBeLessThanOrEqual(t.Kind === "face mill" ? 0.05 : 0.02);
      expect(mm(t, "Runout"), String(t.Tool)).toBeLessThanOrEqual(0.04);
    }
  });
  it("has lengths in order: cutting part, neck, stick-out", () => {
    for (const t of tools) {
      const name = String(t.Tool);
      expect(at(t, "Cutting length"), name).toBeLessThan(at(t, "Stick-out"));
      if (t["Neck length"] === null) continue;
      expect(at(t, "Neck length"), name).toBeGreaterThanOrEqual(at(t, "Cutting length"));
      expect(at(t, "Neck length"), name).toBeLessThan(at(t, "Stick-out"));
      expect(at(t, "Neck diameter"), name).toBeLessThan(at(t, "Diameter"));
      expect(at(t, "Neck diameter"), name).toBeLessThan(at(t, "Shank diameter"));
    }
  });
  it("has a ball of half the diameter on every ball end mill", () => {
    for (const t of tools.filter((x) => x.Kind === "ball end mill")) {
      expect(at(t, "Corner radius"), String(t.Tool)).toBeCloseTo(at(t, "Diameter") / 2, 10);
    }
  });
  it("carries the size in the code", () => {
    for (const t of tools) {
      const metric = /^(?:D|EM|BM|FM)-(\d+(?:\.\d+)?)(?:C|-\d[HL]?)?$/.exec(String(t.Tool));
      if (metric && t.Units === "mm") expect(at(t, "Diameter"), String(t.Tool)).toBe(Number(metric[1]));
      const inch = /^(?:D|EM|BM)-(\d+)\/(\d+)(?:C|-\d[HL]?)?$/.exec(String(t.Tool));
      if (inch) expect(at(t, "Diameter"), String(t.Tool)).toBeCloseTo(Number(inch[1]) / Number(inch[2]), 4);
      const teeth = /^(?:EM|BM|FM)-.*-(\d)[HL]?$/.exec(String(t.Tool));
      if (teeth) expect(at(t, "Teeth"), String(t.Tool)).toBe(Number(teeth[1]));
      expect(String(t.Tool)).toMatch(/^(?:D|EM|BM|FM|TM|T|R|CS)-/);
    }
  });
});

describe("number and letter drills (published)", () => {
  // ASME B94.11M, twist drills, table of diameters; from memory.
  const inches = { "#43": 0.089, "#36": 0.1065, "#29": 0.136, "#25": 0.1495, "#21": 0.159, "#7": 0.201, "#3": 0.213 };
  const letters = { F: 0.257, I: 0.272, Q: 0.332 };
  it("has the diameters of the standard", () => {
    for (const [name, size] of Object.entries({ ...inches, ...letters })) {
      expect(at(byName.get(`D-${name}`)!, "Diameter")).toBe(size);
    }
  });
});

describe("geometry of the thread mills (independent)", () => {
  const uses = Object.entries(THREAD_MILL_USE).flatMap(([tool, threads]) => threads.map((t) => [tool, t] as const));

  it("lists a use for every thread mill but the long and the unsuitable ones", () => {
    const mills = tools.filter((t) => String(t.Kind).startsWith("thread mill")).map((t) => String(t.Tool));
    expect(Object.keys(THREAD_MILL_USE).sort()).toEqual(mills.filter((m) => !/-S[LX]$/.test(m)).sort());
  });
  it("enters the smallest hole with room for chips", () => {
    for (const [tool, name] of uses) {
      const share = mm(byName.get(tool)!, "Diameter") / thread(name).low;
      expect(share, `${tool} ${name}`).toBeLessThan(0.95);
      expect(share, `${tool} ${name}`).toBeGreaterThan(0.7);
    }
  });
  it("has a tip flat no wider than an eighth of the finest pitch", () => {
    for (const [tool, name] of uses) {
      expect(mm(byName.get(tool)!, "Tip flat"), `${tool} ${name}`).toBeLessThanOrEqual(thread(name).pitch / 8);
    }
  });
  it("has a profile deep enough, and a neck that clears the smallest hole", () => {
    for (const [tool, name] of uses) {
      const t = byName.get(tool)!;
      const profile = (mm(t, "Diameter") - mm(t, "Neck diameter")) / 2;
      const depth = tipDepth(name, mm(t, "Tip flat"), thread(name).low);
      expect(profile, `${tool} ${name}`).toBeGreaterThan(depth + 0.01);
    }
  });
  it("has a head as wide as its profile, and the profile inside the head", () => {
    for (const [tool] of uses) {
      const t = byName.get(tool)!;
      if (t.Kind !== "thread mill single") continue;
      const profile = (mm(t, "Diameter") - mm(t, "Neck diameter")) / 2;
      const width = mm(t, "Tip flat") + (2 * profile) / Math.sqrt(3);
      expect(mm(t, "Cutting length"), tool).toBeGreaterThanOrEqual(width);
      expect(mm(t, "Tip to profile"), tool).toBeGreaterThanOrEqual(width / 2);
      expect(mm(t, "Tip to profile"), tool).toBeLessThanOrEqual(mm(t, "Cutting length"));
    }
  });
  it("reaches two to three diameters deep", () => {
    for (const [tool, name] of uses) {
      const reach = mm(byName.get(tool)!, "Neck length") / thread(name).major;
      expect(reach, `${tool} ${name}`).toBeGreaterThanOrEqual(2);
      expect(reach, `${tool} ${name}`).toBeLessThanOrEqual(3);
    }
  });
  it("has the pitch of its thread on every full-profile cutter", () => {
    for (const [tool, [name]] of Object.entries(THREAD_MILL_USE)) {
      const t = byName.get(tool)!;
      if (t.Kind === "thread mill full") expect(mm(t, "Pitch"), tool).toBeCloseTo(thread(name!).pitch, 4);
      else expect(t.Pitch, tool).toBeNull();
    }
  });
  it("keeps two cutters that are wrong on purpose", () => {
    const thick = byName.get("TM-M6-SX")!;
    const profile = (mm(thick, "Diameter") - mm(thick, "Neck diameter")) / 2;
    expect(profile).toBeLessThan(tipDepth("M6x1", mm(thick, "Tip flat"), thread("M6x1").high));
    const wide = byName.get("TM-38-SX")!;
    expect(mm(wide, "Tip flat")).toBeGreaterThan(thread("3/8-24 UNF").pitch / 8);
    expect(mm(wide, "Tip flat")).toBeLessThanOrEqual(thread("3/8-16 UNC").pitch / 8);
  });
  it("keeps the long ones slender: five diameters and more", () => {
    expect(mm(byName.get("TM-M6-SL")!, "Neck length") / 6).toBeGreaterThanOrEqual(5);
    expect(mm(byName.get("TM-14-SL")!, "Neck length") / 6.35).toBeGreaterThanOrEqual(5);
  });
});

describe("taps, reamers and drills of the shop (published: ISO 965-1, ASME B1.1, from memory; common practice)", () => {
  const kind = (k: string) => tools.filter((t) => t.Kind === k);
  it("has the coarse pitch of its size on every metric tap, and a chamfer of the standard's lengths", () => {
    const coarse: Record<number, number> = { 3: 0.5, 4: 0.7, 5: 0.8, 6: 1, 8: 1.25, 10: 1.5, 12: 1.75 };
    for (const t of kind("tap")) {
      if (t.Units === "mm") expect(t.Pitch, String(t.Tool)).toBe(coarse[at(t, "Diameter")]);
      const bottoming = String(t.Tool).endsWith("B");
      expect(at(t, "Chamfer [pitches]")).toBeGreaterThanOrEqual(bottoming ? 1 : 3);
      expect(at(t, "Chamfer [pitches]")).toBeLessThanOrEqual(bottoming ? 2 : 5);
    }
  });
  it("has necks on taps that pass the smallest hole of their thread", () => {
    for (const t of kind("tap")) {
      const low = mm(t, "Diameter") - 1.0825 * mm(t, "Pitch");
      expect(mm(t, "Neck diameter"), String(t.Tool)).toBeLessThan(low);
    }
  });
  it("has a drill for every reamer that leaves 0.1 to 0.3 mm when its hole comes out", () => {
    for (const t of kind("reamer")) {
      const fits = kind("drill").filter((d) => {
        const stock = mm(t, "Diameter") - mm(d, "Diameter");
        return stock > 0.19 && stock < 0.35;
      });
      expect(fits.length, String(t.Tool)).toBeGreaterThan(0);
    }
  });
});
