/**
 * Days as numbers: 1 is 1 January 1900, and 60 the 29 February 1900 that never was, as spreadsheets have counted since
 * the first of them.
 */
import type { Value } from "../../model/types.ts";
import { Failure, isError, NUM, toNumber, VALUE } from "../values.ts";
import type { Definition, Definitions } from "../world.ts";
import { each, numbers, one, whole, whole_ } from "./arguments.ts";

const DAY = 86_400_000;
const FIRST = Date.UTC(1899, 11, 31);

export const toSerial = (time: number): number => {
  const days = (time - FIRST) / DAY;
  return days >= 60 ? days + 1 : days;
};
/** Midnight of the day as a point in UTC. */
const toDate = (serial: number): Date => {
  const days = Math.floor(serial);
  if (days < 0 || days > 2_958_465) throw new Failure(NUM);
  return new Date(FIRST + (days > 60 ? days - 1 : days) * DAY);
};

export const serialOf = (year: number, month: number, day: number): number => {
  const made = new Date(0);
  made.setUTCFullYear(year, month - 1, day);
  return toSerial(made.getTime());
};

const MONTHS = "jan feb mar apr may jun jul aug sep oct nov dec".split(" ");

/** Dates that mean one day wherever they are read: 2024-03-05, 5-Mar-2024, 5 March 2024; times as 14:30 or 14:30:15. */
export function dateInText(text: string): number | undefined {
  const [, date = "", clock = ""] =
    /^\s*(.*?)[ T]?(\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:\s*[ap]m)?)?\s*$/i.exec(text) ?? [];
  let time = 0;
  if (clock !== "") {
    const [, h = "0", m = "0", s = "0", half = ""] = /^(\d+):(\d+)(?::([\d.]+))?\s*([ap]m)?$/i.exec(clock) ?? [];
    const hours = (Number(h) % (half ? 12 : 100)) + (/p/i.test(half) ? 12 : 0);
    if (Number(m) > 59 || Number(s) >= 60) return undefined;
    time = (hours * 3600 + Number(m) * 60 + Number(s)) / 86_400;
    if (date.trim() === "") return time;
  }
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(date.trim());
  const named = /^(\d{1,2})[- ]([a-z]{3})[a-z]*[- ,]+(\d{4})$/i.exec(date.trim());
  const [year, month, day] = iso
    ? [Number(iso[1]), Number(iso[2]), Number(iso[3])]
    : named
      ? [Number(named[3]), MONTHS.indexOf(named[2]!.toLowerCase()) + 1, Number(named[1])]
      : [0, 0, 0];
  if (year < 1900 || month < 1 || month > 12 || day < 1) return undefined;
  const last = new Date(Date.UTC(year, month, 0)).getUTCDate();
  return day > last ? undefined : serialOf(year, month, day) + time;
}

const serial = (value: Value | undefined): number => {
  if (typeof value === "string") {
    const found = dateInText(value);
    if (found !== undefined) return found;
  }
  return toNumber(value ?? null);
};
const of = (run: (date: Date, days: number) => number): Definition =>
  each(1, 1, ([value]) => {
    const days = serial(value);
    // Day 0 and the leap day of 1900 are days that only spreadsheets know.
    return run(toDate(days), Math.floor(days));
  });
/** Seconds of the day, whole as clocks show them. */
const clock = (run: (seconds: number) => number): Definition =>
  each(1, 1, ([value]) => {
    const days = serial(value);
    if (days < 0) return NUM;
    return run(Math.round((days - Math.floor(days)) * 86_400) % 86_400);
  });

const monthsOn = (days: number, months: number, end: boolean): Value => {
  const from = toDate(days);
  const year = from.getUTCFullYear();
  const month = from.getUTCMonth() + months;
  const last = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  const made = serialOf(year, month + 1, end ? last : Math.min(last, from.getUTCDate()));
  return made < 0 ? NUM : made;
};

/** Monday is 1. */
const weekday = (days: number): number => ((((Math.floor(days) - 2) % 7) + 7) % 7) + 1;
const isoWeek = (days: number): number => {
  const thursday = Math.floor(days) - weekday(days) + 4;
  const year = toDate(thursday).getUTCFullYear();
  return Math.floor((thursday - serialOf(year, 1, 1)) / 7) + 1;
};

function workdays(from: number, to: number, free: readonly number[]): number {
  const [a, b] = from <= to ? [from, to] : [to, from];
  let n = 0;
  for (let day = Math.floor(a); day <= Math.floor(b); day++) if (weekday(day) < 6 && !free.includes(day)) n++;
  return from <= to ? n : -n;
}

const UNITS: Readonly<Record<string, (a: number, b: number) => number>> = {
  d: (a, b) => b - a,
  y: (a, b) => Math.floor(monthsBetween(a, b) / 12),
  m: (a, b) => monthsBetween(a, b),
  ym: (a, b) => monthsBetween(a, b) % 12,
};
function monthsBetween(a: number, b: number): number {
  const [x, y] = [toDate(a), toDate(b)];
  const months = (y.getUTCFullYear() - x.getUTCFullYear()) * 12 + y.getUTCMonth() - x.getUTCMonth();
  return y.getUTCDate() < x.getUTCDate() ? months - 1 : months;
}

export const dates: Definitions = {
  DATE: each(3, 3, ([y, m, d]) => {
    const year = Math.trunc(toNumber(y!));
    if (year < 0 || year > 9999) return NUM;
    const made = serialOf(year < 1900 ? year + 1900 : year, Math.trunc(toNumber(m!)), Math.trunc(toNumber(d!)));
    return made < 0 ? NUM : made;
  }),
  TIME: each(3, 3, ([h, m, s]) => {
    const seconds = Math.trunc(toNumber(h!)) * 3600 + Math.trunc(toNumber(m!)) * 60 + Math.trunc(toNumber(s!));
    return seconds < 0 ? NUM : (seconds % 86_400) / 86_400;
  }),
  YEAR: of((date, days) => (days === 0 ? 1900 : date.getUTCFullYear())),
  MONTH: of((date, days) => (days === 0 ? 1 : days === 60 ? 2 : date.getUTCMonth() + 1)),
  DAY: of((date, days) => (days === 0 ? 0 : days === 60 ? 29 : date.getUTCDate())),
  HOUR: clock((s) => Math.floor(s / 3600)),
  MINUTE: clock((s) => Math.floor(s / 60) % 60),
  SECOND: clock((s) => s % 60),
  DATEVALUE: each(1, 1, ([text]) => {
    const found = typeof text === "string" ? dateInText(text) : undefined;
    return found === undefined ? VALUE : Math.floor(found);
  }),
  TIMEVALUE: each(1, 1, ([text]) => {
    const found = typeof text === "string" ? dateInText(text) : undefined;
    return found === undefined ? VALUE : found - Math.floor(found);
  }),
  WEEKDAY: each(1, 2, ([value, kind]) => {
    const day = weekday(serial(value));
    const type = kind === undefined ? 1 : Math.trunc(toNumber(kind));
    if (type === 1) return (day % 7) + 1;
    if (type === 2) return day;
    if (type === 3) return day - 1;
    return type >= 11 && type <= 17 ? ((day - (type - 10) + 7) % 7) + 1 : NUM;
  }),
  ISOWEEKNUM: each(1, 1, ([value]) => isoWeek(serial(value))),
  WEEKNUM: each(1, 2, ([value, kind]) => {
    const type = kind === undefined ? 1 : Math.trunc(toNumber(kind));
    const days = Math.floor(serial(value));
    if (type === 21) return isoWeek(days);
    const first = type === 1 ? 7 : type === 2 ? 1 : type >= 11 && type <= 17 ? type - 10 : 0;
    if (first === 0) return NUM;
    const newYear = serialOf(toDate(days).getUTCFullYear(), 1, 1);
    const before = (weekday(newYear) - first + 7) % 7;
    return Math.floor((days - newYear + before) / 7) + 1;
  }),
  DAYS: each(2, 2, ([end, start]) => serial(end) - serial(start)),
  DATEDIF: each(3, 3, ([start, end, unit]) => {
    const [a, b] = [Math.floor(serial(start)), Math.floor(serial(end))];
    const run = typeof unit === "string" ? UNITS[unit.toLowerCase()] : undefined;
    return run === undefined || a > b ? NUM : run(a, b);
  }),
  EDATE: each(2, 2, ([start, months]) => monthsOn(serial(start), Math.trunc(toNumber(months!)), false)),
  EOMONTH: each(2, 2, ([start, months]) => monthsOn(serial(start), Math.trunc(toNumber(months!)), true)),
  NETWORKDAYS: whole(2, 3, ([start, end, free], spot, world) => {
    const [a, b] = [one(start, spot, world), one(end, spot, world)];
    if (isError(a)) return a;
    if (isError(b)) return b;
    return workdays(serial(a), serial(b), free === undefined ? [] : numbers([free], world));
  }),
  WORKDAY: whole(2, 3, ([start, days, free], spot, world) => {
    let day = Math.floor(serial(one(start, spot, world)));
    let left = whole_(days, spot, world);
    const holidays = free === undefined ? [] : numbers([free], world);
    const step = Math.sign(left);
    while (left !== 0) {
      day += step;
      if (weekday(day) < 6 && !holidays.includes(day)) left -= step;
    }
    return day;
  }),
  TODAY: { ...whole(0, 0, (_, __, world) => Math.floor(world.now())), volatile: true },
  NOW: { ...whole(0, 0, (_, __, world) => world.now()), volatile: true },
};
