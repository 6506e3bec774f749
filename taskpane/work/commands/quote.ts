/** The quote and the comparison, each on a sheet of its own, and the way back from there. */
import { TradeError } from "../../../src/errors.ts";
import type { Choice } from "../../../src/quote/compare.ts";
import type { QuoteOptions } from "../../../src/quote/types.ts";
import { errors } from "../../../src/words/en/errors.ts";
import { errorText } from "../../../src/words/errors.ts";
import { HostError } from "../../host/host.ts";
import type { Message } from "../../ui/message.ts";
import { compareSheet, type Made, quoteSheet } from "../quoting.ts";
import { type Context, freshly, withNote } from "./context.ts";

export const writeQuote =
  (c: Context) =>
  (options: QuoteOptions): Promise<void> =>
    c.act("Adding up the quote …", async () => {
      const now = await freshly(c);
      if ("kind" in now) return now;
      const sheet = quoteSheet(c.blocks(now.table, now.matching), options);
      return newSheet(c, "Quote", sheet, "The quote");
    });

export const writeComparison =
  (c: Context) =>
  (choice: Choice, options: QuoteOptions): Promise<void> =>
    c.act("Planning the rows twice …", async () => {
      const now = await freshly(c);
      if ("kind" in now) return now;
      try {
        const sheet = compareSheet(c.blocks(now.table, now.matching), choice, options);
        return await newSheet(c, "Compare", sheet, "The comparison");
      } catch (thrown) {
        if (!(thrown instanceof TradeError)) throw thrown;
        return { kind: "failed", text: errorText(thrown, errors), action: "Choose names that are in the lists." };
      }
    });

/** Adds a sheet under a name that is still free. */
async function newSheet(c: Context, name: string, { sheet, warning }: Made, what: string): Promise<Message> {
  for (let n = 1; ; n++) {
    const called = n === 1 ? name : `${name} ${n}`;
    try {
      const { table } = c.store.get();
      const done = await c.host.addSheet({ ...sheet, name: called }, true);
      if (table !== null)
        c.store.set({ from: { sheet: table.sheet, row: table.top + 1 + (table.selected ?? 0), column: table.left } });
      return withNote(
        {
          kind: "done",
          text: `${what} is on the sheet "${called}". It does not follow later changes.`,
          ...(warning === undefined ? {} : { action: warning }),
        },
        done,
      );
    } catch (thrown) {
      if (!(thrown instanceof HostError) || thrown.code !== "occupied" || n > 50) throw thrown;
    }
  }
}
