/**
 * Days as spreadsheets count them, for cells in which a designation was taken for a date: "1/4-20" becomes
 * 4 January 2020, and the cell hands over 43834.
 */

export interface Day {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

/** 1 January 1930 to 31 December 2099: two digits of a year begin with 1930 (common default; from memory). */
const [FIRST, LAST] = [10_959, 73_050];
/** Days from 30 December 1899 to 1 March of the year 0, from which years are counted so that leap days end them. */
const TO_YEAR_0 = 693_899;
const FOUR_CENTURIES = 146_097;

/**
 * Day that a serial number stands for where a date may have been made of a text: from 1930 to 2099. Undefined for
 * other numbers. The count of days is that of ECMA-376-1, 18.17.4.1.
 *
 *   In years that begin with March a day of the year d is in month (5·d + 2)/153, counted from March.
 *
 * @param serial - days from the end of 1899, as the 1900 date system counts them [-]
 */
export function dayLike(serial: number): Day | undefined {
  if (!Number.isInteger(serial) || serial < FIRST || serial > LAST) return undefined;
  const days = serial + TO_YEAR_0;
  const era = Math.floor(days / FOUR_CENTURIES);
  const ofEra = days - era * FOUR_CENTURIES;
  const ofYears = ofEra - Math.floor(ofEra / 1460) + Math.floor(ofEra / 36_524) - Math.floor(ofEra / 146_096);
  const yearOfEra = Math.floor(ofYears / 365);
  const ofYear = ofEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * ofYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: ofYear - Math.floor((153 * fromMarch + 2) / 5) + 1,
  };
}

/** What may have been typed where a day now stands: fractions first, month first, as it is done in inches. */
export function typedForDay({ year, month, day }: Day): string[] {
  const two = String(year % 100).padStart(2, "0");
  return [
    ...(day === 1 ? [`${month}-${two}`] : []),
    ...[`${month}/${day}`, `${day}/${month}`].flatMap((start) => [`${start}-${Number(two)}`, start]),
    ...[`${month}-${day}`, `${day}-${month}`],
  ];
}

/** What is to be said of a cell that holds a day, with the first of what may have been typed that is `possible`. */
export const takenForDate = (day: Day, possible: (typed: string) => boolean) =>
  ({ is: "taken-for-date", day, typed: typedForDay(day).find(possible) }) as const;
