/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** What happens in the workbook, told to the pane. */
import type { Host } from "../host.ts";
import type { Runs } from "./runs.ts";

export function teller({ read, own }: Runs): Pick<Host, "onSelectionChange" | "onDataChange"> {
  return {
    onSelectionChange(listener) {
      return listen(listener, (context, tell) => {
        const call = async () => tell();
        return [context.workbook.onSelectionChanged.add(call), context.workbook.worksheets.onActivated.add(call)];
      });
    },

    onDataChange(listener) {
      return listen(listener, (context, tell) => [
        context.workbook.worksheets.onChanged.add(async (event) => {
          // Another person's change, and our own, need no answer. Older hosts do not say who caused it.
          if (event.source === "Remote") return;
          const mine = event.triggerSource === undefined ? own() : event.triggerSource === "ThisLocalAddin";
          if (!mine) tell();
        }),
        context.workbook.worksheets.onCalculated.add(async () => {
          if (!own()) tell();
        }),
      ]);
    },
  };

  function listen(
    listener: () => void,
    add: (context: Excel.RequestContext, tell: () => void) => OfficeExtension.EventHandlerResult<any>[],
  ): () => void {
    let stopped = false;
    const tell = () => {
      if (!stopped) listener();
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
