/** Other spellings of the columns and the words of cells in English. */
import type { Spellings } from "./index.ts";

export const en: Spellings = {
  row: {
    row: "op|op no|operation no|no|number|nr|pos|position|step|item|item no|line|line no|seq|sequence|row no",
    feature: "feature name|description|desc|callout|note|notes|feature description",
    operation: "op|op type|operation type|process|work|machining operation|machining|type of operation",
    units: "unit|mm/in|mm or in|unit system|in/mm",
    quantity:
      "qty|count|holes|pcs|pieces|no of holes|number of holes|no of features|of features|qty per part|quantity per part|number of features|each|ea|hole count",
    material: "matl|mat'l|mat|mtl|work material|workpiece|workpiece material|stock|stock material|part material|alloy",
    machine: "mach|machine tool|machine name|mc|work center",
    tool: "cutter|tool name|tool description|tool id|tool no|cutting tool|endmill|tooling",
    thread: "thread size|thread callout|thd|thread spec|thread designation|thread type",
    startDiameter:
      "hole|pilot|pre hole|start dia|start ø|starting diameter|starting dia|pilot hole|pilot dia|pilot hole dia|pilot hole ø|pilot diameter|pre-drill|predrill dia|pre-drill diameter|existing hole dia|existing hole|existing diameter|initial diameter|tap drill|tap drill dia|core hole|from diameter|minor dia",
    finishDiameter:
      "dia|diam|diameter|ø|finish dia|finished dia|finished diameter|finish ø|finished ø|size ø|bore dia|bore diameter|bore ø|hole dia|hole diameter|hole ø|hole size|final diameter|final dia|nominal diameter|target diameter|boss dia|boss diameter",
    depth:
      "deep|z depth|thread depth|height|full depth|depth of feature|feature depth|thread length|wall height|usable depth",
    through:
      "thru|through hole|thru hole|through hole y/n|thru hole y/n|thru y/n|through y/n|thru/blind|through/blind|is through",
    hand: "thread hand|rh/lh|lh/rh|r/l|l/r|right/left|left/right|handedness",
    way: "milling way|climb/conv|climb/conventional|climb or conventional|milling direction|cut direction|direction of cut|milling type|milling mode|up/down milling|conventional/climb",
    length: "length of cut|loc|cut length|path length|cutting path|length of wall|slot length|wall length",
    side: "wall|wall type|inside/outside|id/od|internal/external|wall shape",
    radialDepth:
      "ae|stepover|woc|width of cut|radial doc|rdoc|radial depth of cut|radial engagement|radial width|side step|radial stepover|cut width|radial|width",
    axialDepth:
      "ap|doc|adoc|axial doc|depth of cut|axial depth of cut|stepdown|axial engagement|step depth|cut depth|depth per pass|axial",
    passes: "no of passes|number of passes|pass count|cuts|number of cuts|no of cuts|roughing passes",
    springPasses: "spring|spring cuts|spring pass|free passes|free cuts|spark out passes|sparkout",
    stickOut:
      "overhang|projection|tool stick-out|tool stickout|tool overhang|tool projection|gage length from holder|gauge length from holder|length out of holder|lbh|stick out length|tool length out of holder",
    surfaceSpeed:
      "sfm|vc|cutting speed|smm|surface feet|surface feet per minute|sfpm|surface speed sfm|cut speed|speed sfm|speed m/min|speed ft/min|speed vc|cs|surface meters per minute|peripheral speed",
    feedPerTooth:
      "ipt|fz|chip load|chip load per tooth|feed/tooth|fpt|chip per tooth|feed per flute|feed/flute|advance per tooth|feed mm/tooth|feed in/tooth|feed ipt|feed mm/z",
    maxRpm:
      "rpm max|rpm limit|max spindle speed|maximum rpm|spindle limit|max s|maximum spindle speed|rpm cap|spindle speed limit|speed limit|max speed",
    holeDepth:
      "drill depth|drilled depth|total hole depth|total depth|bottom of hole|depth of hole|blind hole depth|drilling depth",
    batch:
      "lot|lot size|lot qty|lot quantity|order quantity|batch size|batch qty|order qty|run size|run quantity|parts per batch",
    drillOversize: "oversize|drill oversize|hole oversize",
    spacing:
      "hole spacing|pitch of holes|center distance|centre distance|hole pitch|distance between holes|center to center|centre to centre|hole distance",
    wearFactor: "wear|tool wear factor|force wear factor",
    measured:
      "gauged|measured size|actual|actual size|measured dia|measured diameter|measurement|actual dia|measured value",
    wearValue: "wear offset|offset|wear comp|wear compensation|wear in control|d wear|cutter comp wear",
    sizeTolerance: "tolerance|tol|size tol|tol +/-|tolerance +/-|dimension tolerance|tol band|+/-",
    remark: "remark|remarks|assumed|assumptions",
    roughness:
      "rz|surface finish|finish rz|surface finish rz|roughness rz|surface roughness rz|rz max|surface roughness",
    coolant: "cooling|coolant type|cutting fluid|coolant mode|coolant supply|lubrication",
    totalWidth:
      "slot width|width of slot|groove width|keyway width|face width|width of face|overall width|full width|width to mill",
    insideCorner:
      "corner|corner r|corner radius|inside corner radius|inside corner r|inside radius|internal corner radius|internal radius|pocket corner radius",
    sizeClass: "fit|fit class|tolerance class|iso fit|hole tolerance class|tolerance grade|iso tolerance|class of fit",
  },
  result: {
    verdict: "ok?|ok|result|status|go/no-go",
    reasons: "why|reason|comments",
    spindleSpeed: "rpm|speed rpm|s|n|spindle rpm|s rpm|speed|revs|n rpm|spindle",
    surfaceSpeed: "sfm|vc|cutting speed",
    feedPerTooth: "ipt|fz|chip load",
    tableFeed:
      "feed|feed rate|ipm|vf|f|feed mm/min|feed ipm|feedrate|cutting feed|linear feed|feed speed|programmed feed",
    radialDepth: "ae|stepover",
    chipThickness: "hex|hm|max chip thickness|chip",
    force: "cutting force|tangential force|fc|force peak",
    power: "kw|hp|spindle power|cutting power|pc|horsepower",
    deflection: "tool deflection|bend|bending",
    drill: "drill size|drill dia|tap drill|drill name",
    timeEach: "cycle|cycle each|time per feature|time per hole|sec each",
    time: "cycle time|machining time|cut time|total time|time per part",
    cost: "cost per part|part cost|unit cost",
  },
  material: {
    material: "name|material name|grade|alloy|work material|designation|matl",
    group: "iso 513|iso group|material group|iso class|iso material group|iso",
    hardness: "hb|hrc|brinell|rockwell|hardness hb|hardness hrc",
    kc11: "kc11|kc1.1|kc1|specific cutting force|kc 1.1|specific force|unit cutting force",
    exponent: "m|mc|m_c|kienzle exponent|slope|1-mc exponent|rise",
    taylorN: "taylor exponent|n taylor",
    referenceLife: "tool life|reference tool life",
  },
  tool: {
    tool: "name|cutter|tool no|tool number|tool id|t|tool name|description|tool description|t no|tool code",
    kind: "type|tool type|tool kind|cutter type|style",
    units: "unit|mm/in",
    diameter: "dia|diam|ø|tool dia|tool diameter|d|cutter diameter|cutter dia|dc|cutting diameter|d1|cut dia|tool ø",
    teeth:
      "flutes|z|no of flutes|number of flutes|fl|number of teeth|no of teeth|flute count|zeff|znc|edges effective|effective teeth",
    cuttingLength: "loc|flute length|length of cut|apmx|flute len|cut length|flute loc|cutting edge length",
    neckDiameter: "neck|neck dia|dn|neck ø|relief diameter|relief dia",
    neckLength: "reach|neck reach|lbs|length below shank|relief length|neck len|reach length",
    shankDiameter: "shank|shank dia|shank ø|dmm|shaft diameter|shank size",
    stickOut: "overhang|projection|tool stickout|tool projection|length out of holder",
    cornerRadius: "radius|corner rad|cr|corner r|re|nose radius|r|tip radius",
    tipFlat: "flat|flat width|crest flat",
    profileAngle: "thread angle|included angle",
    helix: "helix angle|flute helix|fha",
    pointAngle: "tip angle|sig|drill point angle|point",
    edgeRadius: "edge hone|hone|cutting edge radius",
    runout: "tir|run-out|radial runout",
    substrate: "tool material|carbide/hss|cutter material|substrate material|grade",
    pitch: "thread pitch|tp|p",
    maxRpm: "rpm max|max speed|max spindle speed|rpm limit",
    price: "cost|tool cost|price each|tool price|unit price",
    edges: "cutting edges|no of edges|number of edges|edges per insert|no of cutting edges",
    coolantThrough: "through coolant|tsc|coolant holes|coolant-through|internal coolant",
    holderDiameter: "holder nose diameter|holder nose dia|holder dia",
    holderLength: "holder nose length|holder projection",
    sizeClass: "fit|tolerance class|hole class",
  },
  machine: {
    machine: "name|machine name|machine tool|mach|machine id",
    minRpm: "rpm min|minimum rpm|min spindle speed",
    maxRpm: "rpm max|max spindle speed|maximum rpm|rpm|spindle speed max|max s",
    power: "spindle power|kw|hp|motor power|spindle hp|rated power|horsepower",
    torque: "spindle torque|max torque|rated torque",
    maxFeed: "max feed rate|max cutting feed|maximum feed|feed max|max feedrate",
    rapid: "rapids|rapid traverse|rapid rate|rapid feed|rapid traverse rate",
    acceleration: "accel|axis acceleration",
    toolChange: "tool change time|chip to chip|chip-to-chip time|tool to tool|toolchange|atc time",
    rate: "hourly rate|shop rate|machine rate|cost per hour|machine hour rate|rate/h|rate per h",
    setup: "setup time|set-up time|setup minutes",
    rampTime: "jerk time",
    cycleFactor: "time factor",
  },
  words: {
    operation: {
      drill: "drilling|drill hole|drilled|hole|drilled hole|peck drill|peck drilling|deep drilling",
      "thread mill":
        "thread milling|threadmill|threadmilling|mill thread|thread-mill|thread mill id|thread|threading|threaded hole",
      bore: "boring|circular pocket|helical bore|interpolate|interpolate hole|circular interpolation|helical boring|bore milling|circle pocket|helical interpolation|interpolated bore|bore mill",
      boss: "round boss|circular boss|boss mill|boss milling|spigot|circle boss|stud",
      slot: "slotting|slot milling|slot mill|keyway|groove|channel",
      side: "side mill|side milling|profile|profiling|contour|contouring|peripheral milling|wall|2d contour|profile milling|wall milling|side wall|periphery",
      face: "facing|face mill|face milling|surface|top face|surfacing|skim",
      tap: "tapping|rigid tap|rigid tapping|tapped hole|cut tap|tapped|thread|threading|threaded hole",
      ream: "reaming|reamer|reamed|reamed hole",
      countersink: "c'sink|csk|csink|countersinking|c-sink|chamfer hole|countersunk|csunk",
      counterbore: "c'bore|cbore|counterboring|spotface|spot face|c-bore|counterbored|spotfacing",
    },
    flag: { yes: "y|true|x|✓|✔|1|on|☑", no: "n|false|0|off|✗|✘|☐|-" },
    through: { yes: "thru|through|thru hole|through hole", no: "blind|blind hole" },
    hand: { right: "rh|r|right hand|right-handed|rh thread", left: "lh|l|left hand|left-handed|lh thread" },
    way: {
      climb: "climb milling|down milling|climb mill|down|climb cut|down cut|downcut",
      conventional: "conv|conventional milling|up milling|up|up cut|upcut|conventional cut",
    },
    side: {
      inside: "id|internal|concave|inner|inside arc",
      outside: "od|external|convex|outer|outside arc",
      straight: "flat|straight wall|line|linear|none|plane",
    },
    units: {
      mm: "metric|millimeters|millimeter|millimetres|millimetre|si",
      in: 'inch|inches|"|imperial|english|inch system',
    },
    coolant: {
      flood: "flood coolant|wet|external|emulsion|soluble|on|flooded|coolant|m8",
      through: "tsc|through spindle|through tool|through coolant|coolant through|through spindle coolant|internal|cts",
      air: "air blast|air blow|compressed air|airblast|mql|mist",
      dry: "none|no coolant|off|no",
    },
    kind: {
      drill: "twist drill|carbide drill|jobber drill|drills|stub drill|solid carbide drill",
      "end mill":
        "endmill|em|square end mill|flat end mill|end mill square|bull nose end mill|roughing end mill|corner radius end mill|square endmill|flat endmill|bullnose|bull nose",
      "ball end mill": "ball nose|ballnose|ball mill|ball endmill|ball nose end mill|ball|ballnose end mill",
      "face mill": "facemill|shell mill|facing mill|indexable face mill",
      "thread mill single":
        "single point thread mill|single-form thread mill|single form thread mill|single profile thread mill|single tooth thread mill|single pitch thread mill",
      "thread mill full":
        "full form thread mill|multi-form thread mill|full profile thread mill|multi-tooth thread mill|multi pitch thread mill|multi form thread mill",
      tap: "spiral point tap|spiral flute tap|cut tap|machine tap|hand tap|taps|gun tap",
      reamer: "chucking reamer|machine reamer|ream|carbide reamer",
      countersink: "csk|c'sink|chamfer mill|chamfer tool|countersink drill|countersink tool|chamfer cutter",
    },
    substrate: {
      carbide: "solid carbide|carb|wc|tungsten carbide|cemented carbide|carbide insert|hm",
      hss: "high speed steel|hss-co|cobalt|hss-e|hssco|hsse|hss cobalt|hss-pm|hsco|m42|m35",
    },
    group: {
      p: "steel|steels|carbon steel|alloy steel|iso p",
      m: "stainless|stainless steel|ss|iso m",
      k: "cast iron|iron|iso k|ci",
      n: "aluminum|aluminium|non-ferrous|nonferrous|brass|copper|plastic|iso n",
      s: "superalloy|titanium|hrsa|heat resistant alloy|nickel alloy|super alloy|iso s|ti",
      h: "hardened steel|hardened|hard steel|iso h",
    },
  },
};
