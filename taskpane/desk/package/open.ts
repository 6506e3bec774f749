/** Opens a workbook file: what the desk shows of it, and the package as it came. No DOM; runs in a worker. */

import { readArea } from "../model/address.ts";
import { type Book, FileError, type Sheet } from "../model/types.ts";
import { pivotArea } from "./anchors.ts";
import { keptOfBook, keptOfSheet } from "./kept-words.ts";
import { refuseOther } from "./kinds.ts";
import { LIMITS, type Limits } from "./limits.ts";
import { type KeptPackage, Parts } from "./parts.ts";
import { readSettings } from "./settings.ts";
import { readSheet } from "./sheet-read.ts";
import { readStrings } from "./strings.ts";
import { readStyles, readTheme } from "./styles-read.ts";
import { readTables } from "./tables-read.ts";
import type { Unpacked } from "./unpack.ts";
import { dynamicMarks, readWorkbook, shownNames } from "./workbook-read.ts";
import { inflateEntry, readZip } from "./zip.ts";

export interface Opened {
  readonly book: Book;
  readonly kept: KeptPackage;
}

export interface OpenOptions {
  readonly signal?: AbortSignal;
  /** Called with the share that is done, 0 to 1. */
  readonly onProgress?: (done: number) => void;
  readonly limits?: Partial<Limits>;
}

/** The parts of a file, when it is a package at all. */
export function listed(bytes: Uint8Array, limits: Limits): KeptPackage {
  refuseOther(bytes);
  return { bytes, entries: readZip(bytes, limits) };
}

/**
 * Opens an .xlsx or .xlsm file.
 *
 * @throws FileError with a sentence for the person: no workbook, encrypted, damaged, too large, cancelled
 */
export function openPackage(bytes: Uint8Array, options: OpenOptions = {}): Opened {
  return openParts(listed(bytes, { ...LIMITS, ...options.limits }), options);
}

/** @param unpacked - parts that were unpacked and verified before */
export function openParts(kept: KeptPackage, options: OpenOptions, unpacked?: Unpacked): Opened {
  const { bytes } = kept;
  const limits = { ...LIMITS, ...options.limits };
  const { signal, onProgress } = options;
  const proceed = (done: number) => {
    if (signal?.aborted) throw new FileError("cancelled", "Opening was cancelled.");
    onProgress?.(done);
  };
  proceed(0);
  const parts = new Parts(kept, limits, unpacked);
  const info = readWorkbook(parts);
  // Every checksum is verified, of parts that are only kept as well: a flipped bit must not be handed on as good.
  const total = kept.entries.reduce((sum, entry) => sum + entry.size, 0) || 1;
  let verified = 0;
  const read = new Set(info.sheets.map((sheet) => sheet.part.toLowerCase()));
  for (const entry of kept.entries) {
    verified += entry.size;
    if (read.has(entry.name.toLowerCase()) || parts.isVerified(entry)) continue;
    inflateEntry(bytes, entry, false);
    proceed((0.3 * verified) / total);
  }

  const themePart = parts.related(info.part, "theme");
  const stylesPart = parts.related(info.part, "styles");
  const stringsPart = parts.related(info.part, "sharedStrings");
  const styles = stylesPart
    ? readStyles(parts.xml(stylesPart), themePart ? readTheme(parts.xml(themePart)) : [])
    : [{ numberFormat: "General" }];
  const strings = stringsPart ? readStrings(parts.xml(stringsPart)) : [];
  const marks = dynamicMarks(parts, info);
  proceed(0.35);

  let cells = 0;
  let done = 0;
  const shown = info.sheets.filter((sheet) => sheet.type === "worksheet");
  for (const other of info.sheets) {
    const entry = parts.entry(other.part);
    if (other.type !== "worksheet" && entry && !parts.isVerified(entry)) inflateEntry(bytes, entry, false);
  }
  const size = shown.reduce((sum, sheet) => sum + (parts.entry(sheet.part)?.size ?? 0), 0) || 1;
  const tableParts = new Set<string>();
  const sheets = shown.map((entry): Sheet => {
    let rows = 0;
    const content = readSheet(parts.xml(entry.part, false), {
      limits,
      sheet: entry.name,
      strings,
      styles: styles.length,
      date1904: info.date1904,
      dynamic: (cm) => marks.has(cm),
      count: (more) => {
        cells += more;
        if (cells > limits.cells)
          throw new FileError(
            "too-large",
            `This workbook has more than ${limits.cells.toLocaleString("en")} filled cells, which is more than the desk takes.`,
          );
        if (++rows % 500 === 0) proceed(0.35 + (0.6 * done) / size);
      },
    });
    done += parts.entry(entry.part)?.size ?? 0;
    proceed(0.35 + (0.6 * done) / size);
    const fixed = pivotAreas(parts, entry.part);
    const tables = readTables(parts, entry.part, content.tableIds, tableParts);
    return {
      name: entry.name,
      state: entry.state,
      cells: content.cells,
      widths: content.widths,
      hiddenColumns: content.hiddenColumns,
      hiddenRows: content.hiddenRows,
      frozen: content.frozen,
      merges: content.merges,
      choices: content.choices,
      tables: tables.map(({ part: _, ...table }) => table),
      protected: content.protected,
      ...(fixed.length > 0 ? { fixed } : {}),
      kept: [...new Set([...keptOfSheet(parts, entry.part), ...content.kept])],
    };
  });
  const others = info.sheets.filter((sheet) => sheet.type === "other").map((sheet) => sheet.name);
  const activeName = info.sheets[info.active]?.name;
  const active = sheets.findIndex((sheet) => sheet.name === activeName);
  const visible = sheets.findIndex((sheet) => sheet.state === "visible");
  const book: Book = {
    sheets,
    active: active >= 0 && sheets[active]!.state === "visible" ? active : Math.max(0, visible),
    styles,
    names: shownNames(info),
    date1904: info.date1904,
    kept: keptOfBook(parts, info.part, others),
    settings: readSettings(parts),
  };
  proceed(1);
  return { book, kept };
}

/** Where pivot tables stand on a sheet. */
function pivotAreas(parts: Parts, sheet: string): NonNullable<Sheet["fixed"]>[number][] {
  return parts.relationships(sheet).flatMap(({ type, target, external }) => {
    if (type !== "pivotTable" || external || !parts.has(target)) return [];
    const area = pivotArea(parts.xml(target), readArea);
    return area ? [{ area, what: "the pivot table" }] : [];
  });
}
