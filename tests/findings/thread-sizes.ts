/** Rules of what size of a thread comes out. */
import { expect } from "vitest";
import { about, above, below, type RowCells, type Rules } from "./rule.ts";
import { M6, STEM } from "./thread-rows.ts";

const row = (cells: RowCells) => ({ row: { ...M6, ...cells } });
const tool = (cells: RowCells) => ({ row: M6, tool: cells });
/** ISO 965-1: pitch diameter of M6-6H. */
const OF_M6 = { of: "pitch diameter", low: about(5.35, 3), high: about(5.5, 3) };
/** A neck so long, held 8 mm behind its end. */
const neck = (length: number) => tool({ "Neck length": length, "Stick-out": length + 8 });

export const threadSizes: Rules = {
  "gauge-first": {
    fires: neck(12.8),
    inside: neck(12.6),
    severity: "ok",
    facts: { value: below(0.075), limit: about(0.075, 3), of: "pitch diameter", start: below(0), typed: false },
    why: "error and scatter together over half of half the tolerance, 0.0375",
    near: 0.6,
  },
  "size-may-be-out": [
    {
      fires: neck(20.2),
      inside: neck(20.1),
      severity: "check",
      facts: {
        ...OF_M6,
        value: below(5.35),
        limit: about(5.35, 3),
        least: above(0),
        most: above(0),
        start: below(0),
        typed: false,
      },
      why: "an error over half the tolerance, 0.075, that a wear value takes away",
    },
    {
      fires: row({ "Wear value": 0.02 }),
      inside: row({ "Wear value": 0.019 }),
      severity: "check",
      facts: {
        ...OF_M6,
        value: below(5.35),
        limit: about(5.35, 3),
        least: above(0),
        most: above(0),
        start: expect.anything(),
        typed: true,
      },
      why: "a typed wear value with which the pitch diameter is still out",
    },
  ],
  "size-out": [
    {
      fires: neck(35),
      inside: neck(34.7),
      severity: "stop",
      facts: {
        ...OF_M6,
        value: below(5.425 - 0.3),
        limit: about(5.35, 3),
        least: below(5.425 - 0.3),
        most: above(5),
        scrap: false,
        start: null,
      },
      why: "an error of more than 0.15 of the pitch in the radius is no matter of a wear value",
    },
    {
      fires: row({ "Wear value": -0.058 }),
      inside: row({ "Wear value": -0.0575 }),
      severity: "stop",
      facts: {
        ...OF_M6,
        value: above(5.5),
        limit: about(5.5, 3),
        least: above(5.5),
        most: above(5.5),
        scrap: true,
        start: expect.anything(),
      },
      why: "a typed wear value with which even the stiffest end is too large: scrap",
    },
    {
      fires: { row: { ...STEM, "Wear value": -0.048 } },
      inside: { row: { ...STEM, "Wear value": -0.046 } },
      severity: "stop",
      facts: {
        of: "pitch diameter",
        low: about(18.854, 3),
        high: about(18.994, 3),
        value: below(18.854),
        limit: about(18.854, 3),
        least: below(18.854),
        most: below(18.854),
        scrap: true,
        start: expect.anything(),
      },
      why: "outside, too small is scrap",
    },
  ],
  "size-scatter": [
    {
      fires: neck(32),
      inside: neck(31.8),
      severity: "check",
      facts: { value: above(0.0375), limit: about(0.0375, 3), of: "pitch diameter" },
      why: "15 % of the bending, with runout and seat, is over half of half the tolerance, 0.0375",
    },
    {
      fires: neck(45.2),
      inside: neck(31.8),
      severity: "stop",
      facts: { value: above(0.075), limit: about(0.075, 3), of: "pitch diameter" },
      why: "15 % of the bending, with runout and seat, is over half the tolerance, 0.075",
    },
  ],
  "no-thread": [
    {
      fires: neck(63),
      inside: neck(62.5),
      severity: "stop",
      facts: { value: below(4.9), limit: 4.9 },
      why: "a pitch diameter that comes out under the hole is no thread",
    },
    {
      fires: row({ "Wear value": 0.255 }),
      inside: row({ "Wear value": 0.25 }),
      severity: "stop",
      facts: { value: below(4.9), limit: 4.9 },
      why: "a path moved off the wall by a quarter of a millimetre, half of 5.425 − 4.9",
    },
  ],
  "wear-change": {
    fires: row({ Measured: 5.38 }),
    inside: row({}),
    severity: "ok",
    facts: { measured: 5.38, wanted: about(5.425, 3), change: about((5.38 - 5.425) / 2, 3) },
    why: "a measured size says what to add",
  },
  "measured-out": [
    {
      fires: row({ Measured: 5.349 }),
      inside: row({ Measured: 5.351 }),
      severity: "check",
      facts: {
        value: 5.349,
        limit: about(5.35, 3),
        of: "pitch diameter",
        scrap: false,
        change: about((5.349 - 5.425) / 2, 3),
      },
      why: "under 5.350, ISO 965: the thread can be cut again",
    },
    {
      fires: row({ Measured: 5.501 }),
      inside: row({ Measured: 5.499 }),
      severity: "stop",
      facts: {
        value: 5.501,
        limit: about(5.5, 3),
        of: "pitch diameter",
        scrap: true,
        change: about((5.501 - 5.425) / 2, 3),
      },
      why: "over 5.500, ISO 965: scrap",
    },
    {
      fires: { row: { ...STEM, Measured: 18.853 } },
      inside: { row: { ...STEM, Measured: 18.855 } },
      severity: "stop",
      facts: {
        value: 18.853,
        limit: about(18.854, 3),
        of: "pitch diameter",
        scrap: true,
        change: about((18.924 - 18.853) / 2, 3),
      },
      why: "outside the small one is scrap: M20×1.5-6g pitch 18.854 to 18.994",
    },
    {
      fires: { row: { ...STEM, Measured: 18.995 } },
      inside: { row: { ...STEM, Measured: 18.993 } },
      severity: "check",
      facts: {
        value: 18.995,
        limit: about(18.994, 3),
        of: "pitch diameter",
        scrap: false,
        change: about((18.924 - 18.995) / 2, 3),
      },
      why: "and the large one is cut again",
    },
  ],
};
