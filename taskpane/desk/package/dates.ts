/** Dates of cells as serial numbers (ECMA-376 part 1, 18.17.4). Pure. */
const DAY = 86_400_000;

/**
 * "2026-03-05", "2026-03-05T13:30:00", "13:30" as a serial number; `undefined` when it is no date.
 *
 * @param date1904 - days counted from 1 January 1904 instead of 1900
 */
export function isoSerial(text: string, date1904: boolean): number | undefined {
  const m = /^\s*(?:(\d{4})-(\d{2})-(\d{2}))?(?:T?(\d{2}):(\d{2})(?::(\d{2})(\.\d+)?)?)?(?:Z|[+-]00:00)?\s*$/.exec(
    text,
  );
  if (!m || (m[1] === undefined && m[4] === undefined)) return undefined;
  const [hours, minutes, seconds] = [m[4], m[5], m[6]].map((part) => Number(part ?? 0)) as [number, number, number];
  if (hours > 24 || minutes > 59 || seconds > 59) return undefined;
  const time = (hours * 3600 + minutes * 60 + seconds + Number(m[7] ?? 0)) / 86_400;
  if (m[1] === undefined) return time;
  const [year, month, day] = [Number(m[1]), Number(m[2]), Number(m[3])];
  const at = new Date(Date.UTC(2000, month - 1, day));
  at.setUTCFullYear(year, month - 1, day);
  if (at.getUTCMonth() !== month - 1 || at.getUTCDate() !== day) return undefined;
  if (date1904) return (at.getTime() - Date.UTC(1904, 0, 1)) / DAY + time;
  const days = (at.getTime() - Date.UTC(1899, 11, 30)) / DAY;
  // The 1900 system counts a 29 February 1900 that never was.
  return (days < 61 ? days - 1 : days) + time;
}
