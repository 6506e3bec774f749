/** Writes the plan as plain numbers: into the table's own columns, into a block beside it, or both. */
import type { RowPlan } from "../../../src/words/worded.ts";
import type { Message } from "../../ui/message.ts";
import { besideColumns, fillOf } from "../filling.ts";
import { BASIS, CHANGED } from "../planning.ts";
import { besideKind } from "../types.ts";
import { type Answers, asking, type Context, NOTHING, replanned, sentence, withNote } from "./context.ts";

export const writeNumbers = (c: Context) => (): Promise<void> => write(c, {});

const write = (c: Context, answers: Answers): Promise<void> =>
  c.act("Writing numbers …", () =>
    asking(
      (said) => (said === undefined ? c.store.set({ message: NOTHING }) : void write(c, said)),
      () => replanned(c, (now) => fill(c, now, answers)),
      answers,
    ),
  );

async function fill(
  c: Context,
  { table, matching }: Parameters<Parameters<typeof replanned>[1]>[0],
  answers: Answers,
): Promise<Message> {
  const { beside } = c.store.get();
  const kind = besideKind(beside);
  const needsRoom = besideColumns(matching) !== undefined;
  if (needsRoom && kind === "live" && matching.outputs.length === 0)
    return {
      kind: "failed",
      text: "A live block stands beside the table; it shows these numbers already.",
      action: "Delete its first cell if you want plain numbers there.",
    };
  if (needsRoom && (kind === "live" || kind === "other"))
    return {
      kind: "failed",
      text: `The verdict and the basis would go beside the table, where ${kind === "live" ? "the live block" : "something else"} stands; nothing was written.`,
      action: `Move that, or add columns headed Verdict, ${BASIS} and ${CHANGED} to the table.`,
    };
  const plans = c.plan(c.blocks(table, matching));
  const made = fillOf(table, matching, plans, needsRoom ? beside : null);
  if (made === undefined)
    return {
      kind: "failed",
      text: `The block beside the table has no Verdict, ${BASIS} or ${CHANGED} column; nothing was written: numbers without them cannot be told from old ones.`,
      action: "Delete that block, then write again.",
    };
  const done = await c.host.writeCells(table, made.changes, { ...made.care, ...answers });
  const where = !made.isBeside
    ? ""
    : beside !== null
      ? " The block beside the table is up to date."
      : matching.outputs.length > 0
        ? " The verdict and the basis stand beside the table."
        : " They stand beside the table.";
  return withNote({ kind: "done", text: `${tally(plans)}${where}` }, done);
}

function tally(plans: readonly (RowPlan | undefined)[]): string {
  const counted = plans.filter((line) => line !== undefined);
  const of = (verdict: RowPlan["verdict"]) => counted.filter((line) => line.verdict === verdict).length;
  return `${sentence(counted.length, "row")} written: ${of("ok")} ok, ${of("check")} check, ${of("stop")} stop.`;
}
