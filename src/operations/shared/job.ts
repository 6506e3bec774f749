/** A row with the list entries it names, ready to be worked out. */
import { TradeError } from "../../errors.ts";
import type { FactsOf, FindingCode } from "../../findings.ts";
import { classLimits, type SizeLimits } from "../../fits/limits.ts";
import type { Machine, Material, Tool } from "../../table/lists.ts";
import type { List, Lists, ReadRow } from "../../table/read.ts";
import type { OperationName, Row, RowKey } from "../../table/rows.ts";
import type { FeatureTime } from "./motion.ts";
import { Work } from "./work.ts";

/** What the row that roughs a wall hands to the one that finishes it. */
export interface Handed {
  /** Stock that bending leaves beyond the programmed wall, a side: where the tool bends least and where it bends most [mm]. */
  readonly left: readonly [least: number, most: number];
  /** Name of that row. */
  readonly row: string | number | null;
}

export interface Job {
  readonly work: Work;
  readonly row: Row;
  readonly operation: OperationName;
  readonly lists: Lists;
  readonly material?: Material;
  readonly machine?: Machine;
  /** The tool that the row names; blank: the one that is proposed, if any. */
  readonly tool?: Tool;
  /** Limits of the finish diameter, where the row names a tolerance class. */
  readonly size?: SizeLimits;
  /** What the row that roughs this one's wall leaves on it. */
  readonly handed?: Handed;
}

/** What an operation hands back for time, tool life and cost. */
export interface Done {
  readonly tool?: Tool;
  readonly time?: FeatureTime;
  /** Seconds the edge cuts per feature, and its surface speed [m/min]: for tool life. */
  readonly cutting?: { readonly seconds: number; readonly surfaceSpeed: number };
}

/** Looks up what the row names, and puts everything that is wrong with its cells among the findings. */
export function startJob(read: ReadRow, lists: Lists, detail = true, handed?: Handed): Job {
  const { row, problems } = read;
  const work = new Work(row.units ?? "mm", detail);
  const bad = new Set(problems.map((p) => p.key));
  for (const { key, error } of problems) work.find("bad-cell", { about: key, error });
  if (row.units === undefined && !bad.has("units")) work.find("units-blank", {});
  if (row.operation === undefined && !bad.has("operation")) work.find("operation-blank", {});
  const material = lookUp(work, row.material, lists.materials, "unknown-material", "list-material");
  const machine = lookUp(work, row.machine, lists.machines, "unknown-machine", "list-machine");
  const tool = lookUp(work, row.tool, lists.tools, "unknown-tool", "list-tool");
  if (row.material === undefined && !bad.has("material")) work.find("material-blank", {});
  if (row.machine === undefined && !bad.has("machine")) work.find("machine-blank", {});
  const operation = row.operation ?? "drill";
  const { row: meant, size } = classed(work, operation, row);
  return { work, row: meant, operation, lists, material, machine, tool, size, handed };
}

/** Operations whose finish diameter may have a tolerance class. */
const CLASSED: readonly OperationName[] = ["drill", "ream", "bore", "boss", "counterbore"];
/** Operations whose walls are made to the middle of the limits; a drill or reamer has the size that it has. */
const TO_THE_MIDDLE: readonly OperationName[] = ["bore", "boss", "counterbore"];

/** A tolerance class on the finish diameter: its limits, and for a milled wall their middle and half width. */
function classed(work: Work, operation: OperationName, row: Row): Pick<Job, "row" | "size"> {
  if (!CLASSED.includes(operation)) return { row };
  const { finishDiameter, sizeClass } = row;
  if (finishDiameter === undefined || sizeClass === undefined) return { row };
  const size = attempt(work, "unknown-class", () => {
    const wanted = operation === "boss" ? "shaft" : "hole";
    return classLimits(finishDiameter, sizeClass, "Size class", wanted);
  });
  if (!size || !TO_THE_MIDDLE.includes(operation) || row.sizeTolerance !== undefined) return { row, size };
  const middle = (size.min + size.max) / 2;
  return { row: { ...row, finishDiameter: middle, sizeTolerance: (size.max - size.min) / 2 }, size };
}

/** An entry of a list by its name; undefined, with a finding, when it is not there. */
function lookUp<T>(
  work: Work,
  name: string | undefined,
  list: List<T>,
  unknown: "unknown-material" | "unknown-tool" | "unknown-machine",
  wrong: "list-material" | "list-tool" | "list-machine",
): T | undefined {
  if (name === undefined) return undefined;
  const found = list.find(name);
  if (found === undefined) {
    work.find(unknown, { name, near: list.nearest(name) });
    return undefined;
  }
  const own = list.nameOf(found);
  for (const { key, error } of list.problems.get(own.toLowerCase()) ?? [])
    work.find(wrong, { about: key, name: own, error });
  return found;
}

/** Whether a listed tool is of a kind that the operation has no use for, with a finding that says so. */
export function ofOtherKind(
  work: Work,
  tool: Tool | undefined,
  wanted: FactsOf<"tool-kind">["wanted"],
  kinds: readonly (string | undefined)[] = [wanted],
): boolean {
  if (tool?.kind === undefined || kinds.includes(tool.kind)) return false;
  work.find("tool-kind", { tool: tool.tool, kind: tool.kind, wanted });
  return true;
}

/** Runs a formula; a TradeError becomes a finding of the row instead of ending it. */
export function attempt<T>(
  work: Work,
  code: Extract<FindingCode, "unknown-thread" | "unknown-class" | "no-path" | "no-life" | "no-cost">,
  run: () => T,
): T | undefined {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    work.find(code, { error });
    return undefined;
  }
}

/** Whether the cells are filled in; those that are not become one finding. */
export function requireCells({ work, row }: Pick<Job, "work" | "row">, keys: readonly RowKey[]): boolean {
  const missing = keys.filter((key) => row[key] === undefined);
  if (missing.length > 0) work.find("row-incomplete", { missing });
  return missing.length === 0;
}
