import fs from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { calloutBlock, readCallouts } from "../../src/plan/callout.ts";
import { fitDeviations, standardTolerance } from "../../src/plan/callout-fits.ts";

interface Case {
  readonly text: string;
  readonly units?: "mm" | "in";
  readonly rows: readonly Readonly<Record<string, string | number | boolean | null>>[];
  readonly why: string;
}
const corpus = JSON.parse(fs.readFileSync(new URL("../published/callouts.json", import.meta.url), "utf8")) as {
  cases: Case[];
};

/** Sizes are decimal text or short sums of it; chords and cones are written to six digits. */
const CLOSE = 1e-6;

describe("callouts of drawings (published)", () => {
  it.each(corpus.cases.map((c) => [c.text.replace(/\n/g, " ⏎ ").replace(/\r/g, ""), c] as const))(
    "reads %s",
    (_, c) => {
      const { rows } = readCallouts(c.text, { units: c.units });
      expect(
        rows.map((r) => r.cells.Operation ?? null),
        `${c.why}: ${JSON.stringify(rows)}`,
      ).toEqual(c.rows.map((r) => r.Operation));
      c.rows.forEach((wanted, i) => {
        const row = rows[i]!;
        const cells = row.cells as Record<string, unknown>;
        for (const [heading, value] of Object.entries(wanted)) {
          if (heading === "understood") continue;
          const at = `${heading} of row ${i + 1} (${c.why}): ${row.note}`;
          if (typeof value === "number") {
            expect(cells[heading], at).toBeTypeOf("number");
            expect(Math.abs((cells[heading] as number) - value), at).toBeLessThan(CLOSE);
          } else expect(cells[heading] ?? null, at).toBe(value);
        }
        expect(row.understood, row.note).toBe(wanted.understood ?? true);
      });
    },
  );
  it("covers at least 120 callouts", () => expect(corpus.cases.length).toBeGreaterThanOrEqual(120));
});
