/** How numbers and dates are written where the desk is used. */
export interface Locale {
  /** BCP 47 tag. */
  readonly tag: string;
  readonly decimal: "." | ",";
  /** True where 3/4/2026 is the fourth of March. */
  readonly monthFirst: boolean;
}

/** @param tag - BCP 47 tag, e.g. that of the browser; one that is not known counts as English */
export function localeOf(tag = "en-US"): Locale {
  try {
    const decimal = new Intl.NumberFormat(tag).formatToParts(1.5).find((part) => part.type === "decimal")?.value;
    // Asked when the first date is typed: the browser takes its time over it.
    let monthFirst: boolean | undefined;
    return {
      tag,
      decimal: decimal === "," ? "," : ".",
      get monthFirst() {
        monthFirst ??= isMonthFirst(tag);
        return monthFirst;
      },
    };
  } catch {
    return { tag: "en-US", decimal: ".", monthFirst: true };
  }
}

function isMonthFirst(tag: string): boolean {
  const parts = new Intl.DateTimeFormat(tag).formatToParts(new Date(2026, 2, 4)).map((part) => part.type);
  return parts.indexOf("month") < parts.indexOf("day") && parts[0] !== "year";
}
