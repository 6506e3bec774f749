/**
 * The words of ISO 6983 that a row means, as a plain listing to compare a posted program with. No dialect: no tool
 * numbers, no offsets, no cycles, every move written out.
 *
 * Conventions: the cutter's centre path, feed at the centre. Compensation (G41/G42) only carries the wear value, and a
 * positive one moves the path away from the wall. With a right-hand spindle (M3) a climb cut has the wall on the right
 * of the travel, so the cutter is left of it: G41; conventional: G42.
 *
 * @source ISO6983 ISO841
 */
import { fromCanonical } from "../units.ts";
import { type PathMove, type PathPass, pathOf, roomBelow } from "./path.ts";
import { type HoleShape, MOST_ROUNDS, type RowFacts, type Shape, type ToolZero } from "./types.ts";

/** First blocks of every listing. */
export const LISTING_CAUTION: readonly string[] = [
  "(WORDS TO COMPARE A PROGRAM WITH: THIS IS NOT A PROGRAM TO RUN)",
  "(NO FIXTURE, CLAMP, TOOL NUMBER, OFFSET OR CONTROL IS KNOWN HERE)",
  "(PROVE OUT YOUR OWN POSTED PROGRAM: QUALIFIED PEOPLE AND LOCAL RULES DECIDE)",
  "(PATH AND FEED OF THE CUTTER'S CENTRE. G41 OR G42 CARRIES THE WEAR VALUE ONLY: A POSITIVE ONE MOVES AWAY FROM THE WALL)",
  "(CONTROLS WANT A STRAIGHT MOVE IN THE BLOCK THAT TURNS COMPENSATION ON OR OFF)",
];

/** Decimals of X Y Z I J and of F: least increments that controls commonly have. */
const PLACES = { mm: { length: 3, feed: 1 }, in: { length: 4, feed: 2 } } as const;

/** Row and block of every word of a table, the caution first; without a heading. */
export function listing(facts: readonly RowFacts[], toolZero: ToolZero): [row: string, block: string][] {
  return [
    ...LISTING_CAUTION.map((block): [string, string] => ["", block]),
    ...facts.flatMap((row) => rowBlocks(row, toolZero).map((block): [string, string] => [row.name, block])),
  ];
}

/** The blocks of one row; a row whose plan does not determine them answers with a comment that says why. */
export function rowBlocks(row: RowFacts, toolZero: ToolZero): string[] {
  const { shape, units, rpm, feed } = row;
  const title = `ROW ${row.name} ${row.operation ?? ""} ${row.title}`;
  if (shape === undefined || rpm === undefined || feed === undefined) {
    const many = row.rounds !== undefined && `more than ${MOST_ROUNDS} turns or cuts would be needed`;
    return [comment(title), comment(`no words: ${many || row.reason || "the row does not determine them"}`)];
  }
  const write = (value: number) => fixed(fromCanonical(value, "length", units), PLACES[units].length);
  const head = [title, ...notes(row, shape, toolZero, write)].map(comment);
  const tapLeft = shape.kind === "hole" && shape.what === "tap" && shape.hand === "left";
  const start = [`G17 ${units === "in" ? "G20" : "G21"} G40 G90 G94`, `S${Math.round(rpm)} ${tapLeft ? "M4" : "M3"}`];
  const feedWord = ` F${fixed(fromCanonical(feed, "feed", units), PLACES[units].feed)}`;
  const body = pathOf(shape, toolZero).flatMap((pass) => passBlocks(pass, write, feedWord, tapLeft));
  return [...head, ...start, ...body, "M5"];
}

function passBlocks(pass: PathPass, write: (v: number) => string, feedWord: string, tapLeft: boolean): string[] {
  const blocks: string[] = pass.note === "" ? [] : [comment(pass.note)];
  let fed = false;
  let compensated = false;
  let [x, y, z] = ["", "", ""];
  pass.moves.forEach((move, n) => {
    const arc = move.g >= 2;
    // compensation from the last plain move before the first arc (or the cut) until the way out
    const cuts = arc || (move.g === 1 && pass.compensation !== undefined && move.x !== pass.moves[n - 1]?.x);
    if (pass.compensation !== undefined && !compensated && cuts) {
      blocks.push(pass.compensation);
      compensated = true;
    }
    if (compensated && move.g === 0) {
      blocks.push("G40");
      compensated = false;
    }
    if (pass.reverse && n === pass.moves.length - 1) blocks.push("M5", tapLeft ? "M3" : "M4");
    const [nx, ny, nz] = [write(move.x), write(move.y), write(move.z)];
    const words = [`G${move.g}`];
    if (arc || nx !== x) words.push(`X${nx}`);
    if (arc || ny !== y) words.push(`Y${ny}`);
    if (nz !== z && !(n === 0 && move.g === 0)) words.push(`Z${nz}`);
    if (arc) words.push(...centre(move, write));
    const first = !fed && move.g !== 0;
    blocks.push(words.join(" ") + (first ? feedWord : ""));
    fed ||= first;
    [x, y] = [nx, ny];
    if (!(n === 0 && move.g === 0)) z = nz;
  });
  return blocks;
}

const centre = ({ i = 0, j = 0 }: PathMove, write: (v: number) => string) => [`I${write(i)}`, `J${write(j)}`];

function notes(row: RowFacts, shape: Shape, toolZero: ToolZero, write: (v: number) => string): string[] {
  const lines: string[] = [];
  if (row.verdict === "stop") lines.push(`the plan says stop: ${row.reason}`);
  const tool = [row.tool === "" ? "" : `tool ${row.tool}`];
  if (shape.kind === "thread" || shape.kind === "round" || shape.kind === "arc" || shape.kind === "line")
    tool.push(`cutter ${write(shape.cutter)}`);
  lines.push(tool.filter((part) => part !== "").join(", "));
  if (row.quantity > 1) lines.push(`one of ${row.quantity}`);
  lines.push(
    shape.kind === "line"
      ? `X from the start of the cut, Y from ${shape.what === "side" ? "the finished wall" : "the middle of the cut"}, Z 0 at the face`
      : "X Y from the centre, Z 0 at the face",
  );
  if (shape.kind === "thread") {
    const middle = shape.full ? "the middle of the lowest profile" : "the middle of the profile";
    lines.push(
      toolZero === "profile"
        ? `tool zero at ${middle}`
        : `tool zero at the tip, ${write(shape.tipToProfile)} below ${middle}`,
      `pitch ${write(shape.pitch)}, ${shape.hand} hand, ${shape.climb ? "climb" : "conventional"}: ${shape.up ? "bottom up" : "top down"}, ${shape.counterClockwise ? "counter-clockwise" : "clockwise"}`,
    );
    if (!roomBelow(shape)) lines.push("half circle at the bottom is level: no room below the thread is known");
  } else lines.push("tool zero at the tip");
  if (shape.kind === "round" || shape.kind === "arc")
    lines.push(
      `${shape.climb ? "climb" : "conventional"}: ${shape.counterClockwise ? "counter-clockwise" : "clockwise"}`,
    );
  if (shape.kind === "arc") lines.push("the arc begins at +X of its centre: where it lies the row does not tell");
  if (shape.kind === "hole") lines.push(...holeNotes(shape, write));
  return lines.filter((line) => line !== "");
}

function holeNotes(shape: HoleShape, write: (v: number) => string): string[] {
  switch (shape.what) {
    case "drill":
      return [`full diameter to ${write(shape.depth)}, point ${write(shape.point)} more`];
    case "countersink":
      return ["depth of the tip: for a sharp point the size and the angle decide, check it"];
    case "tap":
      return ["the lead of the tap is not in the depth"];
    case "ream":
      return ["the lead of the reamer is not in the depth; out at feed"];
  }
}

/** A comment as ISO 6983 writes it: plain capitals in round brackets, no brackets inside, and not too long a line. */
export function comment(text: string): string {
  const plain = text
    .normalize("NFKD")
    .replace(/[⌀Øø]/g, "DIA ")
    .replace(/[×]/g, "X")
    .replace(/[·;]/g, ",")
    .replace(/[–—−]/g, "-")
    .replace(/[([{]/g, "/")
    .replace(/[)\]}]/g, "/")
    .replace(/[^\x20-\x7e]/g, "")
    .replace(/%/g, " PERCENT")
    .replace(/\s+/g, " ")
    .trim()
    .toUpperCase();
  return `(${plain.length > LONGEST_COMMENT ? `${plain.slice(0, LONGEST_COMMENT - 3)}...` : plain})`;
}
const LONGEST_COMMENT = 120;

/** A number with its decimal point, never minus zero: without the point some controls take it as increments. */
function fixed(value: number, places: number): string {
  const text = value.toFixed(places);
  return Number(text) === 0 ? text.replace("-", "") : text;
}
