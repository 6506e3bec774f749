/** Italian words of callouts (common practice; from memory). */
import type { Words } from "./words.ts";

export const IT: Words = {
  marks: [
    ["PASSANT[EI]", "through"],
    ["PROFONDIT[ÀA]'?", "depth"],
    ["LAMATURA|LAMATO", "counterbore"],
    ["SVASATURA|SVASATO", "countersink"],
    ["FORATO", "drill"],
    ["ALESATO", "ream"],
    ["FILETTATO|MASCHIATO", "tap"],
    ["EQUIDISTANTI", "equally"],
    [String.raw`(?:ENTRAMBI|AMBO)\s+I\s+LATI`, "both"],
  ],
  counted: ["FOR[IO]", "VOLTE", "POSIZIONI"],
  quantity: ["QT[ÀA]"],
};
