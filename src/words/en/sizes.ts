/** Sizes that a tolerance is on. */
import type { SizeName } from "../../findings.ts";

export const sizes: Readonly<Record<SizeName, string>> = {
  "pitch diameter": "pitch diameter",
  "finished diameter": "finished diameter",
  "wall error": "error of the wall",
};
