import fs from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { declarations } from "../../functions/reference.mjs";
import { filesBelow, root } from "./files.ts";
import { agrees, runFormula } from "./formula-text.ts";

/** Formula folders: every exported function here is a formula and is documented as one. */
const FORMULAS = [
  ...["thread", "drill", "mill", "tool", "fits"].flatMap((f) => filesBelow(`src/${f}`, ".ts")),
  ...["time", "life", "cost"].map((f) => path.join(root, "src", `${f}.ts`)),
].filter((f) => fs.existsSync(f));

interface Documented {
  name: string;
  comment: string;
  parameters: string[];
  numeric: string[];
  returnsNumber: boolean;
}

function exportedFunctions(file: string): Documented[] {
  const text = fs.readFileSync(file, "utf8");
  const tree = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: Documented[] = [];
  tree.forEachChild((node) => {
    if (!ts.isFunctionDeclaration(node) || !node.name) return;
    if (!node.modifiers?.some((m) => m.kind === ts.SyntaxKind.ExportKeyword)) return;
    const comment = (ts.getLeadingCommentRanges(text, node.pos) ?? []).map((r) => text.slice(r.pos, r.end)).pop() ?? "";
    found.push({
      name: node.name.text,
      comment,
      parameters: node.parameters.map((p) => p.name.getText()),
      numeric: node.parameters.filter((p) => p.type?.getText() === "number").map((p) => p.name.getText()),
      returnsNumber: node.type?.getText() === "number",
    });
  });
  return found;
}

describe("doc comments of formulas (house)", () => {
  for (const file of FORMULAS) {
    const functions = exportedFunctions(file);
    if (functions.length === 0) continue;
    const name = path.relative(root, file);
    it(`${name} gives units, errors, a source and an example for each formula`, () => {
      for (const f of functions) {
        const at = `${name} ${f.name}`;
        expect(f.comment, `${at}: doc comment`).toMatch(/^\/\*\*/);
        for (const p of f.parameters) expect(f.comment, `${at}: @param ${p}`).toMatch(new RegExp(`@param ${p}\\b`));
        for (const p of f.numeric) {
          expect(f.comment, `${at}: unit of ${p}`).toMatch(new RegExp(`@param ${p}\\b[^@]*\\[[^\\]]+\\]`));
        }
        if (f.returnsNumber) expect(f.comment, `${at}: unit of the answer`).toMatch(/@returns [^@]*\[[^\]]+\]/);
        expect(f.comment, `${at}: @throws`).toMatch(/@throws /);
        expect(f.comment, `${at}: @source`).toMatch(/@source [A-Z]/);
        expect(f.comment, `${at}: @example`).toMatch(/@example/);
      }
    });
    it(`${name} keeps what its examples promise`, async () => {
      const module = (await import(file)) as Record<string, unknown>;
      for (const f of functions) {
        const examples = [...f.comment.matchAll(/^\s*\*?\s*(\S.*?)\s*\/\/=>\s*(.+?)\s*$/gm)];
        for (const [, call, printed] of examples) {
          const run = new Function(...Object.keys(module), `return (${call!.replace(/;$/, "")});`);
          const answer = run(...Object.values(module)) as unknown;
          const shown = typeof answer === "object" && answer !== null ? JSON.stringify(answer) : answer;
          const wanted =
            typeof shown === "string" && typeof answer === "object" ? printed!.replace(/\s/g, "") : printed!;
          expect(
            agrees(shown, wanted) || roughly(answer, printed!),
            `${f.name}: ${call} is ${shown}, says ${printed}`,
          ).toBe(true);
        }
      }
    });
  }
});

/** Lists and records compare element by element, each to its printed digits. */
function roughly(answer: unknown, printed: string): boolean {
  if (typeof answer !== "object" || answer === null) return false;
  const numbers = (text: string) => text.match(/-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/gi) ?? [];
  const wanted = numbers(printed);
  const flat: unknown[] = [];
  const walk = (v: unknown) => {
    if (Array.isArray(v) || ArrayBuffer.isView(v)) for (const x of Array.from(v as number[])) walk(x);
    else if (typeof v === "object" && v !== null) Object.values(v).forEach(walk);
    else if (typeof v === "number") flat.push(v);
  };
  walk(answer);
  return wanted.length > 0 && wanted.length === flat.length && wanted.every((w, i) => agrees(flat[i], w));
}

describe("examples of worksheet functions (house)", () => {
  for (const file of filesBelow("functions", ".ts")) {
    for (const d of declarations(fs.readFileSync(file, "utf8"))) {
      it(`CUT.${d.name} keeps what its examples promise`, () => {
        expect(d.examples.length, "an example").toBeGreaterThan(0);
        for (const line of d.examples) {
          const [call = "", printed = ""] = line.split("//=>").map((s: string) => s.trim());
          const values = runFormula(call).flat();
          const wanted = printed.startsWith("{")
            ? printed
                .slice(1, -1)
                .split(/[,;]/)
                .map((s: string) => s.trim())
            : [printed];
          expect(values.length, line).toBe(wanted.length);
          values.forEach((value, i) => {
            expect(agrees(value, wanted[i]!), `${line} gives ${String(value)}`).toBe(true);
          });
        }
      });
    }
  }
});
