/**
 * Bibliography. Formulas, tables and lists cite these ids (`@source ISO724`); a test checks that each id used
 * exists here and that each entry is used. Entries marked "from memory" were not at hand when they were cited.
 */
export interface Source {
  readonly title: string;
  readonly edition: string;
  /** Section, table or page, where one is meant throughout. */
  readonly where?: string;
}

export const SOURCES = {
  SP811: {
    title: "NIST Special Publication 811, Guide for the Use of the International System of Units",
    edition: "2008",
    where: "Appendix B",
  },
  BRENT1973: {
    title: "R. P. Brent, Algorithms for Minimization without Derivatives",
    edition: "1973",
    where: "chapter 4",
  },
  KIEFER1953: {
    title: "J. Kiefer, Sequential minimax search for a maximum, Proc. AMS 4",
    edition: "1953",
    where: "pp. 502–506",
  },
  ABRAMOWITZ: {
    title: "M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions",
    edition: "1964",
    where: "25.4.29",
  },
  COMMON: {
    title: "Common practice of the trade, without a published source",
    edition: "—",
  },
  MH: { title: "Machinery's Handbook", edition: "27th edition, 2004" },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;
