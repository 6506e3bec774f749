/** Entry of the worker that opens files, so that the screen stays alive and opening can be cancelled by ending it. */
import { FileError } from "../model/types.ts";
import { forTrip, type Travelling } from "./trip.ts";
import { openUnpacked } from "./unpack.ts";

export type ReaderAnswer =
  | { readonly done: number }
  | { readonly arrived: Travelling }
  | { readonly failed: { readonly code: FileError["code"]; readonly message: string } };

interface Scope {
  onmessage: ((event: { data: Uint8Array }) => void) | null;
  postMessage(message: ReaderAnswer, transfer?: Transferable[]): void;
}
const scope = globalThis as unknown as Scope;

scope.onmessage = async ({ data }) => {
  let told = 0;
  try {
    const opened = await openUnpacked(data, {
      onProgress: (done) => {
        if (done - told < 0.05) return;
        told = done;
        scope.postMessage({ done });
      },
    });
    const [arrived, handed] = forTrip(opened);
    scope.postMessage({ arrived }, handed);
  } catch (problem) {
    const known = problem instanceof FileError;
    scope.postMessage({
      failed: {
        code: known ? problem.code : "damaged",
        message: known
          ? problem.message
          : `This file could not be read (${problem instanceof Error ? problem.message : String(problem)}).`,
      },
    });
  }
};
