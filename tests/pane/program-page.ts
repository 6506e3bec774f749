/** The pane on a small job with its real plan, for the browser: `?row=2` chooses the selected row. */
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { mountPane } from "../../taskpane/ui/pane.ts";
import { fakeHost } from "./fake-host.ts";

const rows: CellValue[][] = [
  [
    "Row",
    "Operation",
    "Units",
    "Quantity",
    "Material",
    "Machine",
    "Tool",
    "Thread",
    "Start diameter",
    "Finish diameter",
    "Depth",
    "Hole depth",
  ],
  [
    10,
    "thread mill",
    "mm",
    1,
    "Cast aluminium AlSi10Mg (EN AC-43000)",
    "Centre V4",
    "TM-M8-S",
    "M8",
    6.8,
    null,
    16,
    24,
  ],
  [20, "bore", "mm", 1, "Cast aluminium AlSi10Mg (EN AC-43000)", "Centre V4", "EM-12-3", null, 39.4, 40, 22, null],
  [
    30,
    "drill",
    "in",
    1,
    "Aluminium EN AW-6082 T6 (AA 6061)",
    "Centre V4",
    "D-#7C",
    "1/4-20 UNC-2B",
    null,
    null,
    0.75,
    null,
  ],
  [
    40,
    "thread mill",
    "mm",
    1,
    "Cast aluminium AlSi10Mg (EN AC-43000)",
    "Centre V4",
    "TM-M8-S",
    "M8",
    6.8,
    null,
    null,
    24,
  ],
];
const host = fakeHost({
  Plan: rows,
  Materials: MATERIALS as CellValue[][],
  Tools: TOOLS as CellValue[][],
  Machines: MACHINES as CellValue[][],
});
host.cursor = { row: Number(new URLSearchParams(location.search).get("row") ?? 1), column: 1 };
Object.assign(window, { host });
mountPane(document.getElementById("pane")!, { ...host, kind: "excel" });
