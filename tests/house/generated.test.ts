import fs from "node:fs";
import path from "node:path";
import vm from "node:vm";
import { describe, expect, it } from "vitest";
import { PLAN } from "../../functions/plan.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { root } from "./files.ts";

const read = (...parts: string[]) => fs.readFileSync(path.join(root, ...parts), "utf8");

interface Described {
  functions: {
    id: string;
    description: string;
    parameters: { name: string; dimensionality?: string; optional?: boolean }[];
    result: { dimensionality?: string };
  }[];
}

describe("the functions bundle (house)", () => {
  // npm test builds first; a bare vitest run needs `npm run build`.
  const described = JSON.parse(read("dist", "functions.json")) as Described;
  const script = read("dist", "functions.js");

  class HostError {
    constructor(
      readonly code: string,
      readonly message?: string,
    ) {}
  }
  const associated = new Map<string, (...args: unknown[]) => unknown[][]>();
  const context = vm.createContext({
    CustomFunctions: {
      associate: (id: string, run: (...args: unknown[]) => unknown[][]) => associated.set(id, run),
      Error: HostError,
    },
  });
  new vm.Script(script).runInContext(context);

  it("has metadata that matches what is committed", () => {
    expect(read("functions", "generated", "functions.json")).toBe(read("dist", "functions.json"));
  });
  it("loads without a DOM and associates every function of the metadata", () => {
    expect([...associated.keys()].sort()).toEqual(described.functions.map((f) => f.id).sort());
  });
  it("declares every argument and answer a matrix", () => {
    for (const f of described.functions) {
      expect(f.result.dimensionality, f.id).toBe("matrix");
      for (const p of f.parameters) expect(p.dimensionality, `${f.id} ${p.name}`).toBe("matrix");
    }
  });
  it("has a one-line description for each", () => {
    for (const f of described.functions) {
      expect(f.description, f.id).toMatch(/^\S.{8,}$/);
      expect(f.id).toMatch(/^[A-Z][A-Z0-9.]{2,}$/);
    }
  });
  it("answers numbers, and the host's own errors in their place", () => {
    const answer = associated.get("RPM")!([[120], ["fast"]], [[10]], [["mm"]], null, { address: "Sheet1!A1" });
    expect(answer[0]![0]).toBeCloseTo((1000 * 120) / (Math.PI * 10), 9);
    expect(answer[1]![0]).toBeInstanceOf(HostError);
    expect((answer[1]![0] as HostError).code).toBe("#VALUE!");
  });
  it("plans the demo job as the sources do, though it leaves out the steps", () => {
    const lists = [DEMO, MATERIALS, TOOLS, MACHINES] as unknown as any[][][];
    const mine = PLAN(lists[0]!, lists[1]!, lists[2]!, lists[3]!);
    expect(JSON.stringify(associated.get("PLAN")!(...lists))).toBe(JSON.stringify(mine));
    expect(mine).toHaveLength(DEMO.length);
  });
  it("stays under a megabyte of metadata", () => expect(read("dist", "functions.json").length).toBeLessThan(1_000_000));
});
