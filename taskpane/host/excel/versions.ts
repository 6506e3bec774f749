/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** Which Excel this is, and what it can do. */

/** Requirement sets without which nothing works; the manifest declares the same. */
export const NEEDS: Readonly<Record<string, string>> = {
  SharedRuntime: "1.1",
  CustomFunctionsRuntime: "1.3",
  ExcelApi: "1.9",
};

/** Members used beyond NEEDS; each use is guarded. */
export const ONE_UNDO_GROUP = "1.20";
/** Growing a table this way fills its calculated columns; adding rows with values leaves them blank. */
export const TABLE_RESIZE = "1.13";
/** What formulas spill into; older versions know no formulas that spill. */
export const SPILLS = "1.12";
/** Where merged cells are; without it they are found when a write does not stand. */
export const MERGED_AREAS = "1.13";

export const supports = (version: string): boolean => Office.context.requirements.isSetSupported("ExcelApi", version);

/** Waits until Office is there; answers whether this is Excel with what we need. */
export async function excelReady(): Promise<boolean> {
  const { host } = await Office.onReady();
  return (
    host === Office.HostType.Excel &&
    Object.entries(NEEDS).every(([set, version]) => Office.context.requirements.isSetSupported(set, version))
  );
}

/** Dark background in the Office theme, where the host says so. */
export function officeIsDark(): boolean {
  const background = Office.context.officeTheme?.bodyBackgroundColor ?? "";
  const [, r, g, b] = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(background) ?? [];
  if (r === undefined || g === undefined || b === undefined) return false;
  return 0.2126 * Number.parseInt(r, 16) + 0.7152 * Number.parseInt(g, 16) + 0.0722 * Number.parseInt(b, 16) < 110;
}
