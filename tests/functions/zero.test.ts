/** An optional argument whose empty cell comes as 0, as older desktop programs hand it over. */
import fs from "node:fs";
import { describe, expect, it } from "vitest";
import { CellError } from "../../functions/cells.ts";
import * as functions from "../../functions/index.ts";
import { type Kind, PLAUSIBLE, SEGMENTS } from "./plausible.ts";

type Run = (...args: unknown[]) => unknown[][];
const runs = functions as unknown as Record<string, Run>;
const { functions: described } = JSON.parse(
  fs.readFileSync(new URL("../../functions/generated/functions.json", import.meta.url), "utf8"),
) as { functions: { id: string; parameters: { name: string; optional?: boolean }[] }[] };

/** Where 0 is an answer of its own, written down from what the argument means. */
const ZERO_SAYS = [
  ...["toolCostPerPart", "breakthrough", "cornerRadius", "rakeAngle", "chiselRatio", "radialRatio", "startDepth"],
  ...["springPasses", "sweep", "risePerTurn", "rampTime", "shear", "stepFlexibility", "torque"],
];

const sense = (kind: Kind): unknown => {
  if ("units" in kind) return "mm";
  if ("segments" in kind) return SEGMENTS[0];
  if ("words" in kind) return kind.words[0];
  const middle = (kind.low + kind.high) / 2;
  return kind.whole ? Math.round(middle) : middle;
};
const plain = (block: unknown[][]) =>
  block.map((row) => row.map((cell) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell)));

describe("an optional argument of 0", () => {
  const cases = described.flatMap(({ id, parameters }) =>
    PLAUSIBLE[id] ? parameters.flatMap(({ name, optional }, k) => (optional ? [[id, name, k] as const] : [])) : [],
  );
  it("is tried for each function that has one", () => expect(cases.length).toBeGreaterThan(40));
  it.each(cases.filter(([, name]) => !ZERO_SAYS.includes(name)))(
    "%s: %s of 0 is as if it were left out",
    (id, _, k) => {
      const args = PLAUSIBLE[id]!.params.map((kind, i) =>
        described.find((f) => f.id === id)!.parameters[i]!.optional ? null : sense(kind),
      );
      const without = plain(runs[id]!(...args));
      args[k] = 0;
      expect(plain(runs[id]!(...args))).toEqual(without);
      // Below 0 there is nothing that an empty cell could come as.
      args[k] = -1;
      expect(plain(runs[id]!(...args))).not.toEqual(without);
    },
  );
  it.each(cases.filter(([, name]) => ZERO_SAYS.includes(name)))("%s: %s of 0 is taken", (id, name, k) => {
    const args = PLAUSIBLE[id]!.params.map((kind, i) =>
      described.find((f) => f.id === id)!.parameters[i]!.optional ? null : sense(kind),
    );
    args[k] = 0;
    const got = plain(runs[id]!(...args));
    for (const cell of got.flat()) expect(String(cell)).not.toContain(`${name} is`);
  });
});

describe("a required argument of 0", () => {
  it("is an error that names it, as a blank is", () => {
    for (const [block, name] of [
      [runs.RPM!(0, 10, "mm"), "surfaceSpeed is 0"],
      [runs.THREADLEAD!(0, "mm"), "thread is blank"],
      [runs.ARCFEED!(100, 30, 10, 0), "side is blank"],
    ] as const) {
      const error = block[0]![0] as CellError;
      expect(error.code).toBe("#VALUE!");
      expect(error.message).toMatch(new RegExp(`^${name}`));
    }
  });
});
