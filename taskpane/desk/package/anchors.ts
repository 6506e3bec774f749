/** Where drawings and notes hang on rows: they follow when rows come and go. Pure. */
import type { Area } from "../model/types.ts";
import { escapeAttribute, type Patch, patched } from "./text.ts";
import { Kind, Xml } from "./xml.ts";

type MoveRow = (row: number) => number | undefined;

interface Corner {
  readonly row: number;
  readonly start: number;
  readonly end: number;
}

/** A row that went: what hung on it hangs on the next one that is left. */
const settle = (row: number, move: MoveRow): number => {
  for (let at = row; at < row + 100_000; at++) {
    const moved = move(at);
    if (moved !== undefined) return moved;
  }
  return row;
};

/**
 * Anchors of a drawing part (ECMA-376 part 1, 20.5): from and to follow their rows; an object that moves but keeps its
 * size (editAs "oneCell") shifts as a whole; one that stands on the page ("absolute") stays.
 */
export function movedDrawing(text: string, part: string, move: MoveRow): string {
  const patches: Patch[] = [];
  const xml = new Xml(text, part).root("xdr:wsDr");
  const corner = (): Corner | undefined => {
    let found: Corner | undefined;
    xml.children((name) => {
      if (name !== "xdr:row") return;
      const start = xml.end;
      const row = Number(xml.content());
      if (Number.isInteger(row)) found = { row, start, end: xml.start };
    });
    return found;
  };
  xml.children((name) => {
    if (name !== "xdr:twoCellAnchor" && name !== "xdr:oneCellAnchor") return;
    const how = xml.attribute("editAs") ?? "twoCell";
    let from: Corner | undefined;
    let to: Corner | undefined;
    xml.children((inner) => {
      if (inner === "xdr:from") from = corner();
      else if (inner === "xdr:to") to = corner();
    });
    if (!from || how === "absolute") return;
    const top = settle(from.row, move);
    if (top !== from.row) patches.push({ start: from.start, end: from.end, text: String(top) });
    if (!to) return;
    const bottom = how === "oneCell" ? to.row + top - from.row : Math.max(top, settle(to.row, move));
    if (bottom !== to.row) patches.push({ start: to.start, end: to.end, text: String(bottom) });
  });
  return patched(text, patches);
}

/**
 * Shapes of notes and old controls. This part is VML, which is not always well-formed XML, so single spans are found by
 * their spelling. A note whose row went is taken out.
 */
export function movedVml(text: string, move: MoveRow): string {
  return text.replace(/<(\w+:shape)\b[^>]*>[\s\S]*?<\/\1>/g, (shape) => {
    const note = /ObjectType\s*=\s*["']Note["']/.test(shape);
    const said = /<(\w+:Row)>\s*(\d+)\s*<\/\1>/.exec(shape);
    const anchor = /<(\w+:Anchor)>([^<]*)<\/\1>/.exec(shape);
    const numbers = anchor?.[2]?.split(",").map((n) => Number(n));
    const valid = numbers?.length === 8 && numbers.every(Number.isFinite);
    const row = said ? Number(said[2]) : valid ? numbers[2]! : undefined;
    if (row === undefined) return shape;
    const moved = move(row);
    if (moved === undefined && note) return "";
    const by = (moved ?? settle(row, move)) - row;
    if (by === 0) return shape;
    let out = shape;
    if (said) out = out.replace(said[0], `<${said[1]}>${row + by}</${said[1]}>`);
    if (valid) {
      const next = numbers.map((n, i) => (i === 2 || i === 6 ? Math.max(0, n + by) : n));
      out = out.replace(anchor![0], `<${anchor![1]}>${next.join(", ")}</${anchor![1]}>`);
    }
    return out;
  });
}

/** The range a pivot table reads, by name of its sheet. */
export function movedPivotSource(
  text: string,
  part: string,
  change: (sheet: string, ref: string) => { readonly sheet: string; readonly ref: string },
): string {
  const patches: Patch[] = [];
  const xml = new Xml(text, part);
  while (xml.next() !== Kind.end) {
    if (xml.kind !== Kind.open || xml.name !== "worksheetSource") continue;
    const [sheet, ref] = [xml.attribute("sheet"), xml.attribute("ref")];
    if (sheet === undefined) continue;
    const now = change(sheet, ref ?? "");
    const [sheetAt, refAt] = [xml.attributeAt("sheet"), xml.attributeAt("ref")];
    if (sheetAt && now.sheet !== sheet) patches.push({ ...sheetAt, text: escapeAttribute(now.sheet) });
    if (refAt && now.ref !== ref) patches.push({ ...refAt, text: escapeAttribute(now.ref) });
  }
  return patched(text, patches);
}

/** Area of a pivot table on its sheet. */
export function pivotArea(xml: Xml, areaAt: (text: string) => Area | undefined): Area | undefined {
  let area: Area | undefined;
  xml.root("pivotTableDefinition").children((name) => {
    if (name === "location") area = areaAt(xml.attribute("ref") ?? "");
  });
  return area;
}
