/** Tables of the invented shop, their plan as the sheet shows it, and the cuts a programmer would make from it. */

import { PLAN } from "../../functions/plan.ts";
import { CHECKPROGRAM, PROGRAMWORDS } from "../../functions/program.ts";
import { MACHINES } from "../../src/lists/machines.ts";
import { MATERIALS } from "../../src/lists/materials.ts";
import { TOOLS } from "../../src/lists/tools.ts";
import type { Place } from "./post.ts";
import type { ArcCut, HoleCut, LineCut, RoundCut, ThreadCut } from "./writer.ts";

type Cell = string | number | null;
export type RowCells = Readonly<Record<string, Cell>>;
const lists = [MATERIALS, TOOLS, MACHINES] as unknown as [any[][], any[][], any[][]];

/** A table from rows with their own headings. */
export function table(rows: readonly RowCells[]): any[][] {
  const headings = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return [headings, ...rows.map((row) => headings.map((h) => row[h] ?? null))];
}

/** A row's results by heading, lengths and feeds in mm and mm/min. */
export type Planned = Record<string, any>;
const LENGTHS = new Set([
  "Start diameter",
  "Path radius",
  "Start Z",
  "End Z",
  "Table feed",
  "Feed per tooth",
  "Size",
  "Size min",
  "Size max",
]);
export function planned(rows: readonly RowCells[], machines: any[][] = lists[2]): Planned[] {
  const [head, ...lines] = PLAN(table(rows), lists[0], lists[1], machines);
  return lines.map((line, n) =>
    Object.fromEntries(
      line.map((cell, i) => [
        head![i],
        LENGTHS.has(head![i]) && typeof cell === "number" && rows[n]!.Units === "in" ? cell * 25.4 : cell,
      ]),
    ),
  );
}

/** Cells of a tool, lengths in mm. */
export function toolOf(name: string): Record<string, any> {
  const head = TOOLS[0]!.map(String);
  const line = TOOLS.find((row) => row[0] === name)!;
  const k = line[head.indexOf("Units")] === "in" ? 25.4 : 1;
  const lengths = new Set(["Diameter", "Cutting length", "Tip to profile"]);
  return Object.fromEntries(
    head.map((h, i) => [h, lengths.has(h) && typeof line[i] === "number" ? (line[i] as number) * k : line[i]]),
  );
}

export interface FindingLine {
  readonly block: number | "";
  readonly row: string;
  readonly severity: "ok" | "check" | "stop";
  readonly code: string;
  readonly text: string;
}

export function check(text: string, rows: readonly RowCells[], toolZero?: "tip" | "profile"): FindingLine[] {
  const answer = CHECKPROGRAM([[text]], table(rows), ...lists, toolZero === undefined ? undefined : [[toolZero]]);
  if (answer.length === 1) throw new Error(String(answer[0]![0]?.message));
  return answer
    .slice(1)
    .map(([block, row, severity, code, finding]) => ({ block, row, severity, code, text: finding }));
}

export function words(rows: readonly RowCells[], toolZero?: "tip" | "profile"): string[] {
  const answer = PROGRAMWORDS(table(rows), ...lists, toolZero === undefined ? undefined : [[toolZero]]);
  return answer.slice(1).map((line) => String(line[1]));
}

/** What is not ok, as "row code severity". */
export const alarms = (lines: readonly FindingLine[]) =>
  lines.filter((line) => line.severity !== "ok").map((line) => `${line.row} ${line.code} ${line.severity}`.trim());

const mm = (row: RowCells, key: string) => {
  const cell = row[key];
  if (typeof cell === "string" && cell.includes("/")) {
    const [a, b] = cell.split("/").map(Number);
    return (25.4 * a!) / b!;
  }
  return (cell as number) * (row.Units === "in" ? 25.4 : 1);
};

const depthsOf = (plan: Planned, row: RowCells) =>
  String(plan.Depths)
    .split(" · ")
    .map((d) => Number(d) * (row.Units === "in" ? 25.4 : 1));

export function threadCut(
  tool: number,
  row: RowCells,
  plan: Planned,
  pitch: number,
  inside: boolean,
  places: Place[],
): ThreadCut {
  const t = toolOf(plan.Tool);
  const depths = depthsOf(plan, row);
  const last = depths[depths.length - 1]!;
  const up = String(plan.Direction).startsWith("bottom up");
  const low = Math.min(plan["Start Z"], plan["End Z"]);
  return {
    op: "thread",
    tool,
    rpm: plan["Spindle speed"],
    feed: plan["Table feed"],
    spindle: 3,
    places: [...places],
    radii: depths.map((d) => plan["Path radius"] + (inside ? d - last : last - d)),
    cutter: t.Diameter,
    inside,
    counter: String(plan.Direction).includes("counter"),
    up,
    pitch,
    lows: [low - t["Tip to profile"]],
    turns: Math.abs(plan["End Z"] - plan["Start Z"]) / pitch,
    climb: (row.Way ?? "climb") === "climb",
    clear: inside ? 0 : mm(row, "Start diameter") / 2 + t.Diameter / 2 + 3,
  };
}

export function roundCut(
  tool: number,
  row: RowCells,
  plan: Planned,
  places: Place[],
  levels: number,
  fall: number,
): RoundCut {
  const t = toolOf(plan.Tool);
  const inside = row.Operation !== "boss";
  const finish = mm(row, "Finish diameter");
  const start = (row["Start diameter"] as number) > 0 ? mm(row, "Start diameter") : 0;
  const depths = depthsOf(plan, row);
  const gone = depths[depths.length - 1]!;
  const d = t.Diameter as number;
  const depth = mm(row, "Depth");
  return {
    op: "round",
    tool,
    rpm: plan["Spindle speed"],
    feed: plan["Table feed"],
    spindle: 3,
    places: [...places],
    radii: depths.map((g) => (inside ? (finish - 2 * (gone - g) - d) / 2 : (finish + 2 * (gone - g) + d) / 2)),
    cutter: d,
    inside,
    counter: inside === ((row.Way ?? "climb") === "climb"),
    climb: (row.Way ?? "climb") === "climb",
    levels: Array.from({ length: levels }, (_, k) => (-depth * (k + 1)) / levels),
    fall,
    clear: inside ? 0 : start / 2 + d / 2 + 3,
  };
}

export function holeCut(tool: number, row: RowCells, plan: Planned, kind: HoleCut["kind"], places: Place[]): HoleCut {
  const depth = mm(row, "Depth");
  const t = plan.Tool === "" ? undefined : toolOf(plan.Tool);
  const d = (t?.Diameter as number) ?? 0;
  // point of the drill, from its angle; a millimetre out of a through hole
  const point = kind === "drill" ? d / 2 / Math.tan(((t?.["Point angle"] ?? 118) * Math.PI) / 360) : 0;
  const bottom = -(depth + point + (row.Through === "yes" && kind !== "countersink" ? 1 : 0));
  const pecks: number[] = [];
  for (let z = -3 * d; kind === "drill" && z > bottom + 1e-9; z -= d) pecks.push(z);
  return {
    op: "hole",
    tool,
    rpm: plan["Spindle speed"],
    feed: plan["Table feed"],
    spindle: kind === "tap" && row.Hand === "left" ? 4 : 3,
    places: [...places],
    bottom,
    kind,
    pecks: [...pecks, bottom],
    left: row.Hand === "left",
  };
}

export function lineCut(tool: number, row: RowCells, plan: Planned, levels: number): LineCut {
  const d = toolOf(plan.Tool).Diameter as number;
  const depth = mm(row, row.Depth === undefined ? "Axial depth" : "Depth");
  const side = row.Operation === "side";
  return {
    op: "line",
    tool,
    rpm: plan["Spindle speed"],
    feed: plan["Table feed"],
    spindle: 3,
    x0: -d / 2,
    x1: mm(row, "Length") + d / 2,
    y: side ? d / 2 : 0,
    levels: Array.from({ length: levels }, (_, k) => (-depth * (k + 1)) / levels),
    compensation: side ? 41 : 0,
  };
}

export function arcCut(tool: number, row: RowCells, plan: Planned): ArcCut {
  const d = toolOf(plan.Tool).Diameter as number;
  const inside = row.Side === "inside";
  const finish = mm(row, "Finish diameter");
  return {
    op: "arc",
    tool,
    rpm: plan["Spindle speed"],
    feed: plan["Table feed"],
    spindle: 3,
    radius: inside ? (finish - d) / 2 : (finish + d) / 2,
    sweep: (360 * mm(row, "Length")) / (Math.PI * finish),
    counter: inside,
    inside,
    levels: [-mm(row, "Depth")],
    climb: true,
  };
}

/** The machines as if their acceleration were there at once: times by trapezoids of speed alone. */
export function withoutRamp(): any[][] {
  const at = lists[2][0]!.indexOf("Ramp time [s]");
  return lists[2].map((row) => row.filter((_, i) => i !== at));
}
