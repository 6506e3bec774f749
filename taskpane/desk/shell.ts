/** The page around grid and pane: the bar, its menu, questions, notices, and the way between the parts by keyboard. */

const element = <E extends HTMLElement>(id: string) => document.getElementById(id) as E;

export type View = "table" | "pane";

export interface Notice {
  readonly text: string;
  readonly actions: readonly { readonly text: string; act(): void }[];
}

export interface Shell {
  readonly grid: HTMLElement;
  readonly pane: HTMLElement;
  readonly input: HTMLInputElement;
  /** What is going on; `busy` while it is. */
  say(text: string, how?: { readonly trouble?: boolean; readonly busy?: boolean }): void;
  /** What was said last. */
  said(): string;
  title(name: string): void;
  /** The quiet word beside the name: saved, not saved. */
  mark(text: string, unsaved: boolean): void;
  /** Lines above the grid, each with what can be done about it; they stay until it is done. */
  notice(key: string, notice: Notice | undefined): void;
  ask(question: string, yes: string): Promise<boolean>;
  /** Progress of opening, with a way to stop it; undefined takes it away. */
  progress(done: number | undefined, cancel?: () => void): void;
  show(view: View): void;
  /** The whole of the plan is there. */
  ready(): void;
}

export interface ShellActions {
  open(): void;
  save(): void;
  saveCopy(): void;
  saveCsv(): void;
  blank(): void;
  demo(): void;
  focusGrid(): void;
  opened(file: File): void;
}

export function createShell(actions: ShellActions): Shell & { leaveGrid(direction: "next" | "previous"): void } {
  const state = element("state");
  const more = element<HTMLButtonElement>("more");
  const menu = element("more-menu");
  const pane = element("pane");
  const input = element<HTMLInputElement>("file");
  const notices = new Map<string, HTMLElement>();

  // The menu: opened by its button, gone through with the arrows, closed by Escape or by going elsewhere.
  const items = () => [...menu.querySelectorAll<HTMLButtonElement>("button")];
  const openMenu = (open: boolean, focus = true) => {
    menu.hidden = !open;
    more.setAttribute("aria-expanded", String(open));
    if (open) items()[0]!.focus();
    else if (focus) more.focus();
  };
  more.onclick = () => openMenu(Boolean(menu.hidden));
  menu.onkeydown = (event) => {
    const all = items();
    const at = all.indexOf(document.activeElement as HTMLButtonElement);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[event.key];
    if (to !== undefined) all[(to + all.length) % all.length]!.focus();
    else if (event.key === "Escape") openMenu(false);
    else return;
    event.preventDefault();
  };
  document.addEventListener("pointerdown", (event) => {
    if (!menu.hidden && !(event.target as Element).closest(".more")) openMenu(false, false);
  });
  menu.addEventListener("focusout", (event) => {
    const to = event.relatedTarget as Element | null;
    if (to !== null && !to.closest(".more")) openMenu(false, false);
  });
  const choose = (id: string, act: () => void) => {
    element(id).onclick = () => {
      openMenu(false);
      act();
    };
  };
  element("open").onclick = () => actions.open();
  element("save").onclick = () => actions.save();
  choose("save-copy", actions.saveCopy);
  choose("save-csv", actions.saveCsv);
  choose("blank", actions.blank);
  choose("demo", actions.demo);
  input.onchange = () => {
    const file = input.files?.[0];
    input.value = "";
    if (file) actions.opened(file);
  };
  // A file that is dropped on the page is opened, not shown instead of the desk.
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) actions.opened(file);
  });

  // Bar, grid, pane in turn.
  const places = [
    () => element("open").focus(),
    () => {
      show("table");
      actions.focusGrid();
    },
    () => {
      show("pane");
      pane.focus();
    },
  ];
  const go = (from: number, direction: "next" | "previous") => places[(from + (direction === "next" ? 1 : 2)) % 3]!();
  const placeNow = () => {
    const active = document.activeElement;
    return active?.closest("#pane") ? 2 : active?.closest("#grid") ? 1 : 0;
  };
  document.addEventListener("keydown", (event) => {
    if (event.defaultPrevented) return;
    if (event.key === "F6" && !event.altKey && !event.metaKey) {
      go(placeNow(), event.shiftKey ? "previous" : "next");
      event.preventDefault();
      return;
    }
    if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
    if (event.key === "s") actions.save();
    else if (event.key === "o") actions.open();
    else return;
    event.preventDefault();
  });

  function show(view: View): void {
    document.body.dataset.view = view;
    element("show-table").setAttribute("aria-pressed", String(view === "table"));
    element("show-pane").setAttribute("aria-pressed", String(view === "pane"));
  }
  element("show-table").onclick = () => show("table");
  element("show-pane").onclick = () => show("pane");
  show("table");

  return {
    grid: element("grid"),
    pane,
    input,
    say(text, { trouble = false, busy = false } = {}) {
      state.textContent = text;
      state.dataset.busy = busy ? "yes" : "no";
      state.classList.toggle("trouble", trouble);
    },
    said: () => state.textContent ?? "",
    title(name) {
      element("book-name").textContent = name;
      document.title = `${name} – Tablefeed desk`;
    },
    mark(text, unsaved) {
      const mark = element("mark");
      if (mark.textContent !== text) mark.textContent = text;
      mark.classList.toggle("unsaved", unsaved);
    },
    notice(key, notice) {
      notices.get(key)?.remove();
      notices.delete(key);
      if (notice === undefined) return;
      const line = document.createElement("div");
      line.className = "notice";
      const text = document.createElement("p");
      text.textContent = notice.text;
      line.append(text);
      for (const action of notice.actions) {
        const button = document.createElement("button");
        button.type = "button";
        button.textContent = action.text;
        button.onclick = action.act;
        line.append(button);
      }
      notices.set(key, line);
      element("notices").append(line);
    },
    ask(question, yes) {
      const dialog = element<HTMLDialogElement>("question");
      element("question-text").textContent = question;
      element("question-yes").textContent = yes;
      return new Promise((resolve) => {
        const done = (answer: boolean) => () => {
          dialog.close();
          resolve(answer);
        };
        element("question-yes").onclick = done(true);
        element("question-no").onclick = done(false);
        dialog.oncancel = () => resolve(false);
        dialog.showModal();
        element("question-no").focus();
      });
    },
    progress(done, cancel) {
      const line = element("progress");
      line.hidden = done === undefined;
      if (done === undefined) return;
      line.querySelector("progress")!.value = done;
      element("cancel").onclick = cancel ?? null;
    },
    show,
    ready() {
      document.documentElement.dataset.ready = "yes";
      document.dispatchEvent(new CustomEvent("tablefeed-ready"));
    },
    leaveGrid: (direction) => go(1, direction),
  };
}
