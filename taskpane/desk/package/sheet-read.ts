/** One sheet's XML as what the desk shows of it. Ranges stay ranges: a rule over a whole column costs nothing. Pure. */
import {
  type Area,
  type Cell,
  type CellError,
  type Choices,
  FileError,
  LAST_COLUMN,
  type Value,
} from "../model/types.ts";
import { areaAt, areasAt, cellAt, cellText } from "./address.ts";
import { isoSerial } from "./dates.ts";
import { fromFile } from "./function-names.ts";
import type { Limits } from "./limits.ts";
import { offsetFormula } from "./references.ts";
import { plainText, stringItem } from "./strings.ts";
import { Kind, type Xml } from "./xml.ts";

export interface SheetContext {
  readonly limits: Limits;
  readonly sheet: string;
  readonly strings: readonly string[];
  readonly styles: number;
  readonly date1904: boolean;
  /** Whether cell metadata of this number makes an array formula a growing one. */
  readonly dynamic: (cm: number) => boolean;
  /** Counts cells and throws when there are too many, or when the person cancelled. */
  readonly count: (cells: number) => void;
}

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

export const isTrue = (text: string | undefined): boolean => text === "1" || text === "true";

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
        const area = areaAt(xml.attribute("ref") ?? "");
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

/** Longest formula of the format. */
const LONGEST_FORMULA = 8192;

export interface Shared {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

/** Shared formulas by their index, and how much was spelled out of them. */
export class SharedFormulas extends Map<string, Shared> {
  spelled = 0;
}

function readCells(xml: Xml, context: SheetContext, content: SheetContent): void {
  const shared = new SharedFormulas();
  const { cells } = content;
  let row = -1;
  xml.children((name) => {
    if (name !== "row") return;
    const said = xml.attribute("r");
    const number = said === undefined ? row + 1 : Number(said) - 1;
    if (!Number.isInteger(number) || number <= row || number > 1_048_575)
      throw wrongPlace(context, `row ${said ?? number + 1} is out of order`);
    row = number;
    if (isTrue(xml.attribute("hidden"))) content.hiddenRows.add(row);
    const line = new Map<number, Cell>();
    let column = -1;
    const here = xml.depth;
    while (!(xml.next() === Kind.close && xml.depth < here)) {
      if (xml.kind === Kind.end) throw xml.wrong("ends too early");
      if (xml.kind !== Kind.open) continue;
      if (xml.name !== "c") {
        const inside = xml.depth;
        while (xml.depth >= inside) xml.next();
        continue;
      }
      const reference = xml.attribute("r");
      if (reference === undefined) column++;
      else {
        const place = cellAt(reference);
        if (!place || place.row !== row || place.column <= column)
          throw wrongPlace(context, `cell "${reference.slice(0, 20)}" stands in a wrong place`);
        column = place.column;
      }
      if (column > 16_383) throw wrongPlace(context, "a row has too many cells");
      line.set(column, readCell(xml, context, row, column, shared));
    }
    if (line.size > 0) {
      context.count(line.size);
      cells.set(row, line);
    }
  });
}

const wrongPlace = (context: SheetContext, what: string): FileError =>
  new FileError("damaged", `This file is damaged: on the sheet "${context.sheet}" ${what}.`);

/** The cell whose tag was just opened. */
export function readCell(xml: Xml, context: SheetContext, row: number, column: number, shared: SharedFormulas): Cell {
  const type = xml.attribute("t") ?? "n";
  const styleText = xml.attribute("s");
  const cm = xml.attribute("cm");
  const style = styleText === undefined ? 0 : Number(styleText);
  if (!(style >= 0 && style < context.styles && Number.isInteger(style)))
    throw wrongPlace(context, `the look of cell ${cellText(row, column)} is missing`);
  let raw: string | undefined;
  let text: string | undefined;
  let formula: string | undefined;
  let array: Cell["array"];
  const here = xml.depth;
  while (!(xml.next() === Kind.close && xml.depth < here)) {
    if (xml.kind === Kind.end) throw xml.wrong("ends too early");
    if (xml.kind !== Kind.open) continue;
    const { name } = xml;
    const inside = xml.depth;
    if (name === "v") raw = xml.content();
    else if (name === "is") text = stringItem(xml);
    else if (name === "f") {
      const kind = xml.attribute("t");
      const index = xml.attribute("si");
      const area = areaAt(xml.attribute("ref") ?? "");
      const [r1, r2] = [xml.attribute("r1"), xml.attribute("r2")];
      let own = plainText(xml.content()).replace(/^\s+|\s+$/g, "");
      if (own.length > 4 * LONGEST_FORMULA)
        throw wrongPlace(context, `the formula of cell ${cellText(row, column)} is too long`);
      if (kind === "shared" && index !== undefined) {
        const master = shared.get(index);
        if (own !== "") shared.set(index, { formula: own, row, column });
        else if (master) {
          own = offsetFormula(master.formula, row - master.row, column - master.column);
          shared.spelled += own.length;
          if (shared.spelled > context.limits.formulas)
            throw new FileError("too-large", `The sheet "${context.sheet}" has more formulas than the desk takes.`);
        }
      } else if (kind === "array" && area) {
        array = { area, dynamic: cm !== undefined && context.dynamic(Number(cm)) };
      } else if (kind === "dataTable" && area) {
        array = { area, dynamic: false };
        own = `TABLE(${[r1, r2].filter(Boolean).join(",")})`;
      }
      if (own !== "") formula = fromFile(own);
    }
    while (xml.depth >= inside) xml.next();
  }
  const value = cellValue(type, raw, text, context, row, column);
  // Built by cases so that most cells share one shape.
  if (formula === undefined) return styleText === undefined ? { value } : { value, style };
  return array ? { value, formula, array, style } : { value, formula, style };
}

function cellValue(
  type: string,
  raw: string | undefined,
  text: string | undefined,
  context: SheetContext,
  row: number,
  column: number,
): Value {
  if (type === "inlineStr") return text ?? (raw === undefined ? null : plainText(raw));
  if (raw === undefined || (raw === "" && type !== "str")) return type === "str" && raw !== undefined ? "" : null;
  const wrong = () =>
    wrongPlace(
      context,
      `cell ${cellText(row, column)} holds "${raw.slice(0, 30)}", which is not what the file says it is`,
    );
  switch (type) {
    case "n": {
      const number = Number(raw);
      if (!Number.isFinite(number) || !/^[-+.\deE\s]+$/.test(raw)) throw wrong();
      return number;
    }
    case "s": {
      const found = /^\s*\d+\s*$/.test(raw) ? context.strings[Number(raw)] : undefined;
      if (found === undefined) throw wrong();
      return found;
    }
    case "str":
      return plainText(raw);
    case "b":
      if (!/^\s*(?:[01]|true|false)\s*$/.test(raw)) throw wrong();
      return /[1t]/.test(raw);
    case "e":
      return { error: raw.trim() } satisfies CellError;
    case "d": {
      const serial = isoSerial(raw, context.date1904);
      if (serial === undefined) throw wrong();
      return serial;
    }
    default:
      throw wrong();
  }
}
