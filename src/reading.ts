/** Reads numbers and lengths as people type them. */

// Each pattern reads a text in one way only, so that a long text costs its length and not the square of it.
const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d{1,3})?$/i;
const FRACTION = /^(?:(\d+)(?:\s*-\s*|\s+))?(\d+)\s*\/\s*(\d+)$/;
const INCH_MARK = /(?:"|″|”|'')$/;

/** Decimal number typed as text ("12.7", ".5", "1e3"), or undefined. A comma is never guessed at. */
export function decimalText(text: string): number | undefined {
  const trimmed = text.trim();
  if (!DECIMAL.test(trimmed)) return undefined;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : undefined;
}

/** Length in inches written as a fraction or with an inch mark ("3/8", "1-1/2", `3/8"`, `.375"`), or undefined. */
export function inchText(text: string): number | undefined {
  const trimmed = text.trim();
  const bare = trimmed.replace(INCH_MARK, "").trimEnd();
  const fraction = FRACTION.exec(bare);
  if (fraction) {
    const bottom = Number(fraction[3]);
    if (bottom === 0) return undefined;
    return Number(fraction[1] ?? 0) + Number(fraction[2]) / bottom;
  }
  return bare === trimmed ? undefined : decimalText(bare);
}
