/**
 * The range of a quote: its 10 % and 90 % outcomes when the times and lives scatter as stated. Sampled with a Halton
 * sequence and its mirror images, so that the same quote always gives the same range.
 *
 * Each uncertainty is the standard deviation of the logarithm of a factor whose middle is 1, common to all rows: if the
 * feeds come out low they come out low everywhere. That is the wide case; deviations that differ from row to row would
 * partly cancel.
 */
import type { Band } from "./types.ts";

/**
 * Stated uncertainties, all of them judgement. Cutting: feeds and speeds get trimmed at the machine by about a tenth.
 * Moves: approach, position and tool-change times are assumed, not measured. Setup: people and fixtures differ by a
 * third. Life: the lives of equal edges at equal speed scatter by a third and more, and the list's reference life is a
 * starting value.
 */
export const QUOTE_UNCERTAINTY = { cutting: 0.1, moves: 0.25, setup: 0.3, life: 0.4 } as const;

/** What scatters, in any unit: the parts add up to the nominal. */
export interface Scattering {
  readonly cutting: number;
  readonly moves: number;
  readonly setup: number;
  /** Goes with one over the tool life. */
  readonly tool: number;
}

const BASES = [2, 3, 5, 7] as const;
const SAMPLES = 2048;
/** The first points of the higher bases run in step with each other. */
const SKIPPED = 32;
export const BAND_SHARE = 0.1;

/** Point of the Halton sequence: the digits of `index` in `base`, mirrored at the point. */
function radicalInverse(index: number, base: number): number {
  let rest = index;
  let place = 1 / base;
  let value = 0;
  while (rest > 0) {
    value += (rest % base) * place;
    rest = Math.floor(rest / base);
    place /= base;
  }
  return value;
}

/**
 * Standard normal quantile for a probability between 0 and 1: the rational approximation 26.2.23, off by less than
 * 0.00045.
 *
 * @source ABRAMOWITZ
 */
export function normalQuantile(probability: number): number {
  const tail = Math.min(probability, 1 - probability);
  if (tail <= 0) return probability < 0.5 ? -8 : 8;
  const t = Math.sqrt(-2 * Math.log(tail));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  const x = t - above / below;
  return probability < 0.5 ? -x : x;
}

let factors: Float64Array | undefined;

/** Factors of cutting, moves, setup and tool cost, four to a sample; every sample has its mirror image. */
function sampled(): Float64Array {
  if (factors) return factors;
  const { cutting, moves, setup, life } = QUOTE_UNCERTAINTY;
  const deviations = [cutting, moves, setup, life];
  factors = new Float64Array(8 * SAMPLES);
  for (let i = 0; i < SAMPLES; i++) {
    BASES.forEach((base, k) => {
      const x = deviations[k]! * normalQuantile(radicalInverse(i + SKIPPED, base));
      factors![8 * i + k] = Math.exp(x);
      factors![8 * i + 4 + k] = Math.exp(-x);
    });
  }
  return factors;
}

/** The 10 % and 90 % outcomes of a sum of scattering parts. */
export function scatterBand({ cutting, moves, setup, tool }: Scattering): Band {
  const nominal = cutting + moves + setup + tool;
  const f = sampled();
  const sums = new Float64Array(2 * SAMPLES);
  for (let i = 0; i < sums.length; i++) {
    const at = 4 * i;
    sums[i] = cutting * f[at]! + moves * f[at + 1]! + setup * f[at + 2]! + tool * f[at + 3]!;
  }
  sums.sort();
  const at = (share: number) => sums[Math.round(share * (sums.length - 1))]!;
  return { low: at(BAND_SHARE), nominal, high: at(1 - BAND_SHARE) };
}
