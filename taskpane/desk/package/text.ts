/** Between a part's bytes and its text, and changes to spans of a text. Pure. */
import { FileError } from "../model/types.ts";

/** Text for the content of an element. A carriage return stands as a reference, or reading would drop it. */
export function escapeText(text: string): string {
  return /[&<>\r]/.test(text)
    ? text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll("\r", "&#13;")
    : text;
}

/** Text for an attribute in double quotes. */
export function escapeAttribute(text: string): string {
  return escapeText(text).replaceAll('"', "&quot;").replaceAll("\n", "&#10;").replaceAll("\t", "&#9;");
}

/** Text of a part. Packages are written in UTF-8 or UTF-16 (ECMA-376 part 2, 8.1.4). */
export function decodePart(bytes: Uint8Array, part: string): string {
  const two =
    bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "";
  let text: string;
  try {
    text = new TextDecoder(two || "utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new FileError("damaged", `This file is damaged: its part "${part}" has characters that cannot be read.`);
  }
  const said = /^\ufeff?<\?xml[^>]{0,200}?encoding\s*=\s*["']([^"']+)["']/.exec(text)?.[1]?.toLowerCase();
  if (!two && said !== undefined && !["utf-8", "utf8", "us-ascii", "ascii"].includes(said))
    throw new FileError(
      "unsupported",
      `This file's part "${part}" is written in "${said.slice(0, 40)}"; workbooks use UTF-8.`,
    );
  return text;
}

/** Bytes of a part's text, in UTF-8; a part that came in UTF-16 says so no longer. */
export function encodePart(text: string): Uint8Array {
  const plain = text.replace(/^(\ufeff?<\?xml[^>]{0,200}?encoding\s*=\s*["'])utf-16[lb]?e?(["'])/i, "$1UTF-8$2");
  return new TextEncoder().encode(plain);
}

/** One span of a text to be replaced. */
export interface Patch {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Replaces spans; those at the same place come in the order given, what is only put in before what is replaced. */
export function patched(text: string, patches: readonly Patch[]): string {
  if (patches.length === 0) return text;
  const sorted = patches
    .map((patch, i) => ({ ...patch, i }))
    .sort((a, b) => a.start - b.start || Number(a.end > a.start) - Number(b.end > b.start) || a.i - b.i);
  const out: string[] = [];
  let at = 0;
  for (const { start, end, text: put } of sorted) {
    if (start < at) throw new Error("two changes of the same place");
    out.push(text.slice(at, start), put);
    at = end;
  }
  out.push(text.slice(at));
  return out.join("");
}
