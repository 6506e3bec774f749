/** The spreadsheet on the screen. */
import type { Univer } from "@univerjs/core";
import { UniverDocsPlugin } from "@univerjs/docs";
import { UniverDocsUIPlugin } from "@univerjs/docs-ui";
import { UniverRenderEnginePlugin } from "@univerjs/engine-render";
import { UniverFindReplacePlugin } from "@univerjs/find-replace";
import { UniverSheetsConditionalFormattingUIPlugin } from "@univerjs/sheets-conditional-formatting-ui";
import { UniverSheetsDataValidationUIPlugin } from "@univerjs/sheets-data-validation-ui";
import { UniverSheetsFilterPlugin } from "@univerjs/sheets-filter";
import { UniverSheetsFilterUIPlugin } from "@univerjs/sheets-filter-ui";
import { UniverSheetsFindReplacePlugin } from "@univerjs/sheets-find-replace";
import { UniverSheetsFormulaUIPlugin } from "@univerjs/sheets-formula-ui";
import { UniverSheetsNumfmtUIPlugin } from "@univerjs/sheets-numfmt-ui";
import { UniverSheetsUIPlugin } from "@univerjs/sheets-ui";
import { defaultTheme } from "@univerjs/themes";
import { UniverUIPlugin } from "@univerjs/ui";
import "@univerjs/design/lib/index.css";
import "@univerjs/ui/lib/index.css";
import "@univerjs/docs-ui/lib/index.css";
import "@univerjs/sheets-ui/lib/index.css";
import "@univerjs/sheets-formula-ui/lib/index.css";
import "@univerjs/sheets-numfmt-ui/lib/index.css";
import "@univerjs/sheets-data-validation-ui/lib/index.css";
import "@univerjs/sheets-conditional-formatting-ui/lib/index.css";
import "@univerjs/sheets-filter-ui/lib/index.css";
import "@univerjs/find-replace/lib/index.css";
import { LocaleType } from "@univerjs/core";
import "@univerjs/sheets-ui/facade";
import { facade, newUniver, registerSheets } from "./engine.ts";
import { ENGLISH } from "./locale.ts";

export function startGrid(container: HTMLElement): { univer: Univer; api: ReturnType<typeof facade> } {
  const univer = newUniver({ locales: { [LocaleType.EN_US]: ENGLISH }, theme: defaultTheme });
  univer.registerPlugin(UniverRenderEnginePlugin);
  univer.registerPlugin(UniverUIPlugin, {
    container,
    header: true,
    toolbar: true,
    footer: true,
    contextMenu: true,
    disableAutoFocus: true,
  });
  univer.registerPlugin(UniverDocsPlugin);
  univer.registerPlugin(UniverDocsUIPlugin);
  registerSheets(univer);
  univer.registerPlugin(UniverSheetsUIPlugin, {
    disableForceStringAlert: true,
    disableForceStringMark: true,
    footer: { sheetBar: true, statisticBar: true, menus: false, zoomSlider: true },
  });
  univer.registerPlugin(UniverSheetsNumfmtUIPlugin);
  univer.registerPlugin(UniverSheetsFormulaUIPlugin);
  // A search box in the list would take the keys away from the cell that is being typed into.
  univer.registerPlugin(UniverSheetsDataValidationUIPlugin, { showSearchOnDropdown: false, showEditOnDropdown: false });
  univer.registerPlugin(UniverSheetsConditionalFormattingUIPlugin);
  univer.registerPlugin(UniverSheetsFilterPlugin);
  univer.registerPlugin(UniverSheetsFilterUIPlugin);
  univer.registerPlugin(UniverFindReplacePlugin);
  univer.registerPlugin(UniverSheetsFindReplacePlugin);
  return { univer, api: facade(univer) };
}
