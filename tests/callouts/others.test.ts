/** Lines of a drawing that are no callout, word by word (ASME Y14.5, common practice), and their neighbours that are. */
import { describe, expect, it } from "vitest";
import { frameAt, type OtherKind, otherKind } from "../../src/callouts/others.ts";

const kinds = (lines: readonly string[]) => lines.map((line) => [line, otherKind(line)]);
const all = (lines: readonly string[], what: OtherKind | undefined) => lines.map((line) => [line, what]);
const are = (what: OtherKind | undefined, ...lines: string[]) => expect(kinds(lines)).toEqual(all(lines, what));

const names = [
  "SHCS",
  "FHCS",
  "BHCS",
  "SHSS",
  "SCREW",
  "SCREWS",
  "BOLT",
  "BOLTS",
  "NUT",
  "NUTS",
  "LOCKNUT",
  "LOCKNUTS",
];
const more = ["WASHER", "WASHERS", "RIVET", "RIVETS", "DOWEL", "DOWELS", "STUD", "STUDS", "CIRCLIP", "CIRCLIPS"];
const rings = [
  "RETAINING RING",
  "SNAP RING",
  "SNAP RINGS",
  "O-RING",
  "O RING",
  "O - RING",
  "ORING",
  "BEARING",
  "BEARINGS",
];
const standards = ["ISO 4762", "ISO 4014", "ISO 4017", "ISO 4026", "ISO 4027", "ISO 7380", "ISO 10642", "ISO4762"];
const german = ["DIN 912", "DIN 931", "DIN 933", "DIN 934", "DIN 7991", "DIN 125", "DIN 127", "DIN912", "  DIN 912"];

describe("hardware", () => {
  it.each([...names, ...more, ...rings, ...standards, ...german])("%s", (name) => {
    are("hardware", `${name} M6 X 20`, name.toLowerCase());
    if (/^[A-Z]/.test(name) && !/^(?:ISO|DIN)/.test(name)) are("hardware", `4X M6 ${name}`);
  });
  it("not in other words, nor where a number goes on", () => {
    const other = ["XSHCS M6", "SHCSX M6", "ZHCS M6", "SCREWED M6", "NUTMEG M6", "UNBOLT M6", "STUDIO M6", "GORING M6"];
    are(undefined, ...other, "ISO 47621", "DIN 9120", "ISO 9999", "M6 ISO 4762", "M6 DIN 912");
  });
  it("not where a hole for it is meant", () => {
    const words = [
      "THRU",
      "THRO",
      "THROUGH",
      "DEEP",
      "DP",
      "TAP",
      "TAPPED",
      "DRILL",
      "DRILLED",
      "REAM",
      "REAMED",
      "BORE",
    ];
    const seats = ["BORED", "CBORE", "C'BORE", "CSK", "HOLE", "HOLES", "INSERT", "INSERTS", "STI", "↧ 5", "⌴ 5", "⌵ 5"];
    for (const word of [...words, ...seats]) are(undefined, `M6 SCREW ${word}`, `m6 screw ${word.toLowerCase()}`);
  });
  it("though a word begins or ends like one of a hole", () => {
    const words = ["THRUST", "DEEPER", "XDEEP", "DPX", "XDP", "TAPE", "XTAP", "XDRILL", "XREAM", "BOREDOM", "XBORE"];
    const seats = ["XCSK", "CSKX", "HOLEY", "XHOLE", "INSERTED", "XINSERT", "STIR", "XSTI"];
    for (const word of [...words, ...seats]) are("hardware", `M6 SCREW ${word}`);
  });
});

describe("slots and chamfers", () => {
  it("by their words, without the size of a hole", () => {
    are("slot", "SLOT 6 X 20", "SLOTS 6 X 20", "OBROUND 6 X 20", "KEYWAY 6", "KEYWAYS 6", "KEYSEAT 6", "KEYSEATS 6");
    are("slot", "LANGLOCH 6 X 20", "2X slot 6", "SLOT 6 DIAL", "SLOT THRU", "SLOT 6 XM8", "SLOT 5-6 UN", "SLOT AM8");
    are(undefined, "SLOT ⌀6", "SLOT 6 DIA", "SLOT M8", "SLOT 1/4-20 UNC", "SLOT 1/4-20UNC", "SLOT ⌀6 THRU");
    are(undefined, "SLOTTED 6 X 20 A", "XSLOT 6 X 20 A", "KEYWAYED 6 A");
    are("chamfer", "CHAM 1", "CHAMFER 1", "CHAMFERS 1", "CHAMFERED 1 ALL", "1 CHAM A", "C1", "1 X 45°");
    are(undefined, "CHAMFER ⌀6", "CHAMFER M8", "CHAMBER 1 A", "XCHAM 1 A");
  });
});

describe("frames, surfaces, titles", () => {
  it("are frames unless a hole or a thread stands in them", () => {
    are("tolerance frame", "FLATNESS .002", "POSITION ⌀.014 M A B C", "⌖ ⌀0.2 A THRU", "| ⌀0.2 | A | B |");
    are("tolerance frame", "FLATNESS .002 XM6", "FLATNESS .002 0-3 UN");
    are(undefined, "POSITION .5 THRU", "POSITION .5 M6", "POSITION .5 10-32 UNF", "POSITION .5 10-32UNF");
  });
  it("are surface marks by their sign, at the head of the line", () => {
    are("surface mark", "√ 3.2", " √", "▽", "∇ A", "✓ 63", "RA 1.6", "63 RMS");
    are(undefined, "3.2 A √", "A ▽");
  });
  it("are titles unless a hole with a size stands in them", () => {
    are("title block", "SECTION A", "SECTION A THRU", "SCALE 1:2", "SECTION A ⌀6");
    are(undefined, "SECTION A ⌀6 THRU", "SECTION A M6 TAP");
    are("units", "DIMENSIONS IN MM");
    are("note", "NOTE 3");
    are(undefined, "DIMENSIONS IN MM ⌀6", "NOTE ⌀6");
  });
  it("begin behind a callout where their sign stands", () => {
    expect(frameAt("⌀6 THRU ⌖ ⌀0.1 A")).toBe(7);
    expect(frameAt("⌀6 THRU |⌖|⌀0.1|A|")).toBe(7);
    expect(frameAt("⌖ ⌀0.1 A")).toBe(-1);
    expect(frameAt("⌀6 THRU")).toBe(-1);
  });
});
