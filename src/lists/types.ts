/** Shapes of the lists a shop starts with. */

/** Cells with their heading row, as a worksheet range holds them. */
export type ListBlock = readonly (readonly (string | number | null)[])[];

/** Where a starting value comes from. Only `published` was read in the source it names. */
export interface SourceNote {
  readonly kind: "published" | "common practice" | "from memory";
  readonly text: string;
}
