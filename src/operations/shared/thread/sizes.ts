/** The thread of a row: its designation read, its limits in mm, each as a step. */
import { Cache } from "../../../cache.ts";
import { parseThread } from "../../../thread/designation.ts";
import { threadSize } from "../../../thread/limits.ts";
import type { Thread, ThreadElement, ThreadLimit } from "../../../thread/types.ts";
import { attempt, type Job } from "../job.ts";

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

const kept = new Cache<string, ThreadSizes>("sizes of threads", 2000);

/** Limits of a thread in mm. Throws TradeError "unknown" for a limit that its standard leaves open and a row needs. */
function threadSizes(thread: Thread): ThreadSizes {
  return kept.get(thread.designation, () => sizesOf(thread));
}

function sizesOf(thread: Thread): ThreadSizes {
  const scale = thread.native === "in" ? 25.4 : 1;
  const get = (element: ThreadElement, limit: ThreadLimit) => threadSize(thread, element, limit) * scale;
  const internal = thread.kind === "internal";
  return {
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
}

/** Reads the row's thread, where it has one, and writes its sizes among the steps; undefined with a finding when it cannot be read. */
export function readThread({ work, row }: Job): ThreadSizes | undefined {
  const { thread } = row;
  if (thread === undefined) return undefined;
  const sizes = attempt(work, "unknown-thread", () => threadSizes(parseThread(thread, "Thread")));
  if (!sizes) return undefined;
  const facts = { thread: sizes.thread.designation, standard: sizes.thread.standard };
  work.step("pitch", sizes.pitch, facts);
  work.step("pitchMin", sizes.pitchMin, facts);
  work.step("pitchMax", sizes.pitchMax, facts);
  if (sizes.internal) {
    work.step("minorMin", sizes.minorMin, facts);
    work.step("minorMax", sizes.minorMax, facts);
  }
  return sizes;
}

/** The same of a row that makes a hole: an external thread has none. */
export function readInternal(job: Job): ThreadSizes | undefined {
  const sizes = readThread(job);
  if (!sizes || sizes.internal) return sizes;
  job.work.find("not-internal", { thread: sizes.thread.designation });
  return undefined;
}
