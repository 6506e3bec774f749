/** Speed, feed and spindle load of tools that go straight into a hole: drills, taps, reamers, countersinks. */
import { depthFactors } from "../../drill/deep.ts";
import { drillFeed } from "../../drill/start.ts";
import type { Material, Tool } from "../../table/lists.ts";
import type { Row } from "../../table/rows.ts";
import { DRILL_FEED_FACTOR, SPEED_PLACE } from "./choices.ts";
import type { Job } from "./job.ts";
import { judgeFeed } from "./limits.ts";
import { over } from "./slack.ts";
import { chooseSpeed, listedFeed, type Speed } from "./speed.ts";

/** A listed drilling speed is a starting value: from so much under it to so much over it nobody argues (judgement). */
const BAND = { low: 0.8, high: 1.25 } as const;
/** Place in that band of the listed value itself. */
const LISTED_PLACE = (1 - BAND.low) / (BAND.high - BAND.low);
/** Drilling over milling speed where the list has no drilling speed (common practice: carbide drills run well below mills). */
const MILLING_SHARE = { carbide: 0.6, hss: 1 } as const;
/** Speed of taps, reamers and countersinks over that of a drill of high-speed steel (common practice). */
export const SHARE_OF_DRILL = { tap: 0.4, reamer: 0.4, countersink: 0.4 } as const;

/** Range of speeds of a hole tool [m/min], `share` of drilling, and where in it the starting value lies. */
export function holeRange(
  material: Material | undefined,
  hss: boolean,
  share: number,
): { readonly range: readonly [number, number] | undefined; readonly place: number } {
  const listed = hss ? material?.drillSpeedHss : material?.drillSpeedCarbide;
  if (listed !== undefined)
    return { range: [listed * share * BAND.low, listed * share * BAND.high], place: LISTED_PLACE };
  const scale = share * (hss ? MILLING_SHARE.hss : MILLING_SHARE.carbide);
  const low = hss ? material?.speedHssLow : material?.speedCarbideLow;
  const high = hss ? material?.speedHssHigh : material?.speedCarbideHigh;
  const range = low === undefined || high === undefined ? undefined : ([low * scale, high * scale] as const);
  return { range, place: SPEED_PLACE.drill };
}

/** Spindle speed of a hole tool: the drilling speed of its substrate, a share of it for other tools, less in deep holes. */
export function holeSpeed(
  job: Job,
  tool: Pick<Tool, "substrate" | "maxRpm">,
  diameter: number,
  share: number,
): Speed | undefined {
  // A list that does not say means high-speed steel, as of the feed.
  const { substrate = "hss", maxRpm } = tool;
  const { range, place } = holeRange(job.material, substrate === "hss", share);
  return chooseSpeed(job, { substrate, maxRpm }, diameter, place, { range });
}

/** Share of the drilling speed that an operation's tools run at; undefined for what is no hole tool. */
export function shareOf(row: Row, tool: Partial<Tool> = {}): number | undefined {
  if (row.operation === "drill") return inDepth(tool, row.depth ?? 0, tool.diameter ?? row.finishDiameter ?? 1).speed;
  if (row.operation === "tap") return SHARE_OF_DRILL.tap;
  if (row.operation === "ream") return SHARE_OF_DRILL.reamer;
  return row.operation === "countersink" ? SHARE_OF_DRILL.countersink : undefined;
}

export interface HoleFeed {
  /** Feed per turn [mm], and what the list gives for this hole. */
  readonly perTurn: number;
  readonly listed: number | undefined;
}

/** Feed per turn of a drill: the row's own, else the list's at its diameter, less in deep holes. */
export function drillingFeed(
  { work, row, material }: Job,
  tool: Pick<Tool, "substrate">,
  diameter: number,
  teeth: number,
  depthShare: number,
): HoleFeed | undefined {
  const ten = tool.substrate === "carbide" ? material?.drillFeedCarbide : material?.drillFeedHss;
  let listed: number | undefined;
  if (ten !== undefined) listed = drillFeed(diameter, ten) * depthShare;
  else {
    const milling = material && listedFeed(material, diameter);
    if (milling !== undefined) listed = milling * DRILL_FEED_FACTOR * teeth * depthShare;
  }
  const perTurn = row.feedPerTooth === undefined ? listed : row.feedPerTooth * teeth;
  if (perTurn === undefined) {
    if (material) work.find("no-feed", { material: material.material });
    return undefined;
  }
  work.step("drillFeed", perTurn, {
    ten: row.feedPerTooth === undefined ? ten : undefined,
    depth: depthShare,
    typed: row.feedPerTooth !== undefined,
  });
  return { perTurn, listed };
}

/** Typed feed over the list's from which a row is to be looked at, and from which the tool is not likely to live (judgement). */
export const FEED_OVER = { check: 1.5, stop: 3 } as const;

/** A typed feed against the list's. */
export function judgeFeedOver({ work }: Job, { perTurn, listed }: HoleFeed): void {
  if (listed === undefined || !over(perTurn, FEED_OVER.check * listed)) return;
  const most = over(perTurn, FEED_OVER.stop * listed);
  work.find(
    "feed-over-list",
    { value: perTurn, limit: listed * (most ? FEED_OVER.stop : FEED_OVER.check), listed },
    most ? "stop" : "check",
  );
}

/**
 * Feed of a tool that opens a hole, to be programmed: the row's own per turn, else so many times that of a drill, else a share of
 * the diameter.
 */
export function openingFeed(
  job: Job,
  diameter: number,
  rpm: number,
  usual: { readonly overDrill: number; readonly ofDiameter: number },
): { readonly perTurn: number; readonly feed: number } {
  const { work, row, material } = job;
  const ten = material?.drillFeedHss;
  const listed = ten === undefined ? usual.ofDiameter * diameter : usual.overDrill * drillFeed(diameter, ten);
  const perTurn = row.feedPerTooth ?? listed;
  judgeFeedOver(job, { perTurn, listed });
  const feed = judgeFeed(job, rpm * perTurn);
  work.step("tableFeed", feed, { perTurn: "feed" });
  work.set({ tableFeed: feed, feedPerTooth: perTurn });
  return { perTurn, feed };
}

/** Shares of speed and feed in a deep hole; coolant through the tool carries chips out and the heat away. */
export const inDepth = (tool: Partial<Tool>, depth: number, diameter: number) =>
  tool.coolantThrough ? { speed: 1, feed: 1 } : depthFactors(depth, diameter);
