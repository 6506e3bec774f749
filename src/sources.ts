/**
 * Bibliography. Formulas, tables and lists cite these ids (`@source ISO724`); a test checks that each id used
 * exists here and that each entry is used. Entries marked "from memory" were not at hand when they were cited.
 */
export interface Source {
  readonly title: string;
  readonly edition: string;
  /** Section, table or page, where one is meant throughout. */
  readonly where?: string;
}

export const SOURCES = {
  SP811: {
    title: "NIST Special Publication 811, Guide for the Use of the International System of Units",
    edition: "2008",
    where: "Appendix B",
  },
  BRENT1973: {
    title: "R. P. Brent, Algorithms for Minimization without Derivatives",
    edition: "1973",
    where: "chapter 4",
  },
  KIEFER1953: {
    title: "J. Kiefer, Sequential minimax search for a maximum, Proc. AMS 4",
    edition: "1953",
    where: "pp. 502–506",
  },
  ABRAMOWITZ: {
    title: "M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions",
    edition: "1964",
    where: "25.4.29",
  },
  KLINE1982: {
    title:
      "W. A. Kline, R. E. DeVor, I. A. Shareef, The prediction of surface accuracy in end milling, J. Eng. Ind. 104",
    edition: "1982",
    where: "pp. 272–278 (from memory)",
  },
  COMMON: {
    title: "Common practice of the trade, without a published source",
    edition: "—",
  },
  MH: { title: "Machinery's Handbook", edition: "27th edition, 2004" },
  ASMEB11: {
    title: "ASME B1.1, Unified Inch Screw Threads (UN and UNR Thread Form)",
    edition: "2003",
    where: "sections 5 and 8, Tables 2 and 3; formulas from memory, checked against published tables",
  },
  ASMEB18291: {
    title: "ASME B18.29.1, Helical Coil Screw Thread Inserts, Free Running and Screw Locking (Inch Series)",
    edition: "2010",
    where: "formulas of the thread for the insert, from memory; DIN 8140-2 for metric threads the same way",
  },
  ISO261: { title: "ISO 261, ISO general purpose metric screw threads, General plan", edition: "1998, from memory" },
  ISO965: {
    title: "ISO 965-1, ISO general purpose metric screw threads, Tolerances, Part 1: Principles and basic data",
    edition: "2013",
    where: "tables from memory, checked against published limits",
  },
  ISO286: {
    title: "ISO 286-1 and 286-2, ISO code system for tolerances on linear sizes",
    edition: "2010, from memory",
  },
  ISO228: {
    title: "ISO 228-1, Pipe threads where pressure-tight joints are not made on the threads",
    edition: "2000",
    where: "Table 1, from memory",
  },
  DERIVED: {
    title: "Derived from the geometry stated at the head of the file; checked by another method in the tests",
    edition: "—",
  },
  ISO724: {
    title: "ISO 724, ISO general purpose metric screw threads, Basic dimensions",
    edition: "1993, from memory",
  },
  ISO68: { title: "ISO 68-1, ISO general purpose screw threads, Basic profile", edition: "1998, from memory" },
  ALTINTAS1995: {
    title: "Y. Altintas, E. Budak, Analytical prediction of stability lobes in milling, CIRP Annals 44(1)",
    edition: "1995",
    where: "pp. 357–362; from memory",
  },
  ALTINTAS2008: {
    title:
      "Y. Altintas, M. Eynian, H. Onozuka, Identification of dynamic cutting force coefficients and chatter stability with process damping, CIRP Annals 57(1)",
    edition: "2008",
    where: "pp. 371–374; from memory",
  },
  KIENZLE1952: {
    title:
      "O. Kienzle, Die Bestimmung von Kräften und Leistungen an spanenden Werkzeugen und Werkzeugmaschinen, VDI-Zeitschrift 94",
    edition: "1952",
    where: "pp. 299–305; from memory",
  },
  ALTINTAS: {
    title: "Y. Altintas, Manufacturing Automation",
    edition: "2nd edition, 2012",
    where: "chapter 2; from memory",
  },
  MARTELLOTTI1941: {
    title: "M. E. Martellotti, An analysis of the milling process, Trans. ASME 63",
    edition: "1941",
    where: "pp. 677–700; from memory",
  },
  ISO3002: {
    title:
      "ISO 3002, Basic quantities in cutting and grinding (part 1: tool angles; part 3: geometric quantities; part 4: forces, energy, power)",
    edition: "1982–1984",
    where: "from memory",
  },
  DLMF: {
    title: "NIST Digital Library of Mathematical Functions",
    edition: "release 1.2",
    where: "8.17.8; from memory",
  },
  JONES1914: {
    title: "F. D. Jones, Turning and Boring",
    edition: "1914",
    where: "chapter on thread cutting, three-wire system (public-domain text)",
  },
  MH31: {
    title: "Machinery's Handbook",
    edition: "31st edition, 2020",
    where: "pp. 2155 and 2168, tap drill tables; pp. 1152–1153, thrust and torque of drills (work factors from memory)",
  },
  EURAMET10: {
    title: "EURAMET/cg-10, Determination of Pitch Diameter of Parallel Thread Gauges by Mechanical Probing",
    edition: "version 01, 2007; formulas from memory",
  },
  BS84: { title: "BS 84, Parallel screw threads of Whitworth form", edition: "1956, from memory" },
  CIRCUITOUS: {
    title: "Metric, Inch, & Fractional Inch: Drills, Sizes, Threads, & Preferred Sizes (public-domain chart)",
    edition: "version 2, 2007",
    where: "number drills 68 to 80 and 53 to 67 compared; the rest from memory",
  },
  B9411: {
    title: "ANSI/ASME B94.11M, Twist Drills",
    edition: "1993, from memory",
    where: "number, letter and fractional sizes",
  },
  ISO235: { title: "ISO 235, Parallel shank jobber and stub series drills", edition: "1980, from memory" },
  ISO2306: {
    title: "ISO 2306, Drills for use prior to tapping screw threads",
    edition: "1972, from memory",
  },
  ROARK: {
    title: "W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain",
    edition: "7th edition, 2002",
    where: "Table 8.1 (beams), Table 10.1 (torsion); from memory",
  },
  TIMOSHENKO: {
    title: "S. Timoshenko, Strength of Materials, Part I",
    edition: "3rd edition, 1955",
    where: "unit-load method, shear deflection; from memory",
  },
  COWPER1966: {
    title: "G. R. Cowper, The shear coefficient in Timoshenko's beam theory, J. Appl. Mech. 33",
    edition: "1966",
    where: "pp. 335–340; from memory",
  },
  SOLIDS: {
    title: "Round stepped cantilevers as solid finite elements, computed for this project",
    edition: "tests/published/solid-beams.json",
    where: "made again by tests/published/solid/make-solids.mjs",
  },
  SHIGLEY: {
    title: "J. E. Shigley, C. R. Mischke, Mechanical Engineering Design",
    edition: "5th edition, 1989",
    where: "combined bending and torsion of round shafts; from memory",
  },
  PETERSON: {
    title: "W. D. Pilkey, Peterson's Stress Concentration Factors",
    edition: "2nd edition, 1997",
    where: "stepped round bars and press-fitted members in bending; from memory",
  },
  BLEVINS: {
    title: "R. D. Blevins, Formulas for Natural Frequency and Mode Shape",
    edition: "1979",
    where: "Table 8-1; from memory",
  },
  PRZEMIENIECKI: {
    title: "J. S. Przemieniecki, Theory of Matrix Structural Analysis",
    edition: "1968",
    where: "beam element, consistent mass; from memory",
  },
  KINEMATICS: {
    title: "Elementary kinematics of constant acceleration and of motion on a helix",
    edition: "—",
  },
  TATAR2020: {
    title:
      "K. Tatar, S. Sjöberg, N. Andersson, Investigation of cutting conditions on tool life in shoulder milling of Ti6Al4V, Heliyon 6",
    edition: "2020",
    where: "e04217, abstract (title from memory)",
  },
  TAYLOR1907: {
    title: "F. W. Taylor, On the art of cutting metals, Trans. ASME 28",
    edition: "1907",
    where: "pp. 31–350; from memory",
  },
  GILBERT1950: {
    title: "W. W. Gilbert, Economics of machining, in Machining: Theory and Practice, ASM",
    edition: "1950",
    where: "pp. 465–485; from memory",
  },
  BOOTHROYD: {
    title: "G. Boothroyd, W. A. Knight, Fundamentals of Machining and Machine Tools",
    edition: "2nd edition, 1989",
    where: "chapter on economics of metal-cutting operations; from memory",
  },
  SHAW1957: {
    title: "M. C. Shaw, C. J. Oxford, On the drilling of metals, 2: The torque and thrust in drilling, Trans. ASME 79",
    edition: "1957",
    where:
      "pp. 139–148; from memory, checked against the printed factors of Machinery's Handbook and the constant that Fundamentals of Tool Design (Society of Manufacturing Engineers, 6th edition, p. 83) gives for it",
  },
  PAUCKSCH: {
    title: "E. Paucksch, Zerspantechnik",
    edition: "11th edition, 1996",
    where: "drilling into solid: specific force times 1.2 for the confined chip; from memory",
  },
  KOSILOVA: {
    title: "A. G. Kosilova, R. K. Meshcheryakov (editors), Spravochnik tekhnologa-mashinostroitelya, volume 2",
    edition: "4th edition, 1985",
    where: "tables of torque and thrust of drills and of torque of taps; from memory",
  },
  MCTI: {
    title: "Metal Cutting Tool Handbook, Metal Cutting Tool Institute",
    edition: "6th edition, 1969",
    where: "reduction of speed and feed for deep holes; the same figures stand in many drilling guides; from memory",
  },
  SECTIONS: {
    title: "Cross-section of a twist drill under bending and torsion, computed for this project",
    edition: "tests/drill/section.ts",
    where: "two round flutes, land 0.59 of the diameter; torsion by Prandtl's stress function on a grid",
  },
  TABELLENBUCH: { title: "Tabellenbuch Metall (Fischer et al.)", edition: "44th edition, 2008, from memory" },
  ASMEB115: {
    title: "ASME B1.15, Unified Inch Screw Threads (UNJ Thread Form)",
    edition: "1995",
    where: "minor diameter of internal threads; from memory",
  },
  ASMEB1201: {
    title: "ASME B1.20.1, Pipe Threads, General Purpose, Inch",
    edition: "1983",
    where: "basic dimensions of NPT; from memory, the formulas checked against the printed sizes",
  },
  ASMEB949: {
    title: "ASME B94.9, Taps: Ground and Cut Threads",
    edition: "1999",
    where: "chamfer of taper, plug and bottoming taps; from memory",
  },
  ASMEY145: {
    title: "ASME Y14.5, Dimensioning and Tolerancing (and Y14.6, Screw Thread Representation)",
    edition: "2018 (2001), from memory",
  },
  ISO6983: {
    title: "ISO 6983-1, Numerical control of machines, Program format and definitions of address words",
    edition: "2009, from memory",
    where: "words G M X Y Z I J K F S T; radius R and the canned cycles G81 to G89 by common practice",
  },
  ISO841: {
    title: "ISO 841, Numerical control of machines, Coordinate system and motion nomenclature",
    edition: "2001, from memory",
  },
  ISO129: {
    title: "ISO 129-1, Technical product documentation, Presentation of dimensions and tolerances",
    edition: "2018, from memory",
  },
  ARCONA1998: {
    title: "C. Arcona, T. A. Dow, An empirical tool force model for precision machining, J. Manuf. Sci. Eng. 120",
    edition: "1998",
    where: "elastic recovery behind the edge grows with edge radius and hardness over modulus; from memory",
  },
  ENDRES1995: {
    title:
      "W. J. Endres, R. E. DeVor, S. G. Kapoor, A dual-mechanism approach to the prediction of machining forces, J. Eng. Ind. 117",
    edition: "1995",
    where: "ploughing force with the volume pressed under the edge; from memory",
  },
  ISO6410: {
    title: "ISO 6410-1, Technical drawings, Screw threads and threaded parts, General conventions",
    edition: "1993, from memory",
  },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof SOURCES;
