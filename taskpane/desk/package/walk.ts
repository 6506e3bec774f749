/**
 * Ranges and formulas in any part follow rows that came and went and sheets that got another name: validations,
 * conditional formats, merges, links, filters, tables, charts' series, sparklines, pivot sources. Pure.
 */

import { areasAt, areaText, readArea } from "../model/address.ts";
import type { Area } from "../model/types.ts";
import { escapeAttribute, escapeText, type Patch, patched } from "./text.ts";
import { Xml } from "./xml.ts";

export interface Mover {
  /** An area of the part's own sheet. */
  readonly area: (area: Area) => Area | undefined;
  readonly row: (row: number) => number | undefined;
  /** A formula as the file spells it; `anchorBy`: rows by which the first cell of the area it is a rule for moved. */
  readonly formula: (formula: string, anchorBy?: number) => string;
}

/** Attributes that hold ranges of the part's own sheet. */
const RANGES: Readonly<Record<string, readonly string[]>> = {
  mergeCell: ["ref"],
  conditionalFormatting: ["sqref"],
  dataValidation: ["sqref"],
  hyperlink: ["ref"],
  autoFilter: ["ref"],
  sortState: ["ref"],
  sortCondition: ["ref"],
  protectedRange: ["sqref"],
  ignoredError: ["sqref"],
  cellWatch: ["r"],
  inputCells: ["r"],
  table: ["ref"],
  comment: ["ref"],
  "tc:threadedComment": ["ref"],
  location: ["ref"],
  singleXmlCell: ["r"],
};
/** Elements that go when their cells are gone. */
const GO = new Set([
  "mergeCell",
  "conditionalFormatting",
  "dataValidation",
  "hyperlink",
  "protectedRange",
  "ignoredError",
]);
for (const name of ["cellWatch", "inputCells", "comment", "tc:threadedComment", "sortCondition"]) GO.add(name);
for (const name of ["x14:conditionalFormatting", "x14:dataValidation", "x14:sparkline"]) GO.add(name);
/** Elements that must not be empty, or whose number of children is written down. */
const HOLDERS = new Set([
  "mergeCells",
  "dataValidations",
  "hyperlinks",
  "protectedRanges",
  "ignoredErrors",
  "cellWatches",
]);
for (const name of ["x14:conditionalFormattings", "x14:dataValidations", "x14:sparklines", "rowBreaks"])
  HOLDERS.add(name);
/** Elements whose text is a formula. */
const FORMULAS = new Set([
  "formula",
  "formula1",
  "formula2",
  "xm:f",
  "c:f",
  "calculatedColumnFormula",
  "totalsRowFormula",
]);
/** Elements whose text is a list of ranges. */
const LISTS = new Set(["xm:sqref"]);
/** Attributes that hold formulas. */
const FORMULA_ATTRIBUTES: Readonly<Record<string, readonly string[]>> = {
  hyperlink: ["location"],
  cfvo: ["val"],
  "xdr:sp": ["textlink"],
  "x14:formControlPr": ["fmlaLink", "fmlaRange", "fmlaTxbx"],
};

/** A list of ranges after moves; each range that did not move keeps its spelling. `undefined` when all are gone. */
function movedList(text: string, mover: Mover): string | undefined {
  const kept = text
    .trim()
    .split(/\s+/)
    .flatMap((word) => {
      const area = readArea(word);
      if (!area) return [word];
      const moved = mover.area(area);
      if (!moved) return [];
      const same = moved.top === area.top && moved.bottom === area.bottom;
      return [same ? word : areaText(moved)];
    });
  return kept.length === 0 ? undefined : kept.join(" ");
}

/** The part's text after moves; the same text when nothing in it is concerned. */
export function movedPart(text: string, part: string, mover: Mover): string {
  const patches: Patch[] = [];
  const xml = new Xml(text, part);
  const put = (at: { start: number; end: number } | undefined, old: string, now: string) => {
    if (at && now !== old) patches.push({ ...at, text: escapeAttribute(now) });
  };

  /** Rows by which the first cell of a list of ranges moves. */
  const anchorOf = (list: string): number => {
    const areas = areasAt(list);
    const [first] = areas;
    const moved = areas.map(mover.area).find((area) => area !== undefined);
    return first && moved ? moved.top - first.top : 0;
  };

  /** The element just opened. Returns whether it goes. */
  const element = (name: string, around?: number): boolean => {
    let anchorBy = around;
    if (name === "conditionalFormatting" || name === "dataValidation")
      anchorBy = anchorOf(xml.attribute("sqref") ?? "");
    else if (name === "x14:conditionalFormatting" || name === "x14:dataValidation") {
      // Here the ranges stand behind the formulas.
      const ranges = /<(\w+:)?sqref>([^<]*)<\/\1?sqref>/.exec(
        text.slice(xml.end, text.indexOf(`</${xml.prefix}${name.slice(4)}>`, xml.end)),
      );
      anchorBy = anchorOf(ranges?.[2] ?? "");
    }
    if (name === "sheetData") {
      // Cells are written elsewhere; where no comment stands between, they are passed over at once.
      const close = text.indexOf(`</${xml.prefix}sheetData`, xml.end);
      if (!xml.empty && close > 0 && !/<[!?]/.test(text.slice(xml.end, close))) xml.jump(close);
      return false;
    }
    const from = patches.length;
    const { start, end: openEnd, empty, depth } = xml;
    let gone = false;
    for (const key of RANGES[name] ?? []) {
      const value = xml.attribute(key);
      if (value === undefined) continue;
      const moved = movedList(value, mover);
      if (moved === undefined) gone = true;
      else if (name === "mergeCell" && !moved.includes(":")) gone = true;
      else put(xml.attributeAt(key), value, moved);
    }
    for (const key of FORMULA_ATTRIBUTES[name] ?? []) {
      const value = xml.attribute(key);
      if (value !== undefined && !(name === "cfvo" && xml.attribute("type") !== "formula"))
        put(xml.attributeAt(key), value, mover.formula(value, anchorBy));
    }
    if (name === "brk") {
      const id = Number(xml.attribute("id"));
      const moved = id > 0 ? mover.row(id - 1) : undefined;
      if (moved !== undefined) put(xml.attributeAt("id"), String(id), String(moved + 1));
    }
    const chart = name.startsWith("{") && name.endsWith("}f");
    if (!empty && (FORMULAS.has(name) || LISTS.has(name) || chart)) {
      const own = xml.content();
      const closeStart = xml.start;
      const moved = LISTS.has(name) ? movedList(own, mover) : mover.formula(own, anchorBy);
      if (moved === undefined) return true;
      if (moved !== own) patches.push({ start: openEnd, end: closeStart, text: escapeText(moved) });
      return false;
    }
    const count = HOLDERS.has(name) ? { at: xml.attributeAt("count"), said: xml.attribute("count") } : undefined;
    const rows = name === "rowBreaks";
    let children = 0;
    let left = 0;
    xml.children((child) => {
      // Breaks between columns are spelled the same way and stay.
      if (child === "brk" && !rows) return;
      const childStart = xml.start;
      const childOpenEnd = xml.end;
      const childEmpty = xml.empty;
      const inside = xml.depth;
      const before = patches.length;
      const goes = element(child, anchorBy);
      while (xml.depth >= inside) xml.next();
      children++;
      if (goes && child === "xm:sqref") gone = true;
      if (goes && GO.has(child)) {
        patches.length = before;
        patches.push({ start: childStart, end: childEmpty ? childOpenEnd : xml.end, text: "" });
      } else left++;
    });
    while (xml.depth >= depth) xml.next();
    if (count && left < children) {
      if (left === 0) {
        patches.length = from;
        patches.push({ start, end: xml.end, text: "" });
      } else if (count.at) patches.push({ ...count.at, text: String(left) });
    }
    return gone;
  };

  while (xml.next() !== 4) if (xml.kind === 1) element(xml.name);
  return patched(text, patches);
}
