/** How wide a slot is to be. */
import type { Row } from "../../../table/rows.ts";

/** Width of the slot [mm], where the row says it. */
export const slotWidth = (row: Row): number | undefined => row.totalWidth ?? row.finishDiameter;
