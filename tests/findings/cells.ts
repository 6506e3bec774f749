/** Rules of cells and lists: what is blank, not known, not readable. */
import { type Rules, STEEL } from "./rule.ts";

const slot = { ...STEEL, Row: 1, Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 };
const slotOf = (cells: Record<string, string | number | null>) => ({ row: { ...slot, ...cells } });
const missing = "a row that lacks something says what (the planning table's own contract)";

export const cells: Rules = {
  "bad-cell": {
    fires: slotOf({ Depth: -0.001 }),
    inside: slotOf({ Depth: 0.001 }),
    severity: "stop",
    why: "a depth under 0 is none",
  },
  "units-blank": {
    fires: slotOf({ Units: null }),
    inside: slotOf({}),
    severity: "stop",
    why: "units are never guessed",
  },
  "operation-blank": { fires: slotOf({ Operation: null }), inside: slotOf({}), severity: "stop", why: missing },
  "material-blank": { fires: slotOf({ Material: " " }), inside: slotOf({}), severity: "stop", why: missing },
  "machine-blank": { fires: slotOf({ Machine: null }), inside: slotOf({}), severity: "check", why: missing },
  "row-incomplete": { fires: slotOf({ Length: null }), inside: slotOf({ Length: 1 }), severity: "stop", why: missing },
  "unknown-material": {
    fires: slotOf({ Material: "Steel C46 (AISI 1045)" }),
    inside: slotOf({ Material: " steel c45 (aisi 1045) " }),
    severity: "stop",
    why: "a name that is near is offered, never taken",
  },
  "unknown-tool": {
    fires: slotOf({ Tool: "EM-10-5" }),
    inside: slotOf({ Tool: "em-10-4" }),
    severity: "stop",
    why: missing,
  },
  "unknown-machine": {
    fires: slotOf({ Machine: "Centre V5" }),
    inside: slotOf({ Machine: "CENTRE V3" }),
    severity: "stop",
    why: missing,
  },
  "list-material": {
    fires: { row: slot, material: { "Radial ratio": 2.01 } },
    inside: { row: slot, material: { "Radial ratio": 2 } },
    severity: "check",
    why: "a cell of the list outside its limits is left out and said",
  },
  "list-tool": {
    fires: { row: slot, tool: { "Edge radius": "sharp" } },
    inside: { row: slot, tool: { "Edge radius": "0.008" } },
    severity: "check",
    why: "a cell of the list that is no number is left out and said",
  },
  "list-machine": {
    fires: { row: slot, machine: { "Tool change [s]": -1 } },
    inside: { row: slot, machine: { "Tool change [s]": 0 } },
    severity: "check",
    why: "a cell of the list outside its limits is left out and said",
  },
};
