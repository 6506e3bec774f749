import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainPathRadius, type ThreadKind, tipDiameter } from "../../src/thread/path.ts";
import { basicPitchDiameter } from "../../src/thread/profile.ts";
import {
  grooveHalfWidth,
  pitchDiameterSweep,
  type SingleProfile,
  sweptPathRadius,
  sweptPitchDiameter,
  widestTipFlat,
} from "../../src/thread/sweep.ts";
import { approximateOvercut, flankAngleError, flankOvercut, sweptCrestFlat } from "../../src/thread/swept-form.ts";
import published from "../published/thread-sweep.json";
import { refusal } from "../refusal.ts";

const relative = (got: number, want: number) => Math.abs(got / want - 1);

describe("swept groove against a table computed by another program (independent)", () => {
  for (const c of published.cases) {
    const cutter: SingleProfile = { cutterDiameter: c.Dc, tipFlat: c.tip_flat, profileAngle: 60, lead: c.lead };
    const kind = c.kind as ThreadKind;
    it(`${c.name}: half widths, pitch diameter, corrected path, diameter at the tip`, () => {
      for (const at of [c.at.minor, c.at.pitch, c.at.major]) {
        expect(relative(grooveHalfWidth(cutter, c.orbit_radius, at.R), at.half_width)).toBeLessThan(1e-11);
        // The overcut at the tip is a small difference of the table's own numbers: 1e-9 of the half width.
        expect(
          Math.abs(flankOvercut(cutter, c.orbit_radius, at.R) - at.axial_overcut_per_flank) / at.half_width,
        ).toBeLessThan(1e-11);
        expect(relative(approximateOvercut(c.lead, 60, c.orbit_radius, at.R), at.closed_approx)).toBeLessThan(1e-12);
      }
      const D2 = basicPitchDiameter(c.D_major, c.P, 60);
      expect(relative(D2, c.D2_basic)).toBeLessThan(1e-14);
      expect(relative(pitchDiameterSweep(cutter, c.P, D2, kind), c.pitch_diameter_error)).toBeLessThan(1e-9);
      expect(relative(sweptPitchDiameter(cutter, c.P, c.orbit_radius, kind), c.D2_cut)).toBeLessThan(1e-12);
      const e = sweptPathRadius(cutter, c.P, D2, kind);
      expect(relative(e, c.orbit_radius_corrected)).toBeLessThan(1e-11);
      const tip = c.major_after_correction ?? c.minor_after_correction;
      expect(relative(tipDiameter(e, c.Dc, kind), tip!)).toBeLessThan(1e-12);
      const other = kind === "internal" ? c.D1_basic : c.D_major;
      expect(flankAngleError(cutter, c.orbit_radius, other, D2)).toBeCloseTo(c.flank_angle_error_deg, 9);
    });
  }
});

/** Brute force in space: a dense grid of axis positions over the helix, each with the whole cutter profile. */
function bruteHalfWidth(cutter: SingleProfile, e: number, R: number, steps = 200_001): number {
  const t = Math.tan((cutter.profileAngle * Math.PI) / 360);
  const height = cutter.profileHeight ?? Number.POSITIVE_INFINITY;
  let best = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < steps; i++) {
    const theta = (Math.PI * i) / (steps - 1);
    const rho = Math.hypot(R - e * Math.cos(theta), e * Math.sin(theta));
    const fromTip = cutter.cutterDiameter / 2 - rho;
    if (fromTip < -1e-13 * R) continue;
    const z = cutter.tipFlat / 2 + Math.min(fromTip, height) * t + (cutter.lead * theta) / (2 * Math.PI);
    if (z > best) best = z;
  }
  return best;
}

describe("swept groove against brute force (independent)", () => {
  const cases: [string, SingleProfile, number, number][] = [
    ["M6 with a 4.8 cutter", { cutterDiameter: 4.8, tipFlat: 0.125, profileAngle: 60, lead: 1 }, 0.6, 2.675],
    [
      "path inside L/(2π·t), end of contact",
      { cutterDiameter: 9.9, tipFlat: 0.1, profileAngle: 60, lead: 3 },
      0.4,
      5.2,
    ],
    ["close to the tip", { cutterDiameter: 6, tipFlat: 0.15, profileAngle: 60, lead: 1.25 }, 1, 3.99],
    ["55° profile", { cutterDiameter: 9, tipFlat: 0.15, profileAngle: 55, lead: 1.337 }, 1.5, 5.8],
    [
      "V that ends early",
      { cutterDiameter: 6, tipFlat: 0.15, profileAngle: 60, lead: 1.25, profileHeight: 0.3 },
      1,
      3.55,
    ],
    ["outside", { cutterDiameter: 20, tipFlat: 0.875, profileAngle: 60, lead: 3.5 }, 23.1, 13.9],
    ["two starts", { cutterDiameter: 6, tipFlat: 0.15, profileAngle: 60, lead: 2.5 }, 1, 3.6],
  ];
  for (const [name, cutter, e, R] of cases) {
    it(`${name} within 2e-5, never below`, () => {
      const brute = bruteHalfWidth(cutter, e, R);
      const exact = grooveHalfWidth(cutter, e, R);
      expect(exact).toBeGreaterThanOrEqual(brute - 1e-12);
      expect(relative(exact, brute)).toBeLessThan(2e-5);
    });
  }
  it("agrees to 0.1 % on random cutters, and never lies below the grid", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 4, noNaN: true }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        fc.double({ min: 0.01, max: 0.999, noNaN: true }),
        fc.constantFrom<ThreadKind>("internal", "external"),
        fc.constantFrom(60, 55),
        (lead, cutterDiameter, path, depth, kind, profileAngle) => {
          const Rc = cutterDiameter / 2;
          const e = kind === "internal" ? Rc * path * 2 : Rc * (1 + 2 * path);
          const cutter = { cutterDiameter, tipFlat: 0.1 * lead, profileAngle, lead };
          const tip = kind === "internal" ? e + Rc : e - Rc;
          const R = kind === "internal" ? tip - depth * 0.5 * Math.min(e, Rc) : tip + depth * Rc * 0.5;
          const brute = bruteHalfWidth(cutter, e, R, 20_001);
          const exact = grooveHalfWidth(cutter, e, R);
          expect(exact).toBeGreaterThan(brute - 1e-9);
          // A grid may stop one step short of the end of contact.
          expect(exact - brute).toBeLessThan(1e-3 * exact + (lead / 2) * 1e-4);
        },
      ),
      { numRuns: 60, seed: 4711 },
    );
  });
});

const threads = fc.record({
  pitch: fc.double({ min: 0.35, max: 6, noNaN: true }),
  ratio: fc.double({ min: 5, max: 30, noNaN: true }),
  fill: fc.double({ min: 0.2, max: 0.93, noNaN: true }),
  flat: fc.double({ min: 0, max: 0.3, noNaN: true }),
  kind: fc.constantFrom<ThreadKind>("internal", "external"),
  profileAngle: fc.constantFrom(60, 55),
  starts: fc.constantFrom(1, 1, 1, 2),
});

describe("path and sweep (identity)", () => {
  it("cuts the wanted pitch diameter to 1e-12 on the corrected path", () => {
    fc.assert(
      fc.property(threads, ({ pitch, ratio, fill, flat, kind, profileAngle, starts }) => {
        const D2 = ratio * pitch;
        const cutter = { cutterDiameter: fill * D2, tipFlat: flat * pitch, profileAngle, lead: starts * pitch };
        const e = sweptPathRadius(cutter, pitch, D2, kind);
        expect(relative(sweptPitchDiameter(cutter, pitch, e, kind), D2)).toBeLessThan(1e-11);
        const plain = plainPathRadius(D2, pitch, cutter.cutterDiameter, cutter.tipFlat, profileAngle, kind);
        const change = pitchDiameterSweep(cutter, pitch, D2, kind);
        if (kind === "internal") {
          expect(change).toBeGreaterThan(0);
          expect(e).toBeLessThan(plain);
        } else {
          expect(change).toBeLessThan(0);
          expect(e).toBeGreaterThan(plain);
        }
      }),
      { numRuns: 400, seed: 99 },
    );
  });
  it("grows with the lead and goes to nothing without it", () => {
    let last = Number.POSITIVE_INFINITY;
    for (const lead of [2, 1, 0.1, 0.01, 1e-4, 1e-8]) {
      const cutter = { cutterDiameter: 4.8, tipFlat: 0.125, profileAngle: 60, lead };
      const change = pitchDiameterSweep(cutter, 1, 5.35, "internal");
      expect(change).toBeLessThan(last);
      expect(change).toBeGreaterThanOrEqual(0);
      last = change;
    }
    expect(last).toBeLessThan(1e-14);
  });
  it("leaves the plain width where the cutter runs straight", () => {
    const cutter = { cutterDiameter: 6, tipFlat: 0.15, profileAngle: 60, lead: 1e-9 };
    expect(grooveHalfWidth(cutter, 1, 3.6)).toBeCloseTo(0.075 + 0.4 * Math.tan(Math.PI / 6), 12);
  });
  it("scales with the unit of length", () => {
    const mm = { cutterDiameter: 3.556, tipFlat: 0.08, profileAngle: 60, lead: 25.4 / 32 };
    const inch = { cutterDiameter: 0.14, tipFlat: 0.08 / 25.4, profileAngle: 60, lead: 1 / 32 };
    const a = sweptPathRadius(mm, 25.4 / 32, 4.31, "internal") / 25.4;
    expect(relative(sweptPathRadius(inch, 1 / 32, 4.31 / 25.4, "internal"), a)).toBeLessThan(1e-12);
  });
  it("gives the tip the basic major diameter with the widest flat, and less with more", () => {
    fc.assert(
      fc.property(threads, ({ pitch, ratio, fill, profileAngle, starts }) => {
        const D2 = ratio * pitch;
        const D = D2 + 0.62 * pitch;
        const cutter = { cutterDiameter: fill * D2, profileAngle, lead: starts * pitch };
        const flat = widestTipFlat(cutter, pitch, D2, D, "internal");
        const reach = (tipFlat: number) =>
          tipDiameter(
            sweptPathRadius({ ...cutter, tipFlat }, pitch, D2, "internal"),
            cutter.cutterDiameter,
            "internal",
          );
        if (flat === null) expect(reach(0)).toBeLessThan(D + 1e-9);
        else {
          expect(relative(reach(flat), D)).toBeLessThan(1e-10);
          expect(reach(flat + 0.01 * pitch)).toBeLessThan(D);
        }
      }),
      { numRuns: 200, seed: 5 },
    );
  });
  it("outside the same: the tip reaches the basic minor diameter with the widest flat, and stays above it with more", () => {
    let some = 0;
    fc.assert(
      fc.property(threads, ({ pitch, ratio, fill, profileAngle, starts }) => {
        const d2 = ratio * pitch;
        const d1 = d2 - 0.62 * pitch;
        const cutter = { cutterDiameter: fill * d2, profileAngle, lead: starts * pitch };
        const flat = widestTipFlat(cutter, pitch, d2, d1, "external");
        const reach = (tipFlat: number) =>
          tipDiameter(
            sweptPathRadius({ ...cutter, tipFlat }, pitch, d2, "external"),
            cutter.cutterDiameter,
            "external",
          );
        if (flat === null) return expect(reach(0)).toBeGreaterThan(d1 - 1e-9);
        some++;
        expect(relative(reach(flat), d1)).toBeLessThan(1e-10);
        expect(reach(flat + 0.01 * pitch)).toBeGreaterThan(d1);
      }),
      { numRuns: 100, seed: 6 },
    );
    expect(some).toBeGreaterThan(50);
  });
  it("takes the smallest of several path radii that cut the pitch diameter (independent: looked for along the grid)", () => {
    // a cutter that all but fills the hole: contact at the tip widens the groove, then less, and then the flanks do
    for (const [pitch, D2] of [
      [1.25, 7.2],
      [1, 5.35],
    ] as const) {
      const cutter = { cutterDiameter: D2 - 0.01 * pitch, tipFlat: 0.02 * pitch, profileAngle: 60, lead: pitch };
      const least = (D2 - cutter.cutterDiameter) / 2;
      const wide = (e: number) => bruteHalfWidth(cutter, e, D2 / 2, 20_001) >= pitch / 4;
      const step = 0.002 * pitch;
      const grid = Array.from({ length: 200 }, (_, i) => least + i * step);
      const changes = grid.filter((e, i) => i > 0 && wide(e) !== wide(grid[i - 1]!));
      expect(changes.length, "wide enough, too narrow again, wide enough").toBeGreaterThanOrEqual(3);
      const e = sweptPathRadius(cutter, pitch, D2, "internal");
      expect(Math.abs(e - changes[0]!)).toBeLessThan(2 * step);
    }
  });
  it("is the plain path where the helix has next to no lead", () => {
    const cutter = { cutterDiameter: 4.8, tipFlat: 0.125, profileAngle: 60 };
    for (const lead of [1e-18, 1e-30, 1e-300])
      for (const kind of ["internal", "external"] as const)
        expect(sweptPathRadius({ ...cutter, lead }, 1, 5.35, kind)).toBeCloseTo(
          plainPathRadius(5.35, 1, 4.8, 0.125, 60, kind),
          12,
        );
  });
  it("needs less than P/8 at the basic pitch diameter, and may allow more higher in the tolerance", () => {
    const small = { cutterDiameter: 2, profileAngle: 60, lead: 1 };
    expect(widestTipFlat(small, 1, basicPitchDiameter(20, 1, 60), 20, "internal")!).toBeLessThan(1 / 8);
    expect(widestTipFlat(small, 1, basicPitchDiameter(20, 1, 60) + 0.1, 20, "internal")!).toBeGreaterThan(1 / 8);
    expect(widestTipFlat({ ...small, cutterDiameter: 4.8 }, 1, 5.35, 6, "internal")!).toBeLessThan(0.1);
  });
  it("leaves a crest of a quarter pitch less both overcuts at the basic minor diameter", () => {
    const cutter = { cutterDiameter: 6, tipFlat: 0.15625, profileAngle: 60, lead: 1.25 };
    const crest = sweptCrestFlat(cutter, 1.25, 1, 6.646835306586815);
    expect(crest).toBeCloseTo(1.25 / 4 - 2 * flankOvercut(cutter, 1, 6.646835306586815 / 2), 12);
  });
});

describe("what cannot be cut (identity)", () => {
  const cutter = { cutterDiameter: 5, tipFlat: 0.125, profileAngle: 60, lead: 1 };
  it("names the largest cutter when it fills the thread", () => {
    expect(refusal(() => sweptPathRadius({ ...cutter, cutterDiameter: 5.36 }, 1, 5.35, "internal"))).toMatch(
      /cutterDiameter is 5.36; more than 0 and less than 5.35/,
    );
    expect(refusal(() => plainPathRadius(5.35, 1, 7, 0.125, 60, "internal"))).toMatch(
      /cutterDiameter.*less than 5.99952/,
    );
  });
  it("refuses a flat of half a pitch and a negative one, not one just over P/8", () => {
    for (const tipFlat of [0.5, 0.7, -0.01]) {
      expect(refusal(() => sweptPathRadius({ ...cutter, tipFlat }, 1, 5.35, "internal"))).toMatch(/tipFlat/);
    }
    expect(sweptPathRadius({ ...cutter, cutterDiameter: 4.5, tipFlat: 0.13 }, 1, 5.35, "internal")).toBeGreaterThan(0);
  });
  it("refuses a V that is too low for the pitch", () =>
    expect(refusal(() => sweptPathRadius({ ...cutter, profileHeight: 0.2 }, 1, 5.35, "internal"))).toMatch(
      /profileHeight/,
    ));
  it("refuses a root on the wrong side of the pitch diameter, and a cutter that fills the root", () => {
    const widest = (root: number, kind: ThreadKind, cutterDiameter = 4.8) =>
      widestTipFlat({ cutterDiameter, profileAngle: 60, lead: 1 }, 1, 5.35, root, kind);
    expect(refusal(() => widest(5.34, "internal"))).toMatch(/rootDiameter is 5.34/);
    expect(refusal(() => widest(5.35, "external"))).toMatch(/rootDiameter is 5.35/);
    expect(refusal(() => widest(0, "external"))).toMatch(/rootDiameter is 0/);
    expect(widest(4.73, "external")).not.toBeNull();
    expect(refusal(() => widest(6, "internal", 6))).toMatch(/cutterDiameter is 6/);
    for (const bad of [0, -1]) {
      expect(refusal(() => widestTipFlat({ ...cutter, lead: 1 }, bad, 5.35, 6, "internal"))).toMatch(/pitch is/);
      expect(refusal(() => widestTipFlat({ ...cutter, lead: 1 }, 1, bad, 6, "internal"))).toMatch(/pitchDiameter is/);
      expect(refusal(() => sweptPathRadius(cutter, bad, 5.35, "internal"))).toMatch(/pitch is/);
      expect(refusal(() => sweptPitchDiameter(cutter, 1, bad, "internal"))).toMatch(/pathRadius is/);
    }
  });
  it("refuses a path outside on which the cutter would cover the middle", () => {
    expect(refusal(() => sweptPitchDiameter(cutter, 1, 2.5, "external"))).toMatch(/cutterDiameter is 5;/);
    expect(sweptPitchDiameter(cutter, 1, 4.9, "external")).toBeGreaterThan(4.8);
  });
  it("refuses a radius beyond the tip", () => expect(refusal(() => grooveHalfWidth(cutter, 1, 3.6))).toMatch(/radius/));
});
