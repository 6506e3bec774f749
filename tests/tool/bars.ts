/** Shared by the tests of the tool as a beam: short ways to write tools, and the recorded cases. */
import fc from "fast-check";
import type { Segment } from "../../src/tool/beam.ts";
import beams from "../published/beams.json" with { type: "json" };
import solids from "../published/solid-beams.json" with { type: "json" };

export { beams, solids };

/** Rows of (diameter, length) or (diameter at the tip end, at the holder end, length). */
export const bar = (...rows: readonly (readonly number[])[]): Segment[] =>
  rows.map((r) => ({ tipDiameter: r[0]!, holderDiameter: r.length === 3 ? r[1]! : r[0]!, length: r.at(-1)! }));

/** A recorded case: [diameter at the tip end, at the holder end, length, modulus, density]. */
export const recorded = (rows: readonly number[][]): Segment[] =>
  rows.map(([p, r, length, modulus, density]) => ({
    tipDiameter: p!,
    holderDiameter: r!,
    length: length!,
    modulus,
    density,
  }));

export const size = fc.double({ min: 0.2, max: 40, noNaN: true });
/** Tools of one to five cylinders and cones. */
export const anyTool = fc.array(
  fc.record({ tipDiameter: size, holderDiameter: size, length: fc.double({ min: 0.1, max: 60, noNaN: true }) }),
  { minLength: 1, maxLength: 5 },
);

export const near = (value: number, wanted: number): number => Math.abs(value / wanted - 1);
