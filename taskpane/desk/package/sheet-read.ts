/** One sheet's XML as what the desk shows of it. Ranges stay ranges: a rule over a whole column costs nothing. Pure. */

import { areasAt, readArea } from "../model/address.ts";
import { type Area, type Cell, type Choices, FileError, LAST_COLUMN } from "../model/types.ts";
import { LONGEST_FORMULA, readCells, type SheetContext } from "./cells-read.ts";
import { fromFile } from "./function-names.ts";
import type { Xml } from "./xml.ts";
import { isTrue } from "./xml-attributes.ts";

export interface SheetContent {
  readonly cells: Map<number, Map<number, Cell>>;
  readonly widths: Map<number, number>;
  readonly hiddenColumns: Set<number>;
  readonly hiddenRows: Set<number>;
  frozen: { rows: number; columns: number };
  readonly merges: Area[];
  readonly choices: Choices[];
  protected: boolean;
  /** Relationship ids of the sheet's tables. */
  readonly tableIds: string[];
  readonly kept: Set<string>;
}

/** Columns beyond this are not spelled out one by one: files give one width to all 16,384. */
const WIDTHS_LISTED = 1024;

export function readSheet(xml: Xml, context: SheetContext): SheetContent {
  const content: SheetContent = {
    cells: new Map(),
    widths: new Map(),
    hiddenColumns: new Set(),
    hiddenRows: new Set(),
    frozen: { rows: 0, columns: 0 },
    merges: [],
    choices: [],
    protected: false,
    tableIds: [],
    kept: new Set(),
  };
  let ranges = 0;
  const list = (areas: Area[]): Area[] => {
    ranges += areas.length;
    if (ranges > context.limits.ranges)
      throw new FileError(
        "too-large",
        `The sheet "${context.sheet}" has more than ${context.limits.ranges.toLocaleString("en")} ranges with rules or merged cells, which is more than the desk takes.`,
      );
    return areas;
  };
  xml.root("worksheet").children((name) => {
    if (name === "sheetData") readCells(xml, context, content);
    else if (name === "sheetViews")
      xml.children(() => {
        xml.children((part) => {
          if (part !== "pane" || !/^frozen/.test(xml.attribute("state") ?? "")) return;
          const at = (key: string) => Math.max(0, Math.trunc(Number(xml.attribute(key) ?? 0)) || 0);
          content.frozen = { rows: at("ySplit"), columns: at("xSplit") };
        });
      });
    else if (name === "cols") readColumns(xml, content);
    else if (name === "mergeCells")
      xml.children(() => {
        const area = readArea(xml.attribute("ref") ?? "");
        if (area) content.merges.push(...list([area]));
      });
    else if (name === "sheetProtection") content.protected ||= isTrue(xml.attribute("sheet"));
    else if (name === "dataValidations") readChoices(xml, content, list);
    else if (name === "tableParts")
      xml.children(() => {
        const id = xml.attribute("r:id");
        if (id) content.tableIds.push(id);
      });
    else if (name === "extLst") readExtensions(xml, content, list);
    else if (name === "conditionalFormatting" && isOfVerdicts(xml)) return;
    else if (KEPT[name]) content.kept.add(KEPT[name]);
  });
  xml.finish();
  return content;
}

/** What a sheet may hold that the desk keeps without showing it. */
const KEPT: Readonly<Record<string, string>> = {
  autoFilter: "a filter",
  conditionalFormatting: "colours by rule",
  hyperlinks: "links",
  scenarios: "scenarios",
  picture: "a background picture",
  oleObjects: "embedded objects",
  controls: "buttons and controls",
};

/** True for rules that colour verdicts by their word, as our own files have them: the desk shows these itself. */
function isOfVerdicts(xml: Xml): boolean {
  let [rules, ours] = [0, 0];
  xml.children((name) => {
    if (name !== "cfRule") return;
    rules++;
    const kind = xml.attribute("type");
    xml.children((inner) => {
      if (
        inner === "formula" &&
        kind === "expression" &&
        /^\$?[A-Z]+\$?\d+="(?:ok|check|stop)"$/.test(xml.content().trim())
      )
        ours++;
    });
  });
  return rules > 0 && rules === ours;
}

function readColumns(xml: Xml, content: SheetContent): void {
  let count = 0;
  xml.children(() => {
    if (++count > LAST_COLUMN + 1) throw xml.wrong("has more columns than a sheet");
    const from = Number(xml.attribute("min")) - 1;
    const to = Math.min(Number(xml.attribute("max")) - 1, WIDTHS_LISTED - 1);
    const width = Number(xml.attribute("width"));
    const hidden = isTrue(xml.attribute("hidden"));
    if (!(from >= 0)) return;
    for (let column = from; column <= to; column++) {
      if (width > 0) content.widths.set(column, width);
      if (hidden) content.hiddenColumns.add(column);
    }
  });
}

/** Words of a list as a rule spells them: "a,b" in quotes; anything else is a range, a name, a formula. */
function wordsOf(formula: string): Pick<Choices, "words" | "source"> {
  const text = formula.trim();
  if (text.length > LONGEST_FORMULA) return { source: text };
  const quoted = /^"((?:[^"]|"")*)"$/.exec(text);
  return quoted
    ? {
        words: quoted[1]!
          .replaceAll('""', '"')
          .split(",")
          .map((word) => word.trim()),
      }
    : { source: fromFile(text) };
}

function readChoices(xml: Xml, content: SheetContent, counted: (areas: Area[]) => Area[]): void {
  xml.children((name) => {
    if (name !== "dataValidation") return;
    const list = xml.attribute("type") === "list";
    const areas = counted(areasAt(xml.attribute("sqref") ?? ""));
    if (!list) content.kept.add("rules for what may be entered");
    let formula = "";
    xml.children((inner) => {
      if (inner === "formula1") formula = xml.content();
    });
    if (list && areas.length > 0 && formula !== "") content.choices.push({ areas, ...wordsOf(formula) });
  });
}

function readExtensions(xml: Xml, content: SheetContent, counted: (areas: Area[]) => Area[]): void {
  xml.children(() => {
    xml.children((name) => {
      if (name === "x14:conditionalFormattings") content.kept.add("colours by rule");
      else if (name === "x14:sparklineGroups") content.kept.add("sparklines");
      else if (name === "x14:slicerList") content.kept.add("slicers");
      else if (name === "x14:dataValidations")
        xml.children(() => {
          const list = xml.attribute("type") === "list";
          let formula = "";
          let areas: Area[] = [];
          xml.children((inner) => {
            if (inner === "xm:sqref") areas = counted(areasAt(xml.content()));
            else if (inner === "x14:formula1")
              xml.children((f) => {
                if (f === "xm:f") formula = xml.content();
              });
          });
          if (list && areas.length > 0 && formula !== "") content.choices.push({ areas, ...wordsOf(formula) });
        });
    });
  });
}
