/** Parts of a package and how they point to each other (ECMA-376 part 2): content types, relationships, part names. */
import { FileError } from "../model/types.ts";
import { LIMITS, type Limits } from "./limits.ts";
import { decodePart } from "./text.ts";
import type { Unpacked } from "./unpack.ts";
import { type Budget, Xml } from "./xml.ts";
import { inflateEntry, type ZipEntry } from "./zip.ts";

/** A package as it came: its bytes and where its parts are. Plain data, so it goes through to and from a worker. */
export interface KeptPackage {
  readonly bytes: Uint8Array;
  readonly entries: readonly ZipEntry[];
}

export interface Relationship {
  readonly id: string;
  /** Last step of the type's address: "worksheet", "styles", "table", … the same for both variants of the standard. */
  readonly type: string;
  /** Part name without a leading slash; the address as it is when external. */
  readonly target: string;
  readonly external: boolean;
}

/** Folder of the package's root relationships. */
const ROOT = "";

/** Resolves a target against the part that names it; `undefined` when it leaves the package. */
export function resolveTarget(source: string, target: string): string | undefined {
  let path = target.split(/[?#]/)[0]!;
  try {
    path = decodeURIComponent(path);
  } catch {
    return undefined;
  }
  if (path.includes("\\") || /^[a-z][a-z0-9+.-]*:/i.test(path)) return undefined;
  const steps = path.startsWith("/") ? [] : source.split("/").slice(0, -1);
  for (const step of path.split("/")) {
    if (step === "" || step === ".") continue;
    if (step === "..") {
      if (steps.length === 0) return undefined;
      steps.pop();
    } else steps.push(step);
  }
  return steps.join("/");
}

/** A target as seen from the part that names it: the shortest relative path. */
export function relativeTarget(source: string, target: string): string {
  const from = source.split("/").slice(0, -1);
  const to = target.split("/");
  let same = 0;
  while (same < from.length && same < to.length - 1 && from[same] === to[same]) same++;
  return [...from.slice(same).map(() => ".."), ...to.slice(same)].join("/");
}

export function relationshipsName(part: string): string {
  const cut = part.lastIndexOf("/") + 1;
  return `${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`;
}

/** Reads parts of a package. Names are compared without regard to case, as the standard says. */
export class Parts {
  readonly kept: KeptPackage;
  readonly #byName = new Map<string, ZipEntry>();
  readonly #texts = new Map<string, string>();
  readonly #limits: Limits;
  readonly #budget: Budget;
  readonly #relationships = new Map<string, Relationship[]>();
  readonly #unpacked: Unpacked;
  readonly #verified = new Set<ZipEntry>();
  #types?: { defaults: Map<string, string>; overrides: Map<string, string> };

  /** @param unpacked - parts that were unpacked and verified before */
  constructor(kept: KeptPackage, limits: Limits = LIMITS, unpacked: Unpacked = new Map()) {
    this.kept = kept;
    this.#unpacked = unpacked;
    this.#limits = limits;
    this.#budget = { left: limits.elements };
    for (const entry of kept.entries) this.#byName.set(entry.name.toLowerCase(), entry);
  }

  entry(name: string): ZipEntry | undefined {
    return this.#byName.get(name.toLowerCase());
  }

  has(name: string): boolean {
    return this.#byName.has(name.toLowerCase());
  }

  /** True for a part whose size and checksum were found right. */
  isVerified(entry: ZipEntry): boolean {
    return this.#verified.has(entry) || this.#unpacked.has(entry.name);
  }

  /** Text of a part. */
  text(name: string, hold = true): string {
    const entry = this.entry(name);
    if (!entry) throw new FileError("damaged", `This file is damaged: its part "${name}" is missing.`);
    let text = this.#texts.get(entry.name);
    if (text === undefined) {
      if (entry.size > this.#limits.part)
        throw new FileError(
          "too-large",
          `The part "${entry.name}" of this file unpacks to ${Math.round(entry.size / 2 ** 20)} MB; at most ${Math.round(this.#limits.part / 2 ** 20)} MB are read.`,
        );
      text = decodePart(this.#unpacked.get(entry.name) ?? inflateEntry(this.kept.bytes, entry), entry.name);
      this.#verified.add(entry);
      if (hold) this.#texts.set(entry.name, text);
    }
    return text;
  }

  /** @param hold - keep the text for the next time */
  xml(name: string, hold = true): Xml {
    return new Xml(this.text(name, hold), name, undefined, this.#budget);
  }

  /** Relationships of a part, or of the whole package. */
  relationships(part = ROOT): readonly Relationship[] {
    const known = this.#relationships.get(part);
    if (known) return known;
    const found = this.#readRelationships(part);
    this.#relationships.set(part, found);
    return found;
  }

  #readRelationships(part: string): Relationship[] {
    const name = part === ROOT ? "_rels/.rels" : relationshipsName(part);
    if (!this.has(name)) return [];
    const found: Relationship[] = [];
    const ids = new Set<string>();
    const xml = this.xml(name).root("Relationships");
    xml.children((child) => {
      if (child !== "Relationship") return;
      const id = xml.attribute("Id") ?? "";
      const type = xml.attribute("Type") ?? "";
      const raw = xml.attribute("Target") ?? "";
      const external = xml.attribute("TargetMode") === "External";
      if (ids.has(id)) throw xml.wrong(`has the relationship "${id}" twice`);
      ids.add(id);
      const target = external ? raw : resolveTarget(part, raw);
      if (target === undefined) throw xml.wrong(`points outside of the file ("${raw.slice(0, 80)}")`);
      found.push({ id, type: type.slice(type.lastIndexOf("/") + 1), target, external });
    });
    xml.finish();
    return found;
  }

  /** Relationship of a kind whose part is there. */
  related(part: string, type: string): string | undefined {
    return this.relationships(part).find((r) => r.type === type && !r.external && this.has(r.target))?.target;
  }

  contentType(name: string): string | undefined {
    if (!this.#types) {
      const defaults = new Map<string, string>();
      const overrides = new Map<string, string>();
      const xml = this.xml("[Content_Types].xml").root("Types");
      xml.children((child) => {
        const type = xml.attribute("ContentType") ?? "";
        if (child === "Default") defaults.set((xml.attribute("Extension") ?? "").toLowerCase(), type);
        if (child === "Override") {
          const part = resolveTarget("", xml.attribute("PartName") ?? "");
          if (part !== undefined) overrides.set(part.toLowerCase(), type);
        }
      });
      xml.finish();
      this.#types = { defaults, overrides };
    }
    const key = name.toLowerCase();
    return this.#types.overrides.get(key) ?? this.#types.defaults.get(key.slice(key.lastIndexOf(".") + 1));
  }
}
