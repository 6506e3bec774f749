/**
 * Parts of a package unpacked by the browser itself, several times quicker than any script. Each is handed over as the
 * gzip file (RFC 1952) that it would be, so that the browser verifies size and checksum as well. Where it cannot, or finds
 * a part damaged, the part is left to `inflateEntry`, which says what is wrong.
 */
import { LIMITS } from "./limits.ts";
import { listed, type Opened, type OpenOptions, openPackage, openParts } from "./open.ts";
import type { ZipEntry } from "./zip.ts";

/** What was unpacked and found whole, by the name of the part. */
export type Unpacked = ReadonlyMap<string, Uint8Array>;

/** Deflated, no time, no name, by any system. */
const HEADER = Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 255);

async function unpackedEntry(bytes: Uint8Array, entry: ZipEntry): Promise<Uint8Array | undefined> {
  const end = new Uint8Array(8);
  const view = new DataView(end.buffer);
  view.setUint32(0, entry.crc, true);
  view.setUint32(4, entry.size, true);
  const { readable, writable } = new DecompressionStream("gzip");
  const writer = writable.getWriter();
  // What goes wrong, the reader is told as well.
  const ignore = () => undefined;
  for (const piece of [HEADER, bytes.slice(entry.data, entry.data + entry.packed), end])
    writer.write(piece).catch(ignore);
  writer.close().catch(ignore);
  const out = new Uint8Array(entry.size);
  const reader = readable.getReader();
  let length = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return length === entry.size ? out : undefined;
      if (length + value.length > entry.size) {
        reader.cancel().catch(ignore);
        return undefined;
      }
      out.set(value, length);
      length += value.length;
    }
  } catch {
    return undefined;
  }
}

/**
 * Unpacks the parts that are deflated.
 *
 * @param most - bytes of one part; larger ones are left
 */
export async function unpack(bytes: Uint8Array, entries: readonly ZipEntry[], most: number): Promise<Unpacked> {
  const found = new Map<string, Uint8Array>();
  const some = entries.filter(({ method, packed, size }) => method === 8 && packed > 0 && size <= most);
  await Promise.all(
    some.map(async (entry) => {
      const content = await unpackedEntry(bytes, entry);
      if (content) found.set(entry.name, content);
    }),
  );
  return found;
}

/** Opens a file as `openPackage` does, unpacked by the browser where it can: quicker, and not at once. */
export async function openUnpacked(bytes: Uint8Array, options: OpenOptions = {}): Promise<Opened> {
  if (typeof DecompressionStream === "undefined") return openPackage(bytes, options);
  const limits = { ...LIMITS, ...options.limits };
  const kept = listed(bytes, limits);
  return openParts(kept, options, await unpack(bytes, kept.entries, limits.part));
}
