/** A tool as people describe it: "10mm 4 flute carbide endmill", "M6 tap", "drill 6.8". */
import { fold } from "./fold.ts";
import { likest } from "./found.ts";
import type { Tool, ToolKind } from "./lists.ts";
import type { Column } from "./quantity.ts";
import { meantBy } from "./words.ts";

const INCH = 25.4;

interface Told {
  readonly kinds: readonly string[];
  readonly substrates: readonly string[];
  /** Diameter [mm]; where no unit is said, in the tool's own. */
  readonly diameter?: { readonly value: number; readonly units?: "mm" | "in" };
  readonly teeth?: number;
  /** Pitch of a thread [mm]. */
  readonly pitch?: number;
  /** Name of a thread or of a drill, as a tool's name may hold it: "m6", "#7". */
  readonly mark?: string;
  /** Angle of the point [°]. */
  readonly angle?: number;
  readonly sizeClass?: string;
  /** Words that nobody knows. */
  readonly rest: readonly string[];
}

const NUMBER = "(\\d+(?:[.,]\\d+)?|\\d*[.,]\\d+)";
const FRACTION = "(?:(\\d+)[ -])?(\\d+)/(\\d+)";
const PATTERNS = {
  teeth:
    /(?:^|\s)(?:(\d{1,2})\s*-?\s*(?:flutes?|fl|teeth|tooth|schneider|schneiden|zahne|dents?|levres|dientes?|denti|taglienti|枚刃|刃)|z\s*=?\s*(\d{1,2}))(?=\s|$)/,
  metric: /(?:^|\s)(m\d+(?:[.,]\d+)?)(?:\s*[x×]\s*(\d+(?:[.,]\d+)?))?(?=\s|$)/,
  unified: /(?:^|\s)(#\d+|\d+\/\d+)-(\d{1,2})(?:\s*un[cf])?(?=\s|$)/,
  mark: /(?:^|\s)(?:(#\d{1,2})|(?:no|letter)\.?\s*([a-z]|\d{1,2}))(?=\s|$)/,
  angle: /(?:^|\s)(\d{2,3})\s*(?:°|deg)(?=\s|$)/,
  sizeClass: /(?:^|\s)(\d+(?:[.,]\d+)?)?\s*(h\d{1,2})(?=\s|$)/,
  fraction: new RegExp(`(?:^|[\\sø])${FRACTION}\\s*(?:"|in|inch|zoll|pouces?|pulg|poll)?(?=\\s|$)`),
  size: new RegExp(`(?:^|\\s)ø?\\s*${NUMBER}\\s*(mm|"|in|inch|zoll|pouces?|pulg|poll)?(?=\\s|$)`),
} as const;

/** Words that say nothing of which tool it is. */
const SILENT: ReadonlySet<string> = new Set(
  "tool dia diameter durchmesser diam ø solid with mit de en a per of fur the".split(" "),
);

const decimal = (text: string): number => Number(text.replace(",", "."));

/** What a description tells; undefined for one that is too long to be one. */
function told(text: string, columns: readonly Column[]): Told | undefined {
  if (text.length > 60) return undefined;
  let left = ` ${fold(text).replace(/-(?=[a-z])|[,;](?= |$)/g, " ")} `;
  const take = (pattern: RegExp): RegExpExecArray | undefined => {
    const found = pattern.exec(left) ?? undefined;
    if (found) left = `${left.slice(0, found.index)} ${left.slice(found.index + found[0].length)} `;
    return found;
  };
  const teeth = take(PATTERNS.teeth);
  const metric = take(PATTERNS.metric);
  const unified = take(PATTERNS.unified);
  const angle = take(PATTERNS.angle);
  const sized = take(PATTERNS.sizeClass);
  const mark = take(PATTERNS.mark);
  const fraction = take(PATTERNS.fraction);
  const size = fraction || sized?.[1] !== undefined ? undefined : take(PATTERNS.size);
  const words = left.split(/\s/).filter((word) => word !== "" && !SILENT.has(word));
  const columnOf = (key: string) => columns.find((column) => column.key === key)!;
  const substrate = known(words, columnOf("substrate"));
  const apart = known(substrate.rest, columnOf("kind"));
  // "VHM-Fräser" is a kind as a whole, and the carbide in it is one too.
  const { values: kinds, rest } = apart.values.length > 0 ? apart : known(words, columnOf("kind"));
  const substrates = substrate.values;
  const inches = fraction && Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
  return {
    kinds,
    substrates,
    rest,
    ...(inches !== undefined && { diameter: { value: inches, units: "in" as const } }),
    ...(sized?.[1] !== undefined && { diameter: { value: decimal(sized[1]) } }),
    ...(size && {
      diameter: {
        value: decimal(size[1]!),
        ...(size[2] !== undefined && { units: size[2] === "mm" ? ("mm" as const) : ("in" as const) }),
      },
    }),
    ...(teeth && { teeth: Number(teeth[1] ?? teeth[2]) }),
    mark: metric?.[1]?.replace(",", ".") ?? unified?.[1] ?? mark?.[1] ?? mark?.[2],
    ...(metric?.[2] !== undefined && { pitch: decimal(metric[2]) }),
    ...(unified && { pitch: INCH / Number(unified[2]) }),
    ...(angle && { angle: Number(angle[1]) }),
    ...(sized && { sizeClass: sized[2] }),
  };
}

/** The values that some of the words stand for, the most words at once first, and the words that are left. */
function known(words: readonly string[], column: Column): { values: readonly string[]; rest: readonly string[] } {
  for (let count = words.length; count > 0; count--)
    for (let from = 0; from + count <= words.length; from++) {
      const values = meantBy(words.slice(from, from + count).join(" "), column);
      if (values.length > 0) return { values, rest: [...words.slice(0, from), ...words.slice(from + count)] };
    }
  return { values: [], rest: words };
}

const near = (wanted: number, size = Number.NaN): boolean => Math.abs(size - wanted) <= 0.002 * wanted;

/** What a metric thread in its name says something of, beside taps. */
const THREADED: ReadonlySet<ToolKind | undefined> = new Set(["thread mill single", "thread mill full"]);

/** True where the tool's name holds a mark as a word of its own: "T-M6B" and "TM-M6x1-F" hold "m6", "T-M60" does not. */
function holds(name: string, mark: string): boolean {
  const folded = fold(name);
  for (let at = folded.indexOf(mark); at >= 0; at = folded.indexOf(mark, at + 1)) {
    const before = folded[at - 1];
    const after = folded[at + mark.length];
    if ((before === undefined || !/[\p{L}\p{N}.]/u.test(before)) && (after === undefined || !/[\d.]/.test(after)))
      return true;
  }
  return false;
}

/** The size of a metric thread [mm] by its mark: "m6"; not that of the drill of letter M. */
function metricSize(mark = ""): number | undefined {
  const size = /^m(\d.*)/.exec(mark)?.[1];
  return size === undefined ? undefined : Number(size);
}

function fits(tool: Tool, of: Told): boolean {
  const { kinds, substrates, diameter, teeth, pitch, mark, angle, sizeClass } = of;
  if (kinds.length > 0 && !kinds.includes(tool.kind ?? "")) return false;
  if (substrates.length > 0 && !substrates.includes(tool.substrate ?? "")) return false;
  if (teeth !== undefined && tool.teeth !== teeth) return false;
  if (pitch !== undefined && tool.pitch !== undefined && !near(pitch, tool.pitch)) return false;
  if (angle !== undefined && tool.pointAngle !== angle) return false;
  if (sizeClass !== undefined && (tool.sizeClass ?? "H7").toLowerCase() !== sizeClass) return false;
  if (diameter !== undefined) {
    const units = diameter.units ?? tool.units ?? "mm";
    if (!near(units === "in" ? diameter.value * INCH : diameter.value, tool.diameter)) return false;
  }
  if (mark === undefined) return true;
  // A metric tap has the diameter of its thread, whatever it is called.
  const metric = metricSize(mark);
  if (metric !== undefined && tool.kind === "tap") return near(metric, tool.diameter);
  if (metric !== undefined && !THREADED.has(tool.kind)) return false;
  return holds(tool.tool, mark);
}

/** Tools that fit a description, and whether all of its words were understood; none where it tells too little. */
export function describedTools(
  text: string,
  tools: readonly Tool[],
  columns: readonly Column[],
): { readonly fitting: readonly string[]; readonly sure: boolean } {
  const of = told(text, columns);
  const sized = of && (of.diameter ?? of.mark ?? of.angle) !== undefined;
  if (!of || !sized || (of.kinds.length === 0 && of.rest.length > 0)) return { fitting: [], sure: false };
  const fitting = tools.filter((tool) => fits(tool, of)).map(({ tool }) => tool);
  return { fitting, sure: of.kinds.length > 0 && of.rest.length === 0 };
}

/** Names of tools are short: they share a letter with anything. */
const ALIKE = 0.45;

/** Tools to offer for a name that is not in the list: those that fit its words, else of its kind and next in size. */
export function nearestTools(text: string, tools: readonly Tool[], columns: readonly Column[]): string[] {
  const { fitting } = describedTools(text, tools, columns);
  if (fitting.length > 0) return [...fitting];
  const of = told(text, columns);
  const kin = of && of.kinds.length > 0 ? tools.filter((tool) => of.kinds.includes(tool.kind ?? "")) : [];
  const metric = metricSize(of?.mark);
  const size = of?.diameter?.value ?? metric;
  if (kin.length > 0 && size !== undefined) {
    const units = metric === undefined ? of!.diameter?.units : "mm";
    const off = (diameter: number, unit: "mm" | "in") => Math.abs(diameter - (unit === "in" ? size * INCH : size));
    // A size without a unit may be in either.
    const away = ({ diameter = Number.POSITIVE_INFINITY }: Tool) =>
      Math.min(...(units ? [units] : (["mm", "in"] as const)).map((unit) => off(diameter, unit)));
    return [...kin]
      .sort((a, b) => away(a) - away(b))
      .slice(0, 3)
      .map(({ tool }) => tool);
  }
  const names = (kin.length > 0 ? kin : tools).map(({ tool }) => tool);
  return likest(text, names, kin.length > 0 ? 0 : ALIKE);
}
