/** What every number of a row's chain is called in English, and what its symbols leave unsaid. */
import { tidy } from "../say.ts";
import type { StepWords } from "../types.ts";

const FEED_BY = {
  contour: "the thread feed of the material",
  strength: "held by the strength of the tool",
  chip: "so that the largest chip is the list's",
  tooth: "held to what a tooth may meet in a corner",
  finish: "held for the surface of a finishing cut",
  spindle: "held to the spindle's power and torque",
  edge: "held for the edge, which runs faster than the centre in a tight bore",
} as const;

export const steps: StepWords = {
  // thread
  pitch: ["pitch", (f) => (f ? `of ${f.thread}` : "")],
  pitchMin: ["pitch diameter, least", (f) => (f ? `limit of ${f.thread}` : "")],
  pitchMax: ["pitch diameter, largest", (f) => (f ? `limit of ${f.thread}` : "")],
  minorMin: ["minor diameter, least", (f) => (f ? `limit of ${f.thread}` : "")],
  minorMax: ["minor diameter, largest", (f) => (f ? `limit of ${f.thread}` : "")],
  startDiameter: [
    "drill before the thread",
    (f, say) => `nearest drill inside the minor limits less a drilling oversize of ${f ? say.value(f.oversize) : "?"}`,
  ],
  percent: ["percent of thread"],
  sweep: [
    "pitch diameter the helical sweep alone would change",
    "path radius without and with the sweep, twice the difference",
  ],
  pathRadius: [
    "path radius of the cutter's centre",
    (f) => (f?.side === undefined ? "corrected for the helical sweep" : ""),
  ],
  majorDiameter: ["major diameter left"],
  minorDiameter: ["minor diameter left"],
  neckGap: [
    "gap between neck and wall",
    (f) => (f?.side === "outside" ? "path radius − neck/2 − blank/2" : "hole/2 − path radius − neck/2"),
  ],
  turns: [
    "turns of the helix",
    (f) => (f?.full ? "one turn, all profiles cut at once" : "one for each pitch and one more"),
  ],
  startZ: ["helix starts at (profile's middle, 0 = face)", "the profile's middle reaches the thread's full depth"],
  tipZ: ["tool tip at the deepest place", "depth and tip to profile"],
  depths: ["radial depth after each pass", "equal cut area each; spring passes at full depth"],
  left: ["pitch diameter after each pass", "each pass solved for the depth really cut; mean of the two force models"],
  // hole
  travel: ["feed travel", "depth + point + breakthrough"],
  pecks: ["depth after each peck", "each less than the one before, all shortened in one ratio to end at the bottom"],
  torque: ["drilling torque", "whole drill: lips, chisel edge, chips and margins"],
  thrust: ["drilling thrust", "whole drill: lips and chisel edge"],
  breakingTorque: ["torque that breaks the tool", (f) => (f ? `allowed: that over ${f.safety}` : "")],
  buckling: ["thrust that buckles the drill", (f) => (f ? `allowed: that over ${f.safety}` : "")],
  tapTorque: ["tapping torque", "full chamfer in the cut, sharp and oiled"],
  tappedHole: ["full-diameter depth that the tap wants"],
  ringTorque: ["cutting torque", "edges from the hole to the finished diameter"],
  drillFeed: [
    "feed per turn",
    (f) =>
      f?.typed
        ? "from the row"
        : f?.ten === undefined
          ? "from the milling feed"
          : `list feed at 10 mm${f.depth < 1 ? `, × ${f.depth.toFixed(2)} in this depth` : ""}`,
  ],
  // speed and feed
  speedRange: [
    "surface speed range",
    (f) =>
      f && f.engaged !== 1
        ? `from the material's row, × ${tidy(f.engaged, 2)} for the share of a turn that an edge cuts`
        : "from the material's row",
  ],
  spindleSpeed: [
    "spindle speed",
    (f) =>
      f?.by === undefined
        ? ""
        : `capped by ${{ machine: "the machine", tool: "the tool", row: "the row's Max rpm" }[f.by]}`,
  ],
  surfaceSpeed: ["surface speed"],
  edgeFeed: [
    "feed per tooth at the edge",
    (f, say) => {
      if (!f) return "";
      return f.by === "row" ? "from the row" : `list ${say.value(f.listed)}, ${FEED_BY[f.by]}`;
    },
  ],
  roughness: [
    (f) => (f?.of === "floor" ? "theoretical Rz of the floor" : "theoretical Rz of the wall"),
    "marks of the teeth, deeper where one runs out",
  ],
  edgeTable: ["feed of the edge"],
  tableFeed: [(f) => (f?.arc === undefined ? "table feed" : "table feed at the cutter's centre")],
  handed: [
    "stock beyond the row's own, a side",
    (f) => `what bending leaves on the wall in row ${f?.row ?? "above"}, at the end that bends most`,
  ],
  radialDepth: [
    (f) => (f === undefined ? "radial depth" : "effective radial depth (largest pass)"),
    (f) => (f === undefined ? "from the row, or the stock in equal passes" : ""),
  ],
  chip: [(f) => (f?.drill ? "chip thickness" : "largest chip"), (f) => (f?.held ? "at the feed really reached" : "")],
  mostChip: [
    "chip of the tooth that runs out most",
    (f, say) => (f ? `m teeth back, runout q = ${say.value(f.runout)}, ${f.teeth} teeth` : ""),
  ],
  flankChip: ["chip on the flank", "radial chip by half the profile angle"],
  leastChip: ["least chip", (f) => (f ? `${f.fraction} × edge radius` : "")],
  axialDepth: [
    "axial depth",
    (f) =>
      f === undefined
        ? ""
        : f.rise
          ? "rise per turn of the helix"
          : `${f.levels} level${f.levels > 1 ? "s" : ""} of equal depth${f.helix ? " after the helical entry" : ""}`,
  ],
  rise: [
    "rise per turn of the helical entry",
    (f) => (f === undefined || f.typed ? "from the row" : `ramp of ${f.angle}°, at most ${f.share} × D`),
  ],
  // force, power, bending
  force: [
    "peak tangential force (largest pass)",
    (f) => (f?.thread ? "summed over the profile, the teeth and a turn" : "over teeth, helix and a turn"),
  ],
  axialForce: [
    "mean axial force (largest pass)",
    (f) =>
      f
        ? `axial ratio ${f.ratio} × the mean tangential force: it pulls at the cutter in its holder, or lifts the part`
        : "",
  ],
  power: ["spindle power", (f) => (f ? `η = ${f.efficiency}` : "")],
  deflection: [
    (f) => (f?.thread ? "deflection at the cutter (peak force)" : "deflection at the cut (peak force)"),
    "stepped cantilever: bending, shear, shoulders, holder",
  ],
  stress: [
    "largest stress in the tool (estimate)",
    (f, say) =>
      f
        ? `bending and torsion at each section, notch factor ${f.notch}; allowed ${say.value(f.allowed, "stress")} = rupture strength / ${f.safety}`
        : "",
  ],
  // size
  size: [
    (f) => f?.of ?? "hole that comes out (average)",
    (f, say) =>
      f
        ? `programmed ${say.value(f.programmed)} and what bending leaves; between ${say.value(f.least)} and ${say.value(f.most)}`
        : "drill size and mean drilling oversize",
  ],
  scatter: [
    "scatter of the size from part to part",
    (f, say) =>
      f
        ? `${f.share} × the largest change by bending, and ${say.value(f.other)} by runout, seat and warmth; root of the squares`
        : "",
  ],
  startWear: [
    "wear value for the first part (radius)",
    "solved with the deeper path for the end that bends least; negative goes into the wall",
  ],
  wearChange: ["add to the wear value (radius)"],
  // time, life, money
  timeEach: [
    "time of one feature",
    (f) =>
      f?.turns === undefined
        ? "every pass and level, arcs in and out, rapids; each move from rest to rest"
        : `${f.passes} passes of ${f.turns.toFixed(2)} turns, arcs in and out, rapids; each move from rest to rest`,
  ],
  time: ["time per part", "time each × quantity + one tool change"],
  life: ["tool life (estimate)", "from the top of the material's speed range"],
  toolCost: ["tool cost per part", "cutting time / life × price / edges"],
  cost: [
    "cost per part",
    (f) =>
      f?.batch === undefined
        ? "no setup, because Batch is blank"
        : f.sharing > 1
          ? `the setup is shared by the ${f.sharing} rows on this machine`
          : "setup of the machine",
  ],
};
