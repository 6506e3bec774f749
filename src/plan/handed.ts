/**
 * Rows that finish a wall which another row of the table roughs: what bending leaves on the wall there is stock that the finishing
 * row meets.
 */
import type { Handed } from "../operations/shared/job.ts";
import type { Plan } from "../operations/shared/types.ts";
import type { Lists, ReadRow } from "../table/read.ts";
import type { Row } from "../table/rows.ts";
import { planRow } from "./row.ts";

/** A roughing row stands at most so many lines above the one that finishes its wall (judgement: a part's operations on one feature). */
export const LOOK_BACK = 20;

/** Sizes that differ by less than this share are the same size in two cells. */
const SAME = 1e-9;
/** A blank cell is NaN, and not the same as anything. */
const same = (a = Number.NaN, b = Number.NaN) => Math.abs(a - b) <= SAME * Math.abs(b);
const sameText = (a: string | undefined, b: string | undefined) =>
  a !== undefined && a.toLowerCase() === b?.toLowerCase();

const WALLS: readonly Row["operation"][] = ["bore", "boss", "counterbore", "side"];

/**
 * Whether a row finishes the wall that another leaves: round walls where it starts at the other's finish diameter; side walls of one
 * Feature where it takes the thinner cut. Both in one material and one system of units, and no deeper than the other.
 */
export function finishes(rough: Row, row: Row): boolean {
  const { operation } = row;
  if (!WALLS.includes(operation) || rough.operation !== operation || rough.units !== row.units) return false;
  const { depth = Number.NaN } = row;
  if (!sameText(rough.material, row.material) || !((rough.depth ?? 0) >= depth * (1 - SAME))) return false;
  if (operation !== "side") return same(rough.finishDiameter, row.startDiameter);
  const [before, now] = [rough, row].map(({ side = "straight" }) => side);
  return before === now && rough.radialDepth! > row.radialDepth! && sameText(rough.feature, row.feature);
}

/** Place of the row that roughs the wall of another: the nearest one above it. */
export function roughedBy(rows: readonly ReadRow[], at: number): number | undefined {
  const { row } = rows[at]!;
  for (let i = at - 1; i >= Math.max(0, at - LOOK_BACK); i--) if (finishes(rows[i]!.row, row)) return i;
  return undefined;
}

/**
 * What each row is handed by the one that roughs its wall; undefined for a row whose wall nobody roughs, or of which nothing is
 * known. `planned` knows plans that were made already.
 */
export function handedOn(
  rows: readonly ReadRow[],
  lists: Lists,
  planned: (at: number) => Pick<Plan, "left"> | undefined = () => undefined,
): (at: number) => Handed | undefined {
  const known = new Map<number, Handed | undefined>();
  const handed = (at: number): Handed | undefined => {
    if (known.has(at)) return known.get(at);
    const rough = roughedBy(rows, at);
    const left =
      rough === undefined ? undefined : (planned(rough) ?? planRow(rows[rough]!, lists, 1, false, handed(rough))).left;
    const found = left && { left, row: rows[rough!]!.name };
    known.set(at, found);
    return found;
  };
  return handed;
}
