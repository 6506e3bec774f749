import { afterAll, describe, expect, it } from "vitest";
import { count, type Ended, SCENARIOS, trial } from "./faults.ts";

/** What never ends well for a person: each of them is to be none. */
const NONE = { half: 0, completeButFailed: 0, failedButDone: 0, twice: 0, notYet: 0 };
/** How a message says what became of a write. */
const SAID =
  /nothing was (?:written|added)|taken back|all of it is written|is half made; the next try finishes it|no sheet was added/i;

const strange = (ended: readonly Ended[]) =>
  ended.filter(
    (one) => one.state === "half" || one.again !== "complete" || (one.kind === "failed") === (one.state === "complete"),
  );

describe("a fault at every sync of every command, before, in between and after", () => {
  const all: Ended[] = [];
  it.each(SCENARIOS)("leaves the workbook as it was or as it should be: $name", async (scenario) => {
    const ended = await trial(scenario);
    all.push(...ended);
    expect(strange(ended)).toEqual([]);
    expect(count(ended)).toEqual({ ...NONE, faults: ended.length });
    // A fault of a write says in its own sentence what became of it.
    for (const { said, kind } of ended) if (kind === "failed") expect(said).toMatch(SAID);
  });

  it.each(SCENARIOS)("does so when two syncs in a row break off: $name", async (scenario) => {
    const ended = await trial(scenario, { times: 2, code: "ServiceNotAvailable" });
    all.push(...ended);
    expect(strange(ended)).toEqual([]);
  });

  afterAll(() => expect(all.length).toBeGreaterThan(850));
});
