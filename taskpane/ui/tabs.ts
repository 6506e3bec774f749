/** Two views of the same table, one at a time: arrow keys move between them. */
import { h } from "./dom.ts";

export interface Tabs {
  readonly element: HTMLElement;
  open(key: string): void;
}

export function tabs(
  views: readonly { key: string; text: string; panel: HTMLElement }[],
  opened?: (key: string) => void,
): Tabs {
  let current = "";
  const buttons = views.map(({ key, text, panel }) => {
    panel.id = `panel-${key}`;
    panel.setAttribute("role", "tabpanel");
    panel.setAttribute("aria-labelledby", `tab-${key}`);
    return h(
      "button",
      { type: "button", role: "tab", id: `tab-${key}`, "aria-controls": panel.id, onclick: () => open(key) },
      text,
    );
  });
  const bar = h(
    "div",
    { class: "tabs", role: "tablist", "aria-label": "View", onkeydown: (event) => move(event as KeyboardEvent) },
    ...buttons,
  );
  const element = h("div", {}, bar, ...views.map((view) => view.panel));

  function open(key: string): void {
    if (key === current) return;
    current = key;
    views.forEach((view, i) => {
      const chosen = view.key === key;
      buttons[i]!.setAttribute("aria-selected", String(chosen));
      buttons[i]!.tabIndex = chosen ? 0 : -1;
      view.panel.hidden = !chosen;
    });
    opened?.(key);
  }

  function move(event: KeyboardEvent): void {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
    if (step === undefined || at < 0) return;
    event.preventDefault();
    const next = (at + step + views.length) % views.length;
    open(views[next]!.key);
    buttons[next]!.focus();
  }

  open(views[0]!.key);
  return { element, open };
}
