/**
 * Every command of the pane, tried on the strict stand-in for Excel with a fault at every sync: before anything is
 * done, at operations in between, and after all of it, when only the answer is lost. What the workbook holds
 * afterwards is compared with what it held before and with what it holds when nothing goes wrong.
 */
import { readCallouts } from "../../src/callouts/callouts.ts";
import { excelHost } from "../../taskpane/host/excel.ts";
import type { CellValue } from "../../taskpane/host/host.ts";
import { createSession } from "../../taskpane/work/session.ts";
import { emptyTable } from "../../taskpane/work/starting.ts";
import type { Session, Suggestion } from "../../taskpane/work/types.ts";
import { FakeExcel } from "../host/excel-fake/excel.ts";
import type { Fault } from "../host/excel-fake/types.ts";
import { LISTS, PLAN_SHEET, samplePlanner } from "./sample.ts";

const DEPTH: Suggestion = {
  change: "Less depth",
  before: "120 %",
  after: "80 %",
  writes: [
    { key: "depth", value: 12.7 },
    { key: "finishDiameter", value: 8 },
  ],
};
const CALLOUTS = readCallouts("6X 3/8-16 UNC-2B ↧ .75\n4X ⌀8.5 THRU", { units: "mm" }).rows;
const START = ["Materials", "Tools", "Machines"].map((name) => ({
  name,
  headings: [name, "Kind", "Rate"],
  rows: Array.from({ length: 3 }, (_, r) => [`${name} ${r}`, "x", r]),
}));

const WIDE = PLAN_SHEET.map((row) => (row.length > 3 ? row : [...row]));
/** Without the columns of results. */
const PLAIN = PLAN_SHEET.map((row) => row.filter((_, c) => row.length < 4 || (c !== 10 && c !== 11)));
const OWN = WIDE.map((row, r) =>
  r < 2 ? row : [...row, ...(r === 2 ? ["Verdict", "Basis", "Changed"] : [null, null, null])],
);
const WITHOUT_ROW_30 = PLAIN.slice(0, 5);

export interface Scenario {
  readonly name: string;
  readonly sheets: Readonly<Record<string, CellValue[][]>>;
  readonly prepare?: (fake: FakeExcel) => void;
  /** Done without a fault before the one that is tried. */
  readonly first?: (session: Session, fake: FakeExcel) => Promise<unknown>;
  readonly run: (session: Session) => Promise<unknown>;
  /** Sheets that may be there or not, but only whole: each is a job of its own. */
  readonly separate?: readonly string[];
}

const table = (name: string, rows: number, columns: number) => (fake: FakeExcel) =>
  void fake.addTable(name, fake.sheet("Plan")!, 2, 0, rows, columns);

/** The live block answers three columns, as many rows as its range has. */
const spilling = (fake: FakeExcel): void => {
  fake.calculate = (formula) => {
    const [, last] = /^=CUT\.PLAN\(Plan!\$A\$3:\$K\$(\d+)/.exec(formula) ?? [];
    if (last === undefined) return undefined;
    return [
      ["Row", "Verdict", "Reasons"],
      ...Array.from({ length: Number(last) - 3 }, (_, r): CellValue[] => [r, "ok", ""]),
    ];
  };
};

export const SCENARIOS: readonly Scenario[] = [
  { name: "numbers into the table's own columns", sheets: { Plan: OWN, ...LISTS }, run: (s) => s.writeNumbers() },
  {
    name: "numbers into a Table's own columns",
    sheets: { Plan: OWN, ...LISTS },
    prepare: table("Jobs", 3, 16),
    run: (s) => s.writeNumbers(),
  },
  { name: "numbers into columns without a verdict", sheets: { Plan: WIDE, ...LISTS }, run: (s) => s.writeNumbers() },
  { name: "numbers beside the table", sheets: { Plan: PLAIN, ...LISTS }, run: (s) => s.writeNumbers() },
  {
    name: "numbers beside the table again, for one row more",
    sheets: { Plan: WITHOUT_ROW_30, ...LISTS },
    async first(session, fake) {
      await session.writeNumbers();
      const plan = fake.sheet("Plan")!;
      plan.cells.set("5,2", { value: "drill" });
      plan.cells.set("5,3", { value: "in" });
      plan.cells.set("3,2", { value: "drill" });
      await session.refresh();
    },
    run: (s) => s.writeNumbers(),
  },
  { name: "the live block", sheets: { Plan: PLAIN, ...LISTS }, prepare: spilling, run: (s) => s.insertLive() },
  { name: "a row worked out", sheets: { Plan: PLAN_SHEET, ...LISTS }, run: (s) => s.workOut() },
  { name: "a suggestion", sheets: { Plan: PLAN_SHEET, ...LISTS }, run: (s) => s.apply(DEPTH) },
  { name: "callouts under the table", sheets: { Plan: WITHOUT_ROW_30, ...LISTS }, run: (s) => s.addCallouts(CALLOUTS) },
  { name: "callouts into spare rows", sheets: { Plan: PLAIN, ...LISTS }, run: (s) => s.addCallouts(CALLOUTS) },
  {
    name: "callouts into a Table",
    sheets: { Plan: PLAIN, ...LISTS },
    prepare: table("Jobs", 3, 11),
    run: (s) => s.addCallouts(CALLOUTS),
  },
  {
    name: "callouts into a Table, the older way",
    sheets: { Plan: PLAIN, ...LISTS },
    prepare(fake) {
      table("Jobs", 3, 11)(fake);
      fake.version = "1.9";
    },
    run: (s) => s.addCallouts(CALLOUTS),
  },
  {
    name: "callouts into a Table with totals",
    sheets: { Plan: PLAIN, ...LISTS },
    prepare(fake) {
      table("Jobs", 3, 11)(fake);
      fake.tables.at(-1)!.totals = true;
      fake.sheet("Plan")!.cells.set("6,0", { value: "Total" });
      fake.sheet("Plan")!.cells.set("6,8", { value: 24.75, formula: "=SUBTOTAL(109,[Depth])" });
    },
    run: (s) => s.addCallouts(CALLOUTS),
  },
  {
    name: "callouts beside a live block",
    sheets: { Plan: PLAIN, ...LISTS },
    prepare: spilling,
    first: (session) => session.insertLive(),
    run: (s) => s.addCallouts(CALLOUTS),
  },
  { name: "the quote", sheets: { Plan: PLAN_SHEET, ...LISTS }, run: (s) => s.writeQuote({ batch: 20 }) },
  {
    name: "the comparison",
    sheets: { Plan: PLAN_SHEET, ...LISTS, Machines: [...LISTS.Machines, ["Bay 4", 8000]] },
    run: (s) => s.writeComparison({ machine: ["Bay 3", "Bay 4"] }, { batch: 20 }),
  },
  {
    name: "the starting lists",
    sheets: { Plan: PLAN_SHEET },
    run: (s) => s.addLists(START),
    separate: ["Materials", "Tools", "Machines"],
  },
  { name: "an empty table", sheets: { Sheet1: [], ...LISTS }, run: (s) => s.addTable(emptyTable(s.store.get().lists)) },
  {
    name: "a card",
    sheets: { Plan: PLAN_SHEET, ...LISTS },
    run: (s) =>
      s.addCard([
        ["Row 10", "check"],
        ["Speed", "2546"],
      ]),
  },
];

/** All that a person can see, as text. */
export function seen(fake: FakeExcel, only?: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    fake.sheets
      .filter((sheet) => only === undefined || only.includes(sheet.name))
      .map((sheet) => [
        sheet.name,
        JSON.stringify([
          [...sheet.cells]
            .filter(([, cell]) => (cell.value ?? null) !== null || cell.formula !== undefined)
            .map(([key, { value, formula, format }]) => [key, value, formula, format ?? "General"])
            .sort((a, b) => String(a[0]).localeCompare(String(b[0]))),
          fake.tables.filter((t) => t.sheet === sheet).map(({ name, rows, columns }) => [name, rows, columns]),
          sheet.validations.length,
          sheet.charts.length,
          sheet.frozen,
        ]),
      ]),
  );
}

const settled = async () => {
  for (let turn = 0; turn < 6; turn++) await new Promise((done) => setTimeout(done));
};

async function open(scenario: Scenario): Promise<{ fake: FakeExcel; session: Session }> {
  const fake = new FakeExcel();
  for (const [name, grid] of Object.entries(scenario.sheets)) fake.addSheet(name, grid);
  fake.cursor = { row: 3, column: 1 };
  scenario.prepare?.(fake);
  fake.install();
  const session = createSession(excelHost(), samplePlanner);
  await session.refresh();
  await scenario.first?.(session, fake);
  await settled();
  return { fake, session };
}
function close({ fake, session }: { fake: FakeExcel; session: Session }): void {
  session.destroy();
  fake.uninstall();
}

export interface Ended {
  readonly scenario: string;
  readonly fault: Fault;
  readonly state: "as before" | "complete" | "half";
  readonly said: string;
  readonly kind: string;
  /** After the fault had passed and the person had pressed again where it was asked for. */
  readonly again: "complete" | "twice" | "not yet";
  readonly differs?: readonly string[];
}

const same = (a: Record<string, string>, b: Record<string, string>) =>
  Object.keys({ ...a, ...b }).every((name) => a[name] === b[name]);
const differing = (a: Record<string, string>, b: Record<string, string>) =>
  Object.keys({ ...a, ...b }).filter((name) => a[name] !== b[name]);

/** Faults to try: each sync in the three ways; of the operations in between those that change something. */
export function faultsOf(batches: FakeExcel["batches"], kind: Pick<Fault, "code" | "times"> = {}): Fault[] {
  const all: Fault[] = [];
  batches.forEach(({ writes }, i) => {
    const sync = i + 1;
    all.push({ sync, at: "request", ...kind }, { sync, at: "response", ...kind });
    for (const at of writes.slice(1)) all.push({ sync, at, ...kind });
  });
  return all;
}

export async function trial(scenario: Scenario, kind: Pick<Fault, "code" | "times"> = {}): Promise<Ended[]> {
  const clean = await open(scenario);
  const before = seen(clean.fake);
  const first = clean.fake.batches.length;
  await scenario.run(clean.session);
  await settled();
  const { message } = clean.session.store.get();
  if (message?.kind !== "done" || /fault/.test(message.text)) throw new Error(`${scenario.name}: ${message?.text}`);
  const after = seen(clean.fake);
  const faults = faultsOf(clean.fake.batches.slice(first), kind);
  close(clean);

  const ended: Ended[] = [];
  for (const fault of faults) {
    const { fake, session } = await open(scenario);
    fake.fault = fault;
    await scenario.run(session);
    await settled();
    const now = seen(fake);
    const message = session.store.get().message;
    const whole =
      scenario.separate !== undefined &&
      Object.entries(now).every(([name, text]) =>
        scenario.separate!.includes(name) ? text === after[name] : text === before[name],
      );
    const state = same(now, after) ? "complete" : same(now, before) || whole ? "as before" : "half";
    fake.fault = undefined;
    if (message?.kind !== "done") {
      await session.refresh();
      await scenario.run(session);
      await settled();
    }
    const later = seen(fake);
    ended.push({
      scenario: scenario.name,
      fault,
      state,
      kind: message?.kind ?? "none",
      said: `${message?.text ?? ""} ${message?.action ?? ""}`.trim(),
      again: same(later, after)
        ? "complete"
        : Object.keys(later).length > Object.keys(after).length ||
            JSON.stringify(later).length > JSON.stringify(after).length
          ? "twice"
          : "not yet",
      ...(state === "half" ? { differs: differing(now, before) } : {}),
    });
    close({ fake, session });
  }
  return ended;
}

export interface Counted {
  readonly faults: number;
  readonly half: number;
  readonly completeButFailed: number;
  readonly failedButDone: number;
  readonly twice: number;
  readonly notYet: number;
}
export const count = (ended: readonly Ended[]): Counted => ({
  faults: ended.length,
  half: ended.filter((one) => one.state === "half").length,
  completeButFailed: ended.filter((one) => one.state === "complete" && one.kind === "failed").length,
  failedButDone: ended.filter((one) => one.state !== "complete" && one.kind === "done").length,
  twice: ended.filter((one) => one.again === "twice").length,
  notYet: ended.filter((one) => one.again === "not yet").length,
});
