/** Sheets that a workbook may lack: the starting lists, an empty planning table. */
import { type Done, HostError, type NewSheet } from "../../host/host.ts";
import { LISTS } from "../types.ts";
import { type Context, readAgain, show, withNote } from "./context.ts";

export const addLists =
  (c: Context) =>
  (starting: readonly NewSheet[]): Promise<void> =>
    c.act("Adding the starting lists …", async () => {
      await readAgain(c);
      const { lists } = c.store.get();
      const added: string[] = [];
      let note: Done = {};
      for (const [i, name] of LISTS.entries()) {
        const sheet = starting.find((one) => one.name === name);
        if (lists[i] !== null || sheet === undefined) continue;
        try {
          const done = await c.host.addSheet(sheet);
          if (done.note !== undefined) note = done;
        } catch (thrown) {
          if (added.length === 0 || !(thrown instanceof HostError)) throw thrown;
          // Each list is a sheet of its own: those that are there are whole.
          throw new HostError(
            thrown.code,
            `${name} was not added: ${thrown.message} Added before: ${added.join(", ")}.`,
          );
        }
        added.push(name);
      }
      return withNote(
        { kind: "done", text: `Added: ${added.join(", ")}. They are starting values: put your own in.` },
        note,
      );
    });

export const addTable =
  (c: Context) =>
  (sheet: NewSheet): Promise<void> =>
    c.act("Adding a planning table …", async () => {
      const block = await c.host.addSheet(sheet, true);
      await show(c.host, { sheet: block.sheet, row: block.top + 1, column: block.left });
      return withNote({ kind: "done", text: "An empty planning table is there. One operation per row." }, block);
    });
