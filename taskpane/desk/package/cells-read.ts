/** The cells of a sheet's XML. Most are written in one way and are read in one look; the others by the general reader. Pure. */

import { addressOf, cellAt, readArea } from "../model/address.ts";
import { type Cell, type CellError, FileError, type Value } from "../model/types.ts";
import { isoSerial } from "./dates.ts";
import { fromFile } from "./function-names.ts";
import type { Limits } from "./limits.ts";
import { isSpreadsheet } from "./namespaces.ts";
import { offsetFormula } from "./references.ts";
import { plainText, stringItem } from "./strings.ts";
import { Kind, type Xml } from "./xml.ts";
import { isTrue } from "./xml-attributes.ts";

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

/** Longest formula of the format. */
export const LONGEST_FORMULA = 8192;

export interface Shared {
  readonly formula: string;
  readonly row: number;
  readonly column: number;
}

/** Shared formulas by their index, and how much was spelled out of them. */
export class SharedFormulas extends Map<string, Shared> {
  spelled = 0;
}

/** Where the cells of a sheet and its hidden rows are put. */
interface Content {
  readonly cells: Map<number, Map<number, Cell>>;
  readonly hiddenRows: Set<number>;
}

export function readCells(xml: Xml, context: SheetContext, content: Content): void {
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
    const move = (reference: string | undefined) => {
      if (reference === undefined) column++;
      else {
        const place = cellAt(reference);
        if (!place || place.row !== row || place.column <= column)
          throw wrongPlace(context, `cell "${reference.slice(0, 20)}" stands in a wrong place`);
        column = place.column;
      }
      if (column > 16_383) throw wrongPlace(context, "a row has too many cells");
    };
    const plain = !xml.empty && xml.prefix === "" && isSpreadsheet(xml.prefixes.get(""));
    for (;;) {
      for (let found = plain && xml.take(USUAL); found; found = xml.take(USUAL)) {
        move(found[1]);
        line.set(column, usualCell(found, xml, context, row, column));
      }
      if (xml.next() === Kind.close && xml.depth < here) break;
      if (xml.kind === Kind.end) throw xml.wrong("ends too early");
      if (xml.kind !== Kind.open) continue;
      if (xml.name !== "c") {
        const inside = xml.depth;
        while (xml.depth >= inside) xml.next();
        continue;
      }
      move(xml.attribute("r"));
      line.set(column, readCell(xml, context, row, column, shared));
    }
    if (line.size > 0) {
      context.count(line.size);
      cells.set(row, line);
    }
  });
}

/**
 * A cell as programs write nearly all of them: place, look, kind; a formula of its own; a value, or a text without runs.
 * It is found in one look, and read as the general reader would read it.
 */
const USUAL =
  /<c r="([A-Z]{1,3}[0-9]{1,7})"(?: s="([0-9]{1,9})")?(?: t="([a-zA-Z]{1,9})")?(?:\/>|>(?:<f>([^<]*)<\/f>)?(?:<v>([^<]*)<\/v>|<is><t(?: xml:space="preserve")?>([^<]*)<\/t><\/is>)?<\/c>)/y;

function usualCell(found: RegExpExecArray, xml: Xml, context: SheetContext, row: number, column: number): Cell {
  const [, , look, kind = "n", formula, raw, text] = found;
  xml.spend(1 + (formula === undefined ? 0 : 1) + (raw === undefined ? 0 : 1) + (text === undefined ? 0 : 2));
  const own = formula === undefined ? undefined : formulaText(xml.resolved(formula), context, row, column);
  return cellOf(
    look,
    cellValue(
      kind,
      raw === undefined ? undefined : xml.resolved(raw),
      text === undefined ? undefined : plainText(xml.resolved(text)),
      context,
      row,
      column,
    ),
    own === undefined || own === "" ? undefined : fromFile(own),
    undefined,
    context,
    row,
    column,
  );
}

/** A formula as the file spells it, without the blanks around it. */
function formulaText(content: string, context: SheetContext, row: number, column: number): string {
  const own = plainText(content).replace(/^\s+|\s+$/g, "");
  if (own.length > 4 * LONGEST_FORMULA)
    throw wrongPlace(context, `the formula of cell ${addressOf(row, column)} is too long`);
  return own;
}

/** A cell from its parts. Built by cases so that most cells share one shape. */
function cellOf(
  look: string | undefined,
  value: Value,
  formula: string | undefined,
  array: Cell["array"],
  context: SheetContext,
  row: number,
  column: number,
): Cell {
  const style = look === undefined ? 0 : Number(look);
  if (!(style >= 0 && style < context.styles && Number.isInteger(style)))
    throw wrongPlace(context, `the look of cell ${addressOf(row, column)} is missing`);
  if (formula === undefined) return look === undefined ? { value } : { value, style };
  return array ? { value, formula, array, style } : { value, formula, style };
}

const wrongPlace = (context: SheetContext, what: string): FileError =>
  new FileError("damaged", `This file is damaged: on the sheet "${context.sheet}" ${what}.`);

/** The cell whose tag was just opened. */
export function readCell(xml: Xml, context: SheetContext, row: number, column: number, shared: SharedFormulas): Cell {
  const type = xml.attribute("t") ?? "n";
  const look = xml.attribute("s");
  const cm = xml.attribute("cm");
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
      const area = readArea(xml.attribute("ref") ?? "");
      const [r1, r2] = [xml.attribute("r1"), xml.attribute("r2")];
      let own = formulaText(xml.content(), context, row, column);
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
  return cellOf(look, cellValue(type, raw, text, context, row, column), formula, array, context, row, column);
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
      `cell ${addressOf(row, column)} holds "${raw.slice(0, 30)}", which is not what the file says it is`,
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
