import fs from "node:fs";
import path from "node:path";
import vm from "node:vm";
import { beforeAll, describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { metadata } from "../../functions/metadata.mjs";
import { PLAN } from "../../functions/plan.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
// @ts-expect-error plain script without types
import { buildFunctions } from "../../taskpane/build/pages.mjs";
import { root } from "./files.ts";

const committed = (name: string) => fs.readFileSync(path.join(root, "functions", "generated", name), "utf8");

interface Described {
  allowErrorForDataTypeAny: boolean;
  functions: {
    id: string;
    description: string;
    parameters: { name: string; dimensionality?: string; optional?: boolean }[];
    result: { dimensionality?: string };
  }[];
}

describe("generated files (house)", () => {
  /** What a build would write now; nothing of the tree is touched. */
  let made: { json: string; reference: string };
  beforeAll(async () => {
    made = await metadata();
  });
  it("functions.json is what the doc comments give; npm run build writes it anew", () => {
    expect(committed("functions.json")).toBe(made.json);
  });
  it("REFERENCE.md is what the doc comments give; npm run build writes it anew", () => {
    expect(committed("REFERENCE.md")).toBe(made.reference);
  });
  it("give each function the shop's help page where there is one", async () => {
    const help = "https://tools.example.org/help";
    const { functions } = JSON.parse((await metadata(help)).json) as { functions: { helpUrl: string }[] };
    expect(new Set(functions.map((f) => f.helpUrl))).toEqual(new Set([help]));
    expect(made.json).not.toContain("helpUrl");
  });
});

describe("the functions bundle (house)", () => {
  const out = path.join(root, "tests", ".out", "functions");
  const described = JSON.parse(committed("functions.json")) as Described;

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
  beforeAll(async () => {
    await buildFunctions(out);
    new vm.Script(fs.readFileSync(path.join(out, "functions.js"), "utf8")).runInContext(context);
  });

  it("loads without a DOM and associates every function of the metadata", () => {
    expect([...associated.keys()].sort()).toEqual(described.functions.map((f) => f.id).sort());
  });
  it("takes error values in a range, which Excel otherwise refuses with the whole call", () => {
    expect(described.allowErrorForDataTypeAny).toBe(true);
    const answer = associated.get("RPM")!([[120], [new HostError("#N/A")], [60]], [[10]], [["mm"]]);
    expect(answer.map(([cell]) => (cell instanceof HostError ? cell.code : typeof cell))).toEqual([
      "number",
      "#N/A",
      "number",
    ]);
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
  it("stays under a megabyte of metadata", () => expect(committed("functions.json").length).toBeLessThan(1_000_000));
});
