/**
 * Starting values for materials, each with its source. They are where a shop begins, not what it ends with: the list
 * is the shop's own, and every value is checked against the first parts.
 */

import { type MaterialGroup, SLOT_STEP } from "../mill/chip-space.ts";
import { CHIP_OVER } from "../operations/shared/choices.ts";
import { DESIGNATIONS } from "./designations.ts";
import { readTable } from "./table.ts";
import { THREAD_FEED_HEADING, THREAD_FEED_NOTE, withThreadFeed } from "./thread-feed.ts";
import type { ListBlock, SourceNote } from "./types.ts";

const HEADINGS = [
  "Material",
  "Group",
  "Hardness",
  "kc1.1 [MPa]",
  "Exponent",
  "Radial ratio",
  "Axial ratio",
  "Least chip",
  "Speed carbide low [m/min]",
  "Speed carbide high [m/min]",
  "Speed HSS low [m/min]",
  "Speed HSS high [m/min]",
  "Feed 3 mm [mm per tooth]",
  "Feed 6 mm [mm per tooth]",
  "Feed 12 mm [mm per tooth]",
  "Feed 20 mm [mm per tooth]",
  "Feed insert [mm per tooth]",
  "Speed insert low [m/min]",
  "Speed insert high [m/min]",
  "Speed thread mill low [m/min]",
  "Speed thread mill high [m/min]",
  "Drill speed carbide [m/min]",
  "Drill speed HSS [m/min]",
  "Drill feed carbide [mm per turn at 10 mm]",
  "Drill feed HSS [mm per turn at 10 mm]",
  "Taylor n",
  "Reference life [min]",
  "Designations",
  "Source",
] as const;

/** What the Source column says where kc1.1 and the exponent come from. */
const KIENZLE = {
  k: "König, Essel, Witte: Spezifische Schnittkraftwerte, 1982, from memory",
  t: "Tabellenbuch Metall, specific cutting force, from memory",
  n: "nearest entry of Tabellenbuch Metall, from memory",
  m: "from memory, group value",
} as const;

type Kienzle = keyof typeof KIENZLE;
// Columns: material, group, hardness; kc1.1 and exponent; radial, axial ratio and least chip; speed of carbide low, high;
// of high-speed steel low, high; feed at 3, 6 and 12 mm; drills: speed of carbide, of
// high-speed steel, feed per turn at 10 mm of each; Taylor n and reference life; where kc1.1 comes from.
// Group after ISO 513: martensitic, ferritic and precipitation-hardening stainless steels are P, austenitic ones M.
const ROWS: ReturnType<typeof readTable> = readTable(`
  Steel S235 (0.17 % C)                       | P | 120 HB     | 1780 | 0.17 | 0.35 | 0.2  | 0.3  | 140 | 220 | 28 | 42  | 0.014 | 0.032 | 0.075 | 95   | 30  | 0.25 | 0.2  | 0.25 | 45  | k
  Steel C22 (AISI 1020)                       | P | 130 HB     | 1820 | 0.22 | 0.35 | 0.2  | 0.3  | 140 | 220 | 28 | 40  | 0.014 | 0.032 | 0.075 | 95   | 30  | 0.25 | 0.2  | 0.25 | 45  | n
  Steel C45 (AISI 1045)                       | P | 200 HB     | 2220 | 0.14 | 0.35 | 0.2  | 0.3  | 120 | 190 | 22 | 32  | 0.013 | 0.03  | 0.07  | 80   | 25  | 0.22 | 0.17 | 0.25 | 45  | k
  Steel 11SMn30 (AISI 1215)                   | P | 150 HB     | 1200 | 0.18 | 0.3  | 0.2  | 0.3  | 170 | 260 | 35 | 55  | 0.016 | 0.036 | 0.085 | 110  | 38  | 0.28 | 0.22 | 0.25 | 45  | t
  Steel 16MnCr5 (AISI 5115)                   | P | 180 HB     | 2100 | 0.26 | 0.35 | 0.2  | 0.3  | 120 | 190 | 22 | 32  | 0.013 | 0.03  | 0.07  | 80   | 25  | 0.22 | 0.17 | 0.25 | 45  | k
  Steel 42CrMo4 annealed (AISI 4140)          | P | 220 HB     | 2240 | 0.21 | 0.35 | 0.2  | 0.3  | 110 | 170 | 18 | 28  | 0.012 | 0.028 | 0.065 | 75   | 20  | 0.2  | 0.16 | 0.25 | 45  | n
  Steel 42CrMo4 QT (AISI 4140)                | P | 30 HRC     | 2500 | 0.26 | 0.4  | 0.25 | 0.3  | 90  | 140 | 12 | 20  | 0.011 | 0.025 | 0.058 | 60   | 14  | 0.18 | 0.13 | 0.25 | 40  | k
  Steel 34CrNiMo6 QT (AISI 4340)              | P | 34 HRC     | 2600 | 0.24 | 0.4  | 0.25 | 0.3  | 80  | 130 | 10 | 18  | 0.01  | 0.024 | 0.055 | 55   | 12  | 0.17 | 0.12 | 0.25 | 40  | m
  Tool steel X40CrMoV5-1 (AISI H13)           | P | 210 HB     | 2400 | 0.24 | 0.4  | 0.25 | 0.3  | 90  | 140 | 12 | 20  | 0.011 | 0.025 | 0.058 | 60   | 14  | 0.18 | 0.14 | 0.25 | 40  | m
  Tool steel X153CrMoV12 (AISI D2)            | P | 240 HB     | 2500 | 0.24 | 0.4  | 0.25 | 0.3  | 70  | 110 | 9  | 15  | 0.01  | 0.023 | 0.052 | 45   | 10  | 0.15 | 0.12 | 0.22 | 40  | m
  Stainless X6Cr17 (AISI 430)                 | P | 180 HB     | 1900 | 0.21 | 0.35 | 0.2  | 0.3  | 90  | 140 | 15 | 24  | 0.011 | 0.026 | 0.06  | 55   | 16  | 0.16 | 0.14 | 0.25 | 40  | m
  Stainless X20Cr13 (AISI 420)                | P | 240 HB     | 2100 | 0.22 | 0.35 | 0.2  | 0.3  | 80  | 130 | 12 | 20  | 0.011 | 0.025 | 0.058 | 50   | 13  | 0.16 | 0.13 | 0.25 | 40  | m
  Stainless X5CrNiCuNb16-4 (UNS S17400)       | P | 36 HRC     | 2500 | 0.23 | 0.4  | 0.25 | 0.3  | 60  | 100 | 9  | 15  | 0.01  | 0.023 | 0.052 | 40   | 10  | 0.14 | 0.11 | 0.25 | 30  | m
  Stainless X8CrNiS18-9 (AISI 303)            | M | 190 HB     | 2000 | 0.21 | 0.35 | 0.2  | 0.3  | 90  | 140 | 16 | 25  | 0.012 | 0.027 | 0.062 | 60   | 18  | 0.17 | 0.15 | 0.25 | 40  | m
  Stainless X5CrNi18-10 (AISI 304)            | M | 180 HB     | 2350 | 0.21 | 0.4  | 0.25 | 0.3  | 70  | 110 | 12 | 20  | 0.011 | 0.025 | 0.056 | 45   | 13  | 0.15 | 0.13 | 0.25 | 30  | t
  Stainless X2CrNiMo17-12-2 (AISI 316L)       | M | 180 HB     | 2350 | 0.21 | 0.4  | 0.25 | 0.3  | 65  | 105 | 11 | 18  | 0.011 | 0.025 | 0.056 | 42   | 12  | 0.15 | 0.13 | 0.25 | 30  | n
  Stainless X2CrNiMoN22-5-3 (UNS S32205)      | M | 260 HB     | 2550 | 0.22 | 0.4  | 0.25 | 0.3  | 50  | 85  | 8  | 14  | 0.01  | 0.023 | 0.05  | 32   | 9   | 0.13 | 0.11 | 0.25 | 25  | m
  Grey iron EN-GJL-200                        | K | 190 HB     | 1020 | 0.25 | 0.4  | 0.2  | 0.25 | 110 | 180 | 20 | 32  | 0.015 | 0.035 | 0.08  | 90   | 25  | 0.3  | 0.25 | 0.25 | 60  | t
  Grey iron EN-GJL-250                        | K | 210 HB     | 1160 | 0.26 | 0.4  | 0.2  | 0.25 | 100 | 170 | 18 | 28  | 0.015 | 0.035 | 0.08  | 85   | 22  | 0.28 | 0.24 | 0.25 | 60  | k
  Nodular iron EN-GJS-400-15                  | K | 160 HB     | 1005 | 0.25 | 0.4  | 0.2  | 0.3  | 110 | 170 | 20 | 30  | 0.014 | 0.033 | 0.076 | 85   | 22  | 0.26 | 0.22 | 0.25 | 50  | t
  Nodular iron EN-GJS-600-3                   | K | 230 HB     | 1480 | 0.17 | 0.4  | 0.2  | 0.3  | 90  | 140 | 14 | 22  | 0.013 | 0.03  | 0.07  | 70   | 16  | 0.24 | 0.2  | 0.25 | 45  | t
  Aluminium EN AW-6082 T6 (AA 6061)           | N | 95 HB      | 780  | 0.23 | 0.3  | 0.15 | 0.3  | 250 | 500 | 70 | 120 | 0.02  | 0.045 | 0.1   | 220  | 80  | 0.3  | 0.25 | 0.35 | 90  | n
  Aluminium EN AW-7075 T6                     | N | 150 HB     | 830  | 0.23 | 0.3  | 0.15 | 0.3  | 250 | 500 | 70 | 120 | 0.02  | 0.045 | 0.1   | 220  | 80  | 0.3  | 0.25 | 0.35 | 90  | n
  Cast aluminium AlSi10Mg (EN AC-43000)       | N | 80 HB      | 830  | 0.23 | 0.3  | 0.15 | 0.3  | 200 | 400 | 50 | 90  | 0.02  | 0.045 | 0.1   | 180  | 60  | 0.3  | 0.25 | 0.3  | 60  | n
  Cast aluminium AlSi17Cu4Mg (AA 390)         | N | 110 HB     | 830  | 0.23 | 0.3  | 0.15 | 0.3  | 100 | 180 | 18 | 30  | 0.018 | 0.04  | 0.09  | 90   | 20  | 0.25 | 0.2  | 0.25 | 30  | n
  Brass CuZn39Pb3 (UNS C38500)                | N | 110 HB     | 780  | 0.18 | 0.25 | 0.15 | 0.25 | 150 | 300 | 50 | 90  | 0.018 | 0.042 | 0.095 | 180  | 60  | 0.28 | 0.24 | 0.3  | 90  | n
  Bronze CuSn7ZnPb (UNS C93200)               | N | 75 HB      | 640  | 0.25 | 0.3  | 0.15 | 0.3  | 120 | 220 | 30 | 55  | 0.016 | 0.038 | 0.085 | 130  | 35  | 0.22 | 0.2  | 0.3  | 60  | t
  Copper Cu-ETP (UNS C11000)                  | N | 60 HB      | 1100 | 0.25 | 0.35 | 0.15 | 0.35 | 120 | 240 | 35 | 60  | 0.016 | 0.036 | 0.08  | 120  | 40  | 0.2  | 0.18 | 0.3  | 60  | m
  Magnesium AZ91 (UNS M11916)                 | N | 65 HB      | 390  | 0.19 | 0.25 | 0.15 | 0.3  | 250 | 500 | 80 | 150 | 0.022 | 0.05  | 0.11  | 220  | 90  | 0.3  | 0.25 | 0.35 | 120 | t
  Plastic POM (acetal)                        | N | 80 Shore D | 150  | 0.25 | 0.3  | 0.15 | 0.4  | 150 | 400 | 80 | 150 | 0.025 | 0.055 | 0.12  | 180  | 90  | 0.28 | 0.25 |      |     | m
  Titanium grade 2 (UNS R50400)               | S | 160 HB     | 1300 | 0.23 | 0.4  | 0.25 | 0.3  | 60  | 100 | 12 | 20  | 0.012 | 0.028 | 0.06  | 45   | 13  | 0.14 | 0.13 | 0.25 | 30  | m
  Titanium Ti-6Al-4V (UNS R56400)             | S | 34 HRC     | 1400 | 0.23 | 0.45 | 0.25 | 0.3  | 40  | 70  | 7  | 12  | 0.011 | 0.025 | 0.055 | 32   | 8   | 0.12 | 0.11 | 0.25 | 30  | m
  Iron alloy X6NiCrTiMoVB25-15-2 (UNS S66286) | S | 30 HRC     | 2500 | 0.25 | 0.45 | 0.25 | 0.3  | 30  | 55  | 5  | 9   | 0.01  | 0.022 | 0.048 | 25   | 6   | 0.11 | 0.1  | 0.25 | 20  | m
  Nickel alloy UNS N06625 annealed            | S | 200 HB     | 2700 | 0.25 | 0.45 | 0.3  | 0.3  | 25  | 45  | 4  | 8   | 0.009 | 0.021 | 0.045 | 18   | 5   | 0.1  | 0.09 | 0.25 | 20  | m
  Nickel alloy UNS N07718 aged                | S | 42 HRC     | 2900 | 0.25 | 0.5  | 0.3  | 0.3  | 22  | 40  | 3  | 6   | 0.009 | 0.02  | 0.042 | 15   | 4   | 0.09 | 0.08 | 0.22 | 20  | m
  Cobalt alloy CoCr28Mo6 (UNS R31537)         | S | 36 HRC     | 3000 | 0.25 | 0.5  | 0.3  | 0.3  | 22  | 40  | 3  | 6   | 0.009 | 0.02  | 0.042 | 15   | 4   | 0.09 | 0.08 | 0.22 | 20  | m
  Hardened steel 50 HRC                       | H | 50 HRC     | 3400 | 0.25 | 0.6  | 0.3  | 0.25 | 50  | 90  |    |     | 0.009 | 0.02  | 0.045 | 25   |     | 0.1  |      | 0.25 | 30  | m
  Hardened steel 58 HRC                       | H | 58 HRC     | 4300 | 0.25 | 0.7  | 0.3  | 0.25 | 30  | 60  |    |     | 0.007 | 0.016 | 0.036 | 15   |     | 0.07 |      | 0.22 | 20  | m
`);

/** Longer text behind the Source column. */
const summary = (kienzle: Kienzle) =>
  `Force: ${KIENZLE[kienzle]}. Life: from memory. Rest: common practice. Check before use`;

/** Place of the feed at 12 mm among the cells of a row. */
const FEED_12 = 14;

/** Speed of a thread mill over that of a solid end mill (common practice: the whole profile cuts, and chips stay in the hole). */
const THREAD_SPEED: Readonly<Record<string, number>> = { P: 0.75, K: 0.75, N: 0.75, M: 0.9, S: 0.9, H: 0.9 };

/**
 * Feed at 20 mm, feed and speeds of inserts, and speeds of thread mills, from the solid cutter's: √(20/12) of the feed at 12 mm; an
 * insert takes about twice that feed, and runs a quarter faster, but no faster in S and H; a thread mill runs at three quarters of
 * the speed, at nine tenths in M, S and H, where the end mill is slow already (common practice).
 */
function larger(cells: ReturnType<typeof readTable>[number]): (number | null)[] {
  const [group, low, high, feed12] = [cells[1], cells[8], cells[9], cells[FEED_12]];
  const scaled = (value: unknown, factor: number, step: number) =>
    typeof value === "number" ? Number((Math.round((value * factor) / step) * step).toPrecision(6)) : null;
  const faster = group === "S" || group === "H" ? 1 : 1.25;
  return [
    scaled(feed12, Math.sqrt(20 / 12), 0.001),
    scaled(feed12, 2, 0.005),
    scaled(low, faster, 5),
    scaled(high, faster, 5),
    ...[low, high].map((speed) => {
      const threads = THREAD_SPEED[String(group)]! * Number(speed);
      return scaled(threads, 1, threads < 50 ? 1 : 5);
    }),
  ];
}

const JUDGED = ["Thick chip [of feed]", "Breaking chip [of feed]", "Slot step [of diameter]"] as const;

/** The block with what cuts are judged by, before the column named. */
function withJudged(block: ListBlock, before: string): ListBlock {
  const [headings, ...rows] = block;
  const at = headings!.indexOf(before);
  const group = headings!.indexOf("Group");
  return [
    [...headings!.slice(0, at), ...JUDGED, ...headings!.slice(at)],
    ...rows.map((row) => [
      ...row.slice(0, at),
      ...[CHIP_OVER.check, CHIP_OVER.stop, SLOT_STEP[row[group] as MaterialGroup]],
      ...row.slice(at),
    ]),
  ];
}

/** The starting list of materials. */
export const MATERIALS: ListBlock = withThreadFeed(
  withJudged(
    [
      HEADINGS,
      ...ROWS.map((row) => {
        const cells = [...row.slice(0, -1), DESIGNATIONS[String(row[0])] ?? null, summary(row.at(-1) as Kienzle)];
        cells.splice(FEED_12 + 1, 0, ...larger(cells));
        return cells;
      }),
    ],
    "Designations",
  ),
  "Speed carbide low [m/min]",
);

const practice = (text: string): SourceNote => ({ kind: "common practice", text });
const memory = (text: string): SourceNote => ({ kind: "from memory", text: `${text}; check before use` });

const SPEED = practice("range for a coated solid-carbide cutter with coolant, short stick-out; start at the low end");
const HSS_SPEED = practice("range for a high-speed-steel cutter with coolant; start at the low end");
const INSERT_SPEED = practice("range for coated inserts: a quarter over solid carbide, the same in S and H");
const THREAD_SPEED_NOTE = practice(
  "range for a carbide thread mill: three quarters of a solid end mill's, nine tenths in M, S and H",
);
const FEED = practice("side milling with a solid cutter of that diameter, about 0.4 to 0.6 % of it in steel");
const DRILL_SPEED = practice("solid carbide drill with coolant, hole up to three diameters deep; well below milling");
const DRILL_HSS_SPEED = practice("drill of high-speed steel with coolant, hole up to two diameters deep");
const DRILL_FEED = practice(
  "feed per turn of a 10 mm drill, about 1.5 to 2.5 % of the diameter in steel; other sizes by D^0.8",
);
const LIFE = memory(
  "usual exponents of solid carbide 0.2 to 0.4; the life belongs to the high end of the carbide range",
);

const BY_HEADING: Readonly<Record<string, SourceNote>> = {
  Material: memory("designation of the standard named in it (EN, AISI, UNS)"),
  Group: memory("ISO 513, classification of work materials"),
  Designations: memory("numbers and short names of EN, AISI/SAE, UNS, JIS and ASTM for the same or the nearest grade"),
  Hardness: practice("usual condition of delivery of this material"),
  "Radial ratio": practice("radial to tangential force 0.3 to 0.5, higher in hard materials and with worn edges"),
  "Axial ratio": practice("axial to tangential force 0.15 to 0.3"),
  "Least chip": practice("least chip 0.2 to 0.4 of the edge radius, start 0.3"),
  "Speed carbide low [m/min]": SPEED,
  "Speed carbide high [m/min]": SPEED,
  "Speed HSS low [m/min]": HSS_SPEED,
  "Speed HSS high [m/min]": HSS_SPEED,
  "Feed 3 mm [mm per tooth]": FEED,
  "Feed 6 mm [mm per tooth]": FEED,
  "Feed 12 mm [mm per tooth]": FEED,
  "Feed 20 mm [mm per tooth]": practice("feed at 12 mm × √(20/12): above 12 mm a tooth grows slower than its cutter"),
  "Feed insert [mm per tooth]": practice("about twice the feed of a solid cutter of 12 mm"),
  "Speed insert low [m/min]": INSERT_SPEED,
  "Speed insert high [m/min]": INSERT_SPEED,
  "Speed thread mill low [m/min]": THREAD_SPEED_NOTE,
  "Speed thread mill high [m/min]": THREAD_SPEED_NOTE,
  "Drill speed carbide [m/min]": DRILL_SPEED,
  "Drill speed HSS [m/min]": DRILL_HSS_SPEED,
  "Drill feed carbide [mm per turn at 10 mm]": DRILL_FEED,
  "Drill feed HSS [mm per turn at 10 mm]": DRILL_FEED,
  [THREAD_FEED_HEADING]: THREAD_FEED_NOTE,
  "Thick chip [of feed]": practice("a chip more than a tenth over the listed one is said: lists are round figures"),
  "Breaking chip [of feed]": practice("edges break at about double the listed chip"),
  "Slot step [of diameter]": practice(
    "a full slot one diameter deep where chips climb, less in stainless and S, a fifth in hardened steel",
  ),
  "Taylor n": LIFE,
  "Reference life [min]": LIFE,
};

const KIENZLE_NOTE: Readonly<Record<Kienzle, SourceNote>> = {
  k: memory(
    "W. König, K. Essel, L. Witte, Spezifische Schnittkraftwerte für die Zerspanung metallischer Werkstoffe, 1982",
  ),
  t: memory("Tabellenbuch Metall (Fischer et al.), table of specific cutting force"),
  n: memory(
    "Tabellenbuch Metall (Fischer et al.), table of specific cutting force, value of the nearest material listed",
  ),
  m: memory("value of the material group, chosen between the figures in common use"),
};

/** Notes of single values that differ from the note of their column. */
const SINGLE: Readonly<Record<string, Readonly<Record<string, SourceNote>>>> = {
  "Titanium Ti-6Al-4V (UNS R56400)": {
    "Taylor n": {
      kind: "published",
      text: "K. Tatar, S. Sjöberg, N. Andersson, Heliyon 6 (2020) e04217, abstract: one per cent more speed, about four per cent less life, so n about 1/4",
    },
  },
};

/** Source of every value: by material, then by heading. Blank cells have none. */
export const MATERIAL_SOURCES: Readonly<Record<string, Readonly<Record<string, SourceNote>>>> = Object.fromEntries(
  ROWS.map((row) => {
    const name = row[0] as string;
    const kienzle = KIENZLE_NOTE[row.at(-1) as Kienzle];
    const notes: Record<string, SourceNote> = {};
    const cells = MATERIALS.find((m) => m[0] === name)!;
    HEADINGS.slice(0, -1).forEach((heading) => {
      if (cells[MATERIALS[0]!.indexOf(heading)] === null) return;
      const force = heading === "kc1.1 [MPa]" || heading === "Exponent";
      notes[heading] = SINGLE[name]?.[heading] ?? (force ? kienzle : BY_HEADING[heading]!);
    });
    for (const heading of JUDGED) notes[heading] = BY_HEADING[heading]!;
    notes[THREAD_FEED_HEADING] = BY_HEADING[THREAD_FEED_HEADING]!;
    return [name, notes];
  }),
);
