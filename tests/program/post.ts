/**
 * A small writer of programs for the tests, in the styles that posts have. It knows nothing of the code under test: it
 * takes numbers in mm and writes blocks.
 */

export interface Style {
  readonly name: string;
  /** Pieces of arcs in degrees, and how they say their centre. */
  readonly arcs: "ij 360" | "ij 180" | "ij 90" | "ij 45" | "r 120" | "r 90" | "r 180";
  readonly incremental?: boolean;
  readonly units?: "mm" | "in";
  readonly numbers?: "fixed" | "trimmed" | "bare" | "plus" | "increments";
  readonly blockNumbers?: boolean;
  readonly tight?: boolean;
  readonly small?: boolean;
  readonly cycles?: boolean;
  readonly modal?: boolean;
  readonly compensation?: "none" | "wear" | "contour";
  readonly lead?: "half" | "half rising" | "straight";
  readonly comments?: "round" | "semicolon";
  readonly tools?: "M6" | "name" | "T";
  readonly perTurn?: boolean;
  readonly absoluteCentres?: boolean;
}

export class Post {
  private readonly lines: string[] = [];
  private x = Number.NaN;
  private y = Number.NaN;
  private z = Number.NaN;
  private g = -1;
  private f = "";
  private n = 10;
  private rpm = 0;
  private known = false;
  readonly style: Style;

  constructor(style: Style) {
    this.style = style;
    this.raw("%");
    this.raw(style.comments === "semicolon" ? "; posted for the tests" : "O1234 (POSTED FOR THE TESTS)");
    this.put(`${style.units === "in" ? "G20" : "G21"} G17 G40 G80 G90 G94`);
  }

  get text(): string {
    return `${this.lines.join(this.style.blockNumbers ? "\r\n" : "\n")}\n`;
  }

  raw(line: string): void {
    this.lines.push(line);
  }

  put(line: string): void {
    let text = line;
    if (this.style.tight) text = text.replace(/ /g, "");
    if (this.style.small) text = text.toLowerCase();
    if (this.style.blockNumbers) {
      text = `N${this.n}${this.style.tight ? "" : " "}${text}`;
      this.n += 10;
    }
    this.lines.push(text);
  }

  private get unit(): number {
    return this.style.units === "in" ? 25.4 : 1;
  }

  private get zero(): string {
    return this.style.numbers === "increments" ? "0" : "0.";
  }

  private places(): number {
    return this.style.units === "in" ? 4 : 3;
  }

  /** As the control will see it, in mm. */
  private rounded(v: number): number {
    const k = 10 ** this.places();
    return Math.round((v / this.unit) * k) / k;
  }

  private write(v: number): string {
    const { numbers = "fixed" } = this.style;
    const places = this.places();
    if (numbers === "increments") return String(Math.round(v * 10 ** places));
    const text = v.toFixed(places).replace(/^-(0\.0*)$/, "$1");
    if (numbers === "fixed") return text;
    if (numbers === "plus") return v >= 0 ? `+${text}` : text;
    const short = text.replace(/0+$/, "");
    if (numbers === "trimmed") return short.replace(/^(-?)0\.(?=\d)/, "$1.");
    return short.replace(/\.$/, "");
  }

  /** A coordinate word; in incremental blocks the difference of the rounded positions, so that nothing adds up. */
  private axis(letter: string, to: number, from: number): string {
    const value = this.style.incremental && this.known ? this.rounded(to) - this.rounded(from) : this.rounded(to);
    return `${letter}${this.write(value)}`;
  }

  tool(number: number, rpm: number, spindle: 3 | 4 | 0 = 3): void {
    this.known = false;
    if (this.lines.length > 3) {
      this.put("M5");
      this.put(`G28 G91 Z${this.zero}`);
    }
    const { tools = "M6" } = this.style;
    this.put(tools === "name" ? `T="TOOL ${number}"` : tools === "T" ? `T${number}` : `T${number} M6`);
    this.comment(`TOOL ${number}`);
    if (this.style.perTurn) this.put("G95");
    this.put(`G90 G54${spindle === 0 ? "" : ` S${Math.round(rpm)} M${spindle}`}`);
    this.rpm = Math.round(rpm);
    this.g = -1;
    this.f = "";
    [this.x, this.y, this.z] = [Number.NaN, Number.NaN, Number.NaN];
  }

  comment(text: string): void {
    this.raw(this.style.comments === "semicolon" ? `; ${text}` : `(${text})`);
  }

  /** First position with a tool, always absolute; then incremental when the style is. */
  start(x: number, y: number, z: number): void {
    this.put(`G0 ${this.axis("X", x, 0)} ${this.axis("Y", y, 0)}`);
    this.put(`G43 H1 ${this.axis("Z", z, 0)} M8`);
    [this.x, this.y, this.z, this.g] = [x, y, z, -1];
    this.known = true;
    if (this.style.incremental) this.put("G91");
  }

  move(g: 0 | 1, to: { x?: number; y?: number; z?: number }, feed?: number): void {
    const { x = this.x, y = this.y, z = this.z } = to;
    const words = [
      this.rounded(x) !== this.rounded(this.x) ? this.axis("X", x, this.x) : "",
      this.rounded(y) !== this.rounded(this.y) ? this.axis("Y", y, this.y) : "",
      this.rounded(z) !== this.rounded(this.z) ? this.axis("Z", z, this.z) : "",
    ].filter((w) => w !== "");
    if (words.length > 0) this.block(g, words, g === 1 ? feed : undefined);
    [this.x, this.y, this.z] = [x, y, z];
  }

  private block(g: number, words: string[], feed: number | undefined): void {
    const all = this.style.modal && g === this.g ? words : [`G${g}`, ...words];
    this.g = g;
    if (feed !== undefined && !Number.isNaN(feed)) {
      const f = this.feedWord(feed);
      if (f !== this.f || !this.style.modal) all.push(f);
      this.f = f;
    }
    this.put(all.join(" "));
  }

  private feedWord(feed: number): string {
    const v = feed / this.unit / (this.style.perTurn ? this.rpm : 1);
    const places = this.style.perTurn ? 5 : this.style.units === "in" ? 2 : 1;
    return `F${v.toFixed(places)}`;
  }

  /** Arc about (cx, cy) by so many degrees, rising evenly by `rise`. */
  arc(cx: number, cy: number, counter: boolean, degrees: number, rise: number, feed: number): void {
    const [way, size] = this.style.arcs.split(" ") as ["ij" | "r", string];
    const step = Number(size);
    const count = Math.ceil(degrees / step - 1e-9);
    const each = degrees / count;
    const [x0, y0, z0] = [this.x, this.y, this.z];
    const radius = Math.hypot(x0 - cx, y0 - cy);
    const from = Math.atan2(y0 - cy, x0 - cx);
    for (let n = 1; n <= count; n++) {
      const angle = from + ((counter ? 1 : -1) * n * each * Math.PI) / 180;
      const [x, y, z] = [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle), z0 + (rise * n) / count];
      const words = [this.axis("X", x, this.x), this.axis("Y", y, this.y)];
      if (rise !== 0) words.push(this.axis("Z", z, this.z));
      if (way === "r") words.push(`R${this.write(this.rounded(radius))}`);
      else {
        const ij = (c: number, at: number) =>
          this.write(this.style.absoluteCentres ? this.rounded(c) : this.rounded(c) - this.rounded(at));
        words.push(`I${ij(cx, this.x)}`, `J${ij(cy, this.y)}`);
      }
      this.block(counter ? 3 : 2, words, feed);
      [this.x, this.y, this.z] = [x, y, z];
    }
  }

  compensate(code: 40 | 41 | 42, to: { x?: number; y?: number }, feed: number): void {
    // compensation goes with a straight move
    const { x = this.x, y = this.y } = to;
    const word = code === 40 ? "G40" : `G${code} D1`;
    const words = [
      this.rounded(x) !== this.rounded(this.x) ? this.axis("X", x, this.x) : "",
      this.rounded(y) !== this.rounded(this.y) ? this.axis("Y", y, this.y) : "",
    ].filter((w) => w !== "");
    if (words.length === 0) this.put(word);
    else this.block(1, [word, ...words], feed);
    [this.x, this.y] = [x, y];
  }

  /** A canned cycle at several places; R above the face. */
  cycle(code: number, places: readonly Place[], bottom: number, r: number, feed: number, more = ""): void {
    places.forEach(([x, y], n) => {
      const words = [this.axis("X", x, this.x), this.axis("Y", y, this.y)];
      if (n === 0) {
        const zr = this.style.incremental
          ? [
              `Z${this.write(this.rounded(bottom) - this.rounded(r))}`,
              `R${this.write(this.rounded(r) - this.rounded(this.z))}`,
            ]
          : [this.axis("Z", bottom, 0), this.axis("R", r, 0)];
        this.put(["G98", `G${code}`, ...words, ...zr, more, this.feedWord(feed)].filter((w) => w !== "").join(" "));
      } else this.put(words.join(" "));
      [this.x, this.y] = [x, y];
    });
    this.put("G80");
    this.g = -1;
    this.f = "";
  }

  length(v: number): string {
    return this.write(this.rounded(v));
  }

  end(): void {
    this.put("M9");
    this.put("M5");
    this.put(`G91 G28 Z${this.zero}`);
    this.put("G90");
    this.put("M30");
    this.raw("%");
  }

  get at(): readonly [number, number, number] {
    return [this.x, this.y, this.z];
  }
}

export type Place = readonly [x: number, y: number];
