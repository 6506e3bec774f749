/** The wall that each operation makes of a row: every number of it by hand, with what a cell more changes. */
import { describe, expect, it } from "vitest";
import { cornerDepth } from "../../src/mill/corner.ts";
import { effective, levelsOf, positions, type Wall } from "../../src/operations/shared/wall/wall.ts";
import { about, planOf, type RowCells, STEEL } from "../findings/rule.ts";

const known = (wall: object) => Object.fromEntries(Object.entries(wall).filter(([, v]) => v !== undefined));
function wallOf(row: RowCells, tool: RowCells = {}) {
  const { path } = planOf({ row: { ...STEEL, ...row }, tool });
  if (path?.kind !== "wall") throw new Error(`no wall: ${JSON.stringify(row)}`);
  return known(path.wall);
}

describe("straight walls (by hand)", () => {
  const side = { Operation: "side", Tool: "EM-10-4", Depth: 10, Length: 60, "Radial depth": 2 };
  const SIDE = {
    side: "straight",
    stock: 2,
    depth: 10,
    axial: 10,
    levels: 1,
    rise: 0,
    length: 60,
    circles: false,
    walls: 1,
    full: false,
  };
  it("of a side: the radial depth each pass, the whole edge in a thin cut, a diameter in a wide one", () => {
    expect(wallOf(side)).toEqual(SIDE);
    expect(wallOf({ ...side, Passes: 3 })).toEqual({ ...SIDE, stock: 6 });
    expect(wallOf({ ...side, Depth: 20 })).toEqual({ ...SIDE, depth: 20, axial: 20 });
    expect(wallOf({ ...side, Depth: 20, "Radial depth": 2.6 })).toMatchObject({ stock: 2.6, axial: 10, levels: 2 });
    expect(wallOf({ ...side, Depth: 20, "Axial depth": 6 })).toMatchObject({ axial: 5, levels: 4 });
    expect(wallOf({ ...side, "Axial depth": 30 }, { "Cutting length": 8, "Neck length": 12 })).toMatchObject({
      axial: 5,
      levels: 2,
    });
    expect(wallOf(side, { "Cutting length": 8, "Neck length": 12 })).toMatchObject({ axial: 5, levels: 2 });
  });
  it("of a side with an inside corner: how deep it is there, at least as wide as the cutter", () => {
    const corner = (radius: number, cornerRadius = radius) =>
      cornerDepth({ radialDepth: 2, cornerRadius, stockRadius: radius, turn: 90, diameter: 10 });
    expect(wallOf({ ...side, "Inside corner": 6 })).toEqual({ ...SIDE, corner: about(corner(6)) });
    expect(wallOf({ ...side, "Inside corner": 5 })).toEqual({ ...SIDE, corner: about(corner(5)) });
    // a hair under the cutter's radius is a rounded size
    expect(wallOf({ ...side, "Inside corner": 5 * (1 - 5e-8) }).corner).toBeCloseTo(corner(5), 4);
  });
  it("of a slot: full at the cutter's width, of one wall where it is narrower and has a tolerance", () => {
    const slot = { Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 };
    const SLOT = {
      side: "straight",
      stock: 10,
      depth: 4,
      axial: 4,
      levels: 1,
      rise: 0,
      length: 60,
      circles: false,
      walls: 0,
      full: true,
      beside: [],
    };
    expect(wallOf(slot)).toEqual(SLOT);
    expect(wallOf({ ...slot, "Radial depth": 4 })).toEqual({ ...SLOT, stock: 4, full: false });
    expect(wallOf({ ...slot, "Radial depth": 9.9995 })).toMatchObject({ full: true });
    expect(wallOf({ ...slot, "Radial depth": 9.998 })).toMatchObject({ full: false });
    expect(wallOf({ ...slot, "Size tolerance": 0.1 })).toEqual({ ...SLOT, walls: 1 });
    expect(wallOf({ ...slot, "Total width": 16, "Radial depth": 4, "Size tolerance": 0.1 })).toEqual({
      ...SLOT,
      beside: [13, 16],
    });
    expect(wallOf({ ...slot, "Axial depth": 3 })).toEqual({ ...SLOT, axial: 2, levels: 2 });
    expect(wallOf({ ...slot, Depth: 4 }, { "Cutting length": 3, "Neck length": 8 })).toMatchObject({
      axial: 2,
      levels: 2,
    });
  });
  it("of a face: strips beside each other, no size", () => {
    const face = { Operation: "face", Tool: "FM-40-4", Depth: 6, Length: 60, "Total width": 75 };
    expect(wallOf(face)).toEqual({
      ...{ side: "straight", stock: 25, depth: 6, axial: 3, levels: 2, rise: 0, length: 60, circles: false, walls: 0 },
      ...{ full: false, beside: [50, 75] },
    });
    expect(wallOf({ ...face, Depth: null, "Axial depth": 3 })).toMatchObject({ depth: 3, axial: 3, levels: 1 });
    expect(wallOf({ ...face, "Total width": 34 })).toMatchObject({ stock: 34, beside: [] });
    expect(wallOf({ ...face, "Total width": 34.1 })).toMatchObject({ stock: about(17.05), beside: [about(34.1)] });
    expect(wallOf({ ...face, "Total width": 56 })).toMatchObject({ stock: 28, beside: [56] });
    expect(wallOf({ ...face, "Total width": 40, "Radial depth": 40 })).toMatchObject({ stock: 40, full: true });
  });
});

describe("round walls (by hand)", () => {
  const bore = { Operation: "bore", Tool: "EM-10-4", "Start diameter": 26, "Finish diameter": 30, Depth: 12 };
  const BORE = {
    side: "inside",
    finish: 30,
    start: 26,
    stock: 2,
    depth: 12,
    axial: 12,
    levels: 1,
    rise: 0,
    circles: true,
    walls: 2,
    full: false,
  };
  it("of a bore that is opened, and of a boss", () => {
    expect(wallOf(bore)).toEqual(BORE);
    expect(wallOf({ ...bore, Operation: "boss", "Start diameter": 34 })).toEqual({
      ...BORE,
      side: "outside",
      start: 34,
    });
    // a wide pass is no deeper than the cutter is thick; half of the cutter, or what the row says
    expect(wallOf({ ...bore, Depth: 20 })).toMatchObject({ axial: 20 });
    expect(wallOf({ ...bore, Depth: 20, "Start diameter": 24.9 })).toMatchObject({ axial: 10, levels: 2 });
    expect(wallOf({ ...bore, Depth: 20, "Start diameter": 20, "Radial depth": 2 })).toMatchObject({
      axial: 20,
      levels: 1,
    });
    expect(wallOf({ ...bore, "Axial depth": 5 })).toMatchObject({ axial: 4, levels: 3 });
    expect(wallOf({ ...bore, Depth: 20 }, { "Cutting length": 15, "Neck length": 30 })).toMatchObject({
      axial: 10,
      levels: 2,
    });
  });
  it("of a bore from solid: the rise of its helix, the whole stock", () => {
    const solid = { ...bore, "Start diameter": 0, "Finish diameter": 40 };
    const rise = 2 * Math.PI * 4.5 * Math.tan(Math.PI / 60);
    expect(wallOf({ ...solid, Depth: 10 })).toEqual({
      ...{ side: "inside", finish: 40, start: 0, stock: 20, depth: 10, axial: 10, levels: 1, rise: about(rise) },
      ...{ circles: true, walls: 2, full: true },
    });
    expect(wallOf({ ...solid, "Start diameter": 8, Depth: 10 })).toMatchObject({ start: 8, stock: 16, full: true });
    expect(wallOf({ ...solid, "Start diameter": null, Depth: 10 })).toMatchObject({ start: 0, stock: 20 });
  });
  it("of a side on an arc", () => {
    const arc = { Operation: "side", Tool: "EM-10-4", "Finish diameter": 60, Depth: 10, Length: 50, "Radial depth": 2 };
    const ARC = {
      finish: 60,
      stock: 2,
      depth: 10,
      axial: 10,
      levels: 1,
      rise: 0,
      length: 50,
      circles: false,
      walls: 2,
      full: false,
    };
    expect(wallOf({ ...arc, Side: "inside" })).toEqual({ ...ARC, side: "inside", start: 56 });
    expect(wallOf({ ...arc, Side: "outside" })).toEqual({ ...ARC, side: "outside", start: 64 });
    expect(wallOf({ ...arc, Side: "outside", Passes: 2, Length: null })).toEqual({
      ...ARC,
      side: "outside",
      stock: 4,
      start: 68,
      length: about(60 * Math.PI),
    });
    expect(wallOf({ ...arc, Side: "inside", Depth: 20, "Radial depth": 2.6 })).toMatchObject({ axial: 10, levels: 2 });
    expect(wallOf({ ...arc, Side: "inside", "Axial depth": 4 })).toMatchObject({ axial: about(10 / 3), levels: 3 });
  });
});

describe("levels and passes (by hand)", () => {
  it("levels of equal depth, none deeper than allowed but for the last digit", () => {
    expect(levelsOf(10, 3)).toEqual({ axial: 2.5, levels: 4 });
    expect(levelsOf(10, 5)).toEqual({ axial: 5, levels: 2 });
    expect(levelsOf(0.1 + 0.2, 0.1)).toEqual({ axial: about(0.1), levels: 3 });
    expect(levelsOf(10, 20)).toEqual({ axial: 10, levels: 1 });
  });
  const WALL = {
    side: "straight",
    stock: 6,
    depth: 9,
    axial: 9,
    levels: 1,
    rise: 0,
    circles: false,
    walls: 1,
    full: false,
  } as Wall;
  const SOLID = {
    ...WALL,
    side: "inside",
    finish: 30,
    start: 0,
    stock: 15,
    circles: true,
    walls: 2,
    full: true,
  } as Wall;
  it("passes in equal steps; from solid after a first circle of 1.9 cutters, at most 0.98 of the bore", () => {
    expect(positions(WALL, 10, 3)).toEqual([2, 4, 6]);
    expect(positions({ ...WALL, full: true }, 10, 2)).toEqual([3, 6]);
    expect(positions({ ...SOLID, full: false }, 10, 3)).toEqual([5, 10, 15]);
    expect(positions(SOLID, 10, 1)).toEqual([15]);
    expect(positions(SOLID, 10, 2)).toEqual([9.5, 15]);
    expect(positions(SOLID, 10, 3)).toEqual([9.5, 12.25, 15]);
    expect(positions({ ...SOLID, start: 4, stock: 13 }, 10, 2)).toEqual([7.5, 13]);
    expect(positions({ ...SOLID, finish: 12, stock: 6 }, 10, 2)).toEqual([about(5.88), 6]);
  });
  it("the effective depth is no more than the cutter is wide", () => {
    expect(effective(WALL, 10, 1, 3)).toBe(2);
    expect(effective(WALL, 10, 1, 30)).toBe(10);
    expect(effective(SOLID, 10, 0, 9.5)).toBe(10);
    // from 26 to 30 mm with 10: the law of cosines
    expect(effective({ ...SOLID, start: 26, stock: 2 }, 10, 0, 2)).toBeCloseTo(5 * (1 - (169 - 125) / 100), 9);
    expect(effective({ ...SOLID, side: "outside", start: 34, stock: 2 }, 10, 0, 2)).toBeCloseTo(
      5 * (1 - (400 + 25 - 289) / 200),
      9,
    );
  });
});
