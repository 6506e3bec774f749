/** Elements without markup text: whatever comes from a workbook ends up in text nodes and attributes only. */

export type Child = Node | string | number | null | undefined | false;
type Attributes = Record<string, string | number | boolean | ((event: Event) => void) | null | undefined>;

const SVG = "http://www.w3.org/2000/svg";

function fill<E extends Element>(element: E, attributes: Attributes, children: readonly Child[]): E {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : String(value));
  }
  for (const child of children) {
    if (child === null || child === undefined || child === false) continue;
    element.append(child instanceof Node ? child : String(child));
  }
  return element;
}

/** An HTML element; attributes that start with "on" take a listener ("onclick"). */
export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: Child[]
): HTMLElementTagNameMap[K] {
  return fill(document.createElement(tag), attributes, children);
}

/** An SVG element. */
export function s(tag: string, attributes: Attributes = {}, ...children: Child[]): SVGElement {
  return fill(document.createElementNS(SVG, tag) as SVGElement, attributes, children);
}

/** Puts `children` in place of what the element holds; the focus stays on the part with the same data-focus. */
export function replace(element: Element, ...children: Child[]): void {
  const active = document.activeElement;
  const key = active && element.contains(active) ? active.getAttribute("data-focus") : null;
  element.replaceChildren();
  fill(element, {}, children);
  if (key === null) return;
  for (const candidate of element.querySelectorAll<HTMLElement>("[data-focus]")) {
    if (candidate.getAttribute("data-focus") === key) {
      candidate.focus();
      return;
    }
  }
}

/** A part of the pane: its element, and how to show it new facts. */
export interface Part<T> {
  readonly element: HTMLElement;
  show(facts: T): void;
}
