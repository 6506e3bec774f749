/** Every input column of a row, but its number that stands there already, typed into the whole desk, with the planner, the pane and the store at work beside it. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { fieldsOf, fillRow } from "./grid-filling.ts";
import { choose, type Desk, openDesk, ready } from "./page.ts";

const CASES = [
  { way: "Tab", delay: 0, throttle: 1, width: 1440 },
  { way: "Tab", delay: 35, throttle: 6, width: 1024 },
  { way: "Enter", delay: 0, throttle: 6, width: 390 },
  { way: "arrows", delay: 35, throttle: 1, width: 390 },
  { way: "F2", delay: 0, throttle: 1, width: 1920 },
] as const;

describe("typing into the desk (independent: each cell holds what was typed)", () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk("typing");
    await choose(desk.page, "#blank");
    await desk.page.waitForFunction(() => document.getElementById("state")!.textContent!.includes("blank"));
    await ready(desk.page);
  });
  afterAll(() => desk?.close());

  it.each(CASES.map((one, i) => [one.way, one.delay, one.throttle, one.width, i] as const))(
    "by %s, %i ms a key, CPU at 1/%i, %i px wide",
    async (way, delay, throttle, width, i) => {
      const { page } = desk;
      await page.setViewportSize({ width, height: 800 });
      const session = await desk.context.newCDPSession(page);
      expect(await fillRow(page, session, fieldsOf(1).slice(1), 2 + 3 * i, { way, delay, throttle })).toEqual([]);
      await session.detach();
    },
    120_000,
  );
});
