/** Says what a file is that is no workbook of the kind read here. Pure. */
import { FileError } from "../model/types.ts";

const starts = (bytes: Uint8Array, ...magic: number[]): boolean => magic.every((byte, i) => bytes[i] === byte);

/** Position of a text spelled in two bytes a character, as compound files spell names. */
function hasWide(bytes: Uint8Array, text: string): boolean {
  const wanted = [...text].flatMap((ch) => [ch.charCodeAt(0), 0]);
  outer: for (let i = 0; i + wanted.length <= bytes.length; i += 2) {
    for (let k = 0; k < wanted.length; k++) if (bytes[i + k] !== wanted[k]) continue outer;
    return true;
  }
  return false;
}

/** Throws unless the bytes start like a package. */
export function refuseOther(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new FileError("unreadable", "This file is empty.");
  if (starts(bytes, 0x50, 0x4b)) return;
  if (starts(bytes, 0xd0, 0xcf, 0x11, 0xe0)) {
    // Directory names of a compound file ([MS-CFB]); [MS-OFFCRYPTO] names the stream of an encrypted package.
    if (hasWide(bytes, "EncryptedPackage"))
      throw new FileError("encrypted", "This file has a password. Save it without one first, then open it again.");
    throw new FileError(
      "old-format",
      "This is a file in the old .xls format. Save it as .xlsx first, then open it again.",
    );
  }
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 4096));
  if (starts(bytes, 0x25, 0x50, 0x44, 0x46)) throw other("a PDF");
  if (/<html|<table/i.test(head)) throw other("a web page");
  if (/urn:schemas-microsoft-com:office:spreadsheet/.test(head))
    throw new FileError(
      "old-format",
      "This is a workbook in the XML format of 2003. Save it as .xlsx first, then open it again.",
    );
  // biome-ignore lint/suspicious/noControlCharactersInRegex: binary files are what is looked for
  const binary = /[\u0000-\u0008\u000e-\u001f]/.test(
    head.replace(/^(?:\xff\xfe|\xfe\xff)/, "").replaceAll("\u0000", ""),
  );
  if (!binary && /[,;\t\n]/.test(head))
    throw new FileError(
      "unsupported",
      "This is a text file (such as CSV), not a workbook. Open it in a spreadsheet program and save it as .xlsx, or copy its cells and paste them here.",
    );
  throw new FileError("unreadable", "This is not a workbook that the desk can read (.xlsx or .xlsm).");
}

const other = (what: string): FileError =>
  new FileError("unreadable", `This is ${what}, not a workbook (.xlsx or .xlsm).`);

/** Throws when the package is one of another program or kind. */
export function refuseOtherPackage(names: ReadonlySet<string>, mimetype: string | undefined): void {
  if (
    mimetype?.startsWith("application/vnd.oasis.opendocument") ||
    (names.has("content.xml") && names.has("meta-inf/manifest.xml"))
  )
    throw new FileError(
      "unsupported",
      mimetype && !mimetype.includes("spreadsheet")
        ? "This is an OpenDocument file, but no spreadsheet."
        : "This is an OpenDocument spreadsheet (.ods). Save it as .xlsx first, then open it again.",
    );
  if (names.has("index/document.iwa") || names.has("index.zip"))
    throw new FileError(
      "unsupported",
      "This is a spreadsheet of another program. Export it as .xlsx first, then open it again.",
    );
  if (!names.has("[content_types].xml"))
    throw new FileError("unreadable", "This is a zip archive, not a workbook (.xlsx or .xlsm).");
}

/** Throws when the package's main part is no workbook in XML. */
export function refuseOtherMain(type: string | undefined, name: string): void {
  if (type === undefined) return;
  if (/excel\.sheet\.binary|sheet\.binary/i.test(type) || name.endsWith(".bin"))
    throw new FileError(
      "unsupported",
      "This is a binary workbook (.xlsb). Save it as .xlsx first, then open it again.",
    );
  if (/wordprocessingml|ms-word/i.test(type)) throw other("a text document");
  if (/presentationml|ms-powerpoint/i.test(type)) throw other("a presentation");
}
