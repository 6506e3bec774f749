/** Blocks of cells as text that other spreadsheets read and write: lines, tabs, quotes. */

/** Parts a pasted text into rows and cells. A quoted cell may hold tabs, line breaks and doubled quotes. */
export function readLines(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  const end = text.length;
  while (at <= end) {
    let cell: string;
    const quoted = text[at] === '"' ? quotedCell(text, at) : undefined;
    if (quoted) {
      cell = quoted.cell;
      at = quoted.end;
    } else {
      let to = at;
      while (to < end && text[to] !== "\t" && text[to] !== "\n" && text[to] !== "\r") to++;
      cell = text.slice(at, to);
      at = to;
    }
    row.push(cell);
    if (text[at] === "\t") {
      at++;
      continue;
    }
    rows.push(row);
    row = [];
    if (at >= end) break;
    at += text[at] === "\r" && text[at + 1] === "\n" ? 2 : 1;
    // A line break at the very end closes the last row.
    if (at >= end) break;
  }
  return rows;
}

/** A quoted cell; undefined when the quote is part of the text, as in `"A" side`. */
function quotedCell(text: string, start: number): { cell: string; end: number } | undefined {
  let cell = "";
  for (let at = start + 1; at < text.length; at++) {
    if (text[at] !== '"') {
      cell += text[at];
      continue;
    }
    if (text[at + 1] === '"') {
      cell += '"';
      at++;
      continue;
    }
    const next = text[at + 1];
    return next === undefined || next === "\t" || next === "\n" || next === "\r" ? { cell, end: at + 1 } : undefined;
  }
  return undefined;
}

/** Rows of texts as lines; a cell with a tab, a line break or a quote at its start is quoted. */
export const writeLines = (rows: readonly (readonly string[])[]): string =>
  rows
    .map((row) => row.map((cell) => (/[\t\n\r]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join("\t"))
    .join("\n");

const escaped = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

export interface HtmlCell {
  readonly text: string;
  /** Exact number behind the text. */
  readonly number?: number;
  /** Text that must not become a number or a date. */
  readonly literal?: boolean;
}

/** Rows as an HTML table; numbers carry their exact value the way office suites read it. */
export function writeHtml(rows: readonly (readonly HtmlCell[])[]): string {
  const cell = ({ text, number, literal }: HtmlCell) => {
    const exact = number === undefined ? "" : ` sdval="${number}" x:num="${number}"`;
    const asText = literal ? ` sdnum="1033;0;@" style="mso-number-format:'\\@'"` : "";
    return `<td${exact}${asText}>${escaped(text).replaceAll("\n", "<br>")}</td>`;
  };
  const body = rows.map((row) => `<tr>${row.map(cell).join("")}</tr>`).join("");
  return `<html xmlns:x="urn:schemas-microsoft-com:office:excel"><meta charset="utf-8"><table>${body}</table></html>`;
}
