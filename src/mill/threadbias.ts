/**
 * Where the wall of a thread ends up after each pass, as a band. Two things are not known and so have two ends:
 *
 *   which force counts: the one at the instant an edge makes the wall, or the mean over a turn, signed (with climb it pushes the
 *   tool away, against it may pull in); how stiff and how sharp the tool is: a good and a bad end of flexibility times force, and of r∞
 *
 * All four corners are carried through all passes; the deepest and the shallowest wall are the band.
 */
import { notNegative } from "../check.ts";
import { type BluntTool, wallLeft } from "./bending.ts";
import { checkPass, type ThreadCut } from "./threadforce.ts";
import { threadNormal } from "./threadnormal.ts";

export interface BendingThread {
  /** The cut but for its depths; edge forces are the full ones, used only where the edge makes the wall. */
  readonly cut: Omit<ThreadCut, "startDepth" | "endDepth">;
  /** c, bending of the tool at the profile, per force [mm/N]. */
  readonly flexibility: number;
  /** Factors on c times force, good and bad end [-]; [1, 1] without. */
  readonly ends?: readonly [number, number];
  /** r∞ as a radial depth, sharp and blunt end [mm], from leastLayer. */
  readonly layers: readonly [number, number];
  /** Factors on the edge forces, sharp and blunt end [-]; [1, 1] without. */
  readonly edges?: readonly [number, number];
}

export interface WallBand {
  /** Depth of the wall after each pass [mm]: where the tool bends least, and where it bends most. */
  readonly deepest: readonly number[];
  readonly shallowest: readonly number[];
}

/** A band that further passes can go on from. */
export interface OpenBand extends WallBand {
  /** Wall after the last pass at each corner [mm]. */
  readonly last: readonly number[];
}

const CORNERS = { all: [0, 1], good: [0], bad: [1] } as const;

/** Share of the cutter's radius beyond which it is not pulled in. */
const DEEPEST = 0.98;

/**
 * Depth of a thread's wall after each pass, at both ends of what is known. Asked for series after series with one cut and tool:
 * what does not hang on the depths is worked out once.
 *
 * @param thread - the cut and the tool; thread.flexibility [mm/N], thread.ends [-], thread.layers [mm]
 * @returns of the programmed depth of each pass from the wall of the hole or blank [mm], rising or level: deepest and shallowest
 *   wall after each pass [mm]; of all corners, or only of those of the good or the bad end, half the work: where the force pushes
 *   away, the deepest wall is at the good end; the largest error is at the bad one; going on, where it is told, from the walls that
 *   passes before have left at these corners
 * @throws TradeError "range" when flexibility is negative; what it returns, as threadMillForces does, or when a layer or a depth is negative
 * @source KLINE1982 ARCONA1998 DERIVED
 * @example
 * threadWalls({ cut: { holeDiameter: 5, cutterDiameter: 4, tipFlat: 0.1, profileAngle: 60, feedPerTooth: 0.01, teeth: 3, kc11: 2000, exponent: 0, radialRatio: 0.5, internal: true }, flexibility: 0, layers: [0, 0] })([0.3, 0.5]) //=> {"deepest":[0.3,0.5],"shallowest":[0.3,0.5],"last":[0.5,0.5,0.5,0.5]}
 */
export function threadWalls(
  thread: BendingThread,
): (depths: readonly number[], corners?: keyof typeof CORNERS, before?: readonly number[]) => OpenBand {
  const { cut, layers, ends = [1, 1], edges = [1, 1] } = thread;
  const c = notNegative("flexibility", thread.flexibility);
  const reach = cut.internal ? cut.cutterDiameter : Math.min(cut.cutterDiameter, cut.holeDiameter);
  const deepest = (DEEPEST * reach) / 2;
  /** The tool at the corners of each end: the force while the edge makes the wall, the mean one. */
  let tools: readonly (readonly BluntTool[])[] | undefined;
  let checked = 0;
  return (depths, corners = "all", before) => {
    const last = depths.at(-1) ?? 0;
    if (!(last > 0)) {
      // Nothing is cut: the walls stay as they are.
      const walls = before ?? CORNERS[corners].flatMap(() => [0, 0]);
      const [high, low] = [Math.max(...walls), Math.min(...walls)];
      return { deepest: depths.map(() => high), shallowest: depths.map(() => low), last: walls };
    }
    if (!tools) {
      const { wall, mean } = threadNormal(cut, 0, last);
      tools = ([0, 1] as const).map((end) => {
        const tool = { flexibility: c * ends[end], layer: layers[end], edges: edges[end], deepest };
        return [
          { ...tool, normalForce: wall },
          { ...tool, normalForce: mean },
        ];
      });
      checked = last;
    } else if (last > checked) {
      // The cut is checked with the first depth; deeper ones must lie within the cutter as well.
      checkPass({ ...cut, startDepth: 0, endDepth: last });
      checked = last;
    }
    const band: Record<"deepest" | "shallowest" | "last", number[]> = { deepest: [], shallowest: [], last: [] };
    for (const end of CORNERS[corners])
      for (const tool of tools[end]!) {
        let wall = before?.[band.last.length] ?? 0;
        depths.forEach((depth, i) => {
          wall = wallLeft(tool, wall, depth);
          band.deepest[i] = Math.max(band.deepest[i] ?? wall, wall);
          band.shallowest[i] = Math.min(band.shallowest[i] ?? wall, wall);
        });
        band.last.push(wall);
      }
    return band;
  };
}
