/** Speed, feed and metal removed: by hand, and each the inverse of the other. */
import { describe, expect, it } from "vitest";
import { feedPerTooth, removalRate, spindleSpeed, surfaceSpeed, tableFeed } from "../../src/mill/speed.ts";

describe("speed and feed (independent: by hand)", () => {
  it("a wheel of 1000/π mm rolls a metre a turn: 250 m/min are 250 turns", () => {
    expect(spindleSpeed(250, 1000 / Math.PI)).toBeCloseTo(250, 9);
    expect(surfaceSpeed(250, 1000 / Math.PI)).toBeCloseTo(250, 9);
    // half as wide turns twice as fast, up to the cap
    expect(spindleSpeed(250, 500 / Math.PI)).toBeCloseTo(500, 9);
    expect(spindleSpeed(250, 500 / Math.PI, 499)).toBe(499);
    expect(spindleSpeed(250, 500 / Math.PI, 501)).toBeCloseTo(500, 9);
  });
  it("four teeth of 0.05 mm at 1500 turns are 300 mm a minute, no more than the table drives", () => {
    expect(tableFeed(1500, 4, 0.05)).toBeCloseTo(300, 9);
    expect(tableFeed(1500, 4, 0.05, 299)).toBe(299);
    expect(tableFeed(1500, 4, 0.05, 301)).toBeCloseTo(300, 9);
    expect(feedPerTooth(300, 1500, 4)).toBeCloseTo(0.05, 12);
  });
  it("a cut of 2 by 10 mm at 600 mm a minute takes 12 cm³ a minute", () => {
    expect(removalRate(2, 10, 600)).toBeCloseTo(12, 12);
    expect(removalRate(4, 10, 600)).toBeCloseTo(24, 12);
    expect(removalRate(2, 5, 600)).toBeCloseTo(6, 12);
  });
  it.each([
    ["surfaceSpeed", () => spindleSpeed(0, 10)],
    ["diameter", () => spindleSpeed(100, 0)],
    ["rpm", () => surfaceSpeed(0, 10)],
    ["teeth", () => tableFeed(1000, 0, 0.1)],
    ["feedPerTooth", () => tableFeed(1000, 4, 0)],
    ["tableFeed", () => feedPerTooth(0, 1000, 4)],
    ["radialDepth", () => removalRate(0, 10, 600)],
    ["axialDepth", () => removalRate(2, 0, 600)],
    ["tableFeed", () => removalRate(2, 10, 0)],
  ])("0 is refused by name: %s", (parameter, run) => expect(run).toThrow(expect.objectContaining({ parameter })));
});
