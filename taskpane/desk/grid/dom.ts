/** Elements made without strings of HTML: a strict content security policy allows it. */
type Attributes = Readonly<Record<string, string | number | undefined>>;

export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  className = "",
  attributes: Attributes = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (className) element.className = className;
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined) element.setAttribute(name, String(value));
  }
  element.append(...children);
  return element;
}

export function button(className: string, text: string, press: () => void, label?: string): HTMLButtonElement {
  const made = make("button", className, { type: "button", "aria-label": label, title: label }, text);
  made.addEventListener("click", press);
  return made;
}

/** Sets text only where it differs: the browser then draws nothing. */
export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
