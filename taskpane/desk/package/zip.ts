/**
 * The zip container of a workbook: its items are listed, checked and handed out, and written again. Deflate is fflate's;
 * the container is read here because each checksum has to be verified, an item must not unpack to more than it declares,
 * and items that did not change are copied as they are stored, without being packed again.
 *
 * Layout: PKWARE APPNOTE 6.3 (sections 4.3 to 4.5).
 */
import { deflateSync, Inflate } from "fflate";
import { FileError } from "../model/types.ts";
import type { Limits } from "./limits.ts";

/** One item of the container, by its central directory record. */
export interface ZipEntry {
  readonly name: string;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly crc: number;
  readonly size: number;
  readonly packed: number;
  /** Where the item's (packed) data starts in the file. */
  readonly data: number;
  /** Date and time as the container keeps them. */
  readonly time: number;
  readonly utf8: boolean;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const END64 = 0x06064b50;
const LOCATOR64 = 0x07064b50;
const FULL = 0xffffffff;
/** Deflate cannot do better than about 1,032 to 1 (RFC 1951); fed in steps this small it cannot surprise. */
const STEP = 32 * 1024;

const damaged = (what: string): FileError =>
  new FileError(
    "damaged",
    `This file is damaged: ${what}. Nothing of it was opened; ask for it again or use a backup.`,
  );

/** Four tables, so that four bytes go at once. */
const TABLES = (() => {
  const tables = [0, 1, 2, 3].map(() => new Uint32Array(256));
  const [first] = tables as [Uint32Array];
  for (let n = 0; n < 256; n++) {
    let c = n;
    for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
    first[n] = c;
  }
  for (let t = 1; t < 4; t++)
    for (let n = 0; n < 256; n++) tables[t]![n] = (tables[t - 1]![n]! >>> 8) ^ first[tables[t - 1]![n]! & 255]!;
  return tables as [Uint32Array, Uint32Array, Uint32Array, Uint32Array];
})();

/** CRC-32 of ISO 3309 as zip uses it; `before` goes on from an earlier piece. */
export function crc32(bytes: Uint8Array, before = 0): number {
  const [t0, t1, t2, t3] = TABLES;
  let c = ~before;
  let i = 0;
  for (const end = bytes.length - 3; i < end; i += 4) {
    c ^= bytes[i]! | (bytes[i + 1]! << 8) | (bytes[i + 2]! << 16) | (bytes[i + 3]! << 24);
    c = t3[c & 255]! ^ t2[(c >>> 8) & 255]! ^ t1[(c >>> 16) & 255]! ^ t0[c >>> 24]!;
  }
  for (; i < bytes.length; i++) c = t0[(c ^ bytes[i]!) & 255]! ^ (c >>> 8);
  return ~c >>> 0;
}

/** A 64-bit number of the container; one that no file can reach is refused. */
function big(view: DataView, at: number): number {
  const value = view.getUint32(at + 4, true) * 2 ** 32 + view.getUint32(at, true);
  if (!Number.isSafeInteger(value)) throw damaged("a size in its directory is impossible");
  return value;
}

/** Sizes and offset that an extra field of kind 1 holds in place of the 32-bit ones, in their fixed order. */
function wide(view: DataView, from: number, length: number, fields: number[]): number[] {
  if (!fields.includes(FULL)) return fields;
  for (let at = from; at + 4 <= from + length; ) {
    const id = view.getUint16(at, true);
    const size = view.getUint16(at + 2, true);
    let next = at + 4;
    const end = next + size;
    if (id === 1 && end <= from + length) {
      return fields.map((value) => {
        if (value !== FULL || next + 8 > end) return value;
        next += 8;
        return big(view, next - 8);
      });
    }
    at = end;
  }
  return fields;
}

/** A name that would leave the package, or that two programs could read as two different parts. */
function badName(name: string): boolean {
  return (
    name === "" ||
    name.length > 1024 ||
    /^(?:[/\\]|[A-Za-z]:)|\\/.test(name) ||
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
    /[\u0000-\u001f]/.test(name) ||
    name.split("/").some((step, i, all) => step === ".." || step === "." || (step === "" && i < all.length - 1))
  );
}

function findEnd(view: DataView): number {
  const last = view.byteLength - 22;
  for (let at = last; at >= 0 && at >= last - 0xffff; at--) {
    if (view.getUint32(at, true) === END && at + 22 + view.getUint16(at + 20, true) === view.byteLength) return at;
  }
  throw damaged("it is cut off, the list of its parts is missing");
}

/** Lists the container's items and checks that both of its directories say the same. */
export function readZip(bytes: Uint8Array, limits: Limits): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 22) throw damaged("it is cut off");
  const end = findEnd(view);
  let count = view.getUint16(end + 10, true);
  let size = view.getUint32(end + 12, true);
  let start = view.getUint32(end + 16, true);
  let limit = end;
  if (end >= 20 && view.getUint32(end - 20, true) === LOCATOR64) {
    const at = big(view, end - 12);
    if (at + 56 > end - 20 || view.getUint32(at, true) !== END64) throw damaged("its directory cannot be found");
    count = big(view, at + 32);
    size = big(view, at + 40);
    start = big(view, at + 48);
    limit = at;
  } else if (view.getUint16(end + 4, true) !== 0 || view.getUint16(end + 8, true) !== count) {
    throw damaged("it is one piece of a file in several pieces");
  }
  if (start + size !== limit) throw damaged("the list of its parts is not where it should be");
  if (count > limits.parts)
    throw new FileError("too-large", `This file has ${count} parts; at most ${limits.parts} are read.`);

  const entries: ZipEntry[] = [];
  const spans: [number, number][] = [];
  const names = new Set<string>();
  let inflated = 0;
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + 46 > limit || view.getUint32(at, true) !== CENTRAL) throw damaged("the list of its parts is broken");
    const flags = view.getUint16(at + 8, true);
    const method = view.getUint16(at + 10, true);
    const time = view.getUint32(at + 12, true);
    const crc = view.getUint32(at + 16, true);
    const nameLength = view.getUint16(at + 28, true);
    const extra = view.getUint16(at + 30, true);
    const note = view.getUint16(at + 32, true);
    const next = at + 46 + nameLength + extra + note;
    if (next > limit) throw damaged("the list of its parts is broken");
    const [full, packed, local] = wide(view, at + 46 + nameLength, extra, [
      view.getUint32(at + 24, true),
      view.getUint32(at + 20, true),
      view.getUint32(at + 42, true),
    ]) as [number, number, number];
    const raw = bytes.subarray(at + 46, at + 46 + nameLength);
    const utf8 = (flags & 0x800) !== 0;
    const name = new TextDecoder(utf8 ? "utf-8" : "latin1").decode(raw);
    at = next;
    if ((flags & 0x41) !== 0)
      throw new FileError("encrypted", "This file has a password. Save it without one first, then open it again.");
    if (badName(name)) throw damaged(`a part has the name "${name.slice(0, 80)}", which is not allowed`);
    const key = name.toLowerCase();
    if (names.has(key)) throw damaged(`the part "${name}" is in it twice`);
    names.add(key);
    if (method !== 0 && method !== 8)
      throw new FileError("unsupported", `The part "${name}" is packed in a way that workbooks do not use.`);

    // The item's own header has to agree.
    if (local + 30 > start || view.getUint32(local, true) !== LOCAL)
      throw damaged(`the part "${name}" is not where it should be`);
    const ownName = view.getUint16(local + 26, true);
    const ownExtra = view.getUint16(local + 28, true);
    const data = local + 30 + ownName + ownExtra;
    if (data + packed > start) throw damaged(`the part "${name}" is cut off`);
    const ownFlags = view.getUint16(local + 6, true);
    const same =
      ownName === nameLength &&
      raw.every((byte, k) => byte === bytes[local + 30 + k]) &&
      view.getUint16(local + 8, true) === method &&
      (ownFlags & 0x41) === 0;
    const [ownFull, ownPacked] = wide(view, local + 30 + ownName, ownExtra, [
      view.getUint32(local + 22, true),
      view.getUint32(local + 18, true),
    ]) as [number, number];
    const ownCrc = view.getUint32(local + 14, true);
    const later = (ownFlags & 8) !== 0;
    const agrees = (own: number, value: number) => own === value || (later && (own === 0 || own === FULL));
    if (!same || !agrees(ownFull, full) || !agrees(ownPacked, packed) || !agrees(ownCrc, crc))
      throw damaged(`the part "${name}" is described in two different ways`);
    if (method === 0 && packed !== full) throw damaged(`the part "${name}" has two different sizes`);
    inflated += full;
    if (inflated > limits.inflated)
      throw new FileError(
        "too-large",
        `This file unpacks to more than ${Math.round(limits.inflated / 2 ** 20)} MB, which is more than the desk takes.`,
      );
    spans.push([local, data + packed]);
    entries.push({ name, method, crc, size: full, packed, data, time, utf8 });
  }
  if (at !== limit) throw damaged("the list of its parts has the wrong length");
  spans.sort((a, b) => a[0] - b[0]);
  for (let i = 1; i < spans.length; i++)
    if (spans[i]![0] < spans[i - 1]![1]) throw damaged("two of its parts lie over each other");
  return entries;
}

/**
 * Unpacks one item and verifies size and checksum.
 *
 * @param keep - false: only verified, nothing is held in memory
 */
export function inflateEntry(bytes: Uint8Array, entry: ZipEntry, keep = true): Uint8Array {
  const wrong = () => damaged(`the checksum of its part "${entry.name}" does not fit, so its content has changed`);
  const packed = bytes.subarray(entry.data, entry.data + entry.packed);
  if (entry.method === 0) {
    if (crc32(packed) !== entry.crc) throw wrong();
    return packed;
  }
  const out = new Uint8Array(keep ? entry.size : 0);
  let length = 0;
  let crc = 0;
  let ended = false;
  const stream = new Inflate((piece, final) => {
    if (length + piece.length > entry.size) throw wrong();
    if (keep) out.set(piece, length);
    length += piece.length;
    crc = crc32(piece, crc);
    ended ||= final;
  });
  try {
    for (let at = 0; at < packed.length && !ended; at += STEP)
      stream.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
  } catch (problem) {
    if (problem instanceof FileError) throw problem;
    throw wrong();
  }
  if (length !== entry.size || crc !== entry.crc) throw wrong();
  return out;
}

/** An item to write: kept as it is stored, or new content. */
export type Item =
  | { readonly name: string; readonly kept: ZipEntry }
  | { readonly name: string; readonly content: Uint8Array };

/** Level 3 packs a plan of 2,000 rows in half the time of the usual 6 and is a tenth larger (measured). */
const LEVEL = 3;
/** 1 January 1980: nothing of the person's clock goes into the file. */
const NO_TIME = 0x00210000;

/** Writes the container; items that are kept are copied in their packed form. */
export function writeZip(bytes: Uint8Array, items: readonly Item[]): Uint8Array {
  const made = items.map((item) => {
    if ("kept" in item) {
      const { kept } = item;
      const data = bytes.subarray(kept.data, kept.data + kept.packed);
      return { ...kept, raw: encodeName(kept.name, kept.utf8), content: data };
    }
    const packed = deflateSync(item.content, { level: LEVEL });
    const stored = packed.length >= item.content.length;
    return {
      raw: encodeName(item.name, true),
      utf8: true,
      method: stored ? 0 : 8,
      crc: crc32(item.content),
      size: item.content.length,
      packed: stored ? item.content.length : packed.length,
      time: NO_TIME,
      content: stored ? item.content : packed,
    };
  });
  const total = made.reduce((sum, m) => sum + 30 + 46 + 2 * m.raw.length + m.content.length, 22);
  const out = new Uint8Array(total);
  const view = new DataView(out.buffer);
  let at = 0;
  const common = (m: (typeof made)[number]) => {
    view.setUint16(at, 20, true);
    view.setUint16(at + 2, m.utf8 ? 0x800 : 0, true);
    view.setUint16(at + 4, m.method, true);
    view.setUint32(at + 6, m.time, true);
    view.setUint32(at + 10, m.crc, true);
    view.setUint32(at + 14, m.packed, true);
    view.setUint32(at + 18, m.size, true);
    view.setUint16(at + 22, m.raw.length, true);
    at += 26;
  };
  const starts = made.map((m) => {
    const start = at;
    view.setUint32(at, LOCAL, true);
    at += 4;
    common(m);
    out.set(m.raw, start + 30);
    out.set(m.content, start + 30 + m.raw.length);
    at = start + 30 + m.raw.length + m.content.length;
    return start;
  });
  const directory = at;
  made.forEach((m, i) => {
    const start = at;
    view.setUint32(at, CENTRAL, true);
    view.setUint16(at + 4, 20, true);
    at += 6;
    common(m);
    view.setUint32(start + 42, starts[i]!, true);
    out.set(m.raw, start + 46);
    at = start + 46 + m.raw.length;
  });
  view.setUint32(at, END, true);
  view.setUint16(at + 8, made.length, true);
  view.setUint16(at + 10, made.length, true);
  view.setUint32(at + 12, at - directory, true);
  view.setUint32(at + 16, directory, true);
  return out;
}

function encodeName(name: string, utf8: boolean): Uint8Array {
  return utf8 ? new TextEncoder().encode(name) : Uint8Array.from(name, (ch) => ch.charCodeAt(0));
}
