/** Copy, cut and paste: as lines with tabs and as an HTML table, with exact numbers, as other spreadsheets do. */
import { areaName } from "../model/address.ts";
import { type Copied, copyBlock, htmlCells, type Pasted, pasteEdits } from "../model/blocks.ts";
import { readLines, writeHtml, writeLines } from "../model/clip.ts";
import { clear } from "./commands.ts";
import { attempt, type Context } from "./context.ts";

/** What was copied here last: with formulas, as long as the clipboard still holds the same text. */
let own: { text: string; block: Copied[][] } | undefined;

export function hiddenNow(context: Context): ReadonlySet<number> {
  const sheet = context.model.sheet(context.sheet())!;
  return new Set([...sheet.hiddenColumns, ...context.view.unused]);
}

function copied(context: Context): { text: string; html: string } {
  const { model, cursor } = context;
  const block = copyBlock(model, context.sheet(), cursor.area, hiddenNow(context));
  const text = writeLines(block.map((row) => row.map((cell) => cell.text)));
  own = { text, block };
  return { text, html: writeHtml(htmlCells(block, model)) };
}

/** Listens on the input, which has the focus whenever the grid has it. While text is edited the browser does its own. */
export function listen(context: Context, element: HTMLElement): void {
  const ready = () => context.entry.mode === "ready";
  const onCopy = (event: ClipboardEvent) => {
    if (!ready() || !event.clipboardData) return;
    const { text, html } = copied(context);
    event.clipboardData.setData("text/plain", text);
    event.clipboardData.setData("text/html", html);
    event.preventDefault();
    if (event.type === "cut") clear(context, "cut");
    else context.say(context.words.copied(areaName(context.cursor.area)));
  };
  element.addEventListener("copy", onCopy);
  element.addEventListener("cut", onCopy);
  element.addEventListener("paste", (event) => {
    if (!event.clipboardData) return;
    const text = event.clipboardData.getData("text/plain");
    if (!ready()) {
      // Into a cell that is being typed only its own line goes; a block would lose its shape.
      return;
    }
    event.preventDefault();
    paste(context, text, event.clipboardData.getData("text/html"));
  });
}

export function paste(context: Context, text: string, html: string): void {
  const { model, cursor, words } = context;
  const sheet = context.sheet();
  const same = own && own.text.replace(/\r\n/g, "\n") === text.replace(/\r\n/g, "\n");
  const block: Pasted[][] = same
    ? own!.block.map((row) => row.map((cell) => ({ text: cell.text, own: cell })))
    : (fromHtml(html) ?? readLines(text).map((row) => row.map((cell) => ({ text: cell }))));
  if (block.length === 0 || (block.length === 1 && block[0]!.length === 0)) return;
  attempt(context, () => {
    const { edits, area, doubts } = pasteEdits(model, sheet, cursor.area, block);
    model.apply(edits, { by: "person", label: "paste" });
    cursor.choose(area);
    if (doubts.length > 0) context.say(words.doubts(doubts.length, doubts[0]!.text), "refused");
  });
}

/** Cells of a table that another program put on the clipboard; undefined without one. */
function fromHtml(html: string): Pasted[][] | undefined {
  if (!/<table/i.test(html)) return undefined;
  // Classes that mean "text", from the style sheet of the program; styles themselves are against the page's policy.
  const style = /<style[^>]*>([\s\S]*?)<\/style>/gi;
  const textual = new Set(
    [...html.matchAll(style)].flatMap(([, rules = ""]) =>
      [...rules.matchAll(/\.([\w-]+)\s*\{[^}]*mso-number-format:\s*["']?\\?@/g)].map(([, name]) => name!),
    ),
  );
  const plain = html.replace(style, "").replace(/\sstyle\s*=/gi, " data-style=");
  const parsed = new DOMParser().parseFromString(plain, "text/html");
  const tables = parsed.querySelectorAll("table");
  if (tables.length !== 1) return undefined;
  const rows: Pasted[][] = [];
  [...tables[0]!.rows].forEach((row, r) => {
    rows[r] ??= [];
    let column = 0;
    for (const cell of row.cells) {
      while (rows[r]![column]) column++;
      rows[r]![column] = fromCell(cell, textual);
      // What a merged cell covers stays as it is, blank.
      const [down, across] = [Math.min(cell.rowSpan, 1000), Math.min(cell.colSpan, 1000)];
      for (let dr = 0; dr < down; dr++) {
        for (let dc = 0; dc < across; dc++) {
          rows[r + dr] ??= [];
          rows[r + dr]![column + dc] ??= { text: "" };
        }
      }
      column += across;
    }
  });
  return rows.map((row) => Array.from(row, (cell) => cell ?? { text: "" }));
}

function fromCell(cell: HTMLTableCellElement, textual: ReadonlySet<string>): Pasted {
  for (const line of cell.querySelectorAll("br")) line.replaceWith("\u2028");
  // Browsers and programs break long lines of HTML; only <br> is a line of the cell.
  const text = (cell.textContent ?? "")
    .split("\u2028")
    .map((line) => line.replace(/[\s\u00a0]+/g, " ").trim())
    .join("\n")
    .trim();
  const exact = cell.getAttribute("sdval") ?? cell.getAttribute("x:num");
  const literal =
    /;@/.test(cell.getAttribute("sdnum") ?? "") ||
    /mso-number-format:\s*['"]?\\?@/.test(cell.dataset.style ?? "") ||
    [...cell.classList].some((name) => textual.has(name));
  if (literal) return { text, literal: true };
  if (exact !== null && exact !== "" && Number.isFinite(Number(exact))) return { text, number: Number(exact) };
  return { text };
}
