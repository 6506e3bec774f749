/**
 * Names of functions and variables in files. Functions that came after the first edition of the format are stored with
 * a prefix ([MS-XLSX] 2.2.3, "Functions"); variables of LET and LAMBDA as well; functions of add-ins as `_xldudf_` with
 * the namespace. A person never sees these. Names are read without regard to case, as other programs do. Pure.
 */
import { tokenize } from "@borgar/fx/xlsx";

/** [MS-XLSX] 2.2.3; the newest, from BYCOL on, partly from memory. */
const LATER = new Set(
  `ACOT ACOTH AGGREGATE ARABIC BASE BETA.DIST BETA.INV BINOM.DIST BINOM.DIST.RANGE BINOM.INV BITAND BITLSHIFT BITOR
  BITRSHIFT BITXOR CEILING.MATH CEILING.PRECISE CHISQ.DIST CHISQ.DIST.RT CHISQ.INV CHISQ.INV.RT CHISQ.TEST COMBINA CONCAT
  CONFIDENCE.NORM CONFIDENCE.T COT COTH COVARIANCE.P COVARIANCE.S CSC CSCH DAYS DECIMAL ERF.PRECISE ERFC.PRECISE
  EXPON.DIST F.DIST F.DIST.RT F.INV F.INV.RT F.TEST FIELDVALUE FILTERXML FLOOR.MATH FLOOR.PRECISE FORECAST.ETS
  FORECAST.ETS.CONFINT FORECAST.ETS.SEASONALITY FORECAST.ETS.STAT FORECAST.LINEAR FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV
  GAMMALN.PRECISE GAUSS HYPGEOM.DIST IFNA IFS IMCOSH IMCOT IMCSC IMCSCH IMSEC IMSECH IMSINH IMTAN ISFORMULA ISOWEEKNUM
  LOGNORM.DIST LOGNORM.INV MAXIFS MINIFS MODE.MULT MODE.SNGL MUNIT NEGBINOM.DIST NORM.DIST NORM.INV NORM.S.DIST NORM.S.INV
  NUMBERVALUE PDURATION PERCENTILE.EXC PERCENTILE.INC PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI POISSON.DIST
  QUARTILE.EXC QUARTILE.INC QUERYSTRING RANK.AVG RANK.EQ RRI SEC SECH SHEET SHEETS SKEW.P STDEV.P STDEV.S SWITCH T.DIST
  T.DIST.2T T.DIST.RT T.INV T.INV.2T T.TEST TEXTJOIN UNICHAR UNICODE VAR.P VAR.S WEBSERVICE WEIBULL.DIST XOR Z.TEST
  ANCHORARRAY LAMBDA LET RANDARRAY SEQUENCE SINGLE SORTBY UNIQUE XLOOKUP XMATCH
  BYCOL BYROW CHOOSECOLS CHOOSEROWS DROP EXPAND HSTACK ISOMITTED MAKEARRAY MAP REDUCE SCAN TAKE TEXTAFTER TEXTBEFORE
  TEXTSPLIT TOCOL TOROW VSTACK WRAPCOLS WRAPROWS ARRAYTOTEXT VALUETOTEXT STOCKHISTORY IMAGE GROUPBY PIVOTBY PERCENTOF
  REGEXTEST REGEXEXTRACT REGEXREPLACE TRIMRANGE TRANSLATE DETECTLANGUAGE`.split(/\s+/),
);
const LATER_SHEET = new Set(["FILTER", "SORT", "PY"]);

interface Token {
  readonly type: string;
  readonly value: string;
}
const tokens = (formula: string): Token[] => tokenize(formula) as Token[];

/** What lies outside of quotes, changed. */
function outsideQuotes(formula: string, change: (text: string) => string): string {
  if (!/["']/.test(formula)) return change(formula);
  return formula
    .split(/("(?:[^"]|"")*"|'(?:[^']|'')*')/)
    .map((part, i) => (i % 2 === 0 ? change(part) : part))
    .join("");
}

/** Index after the bracket that closes the one at `open`; -1 when none does. Quoted text is passed over. */
function closing(text: string, open: number): number {
  let depth = 0;
  for (let i = open; i < text.length; i++) {
    const ch = text[i]!;
    if (ch === '"' || ch === "'") {
      const end = text.indexOf(ch, i + 1);
      if (end < 0) return -1;
      i = end;
    } else if (ch === "(") depth++;
    else if (ch === ")" && --depth === 0) return i + 1;
  }
  return -1;
}

/** `NAME(x)` of a file as the sign a person types: `x#` and `@x`. */
function asSign(formula: string, name: string, put: (inner: string) => string): string {
  const pattern = new RegExp(`_xlfn\\.${name}\\(`, "i");
  let text = formula;
  for (let guard = 0; guard < 100; guard++) {
    const at = pattern.exec(text);
    if (!at) break;
    const open = at.index + at[0].length - 1;
    const end = closing(text, open);
    if (end < 0) break;
    text = text.slice(0, at.index) + put(text.slice(open + 1, end - 1)) + text.slice(end);
  }
  return text;
}

/** A file's formula as a person reads it. */
export function fromFile(formula: string): string {
  if (!/_xl/i.test(formula)) return formula;
  let text = asSign(formula, "ANCHORARRAY", (inner) => `${inner}#`);
  text = asSign(text, "SINGLE", (inner) =>
    /^[^()+\-*/^&=<>,;]*$|^[\w.]+\([^()]*\)$/.test(inner) ? `@${inner}` : `@(${inner})`,
  );
  return outsideQuotes(text, (part) =>
    part
      .replace(/_xldudf_CUT[_.]([A-Z][A-Z0-9_.]*)(?=\s*\()/gi, (_, id: string) => `CUT.${id.toUpperCase()}`)
      .replace(/_xl(?:fn|ws|pm|op)\.(?=[A-Z_])/gi, ""),
  );
}

/** Names that LET and LAMBDA give: the odd arguments of LET but the last, all arguments of LAMBDA but the last. */
function variables(all: readonly Token[]): Set<string> {
  const found = new Set<string>();
  all.forEach((token, i) => {
    const name = token.value.toUpperCase();
    if (token.type !== "func" || (name !== "LET" && name !== "LAMBDA")) return;
    let depth = 0;
    let argument = 0;
    for (let k = i + 1; k < all.length; k++) {
      const { value, type } = all[k]!;
      if (value === "(" || value === "{") depth++;
      else if (value === ")" || value === "}") {
        if (--depth === 0) break;
      } else if (depth !== 1) continue;
      else if (value === ",") argument++;
      else if (type === "range_named" && (name === "LAMBDA" || argument % 2 === 0)) {
        const before = all
          .slice(0, k)
          .filter((t) => t.type !== "whitespace")
          .at(-1)?.value;
        const after = all.slice(k + 1).find((t) => t.type !== "whitespace")?.value;
        if ((before === "(" || before === ",") && after === ",") found.add(value.toUpperCase());
      }
    }
  });
  return found;
}

/** Where the operand that starts at a token ends: a reference, or a function or bracket with what it holds. */
function operandEnd(all: readonly Token[], from: number): number {
  let i = from;
  while (all[i]?.type === "whitespace") i++;
  if (all[i]?.type === "func") i++;
  if (all[i]?.value !== "(") return i + 1;
  let depth = 0;
  for (; i < all.length; i++) {
    if (all[i]!.value === "(") depth++;
    if (all[i]!.value === ")" && --depth === 0) return i + 1;
  }
  return i;
}

/**
 * A formula as a person typed it, spelled as files keep it.
 *
 * @param dynamic - whether it is stored as an array that spills; elsewhere "@" is what a plain formula does anyway
 * @param known - spellings that the file itself uses, by the name a person sees in capitals
 */
export function toFile(formula: string, dynamic = false, known?: ReadonlyMap<string, string>): string {
  const text = formula.replace(/^\s*=/, "");
  if (!/[A-Za-z@#]/.test(text)) return text;
  const all = tokens(text);
  const names = variables(all);
  const spell = (from: number, to: number): string => {
    let out = "";
    for (let i = from; i < to; i++) {
      const { type, value } = all[i]!;
      const upper = value.toUpperCase();
      if (value === "@" && type === "operator") {
        const end = Math.min(to, operandEnd(all, i + 1));
        out += dynamic ? `_xlfn.SINGLE(${spell(i + 1, end)})` : spell(i + 1, end);
        i = end - 1;
      } else if (all[i + 1]?.value === "#" && type !== "operator") {
        out += `_xlfn.ANCHORARRAY(${value})`;
        i++;
      } else if (type === "func") {
        if (upper.startsWith("CUT.")) out += `_xldudf_CUT_${upper.slice(4)}`;
        else if (names.has(upper)) out += `_xlpm.${value}`;
        else if (LATER_SHEET.has(upper)) out += `_xlfn._xlws.${upper}`;
        else if (LATER.has(upper)) out += `_xlfn.${upper}`;
        else out += known?.get(upper) ?? value;
      } else if (type === "range_named" && names.has(upper)) out += `_xlpm.${value}`;
      else out += value;
    }
    return out;
  };
  return spell(0, all.length);
}

/** The spellings with a prefix that texts of a file use, for functions that this list does not know yet. */
export function spellingsIn(text: string, into: Map<string, string>): void {
  for (const [whole, name] of text.matchAll(/(?:_xl(?:fn|ws|udf)\.)+([A-Za-z][\w.]*)(?=\()/gi))
    if (!into.has(name!.toUpperCase())) into.set(name!.toUpperCase(), whole!);
}
