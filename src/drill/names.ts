/** Reads the names of drills as the trade writes them. */
import { TradeError } from "../errors.ts";
import { type Drill, type DrillSet, drillsOf } from "./sizes.ts";

const INCH = 25.4;

const NUMBER_NAME = /^(?:#|NO\.?\s*|NUMBER\s*|NR\.?\s*)\s*(\d{1,2})$/;
const LETTER_NAME = /^(?:LETTER\s*|LTR\.?\s*)?([A-Z])$/;
const FRACTION_NAME = /^(?:(\d)(?:\s*-\s*|\s+))?(\d{1,3})\s*\/\s*(\d{1,2})\s*(?:IN\.?|"|″)?$/;
const WHOLE_NAME = /^([1-3])\s*(?:IN\.?|"|″)$/;
const METRIC_NAME = /^(\d+\.?\d*|\.\d+)\s*MM$/;

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
  if (text === "") throw new TradeError("blank", "name", name, KNOWN);
  const number = NUMBER_NAME.exec(text);
  if (number) return found(drillsOf("number"), (d) => d.name === `#${Number(number[1])}`, name, "#1 to #80 are known");
  const letter = LETTER_NAME.exec(text);
  if (letter) return found(drillsOf("letter"), (d) => d.name === letter[1], name, "A to Z are known");
  const metric = METRIC_NAME.exec(text);
  if (metric) return sized("metric", Number(metric[1]), name);
  const whole = WHOLE_NAME.exec(text);
  if (whole) return sized("fraction", Number(whole[1]) * INCH, name);
  const fraction = FRACTION_NAME.exec(text);
  if (fraction && Number(fraction[3]) > 0) {
    return sized("fraction", (Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])) * INCH, name);
  }
  throw new TradeError("unknown", "name", name, KNOWN);
}

const KNOWN = 'names such as "#7", "F", "13/64", "1-1/16", "1 in" and "5.1 mm" are known';

function found(drills: readonly Drill[], is: (drill: Drill) => boolean, name: string, allowed: string): Drill {
  const drill = drills.find(is);
  if (drill === undefined) throw new TradeError("unknown", "name", name, allowed);
  return drill;
}

function sized(set: DrillSet, diameter: number, name: string): Drill {
  const drills = drillsOf(set);
  const above = drills.findIndex((d) => d.diameter >= diameter * (1 - 1e-9));
  const upper = drills[above];
  if (upper !== undefined && Math.abs(upper.diameter - diameter) <= 1e-9 * diameter) return upper;
  const nearest = [drills[(above < 0 ? drills.length : above) - 1], upper].flatMap((d) => (d ? [d.name] : []));
  throw new TradeError("unknown", "name", name, `the nearest that exist: ${nearest.join(" and ")}`);
}
