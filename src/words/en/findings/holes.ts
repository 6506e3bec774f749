/** Sentences about holes: drilled, tapped, reamed, countersunk. */
import { findingsOf } from "../../types.ts";

export const holes = findingsOf({
  "hole-under-minor": (f, say) =>
    f.percent === undefined
      ? [
          `the hole comes out at ${say.value(f.value)}, under the thread's least minor diameter ${say.value(f.limit)}`,
          "take the next larger drill",
        ]
      : [
          `the hole ${say.value(f.value)} is under the least minor diameter ${say.value(f.limit)} (${f.percent.toFixed(0)} % of thread${f.beyond ? ", more than the basic profile has" : ""})`,
          "drill or bore it larger first",
        ],
  "hole-over-minor": (f, say) =>
    f.percent === undefined
      ? [
          `the hole comes out at ${say.value(f.value)}, over the thread's largest minor diameter ${say.value(f.limit)}`,
          "take the next smaller drill, or a drill that cuts closer to its size",
        ]
      : [
          `the hole ${say.value(f.value)} is over the largest minor diameter ${say.value(f.limit)}: only ${f.percent.toFixed(0)} % of thread is left`,
          "take a smaller drill: one drill does not serve every pitch of a diameter",
        ],
  "drill-too-short": (f, say) => [
    `the drill's flutes are ${say.value(f.value)} long; the hole with its point wants ${say.value(f.limit)}, or the chips cannot leave`,
    "take a longer drill",
  ],
  "point-through-bottom": (f, say) => [
    `the drill point reaches ${say.value(f.value)}, deeper than the hole's ${say.value(f.limit)}`,
    "drill less deep, or with a flatter point",
  ],
  "too-deep": (f) => [
    `${f.diameters.toFixed(0)} diameters deep is more than twist drills do (${f.most})`,
    "drill from both sides, or have it gun-drilled",
  ],
  "flutes-full": (f, say) => [
    `the flutes are ${say.value(f.value)} long; to stay open they want ${say.value(f.limit)}, the hole and ${f.open} diameters`,
    "take a longer drill, or clear the chips by hand",
  ],
  "drill-torsion": (f, say) => [
    `drilling torque ${say.value(f.nominal, "torque")} (up to ${say.value(f.value, "torque")}) against the ${say.value(f.limit, "torque")} that the drill is allowed: it may twist off`,
    "less feed, a pilot hole, or a stronger drill",
  ],
  "drill-buckles": (f, say) => [
    `thrust ${say.value(f.nominal, "force")} (up to ${say.value(f.value, "force")}) against the ${say.value(f.limit, "force")} that the drill bears at this length: it bends away`,
    "a shorter drill or stick-out first, a pilot hole, or less feed",
  ],
  "spot-first": (f, say) => [
    `a drill this slender walks on a bare face: thrust ${say.value(f.value, "force")} against ${say.value(f.limit, "force")} with a free point`,
    "spot the hole first, or start with a stub drill",
  ],
  "pilot-wanted": (f, say) => [
    `the hole is ${say.value(f.value)} deep, more than ${say.value(f.limit)} (12 diameters), and nothing guides the drill`,
    `drill a pilot of the same size 2 to 3 diameters (${say.value(2.5 * f.diameter)}) deep and put its diameter in Start diameter`,
  ],
  "coolant-wanted": (f, say) => [
    `the hole is ${say.value(f.value)} deep; beyond ${say.value(f.limit)} this drill wants coolant through it`,
    "take a drill with coolant through it (Coolant through in the list), or one of HSS with pecks",
  ],
  "hole-runs-off": (f, say) => [
    `a hole this deep runs off by about ${say.value(f.drift)}`,
    "pilot it, or bore it where its place at the bottom matters",
  ],
  "drilled-size-out": (f, say) => [
    `the drilled hole comes out at ${say.value(f.value)}; ${say.value(f.low)} to ${say.value(f.high)} is allowed`,
    "take another drill, or drill smaller and ream or bore",
  ],
  "drill-tolerance": (f, say) => [
    `the tolerance is ${say.value(f.value)} wide; this drill holds about ${say.value(f.limit)} (IT${f.grade})`,
    "ream or bore the hole to size",
  ],
  "not-internal": (f) => [
    `${f.thread} is an external thread: no hole is drilled or tapped for it`,
    "thread mill it, or write the internal class",
  ],
  "tap-differs": (f, say) => [
    `${f.tool} is for ${say.value(f.value)}; ${f.thread} is ${say.value(f.limit)}`,
    "name the tap of this thread, or leave Tool blank",
  ],
  "tap-torsion": (f, say) => [
    `tapping torque ${say.value(f.nominal, "torque")} (up to ${say.value(f.value, "torque")}) against the ${say.value(f.limit, "torque")} that the tap is allowed: it may break`,
    "drill the hole larger within its limits, or thread mill it",
  ],
  "tap-hole-depth": (f, say) => [
    `the tap's chamfer of ${f.chamfer} pitches wants a hole of at least ${say.value(f.needed)} full diameter`,
    "put the depth in Hole depth to have it judged",
  ],
  "tap-bottoms": (f, say) => [
    `the hole is ${say.value(f.value)} deep; thread and chamfer (${f.chamfer} pitches) want ${say.value(f.limit)}: the tap reaches the bottom first`,
    "drill deeper, thread less deep, or take a bottoming tap",
  ],
  "tap-deep": (f, say) => [
    `the thread is ${say.value(f.value)} deep, more than ${f.most} diameters (${say.value(f.limit)}): chips fill the flutes`,
    "tap in steps, or thread mill it",
  ],
  "reamer-differs": (f, say) => [
    `${f.tool} is ${say.value(f.value)}; the hole is ${say.value(f.limit)}`,
    "name the reamer of this size, or leave Tool blank",
  ],
  "reamer-in-air": (f, say) => [
    `the hole ${say.value(f.value)} is not smaller than the reamer ${say.value(f.limit)}`,
    "drill smaller, or take a larger reamer",
  ],
  "ream-stock": (f, say) => [
    f.value < f.least
      ? `only ${say.value(f.value)} of stock on the diameter: the reamer rubs; ${say.value(f.least)} to ${say.value(f.most)} is usual`
      : `${say.value(f.value)} of stock on the diameter is too much for a reamer; ${say.value(f.least)} to ${say.value(f.most)} is usual`,
    f.value < f.least ? "drill smaller" : "drill larger first",
  ],
  "reamer-bottoms": (f, say) => [
    `the hole is ${say.value(f.value)} deep; depth and the reamer's lead (${say.value(f.lead)}) want ${say.value(f.limit)}`,
    "drill deeper, or ream less deep",
  ],
  "reamed-size": (f, say) => [
    `the reamer makes ${say.value(f.low)} to ${say.value(f.high)}; the limit is ${say.value(f.limit)}`,
    "take a reamer of the hole's class (Size class in the list), or bore it",
  ],
  "countersink-small": (f, say) => [
    `the countersink is ${say.value(f.value)}; the cone is ${say.value(f.limit)} at the face`,
    "take a larger countersink",
  ],
  "cone-angle": (f, say) => [
    `a cone of ${f.angle}° is ${say.value(f.limit)} deep here; the row says ${say.value(f.value)}`,
    "take a countersink of the drawing's angle, or correct the depth",
  ],
});
