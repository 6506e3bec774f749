/** What every finding says in English: the sentence with its number and limit, and a way out. */
import { ROW } from "../../table/rows.ts";
import { type Say, tidy } from "../say.ts";
import type { FindingWords, Said } from "../types.ts";
import { sizes } from "./sizes.ts";

const and = (names: readonly string[]) => names.join(", ").replace(/, ([^,]*)$/, " and $1");
const whole = (value: number) => tidy(Math.round(value), 0);

const unknown =
  (what: string, list: string) =>
  (f: { name: string; near: readonly string[] }): Said => [
    `${what} "${f.name}" is not in the list ${list}`,
    f.near.length > 0 ? `nearest there: ${f.near.join(", ")}` : `add it to the list ${list}`,
  ];
const listed =
  (list: string) =>
  (f: { name: string; error: { message: string } }): Said => [
    `list ${list}, ${f.name}: ${f.error.message}`,
    "correct the list",
  ];
const MISFITS = {
  "profile angle": "other profile angle",
  pitch: "other pitch",
  "too large": "too large for the hole",
  "neck short": "neck too short",
  "tip flat": "tip flat too wide",
  "profile height": "profile too shallow",
  "neck rubs": "neck rubs",
  crest: "crest cut away",
  "does not fit": "does not fit",
} as const;
const MISSING = { diameter: "Diameter", teeth: "Teeth", tipFlat: "Tip flat" } as const;
const CAPS = { machine: "the machine", tool: "the tool", row: "the row's Max rpm" } as const;
const UNDER_LIST = {
  tooth: "so thin a cut would want a feed that breaks teeth where it meets more",
  finish: "the surface of a finishing cut decides",
  edge: "in a bore so tight the edge runs far faster than the centre",
  spindle: "the spindle has no power for more",
  feed: "the machine's fastest feed decides",
  arc: "the machine's acceleration on this radius decides",
  row: "the row's own Feed per tooth decides",
} as const;
const UNDER_LIST_WAY = {
  tooth: "take more at once",
  finish: "nothing to do when the surface matters; else leave Size tolerance blank",
  edge: "a smaller cutter takes a thicker chip",
  spindle: "less depth, or a stronger machine",
  feed: "fewer revolutions for the same chip",
  arc: "fewer revolutions, a smaller cutter, or a machine that accelerates faster",
  row: "a larger Feed per tooth, or leave it blank",
} as const;
/** A wear value smaller than this is not worth typing [mm]. */
const NO_WEAR = 0.002;
/** A wear value with its sign in words. */
const wear = (value: number, say: Say) =>
  value === 0
    ? say.value(0)
    : `${value > 0 ? "+" : "−"}${say.value(Math.abs(value))} (the path ${value > 0 ? "away from" : "into"} the wall)`;
const STIFFER = "a spring pass, more passes, shorter stick-out or a stiffer tool";

export const findings: FindingWords = {
  // cells and lists
  "bad-cell": (f) => [f.error.message, `correct ${f.error.parameter}`],
  "units-blank": () => ["Units is blank; mm or in is allowed", "say mm or in: units are never guessed"],
  "operation-blank": () => ["Operation is blank", "say what is done: drill, thread mill, bore, slot …"],
  "material-blank": () => ["Material is blank: no speed, feed or force", "name a material of the list"],
  "machine-blank": () => [
    "Machine is blank: spindle, power and feed limits are not checked, no time and no cost",
    "name a machine of the list",
  ],
  "row-incomplete": (f) => {
    const names = and(f.missing.map((key) => ROW[key].heading));
    return [`${names} ${f.missing.length > 1 ? "are" : "is"} blank`, `fill in ${names}`];
  },
  "unknown-material": unknown("material", "Materials"),
  "unknown-tool": unknown("tool", "Tools"),
  "unknown-machine": unknown("machine", "Machines"),
  "list-material": listed("Materials"),
  "list-tool": listed("Tools"),
  "list-machine": listed("Machines"),
  "cannot-be-computed": (f, say) => {
    // A value that is no number any more says nothing to the person who typed the sizes behind it.
    const beyond = typeof f.error.value === "number" && !Number.isFinite(f.error.value);
    return [
      beyond ? "a size in the row or in its lists leads beyond any number that means something" : say.error(f.error),
      "check the sizes in the row and in the lists it names",
    ];
  },
  fault: (f) => [
    `this should not happen, please report it: ${f.what}`,
    "check the sizes in the row and in the lists it names",
  ],
  // tools
  "tool-kind": (f) => [
    `${f.tool} is a ${f.kind}; ${f.wanted === "drill" || f.wanted === "thread mill" ? "a " : ""}${f.wanted} is wanted`,
    f.wanted === "drill" || f.wanted === "thread mill"
      ? `name a ${f.wanted}, or leave Tool blank`
      : "name another tool, or leave Tool blank",
  ],
  "unknown-class": (f, say) => [say.error(f.error), "correct the class"],
  "tool-incomplete": (f) => [
    `${f.tool} has no ${MISSING[f.missing]} in the list`,
    f.missing === "tipFlat" ? "fill it in: the path cannot be known without it" : "fill it in",
  ],
  "tool-proposed": (f) => [
    `proposed: ${f.tool}, the listed ${f.for === "thread" || f.for === "wall" ? "cutter" : f.for} with the best verdict${f.thread === undefined ? "" : ` for ${f.thread}`}, then the least cost`,
    "name it in the row to keep it",
  ],
  "tool-assumed": (f) => [
    `a plain HSS tool for ${f.operation} is assumed: the list has none that fits`,
    "check speed and feed against the tool's own figures",
  ],
  "no-tool-fits": (f) => {
    if (f.kind !== undefined)
      return [`no listed ${f.kind} fits this ${f.operation}`, "add a cutter to the list Tools, or name one"];
    const list = (f.misses ?? []).map(([why, n]) => `${n} × ${MISFITS[why]}`);
    return [
      `no listed thread mill can make ${f.thread} in ${f.material ?? "this material"}${list.length > 0 ? ` (${list.join(", ")})` : ": the list has none"}`,
      "add a cutter to the list Tools",
    ];
  },
  "no-drill-listed": (f, say) => [
    `no listed drill is ${say.value(f.size)}: a jobber drill of HSS with two lips and a ${f.pointAngle}° point is assumed`,
    "add the drill to the list Tools",
  ],
  "wrong-drill": (f, say) => [
    `${f.tool} is ${say.value(f.value)}; the hole is ${say.value(f.limit)}`,
    `take a ${f.drill ?? say.value(f.limit)} drill`,
  ],
  // speed and feed
  "no-speed": (f) => [
    `${f.material} has no surface speed for ${f.hss ? "HSS" : "carbide"} tools in the list`,
    "type a Surface speed in the row, or fill in the material's range",
  ],
  "no-feed": (f) => [
    `${f.material} has no feed per tooth in the list`,
    "type a Feed per tooth in the row, or fill in the material's feeds",
  ],
  "speed-under-machine": (f) => [
    `the wanted ${whole(f.limit)} rpm is under the machine's slowest ${Math.round(f.value)} rpm`,
    "use a machine with a slower spindle or a smaller cutter",
  ],
  "speed-over-material": (f, say) => [
    `surface speed ${say.value(f.value, "surface speed")} is above the material's ${say.value(f.limit, "surface speed")}`,
    "lower the surface speed, or expect short tool life",
  ],
  "speed-capped": (f) => [
    `spindle speed is held at ${Math.round(f.limit)} rpm by ${CAPS[f.by]}; ${whole(f.value)} rpm was wanted`,
    "a faster spindle would shorten the row",
  ],
  "feed-capped": (f, say) => [
    `table feed ${say.value(f.value, "feed")} is above the machine's ${say.value(f.limit, "feed")} and was held there`,
    "fewer revolutions or teeth for the same chip",
  ],
  "feed-not-reached": (f, say) => [
    `the machine reaches ${say.value(f.limit, "feed")} on this radius, not the programmed ${say.value(f.value, "feed")}: the chip is thinner and the time longer than programmed`,
    "program the lower feed with fewer revolutions, or use a machine that accelerates faster",
  ],
  "hard-to-drill": (f) => [
    `${f.material} is hardened: common drills do not last in it`,
    "use a drill made for hardened steel, drill before hardening, or mill the hole",
  ],
  "feed-over-list": (f, say) => [
    `feed ${say.value(f.value)} per turn is ${(f.value / f.listed).toFixed(1)} × the list's ${say.value(f.listed)}`,
    "less feed, or correct the list where the tool is made for it",
  ],
  "chip-too-thin": (f, say, severity) => [
    `${f.flank ? "the chip on the flank" : "chip"} ${say.value(f.value)} is under the least chip ${say.value(f.limit)}: the edge ${severity === "ok" ? "may rub, if it is as blunt as the list says" : "rubs"}`,
    "more feed per tooth, fewer passes, or a sharper tool",
  ],
  "chip-too-thick": (f, say, severity) => [
    `the largest chip is ${say.value(f.value)}; the list's is ${say.value(f.listed)}${severity === "stop" ? ": the edge may break" : ""}`,
    `a Feed per tooth of ${say.value(f.would)} would do`,
  ],
  "chip-under-list": (f, say) => [
    `the largest chip ${say.value(f.value)} is under half of the list's: ${UNDER_LIST[f.by]}`,
    UNDER_LIST_WAY[f.by],
  ],
  "list-insert-blank": (f) => [
    `${f.material} has no feed for inserts in the list: ${f.factor} × the feed of a solid 12 mm cutter is taken`,
    "fill in Feed insert",
  ],
  "feed-held": (f, say) => [
    `table feed is held at ${say.value(f.limit, "feed")}, ${f.by === "arc" ? "what the machine's acceleration allows on this radius" : "the machine's fastest"}; ${say.value(f.value, "feed")} was wanted for the chip`,
    f.by === "arc"
      ? "a machine that accelerates faster would shorten the row"
      : "a faster machine would shorten the row",
  ],
  "feed-for-spindle": (f, say) => [
    `feed per tooth is held at ${say.value(f.value)} for the spindle's power and torque; ${say.value(f.limit)} was wanted for the chip`,
    "less depth for the listed chip, or a stronger machine",
  ],
  "list-thread-feed-blank": (f) => [
    `${f.material} has no Thread feed in the list: ${f.percent} % of the cutter's diameter per tooth is assumed`,
    "fill in Thread feed [% of diameter]",
  ],
  "list-thread-speed-blank": (f) => [
    `${f.material} has no speed for thread mills in the list: ${f.factor} × the end mill's is taken`,
    "fill in Speed thread mill low and high",
  ],
  "feed-by-strength": (f, say) => [
    `the feed per tooth is held at ${say.value(f.value)} by the strength of the tool`,
    "a thicker neck, a shorter stick-out or a truer holder lets it run faster",
  ],
  "runout-thick": (f, say) => [
    `runout of ${say.value(f.runout)} lets one tooth cut a chip of ${say.value(f.value)} where an even one is ${say.value(f.even)}; ${say.value(f.limit)} is sensible`,
    "set the tool truer (shrink or hydraulic holder), or lower the feed",
  ],
  "runout-idle": (f, say) => [
    `with a runout of ${say.value(f.runout)} one tooth hardly cuts`,
    "a truer holder lets all teeth share the wear",
  ],
  // force, power, bending
  "no-kc": (f) => [
    `the material's row has no kc1.1 and exponent: force${f.bending ? ", bending" : ""} and power are not worked out`,
    "fill them in",
  ],
  "power-over": (f, say) => [
    `spindle power ${say.value(f.value, "power")} (up to ${say.value(f.most, "power")}) against ${say.value(f.limit, "power")} of the machine${f.short === undefined ? "" : ` (${say.value(f.short, "power")} for 30 min)`}`,
    "take less depth or feed",
  ],
  "torque-over": (f, say) => [
    `spindle torque ${say.value(f.value, "torque")} against ${say.value(f.limit, "torque")} of the machine${f.stalls ? ": it stalls" : ""}`,
    f.stalls ? "a stronger machine, or another way to make the hole" : "take less depth or feed, or a smaller cutter",
  ],
  "no-stick-out": (f) => [
    `${f.tool} has no stick-out: bending and stress are not worked out`,
    "type a Stick-out in the row or in the tool list",
  ],
  "stick-out": (f, say) => [
    `stick-out ${say.value(f.value)} is ${f.ratio.toFixed(1)} × the diameter; above ${f.most} × it chatters easily`,
    "hold the tool shorter, or take a thicker shank",
  ],
  "no-strength": (f) => [
    `${f.tool} has no rupture strength in the list: its stress is not judged`,
    "fill in Rupture strength",
  ],
  "tool-stress": (f, say) => [
    `tool stress ${say.value(f.nominal, "stress")} (up to ${say.value(f.value, "stress")} with runout and an uncertain force) against the allowed ${say.value(f.limit, "stress")}: it may break`,
    "more passes, less feed, shorter stick-out or a thicker neck",
  ],
  // chatter, chips, surface
  chatter: (f, say) => {
    const deep =
      f.profiles === undefined
        ? `${say.value(f.value)} deep`
        : `${f.profiles} ${f.profiles === 1 ? "profile" : "profiles at once"}, ${say.value(f.value)} wide`;
    const less =
      f.profiles === undefined ? "less depth or several levels, less width" : "more passes, a single-profile cutter";
    return f.measured
      ? [
          `${deep}, some speeds chatter: the measured modes allow ${say.value(f.allows)} at every speed`,
          `try another speed, or shorter stick-out, ${less}, fewer teeth`,
        ]
      : [
          `likely to chatter even in a stiff holder: ${deep}; a stiff set-up allows about ${say.value(f.allows)} at every speed, a plain one ${say.value(f.nominal)} (estimates)`,
          `shorter stick-out, ${less}, fewer teeth, lower speed`,
        ];
  },
  "tip-modes-unreadable": (f) => [
    `Tip modes of ${f.tool} cannot be read: "${f.text}"`,
    "write frequency/stiffness/damping, such as 1240/2.9/0.06, several with ; between them",
  ],
  "slot-too-deep": (f, say, severity) => [
    `a step of ${say.value(f.value)} in a full slot with ${f.teeth} flutes${f.coolant === "dry" ? ", dry" : ""}: chips get out up to about ${say.value(f.limit)}${severity === "stop" ? ", here they pack" : ""}`,
    "less depth a step, fewer flutes, coolant through the tool, or a smaller cutter that leaves room beside it",
  ],
  "gullet-full": (f) => [
    `the chip of one tooth fills its flute (${f.value.toFixed(1)} of its room): ${f.teeth} flutes are too many for this feed`,
    "less feed per tooth, or fewer flutes",
  ],
  roughness: (f, say) => [
    `the marks of the teeth alone leave Rz ${say.value(f.value, "roughness")} on the ${f.of}; ${say.value(f.limit, "roughness")} is allowed`,
    f.of === "wall"
      ? "less feed per tooth, or a cutter that runs truer"
      : "less feed per tooth, a larger corner radius, or a cutter that runs truer",
  ],
  // size
  "no-size-tolerance": (f, say) => [
    `Size tolerance is blank: bending of ${say.value(f.error)} on the size is shown but not judged`,
    "type the allowed error of the size",
  ],
  "size-out": (f, say) => [
    `${sizes[f.of]} comes out between ${say.value(f.least)} and ${say.value(f.most)}; ${say.value(f.low)} to ${say.value(f.high)} is allowed${f.scrap ? ", and what is cut away cannot be put back" : ": no wear value reaches that"}`,
    f.scrap && f.start !== null ? `start with wear value ${wear(f.start, say)}` : STIFFER,
  ],
  "size-may-be-out": (f, say) => [
    `${sizes[f.of]} comes out between ${say.value(f.least)} and ${say.value(f.most)}${f.typed ? " at this wear value" : ""}; ${say.value(f.low)} to ${say.value(f.high)} is allowed`,
    `start with wear value ${wear(f.start, say)} and gauge the first part; or ${STIFFER}`,
  ],
  "gauge-first": (f, say) => [
    f.start === null || f.typed || Math.abs(f.start) < NO_WEAR
      ? `gauge the first part: bending moves the ${sizes[f.of]} by up to ${say.value(f.value)} from its middle`
      : `gauge the first part, start with wear value ${wear(f.start, say)}: bending moves the ${sizes[f.of]} by up to ${say.value(f.value)}`,
    "type the measured size under Measured",
  ],
  "size-scatter": (f, say) => [
    `the ${sizes[f.of]} changes from part to part by about ${say.value(f.value)}; ${say.value(f.limit)} is left for it, and no wear value takes it away`,
    STIFFER,
  ],
  "measured-out": (f, say) => [
    `measured ${say.value(f.value)} is outside its limit ${say.value(f.limit)}${f.scrap ? ": the part is scrap" : ""}`,
    f.scrap
      ? `add ${wear(f.change, say)} to the wear value before the next part`
      : `add ${wear(f.change, say)} to the wear value and cut again`,
  ],
  "wear-change": (f, say) => [
    `measured ${say.value(f.measured)}, wanted ${say.value(f.wanted)}: add ${say.value(f.change)} to the radius wear value${f.becomes === undefined ? "" : `, which makes it ${say.value(f.becomes)}`}`,
    "write down what was changed; gauge the next part",
  ],
  // threads
  "unknown-thread": (f, say) => [say.error(f.error), "correct the designation"],
  "no-path": (f, say) => [say.error(f.error), "take a smaller cutter or one with a narrower tip flat"],
  "profile-angle": (f) => [
    `the cutter's profile is ${f.value}°, the thread's ${f.limit}°`,
    "take a cutter with the thread's profile",
  ],
  "pitch-differs": (f, say) => [
    `the full-profile cutter's pitch is ${say.value(f.value)}, the thread's ${say.value(f.limit)}`,
    "take a cutter of the thread's pitch, or a single-profile one",
  ],
  "blank-diameter": (f, say) => [
    `the blank ${say.value(f.value)} is outside the thread's major diameter ${say.value(f.low)} to ${say.value(f.limit)}`,
    "turn or mill it to size first",
  ],
  "flat-too-wide": (f, say) => [
    `the tip flat ${say.value(f.flat)} leaves the ${f.inside ? "major" : "minor"} diameter at ${say.value(f.value)}, ${f.inside ? "under" : "over"} the basic ${say.value(f.limit)}: the GO gauge will not enter`,
    f.would === null
      ? "this cutter cannot: take a smaller one"
      : `a tip flat of at most ${say.value(f.would)} would do`,
  ],
  "no-depth": (f, say) => [
    `the cutter does not reach the wall: tip at ${say.value(f.value)}, wall at ${say.value(f.limit)}`,
    "correct the start diameter or the cutter",
  ],
  "neck-rubs": (f, say) => [
    `the neck rubs: it overlaps the wall by ${say.value(-f.value)}`,
    "take a cutter with a thinner neck or a taller profile",
  ],
  "neck-tight": (f, say) => [
    `only ${say.value(f.value)} is left between neck and wall; chips want ${say.value(f.limit)}`,
    "take a thinner neck, or blow the chips out",
  ],
  "profile-shallow": (f, say) => [
    `the cutter's profile is ${say.value(f.value)} high; the thread wants ${say.value(f.limit)}`,
    "take a cutter with a taller profile",
  ],
  "neck-short": (f, say) => [
    `the cutter reaches ${say.value(f.value)}; the thread and its tip want ${say.value(f.limit)}`,
    "take a longer neck",
  ],
  "no-thread": (f, say) => [
    `the tool bends away so far that no thread is left: its pitch diameter would be ${say.value(f.value)} where the wall stands at ${say.value(f.limit)}`,
    "take a stiffer tool, a shorter stick-out or less feed; correct Wear value if one is typed",
  ],
  "hole-too-shallow": (f, say) => [
    `the hole is ${say.value(f.value)} deep; the thread and the cutter's tip want ${say.value(f.limit)}`,
    "drill deeper, or thread less deep",
  ],
  // holes
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
    `${f.thread} is an external thread: a tap cuts internal ones`,
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
  // reach
  "grips-flutes": (f, say) => [
    `stick-out ${say.value(f.value)}: the holder grips flutes or neck, which end at ${say.value(f.limit)}`,
    "hold the tool longer, by its full shank",
  ],
  "shank-hits": (f, say) => [
    `the ${f.part} is too thick to follow and begins ${say.value(f.value)} from the tip; the cut goes ${say.value(f.limit)} deep`,
    "take a tool with a longer cutting part or neck",
  ],
  "holder-hits": (f, say) => [
    `stick-out ${say.value(f.value)}: the holder hits the part; ${say.value(f.limit)} is wanted`,
    "hold the tool longer, or take a longer one",
  ],
  // walls
  "cutter-too-large": (f, say) => {
    const [cutter, room] = [say.value(f.value), say.value(f.limit)];
    const text =
      f.into === "hole"
        ? `the cutter ${cutter} does not go into the hole ${room}`
        : f.into === "slot"
          ? `the cutter ${cutter} is wider than the slot ${room}`
          : `the cutter ${cutter} does not fit the ${f.into} ${room}`;
    return [text, "take a smaller cutter"];
  },
  "cutter-short": (f, say) => [
    `the cutter reaches ${say.value(f.limit)}; the wall is ${say.value(f.value)} high`,
    "take a longer cutter",
  ],
  "no-stock": (f, say) => [
    `start diameter ${say.value(f.value)} leaves nothing to cut for ${say.value(f.limit)}`,
    "correct Start diameter or Finish diameter",
  ],
  "radial-over-diameter": (f, say) => [
    `radial depth ${say.value(f.value)} is more than the cutter ${say.value(f.limit)}`,
    f.operation === "slot"
      ? "take a cutter of the slot's width, or mill its walls as side passes"
      : "take less per pass",
  ],
  "arc-length": () => ["Length is blank: a full circle is timed", "type the length of the arc"],
  "stock-handed": (f, say) => [
    `row ${f.row ?? "above"} leaves up to ${say.value(f.value)} a side more than its size says, because its cutter bends: ${say.value(f.stock + f.value)} to cut here`,
    "a spring pass or a wear value in that row, or leave it the stock it needs",
  ],
  "too-many-passes": (f) => [
    `${f.value} passes would be needed at this radial depth; ${f.limit} is the most`,
    "take more per pass, or a larger cutter",
  ],
  // time and money
  "no-time": () => ["the time of the row is beyond any number that means something", "check its sizes"],
  "no-cost": () => ["the cost is beyond any number that means something", "check Rate, Setup and Price"],
  "acceleration-time": (f) => [
    `acceleration costs ${f.more.toFixed(1)} s of the cutting time per part`,
    "a machine that accelerates faster, or fewer and longer moves",
  ],
  "no-life": (f, say) => [
    `no tool life: ${say.error(f.error)}`,
    "check Taylor n, Reference life and speed; tool cost is not in the cost",
  ],
};
