/** What each finding says with its row: every fact of it, by hand beside the row. */
import { describe, expect, it } from "vitest";
import { FINDINGS, type FindingCode } from "../../src/findings.ts";
import { rulesOf } from "./all.ts";
import { planOf } from "./rule.ts";

const codes = (Object.keys(FINDINGS) as FindingCode[]).filter((code) => code !== "fault");

/** Blanks left out: what is not known is not said. */
const known = (facts: object) => Object.fromEntries(Object.entries(facts).filter(([, v]) => v !== undefined));

describe("facts of a finding (worked by hand)", () => {
  for (const code of codes)
    it.each(rulesOf(code).map((rule) => [rule.why, rule] as const))(`${code}: %s`, (_, { fires, facts }) => {
      const found = planOf(fires).findings.find((f) => f.code === code)!;
      expect(known(found.facts)).toEqual(facts);
    });
});
