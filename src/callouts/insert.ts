/**
 * Holes for wire thread inserts: the thread in the part is larger than the one of the screw. The coil's wire fills the
 * thread form, so every diameter of the hole's thread grows by 3/4·H·2 = 1.29904·P over the screw's own.
 * @source ASMEB18291 (from memory)
 */
import type { Thread } from "../thread/types.ts";
import type { Remark } from "./remarks/remark.ts";

export interface InsertThread {
  /** Least diameters of the thread cut for the insert, in the thread's unit. */
  readonly major: number;
  readonly minor: number;
}

const H = Math.sqrt(3) / 2;

/** Basic sizes of the thread that takes the insert of a screw thread (60° form). */
export function insertThread({ major, pitch }: Thread): InsertThread {
  const grown = major + 1.5 * H * pitch;
  return { major: grown, minor: grown - 1.25 * H * pitch };
}

/** What to say of such a callout; it is not planned, so that nobody cuts the plain thread. */
export function insertNote(designation: string, thread: Thread | undefined): Remark {
  if (!thread || thread.standard === "pipe") return { code: "insert-unknown", designation };
  return { code: "insert", designation, ...insertThread(thread), units: thread.native };
}
