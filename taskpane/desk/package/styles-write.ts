/** New looks at the end of a file's styles; what stands there already is not changed. */
import { FileError } from "../model/types.ts";
import type { Look } from "./replay.ts";
import { BUILT_IN } from "./styles-read.ts";
import { escapeAttribute, type Patch, patched } from "./text.ts";
import { Xml } from "./xml.ts";

interface Section {
  readonly openStart: number;
  readonly openEnd: number;
  readonly closeStart: number;
  readonly end: number;
  readonly empty: boolean;
  readonly items: string[];
  added: string[];
}

/** Fill and ink of our looks: the verdict colours of the desk's own sheets. */
export const LOOKS: Readonly<
  Record<Look, { readonly fill?: string; readonly ink?: string; readonly bold?: boolean; readonly wrap?: boolean }>
> = {
  heading: { fill: "FFE4E9EE", ink: "FF1D2733", bold: true, wrap: true },
  ok: { fill: "FFDCEFE0", ink: "FF14532A" },
  check: { fill: "FFFBEAC2", ink: "FF6A4A00" },
  stop: { fill: "FFF8D7D4", ink: "FF8A1410" },
  page: { wrap: true },
};
const MOST_FORMATS = 65_490;

export class StyleBook {
  readonly #text: string;
  readonly #prefix: string;
  readonly #sections = new Map<string, Section>();
  readonly #formats = new Map<string, number>();
  readonly #made = new Map<string, number>();
  readonly #root: { openEnd: number };
  #nextFormat = 164;

  constructor(text: string, part: string) {
    this.#text = text;
    const xml = new Xml(text, part).root("styleSheet");
    this.#prefix = xml.prefix;
    this.#root = { openEnd: xml.end };
    for (const [id, code] of Object.entries(BUILT_IN)) this.#formats.set(code, Number(id));
    xml.children((name) => {
      if (!["numFmts", "fonts", "fills", "cellXfs"].includes(name)) return;
      const { start: openStart, end: openEnd, empty } = xml;
      const items: string[] = [];
      xml.children((item) => {
        const { start, depth, end, empty: alone } = xml;
        if (item === "numFmt") {
          const id = Number(xml.attribute("numFmtId"));
          this.#nextFormat = Math.max(this.#nextFormat, id + 1);
          this.#formats.set(xml.attribute("formatCode") ?? "", id);
        }
        while (xml.depth >= depth) xml.next();
        items.push(text.slice(start, alone ? end : xml.end));
      });
      this.#sections.set(name, {
        openStart,
        openEnd,
        closeStart: empty ? openEnd : xml.start,
        end: empty ? openEnd : xml.end,
        empty,
        items,
        added: [],
      });
    });
    if (!this.#sections.get("cellXfs")?.items.length) throw xml.wrong("has no cell formats");
  }

  get changed(): boolean {
    return [...this.#sections.values()].some((section) => section.added.length > 0);
  }

  #add(name: string, item: string): number {
    const section = this.#sections.get(name) ?? {
      openStart: this.#root.openEnd,
      openEnd: this.#root.openEnd,
      closeStart: this.#root.openEnd,
      end: this.#root.openEnd,
      empty: true,
      items: [],
      added: [],
    };
    this.#sections.set(name, section);
    section.added.push(item);
    return section.items.length + section.added.length - 1;
  }

  #formatId(code: string): number {
    const known = this.#formats.get(code);
    if (known !== undefined) return known;
    const id = this.#nextFormat++;
    this.#formats.set(code, id);
    this.#add("numFmts", `<${this.#prefix}numFmt numFmtId="${id}" formatCode="${escapeAttribute(code)}"/>`);
    return id;
  }

  /** Index of a look like the one at `base`, with another number format or a look of ours. */
  variant(
    base: number,
    change: { readonly numberFormat?: string; readonly look?: Look; readonly unlocked?: boolean },
  ): number {
    const { numberFormat, look, unlocked } = change;
    if (numberFormat === undefined && look === undefined && !unlocked) return base;
    const key = JSON.stringify([base, numberFormat, look, unlocked]);
    const before = this.#made.get(key);
    if (before !== undefined) return before;
    const p = this.#prefix;
    const xfs = this.#sections.get("cellXfs")!;
    const all = [...xfs.items, ...xfs.added];
    let xf = all[base] ?? all[0]!;
    const set = (name: string, value: string | number) => {
      const tag = /^<[^>]*>/.exec(xf)![0];
      const pattern = new RegExp(`(\\s${name}\\s*=\\s*)(?:"[^"]*"|'[^']*')`);
      const next = pattern.test(tag)
        ? tag.replace(pattern, `$1"${value}"`)
        : tag.replace(/\s*(\/?)>$/, ` ${name}="${value}"$1>`);
      xf = next + xf.slice(tag.length);
    };
    if (numberFormat !== undefined) {
      set("numFmtId", this.#formatId(numberFormat || "General"));
      set("applyNumberFormat", 1);
    }
    const { fill, ink, bold, wrap } = look ? LOOKS[look] : {};
    if (fill) {
      const item = `<${p}fill><${p}patternFill patternType="solid"><${p}fgColor rgb="${fill}"/></${p}patternFill></${p}fill>`;
      set("fillId", this.#once("fills", item));
      set("applyFill", 1);
    }
    if (ink || bold) {
      const face = `${ink ? `<${p}color rgb="${ink}"/>` : ""}`;
      const item = `<${p}font>${bold ? `<${p}b/>` : ""}<${p}sz val="11"/>${face}<${p}name val="Arial"/></${p}font>`;
      set("fontId", this.#once("fonts", item));
      set("applyFont", 1);
    }
    const children: string[] = [];
    if (wrap) {
      set("applyAlignment", 1);
      children.push(`<${p}alignment vertical="top" wrapText="1"/>`);
    }
    if (unlocked) {
      set("applyProtection", 1);
      children.push(`<${p}protection locked="0"/>`);
    }
    if (children.length > 0) xf = `${/^<[^>]*>/.exec(xf)![0].replace(/\s*\/?>$/, "")}>${children.join("")}</${p}xf>`;
    // Over the limit of the format no program would open the file.
    if (all.length >= MOST_FORMATS)
      throw new FileError("unsupported", "This file has as many cell formats as a file can have.");
    const index = this.#add("cellXfs", xf);
    this.#made.set(key, index);
    return index;
  }

  #once(name: string, item: string): number {
    const section = this.#sections.get(name);
    const at = section?.added.indexOf(item) ?? -1;
    return at >= 0 ? section!.items.length + at : this.#add(name, item);
  }

  result(): string {
    const p = this.#prefix;
    const patches: Patch[] = [];
    for (const [name, section] of this.#sections) {
      if (section.added.length === 0) continue;
      const count = section.items.length + section.added.length;
      const added = section.added.join("");
      if (section.empty) {
        const text = `<${p}${name} count="${count}">${added}</${p}${name}>`;
        patches.push({ start: section.openStart, end: section.openEnd, text });
        continue;
      }
      const tag = this.#text.slice(section.openStart, section.openEnd);
      const counted = tag.replace(/(\scount\s*=\s*["'])[^"']*/, `$1${count}`);
      if (counted !== tag) patches.push({ start: section.openStart, end: section.openEnd, text: counted });
      patches.push({ start: section.closeStart, end: section.closeStart, text: added });
    }
    return patched(this.#text, patches);
  }
}
