/** The comparison's sentences in English: what stands in the program, what the plan says, and what it means. */
import type { Refusal } from "../blocks.ts";
import type { Finding } from "../findings.ts";
import type { Trouble } from "../machine.ts";
import type { Language, Say } from "./types.ts";

const plural = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;

const REFUSALS: { [W in Refusal["why"]]: (refusal: Extract<Refusal, { why: W }>) => string } = {
  binary: () => "this is not text: open the program as the control reads it, not a project or a packed file",
  empty: () => "there is no block in it",
  "no-words": () =>
    "no line of it has words of ISO 6983 (a letter and its number); programs in dialogue form are not read",
  "long-text": ({ characters, most }) =>
    `the program has ${(characters / 1e6).toFixed(0)} million characters; at most ${(most / 1e6).toFixed(0)} million are read. Compare one tool or one side at a time`,
  "long-block": ({ most }) =>
    `this line has more than ${most} characters; blocks of a program are shorter. It may have lost its line breaks`,
  variable: ({ word }) =>
    `"${word}" computes or steers: what variables, macros and loops do is not in the text. Post the program with plain numbers and compare that`,
  "decimal-comma": ({ word }) =>
    `"${word}" has a decimal comma; the standard's words have a point, so the number is not guessed`,
  turned: ({ word }) =>
    `${word} turns, scales or mirrors what follows; that is not followed. Compare a program without it`,
  macro: ({ word }) => `${word} runs a macro; what it moves is not in the text. Post the moves written out`,
};

const TROUBLES: { [W in Trouble["what"]]: (trouble: Extract<Trouble, { what: W }>, say: Say) => string } = {
  arc: ({ startRadius, endRadius }, say) =>
    `the arc does not end on its circle: radius ${say.length(startRadius)} where it starts, ${say.length(endRadius)} where it ends`,
  "arc-radius": ({ radius, chord }, say) =>
    `no arc of radius ${say.length(radius)} joins points that are ${say.length(chord)} apart`,
  "arc-centre": () => "the arc has neither a centre (I J) nor a radius (R) that tells it",
  subprogram: ({ word }) => `${word} calls a subprogram; what that moves is not compared. Post the moves written out`,
  plane: ({ word }) => `arcs in the plane ${word} are not compared`,
  shift: ({ word }) => `${word} shifts the zero point; what follows is compared as if it did not`,
  "inverse-time": () => "feeds in inverse time (G93) are not compared",
};

const zero = (other: boolean | undefined) =>
  other ? "; the difference is the distance from tip to profile: is the tool measured at the other place?" : "";

type Depth = Extract<Finding, { code: "depth" }>;
function depth(f: Depth, say: Say): string {
  switch (f.what) {
    case "unknown":
      return "Z is not known here: the program does not say where it starts from";
    case "shallow":
      return `ends at Z ${say.length(f.found)}; the plan goes to Z ${say.length(f.wanted)}${zero(f.otherZero)}`;
    case "deep":
      return `goes to Z ${say.length(f.found)}; the plan ends at Z ${say.length(f.wanted)}${zero(f.otherZero)}`;
    case "bottom":
      return `the cutter's tip goes to Z ${say.length(f.found)}, below the bottom of the hole at Z ${say.length(f.wanted)}${zero(f.otherZero)}`;
    case "top":
      return `the helix only reaches Z ${say.length(f.found)} at the face, the plan Z ${say.length(f.wanted)}: the first turns of the thread are missing${zero(f.otherZero)}`;
    case "no-point":
      return `drills to Z ${say.length(f.found)}, the depth of the full diameter without the drill's point; the plan goes to Z ${say.length(f.wanted)}`;
    case "not-through":
      return `drills to Z ${say.length(f.found)}; the full diameter is through at Z ${say.length(f.wanted)}`;
    case "levels":
      return `${plural(f.found, "level")} of the full-profile cutter; the thread's depth takes ${f.wanted}`;
    case "turn":
      return `the helix turns ${Math.round(f.found)} degrees; a thread needs a full turn`;
  }
}

const OF = { machine: "the machine's", tool: "the tool's", row: "the row's" } as const;

export const ENGLISH: Language = {
  some: (text, some, all) => `${text} (in ${some} of ${all})`,
  noRows: "the table has no row to compare with",
  sentences: {
    hand: ({ found, wanted }) => `makes a ${found}-hand thread; the plan wants ${wanted} hand`,
    direction: (f) =>
      f.what === "spindle"
        ? "the spindle turns backwards (M4); the plan's tool cuts with M3"
        : `runs ${f.clockwise ? "clockwise (G2)" : "counter-clockwise (G3)"}, which is ${f.found} milling here; the plan wants ${f.found === "climb" ? "conventional" : "climb"}`,
    pitch(f, say) {
      if (f.what === "uneven")
        return `the rise is not even: Z is off the helix by ${say.length(f.off)} (pitch ${say.length(f.wanted)})`;
      if (f.what === "fall")
        return `falls ${say.length(f.found)} per turn into solid; the plan takes ${say.length(f.wanted)}`;
      if (f.what === "tap")
        return `feed and speed make a pitch of ${say.length(f.found)}; the thread's is ${say.length(f.wanted)}`;
      return `Z moves ${say.length(f.found)} per turn; the thread's pitch is ${say.length(f.wanted)}`;
    },
    radius(f, say) {
      const what = f.contour ? "contour radius" : "path radius";
      const times =
        Math.abs(f.found / f.wanted - 2) < 0.01
          ? ": the diameter stands where the radius belongs"
          : Math.abs(f.found / f.wanted - 0.5) < 0.005
            ? ": half of it"
            : "";
      const size = f.thread ? "pitch diameter" : "diameter";
      const limits = f.within === undefined ? "" : f.within ? ", within its limits" : ", outside its limits";
      return `${what} ${say.length(f.found)}; the plan's is ${say.length(f.wanted)}${times}. The ${size} changes by ${say.change(f.change)}${limits}`;
    },
    "edge-feed"(f, say) {
      if (f.what === "twice")
        return `F ${say.feed(f.found)} has the step from edge to centre twice: the edge wants ${say.feed(f.edge)}, the cutter's centre ${say.feed(f.wanted)}`;
      const contour =
        f.what === "contour"
          ? "; right only where the control holds F at the contour under compensation"
          : `; at the cutter's centre that is ${Math.round((100 * f.found) / f.wanted)} % of the feed`;
      return `F ${say.feed(f.found)} is the feed of the edge; the cutter's centre wants ${say.feed(f.wanted)}${contour}`;
    },
    feed: (f, say) =>
      f.what === "none"
        ? `the program does not tell a feed per minute here; the plan's is ${say.feed(f.wanted)}`
        : `F ${say.feed(f.found)}; the plan's feed is ${say.feed(f.wanted)} (${Math.round((100 * f.found) / f.wanted)} %)`,
    speed(f, say) {
      if (f.what === "stopped") return `the spindle does not turn here; the plan wants ${say.rpm(f.wanted)}`;
      if (f.what === "over")
        return `S ${say.rpm(f.found)} is over ${OF[f.of]} limit of ${say.rpm(f.most)}; the plan's speed is ${say.rpm(f.wanted)}`;
      return `S ${say.rpm(f.found)}; the plan's speed is ${say.rpm(f.wanted)} (${Math.round((100 * f.found) / f.wanted)} %)`;
    },
    depth,
    passes(f, say) {
      switch (f.what) {
        case "missing":
          return `${plural(f.found, "pass", "passes")}; the plan takes ${f.wanted}, so each cuts more than it should`;
        case "springs":
          return `${f.found === 0 ? "no spring pass" : plural(f.found, "spring pass", "spring passes")}; the plan takes ${f.wanted}`;
        case "more":
          return `${plural(f.found, "pass", "passes")}; the plan has ${f.wanted}`;
        case "pecks":
          return `drilled in one stroke; the plan takes ${plural(f.wanted, "peck")}`;
        case "cuts":
          return `${plural(f.found, "cut")}; the plan takes ${f.wanted}`;
        case "step":
          return `one pass goes ${say.length(f.found)} further in; the plan's largest step is ${say.length(f.wanted)}`;
      }
    },
    compensation(f, say) {
      switch (f.what) {
        case "side":
          return `G${f.found} puts the cutter on the wrong side for this way round; it wants G${f.wanted}`;
        case "contour-off":
          return `the path is the finished contour (radius ${say.length(f.found)}) and compensation is off; the cutter's centre belongs on radius ${say.length(f.wanted)}`;
        case "switched":
          return "compensation changes in the middle of the turns";
        case "wear-unused":
          return `the row has a wear value of ${say.change(f.wear)}, but the program runs without compensation, which alone brings it in`;
      }
    },
    hole(f, say) {
      if (f.what === "none")
        return `no hole is drilled at X ${say.length(f.x)} Y ${say.length(f.y)}, where the tool goes in`;
      if (f.what === "later") return `its hole is drilled only later, in block ${f.drilled}`;
      return `the hole is drilled to Z ${say.length(f.bottom)}; the tip goes to Z ${say.length(f.tip)}`;
    },
    "not-in-plan"(f, say) {
      if (f.what === "more") return `${f.number} more than the row's ${f.size}`;
      const times = f.number === 1 ? "" : `${f.number} × `;
      if (f.what === "hole") return `${times}hole to Z ${say.length(f.size)}: no row of the plan is like it`;
      if (f.what === "thread")
        return `${times}helix on radius ${say.length(f.size)} with ${say.length(f.pitch)} per turn: no row of the plan is like it`;
      return `${times}circle on radius ${say.length(f.size)}: no row of the plan is like it`;
    },
    "not-in-program"(f) {
      if (f.what === "row")
        return "nothing in the program is like this row. Turns posted as short straight moves are not recognised";
      return `${f.found} of ${f.wanted} are in the program`;
    },
    unreadable(f, say) {
      switch (f.what) {
        case "refused":
          // one entry for each reason; the compiler cannot follow the pairing
          return (REFUSALS[f.refusal.why] as (refusal: Refusal) => string)(f.refusal);
        case "trouble": {
          const text = (TROUBLES[f.trouble.what] as (trouble: Trouble, say: Say) => string)(f.trouble, say);
          return f.number > 1 ? `${text} (and ${f.number - 1} more)` : text;
        }
        case "words": {
          const list = f.words.map(({ word, count }) => (count > 1 ? `${word} (${count} times)` : word)).join(", ");
          return `passed over, not words that are read here: ${list}${f.more > 0 ? ` and ${f.more} others` : ""}`;
        }
        case "units":
          return `the program does not say G20 or G21; its numbers are taken as ${f.units === "in" ? "inches" : "millimetres"}, as in the table`;
        case "increments":
          return `no number has a decimal point: they are taken as steps of ${f.units === "in" ? "0.0001 in" : "0.001 mm"}`;
        case "both-units":
          return "the program has blocks in inches and blocks in millimetres";
        case "absolute-centres":
          return "I and J only fit as the centre's own position; they are taken so";
        case "no-moves":
          return "nothing moves in this program";
        case "skippable":
          return `${plural(f.number, "block")} with a slash ${f.number === 1 ? "is" : "are"} read as if the machine did not skip ${f.number === 1 ? "it" : "them"}`;
        case "plan":
          return "the plan does not determine this row, so it cannot be compared: complete the row first";
      }
    },
    same: (f) =>
      f.number === f.wanted
        ? `as planned${f.number > 1 ? `, ${f.number} times` : ""}`
        : `as planned; ${f.number === 1 ? "one" : f.number} of ${f.wanted} ${f.number === 1 ? "is" : "are"} in the program, the other places are not compared`,
  },
};
