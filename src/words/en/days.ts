/** English: days. */
import type { Day } from "../../calendar.ts";

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "4 Jan 2020". */
export const dayText = ({ year, month, day }: Day): string => `${day} ${MONTHS[month - 1]} ${year}`;
