/** A table's part after its rows and columns changed. Pure. */

import { areaText } from "../model/address.ts";
import { type Area, FileError } from "../model/types.ts";
import { MAIN } from "./namespaces.ts";
import { storedText } from "./strings.ts";
import { escapeAttribute, type Patch, patched } from "./text.ts";
import { Xml } from "./xml.ts";

export interface TableChange {
  readonly area: Area;
  /** Heading of a column as the cells have it in the end; `undefined`: not edited. */
  readonly heading: (index: number) => string | undefined;
}

const storedName = (name: string): string => escapeAttribute(storedText(name).replaceAll("\n", "_x000a_"));

/** Headings must be there and differ, or other programs call the file damaged. */
function checkNames(table: string, names: readonly string[]): void {
  const seen = new Set<string>();
  for (const name of names) {
    const key = name.toLowerCase();
    if (name === "")
      throw new FileError("unsupported", `A column of the table "${table}" has no heading; each needs one.`);
    if (seen.has(key))
      throw new FileError(
        "unsupported",
        `Two columns of the table "${table}" have the heading "${name}"; they must differ.`,
      );
    seen.add(key);
  }
}

export function changedTable(text: string, part: string, change: TableChange): string {
  const patches: Patch[] = [];
  const xml = new Xml(text, part).root("table");
  const { area } = change;
  const p = xml.prefix;
  const table = xml.attribute("displayName") ?? xml.attribute("name") ?? "";
  const totals = Number(xml.attribute("totalsRowCount") ?? 0);
  const put = (name: string, value: string) => {
    const at = xml.attributeAt(name);
    if (at && text.slice(at.start, at.end) !== value) patches.push({ ...at, text: value });
  };
  put("ref", areaText(area));
  const width = area.right - area.left + 1;
  xml.children((section) => {
    if (section === "autoFilter") put("ref", areaText({ ...area, bottom: area.bottom - totals }));
    if (section !== "tableColumns") return;
    const count = xml.attributeAt("count");
    const names: string[] = [];
    let last = 0;
    let index = 0;
    xml.children((child) => {
      if (child !== "tableColumn") return;
      const { start, end, empty, depth } = xml;
      last = Math.max(last, Number(xml.attribute("id") ?? 0));
      const at = xml.attributeAt("name");
      const before = xml.attribute("name") ?? "";
      const now = change.heading(index);
      while (xml.depth >= depth) xml.next();
      if (index < width) {
        names.push(now ?? before);
        if (at && now !== undefined && storedName(now) !== text.slice(at.start, at.end))
          patches.push({ ...at, text: storedName(now) });
      } else patches.push({ start, end: empty ? end : xml.end, text: "" });
      index++;
    });
    let added = "";
    for (; index < width; index++) {
      const name = change.heading(index) ?? "";
      names.push(name);
      added += `<${p}tableColumn id="${++last}" name="${storedName(name)}"/>`;
    }
    checkNames(table, names);
    if (count && text.slice(count.start, count.end) !== String(width)) patches.push({ ...count, text: String(width) });
    if (added !== "") patches.push({ start: xml.start, end: xml.start, text: added });
  });
  return patched(text, patches);
}

/** The part of a new table. */
export function newTable(id: number, name: string, area: Area, headings: readonly string[], totals = false): string {
  checkNames(name, headings);
  const columns = headings.map((heading, i) => `<tableColumn id="${i + 1}" name="${storedName(heading)}"/>`).join("");
  const filter = areaText({ ...area, bottom: area.bottom - (totals ? 1 : 0) });
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n` +
    `<table xmlns="${MAIN}" id="${id}" name="${storedName(name)}" displayName="${storedName(name)}" ref="${areaText(area)}"` +
    `${totals ? ' totalsRowCount="1"' : ' totalsRowShown="0"'}><autoFilter ref="${filter}"/>` +
    `<tableColumns count="${headings.length}">${columns}</tableColumns>` +
    `<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>`
  );
}

/** A name that a table may have (letters, digits, dots, underscores; not like a cell). */
export function tableNameFault(name: string): string | undefined {
  if (!/^[A-Za-z_\\\u0080-\uffff][\w.\\\u0080-\uffff]*$/.test(name) || name.length > 255)
    return `"${name}" cannot be the name of a table: it must start with a letter and hold letters, digits, dots and underscores only.`;
  if (/^[A-Za-z]{1,3}\d+$/.test(name) || /^R\d*(?:C\d*)?$|^C\d*$/i.test(name))
    return `"${name}" cannot be the name of a table: it looks like a cell.`;
  return undefined;
}
