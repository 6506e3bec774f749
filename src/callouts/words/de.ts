/** German words of callouts (common practice). */
import type { Words } from "./words.ts";

export const DE: Words = {
  marks: [
    ["DURCH(?:GEHEND)?(?:E[NS]?)?", "through"],
    ["TIEFE?", "depth"],
    ["FLACHSENKUNG", "counterbore"],
    ["(?:AN)?SENKUNG", "countersink"],
    ["KERNLOCH", "pilot"],
    ["LK|LOCHKREIS", "circle"],
    ["BEIDSEITIG", "both"],
    ["GEBOHRT", "drill"],
    ["GERIEBEN", "ream"],
    ["LINKS(?:GEWINDE)?", "left"],
  ],
  counted: ["ST(?:Ü|UE|U)CK", "STK", "BOHRUNGEN", "L(?:Ö|OE|O)CHER", "MAL"],
  quantity: ["ANZAHL"],
};
