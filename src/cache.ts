/**
 * A memory with a name and an end: the only kind that this house keeps between calls. What is worked out of one object alone may
 * hang on it in a WeakMap instead: it is one thing an object, and goes with it.
 */

/** What goes when it is full, as a share: to take many out at once costs far less than one each time. */
const GOES = 4;

/** Keeps the last things asked for, `most` of them and at least three quarters of it; what was not asked for longest goes first. */
export class Cache<K, V> {
  readonly name: string;
  readonly most: number;
  private readonly kept = new Map<K, V>();

  constructor(name: string, most: number) {
    this.name = name;
    this.most = most;
  }

  get size(): number {
    return this.kept.size;
  }

  /** What was kept under the key, else what `make` makes. */
  get(key: K, make: () => V): V {
    const known = this.kept.get(key);
    if (known !== undefined) {
      // Asked for again: the last to go.
      this.kept.delete(key);
      this.kept.set(key, known);
      return known;
    }
    const made = make();
    if (this.kept.size >= this.most) {
      let left = Math.max(1, Math.floor(this.most / GOES));
      for (const old of this.kept.keys()) {
        if (left-- <= 0) break;
        this.kept.delete(old);
      }
    }
    this.kept.set(key, made);
    return made;
  }
}
