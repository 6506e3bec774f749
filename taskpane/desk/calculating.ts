/**
 * The calculator beside the model: loaded when the workbook has a formula, told of each change, its answers put back.
 * Formulas that the planner keeps are left to it.
 */
import type { Answer, Calculator, Place } from "./calc/calculator.ts";
import type { Change, Model } from "./model/model.ts";
import type { Book, Edit } from "./model/types.ts";

export interface Calculating {
  /** Resolves when every formula has its answer (at once when there is none). */
  ready(): Promise<void>;
  /** True while the calculator is on its way, or a formula waits for it. */
  readonly busy: boolean;
  /** Edits that bring the values of formulas up to date in the file: what was worked out here since it was opened. */
  edits(): Edit[];
  /** Formulas that could not be worked out here since something they hang on changed. */
  stale(): number;
  stop(): void;
}

export function calculate(
  model: Model,
  opened: Book,
  options: {
    readonly owns?: (sheet: string, row: number, column: number) => boolean;
    readonly onBusy?: (busy: boolean) => void;
  } = {},
): Calculating {
  let calculator: Calculator | undefined;
  let loading: Promise<void> | undefined;
  let alive = true;
  let waiting: Place[] = [];
  let anew = false;
  /** Formula cells that were answered here, and where their spills stood when the file was read. */
  const answered = new Map<string, Place>();
  const key = ({ sheet, row, column }: Place) => `${sheet.toLowerCase()} ${row} ${column}`;

  const isFormula = ({ sheet, row, column }: Place): boolean =>
    model.typed(sheet, row, column)?.formula !== undefined && options.owns?.(sheet, row, column) !== true;

  function put(answers: readonly Answer[]): void {
    const bySheet = new Map<string, Answer[]>();
    for (const answer of answers) {
      if (options.owns?.(answer.sheet, answer.row, answer.column)) continue;
      answered.set(key(answer), { sheet: answer.sheet, row: answer.row, column: answer.column });
      const list = bySheet.get(answer.sheet);
      if (list) list.push(answer);
      else bySheet.set(answer.sheet, [answer]);
    }
    for (const [sheet, list] of bySheet) model.answer(sheet, list);
  }

  function load(): Promise<void> {
    loading ??= (async () => {
      options.onBusy?.(true);
      try {
        const { createCalculator } = await import("./calc/calculator.ts");
        if (!alive) return;
        const source = { sheets: () => shown(), names: opened.names, date1904: model.date1904 };
        calculator = createCalculator(
          {
            ...source,
            get names() {
              return model.names();
            },
          },
          opened.sheets,
        );
        const places = [...waiting, ...unanswered()];
        waiting = [];
        anew = false;
        put(calculator.changed(places));
      } finally {
        options.onBusy?.(false);
      }
    })();
    return loading;
  }

  /** Sheets with what the file remembers of spills laid over them: the calculator keeps these itself. */
  const shown = () => model.sheets();

  /** Formulas that no program has worked out yet. */
  function unanswered(): Place[] {
    const found: Place[] = [];
    for (const sheet of model.sheets())
      for (const [row, line] of sheet.cells)
        for (const [column, cell] of line)
          if (cell.formula !== undefined && cell.value === null) found.push({ sheet: sheet.name, row, column });
    return found;
  }

  const anyFormula = (): boolean => {
    for (const sheet of model.sheets())
      for (const [row, line] of sheet.cells)
        for (const [column, cell] of line)
          if (cell.formula !== undefined && isFormula({ sheet: sheet.name, row, column })) return true;
    return false;
  };

  function take(change: Change): void {
    if (change.by === "calculator" || change.by === "filter") return;
    if (change.structure) anew = true;
    if (calculator === undefined) {
      waiting.push(...change.cells);
      if (loading === undefined) {
        if (!change.cells.some(isFormula)) {
          // Without a formula there is nothing that could hang on these cells.
          waiting = [];
          return;
        }
        void load();
      }
      return;
    }
    const answers = anew ? calculator.rebuilt(change.cells) : calculator.changed(change.cells);
    anew = false;
    put(answers);
  }

  const stop = model.onChange(take);
  // Values of the file are shown at once; the calculator comes after them.
  if (anyFormula()) void load();

  return {
    async ready() {
      await loading;
    },
    get busy() {
      return loading !== undefined && calculator === undefined;
    },
    edits() {
      const edits: Edit[] = [];
      for (const { sheet, row, column } of answered.values()) {
        const state = model.sheet(sheet);
        const cell = state?.typed(row, column);
        if (state === undefined || cell?.formula === undefined || cell.stale) continue;
        const spill = spillOf(model, sheet, row, column);
        edits.push({
          kind: "cell",
          sheet: state.name,
          row,
          column,
          value: cell.value,
          formula: cell.formula,
          ...(spill ? { array: { area: spill, dynamic: cell.array?.dynamic ?? true } } : {}),
        });
        if (spill === undefined) continue;
        for (let r = spill.top; r <= spill.bottom; r++)
          for (let c = spill.left; c <= spill.right; c++)
            if (r !== row || c !== column)
              edits.push({
                kind: "cell",
                sheet: state.name,
                row: r,
                column: c,
                value: state.spills.get(r)?.get(c)?.value ?? null,
              });
      }
      return edits;
    },
    stale() {
      let count = 0;
      for (const sheet of model.sheets())
        for (const line of sheet.cells.values()) for (const cell of line.values()) if (cell.stale) count++;
      return count;
    },
    stop() {
      alive = false;
      stop();
    },
  };
}

/** Area that a formula's answer fills; undefined when it is its own cell alone. */
function spillOf(model: Model, sheet: string, row: number, column: number) {
  const { spills } = model.sheet(sheet)!;
  const own = (r: number, c: number) => {
    const found = spills.get(r)?.get(c);
    return found !== undefined && found.row === row && found.column === column;
  };
  let right = column;
  while (own(row, right + 1)) right++;
  let bottom = row;
  while (own(bottom + 1, column) || (right > column && own(bottom + 1, right))) bottom++;
  return right === column && bottom === row ? undefined : { top: row, left: column, bottom, right };
}
