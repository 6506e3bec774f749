/** Features of a callout to planning rows, in the order they are cut. */

import type { Units } from "../units.ts";
import type { Feature, Group, Placed } from "./callout-features.ts";
import { fitDeviations, standardTolerance } from "./callout-fits.ts";
import type { Size } from "./callout-text.ts";

export type CalloutCell = string | number | null;
export type CalloutHeading =
  | "Row"
  | "Feature"
  | "Operation"
  | "Units"
  | "Quantity"
  | "Material"
  | "Machine"
  | "Thread"
  | "Start diameter"
  | "Finish diameter"
  | "Depth"
  | "Through"
  | "Hand"
  | "Hole depth"
  | "Spacing"
  | "Size tolerance";
export type CalloutCells = { readonly [H in CalloutHeading]?: CalloutCell };

export interface RowDraft {
  readonly cells: CalloutCells;
  readonly understood: boolean;
  readonly notes: readonly string[];
}

/** Blind tapped hole where only the thread's length is given: the drill goes this many pitches deeper (common practice for thread milling). */
const PITCHES_BELOW_THREAD = 2;
/** A drill holds about this grade (common practice); a hole with less tolerance is bored. */
const DRILLED_GRADE = 11;
/** Larger holes are bored rather than drilled from solid [mm] (common practice). */
const LARGEST_DRILL = 40;
/** A plain hole is the pilot of a thread when it is this much of the thread's diameter. */
const PILOT_SHARE = { low: 0.6, high: 1 } as const;

const INCH = 25.4;
/** Takes the dust of binary arithmetic off decimal text. */
const clean = (value: number): number => Number(value.toPrecision(12));

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
function quantityOf({ times, counts }: Group): { total: number; pattern: number; told: boolean; note?: string } {
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

/** Planning rows of one group of features. */
export function rowsOf(group: Group, units: Units | null, base: CalloutCells): { rows: RowDraft[]; left: Placed[] } {
  const reader = new RowMaker(group, units, base);
  return { rows: reader.rows(), left: reader.left };
}

const RANK: Readonly<Record<string, number>> = {
  drill: 0,
  boss: 0,
  bore: 1,
  counterbore: 2,
  countersink: 3,
  ream: 4,
  "thread mill": 5,
};

class RowMaker {
  readonly left: Placed[];
  private readonly quantity;

  constructor(
    private readonly group: Group,
    private readonly units: Units | null,
    private readonly base: CalloutCells,
  ) {
    this.left = [...group.left];
    this.quantity = quantityOf(group);
  }

  rows(): RowDraft[] {
    this.joinPilot();
    const kept = this.group.features.filter((f) => {
      if (f.thread || f.diameter) return true;
      const seat = f.kind === "counterbore" || f.kind === "spotface" || f.kind === "countersink";
      if (seat && this.group.features.some((o) => o.thread || o.diameter)) return true;
      this.left.push(...f.tokens);
      return false;
    });
    const threads = kept.filter((f) => f.thread);
    const pilots = new Map(threads.map((t) => [t, this.pilotOf(t, kept)] as const));
    const used = new Set([...pilots.values()].filter((p) => p !== undefined));
    const drafts: RowDraft[] = [];
    for (const f of kept) {
      if (f.thread) drafts.push(...this.threadRows(f, pilots.get(f)));
      else if (!used.has(f)) drafts.push(this.plainRow(f, kept));
    }
    return drafts.sort((a, b) => (RANK[a.cells.Operation ?? ""] ?? 0) - (RANK[b.cells.Operation ?? ""] ?? 0));
  }

  /** A hole of which only the depth is told, beside a thread: the depth of the hole under it. */
  private joinPilot(): void {
    const { features } = this.group;
    const thread = features.find((f) => f.thread);
    if (!thread) return;
    for (const f of [...features]) {
      if (f.diameter || !["drill", "pilot", "hole"].includes(f.kind)) continue;
      if (f.depth && this.group.holeDepth === undefined) this.group.holeDepth = f.depth;
      else if (f.depth) continue;
      if (f.through) thread.through ??= true;
      features.splice(features.indexOf(f), 1);
    }
  }

  private value(size: Size | undefined): number | null {
    if (size === undefined) return null;
    if (size.units === undefined || this.units === null || size.units === this.units) return clean(size.value);
    return clean(this.units === "mm" ? size.value * INCH : size.value / INCH);
  }

  private pilotOf({ thread: token }: Feature, features: readonly Feature[]): Feature | undefined {
    const thread = token?.thread;
    const said = features.find((f) => f.kind === "pilot" && f.diameter);
    if (said || !thread || thread.kind === "external") return said;
    const scale = this.units === null || this.units === thread.native ? 1 : thread.native === "mm" ? INCH : 1 / INCH;
    const share = (f: Feature) => ((this.value(f.diameter) ?? 0) * scale) / thread.major;
    return features
      .filter((f) => (f.kind === "hole" || f.kind === "drill") && f.diameter && !f.fit)
      .filter((f) => share(f) > PILOT_SHARE.low && share(f) < PILOT_SHARE.high)
      .sort((a, b) => share(b) - share(a))[0];
  }

  /** What all rows of the group share. */
  private draft(
    cells: CalloutCells,
    notes: readonly (string | undefined)[],
    feature: Feature,
    understood = true,
  ): RowDraft {
    const { group, quantity } = this;
    const twice = feature.bothSides ? 2 : 1;
    const spacing = this.spacing();
    const all = [
      ...notes,
      quantity.note,
      twice > 1 ? `both sides: quantity × 2 = ${quantity.total * 2}` : undefined,
      ...group.notes.filter((n) => !(quantity.told && n.startsWith("TYP"))),
      spacing.note,
    ];
    return {
      cells: {
        ...this.base,
        Units: this.units,
        Quantity: quantity.total * twice,
        ...cells,
        Through: feature.through ? "yes" : null,
        Spacing: spacing.value,
      },
      understood,
      notes: all.filter((n) => n !== undefined),
    };
  }

  private spacing(): { value: number | null; note?: string } {
    const { circle, spacing, equally } = this.group;
    if (spacing) return { value: this.value(spacing) };
    const n = this.quantity.pattern;
    const diameter = this.value(circle);
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

  private threadRows(f: Feature, pilot: Feature | undefined): RowDraft[] {
    const token = f.thread!;
    const thread = token.thread;
    const cells = { Thread: token.designation, Hand: f.hand ?? null };
    const depth = this.value(f.depth);
    if (!thread) {
      const rows = pilot ? [this.plainRow(pilot, [])] : [];
      return [
        ...rows,
        this.draft({ ...cells, Operation: "thread mill", Depth: depth }, [token.error, token.note], f, false),
      ];
    }
    const through = f.through || pilot?.through;
    if (thread.kind === "external") {
      const note = "external thread: the diameter before it is not in the callout";
      return [
        this.draft({ ...cells, Operation: "thread mill", Depth: depth }, [note, token.note, this.depthNote(f)], f),
      ];
    }
    const notes = [token.note];
    let holeDepth = this.value(this.group.holeDepth ?? pilot?.depth);
    let drillDepth = holeDepth ?? (f.through && !pilot ? depth : null);
    if (drillDepth === null && depth !== null && !through && this.units !== null) {
      const pitch =
        thread.native === this.units ? thread.pitch : this.units === "mm" ? thread.pitch * INCH : thread.pitch / INCH;
      holeDepth = clean(depth + PITCHES_BELOW_THREAD * pitch);
      drillDepth = holeDepth;
      notes.push(`hole assumed ${PITCHES_BELOW_THREAD} pitches deeper than the thread: ${holeDepth}`);
    }
    const start = this.value(pilot?.diameter);
    const drillFeature: Feature = { kind: "drill", tokens: [], through, bothSides: f.bothSides };
    const drillNotes = [
      pilot?.drill && `drill ${pilot.drill}`,
      pilot ? undefined : "drill size: the thread's tap drill",
    ];
    return [
      this.draft(
        { Thread: token.designation, Operation: "drill", "Finish diameter": start, Depth: drillDepth },
        [
          ...drillNotes,
          ...notes,
          drillDepth === null ? this.depthNote(drillFeature) : undefined,
          this.limitsNote(pilot),
        ],
        drillFeature,
      ),
      this.draft(
        {
          ...cells,
          Operation: "thread mill",
          "Start diameter": start,
          Depth: depth,
          "Hole depth": through ? null : holeDepth,
        },
        [...notes, depth === null ? this.depthNote(f) : undefined],
        f,
      ),
    ];
  }

  private depthNote(f: Feature): string | undefined {
    if (f.depth) return undefined;
    return f.through ? "through: Depth is the thickness there, which is not in the callout" : "depth is not told";
  }

  private limitsNote(f: Feature | undefined): string | undefined {
    const limits = f && this.limits(f);
    return limits ? `limits ${limits.low} to ${limits.high}` : undefined;
  }

  /** Limits of size in the row's units, from limits, deviations or a tolerance class. */
  private limits(f: Feature): { low: number; high: number; shaft?: boolean } | undefined {
    const nominal = this.value(f.diameter);
    if (nominal === null) return undefined;
    if (f.tolerance) {
      const [lower, upper] = [this.value(f.tolerance.lower)!, this.value(f.tolerance.upper)!];
      return { low: clean(nominal + lower), high: clean(nominal + upper), shaft: f.fit ? /^[a-z]/.test(f.fit) : false };
    }
    if (f.diameter?.limits) {
      const [low, high] = f.diameter.limits.map((value) => this.value({ ...f.diameter!, value })!) as [number, number];
      return { low, high };
    }
    if (!f.fit || this.units === null) return undefined;
    const scale = this.units === "in" ? INCH : 1;
    const deviations = fitDeviations(nominal * scale, f.fit);
    if (!deviations) return undefined;
    return {
      low: clean(nominal + deviations.lower / scale),
      high: clean(nominal + deviations.upper / scale),
      shaft: deviations.shaft,
    };
  }

  /** A row of a hole, bore, seat or boss. */
  private plainRow(f: Feature, features: readonly Feature[]): RowDraft {
    const nominal = this.value(f.diameter);
    const limits = this.limits(f);
    const notes: (string | undefined)[] = [f.drill && `drill ${f.drill}`];
    let operation =
      { hole: "drill", pilot: "drill", spotface: "counterbore", thread: "drill" }[f.kind as "hole"] ?? f.kind;
    if (f.kind === "hole" && limits?.shaft) {
      operation = "boss";
      notes.push(`${f.fit} is a shaft class: planned as a boss`);
    } else if (f.kind === "hole" && nominal !== null && this.units !== null) {
      const scale = this.units === "in" ? INCH : 1;
      const holds = standardTolerance(nominal * scale, DRILLED_GRADE);
      if (limits && holds !== undefined && (limits.high - limits.low) * scale < holds - 1e-9) {
        operation = "bore";
        notes.push(`planned as a bore from solid: the tolerance is less than drilling holds (IT${DRILLED_GRADE})`);
      } else if (nominal * scale > LARGEST_DRILL) {
        operation = "bore";
        notes.push(`planned as a bore from solid: larger than a drill of ${LARGEST_DRILL} mm`);
      }
    }
    let understood = nominal !== null;
    if (f.fit && !limits) {
      notes.push(`tolerance class ${f.fit} is not in the table: no limits`);
      understood = false;
    }
    if (nominal === null) notes.push("diameter is not told");
    let finish = nominal;
    let tolerance: number | null = null;
    if (limits) {
      const middle = clean((limits.low + limits.high) / 2);
      const half = clean((limits.high - limits.low) / 2);
      const source = f.fit && !f.tolerance ? ` (${f.fit}, ISO 286)` : "";
      if (operation === "drill" && middle !== nominal) {
        notes.push(
          `limits ${limits.low} to ${limits.high}${source}: not symmetrical about the drill's size, Size tolerance left blank`,
        );
      } else {
        finish = middle;
        tolerance = half;
        notes.push(`limits ${limits.low} to ${limits.high}${source}: middle ${middle} ± ${half}`);
      }
    }
    const seat = operation === "counterbore" || operation === "countersink";
    const start = this.startOf(f, operation, features);
    let depth = this.value(f.depth);
    if (operation === "countersink") {
      notes.push(f.angle === undefined ? "angle is not told" : `countersink ${f.angle}°`);
      if (
        depth === null &&
        f.angle !== undefined &&
        f.angle > 0 &&
        f.angle < 180 &&
        finish !== null &&
        start !== null &&
        finish > start
      ) {
        depth = clean((finish - start) / 2 / Math.tan((f.angle * Math.PI) / 360));
        notes.push("depth of the cone from the face: (D − d)/(2·tan(angle/2))");
      }
    }
    if (f.kind === "spotface" && depth === null) notes.push("spotface: as deep as cleans up the face, not told");
    else if (depth === null) notes.push(seat ? "depth is not told" : this.depthNote(f));
    return this.draft(
      {
        Operation: operation,
        "Start diameter": start,
        "Finish diameter": finish,
        Depth: depth,
        "Size tolerance": tolerance,
      },
      notes,
      f,
      understood,
    );
  }

  /** The hole that is there before a seat, a reamer or a bore: the largest smaller one of the callout. */
  private startOf(f: Feature, operation: string, features: readonly Feature[]): number | null {
    if (operation === "drill" || operation === "boss") return null;
    const own = this.value(f.diameter);
    const smaller = features
      .filter((o) => o !== f && ["hole", "drill", "pilot", "ream", "bore"].includes(o.kind))
      .map((o) => this.value(o.diameter))
      .filter((d) => d !== null && own !== null && d < own) as number[];
    return smaller.length > 0 ? Math.max(...smaller) : null;
  }
}
