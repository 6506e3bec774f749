/** Rules of what lists leave blank, in each operation that goes without it. */
import { type RowCells, type Rules, STEEL } from "./rule.ts";

const NO_MILLING = Object.fromEntries([3, 6, 12, 20].map((d) => [`Feed ${d} mm [mm per tooth]`, null]));
const NO_FEEDS: RowCells = {
  ...NO_MILLING,
  "Drill feed carbide [mm per turn at 10 mm]": null,
  "Drill feed HSS [mm per turn at 10 mm]": null,
};
const drill = { ...STEEL, Operation: "drill", Tool: "D-5.0", "Finish diameter": 5, Depth: 10 };
const sink = { ...STEEL, Operation: "countersink", "Finish diameter": 12, "Start diameter": 6 };
const ream = { ...STEEL, Operation: "ream", "Finish diameter": 10, "Start diameter": 9.8, Depth: 20, Through: "yes" };
const thread = { ...STEEL, Operation: "thread mill", Thread: "M6", Tool: "TM-M6-S", "Start diameter": 5, Depth: 9 };
const slot = { ...STEEL, Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 };

export const missing: Rules = {
  "no-kc": [drill, sink].map((row) => ({
    fires: { row, material: { "kc1.1 [MPa]": null } },
    inside: { row, material: { "kc1.1 [MPa]": 1500 } },
    severity: "check",
    facts: { bending: false },
    why: `no torque of a ${row.Operation} without a specific force`,
  })),
  "no-feed": [
    {
      fires: { row: drill, material: NO_FEEDS },
      inside: { row: drill, material: { ...NO_FEEDS, "Feed 3 mm [mm per tooth]": 0.02 } },
      severity: "stop",
      facts: { material: STEEL.Material },
      why: "a drill goes by the milling feeds where its own are blank, and by nothing where these are, too",
    },
    {
      fires: { row: thread, material: NO_FEEDS },
      inside: { row: { ...thread, "Feed per tooth": 0.02 }, material: NO_FEEDS },
      severity: "stop",
      facts: { material: STEEL.Material },
      why: "neither list nor row tells the feed of a thread mill",
    },
  ],
  "no-strength": {
    fires: { row: drill, tool: { "Rupture strength [MPa]": null } },
    inside: { row: drill, tool: { "Rupture strength [MPa]": 3000 } },
    severity: "ok",
    facts: { tool: "D-5.0" },
    why: "without a strength nothing can be said of a drill's breaking",
  },
  "tool-incomplete": [
    ["Teeth", "teeth", "no feed of a wall without the teeth"],
    ["Diameter", "diameter", "no wall without a diameter"],
  ].map(([heading, missing, why]) => ({
    fires: { row: slot, tool: { [heading!]: null } },
    inside: { row: slot },
    severity: "stop" as const,
    facts: { tool: "EM-10-4", missing },
    why: why!,
  })),
  "tool-assumed": [
    {
      fires: { row: { ...sink, "Finish diameter": 80, "Start diameter": 74 } },
      inside: { row: sink },
      severity: "ok",
      facts: { operation: "countersink" },
      why: "the shop has no countersink of 80 mm",
    },
    {
      fires: { row: { ...ream, "Finish diameter": 11.3, "Start diameter": 11.1 } },
      inside: { row: ream },
      severity: "ok",
      facts: { operation: "ream" },
      why: "the shop has no reamer of 11.3 mm",
    },
  ],
  "no-stock": {
    fires: { row: { ...sink, "Start diameter": 12 } },
    inside: { row: { ...sink, "Start diameter": 11.9 } },
    severity: "stop",
    facts: { value: 12, limit: 12 },
    why: "a hole as wide as its countersink leaves nothing to cut",
  },
};
