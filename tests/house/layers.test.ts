import fs from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { SOURCES } from "../../src/sources.ts";
import { filesBelow, root } from "./files.ts";

const importsOf = (file: string) =>
  [...fs.readFileSync(file, "utf8").matchAll(/(?:from|import)\s+"(\.[^"]+)"/g)].map((m) =>
    path.relative(root, path.resolve(path.dirname(file), m[1]!)),
  );

/** Ground floor: imported by formulas, imports none of them. */
const GROUND = /^src\/(?:units|errors|check|numeric|decimal|reading|sources)\.ts$/;

describe("layer rules (house)", () => {
  const src = filesBelow("src", ".ts");
  it("lets src import from src only", () => {
    for (const file of src) for (const i of importsOf(file)) expect(i, path.relative(root, file)).toMatch(/^src\//);
  });
  it("lets functions import from src and functions only", () => {
    for (const file of filesBelow("functions", ".ts")) {
      for (const i of importsOf(file)) expect(i, path.relative(root, file)).toMatch(/^(?:src|functions)\//);
    }
  });
  it("keeps the ground floor free of formulas, and formulas free of lists and plan", () => {
    for (const file of src) {
      const name = path.relative(root, file);
      for (const i of importsOf(file)) {
        if (GROUND.test(name)) expect(i, name).toMatch(GROUND);
        else if (!/^src\/(?:table|operations|callouts|quote|plan|lists|words|program)\//.test(name))
          expect(i, name).not.toMatch(/^src\/(?:table|operations|callouts|quote|plan|lists|words|program)\//);
      }
    }
  });
  it("keeps DOM, Office, clock, files and randomness out of src and functions", () => {
    for (const file of [...src, ...filesBelow("functions", ".ts")]) {
      const code = fs
        .readFileSync(file, "utf8")
        .replace(/\/\*[\s\S]*?\*\//g, "")
        .replace(/\/\/.*$/gm, "");
      expect(code, path.relative(root, file)).not.toMatch(
        /\b(?:document|window|localStorage|fetch|Office|Excel|Math\.random|Date\.now|new Date|performance\.|setTimeout|require)\b\s*[.(]/,
      );
      expect(code, path.relative(root, file)).not.toMatch(/from "node:/);
    }
  });
  it("names Office in one file of the pane only", () => {
    for (const file of filesBelow("taskpane", ".ts")) {
      const name = path.relative(root, file);
      if (name === "taskpane/host/excel.ts") continue;
      const code = fs
        .readFileSync(file, "utf8")
        .replace(/\/\*[\s\S]*?\*\//g, "")
        .replace(/\/\/.*$/gm, "");
      expect(code, name).not.toMatch(/\b(?:Office|Excel|OfficeExtension)\.[a-zA-Z]/);
    }
  });
});

describe("bibliography (house)", () => {
  const used = new Set<string>();
  for (const file of filesBelow("src", ".ts")) {
    if (file.endsWith("sources.ts")) continue;
    const code = fs.readFileSync(file, "utf8");
    for (const m of code.matchAll(/@source ([A-Z0-9_ ]+)/g)) for (const id of m[1]!.trim().split(/\s+/)) used.add(id);
    for (const m of code.matchAll(/source: "([A-Z0-9_]+)"/g)) used.add(m[1]!);
    for (const id of Object.keys(SOURCES)) if (new RegExp(`"${id}"`).test(code)) used.add(id);
  }
  it("knows every id that is cited", () => {
    for (const id of used) expect(Object.keys(SOURCES), id).toContain(id);
  });
  it("holds no entry that nothing cites", () => {
    for (const id of Object.keys(SOURCES)) expect([...used], id).toContain(id);
  });
});
