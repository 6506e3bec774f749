/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** Batches that read and batches that write, and which events the latter cause. */
import { toHostError } from "./errors.ts";
import { ONE_UNDO_GROUP, supports } from "./versions.ts";

export interface Runs {
  readonly read: <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;
  readonly write: <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;
  /** True while an event may still belong to a write of ours. */
  readonly own: () => boolean;
}

export function createRuns(): Runs {
  /** Own writes under way, and the time until which events still belong to them. */
  let writing = 0;
  let quietUntil = 0;
  const own = () => writing > 0 || Date.now() < quietUntil;

  async function read<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
    try {
      return await Excel.run({ delayForCellEdit: true }, batch);
    } catch (thrown) {
      throw toHostError(thrown);
    }
  }

  async function write<T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
    writing++;
    const options: Excel.RunOptions & { mergeUndoGroup?: boolean } = { delayForCellEdit: true };
    if (supports(ONE_UNDO_GROUP)) options.mergeUndoGroup = true;
    try {
      return await Excel.run(options, batch);
    } catch (thrown) {
      throw toHostError(thrown);
    } finally {
      writing--;
      quietUntil = Date.now() + 400;
    }
  }

  return { read, write, own };
}
