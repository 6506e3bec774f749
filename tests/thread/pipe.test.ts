import { describe, expect, it } from "vitest";
import { parseThread } from "../../src/thread/designation.ts";
import { threadSize } from "../../src/thread/limits.ts";

const SIZES =
  "1/16 1/8 1/4 3/8 1/2 5/8 3/4 7/8 1 1-1/8 1-1/4 1-1/2 1-3/4 2 2-1/4 2-1/2 2-3/4 3 3-1/2 4 4-1/2 5 5-1/2 6".split(" ");

describe("G threads (independent)", () => {
  it("have pitch = major − h and minor = major − 2·h with h = 0.640327·P to the printed micrometre", () => {
    for (const name of SIZES) {
      const t = parseThread(`G${name}`);
      const h = Math.round(0.640327 * t.pitch * 1000) / 1000;
      expect(threadSize(t, "pitch", "basic"), name).toBeCloseTo(t.major - h, 9);
      expect(threadSize(t, "minor", "basic"), name).toBeCloseTo(t.major - 2 * h, 9);
    }
  });

  it("have class B twice as wide as A on the pitch diameter and the same on the major diameter", () => {
    for (const name of SIZES) {
      const [a, b] = [parseThread(`G${name}A`), parseThread(`G${name}B`)];
      const T = threadSize(a, "pitch", "max") - threadSize(a, "pitch", "min");
      expect(threadSize(b, "pitch", "max") - threadSize(b, "pitch", "min")).toBeCloseTo(2 * T, 9);
      expect(threadSize(b, "major", "min")).toBe(threadSize(a, "major", "min"));
      expect(threadSize(parseThread(`G${name}`), "pitch", "max")).toBeCloseTo(threadSize(a, "pitch", "max") + T, 9);
    }
  });
});
