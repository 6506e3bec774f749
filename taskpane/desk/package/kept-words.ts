/** What a file holds that the desk keeps but cannot show, in words. */
import type { Parts } from "./parts.ts";
import { Kind } from "./xml.ts";

const several = (count: number, one: string, many: string): string[] =>
  count === 0 ? [] : [count === 1 ? one : `${count} ${many}`];

/** Of a sheet, by the parts that hang on it. */
export function keptOfSheet(parts: Parts, sheet: string): string[] {
  const count = { charts: 0, pictures: 0, shapes: 0, pivots: 0, notes: 0, threads: 0, queries: 0, slicers: 0 };
  for (const { type, target, external } of parts.relationships(sheet)) {
    if (external || !parts.has(target)) continue;
    if (type === "drawing") {
      const xml = parts.xml(target).root("xdr:wsDr");
      while (xml.next() !== Kind.end) {
        if (xml.kind !== Kind.open) continue;
        if (xml.name === "c:chart" || /\}chart$/.test(xml.name)) count.charts++;
        else if (xml.name === "xdr:pic") count.pictures++;
        else if (xml.name === "xdr:sp") count.shapes++;
      }
    } else if (type === "comments") count.notes++;
    else if (type === "threadedComment") count.threads++;
    else if (type === "pivotTable") count.pivots++;
    else if (type === "queryTable") count.queries++;
    else if (type === "slicer") count.slicers++;
  }
  return [
    ...several(count.charts, "a chart", "charts"),
    ...several(count.pictures, "a picture", "pictures"),
    ...several(count.shapes, "a shape", "shapes"),
    ...several(count.pivots, "a pivot table", "pivot tables"),
    ...(count.threads > 0 ? ["comments"] : count.notes > 0 ? ["notes"] : []),
    ...(count.queries > 0 ? ["a query"] : []),
    ...(count.slicers > 0 ? ["slicers"] : []),
  ];
}

/** Of the whole workbook, by the kinds of its relationships. */
const BOOK: Readonly<Record<string, string>> = {
  vbaProject: "macros",
  externalLink: "links to other workbooks",
  connections: "data connections",
  customXml: "data of other programs",
  pivotCacheDefinition: "data of pivot tables",
  attachedToolbars: "toolbars",
  xmlMaps: "XML maps",
};

export function keptOfBook(parts: Parts, workbook: string, others: readonly string[]): string[] {
  const words = new Set<string>(others.map((name) => `the sheet "${name}", which has no cells`));
  for (const { type } of parts.relationships(workbook)) if (BOOK[type]) words.add(BOOK[type]);
  if (parts.relationships().some((r) => r.type === "origin"))
    words.add("a digital signature, which a change makes invalid");
  return [...words];
}
