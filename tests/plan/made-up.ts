/** Searches for advice over rows whose outcome is made up, so that it is plain what is to be found. */
import type { FindingCode, Verdict } from "../../src/findings.ts";
import type { Plan } from "../../src/operations/shared/types.ts";
import { type Change, type Situation, situationOf } from "../../src/plan/changes.ts";
import { Search, type Steps } from "../../src/plan/search.ts";
import type { Results } from "../../src/table/results.ts";
import type { Row } from "../../src/table/rows.ts";
import { type Case, caseLists, caseRow, type RowCells, STEEL } from "../findings/rule.ts";

export interface Outcome extends Results {
  /** What is found of the row. */
  readonly wrong?: Partial<Record<FindingCode, Verdict>>;
}

const WORST: readonly Verdict[] = ["stop", "check"];

/** A plan of which nothing is known but what is said here. */
export function planOf({ wrong = {}, ...results }: Outcome): Plan {
  const findings = Object.entries(wrong).map(([code, severity]) => ({ code, severity, facts: {} }));
  const verdict = WORST.find((v) => findings.some((f) => f.severity === v)) ?? "ok";
  return { verdict, findings, results } as unknown as Plan;
}

/** A search over a row, and the rows that it worked out after the first. */
export function searchOf(one: Case, outcome: (row: Row) => Outcome): { search: Search; rows: Row[] } {
  const rows: Row[] = [];
  const search = new Search(caseRow(one).row, caseLists(one), (row) => {
    rows.push(row);
    return planOf({ tool: row.tool, ...outcome(row) });
  });
  rows.pop();
  return { search, rows };
}

/** What a search comes to. */
export function end<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const short = (to: Change["to"]) => (typeof to === "number" ? Math.round(to * 1e9) / 1e9 : to);
/** Changes as "key to". */
export const said = (changes: readonly Change[] | undefined) => changes?.map(({ key, to }) => `${key} ${short(to)}`);

/** A carbide end mill of 12 mm with flutes of 26, hung out 40; the list of tools unless another is given. */
export const E12 = {
  ...{ Tool: "E12", Kind: "end mill", Units: "mm", Substrate: "carbide", Teeth: 4 },
  ...{ Diameter: 12, "Cutting length": 26, "Stick-out": 40 },
};
export const SIDE = { Operation: "side", Tool: "E12", Depth: 10, Length: 60, "Radial depth": 3 };

type Asked = Omit<Case, "row"> & { readonly path?: Plan["path"] };
/** A row with its plan made up: {@link planOf} with the row's own tool. */
export function situation(cells: RowCells, outcome: Outcome = {}, { path, ...more }: Asked = {}): Situation {
  const one = { row: { ...STEEL, ...cells }, tools: [E12], ...more };
  const { row } = caseRow(one);
  return situationOf(row, { ...planOf({ tool: row.tool, ...outcome }), path }, caseLists(one));
}
