/** How much of a file is read. A workbook beyond these is refused with a sentence, so that no file can use up the machine. */
export interface Limits {
  /** Bytes of all parts together when unpacked. */
  readonly inflated: number;
  /** Bytes of one part that has to be read, not only kept. */
  readonly part: number;
  /** Filled cells of all sheets together. */
  readonly cells: number;
  /** Parts in the package. */
  readonly parts: number;
  /** Elements of all parts together that are read, a part read twice counted twice. */
  readonly elements: number;
  /** Ranges of rules and merged cells on one sheet. */
  readonly ranges: number;
  /** Characters of shared formulas when spelled out, on one sheet. */
  readonly formulas: number;
}

/**
 * Our own judgement: a plan of 2,000 rows by 70 columns unpacks to about 6 MB and has 140,000 cells, so these leave room
 * for seven to twenty times as much; reading stays under 500 MB of memory and, whatever the file, about 2 s.
 */
export const LIMITS: Limits = {
  inflated: 128 * 1024 * 1024,
  part: 64 * 1024 * 1024,
  cells: 1_000_000,
  parts: 10_000,
  elements: 4_000_000,
  ranges: 200_000,
  formulas: 8_000_000,
};
