/** Rules of cells and lists: what is blank, not known, not readable. */
import { expect } from "vitest";
import { type Rules, STEEL } from "./rule.ts";

const slot = { ...STEEL, Row: 1, Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 };
const slotOf = (cells: Record<string, string | number | null>) => ({ row: { ...slot, ...cells } });
const missing = "a row that lacks something says what (the planning table's own contract)";

export const cells: Rules = {
  "bad-cell": {
    fires: slotOf({ Depth: -0.001 }),
    inside: slotOf({ Depth: 0.001 }),
    severity: "stop",
    facts: { about: "depth", error: expect.anything() },
    why: "a depth under 0 is none",
  },
  "units-blank": {
    fires: slotOf({ Units: null }),
    inside: slotOf({}),
    severity: "stop",
    facts: {},
    why: "units are never guessed",
  },
  "operation-blank": {
    fires: slotOf({ Operation: null }),
    inside: slotOf({}),
    severity: "stop",
    facts: {},
    why: missing,
  },
  "material-blank": { fires: slotOf({ Material: " " }), inside: slotOf({}), severity: "stop", facts: {}, why: missing },
  "machine-blank": { fires: slotOf({ Machine: null }), inside: slotOf({}), severity: "check", facts: {}, why: missing },
  "row-incomplete": {
    fires: slotOf({ Length: null }),
    inside: slotOf({ Length: 1 }),
    severity: "stop",
    facts: { missing: ["length"] },
    why: missing,
  },
  "unknown-material": {
    fires: slotOf({ Material: "Steel C46 (AISI 1045)" }),
    inside: slotOf({ Material: " steel c45 (aisi 1045) " }),
    severity: "stop",
    facts: { name: "Steel C46 (AISI 1045)", near: expect.arrayContaining([STEEL.Material]) },
    why: "a name that is near is offered, never taken",
  },
  "unknown-tool": {
    fires: slotOf({ Tool: "EM-10-5" }),
    inside: slotOf({ Tool: "em-10-4" }),
    severity: "stop",
    facts: { name: "EM-10-5", near: expect.arrayContaining(["EM-10-4"]) },
    why: missing,
  },
  "unknown-machine": {
    fires: slotOf({ Machine: "Centre V5" }),
    inside: slotOf({ Machine: "CENTRE V3" }),
    severity: "stop",
    facts: { name: "Centre V5", near: expect.arrayContaining(["Centre V3"]) },
    why: missing,
  },
  "list-material": {
    fires: { row: slot, material: { "Radial ratio": 2.01 } },
    inside: { row: slot, material: { "Radial ratio": 2 } },
    severity: "check",
    facts: { about: "radialRatio", name: STEEL.Material, error: expect.anything() },
    why: "a cell of the list outside its limits is left out and said",
  },
  "list-tool": {
    fires: { row: slot, tool: { "Edge radius": "sharp" } },
    inside: { row: slot, tool: { "Edge radius": "0.008" } },
    severity: "check",
    facts: { about: "edgeRadius", name: "EM-10-4", error: expect.anything() },
    why: "a cell of the list that is no number is left out and said",
  },
  "list-machine": {
    fires: { row: slot, machine: { "Tool change [s]": -1 } },
    inside: { row: slot, machine: { "Tool change [s]": 0 } },
    severity: "check",
    facts: { about: "toolChange", name: "Centre V3", error: expect.anything() },
    why: "a cell of the list outside its limits is left out and said",
  },
};
