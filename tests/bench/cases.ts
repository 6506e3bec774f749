/** What the bench times in this process: worksheet functions and the plan, on inputs made by a fixed rule. */
import * as fn from "../../functions/index.ts";
import { DEMO } from "../../src/lists/demo.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import { advise } from "../../src/plan/advise.ts";
import { ADVICE_BUDGET } from "../../src/plan/search.ts";
import { planTable } from "../../src/plan/table.ts";
import { readLists, readRows } from "../../src/table/read.ts";
import { programBench } from "./program-bench.ts";
import { quoteBench } from "./quote-bench.ts";

export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly note?: string;
}

/** A fixed sequence in [0, 1): the fractional parts of multiples of the golden ratio. */
const part = (i: number) => (i * 0.6180339887498949) % 1;

/** Inputs of the sheet: surface speed, diameter, teeth, feed per tooth, radial share, axial depth, arc diameter share, power. */
export function sheetInputs(rows: number): number[][] {
  return Array.from({ length: rows }, (_, i) => [
    40 + 300 * part(i + 1),
    2 + 18 * part(i * 3 + 2),
    2 + (i % 5),
    0.01 + 0.15 * part(i * 5 + 3),
    0.02 + 0.9 * part(i * 7 + 5),
    0.5 + 20 * part(i * 11 + 7),
    1.2 + 4 * part(i * 13 + 11),
    0.1 + 5 * part(i * 17 + 13),
  ]);
}

/** The same twelve columns as plain spreadsheet formulas in row `r`; inputs in A to H. */
export const SHEET_FORMULAS: readonly ((r: number) => string)[] = [
  (r) => `1000*A${r}/(PI()*B${r})`,
  (r) => `PI()*B${r}*I${r}/1000`,
  (r) => `I${r}*C${r}*D${r}`,
  (r) => `K${r}/(I${r}*C${r})`,
  (r) => `E${r}*B${r}*F${r}*K${r}/1000`,
  (r) => `DEGREES(ACOS(1-2*E${r}))`,
  (r) => `IF(E${r}>=0.5,D${r},D${r}*SIN(ACOS(1-2*E${r})))`,
  (r) => `D${r}*2*E${r}/ACOS(1-2*E${r})`,
  (r) => `IF(E${r}>=0.5,D${r},D${r}/SIN(ACOS(1-2*E${r})))`,
  (r) => `K${r}*(G${r}*B${r}-B${r})/(G${r}*B${r})`,
  (r) => `((G${r}*B${r})^2-MAX(0.9*G${r}*B${r},ABS(2*B${r}-G${r}*B${r}))^2)/(4*(G${r}*B${r}-B${r}))`,
  (r) => `60000*H${r}/(2*PI()*I${r})`,
];

/** The twelve columns by the lifted worksheet functions, one call a column. */
export function sheetColumns(inputs: readonly (readonly number[])[]): number[][][] {
  const column = (k: number) => inputs.map((row) => [row[k]!]);
  const [speed, diameter, teeth, feed, share, axial, arc, power] = [0, 1, 2, 3, 4, 5, 6, 7].map(column) as number[][][];
  const times = (a: number[][], b: number[][], f = 1) => a.map((row, i) => [row[0]! * b[i]![0]! * f]);
  const radial = times(share!, diameter!);
  const finish = times(arc!, diameter!);
  const start = times(arc!, diameter!, 0.9);
  const mm = [["mm"]];
  const rpm = fn.RPM(speed!, diameter!, mm);
  const table = fn.TABLEFEED(rpm, teeth!, feed!);
  return [
    rpm,
    fn.SURFACESPEED(rpm, diameter!, mm),
    table,
    fn.FEEDPERTOOTH(table, rpm, teeth!),
    fn.REMOVALRATE(radial, axial!, table, mm),
    fn.ENGAGEANGLE(radial, diameter!),
    fn.CHIPTHICKNESS(feed!, radial, diameter!),
    fn.CHIPTHICKNESS(feed!, radial, diameter!, [["mean"]]),
    fn.THINNEDFEED(feed!, radial, diameter!),
    fn.ARCFEED(table, finish, diameter!, [["inside"]]),
    fn.ARCDEPTH(start, finish, diameter!, [["inside"]]),
    fn.SPINDLETORQUE(power!, rpm, mm),
  ];
}

/** Median time of several runs [ms], after one that does not count. */
export function time(run: () => unknown, runs = 7): number {
  run();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

let call = 0;

/**
 * Demo rows repeated, each a little different, and different at each call: PLAN remembers rows it has seen. Not `alike`: the force of
 * each is a hair off, so that no cut comes again either.
 */
function planRows(rows: number, operation?: string, alike = true): unknown[][] {
  const head = DEMO[0]!;
  const at = (heading: string) => head.indexOf(heading);
  const source = DEMO.slice(1).filter((row) => operation === undefined || row[at("Operation")] === operation);
  call++;
  const made = Array.from({ length: rows }, (_, i) => {
    const row = [...source[i % source.length]!] as unknown[];
    const depth = row[at("Depth")];
    if (typeof depth === "number") row[at("Depth")] = depth * (0.8 + 0.2 * part(i)) * (1 + 1e-6 * call);
    const worn = row[at("Wear factor")];
    if (!alike) row[at("Wear factor")] = (typeof worn === "number" ? worn : 1) * (1 + 1e-7 * (rows * call + i));
    return row;
  });
  return [[...head], ...made];
}

const lists = { materials: MATERIALS, tools: TOOLS, machines: MACHINES };
const plan = (rows: unknown[][]) => fn.PLAN(rows, MATERIALS as any[][], TOOLS as any[][], MACHINES as any[][]);

const THREADS = [
  "1/2-13 UNC-2B",
  "#10-32 UNF-2A",
  "M6",
  "M10x1.25-6g",
  "3/8-24 UNF-3B",
  "M20",
  "1/4-20",
  "M3x0.5-6H",
  "5/8-18",
  "1-8 UNC-2A",
];

export async function figures(): Promise<Figure[]> {
  const out: Figure[] = [];
  const add = (name: string, value: number, unit: string, note?: string) => out.push({ name, value, unit, note });

  const lookups = Array.from({ length: 10000 }, (_, i) => [THREADS[i % THREADS.length]]);
  const limits = Array.from({ length: 10000 }, (_, i) => [i % 3 === 0 ? "min" : i % 3 === 1 ? "basic" : "max"]);
  add(
    "THREADSIZE, 10,000 mixed look-ups in one call",
    time(() => fn.THREADSIZE(lookups, [["pitch"]], limits, [["mm"]])),
    "ms",
  );
  const cutters = Array.from({ length: 10000 }, (_, i) => [4 + 0.8 * part(i)]);
  const flats = Array.from({ length: 10000 }, (_, i) => [0.02 + 0.1 * part(i * 3)]);
  add(
    "THREADSWEEP and THREADPATH, 10,000 each, no two alike",
    time(
      () => [fn.THREADSWEEP([["M6"]], cutters, flats, [["mm"]]), fn.THREADPATH([["M6"]], cutters, flats, [["mm"]])],
      3,
    ),
    "ms",
  );
  const thousand = time(() => plan(planRows(1000)), 3);
  const many = time(() => plan(planRows(10000)), 1);
  add("PLAN, 1,000 mixed rows", thousand, "ms", `${(thousand / 1000).toFixed(2)} ms a row`);
  add("PLAN, 10,000 mixed rows", many, "ms", `growth ${(many / thousand).toFixed(1)} for 10 × the rows`);
  add(
    "PLAN, 1,000 thread-mill rows",
    time(() => plan(planRows(1000, "thread mill")), 3),
    "ms",
  );
  add(
    "PLAN, 1,000 mixed rows, no two cuts alike",
    time(() => plan(planRows(1000, undefined, false)), 3),
    "ms",
  );
  add(
    "PLAN, 1,000 thread-mill rows, no two cuts alike",
    time(() => plan(planRows(1000, "thread mill", false)), 3),
    "ms",
  );
  add(
    "plan of one row with all steps",
    time(() => planTable({ rows: planRows(1), ...lists }), 15),
    "ms",
  );

  const read = readLists(MATERIALS, TOOLS, MACHINES);
  const rows = readRows(DEMO);
  const each = rows.map((row) => {
    advise(row, read);
    const start = performance.now();
    const { tried } = advise(row, read);
    return { ms: performance.now() - start, tried };
  });
  const sorted = each.map((e) => e.ms).sort((a, b) => a - b);
  add("advice for one row, median of the demo job", sorted[Math.floor(sorted.length / 2)]!, "ms");
  add(
    "advice for one row, slowest of the demo job",
    sorted[sorted.length - 1]!,
    "ms",
    `at most ${ADVICE_BUDGET} plans`,
  );
  out.push(...quoteBench());
  out.push(programBench());
  return out;
}
