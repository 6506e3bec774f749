/** The pane on a workbook in memory, for the browser: `?table=none`, `?lists=none`, `?own=formulas`, `?row=2` choose what it holds. */
import { mountPane } from "../../taskpane/ui/pane.ts";
import { fakeHost } from "./fake-host.ts";
import { LISTS, PLAN_SHEET, samplePlanner } from "./sample.ts";

const wish = new URLSearchParams(location.search);
const host = fakeHost({
  Plan: wish.get("table") === "none" ? [["Notes"], ["Call Mr. Hale"]] : PLAN_SHEET,
  ...(wish.get("lists") === "none" ? {} : LISTS),
});
if (wish.get("unit") === "none") for (const row of host.sheets.get("Plan")!) if (row.length > 4) row.splice(3, 1);
if (wish.get("feed") !== null) {
  host.sheets.get("Plan")![2]![5] = "Feed";
  host.sheets.get("Plan")![3]![5] = 0.05;
}
if (wish.get("table") === "odd")
  host.sheets.set("Plan", [
    ["Alpha", "Beta", "Gamma"],
    ["drill", 8.5, 20],
  ]);
if (wish.get("evil") !== null) host.sheets.get("Plan")![3]![1] = '<img src=x onerror="window.hurt=1">';
host.cursor = { row: 2 + Number(wish.get("row") ?? 1), column: 1 };
if (wish.get("protected") !== null) host.protectedSheets.add("Plan");
// Two formulas of the user's, where the plan has results.
if (wish.get("own") === "formulas") {
  host.formulas.set("Plan!3,10", "=Speed*12");
  host.formulas.set("Plan!4,11", "=K5*0.1");
}
Object.assign(window, { host });
const advice = [
  {
    change: "Stick-out 41 mm → 34 mm",
    before: "check, deflection 155 %",
    after: "ok, deflection 92 %",
    writes: [{ key: "depth", value: 20 }],
  },
];
mountPane(document.getElementById("pane")!, { ...host, kind: "excel" }, samplePlanner, function* () {
  yield;
  return wish.get("row") === "1" ? advice : [];
});
