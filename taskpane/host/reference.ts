/** Places of a workbook as formulas and people write them: references, and ranges inside formulas. */
import { parseA1Ref, stringifyA1Ref, stringifyTokens, tokenize } from "@borgar/fx";
import { addressOf } from "../desk/model/address.ts";

export { addressOf };

/** A rectangle as formulas refer to it, fixed: `Plan!$A$4:$V$49`. */
export function reference(sheet: string, top: number, left: number, rows: number, columns: number): string {
  return stringifyA1Ref({
    context: [sheet],
    range: {
      ...{ top, left, bottom: top + rows - 1, right: left + columns - 1 },
      ...{ $top: true, $left: true, $bottom: true, $right: true },
    },
  });
}

/** A rectangle for a person: "Plan A4:V49". */
export function spokenAddress(sheet: string, top: number, left: number, rows: number, columns: number): string {
  return `${sheet} ${addressOf(top, left)}:${addressOf(top + rows - 1, left + columns - 1)}`;
}

/** Corners of a range, all of them written; rows and columns from 0. */
export interface Corners {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Corners of an address without a sheet, such as "B4:C9"; undefined for whole rows or columns, and what is none. */
export function corners(address: string): Corners | undefined {
  const ref = parseA1Ref(address);
  if (!ref || !("range" in ref)) return undefined;
  const { top, left, bottom, right } = ref.range;
  return top == null || left == null || bottom == null || right == null ? undefined : { top, left, bottom, right };
}

/** A formula with ranges of one sheet changed; `change` answers undefined for a range that stays. Text is left alone. */
export function withRanges(formula: string, sheet: string, change: (range: Corners) => Corners | undefined): string {
  const tokens = tokenize(formula, { mergeRefs: true });
  const changed = tokens.map((token) => {
    if (token.type !== "range") return token;
    const ref = parseA1Ref(token.value);
    if (!ref || !("range" in ref)) return token;
    const { top, left, bottom, right } = ref.range;
    const named = ref.context?.at(-1);
    if (named !== undefined && String(named).toLowerCase() !== sheet.toLowerCase()) return token;
    if (top == null || left == null || bottom == null || right == null || (top === bottom && left === right))
      return token;
    const next = change({ top, left, bottom, right });
    return next ? { ...token, value: stringifyA1Ref({ ...ref, range: { ...ref.range, ...next } }) } : token;
  });
  return stringifyTokens(changed);
}
