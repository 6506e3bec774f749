/** What is wrong with an argument, as a sentence. */
import type { AllowedCode, AllowedValues } from "../allowed.ts";
import type { TradeError, TradeErrorCode } from "../errors.ts";
import type { DimensionName } from "../units.ts";

/** Writes a number that is held in the canonical unit of `dimension` the way the reader wants it (unit included). */
export type Show = (value: number, dimension?: DimensionName) => string;

/** What a language must have for errors: what is allowed for every code, and the sentence around it for every kind of error. */
export interface ErrorWords {
  readonly allowed: { readonly [C in AllowedCode]: (values: AllowedValues<C>, show: Show) => string };
  readonly sentence: { readonly [C in TradeErrorCode]: (name: string, value: string, allowed: string) => string };
  readonly blank: string;
}

const plain: Show = (value) => String(Number(value.toPrecision(6)));

export interface As {
  /** How numbers are written; with six figures and no unit where it is left out. */
  readonly show?: Show | undefined;
  /** Replaces the value by what the user typed. */
  readonly shown?: string | undefined;
  /** Replaces the argument's name by the user's. */
  readonly name?: string | undefined;
}

/**
 * The sentence for a person: the argument, the value that came and what is allowed.
 *
 * @param error - what was thrown
 * @param words - of the reader's language
 * @param as - how it is written
 */
export function errorText(
  error: TradeError,
  words: ErrorWords,
  { show = plain, shown, name = error.parameter }: As = {},
): string {
  const { value, dimension } = error;
  const own =
    dimension !== undefined && typeof value === "number" && Number.isFinite(value)
      ? show(value, dimension)
      : quote(value, words.blank);
  return words.sentence[error.code](name, shown ?? own, allowedText(error.allowed, words, show));
}

/** What is allowed, without the argument and its value. */
export function allowedText(allowed: TradeError["allowed"], words: ErrorWords, show: Show = plain): string {
  return (words.allowed[allowed.is] as (values: object, show: Show) => string)(allowed, show);
}

/** Quotes a value for a message: text in quotes and cut at 40 characters, numbers as they are. */
export function quote(value: unknown, blank: string): string {
  if (typeof value === "string") return `"${value.length > 40 ? `${value.slice(0, 39)}…` : value}"`;
  if (typeof value === "number") return Number.isFinite(value) ? plain(value) : String(value);
  if (value === null || value === undefined) return blank;
  return typeof value === "boolean" ? String(value).toUpperCase() : Object.prototype.toString.call(value).slice(8, -1);
}
