/** Column widths, hidden columns, lists of choices and the dimension in a sheet's text. Pure. */

import { areasAt, areasText, areaText, readArea, without } from "../model/address.ts";
import { type Area, type Choices, FileError } from "../model/types.ts";
import { toFile } from "./function-names.ts";
import { type Outline, outlineOf, placeFor } from "./sheet-outline.ts";
import { escapeText, type Patch, patched } from "./text.ts";
import { Kind, Xml } from "./xml.ts";

interface Column {
  from: number;
  to: number;
  /** Attributes but min and max, as spelled. */
  attributes: Map<string, string>;
}

const inner = (outline: Outline, name: string): { start: number; end: number } | undefined => {
  const section = outline.sections.find((s) => s.name === name);
  return section && { start: section.start, end: section.end };
};

/** Widths and hidden columns. Neighbours keep what they have; ranges are split where they must be. */
export function withColumns(
  text: string,
  part: string,
  widths: ReadonlyMap<number, number>,
  hidden: ReadonlyMap<number, boolean>,
): string {
  if (widths.size === 0 && hidden.size === 0) return text;
  const outline = outlineOf(text, part);
  const p = outline.prefix;
  const at = inner(outline, "cols");
  let columns: Column[] = [];
  if (at) {
    const xml = new Xml(text, part, { from: at.start, to: at.end, prefixes: outline.prefixes });
    while (xml.next() !== Kind.end) {
      if (xml.kind !== Kind.open || xml.name !== "col") continue;
      const tag = text.slice(xml.start, xml.end);
      const attributes = new Map(
        [...tag.matchAll(/\s([\w:]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g)].map((m) => [m[1]!, m[2] ?? m[3] ?? ""]),
      );
      const [from, to] = [Number(attributes.get("min")) - 1, Number(attributes.get("max")) - 1];
      attributes.delete("min");
      attributes.delete("max");
      columns.push({ from, to, attributes });
    }
  }
  for (const column of new Set([...widths.keys(), ...hidden.keys()])) {
    const own = columns.find((c) => column >= c.from && column <= c.to);
    const attributes = new Map(own?.attributes ?? []);
    const width = widths.get(column);
    if (width !== undefined) {
      attributes.set("width", String(Math.round(width * 1e4) / 1e4));
      attributes.set("customWidth", "1");
      attributes.delete("bestFit");
    }
    const hide = hidden.get(column);
    if (hide === true) attributes.set("hidden", "1");
    else if (hide === false) attributes.delete("hidden");
    if (!attributes.has("width")) attributes.set("width", "9.140625");
    columns = columns.flatMap((c) => {
      if (c !== own) return [c];
      return [
        ...(c.from < column ? [{ ...c, to: column - 1 }] : []),
        ...(c.to > column ? [{ ...c, from: column + 1 }] : []),
      ];
    });
    columns.push({ from: column, to: column, attributes });
  }
  columns.sort((a, b) => a.from - b.from);
  const body = columns
    .map(({ from, to, attributes }) => {
      const rest = [...attributes].map(([name, value]) => ` ${name}="${value}"`).join("");
      return `<${p}col min="${from + 1}" max="${to + 1}"${rest}/>`;
    })
    .join("");
  const put = `<${p}cols>${body}</${p}cols>`;
  const place = placeFor(outline, "cols");
  return patched(text, [at ? { ...at, text: put } : { start: place, end: place, text: put }]);
}

/** Longest list that the format holds in the rule itself (ECMA-376 leaves it open; programs take 255 characters). */
const LONGEST = 255;

/** Why a list cannot be stored. */
export function choicesFault({ words, source }: Choices): string | undefined {
  if (source !== undefined) return undefined;
  const comma = words?.find((word) => word.includes(","));
  if (comma !== undefined)
    return `A word of a drop-down list must not have a comma ("${comma}"); put the words in cells and name their range.`;
  const length = words?.join(",").length ?? 0;
  if (length > LONGEST)
    return `The words of a drop-down list have ${length} characters together; ${LONGEST} fit in the file. Put them in cells and name their range.`;
  return undefined;
}

/** The formula of a list rule. */
export function choicesFormula(choices: Choices): string {
  const fault = choicesFault(choices);
  if (fault) throw new FileError("unsupported", fault);
  if (choices.source !== undefined) return toFile(choices.source);
  return `"${(choices.words ?? []).join(",").replaceAll('"', '""')}"`;
}

/** Lists of allowed words: the cells leave the rules they had before. */
export function withChoices(text: string, part: string, all: readonly Choices[]): string {
  let now = text;
  for (const choices of all) now = withOneList(now, part, choices);
  return now;
}

function withOneList(text: string, part: string, choices: Choices): string {
  const outline = outlineOf(text, part);
  const p = outline.prefix;
  const patches: Patch[] = [];
  const rule =
    `<${p}dataValidation type="list" allowBlank="1" showInputMessage="1" showErrorMessage="1" sqref="${areasText(choices.areas)}">` +
    `<${p}formula1>${escapeText(choicesFormula(choices))}</${p}formula1></${p}dataValidation>`;
  const at = inner(outline, "dataValidations");
  if (!at) {
    const place = placeFor(outline, "dataValidations");
    patches.push({ start: place, end: place, text: `<${p}dataValidations count="1">${rule}</${p}dataValidations>` });
    return patched(text, patches);
  }
  const xml = new Xml(text, part, { from: at.start, to: at.end, prefixes: outline.prefixes });
  xml.next();
  const countAt = xml.attributeAt("count");
  let count = 1;
  xml.children((name) => {
    if (name !== "dataValidation") return;
    const { start, depth, end, empty } = xml;
    const place = xml.attributeAt("sqref");
    const old = areasAt(xml.attribute("sqref") ?? "");
    const left = old.flatMap((area) =>
      choices.areas.reduce<Area[]>((parts, hole) => parts.flatMap((a) => without(a, hole)), [area]),
    );
    while (xml.depth >= depth) xml.next();
    const same = left.length === old.length && left.every((area, i) => areaText(area) === areaText(old[i]!));
    if (left.length === 0) patches.push({ start, end: empty ? end : xml.end, text: "" });
    else {
      count++;
      if (!same && place) patches.push({ ...place, text: areasText(left) });
    }
  });
  if (countAt) patches.push({ ...countAt, text: String(count) });
  patches.push({ start: xml.start, end: xml.start, text: rule });
  return patched(text, patches);
}

/** The sheet's dimension, widened to cells that were written. */
export function dimensionPatch(
  outline: Outline,
  moved: (area: Area) => Area | undefined,
  used: Area | undefined,
): Patch | undefined {
  const section = outline.sections.find((s) => s.name === "dimension");
  if (!section) return undefined;
  const tag = outline.text.slice(section.start, section.openEnd);
  const old = /\sref\s*=\s*["']([^"']*)/.exec(tag)?.[1] ?? "";
  const area = readArea(old);
  if (!area) return undefined;
  const own = moved(area);
  const now = own && used ? union(own, used) : (own ?? used ?? { top: 0, left: 0, bottom: 0, right: 0 });
  if (areaText(now) === areaText(area)) return undefined;
  const put = tag.replace(/(\sref\s*=\s*["'])[^"']*/, `$1${areaText(now)}`);
  return { start: section.start, end: section.openEnd, text: put };
}

const union = (a: Area, b: Area): Area => ({
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
});
