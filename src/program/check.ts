/**
 * Reads a posted program and compares it with the planned rows, in slices: `advance` reads some blocks, `progress`
 * tells how far it is, `findings` compares once all is read. The program itself is never changed.
 */
import { BlockReader, countsIncrements, type Refusal, refusedText } from "./blocks.ts";
import { compareHole, compareLine } from "./compare-cuts.ts";
import { compareThread } from "./compare-thread.ts";
import { compareArc, compareRound } from "./compare-wall.ts";
import type { Difference } from "./differences.ts";
import type { Finding } from "./findings.ts";
import { Machine } from "./machine.ts";
import { type Cornered, type Cuts, groupsOf, type Made, type Turned } from "./made.ts";
import { type Groups, type Match, matchGroups } from "./match.ts";
import { holesUnder } from "./prepared.ts";
import { type Hole, Shapes } from "./shapes.ts";
import type { RowFacts, Shape, ToolZero } from "./types.ts";

/** Words that are named in one finding; the rest is counted. */
const MOST_WORDS = 8;
/** Holes that end above this are centres and spots, which a plan does not list [mm]. */
const SPOT = -3;

const numberOf = (matches: readonly Match[]) => matches.reduce((sum, match) => sum + match.number, 0);

export class ProgramCheck {
  /** True when the whole text is read or the reading was refused. */
  done = false;
  /** What the program makes. */
  readonly shapes = new Shapes();
  private readonly rows: readonly RowFacts[];
  private readonly toolZero: ToolZero;
  private readonly reader: BlockReader;
  private readonly machine: Machine;
  private readonly assumed: "mm" | "in";
  private readonly increments: boolean;
  private refusal: Refusal | undefined;
  private anyWord = false;
  private readonly found = new Map<RowFacts, Made>();

  constructor(text: string, rows: readonly RowFacts[], toolZero: ToolZero = "tip") {
    this.rows = rows;
    this.toolZero = toolZero;
    this.refusal = refusedText(text);
    this.assumed = rows.find((row) => row.shape !== undefined)?.units ?? rows[0]?.units ?? "mm";
    this.increments = this.refusal === undefined && countsIncrements(text);
    this.reader = new BlockReader(this.refusal === undefined ? text : "");
    this.machine = new Machine(this.shapes, this.assumed, this.increments);
    this.shapes.modal = this.machine.modal;
    if (this.refusal !== undefined) this.done = true;
  }

  /** Share of the text that is read, 0 to 1. */
  get progress(): number {
    return this.done ? 1 : this.reader.progress;
  }

  /** Reads at most so many blocks; answers whether there are more. */
  advance(blocks = Number.POSITIVE_INFINITY): boolean {
    const { reader, machine } = this;
    for (let n = 0; n < blocks && !this.done; n++) {
      const block = reader.next();
      if (block === undefined || machine.ended || machine.refused !== undefined) {
        this.refusal = machine.refused ?? reader.refusal;
        this.shapes.end();
        this.done = true;
        break;
      }
      // a heading over a column of blocks is no word
      if (block.count === 0 && block.line === 1) continue;
      this.anyWord ||= block.count > 0;
      machine.run(block);
    }
    return !this.done;
  }

  /** Everything that differs, most general first, then in the order of the rows; reads the rest first. */
  findings(): Finding[] {
    this.advance();
    if (this.refusal !== undefined)
      return [
        {
          code: "unreadable",
          what: "refused",
          severity: "stop",
          line: "line" in this.refusal ? this.refusal.line : undefined,
          refusal: this.refusal,
        },
      ];
    if (!this.anyWord) return [{ code: "unreadable", what: "refused", severity: "stop", refusal: { why: "no-words" } }];
    return [...this.reading(), ...this.comparison()];
  }

  /** The first thing that the program makes of a row; known once `findings` has compared. */
  madeOf(row: RowFacts): Made | undefined {
    return this.found.get(row);
  }

  /** What could not be followed, and what was assumed in reading. */
  private reading(): Finding[] {
    const { machine, assumed } = this;
    const list: Finding[] = [];
    const say = (finding: Finding) => list.push(finding);
    const kinds = new Map<string, number>();
    for (const trouble of machine.troubles) kinds.set(trouble.what, (kinds.get(trouble.what) ?? 0) + 1);
    for (const trouble of machine.troubles) {
      const number = kinds.get(trouble.what);
      if (number === undefined) continue;
      kinds.delete(trouble.what);
      const hard = trouble.what === "arc" || trouble.what === "arc-radius" || trouble.what === "arc-centre";
      say({
        code: "unreadable",
        what: "trouble",
        severity: hard ? "stop" : "check",
        line: trouble.line,
        trouble,
        number,
      });
    }
    for (const harmless of [false, true]) {
      const words = [...machine.unknown]
        .filter(([, w]) => w.harmless === harmless)
        .map(([word, w]) => ({ word, ...w }));
      if (words.length === 0) continue;
      say({
        code: "unreadable",
        what: "words",
        severity: harmless ? "ok" : "check",
        line: words[0]!.line,
        words: words.slice(0, MOST_WORDS),
        more: Math.max(0, words.length - MOST_WORDS),
      });
    }
    if (machine.moves === 0) say({ code: "unreadable", what: "no-moves", severity: "stop" });
    else if (machine.saidUnits === undefined)
      say({ code: "unreadable", what: "units", severity: "ok", units: assumed });
    if (this.increments)
      say({
        code: "unreadable",
        what: "increments",
        severity: "ok",
        units: machine.saidUnits === "in" ? "in" : assumed,
      });
    if (machine.saidUnits === "both") say({ code: "unreadable", what: "both-units", severity: "ok" });
    if (machine.absoluteCentres) say({ code: "unreadable", what: "absolute-centres", severity: "ok" });
    if (machine.skippable > 0)
      say({ code: "unreadable", what: "skippable", severity: "ok", number: machine.skippable });
    return list;
  }

  private comparison(): Finding[] {
    const groups = groupsOf(this.shapes);
    const matches = matchGroups(this.rows, groups, this.toolZero);
    const own = new Map<RowFacts, Match[]>();
    for (const match of matches) {
      const known = own.get(match.row);
      if (known) known.push(match);
      else own.set(match.row, [match]);
    }
    for (const [row, [first]] of own) this.found.set(row, first!.group.made[0]!);
    // a program for one place, or a subprogram that is called at all of them, has one of everything
    const single = [...own].every(([row, list]) => row.quantity === 1 || numberOf(list) === 1);
    const list = this.rows.flatMap((row) => this.ofRow(row, own.get(row) ?? [], matches, groups, single));
    return [...list, ...leftovers(groups, matches)];
  }

  private ofRow(
    row: RowFacts,
    own: readonly Match[],
    all: readonly Match[],
    groups: Groups,
    single: boolean,
  ): Finding[] {
    if (row.shape === undefined) return [{ code: "unreadable", what: "plan", severity: "check", row }];
    const counted = row.shape.kind === "thread" || row.shape.kind === "round" || row.shape.kind === "hole";
    const number = numberOf(own);
    if (number === 0)
      return [
        { code: "not-in-program", what: "row", severity: "check", row, found: 0, wanted: counted ? row.quantity : 1 },
      ];
    const list: Finding[] = [];
    // the same difference in several groups is told once, with how many it is in
    const told = new Map<string, number>();
    const put = (difference: Difference, count: number) => {
      const key = `${difference.code} ${"what" in difference ? difference.what : ""}`;
      const at = told.get(key);
      if (at === undefined) {
        told.set(key, list.length);
        list.push({ ...difference, row, count: [count, number] } as Finding);
      } else list[at] = { ...list[at]!, count: [list[at]!.count![0] + count, number] };
    };
    for (const match of own) {
      for (const difference of differences(row, row.shape, match.group.made[0]!, this.toolZero))
        put(difference, match.number);
      if (row.shape.kind === "thread" || row.shape.kind === "hole")
        for (const difference of holesUnder(row.shape, match, all, groups, this.toolZero)) put(difference, 1);
    }
    if (counted && number < row.quantity && !single)
      list.push({
        code: "not-in-program",
        what: "some",
        severity: "check",
        line: own[0]!.group.made[0]!.line,
        row,
        found: number,
        wanted: row.quantity,
      });
    if (list.every((finding) => finding.severity === "ok"))
      list.unshift({
        code: "same",
        severity: "ok",
        line: own[0]!.group.made[0]!.line,
        row,
        number,
        wanted: counted ? row.quantity : number,
      });
    return list;
  }
}

/** A row is given what is made of its own kind alone: see the match. */
function differences(row: RowFacts, shape: Shape, made: Made, toolZero: ToolZero): Difference[] {
  switch (shape.kind) {
    case "thread":
      return compareThread(row, shape, made as Turned, toolZero);
    case "round":
      return compareRound(row, shape, made as Turned);
    case "arc":
      return compareArc(row, shape, made as Cornered);
    case "line":
      return compareLine(row, shape, made as Cuts);
    case "hole":
      return compareHole(row, shape, made as Hole);
  }
}

/** What the program makes beyond the plan. A program of several parts makes a whole multiple of each row. */
function leftovers(groups: Groups, matches: readonly Match[]): Finding[] {
  const list: Finding[] = [];
  for (const group of [...groups.turned, ...groups.holes]) {
    if (group.left === 0) continue;
    const first = group.made[group.made.length - group.left]!;
    const own = matches.filter((match) => match.group === group);
    if (own.length > 0) {
      const { row } = own[own.length - 1]!;
      const parts = group.made.length % row.quantity === 0;
      list.push({
        code: "not-in-plan",
        what: "more",
        severity: parts ? "ok" : "check",
        line: first.line,
        row,
        number: group.left,
        size: row.quantity,
        pitch: 0,
      });
    } else list.push(unplanned(first, group.left));
  }
  return list.sort((a, b) => (a.line ?? 0) - (b.line ?? 0));
}

function unplanned(first: Turned | Hole, number: number): Finding {
  const { line } = first;
  if (first.kind === "hole") {
    const severity = first.bottom > SPOT ? "ok" : "check";
    return { code: "not-in-plan", what: "hole", severity, line, number, size: first.bottom, pitch: 0 };
  }
  const what = first.rise > 0 || (first.rise < 0 && first.runs.every((run) => run.z0 !== run.z1)) ? "thread" : "circle";
  return {
    code: "not-in-plan",
    what,
    severity: "check",
    line,
    number,
    size: first.most,
    pitch: Math.abs(first.rise),
  };
}
