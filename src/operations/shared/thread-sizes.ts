/** The thread of a row: its designation read, its limits in mm, each as a step. */
import { parseThread } from "../../thread/designation.ts";
import { threadSize } from "../../thread/limits.ts";
import type { Thread, ThreadElement, ThreadLimit } from "../../thread/types.ts";
import { attempt, type Job } from "./job.ts";

export interface ThreadSizes {
  readonly thread: Thread;
  readonly internal: boolean;
  /** All in mm. */
  readonly pitch: number;
  readonly major: number;
  readonly pitchBasic: number;
  readonly pitchMin: number;
  readonly pitchMax: number;
  /** Internal: minor limits; external: basic minor twice. */
  readonly minorMin: number;
  readonly minorMax: number;
  readonly majorMin: number;
  readonly majorMax: number;
}

const cache = new Map<string, ThreadSizes>();

/** Limits of a thread in mm. Throws TradeError "unknown" for a limit that its standard leaves open and a row needs. */
function threadSizes(thread: Thread): ThreadSizes {
  const known = cache.get(thread.designation);
  if (known) return known;
  const scale = thread.native === "in" ? 25.4 : 1;
  const get = (element: ThreadElement, limit: ThreadLimit) => threadSize(thread, element, limit) * scale;
  const internal = thread.kind === "internal";
  const sizes: ThreadSizes = {
    thread,
    internal,
    pitch: thread.pitch * scale,
    major: thread.major * scale,
    pitchBasic: get("pitch", "basic"),
    pitchMin: get("pitch", "min"),
    pitchMax: get("pitch", "max"),
    minorMin: internal ? get("minor", "min") : get("minor", "basic"),
    minorMax: internal ? get("minor", "max") : get("minor", "basic"),
    majorMin: internal ? get("major", "basic") : get("major", "min"),
    majorMax: internal ? get("major", "basic") : get("major", "max"),
  };
  if (cache.size > 2000) cache.clear();
  cache.set(thread.designation, sizes);
  return sizes;
}

/** Reads the row's thread and writes its sizes among the steps; undefined with a reason when it cannot be read. */
export function readThread({ work, row }: Job): ThreadSizes | undefined {
  const sizes = attempt(work, "unknown-thread", "correct the designation", () =>
    threadSizes(parseThread(row.thread!, "Thread")),
  );
  if (!sizes) return undefined;
  const d = sizes.thread.designation;
  const source =
    sizes.thread.standard === "metric" ? "ISO965" : sizes.thread.standard === "pipe" ? "ISO228" : "ASMEB11";
  const step = (key: string, label: string, value: number, element: ThreadElement, limit: ThreadLimit) =>
    work.step(key, label, value, `limit of ${d}`, source, {
      dimension: "length",
      cell: work.formula("THREADSIZE", d, element, limit, work.units),
    });
  work.step("pitch", "pitch", sizes.pitch, `of ${d}`, source, {
    dimension: "length",
    cell: work.formula("THREADLEAD", d, work.units),
  });
  step("pitchMin", "pitch diameter, least", sizes.pitchMin, "pitch", "min");
  step("pitchMax", "pitch diameter, largest", sizes.pitchMax, "pitch", "max");
  if (sizes.internal) {
    step("minorMin", "minor diameter, least", sizes.minorMin, "minor", "min");
    step("minorMax", "minor diameter, largest", sizes.minorMax, "minor", "max");
  }
  return sizes;
}
