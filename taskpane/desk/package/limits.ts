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
}

/**
 * Our own judgement: a plan of 2,000 rows by 70 columns unpacks to about 6 MB and has 140,000 cells, so these leave room
 * for twenty times as much, and reading stays under 500 MB of memory.
 */
export const LIMITS: Limits = {
  inflated: 200 * 1024 * 1024,
  part: 64 * 1024 * 1024,
  cells: 1_000_000,
  parts: 20_000,
};
