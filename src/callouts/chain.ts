/** The rows of one callout are one hole: which feature is the pilot, which comes first, what holds for both. */
import type { Thread } from "../thread/types.ts";
import type { Units } from "../units.ts";
import { PILOT_SHARE } from "./marks.ts";
import type { Feature, Group, Size } from "./types.ts";
import { inUnits } from "./units.ts";

const INCH = 25.4;
export const HOLES: readonly string[] = ["hole", "drill", "pilot", "ream", "bore"];

export class Chain {
  constructor(
    protected readonly group: Group,
    protected readonly units: Units | null,
  ) {}

  /** A hole of which only the depth is told, beside a thread: the depth of the hole under it. */
  protected joinPilot(): void {
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

  /** Drilled and then reamed or bored: one hole, so that what is told of one row holds for the other. */
  protected shareHole(): void {
    const { features } = this.group;
    if (features.some((f) => f.thread)) return;
    const first = features.filter((f) => ["hole", "drill", "pilot"].includes(f.kind));
    const last = features.filter((f) => f.kind === "ream" || f.kind === "bore");
    if (first.length !== 1 || last.length !== 1) return;
    const [hole, finish] = [first[0]!, last[0]!];
    const [small, large] = [this.value(hole.diameter), this.value(finish.diameter)];
    if (small === null || large === null || small >= large) return;
    const told = (f: Feature) => f.depth !== undefined || f.through === true;
    if (!told(hole)) {
      hole.through = finish.through;
      hole.depth = finish.depth;
      if (finish.depth) this.group.notes.push({ code: "depth-as-above", operation: finish.kind });
    } else if (!told(finish)) finish.through = hole.through;
  }

  protected value(size: Size | undefined): number | null {
    return inUnits(size, this.units);
  }

  /** Diameter of a hole over the major diameter of a thread. */
  protected shareOf(hole: Feature, thread: Thread | undefined): number {
    if (!thread) return 0;
    const scale = this.units === null || this.units === thread.native ? 1 : thread.native === "mm" ? INCH : 1 / INCH;
    return ((this.value(hole.diameter) ?? 0) * scale) / thread.major;
  }

  protected pilotOf({ thread: token }: Feature, features: readonly Feature[]): Feature | undefined {
    const thread = token?.thread;
    const said = features.find((f) => f.kind === "pilot" && f.diameter);
    if (said || !thread || thread.kind === "external") return said;
    const share = (f: Feature) => this.shareOf(f, thread);
    return features
      .filter((f) => ["hole", "drill", "bore"].includes(f.kind) && !f.fit)
      .filter((f) => share(f) > PILOT_SHARE.low && share(f) < PILOT_SHARE.high)
      .sort((a, b) => share(b) - share(a))[0];
  }

  /** The hole that is there before a seat, a reamer or a bore: the largest smaller one of the callout. */
  protected startOf(f: Feature, operation: string, features: readonly Feature[]): number | null {
    if (operation === "drill" || operation === "boss") return null;
    const own = this.value(f.diameter);
    const smaller = features
      .filter((o) => o !== f && HOLES.includes(o.kind))
      .map((o) => this.value(o.diameter))
      .filter((d) => d !== null)
      .filter((d) => own !== null && d < own);
    return smaller.length > 0 ? Math.max(...smaller) : null;
  }
}
