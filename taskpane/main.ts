/** Composition root for Excel: the pane on the workbook that is open. */
import { excelReady, officeIsDark } from "./host/excel/versions.ts";
import { excelHost } from "./host/excel.ts";
import { mountPane } from "./ui/pane.ts";

async function start(): Promise<void> {
  const element = document.getElementById("pane")!;
  if (!(await excelReady())) {
    const text = document.createElement("p");
    text.textContent =
      "This pane works in Excel 2021 or later, Microsoft 365 and Excel on the web. Open the desk in a browser instead, or update Excel.";
    element.append(text);
    return;
  }
  document.documentElement.classList.toggle("dark", officeIsDark());
  mountPane(element, excelHost());
}

void start();
