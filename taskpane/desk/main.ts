/** The desk: grid, pane and the bar above them. The one place that wires them together. */
import "./desk.css";
import "../pane.css";
import type { IWorkbookData } from "@univerjs/core";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { HostError } from "../host/host.ts";
import { sheetHost } from "../host/sheet.ts";
import { mountPane } from "../ui/pane.ts";
import { blankPlan, type Lists, planBook } from "./book.ts";
import { keepSizes } from "./fractions.ts";
import { startGrid } from "./grid.ts";
import { growLive } from "./grow.ts";
import { showReasons } from "./reason.ts";
import { takeWorkbook } from "./take.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const LISTS: Lists = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };

const element = <E extends HTMLElement>(id: string) => document.getElementById(id) as E;
const state = element("state");
const bookName = element("book-name");

function say(text: string, trouble = false, busy = false): void {
  state.textContent = text;
  state.dataset.busy = busy ? "yes" : "no";
  state.classList.toggle("trouble", trouble);
}

/** Asks before something of the user's is given up. */
function ask(question: string, yes: string): Promise<boolean> {
  const dialog = element<HTMLDialogElement>("question");
  element("question-text").textContent = question;
  element("question-yes").textContent = yes;
  return new Promise((resolve) => {
    const done = (answer: boolean) => () => {
      dialog.close();
      resolve(answer);
    };
    element("question-yes").onclick = done(true);
    element("question-no").onclick = done(false);
    dialog.oncancel = () => resolve(false);
    dialog.showModal();
    element("question-no").focus();
  });
}

const { univer, api } = startGrid(element("grid"));
const demoJob = () => planBook("Demo job", DEMO, LISTS);
// The engine's parts are there from the first workbook on; the host wants them.
api.createWorkbook(demoJob());
const firstAnswers = calculated();
keepSizes(univer);
const host = sheetHost(univer);
let name = "";
let savedAt = 0;
const unsaved = () => host.edits() !== savedAt;

async function show(data: IWorkbookData, title: string): Promise<void> {
  const open = api.getActiveWorkbook();
  if (open) api.disposeUnit(open.getId());
  api.createWorkbook({ ...data, id: `${data.id}-${Date.now().toString(36)}` });
  const answered = calculated();
  entitle(title);
  savedAt = host.edits();
  await answered;
}

function entitle(title: string): void {
  name = title;
  bookName.textContent = title;
  document.title = `${title} – Tablefeed desk`;
}

/** Waits for the engine to have answered what was just opened. */
function calculated(): Promise<void> {
  return new Promise((resolve) => {
    const done = () => {
      end.dispose();
      clearTimeout(enough);
      resolve();
    };
    const end = api.getFormula().calculationResultApplied(done);
    const enough = setTimeout(done, 3000);
  });
}

async function mayReplace(): Promise<boolean> {
  return !unsaved() || ask(`“${name}” has changes that are not saved. Give them up?`, "Give them up");
}

async function guarded(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (problem) {
    say(problem instanceof HostError ? problem.message : `That did not work: ${String(problem)}`, true);
  }
}

async function save(forExcel: boolean): Promise<void> {
  say("Saving …", false, true);
  const { writeXlsx } = await import("./xlsx.ts");
  // What is being typed belongs to it as well.
  await api.getActiveWorkbook()?.endEditingAsync(true);
  const edits = host.edits();
  const { bytes, left } = await writeXlsx(takeWorkbook(univer), { forExcel });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: XLSX }));
  link.download = `${name.replace(/\.xlsx$/i, "")}.xlsx`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  savedAt = edits;
  say(left.length === 0 ? `Saved ${link.download}` : `Saved ${link.download}, without ${left.join(", ")}`);
}

async function open(file: File): Promise<void> {
  if (!(await mayReplace())) return;
  say(`Opening ${file.name} …`, false, true);
  const { readXlsx } = await import("./xlsx.ts");
  const { data, left } = await readXlsx(new Uint8Array(await file.arrayBuffer()), file.name);
  await show(data, file.name);
  say(left.length === 0 ? `Opened ${file.name}` : `Opened ${file.name}; not carried over: ${left.join(", ")}`);
}

element("open").onclick = () => element<HTMLInputElement>("file").click();
element<HTMLInputElement>("file").onchange = () => {
  const input = element<HTMLInputElement>("file");
  const file = input.files?.[0];
  input.value = "";
  if (file) void guarded(() => open(file));
};
element("save").onclick = () => void guarded(() => save(false));
element("save-excel").onclick = () => void guarded(() => save(true));
element("blank").onclick = () =>
  void guarded(async () => {
    if (!(await mayReplace())) return;
    await show(planBook("Plan", blankPlan(), LISTS), "Plan.xlsx");
    say("A blank planning table, with the lists");
  });
const DEMO_NAME = "Demo job.xlsx";
const DEMO_WORDS = "The demo job of the Harrow Lane Machine Works";
element("demo").onclick = () =>
  void guarded(async () => {
    if (!(await mayReplace())) return;
    say("Loading the demo job …", false, true);
    await show(demoJob(), DEMO_NAME);
    say(DEMO_WORDS);
  });

document.addEventListener(
  "keydown",
  (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
    if (event.key === "s") void guarded(() => save(false));
    else if (event.key === "o") element("open").click();
    else return;
    event.preventDefault();
    event.stopPropagation();
  },
  true,
);
window.addEventListener("beforeunload", (event) => {
  if (unsaved()) event.preventDefault();
});

mountPane(element("pane"), host);
host.onDataChange(() => void guarded(async () => void (await growLive(api, host))));
showReasons(host, api, element("reason"));
void guarded(async () => {
  entitle(DEMO_NAME);
  await firstAnswers;
  say(DEMO_WORDS);
});

/** For the tests, and for whoever looks at the desk from the browser's console. */
Object.assign(globalThis, {
  tablefeedDesk: { valueAt: host.valueAt, reasonAt: host.reasonAt, select: host.select, unsaved },
});
