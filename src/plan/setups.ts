/** Who shares a setup: the rows that are planned on one machine. */
import type { ReadRow } from "../table/read.ts";

const machineOf = ({ row }: ReadRow) => row.machine?.toLowerCase();

/** How many rows share the setup of a row's machine; 1 for a row without one. */
export function sharedSetups(rows: readonly ReadRow[]): (read: ReadRow) => number {
  const perMachine = new Map<string, number>();
  for (const read of rows) {
    const key = machineOf(read);
    if (key !== undefined) perMachine.set(key, (perMachine.get(key) ?? 0) + 1);
  }
  return (read) => perMachine.get(machineOf(read) ?? "") ?? 1;
}
