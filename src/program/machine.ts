/**
 * What the words do: modal state, positions, arcs and cycles of a milling machine with a vertical spindle, as ISO 6983
 * has them and, for the canned cycles, common practice. Hands what moves to a recorder, in mm and mm/min.
 */
import { type ArcTrouble, arcOf } from "./arc.ts";
import type { WordBlock } from "./blocks.ts";

export interface Modal {
  feed: number;
  rpm: number;
  /** +1 M3, −1 M4, 0 stopped or never started. */
  spindle: number;
  /** 0 off, 41 or 42. */
  compensation: 0 | 41 | 42;
  /** Counts up with every tool call and spindle stop. */
  segment: number;
  /** Number of the work offset (G54 …), 0 for none. */
  offset: number;
  line: number;
}

export interface Cycle {
  /** 73 … 89. */
  readonly code: number;
  readonly bottom: number;
  readonly peck: number;
  readonly from: number;
}

/** Who takes what moves. Only the XY plane's arcs are handed over as arcs. */
export interface Recorder {
  rapid(x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void;
  line(x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): void;
  arc(cx: number, cy: number, radius: number, turn: 1 | -1, degrees: number, z0: number, z1: number): void;
  hole(x: number, y: number, cycle: Cycle): void;
  /** Whatever else moves the tool. */
  other(): void;
  segment(): void;
}

/** What is met on the way and cannot be followed, by what it is. */
export type Trouble =
  | (ArcTrouble & { readonly line: number })
  | { readonly what: "subprogram"; readonly line: number; readonly word: string }
  | { readonly what: "plane"; readonly line: number; readonly word: string }
  | { readonly what: "shift"; readonly line: number; readonly word: string }
  | { readonly what: "inverse-time"; readonly line: number };

const INCH = 25.4;
const has = (value: number) => !Number.isNaN(value);
/** Codes (× 10) that only set what does not matter here: exact stop, offsets of length, cancels. */
const QUIET_G = new Set([
  90, 150, 430, 440, 490, 500, 501, 600, 610, 611, 620, 640, 670, 690, 970, 230, 220, 805, 51, 81,
]);
/** Codes that turn, scale or mirror what follows, or run a macro. */
const TURNED_G = new Set([160, 510, 511, 680, 682]);
const MACRO_G = new Set([650, 660, 661]);
const SHIFT_G = new Set([100, 520, 920]);
const QUIET_M = new Set([0, 1, 7, 8, 9, 10, 11, 12, 17, 18, 19, 29, 34, 35, 36, 37, 48, 49, 99]);

export class Machine {
  readonly modal: Modal = {
    feed: Number.NaN,
    rpm: 0,
    spindle: 0,
    compensation: 0,
    segment: 0,
    offset: 0,
    line: 0,
  };
  readonly troubles: Trouble[] = [];
  /** Words that are not read, with the line of the first and how often. */
  readonly unknown = new Map<string, { readonly line: number; count: number; readonly harmless: boolean }>();
  /** Set where the rest cannot be followed. */
  refused: { readonly why: "turned" | "macro"; readonly line: number; readonly word: string } | undefined;
  /** Blocks that move, blocks that the machine may skip, and units found. */
  moves = 0;
  skippable = 0;
  saidUnits: "mm" | "in" | "both" | undefined;
  ended = false;
  absoluteCentres = false;
  private readonly to: Recorder;
  private readonly increments: boolean;
  private units: "mm" | "in";
  private scale: number;
  private motion = 0;
  private plane = 17;
  private absolute = true;
  private perTurn = false;
  private inverse = false;
  private toInitial = true;
  private centresAbsolute = false;
  private x = 0;
  private y = 0;
  private z = Number.NaN;
  private feedWord = Number.NaN;
  private changes = false;
  // the canned cycle that is on, and its words
  private cycle = 0;
  private cycleZ = Number.NaN;
  private cycleR = Number.NaN;
  private peck = Number.NaN;
  private initial = Number.NaN;

  constructor(to: Recorder, assumed: "mm" | "in", increments: boolean) {
    this.to = to;
    this.increments = increments;
    this.units = assumed;
    this.scale = this.scaleOf(assumed);
  }

  private scaleOf(units: "mm" | "in"): number {
    const whole = units === "in" ? INCH : 1;
    return this.increments ? whole * (units === "in" ? 1e-4 : 1e-3) : whole;
  }

  /** Carries out one block. */
  run(block: WordBlock): void {
    const { modal } = this;
    modal.line = block.line;
    if (block.skippable && block.count > 0) this.skippable++;
    for (const name of block.strange) this.name(name, false, block.line);
    let motionHere = false;
    let cycleHere = false;
    let still = false;
    let reference = false;
    let change = false;
    let tool = false;
    let stop = false;
    for (let n = 0; n < block.count; n++) {
      const letter = block.letters[n]!;
      const value = block.values[n]!;
      if (letter === "G") {
        const code = Math.round(value * 10);
        if (code >= 0 && code <= 30 && code % 10 === 0) {
          this.motion = code / 10;
          this.cycle = 0;
          motionHere = true;
        } else if (code === 40) still = true;
        else if (code === 730 || code === 740 || code === 760 || (code >= 810 && code <= 890 && code % 10 === 0)) {
          if (this.cycle === 0) this.initial = this.z;
          this.cycle = code / 10;
          cycleHere = true;
        } else if (code === 800) this.cycle = 0;
        else if (code === 280 || code === 300 || code === 530) reference = true;
        else {
          if (!this.set(code, block)) return;
          still ||= SHIFT_G.has(code);
        }
      } else if (letter === "M") {
        const code = Math.round(value);
        if (code === 3 || code === 13) modal.spindle = 1;
        else if (code === 4 || code === 14) modal.spindle = -1;
        else if (code === 5) stop = true;
        else if (code === 6) change = true;
        else if (code === 2 || code === 30) this.ended = true;
        else if (code === 97 || code === 98)
          this.troubles.push({ what: "subprogram", line: block.line, word: `M${code}` });
        else if (!QUIET_M.has(code)) this.name(`M${code}`, true, block.line);
      } else if (letter === "T") tool = true;
      else if (letter === "S") modal.rpm = value;
      else if (letter === "F") this.feedWord = value;
    }
    this.takeFeed();
    this.changes ||= change;
    // where M6 changes tools, T alone only fetches the next one
    if (change || (tool && !this.changes)) this.newSegment();
    this.axes(block, { motionHere, cycleHere, still, reference });
    if (stop) {
      modal.spindle = 0;
      this.newSegment();
    }
  }

  private newSegment(): void {
    this.modal.segment++;
    this.to.segment();
  }

  private takeFeed(): void {
    const { modal, units, perTurn } = this;
    // F has a format of its own: whole numbers are common in it and never mean increments of length
    const told = this.feedWord * (units === "in" ? INCH : 1) * (perTurn ? modal.rpm : 1);
    modal.feed = this.inverse ? Number.NaN : told;
  }

  /** Modal codes; answers false where the program is refused. */
  private set(code: number, block: WordBlock): boolean {
    const { modal } = this;
    const { line } = block;
    if (code === 170 || code === 180 || code === 190) this.plane = code / 10;
    else if (code === 200 || code === 700) this.unit("in");
    else if (code === 210 || code === 710) this.unit("mm");
    else if (code === 400) modal.compensation = 0;
    else if (code === 410 || code === 420) modal.compensation = code === 410 ? 41 : 42;
    else if (code === 900) this.absolute = true;
    else if (code === 910) this.absolute = false;
    else if (code === 901) this.centresAbsolute = true;
    else if (code === 911) this.centresAbsolute = false;
    else if (code === 980) this.toInitial = true;
    else if (code === 990) this.toInitial = false;
    else if (code === 930) {
      if (!this.inverse) this.troubles.push({ what: "inverse-time", line });
      this.inverse = true;
    } else if (code === 940 || code === 950) {
      this.perTurn = code === 950;
      this.inverse = false;
    } else if (code >= 540 && code <= 599) modal.offset = code;
    else if (TURNED_G.has(code) || MACRO_G.has(code)) {
      this.refused = { why: TURNED_G.has(code) ? "turned" : "macro", line, word: `G${code / 10}` };
      return false;
    } else if (SHIFT_G.has(code)) this.shift(code, block);
    else if (!QUIET_G.has(code)) this.name(`G${code / 10}`, false, line);
    return true;
  }

  /** A shift of zero takes an earlier one back; G10 only stores values. */
  private shift(code: number, { line, letters, values, count }: WordBlock): void {
    if (code === 100 || this.troubles.some((t) => t.what === "shift")) return;
    for (let n = 0; n < count; n++) {
      if (/[XYZ]/.test(letters[n]!) && values[n] !== 0) {
        this.troubles.push({ what: "shift", line, word: `G${code / 10}` });
        return;
      }
    }
  }

  private unit(units: "mm" | "in"): void {
    this.units = units;
    this.scale = this.scaleOf(units);
    this.saidUnits = this.saidUnits === undefined || this.saidUnits === units ? units : "both";
  }

  private name(word: string, harmless: boolean, line: number): void {
    const known = this.unknown.get(word);
    if (known) known.count++;
    else if (this.unknown.size < 50) this.unknown.set(word, { line, count: 1, harmless });
  }

  // ---- what moves

  private axes(block: WordBlock, here: Record<"motionHere" | "cycleHere" | "still" | "reference", boolean>): void {
    let x = Number.NaN;
    let y = Number.NaN;
    let z = Number.NaN;
    let i = Number.NaN;
    let j = Number.NaN;
    let k = Number.NaN;
    let r = Number.NaN;
    let q = Number.NaN;
    let l = Number.NaN;
    for (let n = 0; n < block.count; n++) {
      const value = block.values[n]!;
      switch (block.letters[n]) {
        case "X":
          x = value * this.scale;
          break;
        case "Y":
          y = value * this.scale;
          break;
        case "Z":
          z = value * this.scale;
          break;
        case "I":
          i = value * this.scale;
          break;
        case "J":
          j = value * this.scale;
          break;
        case "K":
          k = value;
          break;
        case "R":
          r = value * this.scale;
          break;
        case "Q":
          q = value * this.scale;
          break;
        case "L":
          l = value;
          break;
        case "A":
        case "B":
        case "C":
        case "U":
        case "V":
        case "W":
        case "E":
          this.name(block.letters[n]!, false, block.line);
          break;
        default:
      }
    }
    if (here.still) return;
    const some = has(x) || has(y) || has(z);
    if (here.reference) {
      // where the machine stands after that is not in the program
      if (has(x) || has(y)) this.to.rapid(this.x, this.y, this.z, Number.NaN, Number.NaN, Number.NaN);
      if (has(z) || !some) this.z = Number.NaN;
      return;
    }
    if (this.cycle > 0) {
      if (some || has(r)) this.drill(x, y, z, r, q, has(k) ? k : l, here.cycleHere);
      return;
    }
    const arc = this.motion >= 2;
    if (!some && !(arc && (has(i) || has(j)))) return;
    this.moves++;
    const nx = has(x) ? (this.absolute ? x : this.x + x) : this.x;
    const ny = has(y) ? (this.absolute ? y : this.y + y) : this.y;
    const nz = has(z) ? (this.absolute ? z : this.z + z) : this.z;
    if (!arc) {
      if (this.motion === 0) this.to.rapid(this.x, this.y, this.z, nx, ny, nz);
      else this.to.line(this.x, this.y, this.z, nx, ny, nz);
    } else if (this.plane !== 17) {
      if (!this.troubles.some((t) => t.what === "plane"))
        this.troubles.push({ what: "plane", line: block.line, word: `G${this.plane}` });
      this.to.other();
    } else this.arc(nx, ny, nz, i, j, r);
    this.x = nx;
    this.y = ny;
    this.z = nz;
  }

  private arc(nx: number, ny: number, nz: number, i: number, j: number, r: number): void {
    const turn = this.motion === 3 ? 1 : -1;
    const { line } = this.modal;
    const arc = arcOf({ x0: this.x, y0: this.y, x1: nx, y1: ny, i, j, r, turn, absolute: this.centresAbsolute });
    if ("what" in arc) {
      this.troubles.push({ ...arc, line });
      this.to.other();
      return;
    }
    this.absoluteCentres ||= arc.absolute;
    this.to.arc(arc.x, arc.y, arc.radius, turn, arc.degrees, this.z, nz);
  }

  private drill(x: number, y: number, z: number, r: number, q: number, times: number, fresh: boolean): void {
    if (fresh) this.peck = Number.NaN;
    if (has(q)) this.peck = Math.abs(q);
    if (has(r)) this.cycleR = this.absolute ? r : this.initial + r;
    if (has(z)) this.cycleZ = this.absolute ? z : this.cycleR + z;
    const n = has(times) ? Math.round(times) : 1;
    if (Number.isNaN(this.cycleZ)) return;
    for (let k = 0; k < Math.min(n, 1000); k++) {
      this.moves++;
      const nx = has(x) ? (this.absolute ? x : this.x + x) : this.x;
      const ny = has(y) ? (this.absolute ? y : this.y + y) : this.y;
      this.to.rapid(this.x, this.y, this.initial, nx, ny, this.initial);
      this.x = nx;
      this.y = ny;
      this.to.hole(nx, ny, { code: this.cycle, bottom: this.cycleZ, peck: this.peck, from: this.cycleR });
    }
    this.z = this.toInitial ? this.initial : this.cycleR;
  }
}
