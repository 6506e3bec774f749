import { describe, expect, it } from "vitest";
import { readCallouts } from "../../src/callouts/callouts.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { planRow } from "../../src/plan/row.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { ownCases } from "./corpus.ts";

const lists = readLists(MATERIALS, TOOLS, MACHINES);

/** Plans of the rows of a callout, 12 mm or half an inch deep where the drawing does not say. */
function planned(text: string, units: "mm" | "in" | undefined) {
  const { rows } = readCallouts(text, { units, material: "Steel C45 (AISI 1045)", machine: "Centre V4" });
  return rows.flatMap(({ cells, understood, source }) => {
    if (!understood || cells.Operation === null || cells.Operation === undefined) return [];
    const filled: Record<string, unknown> = { ...cells, Depth: cells.Depth ?? (cells.Units === "in" ? 0.5 : 12) };
    const read = readRows([Object.keys(filled), Object.values(filled)])[0]!;
    return [{ source, read, plan: planRow(read, lists, 1, false) }];
  });
}

describe("the rows of one callout are one hole (identity)", () => {
  const chains = ["clean", "noise", "languages", "later", "third"].flatMap(ownCases).flatMap(({ text, units }) => {
    const rows = planned(text, units);
    const drill = rows.find((r) => r.read.row.operation === "drill");
    const next = rows.filter((r) => r.read.row.operation === "thread mill" || r.read.row.operation === "ream");
    // Two lines may be two holes: only rows of one callout are held to each other.
    return drill && next.length === 1 && drill.source === next[0]!.source ? [{ text, drill, next: next[0]! }] : [];
  });
  it("has chains to look at", () => expect(chains.length).toBeGreaterThan(40));
  it("drills the hole that the next row starts from", () => {
    for (const { text, drill, next } of chains) {
      const size = drill.read.row.finishDiameter;
      const start = next.plan.results.startDiameter;
      if (size === undefined || typeof start !== "number") continue;
      expect(Math.abs(size - start), `${text}: drilled ${size}, started from ${start}`).toBeLessThan(1e-6);
    }
  });
  it("drills at least as deep as the next row goes", () => {
    for (const { text, drill, next } of chains) {
      if (drill.read.row.through || next.read.row.through) continue;
      expect(drill.read.row.depth!, text).toBeGreaterThanOrEqual(next.read.row.depth! - 1e-9);
    }
  });
  it("says nothing against a hole that it proposed itself", () => {
    for (const { text, drill, next } of chains) {
      if (next.read.row.startDiameter !== undefined) continue;
      const codes = [...drill.plan.findings, ...next.plan.findings]
        .filter((f) => f.severity === "stop")
        .map((f) => f.code);
      for (const code of ["hole-under-minor", "hole-over-minor", "ream-stock"]) expect(codes, text).not.toContain(code);
    }
  });
});
