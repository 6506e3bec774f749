/** Advice that is looked for while a person goes on working. */
import { afterEach, describe, expect, it } from "vitest";
import { looking } from "../../taskpane/work/looking.ts";
import type { Suggestion } from "../../taskpane/work/types.ts";

const suggestion = (change: string): Suggestion => ({ change, before: "", after: "", writes: [] });
const search = looking();
afterEach(() => search.stop());

/** Works for so long without a rest. */
function busy(milliseconds: number): void {
  const end = performance.now() + milliseconds;
  while (performance.now() < end);
}

describe("looking for advice (identity)", () => {
  it("lets others have their turn between steps that are long", async () => {
    const turns: string[] = [];
    const found = await new Promise<readonly Suggestion[]>((resolve, reject) =>
      search.start(
        function* () {
          for (let n = 0; n < 3; n++) {
            turns.push("step");
            setTimeout(() => turns.push("other"), 0);
            busy(12);
            yield;
          }
          return [suggestion("a")];
        },
        () => true,
        resolve,
        reject,
      ),
    );
    expect(found).toEqual([suggestion("a")]);
    expect(turns.slice(0, 5)).toEqual(["step", "other", "step", "other", "step"]);
  });

  it("stops when it is wanted no more, and gives up what another search takes the place of", async () => {
    let steps = 0;
    let wanted = true;
    const endless = function* () {
      for (;;) {
        steps++;
        busy(12);
        yield;
      }
    };
    const never = () => expect.fail("nothing is found");
    search.start(
      endless,
      () => wanted,
      never,
      (thrown) => expect.fail(String(thrown)),
    );
    await expect.poll(() => steps).toBeGreaterThan(1);
    wanted = false;
    const before = steps;
    const found = await new Promise<readonly Suggestion[]>((resolve, reject) =>
      search.start(
        function* () {
          yield;
          return [suggestion("b")];
        },
        () => true,
        resolve,
        reject,
      ),
    );
    expect(found).toEqual([suggestion("b")]);
    expect(steps).toBe(before);
  });

  it("tells what a search throws", async () => {
    const failed = await new Promise((resolve) =>
      search.start(
        // biome-ignore lint/correctness/useYield: it does not come so far
        function* () {
          throw new Error("no list");
        },
        () => true,
        () => resolve("found"),
        resolve,
      ),
    );
    expect(failed).toEqual(new Error("no list"));
  });
});
