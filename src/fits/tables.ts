/**
 * Tables of ISO 286-1 and 286-2 up to 500 mm, in micrometres: standard tolerances and fundamental deviations of shafts.
 * Deviations of holes follow from these by the rules of the standard, see limits.ts. Tables from memory; the tests hold
 * them against the standard's own formulas and against printed limits.
 */

/** Upper ends of the ranges of nominal size [mm] of the standard tolerances; each range is over the one before, up to this. */
export const MAIN_RANGES = [3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500] as const;

/** Standard tolerances [µm] by grade, a value for each main range. */
export const GRADES: Readonly<Record<string, readonly number[]>> = {
  "01": [0.3, 0.4, 0.4, 0.5, 0.6, 0.6, 0.8, 1, 1.2, 2, 2.5, 3, 4],
  "0": [0.5, 0.6, 0.6, 0.8, 1, 1, 1.2, 1.5, 2, 3, 4, 5, 6],
  "1": [0.8, 1, 1, 1.2, 1.5, 1.5, 2, 2.5, 3.5, 4.5, 6, 7, 8],
  "2": [1.2, 1.5, 1.5, 2, 2.5, 2.5, 3, 4, 5, 7, 8, 9, 10],
  "3": [2, 2.5, 2.5, 3, 4, 4, 5, 6, 8, 10, 12, 13, 15],
  "4": [3, 4, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20],
  "5": [4, 5, 6, 8, 9, 11, 13, 15, 18, 20, 23, 25, 27],
  "6": [6, 8, 9, 11, 13, 16, 19, 22, 25, 29, 32, 36, 40],
  "7": [10, 12, 15, 18, 21, 25, 30, 35, 40, 46, 52, 57, 63],
  "8": [14, 18, 22, 27, 33, 39, 46, 54, 63, 72, 81, 89, 97],
  "9": [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130, 140, 155],
  "10": [40, 48, 58, 70, 84, 100, 120, 140, 160, 185, 210, 230, 250],
  "11": [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320, 360, 400],
  "12": [100, 120, 150, 180, 210, 250, 300, 350, 400, 460, 520, 570, 630],
  "13": [140, 180, 220, 270, 330, 390, 460, 540, 630, 720, 810, 890, 970],
  "14": [250, 300, 360, 430, 520, 620, 740, 870, 1000, 1150, 1300, 1400, 1550],
  "15": [400, 480, 580, 700, 840, 1000, 1200, 1400, 1600, 1850, 2100, 2300, 2500],
  "16": [600, 750, 900, 1100, 1300, 1600, 1900, 2200, 2500, 2900, 3200, 3600, 4000],
  "17": [1000, 1200, 1500, 1800, 2100, 2500, 3000, 3500, 4000, 4600, 5200, 5700, 6300],
  "18": [1400, 1800, 2200, 2700, 3300, 3900, 4600, 5400, 6300, 7200, 8100, 8900, 9700],
};

/** Upper ends of the finer ranges [mm] of the fundamental deviations. */
export const FINE_RANGES = [
  3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500,
] as const;

/** A value for each fine range from one for each main range: the main ranges from 10 mm on are split. */
const SPLIT = [1, 1, 1, 2, 2, 2, 2, 2, 3, 3, 2, 2, 2] as const;
const spread = (values: readonly number[]) => values.flatMap((v, i) => Array<number>(SPLIT[i]!).fill(v));

/** Shafts a to g: distance [µm] of the upper deviation es below the nominal size; holes A to G mirror it. */
export const CLEARANCE_SIDE: Readonly<Record<string, readonly number[]>> = {
  a: [
    270, 270, 280, 290, 290, 300, 300, 310, 320, 340, 360, 380, 410, 460, 520, 580, 660, 740, 820, 920, 1050, 1200,
    1350, 1500, 1650,
  ],
  b: [
    140, 140, 150, 150, 150, 160, 160, 170, 180, 190, 200, 220, 240, 260, 280, 310, 340, 380, 420, 480, 540, 600, 680,
    760, 840,
  ],
  c: [
    60, 70, 80, 95, 95, 110, 110, 120, 130, 140, 150, 170, 180, 200, 210, 230, 240, 260, 280, 300, 330, 360, 400, 440,
    480,
  ],
  d: spread([20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230]),
  e: spread([14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135]),
  f: spread([6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68]),
  g: spread([2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20]),
  h: spread([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
};

/** Shafts m to z: distance [µm] of the lower deviation ei above the nominal size; holes M to Z mirror it, with Δ added. */
export const INTERFERENCE_SIDE: Readonly<Record<string, readonly (number | null)[]>> = {
  m: spread([2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23]),
  n: spread([4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40]),
  p: spread([6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68]),
  r: [10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132],
  s: [14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252],
  t: [
    null,
    null,
    null,
    null,
    null,
    null,
    41,
    48,
    54,
    66,
    75,
    91,
    104,
    122,
    134,
    146,
    166,
    180,
    196,
    218,
    240,
    268,
    294,
    330,
    360,
  ],
  u: [
    18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540,
  ],
  x: [
    20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210, 248, 280, 310, 350, 385, 425, 475, 525, 590, 660, 740, 820,
  ],
  z: [
    26, 35, 42, 50, 60, 73, 88, 112, 136, 172, 210, 258, 310, 365, 415, 465, 520, 575, 640, 710, 790, 900, 1000, 1100,
    1250,
  ],
};

/** Shaft k, grades 4 to 7: ei [µm] by main range; 0 in other grades. */
export const K_SHAFT = [0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5] as const;
/** Shaft j: ei [µm] by main range, of grades 5 and 6, of grade 7. */
export const J_SHAFT: Readonly<Record<string, readonly number[]>> = {
  "5": [-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20],
  "6": [-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20],
  "7": [-4, -4, -5, -6, -8, -10, -12, -15, -18, -21, -26, -28, -32],
};
/** Hole J: ES [µm] by main range, of grades 6, 7 and 8. */
export const J_HOLE: Readonly<Record<string, readonly number[]>> = {
  "6": [2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33],
  "7": [4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43],
  "8": [6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66],
};
