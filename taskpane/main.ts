/** Composition root for Excel: the pane on the workbook that is open. */
import { excelReady, officeIsDark } from "./host/excel/versions.ts";
import { excelHost } from "./host/excel.ts";
import { mountPane } from "./ui/pane.ts";

async function start(): Promise<void> {
  const element = document.getElementById("pane")!;
  if (!(await excelReady())) {
    const text = document.createElement("p");
    text.textContent =
      "This version of Excel runs neither the worksheet functions nor this pane. They run in Excel on the web, in Excel for Microsoft 365 (Windows from version 2008, Mac from 16.40) and in Excel bought once for Windows (retail from version 2311, volume licence from Excel 2021). Update Excel, or open the desk in a browser instead.";
    element.append(text);
    return;
  }
  const host = excelHost();
  // The page is loaded with the first worksheet function: the pane is made when it is opened.
  let made = false;
  const stop = host.onShown((shown) => {
    if (!shown || made) return;
    made = true;
    document.documentElement.classList.toggle("dark", officeIsDark());
    mountPane(element, host);
    queueMicrotask(() => stop());
  });
}

void start();
