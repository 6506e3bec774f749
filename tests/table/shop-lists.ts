/** A second list of headings and cell words, with what nobody can know; how much of it is understood, and what is not. */
import { readFileSync } from "node:fs";
import {
  type Column,
  MACHINE_COLUMNS,
  MATERIAL_COLUMNS,
  matchHeadings,
  ROW_COLUMNS,
  TOOL_COLUMNS,
} from "../../src/table/columns.ts";
import { readRows } from "../../src/table/read.ts";
import { match } from "../../taskpane/work/planning.ts";

export const LANGUAGES = ["en", "de", "fr", "es", "it", "ja"] as const;
export type Language = (typeof LANGUAGES)[number];

/** One line of a list: what it belongs to, and how it is written. */
interface Line {
  readonly section: string;
  readonly key: string;
  readonly texts: readonly string[];
}

/** The list of a language: sections behind "#", then a key and its texts with " | " between them; "?" is nobody's. */
export function written(language: Language): Line[] {
  let section = "";
  return readFileSync(new URL(`./shop-lists/${language}.txt`, import.meta.url), "utf8")
    .split("\n")
    .flatMap((line): Line[] => {
      if (line.startsWith("#")) section = line.slice(1).trim();
      const colon = line.indexOf(": ");
      if (line.startsWith("#") || colon < 0) return [];
      const texts = line.slice(colon + 2).split(" | ");
      return [{ section, key: line.slice(0, colon), texts: texts.map((text) => text.replace(/\\n/g, "\n")) }];
    });
}

export interface Score {
  of: number;
  readonly missed: string[];
  /** Taken for something else, or for something where nobody can know: worse than not understood. */
  readonly wrong: string[];
}

const LISTS: Readonly<Record<string, readonly Column[]>> = {
  materials: MATERIAL_COLUMNS,
  tools: TOOL_COLUMNS,
  machines: MACHINE_COLUMNS,
};
/** Headings that stand beside the one that is asked about, as they would in its table. */
const BESIDE: Readonly<Record<string, readonly string[]>> = {
  materials: ["hardness", "kc11"],
  tools: ["kind", "teeth", "shankDiameter"],
  machines: ["power", "setup", "rapid"],
};

function meaningOf(heading: string, key: string, section: string, lines: readonly Line[]): string | undefined {
  const of = (section: string, wanted: readonly string[]) =>
    lines.filter((l) => l.section === section && l.key !== key && wanted.includes(l.key)).map((l) => l.texts[0]!);
  if (LISTS[section]) {
    const beside = of(section, BESIDE[section]!);
    return matchHeadings([...beside, heading], LISTS[section]).find((m) => m.at === beside.length)?.column.key;
  }
  const beside = of("rows", ["operation", "material", "through", "roughness"]);
  const { inputs, outputs } = match([...beside, heading]);
  return (
    inputs.find((m) => m.at === beside.length)?.column.key ?? outputs.find((m) => m.at === beside.length)?.column.key
  );
}

function cellValue(column: string, text: string): string | undefined {
  const { heading } = ROW_COLUMNS.find((c) => c.key === column)!;
  const [read] = readRows([
    ["Row", heading],
    [1, text],
  ]);
  const value = (read!.row as Record<string, unknown>)[column];
  return typeof value === "boolean" ? (value ? "yes" : "no") : (value as string | undefined);
}

export function score(language: Language): { headings: Score; cells: Score } {
  const lines = written(language);
  const headings: Score = { of: 0, missed: [], wrong: [] };
  const cells: Score = { of: 0, missed: [], wrong: [] };
  const note = (to: Score, what: string, wanted: string | undefined, found: string | undefined) => {
    to.of++;
    if (found === wanted) return;
    if (found === undefined) to.missed.push(`${what} = ${wanted}`);
    else to.wrong.push(`${what} = ${wanted ?? "nobody's"}, not ${found}`);
  };
  for (const { section, key, texts } of lines)
    for (const text of texts)
      if (section === "cells") {
        const [, word, value] = /^(.*)=(.*)$/.exec(text)!;
        note(cells, word!, value === "?" ? undefined : value, cellValue(key, word!));
      } else note(headings, text, key === "?" ? undefined : key, meaningOf(text, key, section, lines));
  return { headings, cells };
}
