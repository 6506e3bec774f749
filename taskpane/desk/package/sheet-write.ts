/** A sheet's text after its edits: only the spans that change are replaced. Pure. */
import { type Area, FileError, LAST_ROW, type Value } from "../model/types.ts";
import { areaAt, areaText, cellText, columnLetters, contains } from "./address.ts";
import { cellElement, valueText } from "./cell-write.ts";
import { fromFile, toFile } from "./function-names.ts";
import { concerns, concernsXml, type Move, movedFormula } from "./references.ts";
import type { NewCell, SheetPlan } from "./replay.ts";
import { movedArea, movedRow } from "./rows.ts";
import { type ArrayBlock, SheetFormulas } from "./sheet-formulas.ts";
import { type CellSpan, cellsOf, type Outline, type RowSpan } from "./sheet-outline.ts";
import type { StyleBook } from "./styles-write.ts";
import { escapeAttribute, escapeText, type Patch, patched } from "./text.ts";

export interface WriteContext {
  readonly styles: StyleBook;
  readonly moves: readonly Move[];
  /** Numbers of cell metadata that mark growing arrays. */
  readonly marks: ReadonlySet<number>;
  /** A number for a new growing array. */
  readonly dynamicMark: () => number;
  readonly known: () => ReadonlyMap<string, string>;
  /** The value that a cell of the file holds, to leave it alone when nothing changes. */
  readonly valueOf: (outline: Outline, span: RowSpan, cell: CellSpan) => Value | undefined;
  /** Told when a formula came, went or moved: the calculation chain is out of date then. */
  formulasChanged: boolean;
  /** Told when a value changed that formulas may use. */
  valuesChanged: boolean;
}

type Line = Map<number, NewCell>;

export class SheetWriter {
  readonly #outline: Outline;
  readonly #plan: SheetPlan;
  readonly #context: WriteContext;
  readonly #formulas: SheetFormulas;
  readonly #home: string;
  readonly #p: string;
  readonly #cells: Map<number, Line>;
  /** Shared formulas that have to be spelled out, by index. */
  readonly #expand = new Set<string>();
  readonly #rowsByNumber = new Map<number, RowSpan>();
  readonly #looks = new Map<number, Map<number, string>>();
  #used: Area | undefined;

  constructor(outline: Outline, plan: SheetPlan, context: WriteContext) {
    this.#outline = outline;
    this.#plan = plan;
    this.#context = context;
    this.#formulas = new SheetFormulas(outline, context.marks);
    this.#home = plan.entry?.name ?? plan.name;
    this.#p = outline.prefix;
    this.#cells = new Map([...plan.cells].map(([row, line]) => [row, new Map(line)]));
    for (const span of outline.rows) this.#rowsByNumber.set(span.row, span);
  }

  /** Area of the cells written, for the sheet's dimension. */
  get used(): Area | undefined {
    return this.#used;
  }

  #formulaMoves(text: string): string {
    return movedFormula(text, this.#home, this.#context.moves);
  }

  /** The cells section after the edits; `undefined` when nothing changes. */
  cells(): string | undefined {
    const { text, data, rows } = this.#outline;
    this.#checkArrays();
    const anyFormula = text.indexOf(`<${this.#p}f`, data.openEnd) >= 0;
    const touched = anyFormula && concernsXml(text, this.#home, this.#context.moves);
    if (touched) this.#mastersMoved();
    if (this.#cells.size > 0) this.#mastersOverwritten();

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

  /** Arrays that edits would tear apart are refused; values left over from arrays that went are taken out. */
  #checkArrays(): void {
    const { moves } = this.#plan;
    if (moves.length === 0 && this.#cells.size === 0) return;
    for (const block of this.#formulas.arrays) {
      const { area, dynamic } = block;
      const where = `the array formula in ${areaText(area)} on the sheet "${this.#plan.name}"`;
      let now: Area | undefined = area;
      for (const move of moves) {
        const before: Area | undefined = now;
        if (!before) break;
        now = movedArea(before, [move]);
        const height = (a: Area | undefined) => (a ? a.bottom - a.top : -1);
        if (!dynamic && now && height(now) !== height(before))
          throw refused(
            `Rows cannot be inserted or deleted inside of ${where}. Change or delete the whole formula first.`,
          );
      }
      const anchorRow = movedRow(block.row, moves);
      const anchor = anchorRow === undefined ? undefined : this.#cells.get(anchorRow)?.get(block.column);
      const single = area.top === area.bottom && area.left === area.right;
      if (!dynamic && !single && now) {
        for (const [row, line] of this.#cells) {
          if (row < now.top || row > now.bottom) continue;
          for (const column of line.keys()) {
            if (column < area.left || column > area.right) continue;
            if (row === anchorRow && column === block.column && this.#sameFormula(block, line.get(column)!)) continue;
            throw refused(`Cell ${cellText(row, column)} is part of ${where}, which can only be changed as a whole.`);
          }
        }
      }
      if (!dynamic || single) continue;
      const still = anchor
        ? this.#sameFormula(block, anchor)
          ? (anchor.array?.area ?? now)
          : anchor.array?.area
        : now;
      const kept = anchorRow === undefined ? undefined : still;
      this.#clearSpill(block, kept);
    }
  }

  #sameFormula(block: ArrayBlock, cell: NewCell): boolean {
    if (cell.formula === undefined) return false;
    const span = this.#rowsByNumber.get(block.row);
    const found = span && cellsOf(this.#outline, span).find((c) => c.column === block.column);
    const own = found && this.#formulas.textOf(found, block.row);
    return own !== undefined && this.#same(this.#formulaMoves(own), cell);
  }

  /** Whether a file's formula is the one of an edit. */
  #same(fileText: string, cell: NewCell): boolean {
    if (cell.formula === undefined) return false;
    return fromFile(fileText) === cell.formula || fileText === this.#stored(cell);
  }

  #stored(cell: NewCell): string {
    return toFile(cell.formula!, cell.array?.dynamic ?? false, this.#context.known());
  }

  /** Stored results of an array that its area no longer covers. */
  #clearSpill(block: ArrayBlock, kept: Area | undefined): void {
    for (let row = block.area.top; row <= block.area.bottom; row++) {
      const at = movedRow(row, this.#plan.moves);
      const span = at === undefined ? undefined : this.#rowsByNumber.get(row);
      if (at === undefined || !span) continue;
      for (const { column, formula } of cellsOf(this.#outline, span)) {
        if (formula || !contains(block.area, row, column) || (kept && contains(kept, at, column))) continue;
        const line = this.#cells.get(at) ?? new Map<number, NewCell>();
        if (!line.has(column)) line.set(column, { value: null });
        this.#cells.set(at, line);
      }
    }
  }

  /** Shared formulas that moves concern are spelled out in all their cells. */
  #mastersMoved(): void {
    for (const [index, { formula }] of this.#formulas.shared)
      if (this.#context.moves.some((move) => concerns(formula, this.#home, move))) this.#expand.add(index);
  }

  /** Shared formulas whose first cell is overwritten have to be spelled out in the others. */
  #mastersOverwritten(): void {
    const { shared } = this.#formulas;
    for (const [index, { formula, row, column }] of shared) {
      const edit = this.#cells.get(movedRow(row, this.#plan.moves) ?? -1)?.get(column);
      if (edit && !this.#same(this.#formulaMoves(formula), edit)) this.#expand.add(index);
    }
  }

  #needsExpanding(row: string): boolean {
    if (this.#expand.size === 0) return false;
    return [...this.#expand].some((index) => row.includes(`si="${index}"`) || row.includes(`si='${index}'`));
  }

  /** A row of the file; `undefined` when it stays as it is. */
  #row(span: RowSpan, row: number, edits: Line | undefined, touched: boolean): string | undefined {
    const text = this.#formulas.rowText(span);
    const hasFormulas = text.includes(`<${this.#p}f`);
    const slow = edits !== undefined || (hasFormulas && (touched || this.#needsExpanding(text)));
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
      const base = this.#baseStyle(row, column, rowStyle);
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
    if (row !== span.row && cell.address) patches.push({ ...cell.address, text: cellText(row, cell.column) });
    const now = this.#formulaElement(cell, span.row);
    if (now !== undefined) patches.push({ start: cell.formula!.start, end: cell.formula!.end, text: now });
  }

  /** The formula's element after moves, `undefined` when it stays. */
  #formulaElement(cell: CellSpan, fileRow: number, area?: Area): string | undefined {
    const { formula } = cell;
    if (!formula) return undefined;
    const { text: whole } = this.#outline;
    const own = this.#formulas.spelled(formula, fileRow, cell.column);
    if (own === undefined) return undefined;
    const moved = this.#formulaMoves(own);
    if (formula.kind === "shared") {
      const expand = this.#expand.has(formula.index ?? "") || moved !== own;
      if (!expand) return undefined;
      this.#context.formulasChanged = true;
      return `<${this.#p}f>${escapeText(moved)}</${this.#p}f>`;
    }
    let tag = whole.slice(formula.start, formula.openEnd);
    const ref = formula.ref === undefined ? undefined : areaAt(formula.ref);
    const nowArea = area ?? (ref && movedArea(ref, this.#plan.moves));
    if (ref && nowArea && areaText(nowArea) !== areaText(ref))
      tag = tag.replace(/(\sref\s*=\s*["'])[^"']*/, `$1${areaText(nowArea)}`);
    if (formula.kind === "dataTable")
      tag = tag.replace(
        /(\sr[12]\s*=\s*["'])([^"']*)/g,
        (_, head: string, at: string) => head + this.#formulaMoves(at),
      );
    const before = whole.slice(formula.start, formula.end);
    const after =
      moved === own ? tag + before.slice(formula.openEnd - formula.start) : `${tag}${escapeText(moved)}</${this.#p}f>`;
    if (after === before) return undefined;
    this.#context.formulasChanged = true;
    return after;
  }

  /** A cell of the file with an edit. */
  #edited(span: RowSpan, cell: CellSpan, row: number, edit: NewCell, patches: Patch[]): void {
    const { text } = this.#outline;
    const base = Number(cell.style ?? 0);
    const style = this.#context.styles.variant(base, edit);
    const own = this.#formulas.textOf(cell, span.row);
    const moved = own === undefined ? undefined : this.#formulaMoves(own);
    const turnsArray = edit.array !== undefined && cell.formula?.kind !== "array";
    if (moved !== undefined && edit.formula !== undefined && !turnsArray && this.#same(moved, edit)) {
      // The same formula: only its result is written.
      const element =
        this.#formulaElement(cell, span.row, edit.array?.area) ?? text.slice(cell.formula!.start, cell.formula!.end);
      const { type, content } = valueText(this.#p, edit.value, true);
      let tag = text.slice(cell.start, cell.openEnd).replace(/\s*\/>$/, ">");
      tag = setAttribute(setAttribute(tag, "t", type), "vm", "");
      if (row !== span.row && cell.address) tag = setAttribute(tag, "r", cellText(row, cell.column));
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
    const put = this.#newCell(row, cell.column, edit, base) || `<${this.#p}c r="${cellText(row, cell.column)}"/>`;
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
      const stored = escapeText(this.#stored(edit));
      if (edit.array) {
        if (edit.array.dynamic) cm = this.#context.dynamicMark();
        formula = `<${p}f t="array" ref="${areaText(edit.array.area)}">${stored}</${p}f>`;
      } else formula = `<${p}f>${stored}</${p}f>`;
    }
    const address = cellText(row, column);
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

  /** Looks of the cells of a row of the file. */
  #looksOf(row: number): Map<number, string> {
    let found = this.#looks.get(row);
    if (!found) {
      found = new Map();
      const span = this.#rowsByNumber.get(row);
      if (span)
        for (const { column, style } of cellsOf(this.#outline, span))
          if (style && style !== "0") found.set(column, style);
      this.#looks.set(row, found);
    }
    return found;
  }

  /** Look of a cell that is not in the file yet: of its row, of the table row above that it continues, of its column. */
  #baseStyle(row: number, column: number, rowStyle: string | undefined): number {
    if (rowStyle !== undefined) return Number(rowStyle);
    const table = this.#plan.tables.find((t) => t.area && contains(t.area, row, column) && t.file);
    if (table) {
      const file = table.file!.area;
      const last = file.bottom - (table.file!.totals ? 1 : 0);
      const at = movedRow(last, this.#plan.moves);
      if (at !== undefined && row > at && last > file.top) {
        const style = this.#looksOf(last).get(column);
        if (style !== undefined) return Number(style);
      }
    }
    return this.#columnStyle(column);
  }

  #columnStyles?: { from: number; to: number; style: number }[];
  #columnStyle(column: number): number {
    if (!this.#columnStyles) {
      const section = this.#outline.sections.find((s) => s.name === "cols");
      const text = section ? this.#outline.text.slice(section.openEnd, section.closeStart) : "";
      this.#columnStyles = [...text.matchAll(/<[^>]*>/g)].flatMap(([tag]) => {
        const number = (name: string) =>
          Number(new RegExp(`\\s${name}\\s*=\\s*["'](\\d+)`).exec(tag)?.[1] ?? Number.NaN);
        const [from, to, style] = [number("min") - 1, number("max") - 1, number("style")];
        return style > 0 ? [{ from, to, style }] : [];
      });
    }
    return this.#columnStyles.find(({ from, to }) => column >= from && column <= to)?.style ?? 0;
  }

  /** A row that is not in the file: its cells, with the look of another row. */
  #newRow(row: number, edits: Line, look: number | undefined): string {
    if (row > LAST_ROW) return "";
    const looks = look === undefined ? new Map<number, string>() : this.#looksOf(look);
    const span = look === undefined ? undefined : this.#rowsByNumber.get(look);
    let attributes = "";
    if (span) {
      const tag = /^<[^>]*>/.exec(this.#formulas.rowText(span))![0];
      for (const name of ["s", "customFormat", "ht", "customHeight"]) {
        const value = new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)`).exec(tag)?.[1];
        if (value !== undefined) attributes += ` ${name}="${escapeAttribute(value)}"`;
      }
    }
    const columns = [...new Set([...looks.keys(), ...edits.keys()])].sort((a, b) => a - b);
    const cells = columns.map((column) => {
      const base = Number(looks.get(column) ?? this.#baseStyle(row, column, undefined));
      const edit = edits.get(column);
      if (edit) return this.#newCell(row, column, edit, base);
      return base === 0 ? "" : `<${this.#p}c r="${columnLetters(column)}${row + 1}" s="${base}"/>`;
    });
    const inner = cells.join("");
    if (inner === "" && attributes === "") return "";
    return `<${this.#p}row r="${row + 1}"${attributes}>${inner}</${this.#p}row>`;
  }
}

const refused = (message: string): FileError => new FileError("unsupported", message);

function setAttribute(tag: string, name: string, value: string): string {
  const pattern = new RegExp(`\\s${name}\\s*=\\s*(?:"[^"]*"|'[^']*')`);
  const put = value === "" ? "" : ` ${name}="${value}"`;
  return pattern.test(tag) ? tag.replace(pattern, put) : tag.replace(/\s*>$/, `${put}>`);
}

function sameValue(a: Value, b: Value): boolean {
  if (a !== null && b !== null && typeof a === "object" && typeof b === "object") return a.error === b.error;
  return a === b;
}
