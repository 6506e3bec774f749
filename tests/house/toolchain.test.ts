import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { root } from "./files.ts";

const run = (...command: string[]) => {
  const done = spawnSync("npx", ["--no-install", ...command], { cwd: root, encoding: "utf8" });
  return { status: done.status, text: `${done.stdout}\n${done.stderr}`.slice(-4000) };
};

describe("types, format and lint (house)", { timeout: 300_000 }, () => {
  it("has no error of types", () => {
    const { status, text } = run("tsc", "-p", ".");
    expect(status, text).toBe(0);
  });
  it("is formatted and without lint errors", () => {
    const { status, text } = run("biome", "check", "--config-path=.biome.json", "--diagnostic-level=error", ".");
    expect(status, text).toBe(0);
  });
});
