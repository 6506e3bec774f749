/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** What happens in the workbook, told to the pane. */
import type { DataChange, Host } from "../host.ts";
import { corners } from "../reference.ts";
import type { SheetNames } from "./names.ts";
import type { Runs } from "./runs.ts";

export function teller({ read, own }: Runs, names: SheetNames): Pick<Host, "onSelectionChange" | "onDataChange"> {
  return {
    onSelectionChange(listener) {
      return listen<boolean>(listener, (context, tell) => [
        context.workbook.onSelectionChanged.add(async () => tell(false)),
        context.workbook.worksheets.onActivated.add(async () => tell(true)),
      ]);
    },

    onDataChange(listener) {
      return listen<DataChange>(listener, (context, tell) => [
        context.workbook.worksheets.onChanged.add(async (event) => {
          // Our own changes need no answer. Older hosts do not say who caused one.
          const remote = event.source === "Remote";
          const mine = event.triggerSource === undefined ? own() : event.triggerSource === "ThisLocalAddin";
          if (mine && !remote) return;
          const sheet = names.of(event.worksheetId);
          const cells = event.changeType === "RangeEdited" ? corners(event.address) : undefined;
          tell({ ...(sheet !== undefined && { sheet }), ...(cells && { cells }) });
        }),
        context.workbook.worksheets.onCalculated.add(async ({ worksheetId }) => {
          if (own()) return;
          const sheet = names.of(worksheetId);
          tell({ ...(sheet !== undefined && { sheet }), calculated: true });
        }),
      ]);
    },
  };

  function listen<T>(
    listener: (what: T) => void,
    add: (context: Excel.RequestContext, tell: (what: T) => void) => OfficeExtension.EventHandlerResult<any>[],
  ): () => void {
    let stopped = false;
    const tell = (what: T) => {
      if (!stopped) listener(what);
    };
    const handlers = read(async (context) => {
      const made = add(context, tell);
      await context.sync();
      return made;
    }).catch(() => [] as OfficeExtension.EventHandlerResult<any>[]); // without events the pane still reads on request
    return () => {
      if (stopped) return;
      stopped = true;
      void handlers
        .then(async (made) => {
          const first = made[0];
          if (first === undefined) return;
          await Excel.run(first.context, async (context) => {
            for (const handler of made) handler.remove();
            await context.sync();
          });
        })
        .catch(() => undefined); // the workbook is closing
    };
  }
}
