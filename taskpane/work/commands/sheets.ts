/** Sheets that a workbook may lack: the starting lists, an empty planning table. */
import type { NewSheet } from "../../host/host.ts";
import { LISTS } from "../types.ts";
import type { Context } from "./context.ts";

export const addLists =
  (c: Context) =>
  (starting: readonly NewSheet[]): Promise<void> =>
    c.act("Adding the starting lists …", async () => {
      await c.readAll();
      const { lists } = c.store.get();
      const added: string[] = [];
      for (const [i, name] of LISTS.entries()) {
        const sheet = starting.find((one) => one.name === name);
        if (lists[i] !== null || sheet === undefined) continue;
        await c.host.addSheet(sheet);
        added.push(name);
      }
      return { kind: "done", text: `Added: ${added.join(", ")}. They are starting values: put your own in.` };
    });

export const addTable =
  (c: Context) =>
  (sheet: NewSheet): Promise<void> =>
    c.act("Adding a planning table …", async () => {
      const block = await c.host.addSheet(sheet, true);
      await c.host.select({ sheet: block.sheet, row: block.top + 1, column: block.left });
      return { kind: "done", text: "An empty planning table is there. One operation per row." };
    });
