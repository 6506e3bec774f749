/** Which versions of Excel the code needs, read from the types of Office itself, against what the manifest declares. */
import fs from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { ERROR_CODES } from "../../functions/cells.ts";
import { NEEDS } from "../../taskpane/host/excel/versions.ts";
import { root } from "./files.ts";

const HOST = fs
  .readdirSync(path.join(root, "taskpane", "host", "excel"))
  .map((name) => path.join(root, "taskpane", "host", "excel", name));
/** Members that the types do not know yet, with the version they came in (the platform's release notes; from memory). */
const UNTYPED: Readonly<Record<string, string>> = { mergeUndoGroup: "1.20" };
/** "1.9" before "1.13". */
const later = (a: string, b: string) => Number(a.split(".")[1]) - Number(b.split(".")[1]);

/** Set and version that Office's own doc comment asks for: "[Api set: ExcelApi 1.9]". */
function asked(symbol: ts.Symbol): string | undefined {
  for (const declaration of symbol.declarations ?? []) {
    if (!/office-js/.test(declaration.getSourceFile().fileName)) continue;
    for (let node: ts.Node | undefined = declaration; node && !ts.isSourceFile(node); node = node.parent) {
      const text = node.getSourceFile().text.slice(node.pos, node.getStart());
      const set = /\[Api set: ExcelApi (\d+\.\d+)/.exec(text)?.[1];
      if (set !== undefined) return set;
    }
  }
  return undefined;
}

/** Every member of Excel that the host uses, with the version it came in. */
function used(): Map<string, string> {
  const { config } = ts.readConfigFile(path.join(root, "tsconfig.json"), ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const program = ts.createProgram(HOST, options);
  const checker = program.getTypeChecker();
  const found = new Map<string, string>();
  const walk = (node: ts.Node): void => {
    if (
      ts.isPropertyAccessExpression(node) ||
      ts.isPropertyAssignment(node) ||
      ts.isShorthandPropertyAssignment(node)
    ) {
      const name = node.name;
      let symbol = checker.getSymbolAtLocation(name);
      if (ts.isPropertyAssignment(node) && ts.isObjectLiteralExpression(node.parent))
        symbol = checker.getContextualType(node.parent)?.getProperty(name.getText());
      const version = symbol && asked(symbol);
      if (version !== undefined) found.set(name.getText(), version);
    }
    node.forEachChild(walk);
  };
  for (const file of HOST) walk(program.getSourceFile(file)!);
  return found;
}

describe("requirement sets (house)", { timeout: 120_000 }, () => {
  const text = HOST.map((file) => fs.readFileSync(file, "utf8")).join("\n");
  const members = used();
  for (const [member, version] of Object.entries(UNTYPED))
    if (text.includes(`.${member} =`)) members.set(member, version);

  it("sees what the host uses", () => {
    expect(members.size).toBeGreaterThan(40);
    expect(members.get("getUsedRangeOrNullObject")).toBeDefined();
  });
  it("declares the version of Excel that is used without asking first, no less and no more", () => {
    const declared = NEEDS.ExcelApi!;
    const beyond = [...members].filter(([, version]) => later(version, declared) > 0);
    const within = [...members.values()].filter((version) => later(version, declared) <= 0);
    expect(within.sort(later).at(-1)).toBe(declared);
    // What is newer is used only behind a question for at least its version.
    const questions = [...text.matchAll(/"(1\.\d+)"/g)].map((m) => m[1]!).filter((v) => later(v, declared) > 0);
    expect(text).toMatch(/isSetSupported\("ExcelApi", version\)/);
    for (const [member, version] of beyond)
      expect(
        questions.some((asks) => later(asks, version) >= 0),
        `${member} needs ${version}`,
      ).toBe(true);
    for (const asks of questions)
      expect(
        beyond.some(([, version]) => version === asks),
        `nothing used needs ${asks}`,
      ).toBe(true);
  });
  it("declares the runtime of worksheet functions that knows every error handed back", () => {
    // Microsoft's list of requirement sets: CustomFunctions.Error came with 1.2, codes beyond #VALUE!, #N/A, #NUM! and
    // #DIV/0! with 1.3.
    const codes = ERROR_CODES.filter((code) => !["#VALUE!", "#N/A", "#NUM!", "#DIV/0!"].includes(code));
    expect(NEEDS.CustomFunctionsRuntime).toBe(codes.length > 0 ? "1.3" : "1.2");
  });
  it("declares the shared runtime that the manifest runs in", () => {
    const manifest = fs.readFileSync(path.join(root, "manifest.xml"), "utf8");
    expect(NEEDS.SharedRuntime).toBe(manifest.includes('lifetime="long"') ? "1.1" : undefined);
  });
});
