/** What a drawing says about its units: "DIMENSIONS ARE IN INCHES", "UNITS: MM", "MASSE IN MM"; not "DIMENSIONS IN BRACKETS ARE …". */
import type { Units } from "../units.ts";

const STATED =
  /(?:DIMENSIONS?|DIMS?\.?|UNITS?|SIZES|MEASUREMENTS|MA(?:SS|ß)E|EINHEIT(?:EN)?|COTES|DIMENSIONES|COTAS|QUOTE|DIMENSIONI|UNIT[ÀA]|寸法|単位)\s*(?:ARE|SONT|EN|IN|SON|SONO)?\s*[:=]?\s*(?:ARE|IN|EN)?\s*[:=]?\s*(MM\b|MILLIM|ミリ|INCH(?:ES)?\b|IN\b\.?(?!\s*[A-Za-z([])|POUCES|PULGADAS|POLLICI|ZOLL)/i;

/** The units that a line states for the drawing. */
export function statedUnits(line: string): Units | undefined {
  const said = STATED.exec(line)?.[1];
  if (said === undefined) return undefined;
  return /^(?:MM|MILLIM|ミリ)/i.test(said) ? "mm" : "in";
}
