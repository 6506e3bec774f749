/** The workbook's own part: its sheets, names, dates, and where the parts it needs are. */
import { FileError, type Sheet } from "../model/types.ts";
import { fromFile } from "./function-names.ts";
import { refuseOtherMain, refuseOtherPackage } from "./kinds.ts";
import type { Parts, Relationship } from "./parts.ts";
import { plainText } from "./strings.ts";
import type { Xml } from "./xml.ts";
import { isTrue } from "./xml-attributes.ts";

export interface SheetEntry {
  readonly name: string;
  readonly id: string;
  readonly state: Sheet["state"];
  /** Part name. */
  readonly part: string;
  readonly type: "worksheet" | "other";
}

export interface WorkbookInfo {
  readonly part: string;
  readonly sheets: readonly SheetEntry[];
  readonly names: readonly {
    readonly name: string;
    readonly formula: string;
    readonly local?: number;
    readonly hidden: boolean;
  }[];
  readonly active: number;
  readonly date1904: boolean;
  readonly relationships: readonly Relationship[];
}

export function readWorkbook(parts: Parts): WorkbookInfo {
  const names = new Set(parts.kept.entries.map((entry) => entry.name.toLowerCase()));
  const mimetype = parts.has("mimetype") ? parts.text("mimetype").slice(0, 100) : undefined;
  refuseOtherPackage(names, mimetype);
  const part = parts.relationships().find((r) => r.type === "officeDocument" && !r.external)?.target;
  if (part === undefined)
    throw new FileError("damaged", "This file is damaged: it does not say where its workbook is.");
  refuseOtherMain(parts.contentType(part), part);
  const relationships = parts.relationships(part);
  const byId = new Map(relationships.map((r) => [r.id, r]));
  const sheets: SheetEntry[] = [];
  const defined: { name: string; formula: string; local?: number; hidden: boolean }[] = [];
  let active = 0;
  let date1904 = false;
  const xml = parts.xml(part).root("workbook");
  xml.children((section) => {
    if (section === "workbookPr") date1904 = isTrue(xml.attribute("date1904"));
    else if (section === "bookViews") {
      let first = true;
      xml.children((name) => {
        if (name === "workbookView" && first)
          active = Math.max(0, Math.trunc(Number(xml.attribute("activeTab") ?? 0)) || 0);
        first = false;
      });
    } else if (section === "sheets")
      xml.children((name) => {
        if (name === "sheet") sheets.push(sheetEntry(xml, parts, byId));
      });
    else if (section === "definedNames")
      xml.children((name) => {
        if (name !== "definedName") return;
        const local = xml.attribute("localSheetId");
        const entry = {
          name: plainText(xml.attribute("name") ?? ""),
          hidden: isTrue(xml.attribute("hidden")),
          ...(local === undefined ? {} : { local: Number(local) }),
        };
        defined.push({ ...entry, formula: plainText(xml.content()) });
      });
  });
  xml.finish();
  const seen = new Set<string>();
  const seenParts = new Set<string>();
  for (const { name, part: own } of sheets) {
    if (seenParts.has(own.toLowerCase())) throw xml.wrong(`has two sheets in the same part "${own}"`);
    seenParts.add(own.toLowerCase());
    if (seen.has(name.toLowerCase())) throw xml.wrong(`has two sheets with the name "${name}"`);
    seen.add(name.toLowerCase());
  }
  if (!sheets.some((sheet) => sheet.type === "worksheet"))
    throw new FileError("damaged", "There is no sheet with cells in this file.");
  return { part, sheets, names: defined, active, date1904, relationships };
}

function sheetEntry(xml: Xml, parts: Parts, byId: ReadonlyMap<string, Relationship>): SheetEntry {
  const name = plainText(xml.attribute("name") ?? "");
  const id = xml.attribute("r:id") ?? "";
  const state = xml.attribute("state");
  const found = byId.get(id);
  if (name === "" || !found || found.external) throw xml.wrong(`names a sheet "${name}" that is not in the file`);
  if (!parts.has(found.target)) throw xml.wrong(`names a sheet "${name}" whose part "${found.target}" is missing`);
  return {
    name,
    id,
    state: state === "hidden" || state === "veryHidden" ? state : "visible",
    part: found.target,
    type: found.type === "worksheet" ? "worksheet" : "other",
  };
}

/** Names as a person sees them: those of the program itself and hidden ones are left out. */
export function shownNames(info: WorkbookInfo): { name: string; formula: string; sheet?: string }[] {
  return info.names.flatMap(({ name, formula, local, hidden }) => {
    if (hidden || /^_xl/i.test(name)) return [];
    const sheet = local === undefined ? undefined : info.sheets[local]?.name;
    return [{ name, formula: fromFile(formula), ...(sheet === undefined ? {} : { sheet }) }];
  });
}

/**
 * Numbers of cell metadata that mark an array formula as growing ([MS-XLSX], dynamicArrayProperties, under the type XLDAPR).
 * They count from 1.
 */
export function dynamicMarks(parts: Parts, info: Pick<WorkbookInfo, "part">): Set<number> {
  const marks = new Set<number>();
  const part = parts.related(info.part, "sheetMetadata");
  if (!part) return marks;
  const types: string[] = [];
  const dynamic: boolean[] = [];
  const cells: { type: number; value: number }[] = [];
  const xml = parts.xml(part).root("metadata");
  xml.children((section) => {
    if (section === "metadataTypes")
      xml.children(() => {
        types.push(xml.attribute("name") ?? "");
      });
    else if (section === "futureMetadata" && xml.attribute("name") === "XLDAPR")
      xml.children(() => {
        let on = false;
        xml.children(() => {
          xml.children(() => {
            xml.children((name) => {
              if (name === "xda:dynamicArrayProperties") on = isTrue(xml.attribute("fDynamic"));
            });
          });
        });
        dynamic.push(on);
      });
    else if (section === "cellMetadata")
      xml.children(() => {
        let record = { type: 0, value: 0 };
        xml.children((name) => {
          if (name === "rc") record = { type: Number(xml.attribute("t")), value: Number(xml.attribute("v")) };
        });
        cells.push(record);
      });
  });
  xml.finish();
  cells.forEach(({ type, value }, i) => {
    if (types[type - 1] === "XLDAPR" && dynamic[value]) marks.add(i + 1);
  });
  return marks;
}
