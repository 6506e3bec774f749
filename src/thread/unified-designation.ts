/** Reads Unified designations: "1/2-13 UNC-2B", "#10-32 UNF", "10-24", ".4375-14 UNC-2A LH". */
import type { Allowed } from "../allowed.ts";
import { TradeError } from "../errors.ts";
import type { Thread } from "./types.ts";
import { listedSpecials, NUMBER_SIZES, type SizeEntry, UNIFIED_SIZES, type UnifiedSeries } from "./unified-series.ts";

const SIZE = String.raw`(?:(?:#|NO\.?)\s*\d{1,2}|(?:\d+(?:\s*-\s*|\s+))?\d+\s*\/\s*\d+|\d*\.\d+|\d+\.?)`;
const TPI = String.raw`(?:\d+(?:\s*-\s*|\s+)1\s*\/\s*2|\d+(?:\.\d+)?)`;
const DESIGNATION = new RegExp(
  String.raw`^(${SIZE})\s*(?:"|″|”|IN\.?)?\s*-\s*(${TPI})\s*(?:-?\s*([A-Z]+))??\s*(?:-?\s*(\d{1,2}\s*[A-Z]))?\s*(?:-?\s*(LH|RH))?$`,
);
const SERIES = /^(N|UN|UNR|UNJ)(C|F|EF|S)?$/;
/** Smallest and largest special thread the formulas are meant for (ASME B1.1 tables): diameter [in], threads per inch. */
const SPECIAL = { low: 0.06, high: 6, coarse: 3, fine: 80 };

/**
 * Unified thread of a designation; undefined when the text does not have the shape of one.
 *
 *   size - threads per inch [series] [- class] [- LH]
 *
 * @param text - designation, upper case, single spaces [-]
 * @param parameter - name of the argument for errors [-]
 * @param original - what was typed, for errors [-]
 * @returns the thread, or undefined [-]
 * @throws TradeError "unknown" when the shape is right and there is no such thread, with what exists
 * @source ASMEB11
 * @example
 * readUnified("1/2-13 UNC-2B", "thread", "1/2-13 UNC-2B")?.tpi //=> 13
 */
export function readUnified(text: string, parameter: string, original: string): Thread | undefined {
  const match = DESIGNATION.exec(text);
  if (!match) return undefined;
  const [, sizeText = "", tpiText = "", seriesText, classText, hand] = match;
  const unknown = (allowed: Allowed) => new TradeError("unknown", parameter, original, allowed);

  const tpi = threadsPerInch(tpiText);
  const word = seriesText ?? "";
  const parts = SERIES.exec(word);
  if (word !== "" && (!parts || parts[1] === "N")) {
    throw unknown({ is: "unified-series", word });
  }
  const form = (parts?.[1] ?? "UN") as "UN" | "UNR" | "UNJ";
  const wanted = (word === "" ? undefined : `UN${parts?.[2] ?? ""}`) as UnifiedSeries | undefined;

  const entry = sizeOf(sizeText, tpi);
  const special = wanted === "UNS";
  if (typeof entry === "number" && !special) {
    throw unknown({ is: "unified-size", size: sizeText.trim(), near: nearest(entry) });
  }
  const name = typeof entry === "number" ? decimalName(entry) : entry.name;
  const major = typeof entry === "number" ? entry : entry.major;
  const pitches = typeof entry === "number" ? [] : entry.pitches;
  const standard = pitches.find((p) => p.tpi === tpi);
  const { low, high, coarse, fine } = SPECIAL;
  const possible = major >= low && major <= high && tpi >= coarse && tpi <= fine && tpi * major >= 3;
  if (special) {
    if (standard) throw unknown({ is: "unified-not-special", name: `${name}-${tpi}`, series: standard.series });
    if (!possible) {
      throw unknown({ is: "unified-specials", low, high, coarse, fine });
    }
  } else if (!standard || (wanted !== undefined && standard.series !== wanted)) {
    const exist = pitches.map((p) => `${name}-${p.tpi} ${p.series}`);
    const meant = { name: `${name}-${tpi} UNS`, listed: listedSpecials(name).includes(tpi) };
    throw unknown({ is: "unified-pitches", exist, special: possible ? meant : undefined });
  }
  const series = special ? "UNS" : (standard?.series ?? "UN");

  const threadClass = classText?.replace(/\s/g, "") ?? (form === "UNJ" ? "3B" : form === "UNR" ? "2A" : "2B");
  if (!/^[123][AB]$/.test(threadClass)) {
    throw unknown({ is: "thread-class", standard: "unified", threadClass });
  }
  const kind = threadClass.endsWith("A") ? "external" : "internal";
  if (form === "UNR" && kind === "internal") throw unknown({ is: "unr-external" });
  if (form === "UNJ" && !threadClass.startsWith("3")) throw unknown({ is: "unj-classes" });

  const suffix = series === "UN" ? "" : series.slice(2);
  const left = hand === "LH";
  return {
    standard: "unified",
    designation: `${name}-${tpi} ${form}${suffix}-${threadClass}${left ? "-LH" : ""}`,
    kind,
    native: "in",
    major,
    pitch: 1 / tpi,
    tpi,
    lead: 1 / tpi,
    series,
    form,
    size: name,
    threadClass,
    hand: left ? "left" : "right",
    profileAngle: 60,
  };
}

/** "13", "4.5", "4-1/2", "4 1/2". */
function threadsPerInch(text: string): number {
  const half = /^(\d+)\D+1\s*\/\s*2$/.exec(text);
  return half ? Number(half[1]) + 0.5 : Number(text);
}

/** The standard size that is meant, or its diameter [in] when there is none. */
function sizeOf(text: string, tpi: number): SizeEntry | number {
  const numbered = /^(?:#|NO\.?)\s*(\d+)$/.exec(text);
  const bare = /^\d+$/.test(text) ? Number(text) : undefined;
  if (numbered) {
    const name = `#${Number(numbered[1])}`;
    return UNIFIED_SIZES.find((s) => s.name === name) ?? 0.06 + 0.013 * Number(numbered[1]);
  }
  if (bare !== undefined && NUMBER_SIZES.has(bare)) {
    // "6-32" is No. 6, "6-4" six inches: the finer pitch tells. Inch sizes end at 6 and at 32 threads per inch.
    const size = UNIFIED_SIZES.find((s) => s.name === `#${bare}`);
    if (size && (bare === 0 || bare > 6 || tpi > 32 || size.pitches.some((p) => p.tpi === tpi))) return size;
  }
  const inches = inchValue(text);
  return UNIFIED_SIZES.find((s) => Math.abs(s.major - inches) < 1e-9) ?? inches;
}

function inchValue(text: string): number {
  const fraction = /^(?:(\d+)\D+)?(\d+)\s*\/\s*(\d+)$/.exec(text);
  if (!fraction) return Number(text);
  return Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
}

function decimalName(inches: number): string {
  return String(Number(inches.toFixed(6)));
}

/** Names of the three sizes nearest to a diameter. */
function nearest(inches: number): string[] {
  return [...UNIFIED_SIZES]
    .sort((a, b) => Math.abs(a.major - inches) - Math.abs(b.major - inches))
    .slice(0, 3)
    .sort((a, b) => a.major - b.major)
    .map((s) => s.name);
}
