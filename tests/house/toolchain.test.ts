import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
// @ts-expect-error plain script without types
import { lint, types } from "../run/steps.mjs";
import { root } from "./files.ts";

const run = ([program, ...words]: string[]) => {
  const done = spawnSync(program as string, words, { cwd: root, encoding: "utf8" });
  return { status: done.status, text: `${done.stdout}\n${done.stderr}`.slice(-4000) };
};

describe("types, format and lint (house)", { timeout: 300_000 }, () => {
  it("has no error of types", () => {
    const { status, text } = run(types());
    expect(status, text).toBe(0);
  });
  it("is formatted and without lint errors", () => {
    const { status, text } = run(lint("--diagnostic-level=error"));
    expect(status, text).toBe(0);
  });
});
