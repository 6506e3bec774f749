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
    const parts = new Intl.DateTimeFormat(tag).formatToParts(new Date(2026, 2, 4)).map((part) => part.type);
    return {
      tag,
      decimal: decimal === "," ? "," : ".",
      monthFirst: parts.indexOf("month") < parts.indexOf("day") && parts[0] !== "year",
    };
  } catch {
    return { tag: "en-US", decimal: ".", monthFirst: true };
  }
}
