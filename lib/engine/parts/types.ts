/** The parts list of one pair: every line that the kit must hold, with cut sizes from the geometry. */
export interface PartLine {
  /** Line number of the shop's list. */
  readonly line: number;
  readonly code: string;
  readonly label: string;
  readonly material: string;
  /** Of a base: the same sheet whatever its colour; see `baseMaterial`. */
  readonly sheet?: string;
  readonly cut: string;
  readonly lengthMm?: number;
  readonly widthMm?: number;
  readonly thicknessMm?: number;
  readonly areaMm2?: number;
  readonly netMassG?: number;
  readonly quantityLeft: number;
  readonly quantityRight: number;
  /** Not split by ski (glue, resin, carton). */
  readonly quantityPair: number;
  readonly unit: "piece" | "mm" | "g" | "ml" | "set";
  readonly scrapFactor: number;
  /** Ordered because of an option: highlighted on the build sheet. */
  readonly fromOption?: string;
  /** Id of the station that uses it. */
  readonly station: string;
  readonly mandatoryScan: boolean;
  /** Ids of the layers that it is, or is part of; absent for what is no layer of the ski. */
  readonly layers?: readonly string[];
  /** The cut of one piece, where `cut` also says on which sides of the core the pieces lie. */
  readonly pieceCut?: string;
}

export interface ResinBatch {
  readonly resinG: number;
  readonly hardenerG: number;
  readonly system: string;
  /** What of the mixed resin stays in both skis, and what is mixed above it; absent where a release reckons by cloth alone. */
  readonly stays?: { readonly inClothG: number; readonly onFacesG: number; readonly marginPercent: number };
}

/** Film of mixed resin on each face of a layer that is no cloth, by its material, and what is mixed above the need. */
export interface WetFaces {
  readonly woodGM2: number;
  readonly plasticGM2: number;
  readonly metalGM2: number;
  readonly rubberGM2: number;
  /** Taken up by a fibre patch at an end. */
  readonly patchGM2: number;
  /** For pots, brushes and flash, on top of what stays in the skis. */
  readonly marginPercent: number;
}

/** How resin was reckoned before faces were told apart. */
export interface WettedWood {
  /** Resin over dry cloth, by mass. */
  readonly perDryFabric: number;
  /** Faces of wood wetted on each ski; how much each takes is a build rule. */
  readonly wettedFaces: number;
  /** Weighed out over what stays in the skis: cups, film, flash. */
  readonly lossFactor: number;
}

export interface PartsList {
  readonly lines: readonly PartLine[];
  readonly layUp: PartsRules["layUp"];
  readonly resin: ResinBatch;
}

/** What the shop knows of one line whatever the pair: its words, cost, scrap and where it is used. */
export interface PartRule {
  readonly line: number;
  readonly code: PartCode;
  readonly label: string;
  readonly material: string;
  readonly unit: PartLine["unit"];
  /** Multiplier on the net quantity. */
  readonly scrapFactor: number;
  /** Id of the station that uses it. */
  readonly station: string;
  readonly mandatoryScan: boolean;
  /** Per `costPer`, low to high; absent when included in another line. */
  readonly unitCostCents?: { readonly low: number; readonly high: number };
  readonly costPer?: "piece" | "m" | "m2" | "kg" | "g" | "ml" | "set" | "board-foot";
}

/** The shop's list; the size and number of each is computed from the ski. */
export type PartCode =
  | "strip-c"
  | "strip-i"
  | "strip-m"
  | "strip-o"
  | "core-glue"
  | "sidewall"
  | "tip-spacer"
  | "tail-spacer"
  | "spacer-adhesive"
  | "plate"
  | "plate-rubber"
  | "binding-mat"
  | "base-left"
  | "base-right"
  | "inlay-left-to-right"
  | "inlay-right-to-left"
  | "inlay-backing"
  | "edge-left"
  | "edge-right"
  | "edge-joint"
  | "edge-adhesive"
  | "edge-rubber"
  | "end-rubber"
  | "bottom-fabric"
  | "top-fabric"
  | "extra-biax"
  | "stringers"
  | "extra-ply"
  | "metal-lower"
  | "metal-upper"
  | "metal-rubber-lower"
  | "metal-rubber-upper"
  | "pocket-bridge"
  | "end-patch"
  | "topsheet"
  | "transfer-print"
  | "sublimation-ink"
  | "tissue"
  | "topsheet-film"
  | "base-film"
  | "resin"
  | "hardener"
  | "filler"
  | "release-film"
  | "flash-tape"
  | "lay-up-sundries"
  | "serial-tag"
  | "protectors"
  | "edge-sealer"
  | "abrasives"
  | "wax"
  | "straps"
  | "end-caps"
  | "carton"
  | "papers"
  | "shipping-label";

/** Allowances and consumptions that turn a shape into cut sizes (common practice, no source). */
export interface PartsRules {
  readonly version: string;
  readonly lines: readonly PartRule[];
  readonly cut: {
    readonly stripRoughLengthMm: number;
    readonly stripRoughWidthMm: number;
    readonly stripRoughHeightMm: number;
    readonly flashMm: number;
    readonly sidewallExtraLengthMm: number;
    readonly plateRubberExtraMm: number;
    readonly baseExtraLengthMm: number;
    readonly baseExtraWidthMm: number;
    /** Width of the roll that bases are cut from, and what each ski's width needs beside it there. */
    readonly baseRollWidthMm: number;
    readonly baseNestMarginMm: number;
    readonly fabricExtraLengthMm: number;
    readonly fabricExtraWidthMm: number;
    readonly metalInsetMm: number;
    readonly endPatchLengthMm: number;
    readonly topsheetExtraLengthMm: number;
    readonly topsheetExtraWidthMm: number;
    readonly printExtraMm: number;
    readonly tissueExtraMm: number;
    readonly inlayBackingExtraMm: number;
    readonly endRubberLengthMm: number;
    readonly releaseFilmExtraLengthMm: number;
    readonly releaseFilmWidthMm: number;
    readonly cartonExtraLengthMm: number;
    readonly cartonWidthMm: number;
    readonly cartonHeightMm: number;
    /** Height of a base letter. */
    readonly inlayCapHeightMm: number;
  };
  readonly use: {
    readonly spacerAdhesiveG: number;
    readonly edgeAdhesiveG: number;
    readonly inkMlM2: number;
    readonly fillerPercentOfResin: number;
    readonly waxGM2: number;
    readonly edgeSealerG: number;
  };
  readonly resin: {
    readonly system: string;
    readonly hardenerPer100: number;
  } & ({ readonly faces: WetFaces } | WettedWood);
  /** How the lay-up page tells where a layer lies: by the sizes of the parts list, or in words alone as older releases did. */
  readonly layUp: "sizes" | "words";
  /** Whether a strip from the rack must measure what the cut list says, or (in older releases) only be long enough. */
  readonly stripsTakenBy: "size" | "length";
}
