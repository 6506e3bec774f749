/** Spanish words of callouts (common practice; from memory). */
import type { Words } from "./words.ts";

export const ES: Words = {
  marks: [
    ["PASANTES?", "through"],
    ["PROFUNDIDAD|PROFUNDO", "depth"],
    ["AVELLANADO", "countersink"],
    ["TALADR(?:O|ADO)", "drill"],
    ["ESCARIADO", "ream"],
    ["ROSCADO", "tap"],
    [String.raw`AMBOS\s+LADOS`, "both"],
    ["EQUIDISTANTES", "equally"],
  ],
  counted: ["AGUJEROS?", "TALADROS", "VECES", "LUGARES"],
  quantity: ["CANTIDAD"],
};
