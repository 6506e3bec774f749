/** Where rows and columns lie: most of one size, some of another, some hidden. Pixels. */
export class Axis {
  readonly count: number;
  readonly size: number;
  private readonly at: readonly number[];
  private readonly sizes: readonly number[];
  /** Pixels by which what lies behind the i-th special one is further than it would be. */
  private readonly extra: readonly number[];

  /** @param special - sizes that differ; 0 is hidden */
  constructor(count: number, size: number, special: ReadonlyMap<number, number>) {
    this.count = count;
    this.size = size;
    const sorted = [...special].filter(([i]) => i < count).sort((a, b) => a[0] - b[0]);
    this.at = sorted.map(([i]) => i);
    this.sizes = sorted.map(([, s]) => s);
    let sum = 0;
    this.extra = this.sizes.map((s) => {
      sum += s - size;
      return sum;
    });
  }

  /** How many special ones stand before an index. */
  private before(index: number): number {
    let [low, high] = [0, this.at.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.at[middle]! < index) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  sizeOf(index: number): number {
    const i = this.before(index);
    return this.at[i] === index ? this.sizes[i]! : this.size;
  }

  /** Start of an index; of `count` it is the whole length. */
  offset(index: number): number {
    const i = this.before(index);
    return index * this.size + (i > 0 ? this.extra[i - 1]! : 0);
  }

  get length(): number {
    return this.offset(this.count);
  }

  /** The index at a position; the nearest one outside. */
  indexAt(position: number): number {
    let [low, high] = [0, this.count - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.offset(middle) <= position) low = middle;
      else high = middle - 1;
    }
    while (low > 0 && this.sizeOf(low) === 0) low--;
    return Math.max(0, low);
  }

  /** The next index that is seen, from `index` in steps of ±1; itself when none is. */
  step(index: number, by: 1 | -1): number {
    for (let i = index + by; i >= 0 && i < this.count; i += by) if (this.sizeOf(i) > 0) return i;
    return index;
  }
}
