/** Features of a callout to planning rows, in the order they are cut. */

import { reamerDrill } from "../drill/ream.ts";
import { TradeError } from "../errors.ts";
import { drillOversize } from "../operations/shared/choices.ts";
import type { OperationName } from "../table/rows.ts";
import type { Units } from "../units.ts";
import { Chain, HOLES } from "./chain.ts";
import { DRILLED_GRADE, drilledTolerance, limitsOf } from "./fits.ts";
import { insertNote } from "./insert.ts";
import { MADE_BY } from "./marks.ts";
import { doubtOf, type Plausible } from "./plausible.ts";
import type { CalloutCells, Feature, Group, Placed, RowDraft, Size } from "./types.ts";
import { clean, quantityOf, spacingOf } from "./units.ts";

/** Blind tapped hole where only the thread's length is given: the drill goes this many pitches deeper (common practice for thread milling). */
const PITCHES_BELOW_THREAD = 2;
/** Classes that an ordinary reamer holds (common practice). */
const REAMED = /^H[789]$/;
/** Whole sizes that reamers are kept in [mm], and room below the depth for their lead, over the diameter (common practice). */
const REAMERS = { least: 2, most: 20, lead: 0.2 } as const;
/** Larger holes are bored rather than drilled from solid [mm] (common practice). */
const LARGEST_DRILL = 40;

/** More of one feature than that is a misreading. */
const MOST = 100000;

const INCH = 25.4;

/** What is known beside the text. */
export interface Given {
  /** Thickness of the part where holes go through. */
  readonly thickness?: Size;
  readonly limits: Plausible;
}
/** Planning rows of one group of features. */
export function rowsOf(
  group: Group,
  units: Units | null,
  base: CalloutCells,
  given: Given,
): { rows: RowDraft[]; left: Placed[] } {
  const reader = new RowMaker(group, units, base, given);
  return { rows: reader.rows(), left: reader.left };
}

/** Place in the order of cutting; those that are not named come first. */
const RANK: Readonly<Partial<Record<OperationName, number>>> = {
  drill: 0,
  boss: 0,
  bore: 1,
  counterbore: 2,
  countersink: 3,
  ream: 4,
  "thread mill": 5,
};

class RowMaker extends Chain {
  readonly left: Placed[];
  private readonly quantity;

  constructor(
    group: Group,
    units: Units | null,
    private readonly base: CalloutCells,
    private readonly given: Given,
  ) {
    super(group, units);
    this.left = [...group.left];
    this.quantity = quantityOf(group);
  }

  rows(): RowDraft[] {
    this.joinPilot();
    this.shareHole();
    const kept = this.group.features.filter((f) => {
      if (f.thread || f.diameter) return true;
      const seat = f.kind === "counterbore" || f.kind === "spotface" || f.kind === "countersink";
      if (seat && this.group.features.some((o) => o.thread || o.diameter)) return true;
      this.left.push(...f.tokens);
      return false;
    });
    const threads = kept.filter((f) => f.thread);
    const pilots = new Map(threads.map((t) => [t, this.pilotOf(t, kept)] as const));
    const used = new Set<Feature | undefined>(pilots.values());
    // A larger hole of its own depth above the thread is a relief.
    const other = kept.find((f) => ["hole", "drill"].includes(f.kind) && !used.has(f));
    const relief =
      other?.depth !== undefined && threads[0] !== undefined && this.shareOf(other, threads[0].thread?.thread) > 1;
    if (other && !relief && threads.length === 1 && threads[0]!.thread?.thread?.kind === "internal")
      this.group.asks.push("the hole beside the thread is not its tap drill: is it the same place?");
    this.askSteps(kept);
    const drafts: RowDraft[] = [];
    for (const f of kept) {
      if (f.thread) drafts.push(...this.threadRows(f, pilots.get(f)));
      else if (!used.has(f)) drafts.push(...this.holeRows(f, kept));
    }
    const rank = ({ cells: { Operation } }: RowDraft) => (Operation && RANK[Operation]) ?? 0;
    return drafts.sort((a, b) => rank(a) - rank(b));
  }

  /** Diameters of one callout that are far apart, and a larger hole on top without the sign of a counterbore. */
  private askSteps(kept: readonly Feature[]): void {
    const sizes = kept.flatMap((f) => {
      const { thread } = f.thread ?? {};
      const major = thread && { value: thread.major, units: thread.native };
      return this.value(f.diameter ?? major) ?? [];
    });
    if (Math.max(...sizes) > this.given.limits.steps * Math.min(...sizes))
      this.group.asks.push(`⌀${Math.max(...sizes)} and ⌀${Math.min(...sizes)} in one callout: is that so?`);
    const plain = kept.filter((f) => f.kind === "hole" && f.diameter);
    for (let i = 1; i < plain.length; i++)
      if (
        plain[i - 1]!.through &&
        plain[i]!.depth &&
        this.value(plain[i]!.diameter)! > this.value(plain[i - 1]!.diameter)!
      )
        this.group.asks.push("the sign of a counterbore may be lost");
  }

  /** What all rows of the group share. */
  private draft(
    cells: CalloutCells,
    notes: readonly (string | undefined)[],
    feature: Feature,
    understood = true,
  ): RowDraft {
    const { group, quantity } = this;
    const depth = cells.Depth ?? (feature.through ? this.value(this.given.thickness) : null);
    const spacing = spacingOf(group, quantity.pattern, this.units);
    const shared = {
      ...this.base,
      Units: this.units,
      Quantity: quantity.total > MOST ? null : quantity.total * (feature.bothSides ? 2 : 1),
      ...cells,
      Depth: depth,
      Spacing: spacing.value,
    };
    const doubt = doubtOf(shared, this.units, feature.thread?.thread, this.given.limits);
    const twice = feature.bothSides ? 2 : 1;
    const many = quantity.total > MOST;
    const all = [
      many ? "quantity not understood" : undefined,
      ...group.asks,
      doubt,
      ...notes,
      quantity.note,
      twice > 1 ? `both sides: quantity × 2 = ${quantity.total * 2}` : undefined,
      ...group.notes.filter((n) => !(quantity.told && n.startsWith("TYP"))),
      spacing.note,
    ];
    return {
      cells: {
        ...shared,
        Through: feature.through ? "yes" : null,
      },
      understood: understood && !many && doubt === undefined && group.asks.length === 0,
      notes: all.filter((n) => n !== undefined),
    };
  }

  private threadRows(f: Feature, pilot: Feature | undefined): RowDraft[] {
    const token = f.thread!;
    const thread = token.thread;
    const cells = { Thread: token.designation, Hand: f.hand ?? null };
    const depth = this.value(f.depth);
    if (this.group.insert) {
      const rows = pilot ? [this.plainRow(pilot, [])] : [];
      return [...rows, this.draft({ Operation: null }, [insertNote(token.designation, thread)], f, false)];
    }
    if (!thread) {
      const rows = pilot ? [this.plainRow(pilot, [])] : [];
      return [
        ...rows,
        this.draft({ ...cells, Operation: "thread mill", Depth: depth }, [token.error, token.note], f, false),
      ];
    }
    const through = f.through || pilot?.through;
    if (depth === null && through) f.through = true;
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
    const bored = pilot?.kind === "bore";
    const drillFeature: Feature = { kind: "drill", tokens: [], through, bothSides: f.bothSides };
    const drillNotes = [
      pilot?.drill && `drill ${pilot.drill}`,
      pilot ? undefined : "drill size: the thread's tap drill",
    ];
    return [
      this.draft(
        {
          Thread: bored ? null : token.designation,
          Operation: bored ? "bore" : "drill",
          "Finish diameter": start,
          Depth: drillDepth,
        },
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
    if (!f.through) return "depth is not told";
    const thickness = this.value(this.given.thickness);
    return thickness === null
      ? "through: Depth is the thickness there, which is not in the callout"
      : `through: Depth is the thickness given, ${thickness}`;
  }

  private limitsNote(f: Feature | undefined): string | undefined {
    const limits = f && limitsOf(f, this.units);
    return limits ? `limits ${limits.low} to ${limits.high}` : undefined;
  }

  /** A hole of a reamer's class and size is drilled and reamed; any other feature is one row. */
  private holeRows(f: Feature, features: readonly Feature[]): RowDraft[] {
    const drill = this.drillForReamer(f);
    if (drill === undefined) return [this.plainRow(f, features)];
    const own = this.value(f.diameter)!;
    const smaller = features.some((o) => o !== f && HOLES.includes(o.kind) && (this.value(o.diameter) ?? own) < own);
    // A callout that tells the hole before it leaves only the reaming.
    if (smaller) return [this.plainRow({ ...f, kind: "ream" }, features)];
    const hole: Feature = {
      kind: "drill",
      diameter: { value: drill, units: "mm" },
      depth: this.reamedDepth(f),
      through: f.through,
      bothSides: f.bothSides,
      tokens: [],
    };
    const ream: Feature = { ...f, kind: "ream" };
    this.group.notes.push(`${f.fit}: drilled, then reamed; a reamer holds that class in this size`);
    return [this.plainRow(hole, [hole, ream]), this.plainRow(ream, [hole, ream])];
  }

  /** The drill before the reamer [mm], where the class and the size are those that reamers come in (common practice). */
  private drillForReamer(f: Feature): number | undefined {
    const diameter = this.value(f.diameter);
    if (f.kind !== "hole" || diameter === null || this.units !== "mm" || !REAMED.test(f.fit ?? "")) return undefined;
    const whole = Number.isInteger(diameter) && diameter >= REAMERS.least && diameter <= REAMERS.most;
    if (!whole) return undefined;
    try {
      return reamerDrill(diameter, drillOversize(diameter, "hss")).diameter;
    } catch (error) {
      if (error instanceof TradeError) return undefined;
      throw error;
    }
  }

  /** Depth of the drilled hole: the reamer's lead has to run out below the depth that is asked for. */
  private reamedDepth(f: Feature): Feature["depth"] {
    if (!f.depth || f.through) return f.depth;
    const lead = clean(REAMERS.lead * this.value(f.diameter)!);
    return { ...f.depth, value: clean(f.depth.value + lead), limits: undefined };
  }

  /** A row of a hole, bore, seat or boss. */
  private plainRow(f: Feature, features: readonly Feature[]): RowDraft {
    const nominal = this.value(f.diameter);
    const limits = limitsOf(f, this.units);
    const notes: (string | undefined)[] = [f.drill && `drill ${f.drill}`];
    let operation = MADE_BY[f.kind];
    if (f.kind === "hole" && limits?.shaft) {
      operation = "boss";
      notes.push(`${f.fit} is a shaft class: planned as a boss`);
    } else if (f.kind === "hole" && nominal !== null && this.units !== null) {
      const scale = this.units === "in" ? INCH : 1;
      const holds = drilledTolerance(nominal * scale);
      if (limits && holds !== undefined && (limits.high - limits.low) * scale < holds - 1e-9) {
        operation = "bore";
        notes.push(`planned as a bore from solid: the tolerance is less than drilling holds (IT${DRILLED_GRADE})`);
      } else if (nominal * scale > LARGEST_DRILL) {
        operation = "bore";
        notes.push(`planned as a bore from solid: larger than a drill of ${LARGEST_DRILL} mm`);
      }
    }
    if (f.kind === "counterdrill") notes.push("counterdrill: opens the hole up to this depth");
    let understood = nominal !== null;
    if (operation === "boss" && (f.through || f.depth)) {
      notes.push(`a shaft class on what is written like a hole: ${f.fit ?? ""}`);
      understood = false;
    }
    if (!limits && (f.fit || f.tolerance)) {
      notes.push(f.tolerance ? "tolerance not understood" : `tolerance class ${f.fit} is not in the table: no limits`);
      understood = false;
    }
    if (f.tolerance?.half) notes.push("only one side of the tolerance is written: the other is taken as 0");
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
    const hole = features.find(
      (o) => HOLES.includes(o.kind) && (this.value(o.diameter) ?? 0) >= (nominal ?? Number.POSITIVE_INFINITY),
    );
    if (seat && hole) {
      notes.push(`the ${operation} is not larger than its hole: is that so?`);
      understood = false;
    }
    if (operation === "countersink" && f.angle === undefined && f.depth) {
      notes.push("a depth or an angle? the degree sign may be lost");
      understood = false;
    }
    const most = this.given.limits.tolerance * (nominal ?? 0);
    if (f.tolerance && [f.tolerance.lower, f.tolerance.upper].some((t) => Math.abs(this.value(t)!) > most)) {
      notes.push("a tolerance so wide: is that so?");
      understood = false;
    }
    if (operation === "countersink" && f.angle !== undefined && !(f.angle > 0 && f.angle < 180)) {
      notes.push(`an angle of ${f.angle}°: is that so?`);
      understood = false;
    }
    const start = this.startOf(f, operation, features);
    let depth = this.value(f.depth);
    if (operation === "countersink") {
      notes.push(f.angle === undefined ? "angle is not told" : `countersink ${f.angle}°`);
      if (
        depth === null &&
        understood &&
        f.angle !== undefined &&
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
}
