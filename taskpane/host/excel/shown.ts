/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/**
 * Whether the pane is to be seen. The page of a shared runtime is loaded with the first worksheet function and lives on
 * when the pane is closed: Office tells of opening and closing, the page tells what it is at the start.
 */
import type { Host } from "../host.ts";
import { onPageShown } from "../page.ts";

export function shownTeller(): Pick<Host, "onShown"> {
  return {
    onShown(listener) {
      let stopped = false;
      let closed = false;
      let told: boolean | undefined;
      const tell = (now: boolean) => {
        if (stopped || now === told) return;
        told = now;
        listener(now);
      };
      const stopPage = onPageShown((now) => tell(now && !closed));
      // A host that does not tell of it leaves it to the page.
      const stopPane = Office.addin
        ?.onVisibilityModeChanged(({ visibilityMode }) => {
          closed = visibilityMode === Office.VisibilityMode.hidden;
          tell(!closed);
        })
        .catch(() => undefined);
      return () => {
        stopped = true;
        stopPage();
        void stopPane?.then((stop) => stop?.()).catch(() => undefined);
      };
    },
  };
}
