/** Milling a wall: tool, speed, feed, passes, forces, size, time. What the wall is, its operation says. */
import { engagedSpeed } from "../../../mill/engaged-speed.ts";
import type { Direction } from "../../../table/results.ts";
import { neckClearance } from "../../../thread/fit.ts";
import { arcFeedLimit } from "../../../time.ts";
import type { Operation } from "../../operation.ts";
import { toolBeam } from "../beam.ts";
import { judgeChatter } from "../chatter.ts";
import { SPEED_PLACE, SPINDLE_EFFICIENCY, UNCERTAINTY } from "../choices.ts";
import { judgeRealChip, programFeed } from "../feed.ts";
import { forceOf } from "../force.ts";
import { type Done, type Job, ofOtherKind, requireCells } from "../job.ts";
import { judgeChip, leastChipOf } from "../limits.ts";
import { judgeReach } from "../reach.ts";
import { judgeRunout } from "../runout.ts";
import { over } from "../slack.ts";
import { chooseSpeed, feedOf, INSERT_FEED, ownSpeedOf } from "../speed.ts";
import { judgeLoads } from "./loads.ts";
import { type Attempt, choosePasses, type GivenFeed, standing } from "./passes.ts";
import { chatterPass, quietSlot } from "./quiet.ts";
import { judgeRoughness, judgeSlot } from "./surface.ts";
import { wallTime } from "./timing.ts";
import { diameterAt, effective, isSized, reachOf, type SizedTool, type Wall } from "./wall.ts";

/** Plans a wall; `wallOf` says what a cutter is to mill, undefined, with a finding, when it cannot. */
export function planWall(job: Job, operation: Operation, wallOf: (tool: SizedTool) => Wall | undefined): Done {
  const { work, row } = job;
  const { tool } = job;
  if (!tool && row.tool === undefined)
    work.find("no-tool-fits", { operation: job.operation, kind: operation.tools[0]! });
  const needed = operation.needs(row);
  if (!tool) {
    requireCells(job, needed);
    return {};
  }
  work.set({ tool: tool.tool });
  if (ofOtherKind(work, tool, operation.tools[0]!, operation.tools)) return { tool };
  if (!isSized(tool)) {
    work.find("tool-incomplete", { tool: tool.tool, missing: tool.diameter === undefined ? "diameter" : "teeth" });
    return { tool };
  }
  if (!requireCells(job, needed)) return { tool };
  const reach = reachOf(tool);
  // A face is open: its cutter goes as deep as it likes.
  if (job.operation !== "face" && over(row.depth!, reach))
    work.find("cutter-short", { value: row.depth!, limit: reach });
  const wall = wallOf(tool);
  if (!wall) return { tool };
  work.path = { kind: "wall", wall };
  // Whatever is thicker than the cutter meets the wall that the cutter makes.
  judgeReach(job, tool, wall.depth, tool.diameter, true);
  return { tool, ...cut(job, wall, tool) };
}

function cut(job: Job, whole: Wall, tool: SizedTool): Omit<Done, "tool"> {
  const { work, row, machine, operation } = job;
  const { diameter, teeth } = tool;
  let wall = whole;
  const { beside = [] } = wall;
  const given = givenFeed(job, tool);
  work.set({ direction: wallDirection(job, wall) });
  const arc = wall.side === "straight" ? undefined : { diameter: wall.finish!, side: wall.side };
  const pathRadius = arc && (arc.side === "inside" ? arc.diameter - diameter : arc.diameter + diameter) / 2;
  if (wall.circles) circlePath(job, tool, wall, pathRadius!);
  const beam = given && toolBeam(job, tool);
  let chosen = given && choosePasses(job, wall, tool, given, beam);
  const speed = chooseSpeed(job, tool, chosen?.edge.diameter ?? diameter, SPEED_PLACE.mill, {
    engaged: chosen && engagedFactor(job, tool, chosen),
    own: ownSpeedOf(tool.kind),
  });
  if (!speed || !given || !chosen) return {};
  let quiet: Attempt | undefined; // one that is known not to chatter
  if (beam && operation === "slot" && row.axialDepth === undefined && wall.full) {
    const passesOf = (w: Wall) => choosePasses(job, w, tool, given, beam)!;
    const way = quietSlot(job, beam, tool, { wall, chosen }, speed.surfaceSpeed, passesOf);
    ({ wall, chosen } = way);
    if (way.quiet) quiet = chosen;
    work.path = { kind: "wall", wall };
  }
  const spindle = spindleShare(job, given, chosen, speed.rpm);
  if (spindle < 1) {
    const wanted = chosen.edgeFeed;
    chosen = choosePasses(job, wall, tool, { ...given, spindle }, beam)!;
    work.find("feed-for-spindle", { value: chosen.edgeFeed, limit: wanted });
  }
  radialStep(job, wall, chosen, diameter);
  const limit =
    pathRadius !== undefined && machine?.acceleration !== undefined
      ? arcFeedLimit(pathRadius, machine.acceleration, wall.rise)
      : undefined;
  const { feed, share, heldBy } = programFeed(job, {
    ...chosen,
    listed: given.listed,
    edgeAngle: chosen.edge.angle,
    engaged: chosen.edge.diameter,
    rpm: speed.rpm,
    teeth,
    diameter,
    arc,
    arcLimit: limit,
  });
  judgeChip(job, share * chosen.chip, tool);
  if (given.list) {
    const { listed } = given;
    judgeRealChip(job, { ...chosen, share, heldBy, listed });
    const leastChip = leastChipOf(job, tool);
    judgeRunout(job, { chip: share * chosen.chip, listed, runout: tool.runout, teeth, leastChip, check: RUNOUT_CHECK });
  }
  if (operation === "slot" && wall.full) judgeSlot(job, tool, wall.axial, share * chosen.centreFeed);
  judgeRoughness(job, wall, tool, share * chosen.edgeFeed);
  if (beam && operation !== "face")
    judgeChatter(job, beam, tool, chosen === quiet ? [] : [chatterPass(chosen, teeth, speed.surfaceSpeed)]);
  work.set({
    passes: (chosen.passes + beside.length) * (operation === "slot" || operation === "face" ? wall.levels : 1),
    springPasses: chosen.springs,
    depths: [...chosen.depths, ...beside],
  });
  const helixOnly = wall.rise > 0 && chosen.depths.length === 1;
  work.step("axialDepth", helixOnly ? wall.rise : wall.axial, {
    rise: helixOnly,
    levels: wall.levels,
    helix: wall.rise > 0,
  });
  work.sketch = {
    kind: operation,
    inside: wall.side === "inside",
    holeDiameter: wall.finish,
    startDiameter: wall.start,
    depth: wall.depth,
    through: operation === "face" ? undefined : row.through,
    pathRadius,
    cutterDiameter: diameter,
    depths: chosen.depths,
    tool: beam?.parts.map((p) => ({ length: p.length, diameter: p.holderDiameter, part: p.part })),
    deflection: beam ? chosen.loads().bending.deflection : undefined,
  };
  if (forceOf(job)) judgeLoads(job, wall, tool, chosen, beam, speed.rpm);
  else work.find("no-kc", { bending: true });
  return wallTime(job, wall, tool, chosen, feed, speed.listSpeed);
}

/** Where the centre of the cutter runs round a bore or a boss, and how far its neck stays from the wall. */
function circlePath({ work }: Job, { neckDiameter }: SizedTool, wall: Wall, pathRadius: number): void {
  const side = wall.side === "inside" ? "inside" : "outside";
  work.step("pathRadius", pathRadius, { side });
  work.set({ pathRadius, startDiameter: wall.start! });
  if (neckDiameter === undefined) return;
  const kind = side === "inside" ? "internal" : "external";
  work.set({ neckGap: neckClearance(wall.finish!, pathRadius, neckDiameter, kind) });
}

/** The list's feed for the cutter, and the row's own; undefined (with a finding) when neither is there. */
function givenFeed({ work, row, material }: Job, tool: SizedTool): (GivenFeed & { list: boolean }) | undefined {
  const typed = row.feedPerTooth;
  const listed = material && feedOf(material, tool.kind, tool.diameter);
  if (listed !== undefined) {
    if (tool.kind === "face mill" && material?.feedInsert === undefined)
      work.find("list-insert-blank", { material: material!.material, factor: INSERT_FEED });
    return { listed, typed, list: true };
  }
  if (typed !== undefined) return { listed: typed, typed, list: false };
  if (material) work.find("no-feed", { material: material.material });
  return undefined;
}

/** A feed that the row chose is lowered to what the spindle drives, down to this share; beyond it the depth is wrong, not the feed. */
const SPINDLE_SHARE = 0.5;

/** Share of a chosen feed that the spindle has power and torque for, with the uncertainty of the force; 1 where it has enough. */
function spindleShare({ machine, material }: Job, { typed }: GivenFeed, { loads }: Attempt, rpm: number): number {
  if (typed !== undefined || material?.exponent === undefined) return 1;
  const { torque } = loads();
  if (torque === 0) return 1;
  const drawn = ((1 + UNCERTAINTY.force) * torque) / SPINDLE_EFFICIENCY;
  const power = (2 * Math.PI * rpm * drawn) / 60000;
  const load = Math.max(
    power / (machine?.power ?? Number.POSITIVE_INFINITY),
    drawn / (machine?.torque ?? Number.POSITIVE_INFINITY),
  );
  // force goes with the chip to the power 1 − m; a hair below the limit
  const share = (0.995 / load) ** (1 / (1 - material.exponent));
  return load > 1 && share >= SPINDLE_SHARE ? share : 1;
}

/**
 * Listed chips that the tooth of an end mill which runs out may cut before the row is to be looked at: an everyday holder with 0.01 mm
 * gives a 3 mm cutter one and a half (judgement; edges break at double, CHIP_OVER).
 */
const RUNOUT_CHECK = 2;

/** Taylor's exponent where the material's row tells none: carbide, high-speed steel (usual values, from memory). */
const TAYLOR = { carbide: 0.25, hss: 0.125 } as const;

/** Factor on the list's speeds for how far the cutter is engaged. */
function engagedFactor({ material }: Job, tool: SizedTool, { radialDepth, edge }: Attempt): number {
  const n = tool.substrate === "hss" ? TAYLOR.hss : (material?.taylorN ?? TAYLOR.carbide);
  return engagedSpeed(Math.min(radialDepth, edge.diameter), edge.diameter, Math.min(n, 0.99));
}

/** Stock that the row before leaves beyond its size is said from this share of the row's own stock on (judgement). */
const HANDED_SAID = 0.1;

function radialStep(job: Job, wall: Wall, chosen: Attempt, diameter: number): void {
  const { work, handed } = job;
  const [, before] = standing(job, wall, chosen.depths[0]!);
  if (handed && before !== 0) {
    work.step("handed", before, { row: handed.row });
    if (before > HANDED_SAID * wall.stock)
      work.find("stock-handed", { value: before, limit: HANDED_SAID * wall.stock, row: handed.row, stock: wall.stock });
  }
  if (wall.side === "straight") {
    work.step("radialDepth", chosen.radialDepth);
    return;
  }
  // The pass with the largest effective depth, written as its own formula.
  const cutting = chosen.depths.slice(0, chosen.passes);
  const prior = (i: number) => (i === 0 ? -before : cutting[i - 1]!);
  const i = cutting.findIndex(
    (d, i) => Math.abs(effective(wall, diameter, prior(i), d) - chosen.radialDepth) < 1e-12 * diameter,
  );
  work.step("radialDepth", chosen.radialDepth, {
    side: wall.side,
    from: diameterAt(wall, prior(i)),
    to: diameterAt(wall, cutting[i]!),
    diameter,
  });
}

function wallDirection({ row }: Job, wall: Wall): Direction {
  const climb = (row.way ?? "climb") === "climb";
  if (wall.side === "straight" && wall.full) return { path: "full width" };
  if (wall.side === "straight") return { path: "wall", wall: climb ? "right" : "left" };
  const turn = (wall.side === "inside") === climb ? "counter-clockwise" : "clockwise";
  return wall.rise > 0 ? { path: "circle", axis: "down", turn } : { path: "circle", turn };
}
