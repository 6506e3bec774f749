/** What a formula can hold while it is worked out: a value, a block of values, or a reference to cells. */
import { type Area, type CellError, LAST_COLUMN, LAST_ROW, type Value } from "../model/types.ts";

export type Block = readonly (readonly Value[])[];

/** Cells that a formula points at; more than one area is a union. */
export class Reference {
  readonly sheet: number;
  readonly areas: readonly Area[];
  constructor(sheet: number, areas: readonly Area[]) {
    this.sheet = sheet;
    this.areas = areas;
  }
}

/** undefined is an argument that was left out. */
export type Operand = Value | Block | Reference | undefined;

export const error = (code: string, reason?: string): CellError =>
  reason === undefined ? { error: code } : { error: code, reason };
export const VALUE = error("#VALUE!");
export const DIV0 = error("#DIV/0!");
export const NA = error("#N/A");
export const NUM = error("#NUM!");
export const REF = error("#REF!");
export const NAME = error("#NAME?");
export const SPILL = (where: string): CellError => error("#SPILL!", `${where} is in the way of the answer`);

/** What stops the working out of one formula with an error as its answer. */
export class Failure extends Error {
  readonly value: CellError;
  constructor(value: CellError) {
    super(value.error);
    this.value = value;
  }
}

/** A function, name or spelling that is not known here: the cell keeps the value that it came with. */
export class Unknown extends Error {}

export const isError = (value: unknown): value is CellError =>
  typeof value === "object" && value !== null && "error" in value;
export const isBlock = (value: unknown): value is Block => Array.isArray(value);

/** Text as a person would type a number: sign, decimals, exponent, percent. Blank and anything else is none. */
export function numberInText(text: string): number | undefined {
  const trimmed = text.trim();
  const found = /^([-+]?(?:\d[\d,]*\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*(%?)$/.exec(trimmed);
  if (found === null) return undefined;
  if (found[1]!.includes(",") && !/^[-+]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/.test(found[1]!)) return undefined;
  const number = Number(found[1]!.replaceAll(",", ""));
  return Number.isFinite(number) ? (found[2] === "%" ? number / 100 : number) : undefined;
}

export function toNumber(value: Value): number {
  if (typeof value === "number") return value;
  if (value === null) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (typeof value === "string") {
    const number = numberInText(value);
    if (number === undefined) throw new Failure(VALUE);
    return number;
  }
  throw new Failure(value);
}

/** Characters that a number may take as text before it is written with an exponent. */
const LONGEST = 20;

/** A number as formulas turn it into text: fifteen digits, 1E+20 where plain digits would take too many characters. */
export function numberText(value: number): string {
  if (value === 0) return "0";
  const [digits, power] = Number(value.toPrecision(15)).toExponential().split("e") as [string, string];
  const n = Number(power);
  const [sign, figures] = [digits.startsWith("-") ? "-" : "", digits.replace(/[-.]/g, "")];
  const plain =
    n < 0
      ? `0.${"0".repeat(-n - 1)}${figures}`
      : figures.length <= n + 1
        ? figures.padEnd(n + 1, "0")
        : `${figures.slice(0, n + 1)}.${figures.slice(n + 1)}`;
  if (plain.length <= LONGEST) return sign + plain;
  return `${digits}E${n < 0 ? "-" : "+"}${String(Math.abs(n)).padStart(2, "0")}`;
}

export function toText(value: Value): string {
  if (typeof value === "string") return value;
  if (value === null) return "";
  if (typeof value === "number") return numberText(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  throw new Failure(value);
}

export function toFlag(value: Value): boolean {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  if (value === null) return false;
  if (typeof value === "string") {
    const word = value.trim().toUpperCase();
    if (word === "TRUE" || word === "FALSE") return word === "TRUE";
    throw new Failure(VALUE);
  }
  throw new Failure(value);
}

const rank = (value: Value): number => (typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2);

/** Order of two values as spreadsheets have it: numbers, then text without regard to case, then FALSE and TRUE. */
export function compare(a: Value, b: Value): number {
  if (isError(a)) throw new Failure(a);
  if (isError(b)) throw new Failure(b);
  const like = (other: Value): Value => (typeof other === "string" ? "" : typeof other === "boolean" ? false : 0);
  const left = a ?? like(b);
  const right = b ?? like(a);
  const ranks = rank(left) - rank(right);
  if (ranks !== 0) return ranks;
  if (typeof left === "string") {
    const [x, y] = [left.toLowerCase(), (right as string).toLowerCase()];
    return x === y ? 0 : x < y ? -1 : 1;
  }
  return Number(left) - Number(right);
}

/** A number that a cell can hold; anything beyond is an error. */
export const finite = (number: number): Value => (Number.isFinite(number) ? (Object.is(number, -0) ? 0 : number) : NUM);

export const areaHeight = (area: Area): number => area.bottom - area.top + 1;
export const areaWidth = (area: Area): number => area.right - area.left + 1;
export const inSheet = ({ top, left, bottom, right }: Area): boolean =>
  top >= 0 && left >= 0 && bottom <= LAST_ROW && right <= LAST_COLUMN && top <= bottom && left <= right;

/** Works on each place of blocks of any size together; a block of one row or column is repeated. */
export function broadcast(operands: readonly (Value | Block)[], run: (values: Value[]) => Value): Value | Block {
  let rows = 1;
  let columns = 1;
  let any = false;
  for (const one of operands) {
    if (!isBlock(one)) continue;
    any = true;
    rows = Math.max(rows, one.length);
    columns = Math.max(columns, one[0]?.length ?? 1);
  }
  if (!any) return run(operands as Value[]);
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_, c) => {
      const values = operands.map((one): Value => {
        if (!isBlock(one)) return one;
        const row = one[one.length === 1 ? 0 : r];
        const cell = row?.[row.length === 1 ? 0 : c];
        return cell === undefined ? NA : cell;
      });
      try {
        return run(values);
      } catch (thrown) {
        if (thrown instanceof Failure) return thrown.value;
        throw thrown;
      }
    }),
  );
}
