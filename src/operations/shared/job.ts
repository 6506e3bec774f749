/** A row with the list entries it names, ready to be worked out. */
import { TradeError } from "../../errors.ts";
import type { Operation } from "../../table/columns.ts";
import type { Lists, Machine, Material, ReadRow, Row, Tool } from "../../table/read.ts";
import type { FeatureTime } from "./motion.ts";
import { Work } from "./work.ts";

export interface Job {
  readonly work: Work;
  readonly row: Row;
  readonly operation: Operation;
  readonly lists: Lists;
  readonly material?: Material;
  readonly machine?: Machine;
  /** The tool that the row names; blank: the operation proposes one. */
  readonly tool?: Tool;
}

/** What an operation hands back for time, tool life and cost. */
export interface Done {
  readonly tool?: Tool;
  readonly time?: FeatureTime;
  /** Seconds the edge cuts per feature, and its surface speed [m/min]: for tool life. */
  readonly cutting?: { readonly seconds: number; readonly surfaceSpeed: number };
}

const LIST_NAMES = { material: "Materials", tool: "Tools", machine: "Machines" } as const;

/** Looks up what the row names, and puts everything that is wrong with its cells among the reasons. */
export function startJob(read: ReadRow, lists: Lists, detail = true): Job {
  const { row, problems } = read;
  const work = new Work(row.units ?? "mm", detail);
  const bad = new Set(problems.map((p) => p.key));
  for (const { error } of problems) {
    work.reason(
      "stop",
      `bad-${error.parameter.toLowerCase().replace(/ /g, "-")}`,
      error.message,
      `correct ${error.parameter}`,
    );
  }
  if (row.units === undefined && !bad.has("units")) {
    work.reason("stop", "units-blank", "Units is blank; mm or in is allowed", "say mm or in: units are never guessed");
  }
  if (row.operation === undefined && !bad.has("operation")) {
    work.reason("stop", "operation-blank", "Operation is blank", "say what is done: drill, thread mill, bore, slot …");
  }
  const find = <T>(key: "material" | "tool" | "machine"): T | undefined => {
    const name = row[key];
    if (name === undefined) return undefined;
    const list = key === "material" ? lists.materials : key === "tool" ? lists.tools : lists.machines;
    const found = list.find(name);
    if (found === undefined) {
      const near = list.nearest(name);
      work.reason(
        "stop",
        `unknown-${key}`,
        `${key} "${name}" is not in the list ${LIST_NAMES[key]}`,
        near.length > 0 ? `nearest there: ${near.join(", ")}` : `add it to the list ${LIST_NAMES[key]}`,
      );
      return undefined;
    }
    for (const { error } of list.problems.get(name.toLowerCase()) ?? []) {
      work.reason("check", `list-${key}`, `list ${LIST_NAMES[key]}, ${name}: ${error.message}`, `correct the list`);
    }
    return found as T;
  };
  const material = find<Material>("material");
  const machine = find<Machine>("machine");
  const tool = find<Tool>("tool");
  if (row.material === undefined && !bad.has("material")) {
    work.reason("stop", "material-blank", "Material is blank: no speed, feed or force", "name a material of the list");
  }
  if (row.machine === undefined && !bad.has("machine")) {
    work.reason(
      "check",
      "machine-blank",
      "Machine is blank: spindle, power and feed limits are not checked, no time and no cost",
      "name a machine of the list",
    );
  }
  return { work, row, operation: row.operation ?? "drill", lists, material, machine, tool };
}

/** Runs a formula; a TradeError becomes a reason of the row instead of ending it. */
export function attempt<T>(work: Work, code: string, wayOut: string, run: () => T): T | undefined {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    work.reason(
      "stop",
      code,
      error.text((v, d) => work.say(v, (d ?? "length") as "length")),
      wayOut,
    );
    return undefined;
  }
}
