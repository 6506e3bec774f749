/** Reads ISO metric designations: "M6", "M6x1-6H", "M10×1.25 - 6g", "M12x1.75-4g6g", "M8x1-6H-LH". */
import type { Allowed } from "../allowed.ts";
import { TradeError } from "../errors.ts";
import { METRIC_SIZES } from "./metric-series.ts";
import type { Thread } from "./types.ts";

const NUMBER = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
const DESIGNATION = new RegExp(
  String.raw`^M\s*(${NUMBER})\s*(?:[xX*-]\s*(${NUMBER}))?\s*(?:-?\s*(\d[A-Za-z](?:\s*\d[A-Za-z])?))?\s*(?:-?\s*([LR]H))?$`,
  "i",
);

/**
 * Metric thread of a designation; undefined when the text does not have the shape of one. The case of the class letters counts.
 *
 *   M diameter [× pitch] [- class] [- LH]
 *
 * @param text - designation, single spaces, × written as x [-]
 * @param parameter - name of the argument for errors [-]
 * @param original - what was typed, for errors [-]
 * @returns the thread, or undefined [-]
 * @throws TradeError "unknown" when the shape is right and there is no such thread, with what exists
 * @source ISO261 ISO965
 * @example
 * readMetric("M10x1.25-6g", "thread", "M10x1.25-6g")?.pitch //=> 1.25
 */
export function readMetric(text: string, parameter: string, original: string): Thread | undefined {
  const match = DESIGNATION.exec(text);
  if (!match) return undefined;
  const unknown = (allowed: Allowed) => new TradeError("unknown", parameter, original, allowed);
  const major = Number(match[1]);
  const row = METRIC_SIZES.find((r) => r[0] === major);
  if (!row) {
    const near = [...METRIC_SIZES]
      .sort((a, b) => Math.abs(a[0] - major) - Math.abs(b[0] - major))
      .slice(0, 3)
      .sort((a, b) => a[0] - b[0]);
    throw unknown({ is: "metric-size", size: major, near: near.map((r) => r[0]) });
  }
  const [, coarse, fine, further = []] = row;
  const exists = [...(coarse > 0 ? [coarse] : []), ...fine, ...further].map((p) => `M${major}×${p}`);
  if (match[2] === undefined && coarse === 0) {
    throw unknown({ is: "metric-no-coarse", size: major, pitches: exists });
  }
  const pitch = match[2] === undefined ? coarse : Number(match[2]);
  const isCoarse = pitch === coarse;
  if (!isCoarse && !fine.includes(pitch) && !further.includes(pitch)) {
    throw unknown({ is: "metric-pitches", pitches: exists });
  }
  // No class means the medium class: 6H, and 5H up to M1.4 (ISO 965-1); 4H is all there is at 0.2 mm.
  const medium = major > 1.4 && pitch > 0.2 ? "6H" : pitch > 0.2 ? "5H" : "4H";
  const threadClass = (match[3] ?? medium).replace(/\s/g, "");
  const letters = threadClass.replace(/\d/g, "");
  const internal = /^[GH]{1,2}$/.test(letters);
  const external = /^[efgh]{1,2}$/.test(letters);
  if (!internal && !external) {
    throw unknown({ is: "metric-class", threadClass, kind: undefined });
  }
  if (letters.length === 2 && letters[0] !== letters[1]) {
    throw unknown({ is: "metric-class-letters", threadClass });
  }
  const grades = [...threadClass.replace(/\D/g, "")].map(Number);
  const allowed = internal
    ? grades.every((g) => g >= 4 && g <= 8)
    : grades[0]! >= 3 && grades[0]! <= 9 && (grades.length === 1 || [4, 6, 8].includes(grades[1]!));
  if (!allowed) {
    throw unknown({ is: "metric-class", threadClass, kind: internal ? "internal" : "external" });
  }
  const left = match[4]?.toUpperCase() === "LH";
  return {
    standard: "metric",
    designation: `M${major}×${pitch}-${threadClass}${left ? "-LH" : ""}`,
    kind: internal ? "internal" : "external",
    native: "mm",
    major,
    pitch,
    lead: pitch,
    series: isCoarse ? "coarse" : "fine",
    size: `M${major}`,
    threadClass,
    hand: left ? "left" : "right",
    profileAngle: 60,
  };
}
