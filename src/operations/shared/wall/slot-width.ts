/** How wide a slot is to be. */
import type { Row } from "../../../table/rows.ts";

/** Width of the slot [mm], where the row says it. */
export const slotWidth = (row: Row): number | undefined => row.totalWidth ?? row.finishDiameter;

/** Whether a cutter goes into a slot so wide; a hair of a rounded size is let pass. */
export const goesIn = (diameter: number, width: number): boolean => diameter <= 1.0001 * width;
