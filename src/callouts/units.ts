/** Units and quantities of a callout, from what is written in it. */
import type { Units } from "../units.ts";
import type { Remark } from "./remarks/remark.ts";
import type { Group, Size } from "./types.ts";

export interface Said {
  readonly units: Units | null;
  /** The numbers are written as in this system, against what the drawing says: see which of the two makes sense. */
  readonly rival?: Units;
  /** All of its numbers are. */
  readonly throughout?: boolean;
  readonly note: Remark;
  readonly understood: boolean;
}

/**
 * System of the callout's lengths. What the drawing states (`stated`) comes first, but for numbers that carry a unit of
 * their own. Without it: numbers that carry or betray one, then threads and tolerance classes.
 */
export function unitsOf(groups: readonly Group[], stated: Units | undefined): Said {
  const sizes = sizesOf(groups);
  const carried = new Set(sizes.map((s) => s.units).filter((u) => u !== undefined));
  const betrayed = new Set(sizes.map((s) => (s.units ? undefined : s.tells)).filter((u) => u !== undefined));
  const bare = sizes.some((s) => !s.units && !s.tells);
  if (stated) {
    const [own] = [...carried];
    if (carried.size === 1 && own !== stated && betrayed.size === 0 && !bare)
      return { units: own!, note: { code: "units-by-numbers", units: own! }, understood: true };
    const plain = betrayed.size === 0 && weakOf(groups).size === 0;
    const note: Remark = { code: plain ? "units-assumed" : "units-stated", units: stated };
    if ([...betrayed].every((u) => u === stated)) return { units: stated, note, understood: true };
    const throughout = !bare && betrayed.size === 1;
    return { units: stated, rival: stated === "in" ? "mm" : "in", throughout, note, understood: true };
  }
  const strong = new Set<Units>([...carried, ...betrayed]);
  const weak = weakOf(groups);
  if (strong.size === 1) {
    const units = [...strong][0]!;
    const other = weak.size === 1 && !weak.has(units) ? [...weak][0] : undefined;
    return { units, note: { code: "units-by-numbers", units, other }, understood: true };
  }
  if (strong.size > 1) {
    if (betrayed.size === 0 && !bare)
      return { units: [...carried][0]!, note: { code: "units-mixed" }, understood: true };
    return { units: null, note: { code: "units-in-doubt" }, understood: false };
  }
  if (weak.size === 1) {
    const units = [...weak][0]!;
    return { units, note: { code: "units-by-thread", units }, understood: true };
  }
  const none = sizes.length === 0 && weak.size === 0;
  return { units: null, note: { code: none ? "units-not-told" : "units-nowhere" }, understood: false };
}

/** Systems of the callout's threads and tolerance classes. */
function weakOf(groups: readonly Group[]): Set<Units> {
  const weak = new Set<Units>();
  for (const f of groups.flatMap((g) => g.features)) {
    if (f.thread?.thread && f.thread.thread.standard !== "pipe") weak.add(f.thread.thread.native);
    if (f.fit) weak.add("mm");
  }
  return weak;
}

function sizesOf(groups: readonly Group[]): Size[] {
  return groups
    .flatMap((g) => [
      ...[g.holeDepth, g.circle, g.spacing],
      // A tolerance of 0 betrays nothing.
      ...g.features.flatMap((f) => [f.diameter, f.depth, f.tolerance?.lower, f.tolerance?.upper]),
    ])
    .filter((s) => s !== undefined)
    .filter((s) => !s.derived && s.value !== 0);
}

/** How many, how many share one pattern, and in what words that was found. */
export function quantityOf({ times, counts }: Group): { total: number; pattern: number; told: boolean; note?: Remark } {
  const product = (list: readonly number[]) => list.reduce((a, b) => a * b, 1);
  const front = product(times);
  const told = times.length + counts.length > 0;
  const distinct =
    times.length > 0 ? counts.filter((c) => c !== front) : counts.filter((c, i) => counts.indexOf(c) === i);
  const total = front * product(distinct);
  const factors = [...times, ...distinct];
  const pattern = times.length > 0 ? times[times.length - 1]! : (counts[0] ?? 1);
  const note: Remark | undefined =
    factors.length > 1
      ? { code: "quantity-product", factors, total }
      : times.length + counts.length > factors.length
        ? { code: "quantity-twice", total }
        : undefined;
  return { total, pattern, told, note };
}

/** Takes the dust of binary arithmetic off decimal text. */
export const clean = (value: number): number => Number(value.toPrecision(12));

/** A size in the callout's system. Only a size that carries the other unit is converted. */
export function inUnits(size: Size | undefined, units: Units | null): number | null {
  if (size === undefined) return null;
  if (size.units === undefined || units === null || size.units === units) return clean(size.value);
  return clean(units === "mm" ? size.value * 25.4 : size.value / 25.4);
}

/** Distance between neighbours: as written, or the chord of the bolt circle. */
export function spacingOf(
  { circle, spacing, equally }: Group,
  n: number,
  units: Units | null,
): { value: number | null; note?: Remark } {
  if (spacing) return { value: inUnits(spacing, units) };
  const diameter = inUnits(circle, units);
  if (diameter !== null && n > 1) {
    return {
      value: clean(diameter * Math.sin(Math.PI / n)),
      note: { code: "spacing-chord", diameter, holes: n, equally: equally ?? false },
    };
  }
  if (diameter !== null) return { value: null, note: { code: "circle-without-number" } };
  return { value: null, note: equally ? { code: "equally-on-nothing" } : undefined };
}
