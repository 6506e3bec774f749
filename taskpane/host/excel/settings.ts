/// <reference path="../../../node_modules/@microsoft/office-js/dist/office.d.ts" />
/** What is kept in the workbook beside its cells: settings of the document, which belong to this add-in. */
import type { Host } from "../host.ts";
import type { Runs } from "./runs.ts";

/** Names of ours, where other versions of this program may keep other things. */
const PREFIX = "tablefeed.";

export function askKept({ workbook }: Excel.RequestContext): Excel.SettingCollection {
  const { settings } = workbook;
  settings.load("items/key,items/value");
  return settings;
}

export const keptOf = ({ items }: Excel.SettingCollection): Readonly<Record<string, string>> =>
  Object.fromEntries(
    items.flatMap(({ key, value }) =>
      key.startsWith(PREFIX) && typeof value === "string" ? [[key.slice(PREFIX.length), value]] : [],
    ),
  );

export function keeper({ write }: Runs): Pick<Host, "keep"> {
  return {
    async keep(name, text) {
      return write(async (context) => {
        const { settings } = context.workbook;
        if (text !== null) settings.add(`${PREFIX}${name}`, text);
        else {
          const setting = settings.getItemOrNullObject(`${PREFIX}${name}`);
          setting.load("key");
          await context.sync();
          if (setting.isNullObject) return;
          setting.delete();
        }
        await context.sync();
      });
    },
  };
}
