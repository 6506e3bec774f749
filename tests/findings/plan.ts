/** Rules that hold whatever is machined: force without data, power, stick-out, strength, time and money. */
import { expect } from "vitest";
import { about, above, type Rules, STEEL } from "./rule.ts";

// Full slot, 10 mm four-flute cutter in C45, feed typed so that nothing follows the spindle: 1.48 kW at the motor.
const slot = { ...STEEL, Row: 1, Operation: "slot", Tool: "EM-10-4", Depth: 4, Length: 60 };
const typed = { ...slot, "Feed per tooth": 0.03 };
const bore = {
  ...STEEL,
  Row: 1,
  Operation: "bore",
  Tool: "EM-12-4",
  "Start diameter": 28,
  "Finish diameter": 30,
  Depth: 12,
  "Size tolerance": 0.1,
};
const untold = { ...bore, "Size tolerance": null };

export const plan: Rules = {
  "cannot-be-computed": {
    fires: { row: { ...bore, "Stick-out": 5.9 } },
    inside: { row: { ...bore, "Stick-out": 6.1 } },
    severity: "stop",
    facts: { error: expect.anything() },
    why: "a cut whose middle, 6 mm up, lies beyond the holder has no lever arm: its row says so, the others go on",
  },
  "no-kc": {
    fires: { row: slot, material: { "kc1.1 [MPa]": null } },
    inside: { row: slot, material: { "kc1.1 [MPa]": 1500 } },
    severity: "check",
    facts: { bending: true },
    why: "no force without a specific force",
  },
  "power-over": [
    {
      fires: { row: typed, machine: { "Power [kW]": 1.45 } },
      inside: { row: typed, machine: { "Power [kW]": 1.75 } },
      severity: "stop",
      facts: { value: about(1.48, 2), limit: 1.45, most: about(1.7, 2) },
      why: "1.48 kW drawn is over the spindle's 1.45; with 15 % for the force (1.70) still under 1.75",
    },
    {
      fires: { row: typed, machine: { "Power [kW]": 1.65 } },
      inside: { row: typed, machine: { "Power [kW]": 1.71 } },
      severity: "check",
      facts: { value: about(1.48, 2), limit: 1.65, most: about(1.7, 2) },
      why: "1.48 kW is under 1.65, but not with 15 % more force",
    },
    {
      fires: { row: typed, machine: { "Power [kW]": 1.45, "Power 30 min [kW]": 1.6 } },
      inside: { row: typed, machine: { "Power [kW]": 1.75, "Power 30 min [kW]": 2 } },
      severity: "check",
      facts: { value: about(1.48, 2), limit: 1.45, most: about(1.7, 2), short: 1.6 },
      why: "over the continuous rating, within that for 30 min",
    },
  ],
  "no-stick-out": {
    fires: { row: slot, tool: { "Stick-out": null } },
    inside: { row: { ...slot, "Stick-out": 34 }, tool: { "Stick-out": null } },
    severity: "check",
    facts: { tool: "EM-10-4" },
    why: "a beam needs its length",
  },
  "stick-out": {
    fires: { row: { ...slot, "Stick-out": 40.5 } },
    inside: { row: { ...slot, "Stick-out": 40 } },
    severity: "check",
    facts: { value: 40.5, limit: 40, ratio: about(4.05), most: 4 },
    why: "more than four diameters chatters easily (common practice)",
  },
  "no-strength": {
    fires: { row: slot, tool: { "Rupture strength [MPa]": null } },
    inside: { row: slot, tool: { "Rupture strength [MPa]": 3000 } },
    severity: "ok",
    facts: { tool: "EM-10-4" },
    why: "without a strength nothing can be said of breaking",
  },
  "no-size-tolerance": {
    fires: { row: untold },
    inside: { row: bore },
    severity: "ok",
    facts: { error: above(0) },
    why: "without an allowed error bending is shown, not judged",
  },
  "no-time": {
    fires: { row: { ...slot, Quantity: 1e308 } },
    inside: { row: { ...slot, Quantity: 1e9 } },
    severity: "stop",
    facts: {},
    why: "a time beyond all numbers",
  },
  "no-cost": {
    fires: { row: slot, machine: { "Rate [per hour]": 1e308 } },
    inside: { row: slot, machine: { "Rate [per hour]": 1e9 } },
    severity: "stop",
    facts: { error: expect.anything() },
    why: "a cost beyond all numbers",
  },
  "no-life": {
    fires: { row: slot, material: { "Reference life [min]": 1e300, "Taylor n": 0.01 } },
    inside: { row: slot, material: { "Reference life [min]": 45, "Taylor n": 0.25 } },
    severity: "check",
    facts: { error: expect.anything() },
    why: "Taylor's law has no answer there",
  },
  "acceleration-time": {
    // Many short arcs on an old machine: the same path without acceleration is the limit, 1.2 times it the word.
    fires: { row: { ...bore, Quantity: 1 }, machine: { "Acceleration [m/s²]": 0.05, "Ramp time [s]": null } },
    inside: { row: { ...bore, Quantity: 1 }, machine: { "Acceleration [m/s²]": 8, "Ramp time [s]": null } },
    severity: "ok",
    facts: { value: above(1.2), limit: above(0), more: above(0) },
    why: "a machine that gathers speed slowly loses its time there",
    near: 3,
  },
};
