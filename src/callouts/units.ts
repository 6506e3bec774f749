/** Units and quantities of a callout, from what is written in it. */
import type { Units } from "../units.ts";
import type { Group, Size } from "./types.ts";

/** System of the callout's lengths. Numbers that carry or betray it count first, then threads and tolerance classes. */
export function unitsOf(
  groups: readonly Group[],
  fallback: Units | undefined,
): { units: Units | null; note?: string; understood: boolean } {
  const strong = new Set<Units>();
  const weak = new Set<Units>();
  const tell = (size: Size | undefined) => {
    if (size === undefined) return;
    const said = size.units ?? size.tells;
    if (said) strong.add(said);
  };
  for (const { features, holeDepth, circle, spacing } of groups) {
    for (const size of [holeDepth, circle, spacing]) tell(size);
    for (const f of features) {
      for (const size of [f.diameter, f.depth, f.tolerance?.lower, f.tolerance?.upper]) tell(size);
      if (f.thread?.thread && f.thread.thread.standard !== "pipe") weak.add(f.thread.thread.native);
      if (f.fit) weak.add("mm");
    }
  }
  const marked = new Set(
    groups
      .flatMap((g) => sizesOf(g))
      .map((s) => s.units)
      .filter((u) => u !== undefined),
  );
  if (strong.size === 1) {
    const units = [...strong][0]!;
    const why = { in: "leading point, fraction or inch mark", mm: "decimal comma or mm" }[units];
    const odd = weak.size === 1 && !weak.has(units) ? `; its thread or class is ${[...weak][0]}` : "";
    return { units, note: `${units} from the way its numbers are written (${why})${odd}`, understood: true };
  }
  if (strong.size > 1) {
    const tells = new Set(
      groups
        .flatMap((g) => sizesOf(g))
        .map((s) => (s.units ? undefined : s.tells))
        .filter(Boolean),
    );
    const bare = groups.flatMap((g) => sizesOf(g)).some((s) => !s.units && !s.tells);
    if (marked.size > 1 && tells.size === 0 && !bare)
      return { units: [...marked][0]!, note: "inch and mm sizes in one callout: converted", understood: true };
    return {
      units: null,
      note: "units not understood: some numbers look like inches, others like mm",
      understood: false,
    };
  }
  if (weak.size === 1) {
    const units = [...weak][0]!;
    return {
      units,
      note: `${units} from its ${units === "in" ? "thread" : "thread or tolerance class"}`,
      understood: true,
    };
  }
  if (fallback) return { units: fallback, note: `${fallback} assumed: the callout does not tell`, understood: true };
  if (sizesOf(...groups).length === 0 && weak.size === 0) {
    return { units: null, note: "units not told; say mm or in", understood: false };
  }
  return { units: null, note: "units not told: nothing in the callout says mm or in", understood: false };
}

function sizesOf(...groups: readonly Group[]): Size[] {
  return groups
    .flatMap((g) => [g.holeDepth, g.circle, g.spacing, ...g.features.flatMap((f) => [f.diameter, f.depth])])
    .filter((s) => s !== undefined);
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
