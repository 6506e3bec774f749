/** Namespaces that are read, by short names, and references to characters in XML text. Pure. */

const STRICT = "http://purl.oclc.org/ooxml/";
const TRANSITIONAL = "http://schemas.openxmlformats.org/";
export const MAIN = `${TRANSITIONAL}spreadsheetml/2006/main`;
export const STRICT_MAIN = `${STRICT}spreadsheetml/main`;
const MC = `${TRANSITIONAL}markup-compatibility/2006`;
/** True for the namespace that sheets are written in. */
export const isSpreadsheet = (namespace: string | undefined): boolean =>
  namespace === MAIN || namespace === STRICT_MAIN;
/** Short names of the namespaces that are read here; the empty ones are those a part is written in. */
export const SHORT: Readonly<Record<string, string>> = {
  [MAIN]: "",
  [STRICT_MAIN]: "",
  [`${TRANSITIONAL}package/2006/relationships`]: "",
  [`${TRANSITIONAL}package/2006/content-types`]: "",
  [`${TRANSITIONAL}officeDocument/2006/relationships`]: "r:",
  [`${STRICT}officeDocument/relationships`]: "r:",
  [MC]: "mc:",
  [`${TRANSITIONAL}drawingml/2006/main`]: "a:",
  [`${STRICT}drawingml/main`]: "a:",
  [`${TRANSITIONAL}drawingml/2006/spreadsheetDrawing`]: "xdr:",
  [`${STRICT}drawingml/spreadsheetDrawing`]: "xdr:",
  [`${TRANSITIONAL}drawingml/2006/chart`]: "c:",
  [`${STRICT}drawingml/chart`]: "c:",
  "http://schemas.microsoft.com/office/spreadsheetml/2009/9/main": "x14:",
  "http://schemas.microsoft.com/office/excel/2006/main": "xm:",
  "http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments": "tc:",
  "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray": "xda:",
  "urn:schemas-microsoft-com:office:excel": "x:",
  "urn:schemas-microsoft-com:vml": "v:",
  [`${TRANSITIONAL}officeDocument/2006/custom-properties`]: "cp:",
  [`${STRICT}officeDocument/customProperties`]: "cp:",
  [`${TRANSITIONAL}officeDocument/2006/docPropsVTypes`]: "vt:",
  [`${STRICT}officeDocument/docPropsVTypes`]: "vt:",
  "http://www.w3.org/XML/1998/namespace": "xml:",
};
/** Namespaces of which a Choice may be taken: what is written in them is read here. */
export const UNDERSTOOD = new Set(["", "r:", "a:", "xdr:", "c:", "x14:", "xm:", "tc:", "xda:"]);

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** Text with its references resolved; `undefined` when one of them is not XML's. */
export function resolveReferences(text: string): string | undefined {
  let bad = false;
  const out = text.replace(/&([^;&\s]{0,12};)?/g, (_, body: string | undefined) => {
    const name = body?.slice(0, -1) ?? "";
    const known = ENTITIES[name];
    if (known !== undefined) return known;
    const number = /^#(?:(\d+)|x([0-9a-fA-F]+))$/.exec(name);
    const code = number ? Number.parseInt(number[1] ?? number[2]!, number[1] ? 10 : 16) : -1;
    const fine =
      code === 9 || code === 10 || code === 13 || (code >= 32 && code <= 0x10ffff && (code < 0xd800 || code > 0xdfff));
    if (!fine) {
      bad = true;
      return "";
    }
    return String.fromCodePoint(code);
  });
  return bad ? undefined : out;
}
