/** A package being changed: texts of parts as they are now, parts that came and went, how they point to each other. */
import { type Parts, relationshipsName, relativeTarget } from "./parts.ts";
import { encodePart } from "./text.ts";
import {
  changedRelationships,
  changedTypes,
  EMPTY_RELATIONSHIPS,
  freeId,
  idsIn,
  type NewRelationship,
} from "./workbook-write.ts";
import { type Item, writeZip } from "./zip.ts";

export class Draft {
  readonly #parts: Parts;
  readonly #texts = new Map<string, string>();
  readonly #new = new Map<string, string>();
  readonly #dropped = new Set<string>();
  readonly #types: { part: string; type: string }[] = [];
  readonly #relationships = new Map<string, { add: NewRelationship[]; drop: Set<string> }>();

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  /** The package with everything that changed. */
  written(): Uint8Array {
    for (const [part, { add, drop }] of this.#relationships) {
      const name = part === "" ? "_rels/.rels" : relationshipsName(part);
      this.put(name, changedRelationships(this.textOr(name, EMPTY_RELATIONSHIPS), name, add, drop));
    }
    if (this.#types.length > 0 || this.#dropped.size > 0) {
      const name = "[Content_Types].xml";
      this.put(name, changedTypes(this.text(name), this.#types, this.#dropped));
    }
    return this.#packed();
  }

  #packed(): Uint8Array {
    const { kept } = this.#parts;
    const items: Item[] = [];
    for (const entry of kept.entries) {
      const key = entry.name.toLowerCase();
      if (this.#dropped.has(key)) continue;
      const text = this.#texts.get(key);
      if (text === undefined) items.push({ name: entry.name, kept: entry });
      else items.push({ name: entry.name, content: encodePart(text) });
    }
    for (const [name, text] of this.#new) items.push({ name, content: encodePart(text) });
    return writeZip(kept.bytes, items);
  }

  /** A part's text as it is now. */
  text(part: string): string {
    return this.#texts.get(part.toLowerCase()) ?? this.#new.get(part) ?? this.#parts.text(part);
  }

  /** The same, with what to take where there is no such part. */
  textOr(part: string, otherwise: string): string {
    return this.#texts.has(part.toLowerCase()) || this.#new.has(part) || this.#parts.has(part)
      ? this.text(part)
      : otherwise;
  }

  /** Holds a part's new text, when it is a new one. */
  put(part: string, text: string): void {
    if (!this.#parts.has(part)) this.#new.set(part, text);
    else if (text !== this.#parts.text(part)) this.#texts.set(part.toLowerCase(), text);
    else this.#texts.delete(part.toLowerCase());
  }

  #relationshipsOf(part: string): { add: NewRelationship[]; drop: Set<string> } {
    const found = this.#relationships.get(part) ?? { add: [], drop: new Set<string>() };
    this.#relationships.set(part, found);
    return found;
  }

  /** Adds a relationship and returns its id. */
  relate(part: string, type: string, target: string): string {
    const own = this.#relationshipsOf(part);
    const name = relationshipsName(part);
    const used = [...(this.#parts.has(name) ? idsIn(this.#parts.text(name)) : []), ...own.add.map((r) => r.id)];
    const id = freeId(used, "rIdDesk");
    own.add.push({ id, type, target: relativeTarget(part, target) });
    return id;
  }

  /** A part name that is not used yet. */
  freePart(folder: string, stem: string): string {
    for (let n = 1; ; n++) {
      const name = `${folder}${stem}${n}.xml`;
      if (!this.#parts.has(name) && !this.#new.has(name)) return name;
    }
  }

  /** Adds a part of a kind. */
  add(part: string, type: string, text: string): void {
    this.#types.push({ part, type });
    this.#new.set(part, text);
  }

  /** Takes a part out, with the relationship that names it. */
  drop(source: string, relationship: string, part: string): void {
    this.#relationshipsOf(source).drop.add(relationship);
    this.#dropped.add(part.toLowerCase());
  }
}
