/** What a comparison says of the batch from which the other side pays. */
import type { Comparison } from "../../src/quote/compare.ts";
import { breakEvenText } from "../../src/quote/says.ts";

/** The batch, where there is one, and the sentence. */
export const met = ({ breakEven, names }: Comparison): { readonly batch?: number; readonly text: string } => ({
  ...("batch" in breakEven && { batch: breakEven.batch }),
  text: breakEvenText(breakEven, names),
});
