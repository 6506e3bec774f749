/** Opens files in a worker. */
import { FileError } from "../model/types.ts";
import type { Opened } from "./open.ts";
import { fromTrip } from "./trip.ts";
import type { ReaderAnswer } from "./worker.ts";

export interface ReadOptions {
  readonly signal?: AbortSignal;
  readonly onProgress?: (done: number) => void;
}

/**
 * Opens a file in a worker of its own; cancelling ends the worker at once.
 *
 * @param makeWorker - starts the script made of worker.ts
 * @param bytes - copied into the worker; the caller keeps its own
 * @throws FileError (as a rejection)
 */
export function readInWorker(
  makeWorker: () => Worker,
  bytes: Uint8Array,
  { signal, onProgress }: ReadOptions = {},
): Promise<Opened> {
  return new Promise((resolve, reject) => {
    const cancelled = () => new FileError("cancelled", "Opening was cancelled.");
    if (signal?.aborted) {
      reject(cancelled());
      return;
    }
    const worker = makeWorker();
    const stop = () => {
      worker.terminate();
      signal?.removeEventListener("abort", abort);
    };
    const abort = () => {
      stop();
      reject(cancelled());
    };
    signal?.addEventListener("abort", abort);
    worker.onmessage = ({ data }: MessageEvent<ReaderAnswer>) => {
      if ("done" in data) {
        onProgress?.(data.done);
        return;
      }
      stop();
      if ("arrived" in data) resolve(fromTrip(data.arrived));
      else reject(new FileError(data.failed.code, data.failed.message));
    };
    worker.onerror = (event) => {
      stop();
      reject(new FileError("unreadable", `This file could not be read (${event.message || "the reader stopped"}).`));
    };
    const copy = bytes.slice();
    worker.postMessage(copy, [copy.buffer]);
  });
}
