import { describe, expect, it } from "vitest";
import { count, SCENARIOS, trial } from "./faults.ts";

describe("a fault at every sync of every command", () => {
  it.each(SCENARIOS)("$name", async (scenario) => {
    const ended = await trial(scenario);
    console.log(
      scenario.name,
      JSON.stringify(count(ended)),
      JSON.stringify(
        ended
          .filter(
            (e) => e.state === "half" || (e.kind === "failed" && e.state === "complete") || e.again !== "complete",
          )
          .slice(0, 3),
      ),
    );
    expect(count(ended)).toMatchObject({ half: 0, completeButFailed: 0, twice: 0, notYet: 0 });
  });
});
