/** What is said of a missing list is what becomes of the rows. */
import { afterEach, describe, expect, it } from "vitest";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { missingSentences } from "../../taskpane/work/missing.ts";
import { planner } from "../../taskpane/work/planner.ts";
import { createSession } from "../../taskpane/work/session.ts";
import type { Session } from "../../taskpane/work/types.ts";
import { type FakeHost, fakeHost } from "./fake-host.ts";

const copy = (block: readonly (readonly CellValue[])[]) => block.map((row) => [...row]);
const without = (heading: string) =>
  DEMO.map((row, r) => row.map((cell, c) => (r > 0 && c === DEMO[0]!.indexOf(heading) ? null : cell)));
const sheets = { Materials: copy(MATERIALS), Tools: copy(TOOLS), Machines: copy(MACHINES) };

describe("a workbook without one of the lists", () => {
  let host: FakeHost;
  let session: Session;
  afterEach(() => session.destroy());
  const open = async (plan: CellValue[][], missing: keyof typeof sheets) => {
    const { [missing]: _, ...rest } = sheets;
    host = fakeHost({ Plan: plan, ...rest });
    host.cursor = { row: 1, column: 1 };
    session = createSession(host, planner);
    await session.refresh();
    const { lists } = session.store.get();
    return {
      said: missingSentences(lists),
      plans: planner({
        rows: plan,
        materials: missing === "Materials" ? [] : sheets.Materials,
        tools: missing === "Tools" ? [] : sheets.Tools,
        machines: missing === "Machines" ? [] : sheets.Machines,
      }).flatMap((line) => line ?? []),
    };
  };

  it("Materials: every row stops", async () => {
    const { said, plans } = await open(copy(DEMO), "Materials");
    expect(said).toEqual([expect.stringMatching(/^No list Materials in this workbook: every row stops/)]);
    expect(new Set(plans.map((line) => line.verdict))).toEqual(new Set(["stop"]));
  });

  it("Tools: a row that names one stops, and without a name only drilled holes are planned", async () => {
    const named = await open(copy(DEMO), "Tools");
    expect(named.said).toEqual([
      expect.stringMatching(/^No list Tools in this workbook: a row that names a tool stops/),
    ]);
    expect(named.plans.every((line) => line.verdict === "stop")).toBe(true);
    const { plans } = await open(without("Tool"), "Tools");
    const planned = plans.filter(
      (line) => line.results.spindleSpeed !== null && line.results.spindleSpeed !== undefined,
    );
    expect(new Set(planned.map((line) => line.operation))).toEqual(new Set(["drill"]));
    expect(planned.every((line) => String(line.results.reasons).includes("jobber drill"))).toBe(true);
  });

  it("Machines: a row that names one stops, and without a name there is no time and no cost", async () => {
    const named = await open(copy(DEMO), "Machines");
    expect(named.said).toEqual([
      expect.stringMatching(/^No list Machines in this workbook: a row that names a machine/),
    ]);
    const machine = DEMO[0]!.indexOf("Machine");
    const naming = DEMO.slice(1).filter((row) => row[machine] !== null).length;
    expect(named.plans.filter((line) => line.verdict === "stop").length).toBeGreaterThanOrEqual(naming);
    const { plans } = await open(without("Machine"), "Machines");
    expect(plans.some((line) => line.verdict !== "stop")).toBe(true);
    expect(plans.every((line) => (line.results.time ?? null) === null && (line.results.cost ?? null) === null)).toBe(
      true,
    );
  });

  it("has no live block put in, which could only show an error, and is told why", async () => {
    await open(copy(DEMO), "Tools");
    await session.insertLive();
    expect(session.store.get().message).toMatchObject({
      kind: "failed",
      text: "A live block needs all three lists, and this workbook has no Tools; nothing was written.",
    });
    expect(host.formulas.size).toBe(0);
  });
});
