/** The workbook that is open: its package, its model, and those who keep it up to date. One object a file. */

import { type Calculating, calculate } from "./calculating.ts";
import type { KeptWork } from "./keep/database.ts";
import { createModel, type Model } from "./model/model.ts";
import type { Book, Edit } from "./model/types.ts";
import type { Opened } from "./package/open.ts";
import type { KeptPackage } from "./package/parts.ts";
import { refusal } from "./package/refusal.ts";
import { savePackage } from "./package/save.ts";
import { keepPlanned, type Planned } from "./planned.ts";
import type { Hints } from "./sites.ts";

export interface OpenBook {
  name: string;
  readonly model: Model;
  readonly planned: Planned;
  readonly calculating: Calculating;
  /** The package as it came. */
  readonly kept: KeptPackage;
  /** What the file holds that is kept but not shown, in words. */
  readonly unseen: readonly string[];
  handle?: FileSystemFileHandle;
  seen?: KeptWork["seen"];
  /** The file with everything that was done to it. */
  bytes(): Uint8Array;
  close(): void;
}

export interface BookOptions {
  readonly name: string;
  readonly steps?: readonly (readonly Edit[])[];
  readonly handle?: FileSystemFileHandle;
  readonly seen?: KeptWork["seen"];
  readonly hints: () => Hints;
  readonly onBusy?: (busy: boolean) => void;
}

export function openBook({ book, kept }: Opened, options: BookOptions): OpenBook {
  const model: Model = createModel(book, {
    locale: navigator.language,
    cannotStore: (edit) => cannotStore(model, book, edit),
  });
  // What was done before is done again, step by step, so that it can be undone as before.
  for (const step of options.steps ?? []) if (step.length > 0) model.apply(step, { by: "person" });
  const planned = keepPlanned(model, options.hints);
  const calculating = calculate(model, book, { owns: planned.owns, onBusy: options.onBusy });
  return {
    name: options.name,
    model,
    planned,
    calculating,
    kept,
    unseen: [...book.kept, ...book.sheets.flatMap((sheet) => sheet.kept.map((what) => `${what} on ${sheet.name}`))],
    ...(options.handle ? { handle: options.handle } : {}),
    ...(options.seen ? { seen: options.seen } : {}),
    bytes: () => savePackage(kept, [...model.edits(), ...calculating.edits()]),
    close() {
      planned.destroy();
      calculating.stop();
    },
  };
}

/** The sentence why the file could not take an edit. What the model itself refuses about cells is not asked twice. */
function cannotStore(model: Model, book: Book, edit: Edit): string | undefined {
  const now = (sheets: Book["sheets"]): Book => ({ ...book, sheets, names: model.names() });
  if (edit.kind !== "cell") return refusal(now(model.sheets()), edit);
  const sheet = model.sheet(edit.sheet);
  if (sheet === undefined || sheet.typed(edit.row, edit.column)?.array) return refusal(now(model.sheets()), edit);
  const heading = sheet.tables.some(({ area }) => area.top === edit.row);
  const long = typeof edit.value === "string" && edit.value.length > 1000;
  if (!heading && !long && edit.formula === undefined) return undefined;
  // Nothing but the cell's own place and length is looked at here.
  return refusal(now([{ ...sheet, cells: new Map() }]), edit);
}
