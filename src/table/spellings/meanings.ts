/**
 * What columns are called, in notions and not in words: "Bohrungsdurchmesser", "diam. du trou" and "穴径" are each a hole
 * and a diameter. The words of the notions are those of a language (`en.ts` …); what is made of them stands here once.
 *
 * A bar parts the ways to say it, a blank the notions of one of them in any order. "x?" may be left out, of "x/y" one is
 * said. A leading "?" is a way that may mean this column and may mean another: it is asked about, never taken, unless
 * the heading's own unit tells.
 */
export const MEANINGS = {
  row: {
    row: "no|seq no?|op no",
    feature: "feat name/part?|feat desc?|desc|callout|drawing callout/size|form",
    operation: "op type/name?|op way",
    units: "unit system?|unit meas/size/msd|mm inch|unit mm inch",
    quantity: "count hole?|count part?|count/no feat|no hole|many|many count/no|pcs",
    material: "mat work?|mat part|mat op|mat name?|work name?|stock mat?|alloy|mat? grade",
    machine: "mach name?|mach tool|mach used|center op?|center work",
    tool: "tool name? used?|tool no/desc/code/type|tool cut used/type?|cutter desc/type?|t no",
    thread: "thread desc/size/type/callout/norm?|callout thread",
    startDiameter:
      "pre dia/hole/size?|pre hole size|pre|start dia/hole/size|start hole dia|start dia op|hole|pre drill dia|pre hole dia|drill pre|drilling dia|pre start|stock dia|dia before op?|hole dia before",
    finishDiameter:
      "dia|fin dia|fin size|fin size dia|nominal dia|hole dia|bore dia|boss dia|fin bore dia|fin hole dia|op dia|hole size|dia size|target dia|nominal dia hole|?size",
    depth:
      "depth sym?|depth thread|depth useful thread?|height wall?|thread len|depth op|depth slot|depth feat|depth z|full depth|depth pocket|drilling depth",
    through: "thru hole?|thru hole? answer|thru hole? blind|thru thread",
    hand: "hand thread/dir?|thread dir|right left thread/pitch/hand?|dir pitch|?dir",
    way: "mill/cut dir/type climb? conv?|climb conv dir/mill?|way mill?",
    length:
      "len sym?|len cut|len mill|len op|len path|len pass|path mill|cut path|len slot|len wall|slot len|len feat|len cut pass",
    side: "side|?cs|wall type/side?|inside outside|dir face|wall form",
    radialDepth:
      "ae|cut width|width|rad depth|rad infeed|rad cut depth|rad pass|rad pass depth|rad pass infeed|rad step|side step|side infeed|side pass|rad width|width pass|width mill|rad cutin|cutin width|side cutin|cut infeed width|infeed width|infeed",
    axialDepth:
      "ap|cut depth|ax depth|ax infeed|ax cut depth|ax pass|ax pass depth|ax pass infeed|ax step|pass depth|infeed depth|depth step|pass infeed|z infeed|cutin depth?|ax/z cutin|infeed",
    passes: "pass count/no?|pass times|op times|infeed/cutin times|infeed count|pass rough|cut times|cut count/no",
    springPasses: "empty pass count/no/times?|empty pass fin|empty|empty times/count|pass/fin again|empty fin",
    stickOut: "stick tool?|stick len|stick len tool|len outside holder|tool len outside holder",
    surfaceSpeed: "vc|cut speed|surf speed|surf feet|?speed|?surf",
    feedPerTooth: "fz|feed tooth/flute|chipload tooth?|?feed",
    maxRpm:
      "max rpm|max rpm spindle|max speed spindle|max speed rot|max rot|limit rpm|limit speed|limit speed spindle|max spindle|limit spindle|max speed|max rpm count|limit max rpm|max n|limit rot|max rot frequency",
    holeDepth:
      "hole depth|drill depth|pre depth|blind hole? depth|total depth hole?|hole bottom|pre hole depth|pre drill depth|drilling depth|hole bottom depth",
    batch: "lot size?|lot count|order count|count many part|part lot|lot pcs|count pcs|many part|count pcs lot",
    drillOversize: "over drill/hole/bore/drilling?",
    spacing:
      "space hole/many/center?|hole/many pitch|space/pitch between hole/many/center|pitch space|center space hole/many",
    wearFactor: "wear factor tool/force?|worn",
    measured: "meas|meas/msd size/dia/value|actual size/dia/value?",
    wearValue:
      "wear corr|wear value|wear corr value|corr value|corr|wear tool?|wear control|corr tool|wear corr tool/cutter|wear d",
    sizeTolerance: "tol pm?|tol size|tol dia|tol width|pm|dev allowed",
    remark: "remark",
    roughness: "rz max?|rough rz?|fin rough rz?|surf fin rz?|rough surf rz? max?|fin rz|surf rz",
    coolant: "cool type?|cool way",
    insideCorner:
      "inside corner radius?|inside radius|min inside radius|min corner radius|corner radius|pocket corner? radius|min inside corner|corner part radius|corner",
    totalWidth: "width slot/face/total/full",
    sizeClass:
      "fit class?|tol class|tol field|tol iso|fit iso|tol grade/quality|hole tol class|fit tol|quality iso?|class iso|tol field class",
  },
  result: {
    verdict: "verdict",
    reasons: "reason verdict?",
    limit: "limit",
    load: "load pct?|load rate/value/factor",
    spindleSpeed:
      "rpm|n|rpm spindle|spindle speed|rot speed|rot|rpm speed|rot frequency|rot speed spindle|rpm count|speed|spindle|rpm min",
    surfaceSpeed: "vc|cut speed|surf speed",
    feedPerTooth: "fz|feed tooth|chipload|?feed",
    tableFeed:
      "vf|f|feed|feed speed|feed table|feed path|feed cut|feed mill|feed work|feed table speed|feed rate|feed cut speed|feed cutter|feed op",
    radialDepth: "ae|side step",
    chipThickness: "chip thick max?|hmax|chip",
    passes: "pass count/no?|op times",
    direction: "dir",
    pathRadius: "path radius|tool path radius",
    force: "force cut?|force max|force tang|fc",
    power: "power cut?|power spindle|power need|power motor|pc",
    deflection: "defl tool?",
    stress: "stress",
    drill: "drill size/dia/name?|pre drill?|drill used|drill",
    size: "size",
    sizeMin: "min size",
    sizeMax: "max size",
    timeEach: "time each|time hole|time feat|time pcs|cycle each?|each",
    time: "time op?|time cut|time cycle|cycle|time part|time mach|time total",
    cost: "cost part?|cost each|cost pcs|cost op|cost unit",
  },
  material: {
    material: "mat name?|name|desc|alloy|grade|quality|mat work|work|mat no|mat desc|work name",
    group: "group mat?|group iso|class iso|iso|iso type|group iso mat|group work",
    hardness: "hard hb?|hb",
    kc11: "kc|spec force cut?|spec force cut kc|force kc|spec",
    exponent: "exp mc?|mc",
    taylorN: "taylor exp|n taylor",
    referenceLife: "life ref?",
    designations: "desc mat? many|other name/desc/norm|norm|mat no|uns",
    source: "source",
  },
  tool: {
    tool: "tool name?|tool no|tool desc|name|desc|t no|cutter|tool code|code|t",
    kind: "type tool?|type cutter|kind",
    units: "unit system?|unit meas/size/msd|mm inch",
    diameter: "dia|d|dia tool|dia cutter|dia cut|dia drill|dia nominal|dia d|dia edge|dia flute",
    teeth: "tooth count/no?|flute count/no?|z|tooth z|edge/edges/tooth eff|edge count z",
    cuttingLength:
      "len flute sym?|len cut|len edge|len edges|len useful|len flute cut|l2|len l2|len cut edge|len slot|len tooth|len flute useful|len edges useful|len edge l2|len edges l2|len cut l2",
    neckDiameter: "neck dia|neck",
    neckLength: "neck len|reach neck/len?|len useful neck",
    shankDiameter: "shank dia/size?|d2 shank|shank dia d2",
    stickOut: "stick tool?|stick len|stick len tool|len outside holder",
    cornerRadius: "corner radius|r|radius|corner r|point radius|edge radius corner|edge point radius",
    tipFlat: "flat point?|flat width",
    profileAngle: "profile angle|thread angle|angle inside",
    helix: "helix angle/flute?",
    pointAngle: "point angle|drill point angle|point",
    edgeRadius: "edge radius|hone|edge hone|edge cut radius",
    edgeAngle: "edge lead angle|lead angle",
    ruptureStrength: "rupture strength",
    modulus: "modulus",
    notchFactor: "notch factor",
    runout: "runout tool?",
    substrate: "substrate mat?|mat|tool mat|cutter mat|carbide hss|grade tool?|cut mat|edge mat",
    pitch: "pitch thread?|p",
    chamfer: "chamfer",
    maxRpm:
      "max rpm|max n|max speed|max speed spindle|max speed rot|limit rpm|max rpm allowed|max rpm used|max rpm count",
    price: "price tool?|cost tool?|price each|price unit",
    edges: "edges count/no/insert?|edges cut count/no?|edge/tooth insert",
    coolantThrough: "cool inside|cool thru|cool hole/many|ikz",
    holderDiameter: "holder dia|holder nose dia",
    holderLength: "holder len|holder nose len|holder stick",
    sizeClass: "fit|tol class|tol field|hole class|tol",
  },
  machine: {
    machine: "mach name?|name|mach tool|desc|center op?|mach no",
    minRpm: "min rpm|min n|min speed|min speed spindle|min rpm spindle",
    maxRpm:
      "max rpm|max rpm spindle|max n|max speed|max speed spindle|max speed rot|max rot|max rpm count|rpm|max spindle|rpm spindle",
    power: "power|power spindle|power motor|motor|power nominal|p|spindle motor",
    power30: "power 30min",
    torque: "torque|torque spindle|torque max|torque nominal|torque rot",
    maxFeed:
      "max feed|max feed speed|max feed cut|max feed work|max feed rate|max feed op|feed cut speed|max feed cut speed",
    rapid: "rapid|rapid speed|rapid feed speed?|rapid rate|rapid way",
    acceleration: "accel ax?",
    toolChange: "tool change time?|change time|chipchip time?",
    holderStiffness: "holder stiff",
    damping: "damp",
    rate: "rate hour?|cost hour|price hour|rate mach|cost mach|rate mach hour|hour",
    setup: "setup time?",
    rampTime: "jerk time",
    cycleFactor: "time factor",
  },
} as const;
