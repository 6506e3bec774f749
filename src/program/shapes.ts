/** Recognises what a program makes: turns about a centre (circles, helices), holes along Z, straight cuts. */
import type { Cycle, Modal, Recorder } from "./machine.ts";

/** State of the machine where a shape was cut. */
interface Cut {
  readonly line: number;
  readonly segment: number;
  readonly offset: number;
  readonly rpm: number;
  readonly spindle: number;
  readonly compensation: 0 | 41 | 42;
  /** Largest feed met [mm/min]; NaN where the program does not tell. */
  feed: number;
}

/** Arcs one after the other about one centre, with one radius, one sense and one rise. */
export interface Round extends Cut {
  readonly kind: "round";
  readonly x: number;
  readonly y: number;
  radius: number;
  readonly turn: 1 | -1;
  /** Degrees in all. */
  degrees: number;
  readonly z0: number;
  z1: number;
  /** Compensation was switched while it ran. */
  switched: boolean;
  /** Largest distance in Z from an even rise, and the line where [mm]. */
  uneven: number;
  unevenLine: number;
}

export interface Hole extends Cut {
  readonly kind: "hole";
  readonly x: number;
  readonly y: number;
  bottom: number;
  strokes: number;
  /** 0 where it is written out in moves. */
  readonly cycle: number;
  /** Spindle turned back while it was made. */
  reversed: boolean;
  top: number;
}

export interface Straight extends Cut {
  readonly kind: "line";
  readonly x0: number;
  readonly y0: number;
  x1: number;
  y1: number;
  readonly z: number;
}

/** Centres and radii this far apart are the same [mm]: three times the rounding of an inch program's I and J. */
const SAME_CENTRE = 0.02;
const SAME_RADIUS = 0.012;
/** A quarter turn that rises less than this is level: rounding of Z [mm]. */
const LEVEL = 0.02;
/** Arcs that turn less than this are leads and corners [deg]. */
const ROUND_FROM = 225;
/** Straight cuts shorter than this are not kept [mm]. */
const SHORT = 2;
/** Moves in Z alone that end above this are approaches, not holes [mm from the face]. */
const ABOVE_FACE = -0.05;

export class Shapes implements Recorder {
  readonly rounds: Round[] = [];
  /** Arcs of less than ROUND_FROM. */
  readonly arcs: Round[] = [];
  readonly holes: Hole[] = [];
  readonly lines: Straight[] = [];
  modal!: Modal;
  private run: Round | undefined;
  /** Angle and Z where each piece of the run ends. */
  private pieces: number[] = [];
  private pieceLines: number[] = [];
  private open: Hole | undefined;
  private heightZ = Number.NaN;
  private cut: Straight | undefined;

  rapid(x0: number, y0: number, _z0: number, x1: number, y1: number, z1: number): void {
    this.endRun();
    this.cut = undefined;
    if (!(x0 === x1 && y0 === y1)) this.endHole(true);
    this.heightZ = z1;
  }

  line(x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void {
    this.endRun();
    const { modal } = this;
    if (x0 === x1 && y0 === y1) {
      this.cut = undefined;
      if (z1 < z0) this.plunge(x1, y1, z0, z1);
      if (this.open && modal.spindle !== this.open.spindle && modal.spindle !== 0) this.open.reversed = true;
      this.heightZ = z1;
      return;
    }
    this.endHole(this.atTop());
    this.heightZ = z1;
    if (z0 !== z1) {
      this.cut = undefined;
      return;
    }
    this.straight(x0, y0, x1, y1, z1);
  }

  private straight(x0: number, y0: number, x1: number, y1: number, z: number): void {
    const last = this.cut;
    if (last && last.x1 === x0 && last.y1 === y0 && last.z === z) {
      const [ux, uy] = [last.x1 - last.x0, last.y1 - last.y0];
      const [vx, vy] = [x1 - x0, y1 - y0];
      const size = Math.hypot(ux, uy) * Math.hypot(vx, vy);
      if (Math.abs(ux * vy - uy * vx) <= 1e-4 * size && ux * vx + uy * vy > 0) {
        const before = Math.hypot(ux, uy);
        last.x1 = x1;
        last.y1 = y1;
        this.feeds(last);
        if (before < SHORT && Math.hypot(last.x1 - last.x0, last.y1 - last.y0) >= SHORT) this.lines.push(last);
        return;
      }
    }
    this.cut = { kind: "line", x0, y0, x1, y1, z, ...this.state() };
    if (Math.hypot(x1 - x0, y1 - y0) >= SHORT) this.lines.push(this.cut);
  }

  arc(cx: number, cy: number, radius: number, turn: 1 | -1, degrees: number, z0: number, z1: number): void {
    this.cut = undefined;
    this.endHole(this.atTop());
    this.heightZ = z1;
    const { run } = this;
    const rise = ((z1 - z0) * 360) / degrees;
    if (run !== undefined && this.continues(run, cx, cy, radius, turn, rise, degrees)) {
      const total = run.degrees + degrees;
      run.radius = (run.radius * run.degrees + radius * degrees) / total;
      run.degrees = total;
      run.z1 = z1;
      run.switched ||= run.compensation !== this.modal.compensation;
      this.feeds(run);
    } else {
      this.endRun();
      this.run = {
        kind: "round",
        x: cx,
        y: cy,
        radius,
        turn,
        degrees,
        z0,
        z1,
        switched: false,
        uneven: 0,
        unevenLine: this.modal.line,
        ...this.state(),
      };
    }
    this.pieces.push(this.run!.degrees, z1);
    this.pieceLines.push(this.modal.line);
  }

  private continues(
    run: Round,
    cx: number,
    cy: number,
    radius: number,
    turn: number,
    rise: number,
    degrees: number,
  ): boolean {
    if (run.turn !== turn || run.segment !== this.modal.segment) return false;
    if (Math.abs(run.x - cx) > SAME_CENTRE || Math.abs(run.y - cy) > SAME_CENTRE) return false;
    if (Math.abs(run.radius - radius) > SAME_RADIUS) return false;
    const before = ((run.z1 - run.z0) * 360) / run.degrees;
    if (Number.isNaN(rise) && Number.isNaN(before)) return true;
    // the rounding of Z weighs more on short pieces
    const rounding = (LEVEL * 90) / Math.min(90, degrees, run.degrees);
    // level turns after a helix are a shape of their own; a helix with an uneven rise is still one
    if (Math.abs(rise) <= rounding !== Math.abs(before) <= rounding) return Math.abs(rise - before) <= rounding;
    return rise * before >= 0 || Math.abs(rise) <= rounding;
  }

  private endRun(): void {
    const { run } = this;
    if (run === undefined) return;
    this.run = undefined;
    for (let n = 0; n < this.pieces.length; n += 2) {
      const even = run.z0 + ((run.z1 - run.z0) * this.pieces[n]!) / run.degrees;
      const off = Math.abs(this.pieces[n + 1]! - even);
      if (off > run.uneven) {
        run.uneven = off;
        run.unevenLine = this.pieceLines[n / 2]!;
      }
    }
    this.pieces = [];
    this.pieceLines = [];
    (run.degrees >= ROUND_FROM ? this.rounds : this.arcs).push(run);
  }

  private plunge(x: number, y: number, z0: number, z1: number): void {
    const open = this.open;
    if (open) {
      if (z1 < open.bottom - 1e-6) {
        // a new stroke where the tool came up in between; else the feed only changed on the way
        if (z0 > open.bottom + 1e-6) open.strokes++;
        open.bottom = z1;
      }
      this.feeds(open);
      return;
    }
    this.open = {
      kind: "hole",
      x,
      y,
      top: z0,
      bottom: z1,
      strokes: 1,
      cycle: 0,
      reversed: false,
      ...this.state(),
    };
  }

  /** The tool is back where the hole was begun from. */
  private atTop(): boolean {
    return this.open !== undefined && this.heightZ >= this.open.top - 1e-6;
  }

  private endHole(keep: boolean): void {
    const open = this.open;
    this.open = undefined;
    if (open && keep && open.bottom < ABOVE_FACE) this.holes.push(open);
  }

  hole(x: number, y: number, { code, bottom, peck, from }: Cycle): void {
    this.endRun();
    this.endHole(true);
    this.cut = undefined;
    const pecking = (code === 83 || code === 73) && peck > 0;
    this.holes.push({
      kind: "hole",
      x,
      y,
      top: from,
      bottom,
      // from the face: the first peck of a cycle starts at its clearance plane, a little above
      strokes: pecking ? Math.max(1, Math.ceil(-bottom / peck - 0.05)) : 1,
      cycle: code,
      reversed: false,
      ...this.state(),
    });
  }

  other(): void {
    this.endRun();
    this.endHole(false);
    this.cut = undefined;
  }

  segment(): void {
    this.endRun();
    this.cut = undefined;
    // a spindle that stops at the bottom turns back there: the tap is still in its hole
    if (this.atTop()) this.endHole(true);
  }

  /** Closes what is still open at the end of the program. */
  end(): void {
    this.endRun();
    this.endHole(true);
  }

  private state(): Cut {
    const { line, segment, offset, rpm, spindle, compensation, feed } = this.modal;
    return { line, segment, offset, rpm, spindle, compensation, feed };
  }

  private feeds(cut: Cut): void {
    const { feed } = this.modal;
    if (feed > cut.feed) cut.feed = feed;
  }
}
