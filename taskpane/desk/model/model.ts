/**
 * The workbook while it is edited. Everything that changes it is a list of edits; each list is one step of undo and is
 * carried out whole or not at all. Rows and columns count from 0. No DOM.
 */
import type { Place } from "./address.ts";
import { choicesOf } from "./choices.ts";
import { displayText } from "./display.ts";
import { carryOut, compact, type Undo, type Workbook } from "./edits.ts";
import { Filters } from "./filters.ts";
import { type Locale, localeOf } from "./locale.ts";
import { Refused } from "./refused.ts";
import { SheetState } from "./state.ts";
import { editText, MOST_TEXT, readTyped, type Typed } from "./typed.ts";
import type { Area, Book, Cell, Edit, Style, Value } from "./types.ts";

export type Author = "person" | "pane" | "planner";

export interface Change {
  readonly by: Author | "calculator" | "undo" | "redo" | "open" | "filter";
  readonly cells: readonly Place[];
  /** Rows inserted or deleted, sheets added or renamed, tables, widths or choices changed: read and draw anew. */
  readonly structure: boolean;
  /** What was done, for undo and redo: the name that the step was given. */
  readonly label?: string;
}

export interface How {
  readonly by: Author;
  /** Name of the step, a key of the words that the person reads ("paste"). */
  readonly label?: string;
  /** Belongs to the step before it and is undone with it. */
  readonly joins?: boolean;
  /** Rows of a table stand in another order after it: filters are gone through again. */
  readonly reorders?: boolean;
}

/** An answer of the calculator for a formula's cell, and what it spills beside itself. */
export interface Answer {
  readonly row: number;
  readonly column: number;
  readonly value: Value;
  readonly stale?: boolean;
  readonly spill?: readonly (readonly Value[])[];
}

export interface ShownCell extends Cell {
  /** Set when the value is spilled: the formula's own cell. */
  readonly spill?: { readonly row: number; readonly column: number };
}

interface Step {
  readonly label: string;
  readonly reorders?: boolean;
  readonly edits: Edit[];
  readonly undo: Undo[];
}

export interface Model extends Workbook {
  readonly locale: Locale;
  readonly date1904: boolean;
  sheets(): readonly SheetState[];
  /** By name, without regard to case. */
  sheet(name: string): SheetState | undefined;
  active(): string;
  setActive(name: string): void;
  selection(): Place & { readonly area: Area };
  select(place: Place, area?: Area): void;
  onSelect(listener: () => void): () => void;
  /** What a cell shows, spilled values included. */
  cell(sheet: string, row: number, column: number): ShownCell | undefined;
  /** What stands in a cell itself. */
  typed(sheet: string, row: number, column: number): Cell | undefined;
  style(cell: Cell | undefined): Style | undefined;
  used(sheet: string): { readonly rows: number; readonly columns: number };
  /** Text of a cell under its number format. */
  shown(sheet: string, row: number, column: number): string;
  /** What the input shows for a cell; reads back as the same. */
  editable(sheet: string, row: number, column: number): string;
  /** Reads what was typed for a cell. Throws Refused when a cell cannot hold it. */
  read(text: string, sheet: string, row: number, column: number): Typed;
  /** Words that a cell may hold. */
  choices(sheet: string, row: number, column: number): readonly string[] | undefined;
  readonly filters: Filters;
  /** Carries the edits out as one step of undo. Throws Refused, and then nothing has changed. */
  apply(edits: readonly Edit[], how: How): void;
  answer(sheet: string, answers: readonly Answer[]): void;
  onChange(listener: (change: Change) => void): () => void;
  /** Label of what was undone; undefined when there was nothing. */
  undo(): string | undefined;
  redo(): string | undefined;
  canUndo(): boolean;
  canRedo(): boolean;
  /** What leads from the file as it was opened to what is here. */
  edits(): readonly Edit[];
  /**
   * The steps behind `edits()`, oldest first: the first is the opening. Each is the same array for as long as the step
   * lives, through undo and redo; one that others joined has grown.
   */
  steps(): readonly (readonly Edit[])[];
  /** Grows with each change of any kind. */
  revision(): number;
  /** True when there are steps that the last save does not have, or has and should not. */
  unsaved(): boolean;
  markSaved(): void;
}

/** So many steps can be undone; older ones stay in the file's edits. */
const MOST_STEPS = 1000;

export interface ModelOptions {
  /** BCP 47 tag: how numbers and dates are written. */
  readonly locale?: string;
  /** Why the file could not take an edit, as a sentence; asked before the edit is carried out. */
  readonly cannotStore?: (edit: Edit) => string | undefined;
}

export function createModel(book: Book, options: ModelOptions = {}): Model {
  const locale = localeOf(options.locale);
  const sheets = book.sheets.map((sheet) => new SheetState(sheet));
  const styles = [...book.styles];
  let names = book.names;
  let settings = book.settings ?? {};
  let active = sheets[book.active]?.name ?? sheets[0]?.name ?? "";
  const selections = new Map<SheetState, { row: number; column: number; area: Area }>();
  const changed = new Set<(change: Change) => void>();
  const selected = new Set<() => void>();
  /** The first step is the opening: what cannot be undone any more, and answers that came before the first edit. */
  const done: Step[] = [{ label: "open", edits: [], undo: [] }];
  let undone: Step[] = [];
  let savedAt: Step = done[0]!;
  let revision = 0;
  let touched: Place[] = [];
  let structure = false;

  const byName = (name: string) => {
    const wanted = name.toLowerCase();
    return sheets.find((one) => one.name === name) ?? sheets.find((one) => one.name.toLowerCase() === wanted);
  };
  const sheetOf = (name: string): SheetState => {
    const found = byName(name);
    if (!found) throw new Refused("sheet", { text: name });
    return found;
  };

  const workbook: Workbook = {
    sheetStates: sheets,
    sheetOf,
    styles,
    names: () => names,
    setNames: (next) => {
      names = next;
    },
    settings: () => settings,
    setSettings: (next) => {
      settings = next;
    },
    touch: (sheet, row, column) => touched.push({ sheet, row, column }),
    restructure: () => {
      structure = true;
    },
    rowsMoved: (sheet, row, count) => model.filters.moved(sheet, row, count),
    renamed: (from, to) => {
      model.filters.renamed(from, to);
      if (active.toLowerCase() === from.toLowerCase()) active = to;
    },
  };

  function tell(by: Change["by"], { label, reorders }: { label?: string; reorders?: boolean } = {}): void {
    if (reorders && [...sheets].some(({ name }) => model.filters.any(name))) {
      model.filters.again();
      structure = true;
    }
    const change: Change = { by, cells: touched, structure, label };
    touched = [];
    structure = false;
    revision += 1;
    if (change.structure) for (const sheet of sheets) sheet.changed();
    else for (const place of change.cells) byName(place.sheet)?.changed(place.row);
    if (!byName(active)) active = sheets.find((one) => one.state === "visible")?.name ?? sheets[0]?.name ?? "";
    for (const listener of [...changed]) listener(change);
  }

  /** All of the edits, or none of them. */
  function run(edits: readonly Edit[]): { kept: Edit[]; undo: Undo[] } {
    const undo: Undo[] = [];
    const kept: Edit[] = [];
    try {
      for (const edit of edits) {
        const reason = options.cannotStore?.(edit);
        if (reason) throw new Refused("file", { text: reason });
        const back = carryOut(workbook, edit);
        if (!back) continue;
        undo.push(back);
        kept.push(edit);
      }
    } catch (problem) {
      for (const back of undo.reverse()) back();
      touched = [];
      structure = false;
      throw problem;
    }
    return { kept, undo };
  }

  const model: Model = {
    ...workbook,
    locale,
    date1904: book.date1904,
    sheets: () => sheets,
    sheet: byName,
    active: () => active,
    setActive(name) {
      const found = sheetOf(name);
      if (found.name === active) return;
      active = found.name;
      for (const listener of [...selected]) listener();
    },
    selection() {
      const sheet = sheetOf(active);
      const at = selections.get(sheet) ?? { row: 0, column: 0, area: { top: 0, left: 0, bottom: 0, right: 0 } };
      return { sheet: sheet.name, ...at };
    },
    select({ sheet, row, column }, area = { top: row, left: column, bottom: row, right: column }) {
      const found = sheetOf(sheet);
      active = found.name;
      selections.set(found, { row, column, area });
      for (const listener of [...selected]) listener();
    },
    onSelect(listener) {
      selected.add(listener);
      return () => selected.delete(listener);
    },
    cell(sheet, row, column) {
      const found = byName(sheet);
      const own = found?.typed(row, column);
      if (!found || own?.formula !== undefined || (own && own.value !== null)) return own;
      const spilled = found.spills.get(row)?.get(column);
      if (!spilled) return own;
      return { value: spilled.value, style: own?.style, spill: { row: spilled.row, column: spilled.column } };
    },
    typed: (sheet, row, column) => byName(sheet)?.typed(row, column),
    style: (cell) => (cell?.style === undefined ? undefined : styles[cell.style]),
    used: (sheet) => sheetOf(sheet).used(),
    shown(sheet, row, column) {
      const cell = model.cell(sheet, row, column);
      return cell ? displayText(cell.value, model.style(cell)?.numberFormat, locale, book.date1904) : "";
    },
    editable(sheet, row, column) {
      const cell = byName(sheet)?.typed(row, column);
      return editText(cell, { locale, date1904: book.date1904, numberFormat: model.style(cell)?.numberFormat });
    },
    read(text, sheet, row, column) {
      if (text.length > MOST_TEXT) throw new Refused("long", { text: String(text.length) });
      const numberFormat = model.style(byName(sheet)?.typed(row, column))?.numberFormat;
      return readTyped(text, { locale, date1904: book.date1904, numberFormat });
    },
    choices: (sheet, row, column) => choicesOf(model, sheet, row, column),
    filters: new Filters(
      () => model,
      () => {
        structure = true;
        tell("filter");
      },
    ),
    apply(edits, how) {
      const { kept, undo } = run(edits);
      if (kept.length === 0) return;
      const last = done.at(-1)!;
      if (how.joins) {
        last.edits.push(...kept);
        last.undo.push(...undo);
      } else {
        done.push({ label: how.label ?? "edit", edits: kept, undo, ...(how.reorders ? { reorders: true } : {}) });
        undone = [];
        if (done.length > MOST_STEPS) done[0]!.edits.push(...done.splice(1, 1)[0]!.edits);
      }
      tell(how.by, how);
    },
    answer(name, answers) {
      const sheet = sheetOf(name);
      for (const { row, column, value, stale, spill } of answers) {
        const cell = sheet.typed(row, column);
        if (!cell) continue;
        if (cell.value !== value || !!cell.stale !== !!stale) {
          const { stale: _, ...rest } = cell;
          sheet.put(row, column, stale ? { ...rest, value, stale } : { ...rest, value });
          touched.push({ sheet: sheet.name, row, column });
        }
        spillOver(sheet, row, column, spill);
      }
      if (touched.length > 0) tell("calculator");
    },
    onChange(listener) {
      changed.add(listener);
      return () => changed.delete(listener);
    },
    undo() {
      if (!model.canUndo()) return undefined;
      const step = done.pop()!;
      for (const back of [...step.undo].reverse()) back();
      undone.push(step);
      tell("undo", step);
      return step.label;
    },
    redo() {
      const step = undone.pop();
      if (!step) return undefined;
      const { kept, undo } = run(step.edits);
      // The same step for "saved" when it is carried out the same.
      if (kept.length !== step.edits.length) step.edits.splice(0, step.edits.length, ...kept);
      step.undo.splice(0, step.undo.length, ...undo);
      done.push(step);
      tell("redo", step);
      return step.label;
    },
    canUndo: () => done.length > 1,
    canRedo: () => undone.length > 0,
    edits: () => compact(done.flatMap((step) => step.edits)),
    steps: () => done.map((step) => step.edits),
    revision: () => revision,
    unsaved: () => done.at(-1) !== savedAt,
    markSaved() {
      savedAt = done.at(-1)!;
    },
  };

  function spillOver(sheet: SheetState, row: number, column: number, spill: Answer["spill"]): void {
    const put = (r: number, c: number, value: Value | undefined) => {
      const before = sheet.spills.get(r)?.get(c);
      if (value === undefined ? !before : before && before.value === value && before.row === row) return;
      if (value === undefined) {
        sheet.spills.get(r)!.delete(c);
        if (sheet.spills.get(r)!.size === 0) sheet.spills.delete(r);
      } else {
        if (!sheet.spills.has(r)) sheet.spills.set(r, new Map());
        sheet.spills.get(r)!.set(c, { value, row, column });
      }
      touched.push({ sheet: sheet.name, row: r, column: c });
    };
    for (const [r, cells] of [...sheet.spills]) {
      for (const [c, one] of [...cells]) {
        if (one.row === row && one.column === column && spill?.[r - row]?.[c - column] === undefined)
          put(r, c, undefined);
      }
    }
    spill?.forEach((values, r) => {
      values.forEach((value, c) => {
        if (r !== 0 || c !== 0) put(row + r, column + c, value);
      });
    });
  }

  return model;
}
