/** Tables of a sheet. */
import type { TableRange } from "../model/types.ts";
import { areaAt } from "./address.ts";
import type { Parts } from "./parts.ts";
import { plainText } from "./strings.ts";

export interface TablePart extends TableRange {
  readonly part: string;
}

export function readTables(parts: Parts, sheet: string, ids: readonly string[]): TablePart[] {
  if (ids.length === 0) return [];
  const relationships = parts.relationships(sheet);
  return ids.flatMap((id): TablePart[] => {
    const target = relationships.find((r) => r.id === id && !r.external)?.target;
    if (target === undefined || !parts.has(target)) return [];
    const xml = parts.xml(target).root("table");
    const area = areaAt(xml.attribute("ref") ?? "");
    const name = plainText(xml.attribute("displayName") ?? xml.attribute("name") ?? "");
    const totals = Number(xml.attribute("totalsRowCount") ?? 0) > 0;
    const headings = xml.attribute("headerRowCount") !== "0";
    const columns: string[] = [];
    xml.children((section) => {
      if (section === "tableColumns")
        xml.children((child) => {
          if (child === "tableColumn") columns.push(plainText(xml.attribute("name") ?? ""));
        });
    });
    xml.finish();
    if (!area || name === "") throw xml.wrong("does not say where its table is");
    return [{ name, area, columns, totals, ...(headings ? {} : { headings: false as const }), part: target }];
  });
}
