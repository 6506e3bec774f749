/** What the parts of the grid share. They know this, and not each other. */
import type { Model } from "../model/model.ts";
import { Refused } from "../model/refused.ts";
import type { Cursor } from "./cursor.ts";
import type { Entry } from "./entry.ts";
import type { GridOptions } from "./options.ts";
import type { View } from "./view.ts";
import type { GridWords } from "./words.ts";

export interface Context {
  readonly root: HTMLElement;
  readonly options: GridOptions;
  readonly words: GridWords;
  model: Model;
  readonly view: View;
  readonly entry: Entry;
  readonly cursor: Cursor;
  /** Finishes what is being typed; false when it was refused. */
  finish(commit: boolean): boolean;
  say(text: string, kind?: "news" | "refused"): void;
  /** The active sheet's name. */
  sheet(): string;
  openMenu(x: number, y: number, byKey: boolean): void;
  openChoices(): void;
  openFilter(): void;
  openFind(): void;
  /** Hides the columns that no row uses, or shows them. */
  switchUnused(): void;
}

/** Runs what may be refused; says the reason. */
export function attempt(context: Context, work: () => void): boolean {
  try {
    work();
    return true;
  } catch (problem) {
    if (!(problem instanceof Refused)) throw problem;
    context.say(context.words.refused(problem), "refused");
    return false;
  }
}
