import type { Rows } from "./book.ts";
export const DEMO_PLAN: Rows = [
  [
    "Row",
    "Feature",
    "Operation",
    "Units",
    "Material",
    "Machine",
    "Tool",
    "Thread",
    "Finish diameter",
    "Depth",
    "Through",
  ],
  [10, "6.8 hole", "drill", "mm", "4140", "VMC 2", "Drill 6.8", "", 6.8, 20, "yes"],
  [20, "M8", "thread mill", "mm", "4140", "VMC 2", "TM 6", "M8x1.25", "", 16, "no"],
  [30, "1/2-13", "thread mill", "in", "4140", "VMC 2", "", "1/2-13 UNC-2B", "", 0.75, "no"],
];
export const MATERIALS: Rows = [
  ["Material", "Group"],
  ["4140", "P"],
];
export const TOOLS: Rows = [
  ["Tool", "Kind"],
  ["Drill 6.8", "drill"],
  ["TM 6", "thread mill single"],
];
export const MACHINES: Rows = [
  ["Machine", "Min rpm"],
  ["VMC 2", 100],
];
