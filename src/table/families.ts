/**
 * What kind of material a designation names, by how the standards number and spell: EN 10027-1 and -2, EN 1560 and the
 * older DIN 1691 and 1693 for iron, EN 573 and 1780 for aluminium, EN 1412 for copper, AISI/SAE, UNS (SAE J1086, ASTM
 * E527), JIS. All from memory. It tells what resembles a name that is in no list; it chooses nothing.
 */
import { compact, fold } from "./fold.ts";

/** A class and a kind within it, such as "steel/alloy"; a class alone where a word says no more. */
export type Family = string;

/** Kinds by how a designation is written: folded, without blanks; the first that fits counts. */
const WRITTEN: readonly (readonly [Family, RegExp])[] = [
  // EN 10027-2 and the older numbers of the same system.
  ["stainless/duplex", /^1\.4(?:362|410|460|462|467|477|501|507)$/],
  ["stainless/hardening", /^1\.4(?:532|534|542|545|548|568|574)$/],
  ["stainless/austenitic", /^1\.4(?:3\d\d|4\d\d|5[3-9]\d|8\d\d)$/],
  ["stainless/chromium", /^1\.4[01567]\d\d$/],
  ["super/iron", /^1\.49\d\d$/],
  ["steel/free", /^1\.07[1-5]\d$/],
  ["steel/tool", /^1\.(?:1[5-8]|2\d|3[23])\d\d$/],
  ["steel/carbon", /^1\.[019]\d{3}$/],
  ["steel/alloy", /^1\.[35678]\d{3}$/],
  ["iron/grey", /^(?:5\.1\d{3}|0\.6\d{3})$/],
  ["iron/nodular", /^(?:5\.3\d{3}|0\.7\d{3})$/],
  ["copper/pure", /^2\.00\d\d$/],
  ["copper/brass", /^2\.0[2-5]\d\d$/],
  ["copper/bronze", /^2\.(?:0[69]|1\d)\d\d$/],
  ["super/nickel", /^2\.4\d{3}$/],
  ["aluminium/cast", /^3\.2[1-5]\d\d$/],
  ["aluminium/wrought", /^3\.[0-4]\d{3}$/],
  ["magnesium", /^3\.5\d{3}$/],
  ["titanium", /^3\.7\d{3}$/],
  // UNS.
  ["aluminium/cast", /^a[01]\d{4}$/],
  ["aluminium/wrought", /^a9\d{4}$/],
  ["copper/pure", /^c1\d{4}$/],
  ["copper/brass", /^c[2-4]\d{4}$/],
  ["copper/bronze", /^c[5-9]\d{4}$/],
  ["iron/grey", /^f1\d{4}$/],
  ["iron/nodular", /^f3\d{4}$/],
  ["steel/free", /^g1[12]\d{3}$/],
  ["steel/carbon", /^(?:g1[05]|k0)\d{3,4}$/],
  ["steel/alloy", /^[gh]\d{5}$/],
  ["magnesium", /^m1\d{4}$/],
  ["super/nickel", /^n0\d{4}$/],
  ["super/cobalt", /^r3\d{4}$/],
  ["titanium", /^r5\d{4}$/],
  ["stainless/hardening", /^s1[3-7]\d{3}$/],
  ["super/iron", /^s66\d{3}$/],
  ["stainless/duplex", /^s(?:318|32[1-9])\d\d$/],
  ["stainless/austenitic", /^s[23]\d{4}$/],
  ["stainless/chromium", /^s4\d{4}$/],
  ["steel/tool", /^t\d{5}$/],
  // JIS.
  ["steel/carbon", /^(?:s\d\dc|s[sm]\d{3}[abc]?|stkm\d.*)$/],
  ["steel/alloy", /^(?:scm|sncm|scr|snc|smn|smnc|suj)\d+h?$/],
  ["steel/free", /^sum\d+l?$/],
  ["steel/tool", /^sk[dhst]?\d+$/],
  ["stainless/hardening", /^sus63[01]$/],
  ["stainless/duplex", /^sus329/],
  ["stainless/austenitic", /^sus[23]\d\d/],
  ["stainless/chromium", /^sus4\d\d/],
  ["iron/nodular", /^fcd\d+$/],
  ["iron/grey", /^fc\d+$/],
  ["aluminium/cast", /^(?:adc\d+|ac\d[a-z])$/],
  ["copper/pure", /^c1\d{3}$/],
  ["copper/brass", /^c[2-4]\d{3}$/],
  ["copper/bronze", /^c[5-9]\d{3}$/],
  // AISI, SAE, AA and ASTM.
  ["stainless/duplex", /^(?:2205|2304|2507|f5[135])$/],
  ["stainless/hardening", /^(?:1[57]-?[457](?:ph)?|63[01]|13-8(?:mo|ph)?)$/],
  ["steel/free", /^1[12](?:l|(?!00))\d\d$/],
  ["aluminium/wrought", /^(?:enaw|aw|aa)-?\d{4}[a-z]?(?:-?[tohf]\d*)?$/],
  [
    "aluminium/wrought",
    /^(?:al|a)?-?(?:1100|1200|1350|2[0126]\d\d|3[01]\d\d|4032|5(?:0[058]|1[58]|[2-7]\d)\d|6(?:0\d\d|101|2[06]\d|35\d|46\d)|7[01247]\d\d|80\d\d)[a-z]?(?:-?[tohf]\d*)?$/,
  ],
  ["steel/carbon", /^(?:10[0-4]\d|10[89]\d|15\d\d|m10\d\d)$/],
  ["steel/alloy", /^(?:13\d\d|4[0-8]\d\d|5[01]\d\d|52100|61\d\d|8[1678]\d\d|9[234]\d\d)h?$/],
  ["aluminium/cast", /^(?:a?(?:319|35[5-7]|38[03]|413|390)(?:\.\d)?(?:-t\d+)?)$/],
  ["stainless/austenitic", /^[23]\d\d(?:l|h|n|ln|ti|se|f)?$/],
  ["stainless/chromium", /^4[0-4]\d(?:l|f|c|se)?$/],
  ["steel/carbon", /^a(?:36|283|285|500|513|516|572|588|992)$/],
  ["steel/tool", /^(?:a[2-9]|d[2-7]|o[1-7]|s[1-7]|h1\d|h2\d|m[1-4]\d?|t1|t15|w[12]|p20)$/],
  ["super/iron", /^a286$/],
  ["copper/pure", /^c1[01]\d$/],
  ["copper/brass", /^c[2-4]\d\d$/],
  ["copper/bronze", /^c[5-9]\d\d$/],
  ["iron/nodular", /^(?:(?:en-?)?gjs.*|ggg-?\d.*|\d{2,3}-\d{2}-\d{2})$/],
  ["iron/grey", /^(?:(?:en-?)?gjl.*|gg-?\d+|class[2-6]\d)$/],
  // EN 10027-1 and relatives.
  ["steel/carbon", /^(?:c|ck|cf|cq)\d{2}[erk]?$/],
  ["steel/carbon", /^(?:[sep]\d{3}[a-z]*\d?|st-?\d\d(?:-\d)?k?)$/],
  ["steel/free", /^\d{1,2}(?:smn|s)(?:pb)?\d+\+?c?$/],
  ["super/iron", /^x\dnicrti/],
  ["steel/tool", /^(?:x\d+(?:cr)?[a-z]*[vw].*|x\d{3}cr.*|hs\d.*|c\d+u)$/],
  ["stainless/duplex", /^x\dcrni(?:mo)?(?:cu)?n2[1-5]-?\d/],
  ["stainless/hardening", /^x\dcrni(?:cu|moal|al)/],
  ["stainless/austenitic", /^x\d{1,2}crnis?(?:mo|ti|nb|n|cu)*1[6-9]/],
  ["stainless/chromium", /^x\d{1,2}cr/],
  ["steel/alloy", /^\d{2,3}(?:cr|mn|ni|mo|si|b)[a-z]*\d/],
  ["aluminium/cast", /^(?:g-?)?(?:alsi(?:[5-9]|1\d|2\d)|alcu4ti|enac|ac-4|gd-?al)/],
  ["aluminium/wrought", /^al(?:mg|si|cu|zn|mn|99)/],
  ["copper/brass", /^(?:cuzn.*|cw[67]\d\d[a-z]|ms\d\d)$/],
  ["copper/bronze", /^(?:(?:g-?)?cu(?:sn|al|ni|pb).*|cw[34]\d\d[a-z])$/],
  ["copper/pure", /^(?:cu-?(?:etp|of|hcp|dhp|ofe)?|(?:e|sf|of)-?cu|cw0\d\d[a-z])$/],
  ["magnesium", /^(?:mg(?:al|zn).*|a[zm]\d\d[a-z]?)$/],
  [
    "titanium",
    /^(?:ti(?:-?\d.*|al.*)?|(?:ti|titan(?:ium)?)-?(?:gr(?:ade)?)-?\d+|gr(?:ade)?-?\d+-?ti(?:tanium)?|ti64)$/,
  ],
  ["super/nickel", /^(?:ni(?:cr|mo|cu|fe).*|alloy-?(?:400|600|601|617|625|718|725|825|925))$/],
  ["super/cobalt", /^cocr/],
  [
    "plastic",
    /^(?:pom(?:-?[ch])?|pa-?\d+.*|peek.*|ptfe|pc|pvc|pp|pet|pe(?:-?(?:hd|ld|uhmw|\d+))?|hdpe|uhmw(?:-?pe)?|abs|pmma|pei|pvdf|ppsu?)$/,
  ],
];

/** Words for a class or a kind, in the languages at hand; a longer word before one that is in it. */
const SAID: readonly (readonly [Family, RegExp])[] = [
  ["hardened", /hardened|gehartet|trempe|templado|temprato|焼入/],
  ["stainless", /stainless|edelstahl|rostfrei|inox|ステンレス/],
  ["iron/grey", /gr[ea]y(?:cast)?iron|grauguss|fontegrise|fundiciongris|ghisagrigia|(?:ネズミ|ねずみ)鋳鉄/],
  ["iron/nodular", /nodular|ductileiron|kugelgraphit|spharoguss|fontegs|sferoidale|球状黒鉛/],
  ["iron", /castiron|gusseisen|^fonte|fundicion|ghisa|鋳鉄/],
  ["steel/tool", /toolsteel|werkzeugstahl|acieraoutil|aceropara?herramientas|acciaiodautensili|工具鋼/],
  ["steel/free", /freecutting|freemachining|automatenstahl|decolletage|快削鋼/],
  ["steel/carbon", /mildsteel|structuralsteel|baustahl|carbonsteel|lowcarbon|aciercarbone|acerodulce|軟鋼|炭素鋼/],
  ["steel/alloy", /alloysteel|vergutungsstahl|einsatzstahl|acierallie|aceroaleado|合金鋼/],
  ["steel", /steel|stahl|^acier|acero|acciaio|鋼/],
  ["aluminium/cast", /cast(?:aluminium|aluminum)|alu(?:minium)?guss|アルミ鋳物/],
  ["aluminium", /alumini?um|^alu$|all?umini[oe]|アルミ/],
  ["copper/brass", /brass|messing|laiton|laton|ottone|黄銅|真鍮/],
  ["copper/bronze", /bron[zc]|rotguss|青銅/],
  ["copper/pure", /copper|kupfer|cuivre|cobre|rame|銅/],
  ["magnesium", /magn[ei]s/],
  ["titanium", /titan|チタン/],
  ["super", /superalloy|superlegierung|superalliage|超合金|耐熱合金/],
  ["super/nickel", /nickel|ニッケル/],
  ["super/cobalt", /cobalt|kobalt/],
  ["plastic", /acetal|nylon|poly(?:carbonat|amid|ethylen|propylen)|acrylic|plasti[ckq]|plastico|kunststoff|樹脂/],
];

/** A longer text is no designation. */
const LONGEST = 80;

/** The family of a name of a material, of the words in it, or undefined. */
export function familyOf(text: string): Family | undefined {
  if (text.length > LONGEST) return undefined;
  const folded = fold(text);
  const bare = (part: string) =>
    part.replace(/\s/g, "").replace(/^(?:aisi|sae|uns|astm|jis|din|w\.?-?nr\.?:?)-?(?=.*\d)/, "");
  const written = (part: string) => WRITTEN.find(([, how]) => how.test(bare(part)))?.[0];
  const parts = [folded, ...folded.split(/[\s(),;]/)];
  return (
    parts.map(written).find((family) => family !== undefined) ?? SAID.find(([, how]) => how.test(compact(folded)))?.[0]
  );
}

/** True where the one is of the class of the other. */
export const sameClass = (a: Family, b: Family): boolean => a.split("/")[0] === b.split("/")[0];
