/** English: what arguments may be. */
import type { ThreadFamily } from "../../allowed.ts";
import type { ErrorWords } from "../errors.ts";
import { dayText } from "./days.ts";
import { all, and, or } from "./lists.ts";

const FAMILIES: Readonly<Record<ThreadFamily, string>> = {
  "american pipe": "American pipe threads (NPT, NPTF, NPS …)",
  acme: "ACME threads",
  buttress: "buttress threads",
  trapezoidal: "trapezoidal threads (Tr)",
  "sealed pipe": "pipe threads sealed on the thread (R, Rc, Rp)",
  whitworth: "Whitworth and BA threads",
  round: "round threads (Rd)",
  conduit: "steel conduit threads (Pg)",
  mj: "MJ threads",
  miniature: "miniature UNM threads",
  "several starts": "threads with several starts",
};
/** Classes of each standard, for a class that has not even the shape of one. */
const CLASSES = {
  unified: "1A, 2A, 3A (external) and 1B, 2B, 3B (internal) do",
  metric: "internal classes are such as 6H (4H to 8H, 5G to 7G), external ones such as 6g (3 to 9 with e, f, g or h)",
  pipe: "external threads are A or B, internal threads have no letter",
};
const INTERNAL = "4H to 8H and 5G to 7G, also two-part such as 5H6H (pitch, then minor diameter)";
const EXTERNAL = "3 to 9 with e, f, g or h, also two-part such as 4g6g (pitch, then major diameter)";
const METRIC_CLASSES = {
  internal: INTERNAL,
  external: `${EXTERNAL}, grade 4, 6 or 8 on the major diameter`,
};
const OPEN = {
  "internal major": "largest major diameter for an internal thread",
  "external minor": "limits for the minor diameter of an external thread",
  "external minor least": "smallest minor diameter for an external thread",
};
const ROOT_GAUGE = ", only that of the gauge and the root radius";

const cellUnits = (units: readonly string[]) => (units.length === 0 ? "without a unit" : `alone or with ${or(units)}`);

export const errors: ErrorWords = {
  sentence: {
    blank: (name, _, allowed) => `${name} is blank; ${allowed}`,
    value: (name, value, allowed) => `${name} is ${value}; ${allowed}`,
    range: (name, value, allowed) => `${name} is ${value}; ${allowed}`,
    unknown: (name, value, allowed) => `${name} ${value} is not known; ${allowed}`,
    unsolvable: (name, value, allowed) => `no answer for ${name} ${value}: ${allowed}`,
  },
  blank: "blank",
  allowed: {
    number: () => "a number is wanted",
    "above-zero": () => "more than 0 is allowed",
    "from-zero": () => "0 or more is allowed",
    whole: ({ least, most }) =>
      `a whole number of at least ${least}${most === Number.POSITIVE_INFINITY ? "" : ` and at most ${most}`} is allowed`,
    between: ({ low, high, open, dimension }, show) => {
      const from = `${open === "low" || open === "both" ? "more than" : "at least"} ${show(low, dimension)}`;
      if (high === Number.POSITIVE_INFINITY) return `${from} is allowed`;
      return `${from} and ${open === "high" || open === "both" ? "less than" : "at most"} ${show(high, dimension)} is allowed`;
    },
    below: ({ high, dimension }, show) => `less than ${show(high, dimension)} is allowed`,
    "covered-to": ({ high, dimension }, show) => `at most ${show(high, dimension)} is covered`,
    "above-argument": ({ argument, low, dimension }, show) =>
      `more than ${argument}, ${show(low, dimension)}, is allowed`,
    "other-than-argument": ({ argument }) => `a diameter other than ${argument} is allowed`,
    "beyond-numbers": () => "the answer is beyond any number that means something",
    "no-change-of-sign": ({ upTo }) => `no change of sign up to ${upTo}`,

    "one-of": ({ words }) => `${or(words)} is allowed`,
    "one-of-texts": ({ texts }) => `${or(texts.map((text) => `"${text}"`))} is allowed`,
    "one-of-angles": ({ angles }) => `${or(angles)} degrees is allowed`,
    chamfers: ({ words, most }) => `${all(words)} or a number of pitches up to ${most} is allowed`,
    "in-list": ({ near }) => (near.length > 0 ? `nearest in the list: ${all(near)}` : "nothing like it is in the list"),

    "no-error-value": () => "a value is wanted, not an error",
    "one-meaning": ({ words }) => `it may mean ${or(words)}: write one of them`,
    "decimal-mark": ({ decimal, whole }) => `its comma may mark decimals or thousands: write ${decimal} or ${whole}`,
    "one-number": ({ units }) => `one number is allowed, ${cellUnits(units)}`,
    "number-limits": ({ whole, low, high, openLow, openHigh, units }) => {
      const from = low === undefined ? "" : openLow ? ` more than ${low}` : ` of at least ${low}`;
      const to = high === undefined ? "" : `${from ? " and" : ""} ${openHigh ? "less than" : "at most"} ${high}`;
      return `${whole ? "a whole number" : "a number"}${from}${to} is allowed${units ? `, ${cellUnits(units)}` : ""}`;
    },
    "true-or-false": () => "TRUE or FALSE is allowed",
    "row-units-first": () => "Units must say mm or in before a size can be read",
    "taken-for-date": ({ day, typed }) =>
      `the cell holds the date ${dayText(day)}, which the spreadsheet made of what was typed: format the cell as text and type it again${typed === undefined ? "" : `, such as ${typed}`}`,

    "drill-name": () => 'a name such as "#7", "F", "13/64" or "5.1 mm" is allowed',
    "drill-names": () => 'names such as "#7", "F", "13/64", "1-1/16", "1 in" and "5.1 mm" are known',
    "drill-numbers": () => "#1 to #80 are known",
    "drill-set": () => "no drill set is named",
    "drill-sets": ({ sets }) => `one or more of "${sets.join(" ")}" is allowed`,
    "nearest-drill": ({ name, diameter }, show) =>
      `the nearest standard drill is ${name} (${show(diameter, "length")})`,
    "nearest-drills": ({ names }) => `the nearest that exist: ${names.join(" and ")}`,
    "nearest-drill-stock": ({ name, diameter }, show) =>
      `the nearest standard drill is ${name} (${show(diameter, "length")}), which leaves too much or too little stock`,

    "class-name": () => 'an ISO 286 class such as "H7" or "g6" is allowed',
    "class-names": () => 'classes such as "H7" (holes, capitals) and "g6" (shafts, small letters) are known',
    "class-kind": ({ kind }) => `here a ${kind}'s class (${kind === "hole" ? "capitals" : "small letters"}) is wanted`,
    "class-letters": ({ letters }) => `the letters covered are ${all(letters)}`,
    "class-grades": ({ letter, grades }) => `${letter} exists in the grades ${and(grades)}`,
    "class-to-grade": ({ letter, grade }) => `${letter} exists up to grade ${grade}`,
    "class-from-size": ({ letter, size }) => `${letter} begins over ${size} mm`,
    "class-not-to-size": ({ letter, size }) => `${letter} is not used up to ${size} mm`,
    "fit-names": () => 'a fit names the hole first, such as "H7/g6"',
    grades: () => "IT01, IT0 and IT1 to IT18 exist",

    "thread-name": () => 'a designation such as "1/2-13 UNC-2B", "M6" or "G1/4" is allowed',
    "thread-names": () =>
      'designations such as "1/2-13 UNC-2B", "#10-32 UNF", "M6", "M10×1.25-6g" and "G1/4A" are known',
    "taper-pipe-names": () => 'designations such as "1/4-18 NPT" and "1/2-14 NPTF" are known',
    "thread-not-covered": ({ family }) => `${FAMILIES[family]} are not covered yet`,
    "pipe-thread-name": () => "write this pipe thread as G and its size, such as G1/4 or G1/4A",
    "one-thread": () => "a fit names two threads; write one of them",
    "thread-class": ({ standard, threadClass }) => `class ${threadClass} does not exist; ${CLASSES[standard]}`,
    "metric-class": ({ threadClass, kind }) =>
      `tolerance class ${threadClass} does not exist; ${kind ? METRIC_CLASSES[kind] : `internal ${INTERNAL}; external ${EXTERNAL}`}`,
    "metric-class-letters": ({ threadClass }) =>
      `tolerance class ${threadClass} has two positions; both parts take the same letter`,
    "metric-size": ({ size, near }) =>
      `there is no metric size M${size} from M1 to M64; the nearest are M${near.join(", M")}`,
    "metric-pitches": ({ pitches }) => `for this size there ${pitches.length > 1 ? "are" : "is"} ${all(pitches)}`,
    "metric-no-coarse": ({ size, pitches }) => `M${size} has no coarse pitch: write ${or(pitches)}`,
    "pipe-size": ({ size, sizes }) => `there is no size G${size}; the sizes are G${sizes.join(", G")}`,
    "pipe-pitch": ({ size, tpi }) => `G${size} has ${tpi} threads per inch`,
    "taper-pipe-sizes": ({ sizes }) => `the sizes are ${all(sizes)}`,
    "taper-pipe-pitch": ({ tpi }) => `this size has ${tpi} threads per inch`,
    "unified-series": ({ word }) =>
      `series "${word}" is not one of UNC, UNF, UNEF, UN, UNS, their UNR forms (UNRC, UNRF …) or UNJ forms (UNJC, UNJF …)`,
    "unified-size": ({ size, near }) => `there is no standard Unified size ${size}; the nearest are ${all(near)}`,
    "unified-not-special": ({ name, series }) => `${name} is ${series}, not a special thread`,
    "unified-specials": ({ low, high, coarse, fine }) =>
      `special threads from ${low} to ${high} in and ${coarse} to ${fine} threads per inch are known`,
    "unified-pitches": ({ exist, special }) =>
      `for this size there are ${all(exist)}; other pitches are special${special ? `: write ${special.name}${special.listed ? " (ASME B1.1 lists it)" : ""}` : " and carry UNS"}`,
    "unr-external": () => "UNR is a root form of external threads: 1A, 2A or 3A",
    "unj-classes": () => "UNJ threads have the classes 3A and 3B",
    "limit-open": ({ standard, of }) =>
      `${standard} sets no ${OPEN[of]}${standard === "ISO 965-1" && of === "external minor least" ? ROOT_GAUGE : ""}`,
    "unj-root-open": () =>
      "the root of an external UNJ thread is a radius; limits of its minor diameter are not covered yet",
    "flat-too-wide": ({ kind, tip, root, widest }, show) => {
      const [which, beyond] = kind === "internal" ? ["major", "under"] : ["minor", "over"];
      return `the ${which} diameter would be ${show(tip, "length")}, ${beyond} the basic ${show(root, "length")}; a flat of at most ${show(widest, "length")} will do`;
    },
    "no-tolerance": ({ diameter, grade, pitch }) =>
      `ISO 965-1 has no ${diameter}-diameter tolerance of grade ${grade} for a pitch of ${pitch} mm`,
    "no-position": ({ position, pitch }) => `ISO 965-1 has no position ${position} for a pitch of ${pitch} mm`,

    segments: () => "at least one segment is wanted",
    "segment-rows": () =>
      "rows of diameter and length, or of diameter at the tip end, diameter at the holder end and length, each more than 0, are allowed",
    "shank-sizes": () => "a shank needs both its diameter and its length",
    modes: () => "at least one mode along the feed and one across it is wanted",
    "free-change": () => "a change that costs neither time nor money sets no speed: faster is always cheaper",
    "no-break-even": () => "one machine is cheaper, or both the same, at every batch",
    "pair-of-names": () => "a pair of machines or of materials is wanted",
  },
};
