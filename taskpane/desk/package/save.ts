/**
 * Saves a workbook: the package as it came with the edits replayed on it. Parts that no edit concerns are copied in their
 * packed form; in the others single spans of the text are replaced. No DOM.
 */
import { type Area, type Edit, FileError, type Value } from "../model/types.ts";
import { readCell, SharedFormulas } from "./cells-read.ts";
import { Draft } from "./draft.ts";
import { followers } from "./followers.ts";
import type { WriteContext } from "./formula-write.ts";
import { spellingsIn } from "./function-names.ts";
import { LIMITS } from "./limits.ts";
import { METADATA_TYPE, NEW_METADATA, withDynamicMark } from "./metadata-write.ts";
import { STRICT_MAIN } from "./namespaces.ts";
import { type KeptPackage, Parts } from "./parts.ts";
import { concernsXml, movedFormula } from "./references.ts";
import { type Plan, replay, type SheetPlan } from "./replay.ts";
import { movedArea, movedRow } from "./rows.ts";
import { writeSettings } from "./settings.ts";
import { type CellSpan, cellsOf, type Outline, outlineOf, type RowSpan } from "./sheet-outline.ts";
import { dimensionPatch, withChoices, withColumns } from "./sheet-sections.ts";
import { SheetWriter } from "./sheet-write.ts";
import { NEW_STYLES, newSheetText } from "./skeleton.ts";
import { readStrings } from "./strings.ts";
import { StyleBook } from "./styles-write.ts";
import { changedTable, newTable, tableNameFault } from "./table-write.ts";
import { readTables } from "./tables-read.ts";
import { patched } from "./text.ts";
import { type Mover, movedPart } from "./walk.ts";
import { dynamicMarks, readWorkbook, type WorkbookInfo } from "./workbook-read.ts";
import { changedWorkbook, type NewSheetEntry } from "./workbook-write.ts";
import { Xml } from "./xml.ts";

const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
const TABLE_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml";
const STYLES_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

/**
 * The file with the edits on it.
 *
 * @param edits - in the order they were made, each with the names and places of its moment
 * @throws FileError when an edit cannot be stored; see refusal() to know before
 */
export function savePackage(kept: KeptPackage, edits: readonly Edit[]): Uint8Array {
  return edits.length === 0 ? kept.bytes : new Saving(kept, edits).result();
}

class Saving {
  readonly #parts: Parts;
  readonly #info: WorkbookInfo;
  readonly #plan: Plan;
  readonly #draft: Draft;
  readonly #context: WriteContext;
  #styles?: StyleBook;
  #strings?: readonly string[];
  #known?: Map<string, string>;
  #mark?: number;

  constructor(kept: KeptPackage, edits: readonly Edit[]) {
    this.#parts = new Parts(kept);
    this.#draft = new Draft(this.#parts);
    this.#info = readWorkbook(this.#parts);
    this.#plan = replay(edits, this.#info.sheets, (entry) => {
      const ids = this.#parts.relationships(entry.part).filter((r) => r.type === "table");
      return readTables(
        this.#parts,
        entry.part,
        ids.map((r) => r.id),
      );
    });
    const saving = this;
    const marks = dynamicMarks(this.#parts, this.#info);
    this.#context = {
      get styles() {
        return saving.#styleBook();
      },
      moves: this.#plan.moves,
      marks,
      dynamicMark: () => {
        this.#mark ??= [...marks][0] ?? this.#newMark();
        return this.#mark;
      },
      known: () => this.#spellings(),
      valueOf: (outline, span, cell) => this.#valueOf(outline, span, cell),
      formulasChanged: false,
      valuesChanged: false,
    };
  }

  result(): Uint8Array {
    const { sheets, moves } = this.#plan;
    const added: NewSheetEntry[] = [];
    this.#checkTableNames();
    for (const plan of sheets) {
      if (!plan.entry) added.push(this.#addSheet(plan));
      else if (plan.entry.type === "worksheet") this.#changeSheet(plan);
    }
    if (moves.length > 0) this.#moveOthers();
    if (this.#styles?.changed) this.#draft.put(this.#stylesPart(), this.#styles.result());
    this.#dropCalculationChain();
    const recalculate =
      (this.#context.valuesChanged || this.#context.formulasChanged || this.#rowsMoved) && this.#hasFormulas();
    const text = this.#draft.text(this.#info.part);
    const formula = (own: string) => movedFormula(own, "", moves);
    this.#draft.put(this.#info.part, changedWorkbook(text, this.#info.part, sheets, added, formula, recalculate));
    writeSettings(this.#parts, this.#draft, this.#plan.settings);
    return this.#draft.written();
  }

  get #folder(): string {
    return this.#info.part.slice(0, this.#info.part.lastIndexOf("/") + 1);
  }

  #stylesPart(): string {
    return this.#parts.related(this.#info.part, "styles") ?? `${this.#folder}styles.xml`;
  }

  #styleBook(): StyleBook {
    if (!this.#styles) {
      const part = this.#parts.related(this.#info.part, "styles");
      if (part) this.#styles = new StyleBook(this.#parts.text(part), part);
      else {
        const name = this.#stylesPart();
        this.#draft.relate(this.#info.part, "styles", name);
        this.#draft.add(name, STYLES_TYPE, NEW_STYLES);
        this.#styles = new StyleBook(NEW_STYLES, name);
      }
    }
    return this.#styles;
  }

  #newMark(): number {
    const part = this.#parts.related(this.#info.part, "sheetMetadata");
    if (part) {
      const { text, mark } = withDynamicMark(this.#draft.text(part), part);
      this.#draft.put(part, text);
      return mark;
    }
    const name = `${this.#folder}metadata.xml`;
    this.#draft.relate(this.#info.part, "sheetMetadata", name);
    this.#draft.add(name, METADATA_TYPE, NEW_METADATA);
    return 1;
  }

  #spellings(): ReadonlyMap<string, string> {
    if (!this.#known) {
      this.#known = new Map();
      for (const { part, type } of this.#info.sheets)
        if (type === "worksheet") spellingsIn(this.#parts.text(part), this.#known);
    }
    return this.#known;
  }

  get #rowsMoved(): boolean {
    return this.#plan.sheets.some((sheet) => sheet.moves.length > 0);
  }

  #hasFormulas(): boolean {
    if (this.#context.formulasChanged) return true;
    return this.#info.sheets.some(
      ({ part, type }) => type === "worksheet" && /<(?:\w+:)?f[\s>/]/.test(this.#draft.text(part)),
    );
  }

  #valueOf(outline: Outline, span: RowSpan, cell: CellSpan): Value | undefined {
    const tag = outline.text.slice(cell.start, cell.openEnd);
    // The usual cell: a number.
    const plain = /\st\s*=/.test(tag)
      ? null
      : /^<[^>]*>\s*<(?:\w+:)?v>([-+.\deE]+)</.exec(outline.text.slice(cell.start, cell.end));
    if (plain) return Number(plain[1]);
    if (/\st\s*=\s*["']s["']/.test(tag) && !this.#strings) {
      const part = this.#parts.related(this.#info.part, "sharedStrings");
      this.#strings = part ? readStrings(this.#parts.xml(part)) : [];
    }
    const xml = new Xml(outline.text, outline.part, { from: cell.start, to: cell.end, prefixes: outline.prefixes });
    xml.next();
    const context = {
      limits: LIMITS,
      sheet: outline.part,
      strings: this.#strings ?? [],
      styles: Number.POSITIVE_INFINITY,
      date1904: this.#info.date1904,
      dynamic: () => false,
      count: () => {},
    };
    return readCell(xml, context, span.row, cell.column, new SharedFormulas()).value;
  }

  #mover(plan: SheetPlan | undefined): Mover {
    const own = plan?.moves ?? [];
    const home = plan?.entry?.name ?? "";
    return {
      area: (area) => movedArea(area, own),
      row: (row) => movedRow(row, own),
      formula: (formula, anchorBy) => movedFormula(formula, home, this.#plan.moves, anchorBy),
    };
  }

  #changeSheet(plan: SheetPlan): void {
    const { part } = plan.entry!;
    const { moves } = this.#plan;
    const tables = plan.tables.filter((t) => t.file);
    const quiet =
      plan.cells.size === 0 &&
      plan.moves.length === 0 &&
      plan.widths.size === 0 &&
      plan.hidden.size === 0 &&
      plan.choices.length === 0;
    const original = this.#parts.text(part);
    const concerned = moves.length > 0 && concernsXml(original, plan.entry!.name, moves);
    let outline: Outline | undefined;
    if (!quiet || concerned) {
      outline = outlineOf(original, part);
      this.#headingsAsText(plan);
      this.#draft.put(part, this.#sheetText(outline, plan, concerned));
    }
    for (const table of tables) {
      const file = table.file!;
      let text = this.#draft.text(file.part);
      if (moves.length > 0) text = movedPart(text, file.part, this.#mover(plan));
      if (!table.area) throw new FileError("unsupported", `The table "${table.name}" cannot be deleted with its rows.`);
      const area = table.area;
      const asMoved = movedArea(file.area, plan.moves);
      const resized = !asMoved || asMoved.bottom !== area.bottom || asMoved.right !== area.right;
      const headed = file.headings !== false && plan.cells.has(area.top);
      if (resized || headed) {
        const wide = area.right - area.left + 1 > file.columns.length;
        outline ??= wide ? outlineOf(original, part) : undefined;
        text = changedTable(text, file.part, {
          area,
          heading: (index) => this.#heading(plan, area, index, file, outline),
        });
      }
      this.#draft.put(file.part, text);
    }
  }

  #heading(
    plan: SheetPlan,
    area: Area,
    index: number,
    file: { headings?: false; columns: readonly string[] },
    outline?: Outline,
  ): string | undefined {
    if (file.headings === false) return index < file.columns.length ? undefined : `Column${index + 1}`;
    const edit = plan.cells.get(area.top)?.get(area.left + index);
    if (edit) return typeof edit.value === "object" ? "" : String(edit.value);
    if (index < file.columns.length || !outline) return undefined;
    const span = outline.rows.find((row) => movedRow(row.row, plan.moves) === area.top);
    const cell = span && cellsOf(outline, span).find((c) => c.column === area.left + index);
    const value = span && cell ? this.#valueOf(outline, span, cell) : undefined;
    return value === undefined || value === null || typeof value === "object" ? undefined : String(value);
  }

  /** Headings of a table are texts in its cells, whatever was typed. */
  #headingsAsText(plan: SheetPlan): void {
    for (const { area, file } of plan.tables) {
      if (!area || file?.headings === false) continue;
      const line = plan.cells.get(area.top);
      for (const [column, cell] of line ?? [])
        if (
          column >= area.left &&
          column <= area.right &&
          (typeof cell.value === "number" || typeof cell.value === "boolean")
        )
          line!.set(column, { ...cell, value: String(cell.value) });
    }
  }

  #sheetText(outline: Outline, plan: SheetPlan, concerned: boolean): string {
    const { text: original, part, data, prefix: p } = outline;
    const writer = new SheetWriter(outline, plan, this.#context);
    const cells = writer.cells();
    const patches = [];
    if (cells !== undefined && data.empty)
      patches.push({ start: data.start, end: data.end, text: `<${p}sheetData>${cells}</${p}sheetData>` });
    else if (cells !== undefined) patches.push({ start: data.openEnd, end: data.closeStart, text: cells });
    const dimension = dimensionPatch(outline, (area) => movedArea(area, plan.moves), writer.used);
    if (dimension) patches.push(dimension);
    let text = patched(original, patches);
    if (concerned) text = movedPart(text, part, this.#mover(plan));
    text = withColumns(text, part, plan.widths, plan.hidden);
    return withChoices(text, part, plan.choices);
  }

  #addSheet(plan: SheetPlan): NewSheetEntry {
    const part = this.#draft.freePart(`${this.#folder}worksheets/`, "sheet");
    const strict = this.#parts.text(this.#info.part).includes(STRICT_MAIN);
    const table = plan.tables.find((t) => t.area);
    // Held first, so that the table's relationship finds its part.
    this.#draft.add(part, SHEET_TYPE, "");
    this.#headingsAsText(plan);
    let tableId: string | undefined;
    if (table?.area) {
      const { area, name } = table;
      const headings: string[] = [];
      for (let column = area.left; column <= area.right; column++) {
        const value = plan.cells.get(area.top)?.get(column)?.value;
        headings.push(value === undefined || value === null || typeof value === "object" ? "" : String(value));
      }
      const tablePart = this.#draft.freePart(`${this.#folder}tables/`, "table");
      this.#draft.add(tablePart, TABLE_TYPE, newTable(this.#nextTableId(), name, area, headings));
      tableId = this.#draft.relate(part, "table", tablePart);
    }
    const skeleton = newSheetText({
      strict,
      ...(plan.frozen ? { frozen: plan.frozen } : {}),
      ...(plan.page ? { page: true } : {}),
      ...(tableId ? { tableIds: [tableId] } : {}),
    });
    this.#draft.put(part, this.#sheetText(outlineOf(skeleton, part), plan, false));
    return { plan, relationship: this.#draft.relate(this.#info.part, "worksheet", part) };
  }

  #tableIds?: number;
  #nextTableId(): number {
    this.#tableIds ??= Math.max(
      0,
      ...this.#plan.sheets.flatMap((s) =>
        s.tables.flatMap((t) =>
          t.file ? [Number(/<[^?][^>]*?\sid\s*=\s*["'](\d+)/.exec(this.#parts.text(t.file.part))?.[1] ?? 0)] : [],
        ),
      ),
    );
    return ++this.#tableIds;
  }

  #checkTableNames(): void {
    const seen = new Set(this.#info.names.map((n) => n.name.toLowerCase()));
    for (const sheet of this.#plan.sheets)
      for (const { name, file } of sheet.tables) {
        const fault = file ? undefined : tableNameFault(name);
        if (fault) throw new FileError("unsupported", fault);
        if (!file && seen.has(name.toLowerCase()))
          throw new FileError("unsupported", `There is a table or name "${name}" already.`);
        seen.add(name.toLowerCase());
      }
  }

  /** Notes, drawings, charts, pivot tables: what hangs on rows in other parts. */
  #moveOthers(): void {
    for (const { part, change } of followers(this.#parts, this.#info, this.#plan, (plan) => this.#mover(plan))) {
      const before = this.#draft.text(part);
      this.#draft.put(part, change(before));
    }
  }

  /** Programs build the calculation chain anew; one that names cells without formulas would make the file damaged. */
  #dropCalculationChain(): void {
    if (!this.#context.formulasChanged && !this.#rowsMoved) return;
    for (const { id, type, target } of this.#info.relationships) {
      if (type !== "calcChain") continue;
      this.#draft.drop(this.#info.part, id, target);
    }
  }
}
