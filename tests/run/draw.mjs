// A fair sample of planted faults, and what it says about all of them.

/** Numbers in [0, 1) that depend on the seed alone (mulberry32: one step of a counter, then mixed). */
function numbers(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** `size` of the items by lot, each as likely as any other and none twice; a larger sample of the same seed begins with the smaller. */
export function draw(items, size, seed) {
  const random = numbers(seed);
  const places = items.map((_, place) => place);
  const wanted = Math.min(size, items.length);
  for (let i = 0; i < wanted; i++) {
    const j = i + Math.floor(random() * (items.length - i));
    [places[i], places[j]] = [places[j], places[i]];
  }
  return places.slice(0, wanted).map((place) => items[place]);
}

/**
 * The score interval of a share, 95 %: the shares p that lie within 1.96 standard errors, √(p (1 − p) / n), of what was seen.
 * Source: E. B. Wilson: Probable inference, the law of succession, and statistical inference. J. Am. Stat. Assoc. 22 (1927).
 */
export function wilson(hits, n) {
  const z2 = 1.959964 ** 2;
  const share = hits / n;
  const middle = (share + z2 / (2 * n)) / (1 + z2 / n);
  const half = Math.sqrt((z2 * share * (1 - share)) / n + (z2 * z2) / (4 * n * n)) / (1 + z2 / n);
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
}
