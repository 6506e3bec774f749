/**
 * Printed entries of the ASME B1.1 tables that do not follow the standard's own formulas and rounding.
 * The table is what parts are gauged against, so the printed value stands. In the first four the exact product
 * lies less than 0.0000004 in above half of the last place and was printed a place lower.
 */

export interface PrintedDifference {
  /** Allowance [0.0001 in]. */
  readonly allowance?: number;
  /** Pitch-diameter tolerance [0.0001 in]. */
  readonly pitchTolerance?: number;
  /** Largest minor diameter of the rounded (UNR) root [0.0001 in]. */
  readonly roundedRootMax?: number;
  readonly reason: string;
}

/** Size, threads per inch and series, then class. */
export const UNIFIED_EXCEPTIONS: Readonly<Record<string, Readonly<Record<string, PrintedDifference>>>> = {
  "5/8-11 UNC": {
    "1A": {
      allowance: 16,
      reason: "0.3·0.005501 = 0.00165; printed 0.0016 (ASME B1.1 table, web copy; Machinery's Handbook)",
    },
    "2A": {
      allowance: 16,
      reason: "0.3·0.005501 = 0.00165; printed 0.0016 (ASME B1.1 table, web copy; Machinery's Handbook)",
    },
  },
  "1-1/8-7 UNC": {
    "2A": {
      pitchTolerance: 72,
      reason: "0.00725018; printed 1.0300 to 1.0228 (Machinery's Handbook, from memory)",
    },
  },
  "#6-32 UNC": {
    "3B": {
      pitchTolerance: 27,
      reason: "0.975·0.002821 = 0.0027505; printed 0.1177 to 0.1204 (Machinery's Handbook, from memory)",
    },
  },
  "7/16-20 UNF": {
    "1A": {
      pitchTolerance: 62,
      reason: "1.5·0.004167 = 0.0062505; printed 0.4037 to 0.3975 (Machinery's Handbook, from memory)",
    },
  },
  "15/16-12 UN": {
    "3A": {
      pitchTolerance: 41,
      reason: "0.75·0.005661 = 0.0042; printed 0.8834 to 0.8793 (ASME B1.1 table, web copy)",
    },
  },
  "2-1/2-10 UNS": {
    "2A": {
      roundedRootMax: 23790,
      reason: "the rule gives 2.3789; printed 2.3790 (Machinery's Handbook 27th edition p. 1755)",
    },
  },
};
