import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createJournal, type StepRecord, stepsFrom } from "../../../taskpane/desk/keep/journal.ts";
import type { Edit } from "../../../taskpane/desk/model/types.ts";

const edit = (row: number): Edit => ({ kind: "cell", sheet: "S", row, column: 0, value: row });

/** A store as the browser's is, and steps as the model keeps them: the oldest go into the first when there are too many. */
function bench(most = 5) {
  const journal = createJournal();
  const records = new Map<string, StepRecord>();
  const steps: Edit[][] = [[]];
  const undone: Edit[][] = [];
  let n = 0;
  let written = 0;
  const store = () => {
    const { put, remove } = journal.change(steps);
    for (const number of remove) for (const [key, one] of [...records]) if (one.number === number) records.delete(key);
    for (const record of put) {
      written += record.edits.length;
      records.set(`${record.number} ${record.part}`, record);
    }
  };
  return {
    edit(count: number) {
      steps.push(Array.from({ length: count }, () => edit(n++)));
      undone.length = 0;
      if (steps.length > most) steps[0]!.push(...steps.splice(1, 1)[0]!);
      store();
    },
    join(count: number) {
      steps.at(-1)!.push(...Array.from({ length: count }, () => edit(n++)));
      store();
    },
    undo() {
      if (steps.length < 2) return;
      undone.push(steps.pop()!);
      store();
    },
    redo() {
      const step = undone.pop();
      if (step) steps.push(step);
      store();
    },
    stored: () => stepsFrom([...records.values()]).flat(),
    wanted: () => steps.flat(),
    written: () => written,
  };
}

describe("the journal of steps (identity: what is read back is what was done)", () => {
  it("writes a step once, its results as a part of their own, and nothing of the steps before", () => {
    const one = bench(100);
    for (let i = 0; i < 20; i++) {
      one.edit(1);
      one.join(40);
    }
    expect(one.stored()).toEqual(one.wanted());
    expect(one.written()).toBe(20 * 41);
  });
  it("takes out what is undone, and puts it back when it is done again", () => {
    const one = bench();
    one.edit(2);
    one.edit(1);
    one.undo();
    expect(one.stored()).toHaveLength(2);
    one.redo();
    expect(one.stored()).toEqual(one.wanted());
  });
  it("holds through any mixture of edits, results, undo and redo, and more steps than are kept", () => {
    const commands = fc.array(
      fc.oneof(
        fc.nat(3).map((n) => ["edit", n + 1] as const),
        fc.nat(3).map((n) => ["join", n + 1] as const),
        fc.constant(["undo", 0] as const),
        fc.constant(["redo", 0] as const),
      ),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(commands, (list) => {
        const one = bench();
        for (const [what, count] of list) {
          one[what](count);
          if (JSON.stringify(one.stored()) !== JSON.stringify(one.wanted())) return false;
        }
        return true;
      }),
      { numRuns: 400 },
    );
  });
});
