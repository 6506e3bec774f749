/** Cost of a part. */
import { finite, notNegative, positive } from "./check.ts";
import { TradeError } from "./errors.ts";

/** A machine as the estimator compares it: what a part costs on it depends on the batch. */
export interface Quote {
  /** Time of one part [s]. */
  readonly cycleTime: number;
  /** Cost of an hour [money/h]. */
  readonly rate: number;
  /** Setup of the batch [s]. */
  readonly setupTime: number;
  /** Tool cost of one part [money]; 0 when left out. */
  readonly toolCostPerPart?: number;
}

/**
 * Cost of one part.
 *
 *   C = R/3600·(t + ts/N) + Ct
 *
 * @param cycleTime - t, time of one part [s], scalar, > 0
 * @param rate - R, cost of machine and operator [money/h], scalar, ≥ 0; 0 leaves the tool alone
 * @param batch - N, parts per setup [-], scalar, > 0
 * @param setupTime - ts, setup of the batch [s], scalar, ≥ 0
 * @param toolCostPerPart - Ct [money], scalar, ≥ 0
 * @returns C [money]
 * @throws TradeError "range" when an argument is outside its limits
 * @source BOOTHROYD
 * @example
 * partCost(90, 60, 50, 1800, 0.4) //=> 2.5
 */
export function partCost(
  cycleTime: number,
  rate: number,
  batch: number,
  setupTime: number,
  toolCostPerPart: number,
): number {
  const seconds = positive("cycleTime", cycleTime) + notNegative("setupTime", setupTime) / positive("batch", batch);
  const cost = (notNegative("rate", rate) * seconds) / 3600 + notNegative("toolCostPerPart", toolCostPerPart);
  return finite("cycleTime", cost);
}

/**
 * Batch at which two machines cost the same per part; above it the one with the cheaper part wins, below it the one
 * with the cheaper setup.
 *
 *   N = (S₂ − S₁)/(U₁ − U₂),   S = R·ts/3600,   U = R·t/3600 + Ct
 *
 * @param first - first machine; first.cycleTime, first.setupTime [s]; first.rate [money/h]; first.toolCostPerPart [money]
 * @param second - second machine, as the first; [s], [money/h], [money]
 * @returns N [-]
 * @throws TradeError "unsolvable" when one machine is never dearer, "range" when an argument is outside its limits
 * @source BOOTHROYD
 * @example
 * breakEvenBatch({ cycleTime: 120, rate: 60, setupTime: 600 }, { cycleTime: 60, rate: 75, setupTime: 3600 }) //=> 86.66667
 */
export function breakEvenBatch(first: Quote, second: Quote): number {
  const setups = [first, second].map(
    (q) => (notNegative("rate", q.rate) * notNegative("setupTime", q.setupTime)) / 3600,
  );
  const units = [first, second].map(
    (q) =>
      (q.rate * positive("cycleTime", q.cycleTime)) / 3600 + notNegative("toolCostPerPart", q.toolCostPerPart ?? 0),
  );
  const N = (setups[1]! - setups[0]!) / (units[0]! - units[1]!);
  if (!Number.isFinite(N) || N <= 0) {
    throw new TradeError("unsolvable", "batch", N, { is: "no-break-even" });
  }
  return N;
}
