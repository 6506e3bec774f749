/** The pane beside the grid, in a script of its own: it is fetched while the plan is drawn, and shown after it. */
import type { Host } from "../host/host.ts";
import { mountPane } from "../ui/pane.ts";
import { advisor, planner } from "../work/planner.ts";

/** Shows the pane. There is always a table on the desk: it says more than a welcome. */
export const mountSide = (element: HTMLElement, host: Host): ReturnType<typeof mountPane> =>
  mountPane(element, host, planner, advisor, { welcome: false });
