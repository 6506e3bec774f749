/** Kinds of materials by how the standards number and spell (published: the systems of numbers; designations from memory). */
import { describe, expect, it } from "vitest";
import { familyOf, sameClass } from "../../src/table/families.ts";

/** EN 10027-2 and its neighbours, UNS, JIS, AISI/SAE, AA, EN 10027-1: designations of each kind, the ends of ranges among them. */
const NAMED: readonly (readonly [family: string, designations: string])[] = [
  ["stainless/duplex", "1.4362|1.4410|1.4460|1.4462|1.4467|1.4477|1.4501|1.4507"],
  ["stainless/hardening", "1.4532|1.4534|1.4542|1.4545|1.4548|1.4568|1.4574"],
  ["stainless/austenitic", "1.4301|1.4310|1.4404|1.4435|1.4539|1.4541|1.4571|1.4550|1.4828|1.4841"],
  ["stainless/chromium", "1.4006|1.4016|1.4021|1.4057|1.4104|1.4112|1.4125|1.4509|1.4512|1.4713|1.4742"],
  ["super/iron", "1.4980|1.4944"],
  ["steel/free", "1.0715|1.0718|1.0736|1.0758"],
  ["steel/tool", "1.1545|1.1730|1.1830|1.2080|1.2379|1.2842|1.3207|1.3343|1.3243"],
  ["steel/carbon", "1.0037|1.0503|1.0577|1.1191|1.1203|1.0122|1.9999"],
  ["steel/alloy", "1.3505|1.5752|1.6580|1.7225|1.8159|1.8550"],
  ["iron/grey", "5.1301|5.1300|0.6025|0.6030"],
  ["iron/nodular", "5.3106|5.3300|0.7040|0.7060"],
  ["copper/pure", "2.0065|2.0060"],
  ["copper/brass", "2.0321|2.0401|2.0265|2.0580"],
  ["copper/bronze", "2.0936|2.0966|2.0620|2.1020|2.1052|2.1090"],
  ["super/nickel", "2.4360|2.4668|2.4856|2.4816"],
  ["aluminium/cast", "3.2381|3.2151|3.2581|3.2341"],
  ["aluminium/wrought", "3.0255|3.1325|3.3206|3.3547|3.4365|3.0615"],
  ["magnesium", "3.5812|3.5200"],
  ["titanium", "3.7035|3.7165"],
  ["aluminium/cast", "A03560|A13800|UNS A03800"],
  ["aluminium/wrought", "A96061|A97075|UNS A92024"],
  ["copper/pure", "C11000|C10200|UNS C12200"],
  ["copper/brass", "C26000|C36000|C46400|UNS C36000"],
  ["copper/bronze", "C51000|C63000|C95400|UNS C93200"],
  ["iron/grey", "F11701|F12801|UNS F13301"],
  ["iron/nodular", "F32800|F33800|UNS F34100"],
  ["steel/free", "G11170|G12144|UNS G12130"],
  ["steel/carbon", "G10180|G10450|G15220|K02600|UNS G10200"],
  ["steel/alloy", "G41400|G86200|H41400|UNS G43400"],
  ["magnesium", "M11311|UNS M11610"],
  ["super/nickel", "N07718|N06625|UNS N04400"],
  ["super/cobalt", "R30006|R30605|UNS R31233"],
  ["titanium", "R50250|R56400|UNS R56401"],
  ["stainless/hardening", "S17400|S15500|S13800|UNS S17700"],
  ["super/iron", "S66286|UNS S66286"],
  ["stainless/duplex", "S31803|S32205|S32750|S32101|S32900|UNS S32760"],
  ["stainless/austenitic", "S30400|S31603|S20100|S34700|UNS S30403"],
  ["stainless/chromium", "S41000|S42000|S43000|UNS S44004"],
  ["steel/tool", "T30402|T20813|T11302|UNS T31501"],
  ["steel/carbon", "S10C|S45C|S55C|SS400|SM490|SM490A|SM570|STKM13|STKM11A"],
  ["steel/alloy", "SCM440|SCM420H|SNCM439|SCR420|SNC415|SMN433|SMNC443|SUJ2"],
  ["steel/free", "SUM22|SUM24L|SUM43"],
  ["steel/tool", "SK3|SK105|SKD11|SKD61|SKH51|SKS3|SKT4"],
  ["stainless/hardening", "SUS630|SUS631"],
  ["stainless/duplex", "SUS329J1|SUS329J4L"],
  ["stainless/austenitic", "SUS201|SUS303|SUS304|SUS316L|SUS316Ti|SUS310S"],
  ["stainless/chromium", "SUS403|SUS420J2|SUS430|SUS440C"],
  ["iron/nodular", "FCD400|FCD600"],
  ["iron/grey", "FC200|FC300"],
  ["aluminium/cast", "ADC12|ADC3|AC4C|AC2B"],
  ["copper/pure", "C1020|C1100"],
  ["copper/brass", "C2801|C3604|C4641"],
  ["copper/bronze", "C5191|C6161|C7060"],
  ["stainless/duplex", "2205|2304|2507|F51|F53|F55"],
  ["stainless/hardening", "17-4PH|17-4 PH|174|17-7PH|15-5PH|15-5|155PH|630|631|13-8|13-8Mo|13-8PH"],
  ["steel/free", "12L14|11L17|1117|1144|1213|1215"],
  [
    "aluminium/wrought",
    "EN AW-6082|ENAW6060|AW-5754|AA 6061|AA7075-T6|EN AW-2017A|AA6063-O|AA5052-H32|AA2024-F|AW6082T651",
  ],
  [
    "aluminium/wrought",
    "1100|1200|1350|2011|2014|2024|2117|2219|2618|3003|3103|4032|5005|5052|5083|5154|5182|5251|5356|5383|5454|5657|5754",
  ],
  [
    "aluminium/wrought",
    "6005|6005A|6061|6061-T6|6061T651|6082|6101|6262|6351|7020|7050|7068|7075-T73|7175|7178|7475|8011|Al6061|A7075|A-6061|5086-H116|6063-O|2017A",
  ],
  ["steel/carbon", "1006|1018|1045|1049|1080|1095|1541|1552|M1020"],
  [
    "steel/alloy",
    "1330|4037|4130|4140|4340|4620|4820|5046|5140|5160|52100|6150|8115|8620|8740|8822|9260|9310|9430|4140H",
  ],
  ["aluminium/cast", "319|A319|356|A356|A356.0|357.0|355|380|A380|383|413|390|A356-T6|A356-T61|356.0-T6"],
  ["stainless/austenitic", "201|301|302|303|304|304L|304H|304N|304LN|316|316L|316Ti|303Se|316F|310|321|347"],
  ["stainless/chromium", "403|410|416|416Se|420|420F|430|430F|440C|446|430L"],
  ["steel/carbon", "A36|ASTM A36|A283|A285|A500|A513|A516|A572|A588|A992"],
  ["steel/tool", "A2|A6|A9|D2|D3|D7|O1|O2|O7|S1|S5|S7|H11|H13|H19|H21|H26|M1|M2|M4|M42|T1|T15|W1|W2|P20"],
  ["super/iron", "A286|AISI A286"],
  ["copper/pure", "C101|C110|C110"],
  ["copper/brass", "C260|C360|C464"],
  ["copper/bronze", "C510|C630|C932|C954"],
  ["iron/nodular", "EN-GJS-400-15|ENGJS400-15|GJS-500-7|EN GJS 600-3|GGG40|GGG-50|GGG40.3|65-45-12|80-55-06|100-70-03"],
  ["iron/grey", "EN-GJL-250|ENGJL250|GJL250|EN GJL 200|GG25|GG-20|Class 30|class 40"],
  ["steel/carbon", "C45|C45E|C22R|Ck45|Cf53|Cq35|C10"],
  ["steel/carbon", "S235JR|S355J2|E295|E335|P265GH|St37|St-52|St37-2|St52-3|St37-2K"],
  ["steel/free", "11SMn30|11SMnPb30|9SMn28|9SMnPb28|35S20|10S20|11SMn30+C|46SPb20"],
  ["super/iron", "X6NiCrTiMoVB25-15-2|X5NiCrTi26-15"],
  ["steel/tool", "X38CrMoV5-1|X40CrMoV5-1|X153CrMoV12|X210Cr12|X210CrW12|X30WCrV9-3|HS6-5-2|C80U|C105U"],
  ["stainless/duplex", "X2CrNiMoN22-5-3|X2CrNiMoN22 5 3|X2CrNiN23-4|X2CrNiMoCuN25-6-3"],
  ["stainless/hardening", "X5CrNiCuNb16-4|X7CrNiAl17-7|X8CrNiMoAl15-7-2"],
  [
    "stainless/austenitic",
    "X5CrNi18-10|X2CrNi19-11|X8CrNiS18-9|X2CrNiMo17-12-2|X6CrNiTi18-10|X6CrNiMoTi17-12-2|X10CrNi18-8|X6CrNiNb18-10",
  ],
  ["stainless/chromium", "X12Cr13|X20Cr13|X46Cr13|X6Cr17|X14CrMoS17"],
  ["steel/alloy", "42CrMo4|16MnCr5|34CrNiMo6|100Cr6|51CrV4|36NiCrMo16|38Si7|30MnB5|20MoCr4"],
  [
    "aluminium/cast",
    "AlSi10Mg|AlSi12|AlSi7Mg0.3|AlSi9Cu3|G-AlSi12|GAlSi10Mg|AlSi5Cu3|AlSi21|AlCu4Ti|EN AC-43000|ENAC-46000|AC-46000|GD-AlSi9Cu3|GDAlSi12",
  ],
  ["aluminium/wrought", "AlMgSi1|AlMg3|AlMg4.5Mn|AlCuMg1|AlCuMgPb|AlZnMgCu1.5|AlMn1|Al99.5|AlSi1MgMn"],
  ["copper/brass", "CuZn39Pb3|CuZn37|CW614N|CW724R|Ms58"],
  ["copper/bronze", "CuSn8|CuAl10Ni5Fe4|CuNi10Fe1Mn|CuPb10Sn10|G-CuSn12|GCuSn10|CW307G|CW453K"],
  ["copper/pure", "Cu-ETP|CuETP|Cu-OF|Cu-HCP|Cu-DHP|Cu-OFE|Cu|E-Cu|ECu|SF-Cu|OF-Cu|CW004A|CW024A"],
  ["magnesium", "MgAl9Zn1|MgZn6Zr|AZ91|AZ31B|AM60|AZ91D"],
  [
    "titanium",
    "Ti-6Al-4V|Ti6Al4V|Ti|TiAl6V4|Ti-Gr5|Ti grade 2|titan grade 5|titanium-gr-5|Gr 5 Ti|grade 2 titanium|Ti64|Gr2Ti|Ti-5Al-2.5Sn",
  ],
  [
    "super/nickel",
    "NiCr19NbMo|NiMo16Cr16Ti|NiCu30Fe|NiFe36|Alloy 400|alloy 600|alloy-601|alloy 617|Alloy625|alloy 718|alloy 725|alloy 825|alloy 925",
  ],
  ["super/cobalt", "CoCr28Mo6|CoCrW"],
  [
    "plastic",
    "POM|POM-C|POMH|PA6|PA-66|PA6 GF30|PEEK|PEEK-GF30|PTFE|PC|PVC|PP|PET|PE|PE-HD|PEHD|PE-LD|PE-UHMW|PE1000|PE-500|HDPE|UHMW|UHMW-PE|UHMWPE|ABS|PMMA|PEI|PVDF|PPS|PPSU",
  ],
];

describe("kinds of materials by their designations", () => {
  it.each(NAMED)("%s: %s", (family, designations) => {
    for (const name of designations.split("|")) expect(familyOf(name), name).toBe(family);
  });
  it("are told by the whole of a designation: with a sign more before or behind it is another", () => {
    /** Designations that go on with any letters and figures, and those that end with figures, as many as there are. */
    const open =
      /^(?:[sep]\d{3}|gr|pe|sus|stkm|x|ti|hs|pa|peek|al|g-?al|gd-?al|en-?gj|gj|ggg|cu|ni|co|mg|g-?cu|\d+(?:cr|mn|ni|mo|si|b)|en ac|enac|ac-4)/i;
    const counting = /^(?:\d+s|scm|sncm|scr|snc|smn|suj|sum|sk|fc|adc|gg|class)/i;
    for (const [family, designations] of NAMED)
      for (const name of designations.replace(/ /g, "").split("|")) {
        // A word tells its kind wherever it stands.
        if (!/titan/i.test(name)) expect(familyOf(`qq${name}`), `qq${name}`).not.toBe(family);
        if (open.test(name) || /(?:-|\d[a-z]?)[th]\d+$/i.test(name)) continue;
        if (/\d$/.test(name) && !counting.test(name)) expect(familyOf(`${name}00000`), `${name}00000`).not.toBe(family);
        expect(familyOf(`${name}qq`), `${name}qq`).not.toBe(family);
      }
  });
  it.each([
    // One number beside the ends of ranges: EN 10027-2
    ["1.4463", "stainless/austenitic"],
    ["1.4533", "stainless/austenitic"],
    ["1.4529", "stainless/chromium"],
    ["1.4200", undefined],
    ["1.0710", "steel/free"],
    ["1.0760", "steel/carbon"],
    ["1.0709", "steel/carbon"],
    ["1.1499", "steel/carbon"],
    ["1.1900", "steel/carbon"],
    ["1.3199", "steel/alloy"],
    ["1.3400", "steel/alloy"],
    ["2.0100", undefined],
    ["2.0700", undefined],
    ["2.3000", undefined],
    ["3.2600", "aluminium/wrought"],
    ["3.2000", "aluminium/wrought"],
    ["3.6000", undefined],
    // UNS letters stand for classes
    ["A23560", undefined],
    ["B11000", undefined],
    ["S18000", undefined],
    ["S32000", "stainless/austenitic"],
    // AISI and AA
    ["1050", undefined],
    ["1070", undefined],
    ["4900", undefined],
    ["5900", undefined],
    ["2307", undefined],
    ["6601", undefined],
    ["450", undefined],
    ["C0", undefined],
    ["H31", undefined],
    ["D8", undefined],
    ["alloy 500", undefined],
    ["MgCa2", undefined],
    ["XX", undefined],
  ])("%s: %s", (name, family) => expect(familyOf(name)).toBe(family));
});

describe("kinds of materials by words (dictionaries, from memory)", () => {
  it.each([
    ["hardened", "hardened steel|Stahl gehärtet|acier trempé|acero templado|acciaio temprato|焼入れ鋼"],
    ["stainless", "stainless steel|Edelstahl|rostfrei|acier inox|ステンレス鋼"],
    ["iron/grey", "grey iron|gray iron|grey cast iron|Grauguss|fonte grise|fundición gris|ghisa grigia|ねずみ鋳鉄"],
    ["iron/nodular", "nodular iron|ductile iron|Kugelgraphitguss|Sphäroguss|fonte GS|ghisa sferoidale|球状黒鉛鋳鉄"],
    ["iron", "cast iron|Gusseisen|fonte|fundición|ghisa|鋳鉄"],
    ["steel/tool", "tool steel|Werkzeugstahl|acier à outil|acero para herramientas|acciaio da utensili|工具鋼"],
    ["steel/free", "free-cutting steel|free machining|Automatenstahl|acier de décolletage|快削鋼"],
    [
      "steel/carbon",
      "mild steel|structural steel|Baustahl|carbon steel|low carbon|acier carbone|acero dulce|軟鋼|炭素鋼",
    ],
    ["steel/alloy", "alloy steel|Vergütungsstahl|Einsatzstahl|acier allié|acero aleado|合金鋼"],
    ["steel", "steel|Stahl|acier|acero|acciaio|鋼"],
    ["aluminium/cast", "cast aluminium|cast aluminum|Aluguss|Aluminiumguss|アルミ鋳物"],
    ["aluminium", "aluminium|aluminum|Alu|alluminio|aluminio|アルミ"],
    ["copper/brass", "brass|Messing|laiton|latón|ottone|黄銅|真鍮"],
    ["copper/bronze", "bronze|bronce|bronzo|Rotguss|青銅"],
    ["copper/pure", "copper|Kupfer|cuivre|cobre|rame|銅"],
    ["magnesium", "magnesium|Magnesio|magnésium"],
    ["titanium", "Titan|titanium|チタン"],
    ["super", "superalloy|Superlegierung|superalliage|超合金|耐熱合金"],
    ["super/nickel", "nickel|ニッケル"],
    ["super/cobalt", "cobalt|Kobalt"],
    [
      "plastic",
      "acetal|nylon|polycarbonate|polyamid|polyamide|polyethylen|polypropylene|acrylic|plastic|plastik|plastico|Kunststoff|樹脂",
    ],
  ])("%s: %s", (family, words) => {
    for (const word of words.split("|")) expect(familyOf(word), word).toBe(family);
  });
  it("say nothing inside other words where they begin one", () => {
    for (const word of ["xfonte", "alux", "xalu", "xacier"]) expect(familyOf(word), word).toBeUndefined();
  });
  it("are of one class whatever their kind", () => {
    expect(sameClass("steel/tool", "steel/alloy")).toBe(true);
    expect(sameClass("steel", "steel/alloy")).toBe(true);
    expect(sameClass("stainless/duplex", "steel/alloy")).toBe(false);
  });
  it("are looked for in the words of a name, and not in a text longer than a name", () => {
    expect(familyOf("Bar (1045)")).toBe("steel/carbon");
    expect(familyOf("Flachstahl, 42CrMo4; QT")).toBe("steel/alloy");
    expect(familyOf("W.-Nr. 1.4301")).toBe("stainless/austenitic");
    expect(familyOf("W.-Nr.1.4301")).toBe("stainless/austenitic");
    expect(familyOf("WNr:1.4301")).toBe("stainless/austenitic");
    expect(familyOf("DIN 1.4301")).toBe("stainless/austenitic");
    expect(familyOf("SAE-4140")).toBe("steel/alloy");
    expect(familyOf("JIS S45C")).toBe("steel/carbon");
    expect(familyOf(`steel${" ".repeat(75)}`)).toBe("steel");
    expect(familyOf(`steel${" ".repeat(76)}`)).toBeUndefined();
  });
});
