/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/**
 * Carries a write out and stands by it: after a fault what stands there is read back, and the write either turns out to
 * be complete, or not begun, or it is taken back. The sentence says which of the three it was.
 */
import { Asking, type Done, HostError } from "../host.ts";
import { toHostError } from "./errors.ts";
import { batches, type Part } from "./parts.ts";
import { hold } from "./put.ts";
import { MERGED_AREAS, supports } from "./versions.ts";

/** How often a host that does not answer is asked again. */
const ATTEMPTS = 4;

export const OUTCOMES = {
  nothing: "Nothing was written.",
  undone: "It had stopped half way: what had been written was taken back.",
  finished: "Excel reported a fault on the way; everything was read back, and all of it is written.",
  unknown:
    "It may have stopped half way, and Excel does not answer: look at the cells, and press Ctrl+Z until they are as they were.",
} as const;

/** Errors whose sentence says what became of the write. */
const told = new WeakSet<HostError>();

/** An error with what became of the write; one that says so already stays as it is. */
export function said(problem: HostError, outcome: string): HostError {
  if (told.has(problem)) return problem;
  const saysSo = /nothing was written|no sheet was added/i.test(problem.message);
  const made = new HostError(problem.code, saysSo ? problem.message : `${problem.message} ${outcome}`);
  told.add(made);
  return made;
}

/** What fails before anything is written says so. */
export async function untouched<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (thrown) {
    if (thrown instanceof Asking) throw thrown;
    throw said(toHostError(thrown), OUTCOMES.nothing);
  }
}

export interface Step {
  readonly cells: number;
  readonly bytes: number;
  written: boolean;
  write(): void;
}

export interface Writing {
  readonly parts: readonly Part[];
  /** What is written, in order. */
  readonly steps: readonly Step[];
  /** Queued before each request: what fails when rows have come in or gone since the read, before anything is written. */
  readonly guard?: () => void;
  /** Rows have come in or gone since the read: what was planned from is no longer there in this shape. */
  readonly shape?: { load(): void; moved(): boolean };
  /** Loads, in the last request of the write, what must still be so, and looks at it; what it throws undoes the write. */
  readonly check?: { load(): void; look(): void };
}

export async function carryOut(context: Excel.RequestContext, writing: Writing): Promise<Done> {
  const groups = batches(writing.steps);
  try {
    for (const [i, group] of groups.entries()) {
      hold(context);
      writing.guard?.();
      for (const step of group) step.write();
      if (i === groups.length - 1) writing.check?.load();
      await context.sync();
      for (const step of group) step.written = true;
    }
  } catch (thrown) {
    return settle(context, writing, toHostError(thrown), true);
  }
  try {
    writing.check?.look();
    if (!supports(MERGED_AREAS)) await standsAll(context, writing.parts);
  } catch (thrown) {
    return settle(context, writing, toHostError(thrown), false);
  }
  return {};
}

/** Older versions do not say where cells are merged: what is written to such a one is gone without a word. */
async function standsAll(context: Excel.RequestContext, parts: readonly Part[]): Promise<void> {
  for (const group of batches(parts)) {
    for (const part of group) part.load();
    await context.sync();
  }
  if (parts.every((part) => ["after", "same"].includes(part.state()))) return;
  throw new HostError("occupied", "Some cells did not take what was written; they may be merged with others.");
}

/**
 * @param standing - what turns out to be complete may stand
 */
async function settle(
  context: Excel.RequestContext,
  { parts, shape }: Writing,
  reported: HostError,
  standing: boolean,
): Promise<Done> {
  let taken = false;
  let problem = reported;
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    try {
      shape?.load();
      for (const group of batches(parts)) {
        for (const part of group) part.load();
        await context.sync();
      }
      if (shape?.moved())
        problem = new HostError("changed", "Rows have come into the table, or gone, while it was written.");
      const states = parts.map((part) => part.state());
      if (standing && !taken && problem === reported && states.every((state) => state === "after" || state === "same"))
        return { note: OUTCOMES.finished };
      if (states.every((state) => state === "before" || state === "same"))
        throw said(problem, taken ? OUTCOMES.undone : OUTCOMES.nothing);
      taken = true;
      const undo = parts.filter((_, i) => states[i] === "after" || states[i] === "between").reverse();
      for (const group of batches(undo)) {
        hold(context);
        for (const part of group) part.undo();
        await context.sync();
      }
    } catch (thrown) {
      if (thrown instanceof HostError) throw thrown;
    }
  }
  throw said(problem, OUTCOMES.unknown);
}
