/** Drilling: the hole, the drill, speed and feed, torque and thrust, pecks, what size comes out. */
import { drillChip, drillThrust, drillTorque } from "../drill/force.ts";
import { drillTravel } from "../drill/point.ts";
import type { DrillSet } from "../drill/sizes.ts";
import { tapDrill } from "../drill/tapdrill.ts";
import { tableFeed } from "../mill/speed.ts";
import type { Tool } from "../table/read.ts";
import {
  chooseFeed,
  chooseSpeed,
  DRILL_FEED_FACTOR,
  drillNameOf,
  drillOversize,
  PECK_FROM,
  requireCells,
  SAME_SIZE,
  SPEED_PLACE,
} from "./shared/choices.ts";
import type { Done, Job } from "./shared/job.ts";
import { judgeChip, judgeFeed, judgePower } from "./shared/limits.ts";
import { breakthroughOf, Motion, motionOf } from "./shared/motion.ts";
import { readThread, type ThreadSizes } from "./shared/thread-sizes.ts";

const POINT_ANGLE = 118;
/** Depth in diameters beyond which no pecking plan is made (common practice). */
const DEEPEST = 50;

export function planDrill(job: Job): Done {
  const { work, row, material, machine } = job;
  const sizes = row.thread === undefined ? undefined : readThread(job);
  const wanted = wantedHole(job, sizes);
  if (wanted === undefined) {
    if (row.thread === undefined) requireCells(work, { "Finish diameter": row.finishDiameter, Depth: row.depth });
    return {};
  }
  const complete = requireCells(work, { Depth: row.depth });
  const { tool, proposed } = chooseDrill(job, wanted);
  const diameter = tool?.diameter ?? wanted;
  work.set({ tool: tool?.tool ?? null, drill: tradeName(job, diameter), startDiameter: row.startDiameter ?? null });
  if (tool && !proposed && Math.abs(diameter - wanted) > SAME_SIZE) {
    work.reason(
      sizes ? "check" : "stop",
      "wrong-drill",
      `${tool.tool} is ${work.say(diameter)}; ${row.thread ? `the tap drill for ${sizes?.thread.designation ?? row.thread}` : "the hole"} is ${work.say(wanted)}`,
      `take a ${tradeName(job, wanted) ?? work.say(wanted)} drill`,
      { value: diameter, limit: wanted, dimension: "length" },
    );
  }
  judgeHole(job, diameter, sizes, tool);

  const pointAngle = tool?.pointAngle ?? POINT_ANGLE;
  const teeth = tool?.teeth ?? 2;
  const speed = chooseSpeed(
    work,
    row,
    material,
    tool ?? { tool: "", substrate: "hss" },
    machine,
    diameter,
    SPEED_PLACE.drill,
  );
  const lip = chooseFeed(work, row, material, diameter, DRILL_FEED_FACTOR);
  if (!speed || lip === undefined) return { tool };
  const perRev = lip * teeth;
  const feed = judgeFeed(job, tableFeed(speed.rpm, teeth, lip));
  STEPS: work.step(
    "feedPerTooth",
    "feed per lip",
    lip,
    row.feedPerTooth ? "from the row" : `list feed at the diameter × ${DRILL_FEED_FACTOR}`,
    "COMMON",
    { dimension: "length" },
  );
  STEPS: work.step("tableFeed", "table feed", feed, "vf = n·z·fz", "MH", {
    dimension: "feed",
    cell: work.formula(
      "TABLEFEED",
      speed.rpm,
      teeth,
      [lip, "length"],
      machine?.maxFeed === undefined ? null : [machine.maxFeed * 1000, "feed"],
    ),
  });
  const chip = drillChip(perRev, pointAngle);
  work.set({ feedPerTooth: lip, tableFeed: feed, chipThickness: chip });
  STEPS: work.step("chip", "chip thickness", chip, "h = (f/2)·sin(point/2)", "MH", {
    dimension: "length",
    cell: work.formula(
      "CHIPTHICKNESS",
      [lip, "length"],
      [diameter, "length"],
      [diameter, "length"],
      "max",
      pointAngle / 2,
    ),
  });
  judgeChip(job, chip, tool?.edgeRadius);
  forces(job, diameter, perRev, pointAngle, speed.rpm, tool);
  if (!complete) return { tool };
  return { tool, ...timing(job, diameter, pointAngle, feed, speed.surfaceSpeed, tool) };
}

const SETS: Readonly<Record<"mm" | "in", readonly DrillSet[]>> = {
  mm: ["metric"],
  in: ["number", "letter", "fraction"],
};

/** The trade's name of a drill in the sets of the row's thread or units, when there is one of that size. */
function tradeName({ work, row }: Job, diameter: number): string | null {
  const metric = row.thread === undefined ? work.units === "mm" : /^\s*[MG]/i.test(row.thread);
  return drillNameOf(diameter, SETS[metric ? "mm" : "in"]);
}

/** The hole that is asked for [mm]: its finished size, the tap drill of its thread, or the named drill's own size. */
function wantedHole({ work, row, tool }: Job, sizes: ThreadSizes | undefined): number | undefined {
  if (row.finishDiameter !== undefined) return row.finishDiameter;
  if (sizes) {
    const { thread, major, pitch } = sizes;
    const drill = tapDrill({ standard: thread.standard, major, pitch, profileAngle: thread.profileAngle }).diameter;
    STEPS: work.step(
      "tapDrill",
      "tap drill",
      drill,
      sizes.thread.native === "in" ? "nearest standard drill to 75 % of thread" : "D − P to the drill steps",
      "COMMON",
      {
        dimension: "length",
        cell: work.formula("TAPDRILL", sizes.thread.designation, work.units),
      },
    );
    return drill;
  }
  return row.thread === undefined ? tool?.diameter : undefined;
}

/** The named drill, or the stiffest listed one of that size that reaches the depth. */
function chooseDrill({ work, row, tool, lists }: Job, wanted: number): { tool?: Tool; proposed: boolean } {
  if (tool) {
    if (tool.kind !== undefined && tool.kind !== "drill") {
      work.reason(
        "stop",
        "tool-kind",
        `${tool.tool} is a ${tool.kind}; a drill is wanted`,
        "name a drill, or leave Tool blank",
      );
    }
    return { tool, proposed: false };
  }
  if (row.tool !== undefined) return { proposed: false };
  const depth = row.depth ?? 0;
  const fitting = lists.tools.items.filter(
    (t) => t.kind === "drill" && t.diameter !== undefined && Math.abs(t.diameter - wanted) <= SAME_SIZE,
  );
  const reach = (t: Tool) => t.cuttingLength ?? Number.POSITIVE_INFINITY;
  const best = [...fitting].sort(
    (a, b) =>
      Number(reach(b) >= depth) - Number(reach(a) >= depth) ||
      Math.abs(a.diameter! - wanted) - Math.abs(b.diameter! - wanted) ||
      Number(b.substrate === "carbide") - Number(a.substrate === "carbide") ||
      reach(a) - reach(b),
  )[0];
  if (best) {
    work.reason(
      "ok",
      "tool-proposed",
      `proposed: ${best.tool}, the listed drill of that size that reaches`,
      "name it in the row to keep it",
    );
    return { tool: best, proposed: true };
  }
  work.reason(
    "check",
    "no-drill-listed",
    `no listed drill is ${work.say(wanted)}: a jobber drill of HSS with two lips and a ${POINT_ANGLE}° point is assumed`,
    "add the drill to the list Tools",
    {},
  );
  return { proposed: true };
}

/** The hole that comes out, against the thread's minor limits when there is a thread. */
function judgeHole({ work, row }: Job, diameter: number, sizes: ThreadSizes | undefined, tool: Tool | undefined): void {
  const size = diameter + (row.drillOversize ?? drillOversize(diameter, tool?.substrate));
  STEPS: work.step("size", "hole that comes out (average)", size, "drill size and mean drilling oversize", "MH", {
    dimension: "length",
  });
  work.set({ size });
  if (!sizes) return;
  const [low, high] = [sizes.minorMin, sizes.minorMax];
  work.set({ sizeMin: low, sizeMax: high });
  if (size < low) {
    work.reason(
      "stop",
      "hole-under-minor",
      `the hole comes out at ${work.say(size)}, under the thread's least minor diameter ${work.say(low)}`,
      "take the next larger drill",
      { value: size, limit: low, dimension: "length" },
    );
  } else if (size > high) {
    work.reason(
      diameter > high ? "stop" : "check",
      "hole-over-minor",
      `the hole comes out at ${work.say(size)}, over the thread's largest minor diameter ${work.say(high)}`,
      "take the next smaller drill, or a drill that cuts closer to its size",
      { value: size, limit: high, dimension: "length" },
    );
  }
}

function forces(
  job: Job,
  diameter: number,
  perRev: number,
  pointAngle: number,
  rpm: number,
  tool: Tool | undefined,
): void {
  const { work, row, material } = job;
  if (material?.kc11 === undefined || material.exponent === undefined) {
    work.reason(
      "check",
      "no-kc",
      "the material's row has no kc1.1 and exponent: force and power are not worked out",
      "fill them in",
    );
    return;
  }
  const kc11 = material.kc11 * (row.wearFactor ?? 1);
  const torque = drillTorque(diameter, perRev, kc11, material.exponent, pointAngle);
  const thrust = drillThrust(diameter, perRev, kc11, material.exponent, pointAngle, 1.5);
  const args = [
    [diameter, "length"],
    [perRev, "length"],
    [kc11, "stress"],
    material.exponent,
    work.units,
    pointAngle,
  ] as const;
  STEPS: work.step("torque", "drilling torque", torque, "T = kc·f·D²/8", "MH", {
    dimension: "torque",
    cell: work.formula("DRILLTORQUE", ...args),
  });
  STEPS: work.step("thrust", "thrust (estimate)", thrust, "F = 1.5·½·kc·f·(D/2)·sin(point/2)", "COMMON", {
    dimension: "force",
    cell: work.formula("DRILLTHRUST", ...args),
  });
  work.set({ force: thrust });
  judgePower(job, torque, rpm);
  if (tool?.cuttingLength !== undefined && row.depth !== undefined && row.depth > tool.cuttingLength) {
    work.reason(
      "stop",
      "drill-too-short",
      `depth ${work.say(row.depth)} is more than the drill's cutting length ${work.say(tool.cuttingLength)}`,
      "take a longer drill",
      { value: row.depth, limit: tool.cuttingLength, dimension: "length" },
    );
  }
}

function timing(
  { work, row, machine }: Job,
  diameter: number,
  pointAngle: number,
  feed: number,
  surfaceSpeed: number,
  tool: Tool | undefined,
): Done {
  const depth = row.depth!;
  const out = breakthroughOf(row.through);
  const travel = drillTravel(depth, diameter, pointAngle, out);
  STEPS: work.step("travel", "feed travel", travel, "depth + point + breakthrough", "MH", {
    dimension: "length",
    cell: work.formula("DRILLTRAVEL", [depth, "length"], [diameter, "length"], pointAngle, [out, "length"]),
  });
  if (row.holeDepth !== undefined && !row.through && travel > row.holeDepth) {
    work.reason(
      "stop",
      "point-through-bottom",
      `the drill point reaches ${work.say(travel)}, deeper than the hole's ${work.say(row.holeDepth)}`,
      "drill less deep, or with a flatter point",
      { value: travel, limit: row.holeDepth, dimension: "length" },
    );
  }
  if (travel > DEEPEST * diameter) {
    work.reason(
      "stop",
      "too-deep",
      `${(travel / diameter).toFixed(0)} diameters deep is more than twist drills do (${DEEPEST})`,
      "drill from both sides, or have it gun-drilled",
      { value: travel, limit: DEEPEST * diameter, dimension: "length" },
    );
    return {};
  }
  const m = motionOf(machine);
  const motion = m && new Motion(m);
  motion?.arrive(row);
  const pecks =
    motion?.drill(travel, diameter, feed) ?? 1 + Math.ceil(Math.max(0, travel - PECK_FROM * diameter) / diameter);
  work.set({ passes: pecks, depths: pecks > 1 ? `${pecks} pecks` : null });
  if (pecks > 1) work.step("pecks", "pecks", pecks, `first ${PECK_FROM} × D, then 1 × D each`, "COMMON");
  STEPS: work.sketch = {
    kind: "drill",
    pointAngle,
    holeDiameter: diameter,
    depth,
    through: row.through,
    cutterDiameter: diameter,
    tool: [{ length: tool?.cuttingLength ?? depth * 1.5, diameter, part: "drill" }],
  };
  return motion ? { time: motion.time, cutting: { seconds: motion.time.cutting, surfaceSpeed } } : {};
}
