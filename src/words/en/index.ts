/** English. */
import type { Direction } from "../../table/results.ts";
import type { Words } from "../types.ts";
import { errors } from "./errors.ts";
import { findings } from "./findings.ts";
import { names } from "./names.ts";
import { sizes } from "./sizes.ts";

function direction(d: Direction): string {
  if (d.path === "full width") return "full width";
  if (d.path === "wall") return `wall on the ${d.wall} of the travel`;
  return d.axis === undefined ? d.turn : `${d.axis === "up" ? "bottom up" : "top down"}, ${d.turn}`;
}

export const en: Words = {
  errors,
  findings,
  limits: {
    power: "spindle power",
    torque: "spindle torque",
    stress: "tool stress",
    leastChip: "least chip",
    deflection: "deflection",
    scatter: "scatter of the size",
    feed: "table feed",
    arcFeed: "feed on this radius",
    spindleSpeed: "spindle speed",
    stickOut: "stick-out",
    chip: "chip thickness",
    chatter: "chatter",
    slotStep: "step of a full slot",
    roughness: "roughness",
    torsion: "tool torsion",
    buckling: "drill buckling",
  },
  sizes,
  verdicts: { ok: "ok", check: "check", stop: "stop" },
  names,
  advice: {
    kinds: { "smallest change": "smallest change", cheapest: "cheapest", nothing: "nothing" },
    blank: "blank",
    nothing: (reason, wayOut) => `No cell of the row helps: ${reason}. What would: ${wayOut}.`,
  },
  direction,
  pecks: (count) => `${count} pecks`,
};
