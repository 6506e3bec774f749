/**
 * What this program keeps in a workbook beside its cells: document properties of the file's own making (ECMA-376 part 1,
 * 22.3, custom file properties), which spreadsheet programs show and keep. Long texts go over several, as programs cut
 * what is longer than 255 characters.
 */
import type { Draft } from "./draft.ts";
import type { Parts } from "./parts.ts";
import { escapeAttribute, escapeText, type Patch, patched } from "./text.ts";
import { Xml } from "./xml.ts";

const TYPE = "application/vnd.openxmlformats-officedocument.custom-properties+xml";
const PART = "docProps/custom.xml";
/** Key of all properties that people and programs add. */
const FORMAT = "{D5CDD505-2E9C-101B-9397-08002B2CF9AE}";
const TRANSITIONAL = "http://schemas.openxmlformats.org/officeDocument/2006/";
const STRICT = "http://purl.oclc.org/ooxml/officeDocument/";
const newText = (strict: boolean): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Properties xmlns="${strict ? `${STRICT}customProperties` : `${TRANSITIONAL}custom-properties`}"></Properties>`;
/** Properties of ours begin so; behind the name, which piece of it. */
const OURS = /^tablefeed\.([a-z]+)(?:\.(\d{1,3}))?$/;
/** Characters of one property; a piece ends with one that no program trims. */
const MOST = 240;

export type Settings = Readonly<Record<string, string>>;

interface Property {
  readonly name: string;
  readonly pid: number;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

function propertiesIn(text: string, part: string): { properties: Property[]; prefix: string; close: number } {
  const xml = new Xml(text, part).root("cp:Properties");
  const { prefix } = xml;
  const properties: Property[] = [];
  xml.children((child) => {
    if (child !== "cp:property") return;
    const { start, empty, end, depth } = xml;
    const name = xml.attribute("name") ?? "";
    const pid = Number(xml.attribute("pid") ?? 0);
    let value = "";
    if (!empty)
      xml.children((kind) => {
        value = kind === "vt:lpwstr" || kind === "vt:lpstr" || kind === "vt:bstr" ? xml.content() : "";
      });
    while (xml.depth >= depth) xml.next();
    properties.push({ name, pid, start, end: empty ? end : xml.end, text: value });
  });
  const close = text.lastIndexOf("</");
  xml.finish();
  return { properties, prefix, close };
}

const partOf = (parts: Parts): string | undefined =>
  parts.related("", "custom-properties") ?? parts.related("", "customProperties");

/** What stands in the file; a piece that is missing spoils its own name only. */
export function readSettings(parts: Parts): Settings {
  const part = partOf(parts);
  if (!part) return {};
  const pieces = new Map<string, string[]>();
  for (const { name, text } of propertiesIn(parts.text(part), part).properties) {
    const own = OURS.exec(name);
    if (!own) continue;
    const list = pieces.get(own[1]!) ?? [];
    list[Number(own[2] ?? 1) - 1] = text;
    pieces.set(own[1]!, list);
  }
  return Object.fromEntries(
    [...pieces].flatMap(([name, list]) =>
      Array.from(list).every((text) => text?.endsWith("|"))
        ? [[name, list.map((text) => text.slice(0, -1)).join("")]]
        : [],
    ),
  );
}

/** Puts values into the file, null takes one out; other properties stay as they are. */
export function writeSettings(parts: Parts, draft: Draft, changes: ReadonlyMap<string, string | null>): void {
  if (changes.size === 0) return;
  const known = partOf(parts);
  const strict = parts.text("_rels/.rels").includes(STRICT);
  const text = known ? draft.text(known) : newText(strict);
  const part = known ?? (parts.has(PART) ? draft.freePart("docProps/", "custom") : PART);
  const { properties, prefix, close } = propertiesIn(opened(text), part);
  const gone = properties.filter(({ name }) => changes.has(OURS.exec(name)?.[1] ?? ""));
  let pid = Math.max(1, ...properties.map((property) => property.pid));
  const added = [...changes].flatMap(([name, value]) =>
    piecesOf(value).map((piece, i) => {
      pid += 1;
      const full = escapeAttribute(`tablefeed.${name}${i === 0 ? "" : `.${i + 1}`}`);
      const own = `<vt:lpwstr xmlns:vt="${strict ? STRICT : TRANSITIONAL}docPropsVTypes">${escapeText(piece)}</vt:lpwstr>`;
      return `<${prefix}property fmtid="${FORMAT}" pid="${pid}" name="${full}">${own}</${prefix}property>`;
    }),
  );
  const patches: Patch[] = gone.map(({ start, end }) => ({ start, end, text: "" }));
  patches.push({ start: close, end: close, text: added.join("") });
  const next = patched(opened(text), patches);
  if (known) draft.put(known, next);
  else {
    draft.add(part, TYPE, next);
    draft.relate("", strict ? `${STRICT}relationships/customProperties` : "custom-properties", part);
  }
}

/** The text with its root as two tags, where it has no children. */
const opened = (text: string): string => text.replace(/<((?:\w+:)?Properties)((?:\s[^<>]*)?)\/>\s*$/, "<$1$2></$1>");

function piecesOf(value: string | null): string[] {
  if (value === null) return [];
  const characters = [...value];
  const pieces: string[] = [];
  for (let at = 0; at < characters.length || at === 0; at += MOST)
    pieces.push(`${characters.slice(at, at + MOST).join("")}|`);
  return pieces;
}
