import { describe, expect, it } from "vitest";
import { BLANK_PLAN, DEMO, DEMO_NOTES } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { ROW_COLUMNS } from "../../src/table/columns.ts";

const HEADINGS =
  "Row|Feature|Operation|Units|Quantity|Material|Machine|Tool|Thread|Start diameter|Finish diameter|Depth|Through|Hand|Way|Length|Side|Radial depth|Axial depth|Passes|Spring passes|Stick-out|Surface speed|Feed per tooth|Max rpm|Hole depth|Batch|Spacing|Wear factor|Measured|Wear value|Size tolerance|Remark";
const rows = DEMO.slice(1).map((row) => Object.fromEntries(DEMO[0]!.map((h, i) => [String(h), row[i] ?? null])));
const row = (number: number) => rows.find((r) => r.Row === number)!;
const note = (r: (typeof rows)[number]) => DEMO_NOTES[r.Row as number]!;
const names = (block: typeof TOOLS) => new Set(block.slice(1).map((r) => String(r[0])));
const tool = (name: unknown) => {
  const cells = TOOLS.find((r) => r[0] === name)!;
  return Object.fromEntries(TOOLS[0]!.map((h, i) => [String(h), cells[i] ?? null]));
};

describe("the demo job (regression)", () => {
  it("carries the canonical headings", () => {
    expect(DEMO[0]!.join("|")).toBe(HEADINGS);
    expect(BLANK_PLAN[0]).toEqual(DEMO[0]);
    // Inputs that the demo job leaves blank: the drilling oversize to the handbook, the others to the trade.
    const blank = ["drillOversize", "roughness", "coolant", "insideCorner", "sizeClass", "totalWidth"];
    const columns = ROW_COLUMNS.filter((c) => !blank.includes(c.key));
    expect([...DEMO[0]!].sort()).toEqual(columns.map((c) => c.heading).sort());
  });
  it("offers twenty empty rows to begin with", () => {
    expect(BLANK_PLAN.length).toBe(21);
    for (const r of BLANK_PLAN.slice(1)) expect(r).toEqual(DEMO[0]!.map(() => null));
  });
  it("has rows of every operation, both units, several materials and machines", () => {
    expect(rows.length).toBeGreaterThanOrEqual(45);
    expect(new Set(rows.map((r) => r.Row)).size).toBe(rows.length);
    expect(new Set(rows.map((r) => r.Operation))).toEqual(
      new Set(["drill", "thread mill", "bore", "boss", "slot", "side", "face"]),
    );
    expect(new Set(rows.filter((r) => r.Operation === "side").map((r) => r.Side)).size).toBe(3);
    for (const units of ["mm", "in"]) expect(rows.filter((r) => r.Units === units).length).toBeGreaterThan(15);
    expect(new Set(rows.map((r) => r.Material)).size).toBeGreaterThanOrEqual(6);
    expect(new Set(rows.map((r) => r.Machine).filter((m) => m !== null)).size).toBe(5);
  });
  it("names what the lists hold, but for one material that is unknown on purpose", () => {
    const [tools, materials, machines] = [names(TOOLS), names(MATERIALS), names(MACHINES)];
    for (const r of rows) {
      expect(tools, `row ${r.Row}`).toContain(r.Tool);
      if (r.Machine !== null) expect(machines, `row ${r.Row}`).toContain(r.Machine);
      if (r.Row !== 610) expect(materials, `row ${r.Row}`).toContain(r.Material);
      else expect(materials).not.toContain(r.Material);
    }
  });
  it("says of every row what is expected and why", () => {
    expect(Object.keys(DEMO_NOTES).length).toBe(rows.length);
    for (const r of rows) {
      expect(["ok", "check", "stop"], `row ${r.Row}`).toContain(note(r).expect);
      expect(note(r).why.length, `row ${r.Row}`).toBeGreaterThan(8);
    }
    const wrong = rows.filter((r) => note(r).expect !== "ok").length / rows.length;
    expect(wrong).toBeGreaterThan(0.28);
    expect(wrong).toBeLessThan(0.45);
  });
});

describe("the wrong rows of the demo job (independent)", () => {
  it("drills and mills fine threads in the holes of the coarse pitch", () => {
    // Least minor diameters: M10×1.25-6H 8.647 (ISO 965-2), 3/8-24 UNF-2B 0.330 (ASME B1.1); from memory.
    expect(tool(row(180).Tool).Diameter).toBeLessThan(8.647);
    expect(row(250)["Start diameter"]).toBeLessThan(8.647);
    expect(tool(row(350).Tool).Diameter).toBeLessThan(0.33);
    expect(row(410)["Start diameter"]).toBe("5/16");
    for (const n of [180, 250, 350, 410]) expect(note(row(n)).expect).toBe("stop");
  });
  it("puts cutters where they do not fit", () => {
    expect(tool(row(120).Tool).Diameter).toBeGreaterThan(row(120)["Finish diameter"] as number);
    expect(tool(row(460).Tool).Diameter).toBeGreaterThan(row(460)["Start diameter"] as number);
    expect(tool(row(540).Tool).Diameter).toBe(row(540)["Finish diameter"]);
    for (const n of [120, 460, 540]) expect(note(row(n)).expect).toBe("stop");
  });
  it("asks a short neck for a deep thread, and a blind hole for one that has no room", () => {
    expect(tool(row(230).Tool)["Neck length"]).toBeLessThan(row(230).Depth as number);
    const below = tool(row(270).Tool)["Tip to profile"] as number;
    expect((row(270).Depth as number) + below).toBeGreaterThan(row(270)["Hole depth"] as number);
  });
  it("asks the knee mill for twice its power", () => {
    // P = Q·kc/60000 at the middle of the speed range, h = fz·sin 45°, Kienzle.
    const [ae, ap, d, z, fz] = [row(150)["Radial depth"] as number, row(150)["Axial depth"] as number, 50, 5, 0.07];
    const n = (1000 * 155) / (Math.PI * d);
    const q = (ae * ap * n * z * fz) / 1000;
    const kc = 2220 * (fz * Math.SQRT1_2) ** -0.14;
    expect((q * kc) / 60000).toBeGreaterThan(2 * 1.5);
  });
  it("runs the slow axes faster round the circle than they can", () => {
    // Centre feed of a finished edge at the middle of the speed range against √(a·r).
    const r = row(510);
    const [dm, dc] = [(r["Finish diameter"] as number) * 25.4, 12];
    const n = (1000 * 375) / (Math.PI * dc);
    const centre = (n * 3 * 0.1 * 2 * (dm - dc)) / dm;
    const limit = 60 * Math.sqrt(1000 * 0.25 * ((dm - dc) / 2));
    expect(centre).toBeGreaterThan(limit);
  });
  it("takes a chip below the least chip of the edge", () => {
    const edge = tool(row(600).Tool)["Edge radius"] as number;
    expect(row(600)["Feed per tooth"]).toBeLessThan(0.3 * edge);
  });
  it("lets two tools hang out more than four diameters", () => {
    for (const n of [670, 680]) {
      expect(row(n)["Stick-out"]).toBeGreaterThan(4 * (tool(row(n).Tool).Diameter as number));
      expect(note(row(n)).expect).toBe("check");
    }
  });
});

describe("the right rows of the demo job (independent)", () => {
  it("starts threads in holes inside the minor limits", () => {
    // Minor limits 6H and 2B as printed in ISO 965-2 and ASME B1.1; from memory.
    const limits: Record<number, readonly [number, number]> = {
      60: [6.647, 6.912],
      80: [8.917, 9.153],
      210: [4.917, 5.153],
      260: [8.647, 8.912],
      380: [0.196, 0.207],
      390: [0.211, 0.22],
      420: [0.33, 0.34],
      470: [0.156, 0.164],
      480: [0.0849, 0.0939],
      640: [10.106, 10.441],
    };
    for (const [number, [low, high]] of Object.entries(limits)) {
      const start = row(Number(number))["Start diameter"] as number;
      expect(start, number).toBeGreaterThanOrEqual(low);
      expect(start, number).toBeLessThanOrEqual(high);
    }
  });
  it("keeps right rows inside the tool's cutting length or neck", () => {
    for (const r of rows.filter((x) => note(x).expect === "ok" && typeof x.Depth === "number")) {
      const t = tool(r.Tool);
      const factor = (t.Units === "in" ? 25.4 : 1) / (r.Units === "in" ? 25.4 : 1);
      const reach = (
        r.Operation === "thread mill" && t.Kind === "thread mill single" ? t["Neck length"] : t["Cutting length"]
      ) as number;
      expect(r.Depth as number, `row ${r.Row}`).toBeLessThanOrEqual(reach * factor);
    }
  });
});
