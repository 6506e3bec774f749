/** Work that is kept in this browser and in no file: offered back, brought back, given up. */
import type { Coming } from "./filing.ts";
import type { KeptWork } from "./keep/database.ts";
import type { Keeper } from "./keep/work.ts";
import { openUnpacked } from "./package/unpack.ts";
import type { Shell } from "./shell.ts";

export interface Offering {
  refresh(): Promise<void>;
  /** Shows a kept work again; false when it is not there, or another tab has it. */
  bring(id: string, patience?: number): Promise<boolean>;
}

/** Offers shown at once; the others come when these are settled. */
const SHOWN = 3;

const changes = (count: number) => `${count} ${count === 1 ? "change" : "changes"}`;
const when = (time: number): string => {
  const date = new Date(time);
  const clock = date.toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
  return date.toDateString() === new Date().toDateString() ? `today ${clock}` : `${date.toLocaleDateString()} ${clock}`;
};

export function offering({
  shell,
  keeper,
  show,
  mayLeave,
}: {
  readonly shell: Shell;
  readonly keeper: Keeper;
  show(coming: Coming): void;
  mayLeave(): Promise<boolean>;
}): Offering {
  let shown: string[] = [];

  async function bring(id: string, patience?: number): Promise<boolean> {
    const brought = await keeper.bring(id, patience);
    if (brought === undefined) return false;
    const { work, bytes, steps } = brought;
    try {
      show({
        opened: await openUnpacked(bytes),
        name: work.name,
        words: work.unsaved
          ? `Brought back “${work.name}” with ${changes(work.steps)} not in a file yet.`
          : `“${work.name}” again, as it was.`,
        steps,
        from: work,
        ...(work.handle ? { handle: work.handle } : {}),
        ...(work.seen ? { seen: work.seen } : {}),
      });
      return true;
    } catch (problem) {
      console.error(problem);
      shell.say(`“${work.name}” could not be brought back; it stays kept.`, { trouble: true });
      return false;
    }
  }

  async function refresh(): Promise<void> {
    const offers = await keeper.offers();
    for (const id of shown) shell.notice(id, undefined);
    shown = offers.slice(0, SHOWN).map((work) => work.id);
    for (const work of offers.slice(0, SHOWN)) shell.notice(work.id, notice(work));
  }

  const notice = (work: KeptWork) => ({
    text: `“${work.name}”, ${when(work.changed)}: ${changes(work.steps)} that ${work.steps === 1 ? "is in no file is" : "are in no file are"} kept here.`,
    actions: [
      {
        text: "Bring it back",
        act: () =>
          void mayLeave().then(async (may) => {
            if (may && !(await bring(work.id)))
              shell.say(`“${work.name}” is open in another tab, or was given up there.`, { trouble: true });
            await refresh();
          }),
      },
      {
        text: "Give it up",
        act: () =>
          void shell
            .ask(`Give up “${work.name}” with ${changes(work.steps)} for good?`, "Give it up")
            .then((yes) => (yes ? keeper.forget(work.id) : undefined))
            .then(refresh),
      },
    ],
  });

  keeper.onOthers(() => void refresh());
  return { refresh, bring };
}
