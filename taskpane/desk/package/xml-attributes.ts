/** The attributes of the tag that is being read, as places in the text: values are made only of those that are asked for. */
import type { FileError } from "../model/types.ts";
import { resolveReferences, SHORT } from "./namespaces.ts";

/** True for a value that says yes. */
export const isTrue = (value: string | undefined): boolean => value === "1" || value === "true";

export class Attributes {
  readonly #text: string;
  readonly #wrong: (what: string) => FileError;
  /** Four places each: where the name begins and ends, where the value does. */
  readonly #places: number[] = [];
  /** True for a tag that is an element of its own. */
  empty = false;
  /** True when one of them may say what a prefix means. */
  declares = false;

  constructor(text: string, wrong: (what: string) => FileError) {
    this.#text = text;
    this.#wrong = wrong;
  }

  /** Reads on from the end of the tag's name; answers where the tag ends. */
  scan(from: number): number {
    const text = this.#text;
    const places = this.#places;
    places.length = 0;
    this.declares = false;
    this.empty = false;
    let pos = from;
    let c = text.charCodeAt(pos);
    for (;;) {
      const gap = c <= 32;
      while (c <= 32) c = text.charCodeAt(++pos);
      if (c === 62) return pos + 1;
      if (c === 47) {
        if (text.charCodeAt(pos + 1) !== 62) throw this.#wrong("has a broken tag");
        this.empty = true;
        return pos + 2;
      }
      const nameStart = pos;
      while (c > 32 && c !== 61 && c !== 62 && c !== 60 && c !== 47 && c !== 34 && c !== 39) c = text.charCodeAt(++pos);
      const nameEnd = pos;
      while (c <= 32) c = text.charCodeAt(++pos);
      if (c !== 61 || nameEnd === nameStart || !gap) throw this.#wrong("has a broken tag");
      c = text.charCodeAt(++pos);
      while (c <= 32) c = text.charCodeAt(++pos);
      if (c !== 34 && c !== 39) throw this.#wrong("has a broken tag");
      const valueStart = pos + 1;
      pos = text.indexOf(c === 34 ? '"' : "'", valueStart);
      if (pos < 0) throw this.#wrong("ends too early");
      places.push(nameStart, nameEnd, valueStart, pos);
      if (text.charCodeAt(nameStart) === 120 && text.startsWith("xmlns", nameStart)) this.declares = true;
      c = text.charCodeAt(++pos);
    }
  }

  /** The same attribute twice is not XML. */
  checkTwice(): void {
    const text = this.#text;
    const all = this.#places;
    for (let i = 4; i < all.length; i += 4) {
      const length = all[i + 1]! - all[i]!;
      for (let k = 0; k < i; k += 4) {
        if (all[k + 1]! - all[k]! !== length || text.charCodeAt(all[k]!) !== text.charCodeAt(all[i]!)) continue;
        if (text.slice(all[k]!, all[k + 1]!) === text.slice(all[i]!, all[i + 1]!))
          throw this.#wrong("has a tag with the same attribute twice");
      }
    }
  }

  /** What prefixes mean inside of the tag. */
  prefixes(outer: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
    const inner = new Map(outer);
    for (let i = 0; i < this.#places.length; i += 4) {
      const name = this.#text.slice(this.#places[i]!, this.#places[i + 1]!);
      if (name === "xmlns") inner.set("", this.#value(i));
      else if (name.startsWith("xmlns:")) inner.set(name.slice(6), this.#value(i));
    }
    return inner;
  }

  #value(index: number): string {
    const raw = this.#text.slice(this.#places[index + 2]!, this.#places[index + 3]!);
    if (!/[&<\n\r\t]/.test(raw)) return raw;
    const value = raw.includes("<") ? undefined : resolveReferences(raw.replace(/\r\n?|[\n\t]/g, " "));
    if (value === undefined) throw this.#wrong("uses an entity of its own, which workbooks must not have");
    return value;
  }

  #find(name: string, prefixes: ReadonlyMap<string, string>): number {
    const text = this.#text;
    const all = this.#places;
    const colon = name.indexOf(":");
    for (let i = 0; i < all.length; i += 4) {
      const [from, to] = [all[i]!, all[i + 1]!];
      if (colon < 0) {
        if (to - from === name.length && text.startsWith(name, from)) return i;
        continue;
      }
      const own = text.slice(from, to);
      const cut = own.indexOf(":");
      if (cut < 0 || own.slice(cut + 1) !== name.slice(colon + 1)) continue;
      if (SHORT[prefixes.get(own.slice(0, cut)) ?? "?"] === name.slice(0, colon + 1)) return i;
    }
    return -1;
  }

  /** Value of one of them; a name with a prefix uses the short names of namespaces. */
  value(name: string, prefixes: ReadonlyMap<string, string>): string | undefined {
    const at = this.#find(name, prefixes);
    return at < 0 ? undefined : this.#value(at);
  }

  /** Where its value stands in the text. */
  place(
    name: string,
    prefixes: ReadonlyMap<string, string>,
  ): { readonly start: number; readonly end: number } | undefined {
    const at = this.#find(name, prefixes);
    return at < 0 ? undefined : { start: this.#places[at + 2]!, end: this.#places[at + 3]! };
  }
}
