/**
 * Reads a part's XML as a stream of tags with their places in the text. It is our own, and not a general parser, because
 * saving replaces single spans of the text and leaves every other character alone, for which each element's first and
 * last character must be known; and because one pass over a plan of 2,000 rows has to take a tenth of a second.
 *
 * By XML 1.0 (fifth edition), Namespaces in XML 1.0, and ECMA-376 part 3 (markup compatibility). A document type is
 * refused as ECMA-376 part 2 asks, so no entities of a file's own exist.
 */
import { FileError } from "../model/types.ts";
import { resolveReferences, SHORT, UNDERSTOOD } from "./namespaces.ts";
import { Attributes } from "./xml-attributes.ts";

export const Kind = { open: 1, close: 2, text: 3, end: 4 } as const;
export type Kind = (typeof Kind)[keyof typeof Kind];

const MAX_DEPTH = 200;

export interface Budget {
  left: number;
}
export interface Piece {
  readonly from: number;
  readonly to: number;
  readonly prefixes: ReadonlyMap<string, string>;
}

interface Open {
  readonly qname: string;
  /** Wrappers of alternatives are not seen by who reads. */
  readonly hidden: boolean;
  /** Prefixes as they were outside of this element, when it declares some. */
  readonly outer?: ReadonlyMap<string, string>;
  /** For an alternative: whether one was taken already. */
  taken?: boolean;
}

export class Xml {
  readonly text: string;
  /** What the sentence of an error calls this part. */
  readonly part: string;
  kind: Kind = Kind.text;
  /** Name with the short name of its namespace before it, or "{namespace}name". */
  name = "";
  /** Place of the token in the text. */
  start = 0;
  end = 0;
  /** True on the opening tag of an element written as one tag. */
  empty = false;
  /** Elements around (and with) the one just opened. */
  depth = 0;
  #pos = 0;
  #stack: Open[] = [];
  #prefixes: ReadonlyMap<string, string> = new Map([["xml", "http://www.w3.org/XML/1998/namespace"]]);
  #names = new Map<string, string>();
  #pendingClose = false;
  #seenRoot = false;
  readonly #attributes: Attributes;

  readonly #limit: number;
  readonly #fragment: boolean;
  readonly #budget: Budget | undefined;

  /**
   * @param piece - a piece of a part, with the prefixes that hold there; it may have several elements side by side
   * @param budget - counts elements down, so that no file can keep the reader busy for long
   */
  constructor(text: string, part: string, piece?: Piece, budget?: Budget) {
    this.text = text;
    this.#budget = budget;
    this.part = part;
    this.#attributes = new Attributes(text, (what) => this.wrong(what));
    this.#pos = piece ? piece.from : text.charCodeAt(0) === 0xfeff ? 1 : 0;
    this.#limit = piece ? piece.to : text.length;
    this.#fragment = piece !== undefined;
    if (piece) this.#prefixes = piece.prefixes;
  }

  /** Prefixes and their namespaces where the reader is. */
  get prefixes(): ReadonlyMap<string, string> {
    return this.#prefixes;
  }

  /** Goes on reading at a later place of the same element. */
  jump(to: number): void {
    this.#pos = to;
  }

  /**
   * Reads whole elements in one look, where they stand next and are written as the (sticky) pattern says: without other
   * prefixes, comments and the like.
   */
  take(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.#pos;
    const found = pattern.exec(this.text);
    if (found === null || pattern.lastIndex > this.#limit) return null;
    this.#pos = pattern.lastIndex;
    return found;
  }

  /** Counts elements that were read. */
  spend(elements: number): void {
    if (!this.#budget) return;
    this.#budget.left -= elements;
    if (this.#budget.left < 0) throw new FileError("too-large", "This file has more in it than the desk can read.");
  }

  wrong(what: string): FileError {
    return new FileError("damaged", `This file is damaged: its part "${this.part}" ${what}.`);
  }

  /** The next tag or text that the reader is meant to see. */
  next(): Kind {
    for (;;) {
      const kind = this.#raw();
      if (kind !== Kind.open || !this.name.startsWith("mc:")) {
        if (kind === Kind.close && this.#wasHidden) continue;
        return kind;
      }
      const top = this.#stack.at(-1)!;
      if (this.name === "mc:AlternateContent") this.#hide(top);
      else if (this.name === "mc:Choice" || this.name === "mc:Fallback") {
        const around = this.#stack.at(-2);
        const take = around !== undefined && !around.taken && (this.name === "mc:Fallback" || this.#canRead());
        if (take) {
          around.taken = true;
          this.#hide(top);
        } else {
          const depth = this.#stack.length;
          while (this.#stack.length >= depth) if (this.#raw() === Kind.end) return Kind.end;
        }
      } else return kind;
    }
  }

  #wasHidden = false;

  #hide(top: Open): void {
    this.#stack[this.#stack.length - 1] = { ...top, hidden: true };
    this.depth--;
  }

  #canRead(): boolean {
    const requires = (this.attribute("Requires") ?? "").trim();
    return requires !== "" && requires.split(/\s+/).every((prefix) => this.#understood(prefix));
  }

  #understood(prefix: string): boolean {
    const short = SHORT[this.#prefixes.get(prefix) ?? "?"];
    return short !== undefined && UNDERSTOOD.has(short);
  }

  #raw(): Kind {
    this.#wasHidden = false;
    if (this.#pendingClose) {
      this.#pendingClose = false;
      return this.#close();
    }
    const { text } = this;
    for (;;) {
      const at = this.#pos;
      if (at >= this.#limit) {
        if (this.#stack.length > 0 || !(this.#seenRoot || this.#fragment)) throw this.wrong("ends too early");
        this.start = this.end = this.#limit;
        this.kind = Kind.end;
        return Kind.end;
      }
      if (text.charCodeAt(at) !== 60) {
        let stop = text.indexOf("<", at);
        if (stop < 0) stop = text.length;
        this.#pos = stop;
        if (this.#stack.length === 0 && !this.#fragment) {
          if (text.slice(at, stop).trim() !== "") throw this.wrong("has text outside of its elements");
          continue;
        }
        return this.#found(Kind.text, at, stop);
      }
      const code = text.charCodeAt(at + 1);
      if (code === 47) return this.#closeTag(at);
      if (code === 33) {
        if (text.startsWith("<!--", at)) this.#skip("-->", at + 4);
        else if (text.startsWith("<![CDATA[", at) && this.#stack.length > 0) {
          this.#skip("]]>", at + 9);
          return this.#found(Kind.text, at, this.#pos);
        } else throw this.wrong("has a document type, which workbooks must not have");
        continue;
      }
      if (code === 63) {
        this.#skip("?>", at + 2);
        continue;
      }
      return this.#openTag(at);
    }
  }

  #found(kind: Kind, start: number, end: number): Kind {
    this.start = start;
    this.end = end;
    this.kind = kind;
    return kind;
  }

  #skip(mark: string, from: number): void {
    const at = this.text.indexOf(mark, from);
    if (at < 0) throw this.wrong("ends too early");
    this.#pos = at + mark.length;
  }

  #openTag(at: number): Kind {
    const { text } = this;
    let pos = at + 1;
    let c = text.charCodeAt(pos);
    while (c > 32 && c !== 47 && c !== 62 && c !== 61 && c !== 60) c = text.charCodeAt(++pos);
    const qname = text.slice(at + 1, pos);
    if (qname === "") throw this.wrong("has a tag without a name");
    const attributes = this.#attributes;
    pos = attributes.scan(pos);
    this.empty = attributes.empty;
    this.#pos = pos;
    this.spend(1);
    if (this.#stack.length >= MAX_DEPTH) throw this.wrong("is nested too deeply");
    if (this.#stack.length === 0) {
      if (this.#seenRoot && !this.#fragment) throw this.wrong("has two documents in it");
      this.#seenRoot = true;
    }
    let outer: ReadonlyMap<string, string> | undefined;
    if (attributes.declares) {
      outer = this.#prefixes;
      this.#prefixes = attributes.prefixes(outer);
      this.#names = new Map();
    }
    attributes.checkTwice();
    this.#stack.push(outer ? { qname, hidden: false, outer } : { qname, hidden: false });
    this.depth++;
    this.name = this.#resolved(qname);
    this.#pendingClose = this.empty;
    if (this.depth === 1 && !this.#fragment) this.#must();
    return this.#found(Kind.open, at, this.#pos);
  }

  #must(): void {
    const must = this.attribute("mc:MustUnderstand");
    const unknown = must
      ?.trim()
      .split(/\s+/)
      .find((prefix) => prefix !== "" && !this.#understood(prefix));
    if (unknown)
      throw new FileError(
        "unsupported",
        `This file says that its part "${this.part}" may only be read by programs that know "${this.#prefixes.get(unknown) ?? unknown}"; the desk does not.`,
      );
  }

  #resolved(qname: string): string {
    let name = this.#names.get(qname);
    if (name === undefined) {
      const colon = qname.indexOf(":");
      const uri = this.#prefixes.get(colon < 0 ? "" : qname.slice(0, colon)) ?? (colon < 0 ? "" : undefined);
      if (uri === undefined)
        throw this.wrong(`uses the prefix of "${qname.slice(0, 60)}" without saying what it means`);
      const short = uri === "" ? "{}" : SHORT[uri];
      name = (short ?? `{${uri}}`) + qname.slice(colon + 1);
      this.#names.set(qname, name);
    }
    return name;
  }

  #closeTag(at: number): Kind {
    const stop = this.text.indexOf(">", at);
    if (stop < 0) throw this.wrong("ends too early");
    const top = this.#stack.at(-1);
    const name = this.text.slice(at + 2, stop);
    if (!top || (name !== top.qname && name.trimEnd() !== top.qname)) throw this.wrong("has tags that do not match");
    this.#pos = stop + 1;
    this.start = at;
    this.end = stop + 1;
    return this.#close();
  }

  #close(): Kind {
    const top = this.#stack.pop()!;
    this.name = this.#resolved(top.qname);
    this.#wasHidden = top.hidden;
    if (!top.hidden) this.depth--;
    if (top.outer) {
      this.#prefixes = top.outer;
      this.#names = new Map();
    }
    this.kind = Kind.close;
    return Kind.close;
  }

  /** An attribute of the tag just opened; a name with a prefix uses the short names of namespaces. */
  attribute(name: string): string | undefined {
    return this.#attributes.value(name, this.#prefixes);
  }

  /** Where an attribute's value stands in the text. */
  attributeAt(name: string): { readonly start: number; readonly end: number } | undefined {
    return this.#attributes.place(name, this.#prefixes);
  }

  /** The prefix, with its colon, that the text uses for the element just opened. */
  get prefix(): string {
    const qname = this.#stack.at(-1)?.qname ?? "";
    return qname.slice(0, qname.indexOf(":") + 1);
  }

  /** Visits each child of the element just opened; what `visit` does not read of a child is passed over. */
  children(visit: (name: string) => void): void {
    const { depth } = this;
    for (;;) {
      const kind = this.next();
      if (kind === Kind.close && this.depth < depth) return;
      if (kind === Kind.end) throw this.wrong("ends too early");
      if (kind !== Kind.open) continue;
      const inside = this.depth;
      visit(this.name);
      while (this.depth >= inside) if (this.next() === Kind.end) throw this.wrong("ends too early");
    }
  }

  /** Opens the root, which must have one of these names. */
  root(...names: string[]): this {
    while (this.next() !== Kind.open) if (this.kind === Kind.end) throw this.wrong("is empty");
    if (!names.includes(this.name))
      throw this.wrong(`starts with "${this.name.slice(0, 80)}" instead of "${names[0]}"`);
    return this;
  }

  /** Reads the rest, so that a part that is broken at its end is found. */
  finish(): void {
    while (this.kind !== Kind.end) this.next();
  }

  /** Text of the element just opened, with that of its children left out. */
  content(): string {
    const { depth } = this;
    let out = "";
    for (;;) {
      const kind = this.next();
      if (kind === Kind.end) throw this.wrong("ends too early");
      if (kind === Kind.close && this.depth < depth) return out;
      if (kind === Kind.text && this.depth === depth) out += this.tokenText();
    }
  }

  /** The text token just read. */
  tokenText(): string {
    const raw = this.text.slice(this.start, this.end);
    if (raw.startsWith("<![CDATA[")) return raw.slice(9, -3).replace(/\r\n?/g, "\n");
    return this.resolved(raw);
  }

  /** Text of the part with its references resolved. */
  resolved(raw: string): string {
    if (!/[&\r]/.test(raw)) return raw;
    const value = resolveReferences(raw.replace(/\r\n?/g, "\n"));
    if (value === undefined) throw this.wrong("uses an entity of its own, which workbooks must not have");
    return value;
  }
}
