/** Texts of a workbook: the shared table, rich text, and the escapes of characters that XML cannot hold. Pure. */
import type { Xml } from "./xml.ts";

/** `_x000D_` stands for a character (ECMA-376 part 1, 22.9.2.19, ST_Xstring). */
export function plainText(text: string): string {
  return text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    : text;
}

/** The reverse: characters that XML does not allow, and text that looks like such an escape. */
export function storedText(text: string): string {
  return (
    text
      .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, escaped)
      .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, escaped)
  );
}
const escaped = (ch: string): string => `_x${ch.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;

/** Text of a string item just opened: its own, or that of its runs; readings (phonetics) are left out. */
export function stringItem(xml: Xml): string {
  let text = "";
  xml.children((name) => {
    if (name === "t") text += xml.content();
    else if (name === "r")
      xml.children((inner) => {
        if (inner === "t") text += xml.content();
      });
  });
  return plainText(text);
}

export function readStrings(xml: Xml): string[] {
  const strings: string[] = [];
  xml.root("sst").children((name) => {
    if (name === "si") strings.push(stringItem(xml));
  });
  xml.finish();
  return strings;
}
