/** What is kept between calls is kept in `Cache`: named and bounded. What hangs on an object goes with it. */
import fs from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { Cache } from "../../src/cache.ts";
import { filesBelow, root } from "./files.ts";

/** An empty map or list that a file begins with, to be filled while it is used. */
const GROWS = /^const ([a-z]\w*)(?::[^=]*)? = (?:new (?:Map|Set)(?:<.*>)?\(\)|\[\]|\{\});/gm;

/** Filled once, when they are first needed, with what stands in the sources. */
const FILLED_ONCE = ["src/table/lexicon.ts speakers"];

describe("memories (house)", () => {
  it("are caches with a name and an end, in src and functions", () => {
    const found = [...filesBelow("src", ".ts"), ...filesBelow("functions", ".ts")].flatMap((file) =>
      [...fs.readFileSync(file, "utf8").matchAll(GROWS)].map((m) => `${path.relative(root, file)} ${m[1]}`),
    );
    expect(found).toEqual(FILLED_ONCE);
  });
  it("are seen where they have none", () => {
    expect("const known = new Map<number, { a: 1 }>();".match(GROWS)).toHaveLength(1);
    expect("const known: string[] = [];".match(GROWS)).toHaveLength(1);
    expect('const known = new Cache<number, string>("names", 10);'.match(GROWS)).toBeNull();
    expect("  const known = new Map<number, string>();".match(GROWS)).toBeNull();
  });
  it("have names that tell them apart", () => {
    const names = filesBelow("src", ".ts").flatMap((file) =>
      [...fs.readFileSync(file, "utf8").matchAll(/new Cache(?:<[^;]*?>)?\(\s*"([^"]+)", (?:\d|[A-Z])/g)].map(
        (m) => m[1]!,
      ),
    );
    expect(names.length).toBeGreaterThan(10);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    expect(new Cache("one", 1).name).toBe("one");
  });
});
