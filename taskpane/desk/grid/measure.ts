/** How wide text is in the grid's own font. */
export class Measure {
  private readonly context: CanvasRenderingContext2D | null;
  private readonly known = new Map<string, number>();
  /** Width of a digit: what column widths of files are counted in. */
  readonly digit: number;

  constructor(element: Element) {
    const style = getComputedStyle(element);
    this.context = document.createElement("canvas").getContext("2d");
    if (this.context) this.context.font = `${style.fontSize} ${style.fontFamily}`;
    this.digit = this.widthOf("0000000000") / 10 || 8;
  }

  widthOf(text: string, bold = false): number {
    const key = bold ? `b${text}` : text;
    let width = this.known.get(key);
    if (width === undefined) {
      if (this.known.size > 5000) this.known.clear();
      width = (this.context?.measureText(text).width ?? text.length * 8) * (bold ? 1.08 : 1);
      this.known.set(key, width);
    }
    return width;
  }
}
