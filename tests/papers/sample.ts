/**
 * One believable pair of the invented workshop, written out by hand: what a service would hand over. Numbers are the demo
 * line-up's (Midlow 95 at 178 cm: EI, mass, spring and thickness as worked out outside the program); shop values are
 * common practice, no source.
 */

import type { BuildCatalog, Model, PairSpec } from "#engine/configuration";
import type { FlexStation, LayerMaterial, SkiBuild, SkiFlex } from "#engine/flex";
import { allStationRoles, type Caution, type CautionIcon } from "#engine/floor";
import { halfWidthAt, measure, shapeAtLength } from "#engine/geometry";
import type { PartLine } from "#engine/parts";
import { joinPrices } from "#engine/pricing";
import { cents, isoDate } from "#engine/units";
import {
  type BuildSheetFacts,
  type CautionFacts,
  type ClubQuoteData,
  composeDrawing,
  type FloorFacts,
  type KitListFacts,
  type LabelFacts,
  type OrderConfirmationData,
  type ProofData,
  type QuoteData,
  readableSpec,
  type StationFact,
} from "#papers";

const model: Model = {
  id: "midlow-95",
  name: "Midlow 95",
  revision: "C",
  use: "all-mountain wide",
  state: "active",
  summary: "",
  shape: {
    refLengthCm: 178,
    shoulderWidthMm: 132,
    waistWidthMm: 95,
    heelWidthMm: 119,
    tipLengthMm: 175,
    tailLengthMm: 144,
    tipExponent: 2.3,
    tailExponent: 2.6,
    tipRockerPercent: 17,
    tailRockerPercent: 6,
    tipRiseMm: 55,
    tailRiseMm: 18,
    camberMm: 4,
    mountBehindCentreMm: 75,
    edgeWrap: "partial",
  },
  core: { tipMm: 2, midMm: 11.4, tailMm: 2.1, flatMm: 300, taperPower: 1, stripWidthMm: 17.4, blend: "aspen-ash" },
  layup: [
    { role: "base", material: "base", thicknessMm: 1.3 },
    { role: "fabric", material: "triax-750" },
    { role: "core" },
    { role: "fabric", material: "triax-750" },
    { role: "topsheet", material: "topsheet", thicknessMm: 0.6 },
  ],
  lengths: [
    { lengthCm: 162, mould: "M95-162", cassettes: 1 },
    { lengthCm: 178, mould: "M95-178", cassettes: 2 },
    { lengthCm: 186, mould: "M95-186", cassettes: 2 },
  ],
  mouldFamily: "M95",
  hasMetal: false,
};

const source = "tests only";
export const catalog: BuildCatalog = {
  models: [model],
  materials: {
    woods: [
      {
        id: "aspen",
        label: "aspen",
        bendingModulusMpa: 8100,
        densityKgM3: 426,
        modulusToShearRatio: 16,
        modulusVariation: 0.22,
        source,
      },
      {
        id: "ash",
        label: "white ash",
        bendingModulusMpa: 12000,
        densityKgM3: 672,
        modulusToShearRatio: 16,
        modulusVariation: 0.22,
        source,
      },
    ],
    fabrics: [
      fabric("triax-750", "glass triaxial cloth, 750 g/m²", 750, 0.656, 25_760, 7_470),
      fabric("carbon-ud-300", "unidirectional carbon, 300 g/m²", 300, 0.36, 118_000, 4_500, [0]),
      fabric("glass-mat", "glass binding-zone cloth, 450 g/m²", 450, 0.394, 25_760, 7_470),
    ],
    sheets: [sheet("abs", "ABS, black", 2000, 1050), sheet("spacer", "ABS spacer sheet", 2000, 1050)],
  },
  blends: [
    {
      id: "aspen-ash",
      label: "aspen with ash under the screw rows",
      summary: "",
      strips: { C: "aspen", I: "ash", M: "aspen", O: "aspen" },
      isWindowGrade: false,
      forUses: ["all-mountain wide"],
    },
  ],
  reinforcements: [
    {
      id: "carbon-stringers",
      label: "carbon stringers",
      effect: "livelier",
      placement: { kind: "stringers", faces: ["bottom", "top"], fabric: "carbon-ud-300", bandWidthMm: 20, perFace: 2 },
      extraPlies: 0,
      extraMinutes: [],
      leadDays: 0,
      priceCode: "carbon-stringers",
      forUses: ["all-mountain wide"],
    },
  ],
  baseColours: [
    { id: "black", label: "black", hex: "#1C1C1C" },
    { id: "yellow", label: "signal yellow", hex: "#F2C230" },
  ],
  houseGraphics: [{ id: "contours", label: "Contours", pattern: "contours", colours: ["#124E55"] }],
  flexClasses: [
    { number: 2, label: "soft", from: 0.78, below: 0.92 },
    { number: 3, label: "medium", from: 0.92, below: 1.08 },
    { number: 4, label: "firm", from: 1.08, below: 1.25 },
  ],
  rules: {
    axialOverBendingModulus: 1.1,
    acrossOverAxialModulus: 0.07,
    sections: "layered",
    sidewall: { material: "abs", widthMm: 7 },
    edge: { material: "steel", widthMm: 2, heightMm: 2, anchorMassFactor: 1.25, beyondSidecutMm: 60 },
    edgeRubber: { material: "rubber", thicknessMm: 0.15, widthMm: 10 },
    spacers: { material: "spacer", tipMm: 180, tailMm: 120, scarfMm: 15 },
    plate: {
      material: "aluminium",
      thicknessMm: 0.5,
      rubber: "rubber",
      rubberMm: 0.15,
      lengthMm: 480,
      widthInsetMm: 18,
      pocketClearanceMm: 0.05,
      pocketPlanMm: 0.3,
      minMarginMm: 25,
    },
    mat: { fabric: "glass-mat", lengthMm: 600, widthExtraMm: 10 },
    resinAtFacesGM2: 100,
    coreGlueGM2: 150,
    core: { minMm: 1.8, maxMm: 14, maxSlope: 0.03, stepMm: 0.05 },
    springTest: { supports: "shoulder-heel", load: "mount" },
    springBackMm: 1.5,
    maxExtraPlies: 2,
    mountOffsetReviewMm: 30,
    bootSoleRangeMm: [265, 350],
    print: {
      goodDpi: 150,
      leastDpi: 100,
      bleedMm: 12,
      pairGapMm: 76,
      safeMm: 6,
      bindingZoneMm: 320,
      leastCapHeightMm: 8,
      letterAdvance: 0.8,
      windowLeastMm: 20,
      windowFromEdgeMm: 10,
    },
  },
};

function fabric(
  id: string,
  label: string,
  arealWeightGM2: number,
  thicknessMm: number,
  exMpa: number,
  gxyMpa: number,
  fibresDeg = [0, 45, -45],
) {
  const isOpaque = label.includes("carbon");
  return {
    id,
    label,
    arealWeightGM2,
    thicknessMm,
    exMpa,
    eyMpa: exMpa / 2,
    gxyMpa,
    nuXy: 0.3,
    fibresDeg,
    densityKgM3: 1776,
    isOpaque,
    source,
  };
}

function sheet(id: string, label: string, modulusMpa: number, densityKgM3: number) {
  return { id, label, modulusMpa, shearModulusMpa: modulusMpa / 2.7, densityKgM3, isOpaque: true, source };
}

export const spec: PairSpec = {
  model: "midlow-95",
  lengthCm: 178,
  core: "aspen-ash",
  reinforcements: ["carbon-stringers"],
  flexRatio: 1.07,
  graphic: {
    kind: "own",
    artwork: { id: "art-1", widthPx: 10_866, heightPx: 2_079, sha256: "5a1fe0c277d1".padEnd(64, "0") },
    layout: "mirrored",
    text: { text: "RIDGE HOME", xMm: 520, capHeightMm: 24 },
    windows: [{ fromXMm: 1350, toXMm: 1500, halfWidthMm: 25 }],
  },
  base: { left: "black", right: "yellow", inlay: "counterchange", inlayText: "FERN" },
  mount: { offsetMm: 10, bootSoleMm: 315 },
  finish: { baseBevelDeg: 1, sideAngleDeg: 2, detuneTipMm: 80, detuneTailMm: 50, structure: "M" },
  tipTailProtectors: true,
};

const shape = shapeAtLength(model.shape, 178);

function layer(label: string, exMpa: number, densityKgM3: number, eyMpa = exMpa, gxyMpa = exMpa / 2.7): LayerMaterial {
  return { label, exMpa, eyMpa, gxyMpa, nuXy: 0.3, densityKgM3 };
}

const glass = { fibresDeg: [0, 45, -45], ...layer("glass triaxial cloth, 750 g/m²", 25_760, 1776, 11_680, 7_470) };
const carbon = { fibresDeg: [0], ...layer("unidirectional carbon, 300 g/m²", 118_000, 1500, 6_600, 2_800) };
const full = { kind: "full" } as const;
const fromOption = "carbon-stringers";
const bands = { kind: "bands", count: 2, bandWidthMm: 20 } as const;

const build: SkiBuild = {
  shape,
  layers: [
    { role: "base", material: layer("sintered polyethylene, black", 760, 940), thicknessMm: 1.3 },
    { role: "fabric", id: "bottom-0", material: glass, thicknessMm: 0.656, extent: full },
    { role: "fabric", id: "carbon-stringers-bottom", material: carbon, thicknessMm: 0.36, extent: bands, fromOption },
    { role: "core" },
    { role: "fabric", id: "carbon-stringers-top", material: carbon, thicknessMm: 0.36, extent: bands, fromOption },
    {
      role: "mat",
      id: "glass-mat",
      material: glass,
      thicknessMm: 0.394,
      extent: { kind: "zone", fromMountMm: -300, toMountMm: 300 },
    },
    { role: "fabric", id: "top-0", material: glass, thicknessMm: 0.656, extent: full },
    {
      role: "topsheet",
      id: "topsheet",
      material: layer("clear polyamide topsheet", 1300, 1020),
      thicknessMm: 0.6,
      extent: full,
    },
  ],
  columns: [
    { position: "C", innerMm: 0, outerMm: 8.7, axialModulusMpa: 8910, shearModulusMpa: 506, densityKgM3: 426 },
    { position: "I", innerMm: 8.7, outerMm: 26.1, axialModulusMpa: 13_200, shearModulusMpa: 750, densityKgM3: 672 },
    { position: "M", innerMm: 26.1, outerMm: 43.5, axialModulusMpa: 8910, shearModulusMpa: 506, densityKgM3: 426 },
    { position: "O", innerMm: 43.5, outerMm: 60.9, axialModulusMpa: 8910, shearModulusMpa: 506, densityKgM3: 426 },
  ],
  sidewall: { widthMm: 7, material: layer("ABS, black", 2000, 1050) },
  edge: {
    widthMm: 2,
    heightMm: 2,
    lengthMm: 1521,
    material: layer("carbon steel edge", 205_000, 7850),
    anchorMassFactor: 1.25,
  },
  coreFromMm: 180,
  coreToMm: 1660,
  plate: {
    material: layer("aluminium sheet", 71_700, 2810),
    thicknessMm: 0.5,
    rubberMm: 0.15,
    lengthMm: 480,
    widthMm: 77,
    centreMm: 955,
  },
  extraMassG: 120,
  mountFromTipMm: 955,
};

const core = {
  profile: {
    stations: [
      { xMm: 0, thicknessMm: 2 },
      { xMm: 180, thicknessMm: 2.05 },
      { xMm: 500, thicknessMm: 6.35 },
      { xMm: 805, thicknessMm: 11.45 },
      { xMm: 1105, thicknessMm: 11.45 },
      { xMm: 1400, thicknessMm: 6.1 },
      { xMm: 1660, thicknessMm: 2.15 },
      { xMm: 1780, thicknessMm: 2.1 },
    ],
  },
  achievedRatio: 1.069,
  wantedRatio: 1.07,
  limitedBy: ["step"] as const,
};

const ownCloth = {
  laid: { bottom: ["triax-750"], top: ["triax-750"] },
  own: { bottom: ["triax-750"], top: ["triax-750"] },
  isOwn: true,
  because: [],
  by: null,
} as const;

const stations: readonly FlexStation[] = Array.from({ length: 19 }, (_, i) => {
  const xMm = 90 * i + 80;
  const bump = Math.exp(-(((xMm - 960) / 420) ** 2));
  return {
    xMm,
    widthMm: 2 * halfWidthAt(shape, xMm),
    coreMm: 2 + 9.4 * bump,
    thicknessMm: 5 + 9.6 * bump,
    bendingStiffnessNmm2: 1e7 + 3e8 * bump,
    torsionalStiffnessNmm2: 2e7 + 2.4e8 * bump,
    neutralAxisMm: 3 + 4 * bump,
    massGPerM: 900 + 300 * bump,
  };
});

const flex: SkiFlex = {
  stations,
  springCentreNPerMm: 3.49,
  coreShearPercent: 0.2,
  springForebodyNPerMm: 0.82,
  springAfterbodyNPerMm: 1.31,
  balance: 1.6,
  massKg: 1.742,
  balancePointMm: 938,
};

function part(
  line: number,
  label: string,
  material: string,
  cut: string,
  each: number,
  more: Partial<PartLine> = {},
): PartLine {
  return {
    line,
    code: `P${String(line).padStart(2, "0")}`,
    label,
    material,
    cut,
    lengthMm: 1500,
    quantityLeft: each,
    quantityRight: each,
    quantityPair: 0,
    unit: "piece",
    scrapFactor: 1.1,
    station: "kit",
    mandatoryScan: true,
    ...more,
  };
}

const parts = {
  layUp: "words" as const,
  lines: [
    part(1, "Core strip centre (C)", "aspen", "1 540 (+60 rough) × 17.4 (+3 rough) × 13.5 mm", 1),
    part(2, "Core strip inner (I)", "white ash", "1 540 (+60 rough) × 17.4 (+3 rough) × 13.5 mm", 2),
    part(3, "Core strip mid (M)", "aspen", "1 540 (+60 rough) × 17.4 (+3 rough) × 13.5 mm", 2),
    part(4, "Core strip outer (O)", "aspen", "1 540 (+60 rough) × 17.4 (+3 rough) × 13.5 mm", 2),
    part(6, "Sidewall strip", "ABS, black", "1 590 × 18 × 13.5 mm", 2),
    part(7, "Tip spacer", "ABS 2.0 mm", "tip outline to 180 + 15 mm scarf", 1),
    part(8, "Tail spacer", "ABS 2.1 mm", "tail outline to 120 + 15 mm scarf", 1),
    part(10, "Binding plate", "aluminium sheet 0.5 mm", "480 × 77 mm", 1),
    part(11, "Plate rubber", "rubber foil 0.15 mm", "485 × 82 mm", 1),
    part(12, "Binding-zone mat", "glass cloth 450 g/m²", "600 × 105 mm", 1),
    part(
      13,
      "Base sheet, left",
      "sintered polyethylene, black 1.3 mm",
      "blank 1 820 × 152 mm, then outline less 2.0 mm",
      1,
      { quantityRight: 0 },
    ),
    part(
      14,
      "Base sheet, right",
      "sintered polyethylene, signal yellow 1.3 mm",
      "blank 1 820 × 152 mm, then outline less 2.0 mm",
      1,
      { quantityLeft: 0 },
    ),
    part(15, "Inlay set left to right", "off-cut of 13", "letters FERN, zero kerf", 0, {
      quantityRight: 1,
      fromOption: "counterchange",
    }),
    part(16, "Inlay set right to left", "off-cut of 14", "letters FERN, zero kerf", 0, {
      quantityLeft: 1,
      fromOption: "counterchange",
    }),
    part(18, "Steel edge", "carbon steel 2.0 × 2.0 mm", "2 × 1 521 mm", 2),
    part(22, "Edge rubber", "rubber foil 0.15 mm", "1 521 × 10 mm", 2),
    part(24, "Bottom glass", "triaxial cloth 750 g/m²", "1 820 × 156 mm", 1),
    part(25, "Top glass", "triaxial cloth 750 g/m²", "1 820 × 156 mm", 1),
    part(27, "Carbon stringers", "unidirectional carbon 300 g/m²", "1 521 × 20 mm", 4, {
      fromOption: "carbon-stringers",
    }),
    part(32, "Topsheet", "clear polyamide 0.6 mm", "1 840 × 162 mm", 1),
    part(38, "Resin", "laminating epoxy", "see recipe", 0, { quantityPair: 560, unit: "g", mandatoryScan: true }),
    part(45, "Protectors", "ABS", "tail width", 2, { fromOption: "tip-tail-protectors" }),
    part(51, "Carton", "double wall", "1 890 × 200 × 160 mm", 0, { quantityPair: 1, mandatoryScan: false }),
  ],
  resin: { resinG: 560, hardenerG: 151, system: "cold-mould epoxy, medium hardener" },
};

const NAMES = [
  "Release, traveller, kit list",
  "Strip milling, measuring, binning",
  "Core lay-up and glue",
  "Profile, pockets, outline",
  "Sidewalls, spacers, plates",
  "Base cut and inlay",
  "Edge bend and set",
  "Print and sublimate topsheet",
  "Cut composites, kit, scan check",
  "Wet lay-up",
  "Press",
  "Demould, rest, trim",
  "Base grind, edges, structure, wax",
  "QC, match, serial, photo, pack",
];
const caution = (icon: CautionIcon, line: string, reference = "Safety data sheet"): Caution => ({
  id: line.toLowerCase().replace(/[^a-z]+/g, "-"),
  icon,
  line,
  full: `${line} The whole of it.`,
  reference,
});
const SAFETY: Readonly<Record<number, StationFact["safety"]>> = {
  2: [
    caution("no-gloves", "No gloves at the saw."),
    caution("dust", "Hardwood dust: extraction on, mask."),
    caution("hearing", "Hearing protection."),
  ],
  4: [caution("no-gloves", "No gloves at the router; check the clamps."), caution("dust", "Wood dust: extraction on.")],
  5: [caution("gloves", "Nitrile gloves with epoxy.")],
  7: [caution("blade", "Cut-resistant gloves for edges."), caution("ventilate", "Cyanoacrylate: ventilate, goggles.")],
  8: [caution("hot", "Hot press: heat-proof gloves, fumes out.")],
  9: [caution("mask", "Fibre dust: mask, gloves, coverall.")],
  10: [
    caution("gloves", "Uncured resin can sensitise for life: thick nitrile gloves, change often."),
    caution("fire", "Small flat batches: a full pot heats up."),
  ],
  11: [caution("crush", "Depressurise before you reach in."), caution("two-people", "Nobody alone at the press.")],
  12: [caution("wait", "No sanding of green laminate: wait for the timer."), caution("hot", "Hot mould: two people.")],
  13: [
    caution("no-gloves", "No gloves at the grinder."),
    caution("fire", "Metal sparks away from wood dust; no fluorinated wax."),
  ],
  14: [caution("blade", "Sharp edges: sheath the bases together.")],
};

export const floor: FloorFacts = {
  stations: NAMES.map((name, i) => ({
    role: allStationRoles[i] ?? "check",
    number: i + 1,
    name,
    typicalMinutes: [15, 45, 40, 55, 35, 35, 60, 45, 30, 60, 20, 75, 70, 55][i] ?? 0,
    needsSecondSignOff: [9, 11, 12, 14].includes(i + 1),
    safety: SAFETY[i + 1] ?? [],
    ...(i + 1 === 12 ? { wait: "rest 24 h or more before trimming" } : {}),
  })),
  press: {
    pressureBar: 3,
    heatUpMinutes: 18,
    dwellMinutes: 45,
    dwellC: 78,
    coolMinutes: 35,
    demouldBelowC: 45,
    restHours: 24,
  },
  resin: {
    system: "cold-mould epoxy, medium hardener",
    hardenerPer100: 27,
    tolerancePercent: 7,
    workingMinutes: 60,
    atC: 22,
    roomFromC: 20,
    roomToC: 25,
    maxBatchG: 150,
    resinLot: "R-77",
    hardenerLot: "H-31",
  },
  qcLimits: {
    length: { toTarget: "± 3 mm", twins: "1.5 mm", band: { kind: "absolute", amount: 3 } },
    widths: { toTarget: "± 0.4 mm", twins: "0.3 mm", band: { kind: "absolute", amount: 0.4 } },
    sidecut: { toTarget: "± 3 %", twins: "1.5 %", band: { kind: "percent", amount: 3 } },
    mass: { toTarget: "± 5 %", twins: "25 g or 1.5 %", band: { kind: "percent", amount: 5 } },
    balance: { toTarget: "± 10 mm", twins: "5 mm", band: { kind: "absolute", amount: 10 } },
    camber: { toTarget: "± 1.5 mm", twins: "1.0 mm", band: { kind: "absolute", amount: 1.5 } },
    splay: { toTarget: "± 5 mm", twins: "3 mm" },
    contact: { toTarget: "± 15 mm", twins: "10 mm" },
    springCentre: { toTarget: "± 7 %", twins: "3 %", band: { kind: "percent", amount: 7 } },
    springEnds: { toTarget: "± 10 %", twins: "5 %", band: { kind: "percent", amount: 10 } },
    torsion: { toTarget: "± 12 %", twins: "6 %", band: { kind: "percent", amount: 12 } },
    twist: { toTarget: "≤ 0.5°", twins: "–" },
    flatness: { toTarget: "no light > 0.05 mm; concave ≤ 0.03 mm underfoot", twins: "–" },
    bevels: { toTarget: "± 0.25°", twins: "0.25°" },
    visual: { toTarget: "edge gap ≤ 0.1 mm", twins: "same grade" },
  },
  surfacePreparation: [
    "Base flamed or sanded; treated side marked and up",
    "Sidewall bonding faces abraded and wiped",
    "Edges degreased",
    "Metal primed, within its open time",
    "Topsheet bonding side checked: it faces down",
  ],
  wax: "one hot base wax, then travel wax; no fluorinated wax",
  printScaleFactor: 1.0035,
  printFace: "under",
};

export const facts: BuildSheetFacts & KitListFacts & LabelFacts = {
  cautions: { localRules: "Local rules come first.", lines: [caution("mask", "Fibre dust: mask, gloves, coverall.")] },
  labelCautions: {
    "strip-bundle": [],
    core: [caution("blade", "Locked out for a bit change.")],
    base: [],
    print: [],
    cassette: [caution("two-people", "Two people or the cart.")],
    "finished-ski": [caution("blade", "New edges cut.")],
  },
  shop: {
    name: "Thistle Yard",
    town: "Lower Fennick",
    postalAddress: "4 Mill Lane, Lower Fennick",
    email: "bench@thistleyard.example",
    phone: "+1 555 0142",
  },
  stamp: {
    printedAt: "2026-11-25T09:32",
    revision: 2,
    specHash: "3fa9c17e52d0b8846a1c90ffde217733aa0411985c6bfe4207a19d7c1be85520",
  },
  pair: {
    number: "0417",
    leftSerial: "TY-0417-L-7",
    rightSerial: "TY-0417-R-5",
    pageUrl: "https://thistleyard.example/shop/pairs/0417",
    pressBy: isoDate("2026-12-10"),
    readyBy: isoDate("2026-12-18"),
    promiseClass: "promise",
    skierFirstName: "Maren",
  },
  catalog,
  spec,
  shape,
  measures: measure(shape),
  solved: { build, core, cloth: ownCloth, flex, flexWithPlate: { ...flex, springCentreNPerMm: 3.81, massKg: 1.836 } },
  parts,
  strips: (["L", "R"] as const).flatMap((ski, s) =>
    (
      [
        ["O", "left"],
        ["M", "left"],
        ["I", "left"],
        ["C", "centre"],
        ["I", "right"],
        ["M", "right"],
        ["O", "right"],
      ] as const
    ).map(([position, place], i) => ({
      ski,
      position,
      place,
      id: `S-${2140 + i * 2 + s}`,
      bin: position === "I" ? "ASH 13.0" : "ASP 9.0",
      species: position === "I" ? "ash" : "aspen",
      board: `B-${88 + i}`,
      modulusMpa: (position === "I" ? 13_050 : 8_920) + 40 * s,
      densityKgM3: (position === "I" ? 668 : 431) + s,
    })),
  ),
  lots: [
    { code: "P01", lot: "ASP-2609", location: "rack A2" },
    { code: "P13", lot: "PE-0613", location: "roll 3" },
    {
      code: "P38",
      lot: "R-77",
      location: "resin store",
      substitution: { instead: "fast hardener", approvedBy: "owner" },
    },
  ],
  floor,
  cassette: "M95-178 / 2",
  notes: [
    { kind: "said", text: "Letters read from the base side, heel to toe." },
    { kind: "said", text: "Window between 1 350 and 1 500 mm shows the wood: keep it clean of pigment." },
  ],
};

const { shop, stamp } = facts;

/** 1 925.00 = 1 590 + 90 + 150 + 95 of the demo price book; 6 % tax on 1 925 is 115.50, shipping 65; deposit half of 1 925. */
const price: QuoteData["price"] = {
  priceBook: "PB-3",
  currency: "USD",
  destination: "home",
  lines: (
    [
      ["midlow-95", "Midlow 95", 159_000],
      ["carbon-stringers", "Carbon stringers", 9_000],
      ["own-graphic", "Own graphic, mirrored", 15_000],
      ["letters", "Base letters, exchanged", 9_500],
    ] as const
  ).map(([code, label, amount]) => ({
    code,
    label,
    quantity: 1,
    unitCents: cents(amount),
    lineCents: cents(amount),
    taxClass: "goods" as const,
    taxCents: cents((amount * 6) / 100),
  })),
  exTaxCents: cents(192_500),
  shippingCents: cents(6_500),
  taxCents: cents(11_550),
  totalCents: cents(210_550),
  depositCents: cents(96_250),
  balanceCents: cents(114_300),
};

const dates: QuoteData["dates"] = {
  from: isoDate("2027-01-12"),
  to: isoDate("2027-01-22"),
  shares: null,
  confidence: "nine of ten by the later date",
  startsWhen: ["deposit received", "specification locked", "proof approved", "picture rights confirmed"],
};

const cautions: CautionFacts = {
  localRules: "Local rules come first.",
  lines: [
    caution(
      "note",
      "Bindings are not included: a certified technician mounts, adjusts and inspects them (ISO 11088).",
      "ISO 11088",
    ),
    caution("note", "Advice, not a guarantee."),
  ],
};

export const quote: QuoteData = {
  shop,
  stamp,
  number: "Q-212",
  url: "https://thistleyard.example/quote/8f2kx0",
  urlNote: "scan to read and accept it",
  madeAt: "2026-11-25T09:30",
  validUntil: isoDate("2026-12-16"),
  seller: "Odile",
  skierName: "Maren Aske",
  buyerName: "Jon Aske",
  answers: [
    { label: "Height", value: "5 ft 11½ in (181.6 cm)" },
    { label: "Mass", value: "181 lb (82.1 kg)" },
    { label: "Ability", value: "confident: links turns on red at speed" },
    { label: "Off-piste", value: "40 %" },
  ],
  recommendation: {
    summary: "Midlow 95, 178 cm, class 3 (k 1.07).",
    reasons: [
      { label: "Height, +6.6 cm from 175", amount: "+3.0 cm of length" },
      { label: "Mass, +7.1 kg from 75", amount: "+2.5 cm of length" },
      { label: "Mass with gear 91.1 kg", amount: "stiffness × 1.07" },
    ],
    alternatives: ["Midlow 84 at 182 cm", "Ridgefold 106 at 184 cm"],
  },
  flags: [{ message: "The mount line is moved 10 mm forward.", acknowledgedBy: "Odile, 25 Nov" }],
  specification: readableSpec(spec, catalog),
  price,
  taxNote: "Home state, 6 % added at checkout.",
  dates,
  customerSpecified: ["own picture", "letters FERN in both bases", "mount line 10 mm forward"],
  howToAccept: [
    "Scan the code or open the link, read the terms and accept.",
    "Or call the desk: the quote is accepted in your name.",
  ],
  cancellation: [
    { label: "Before the specification is locked", value: "$50.00" },
    { label: "After the core is milled", value: "30 % of the price" },
  ],
  cautions,
};

export const clubQuote: ClubQuoteData = {
  shop,
  stamp,
  number: "C-21",
  name: "Fell Runners",
  url: "https://thistleyard.example/shop/clubs/c21",
  urlNote: "the shop's page of this offer",
  madeAt: "2026-11-25T09:30",
  validUntil: isoDate("2026-12-16"),
  buyerName: "Jon Aske",
  palette: [{ label: "Bases", value: "Lake blue, Bone white" }],
  members: ["Ada", "Bo", "Cleo", "Dag", "Eir", "Finn", "Gro", "Hal"].map((skierName, index) => ({
    skierName,
    quoteNumber: `Q-${212 + index}`,
    ski: "Midlow 95, 178 cm",
    flexClass: "3, Middle",
    lettering: skierName.toUpperCase(),
    totalCents: price.totalCents,
  })),
  price: joinPrices(Array(8).fill(price)),
  taxNote: "Home state, 6 % added at checkout.",
  dates,
  howToAccept: ["Call the desk and name C-21: all of these pairs, or some of them."],
  cancellation: [{ label: "Before the specification is locked", value: "$50.00" }],
  cautions,
};

export const confirmation: OrderConfirmationData = {
  shop,
  stamp,
  orderNumber: "O-0388",
  url: "https://thistleyard.example/pair/77qmd1",
  urlNote: "scan to follow the order",
  quotes: ["Q-212 r2"],
  club: null,
  customerName: "Jon Aske",
  acceptedBy: "Jon Aske",
  acceptedAt: "2026-11-26T18:04",
  acceptedHow: "on the quote's own page",
  pairs: [
    {
      serial: "TY-0417",
      skierName: "Maren Aske",
      revision: 2,
      specification: readableSpec(spec, catalog),
      specHash: stamp.specHash,
    },
  ],
  money: {
    price,
    taxNote: "Home state, 6 % added at checkout.",
    deposit: { cents: 96_250, on: isoDate("2026-11-27"), how: "bank transfer" },
    rush: { cents: 20_000, isPaid: false },
    totalCents: 230_550,
    paidCents: 96_250,
    openCents: 134_300,
    cancellation: [{ label: "Core milled", value: "kept: 30 % of the price" }],
  },
  promise: {
    class: "hard-date",
    on: isoDate("2026-12-23"),
    planB: "a loan pair until it is ready",
    waitingFor: ["The deposit"],
    note: null,
  },
  changeCutOffs: [
    { label: "Core", value: "up to the start of gluing the core" },
    { label: "Graphic", value: "closed with the start of printing the top" },
  ],
  notices: [
    "Made to your own specification: the cancellation steps hold in place of a right to withdraw. Rights for faulty goods stay.",
  ],
  cautions,
};

/** Eight by four pixels, half tarn, half larch. */
const PICTURE =
  "data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAgAAAAECAIAAAA8r+mnAAAAFklEQVR4nGPIP3wSjj5MjoIjBupJAAATGD2Bm9rM1gAAAABJRU5ErkJggg==";

export const proof: ProofData = {
  shop,
  stamp,
  serial: "TY-0417",
  leftSerial: facts.pair.leftSerial,
  rightSerial: facts.pair.rightSerial,
  url: "https://thistleyard.example/pair/77qmd1",
  title: "Midlow 95 · 178 cm · revision C",
  layout: "mirrored, lettering stays readable",
  drawing: composeDrawing({ shape, measures: facts.measures, spec, rules: catalog.rules }),
  safeMm: 6,
  bleedSideMm: 12,
  pictures: { L: PICTURE, R: PICTURE },
  text: { transcript: "RIDGE HOME", xMm: 520, capHeightMm: 24 },
  resolution: "155 dpi: sharp in print",
  colourProfile: "sRGB",
  mirrored: "on the underside of the sheet: the paper is printed as read",
  sourceHash: "5a1fe0c277d1".padEnd(64, "0"),
  note: "The ridge is a little higher than on the first one.",
  answer: {
    state: "issued",
    answerBy: isoDate("2026-12-02"),
    ifLate: "After that day your place in the queue is given up.",
  },
};
