/** Thread rows that the rules change a little. */
import { STEEL } from "./rule.ts";

/** M6 with the cutter bought for it, one and a half diameters deep, in the hole of a 4.9 drill as it stands. */
export const M6 = {
  ...STEEL,
  Operation: "thread mill",
  Thread: "M6",
  Tool: "TM-M6-S",
  "Start diameter": 4.9,
  Depth: 9,
} as const;
export const STEM = {
  ...STEEL,
  Operation: "thread mill",
  Thread: "M20x1.5-6g",
  Tool: "TM-M16-S",
  Depth: 15,
  "Start diameter": 19.9,
};
