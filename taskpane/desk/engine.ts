/** The spreadsheet without its screen: sheets, formula engine with the worksheet functions, formats, validation. */
import { LocaleType, LogLevel, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { UniverSheetsPlugin } from "@univerjs/sheets";
import { UniverSheetsConditionalFormattingPlugin } from "@univerjs/sheets-conditional-formatting";
import { UniverSheetsDataValidationPlugin } from "@univerjs/sheets-data-validation";
import { CalculationMode, UniverSheetsFormulaPlugin } from "@univerjs/sheets-formula";
import { UniverSheetsNumfmtPlugin } from "@univerjs/sheets-numfmt";
import "@univerjs/engine-formula/facade";
import "@univerjs/sheets/facade";
import "@univerjs/sheets-formula/facade";
import "@univerjs/sheets-numfmt/facade";
import { functionClasses, functionHelp } from "./functions.ts";

export function newUniver(settings: Partial<ConstructorParameters<typeof Univer>[0]> = {}): Univer {
  return new Univer({ locale: LocaleType.EN_US, logLevel: LogLevel.ERROR, ...settings });
}

export function registerSheets(univer: Univer): void {
  univer.registerPlugin(UniverFormulaEnginePlugin, { function: functionClasses() });
  univer.registerPlugin(UniverSheetsPlugin);
  univer.registerPlugin(UniverSheetsNumfmtPlugin);
  univer.registerPlugin(UniverSheetsFormulaPlugin, {
    description: functionHelp(),
    // A file's values stay as they came until something they depend on changes.
    initialFormulaComputing: CalculationMode.WHEN_EMPTY,
  });
  univer.registerPlugin(UniverSheetsDataValidationPlugin);
  univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
}

export function facade(univer: Univer): FUniver {
  return FUniver.newAPI(univer);
}
