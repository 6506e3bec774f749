/** Blocks of cells to typed records: headings matched, units converted, each bad cell kept as a problem of its row. */
import { TradeError } from "../errors.ts";
import type { Units } from "../units.ts";
import { isBlank, isBlankIn } from "./blank.ts";
import { readCell } from "./cell.ts";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  type Match,
  matchHeadings,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "./columns.ts";
import { compact, fold } from "./fold.ts";
import type { Machine, Material, Tool } from "./lists.ts";
import type { Row } from "./rows.ts";

export type { Machine, Material, Tool } from "./lists.ts";
export type { Row } from "./rows.ts";

export type Cells = readonly (readonly unknown[])[];

/** One cell that could not be taken. */
export interface Problem {
  readonly key: string;
  readonly error: TradeError;
}

type Values = Record<string, unknown>;

function readRecord(cells: readonly unknown[], matches: readonly Match[]): { values: Values; problems: Problem[] } {
  const values: Values = {};
  const problems: Problem[] = [];
  const take = (match: Match, units: Units | undefined) => {
    const cell = cells[match.at];
    if (isBlankIn(cell, match.column)) return;
    try {
      values[match.column.key] = readCell(cell, match, units);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push({ key: match.column.key, error });
    }
  };
  const unitsMatch = matches.find((m) => m.column.key === "units");
  if (unitsMatch) take(unitsMatch, undefined);
  for (const match of matches) if (match !== unitsMatch) take(match, values.units as Units | undefined);
  return { values, problems };
}

export interface ReadRow {
  readonly row: Row;
  readonly problems: readonly Problem[];
  /** What stood in the Row column, as it came. */
  readonly name: string | number | null;
  /** True where every matched cell is blank. */
  readonly empty: boolean;
}

/** Reads planning rows under their headings. `units` serves tables whose rows do not say theirs. */
export function readRows(block: Cells, units?: Units): ReadRow[] {
  const matches = matchHeadings(block[0] ?? [], ROW_COLUMNS);
  const rowAt = matches.find((m) => m.column.key === "row")?.at;
  const implied = units ?? commonUnits(matches);
  const hasUnits = matches.some((m) => m.column.key === "units");
  return block.slice(1).map((cells) => {
    const given =
      hasUnits || implied === undefined ? matches : matches.map((m) => ({ ...m, units: m.units ?? implied }));
    const { values, problems } = readRecord(cells, given);
    if (values.units === undefined && !hasUnits && implied) values.units = implied;
    const name = rowAt === undefined ? null : cells[rowAt];
    return {
      row: values as Row,
      problems,
      name: typeof name === "number" || typeof name === "string" ? name : null,
      // A row of nothing comes as zeros from older desktop programs.
      empty: matches.every((m) => m.column.key === "row" || isBlank(cells[m.at]) || cells[m.at] === 0),
    };
  });
}

/** The unit system that all length headings with a unit agree on. */
function commonUnits(matches: readonly Match[]): Units | undefined {
  const said = new Set(matches.filter((m) => m.column.dimension === "length" && m.units).map((m) => m.units!));
  return said.size === 1 ? [...said][0] : undefined;
}

/** A list of the shop by name, without regard to case and outer spaces. */
export interface List<T> {
  readonly items: readonly T[];
  find(name: string): T | undefined;
  /** Names that resemble a name that is not there. */
  nearest(name: string): string[];
  /** Cells of the list that could not be read, by name of the item. */
  readonly problems: ReadonlyMap<string, readonly Problem[]>;
}

function readList<T>(block: Cells, columns: readonly Column[], nameKey: string): List<T> {
  const matches = matchHeadings(block[0] ?? [], columns);
  const items: T[] = [];
  const byName = new Map<string, T>();
  let designated: ReadonlyMap<string, readonly string[]> | undefined;
  // Made when a name is not in the list, and not before.
  const owners = (name: string) => {
    designated ??= byDesignation(items as readonly Values[], nameKey);
    return designated.get(designationKey(name));
  };
  const names: string[] = [];
  const problems = new Map<string, readonly Problem[]>();
  for (const cells of block.slice(1)) {
    const record = readRecord(cells, matches);
    const name = record.values[nameKey];
    if (typeof name !== "string" || name === "") continue;
    const key = name.toLowerCase();
    if (byName.has(key)) continue;
    items.push(record.values as T);
    byName.set(key, record.values as T);
    names.push(name);
    if (record.problems.length > 0) problems.set(key, record.problems);
  }
  return {
    items,
    problems,
    find(name) {
      const exact = byName.get(name.trim().toLowerCase());
      if (exact !== undefined) return exact;
      // What belongs to two entries chooses neither.
      const own = owners(name);
      return own?.length === 1 ? byName.get(own[0]!.toLowerCase()) : undefined;
    },
    nearest: (name) => [...(owners(name) ?? nearestNames(name, names))],
  };
}

/** Names of the items that each designation belongs to. */
function byDesignation(items: readonly Values[], nameKey: string): ReadonlyMap<string, readonly string[]> {
  const owners = new Map<string, string[]>();
  for (const item of items)
    for (const text of String(item.designations ?? "").split(";")) {
      const key = designationKey(text);
      const names = owners.get(key) ?? [];
      const name = String(item[nameKey]);
      if (key !== "" && !names.includes(name)) owners.set(key, [...names, name]);
    }
  return owners;
}

/** Bodies that stand before a designation and are often left out. */
const BODY = /^(?:aisi|sae|uns|astm|jis|aa|din|wnr|enaw|en)(?=.*\d)/;

/** A designation without its body, case, blanks and punctuation: "AISI 304" and "304" are one. */
function designationKey(text: string): string {
  return text.length > 80 ? "" : compact(fold(text)).replace(BODY, "");
}

/** Up to three names that share the most letter pairs with the wanted one. */
function nearestNames(wanted: string, names: readonly string[]): string[] {
  const pairs = (text: string) => {
    const t = ` ${text.toLowerCase()} `;
    return new Set(Array.from({ length: t.length - 1 }, (_, i) => t.slice(i, i + 2)));
  };
  const mine = pairs(wanted);
  return names
    .map((name) => {
      const theirs = pairs(name);
      let shared = 0;
      for (const p of mine) if (theirs.has(p)) shared++;
      return { name, score: (2 * shared) / (mine.size + theirs.size) };
    })
    .sort((a, b) => b.score - a.score)
    .slice(0, 3)
    .filter((n, i) => n.score > 0.2 || i === 0)
    .map((n) => n.name);
}

export interface Lists {
  readonly materials: List<Material>;
  readonly tools: List<Tool>;
  readonly machines: List<Machine>;
}

/** Reads the three lists of the shop. */
export function readLists(materials: Cells, tools: Cells, machines: Cells): Lists {
  return {
    materials: readList<Material>(materials, MATERIAL_COLUMNS, "material"),
    tools: readList<Tool>(tools, TOOL_COLUMNS, "tool"),
    machines: readList<Machine>(machines, MACHINE_COLUMNS, "machine"),
  };
}
