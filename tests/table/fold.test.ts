/** Texts as they are compared: by Unicode's own tables and by what people would call the same word. */
import { describe, expect, it } from "vitest";
import { compact, fold, isPlain, plainWidth } from "../../src/table/fold.ts";
import { japanese, stem } from "../../src/table/lexicon.ts";

describe("a text without the width of its characters", () => {
  it("writes fractions as Unicode takes them apart, with a blank before them (published: the character database)", () => {
    for (const c of "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞") {
      const apart = c.normalize("NFKC").replace("⁄", "/");
      expect(plainWidth(c), c).toBe(` ${apart}`);
      expect(plainWidth(`1${c}`), c).toBe(`1 ${apart}`);
    }
  });
  it.each([
    ["−‐‑‒–—", "------"],
    ["1⁄2", "1/2"],
    ["3″", '3"'],
    ["3′′", '3"'],
    ["“3”", '"3"'],
    ["l‘’′", "l'''"],
    ["１２．５ｍｍ", "12.5mm"],
    ["㎜", "mm"],
    ["ﾈｼﾞ", "ネジ"],
  ])("%s is %s", (text, wanted) => expect(plainWidth(text)).toBe(wanted));
});

describe("a folded text", () => {
  it.each([
    ["Hole DIA", "hole dia"],
    ["ÉÀÜÑçö", "eaunco"],
    ["Stoß", "stoss"],
    ["Œil", "oeil"],
    ["Æ", "ae"],
    ["⌀∅φϕØ", "øøøøø"],
    ["5 µm", "5 μm"],
    ["がガ", "がガ"],
  ])("of %s is %s", (text, wanted) => expect(fold(text)).toBe(wanted));
  it("is plain where all of it is printable ASCII", () => {
    expect(isPlain(" Az09~")).toBe(true);
    for (const c of ["é", "\t", "\u007f", "深"]) expect(isPlain(`a${c}b`)).toBe(false);
  });
  it.each([
    ["hole dia.", "holedia"],
    ["d1-2", "d12"],
    ["50 %", "50%"],
    ["n° 5", "no5"],
    ["tiefe (μm)", "tiefeμm"],
    ["ねじ・深さ", "ねじ深さ"],
    ["深さ", "深さ"],
    ["°", "°"],
    [" - ", "-"],
    ["", ""],
  ])("%s without blanks and punctuation is %s", (text, wanted) => expect(compact(text)).toBe(wanted));
});

const LANGUAGE = { en: 0, de: 1, fr: 2, es: 3, it: 4 } as const;

describe("a word without the ending of number and gender", () => {
  it.each<[keyof typeof LANGUAGE, string]>([
    ["en", "holes hole"],
    ["en", "glasses glass"],
    ["en", "boxes box"],
    ["en", "punches punch"],
    ["en", "sizes size"],
    ["fr", "outils outil"],
    ["fr", "finies finie"],
    ["fr", "percee percees"],
    ["fr", "matieres matiere"],
    ["fr", "grande grandes"],
    ["es", "fresado fresada fresados fresadas"],
    ["it", "utensile utensili"],
    ["it", "macchina macchine"],
    ["it", "vite viti"],
    ["fr", "axes axe"],
  ])("is the same of all these, in %s: %s", (language, words) => {
    const stems = words.split(" ").map((word) => stem(word, LANGUAGE[language]));
    expect(new Set(stems).size, stems.join()).toBe(1);
  });
  it.each<[keyof typeof LANGUAGE, string]>([
    // Too short to have lost anything, or an s of its own.
    ["en", "gas ga"],
    ["en", "pins pin"],
    ["en", "glass glas"],
    ["en", "sizes siz"],
    ["en", "boxest boxt"],
    ["de", "zeichens zeichen"],
    ["fr", "pas pa"],
    ["fr", "glisse gliss glis"],
    ["fr", "percee perce"],
    ["fr", "lame lama"],
    ["es", "mes me"],
    ["es", "paso pas"],
    ["it", "vie vi"],
  ])("is not the same, in %s: %s", (language, words) => {
    const all = words.split(" ");
    expect(new Set(all.map((word) => stem(word, LANGUAGE[language]))).size).toBe(all.length);
  });
});

describe("a vowel that went", () => {
  it("leaves a mark, so that a slip of one is not mended, and stays behind another vowel", () => {
    expect(stem("lame", LANGUAGE.fr)).toBe("lam~");
    expect(stem("perceuse", LANGUAGE.fr)).toBe("perceus~");
    expect(stem("percee", LANGUAGE.fr)).toBe("percee");
    expect(stem("lado", LANGUAGE.es)).toBe("lad~");
    expect(stem("vacio", LANGUAGE.es)).toBe("vacio");
    expect(stem("lado", LANGUAGE.fr)).toBe("lado");
  });
});

describe("Japanese as it is compared", () => {
  it("is the same with and without the kana that follow a character, in either script, with and without long vowels", () => {
    for (const [one, other] of [
      ["取り付け", "取付"],
      ["ねじ深さ", "ネジ深"],
      ["たわみ", "タワミ"],
      ["コーナー", "コナ"],
      ["一刃送り", "1刃送"],
      ["はめあい", "ハメアイ"],
      ["穴あけ", "穴アケ"],
      ["切りくず", "切クズ"],
      ["ねじれ角", "ネジレ角"],
    ] as const)
      expect(japanese(one), one).toBe(japanese(other));
  });
  it("keeps what is kana alone, and texts without kana", () => {
    expect(japanese("さき")).toBe("さき");
    expect(japanese("さ き")).toBe("さ き");
    expect(japanese("hole 一刃")).toBe("hole 一刃");
    expect(japanese("一番と")).toBe("一番と");
  });
});
