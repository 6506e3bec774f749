/** Spellings of the columns and the words of cells in French. */
import type { Spellings } from "./index.ts";

export const fr: Spellings = {
  row: {
    row: "n°|no|num|numéro|ligne|repère|rep|n° op|n° opération|n° ligne|n° phase|phase|ordre",
    feature: "désignation|description|élément|entité|forme|remarque|libellé|commentaire|usinage de",
    operation:
      "opération|op|usinage|type d'opération|type d'usinage|opération d'usinage|nature de l'usinage|procédé|sous-phase",
    units: "unité|unités|système d'unités|mm/po|unité de mesure|mm/pouce",
    quantity:
      "qté|quantité|nombre|nb|nbre|nbre de trous|nb de trous|nombre de trous|nb trous|qté par pièce|quantité par pièce",
    material: "matière|matériau|mat|matière pièce|matériau pièce|matière usinée|matière de la pièce|nuance",
    machine: "machine-outil|centre d'usinage|nom de la machine|moyen",
    tool: "outil|fraise|nom de l'outil|nom outil|outil coupant|désignation outil|référence outil",
    thread:
      "filetage|filet|taraudage|désignation du filetage|type de filetage|désignation filetage|dimension du filetage|taille de filetage",
    startDiameter:
      "ø avant-trou|diamètre avant-trou|avant-trou|ø de départ|diamètre de départ|ø départ|diamètre initial|ø initial|ø perçage avant taraudage|ø ébauche|diamètre ébauche|ø de perçage|diamètre de l'avant-trou|ø pré-perçage|ø trou existant|ø brut",
    finishDiameter:
      "ø fini|diamètre fini|diamètre|diam|dia|diamètre final|ø final|ø alésage|diamètre d'alésage|diamètre alésage|ø trou|diamètre du trou|ø nominal|diamètre nominal|cote finie|ø",
    depth:
      "profondeur|prof|prof filetée|profondeur filetée|hauteur|profondeur utile|longueur filetée|hauteur de paroi|profondeur du filetage|profondeur de rainure",
    through:
      "débouchant|trou débouchant|traversant|débouchant o/n|trou traversant|débouchant oui/non|débouchant/borgne",
    hand: "sens|sens du filet|droite/gauche|d/g|pas à droite/gauche|sens du filetage|main|sens d'hélice du filet|sens du pas",
    way: "avalant/opposition|mode de fraisage|sens de fraisage|avalant/conventionnel|opposition/avalant|type de fraisage|avalant ou opposition",
    length:
      "longueur|long|longueur usinée|longueur de coupe|longueur d'usinage|longueur de passe|longueur du parcours|longueur de rainure",
    side: "côté|intérieur/extérieur|int/ext|type de paroi|paroi|extérieur/intérieur",
    radialDepth:
      "ae|engagement radial|prise radiale|largeur de coupe|prof de passe radiale|profondeur radiale|profondeur de passe radiale|passe radiale|prise de passe radiale|engagement radial ae|largeur de passe|passe latérale|largeur fraisée|engagement ae",
    axialDepth:
      "ap|engagement axial|profondeur de passe|prof de passe|prise axiale|profondeur axiale|passe axiale ap|passe axiale|profondeur de passe axiale|profondeur de coupe|prise de passe|prise de passe axiale|prof de coupe|engagement ap|profondeur de passe ap|pas de descente",
    passes: "nombre de passes|nb de passes|nb passes|nbre de passes|n passes|passe",
    springPasses:
      "passes à vide|passes de finition à vide|passes blanches|passe à vide|passe blanche|nb de passes à vide|passes sans engagement|passes de repasse",
    stickOut:
      "sortie d'outil|longueur sortie|porte-à-faux|sortie outil|longueur de sortie|longueur hors porte-outil|longueur sortie d'outil|dépassement|longueur hors attachement|sortie|jauge outil",
    surfaceSpeed: "vc|vitesse de coupe|vit de coupe|vitesse coupe|vitesse de coupe vc|v coupe",
    feedPerTooth:
      "fz|avance par dent|avance/dent|av par dent|avance mm/dent|avance à la dent|av/dent|avance fz|avance par dent fz|avance dent|avance mm/z|avance par dent (mm/dent)",
    maxRpm:
      "vitesse max|régime max|n max|vitesse de rotation max|fréquence de rotation max|limite tr/min|limite de vitesse|régime maxi|vitesse maxi|vitesse de broche max|rotation max|tr/min max|vitesse maximale|régime maximal",
    holeDepth:
      "profondeur du trou|prof trou|profondeur de perçage|prof perçage|profondeur trou|profondeur d'avant-trou|prof de perçage|profondeur percée|fond de trou|profondeur totale",
    batch: "lot|taille de lot|série|taille du lot|quantité du lot|nombre de pièces|pièces par lot|taille de série",
    drillOversize: "surcote de perçage|agrandissement du perçage",
    spacing: "entraxe|espacement|distance entre trous|écartement|pas des trous|distance entre les trous",
    wearFactor: "facteur d'usure|coef d'usure|coefficient d'usure",
    measured: "mesuré|cote mesurée|cote réelle|mesure|valeur mesurée|diamètre mesuré|ø mesuré|relevé|cote relevée",
    wearValue: "correcteur d'usure|usure|correction d'usure|correcteur|jauge d'usure|valeur d'usure|usure outil",
    sizeTolerance: "tolérance|tol|it|tolérance dimensionnelle|intervalle de tolérance|tolérance +/-|tol +/-",
    roughness: "rz|rugosité|rugosité rz|état de surface rz|état de surface",
    coolant: "arrosage|lubrification|lubrifiant|refroidissement|type d'arrosage|liquide de coupe|mode d'arrosage",
    totalWidth: "largeur de rainure|largeur rainure|largeur totale|largeur à surfacer|largeur de face",
    insideCorner:
      "rayon intérieur|coin intérieur|rayon d'angle intérieur|angle intérieur|rayon de coin intérieur|rayon de poche",
    sizeClass: "ajustement|classe de tolérance|tolérance iso|qualité|classe iso",
  },
  result: {
    verdict: "avis|résultat|état|ok",
    reasons: "raisons|motifs|motif",
    limit: "limite",
    load: "charge",
    spindleSpeed:
      "vitesse de rotation|n|fréquence de rotation|vitesse de broche|tr/min|s|régime|rotation|vitesse broche|régime de broche|nb de tours|vitesse de rotation n|tours/min",
    surfaceSpeed: "vitesse de coupe|vc",
    feedPerTooth: "avance par dent|fz|avance à la dent|avance/dent|avance mm/dent",
    tableFeed:
      "vf|vitesse d'avance|avance table|avance|avance vf|avance de table|vitesse d'avance vf|avance mm/min|avance travail|avance programmée",
    chipThickness: "épaisseur de copeau|épaisseur du copeau",
    passes: "nb de passes|nombre de passes",
    direction: "sens",
    force: "effort de coupe|effort|force de coupe|effort tangentiel",
    power: "puissance|puissance de coupe|puissance absorbée|puissance consommée",
    deflection: "flexion|flèche|déflexion|déformation",
    stress: "contrainte",
    drill: "foret|ø foret",
    size: "cote",
    sizeMin: "cote mini|cote min",
    sizeMax: "cote maxi|cote max",
    timeEach: "temps unitaire|temps par trou",
    time: "temps|temps d'usinage|temps de cycle|durée|temps de coupe|temps par pièce",
    cost: "coût|prix de revient|coût par pièce",
  },
  material: {
    material: "matière|nuance|matériau|désignation|nom|nom de la matière",
    group: "groupe iso|groupe matière|groupe|classe iso|famille|groupe de matière",
    hardness: "dureté|dureté hb|dureté hrc|résistance",
    kc11: "kc1.1|pression spécifique de coupe|effort spécifique de coupe|kc|pression spécifique",
    exponent: "mc|exposant|exposant mc",
    source: "origine",
  },
  tool: {
    tool: "outil|n° outil|référence outil|référence|désignation|nom de l'outil|numéro d'outil|code outil|nom|réf outil",
    kind: "type|type d'outil|genre|nature|famille",
    units: "unité|unités",
    diameter:
      "diamètre|ø outil|d|diamètre de coupe|ø fraise|diamètre outil|diamètre de fraise|diamètre de l'outil|ø|ø coupe|diam|dc|ø foret",
    teeth: "z|nb de dents|nombre de dents|dents|nbre dents|nbre de dents|nb dents|nombre de lèvres|lèvres|nb de lèvres",
    cuttingLength:
      "longueur de coupe|long de coupe|longueur taillée|longueur utile|long taillée|longueur d'arête|longueur de goujure",
    neckDiameter:
      "ø dégagement|ø détalonnage|diamètre du col|ø col|diamètre de dégagement|ø détalonné|diamètre détalonné|ø dégagé",
    neckLength:
      "longueur dégagement|longueur détalonnée|longueur du col|longueur dégagée|longueur de dégagement|long dégagée|portée|longueur col",
    shankDiameter: "ø queue|diamètre de queue|queue|ø attachement|diamètre queue|ø de queue|diamètre d'attachement",
    stickOut: "sortie|porte-à-faux|sortie d'outil|longueur sortie|sortie outil|longueur de sortie",
    cornerRadius: "rayon de coin|rayon d'angle|rayon de bec|r|rayon|rayon en bout|rayon d'arête en bout",
    tipFlat: "plat en bout|méplat",
    profileAngle: "angle de profil|angle de filet",
    helix: "angle d'hélice|hélice",
    pointAngle: "angle de pointe|angle au sommet",
    edgeRadius: "rayon d'arête|acuité d'arête",
    edgeAngle: "angle d'attaque|angle de direction",
    modulus: "module d'élasticité|module de young",
    runout: "faux-rond|battement|excentration|faux rond|défaut de concentricité",
    substrate: "matière outil|matériau de coupe|carbure/hss|substrat|matière de coupe|matière de l'outil|nuance outil",
    pitch: "pas|pas du filet",
    chamfer: "entrée|chanfrein d'entrée",
    maxRpm: "n max|vitesse max|régime max|vitesse de rotation max|vitesse maxi",
    price: "prix|prix ht|coût|coût outil|prix unitaire|prix outil",
    edges: "arêtes|nb d'arêtes|arêtes de coupe|nombre d'arêtes|arêtes par plaquette",
    coolantThrough: "arrosage central|arrosage interne|trous d'huile|lubrification centrale",
    sizeClass: "ajustement|classe de tolérance|tolérance",
  },
  machine: {
    machine: "centre d'usinage|nom|nom de la machine|machine-outil|désignation",
    minRpm: "vitesse min|vitesse mini|n min|régime min|vitesse broche min",
    maxRpm:
      "vitesse max|vitesse broche max|n max|régime max|vitesse de broche max|vitesse maxi|vitesse de rotation max|rotation max",
    power: "puissance|puissance broche|puissance de broche|puissance moteur",
    torque: "couple|couple broche|couple de broche|couple max",
    maxFeed: "avance max|avance maxi|avance travail max|avance maximale|vitesse d'avance max",
    rapid: "avance rapide|rapide|vitesse rapide|déplacement rapide|rapides",
    acceleration: "accélération",
    toolChange: "changement d'outil|temps de changement d'outil|changement outil|temps copeau à copeau|copeau à copeau",
    damping: "amortissement",
    rate: "taux horaire|coût horaire|prix horaire|coût machine|taux machine",
    setup: "réglage|temps de réglage|mise en train|temps de préparation|préparation",
  },
  words: {
    operation: {
      drill: "percer|perçage|perc|perçage profond|trou|perce",
      "thread mill":
        "fraiser un filet|fraisage de filet|fraisage de filets|filetage à la fraise|fraiser filet|fraisage filet|fraisage de filetage|fileter à la fraise|filetage par interpolation|filetage à la fraise à fileter|filetage|fileter",
      bore: "aléser|alésage|poche circulaire|contournage circulaire|interpolation circulaire|interpolation hélicoïdale|alésage par interpolation|alésage à la fraise|alésage fraisé|fraisage circulaire|alésage en interpolation",
      boss: "bossage|tourillon|îlot circulaire|téton|plot|bossage circulaire",
      slot: "rainurer|rainure|rainurage|fraisage de rainure|rainure de clavette|fente",
      side: "contournage|contourner|fraisage de profil|fraisage en roulant|profil|fraisage latéral|fraisage de flanc|paroi|contour|profilage|dressage de flanc|fraisage de côté",
      face: "surfacer|surfaçage|dressage|fraisage de face|planage|surface",
      tap: "tarauder|taraudage|taraudage rigide|filetage|fileter",
      ream: "alésage à l'alésoir|alésoir|aléser à l'alésoir|passer l'alésoir",
      countersink: "fraisurer|fraisurage|chanfreiner|chanfrein|fraisure|chanfreinage|fraise conique",
      counterbore: "lamer|lamage|chambrage|lamage à la fraise|chambrer",
    },
    flag: { yes: "oui|o|vrai|x", no: "non|n|faux" },
    through: { yes: "débouchant|traversant", no: "borgne|non débouchant" },
    hand: {
      right: "droite|d|à droite|droit|pas à droite|filet à droite",
      left: "gauche|g|à gauche|pas à gauche|filet à gauche",
    },
    way: {
      climb: "avalant|en avalant|fraisage en avalant|avalante",
      conventional: "opposition|en opposition|conventionnel|fraisage en opposition|fraisage conventionnel",
    },
    side: {
      inside: "intérieur|int|intérieure|concave|interne",
      outside: "extérieur|ext|extérieure|convexe|externe",
      straight: "droit|droite|rectiligne|plan",
    },
    units: { mm: "millimètres|millimètre|métrique", in: "pouce|pouces|po|impérial" },
    coolant: {
      flood: "arrosage|émulsion|arrosage externe|huile soluble|extérieur|externe|lubrifié",
      through:
        "arrosage central|arrosage par le centre|centre outil|centre broche|arrosage interne|interne|intérieur|par le centre|central|haute pression centre",
      air: "soufflage|air comprimé|soufflette|soufflage d'air",
      dry: "à sec|sec|sans|aucun|sans arrosage",
    },
    kind: {
      drill: "foret|foret carbure|forets|foret hss|foret hélicoïdal",
      "end mill":
        "fraise|fraise 2 tailles|fraise deux tailles|fraise cylindrique|fraise carbure|fraise en bout|fraise torique|fraise à queue|fraise droite",
      "ball end mill": "fraise hémisphérique|fraise boule|fraise sphérique",
      "face mill": "fraise à surfacer|fraise à plaquettes|surfaceuse|fraise à surfacer-dresser",
      "thread mill full":
        "fraise à fileter|fraise à fileter profil complet|fraise à fileter multi-dents|fraise à fileter à profil complet",
      "thread mill single":
        "fraise à fileter profil unique|fraise à fileter monoprofil|fraise à fileter mono-dent|fraise à fileter une dent",
      tap: "taraud|taraud machine",
      reamer: "alésoir|alésoir machine|alésoir carbure",
      countersink: "fraise à chanfreiner|fraisoir|fraise conique|fraise à fraisurer",
    },
    substrate: {
      carbide: "carbure|carbure monobloc|carbure de tungstène",
      hss: "ars|acier rapide|hss-co|acier rapide cobalt",
    },
    group: {
      p: "acier|aciers|acier carbone|acier allié",
      m: "inox|acier inoxydable|inoxydable",
      k: "fonte|fontes",
      n: "aluminium|alu|non ferreux|laiton|cuivre|plastique",
      s: "titane|réfractaire|superalliage|alliage réfractaire|réfractaires",
      h: "trempé|acier trempé|acier traité|traité",
    },
  },
};
