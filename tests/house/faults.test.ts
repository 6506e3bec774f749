/** The planting of faults itself: in a small tree with known faults, a weak and a strong test, the answers are known. */
import fs from "node:fs";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
// @ts-expect-error plain script without types
import { tried } from "../run/judge.mjs";
// @ts-expect-error plain script without types
import { mutants } from "../run/mutants.mjs";
// @ts-expect-error plain script without types
import { planted } from "../run/plant.mjs";
import { root } from "./files.ts";

interface Fault {
  readonly fileName: string;
  readonly mutatorName: string;
  readonly replacement: string;
  readonly found: boolean;
  readonly late: boolean;
  readonly reached: boolean;
  readonly by?: string;
}

const FILES = {
  "src/cache.ts": fs.readFileSync(path.join(root, "src", "cache.ts"), "utf8"),
  // An amount from which something changes; its tests are strong.
  "src/strong/rebate.ts": "export const rebate = (n: number) => (n >= 10 ? 2 : 1);",
  "tests/strong/rebate.test.ts": `
    import { expect, it } from "vitest";
    import { rebate } from "../../src/strong/rebate.ts";
    it.each([[9, 1], [10, 2], [11, 2]])("of %i", (n, share) => { expect(rebate(n)).toBe(share); });`,
  // The same, far from its end; nobody calls the second.
  "src/weak/rebate.ts": `
    export const rebate = (n: number) => (n >= 10 ? 2 : 1);
    export function unasked(n: number) { return n + 1; }`,
  "tests/weak/rebate.test.ts": `
    import { expect, it } from "vitest";
    import { rebate } from "../../src/weak/rebate.ts";
    it("of many", () => { expect(rebate(100)).toBe(2); });`,
  // Its own room is weak, another is not.
  "src/far/twice.ts": "export const twice = (n: number) => n * 2;",
  "tests/far/twice.test.ts": `
    import { expect, it } from "vitest";
    import { twice } from "../../src/far/twice.ts";
    it("is a number", () => { expect(twice(1)).toBeTypeOf("number"); });`,
  "tests/other/twice.test.ts": `
    import { expect, it } from "vitest";
    import { twice } from "../../src/far/twice.ts";
    it("is known elsewhere", () => { expect(twice(3)).toBe(6); });`,
  "src/loop/sum.ts": `
    export function sum(n: number) {
      let all = 0;
      for (let i = 1; i <= n; i++) all += i;
      return all;
    }`,
  "tests/loop/sum.test.ts": `
    import { expect, it } from "vitest";
    import { sum } from "../../src/loop/sum.ts";
    it("of four", () => { expect(sum(4)).toBe(10); });`,
  // Worked out while the file loads; a word.
  "src/load/primes.ts": `
    const PRIMES = [2, 3];
    const WORD = "primes";
    export const primes = () => [WORD, ...PRIMES];`,
  "tests/load/primes.test.ts": `
    import { expect, it } from "vitest";
    import { primes } from "../../src/load/primes.ts";
    it("are two", () => { expect(primes()).toHaveLength(3); });
    it("are named", () => { expect(primes()[0]).not.toBe(""); });`,
  // Remembered, in the house's way and in another. The second test of "other" asks for what the first left behind.
  "src/kept/kept.ts": `
    import { Cache } from "../cache.ts";
    const memory = new Cache<number, number>("fixture", 4);
    let made: number | undefined;
    export const cached = (n: number) => memory.get(n, () => n - 3);
    export const lazy = () => { made ??= 6 * 7; return made; };
    export const other = (n: number) => n + 5;`,
  "tests/kept/kept.test.ts": `
    import { expect, it } from "vitest";
    import { cached, lazy, other } from "../../src/kept/kept.ts";
    it("is cached", () => { expect(cached(3)).toBeTypeOf("number"); });
    it("is cached and right", () => { expect(cached(3)).toBe(0); });
    it("is lazy", () => { expect(lazy()).toBe(42); });
    let before = 0;
    it("leaves something", () => { before = 1; });
    it("needs what was left, and knows nothing of the sum", () => { expect(other(before) + before).toBeGreaterThan(0); expect(before).toBe(1); });
    it("is lazy, and knows nothing of the sum", () => { expect(lazy()).toBe(42); expect(other(5)).toBeTypeOf("number"); });`,
  // Red by itself: it judges nothing.
  "tests/strong/broken.test.ts": `
    import { expect, it } from "vitest";
    import { rebate } from "../../src/weak/rebate.ts";
    it("is red", () => { expect(rebate(10)).toBe(7); });`,
};

const parent = path.join(root, "tests", ".out");
let tree: string;
let results: readonly Fault[];
let said: string[];

const room = (file: string, top: string) => path.relative(path.join(tree, top), file).split(path.sep)[0];
const all = (top: string) =>
  Object.keys(FILES)
    .filter((name) => name.startsWith(top) && (top === "src" || name.endsWith(".test.ts")))
    .map((name) => path.join(tree, name));

beforeAll(async () => {
  fs.mkdirSync(parent, { recursive: true });
  tree = fs.mkdtempSync(path.join(parent, "faults-"));
  for (const [name, text] of Object.entries(FILES)) {
    fs.mkdirSync(path.dirname(path.join(tree, name)), { recursive: true });
    fs.writeFileSync(path.join(tree, name), text);
  }
  const log = vi.spyOn(console, "log").mockImplementation(() => {});
  const { faults, sources } = await planted(all("src").filter((file) => !file.endsWith("cache.ts")));
  const near = (source: string, test: string) => room(source, "src") === room(test, "tests");
  results = await tried(
    tree,
    { sources, drawn: faults, tests: all("tests"), near, patience: 1000 },
    () => {},
    () => false,
  );
  said = log.mock.calls.map(([line]) => String(line));
  log.mockRestore();
});
afterAll(() => fs.rmSync(tree, { recursive: true, force: true }));

/** "replacement" → what became of it, for the faults of a file. */
const fates = (file: string) =>
  Object.fromEntries(
    results
      .filter(({ fileName }) => fileName === path.join(tree, file))
      .map(({ replacement, found, late, reached }) => [
        replacement.replace(/\s+/g, " "),
        late ? "late" : found ? "found" : reached ? "lived" : "not reached",
      ]),
  );

describe("faults planted in a known tree (house)", () => {
  it("are all found by a test on both sides of a limit", () => {
    expect(fates("src/strong/rebate.ts")).toEqual({
      "() => undefined": "found",
      true: "found",
      false: "found",
      "n > 10": "found",
      "n < 10": "found",
    });
  });
  it("live where the test is far from the limit, and where nobody asks", () => {
    expect(fates("src/weak/rebate.ts")).toEqual({
      "() => undefined": "found",
      true: "lived",
      false: "found",
      "n > 10": "lived",
      "n < 10": "found",
      "{}": "not reached",
      "n - 1": "not reached",
    });
  });
  it("are found by another room where their own does not find them, and by their own where it does", () => {
    expect(fates("src/far/twice.ts")).toEqual({ "() => undefined": "found", "n / 2": "found" });
    const by = (replacement: string) => results.find((fault) => fault.replacement === replacement)?.by;
    expect(by("n / 2")).toMatch(/^is known elsewhere: expected 1.5 to be 6/);
    expect(results.find((fault) => fault.fileName.includes("twice") && fault.replacement !== "n / 2")?.by).toMatch(
      /^is a number: /,
    );
  });
  it("count as found where the tests do not end", () => {
    expect(fates("src/loop/sum.ts")).toEqual({
      "{}": "found",
      false: "found",
      "i < n": "found",
      "i > n": "found",
      "i--": "late",
      "all -= i": "found",
    });
  });
  it("act while a file loads, and are never words", () => {
    expect(fates("src/load/primes.ts")).toEqual({ "[]": "found", "() => undefined": "found" });
    expect(results.some(({ mutatorName }) => mutatorName === "StringLiteral")).toBe(false);
  });
  it("are found though what they spoil is remembered, and leave nothing behind that another is blamed for", () => {
    expect(fates("src/kept/kept.ts")).toEqual({
      "n + 3": "found",
      "6 / 7": "found",
      "{}": "found",
      "made &&= 6 * 7": "found",
      "n - 5": "lived",
      "() => undefined": "found",
    });
  });
  it("are not judged by a test that is red without them, which is named", () => {
    expect(said).toEqual([
      expect.stringMatching(/^left out, red without any fault: tests\/strong\/broken.test.ts: is red/),
    ]);
  });
});

describe("score of planted faults (house)", () => {
  async function printed(...args: string[]): Promise<string[]> {
    const log = vi.spyOn(console, "log").mockImplementation(() => {});
    const error = vi.spyOn(console, "error").mockImplementation(() => {});
    try {
      await mutants(tree, args);
      return log.mock.calls.map(([line]) => String(line)).filter((line) => !line.startsWith("left out"));
    } finally {
      log.mockRestore();
      error.mockRestore();
    }
  }

  it("names what lived with its line, and counts the rest", async () => {
    expect(await printed("src/weak")).toEqual([
      "src/weak: 7 of 7 faults",
      [
        " 42.9 %  3 of 7  src/weak/rebate.ts",
        "         line 2:43: ConditionalExpression → true",
        "         line 2:43: EqualityOperator → n > 10",
        "         line 3:40: BlockStatement → {} (no test comes here)",
        "         line 3:49: ArithmeticOperator → n - 1 (no test comes here)",
      ].join("\n"),
      "src/weak: 3 of 7 planted faults found, 42.9 %",
    ]);
  });
  it("of a sample is the same for the same seed, and says between which ends the score of all lies", async () => {
    const once = await printed("--sample", "4", "--seed", "5", "src/weak");
    expect(await printed("--sample", "4", "--seed", "5", "src/weak")).toEqual(once);
    expect(once[0]).toBe("src/weak: 4 of 7 faults, seed 5");
    const last =
      /^src\/weak: (\d) of 4 planted faults found, [\d.]+ %; of all 7 between ([\d.]+) and ([\d.]+) % \(95 %\)$/;
    const [, found, ...ends] = last.exec(once.at(-1) as string) as unknown as string[];
    // E. B. Wilson (1927): the ends p are 1.96 standard errors √(p (1 − p) / n) from what was seen; printed to 0.1 %.
    for (const end of ends) {
      const p = Number(end) / 100;
      expect(Math.abs(Math.abs(Number(found) / 4 - p) - 1.96 * Math.sqrt((p * (1 - p)) / 4))).toBeLessThan(0.002);
    }
    const others = [
      await printed("--sample", "4", "--seed", "6", "src/weak"),
      await printed("--sample", "4", "--seed", "7", "src/weak"),
    ];
    expect(new Set([once, ...others].map((lines) => lines[1])).size).toBeGreaterThan(1);
  });
  it("refuses what it cannot draw", async () => {
    await expect(printed("--sample", "0", "src/weak")).rejects.toThrow('--sample is "0"; a whole number of 1 or more');
    await expect(printed("src/nowhere")).rejects.toThrow('"src/nowhere" is neither a file nor a folder.');
    await expect(printed("tests/weak")).rejects.toThrow('"tests/weak" holds no file of src or functions.');
    await expect(printed("--seed", "-1", "src/weak")).rejects.toThrow("--seed");
  });
});
