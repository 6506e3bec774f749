/** Text as it is compared: what a person would call the same word is the same text. All of it one look at each character. */

const VULGAR: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** Full-width and half-width forms, ligatures and the like as their plain characters; fractions with a blank before them. */
export function plainWidth(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (c) => ` ${VULGAR[c]}`)
    .normalize("NFKC")
    .replace(/[\u2212\u2010\u2011\u2012\u2013\u2014]/g, "-")
    .replace(/\u2044/g, "/")
    .replace(/\u2032\u2032|[\u201c\u201d]/g, '"')
    .replace(/[\u2018\u2019\u2032]/g, "'");
}

/** True for printable characters of ASCII alone, as most texts are: the quick way for them. */
export const isPlain = (text: string): boolean => !/[^ -~]/.test(text);

/** Lower case without accents, whatever the width of the characters; every sign of a diameter is ø. */
export function fold(text: string): string {
  // Most texts have nothing to take off.
  if (isPlain(text)) return text.toLowerCase();
  return (
    plainWidth(text)
      .toLowerCase()
      .normalize("NFD")
      // Accents of Latin letters only: the marks of kana are letters.
      .replace(/[\u0300-\u036f]/g, "")
      .normalize("NFC")
      .replace(/ß/g, "ss")
      .replace(/œ/g, "oe")
      .replace(/æ/g, "ae")
      .replace(/[⌀∅φϕ]/g, "ø")
  );
}

/** A folded text without blanks and punctuation: what words and headings are found by. */
export function compact(folded: string): string {
  const bare = folded.replace(/n°/g, "no").replace(/[^\p{L}\p{N}%]/gu, "");
  return bare === "" ? folded.trim() : bare;
}
