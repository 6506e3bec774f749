/** Lines of a drawing that are no hole, thread or seat, and what they are. */
import { statedUnits } from "./stated.ts";

export type OtherKind =
  | "tolerance frame"
  | "note"
  | "hardware"
  | "title block"
  | "linear dimension"
  | "angle"
  | "radius"
  | "chamfer"
  | "slot"
  | "surface mark"
  | "datum"
  | "units";

const N = String.raw`(?:\d+[.,]\d+|\d+\.|[.,]\d+|\d+(?:-\d+/\d+|\s\d+/\d+|/\d+)?)`;
const TIMES = String.raw`(?:\d{1,3}\s?x\s*)?`;
const PLUS = String.raw`(?:\s*(?:±|\+\s?/\s?-)\s*${N}|\s*[+-]\s?${N}\s*/?\s*[+-]?\s?${N})?`;
const TAIL = String.raw`(?:\s+(?:REF|TYP|MAX|MIN|BASIC|BSC|ALL\s+AROUND|\d{1,3}\s?x?\s*PLACES?)\b\.?)*`;
/** Geometric characteristics (ASME Y14.5-2018, ISO 1101), and material conditions. */
const SYMBOL = "⌖⏥⌭◎⊥⟂∥⫽⌓⌒⌰⌯⏤○↗∠";
const CONDITION = "ⓂⓁⓅⓈⒻ";
const whole = (source: string) => new RegExp(`^\\s*(?:${source})\\s*[.,;]?\\s*$`, "i");
const head = (source: string) => new RegExp(`^\\s*(?:${source})`, "i");

/** What makes a line a hole whatever else it says. */
const HOLE =
  /THR[UO]\b|THROUGH|↧|⌴|⌵|\bDEEP\b|\bDP\b|\bTAP(?:PED)?\b|\bDRILL|\bREAM|\bBORED?\b|C'?BORE|\bCSK\b|\bHOLES?\b|\bINSERTS?\b|\bSTI\b/i;
const THREAD = /\bM\d|\d-\d\d\s*UN/i;
const SIZED = /⌀|\bM\d|\d-\d\d\s*UN|\bDIA\b/i;

const FRAME = [
  new RegExp(`^[\\s|[(]*[${SYMBOL}]`),
  head(
    String.raw`(?:TRUE\s+)?(?:POSITION|FLATNESS|FLAT|PERP\w*|PARALLEL\w*|CONCENTRIC\w*|CYLINDRICITY|CIRCULARITY|ROUNDNESS|STRAIGHTNESS|SYMMETRY|ANGULARITY|(?:TOTAL\s+)?RUN-?OUT|PROFILE(?:\s+OF\s+A\s+(?:LINE|SURFACE))?)\s*[|:]?\s*⌀?\s*${N}`,
  ),
  whole(
    String.raw`[|[]?\s*⌀?\s*${N}\s*[${CONDITION}]?\s*\|(?:\s*[A-Z](?:-[A-Z])?\s*[${CONDITION}]?\s*[|\]])*(?:\s*[A-Z])?\s*`,
  ),
  whole(String.raw`⌀?\s*${N}\s*[${CONDITION}](?:\s+[A-Z](?:-[A-Z])?)*`),
  whole(String.raw`⌀?\s*${N}\s+[A-F](?:-[A-F])?(?:\s+[A-F](?:-[A-F])?){1,2}`),
];
const DATUM = [whole(String.raw`-\s?[A-Z]\s?-|\|\s?[A-Z]\s?\||DATUM\s+[A-Z]`)];
const SURFACE = [
  /^\s*[√▽∇✓]/,
  head(String.raw`R[AZT]\s?${N}`),
  whole(String.raw`${N}\s*(?:RMS|AA|µ\s?IN\w*|μ\s?IN\w*|µM|μM)`),
];
const TITLE = [
  head(
    String.raw`SCALE\b|SHEET\s*:?\s*\d|DRAWN\b|DATE\b|MAT(?:ERIA)?L\s*:|DWG\b|DRAWING\s+(?:NO|NUMBER)|REV(?:ISION)?\b\.?\s*[:A-Z\d]|PART\s*(?:NO|NUMBER)\b|P/N\b|TITLE\b|SIZE\s*:?\s*[A-E]\d?\s*$|WEIGHT\b|MASS\b|FINISH\s*:|CHECKED\b|APPROVED\b|DO\s+NOT\s+SCALE|(?:THIRD|FIRST)\s+ANGLE|SECTION\s+[A-Z]\b|DETAIL\s+[A-Z]\b|VIEW\s+[A-Z]\b|TOLERANCES?\b|ANGLES?\s*±|[.,]X{1,4}\s*(?:±|=)`,
  ),
];
const HARDWARE =
  /\b(?:[SFB]HCS|SHSS|SCREWS?|BOLTS?|(?:LOCK)?NUTS?|WASHERS?|RIVETS?|DOWELS?|STUDS?|(?:RETAINING|SNAP|O)\s?-?\s?RINGS?|CIRCLIPS?|BEARINGS?)\b|^\s*(?:ISO\s*(?:4762|4014|4017|4026|4027|7380|10642)|DIN\s*(?:912|931|933|934|7991|125|127))\b/i;
const NOTE_HEAD = head(
  String.raw`(?:TORQUE|TIGHTEN|BREAK|DEBURR|REMOVE|ANODI[ZS]E|HEAT\s*TREAT|HARDEN|PASSIVATE|INTERPRET|PARTS?\s+(?:TO|MUST|SHALL)|APPLY|SEE\b|GENERAL|ALL\s+(?:FILLETS|RADII|EDGES|CORNERS|SURFACES|DIMENSIONS)|MASK|INSTALL|PAINT|PLATE\b|CLEAN\b|MARK\b|STAMP|ENGRAVE|ASSEMBLE|PER\b|INSPECT|CERTIFY|PACKAGE)\b`,
);
const UNLESS = head(String.raw`UNLESS\s+OTHERWISE|NOTES?\s*:?\s*$`);
const NOTE = head(String.raw`NOTE\b`);
const SLOT = /\b(?:SLOTS?|OBROUND|KEYWAYS?|KEYSEATS?|LANGLOCH)\b/i;
const RADIUS = [
  whole(
    String.raw`${TIMES}(?:S?R|RAD\.?)\s?(?:\d+[.,]\d+|[.,]\d+|\d+)(?:\s*(?:-|TO)\s*${N})?${PLUS}${TAIL}|${TIMES}FULL\s+R(?:ADIUS|AD\.?)?|${TIMES}${N}\s+R(?:AD(?:IUS)?)?\.?${TAIL}`,
  ),
];
const CHAMFER = [
  whole(
    String.raw`${TIMES}(?:CHAM(?:FER)?\.?\s*)?${N}${PLUS}\s*x\s*\d+(?:[.,]\d+)?\s?°(?:\s*CHAM(?:FERS?)?\.?)?${TAIL}`,
  ),
  whole(String.raw`${TIMES}C\s?(?:\d+[.,]\d+|[.,]\d+|\d{1,2})${TAIL}`),
];
const CHAMFER_WORD = /\bCHAM(?:FER(?:S|ED)?)?\b/i;
/** One figure by 45° is a chamfer. */
const ANGLE = [
  whole(String.raw`\(?(?!${N}\s?x\s?45\s?°)${TIMES}${N}\s?°(?:\s*(?:±|\+\s?/\s?-)\s*${N}\s?°?)?\)?${TAIL}`),
];
const LINEAR = [
  whole(String.raw`[([]?${TIMES}${N}(?:\s*(?:mm|in|"))?${PLUS}[)\]]?${TAIL}`),
  whole(String.raw`[([]?\d{1,3}\s?x\s*${N}\s*=\s*${N}[)\]]?`),
  whole(String.raw`${N}\s*x\s*${N}\s*x\s*${N}`),
  whole(String.raw`${N}\s*/\s*${N}|x\s*${N}`),
];

const any = (patterns: readonly RegExp[], text: string) => patterns.some((p) => p.test(text));

/** What a line is when it is no callout (see `mend` for the text). A line that may be one answers undefined. */
export function otherKind(text: string): OtherKind | undefined {
  if (FRAME[0]!.test(text) || (any(FRAME, text) && !HOLE.test(text) && !THREAD.test(text))) return "tolerance frame";
  if (any(DATUM, text)) return "datum";
  if (any(SURFACE, text)) return "surface mark";
  if (NOTE_HEAD.test(text)) return "note";
  if (statedUnits(text) !== undefined && !SIZED.test(text)) return "units";
  if (UNLESS.test(text)) return "note";
  if (NOTE.test(text) && !SIZED.test(text)) return "note";
  if (any(TITLE, text) && !(HOLE.test(text) && SIZED.test(text))) return "title block";
  if (HOLE.test(text)) return SLOT.test(text) && !SIZED.test(text) ? "slot" : undefined;
  if (HARDWARE.test(text)) return "hardware";
  if (SLOT.test(text) && !SIZED.test(text)) return "slot";
  if (any(RADIUS, text)) return "radius";
  if (any(ANGLE, text)) return "angle";
  if (any(CHAMFER, text) || (CHAMFER_WORD.test(text) && !SIZED.test(text))) return "chamfer";
  return any(LINEAR, text) ? "linear dimension" : undefined;
}

/** Where on a line behind a callout a tolerance frame begins, or -1. */
export function frameAt(text: string): number {
  const found = new RegExp(`[|[(\\s]*[${SYMBOL}]`).exec(text);
  return found && found.index > 0 ? found.index : -1;
}
