/** What interrupts the working out of a formula because of another one. */
import type { CellError } from "../model/types.ts";
import { VALUE } from "./values.ts";

/** A formula that has to be worked out first, too far down to be done from here. */
export class Pending extends Error {
  readonly formula: object;
  constructor(formula: object) {
    super("pending");
    this.formula = formula;
  }
}

/** Formulas that hang on each other in a ring. */
export class Circle extends Error {
  readonly members: readonly object[];
  value: CellError = VALUE;
  constructor(members: readonly object[]) {
    super("circle");
    this.members = members;
  }
  get first(): object {
    return this.members[0]!;
  }
  includes(formula: object): boolean {
    return this.members.includes(formula);
  }
}

const NAMED = 8;

/** "B3 → C3 → B3", shortened in the middle of a long one. */
export function describeCircle(cells: readonly string[]): string {
  const shown = cells.length > NAMED ? [...cells.slice(0, NAMED - 1), "…"] : cells;
  return `this formula hangs on itself: ${[...shown, cells[0]!].join(" → ")}`;
}
