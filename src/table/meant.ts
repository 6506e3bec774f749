/** Which columns a set of notions may mean. */
import { Cache } from "../cache.ts";
import { type NotionSet, notionSets, withNotions } from "./notions.ts";
import { common } from "./spellings/common.ts";
import { MEANINGS } from "./spellings/meanings.ts";

export type TableName = keyof typeof MEANINGS;

/** A column that a heading may mean, with the languages in which it does: one bit a language. */
export interface Meaning {
  readonly key: string;
  readonly languages: number;
  /** True where the words may mean something else as well. */
  readonly doubtful: boolean;
}

interface Said {
  readonly key: string;
  readonly doubtful: boolean;
}

/** All the sets that one way of saying stands for. */
function expanded(way: string): NotionSet[] {
  let sets: (readonly string[])[] = [[]];
  for (const word of way.split(" ")) {
    const open = word.endsWith("?");
    const notions = (open ? word.slice(0, -1) : word).split("/");
    const more = sets.flatMap((set) => notions.map((notion) => [...set, notion]));
    sets = open ? [...sets, ...more] : more;
  }
  return sets.map((set) => withNotions("", set));
}

function tableOf(name: TableName): ReadonlyMap<NotionSet, readonly Said[]> {
  const table = new Map<NotionSet, Said[]>();
  for (const [key, own] of Object.entries(MEANINGS[name]))
    for (const way of own.split("|"))
      for (const set of expanded(way.replace(/^\?/, "")))
        table.set(set, [...(table.get(set) ?? []), { key, doubtful: way.startsWith("?") }]);
  return table;
}

const tables = new Cache<TableName, ReadonlyMap<NotionSet, readonly Said[]>>("ways to say a column", 5);

/** Columns of a set; where a sign stands beside the words for the same column, both say it. */
function columnsOf(set: NotionSet, table: ReadonlyMap<NotionSet, readonly Said[]>): readonly Said[] {
  const whole = table.get(set);
  if (whole) return whole;
  const notions = set.split(" ");
  for (const sign of notions) {
    if (!(sign in common)) continue;
    const alone = table.get(sign) ?? [];
    const rest = table.get(notions.filter((notion) => notion !== sign).join(" ")) ?? [];
    const both = rest.filter(({ key }) => alone.some((other) => other.key === key));
    if (both.length > 0) return both.map(({ key }) => ({ key, doubtful: false }));
  }
  return [];
}

function meaningsIn(folded: string, name: TableName, short: boolean): Meaning[] | undefined {
  const table = tables.get(name, () => tableOf(name));
  const found = new Map<string, Meaning>();
  let understood = false;
  notionSets(folded, short).forEach((sets, language) => {
    for (const set of sets) {
      understood = true;
      for (const { key, doubtful } of columnsOf(set, table)) {
        const known = found.get(key);
        found.set(key, {
          key,
          languages: (known?.languages ?? 0) | (1 << language),
          doubtful: doubtful && (known?.doubtful ?? true),
        });
      }
    }
  });
  return understood ? [...found.values()] : undefined;
}

/**
 * What a folded text may mean as a heading of a table; undefined where it is no words of any language. Words cut short
 * by a full stop are taken for longer ones where no language knows them as they stand.
 */
export function meaningsOf(folded: string, name: TableName): readonly Meaning[] | undefined {
  const said = meaningsIn(folded, name, false);
  if ((said && said.length > 0) || !folded.includes(".")) return said;
  return meaningsIn(folded, name, true) ?? said;
}
