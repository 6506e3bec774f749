/** Where a sheet's sections and rows stand in its text, so that single spans of it can be replaced. Pure. */
import { Kind, Xml } from "./xml.ts";

export interface Section {
  readonly name: string;
  readonly start: number;
  /** End of the opening tag, start of the closing one: the same when the element is one tag. */
  readonly openEnd: number;
  readonly closeStart: number;
  readonly end: number;
  readonly empty: boolean;
}

export interface RowSpan {
  /** Row from 0. */
  readonly row: number;
  readonly start: number;
  readonly end: number;
}

export interface Outline {
  readonly text: string;
  readonly part: string;
  /** Prefix with its colon that the text uses for the sheet's own elements. */
  readonly prefix: string;
  readonly prefixes: ReadonlyMap<string, string>;
  readonly root: Section;
  readonly sections: readonly Section[];
  readonly data: Section;
  readonly rows: readonly RowSpan[];
}

export function outlineOf(text: string, part: string): Outline {
  const xml = new Xml(text, part).root("worksheet");
  const { prefix, prefixes } = xml;
  const rootOpen = { start: xml.start, openEnd: xml.end };
  const sections: Section[] = [];
  let data: Section | undefined;
  let rows: RowSpan[] = [];
  xml.children((name) => {
    const { start, end: openEnd, empty, depth } = xml;
    if (name === "sheetData" && !empty) {
      const own = xml.prefix;
      const close = text.indexOf(`</${own}sheetData`, openEnd);
      const plain = close > 0 && !/<[!?]/.test(text.slice(openEnd, close));
      if (plain) {
        rows = quickRows(text, openEnd, close, own) ?? [];
        xml.jump(close);
      } else rows = slowRows(xml);
    }
    while (xml.depth >= depth) xml.next();
    const end = empty ? openEnd : xml.end;
    const closeStart = empty ? openEnd : xml.start;
    const section = { name, start, openEnd, closeStart, end, empty };
    sections.push(section);
    if (name === "sheetData") data = section;
  });
  const root = { name: "worksheet", ...rootOpen, closeStart: xml.start, end: xml.end, empty: false };
  if (!data) throw xml.wrong("has no cells section");
  return { text, part, prefix, prefixes, root, sections, data, rows };
}

const rowNumber = (tag: string, before: number): number => {
  const said = /\sr\s*=\s*["']\s*(\d+)\s*["']/.exec(tag)?.[1];
  return said === undefined ? before + 1 : Number(said) - 1;
};

/**
 * Rows without looking into them. Safe where no comment and no CDATA stands between: "<" is always a tag there. Reading
 * has checked before that tags match.
 */
function quickRows(text: string, from: number, to: number, prefix: string): RowSpan[] | undefined {
  const open = `<${prefix}row`;
  const close = `</${prefix}row`;
  const rows: RowSpan[] = [];
  let row = -1;
  let at = text.indexOf(open, from);
  while (at >= 0 && at < to) {
    let tagEnd = at + open.length;
    if (!/[\s/>]/.test(text[tagEnd]!)) {
      at = text.indexOf(open, tagEnd);
      continue;
    }
    for (let quote = ""; tagEnd < to; tagEnd++) {
      const ch = text[tagEnd]!;
      if (quote !== "") quote = ch === quote ? "" : quote;
      else if (ch === '"' || ch === "'") quote = ch;
      else if (ch === ">") break;
    }
    row = rowNumber(text.slice(at, tagEnd), row);
    let end = tagEnd + 1;
    if (text[tagEnd - 1] !== "/") end = text.indexOf(">", text.indexOf(close, tagEnd)) + 1;
    rows.push({ row, start: at, end });
    at = text.indexOf(open, end);
  }
  return rows;
}

/** The same by reading everything. The scanner stands at the section's opening tag. */
function slowRows(xml: Xml): RowSpan[] {
  const rows: RowSpan[] = [];
  let row = -1;
  xml.children((name) => {
    if (name !== "row") return;
    const { start, depth } = xml;
    row = rowNumber(xml.text.slice(start, xml.end), row);
    const openEnd = xml.end;
    const { empty } = xml;
    while (xml.depth >= depth) xml.next();
    rows.push({ row, start, end: empty ? openEnd : xml.end });
  });
  return rows;
}

/** Order of a sheet's sections (ECMA-376 part 1, 18.3.1.99). */
const ORDER = [
  "sheetPr",
  "dimension",
  "sheetViews",
  "sheetFormatPr",
  "cols",
  "sheetData",
  "sheetCalcPr",
  "sheetProtection",
  "protectedRanges",
  "scenarios",
  "autoFilter",
  "sortState",
  "dataConsolidate",
  "customSheetViews",
  "mergeCells",
  "phoneticPr",
  "conditionalFormatting",
  "dataValidations",
];

/** Where a section that is not there yet belongs: after the last of those that come before it. */
export function placeFor(outline: Outline, name: string): number {
  const before = new Set(ORDER.slice(0, ORDER.indexOf(name)));
  return outline.sections.reduce((at, section) => (before.has(section.name) ? section.end : at), outline.root.openEnd);
}

export interface FormulaSpan {
  readonly start: number;
  readonly openEnd: number;
  readonly end: number;
  readonly kind: string;
  readonly index?: string;
  readonly ref?: string;
  readonly text: string;
}

/** One cell of a row in the text. */
export interface CellSpan {
  readonly column: number;
  readonly start: number;
  readonly end: number;
  readonly openEnd: number;
  readonly address?: { readonly start: number; readonly end: number };
  readonly style?: string;
  readonly cm?: string;
  readonly formula?: FormulaSpan;
}

/** Cells of one row. */
export function cellsOf(outline: Outline, span: RowSpan, onFirst?: (xml: Xml) => void): CellSpan[] {
  const xml = new Xml(outline.text, outline.part, { from: span.start, to: span.end, prefixes: outline.prefixes });
  while (xml.next() !== Kind.open) if (xml.kind === Kind.end) return [];
  onFirst?.(xml);
  const cells: CellSpan[] = [];
  let column = -1;
  xml.children((name) => {
    if (name !== "c") return;
    const { start, end: openEnd, depth, empty } = xml;
    const address = xml.attributeAt("r");
    const said = xml.attribute("r");
    column = said === undefined ? column + 1 : columnOf(said);
    const style = xml.attribute("s");
    const cm = xml.attribute("cm");
    let formula: FormulaSpan | undefined;
    xml.children((inner) => {
      if (inner !== "f") return;
      const fStart = xml.start;
      const fOpenEnd = xml.end;
      const fEmpty = xml.empty;
      const [kind, index, ref] = [xml.attribute("t") ?? "normal", xml.attribute("si"), xml.attribute("ref")];
      const own = xml.content();
      formula = {
        start: fStart,
        openEnd: fOpenEnd,
        end: fEmpty ? fOpenEnd : xml.end,
        kind,
        text: own,
        ...(index === undefined ? {} : { index }),
        ...(ref === undefined ? {} : { ref }),
      };
    });
    while (xml.depth >= depth) xml.next();
    cells.push({
      column,
      start,
      openEnd,
      end: empty ? openEnd : xml.end,
      ...(address ? { address } : {}),
      ...(style === undefined ? {} : { style }),
      ...(cm === undefined ? {} : { cm }),
      ...(formula ? { formula } : {}),
    });
  });
  return cells;
}

function columnOf(address: string): number {
  let n = 0;
  for (let i = 0; i < address.length; i++) {
    const c = address.charCodeAt(i) & ~32;
    if (c < 65 || c > 90) break;
    n = n * 26 + c - 64;
  }
  return n - 1;
}
