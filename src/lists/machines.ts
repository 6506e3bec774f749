/**
 * Machines of the invented shop: an old knee mill, a bed mill with a newer spindle and slow axes, two machining centres and
 * a fast small one. Ramp times lie between the published ones of two controls, 0.01 and 0.1 s (src/time.ts).
 */
import type { ListBlock } from "./types.ts";

/** What sizes and cuts are judged by on a machine: see the list's notes. */
const JUDGED = [50, 15, 0.0015, 3, 100] as const;

/** The starting list of machines; figures are typical of the kind of machine (common practice), not of any maker's. */
export const MACHINES: ListBlock = [
  [
    "Machine",
    "Min rpm",
    "Max rpm",
    "Power [kW]",
    "Torque [N·m]",
    "Max feed [m/min]",
    "Rapid [m/min]",
    "Acceleration [m/s²]",
    "Tool change [s]",
    "Holder stiffness [N/µm]",
    "Damping",
    "Rate [per hour]",
    "Setup [min]",
    "Ramp time [s]",
    "Bending share [%]",
    "Size scatter [%]",
    "Seat repeats [mm]",
    "Part warmth [K]",
    "Chatter ratio",
  ],
  ["Knee mill K1", 60, 2800, 1.5, 40, 1.2, 2.5, 0.2, 90, 10, 0.05, 46, 25, 0.1, ...JUDGED],
  ["Retrofit mill R2", 80, 12000, 5.5, 35, 5, 8, 0.25, 30, 16, 0.04, 58, 30, 0.1, ...JUDGED],
  ["Centre V3", 60, 8000, 11, 80, 10, 24, 3, 6, 22, 0.03, 74, 35, 0.06, ...JUDGED],
  ["Centre V4", 60, 12000, 15, 95, 20, 36, 5, 4, 26, 0.03, 88, 35, 0.05, ...JUDGED],
  ["Small centre S5", 300, 24000, 7.5, 12, 30, 50, 10, 2.5, 18, 0.03, 96, 30, 0.03, ...JUDGED],
];
