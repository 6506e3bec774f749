/** Files of the person: opened by the browser's own dialog, and written back to where they came from where it can. */

export interface OpenedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly handle?: FileSystemFileHandle;
  readonly seen?: { readonly modified: number; readonly size: number };
}

export type Saving =
  /** Written into the file itself. */
  | {
      readonly kind: "written";
      readonly name: string;
      readonly handle: FileSystemFileHandle;
      readonly seen: NonNullable<OpenedFile["seen"]>;
    }
  /** Given to the browser, which puts it where it puts downloads, asks, or refuses: nobody tells which. */
  | { readonly kind: "handed"; readonly name: string }
  /** The person closed the dialog. */
  | { readonly kind: "cancelled" }
  /** Somebody else has written the file since it was read. */
  | { readonly kind: "changed"; readonly name: string }
  | { readonly kind: "refused"; readonly name: string; readonly why: string };

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const XLSM = "application/vnd.ms-excel.sheet.macroEnabled.12";
const CSV = "text/csv";

interface Pickers {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
}
const pickers = () => globalThis as unknown as Pickers;
type Permission = { requestPermission?(options: { mode: "readwrite" }): Promise<PermissionState> };

const TYPES = [{ description: "Workbook", accept: { [XLSX]: [".xlsx"], [XLSM]: [".xlsm"] } }];
const typeOf = (name: string): string => (/\.xlsm$/i.test(name) ? XLSM : /\.csv$/i.test(name) ? CSV : XLSX);

const cancelled = (problem: unknown) => problem instanceof DOMException && problem.name === "AbortError";
/** A page in a frame, or one that was not clicked, may not use the dialog. */
const forbidden = (problem: unknown) =>
  problem instanceof DOMException && (problem.name === "SecurityError" || problem.name === "NotAllowedError");

export async function readFile(file: File, handle?: FileSystemFileHandle): Promise<OpenedFile> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return {
    name: file.name,
    bytes,
    ...(handle ? { handle, seen: { modified: file.lastModified, size: file.size } } : {}),
  };
}

/** The file the person chooses; undefined when none was chosen. */
export async function chooseFile(input: HTMLInputElement): Promise<OpenedFile | undefined> {
  const { showOpenFilePicker } = pickers();
  if (showOpenFilePicker) {
    try {
      const [handle] = await showOpenFilePicker.call(globalThis, { types: TYPES, multiple: false });
      return handle ? await readFile(await handle.getFile(), handle) : undefined;
    } catch (problem) {
      if (cancelled(problem)) return undefined;
      if (!forbidden(problem)) throw problem;
    }
  }
  return new Promise((resolve, reject) => {
    input.onchange = () => {
      const file = input.files?.[0];
      input.value = "";
      if (file) readFile(file).then(resolve, reject);
      else resolve(undefined);
    };
    input.oncancel = () => resolve(undefined);
    input.click();
  });
}

/**
 * Writes into the file that was opened.
 *
 * @param seen - how the file was when it was read or written last; another state is not written over unless `anyway`
 */
export async function writeBack(
  handle: FileSystemFileHandle,
  bytes: Uint8Array,
  seen: OpenedFile["seen"],
  anyway = false,
): Promise<Saving> {
  const { name } = handle;
  try {
    const asked = await (handle as unknown as Permission).requestPermission?.({ mode: "readwrite" });
    if (asked === "denied") return { kind: "refused", name, why: "the browser was not allowed to write into it" };
    if (seen && !anyway) {
      const now = await handle.getFile();
      if (now.lastModified !== seen.modified || now.size !== seen.size) return { kind: "changed", name };
    }
    // The browser writes beside it and puts it in place at the end: what breaks off in between leaves the old file.
    const stream = await handle.createWritable();
    await stream.write(bytes as Uint8Array<ArrayBuffer>);
    await stream.close();
    const file = await handle.getFile();
    if (file.size !== bytes.length) return { kind: "refused", name, why: "what was written is not complete" };
    return { kind: "written", name, handle, seen: { modified: file.lastModified, size: file.size } };
  } catch (problem) {
    if (cancelled(problem)) return { kind: "cancelled" };
    const why =
      problem instanceof DOMException && problem.name === "NotFoundError"
        ? "it is no longer where it was"
        : problem instanceof DOMException && problem.name === "NoModificationAllowedError"
          ? "another program has it open"
          : problem instanceof DOMException && problem.name === "QuotaExceededError"
            ? "the disk is full"
            : "the browser could not write into it";
    return { kind: "refused", name, why };
  }
}

/** A new file where the person wants it; else given to the browser as a download. */
export async function saveAs(name: string, bytes: Uint8Array): Promise<Saving> {
  const { showSaveFilePicker } = pickers();
  if (showSaveFilePicker) {
    try {
      const type = typeOf(name);
      const ending = name.slice(name.lastIndexOf("."));
      const handle = await showSaveFilePicker.call(globalThis, {
        suggestedName: name,
        types: [{ description: type === CSV ? "Table as text" : "Workbook", accept: { [type]: [ending] } }],
      });
      return await writeBack(handle, bytes, undefined, true);
    } catch (problem) {
      if (cancelled(problem)) return { kind: "cancelled" };
      if (!forbidden(problem)) throw problem;
    }
  }
  return handOver(name, bytes);
}

export function handOver(name: string, bytes: Uint8Array): Saving {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: typeOf(name) }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  return { kind: "handed", name };
}
