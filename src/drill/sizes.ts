/** Standard drills by diameter and by name. */
import { positive } from "../check.ts";
import { TradeError } from "../errors.ts";
import { DRILL_SETS, type Drill, type DrillSet, drillsOf } from "./catalogue.ts";

export { DRILL_SETS, type Drill, type DrillSet, drillsOf } from "./catalogue.ts";

const INCH = 25.4;
/** A diameter this far (as a share) beyond the ends of a set still has a nearest drill in it. */
const REACH = 0.1;

/** The drills of a set on both sides of a diameter; beyond an end the two that lie there. */
function around(drills: readonly Drill[], diameter: number): [Drill, Drill] {
  let low = 0;
  let high = drills.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (drills[middle]!.diameter <= diameter) low = middle;
    else high = middle;
  }
  return [drills[low]!, drills[high]!];
}

/** One nanometre [mm]: sizes that differ by less are the same. */
const SAME = 1e-6;

/**
 * Of some drills the nearest to a diameter: of two that are equally far the larger, of two of one size the first.
 *
 *   least |d − D|
 *
 * @param drills - in the order in which their names are preferred; diameter [mm]
 * @param diameter - D [mm], scalar, any
 * @returns drill, or undefined when there is none to choose from
 * @throws TradeError never
 * @source COMMON
 * @example
 * nearestOf(drillsOf("metric"), 8.75).name //=> "8.8 mm"
 */
export function nearestOf(drills: readonly Drill[], diameter: number): Drill | undefined {
  let best: Drill | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const drill of drills) {
    const far = Math.round(Math.abs(drill.diameter - diameter) / SAME);
    if (best === undefined || far < least || (far === least && drill.diameter > best.diameter + SAME))
      [best, least] = [drill, far];
  }
  return best;
}

/**
 * Standard drill nearest to a diameter. Of two that are equally far the larger one (a hole under size is the worse
 * fault); of two names for one size the one of the preferred system, then fraction, number, letter, metric.
 *
 *   least |d − D|
 *
 * @param diameter - D [mm], scalar, > 0
 * @param sets - sets to choose from; without it all four
 * @param prefer - system whose names win at equal size; without it inches
 * @returns drill; diameter [mm]
 * @throws TradeError "unknown" when the diameter is more than a tenth outside the sets
 * @source CIRCUITOUS B9411 ISO235
 * @example
 * nearestDrill(5.1054).name //=> "#7"
 * nearestDrill(5.1, ["metric"]).name //=> "5.1 mm"
 * nearestDrill(6.35).name //=> "1/4"
 */
export function nearestDrill(diameter: number, sets: readonly DrillSet[] = DRILL_SETS, prefer?: "mm" | "in"): Drill {
  positive("diameter", diameter);
  const order: DrillSet[] =
    prefer === "mm" ? ["metric", "fraction", "number", "letter"] : ["fraction", "number", "letter", "metric"];
  const named = order.filter((set) => sets.includes(set)).map(drillsOf);
  const best = nearestOf(
    named.flatMap((drills) => around(drills, diameter)),
    diameter,
  );
  const outside = named.every(
    (drills) => diameter < drills[0]!.diameter * (1 - REACH) || diameter > drills.at(-1)!.diameter * (1 + REACH),
  );
  if (best === undefined) throw new TradeError("unknown", "diameter", diameter, { is: "drill-set" });
  if (outside) {
    const { name, diameter: size } = best;
    throw new TradeError("unknown", "diameter", diameter, { is: "nearest-drill", name, diameter: size });
  }
  return best;
}

/**
 * Diameter of a drill in a system of units, free of conversion where the drill is named in it.
 *
 *   1 in = 25.4 mm
 *
 * @param drill - as nearestDrill and drillNamed give it
 * @param units - unit wanted
 * @returns d [mm or in]
 * @throws TradeError never
 * @source SP811
 * @example
 * drillDiameter(nearestDrill(5.1054), "in") //=> 0.201
 * drillDiameter(nearestDrill(5.1054), "mm") //=> 5.1054
 */
export function drillDiameter(drill: Drill, units: "mm" | "in"): number {
  if (drill.native === units) return drill.size;
  return units === "mm" ? drill.diameter : drill.size / INCH;
}

/**
 * Name of the standard drill nearest to a diameter.
 *
 *   nearestDrill, its name
 *
 * @param diameter - D [mm], scalar, > 0
 * @param sets - sets to choose from; without it all four
 * @param prefer - system whose names win at equal size; without it inches
 * @returns trade name
 * @throws TradeError "unknown" when the diameter is more than a tenth outside the sets
 * @source CIRCUITOUS B9411 ISO235
 * @example
 * drillName(6.5278) //=> "F"
 * drillName(5.1) //=> "5.1 mm"
 */
export function drillName(diameter: number, sets: readonly DrillSet[] = DRILL_SETS, prefer?: "mm" | "in"): string {
  return nearestDrill(diameter, sets, prefer).name;
}

const NUMBER_NAME = /^(?:#|NO\.?|NUMBER|NR\.?)\s*(\d{1,2})$/;
const LETTER_NAME = /^(?:LETTER\s*|LTR\.?\s*)?([A-Z])$/;
const FRACTION_NAME = /^(?:(\d)(?:\s*-\s*|\s+))?(\d{1,3})\s*\/\s*(\d{1,2})\s*(?:IN\.?|"|″)?$/;
const WHOLE_NAME = /^([1-3])\s*(?:IN\.?|"|″)$/;
const METRIC_NAME = /^(\d+(?:\.\d*)?|\.\d+)\s*MM$/;

/**
 * Drill of a name: "#7" or "No. 7", "F" or "letter F", "13/64", "1-1/16", "1 in", "5.1 mm". Case and spaces do not matter.
 *
 *   look-up; a name that is well formed but no standard size is not known
 *
 * @param name - trade name of a drill
 * @returns drill; diameter [mm]
 * @throws TradeError "blank" when nothing came; "unknown" when there is no such drill, with the nearest that exist
 * @source CIRCUITOUS B9411 ISO235
 * @example
 * drillNamed("#7").diameter //=> 5.1054
 * drillNamed("letter f").diameter //=> 6.5278
 */
export function drillNamed(name: string): Drill {
  const text = name.trim().toUpperCase().replace(/⁄/g, "/");
  if (text === "") throw new TradeError("blank", "name", name, { is: "drill-names" });
  const number = NUMBER_NAME.exec(text);
  if (number) {
    const drill = drillsOf("number").find((d) => d.name === `#${Number(number[1])}`);
    if (drill === undefined) throw new TradeError("unknown", "name", name, { is: "drill-numbers" });
    return drill;
  }
  const letter = LETTER_NAME.exec(text);
  if (letter) return drillsOf("letter").find((d) => d.name === letter[1])!; // A to Z: each is one
  const metric = METRIC_NAME.exec(text);
  if (metric) return sized("metric", Number(metric[1]), name);
  const whole = WHOLE_NAME.exec(text);
  if (whole) return sized("fraction", Number(whole[1]) * INCH, name);
  const fraction = FRACTION_NAME.exec(text);
  if (fraction && Number(fraction[3]) > 0) {
    return sized("fraction", (Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])) * INCH, name);
  }
  throw new TradeError("unknown", "name", name, { is: "drill-names" });
}

function sized(set: DrillSet, diameter: number, name: string): Drill {
  const drills = drillsOf(set);
  const above = drills.findIndex((d) => d.diameter >= diameter * (1 - 1e-9));
  const upper = drills[above];
  if (upper !== undefined && Math.abs(upper.diameter - diameter) <= 1e-9 * diameter) return upper;
  const names = [drills[(above < 0 ? drills.length : above) - 1], upper].flatMap((d) => (d ? [d.name] : []));
  throw new TradeError("unknown", "name", name, { is: "nearest-drills", names });
}
