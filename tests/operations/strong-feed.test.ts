/** The feed that a thread mill's strength allows: a force in proportion to a power of the chip, solved by hand. */
import { describe, expect, it } from "vitest";
import { type CutterFeed, strongFeed } from "../../src/operations/shared/thread/feed.ts";

const feed: CutterFeed = { edgeFeed: 0.04, centreFeed: 0.01, chip: 0.02, by: "contour" };
const tool = { runout: 0, teeth: 3, exponent: 0.25, leastChip: 0.001 };

describe("feed by strength (independent: load ∝ chip^(1 − m), m = 0.25)", () => {
  it("stays where the load holds, and where the row says it itself", () => {
    expect(strongFeed(feed, 1, tool)).toBe(feed);
    expect(strongFeed({ ...feed, by: "row" }, 3, tool)).toMatchObject({ by: "row", edgeFeed: 0.04 });
  });
  it("comes down until the load is 1: from 8 to a sixteenth, for 16^0.75 is 8", () => {
    const held = strongFeed(feed, 8, tool);
    expect(held.by).toBe("strength");
    for (const key of ["edgeFeed", "centreFeed", "chip"] as const) expect(held[key] * 16).toBeCloseTo(feed[key], 3);
  });
  it("never below the chip at which an edge only rubs, where the load is still over 1", () => {
    const rubs = strongFeed(feed, 8, { ...tool, leastChip: 0.005 });
    expect(rubs.chip).toBeCloseTo(0.005, 9);
    expect(rubs.edgeFeed).toBeCloseTo(0.01, 9);
    // a chip that rubs already is not lowered, and strength is not what holds it
    expect(strongFeed(feed, 8, { ...tool, leastChip: 0.03 })).toBe(feed);
  });
});
