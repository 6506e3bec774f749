/** Blocks of cells to typed records: headings matched, units converted, each bad cell kept as a problem of its row. */
import { Cache } from "../cache.ts";
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
import { byDesignation, likest, nearestMaterials } from "./found.ts";
import type { Machine, Material, Tool } from "./lists.ts";
import type { Row, RowKey } from "./rows.ts";
import { describedTools, nearestTools } from "./tool-text.ts";

export type { Machine, Material, Tool } from "./lists.ts";
export type { Row } from "./rows.ts";

export type Cells = readonly (readonly unknown[])[];

/** One cell that could not be taken. */
export interface Problem<K extends string = string> {
  readonly key: K;
  readonly error: TradeError;
}

type Values = Record<string, unknown>;

function readRecord<K extends string>(
  cells: readonly unknown[],
  matches: readonly Match<K>[],
): { values: Values; problems: Problem<K>[] } {
  const values: Values = {};
  const problems: Problem<K>[] = [];
  const take = (match: Match<K>, units: Units | undefined) => {
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
  readonly problems: readonly Problem<RowKey>[];
  /** What stood in the Row column, as it came. */
  readonly name: string | number | null;
  /** True where every matched cell is blank. */
  readonly empty: boolean;
}

/** Reads planning rows under their headings. `units` serves tables whose rows do not say theirs. */
export function readRows(block: Cells, units?: Units): ReadRow[] {
  const matches = matchHeadings(block[0] ?? [], ROW_COLUMNS);
  const named = matches.find((m) => m.column.key === "row");
  const implied = units ?? commonUnits(matches);
  const hasUnits = matches.some((m) => m.column.key === "units");
  return block.slice(1).map((cells) => {
    const given =
      hasUnits || implied === undefined ? matches : matches.map((m) => ({ ...m, units: m.units ?? implied }));
    const { values, problems } = readRecord(cells, given);
    if (!hasUnits && implied) values.units = implied;
    const name = named && cells[named.at];
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
  /** By its name, else by a designation or description that belongs to one entry only. */
  find(name: string): T | undefined;
  /** The name of an entry that was found. */
  nameOf(entry: T): string;
  /** Names to offer for a name that is not there. */
  nearest(name: string): string[];
  /** Cells of the list that could not be read, by name of the item. */
  readonly problems: ReadonlyMap<string, readonly Problem[]>;
}

/** As many names are offered. */
const MOST = 5;

/** How entries of a list are found that are not called by their name, and what is offered in their place. */
interface Search<T> {
  /** The names that a text belongs to: one is found, several are offered. */
  owners(text: string, items: readonly T[]): readonly string[];
  nearest(text: string, items: readonly T[]): string[];
}

function readList<T extends object>(
  block: Cells,
  columns: readonly Column[],
  nameKey: keyof T & string,
  search: Search<T>,
): List<T> {
  const matches = matchHeadings(block[0] ?? [], columns);
  const items: T[] = [];
  const byName = new Map<string, T>();
  const problems = new Map<string, readonly Problem[]>();
  for (const cells of block.slice(1)) {
    const record = readRecord(cells, matches);
    const name = record.values[nameKey];
    if (typeof name !== "string") continue;
    const key = name.toLowerCase();
    if (byName.has(key)) continue;
    items.push(record.values as T);
    byName.set(key, record.values as T);
    if (record.problems.length > 0) problems.set(key, record.problems);
  }
  // Names of a table come again row by row.
  const asked = new Cache<string, readonly string[]>("names that are not in a list", 500);
  const owners = (name: string) => asked.get(name, () => search.owners(name, items));
  const offered = new Cache<string, readonly string[]>("names offered for one that is not in a list", 500);
  return {
    items,
    problems,
    find(name) {
      const exact = byName.get(name.trim().toLowerCase());
      if (exact !== undefined) return exact;
      // What belongs to two entries chooses neither.
      const own = owners(name);
      return own.length === 1 ? byName.get(own[0]!.toLowerCase()) : undefined;
    },
    nameOf: (entry) => String(entry[nameKey]),
    nearest(name) {
      const names = offered.get(name, () => {
        const own = owners(name);
        return (own.length > 0 ? own : search.nearest(name, items)).slice(0, MOST);
      });
      return [...names];
    },
  };
}

/** Materials by a designation of theirs. */
function materialSearch(): Search<Material> {
  const named = (items: readonly Material[]) =>
    items.map(({ material, designations }) => ({ name: material, designations }));
  // Made when a name is not in the list, and not before.
  let designated: ReturnType<typeof byDesignation> | undefined;
  return {
    owners(text, items) {
      designated ??= byDesignation(named(items));
      return designated(text);
    },
    nearest: (text, items) => nearestMaterials(text, named(items)),
  };
}

/** Tools by a description that fits one of them and has no word that is not understood. */
const TOOL_SEARCH: Search<Tool> = {
  owners(text, items) {
    const { fitting, sure } = describedTools(text, items, TOOL_COLUMNS);
    return sure || fitting.length > 1 ? fitting : [];
  },
  nearest: (text, items) => nearestTools(text, items, TOOL_COLUMNS),
};

const MACHINE_SEARCH: Search<Machine> = {
  owners: () => [],
  nearest: (text, items) =>
    likest(
      text,
      items.map(({ machine }) => machine),
    ),
};

export interface Lists {
  readonly materials: List<Material>;
  readonly tools: List<Tool>;
  readonly machines: List<Machine>;
}

/** Reads the three lists of the shop. */
export function readLists(materials: Cells, tools: Cells, machines: Cells): Lists {
  return {
    materials: readList(materials, MATERIAL_COLUMNS, "material", materialSearch()),
    tools: readList(tools, TOOL_COLUMNS, "tool", TOOL_SEARCH),
    machines: readList(machines, MACHINE_COLUMNS, "machine", MACHINE_SEARCH),
  };
}
