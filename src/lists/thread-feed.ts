/**
 * Thread feed of the starting materials: how far a thread mill's edge advances along the thread per tooth, in percent of its
 * diameter. 0.7 to 1 % in steel, less in heat-resistant and hardened materials, a little more in soft ones (common practice).
 */
import type { ListBlock, SourceNote } from "./types.ts";

export const THREAD_FEED_HEADING = "Thread feed [% of diameter]";

/** By group of ISO 513. */
const THREAD_FEED: Readonly<Record<string, number>> = { P: 0.8, M: 0.7, K: 0.9, N: 1.2, S: 0.5, H: 0.4 };

export const THREAD_FEED_NOTE: SourceNote = {
  kind: "common practice",
  text: "advance of a thread mill's edge per tooth, 0.7 to 1 % of the diameter in steel, less in S and H, more in N",
};

/** The block with a column for the thread feed before the one named. */
export function withThreadFeed(block: ListBlock, before: string): ListBlock {
  const [headings, ...rows] = block;
  const at = headings!.indexOf(before);
  const group = headings!.indexOf("Group");
  return [
    [...headings!.slice(0, at), THREAD_FEED_HEADING, ...headings!.slice(at)],
    ...rows.map((row) => [...row.slice(0, at), THREAD_FEED[String(row[group])] ?? null, ...row.slice(at)]),
  ];
}
