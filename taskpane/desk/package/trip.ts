/**
 * Cells on their way from one thread to another. A message copies a sheet's maps and cells one by one, on both sides; as a
 * few arrays of numbers and texts they travel several times faster, and are put together again where they arrive.
 */
import type { Cell, Sheet } from "../model/types.ts";
import type { Opened } from "./open.ts";

/** What the value of a cell is: nothing, a number, a text; anything else travels as the cell that it is. */
const [NOTHING, NUMBER, TEXT, OTHER] = [0, 1, 2, 3];
/** A cell that says nothing of its look. */
const NO_STYLE = -1;

interface PackedCells {
  /** Row and how many cells it has, in turn. */
  readonly rows: Int32Array<ArrayBuffer>;
  readonly columns: Int32Array<ArrayBuffer>;
  readonly styles: Int32Array<ArrayBuffer>;
  readonly kinds: Uint8Array<ArrayBuffer>;
  readonly numbers: Float64Array<ArrayBuffer>;
  readonly texts: readonly string[];
  readonly others: readonly Cell[];
}

/** An opened file with its cells packed. */
export interface Travelling {
  readonly opened: Opened;
  /** Cells of each sheet, in the order of the sheets. */
  readonly cells: readonly PackedCells[];
}

function packed(cells: Sheet["cells"]): PackedCells {
  let count = 0;
  for (const line of cells.values()) count += line.size;
  const rows = new Int32Array(2 * cells.size);
  const [columns, styles] = [new Int32Array(count), new Int32Array(count)];
  const kinds = new Uint8Array(count);
  const numbers = new Float64Array(count);
  const texts: string[] = [];
  const others: Cell[] = [];
  let [r, i] = [0, 0];
  for (const [row, line] of cells) {
    rows[r++] = row;
    rows[r++] = line.size;
    for (const [column, cell] of line) {
      const { value, style } = cell;
      columns[i] = column;
      styles[i] = style ?? NO_STYLE;
      const simple = cell.formula === undefined && cell.array === undefined && cell.stale === undefined;
      if (simple && value === null) kinds[i] = NOTHING;
      else if (simple && typeof value === "number") {
        kinds[i] = NUMBER;
        numbers[i] = value;
      } else if (simple && typeof value === "string") {
        kinds[i] = TEXT;
        texts.push(value);
      } else {
        kinds[i] = OTHER;
        others.push(cell);
      }
      i++;
    }
  }
  return { rows, columns, styles, kinds, numbers, texts, others };
}

function unpacked({
  rows,
  columns,
  styles,
  kinds,
  numbers,
  texts,
  others,
}: PackedCells): Map<number, Map<number, Cell>> {
  const cells = new Map<number, Map<number, Cell>>();
  let [i, text, other] = [0, 0, 0];
  for (let r = 0; r < rows.length; r += 2) {
    const line = new Map<number, Cell>();
    for (const end = i + rows[r + 1]!; i < end; i++) {
      const kind = kinds[i];
      if (kind === OTHER) {
        line.set(columns[i]!, others[other++]!);
        continue;
      }
      const value = kind === NUMBER ? numbers[i]! : kind === TEXT ? texts[text++]! : null;
      const style = styles[i]!;
      line.set(columns[i]!, style === NO_STYLE ? { value } : { value, style });
    }
    cells.set(rows[r]!, line);
  }
  return cells;
}

/** Packs a file for the trip; the second answer is what is handed over instead of being copied. */
export function forTrip(opened: Opened): [Travelling, Transferable[]] {
  const { book, kept } = opened;
  const cells = book.sheets.map((sheet) => packed(sheet.cells));
  const bare = { ...book, sheets: book.sheets.map((sheet) => ({ ...sheet, cells: new Map() })) };
  const arrays = cells.flatMap((one) => [one.rows, one.columns, one.styles, one.kinds, one.numbers]);
  return [
    { opened: { book: bare, kept }, cells },
    [kept.bytes.buffer as ArrayBuffer, ...arrays.map(({ buffer }) => buffer)],
  ];
}

/** The file as it was packed. */
export function fromTrip({ opened, cells }: Travelling): Opened {
  const sheets = opened.book.sheets.map((sheet, i) => ({ ...sheet, cells: unpacked(cells[i]!) }));
  return { ...opened, book: { ...opened.book, sheets } };
}
