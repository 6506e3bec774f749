/** French words of callouts (common practice; from memory). */
import type { Words } from "./words.ts";

export const FR: Words = {
  marks: [
    ["D[ÉE]BOUCHANT(?:E?S?)|TRAVERSANT(?:E?S?)", "through"],
    [String.raw`PROFONDEUR|PROF\b\.?`, "depth"],
    ["LAMAGE|LAM[ÉE]", "counterbore"],
    ["FRAISURE|FRAIS[ÉE]", "countersink"],
    ["PER[ÇC](?:AGE|[ÉE])", "drill"],
    ["AL[ÉE]S(?:AGE|[ÉE])", "ream"],
    ["TARAUD(?:AGE|[ÉE])", "tap"],
    ["[ÉE]QUIDISTANTS?", "equally"],
    [String.raw`DES\s+DEUX\s+C[ÔO]T[ÉE]S`, "both"],
  ],
  counted: ["TROUS?", "FOIS", "EMPLACEMENTS"],
  quantity: ["QT[ÉE]", "NOMBRE"],
};
