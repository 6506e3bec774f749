/** Features of a callout to planning rows, in the order they are cut. */

import { reamerDrill } from "../drill/ream.ts";
import { TradeError } from "../errors.ts";
import { drillOversize } from "../operations/shared/choices.ts";
import type { OperationName } from "../table/rows.ts";
import type { Units } from "../units.ts";
import { Chain, HOLES } from "./chain.ts";
import { limitsOf } from "./fits.ts";
import { insertNote } from "./insert.ts";
import { coneDepth, finishOf, isSeat, operationOf } from "./plain.ts";
import { doubtOf, type Plausible } from "./plausible.ts";
import type { Remark } from "./remarks/remark.ts";
import type { CalloutCells, Feature, Group, Placed, RowDraft, Size } from "./types.ts";
import { clean, quantityOf, spacingOf } from "./units.ts";

/** Blind tapped hole where only the thread's length is given: the drill goes this many pitches deeper (common practice for thread milling). */
const PITCHES_BELOW_THREAD = 2;
/** Classes that an ordinary reamer holds (common practice). */
const REAMED = /^H[789]$/;
/** Whole sizes that reamers are kept in [mm], and room below the depth for their lead, over the diameter (common practice). */
const REAMERS = { least: 2, most: 20, lead: 0.2 } as const;
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
      this.group.asks.push({ code: "not-its-drill" });
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
    const [large, small] = [Math.max(...sizes), Math.min(...sizes)];
    if (large > this.given.limits.steps * small) this.group.asks.push({ code: "steps-far-apart", large, small });
    const plain = kept.filter((f) => f.kind === "hole" && f.diameter);
    for (let i = 1; i < plain.length; i++)
      if (
        plain[i - 1]!.through &&
        plain[i]!.depth &&
        this.value(plain[i]!.diameter)! > this.value(plain[i - 1]!.diameter)!
      )
        this.group.asks.push({ code: "counterbore-lost" });
  }

  /** What all rows of the group share. */
  private draft(
    cells: CalloutCells,
    notes: readonly (Remark | undefined)[],
    feature: Feature,
    understood = true,
  ): RowDraft {
    const { group, quantity } = this;
    const depth = cells.Depth ?? (feature.through ? this.value(this.given.thickness) : null);
    const twice = feature.bothSides ? 2 : 1;
    const many = quantity.total > MOST;
    const spacing = spacingOf(group, quantity.pattern, this.units);
    const shared = {
      ...this.base,
      Units: this.units,
      Quantity: many ? null : quantity.total * twice,
      ...cells,
      Depth: depth,
      Spacing: spacing.value,
    };
    const doubt = doubtOf(shared, this.units, feature.thread?.thread, this.given.limits);
    const all: (Remark | undefined)[] = [
      many ? { code: "quantity-too-large" } : undefined,
      ...group.asks,
      doubt,
      ...notes,
      quantity.note,
      feature.bothSides ? { code: "both-sides", total: quantity.total * twice } : undefined,
      ...group.notes.filter(({ code }) => !(quantity.told && code === "typical")),
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
      const why: Remark | undefined =
        token.error === undefined ? undefined : { code: "thread-unread", why: token.error };
      return [...rows, this.draft({ ...cells, Operation: "thread mill", Depth: depth }, [why, token.note], f, false)];
    }
    const through = f.through || pilot?.through;
    if (depth === null && through) f.through = true;
    if (thread.kind === "external") {
      const notes: (Remark | undefined)[] = [{ code: "thread-external" }, token.note, this.depthNote(f)];
      return [this.draft({ ...cells, Operation: "thread mill", Depth: depth }, notes, f)];
    }
    const notes = [token.note];
    let holeDepth = this.value(this.group.holeDepth ?? pilot?.depth);
    let drillDepth = holeDepth ?? (f.through && !pilot ? depth : null);
    if (drillDepth === null && depth !== null && !through && this.units !== null) {
      const pitch =
        thread.native === this.units ? thread.pitch : this.units === "mm" ? thread.pitch * INCH : thread.pitch / INCH;
      holeDepth = clean(depth + PITCHES_BELOW_THREAD * pitch);
      drillDepth = holeDepth;
      notes.push({ code: "hole-deeper", pitches: PITCHES_BELOW_THREAD, depth: holeDepth });
    }
    const start = this.value(pilot?.diameter);
    const bored = pilot?.kind === "bore";
    const drillFeature: Feature = { kind: "drill", tokens: [], through, bothSides: f.bothSides };
    const drillNote: Remark | undefined = pilot ? namedDrill(pilot) : { code: "tap-drill" };
    return [
      this.draft(
        {
          Thread: bored ? null : token.designation,
          Operation: bored ? "bore" : "drill",
          "Finish diameter": start,
          Depth: drillDepth,
        },
        [drillNote, ...notes, drillDepth === null ? this.depthNote(drillFeature) : undefined, this.limitsNote(pilot)],
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

  private depthNote(f: Feature): Remark | undefined {
    if (f.depth) return undefined;
    if (!f.through) return { code: "depth-not-told" };
    const thickness = this.value(this.given.thickness);
    return thickness === null ? { code: "depth-through" } : { code: "depth-thickness", thickness };
  }

  private limitsNote(f: Feature | undefined): Remark | undefined {
    const limits = f && limitsOf(f, this.units);
    return limits && { code: "limits", low: limits.low, high: limits.high };
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
    this.group.notes.push({ code: "reamed", fit: f.fit });
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
    const planned = operationOf(f, nominal, limits, this.units);
    const { operation } = planned;
    const size = finishOf(f, nominal, limits, operation);
    const doubts = this.sizeDoubts(f, operation, limits !== undefined);
    const seatDoubts = this.seatDoubts(f, operation, features);
    const understood = nominal !== null && doubts.length + seatDoubts.length === 0;
    const notes: (Remark | undefined)[] = [namedDrill(f), ...planned.notes, ...doubts];
    if (f.tolerance?.half) notes.push({ code: "tolerance-half" });
    if (nominal === null) notes.push({ code: "diameter-not-told" });
    notes.push(...size.notes, ...seatDoubts);
    const start = this.startOf(f, operation, features);
    let depth = this.value(f.depth);
    if (operation === "countersink") {
      notes.push(f.angle === undefined ? { code: "angle-not-told" } : { code: "angle", degrees: f.angle });
      if (depth === null && understood) {
        depth = coneDepth(f, size.finish, start);
        if (depth !== null) notes.push({ code: "depth-of-cone" });
      }
    }
    if (depth === null) notes.push(this.missingDepth(f, operation));
    return this.draft(
      {
        Operation: operation,
        "Start diameter": start,
        "Finish diameter": size.finish,
        Depth: depth,
        "Size tolerance": size.tolerance,
      },
      notes,
      f,
      understood,
    );
  }

  private missingDepth(f: Feature, operation: OperationName): Remark | undefined {
    if (f.kind === "spotface") return { code: "depth-of-spotface" };
    return isSeat(operation) ? { code: "depth-not-told" } : this.depthNote(f);
  }

  /** Limits that were not understood, and a shaft where a hole is written. */
  private sizeDoubts(f: Feature, operation: OperationName, limited: boolean): Remark[] {
    const doubts: Remark[] = [];
    if (operation === "boss" && (f.through || f.depth)) doubts.push({ code: "shaft-like-hole", fit: f.fit });
    if (!limited && f.tolerance) doubts.push({ code: "tolerance-unread" });
    else if (!limited && f.fit) doubts.push({ code: "fit-unknown", fit: f.fit });
    return doubts;
  }

  /** A seat as its hole does not allow it, an angle that may be a depth, a tolerance that may be another number. */
  private seatDoubts(f: Feature, operation: OperationName, features: readonly Feature[]): Remark[] {
    const doubts: Remark[] = [];
    const own = this.value(f.diameter);
    const hole = features.some(
      (o) => HOLES.includes(o.kind) && (this.value(o.diameter) ?? 0) >= (own ?? Number.POSITIVE_INFINITY),
    );
    if (isSeat(operation) && hole) doubts.push({ code: "seat-in-hole", operation });
    const sink = operation === "countersink";
    if (sink && f.angle === undefined && f.depth) doubts.push({ code: "depth-or-angle" });
    const most = this.given.limits.tolerance * (own ?? 0);
    if (f.tolerance && [f.tolerance.lower, f.tolerance.upper].some((t) => Math.abs(this.value(t)!) > most))
      doubts.push({ code: "tolerance-wide" });
    if (sink && f.angle !== undefined && !(f.angle > 0 && f.angle < 180))
      doubts.push({ code: "angle-in-doubt", degrees: f.angle });
    return doubts;
  }
}

const namedDrill = ({ drill }: Feature): Remark | undefined => (drill ? { code: "drill", name: drill } : undefined);
