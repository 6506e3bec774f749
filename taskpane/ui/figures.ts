/** What of a row goes into the program and onto the card, as label, text and unit. Pure. */

import { type Column, RESULT_COLUMNS } from "../../src/table/columns.ts";
import { fromCanonical, symbol, type Units } from "../../src/units.ts";
import type { RowPlan } from "../../src/words/worded.ts";
import type { Table } from "../host/host.ts";
import type { Matching } from "../work/planning.ts";
import { digits } from "./numbers.ts";
import type { Figure } from "./program.ts";

/** In the order in which they are typed into a program. */
const PROGRAM = [
  "spindleSpeed",
  "tableFeed",
  "drill",
  "startDiameter",
  "passes",
  "springPasses",
  "depths",
  "pathRadius",
  "startZ",
  "endZ",
  "direction",
] as const;
const WIDE: ReadonlySet<string> = new Set(["depths", "direction"]);
const CARD = ["feature", "operation", "thread", "material", "machine", "finishDiameter", "depth", "stickOut"] as const;

/** A result as the table shows it: with the decimals of its number format. */
export function figure(column: Column, value: number | string, units: Units): Figure {
  const wide = WIDE.has(column.key);
  if (typeof value === "string") {
    const unit = column.key === "depths" ? symbol("length", units) : "";
    return { label: column.heading, text: value, unit, wide };
  }
  const format = column.format?.[units === "in" ? 1 : 0] ?? "0.00";
  const own = column.dimension ? fromCanonical(value, column.dimension, units) : value;
  const unit = column.dimension ? symbol(column.dimension, units) : (column.unit ?? "");
  return {
    label: column.heading,
    text: digits(own, format.split(".")[1]?.length ?? 0),
    unit: unit === "1/min" ? "rpm" : unit,
    wide,
  };
}

export function programFigures(plan: RowPlan): Figure[] {
  return PROGRAM.flatMap((key) => {
    const value = plan.results[key];
    const column = RESULT_COLUMNS.find((c) => c.key === key);
    if (column === undefined || value === null || value === undefined || value === "") return [];
    if (key === "springPasses" && value === 0) return [];
    return [figure(column, value, plan.units)];
  });
}

/** Who, what and where of the row, as the table says it. */
export function cardFacts(plan: RowPlan, table: Table, matching: Matching): { label: string; text: string }[] {
  const cells = table.selected === null ? [] : (table.rows[table.selected] ?? []);
  const facts = CARD.flatMap((key) => {
    const found = matching.inputs.find((m) => m.column.key === key);
    const cell = found && cells[found.at];
    if (found === undefined || cell === null || cell === undefined || cell === "") return [];
    const unit = found.column.dimension ? ` ${symbol(found.column.dimension, found.units ?? plan.units)}` : "";
    return [{ label: found.column.heading, text: `${cell}${typeof cell === "number" ? unit : ""}` }];
  });
  const tool = plan.results.tool;
  if (typeof tool === "string" && tool !== "") facts.push({ label: "Tool", text: tool });
  return facts;
}

export function rowTitle(plan: RowPlan, table: Table, matching: Matching): string {
  const cells = table.selected === null ? [] : (table.rows[table.selected] ?? []);
  const say = (key: string) => {
    const found = matching.inputs.find((m) => m.column.key === key);
    const cell = found && cells[found.at];
    return cell === null || cell === undefined ? "" : String(cell).trim();
  };
  const name = plan.row === null || plan.row === "" ? `Row ${(table.selected ?? 0) + 1}` : `Row ${plan.row}`;
  return [name, plan.operation || say("operation"), say("thread") || say("feature")]
    .filter((t) => t !== "")
    .join(" · ");
}
