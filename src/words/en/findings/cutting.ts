/** Sentences about how it cuts: speed, feed, force, bending, chatter, chips, reach. */
import { tidy } from "../../say.ts";
import { findingsOf } from "../../types.ts";

const whole = (value: number) => tidy(Math.round(value), 0);
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

export const cutting = findingsOf({
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
    `feed ${say.value(f.value)} per turn is ${tidy(f.value / f.listed, 1)} × the list's ${say.value(f.listed)}`,
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
});
