/**
 * The project's own corpus of callouts, in a short form of its own. A line is
 *
 *   units ¦ text, ⏎ for a new line ¦ what is expected ¦ why
 *
 * and what is expected is one of
 *
 *   no WHAT         no row; the lines are listed as WHAT
 *   ask             rows that nobody takes for finished: none of them understood
 *   ROW + ROW …     exactly these rows, all understood; with ~ before them: these, or ask
 *
 * A row is `operation quantity units` and then d = finish diameter, s = start diameter, z = depth, h = hole depth,
 * p = spacing, tol = size tolerance, thru, and last t= the thread. TAP stands for the drill and the thread mill of a
 * thread. What is not written is blank; start diameter, hole depth and spacing are only compared where written.
 */
import fs from "node:fs";
import type { CalloutRow, readCallouts } from "../../src/callouts/callouts.ts";

export interface Wanted {
  readonly cells: Readonly<Record<string, string | number | null>>;
}
export interface OwnCase {
  readonly file: string;
  readonly text: string;
  readonly units?: "mm" | "in";
  readonly what?: string;
  readonly rows: readonly Wanted[];
  /** Refusing is as good as the rows. */
  readonly either: boolean;
  readonly why: string;
}

/** Canonical designations of the threads that the corpus uses, as ASME B1.1 and ISO 965-1 write them. */
const THREADS: Readonly<Record<string, string>> = {
  M3: "M3×0.5-6H",
  M4: "M4×0.7-6H",
  M5: "M5×0.8-6H",
  M6: "M6×1-6H",
  M8: "M8×1.25-6H",
  M10: "M10×1.5-6H",
  M12: "M12×1.75-6H",
  M16: "M16×2-6H",
  "1/4-20": "1/4-20 UNC-2B",
  "1/4-28": "1/4-28 UNF-2B",
  "5/16-18": "5/16-18 UNC-2B",
  "3/8-16": "3/8-16 UNC-2B",
  "10-32": "#10-32 UNF-2B",
  "10-24": "#10-24 UNC-2B",
  "8-32": "#8-32 UNC-2B",
  "6-32": "#6-32 UNC-2B",
};
const OPERATION: Readonly<Record<string, string>> = {
  cbore: "counterbore",
  csk: "countersink",
  thread: "thread mill",
};

const KEYS: readonly (readonly [RegExp, string])[] = [
  [/^tol([\d.]+)$/, "Size tolerance"],
  [/^d([\d.]+)$/, "Finish diameter"],
  [/^s([\d.]+)$/, "Start diameter"],
  [/^z([\d.]+)$/, "Depth"],
  [/^h([\d.]+)$/, "Hole depth"],
  [/^p([\d.]+)$/, "Spacing"],
];

function rowsOf(text: string): Wanted[] {
  const [short, thread] = text.trim().split(/\s+t=/);
  const [name, quantity, units, ...rest] = short!.split(/\s+/);
  const cells: Record<string, string | number | null> = {
    Operation: OPERATION[name!] ?? name!,
    Quantity: Number(quantity),
    Units: units!,
    "Finish diameter": null,
    Depth: null,
    Through: null,
    "Size tolerance": null,
    Thread: thread === undefined ? null : (THREADS[thread] ?? thread),
  };
  for (const word of rest) {
    const key = KEYS.find(([pattern]) => pattern.test(word));
    if (word === "thru") cells.Through = "yes";
    else if (key) cells[key[1]] = Number(key[0].exec(word)![1]);
    else throw new Error(`the corpus says "${word}" in "${text}"`);
  }
  if (name !== "TAP") return [{ cells }];
  const { "Hole depth": hole = null, "Start diameter": start = null } = cells;
  const drill = { ...cells, Operation: "drill", "Finish diameter": start, Depth: hole };
  delete (drill as Record<string, unknown>)["Hole depth"];
  delete (drill as Record<string, unknown>)["Start diameter"];
  return [{ cells: drill }, { cells: { ...cells, Operation: "thread mill" } }];
}

/** The cases of one file of the corpus. */
export function ownCases(file: string): OwnCase[] {
  const lines = fs.readFileSync(new URL(`./corpus/${file}.txt`, import.meta.url), "utf8").split("\n");
  return lines
    .filter((line) => line !== "" && !line.startsWith("# "))
    .map((line) => {
      const [units, text, expected, why] = line.split("¦").map((part) => part.trim()) as [
        string,
        string,
        string,
        string,
      ];
      if (!why) throw new Error(`the corpus has no reason in "${line}"`);
      const what = /^no (.*)$/.exec(expected)?.[1];
      const either = expected.startsWith("~");
      const rows =
        what !== undefined || expected === "ask" ? [] : expected.replace(/^~/, "").split(" + ").flatMap(rowsOf);
      return {
        file,
        text: text.replace(/\s*⏎\s*/g, "\n"),
        units: units === "" ? undefined : (units as "mm" | "in"),
        what,
        rows,
        either,
        why,
      };
    });
}

/** Six digits: chords, cones and classes on inch drawings are written to that. */
const CLOSE = 2e-6;

function same(row: CalloutRow, { cells }: Wanted): boolean {
  const got = row.cells as Readonly<Record<string, string | number | null | undefined>>;
  return Object.entries(cells).every(([heading, value]) => {
    const cell = got[heading] ?? null;
    return typeof value === "number" && typeof cell === "number" ? Math.abs(cell - value) <= CLOSE : cell === value;
  });
}

/**
 * `right`: as expected. `refused`: nothing claims to be understood. `told`: something is wrong, but a row of the callout
 * is marked as not understood. `silent`: wrong, and every row claims to be understood.
 */
export type Outcome = "right" | "refused" | "told" | "silent";

export function outcomeOf(c: OwnCase, { rows, others }: ReturnType<typeof readCallouts>): Outcome {
  if (c.what !== undefined) {
    if (rows.length === 0)
      return others.some((o) => o.what === c.what) || others.length > 0
        ? others.some((o) => o.what === c.what)
          ? "right"
          : "told"
        : "silent";
    return rows.every((row) => !row.understood) ? "refused" : "silent";
  }
  const full = c.rows.length > 0 && rows.length === c.rows.length && rows.every((row) => row.understood);
  if (full && c.rows.every((wanted, i) => same(rows[i]!, wanted))) return "right";
  if (rows.every((row) => !row.understood)) return rows.length === 0 && others.length === 0 ? "silent" : "refused";
  return rows.some((row) => !row.understood) ? "told" : "silent";
}

/** Whether the outcome is what the corpus asks for. */
export const good = (c: OwnCase, outcome: Outcome): boolean =>
  c.what !== undefined || (c.rows.length > 0 && !c.either)
    ? outcome === "right"
    : c.either
      ? outcome === "right" || outcome === "refused"
      : outcome === "refused";
