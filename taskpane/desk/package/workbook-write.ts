/** Changes to the workbook's own part, to relationships and to content types. Pure. */
import { sheetPrefix } from "./references.ts";
import type { SheetPlan } from "./replay.ts";
import { escapeAttribute, escapeText, type Patch, patched } from "./text.ts";
import { Kind, Xml } from "./xml.ts";

export interface NewSheetEntry {
  readonly plan: SheetPlan;
  readonly relationship: string;
}

/**
 * @param formula - a defined name's formula after moves
 * @param recalculate - programs that calculate shall do so when they open the file
 */
export function changedWorkbook(
  text: string,
  part: string,
  sheets: readonly SheetPlan[],
  added: readonly NewSheetEntry[],
  formula: (formula: string) => string,
  recalculate: boolean,
): string {
  const patches: Patch[] = [];
  const xml = new Xml(text, part).root("workbook");
  const { prefix: p, prefixes } = xml;
  // Index of each sheet of the file among the sheets as they are now.
  const indexes = sheets.flatMap((sheet, i) => (sheet.entry ? [i] : []));
  const shift = (at: { start: number; end: number } | undefined, value: string | undefined) => {
    const now = indexes[Number(value)];
    if (at && now !== undefined && String(now) !== value) patches.push({ ...at, text: String(now) });
  };
  const titles = sheets
    .flatMap(({ entry, page, name }, i) =>
      entry || !page || page.headings < 1
        ? []
        : [
            `<${p}definedName name="_xlnm.Print_Titles" localSheetId="${i}">${escapeText(`${sheetPrefix(name)}$1:$${page.headings}`)}</${p}definedName>`,
          ],
    )
    .join("");
  let named = titles === "";
  let namesPlace = xml.end;
  let calc = false;
  let lastSection = xml.end;
  const sections = new Set([
    "definedNames",
    "externalReferences",
    "functionGroups",
    "sheets",
    "bookViews",
    "workbookProtection",
    "workbookPr",
  ]);
  for (const name of ["fileVersion", "fileSharing"]) sections.add(name);
  xml.children((section) => {
    const { depth, empty, end } = xml;
    if (section === "bookViews")
      xml.children(() => {
        shift(xml.attributeAt("activeTab"), xml.attribute("activeTab"));
        shift(xml.attributeAt("firstSheet"), xml.attribute("firstSheet"));
      });
    else if (section === "sheets") sheetList(xml, p, prefixes, sheets, added, patches);
    else if (section === "definedNames")
      xml.children((name) => {
        if (name !== "definedName") return;
        shift(xml.attributeAt("localSheetId"), xml.attribute("localSheetId"));
        const start = xml.end;
        const hollow = xml.empty;
        const own = xml.content();
        const now = formula(own);
        if (!hollow && now !== own) patches.push({ start, end: xml.start, text: escapeText(now) });
      });
    else if (section === "calcPr") {
      calc = true;
      const at = xml.attributeAt("fullCalcOnLoad");
      if (recalculate && xml.attribute("calcMode") !== "manual") {
        if (at) patches.push({ ...at, text: "1" });
        else {
          const place = end - (empty ? 2 : 1);
          patches.push({ start: place, end: place, text: ' fullCalcOnLoad="1"' });
        }
      }
    }
    while (xml.depth >= depth) xml.next();
    if (sections.has(section)) lastSection = empty ? end : xml.end;
    if (["sheets", "functionGroups", "externalReferences"].includes(section)) namesPlace = empty ? end : xml.end;
    if (section === "definedNames" && !empty && !named) {
      named = true;
      patches.push({ start: xml.start, end: xml.start, text: titles });
    }
  });
  if (!named)
    patches.push({ start: namesPlace, end: namesPlace, text: `<${p}definedNames>${titles}</${p}definedNames>` });
  if (recalculate && !calc)
    patches.push({ start: lastSection, end: lastSection, text: `<${p}calcPr fullCalcOnLoad="1"/>` });
  return patched(text, patches);
}

function sheetList(
  xml: Xml,
  p: string,
  prefixes: ReadonlyMap<string, string>,
  sheets: readonly SheetPlan[],
  added: readonly NewSheetEntry[],
  patches: Patch[],
): void {
  const r = [...prefixes].find(
    ([prefix, uri]) => prefix !== "" && /officeDocument(?:\/2006)?\/relationships$/.test(uri),
  )?.[0];
  let highest = 0;
  const ends = new Map<SheetPlan, number>();
  const first = xml.end;
  let index = 0;
  const own = sheets.filter((sheet) => sheet.entry);
  xml.children((name) => {
    if (name !== "sheet") return;
    const { end, empty, depth } = xml;
    highest = Math.max(highest, Number(xml.attribute("sheetId") ?? 0));
    const plan = own[index++];
    const at = xml.attributeAt("name");
    if (plan && at && plan.name !== plan.entry!.name) patches.push({ ...at, text: escapeAttribute(plan.name) });
    while (xml.depth >= depth) xml.next();
    if (plan) ends.set(plan, empty ? end : xml.end);
  });
  let place = first;
  let number = highest;
  for (const plan of sheets) {
    const end = ends.get(plan);
    if (end !== undefined) {
      place = end;
      continue;
    }
    const entry = added.find((a) => a.plan === plan);
    if (!entry) continue;
    const id =
      r === undefined
        ? `xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id`
        : `${r}:id`;
    const text = `<${p}sheet name="${escapeAttribute(plan.name)}" sheetId="${++number}" ${id}="${entry.relationship}"/>`;
    patches.push({ start: place, end: place, text });
  }
}

const REL = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
const STRICT_REL = "http://purl.oclc.org/ooxml/officeDocument/relationships/";
export const EMPTY_RELATIONSHIPS =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>';

export interface NewRelationship {
  readonly id: string;
  readonly type: string;
  readonly target: string;
}

/** Relationships with some added and those of dropped targets taken out (by their id). */
export function changedRelationships(
  text: string,
  part: string,
  add: readonly NewRelationship[],
  dropIds: ReadonlySet<string>,
): string {
  const patches: Patch[] = [];
  const xml = new Xml(text, part).root("Relationships");
  const p = xml.prefix;
  const { end: rootEnd, empty: rootEmpty } = xml;
  const strict = text.includes(STRICT_REL);
  xml.children((name) => {
    const { start, end, empty, depth } = xml;
    const id = xml.attribute("Id") ?? "";
    while (xml.depth >= depth) xml.next();
    if (name === "Relationship" && dropIds.has(id)) patches.push({ start, end: empty ? end : xml.end, text: "" });
  });
  const made = add
    .map(({ id, type, target }) => {
      const full = /^https?:/.test(type) ? type : `${strict && type !== "sheetMetadata" ? STRICT_REL : REL}${type}`;
      return `<${p}Relationship Id="${id}" Type="${full}" Target="${escapeAttribute(target)}"/>`;
    })
    .join("");
  if (made !== "") {
    if (rootEmpty) patches.push({ start: rootEnd - 2, end: rootEnd, text: `>${made}</${p}Relationships>` });
    else patches.push({ start: xml.start, end: xml.start, text: made });
  }
  return patched(text, patches);
}

/** Content types with parts added and dropped. */
export function changedTypes(
  text: string,
  add: readonly { readonly part: string; readonly type: string }[],
  drop: ReadonlySet<string>,
): string {
  const patches: Patch[] = [];
  const xml = new Xml(text, "[Content_Types].xml").root("Types");
  const p = xml.prefix;
  xml.children((name) => {
    const { start, end, empty, depth } = xml;
    const part = (xml.attribute("PartName") ?? "").replace(/^\//, "").toLowerCase();
    while (xml.depth >= depth) xml.next();
    if (name === "Override" && drop.has(part)) patches.push({ start, end: empty ? end : xml.end, text: "" });
  });
  const made = add
    .map(({ part, type }) => `<${p}Override PartName="/${escapeAttribute(part)}" ContentType="${type}"/>`)
    .join("");
  if (made !== "") patches.push({ start: xml.start, end: xml.start, text: made });
  return patched(text, patches);
}

/** A relationship id that is not used yet. */
export function freeId(used: Iterable<string>, wish: string): string {
  const taken = new Set(used);
  for (let n = 1; ; n++) if (!taken.has(`${wish}${n}`)) return `${wish}${n}`;
}

/** Ids of a text's relationships, also of those this reader passes over. */
export function idsIn(text: string): string[] {
  const ids: string[] = [];
  const xml = new Xml(text, "relationships");
  while (xml.next() !== Kind.end) if (xml.kind === Kind.open) ids.push(xml.attribute("Id") ?? "");
  return ids;
}
