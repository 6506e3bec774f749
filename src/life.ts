/** Tool life and the cutting speed it asks for. */
import { notNegative, positive, within } from "./check.ts";
import { TradeError } from "./errors.ts";

const exponentOf = (exponent: number): number => within("exponent", exponent, 0, 1, undefined, "both");

/**
 * Tool life at a cutting speed, after Taylor.
 *
 *   V·Tⁿ = Vr·Trⁿ,   T = Tr·(Vr/V)^(1/n)
 *
 * @param speed - V [m/min], scalar, > 0 (any unit of speed: the reference in the same)
 * @param referenceSpeed - Vr [m/min], scalar, > 0
 * @param referenceLife - Tr [min], scalar, > 0 (any unit of time: the answer is in it)
 * @param exponent - n [-], scalar, 0 < n < 1
 * @returns T [min]
 * @throws TradeError "range" when an argument is outside its limits, "unsolvable" when the life is too long or short for a number
 * @source TAYLOR1907
 * @example
 * toolLife(200, 100, 60, 0.25) //=> 3.75
 */
export function toolLife(speed: number, referenceSpeed: number, referenceLife: number, exponent: number): number {
  const ratio = positive("referenceSpeed", referenceSpeed) / positive("speed", speed);
  const T = positive("referenceLife", referenceLife) * ratio ** (1 / exponentOf(exponent));
  return solved("speed", speed, T);
}

/**
 * Cutting speed that gives a tool life, after Taylor.
 *
 *   V = Vr·(Tr/T)ⁿ
 *
 * @param life - T [min], scalar, > 0 (unit of referenceLife)
 * @param referenceSpeed - Vr [m/min], scalar, > 0 (any unit of speed: the answer is in it)
 * @param referenceLife - Tr [min], scalar, > 0
 * @param exponent - n [-], scalar, 0 < n < 1
 * @returns V [m/min]
 * @throws TradeError "range" when an argument is outside its limits
 * @source TAYLOR1907
 * @example
 * speedForLife(3.75, 100, 60, 0.25) //=> 200
 */
export function speedForLife(life: number, referenceSpeed: number, referenceLife: number, exponent: number): number {
  const ratio = positive("referenceLife", referenceLife) / positive("life", life);
  return solved("life", life, positive("referenceSpeed", referenceSpeed) * ratio ** exponentOf(exponent));
}

/**
 * Tool life of least cost per part.
 *
 *   T = (1/n − 1)·(tc/60 + 60·Ct/R)
 *
 * @param exponent - n [-], scalar, 0 < n < 1
 * @param toolChangeTime - tc [s], scalar, ≥ 0
 * @param toolCost - Ct, cost of one edge [money], scalar, ≥ 0
 * @param rate - R, cost of machine and operator [money/h], scalar, > 0
 * @returns T [min]
 * @throws TradeError "range" when an argument is outside its limits, "unsolvable" when neither time nor money is lost at a change
 * @source GILBERT1950
 * @example
 * economicLife(0.25, 120, 5, 60) //=> 21
 */
export function economicLife(exponent: number, toolChangeTime: number, toolCost: number, rate: number): number {
  const tc = notNegative("toolChangeTime", toolChangeTime) / 60;
  const T = (1 / exponentOf(exponent) - 1) * (tc + (60 * notNegative("toolCost", toolCost)) / positive("rate", rate));
  if (T === 0) {
    throw new TradeError("unsolvable", "toolChangeTime", toolChangeTime, { is: "free-change" });
  }
  return solved("rate", rate, T);
}

/**
 * Cutting speed of least cost per part.
 *
 *   V = Vr·(Tr/T)ⁿ,   T = (1/n − 1)·(tc/60 + 60·Ct/R)
 *
 * @param referenceSpeed - Vr [m/min], scalar, > 0 (any unit of speed: the answer is in it)
 * @param referenceLife - Tr [min], scalar, > 0
 * @param exponent - n [-], scalar, 0 < n < 1
 * @param toolChangeTime - tc [s], scalar, ≥ 0
 * @param toolCost - Ct, cost of one edge [money], scalar, ≥ 0
 * @param rate - R, cost of machine and operator [money/h], scalar, > 0
 * @returns V [m/min]
 * @throws TradeError "range" when an argument is outside its limits, "unsolvable" when neither time nor money is lost at a change
 * @source GILBERT1950 TAYLOR1907
 * @example
 * economicSpeed(100, 60, 0.25, 120, 5, 60) //=> 130.0119
 */
export function economicSpeed(
  referenceSpeed: number,
  referenceLife: number,
  exponent: number,
  toolChangeTime: number,
  toolCost: number,
  rate: number,
): number {
  const T = economicLife(exponent, toolChangeTime, toolCost, rate);
  return speedForLife(T, referenceSpeed, referenceLife, exponent);
}

/**
 * Cutting speed of shortest time per part: the tool counts as free.
 *
 *   V = Vr·(Tr/T)ⁿ,   T = (1/n − 1)·tc/60
 *
 * @param referenceSpeed - Vr [m/min], scalar, > 0 (any unit of speed: the answer is in it)
 * @param referenceLife - Tr [min], scalar, > 0
 * @param exponent - n [-], scalar, 0 < n < 1
 * @param toolChangeTime - tc [s], scalar, > 0
 * @returns V [m/min]
 * @throws TradeError "range" when an argument is outside its limits
 * @source GILBERT1950 TAYLOR1907
 * @example
 * quickestSpeed(100, 60, 0.25, 120) //=> 177.8279
 */
export function quickestSpeed(
  referenceSpeed: number,
  referenceLife: number,
  exponent: number,
  toolChangeTime: number,
): number {
  const T = (1 / exponentOf(exponent) - 1) * (positive("toolChangeTime", toolChangeTime) / 60);
  return speedForLife(T, referenceSpeed, referenceLife, exponent);
}

function solved(parameter: string, value: number, answer: number): number {
  if (!Number.isFinite(answer) || answer <= 0) {
    throw new TradeError("unsolvable", parameter, value, { is: "beyond-numbers" });
  }
  return answer;
}
