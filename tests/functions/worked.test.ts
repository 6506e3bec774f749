/** Worked examples of books and papers, done again with the worksheet functions to the digits that are printed. */
import { describe, expect, it } from "vitest";
import { runFormula } from "../house/formula-text.ts";

interface Example {
  readonly source: string;
  readonly where: string;
  /** Formula, printed value, and half of the last printed digit; looser only with a reason. */
  readonly lines: readonly (readonly [formula: string, printed: number, tolerance: number, why?: string])[];
}

const EXAMPLES: readonly Example[] = [
  {
    source: "H. A. El-Hofy, Fundamentals of Machining Processes, 2nd ed., CRC Press 2013",
    where:
      "p. 189, slot of 30 mm, 4 mm deep, end mill of 8 teeth, 0.1 mm per tooth, 120 mm/min, specific force 1000 N/mm²",
    lines: [
      ["=CUT.FEEDPERTOOTH(120, 150, 8)", 0.1, 0.05],
      ["=CUT.TABLEFEED(150, 8, 0.1)", 120, 0.5],
      ['=CUT.SURFACESPEED(150, 30, "mm")', 14.13, 0.01, "printed with π as 3.14 and cut off"],
      ['=CUT.SPINDLEPOWER(CUT.REMOVALRATE(30, 4, 120, "mm"), 1000, "mm", 1)', 0.24, 0.005],
      // motor power 0.27 kW; the efficiency in use is 0.9 (from memory: the page at hand shows only η)
      ['=CUT.SPINDLEPOWER(CUT.REMOVALRATE(30, 4, 120, "mm"), 1000, "mm", 0.9)', 0.27, 0.005],
      // mean tangential force F = P/v printed as 1019 N; here the mean torque of a slot over the radius: kc of a chip that does not matter
      [
        '=CUT.MILLFORCE(1000, 0, 0.1, 30, 4, 30, 8, 0, "mm", "mean torque")',
        (1019 * 0.015 * 14.13) / (Math.PI * 30 * 0.15),
        0.01,
        "printed 1019 N = 0.24 kW/(14.13 m/min): the speed with π as 3.14",
      ],
    ],
  },
  {
    source: "F. D. Jones, Turning and Boring, Industrial Press 1914",
    where: "Measuring screw threads by the three-wire system: 1-1/2 in, 6 threads, wires 0.140 in",
    lines: [
      // The printed rule D − 1.5155·p + 3·w leaves out the lead angle; what that adds, w/2·tan²λ·cos α·cot α with the
      // lead angle at the pitch diameter 1.39175, is 0.00015 and is put beside the printed reading.
      [
        '=CUT.OVERWIRES("1-1/2-6 UNC-2A", 0.14, "in", 1.3917468)',
        1.6674 + 0.07 * (1 / (6 * Math.PI * 1.39175)) ** 2 * 1.5,
        0.00005,
      ],
    ],
  },
  {
    source: "E. Groff, Three Wire Thread Measuring, New England Model Engineering Society",
    where: "7/16-14, wires 0.045 in; ideal wire and measurement over wires",
    lines: [
      ['=CUT.BESTWIRE("7/16-14 UNC-2A", "in")', 0.041, 0.0005],
      // pitch diameter D − 0.64952/14
      ['=CUT.OVERWIRES("7/16-14 UNC-2A", 0.045, "in", 0.39110575)', 0.464, 0.0005],
    ],
  },
  {
    source: "M. P. Groover, Fundamentals of Modern Manufacturing, Machining economics",
    where:
      "high-speed steel, n = 0.130, C = 80 m/min, 3 min to change, $3.33 an edge, $40 an hour; answers 47.7 m/min and 53.4 min from memory",
    lines: [
      ["=CUT.ECONOMICSPEED(80, 1, 0.13, 180, 3.33, 40)", 47.7, 0.05],
      // the life at that speed; printed from rounded steps
      [
        "=CUT.TOOLLIFE(CUT.ECONOMICSPEED(80, 1, 0.13, 180, 3.33, 40), 80, 1, 0.13)",
        53.4,
        0.15,
        "rounded steps in the text",
      ],
    ],
  },
];

describe("worked examples of books and papers (published)", () => {
  for (const { source, where, lines } of EXAMPLES)
    for (const [formula, printed, tolerance] of lines)
      it(`${formula} is ${Number(printed.toPrecision(6))}: ${source}; ${where}`, () => {
        const value = runFormula(formula)[0]![0];
        expect(value, String(value)).toBeTypeOf("number");
        expect(Math.abs((value as number) - printed), `${value}`).toBeLessThanOrEqual(tolerance);
      });
});
