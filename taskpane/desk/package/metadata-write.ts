/** Marks array formulas as growing, as current spreadsheet programs do: cell metadata of the type XLDAPR. Pure. */

import { MAIN } from "./namespaces.ts";
import { type Patch, patched } from "./text.ts";
import { Xml } from "./xml.ts";

const XDA = "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray";
/** Key of the property in its extension list ([MS-XLSX], dynamicArrayProperties). */
const URI = "{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}";
const TYPE =
  'name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"';
export const METADATA_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";

const property = (p: string): string =>
  `<${p}bk><${p}extLst><${p}ext uri="${URI}"><xda:dynamicArrayProperties xmlns:xda="${XDA}" fDynamic="1" fCollapsed="0"/></${p}ext></${p}extLst></${p}bk>`;

export const NEW_METADATA =
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<metadata xmlns="${MAIN}" xmlns:xda="${XDA}">` +
  `<metadataTypes count="1"><metadataType ${TYPE}/></metadataTypes>` +
  `<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="${URI}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>` +
  `<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

/** Adds the mark to a metadata part that has none; returns the number that cells then carry. */
export function withDynamicMark(text: string, part: string): { readonly text: string; readonly mark: number } {
  const xml = new Xml(text, part).root("metadata");
  const p = xml.prefix;
  const patches: Patch[] = [];
  const rootEnd = xml.end;
  const sections = new Map<
    string,
    { children: number; start: number; end: number; closeStart: number; count?: { start: number; end: number } }
  >();
  xml.children((name) => {
    const { depth, empty, start, end } = xml;
    const count = xml.attributeAt("count");
    let children = 0;
    if (!empty) xml.children(() => void children++);
    while (xml.depth >= depth) xml.next();
    const key = name === "futureMetadata" ? `${name}${sections.size}` : name;
    sections.set(key, {
      children,
      start,
      end: empty ? end : xml.end,
      closeStart: empty ? end : xml.start,
      ...(count ? { count } : {}),
    });
  });
  const grow = (name: string, item: string, place: number): number => {
    const section = sections.get(name);
    if (!section || section.closeStart === section.end) {
      const put = `<${p}${name} count="1">${item}</${p}${name}>`;
      patches.push(
        section ? { start: section.start, end: section.end, text: put } : { start: place, end: place, text: put },
      );
      return 1;
    }
    if (section.count) patches.push({ ...section.count, text: String(section.children + 1) });
    patches.push({ start: section.closeStart, end: section.closeStart, text: item });
    return section.children + 1;
  };
  const after = (...names: string[]) =>
    [...sections].reduce(
      (at, [name, s]) => (names.some((n) => name.startsWith(n)) ? Math.max(at, s.end) : at),
      rootEnd,
    );
  const type = grow("metadataTypes", `<${p}metadataType ${TYPE}/>`, rootEnd);
  const future = after("metadataTypes", "metadataStrings", "mdxMetadata", "futureMetadata");
  patches.push({
    start: future,
    end: future,
    text: `<${p}futureMetadata name="XLDAPR" count="1">${property(p)}</${p}futureMetadata>`,
  });
  const mark = grow("cellMetadata", `<${p}bk><${p}rc t="${type}" v="0"/></${p}bk>`, future);
  return { text: patched(text, patches), mark };
}
