/** How long a feature takes on the machine: rapids, plunges, arcs, turns, pecks, in the order they run. */

import type { Machine, Row } from "../../table/read.ts";
import { arcTime, moveTime } from "../../time.ts";
import { BREAKTHROUGH, CLEARANCE, DEFAULT_SPACING } from "./choices.ts";
import type { Done, Job } from "./job.ts";

/** Seconds of one feature by what the machine does in them. */
export interface FeatureTime {
  cutting: number;
  moving: number;
  waiting: number;
  /** What the same cutting path would take at the programmed feed without acceleration, by the same measured cycle [s]. */
  ideal: number;
}

export interface MachineMotion {
  readonly rapid: number;
  readonly acceleration: number;
  /** Time in which the acceleration builds up [s]. */
  readonly ramp: number;
  /** Measured cycle over the planned one [-]. */
  readonly factor: number;
}

/** How a machine moves, when its row tells rapid and acceleration. A measured cycle calibrates it. */
function motionOf(machine: Machine | undefined): MachineMotion | undefined {
  if (machine?.rapid === undefined || machine.acceleration === undefined) return undefined;
  const { rapid, acceleration, rampTime = 0, cycleFactor = 1 } = machine;
  return { rapid: rapid * 1000, acceleration, ramp: rampTime, factor: cycleFactor };
}

export class Motion {
  readonly time: FeatureTime = { cutting: 0, moving: 0, waiting: 0, ideal: 0 };
  private readonly m: MachineMotion;
  constructor(m: MachineMotion) {
    this.m = m;
  }

  total(): number {
    return this.time.cutting + this.time.moving + this.time.waiting;
  }

  rapid(distance: number): void {
    this.time.moving += this.m.factor * moveTime(distance, this.m.rapid, this.m.acceleration, this.m.ramp);
  }

  feed(distance: number, feed: number): void {
    this.time.cutting += this.m.factor * moveTime(distance, feed, this.m.acceleration, this.m.ramp);
    this.time.ideal += (this.m.factor * 60 * distance) / feed;
  }

  /** Arc or helix at a feed; the acceleration caps the feed on small radii. */
  arc(radius: number, turns: number, feed: number, risePerTurn: number): void {
    this.time.cutting += this.m.factor * arcTime(radius, turns, feed, this.m.acceleration, risePerTurn, this.m.ramp);
    this.time.ideal += (this.m.factor * 60 * turns * Math.hypot(2 * Math.PI * radius, risePerTurn)) / feed;
  }

  /** The same moves so many times over. */
  repeat(times: number, moves: () => void): void {
    const before = { ...this.time };
    moves();
    for (const key of ["cutting", "moving", "waiting", "ideal"] as const) {
      this.time[key] = before[key] + times * (this.time[key] - before[key]);
    }
  }

  wait(seconds: number): void {
    this.time.waiting += seconds;
  }

  /** From the last feature to this one, and down to the clearance height. */
  arrive(row: Row): void {
    this.rapid(row.spacing ?? DEFAULT_SPACING);
    this.rapid(10 * CLEARANCE);
  }

  /** One pass around: half-circle in from the middle, `turns` on the path, half-circle out. */
  circle(radius: number, turns: number, feed: number, risePerTurn: number): void {
    this.arc(radius / 2, 0.5, feed, 0);
    this.arc(radius, turns, feed, risePerTurn);
    this.arc(radius / 2, 0.5, feed, 0);
  }
}

/** Time of a feature and of its edge, at a surface speed [m/min]: the moves from the last feature on. Empty where the machine does not tell how it moves. */
export function featureTime(
  { row, machine }: Pick<Job, "row" | "machine">,
  surfaceSpeed: number,
  moves: (motion: Motion) => void,
): Pick<Done, "time" | "cutting"> {
  const m = motionOf(machine);
  if (!m) return {};
  const motion = new Motion(m);
  motion.arrive(row);
  moves(motion);
  return { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed } };
}

/** Breakthrough of a through hole [mm]. */
export const breakthroughOf = (through: boolean | undefined) => (through ? BREAKTHROUGH : 0);
