/** Sentences about what stands in the cells and lists, and which tool is taken. */
import { dayLike } from "../../../calendar.ts";
import type { TradeError } from "../../../errors.ts";
import { ROW } from "../../../table/rows.ts";
import { errorText } from "../../errors.ts";
import { findingsOf, type Said } from "../../types.ts";
import { dayText } from "../days.ts";
import { errors } from "../errors.ts";
import { and } from "../lists.ts";

const unknown =
  (what: string, list: string) =>
  (f: { name: string; near: readonly string[] }): Said => [
    `${what} "${f.name}" is not in the list ${list}`,
    wayTo(f, list),
  ];
function wayTo({ name, near }: { name: string; near: readonly string[] }, list: string): string {
  const day = /^\d{5}$/.test(name) ? dayLike(Number(name)) : undefined;
  if (day !== undefined)
    return `${name} is also how a spreadsheet counts ${dayText(day)}: if a date was made of the name, format the cell as text and type it again`;
  return near.length > 0 ? `nearest there: ${near.join(", ")}` : `add it to the list ${list}`;
}
const listed =
  (list: string) =>
  (f: { name: string; error: TradeError }): Said => [
    `list ${list}, ${f.name}: ${errorText(f.error, errors)}`,
    "correct the list",
  ];
const MISFITS = {
  "profile angle": "other profile angle",
  pitch: "other pitch",
  "too large": "too large for the hole",
  "neck short": "neck too short",
  "tip flat": "tip flat too wide",
  "profile height": "profile too shallow",
  "neck rubs": "neck rubs",
  crest: "crest cut away",
  "does not fit": "does not fit",
} as const;
const MISSING = { diameter: "Diameter", teeth: "Teeth", tipFlat: "Tip flat" } as const;

export const table = findingsOf({
  // cells and lists
  "bad-cell": (f) => [errorText(f.error, errors), `correct ${f.error.parameter}`],
  "units-blank": () => ["Units is blank; mm or in is allowed", "say mm or in: units are never guessed"],
  "operation-blank": () => ["Operation is blank", "say what is done: drill, thread mill, bore, slot …"],
  "material-blank": () => ["Material is blank: no speed, feed or force", "name a material of the list"],
  "machine-blank": () => [
    "Machine is blank: spindle, power and feed limits are not checked, no time and no cost",
    "name a machine of the list",
  ],
  "row-incomplete": (f) => {
    const names = and(f.missing.map((key) => ROW[key].heading));
    return [`${names} ${f.missing.length > 1 ? "are" : "is"} blank`, `fill in ${names}`];
  },
  "unknown-material": unknown("material", "Materials"),
  "unknown-tool": unknown("tool", "Tools"),
  "unknown-machine": unknown("machine", "Machines"),
  "list-material": listed("Materials"),
  "list-tool": listed("Tools"),
  "list-machine": listed("Machines"),
  "cannot-be-computed": (f, say) => {
    // A value that is no number any more says nothing to the person who typed the sizes behind it.
    const beyond = typeof f.error.value === "number" && !Number.isFinite(f.error.value);
    return [
      beyond ? "a size in the row or in its lists leads beyond any number that means something" : say.error(f.error),
      "check the sizes in the row and in the lists it names",
    ];
  },
  fault: (f) => [
    `this should not happen, please report it: ${f.what}`,
    "check the sizes in the row and in the lists it names",
  ],
  // tools
  "tool-kind": (f) => [
    `${f.tool} is a ${f.kind}; ${f.wanted === "drill" || f.wanted === "thread mill" ? "a " : ""}${f.wanted} is wanted`,
    f.wanted === "drill" || f.wanted === "thread mill"
      ? `name a ${f.wanted}, or leave Tool blank`
      : "name another tool, or leave Tool blank",
  ],
  "unknown-class": (f, say) => [say.error(f.error), "correct the class"],
  "tool-incomplete": (f) => [
    `${f.tool} has no ${MISSING[f.missing]} in the list`,
    f.missing === "tipFlat" ? "fill it in: the path cannot be known without it" : "fill it in",
  ],
  "tool-proposed": (f) => [
    `proposed: ${f.tool}, the listed ${f.for === "thread" || f.for === "wall" ? "cutter" : f.for} with the best verdict${f.thread === undefined ? "" : ` for ${f.thread}`}, then the least cost`,
    "name it in the row to keep it",
  ],
  "tool-assumed": (f) => [
    `a plain HSS tool for ${f.operation} is assumed: the list has none that fits`,
    "check speed and feed against the tool's own figures",
  ],
  "no-tool-fits": (f) => {
    if (f.kind !== undefined)
      return [`no listed ${f.kind} fits this ${f.operation}`, "add a cutter to the list Tools, or name one"];
    const list = (f.misses ?? []).map(([why, n]) => `${n} × ${MISFITS[why]}`);
    return [
      `no listed thread mill can make ${f.thread} in ${f.material ?? "this material"}${list.length > 0 ? ` (${list.join(", ")})` : ": the list has none"}`,
      "add a cutter to the list Tools",
    ];
  },
  "no-drill-listed": (f, say) => [
    `no listed drill is ${say.value(f.size)}: a jobber drill of HSS with two lips and a ${f.pointAngle}° point is assumed`,
    "add the drill to the list Tools",
  ],
  "wrong-drill": (f, say) => [
    `${f.tool} is ${say.value(f.value)}; the hole is ${say.value(f.limit)}`,
    `take a ${f.drill ?? say.value(f.limit)} drill`,
  ],
});
