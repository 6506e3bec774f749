import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { arcDepth } from "../../src/mill/arc.ts";
import { largestChip } from "../../src/mill/chip.ts";
import { cornerDepth } from "../../src/mill/corner.ts";
import { FEED_LIMITS, FINISHING_SHARE, wallFeed } from "../../src/mill/wall-feed.ts";
import { arcPass, cornerPass, largestChipByPath, straightPass } from "./tooth-path.ts";

/** Inside corners: stock on the walls, radius of the corner and of its stock, turn [deg], cutter. */
const CORNERS = [
  [0.5, 8, 8, 90, 10],
  [0.3, 6, 8, 90, 10],
  [1, 10, 5, 90, 10],
  [0.5, 5, 6, 90, 10],
  [0.2, 7, 0, 90, 12],
  [1, 8, 10, 60, 10],
  [0.4, 8, 9, 120, 12],
  [3, 9, 9, 90, 10],
  [1.3, 7.6, 7.4, 122, 10],
  [2.2, 6.9, 3.5, 100, 10],
  [0.7, 6, 7.1, 41, 8],
] as const;

/**
 * What the formula leaves out: near the end of its cut a tooth leaves through the stock's face, so the thickest place is where
 * the tooth before left it: R − √(R² − 2·R·fz·sin φ + fz²), less by (fz/D)·cos²φ/sin φ; the trochoid, a few times fz/D; and the
 * turn of the path, fz/r.
 */
const tolerance = (feed: number, ae: number, D: number, r = Number.POSITIVE_INFINITY) => {
  const sine = ae < D / 2 ? 2 * Math.sqrt((ae / D) * (1 - ae / D)) : 1;
  return (feed / D) * (3 + (1 - sine * sine) / sine) + feed / r + 0.002;
};
const free = { tooth: 1e6, finish: 1e6, insideEdge: 1e6 };

describe("the feed whose largest real chip is the list's (independent): teeth on their paths", () => {
  for (const [ae, D, z] of [
    [0.1, 10, 4],
    [1, 10, 4],
    [3, 12, 3],
    [6, 12, 2],
    [10, 12, 4],
  ] as const) {
    it(`straight wall, ${ae} of ${D} mm, ${z} teeth`, () => {
      const h = 0.03;
      const { centreFeed, chip } = wallFeed(
        { listed: h, radialDepth: ae, diameter: D, edgeAngle: 90, finishing: false },
        free,
      );
      const real = largestChipByPath(straightPass(ae, D, z, centreFeed));
      expect(Math.abs(real / h - 1)).toBeLessThan(tolerance(centreFeed, ae, D));
      expect(chip).toBeCloseTo(h, 12);
    });
  }
  for (const [start, finish, D, side] of [
    [39.4, 40, 12, "inside"],
    [17, 20, 12, "inside"],
    [25.4, 26, 10, "inside"],
    [13.2, 14, 12, "inside"],
    [0, 15, 10, "inside"],
    [0, 23, 12, "inside"],
    [31, 30, 16, "outside"],
    [23, 20, 12, "outside"],
    [6, 3, 12, "outside"],
  ] as const) {
    it(`${side} wall of ${finish} mm from ${start}, cutter ${D}`, () => {
      const h = 0.02;
      const radialDepth = arcDepth(start, finish, D, side);
      const { centreFeed } = wallFeed(
        {
          listed: h,
          radialDepth,
          diameter: D,
          edgeAngle: 90,
          arc: { diameter: finish, cutterDiameter: D, side },
          finishing: false,
        },
        free,
      );
      const r = (side === "inside" ? finish - D : finish + D) / 2;
      const real = largestChipByPath(arcPass(start, finish, D, side, 4, centreFeed));
      expect(Math.abs(real / h - 1)).toBeLessThan(tolerance(centreFeed, radialDepth, D, r));
    });
  }
  for (const [ae, corner, stock, turn, D] of CORNERS) {
    it(`inside corner R${corner}, ${ae} on the walls, stock R${stock}, turn ${turn}°, cutter ${D}`, () => {
      const feed = 0.08;
      const depth = cornerDepth({ radialDepth: ae, cornerRadius: corner, stockRadius: stock, turn, diameter: D });
      const real = largestChipByPath(cornerPass(ae, corner, stock, turn, D, 4, feed), { steps: 600 });
      const r = Math.max(corner - D / 2, 1);
      expect(Math.abs(real / largestChip(feed, Math.min(D, depth), D, 90) - 1)).toBeLessThan(
        0.01 + tolerance(feed, D, r),
      );
    });
  }
});

describe("inside corners (brute force: the cutter's edge point by point against the stock, at 10,000 places of its path)", () => {
  const STEP = 0.02;
  /** Radial depth of the straight cut that ends at the largest angle from the wall at which an edge lies in the stock. */
  function byPoints(ae: number, corner: number, Rs: number, turn: number, D: number): number {
    const [R, beta] = [D / 2, (turn * Math.PI) / 180];
    const face = corner - ae;
    const far = (face - Rs) / Math.cos(beta / 2);
    // the first wall below, travel to the right; the corner's centre is the origin
    const isStock = (x: number, y: number): boolean => {
      if (-y > face || x * Math.sin(beta) - y * Math.cos(beta) > face) return true;
      const [u, v] = [x - far * Math.sin(beta / 2), y + far * Math.cos(beta / 2)];
      // between the normals of the two faces the stock ends in its radius
      const inSector = u >= 0 && u * Math.cos(beta) + v * Math.sin(beta) <= 0;
      return inSector && Math.hypot(u, v) > Rs;
    };
    let best = 0;
    for (let i = 0; i <= 10_000; i++) {
      const way = i / 5000; // 0 to 1 up to the corner, 1 to 2 around it
      const psi = Math.max(0, way - 1) * beta;
      const [cx, cy] = [(corner - R) * Math.sin(psi) - 2 * D * Math.max(0, 1 - way), (R - corner) * Math.cos(psi)];
      const cuts = (theta: number) => isStock(cx + R * Math.sin(psi + theta), cy - R * Math.cos(psi + theta));
      let theta = Math.PI;
      while (theta > 0 && !cuts(theta)) theta -= STEP;
      if (theta + STEP <= best) continue;
      let [low, high] = [theta, Math.min(Math.PI, theta + STEP)];
      for (let k = 0; k < 30; k++) {
        const middle = (low + high) / 2;
        if (cuts(middle)) low = middle;
        else high = middle;
      }
      best = Math.max(best, low);
    }
    return D * Math.sin(best / 2) ** 2;
  }
  it.each(CORNERS)(
    "%d on the walls, corner R%d, stock R%d, turn %d°, cutter %d",
    (ae, cornerRadius, stockRadius, turn, D) =>
      expect(cornerDepth({ radialDepth: ae, cornerRadius, stockRadius, turn, diameter: D })).toBeCloseTo(
        byPoints(ae, cornerRadius, stockRadius, turn, D),
        6,
      ),
  );
});

describe("inside corners (identity)", () => {
  it("a corner as round as a bore, with even stock, asks for what the bore does", () => {
    for (const turn of [120, 90]) {
      const depth = cornerDepth({ radialDepth: 0.5, cornerRadius: 30, stockRadius: 29.5, turn, diameter: 10 });
      expect(depth).toBeCloseTo(arcDepth(59, 60, 10, "inside"), 6);
    }
  });
  it("no turn to speak of leaves the straight wall", () =>
    expect(cornerDepth({ radialDepth: 0.7, cornerRadius: 6, stockRadius: 6, turn: 0.01, diameter: 10 })).toBeCloseTo(
      0.7,
      2,
    ));
  it("grows with what the roughing cutter left, and as the corner gets tighter", () => {
    const depth = (cornerRadius: number, stockRadius: number) =>
      cornerDepth({ radialDepth: 0.5, cornerRadius, stockRadius, turn: 90, diameter: 10 });
    expect(depth(6, 8)).toBeGreaterThan(depth(6, 6));
    expect(depth(5.2, 6)).toBeGreaterThan(depth(6, 6));
    // in a corner of the cutter's own radius the whole quarter is cut at once
    expect(depth(5, 8)).toBeGreaterThan(5);
  });
  it("rejects a corner tighter than the cutter, by name", () => {
    expect(() => cornerDepth({ radialDepth: 0.5, cornerRadius: 4.9, stockRadius: 6, turn: 90, diameter: 10 })).toThrow(
      /cornerRadius/,
    );
    expect(() => cornerDepth({ radialDepth: 0.5, cornerRadius: 6, stockRadius: 6, turn: 180, diameter: 10 })).toThrow(
      /turn/,
    );
    expect(() => cornerDepth({ radialDepth: 11, cornerRadius: 6, stockRadius: 6, turn: 90, diameter: 10 })).toThrow(
      TradeError,
    );
  });
});

describe("the one feed rule (identity)", () => {
  const listed = 0.05;
  const straight = { listed, diameter: 10, edgeAngle: 90, finishing: false };
  it("at half the cutter and more the feed is the list's", () => {
    for (const radialDepth of [5, 7, 10])
      expect(wallFeed({ ...straight, radialDepth }, FEED_LIMITS).centreFeed).toBe(listed);
  });
  it("never cuts a thicker chip than the list's, whatever the wall", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 1.02, max: 50, noNaN: true }),
        fc.constantFrom("inside" as const, "outside" as const, undefined),
        fc.boolean(),
        (share, ratio, side, finishing) => {
          const arc = side && { diameter: 10 * ratio, cutterDiameter: 10, side };
          const f = wallFeed({ ...straight, radialDepth: 10 * share, arc, finishing }, FEED_LIMITS);
          expect(f.chip).toBeLessThanOrEqual(listed * (1 + 1e-12));
          expect(f.centreFeed).toBeLessThanOrEqual(FEED_LIMITS.tooth * listed * (1 + 1e-12));
          if (side === "inside") expect(f.edgeFeed).toBeLessThanOrEqual(FEED_LIMITS.insideEdge * listed * (1 + 1e-12));
          if (finishing) expect(Math.max(f.centreFeed, f.edgeFeed)).toBeLessThanOrEqual(1.3 * listed * (1 + 1e-12));
          // under half of the list only where a limit says so
          if (f.chip < listed / 2) expect(f.heldBy).not.toBe("chip");
          if (f.heldBy === "chip") expect(f.chip).toBeCloseTo(listed, 12);
        },
      ),
    );
  });
  it("names what holds it, and lets go just inside", () => {
    const at = (radialDepth: number, finishing = false) =>
      wallFeed({ ...straight, radialDepth, finishing }, FEED_LIMITS).heldBy;
    // sin φ = 2√(x(1 − x)) is a third at x = 0.02860
    expect(at(0.28)).toBe("tooth");
    expect(at(0.29)).toBe("chip");
    expect(at(1, true)).toBe("finish");
    expect(at(2, true)).toBe("chip"); // sin φ = 0.8
    const bore = (diameter: number) =>
      wallFeed({ ...straight, radialDepth: 10, arc: { diameter, cutterDiameter: 10, side: "inside" } }, FEED_LIMITS)
        .heldBy;
    // Dm/(Dm − Dc) is 3 at Dm = 15
    expect(bore(14.9)).toBe("edge");
    expect(bore(15.1)).toBe("chip");
    expect(FINISHING_SHARE).toBe(0.1);
  });
  it("a 45° edge thins the chip, so the feed is larger", () =>
    expect(wallFeed({ ...straight, radialDepth: 7, edgeAngle: 45 }, FEED_LIMITS).centreFeed).toBeCloseTo(
      listed * Math.SQRT2,
      12,
    ));
});
