/** Finding an entry of a list by what people call it, and what resembles a name that is not there. */
import { familyOf, sameClass } from "./families.ts";
import { compact, fold } from "./fold.ts";

/** What a list that is looked in knows of its entries. */
export interface Named {
  readonly name: string;
  /** Other names, with ";" between them. */
  readonly designations?: string | undefined;
}

/** A longer text is no name of anything. */
const LONGEST = 80;

/** Bodies that stand before a designation and are often left out. */
const BODY = /^(?:aisi|sae|uns|astm|jis|aa|din|wnr|enaw|en)(?=.*\d)/;

/** A designation without its body, case, blanks and punctuation: "AISI 304" and "304" are one. */
const keyOf = (text: string): string => (text.length > LONGEST ? "" : compact(fold(text)).replace(BODY, ""));

/** The temper of an aluminium that is stretched or pressed straight after the T6 of its name. */
const STRAIGHTENED = /t6(?:51|511|510)$/;

/** Names of the entries that each designation belongs to. */
export function byDesignation(entries: readonly Named[]): (name: string) => readonly string[] {
  const owners = new Map<string, string[]>();
  for (const { name, designations = "" } of entries)
    for (const text of designations.split(";")) {
      const key = keyOf(text);
      const names = owners.get(key) ?? [];
      if (key !== "" && !names.includes(name)) owners.set(key, [...names, name]);
    }
  return (name) => {
    const key = keyOf(name);
    return owners.get(key) ?? owners.get(key.replace(STRAIGHTENED, "t6")) ?? [];
  };
}

/** How much two names share of their letter pairs, 0 to 1. */
export function likeness(one: string, other: string): number {
  const pairs = (text: string) => {
    const t = ` ${text.toLowerCase()} `;
    return new Set(Array.from({ length: t.length - 1 }, (_, i) => t.slice(i, i + 2)));
  };
  const [mine, theirs] = [pairs(one), pairs(other)];
  let shared = 0;
  for (const pair of mine) if (theirs.has(pair)) shared++;
  return (2 * shared) / (mine.size + theirs.size);
}

/** As many names are offered. */
const MOST = 3;
/** Names that share less are not alike. */
const ALIKE = 0.3;

/** Up to three names that resemble the wanted one, the likest first. */
export function likest(wanted: string, names: readonly string[], least = ALIKE): string[] {
  if (wanted.length > LONGEST) return [];
  return names
    .map((name) => ({ name, score: likeness(wanted, name) }))
    .filter(({ score }) => score >= least)
    .sort((a, b) => b.score - a.score)
    .slice(0, MOST)
    .map(({ name }) => name);
}

/**
 * Materials that may stand in for one that is not in the list: of its kind, else of its class, never of another. A name
 * that says nothing of what it is resembles others by its letters only.
 */
export function nearestMaterials(wanted: string, entries: readonly Named[]): string[] {
  const family = familyOf(wanted);
  const names = (of: readonly Named[]) => of.map(({ name }) => name);
  if (family === undefined) return likest(wanted, names(entries));
  const known = entries.map((entry) => ({
    entry,
    family:
      [entry.name, ...(entry.designations ?? "").split(";")].map(familyOf).find((own) => own?.includes("/")) ??
      familyOf(entry.name),
  }));
  const kin = known.filter((one) => one.family === family).map(({ entry }) => entry);
  const related = known
    .filter((one) => one.family !== undefined && sameClass(one.family, family))
    .map(({ entry }) => entry);
  const close = kin.length > 0 ? kin : related;
  // The likest by their name or by any of their designations.
  const score = ({ name, designations = "" }: Named) =>
    Math.max(...[name, ...designations.split(";")].map((text) => likeness(wanted, text)));
  return names([...close].sort((a, b) => score(b) - score(a)).slice(0, MOST));
}
