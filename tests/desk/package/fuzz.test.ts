import { expect, it } from "vitest";
import { fuzz, HOSTILE } from "./fuzzing.ts";

// The whole run is tests/desk/package/fuzz.mjs (2,000 cases and more).
it("broken and hostile packages are refused with a sentence or read right, and nothing hangs (independent)", async () => {
  const { faults, slowest, kinds } = await fuzz(Object.keys(HOSTILE).length + 60, 20261125);
  expect(faults).toEqual([]);
  expect(slowest).toBeLessThan(4000);
  expect(kinds.hostile).toEqual({ cases: Object.keys(HOSTILE).length, refused: Object.keys(HOSTILE).length });
  expect(kinds["cut off"]!.refused).toBe(kinds["cut off"]!.cases);
  expect(kinds["changed text"]!.cases - kinds["changed text"]!.refused).toBeGreaterThan(2);
}, 240_000);
