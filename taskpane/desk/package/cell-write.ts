/** Text of one cell as files keep it. Pure. */
import type { Value } from "../model/types.ts";
import { storedText } from "./strings.ts";
import { escapeText } from "./text.ts";

/** Error values of the format (ECMA-376 part 1, 18.18.11); newer ones are stored as #VALUE! by other programs too. */
const ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA"]);

/** Type attribute and content for a value; `result`: of a formula. */
export function valueText(
  prefix: string,
  value: Value,
  result: boolean,
): { readonly type: string; readonly content: string } {
  const p = prefix;
  if (value === null) return { type: "", content: "" };
  if (typeof value === "number") {
    if (!Number.isFinite(value)) return { type: "e", content: `<${p}v>#NUM!</${p}v>` };
    return { type: "", content: `<${p}v>${Object.is(value, -0) ? "0" : String(value)}</${p}v>` };
  }
  if (typeof value === "boolean") return { type: "b", content: `<${p}v>${value ? 1 : 0}</${p}v>` };
  if (typeof value === "object")
    return { type: "e", content: `<${p}v>${ERRORS.has(value.error) ? value.error : "#VALUE!"}</${p}v>` };
  const text = escapeText(storedText(value));
  if (result) return { type: "str", content: `<${p}v>${text}</${p}v>` };
  const space = /^\s|\s$|\n|\s\s/.test(value) ? ' xml:space="preserve"' : "";
  return { type: "inlineStr", content: `<${p}is><${p}t${space}>${text}</${p}t></${p}is>` };
}

export interface CellParts {
  readonly address: string;
  readonly style?: string | number;
  readonly cm?: number;
  /** The formula's element, already spelled. */
  readonly formula?: string;
  readonly value: Value;
}

export function cellElement(prefix: string, { address, style, cm, formula, value }: CellParts): string {
  const p = prefix;
  const { type, content } = valueText(p, value, formula !== undefined);
  const attributes = [
    ` r="${address}"`,
    style === undefined || String(style) === "0" ? "" : ` s="${style}"`,
    type === "" ? "" : ` t="${type}"`,
    cm === undefined ? "" : ` cm="${cm}"`,
  ].join("");
  const inner = `${formula ?? ""}${content}`;
  return inner === "" ? `<${p}c${attributes}/>` : `<${p}c${attributes}>${inner}</${p}c>`;
}
