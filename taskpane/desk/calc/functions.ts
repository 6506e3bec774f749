/** Every function that formulas may call here, by name. */
import { dates } from "./functions/dates.ts";
import { library } from "./functions/library.ts";
import { logic } from "./functions/logic.ts";
import { lookup } from "./functions/lookup.ts";
import { maths } from "./functions/maths.ts";
import { ours } from "./functions/ours.ts";
import { shapes } from "./functions/shapes.ts";
import { text } from "./functions/text.ts";
import { totals } from "./functions/totals.ts";
import type { Definition } from "./world.ts";

const ALL: ReadonlyMap<string, Definition> = new Map(
  Object.entries({ ...library, ...maths, ...dates, ...text, ...logic, ...lookup, ...shapes, ...totals, ...ours }),
);

/** Names that files and newer programs put before a function's own. */
const PREFIX = /^(?:_xl(?:fn|ws|udf)\.)+/i;

/** Files that count days from 1904 are rare: what reads days is left to the program that wrote them. */
export function functionNamed(name: string, date1904: boolean): Definition | undefined {
  const plain = name.replace(PREFIX, "").toUpperCase();
  return date1904 && plain in dates ? undefined : ALL.get(plain);
}
export const knownFunctions = (): string[] => [...ALL.keys()].sort();
