import fs from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { SOURCES } from "../../src/sources.ts";
import { filesBelow, root } from "./files.ts";

const importsOf = (file: string) =>
  [...fs.readFileSync(file, "utf8").matchAll(/(?:from|import)\s+"(\.[^"]+)"/g)].map((m) =>
    path.relative(root, path.resolve(path.dirname(file), m[1]!)),
  );

/** Floors of src from the ground up: a file imports from its own floor and those below. */
const FLOORS: readonly (readonly [name: string, pattern: RegExp])[] = [
  ["ground", /^src\/(?:units|errors|allowed|check|numeric|decimal|reading|calendar|sources|cache)\.ts$/],
  ["formulas", /^src\/(?:(?:thread|drill|mill|tool|fits)\/|(?:time|life|cost)\.ts$)/],
  ["table", /^src\/table\//],
  ["findings", /^src\/findings\.ts$/],
  ["operations", /^src\/operations\//],
  ["words", /^src\/words\//],
  ["plan", /^src\/plan\//],
  ["uses", /^src\/(?:callouts|quote|program|lists)\//],
];
const floorOf = (file: string): number => FLOORS.findIndex(([, pattern]) => pattern.test(file));

/** Texts of four words or more. The name of a memory is no sentence. */
function sentences(code: string): string[] {
  const found: string[] = [];
  const look = (node: ts.Node): void => {
    const called = ts.isNewExpression(node) || ts.isCallExpression(node) ? node.expression.getText(tree) : "";
    if (called === "Cache" || called === "remembered") return;
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isTemplateExpression(node)) {
      const text = node.getText(tree);
      if (
        text
          .replace(/\$\{(?:[^{}]|\{[^{}]*\})*\}/g, "x")
          .trim()
          .split(/\s+/).length > 3
      )
        found.push(text);
    } else ts.forEachChild(node, look);
  };
  const tree = ts.createSourceFile("code.ts", code, ts.ScriptTarget.Latest, true);
  look(tree);
  return found;
}

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
  it("has a floor for every file, and imports from the same floor or one below", () => {
    for (const file of src) {
      const name = path.relative(root, file);
      expect(floorOf(name), name).toBeGreaterThanOrEqual(0);
      for (const i of importsOf(file)) {
        expect(floorOf(i), `${name} imports ${i}`).toBeGreaterThanOrEqual(0);
        expect(floorOf(i), `${name} imports ${i}`).toBeLessThanOrEqual(floorOf(name));
      }
    }
  });
  it("keeps sentences out of the ground, formulas, the table and findings: errors and findings are codes with values", () => {
    const files = src.filter((file) => {
      const name = path.relative(root, file);
      // Headings, spellings, the bibliography and where a printed figure differs are data.
      if (name.startsWith("src/table/")) return /\/(?:cell|read|results|number-text|quantity)\.ts$/.test(name);
      return floorOf(name) < floorOf("src/operations/index.ts") && !/\/(?:sources|unified-exceptions)\.ts$/.test(name);
    });
    expect(files.length).toBeGreaterThan(80);
    expect(
      files.flatMap((file) =>
        sentences(fs.readFileSync(file, "utf8")).map((text) => `${path.relative(root, file)}: ${text}`),
      ),
    ).toEqual([]);
  });
  it("sees a sentence, in an error too", () => {
    expect(sentences('work.say("the hole is too small");')).toEqual(['"the hole is too small"']);
    expect(sentences("const text = `hole of $" + "{d} is too small`;")).toHaveLength(1);
    expect(sentences('throw new TradeError("range", "d", d, "a hole above 0 is allowed");')).toHaveLength(1);
    expect(sentences('const known = new Cache<string, number>("basic sizes of threads", 20);')).toEqual([]);
  });
  it.each([
    ["operations", /^$/],
    ["plan", /^$/],
    ["callouts", /^src\/callouts\/(?:remarks|words)\//],
  ])("keeps sentences out of %s: they are made of codes and values, in words", (folder, words) => {
    const files = filesBelow(`src/${folder}`, ".ts").filter((file) => !words.test(path.relative(root, file)));
    expect(files).not.toEqual([]);
    for (const file of files) {
      const code = fs
        .readFileSync(file, "utf8")
        .replace(/\/\*[\s\S]*?\*\//g, "")
        .replace(/\/\/.*$/gm, "");
      for (const [literal] of code.matchAll(/"[^"\n]*"|`[^`]*`/g)) {
        const prose = literal
          .replace(/\$\{[^}]*\}/g, "")
          .split(/\s+/)
          .filter((word) => /^["`(]?\p{L}{2,}["`),;:.]?$/u.test(word));
        expect(prose.length, `${path.relative(root, file)}: ${literal}`).toBeLessThan(4);
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
  it("names Office in the Excel host only", () => {
    for (const file of filesBelow("taskpane", ".ts")) {
      const name = path.relative(root, file);
      if (name.startsWith("taskpane/host/excel/")) continue;
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
