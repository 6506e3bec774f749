import fs from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { root } from "./files.ts";
import { agrees, runFormula } from "./formula-text.ts";

const readme = fs.readFileSync(path.join(root, "README.md"), "utf8");

describe("README (house)", () => {
  it("shows formulas with the answers they give", () => {
    const rows = [...readme.matchAll(/^\| `(=CUT\.[^`]+)` \| ([^|]+) \|/gm)];
    expect(rows.length).toBeGreaterThanOrEqual(3);
    for (const [, formula, printed] of rows)
      expect(agrees(runFormula(formula!)[0]![0], printed!.trim()), formula).toBe(true);
  });
  it("shows the two commands, and pictures that are there", () => {
    expect(readme).toContain("npm start");
    expect(readme).toContain("npm test");
    for (const [, file] of readme.matchAll(/!\[[^\]]*\]\(([^)]+)\)/g))
      expect(fs.existsSync(path.join(root, file!)), file).toBe(true);
  });
  it("counts the published values of threads as the tables hold them", () => {
    let all = 0;
    let remembered = 0;
    for (const name of ["unified-limits.json", "metric-limits.json"]) {
      const file = JSON.parse(fs.readFileSync(path.join(root, "tests", "published", name), "utf8")) as Table;
      for (const { source, thread: _, class: __, ...fields } of file.rows) {
        const values = Object.values(fields).filter((v) => /^[\d.]+$/.test(v)).length;
        all += values;
        if (file.sources[source!]!.edition.includes("from memory")) remembered += values;
      }
    }
    const said = /\*\*Threads\*\*: ([\d,]+) printed values[\s\S]*?([\d,]+) of them were written down from memory/.exec(
      readme,
    );
    expect(said?.slice(1).map((n) => Number(n.replace(/,/g, "")))).toEqual([all, remembered]);
  });
});

interface Table {
  readonly sources: Record<string, { readonly edition: string }>;
  readonly rows: readonly Record<string, string>[];
}
