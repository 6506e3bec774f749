import { describe, expect, it } from "vitest";
import { FINDINGS, type FindingCode } from "../../src/findings.ts";
import { planRow } from "../../src/plan/row.ts";
import type { Lists } from "../../src/table/read.ts";
import { FILES, rulesOf } from "./all.ts";
import { caseLists, caseRow, planOf, STEEL } from "./rule.ts";

const codes = Object.keys(FINDINGS) as FindingCode[];

describe("every finding has a row that fires it and a neighbour that does not (independent)", () => {
  // A fault is no rule of a row: it has a test of its own below.
  it.each(codes.filter((code) => code !== "fault"))("%s", (code) => {
    const rules = rulesOf(code);
    expect(rules.length, "no row fires it in tests/findings").toBeGreaterThan(0);
    for (const { fires, inside, severity, near = 0.2, why } of rules) {
      const found = planOf(fires).findings.find((f) => f.code === code);
      expect(found, `${why}: found ${planOf(fires).findings.map((f) => f.code)}`).toBeDefined();
      expect(found!.severity, why).toBe(severity);
      expect(
        planOf(inside).findings.map((f) => f.code),
        `just inside: ${why}`,
      ).not.toContain(code);
      const { value, limit } = found!.facts as { value?: number; limit?: number };
      if (value !== undefined && limit)
        expect(Math.abs(value / limit - 1), `${why}: ${value} against ${limit}`).toBeLessThan(near);
    }
  });
  it("has a row that shows what a fault of the program itself says", () => {
    const lists = caseLists({ row: STEEL });
    const broken = {
      ...lists,
      tools: {
        ...lists.tools,
        find: () => ({
          get diameter(): number {
            throw new Error("planted");
          },
        }),
      },
    };
    const read = caseRow({ row: { ...STEEL, Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 } });
    const found = planRow(read, broken as unknown as Lists).findings.find((f) => f.code === "fault");
    expect(found?.severity).toBe("stop");
    expect(planRow(read, lists).findings.map((f) => f.code)).not.toContain("fault");
  });
  it("names no code that a plan cannot find", () => {
    for (const file of FILES) for (const code of Object.keys(file)) expect(codes).toContain(code);
  });
});
