/** Drilling: the hole, the drill, speed and feed, torque and thrust, pecks, what size comes out. */
import { drillChip, drillThrust, drillTorque } from "../drill/force.ts";
import { drillTravel } from "../drill/point.ts";
import type { DrillSet } from "../drill/sizes.ts";
import { tapDrill } from "../drill/tapdrill.ts";
import { tableFeed } from "../mill/speed.ts";
import type { Tool } from "../table/lists.ts";
import type { Operation } from "./operation.ts";
import { DRILL_FEED_FACTOR, drillNameOf, drillOversize, PECK_FROM, SAME_SIZE, SPEED_PLACE } from "./shared/choices.ts";
import { type Done, type Job, requireCells } from "./shared/job.ts";
import { judgeChip, judgeFeed, judgePower } from "./shared/limits.ts";
import { breakthroughOf, Motion, motionOf } from "./shared/motion.ts";
import { chooseFeed, chooseSpeed } from "./shared/speed.ts";
import { readThread, type ThreadSizes } from "./shared/thread/sizes.ts";

export const drill: Operation = {
  needs: (row) => (row.thread === undefined ? ["finishDiameter", "depth"] : ["depth"]),
  uses: [
    ...(["tool", "thread", "finishDiameter", "startDiameter", "through", "feedPerTooth"] as const),
    ...(["holeDepth", "drillOversize", "wearFactor"] as const),
  ],
  tools: ["drill"],
  levers: ["feedPerTooth", "surfaceSpeed", "tool"],
  plan,
};

const POINT_ANGLE = 118;
/** Depth in diameters beyond which no pecking plan is made (common practice). */
const DEEPEST = 50;

function plan(job: Job): Done {
  const { work, row, machine } = job;
  const sizes = row.thread === undefined ? undefined : readThread(job);
  const wanted = wantedHole(job, sizes);
  if (wanted === undefined) {
    if (row.thread === undefined) requireCells(job, drill.needs(row));
    return {};
  }
  const complete = requireCells(job, ["depth"]);
  const { tool, proposed } = chooseDrill(job, wanted);
  const diameter = tool?.diameter ?? wanted;
  work.set({ tool: tool?.tool ?? null, drill: tradeName(job, diameter), startDiameter: row.startDiameter ?? null });
  if (tool && !proposed && Math.abs(diameter - wanted) > SAME_SIZE) {
    work.find(
      "wrong-drill",
      {
        value: diameter,
        limit: wanted,
        tool: tool.tool,
        drill: tradeName(job, wanted),
        thread: row.thread === undefined ? undefined : (sizes?.thread.designation ?? row.thread),
      },
      sizes ? "check" : "stop",
    );
  }
  judgeHole(job, diameter, sizes, tool);

  const pointAngle = tool?.pointAngle ?? POINT_ANGLE;
  const teeth = tool?.teeth ?? 2;
  const speed = chooseSpeed(job, tool ?? { substrate: "hss" }, diameter, SPEED_PLACE.drill);
  const lip = chooseFeed(job, diameter, DRILL_FEED_FACTOR);
  if (!speed || lip === undefined) return { tool };
  const perRev = lip * teeth;
  const feed = judgeFeed(job, tableFeed(speed.rpm, teeth, lip));
  work.step("feedPerTooth", lip, { factor: row.feedPerTooth ? undefined : DRILL_FEED_FACTOR });
  work.step("tableFeed", feed, {
    rpm: speed.rpm,
    teeth,
    feed: lip,
    cap: machine?.maxFeed === undefined ? undefined : machine.maxFeed * 1000,
  });
  const chip = drillChip(perRev, pointAngle);
  work.set({ feedPerTooth: lip, tableFeed: feed, chipThickness: chip });
  work.step("chip", chip, { feed: lip, radialDepth: diameter, diameter, edgeAngle: pointAngle / 2, drill: true });
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
    const size = tapDrill({ standard: thread.standard, major, pitch, profileAngle: thread.profileAngle }).diameter;
    work.step("tapDrill", size, { thread: thread.designation, inch: thread.native === "in" });
    return size;
  }
  return row.thread === undefined ? tool?.diameter : undefined;
}

/** The named drill, or the stiffest listed one of that size that reaches the depth. */
function chooseDrill({ work, row, tool, lists }: Job, wanted: number): { tool?: Tool; proposed: boolean } {
  if (tool) {
    if (tool.kind !== undefined && tool.kind !== "drill") {
      work.find("tool-kind", { tool: tool.tool, kind: tool.kind, wanted: "drill" });
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
    work.find("tool-proposed", { tool: best.tool, for: "drill" });
    return { tool: best, proposed: true };
  }
  work.find("no-drill-listed", { size: wanted, pointAngle: POINT_ANGLE });
  return { proposed: true };
}

/** The hole that comes out, against the thread's minor limits when there is a thread. */
function judgeHole({ work, row }: Job, diameter: number, sizes: ThreadSizes | undefined, tool: Tool | undefined): void {
  const size = diameter + (row.drillOversize ?? drillOversize(diameter, tool?.substrate));
  work.step("size", size);
  work.set({ size });
  if (!sizes) return;
  const [low, high] = [sizes.minorMin, sizes.minorMax];
  work.set({ sizeMin: low, sizeMax: high });
  if (size < low) work.find("hole-under-minor", { value: size, limit: low });
  else if (size > high) work.find("hole-over-minor", { value: size, limit: high }, diameter > high ? "stop" : "check");
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
    work.find("no-kc", { bending: false });
    return;
  }
  const kc11 = material.kc11 * (row.wearFactor ?? 1);
  const torque = drillTorque(diameter, perRev, kc11, material.exponent, pointAngle);
  const thrust = drillThrust(diameter, perRev, kc11, material.exponent, pointAngle, 1.5);
  const facts = { diameter, perRev, kc11, exponent: material.exponent, pointAngle };
  work.step("torque", torque, facts);
  work.step("thrust", thrust, facts);
  work.set({ force: thrust });
  judgePower(job, torque, rpm);
  if (tool?.cuttingLength !== undefined && row.depth !== undefined && row.depth > tool.cuttingLength)
    work.find("drill-too-short", { value: row.depth, limit: tool.cuttingLength });
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
  work.step("travel", travel, { depth, diameter, pointAngle, out });
  if (row.holeDepth !== undefined && !row.through && travel > row.holeDepth)
    work.find("point-through-bottom", { value: travel, limit: row.holeDepth });
  if (travel > DEEPEST * diameter) {
    work.find("too-deep", {
      value: travel,
      limit: DEEPEST * diameter,
      diameters: travel / diameter,
      most: DEEPEST,
    });
    return {};
  }
  const m = motionOf(machine);
  const motion = m && new Motion(m);
  motion?.arrive(row);
  const pecks =
    motion?.drill(travel, diameter, feed) ?? 1 + Math.ceil(Math.max(0, travel - PECK_FROM * diameter) / diameter);
  work.set({ passes: pecks, depths: pecks > 1 ? { pecks } : null });
  if (pecks > 1) work.step("pecks", pecks);
  work.sketch = {
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
