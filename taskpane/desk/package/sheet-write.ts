/** A sheet's text after its edits: only the spans that change are replaced. Pure. */

import { addressOf, areaText, columnLetters } from "../model/address.ts";
import { type Area, LAST_ROW, type Value } from "../model/types.ts";
import { cellElement, valueText } from "./cell-write.ts";
import { FormulaWriter, type Line, type WriteContext } from "./formula-write.ts";
import { concernsXml } from "./references.ts";
import type { NewCell, SheetPlan } from "./replay.ts";
import { SheetLooks } from "./sheet-looks.ts";
import { type CellSpan, cellsOf, type Outline, type RowSpan } from "./sheet-outline.ts";
import { escapeAttribute, escapeText, type Patch, patched } from "./text.ts";

export class SheetWriter {
  readonly #outline: Outline;
  readonly #plan: SheetPlan;
  readonly #context: WriteContext;
  readonly #formulas: FormulaWriter;
  readonly #home: string;
  readonly #p: string;
  readonly #cells: Map<number, Line>;
  readonly #rowsByNumber = new Map<number, RowSpan>();
  readonly #looks: SheetLooks;
  #used: Area | undefined;

  constructor(outline: Outline, plan: SheetPlan, context: WriteContext) {
    this.#outline = outline;
    this.#plan = plan;
    this.#context = context;
    this.#home = plan.entry?.name ?? plan.name;
    this.#p = outline.prefix;
    this.#cells = new Map([...plan.cells].map(([row, line]) => [row, new Map(line)]));
    for (const span of outline.rows) this.#rowsByNumber.set(span.row, span);
    this.#looks = new SheetLooks(outline, plan, this.#rowsByNumber);
    this.#formulas = new FormulaWriter(outline, plan, context, this.#cells, this.#rowsByNumber);
  }

  /** Area of the cells written, for the sheet's dimension. */
  get used(): Area | undefined {
    return this.#used;
  }

  /** The cells section after the edits; `undefined` when nothing changes. */
  cells(): string | undefined {
    const { text, data, rows } = this.#outline;
    this.#formulas.checkArrays();
    const anyFormula = text.indexOf(`<${this.#p}f`, data.openEnd) >= 0;
    const touched = anyFormula && concernsXml(text, this.#home, this.#context.moves);
    this.#formulas.findExpanded(touched);

    const out: string[] = [];
    let copied = data.openEnd;
    let changed = false;
    const replace = (upTo: number, put: string, goOn: number) => {
      out.push(text.slice(copied, upTo), put);
      copied = goOn;
      changed = true;
    };
    const newRows = [...this.#cells.keys()].sort((a, b) => a - b);
    let nextNew = 0;
    let index = 0;
    let gap = data.openEnd;
    /** New rows before a row, or all that are left of a run. */
    const flush = (before: number) => {
      for (; nextNew < newRows.length && newRows[nextNew]! < before; nextNew++) {
        const row = newRows[nextNew]!;
        const made = this.#newRow(row, this.#cells.get(row)!, undefined);
        if (made !== "") replace(gap, made, gap);
      }
    };
    for (const run of this.#plan.rows.runs) {
      if (run.from === undefined) {
        for (let row = run.row; row < run.row + run.count; row++) {
          flush(row);
          const edits = this.#cells.get(row);
          if (newRows[nextNew] === row) nextNew++;
          const made = this.#newRow(row, edits ?? new Map(), run.look);
          if (made !== "") replace(gap, made, gap);
        }
        continue;
      }
      const end = run.from + run.count;
      for (; index < rows.length && rows[index]!.row < run.from; index++) {
        replace(gap, "", rows[index]!.end);
        gap = rows[index]!.end;
      }
      for (; index < rows.length && rows[index]!.row < end; index++) {
        const span = rows[index]!;
        const row = run.row + span.row - run.from;
        flush(row);
        const edits = this.#cells.get(row);
        if (newRows[nextNew] === row) nextNew++;
        const put = this.#row(span, row, edits, touched);
        if (put !== undefined) replace(span.start, put, span.end);
        gap = span.end;
      }
      flush(run.row + run.count);
    }
    for (; index < rows.length; index++) {
      replace(gap, "", rows[index]!.end);
      gap = rows[index]!.end;
    }
    if (!changed) return undefined;
    out.push(text.slice(copied, data.closeStart));
    return out.join("");
  }

  /** A row of the file; `undefined` when it stays as it is. */
  #row(span: RowSpan, row: number, edits: Line | undefined, touched: boolean): string | undefined {
    const text = this.#formulas.sheet.rowText(span);
    const hasFormulas = text.includes(`<${this.#p}f`);
    const slow = edits !== undefined || (hasFormulas && (touched || this.#formulas.needsExpanding(text)));
    if (!slow) return row === span.row ? undefined : this.#renumbered(text, row);
    const patches: Patch[] = [];
    let spans: { start: number; end: number } | undefined;
    let rowStyle: string | undefined;
    const cells = cellsOf(this.#outline, span, (xml) => {
      const at = xml.attributeAt("r");
      if (row !== span.row) {
        if (at) patches.push({ ...at, text: String(row + 1) });
        else
          patches.push({
            start: xml.start + this.#p.length + 4,
            end: xml.start + this.#p.length + 4,
            text: ` r="${row + 1}"`,
          });
      }
      spans = xml.attributeAt("spans");
      if (xml.attribute("customFormat") === "1") rowStyle = xml.attribute("s");
      if (xml.empty) this.#openEmpty(xml.end, patches);
    });
    const left = new Map(edits ?? []);
    let insertAt = 0;
    const inserts: Patch[] = [];
    for (const cell of cells) {
      const edit = left.get(cell.column);
      left.delete(cell.column);
      if (edit) this.#edited(span, cell, row, edit, patches);
      else this.#kept(span, cell, row, patches);
    }
    const added = [...left].sort((a, b) => a[0] - b[0]);
    for (const [column, edit] of added) {
      const base = this.#looks.base(row, column, rowStyle);
      const made = this.#newCell(row, column, edit, base);
      if (made === "") continue;
      while (insertAt < cells.length && cells[insertAt]!.column < column) insertAt++;
      const at = insertAt < cells.length ? cells[insertAt]!.start : (cells.at(-1)?.end ?? this.#rowInside(span));
      inserts.push({ start: at, end: at, text: made });
      this.#use(row, column);
    }
    if (inserts.length > 0 && spans) {
      const [from, to] = this.#outline.text.slice(spans.start, spans.end).split(":").map(Number);
      const columns = added.map(([column]) => column + 1);
      const wider = [Math.min(from || 1, ...columns), Math.max(to || 1, ...columns)];
      if (wider[0] !== from || wider[1] !== to) patches.push({ ...spans, text: wider.join(":") });
    }
    const all = [...inserts, ...patches];
    if (all.length === 0) return undefined;
    const shifted = all.map((patch) => ({ ...patch, start: patch.start - span.start, end: patch.end - span.start }));
    return patched(text, shifted);
  }

  /** `<row/>` becomes `<row></row>`. */
  #openEmpty(end: number, patches: Patch[]): void {
    this.#emptyRowEnd = end - 2;
    patches.push({ start: end - 2, end, text: `>` });
    patches.push({ start: end, end, text: `</${this.#p}row>` });
  }
  #emptyRowEnd = -1;

  /** Where cells of a row without cells go. */
  #rowInside(span: RowSpan): number {
    if (this.#emptyRowEnd >= span.start && this.#emptyRowEnd < span.end) return span.end;
    const close = this.#outline.text.lastIndexOf("</", span.end);
    return close;
  }

  #renumbered(text: string, row: number): string {
    const p = this.#p;
    const number = String(row + 1);
    const cells = text.replace(
      new RegExp(`(<${p}c(?=[\\s/>])[^>]*?\\sr\\s*=\\s*["'][A-Za-z]{1,3})\\d+`, "g"),
      (_, head: string) => head + number,
    );
    const tag = /^<[^>]*>/.exec(cells)![0];
    const own = tag.replace(/(\sr\s*=\s*["'])\s*\d+/, `$1${number}`);
    const said = /\sr\s*=/.test(tag) ? own : tag.replace(`<${p}row`, `<${p}row r="${number}"`);
    return said + cells.slice(tag.length);
  }

  /** A cell without an edit in a row that is read anyway: its address and its formula follow. */
  #kept(span: RowSpan, cell: CellSpan, row: number, patches: Patch[]): void {
    if (row !== span.row && cell.address) patches.push({ ...cell.address, text: addressOf(row, cell.column) });
    const now = this.#formulas.element(cell, span.row);
    if (now !== undefined) patches.push({ start: cell.formula!.start, end: cell.formula!.end, text: now });
  }

  /** A cell of the file with an edit. */
  #edited(span: RowSpan, cell: CellSpan, row: number, edit: NewCell, patches: Patch[]): void {
    const { text } = this.#outline;
    const base = Number(cell.style ?? 0);
    const style = this.#context.styles.variant(base, edit);
    const own = this.#formulas.sheet.textOf(cell, span.row);
    const moved = own === undefined ? undefined : this.#formulas.moved(own);
    const turnsArray = edit.array !== undefined && cell.formula?.kind !== "array";
    if (moved !== undefined && edit.formula !== undefined && !turnsArray && this.#formulas.same(moved, edit)) {
      // The same formula: only its result is written.
      const element =
        this.#formulas.element(cell, span.row, edit.array?.area) ?? text.slice(cell.formula!.start, cell.formula!.end);
      const { type, content } = valueText(this.#p, edit.value, true);
      let tag = text.slice(cell.start, cell.openEnd).replace(/\s*\/>$/, ">");
      tag = setAttribute(setAttribute(tag, "t", type), "vm", "");
      if (row !== span.row && cell.address) tag = setAttribute(tag, "r", addressOf(row, cell.column));
      if (style !== base) tag = setAttribute(tag, "s", String(style));
      const put = `${tag}${element}${content}</${this.#p}c>`;
      if (put !== text.slice(cell.start, cell.end)) patches.push({ start: cell.start, end: cell.end, text: put });
      this.#use(row, cell.column);
      return;
    }
    if (moved === undefined && edit.formula === undefined && style === base) {
      const now = this.#context.valueOf(this.#outline, span, cell);
      if (now !== undefined && sameValue(now, edit.value)) {
        this.#kept(span, cell, row, patches);
        return;
      }
    }
    if (moved !== undefined) this.#context.formulasChanged = true;
    const put = this.#newCell(row, cell.column, edit, base) || `<${this.#p}c r="${addressOf(row, cell.column)}"/>`;
    patches.push({ start: cell.start, end: cell.end, text: put });
  }

  #newCell(row: number, column: number, edit: NewCell, base: number): string {
    const style = this.#context.styles.variant(base, edit);
    if (edit.value === null && edit.formula === undefined && style === 0) {
      this.#context.valuesChanged = true;
      return "";
    }
    this.#context.valuesChanged = true;
    this.#use(row, column);
    let formula: string | undefined;
    let cm: number | undefined;
    if (edit.formula !== undefined) {
      this.#context.formulasChanged = true;
      const p = this.#p;
      const stored = escapeText(this.#formulas.stored(edit));
      if (edit.array) {
        if (edit.array.dynamic) cm = this.#context.dynamicMark();
        formula = `<${p}f t="array" ref="${areaText(edit.array.area)}">${stored}</${p}f>`;
      } else formula = `<${p}f>${stored}</${p}f>`;
    }
    const address = addressOf(row, column);
    return cellElement(this.#p, {
      address,
      style,
      value: edit.value,
      ...(cm === undefined ? {} : { cm }),
      ...(formula ? { formula } : {}),
    });
  }

  #use(row: number, column: number): void {
    const u = this.#used;
    this.#used = u
      ? {
          top: Math.min(u.top, row),
          left: Math.min(u.left, column),
          bottom: Math.max(u.bottom, row),
          right: Math.max(u.right, column),
        }
      : { top: row, left: column, bottom: row, right: column };
  }

  /** A row that is not in the file: its cells, with the look of another row. */
  #newRow(row: number, edits: Line, look: number | undefined): string {
    if (row > LAST_ROW) return "";
    const looks = look === undefined ? new Map<number, string>() : this.#looks.ofRow(look);
    const span = look === undefined ? undefined : this.#rowsByNumber.get(look);
    let attributes = "";
    if (span) {
      const tag = /^<[^>]*>/.exec(this.#formulas.sheet.rowText(span))![0];
      for (const name of ["s", "customFormat", "ht", "customHeight"]) {
        const value = new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)`).exec(tag)?.[1];
        if (value !== undefined) attributes += ` ${name}="${escapeAttribute(value)}"`;
      }
    }
    const columns = [...new Set([...looks.keys(), ...edits.keys()])].sort((a, b) => a - b);
    const cells = columns.map((column) => {
      const base = Number(looks.get(column) ?? this.#looks.base(row, column, undefined));
      const edit = edits.get(column);
      if (edit) return this.#newCell(row, column, edit, base);
      return base === 0 ? "" : `<${this.#p}c r="${columnLetters(column)}${row + 1}" s="${base}"/>`;
    });
    const inner = cells.join("");
    if (inner === "" && attributes === "") return "";
    return `<${this.#p}row r="${row + 1}"${attributes}>${inner}</${this.#p}row>`;
  }
}

function setAttribute(tag: string, name: string, value: string): string {
  const pattern = new RegExp(`\\s${name}\\s*=\\s*(?:"[^"]*"|'[^']*')`);
  const put = value === "" ? "" : ` ${name}="${value}"`;
  return pattern.test(tag) ? tag.replace(pattern, put) : tag.replace(/\s*>$/, `${put}>`);
}

function sameValue(a: Value, b: Value): boolean {
  if (a !== null && b !== null && typeof a === "object" && typeof b === "object") return a.error === b.error;
  return a === b;
}
