/** A memory with a name and an end: the only kind that this house keeps between calls. */

/** Keeps the last `most` things asked for; the one that was not asked for longest goes first. */
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
    if (this.kept.size >= this.most) this.kept.delete(this.kept.keys().next().value as K);
    this.kept.set(key, made);
    return made;
  }
}
