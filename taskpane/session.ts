/**
 * What the pane knows and does, without a page: reads through the host, plans, writes through the host, and turns
 * every failure into a message. Components only see the state.
 */

import type { CalloutRow } from "../src/callouts/callouts.ts";
import { TradeError } from "../src/errors.ts";
import type { RowPlan } from "../src/operations/shared/types.ts";
import type { Choice } from "../src/quote/compare.ts";
import type { QuoteOptions } from "../src/quote/types.ts";
import { type Column, normalHeading, RESULT_COLUMNS, ROW_COLUMNS } from "../src/table/columns.ts";
import { fromCanonical, type Units } from "../src/units.ts";
import { additionOf } from "./adding.ts";
import {
  type Block,
  type CellValue,
  type Host,
  HostError,
  type NewSheet,
  type Place,
  type Table,
} from "./host/host.ts";
import {
  BASIS,
  besideBlock,
  changesFor,
  type HandMatches,
  isEmptyRow,
  liveFormula,
  type Matching,
  match,
  planningBlock,
  planningScore,
  resultScore,
  unitsGiven,
  WORKED_HEADINGS,
  workedRows,
} from "./planning.ts";
import { compareSheet, type Made, quoteSheet } from "./quoting.ts";
import { createStore, type Store } from "./state.ts";
import type { Message } from "./ui/message.ts";

/** Milliseconds a row must stay selected before advice is looked for. */
const ADVICE_DELAY = 80;

export const LISTS = ["Materials", "Tools", "Machines"] as const;

export interface PlanBlocks {
  readonly rows: CellValue[][];
  readonly materials: CellValue[][];
  readonly tools: CellValue[][];
  readonly machines: CellValue[][];
}

/**
 * Plans a table, a line per row (none for an empty row); `only` asks for one row and may leave the others out.
 * Injected, so that the session can be tried without the trade.
 */
export type Planner = (blocks: PlanBlocks, only?: number) => readonly (RowPlan | undefined)[];

/** A change that would help a row; `writes` holds inputs by key, numbers in canonical units. */
export interface Suggestion {
  readonly change: string;
  readonly before: string;
  readonly after: string;
  readonly writes: readonly { readonly key: string; readonly value: number | string | null }[];
}

/** Looks for changes that would help one row. */
export type Advisor = (blocks: PlanBlocks, only: number) => readonly Suggestion[];

export interface State {
  readonly phase: "reading" | "none" | "table";
  readonly table: Table | null;
  readonly matching: Matching | null;
  readonly byHand: HandMatches;
  /** Units a person chose for a table that does not say them. */
  readonly asked: Units | undefined;
  readonly lists: readonly (Block | null)[];
  /** Results that stand beside the table already: numbers of an earlier fill, or a live block. */
  readonly beside: Block | null;
  readonly plan: RowPlan | null;
  readonly suggestions: readonly Suggestion[];
  /** The table that a quote was written from, to go back to. */
  readonly from: Place | null;
  readonly message: Message | undefined;
  readonly busy: boolean;
}

export interface Session {
  readonly store: Store<State>;
  /** Reads everything again. */
  refresh(): Promise<void>;
  setUnits(units: Units): void;
  match(index: number, key: string): void;
  writeNumbers(): Promise<void>;
  insertLive(): Promise<void>;
  workOut(): Promise<void>;
  apply(suggestion: Suggestion): Promise<void>;
  /** Adds rows read from a drawing under the table; answers whether they were written. */
  addCallouts(callouts: readonly CalloutRow[]): Promise<boolean>;
  /** Puts the quote of the whole table on a sheet of its own. */
  writeQuote(options: QuoteOptions): Promise<void>;
  /** Puts the same rows on two machines, or in two materials, side by side on a sheet of their own. */
  writeComparison(choice: Choice, options: QuoteOptions): Promise<void>;
  addLists(starting: readonly NewSheet[]): Promise<void>;
  addTable(sheet: NewSheet): Promise<void>;
  /** Puts the card of the selected row on a sheet, to be printed by the spreadsheet program. */
  addCard(lines: readonly (readonly [string, string])[]): Promise<void>;
  /** Shows the table again that the last quote was written from. */
  goBack(): Promise<void>;
  say(message: Message | undefined): void;
  destroy(): void;
}

const blockCells = (block: Block | null): CellValue[][] =>
  block === null ? [] : [[...block.headings], ...block.rows.map((row) => [...row])];

const sentence = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

/** True for a block of numbers that an earlier fill wrote; a live block has no basis column. */
export const isNumbers = (block: Block | null): boolean =>
  block?.headings.some((heading) => normalHeading(heading) === normalHeading(BASIS)) ?? false;

export function createSession(host: Host, plan: Planner, advise?: Advisor): Session {
  const store = createStore<State>({
    phase: "reading",
    table: null,
    matching: null,
    byHand: {},
    asked: undefined,
    lists: [null, null, null],
    beside: null,
    plan: null,
    suggestions: [],
    from: null,
    message: undefined,
    busy: false,
  });
  let alive = true;
  let reading: Promise<void> | undefined;
  let again: "all" | "selection" | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let advising: ReturnType<typeof setTimeout> | undefined;

  const fail = (thrown: unknown): void => {
    if (!(thrown instanceof HostError)) console.error(thrown);
    const text =
      thrown instanceof HostError ? thrown.message : "Something went wrong in the pane; nothing more was written.";
    store.set({
      message: {
        kind: "failed",
        text,
        action: thrown instanceof HostError ? undefined : "Close the pane, open it again and try once more.",
      },
    });
  };

  const settledUnits = (matching: Matching): Units | "given" | undefined => unitsGiven(matching) ?? store.get().asked;
  const columnUnits = (matching: Matching): Units | undefined => {
    const units = settledUnits(matching);
    return units === "given" ? undefined : units;
  };

  const blocks = (table: Block, matching: Matching, lists: readonly (Block | null)[]): PlanBlocks => ({
    rows: planningBlock(table, matching, columnUnits(matching)),
    materials: blockCells(lists[0] ?? null),
    tools: blockCells(lists[1] ?? null),
    machines: blockCells(lists[2] ?? null),
  });

  /** The plan of the selected row alone: quick, whatever the length of the table. */
  function planSelected(): void {
    clearTimeout(advising);
    const { table, matching, lists } = store.get();
    const selected = table?.selected ?? null;
    if (table === null || matching === null || selected === null || isEmptyRow(table.rows[selected]!, matching)) {
      store.set({ plan: null, suggestions: [] });
      return;
    }
    if (settledUnits(matching) === undefined) {
      store.set({ plan: null, suggestions: [] });
      return;
    }
    const all = blocks(table, matching, lists);
    let line: RowPlan | null;
    try {
      line = plan(all, selected)[selected] ?? null;
    } catch (thrown) {
      store.set({ plan: null, suggestions: [] });
      fail(thrown);
      return;
    }
    store.set({ plan: line, suggestions: [] });
    if (line === null || advise === undefined) return;
    // The search for advice works the row out many times: the row is shown first.
    advising = setTimeout(() => {
      if (!alive || store.get().plan !== line) return;
      try {
        store.set({ suggestions: advise(all, selected) });
      } catch (thrown) {
        fail(thrown);
      }
    }, ADVICE_DELAY);
  }

  function take(table: Table | null): void {
    const { byHand } = store.get();
    store.set({
      phase: table === null ? "none" : "table",
      table,
      matching: table === null ? null : match(table.headings, byHand),
    });
  }

  /** The block of results right of the table, if there is one. */
  async function readBeside(table: Table | null): Promise<Block | null> {
    if (table === null) return null;
    const block = await host.readTable(resultScore);
    if (block === null || block.sheet !== table.sheet || block.top !== table.top) return null;
    return block.left === table.left + table.headings.length + 1 ? block : null;
  }

  async function readAll(): Promise<void> {
    const table = await host.readTable(planningScore);
    const lists: (Block | null)[] = [];
    for (const name of LISTS) lists.push(await host.readList(name));
    const beside = await readBeside(table);
    if (!alive) return;
    store.set({ lists, beside });
    take(table);
    planSelected();
  }

  async function readSelection(): Promise<void> {
    const before = store.get().table;
    const table = await host.readTable(planningScore);
    if (!alive) return;
    const same =
      before !== null &&
      table !== null &&
      before.sheet === table.sheet &&
      before.top === table.top &&
      before.left === table.left;
    if (!same) {
      await readAll();
      return;
    }
    take(table);
    planSelected();
  }

  /** One read at a time; what comes in between is made up for by one more at the end. */
  function request(what: "all" | "selection"): Promise<void> {
    if (reading !== undefined) {
      again = again === "all" ? "all" : what;
      return reading;
    }
    const run = async () => {
      let next: typeof again = what;
      while (next !== undefined && alive) {
        const now: "all" | "selection" = next;
        again = undefined;
        try {
          await (now === "all" ? readAll() : readSelection());
        } catch (thrown) {
          // While a cell is being edited there is nothing to tell: the next event reads again.
          if (!(thrown instanceof HostError && thrown.code === "editing")) fail(thrown);
          if (store.get().phase === "reading") store.set({ phase: "none" });
        }
        next = again;
      }
      reading = undefined;
    };
    reading = run();
    return reading;
  }

  function later(what: "all" | "selection", delay: number): void {
    if (!alive || store.get().busy) return;
    if (again !== "all") again = what;
    clearTimeout(timer);
    timer = setTimeout(() => {
      const wanted = again ?? what;
      again = undefined;
      void request(wanted);
    }, delay);
  }

  const stops = [host.onSelectionChange(() => later("selection", 120)), host.onDataChange(() => later("all", 400))];

  /** Runs an action that writes: one at a time, with a message at the start, and at the end whatever happened. */
  async function act(start: string, action: () => Promise<Message | undefined>): Promise<void> {
    if (store.get().busy) return;
    store.set({ busy: true, message: { kind: "busy", text: start } });
    try {
      await reading;
      const done = await action();
      store.set({ message: done });
    } catch (thrown) {
      fail(thrown);
    } finally {
      store.set({ busy: false });
      await request("all");
    }
  }

  /** Table, matching and lists as they are now, ready to be planned; a message when they are not. */
  async function fresh(): Promise<{ table: Table; matching: Matching } | Message> {
    await readAll();
    const { table, matching } = store.get();
    if (table === null || matching === null)
      return {
        kind: "failed",
        text: "There is no planning table at the selection.",
        action: "Select a cell in the table and try again.",
      };
    if (settledUnits(matching) === undefined)
      return {
        kind: "failed",
        text: "The table does not say its units.",
        action: "Choose mm or in above, then write.",
      };
    return { table, matching };
  }

  const tally = (plans: readonly (RowPlan | undefined)[]): string => {
    const counted = plans.filter((line) => line !== undefined);
    const of = (verdict: RowPlan["verdict"]) => counted.filter((line) => line.verdict === verdict).length;
    return `${sentence(counted.length, "row")} written: ${of("ok")} ok, ${of("check")} check, ${of("stop")} stop.`;
  };

  /** Adds a sheet under a name that is still free. */
  async function newSheet(name: string, { sheet, warning }: Made, what: string): Promise<Message> {
    for (let n = 1; ; n++) {
      const called = n === 1 ? name : `${name} ${n}`;
      try {
        const { table } = store.get();
        await host.addSheet({ ...sheet, name: called }, true);
        if (table !== null)
          store.set({ from: { sheet: table.sheet, row: table.top + 1 + (table.selected ?? 0), column: table.left } });
        return {
          kind: "done",
          text: `${what} is on the sheet "${called}". It does not follow later changes.`,
          action: warning,
        };
      } catch (thrown) {
        if (!(thrown instanceof HostError) || thrown.code !== "occupied" || n > 50) throw thrown;
      }
    }
  }

  return {
    store,
    refresh: () => request("all"),

    setUnits(units) {
      store.set({ asked: units });
      planSelected();
    },

    match(index, key) {
      const { table, byHand } = store.get();
      const heading = normalHeading(table?.headings[index]);
      if (table === null || heading === "") return;
      const next: Record<string, string> = { ...byHand };
      if (key === "auto") delete next[heading];
      else {
        // A meaning belongs to one column only.
        if (key !== "") for (const other of Object.keys(next)) if (next[other] === key) delete next[other];
        next[heading] = key;
      }
      store.set({ byHand: next, matching: match(table.headings, next) });
      planSelected();
    },

    writeNumbers: () =>
      act("Writing numbers …", async () => {
        const now = await fresh();
        if ("kind" in now) return now;
        const { table, matching } = now;
        const { lists, beside } = store.get();
        const plans = plan(blocks(table, matching, lists));
        const told = tally(plans);
        if (matching.outputs.length > 0) {
          await host.writeCells(table, changesFor(table, matching, plans));
          return { kind: "done", text: told };
        }
        if (beside !== null && !isNumbers(beside))
          return {
            kind: "failed",
            text: "A live block stands beside the table; it shows these numbers already.",
            action: "Delete its first cell if you want plain numbers there.",
          };
        const left = table.left + table.headings.length + 1;
        const { cells, formats } = besideBlock(table, matching, plans, left);
        if (beside === null) {
          await host.insertCells({ sheet: table.sheet, row: table.top, column: left }, cells, formats);
          return { kind: "done", text: `${told} They stand beside the table.` };
        }
        // An earlier fill: its rows are written over, rows the table has got since are put below.
        const kept = Math.max(beside.rows.length, 0);
        const width = cells[0]!.length;
        await host.writeCells(
          beside,
          cells
            .slice(1, 1 + kept)
            .flatMap((row, r) =>
              row.slice(0, width).map((value, column) => ({ row: r, column, value, format: formats[column] })),
            ),
        );
        const more = cells.slice(1 + kept);
        if (more.length > 0) await host.appendRows(beside, more);
        return { kind: "done", text: `${told} The block beside the table is up to date.` };
      }),

    insertLive: () =>
      act("Inserting the live block …", async () => {
        const now = await fresh();
        if ("kind" in now) return now;
        const { table, matching } = now;
        const { lists, beside, byHand } = store.get();
        if (beside !== null)
          return isNumbers(beside)
            ? {
                kind: "failed",
                text: "Numbers stand beside the table already.",
                action: "Delete that block first if you want a live one there.",
              }
            : { kind: "failed", text: "The live block is there already.", action: "It follows the table by itself." };
        if (unitsGiven(matching) === undefined)
          return {
            kind: "failed",
            text: "A live block reads the units from the table, and the table does not say them.",
            action: "Add a column Units with mm or in, then insert again.",
          };
        if (table.headings.some((heading) => byHand[normalHeading(heading)] !== undefined))
          return {
            kind: "failed",
            text: "A live block reads the headings by itself; columns matched by hand are not known to it.",
            action: "Rename those headings as they were matched, then insert again.",
          };
        const place = { sheet: table.sheet, row: table.top, column: table.left + table.headings.length + 1 };
        await host.insertFormula(place, liveFormula(table, lists), [table.rows.length + 1, RESULT_COLUMNS.length]);
        return { kind: "done", text: "The live block stands beside the table and follows every change in it." };
      }),

    workOut: () =>
      act("Working the row out …", async () => {
        await readAll();
        const { plan: line, table } = store.get();
        if (line === null || table === null || line.steps.length === 0)
          return {
            kind: "failed",
            text: "There is no row to work out.",
            action: "Select a cell in a row of the table that has its sizes filled in.",
          };
        await host.addSheet(
          { name: sheetNameFor("Worked", line, table), headings: WORKED_HEADINGS, rows: workedRows(line) },
          true,
        );
        return { kind: "done", text: `${sentence(line.steps.length, "step")} written out on a sheet of their own.` };
      }),

    apply: (suggestion) =>
      act("Writing into the row …", async () => {
        const { table, matching, plan: line } = store.get();
        if (table === null || matching === null || table.selected === null || line === null)
          return { kind: "failed", text: "No row is selected.", action: "Select the row again." };
        const missing: Column[] = [];
        const changes = suggestion.writes.flatMap(({ key, value }) => {
          const column = ROW_COLUMNS.find((c) => c.key === key);
          const found = matching.inputs.find((m) => m.column.key === key);
          if (found === undefined) {
            if (column) missing.push(column);
            return [];
          }
          return [{ row: table.selected!, column: found.at, value: inColumn(found, value, line.units) }];
        });
        if (missing.length > 0 || changes.length === 0)
          return {
            kind: "failed",
            text: `The table has no column for this: ${missing.map((c) => c.heading).join(", ")}.`,
            action: "Add a column with that heading, then try again.",
          };
        await host.writeCells(table, changes);
        return { kind: "done", text: `${suggestion.change}: written into the row.` };
      }),

    async addCallouts(callouts) {
      let written = false;
      await act("Adding the rows …", async () => {
        const now = await fresh();
        if ("kind" in now) return now;
        const { table, matching } = now;
        const { beside } = store.get();
        const { rows, spare, numbers } = additionOf(table, matching, columnUnits(matching), callouts);
        if (rows.length === 0) return { kind: "failed", text: "There are no callouts to add." };
        await host.appendRows(table, rows, spare);
        written = true;
        const first = table.top + 1 + table.rows.length - spare;
        // The last one first, so that as many of them as there is room for are in view.
        for (const row of [first + rows.length - 1, first])
          await host.select({ sheet: table.sheet, row, column: table.left });
        const told = [
          `${sentence(rows.length, "row")} added under the table`,
          numbers === null ? "" : `, numbered ${numbers[0]}${rows.length > 1 ? ` to ${numbers[1]}` : ""}`,
          `, from line ${first + 1} of the sheet.`,
        ].join("");
        const open = callouts.filter((row) => !row.understood).length;
        const left =
          open === 0
            ? ""
            : ` ${open === 1 ? "1 of them was" : `${open} of them were`} not understood: fill in by hand.`;
        // The desk plans rows of a table that has a basis as they come.
        const live =
          (beside !== null && !isNumbers(beside)) ||
          (host.kind === "sheet" && (matching.basisAt !== undefined || isNumbers(beside)));
        return {
          kind: "done",
          text: told + left,
          action: live ? undefined : "Press “Write numbers” to plan them.",
        };
      });
      return written;
    },

    writeQuote: (options) =>
      act("Adding up the quote …", async () => {
        const now = await fresh();
        if ("kind" in now) return now;
        const sheet = quoteSheet(blocks(now.table, now.matching, store.get().lists), options);
        return newSheet("Quote", sheet, "The quote");
      }),

    writeComparison: (choice, options) =>
      act("Planning the rows twice …", async () => {
        const now = await fresh();
        if ("kind" in now) return now;
        try {
          const sheet = compareSheet(blocks(now.table, now.matching, store.get().lists), choice, options);
          return await newSheet("Compare", sheet, "The comparison");
        } catch (thrown) {
          if (!(thrown instanceof TradeError)) throw thrown;
          return { kind: "failed", text: thrown.message, action: "Choose names that are in the lists." };
        }
      }),

    addLists: (starting) =>
      act("Adding the starting lists …", async () => {
        await readAll();
        const { lists } = store.get();
        const added: string[] = [];
        for (const [i, name] of LISTS.entries()) {
          const sheet = starting.find((one) => one.name === name);
          if (lists[i] !== null || sheet === undefined) continue;
          await host.addSheet(sheet);
          added.push(name);
        }
        return { kind: "done", text: `Added: ${added.join(", ")}. They are starting values: put your own in.` };
      }),

    addTable: (sheet) =>
      act("Adding a planning table …", async () => {
        const block = await host.addSheet(sheet, true);
        await host.select({ sheet: block.sheet, row: block.top + 1, column: block.left });
        return { kind: "done", text: "An empty planning table is there. One operation per row." };
      }),

    addCard: (lines) =>
      act("Writing the card …", async () => {
        const [head, ...rows] = lines;
        const { plan: line, table } = store.get();
        if (head === undefined || line === null || table === null)
          return { kind: "failed", text: "No row is selected.", action: "Select the row again." };
        await host.addSheet({ name: sheetNameFor("Card", line, table), headings: head, rows }, true);
        return { kind: "done", text: "The card is on a sheet of its own. Print it from there." };
      }),

    async goBack() {
      const { from } = store.get();
      if (from === null) return;
      try {
        await host.select(from);
        store.set({ message: undefined });
      } catch (thrown) {
        fail(thrown);
      }
      store.set({ from: null });
      await request("all");
    },

    say: (message) => store.set({ message }),

    destroy() {
      alive = false;
      clearTimeout(timer);
      clearTimeout(advising);
      for (const stop of stops) stop();
    },
  };
}

/** A sheet's name after the row: without the characters that sheet names cannot have, 31 at most. */
function sheetNameFor(what: string, line: RowPlan, table: Table): string {
  const label = String(line.row ?? (table.selected ?? 0) + 1).replace(/[[\]:*?/\\']/g, " ");
  return `${what} ${label}`.slice(0, 31).trim();
}

/** A canonical value in the units of the column it goes into. */
function inColumn({ column, units }: Matching["inputs"][number], value: CellValue, rowUnits: Units): CellValue {
  if (typeof value !== "number" || column.dimension === undefined) return value;
  return round12(fromCanonical(value, column.dimension, units ?? rowUnits));
}

/** Takes the float noise off a number that a person will read in a cell. */
const round12 = (value: number) => Number(value.toPrecision(12));
