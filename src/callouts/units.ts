/** Units and quantities of a callout, from what is written in it. */
import type { Units } from "../units.ts";
import type { Group, Size } from "./types.ts";

export interface Said {
  readonly units: Units | null;
  /** The numbers are written as in this system, against what the drawing says: see which of the two makes sense. */
  readonly rival?: Units;
  /** All of its numbers are. */
  readonly throughout?: boolean;
  readonly note: string;
  readonly understood: boolean;
}

const WHY = { in: "leading point, fraction or inch mark", mm: "decimal comma or mm" } as const;

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
      return { units: own!, note: `${own} from the way its numbers are written (${WHY[own!]})`, understood: true };
    const plain = betrayed.size === 0 && weakOf(groups).size === 0;
    const note = plain ? `${stated} assumed: the callout does not tell` : `${stated}: the units stated for the drawing`;
    if ([...betrayed].every((u) => u === stated)) return { units: stated, note, understood: true };
    const throughout = !bare && betrayed.size === 1;
    return { units: stated, rival: stated === "in" ? "mm" : "in", throughout, note, understood: true };
  }
  const strong = new Set<Units>([...carried, ...betrayed]);
  const weak = weakOf(groups);
  if (strong.size === 1) {
    const units = [...strong][0]!;
    const odd = weak.size === 1 && !weak.has(units) ? `; its thread or class is ${[...weak][0]}` : "";
    return { units, note: `${units} from the way its numbers are written (${WHY[units]})${odd}`, understood: true };
  }
  if (strong.size > 1) {
    if (betrayed.size === 0 && !bare)
      return { units: [...carried][0]!, note: "inch and mm sizes in one callout: converted", understood: true };
    const note = "units not understood: some numbers look like inches, others like mm";
    return { units: null, note, understood: false };
  }
  if (weak.size === 1) {
    const units = [...weak][0]!;
    const note = `${units} from its ${units === "in" ? "thread" : "thread or tolerance class"}`;
    return { units, note, understood: true };
  }
  const note =
    sizes.length === 0 && weak.size === 0
      ? "units not told; say mm or in"
      : "units not told: nothing in the callout says mm or in";
  return { units: null, note, understood: false };
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
export function quantityOf({ times, counts }: Group): { total: number; pattern: number; told: boolean; note?: string } {
  const product = (list: readonly number[]) => list.reduce((a, b) => a * b, 1);
  const front = product(times);
  const told = times.length + counts.length > 0;
  const distinct =
    times.length > 0 ? counts.filter((c) => c !== front) : counts.filter((c, i) => counts.indexOf(c) === i);
  const total = front * product(distinct);
  const factors = [...times, ...distinct];
  const pattern = times.length > 0 ? times[times.length - 1]! : (counts[0] ?? 1);
  const note =
    factors.length > 1
      ? `quantity ${factors.join(" × ")} = ${total}`
      : times.length + counts.length > factors.length
        ? `quantity ${total} is written twice: counted once`
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
): { value: number | null; note?: string } {
  if (spacing) return { value: inUnits(spacing, units) };
  const diameter = inUnits(circle, units);
  if (diameter !== null && n > 1) {
    const note = `spacing is the chord of the bolt circle, ${diameter}·sin(180°/${n})`;
    return {
      value: clean(diameter * Math.sin(Math.PI / n)),
      note: equally ? note : `${note}; taken as equally spaced`,
    };
  }
  if (diameter !== null) return { value: null, note: "bolt circle without a number of holes: no spacing" };
  return { value: null, note: equally ? "equally spaced, but on what is not told" : undefined };
}
