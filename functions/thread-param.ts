/** The argument "thread", and the sizes of a thread in canonical units, for every function that takes a designation. */
import { parseThread } from "../src/thread/designation.ts";
import { threadSize } from "../src/thread/limits.ts";
import type { ThreadKind } from "../src/thread/path.ts";
import { basicPitchDiameter } from "../src/thread/profile.ts";
import type { Thread } from "../src/thread/types.ts";
import { text } from "./params.ts";

/** A designation, read. */
export const thread = text("thread", { is: "thread-name" }, (designation) => parseThread(designation));

const scale = (t: Thread) => (t.native === "in" ? 25.4 : 1);

/** Basic sizes [mm], unrounded. */
export function basics(t: Thread) {
  const k = scale(t);
  const { kind, profileAngle } = t;
  const major = t.major * k;
  const pitch = t.pitch * k;
  return { kind, profileAngle, major, pitch, lead: t.lead * k, D2: basicPitchDiameter(major, pitch, profileAngle) };
}

/** Middle of the limits of the pitch diameter [mm]. */
export function middlePitchDiameter(t: Thread): number {
  return ((threadSize(t, "pitch", "min") + threadSize(t, "pitch", "max")) / 2) * scale(t);
}

/** Pitch diameter [mm] to gauge against: as given, else the middle of its limits; the basic size for a designation of the other kind. */
export function gaugePitchDiameter(t: Thread, kind: ThreadKind, given: number | undefined): number {
  if (given !== undefined) return given;
  return t.kind === kind ? middlePitchDiameter(t) : basics(t).D2;
}
