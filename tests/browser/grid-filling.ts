/**
 * Fills every input column of a row by keyboard and tells which cells do not hold what was typed. Needs of the page only
 * `tablefeedDesk.select` and `tablefeedDesk.valueAt`, so it serves the grid alone and the whole desk.
 */
import type { CDPSession, Page } from "playwright-core";
import { ROW_COLUMNS } from "../../src/table/columns.ts";

export const WAYS = ["Tab", "Enter", "arrows", "F2"] as const;
export const DELAYS = [0, 35, 180] as const;
export const THROTTLES = [1, 6] as const;
export const WIDTHS = [390, 1024, 1440, 1920] as const;
export const SIZES = [73, 2000] as const;

export interface Case {
  readonly way: (typeof WAYS)[number];
  /** Milliseconds from one key to the next; 0 sends all of them without waiting for any. */
  readonly delay: number;
  readonly throttle: number;
  readonly width: number;
  readonly rows: number;
}

export interface Field {
  readonly column: number;
  readonly text: string;
}

/** Key of the device as Chromium wants it told. */
const NAMED: Readonly<Record<string, { code: string; windowsVirtualKeyCode: number }>> = {
  Tab: { code: "Tab", windowsVirtualKeyCode: 9 },
  Enter: { code: "Enter", windowsVirtualKeyCode: 13 },
  ArrowUp: { code: "ArrowUp", windowsVirtualKeyCode: 38 },
  ArrowRight: { code: "ArrowRight", windowsVirtualKeyCode: 39 },
  F2: { code: "F2", windowsVirtualKeyCode: 113 },
};

const NUMBERS = ["0.785", "300", "12.7", "0.0625", "4", "1.5", ".5", "18.03"];
const WORDS = ["housing bore", "1/4-20 UNC-2B", "Mill 3, left", "M8x1.25", "3/8", "long neck 4 flutes"];

/** What goes into each input column of the planning table; `first` is the column of its first heading. */
export function fieldsOf(first: number): Field[] {
  let [numbers, words] = [0, 0];
  return ROW_COLUMNS.map((column, i) => {
    const listed = column.words ?? (column.kind === "flag" ? ["yes", "no"] : undefined);
    const text =
      listed !== undefined
        ? listed[i % listed.length]!
        : column.kind === "whole"
          ? String(2 + (i % 7))
          : column.kind === "number"
            ? NUMBERS[numbers++ % NUMBERS.length]!
            : WORDS[words++ % WORDS.length]!;
    return { column: first + i, text };
  });
}

/** What a cell must hold: the number where one was typed, else the text. */
const wanted = (text: string): string | number => (/^\d*\.?\d+$/.test(text) ? Number(text) : text);

function keysOf(fields: readonly Field[], way: Case["way"]): string[] {
  const after = { Tab: ["Tab"], Enter: ["Enter", "ArrowUp", "ArrowRight"], arrows: ["ArrowRight"], F2: ["Tab"] }[way];
  return fields.flatMap(({ text }) => [...(way === "F2" ? ["F2"] : []), ...text, ...after]);
}

async function press(session: CDPSession, key: string): Promise<unknown> {
  const named = NAMED[key];
  const about = named ? { key, ...named } : { key, text: key, unmodifiedText: key };
  // A real keyboard gives Enter a character of its own as well.
  const text = key === "Enter" ? { text: "\r" } : {};
  const down = session.send("Input.dispatchKeyEvent", {
    type: named && key !== "Enter" ? "rawKeyDown" : "keyDown",
    ...about,
    ...text,
  });
  const up = session.send("Input.dispatchKeyEvent", { type: "keyUp", ...about, ...(named ? {} : { text: undefined }) });
  return Promise.all([down, up]);
}

/**
 * Types and looks.
 *
 * @param row - a row of the sheet Plan, from 0, whose cells may be overwritten
 * @returns one line for each cell that neither holds what was typed nor was said to be refused
 */
export async function fillRow(
  page: Page,
  session: CDPSession,
  fields: readonly Field[],
  row: number,
  { way, delay, throttle }: Pick<Case, "way" | "delay" | "throttle">,
): Promise<string[]> {
  await page.evaluate(
    ([r, c]) => {
      const said: string[] = [];
      Object.assign(globalThis, { said });
      for (const status of document.querySelectorAll("[role=status], [role=alert], [aria-live]"))
        new MutationObserver(() => said.push(status.textContent ?? "")).observe(status, {
          childList: true,
          characterData: true,
          subtree: true,
        });
      return (globalThis as any).tablefeedDesk.select({ sheet: "Plan", row: r, column: c });
    },
    [row, fields[0]!.column] as const,
  );
  await session.send("Emulation.setCPUThrottlingRate", { rate: throttle });
  const keys = keysOf(fields, way);
  if (delay === 0) await Promise.all(keys.map((key) => press(session, key)));
  else {
    let next = Date.now();
    for (const key of keys) {
      await press(session, key);
      next += delay;
      const wait = next - Date.now();
      if (wait > 0) await new Promise((resolve) => setTimeout(resolve, wait));
    }
  }
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const { values, said } = await page.evaluate(
    ([r, columns]) => ({
      values: (columns as number[]).map((column) =>
        (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row: r, column }),
      ),
      said: (globalThis as any).said as string[],
    }),
    [row, fields.map((f) => f.column)] as const,
  );
  return fields.flatMap(({ column, text }, i) => {
    if (values[i] === wanted(text)) return [];
    if (values[i] === null && said.some((one) => one.includes(`“${text}”`))) return [];
    return [`column ${column}: typed ${text}, holds ${JSON.stringify(values[i])}`];
  });
}

/** Every combination. */
export const ALL: readonly Case[] = WAYS.flatMap((way) =>
  DELAYS.flatMap((delay) =>
    THROTTLES.flatMap((throttle) =>
      WIDTHS.flatMap((width) => SIZES.map((rows) => ({ way, delay, throttle, width, rows }))),
    ),
  ),
);

/** The fewest of them, picked greedily, in which any two values of two dimensions meet; quick ones first. */
export function pairwise(all: readonly Case[]): Case[] {
  const pairs = (one: Case) => {
    const parts = Object.entries(one).map(([name, value]) => `${name} ${value}`);
    return parts.flatMap((a, i) => parts.slice(i + 1).map((b) => `${a} / ${b}`));
  };
  const open = new Set(all.flatMap(pairs));
  const chosen: Case[] = [];
  while (open.size > 0) {
    let best = all[0]!;
    let most = -1;
    for (const one of all) {
      const gain = pairs(one).filter((pair) => open.has(pair)).length - one.delay / 1000 - one.throttle / 100;
      if (gain > most) [best, most] = [one, gain];
    }
    for (const pair of pairs(best)) open.delete(pair);
    chosen.push(best);
  }
  return chosen;
}
