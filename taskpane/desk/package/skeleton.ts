/** The least that a sheet and a workbook of ours are made of. Pure. */
import { addressOf } from "../model/address.ts";
import { MAIN, STRICT_MAIN } from "./namespaces.ts";
import { LOOKS } from "./styles-write.ts";

export const XML_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const R = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

export interface SheetSkeleton {
  readonly strict?: boolean;
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly tableIds?: readonly string[];
  /** Sections between the cells and the page's margins, spelled out. */
  readonly rules?: string;
  /** As wide as the paper, landscape. */
  readonly page?: boolean;
  readonly selected?: boolean;
}

export function newSheetText({ strict, frozen, tableIds, rules, page, selected }: SheetSkeleton): string {
  const rows = frozen?.rows ?? 0;
  const columns = frozen?.columns ?? 0;
  const pane = rows > 0 && columns > 0 ? "bottomRight" : rows > 0 ? "bottomLeft" : "topRight";
  const split =
    rows > 0 || columns > 0
      ? `<pane${columns > 0 ? ` xSplit="${columns}"` : ""}${rows > 0 ? ` ySplit="${rows}"` : ""} topLeftCell="${addressOf(rows, columns)}" activePane="${pane}" state="frozen"/><selection pane="${pane}" activeCell="${addressOf(rows, columns)}" sqref="${addressOf(rows, columns)}"/>`
      : "";
  const view = `<sheetView${selected ? ' tabSelected="1"' : ""} workbookViewId="0"`;
  const tables = tableIds?.length
    ? `<tableParts count="${tableIds.length}">${tableIds.map((id) => `<tablePart r:id="${id}"/>`).join("")}</tableParts>`
    : "";
  return (
    `${XML_HEAD}<worksheet xmlns="${strict ? STRICT_MAIN : MAIN}" xmlns:r="${strict ? "http://purl.oclc.org/ooxml/officeDocument/relationships" : R}">` +
    `${page ? '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>' : ""}<dimension ref="A1"/>` +
    `<sheetViews>${split === "" ? `${view}/>` : `${view}>${split}</sheetView>`}</sheetViews><sheetFormatPr defaultRowHeight="15"/>` +
    `<sheetData/>${rules ?? ""}<pageMargins left="0.5" right="0.5" top="0.6" bottom="0.6" header="0.3" footer="0.3"/>` +
    `${page ? '<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/>' : ""}${tables}</worksheet>`
  );
}

const dxf = (ink: string, fill: string): string =>
  `<dxf><font><color rgb="${ink}"/></font><fill><patternFill><bgColor rgb="${fill}"/></patternFill></fill></dxf>`;
/** Order of the verdicts' colours among the rules' looks of a new file. */
export const VERDICTS = ["ok", "check", "stop"] as const;
const DXFS = VERDICTS.map((word) => dxf(LOOKS[word].ink!, LOOKS[word].fill!)).join("");

/** Styles with one look, Arial 11, and the colours of the verdicts for rules. */
export const NEW_STYLES =
  `${XML_HEAD}<styleSheet xmlns="${MAIN}"><fonts count="1"><font><sz val="11"/><name val="Arial"/><family val="2"/></font></fonts>` +
  `<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>` +
  `<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>` +
  `<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>` +
  `<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>` +
  `<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles><dxfs count="3">${DXFS}</dxfs></styleSheet>`;
