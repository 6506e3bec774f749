/** Files in and out of the desk, and the words for what has become of them. */

import { findTable } from "../host/region.ts";
import { planningScore } from "../work/planning.ts";
import { gridOf } from "./cells.ts";
import type { KeptWork } from "./keep/database.ts";
import { chooseFile, handOver, type OpenedFile, readFile, type Saving, saveAs, writeBack } from "./keep/files.ts";
import type { Keeper } from "./keep/work.ts";
import { regionAt } from "./model/tables.ts";
import type { Edit, Value } from "./model/types.ts";
import { tableCsv } from "./package/csv.ts";
import type { Opened } from "./package/open.ts";
import type { Shell } from "./shell.ts";
import type { OpenBook } from "./workbook.ts";

/** A workbook on its way into the desk. */
export interface Coming {
  readonly opened: Opened;
  readonly name: string;
  /** What the bar says when it is there. */
  readonly words: string;
  readonly steps?: readonly (readonly Edit[])[];
  readonly handle?: FileSystemFileHandle;
  readonly seen?: KeptWork["seen"];
  /** Set when it was brought back. */
  readonly from?: KeptWork;
}

export interface FilingParts {
  readonly shell: Shell;
  readonly keeper: Keeper;
  book(): OpenBook;
  /** Takes in what is being typed; false when it was refused and stays open. */
  endEditing(): boolean;
  /** Reads a file; undefined when it said why not. */
  read(name: string, bytes: Uint8Array): Promise<Opened | undefined>;
  show(coming: Coming): void;
}

export interface Filing {
  open(input: HTMLInputElement): Promise<void>;
  take(file: File): Promise<void>;
  save(): Promise<void>;
  saveCopy(): Promise<void>;
  saveCsv(): Promise<void>;
  /** Whether another workbook may be shown: what is open is kept, or the person gives it up. */
  mayLeave(): Promise<boolean>;
  /** Writes beside the name what has become of the changes. */
  mark(opened?: string): void;
  /** False where the browser stores nothing. */
  isKept(): boolean;
}

const GIVEN = "given";
const clock = () => new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });

export function createFiling({ shell, keeper, book, endEditing, read, show }: FilingParts): Filing {
  let kept = true;
  let savedAt = "";

  keeper.onTrouble((problem) => {
    kept = problem === undefined;
    shell.notice(
      "trouble",
      problem === undefined
        ? undefined
        : { text: `This browser does not keep your work: ${problem}. Save it to a file often.`, actions: [] },
    );
    mark();
  });

  function mark(opened?: string): void {
    if (opened !== undefined) {
      savedAt = "";
      shell.notice(GIVEN, undefined);
    }
    const unsaved = book().model.unsaved();
    shell.mark(unsaved ? (kept ? "not in a file yet, kept here" : "not saved") : savedAt, unsaved);
  }

  async function reached(saving: Extract<Saving, { kind: "written" }> | undefined): Promise<void> {
    const open = book();
    open.model.markSaved();
    savedAt = `saved ${clock()}`;
    if (saving) {
      open.name = saving.name;
      open.handle = saving.handle;
      open.seen = saving.seen;
      shell.title(saving.name);
    }
    mark();
    await keeper.saved(saving ? { name: saving.name, handle: saving.handle, seen: saving.seen } : {});
  }

  /** The file as it is now; undefined when a cell that is being typed into was refused. */
  async function bytes(): Promise<Uint8Array | undefined> {
    if (!endEditing()) {
      shell.say("A cell is being edited and cannot be taken as it is. Mend it, or press Esc, then save.", {
        trouble: true,
      });
      return undefined;
    }
    shell.say("Saving …", { busy: true });
    const open = book();
    await open.calculating.ready();
    await open.planned.settled();
    return open.bytes();
  }

  /** Nobody tells whether a download arrived: the person says so. */
  function given(name: string, again: () => void): void {
    const { model } = book();
    const at = model.revision();
    shell.say(`“${name}” was given to the browser.`);
    shell.notice(GIVEN, {
      text: `“${name}” was given to the browser as a download. It counts as saved when you have seen it there; until then the changes stay kept here.`,
      actions: [
        {
          text: "It is there",
          act: () => {
            shell.notice(GIVEN, undefined);
            if (book().model === model && model.revision() === at) void reached(undefined);
          },
        },
        { text: "Give it again", act: again },
      ],
    });
  }

  async function done(saving: Saving, again: () => void): Promise<void> {
    switch (saving.kind) {
      case "written":
        shell.notice(GIVEN, undefined);
        await reached(saving);
        shell.say(`Saved ${saving.name}`);
        return;
      case "handed":
        given(saving.name, again);
        return;
      case "cancelled":
        shell.say("Not saved.");
        return;
      case "refused":
        shell.say(`“${saving.name}” was not saved: ${saving.why}. Use More, Save a copy.`, { trouble: true });
        return;
      case "changed":
        shell.say(`“${saving.name}” was not saved.`, { trouble: true });
    }
  }

  async function save(): Promise<void> {
    const content = await bytes();
    if (content === undefined) return;
    const { handle, seen, name } = book();
    const again = () => void save();
    if (handle === undefined) return done(handOver(fileName(name), content), again);
    let saving = await writeBack(handle, content, seen);
    if (saving.kind === "changed") {
      const over = await shell.ask(
        `“${saving.name}” has been changed elsewhere since it was opened here. Write over those changes?`,
        "Write over them",
      );
      if (over) saving = await writeBack(handle, content, seen, true);
      else {
        shell.say(`“${saving.name}” was not saved. More, Save a copy keeps both.`, { trouble: true });
        return;
      }
    }
    await done(saving, again);
  }

  async function saveCopy(): Promise<void> {
    const content = await bytes();
    if (content === undefined) return;
    await done(await saveAs(fileName(book().name), content), () => void saveCopy());
  }

  async function saveCsv(): Promise<void> {
    if (!endEditing()) return;
    const { model, name } = book();
    const sheet = model.sheet(model.active())!;
    const { row, column } = model.selection();
    const plan = findTable(sheet.name, gridOf(sheet), { row, column }, planningScore);
    const region = plan
      ? {
          top: plan.top,
          bottom: plan.top + plan.rows.length,
          left: plan.left,
          right: plan.left + plan.headings.length - 1,
        }
      : regionAt(model, sheet.name, row, column);
    if (region === undefined) {
      shell.say("There is no table at the selected cell. Select a cell of one, then export.", { trouble: true });
      return;
    }
    const rows = Array.from({ length: region.bottom - region.top + 1 }, (_, r) =>
      Array.from(
        { length: region.right - region.left + 1 },
        (_cell, c): Value => model.cell(sheet.name, region.top + r, region.left + c)?.value ?? null,
      ),
    );
    const { bytes: content, guarded } = tableCsv(rows);
    const file = `${name.replace(/\.xls[xm]$/i, "")} ${sheet.name}.csv`;
    const saving = await saveAs(file, content);
    const note =
      guarded === 0
        ? ""
        : ` ${guarded} ${guarded === 1 ? "text begins" : "texts begin"} like a formula and got an apostrophe in front.`;
    if (saving.kind === "written") shell.say(`Exported ${saving.name}.${note}`);
    else if (saving.kind === "handed") shell.say(`“${saving.name}” was given to the browser.${note}`);
    else if (saving.kind !== "cancelled") await done(saving, () => void saveCsv());
  }

  async function mayLeave(): Promise<boolean> {
    if (!endEditing()) return false;
    await keeper.flush();
    const open = book() as OpenBook | undefined;
    if (open === undefined || kept || !open.model.unsaved()) return true;
    return shell.ask(`“${open.name}” has changes that are in no file and are not kept. Give them up?`, "Give them up");
  }

  async function opened(file: OpenedFile): Promise<void> {
    if (!(await mayLeave())) return;
    const { name, handle, seen } = file;
    if (handle && (await keeper.elsewhere(handle))) {
      const both = await shell.ask(
        `“${name}” is open in another tab. What is changed there is not seen here. Open it here as well?`,
        "Open it here as well",
      );
      if (!both) return;
    }
    shell.say(`Opening ${name} …`, { busy: true });
    const found = await read(name, file.bytes);
    if (found === undefined) return;
    show({ opened: found, name, words: `Opened ${name}.`, ...(handle ? { handle } : {}), ...(seen ? { seen } : {}) });
  }

  return {
    async open(input) {
      const file = await chooseFile(input);
      if (file) await opened(file);
    },
    take: async (file) => opened(await readFile(file)),
    save,
    saveCopy,
    saveCsv,
    mayLeave,
    mark,
    isKept: () => kept,
  };
}

const fileName = (name: string): string => (/\.xls[xm]$/i.test(name) ? name : `${name.replace(/\.[^.]*$/, "")}.xlsx`);
