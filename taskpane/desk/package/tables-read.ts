/** Tables of a sheet. */

import { readArea } from "../model/address.ts";
import { FileError, type TableRange } from "../model/types.ts";
import type { Parts } from "./parts.ts";
import { plainText } from "./strings.ts";

export interface TablePart extends TableRange {
  readonly part: string;
}

export function readTables(parts: Parts, sheet: string, ids: readonly string[], seen = new Set<string>()): TablePart[] {
  if (ids.length === 0) return [];
  const targets = new Map(parts.relationships(sheet).map((r) => [r.id, r.external ? undefined : r.target]));
  return ids.flatMap((id): TablePart[] => {
    const target = targets.get(id);
    if (target === undefined || !parts.has(target)) return [];
    const key = target.toLowerCase();
    if (seen.has(key))
      throw new FileError("damaged", `This file is damaged: its part "${target}" is the table of two places.`);
    seen.add(key);
    const xml = parts.xml(target).root("table");
    const area = readArea(xml.attribute("ref") ?? "");
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
