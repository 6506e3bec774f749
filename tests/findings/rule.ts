/** Rows that fire a finding, and their neighbours just inside that do not. */
import { expect } from "vitest";
import type { FindingCode, Verdict } from "../../src/findings.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { Plan } from "../../src/operations/shared/types.ts";
import { handedOn } from "../../src/plan/handed.ts";
import { planRow } from "../../src/plan/row.ts";
import { type Cells, type Lists, type ReadRow, readLists, readRows } from "../../src/table/read.ts";

export type Cell = string | number | boolean | null;
/** Cells of a row by heading. */
export type RowCells = Readonly<Record<string, Cell>>;

/** A row with changes in the entries of the lists that it names, by heading. */
export interface Case {
  readonly row: RowCells;
  readonly material?: RowCells;
  readonly tool?: RowCells;
  readonly machine?: RowCells;
  /** A row that stands above it in the table. */
  readonly above?: RowCells;
  /** Entries that stand in the list Tools instead of the shop's own, by heading. */
  readonly tools?: readonly RowCells[];
}

export interface Rule {
  readonly fires: Case;
  /** The same row a little changed: the finding is gone. */
  readonly inside: Case;
  /** How grave it is here. */
  readonly severity: Verdict;
  /** What the rule is, and where its number comes from: an outside expectation. */
  readonly why: string;
  /** What it says, worked out by hand: all of it. */
  readonly facts: Readonly<Record<string, unknown>>;
  /** Value over limit may be as far from 1 as this where the rule fires (default 0.2): a rule's edge is tried, not its middle. */
  readonly near?: number;
}

export type Rules = Partial<Record<FindingCode, Rule | readonly Rule[]>>;

/** The list with the cells of one entry changed. */
function changed(list: Cells, name: Cell | undefined, cells: RowCells | undefined): Cells {
  if (cells === undefined) return list;
  const headings = [...(list[0] as string[])];
  for (const heading of Object.keys(cells)) if (!headings.includes(heading)) headings.push(heading);
  return [
    headings,
    ...list
      .slice(1)
      .map((entry) =>
        headings.map((heading, i) => (entry[0] === name && heading in cells ? cells[heading] : (entry[i] ?? null))),
      ),
  ];
}

/** A block of cells from entries by heading. */
export function blockOf(entries: readonly RowCells[]): Cells {
  const headings = [...new Set(entries.flatMap((e) => Object.keys(e)))];
  return [headings, ...entries.map((e) => headings.map((h) => e[h] ?? null))];
}

/** The shop's lists with what the case changes in them. */
export function caseLists({ row, material, tool, machine, tools }: Case): Lists {
  return readLists(
    changed(MATERIALS, row.Material, material),
    tools ? blockOf(tools) : changed(TOOLS, row.Tool, tool),
    changed(MACHINES, row.Machine, machine),
  );
}

export const caseRow = ({ row }: Case): ReadRow => readRows([Object.keys(row), Object.values(row)])[0]!;

/** The plan of one row of a case. */
export function planOf(one: Case): Plan {
  const lists = caseLists(one);
  if (!one.above) return planRow(caseRow(one), lists);
  const rows = [caseRow({ row: one.above }), caseRow(one)];
  return planRow(rows[1]!, lists, 1, true, handedOn(rows, lists)(1));
}

/** A number to so many digits, one above another, one below. */
export const about = (value: number, digits = 9): unknown => expect.closeTo(value, digits);
const which = (says: string, holds: (v: number) => boolean): unknown => ({
  asymmetricMatch: (v: unknown) => typeof v === "number" && holds(v),
  toString: () => says,
});
export const above = (limit: number): unknown => which(`above ${limit}`, (v) => v > limit);
export const below = (limit: number): unknown => which(`below ${limit}`, (v) => v < limit);

/** Everyday rows that rules are tried on: each is ok as it stands. */
export const STEEL = { Units: "mm", Material: "Steel C45 (AISI 1045)", Machine: "Centre V3" } as const;
