/** How the rows of the starting list of tools are written down: a short table for each kind, under its own headings. */
import { readTable } from "./table.ts";

/** Headings of the list. */
export const HEADINGS = [
  "Tool",
  "Kind",
  "Units",
  "Diameter",
  "Teeth",
  "Cutting length",
  "Neck diameter",
  "Neck length",
  "Shank diameter",
  "Stick-out",
  "Corner radius",
  "Tip flat",
  "Profile angle",
  "Helix",
  "Point angle",
  "Edge radius",
  "Edge angle",
  "Tip to profile",
  "Rupture strength [MPa]",
  "Modulus [GPa]",
  "Notch factor",
  "Runout",
  "Substrate",
  "Pitch",
  "Chamfer [pitches]",
  "Max rpm",
  "Price",
  "Edges",
  "Safety factor",
  "Stick-out limit [of diameter]",
] as const;

export type Heading = (typeof HEADINGS)[number];
export type Cell = string | number | null;

/** Transverse rupture strength and modulus, from memory: check against the maker's figures before use. */
const SUBSTRATE = {
  carbide: { "Rupture strength [MPa]": 3500, "Modulus [GPa]": 600, "Max rpm": 40000 },
  HSS: { "Rupture strength [MPa]": 3500, "Modulus [GPa]": 210, "Max rpm": 15000 },
} as const;

/** What milling tools are judged by: rupture strength over allowed stress, and the stick-out that is looked at (judgement). */
export const JUDGED = { "Safety factor": 3, "Stick-out limit [of diameter]": 4 } as const;

/** Rows of one kind under its own headings; what all of them share is given once. A row's own cell beats the shared one. */
export function toolRows(headings: readonly Heading[], shared: Partial<Record<Heading, Cell>>, text: string): Cell[][] {
  return readTable(text).map((cells) => {
    const own = Object.fromEntries(headings.map((h, i) => [h, cells[i] ?? null])) as Partial<Record<Heading, Cell>>;
    const base = SUBSTRATE[(own.Substrate ?? shared.Substrate) as keyof typeof SUBSTRATE];
    return HEADINGS.map((h) => own[h] ?? shared[h] ?? (base as Partial<Record<Heading, Cell>>)[h] ?? null);
  });
}
