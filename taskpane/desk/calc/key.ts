/**
 * Formulas that say the same relative to their own cells have one key: they are parsed once. The key is the formula
 * with each plain reference written as a distance; text, quoted names and brackets stay as they are.
 */
const PART =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:[^[\]']|'.|\[(?:[^[\]']|'.)*\])*\]|(?<![\w.$\\])(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})(?![\w.(\\])|(?<![\w.$\\])(\$?)([A-Za-z]{1,3}):(\$?)([A-Za-z]{1,3})(?![\w.(\\])|(?<![\w.$\\])(\$?)(\d{1,7}):(\$?)(\d{1,7})(?![\w.(\\])/g;

const columnAt = (name: string): number => {
  let n = 0;
  for (let i = 0; i < name.length; i++) n = n * 26 + (name.charCodeAt(i) & 31);
  return n - 1;
};

export function relativeKey(formula: string, row: number, column: number): string {
  const r = (fixed: string, text: string) => (fixed ? `$${text}` : `${Number(text) - 1 - row}`);
  const c = (fixed: string, text: string) => (fixed ? `$${text.toUpperCase()}` : `${columnAt(text) - column}`);
  return formula.replace(PART, (all, c$, col, r$, ro, c1$, c1, c2$, c2, r1$, r1, r2$, r2) => {
    if (col !== undefined) return `⟨${c(c$, col)},${r(r$, ro)}⟩`;
    if (c1 !== undefined) return `⟨${c(c1$, c1)}:${c(c2$, c2)}⟩`;
    if (r1 !== undefined) return `⟨${r(r1$, r1)};${r(r2$, r2)}⟩`;
    return all;
  });
}
