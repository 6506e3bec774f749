/**
 * A macro workbook made by hand with what the general writers cannot make: macros, data of other programs, printer
 * settings, links to other workbooks, comments with replies, growing formulas, calculation chain, rules of the newer
 * extension, sparklines, a control under mc:AlternateContent, a part that nobody knows. By ECMA-376 and [MS-XLSX].
 */
import { MAIN, type PartsText, REL, relationships, types, zipped } from "./packages.ts";

const MS = "http://schemas.microsoft.com/office";
const binary = (seed: number, length: number): Uint8Array =>
  Uint8Array.from({ length }, (_, i) => (i * 131 + seed * 17 + ((i * i) >> 3)) & 255);

export function handmadeParts(): PartsText {
  const sheet =
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n` +
    `<worksheet xmlns="${MAIN}" xmlns:r="${REL}" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac" xmlns:x14ac="${MS}/spreadsheetml/2009/9/ac">` +
    `<sheetPr codeName="Plan1"><tabColor rgb="FF00B050"/></sheetPr><dimension ref="A1:F8"/><sheetViews><sheetView tabSelected="1" workbookViewId="0"><selection activeCell="C3" sqref="C3"/></sheetView></sheetViews><sheetFormatPr defaultRowHeight="15" x14ac:dyDescent="0.25"/>\n` +
    `<sheetData>\n` +
    `<row r="1" spans="1:6" x14ac:dyDescent="0.25"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="s"><v>2</v></c></row>\n` +
    `<row r="2" spans="1:6"><c r="A2" t="s"><v>3</v></c><c r="B2" s="1"><v>10</v></c><c r="C2"><f>B2*2</f><v>20</v></c><c r="E2" cm="1"><f t="array" ref="E2:E4">_xlfn._xlws.SORT(B2:B4)</f><v>6.8</v></c></row>\n` +
    `<row r="3" spans="1:6"><c r="A3" t="s"><v>4</v></c><c r="B3" s="1"><v>6.8</v></c><c r="C3"><f t="shared" ref="C3:C4" si="0">B3*2</f><v>13.6</v></c><c r="E3"><v>10</v></c></row>\n` +
    `<row r="4" spans="1:6"><c r="A4" t="str"><f>_xlfn.CONCAT(A3,"&amp;",B3)</f><v>drill&amp;6.8</v></c><c r="B4" s="1"><v>50</v></c><c r="C4"><f t="shared" si="0"/><v>100</v></c><c r="E4"><v>50</v></c></row>\n` +
    `<row r="6" spans="1:6"><c r="A6"><f>SUM(B2:B4)</f><v>66.8</v></c><c r="B6"><f>[1]Rates!$A$1*2</f><v>4</v></c></row>\n` +
    `<row r="8" spans="1:6" ht="31.5" customHeight="1"><c r="A8" t="s"><v>5</v></c></row>\n` +
    `</sheetData><conditionalFormatting sqref="B2:B4"><cfRule type="dataBar" priority="1"><dataBar><cfvo type="min"/><cfvo type="formula" val="$A$6"/><color rgb="FF638EC6"/></dataBar></cfRule></conditionalFormatting>` +
    `<pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/><pageSetup paperSize="9" orientation="portrait" r:id="rId1"/>` +
    `<ignoredErrors><ignoredError sqref="B2:B4" numberStoredAsText="1"/></ignoredErrors><legacyDrawing r:id="rId2"/>` +
    `<mc:AlternateContent><mc:Choice xmlns:x14="${MS}/spreadsheetml/2009/9/main" Requires="x14"><controls><mc:AlternateContent><mc:Choice Requires="x14"><control shapeId="1026" r:id="rId4" name="Plan it"/></mc:Choice></mc:AlternateContent></controls></mc:Choice></mc:AlternateContent>` +
    `<extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}" xmlns:x14="${MS}/spreadsheetml/2009/9/main"><x14:conditionalFormattings><x14:conditionalFormatting xmlns:xm="${MS}/excel/2006/main"><x14:cfRule type="expression" priority="2" id="{1}"><xm:f>$B2&gt;Lists!$A$3</xm:f></x14:cfRule><xm:sqref>C2:C4</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext>` +
    `<ext uri="{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}" xmlns:x14="${MS}/spreadsheetml/2009/9/main"><x14:dataValidations count="1" xmlns:xm="${MS}/excel/2006/main"><x14:dataValidation type="list" allowBlank="1"><x14:formula1><xm:f>Lists!$A$1:$A$3</xm:f></x14:formula1><xm:sqref>A2:A4</xm:sqref></x14:dataValidation></x14:dataValidations></ext>` +
    `<ext uri="{05C60535-1F16-4fd2-B633-F4F36F0B64E0}" xmlns:x14="${MS}/spreadsheetml/2009/9/main"><x14:sparklineGroups xmlns:xm="${MS}/excel/2006/main"><x14:sparklineGroup><x14:sparklines><x14:sparkline><xm:f>Plan!B2:B4</xm:f><xm:sqref>F2</xm:sqref></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst></worksheet>`;
  const lists = `<worksheet xmlns="${MAIN}" xmlns:r="${REL}"><dimension ref="A1:B3"/><sheetData><row r="1"><c r="A1" t="s"><v>3</v></c><c r="B1"><f>Plan!B4/2</f><v>25</v></c></row><row r="2"><c r="A2" t="s"><v>4</v></c></row><row r="3"><c r="A3"><v>5</v></c></row></sheetData></worksheet>`;
  const strings = `<sst xmlns="${MAIN}" count="6" uniqueCount="6"><si><t>Op</t></si><si><t>Dia</t></si><si><r><t>Twice </t></r><r><rPr><b/></rPr><t>Dia</t></r></si><si><t>slot</t></si><si><t>drill</t><rPh sb="0" eb="5"><t>reading</t></rPh><phoneticPr fontId="0"/></si><si><t xml:space="preserve"> below_x000D_ </t></si></sst>`;
  const styles = `<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="164" formatCode="0.000&quot; mm&quot;"/></numFmts><fonts count="1"><font><sz val="11"/><color theme="1"/><name val="Georgia"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"><alignment horizontal="right"/></xf></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`;
  return {
    "[Content_Types].xml": types(
      {
        "xl/worksheets/sheet1.xml": "worksheet",
        "xl/worksheets/sheet2.xml": "worksheet",
        "xl/sharedStrings.xml": "sharedStrings",
        "xl/styles.xml": "styles",
        "xl/metadata.xml": "sheetMetadata",
        "xl/calcChain.xml": "calcChain",
        "xl/comments1.xml": "comments",
        "xl/threadedComments/threadedComment1.xml": "application/vnd.ms-excel.threadedcomments+xml",
        "xl/persons/person.xml": "application/vnd.ms-excel.person+xml",
        "xl/externalLinks/externalLink1.xml": "externalLink",
        "xl/vbaProject.bin": "application/vnd.ms-office.vbaProject",
        "xl/ctrlProps/ctrlProp1.xml": "application/vnd.ms-excel.controlproperties+xml",
        "customXml/itemProps1.xml": "application/vnd.openxmlformats-officedocument.customXmlProperties+xml",
      },
      "application/vnd.ms-excel.sheet.macroEnabled.main+xml",
    ),
    "_rels/.rels": relationships([["rId1", "officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${REL}"><fileVersion appName="xl"/><workbookPr codeName="ThisWorkbook"/><bookViews><workbookView xWindow="0" yWindow="0" activeTab="0"/></bookViews><sheets><sheet name="Plan" sheetId="4" r:id="rId1"/><sheet name="Lists" sheetId="7" state="hidden" r:id="rId2"/></sheets><externalReferences><externalReference r:id="rId8"/></externalReferences><definedNames><definedName name="dias">Plan!$B$2:$B$4</definedName><definedName name="last" localSheetId="1">Lists!$A$3</definedName></definedNames><calcPr calcId="191029"/></workbook>`,
    "xl/_rels/workbook.xml.rels": relationships([
      ["rId1", "worksheet", "worksheets/sheet1.xml"],
      ["rId2", "worksheet", "/xl/worksheets/sheet2.xml"],
      ["rId3", "sharedStrings", "sharedStrings.xml"],
      ["rId4", "styles", "styles.xml"],
      ["rId5", "sheetMetadata", "metadata.xml"],
      ["rId6", "calcChain", "calcChain.xml"],
      ["rId7", `${MS}/2006/relationships/vbaProject`, "vbaProject.bin"],
      ["rId8", "externalLink", "externalLinks/externalLink1.xml"],
      ["rId9", "customXml", "../customXml/item1.xml"],
      ["rId10", `${MS}/2017/10/relationships/person`, "persons/person.xml"],
      ["rId11", "https://example.org/a-kind-nobody-knows", "unknown/thing.dat"],
    ]),
    "xl/worksheets/sheet1.xml": sheet,
    "xl/worksheets/_rels/sheet1.xml.rels": relationships([
      ["rId1", "printerSettings", "../printerSettings/printerSettings1.bin"],
      ["rId2", "vmlDrawing", "../drawings/vmlDrawing1.vml"],
      ["rId3", "comments", "../comments1.xml"],
      ["rId4", "ctrlProp", "../ctrlProps/ctrlProp1.xml"],
      ["rId5", `${MS}/2017/10/relationships/threadedComment`, "../threadedComments/threadedComment1.xml"],
    ]),
    "xl/worksheets/sheet2.xml": lists,
    "xl/sharedStrings.xml": strings,
    "xl/styles.xml": styles,
    "xl/metadata.xml": `<metadata xmlns="${MAIN}" xmlns:xda="${MS}/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`,
    "xl/calcChain.xml": `<calcChain xmlns="${MAIN}"><c r="C2" i="4"/><c r="A6" i="4"/></calcChain>`,
    "xl/comments1.xml": `<comments xmlns="${MAIN}"><authors><author>tc={1}</author></authors><commentList><comment ref="B3" authorId="0"><text><t>[Threaded comment] deep?</t></text></comment><comment ref="A8" authorId="0"><text><t>below</t></text></comment></commentList></comments>`,
    "xl/drawings/vmlDrawing1.vml": `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="_x0000_t202"><v:path/></v:shapetype><v:shape id="_x0000_s1025" type="#_x0000_t202"><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>2, 15, 1, 10, 4, 15, 5, 4</x:Anchor><x:Row>2</x:Row><x:Column>1</x:Column></x:ClientData></v:shape><v:shape id="_x0000_s1026"><x:ClientData ObjectType="Button"><x:Anchor>6, 0, 5, 0, 8, 0, 7, 0</x:Anchor></x:ClientData></v:shape></xml>`,
    "xl/threadedComments/threadedComment1.xml": `<ThreadedComments xmlns="${MS}/spreadsheetml/2018/threadedcomments"><threadedComment ref="B3" dT="2026-01-02T10:00:00.00" personId="{2}" id="{1}"><text>deep?</text></threadedComment></ThreadedComments>`,
    "xl/persons/person.xml": `<personList xmlns="${MS}/spreadsheetml/2018/threadedcomments"><person displayName="the shop" id="{2}" userId="x" providerId="None"/></personList>`,
    "xl/externalLinks/externalLink1.xml": `<externalLink xmlns="${MAIN}" xmlns:r="${REL}"><externalBook r:id="rId1"><sheetNames><sheetName val="Rates"/></sheetNames></externalBook></externalLink>`,
    "xl/externalLinks/_rels/externalLink1.xml.rels": relationships([["rId1", "externalLinkPath", "rates.xlsx", true]]),
    "xl/vbaProject.bin": binary(1, 5000),
    "xl/ctrlProps/ctrlProp1.xml": `<formControlPr xmlns="${MS}/spreadsheetml/2009/9/main" objectType="CheckBox" fmlaLink="$A$8" lockText="1"/>`,
    "xl/printerSettings/printerSettings1.bin": binary(2, 900),
    "customXml/item1.xml": `<order xmlns="urn:example:order"><number>17</number></order>`,
    "customXml/_rels/item1.xml.rels": relationships([["rId1", "customXmlProps", "itemProps1.xml"]]),
    "customXml/itemProps1.xml": `<ds:datastoreItem ds:itemID="{3}" xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml"/>`,
    "xl/unknown/thing.dat": binary(3, 777),
    "docProps/app.xml": `<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>by hand</Application></Properties>`,
  };
}
export const handmade = (): Uint8Array => zipped(handmadeParts());
