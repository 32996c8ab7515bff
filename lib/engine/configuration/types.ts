/**
 * What can be ordered (models, cores, reinforcements, bases, graphics) and what one order asks for (PairSpec).
 * A PairSpec is complete: with a catalogue release it recomputes to the same millimetres and cents for ever.
 */
import type { ScatterSettings, SectionTheory } from "#engine/flex";
import type { ModelShape } from "#engine/geometry";
import type { Corrections, MaterialLibrary } from "#engine/materials";
import type { Refusal } from "#engine/units";

/** What a model is made for. */
export const modelUses = [
  "carving",
  "frontside",
  "all-mountain narrow",
  "all-mountain wide",
  "freeride",
  "powder",
  "touring",
  "park",
] as const;

export type ModelUse = (typeof modelUses)[number];

export interface CoreDesign {
  readonly tipMm: number;
  readonly midMm: number;
  readonly tailMm: number;
  /** Length of the flat middle, centred on the mount line. */
  readonly flatMm: number;
  /** t = tEnd + (tMid − tEnd)(1 − (1 − u)^power); 1 is a straight taper. */
  readonly taperPower: number;
  readonly stripWidthMm: number;
  /** Default blend of the reference build. */
  readonly blend: string;
}

/** One layer of a model's own lay-up, base to topsheet. */
export type LayupLayer =
  | { readonly role: "base"; readonly material: string; readonly thicknessMm: number }
  | { readonly role: "fabric"; readonly material: string }
  | { readonly role: "metal" | "rubber" | "topsheet"; readonly material: string; readonly thicknessMm: number }
  | { readonly role: "core" };

export interface ModelLength {
  readonly lengthCm: number;
  readonly mould: string;
  readonly cassettes: number;
}

export interface Model {
  readonly id: string;
  readonly name: string;
  readonly revision: string;
  readonly use: ModelUse;
  readonly state: "active" | "retired";
  readonly summary: string;
  readonly shape: ModelShape;
  readonly core: CoreDesign;
  readonly layup: readonly LayupLayer[];
  readonly lengths: readonly ModelLength[];
  readonly mouldFamily: string;
  /** The house graphic it wears until another is chosen; absent = the first of the list. */
  readonly houseGraphic?: string;
  /** Metal is part of the reference build. */
  readonly hasMetal: boolean;
}

/** The wood of each place, from the centre line out. */
export interface CoreStrips {
  readonly C: string;
  readonly I: string;
  readonly M: string;
  readonly O: string;
}

export interface CoreBlend {
  readonly id: string;
  readonly label: string;
  readonly summary: string;
  readonly strips: CoreStrips;
  /** Selected for looks, for windows and clear topsheets. */
  readonly isWindowGrade: boolean;
  /** Price-book code, absent when included. */
  readonly priceCode?: string;
  readonly forUses: readonly ModelUse[];
}

/** What a core of one's own may be made of. */
export interface OwnCoreRules {
  /** With `{strips}` for the woods from the middle outwards. */
  readonly label: string;
  readonly windowLabel: string;
  readonly summary: string;
  /** Woods that the shop keeps strips of. */
  readonly woods: readonly string[];
  /** Of the wood at I, which the screws of a binding go into. */
  readonly leastScrewDensityKgM3: number;
  /** Woods that the shop's glue does not hold. */
  readonly resinousWoods: readonly string[];
  /** Woods that the shop selects to be seen. */
  readonly windowWoods: readonly string[];
  readonly priceCode: string;
  readonly windowPriceCode: string;
}

export type ReinforcementPlacement =
  | { readonly kind: "full-ply"; readonly faces: readonly ("bottom" | "top")[]; readonly fabric: string }
  | {
      readonly kind: "stringers";
      readonly faces: readonly ("bottom" | "top")[];
      readonly fabric: string;
      readonly bandWidthMm: number;
      readonly perFace: number;
    }
  | { readonly kind: "metal-pair"; readonly sheet: string; readonly thicknessMm: number; readonly rubberMm: number };

export interface Reinforcement {
  readonly id: string;
  readonly label: string;
  /** What it does, in the skier's words. */
  readonly effect: string;
  readonly placement: ReinforcementPlacement;
  readonly extraPlies: number;
  /** Touch minutes that it adds, by the id of the station. */
  readonly extraMinutes: readonly { readonly station: string; readonly minutes: number }[];
  readonly leadDays: number;
  readonly priceCode: string;
  readonly forUses: readonly ModelUse[];
}

export interface BaseColour {
  readonly id: string;
  readonly label: string;
  readonly hex: string;
}

export interface HouseGraphic {
  readonly id: string;
  readonly label: string;
  /** What housePattern draws from these parameters, so that no picture file is needed. The middle four repeat: earlier releases. */
  readonly pattern: "plain" | "contours" | "larch" | "strata" | "facets" | "relief" | "branch" | "folds" | "shards";
  readonly colours: readonly string[];
}

export interface FlexClass {
  readonly number: 1 | 2 | 3 | 4 | 5;
  readonly label: string;
  /** Half-open [from, below). */
  readonly from: number;
  readonly below: number;
}

/** Pockets milled into the core outside the binding zone, and what bridges them. */
export interface LighteningRules {
  readonly label: string;
  /** The way out of a clash with it. */
  readonly withoutLabel: string;
  /** What it does, in the skier's words. */
  readonly effect: string;
  readonly widthMm: number;
  readonly depthMm: number;
  /** Wood left under a pocket. */
  readonly leastUnderMm: number;
  /** Between the mat under the binding and a pocket, for the model's own mount line. */
  readonly clearOfMatMm: number;
  /** Of the wood from there to the spacer. */
  readonly lengthShare: number;
  /** A strip over each, longer at both ends and wider on both sides. */
  readonly bridge: { readonly fabric: string; readonly overlapMm: number; readonly besideMm: number };
  readonly priceCode: string;
  readonly forUses: readonly ModelUse[];
}

/** What the plate in the core's pocket is cut from. */
export interface PlateSheet {
  readonly material: string;
  readonly thicknessMm: number;
}

/** A plate that may be ordered instead of the shop's own. */
export interface PlateChoice extends PlateSheet {
  readonly id: string;
  readonly label: string;
  /** What it does, in the skier's words. */
  readonly effect: string;
  readonly priceCode: string;
  readonly forUses: readonly ModelUse[];
}

/** Build constants that are not a customer's choice. */
export interface BuildRules {
  readonly axialOverBendingModulus: number;
  /** Of wood, across the grain over along it. */
  readonly acrossOverAxialModulus: number;
  /** How sections are reckoned. */
  readonly sections: SectionTheory;
  readonly sidewall: { readonly material: string; readonly widthMm: number };
  readonly edge: {
    readonly material: string;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly anchorMassFactor: number;
    readonly beyondSidecutMm: number;
    /** Beyond each contact point at the least; absent in older releases, whose steel may end before them. */
    readonly pastContactMm?: number;
  };
  readonly edgeRubber: { readonly material: string; readonly thicknessMm: number; readonly widthMm: number };
  readonly spacers: {
    readonly material: string;
    readonly tipMm: number;
    readonly tailMm: number;
    readonly scarfMm: number;
  };
  readonly plate: {
    readonly material: string;
    readonly thicknessMm: number;
    readonly rubber: string;
    readonly rubberMm: number;
    readonly lengthMm: number;
    readonly widthInsetMm: number;
    readonly pocketClearanceMm: number;
    readonly pocketPlanMm: number;
    readonly minMarginMm: number;
    /** Another plate for some uses (a fibre laminate where metal is not wanted). */
    readonly byUse?: Readonly<Partial<Record<ModelUse, PlateSheet>>>;
    /** Other plates that may be ordered. */
    readonly choices?: readonly PlateChoice[];
  };
  readonly mat: { readonly fabric: string; readonly lengthMm: number; readonly widthExtraMm: number };
  /** Absent where cores stay whole. */
  readonly lightening?: LighteningRules;
  readonly resinAtFacesGM2: number;
  readonly coreGlueGM2: number;
  readonly core: { readonly minMm: number; readonly maxMm: number; readonly maxSlope: number; readonly stepMm: number };
  /** What no core may go below whatever its flex; absent in older releases, which build whatever the mill can. */
  readonly bench?: BenchRules;
  /** The cloths that may take the place of a model's own; absent in older releases, whose cloth never changes. */
  readonly cloth?: ClothRules;
  /** Where the spring constants are read, as in ASTM F498's definitions; positions are settings. */
  readonly springTest: {
    readonly supports: "shoulder-heel" | { readonly frontFromTipMm: number; readonly rearFromTailMm: number };
    readonly load: "mount" | "middle";
  };
  /** How twist is read; absent in older releases, which read none. */
  readonly twistTest?: {
    readonly span: "mount-shoulder" | { readonly clampFromMountMm: number; readonly armFromMountMm: number };
    readonly torqueNm: number;
    readonly armMm: number;
  };
  /** How much materials and work vary; absent in older releases, whose numbers then carry no ±. */
  readonly scatter?: ScatterSettings;
  readonly springBackMm: number;
  readonly maxExtraPlies: number;
  readonly mountOffsetReviewMm: number;
  readonly bootSoleRangeMm: readonly [number, number];
  readonly print: PrintRules;
  /** Absent in older releases, which told letters by one height and sold drawn inlays; those that have it sell letters alone. */
  readonly baseLetters?: BaseLetterRules;
}

/** Letters cut into the base. */
export interface BaseLetterRules {
  /** As high as the shop cuts them where the ski is wide enough. */
  readonly capHeightMm: number;
  readonly leastCapHeightMm: number;
  /** Base that must stand on either side of a letter. */
  readonly fromEdgeMm: number;
  /** Length of one letter along the ski over its cap height, space included. */
  readonly advance: number;
  /** The row begins this far behind the shoulder and ends this far before the heel. */
  readonly fromShoulderMm: number;
  /** Closed counters of the shop's letters, by character; others have none. */
  readonly islands: Readonly<Record<string, number>>;
}

/** Bench rules of the shop, each with its reason in the shop's words. */
export interface BenchRules {
  /** Stretch under the boot, centred on the order's mount line. */
  readonly bootZoneMm: number;
  readonly bootCore: { readonly leastMm: number; readonly reason: string };
  /** Wood that is left under the pocket of the binding plate, over the whole pocket. */
  readonly woodUnderPocket: { readonly leastMm: number; readonly reason: string };
  readonly noRise: { readonly reason: string };
  /** Thicknesses of the spacers' sheet, ascending. */
  readonly endSheets: { readonly sheetsMm: readonly number[]; readonly reason: string };
  /** How much softer than its curve the rest of a ski may be made where the floors keep the boot stiffer. */
  readonly relief: { readonly share: number; readonly reason: string };
  /** How far the built flex ratio may lie from the ordered one, as a share of it. */
  readonly flexTolerance: { readonly share: number; readonly reason: string };
}

/** What a build is chosen by where more than one cloth reaches the flex. */
export type ClothPreference = "mass" | "price";

/** Cloth as the second lever: what may be laid where thickness alone does not reach the flex. */
export interface ClothRules {
  readonly prefer: ClothPreference;
  /** Plies of one face, from the outside in, each a cloth of the shop. */
  readonly faces: readonly (readonly string[])[];
  /** Cost of a cloth, cents a square metre. */
  readonly costCentsM2: Readonly<Record<string, number>>;
}

/** How a graphic is printed and read. */
export interface PrintRules {
  /** At and above: prints well. Below: a warning with the crop. */
  readonly goodDpi: number;
  /** Below: not printed unless the skier signs for it. */
  readonly leastDpi: number;
  /** Beyond the ski on each side. */
  readonly bleedMm: number;
  /** Between the two skis of a picture that continues across them. */
  readonly pairGapMm: number;
  /** Type and thin borders stay this far inside the edge. */
  readonly safeMm: number;
  /** Length that boot and binding hide, centred on the mount line. */
  readonly bindingZoneMm: number;
  readonly leastCapHeightMm: number;
  /** Width of one letter of the house lettering, space included, over its cap height. */
  readonly letterAdvance: number;
  readonly windowLeastMm: number;
  readonly windowFromEdgeMm: number;
}

/** The slice of the catalogue that the engine needs; everything plain, frozen and serialisable. */
export interface BuildCatalog {
  readonly models: readonly Model[];
  readonly materials: MaterialLibrary;
  readonly blends: readonly CoreBlend[];
  /** Absent where only the shop's own blends are built. */
  readonly ownCore?: OwnCoreRules;
  readonly reinforcements: readonly Reinforcement[];
  readonly baseColours: readonly BaseColour[];
  readonly houseGraphics: readonly HouseGraphic[];
  readonly flexClasses: readonly FlexClass[];
  readonly rules: BuildRules;
  /** What measured pairs have taught. Builds are computed with it; a model's own target curve stays nominal. */
  readonly corrections?: Corrections;
}

/** The part of a spec that decides stiffness and mass: the `flex` and `core` verbs take exactly this. */
export interface FlexSpec {
  readonly model: string;
  readonly lengthCm: number;
  readonly core: string;
  readonly reinforcements: readonly string[];
  readonly flexRatio: number;
  /** Pockets in the core outside the binding zone; absent = none. */
  readonly lightening?: boolean;
}

export type GraphicLayout = "same" | "mirrored" | "continuing" | "alternate" | "independent";

/** How an uploaded picture lies on the ski: its centre, scale and turn. */
export interface ArtworkPlacement {
  readonly centreXMm: number;
  readonly centreYMm: number;
  /** mm on the ski per source pixel. */
  readonly mmPerPixel: number;
  readonly angleDeg: number;
}

export interface Artwork {
  readonly id: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly sha256: string;
}

export interface GraphicText {
  readonly text: string;
  /** Middle of the text along the ski. */
  readonly xMm: number;
  readonly capHeightMm: number;
}

/**
 * How an own picture is laid out. fill: once, where it was placed · split: from the tips to the boot, across both skis ·
 * ends: on shovel and tail · fade: on the shovel, going over into the ground · tiles: repeated · motif: whole, clear of the boot.
 */
export const pictureArrangements = ["fill", "ends", "fade", "tiles", "motif", "split"] as const;

export type PictureArrangement = (typeof pictureArrangements)[number];

/** A part of a picture, as shares of its width and height from its upper left corner. */
export interface PicturePart {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface GraphicSpec {
  readonly kind: "house" | "own";
  readonly house?: string;
  readonly artwork?: Artwork;
  /** Where a filling picture lies; no other arrangement asks for it. */
  readonly placement?: ArtworkPlacement;
  /** Of an own picture; absent = fill. */
  readonly arrangement?: PictureArrangement;
  /** Colour of what the picture leaves bare, #rrggbb; absent = the plain sheet. */
  readonly ground?: string;
  /** Turns of the picture by 90° from its width along the ski, in every arrangement but fill. */
  readonly quarterTurns?: number;
  /** Of a piece that is wider than the ski: how far it is moved to the skier's right, from −1 to 1 of what is spare. */
  readonly sideShift?: number;
  /** Stays as it reads where a layout mirrors the picture: words. */
  readonly unmirrored?: PicturePart;
  readonly layout: GraphicLayout;
  readonly text?: GraphicText;
  /** Clear areas that show the wood. Needs a clear sheet, clear fabrics on top and a window-grade core. */
  readonly windows: readonly { readonly fromXMm: number; readonly toXMm: number; readonly halfWidthMm: number }[];
}

export type StructureGrade = "F" | "M" | "MC" | "C";

export interface PairSpec extends FlexSpec {
  readonly graphic: GraphicSpec;
  readonly base: {
    readonly left: string;
    readonly right: string;
    readonly inlay: "none" | "counterchange" | "complex";
    readonly inlayText?: string;
  };
  readonly mount: {
    /** From the model's own line, positive towards the tip. */
    readonly offsetMm: number;
    readonly bootSoleMm?: number;
    readonly bindingTrackMm?: number;
  };
  readonly finish: {
    readonly baseBevelDeg: number;
    readonly sideAngleDeg: number;
    readonly detuneTipMm: number;
    readonly detuneTailMm: number;
    readonly structure: StructureGrade;
  };
  readonly tipTailProtectors: boolean;
  /** The plate under the binding; absent = the shop's own for this use. */
  readonly plate?: string;
  readonly lightening?: boolean;
}

/** What has been chosen so far; the rest takes the recommended or the model's own value. */
export interface SpecChoices {
  readonly model?: string;
  readonly lengthCm?: number;
  readonly core?: string;
  readonly reinforcements?: readonly string[];
  /** Absent = as recommended. */
  readonly flexRatio?: number;
  readonly graphic?: PairSpec["graphic"];
  readonly base?: PairSpec["base"];
  readonly mount?: PairSpec["mount"];
  readonly finish?: PairSpec["finish"];
  readonly tipTailProtectors?: boolean;
  readonly plate?: string;
  readonly lightening?: boolean;
}

/** One way out of a clash: these choices instead. */
export interface SpecWay {
  readonly code: string;
  readonly label: string;
  readonly choices: SpecChoices;
}

/** Options that clash or deserve a look, with the ways out that the catalogue offers. */
export type SpecConflict = Refusal & { readonly ways: readonly SpecWay[] };
