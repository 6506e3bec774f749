/** Worksheet functions: tap drills, drill names and sizes. */

import type { Allowed } from "../src/allowed.ts";
import { DRILL_SETS, type DrillSet, drillDiameter, drillName, drillNamed } from "../src/drill/sizes.ts";
import { tapDrill } from "../src/drill/tapdrill.ts";
import { TradeError } from "../src/errors.ts";
import { lifted } from "./lift.ts";
import { between, optional, positive, text, units } from "./params.ts";
import { basics, thread } from "./thread-param.ts";

const SETS: Allowed = { is: "drill-sets", sets: ["number", "letter", "fraction", "metric"] };

/** Words of drill sets, with spaces, commas or semicolons between them. */
const sets = optional(
  text("sets", SETS, (line): readonly DrillSet[] => {
    const words = line
      .toLowerCase()
      .split(/[\s,;]+/)
      .filter((w) => w !== "");
    const chosen = DRILL_SETS.filter((set) => words.includes(set));
    if (chosen.length === 0 || words.some((w) => !(DRILL_SETS as readonly string[]).includes(w))) {
      throw new TradeError("value", "sets", line, SETS);
    }
    return chosen;
  }),
);

// Sizes come in the system the drill is named in and convert here, so that 0.201 in stays 0.201.
const tap = lifted(
  [thread, units, optional(between("percent", 0, 100, { low: true })), sets],
  (t, u, percent, chosen) => drillDiameter(tapDrill({ standard: t.standard, ...basics(t) }, percent, chosen), u),
);
/**
 * Diameter of the customary drill before tapping; it may lie outside the limits of the minor diameter (9/16-18, 5/8-18).
 * @customfunction
 * @param thread Designation, such as "1/2-13 UNC-2B" or "M6".
 * @param units "mm" or "in".
 * @param [percent] Percent of full thread height; without it 75 for Unified threads, D − P for metric ones.
 * @param [sets] Drill sets to choose from: any of "number letter fraction metric".
 * @returns Diameter of the drill [mm or in].
 * @example
 * =CUT.TAPDRILL("1/4-20", "in") //=> 0.201
 * =CUT.TAPDRILL("M12", "mm") //=> 10.2
 */
export function TAPDRILL(thread: any[][], units: any[][], percent?: any[][], sets?: any[][]): any[][] {
  return tap(thread, units, percent, sets);
}

const named = lifted([positive("diameter", "length"), units, sets], (d, u, chosen) => drillName(d, chosen, u));
/**
 * Trade name of the standard drill nearest to a diameter, such as #7, F, 13/64 or 5.1 mm.
 * @customfunction
 * @param diameter Diameter [mm or in].
 * @param units "mm" or "in".
 * @param [sets] Drill sets to choose from: any of "number letter fraction metric"; without it all.
 * @returns Name of the drill.
 * @example
 * =CUT.DRILLNAME(0.201, "in") //=> #7
 * =CUT.DRILLNAME(0.201, "in", "fraction") //=> 13/64
 */
export function DRILLNAME(diameter: any[][], units: any[][], sets?: any[][]): any[][] {
  return named(diameter, units, sets);
}

const size = lifted([text("name", { is: "drill-name" }, (name) => drillNamed(name)), units], (drill, u) =>
  drillDiameter(drill, u),
);
/**
 * Diameter of a drill by its trade name.
 * @customfunction
 * @param name Name, such as "#7", "F", "13/64" or "5.1 mm".
 * @param units "mm" or "in".
 * @returns Diameter of the drill [mm or in].
 * @example
 * =CUT.DRILLSIZE("#7", "in") //=> 0.201
 * =CUT.DRILLSIZE("13/64", "mm") //=> 5.159375
 */
export function DRILLSIZE(name: any[][], units: any[][]): any[][] {
  return size(name, units);
}
