/** Shows the sentence behind an error value while its cell is selected. */
import type { SheetHost } from "../host/sheet.ts";
import type { facade } from "./engine.ts";

export function showReasons(host: SheetHost, api: ReturnType<typeof facade>, element: HTMLElement): void {
  const show = () => {
    const sheet = api.getActiveWorkbook()?.getActiveSheet();
    const range = sheet?.getSelection()?.getActiveRange();
    const reason =
      sheet && range
        ? host.reasonAt({ sheet: sheet.getSheetName(), row: range.getRow(), column: range.getColumn() })
        : "";
    element.textContent = reason;
    element.hidden = reason === "";
  };
  host.onSelectionChange(show);
  host.onDataChange(show);
}
