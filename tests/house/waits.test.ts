/** A test waits for the thing it wants to see: a fixed time is too short on a busy machine and too long on a quick one. */
import fs from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { filesBelow, root } from "./files.ts";

/** `waitForTimeout(500)`, and a promise that a timer of its own keeps, outside a loop that asks again and again. */
const FIXED = /waitForTimeout\(|^(?!.*\bwhile\b).*new Promise(?:<\w+>)?\(\((\w+)\) => setTimeout\(\1, \d{3,}\)\)/gm;
/** Where it stands in a loop that asks again. */
const ASKING = /for \(;;\) \{(?:[^{}]|\{[^{}]*\})*\}/g;

describe("waits in tests (house)", () => {
  const found: string[] = [];
  for (const file of [...filesBelow("tests", ".ts"), ...filesBelow("tests", ".mjs")]) {
    const name = path.relative(root, file);
    if (name.startsWith("tests/.out/") || name === "tests/house/waits.test.ts") continue;
    found.push(
      ...(fs.readFileSync(file, "utf8").replace(ASKING, "").match(FIXED) ?? []).map((wait) => `${name}: ${wait}`),
    );
  }
  it("are none", () => expect(found).toEqual([]));
  it("sees a fixed wait, and leaves a loop alone that asks again", () => {
    expect("    await page.waitForTimeout(500);".match(FIXED)).toHaveLength(1);
    expect("  await new Promise((done) => setTimeout(done, 420));".match(FIXED)).toHaveLength(1);
    expect(
      "for (;;) {\n if (x) return;\n await new Promise((r) => setTimeout(r, 100));\n}".replace(ASKING, ""),
    ).not.toMatch(FIXED);
  });
});
