import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { arcDepth, arcFeed } from "../../src/mill/arc.ts";
import { engagedChip, threadFeed } from "../../src/mill/threadfeed.ts";
import { threadEngagement } from "../../src/mill/threadforce.ts";
import { largestToothChip } from "./toothpath.ts";

/** A pass of a cutter in a hole or round a blank, away from the ends of what is possible. */
const passes = fc.record({
  internal: fc.boolean(),
  hole: fc.double({ min: 2, max: 30, noNaN: true }),
  share: fc.double({ min: 0.3, max: 0.85, noNaN: true }),
  last: fc.double({ min: 0.01, max: 0.08, noNaN: true }), // depth over hole
  first: fc.double({ min: 0, max: 0.9, noNaN: true }),
  feed: fc.double({ min: 0.0005, max: 0.004, noNaN: true }), // over the cutter
  teeth: fc.integer({ min: 1, max: 5 }),
  climb: fc.boolean(),
});

describe("largest chip on an arc (independent)", () => {
  it("agrees with the tooth's path against the wall left before, inside and outside, either way", () => {
    fc.assert(
      fc.property(passes, (x) => {
        const cutterDiameter = x.share * x.hole;
        const endDepth = x.last * x.hole;
        const pass = {
          holeDiameter: x.hole,
          cutterDiameter,
          startDepth: x.first * endDepth,
          endDepth,
          internal: x.internal,
        };
        const sign = x.internal ? 1 : -1;
        const feed = x.feed * cutterDiameter;
        // the tip's own level of the profile, by the arc rule for walls
        const wall = (d: number) => x.hole + sign * 2 * d;
        const ae = arcDepth(wall(pass.startDepth), wall(endDepth), cutterDiameter, x.internal ? "inside" : "outside");
        const atTip = (360 / Math.PI) * Math.asin(Math.sqrt(ae / cutterDiameter));
        const pathRadius = x.hole / 2 + sign * (endDepth - cutterDiameter / 2);
        const seen = largestToothChip({
          wallRadius: x.hole / 2 + sign * pass.startDepth,
          pathRadius,
          cutterRadius: cutterDiameter / 2,
          feed,
          teeth: x.teeth,
          inside: x.internal,
          climb: x.climb,
        });
        const chip = engagedChip(feed, atTip);
        // the rule is the limit of small feed: it may be off by what the path turns and the tooth's circle bends in one feed
        expect(Math.abs(seen - chip)).toBeLessThan(feed * (feed / pathRadius + (2 * feed) / cutterDiameter + 0.012));
        // any part of the profile is engaged at least as far as the tip
        expect(threadEngagement(pass)).toBeGreaterThanOrEqual(atTip - 1e-9);
      }),
      { numRuns: 120 },
    );
  });
});

describe("feed of a thread mill (identity)", () => {
  it("never passes the contour feed at the edge nor the listed chip, and reaches one of them", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 0.2, noNaN: true }),
        fc.double({ min: 0.005, max: 0.2, noNaN: true }),
        fc.double({ min: 0.2, max: 0.95, noNaN: true }),
        fc.double({ min: 5, max: 180, noNaN: true }),
        fc.constantFrom("inside" as const, "outside" as const),
        (contourFeed, listedChip, share, engagement, side) => {
          const f = threadFeed({
            contourFeed,
            listedChip,
            cutterDiameter: 10 * share,
            tipDiameter: 10,
            side,
            engagement,
          });
          expect(f.edge).toBeLessThanOrEqual(contourFeed * (1 + 1e-12));
          expect(f.chip).toBeLessThanOrEqual(listedChip * (1 + 1e-12));
          expect(f.bound === "contour" ? f.edge / contourFeed : f.chip / listedChip).toBeCloseTo(1, 12);
          expect(arcFeed(f.edge, 10, 10 * share, side)).toBeCloseTo(f.centre, 12);
        },
      ),
    );
  });
  it("the chip is the feed's part across the path, and the whole feed where the tooth passes square to it or beyond", () => {
    // Martellotti: fz·sin φ up to 90°; a tooth engaged further has met its largest chip on the way
    for (const [phi, chip] of [
      [30, 0.01],
      [90, 0.02],
      [120, 0.02],
      [180, 0.02],
    ] as const)
      expect(engagedChip(0.02, phi)).toBeCloseTo(chip, 12);
  });
  it("by hand: M6 with a 4.2 mm cutter at 0.8 % of it", () => {
    // centre = 0.0336·(6 − 4.2)/6 = 0.01008; at 30° the chip is half of it; the list's 0.02 would allow 0.04
    const f = threadFeed({
      ...{ contourFeed: 0.0336, listedChip: 0.02, cutterDiameter: 4.2, tipDiameter: 6, side: "inside", engagement: 30 },
    });
    expect(f.centre).toBeCloseTo(0.01008, 12);
    expect(f.chip).toBeCloseTo(0.00504, 12);
    expect(f.bound).toBe("contour");
    // outside the centre runs faster than the edge, and the chip holds it
    const out = threadFeed({
      ...{
        contourFeed: 0.0336,
        listedChip: 0.02,
        cutterDiameter: 4.2,
        tipDiameter: 3,
        side: "outside",
        engagement: 90,
      },
    });
    expect(out.centre).toBeCloseTo(0.02, 12);
    expect(out.bound).toBe("chip");
  });
  it("rejects what cannot be, by name", () => {
    const good = { contourFeed: 0.03, listedChip: 0.02, cutterDiameter: 4, tipDiameter: 6, side: "inside" as const };
    for (const [parameter, change] of [
      ["contourFeed", { contourFeed: 0 }],
      ["listedChip", { listedChip: 0 }],
      ["cutterDiameter", { cutterDiameter: 6 }],
      ["engagement", { engagement: 0 }],
      ["engagement", { engagement: 181 }],
    ] as const) {
      try {
        threadFeed({ ...good, engagement: 60, ...change });
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect(e).toBeInstanceOf(TradeError);
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
