/** Worksheet functions: tool life and cost. */
import { partCost } from "../src/cost.ts";
import { economicSpeed, toolLife } from "../src/life.ts";
import { lifted } from "./lift.ts";
import { between, notNegative, optional, positive } from "./params.ts";

const exponent = between("exponent", 0, 1, { low: true, high: true });

const life = lifted(
  [positive("speed"), positive("referenceSpeed"), positive("referenceLife"), exponent],
  (v, vr, tr, n) => toolLife(v, vr, tr, n),
);
/**
 * Tool life at a cutting speed after Taylor (V·Tⁿ = C), in the unit of referenceLife.
 * @customfunction
 * @param speed Cutting speed, in the unit of referenceSpeed.
 * @param referenceSpeed Cutting speed that gives referenceLife.
 * @param referenceLife Tool life at referenceSpeed.
 * @param exponent Taylor's exponent n, between 0 and 1.
 * @returns Tool life, in the unit of referenceLife.
 * @example
 * =CUT.TOOLLIFE(200, 100, 60, 0.25) //=> 3.75
 */
export function TOOLLIFE(speed: any[][], referenceSpeed: any[][], referenceLife: any[][], exponent: any[][]): any[][] {
  return life(speed, referenceSpeed, referenceLife, exponent);
}

const economic = lifted(
  [
    positive("referenceSpeed"),
    positive("referenceLife"),
    exponent,
    notNegative("toolChangeTime"),
    notNegative("toolCost"),
    positive("rate"),
  ],
  (vr, tr, n, tc, ct, rate) => economicSpeed(vr, tr, n, tc, ct, rate),
);
/**
 * Cutting speed of least cost per part after Taylor, in the unit of referenceSpeed.
 * @customfunction
 * @param referenceSpeed Cutting speed that gives referenceLife.
 * @param referenceLife Tool life at referenceSpeed [min].
 * @param exponent Taylor's exponent n, between 0 and 1.
 * @param toolChangeTime Time to change the tool [s].
 * @param toolCost Cost of one cutting edge.
 * @param rate Cost of machine and operator per hour, more than 0.
 * @returns Cutting speed, in the unit of referenceSpeed.
 * @example
 * =CUT.ECONOMICSPEED(100, 60, 0.25, 120, 5, 60) //=> 130.011865
 */
export function ECONOMICSPEED(
  referenceSpeed: any[][],
  referenceLife: any[][],
  exponent: any[][],
  toolChangeTime: any[][],
  toolCost: any[][],
  rate: any[][],
): any[][] {
  return economic(referenceSpeed, referenceLife, exponent, toolChangeTime, toolCost, rate);
}

const cost = lifted(
  [
    positive("cycleTime"),
    notNegative("rate"),
    positive("batch"),
    notNegative("setupTime"),
    optional(notNegative("toolCostPerPart"), 0),
  ],
  (t, rate, batch, setup, tool) => partCost(t, rate, batch, setup, tool),
);
/**
 * Cost of one part, with its share of the setup.
 * @customfunction
 * @remarks A rate of 0 leaves the tool cost alone.
 * @param cycleTime Time of one part [s].
 * @param rate Cost of machine and operator per hour.
 * @param batch Parts per setup.
 * @param setupTime Setup of the batch [s].
 * @param [toolCostPerPart] Tool cost of one part, default 0.
 * @returns Cost of one part.
 * @example
 * =CUT.PARTCOST(90, 60, 50, 1800, 0.4) //=> 2.5
 */
export function PARTCOST(
  cycleTime: any[][],
  rate: any[][],
  batch: any[][],
  setupTime: any[][],
  toolCostPerPart?: any[][],
): any[][] {
  return cost(cycleTime, rate, batch, setupTime, toolCostPerPart);
}
