/** What is at a limit is within it, to a ten-millionth. */
import { expect, it } from "vitest";
import { over, under } from "../../src/operations/shared/slack.ts";

it("a value at its limit is neither over nor under it, nor is the last digit of a converted size (identity)", () => {
  for (const limit of [25.4, 0.1 + 0.2, 1e-3, 500]) {
    for (const same of [limit, limit * (1 + 1e-7), limit * (1 - 1e-7)]) {
      expect(over(same, limit)).toBe(false);
      expect(under(same, limit)).toBe(false);
    }
    expect(over(limit * (1 + 2e-7), limit)).toBe(true);
    expect(under(limit * (1 - 2e-7), limit)).toBe(true);
    expect(under(limit * (1 + 2e-7), limit)).toBe(false);
    expect(over(limit * (1 - 2e-7), limit)).toBe(false);
  }
  expect(over(0.1 + 0.2, 0.3)).toBe(false);
});
