/**
 * Dates as workbooks count them: days from the end of 1899, with a 29 February 1900 that never was (ECMA-376-1, 18.17.4.1),
 * or days from 1904.
 */
import type { Locale } from "./locale.ts";

const DAY = 86_400_000;
const EPOCH = Date.UTC(1899, 11, 30);
/** Days between the two ways to count. */
const SHIFT_1904 = 1462;

/** Serial number of a day; undefined when there is no such day or it is before the first one. */
export function serialOf(year: number, month: number, day: number, date1904: boolean): number | undefined {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (year < 1900 || year > 9999 || date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return undefined;
  let serial = Math.round((date.getTime() - EPOCH) / DAY);
  // Before March 1900 the day that never was has not been counted yet.
  if (serial < 61) serial -= 1;
  if (date1904) serial -= SHIFT_1904;
  return serial < 0 ? undefined : serial;
}

/** Year, month, day of a serial number. */
export function dayOf(serial: number, date1904: boolean): [number, number, number] {
  let days = Math.floor(serial) + (date1904 ? SHIFT_1904 : 0);
  if (days < 61) days += 1;
  const date = new Date(EPOCH + days * DAY);
  return [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
}

/** The serial number as 1900 counts, which the display of dates works with. */
export const as1900 = (serial: number, date1904: boolean): number => (date1904 ? serial + SHIFT_1904 : serial);

const TIME = /^(\d{1,3}):([0-5]\d)(?::([0-5]\d(?:\.\d{1,3})?))?$/;

function timeOf(text: string): number | undefined {
  const found = TIME.exec(text);
  if (!found) return undefined;
  return (Number(found[1]) * 3600 + Number(found[2]) * 60 + Number(found[3] ?? 0)) / 86_400;
}

export interface ReadDate {
  readonly serial: number;
  readonly numberFormat: string;
}

/**
 * Reads a date with a year of four digits: 2026-11-25, 25.11.2026, 3/4/2026 (order by locale); a time behind it.
 *
 * @param loose - the cell shows dates already: two digits of a year and a time alone are read as well
 */
export function readDate(text: string, locale: Locale, date1904: boolean, loose = false): ReadDate | undefined {
  const [, date = "", time] = /^(\S+?)(?:[ T](\d.*))?$/.exec(text.trim()) ?? [];
  const part = time === undefined ? 0 : timeOf(time);
  if (part === undefined || part >= 1) return undefined;
  const clock = time === undefined ? "" : " hh:mm";
  const made = (y: number, m: number, d: number, numberFormat: string): ReadDate | undefined => {
    const serial = serialOf(y, m, d, date1904);
    return serial === undefined ? undefined : { serial: serial + part, numberFormat: numberFormat + clock };
  };
  const year = (digits: string) =>
    digits.length === 4 ? Number(digits) : Number(digits) + (Number(digits) < 30 ? 2000 : 1900);
  let found = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(date);
  if (found) return made(Number(found[1]), Number(found[2]), Number(found[3]), "yyyy-mm-dd");
  found = (loose ? /^(\d{1,2})\.(\d{1,2})\.(\d{4}|\d{2})$/ : /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/).exec(date);
  if (found) return made(year(found[3]!), Number(found[2]), Number(found[1]), "dd.mm.yyyy");
  found = (loose ? /^(\d{1,2})\/(\d{1,2})\/(\d{4}|\d{2})$/ : /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/).exec(date);
  if (found) {
    const [first, second] = [Number(found[1]), Number(found[2])];
    return locale.monthFirst
      ? made(year(found[3]!), first, second, "m/d/yyyy")
      : made(year(found[3]!), second, first, "dd/mm/yyyy");
  }
  if (loose && time === undefined) {
    const alone = timeOf(date);
    if (alone !== undefined) return { serial: alone, numberFormat: "hh:mm:ss" };
  }
  return undefined;
}

const two = (n: number) => String(n).padStart(2, "0");

/** A date as text that reads back as the same number to the second; undefined when it does not. */
export function dateText(serial: number, date1904: boolean): string | undefined {
  if (serial < 0 || serial > 2_958_465) return undefined;
  const seconds = (serial - Math.floor(serial)) * 86_400;
  const whole = Math.round(seconds);
  if (whole >= 86_400) return undefined;
  const clock = `${two(Math.floor(whole / 3600))}:${two(Math.floor(whole / 60) % 60)}:${two(whole % 60)}`;
  if (Math.floor(serial) === 0) return clock;
  const [y, m, d] = dayOf(serial, date1904);
  const day = `${String(y).padStart(4, "0")}-${two(m)}-${two(d)}`;
  return whole === 0 ? day : `${day} ${clock}`;
}
