/** Tokens of one callout to features: holes, threads, counterbores … with their sizes, depths and quantities. */

import { Brackets, newGroup } from "./brackets.ts";
import { isMark, needsDiameter } from "./cursor.ts";
import { bothSides, NOTES, OPERATION, PILOT_SHARE } from "./marks.ts";
import type { Feature, FeatureKind, Group, Mark, Placed, Size } from "./types.ts";

/** Reads a callout. A quantity in front of a further feature starts a new group. */
export function featuresOf(tokens: readonly Placed[]): Group[] {
  return new Reader(tokens).read();
}

type Wait = "diameter" | "depth" | "hole depth" | "by" | "circle" | "spaced";

class Reader extends Brackets {
  /** Angle in front of its countersink: "82° CSK". */
  private angle: number | undefined;
  /** What the next number is, said by the token before it. */
  private waiting: { readonly for: Wait; readonly token: Placed } | undefined;

  read(): Group[] {
    for (; this.at < this.tokens.length; this.at++) this.take(this.tokens[this.at]!);
    this.wait(undefined);
    if (this.open.length > 0) this.group.asks.push({ code: "bracket-not-closed" });
    return this.groups;
  }

  private take(token: Placed): void {
    const sized = this.sized;
    this.sized = false;
    this.place(token, sized);
    if (sized && (["separator", "fit", "tolerance"].includes(token.kind) || isMark(token, "diameter", "diameter word")))
      this.sized = true;
  }

  private place(token: Placed, sized: boolean): void {
    switch (token.kind) {
      case "times":
        if (this.group.features.length > 0 || this.group.counts.length > 0) this.groups.push(newGroup());
        this.group.times.push(token.count);
        return;
      case "count": {
        const { times } = this.group;
        if (token.loose && times.length > 0 && times.reduce((a, b) => a * b, 1) !== token.count)
          this.group.asks.push({ code: "quantity-in-doubt", front: [...times], behind: token.count });
        this.group.counts.push(token.count);
        return;
      }
      case "thread":
        this.start("thread", token).thread = token;
        return;
      case "length":
        this.length(token, token.size, token.drill);
        return;
      case "angle":
        if (this.feature?.kind === "countersink" && this.feature.angle === undefined) {
          this.feature.angle = token.degrees;
          this.feature.tokens.push(token);
          this.used();
        } else if (isMark(this.peek(), "countersink")) this.angle = token.degrees;
        else this.group.left.push(token);
        return;
      case "multiple":
        this.multiple(token, token.factor);
        return;
      case "tolerance":
        if (
          this.feature?.diameter &&
          (sized || this.behindThrough()) &&
          (!this.feature.tolerance || (token.half && this.feature.tolerance.half))
        ) {
          this.feature.tolerance = bothSides(this.feature.tolerance, token);
          this.feature.tokens.push(token);
        } else if (this.rightBehind(token, this.feature?.depth)) this.group.notes.push({ code: "depth-tolerance" });
        else this.group.left.push(token);
        return;
      case "fit":
        if (this.feature?.diameter && !this.feature.fit && !this.feature.depth) {
          this.feature.fit = token.text;
          this.feature.tokens.push(token);
        } else this.group.left.push(token);
        return;
      case "mark":
        this.mark(token, token.mark, sized);
        return;
      case "separator":
        this.bracket(token.sign);
        return;
      case "filler":
        return;
      default:
        this.group.left.push(token);
    }
  }

  /** "↧ 2×D", "X 1.5D DEEP": of the thread's or the hole's diameter. */
  private multiple(token: Placed, factor: number): void {
    const waiting = this.used();
    const { feature } = this;
    const ahead = this.depthWord();
    const thread = feature?.thread?.thread;
    const of = thread ? { value: thread.major, units: thread.native } : feature?.diameter;
    if (!feature || !of || (waiting !== "depth" && waiting !== "by" && ahead === 0)) {
      this.group.left.push(token);
      return;
    }
    this.at += ahead;
    this.group.notes.push({ code: "depth-factor", factor });
    this.depth(token, { value: Number((factor * of.value).toPrecision(12)), units: of.units, derived: true });
  }

  /** A sign that never got its number is left over. */
  private wait(next: Reader["waiting"]): void {
    if (this.waiting) this.group.left.push(this.waiting.token);
    this.waiting = next;
  }

  private used(): Wait | undefined {
    const { waiting } = this;
    this.waiting = undefined;
    return waiting?.for;
  }

  /** "⌀.25 THRU 2 HOLES; ⌀.5 THRU 3 HOLES": behind a quantity a further hole is another matter, unless it belongs to a thread. */
  private startsAnew(kind: FeatureKind, token: Placed): boolean {
    const { counts, features } = this.group;
    if (counts.length === 0 || features.length === 0) return false;
    const threads = features.flatMap((f) => f.thread ?? []);
    if (kind === "thread") return threads.length > 0;
    if (kind !== "hole") return false;
    const thread = threads[0]?.thread;
    const share = thread && token.kind === "length" ? token.size.value / thread.major : 0;
    return !(share > PILOT_SHARE.low && share < PILOT_SHARE.high);
  }

  private start(kind: FeatureKind, token: Placed): Feature {
    if (this.startsAnew(kind, token)) this.groups.push(newGroup());
    const feature: Feature = { kind, tokens: [token] };
    // A tap drill in brackets behind its thread is part of it; anything else in brackets is for reference.
    const beside = ["hole", "drill", "pilot"].includes(kind) && this.group.features.some((f) => f.thread);
    if (this.open.some((b) => b.sign === "(") && !beside) this.group.asks.push({ code: "in-brackets" });
    this.group.features.push(feature);
    return feature;
  }

  private length(token: Placed, size: Size, drill: string | undefined): void {
    const pending = this.used();
    const feature = this.feature;
    const next = this.peek();
    if (size.value <= 0) {
      this.group.left.push(token);
      return;
    }
    const inside = this.open[this.open.length - 1];
    if (inside?.behind !== undefined && feature) {
      this.again(token, size, inside.behind);
      return;
    }
    if (pending === "circle" || (isMark(next, "circle") && !this.circleBehind(size))) {
      this.group.circle = size;
      return;
    }
    // A number that a sign is waiting for is not the one of the word behind it: "↧ 10 SPACED 20".
    if (pending === "spaced" || (pending === undefined && isMark(next, "spaced"))) {
      this.group.spacing = size;
      return;
    }
    if (pending === "hole depth" || isMark(next, "hole depth")) {
      this.group.holeDepth = size;
      if (pending !== "hole depth") this.at++;
      return;
    }
    if (pending === "depth") {
      this.depth(token, size);
      return;
    }
    if (pending === "diameter" || isMark(next, "diameter word")) {
      if (isMark(next, "diameter word")) {
        this.at++;
        if (isMark(this.peek(), "circle")) {
          this.group.circle = size;
          return;
        }
      }
      this.diameter(token, size, drill);
      return;
    }
    // ".75 DEEP": the word belongs to the number before it.
    const depthWord = feature ? this.depthWord() : 0;
    if (depthWord > 0) {
      if (depthWord > 1 && next?.kind === "mark") this.mark(next, next.mark, false);
      this.at += depthWord;
      this.depth(token, size);
      return;
    }
    const operation = next?.kind === "mark" ? OPERATION[next.mark] : undefined;
    if (drill !== undefined || (feature && needsDiameter(feature)) || (operation && !this.ownDiameter(1))) {
      this.diameter(token, size, drill);
      return;
    }
    if (pending === "by" && feature) {
      // "THRU X 6" may be six of them or six deep.
      if (feature.through) this.group.left.push(token);
      else this.depth(token, size);
      return;
    }
    if (size.limits && feature?.fit && feature.diameter && !feature.diameter.limits) {
      feature.diameter = { ...feature.diameter, limits: size.limits };
      return;
    }
    if (this.repeats(size)) {
      this.sized = true;
      return;
    }
    // "M8x16/20": the second depth is the hole's.
    if (feature?.kind === "thread" && feature.depth && this.tokens[this.at - 1]!.kind === "separator") {
      if (this.group.holeDepth === undefined && size.value >= feature.depth.value) {
        this.group.holeDepth = size;
        return;
      }
    }
    if (this.plainHole()) {
      this.diameter(token, size, drill);
      this.group.notes.push({ code: "without-sign", value: size.value });
      return;
    }
    this.group.left.push(token);
  }

  private diameter(token: Placed, size: Size, drill: string | undefined): void {
    let feature = this.feature;
    if (feature === undefined || !needsDiameter(feature)) feature = this.start("hole", token);
    else feature.tokens.push(token);
    feature.diameter = size;
    feature.drill = drill;
    this.sized = true;
  }

  private depth(token: Placed, size: Size): void {
    const feature = this.feature;
    if (feature && feature.depth === undefined) {
      feature.depth = size;
      feature.tokens.push(token);
      if (size.limits) this.group.notes.push({ code: "depth-limits", low: size.limits[0], high: size.limits[1] });
    } else this.group.left.push(token);
  }

  private mark(token: Placed, mark: Mark, sized: boolean): void {
    const feature = this.feature;
    const kind = OPERATION[mark];
    if (kind) {
      const next = this.peek();
      const last = next === undefined || next.kind === "separator" || next.kind === "count";
      const follows = sized || (last && feature?.diameter !== undefined && !feature.through);
      if (feature && follows && feature.kind === "hole" && !this.ownDiameter(0)) {
        feature.kind = kind;
        feature.tokens.push(token);
      } else this.start(kind, token);
      if (kind === "countersink" && this.angle !== undefined) {
        this.feature!.angle = this.angle;
        this.angle = undefined;
      }
      return;
    }
    if (mark in NOTES) {
      const code = NOTES[mark as keyof typeof NOTES];
      if (!this.group.notes.some((note) => note.code === code)) this.group.notes.push({ code });
      return;
    }
    switch (mark) {
      case "diameter":
      case "diameter word":
      case "by":
      case "circle":
      case "spaced":
      case "hole depth":
        if (mark === "circle" && this.group.circle) return;
        if (mark === "spaced" && this.group.spacing) return;
        // "CIRCLE ⌀80", "↧ ⌀…" never occurs: the sign only confirms what is wanted.
        if (mark.startsWith("diameter") && this.waiting?.for === "circle") return;
        this.wait({ for: mark === "diameter word" ? "diameter" : mark, token });
        return;
      case "depth symbol":
      case "depth":
        this.wait({ for: "depth", token });
        return;
      case "equally":
        this.group.equally = true;
        return;
      case "insert":
        this.group.insert = true;
        return;
      case "through":
        if (feature) {
          feature.through = true;
          feature.tokens.push(token);
        } else this.group.left.push(token);
        return;
      case "both":
        if (feature) feature.bothSides = true;
        else this.group.left.push(token);
        return;
      case "left":
      case "right":
        if (feature?.kind === "thread") feature.hand = mark;
        else this.group.left.push(token);
        return;
      default:
        this.group.left.push(token);
    }
  }
}
