import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TradeError } from "../../src/errors.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import {
  edgeLaw,
  edgeShare,
  layerLeft,
  leastLayer,
  MEASURED_FROM,
  radialShare,
  thinChipFactor,
} from "../../src/mill/edge.ts";
import published from "../published/edge-forces.json" with { type: "json" };

const [head, ...rows] = MATERIALS;
const column = (name: string) => head!.indexOf(name);
/** Edge forces that the listed laws of materials with this in their name imply. */
const implied = (name: RegExp) =>
  rows
    .filter((r) => name.test(String(r[0])))
    .map((r) => edgeLaw(Number(r[column("kc1.1 [MPa]")]), Number(r[column("Exponent")]), MEASURED_FROM).edge);

describe("edge forces (published)", () => {
  for (const record of published.records) {
    it(`the tangent of the listed laws agrees with Kte of ${record.name}`, () => {
      // The three aluminium fits differ by 1.6 among themselves: no closer agreement can be asked for.
      const edges = implied(record.group === "N" ? /^Aluminium EN AW-(6082|7075)/ : /^Steel/);
      expect(record.Kte).toBeGreaterThan(Math.min(...edges) / 1.6);
      expect(record.Kte).toBeLessThan(Math.max(...edges) * 1.6);
    });
  }
  it("the radial share at 0.02 mm lies between 0.45 and 0.85 for the three aluminium fits, against 0.16 to 0.30 of thick chips", () => {
    for (const r of published.records.filter((x) => x.Kre !== null)) {
      const law = { kc11: r.Ktc, exponent: 0, radialRatio: r.Krc / r.Ktc, edgeTangential: r.Kte, edgeRadial: r.Kre! };
      const share = radialShare(law, 0.02);
      // by hand from the printed figures: (Krc·h + Kre)/(Ktc·h + Kte)
      expect(share).toBeCloseTo((r.Krc * 0.02 + r.Kre!) / (r.Ktc * 0.02 + r.Kte), 12);
      expect(share).toBeGreaterThan(0.45);
      expect(share).toBeLessThan(0.85);
      expect(radialShare(law, 5)).toBeLessThan(0.31);
    }
  });
});

describe("edge forces (identity)", () => {
  const chips = fc.double({ min: 1e-4, max: 1, noNaN: true });
  const exponents = fc.double({ min: 0.05, max: 0.4, noNaN: true });
  it("touches Kienzle's curve at the chip and lies above it elsewhere", () => {
    fc.assert(
      fc.property(exponents, chips, (m, h) => {
        const { cutting, edge } = edgeLaw(2000, m, 0.03);
        expect(cutting * 0.03 + edge).toBeCloseTo(2000 * 0.03 ** (1 - m), 8);
        expect(cutting * h + edge).toBeGreaterThanOrEqual(2000 * h ** (1 - m) * (1 - 1e-12));
      }),
    );
  });
  it("gives the tangent over the curve below the measured chips and 1 above", () => {
    fc.assert(
      fc.property(exponents, chips, (m, h) => {
        const { cutting, edge } = edgeLaw(2000, m, 0.03);
        const ratio = h < 0.03 ? (cutting * h + edge) / (2000 * h ** (1 - m)) : 1;
        expect(thinChipFactor(m, h, 0.03)).toBeCloseTo(ratio, 9);
      }),
    );
    expect(thinChipFactor(0, 0.001, 0.03)).toBe(1);
  });
  it("starts the radial share at Kre/Kte and ends it at the ratio of thick chips", () => {
    const law = { kc11: 1800, exponent: 0.25, radialRatio: 0.35, edgeTangential: 20, edgeRadial: 18 };
    expect(radialShare(law, 1e-9)).toBeCloseTo(0.9, 3);
    expect(radialShare(law, 1e4)).toBeCloseTo(0.35, 3);
    expect(radialShare({ ...law, edgeTangential: 0, edgeRadial: 0 }, 0.02)).toBeCloseTo(0.35, 12);
    // between them by hand: 0.0625^0.75 = 1/8, so 1800/8 = 225 N/mm cut: (0.35·225 + 18)/(225 + 20)
    expect(radialShare(law, 0.0625)).toBeCloseTo((0.35 * 225 + 18) / 245, 12);
  });
  it("leaves a layer that rises, saturates, never exceeds the interference and has a slope from 1 to 0", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        fc.double({ min: 1e-5, max: 0.05, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.01, noNaN: true }),
        (x, step, layer) => {
          const here = layerLeft(x, layer);
          const next = layerLeft(x + step, layer);
          expect(here).toBeLessThanOrEqual(Math.min(x, layer) * (1 + 1e-12));
          expect(next).toBeGreaterThanOrEqual(here);
          expect(next - here).toBeLessThanOrEqual(step * (1 + 1e-9));
        },
      ),
    );
    expect(layerLeft(-1, 0.002)).toBe(0);
    // by series: x − x²/(2·r∞) at small x
    expect(layerLeft(1e-6, 0.002)).toBeCloseTo(1e-6 - 1e-12 / 0.004, 12);
  });
  it("raises the edge force in a line to the least chip", () => {
    expect([-1, 0, 0.001, 0.002, 0.003].map((x) => edgeShare(x, 0.002))).toEqual([0, 0, 0.5, 1, 1]);
    expect([0, 1e-9].map((x) => edgeShare(x, 0))).toEqual([0, 1]);
  });
  it("doubles the layer on a 60° flank and leaves it on a wall", () => {
    expect(leastLayer(0.3, 0.006, 30)).toBeCloseTo(0.0036, 12);
    expect(leastLayer(0.3, 0.006, 90)).toBeCloseTo(0.0018, 12);
  });
  it("rejects what cannot be, by name", () => {
    const bad: [string, () => unknown][] = [
      ["layer", () => layerLeft(1, -1)],
      ["layer", () => edgeShare(1, -1)],
      ["fraction", () => leastLayer(-0.1, 0.006, 30)],
      ["edgeRadius", () => leastLayer(0.3, -1, 30)],
      ["halfAngle", () => leastLayer(0.3, 0.006, 0)],
      ["chip", () => edgeLaw(2000, 0.2, 0)],
      ["exponent", () => edgeLaw(2000, 1, 0.03)],
      ["kc11", () => edgeLaw(0, 0.2, 0.03)],
      ["chip", () => thinChipFactor(0.2, 0, 0.03)],
      ["measuredFrom", () => thinChipFactor(0.2, 0.01, 0)],
      ["chip", () => radialShare({ kc11: 1, exponent: 0, radialRatio: 0, edgeTangential: 0, edgeRadial: 0 }, 0)],
      ["edgeRadial", () => radialShare({ kc11: 1, exponent: 0, radialRatio: 0, edgeTangential: 0, edgeRadial: -1 }, 1)],
    ];
    for (const [parameter, run] of bad) {
      try {
        run();
        expect.unreachable(`took a bad ${parameter}`);
      } catch (e) {
        expect(e).toBeInstanceOf(TradeError);
        expect((e as TradeError).parameter).toBe(parameter);
      }
    }
  });
});
