/** How much of the written-down headings and cell words is understood, and what is not. */
import { readFileSync } from "node:fs";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  matchHeadings,
  RESULT_COLUMNS,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import { readLists, readRows } from "../../src/table/read.ts";

export const LANGUAGES = ["en", "de", "fr", "es", "it", "ja"] as const;
export type Language = (typeof LANGUAGES)[number];

type Spelled = Readonly<Record<string, readonly string[]>>;
interface Written {
  readonly from: string;
  readonly rows: Spelled;
  readonly results: Spelled;
  readonly materials: Spelled;
  readonly tools: Spelled;
  readonly machines: Spelled;
  readonly cells: Readonly<Record<string, Spelled>>;
}

const LISTS = { materials: MATERIAL_COLUMNS, tools: TOOL_COLUMNS, machines: MACHINE_COLUMNS } as const;

export const written = (language: Language): Written =>
  JSON.parse(readFileSync(new URL(`./headings/${language}.json`, import.meta.url), "utf8"));

/** A heading is asked about beside two others of its table, as it would stand there. */
function columnOf(heading: string, own: string, table: Spelled, columns: readonly Column[], others: readonly string[]) {
  const beside = others.filter((key) => key !== own && table[key]).map((key) => table[key]![0]!);
  return matchHeadings([...beside, heading], columns).find((m) => m.at === beside.length)?.column.key;
}

/** What a word of a cell is read as. */
export function cellValue(column: string, text: string): unknown {
  if (column === "group")
    return readLists(
      [
        ["Material", "Group"],
        ["x", text],
      ],
      [["Tool"]],
      [["Machine"]],
    ).materials.items[0]?.group;
  if (column === "kind" || column === "substrate") {
    const heading = column === "kind" ? "Kind" : "Substrate";
    return readLists(
      [["Material"]],
      [
        ["Tool", heading],
        ["x", text],
      ],
      [["Machine"]],
    ).tools.items[0]?.[column];
  }
  const heading = ROW_COLUMNS.find((c) => c.key === column)!.heading;
  return (
    readRows([
      ["Row", heading],
      [1, text],
    ])[0]!.row as Record<string, unknown>
  )[column];
}

export interface Score {
  readonly of: number;
  readonly missed: readonly string[];
  /** Taken for something else: worse than not understood. */
  readonly wrong: readonly string[];
}

export function score(language: Language): { headings: Score; cells: Score } {
  const list = written(language);
  const heads = { of: 0, missed: [] as string[], wrong: [] as string[] };
  const cells = { of: 0, missed: [] as string[], wrong: [] as string[] };
  const note = (to: typeof heads, what: string, wanted: unknown, found: unknown) => {
    to.of++;
    if (found === undefined) to.missed.push(what);
    else if (found !== wanted) to.wrong.push(`${what}, not ${String(found)}`);
  };
  for (const [key, spellings] of Object.entries(list.rows))
    for (const heading of spellings)
      note(heads, `${heading} = ${key}`, key, columnOf(heading, key, list.rows, ROW_COLUMNS, ["operation", "tool"]));
  for (const [key, spellings] of Object.entries(list.results))
    for (const heading of spellings) {
      const asInput = columnOf(heading, key, list.rows, ROW_COLUMNS, ["operation", "tool"]);
      const found = asInput ?? columnOf(heading, key, list.results, RESULT_COLUMNS, ["time", "power"]);
      note(heads, `${heading} = result ${key}`, key, found);
    }
  for (const name of ["materials", "tools", "machines"] as const)
    for (const [key, spellings] of Object.entries(list[name]))
      for (const heading of spellings)
        note(
          heads,
          `${heading} = ${name} ${key}`,
          key,
          columnOf(heading, key, list[name], LISTS[name], ["hardness", "kind", "teeth", "power", "rate"]),
        );
  for (const [column, values] of Object.entries(list.cells))
    for (const [value, words] of Object.entries(values)) {
      const wanted = value === "yes" ? true : value === "no" ? false : value;
      for (const word of words) note(cells, `${word} = ${value}`, wanted, cellValue(column, word));
    }
  return { headings: heads, cells };
}
