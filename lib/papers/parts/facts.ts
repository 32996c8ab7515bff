/** What several papers are about, before anything is put into words, and the shapes that several of them print. */
import type { PrintFace, StructureGrade } from "#engine/configuration";
import type { Caution, PromiseClass, StationRole } from "#engine/floor";
import type { SidewallBevel } from "#engine/geometry";
import type { CassetteMargins, HeatingRules } from "#engine/parts";
import type { IsoDate } from "#engine/units";

export type Paper = "A4" | "LETTER";
export type SkiSide = "L" | "R";
/** The shop's own clock: `YYYY-MM-DDTHH:mm`. */
export type LocalDateTime = string;

/** What is printed on each ski, already cropped to the ski's box (PNG or JPEG data URI). */
export interface SkiPictures {
  readonly L: string;
  readonly R: string;
}

/** Who prints: stands on every document. */
export interface ShopFacts {
  readonly name: string;
  readonly town: string;
  readonly postalAddress: string;
  readonly email: string;
  readonly phone: string;
}

/** What makes one print tellable from an older one. */
export interface PrintStamp {
  readonly printedAt: LocalDateTime;
  /** Of this document for this pair or quote, from 1. */
  readonly revision: number;
  /** The frozen specification's hash (hex, at least 12 digits): in the footer of every page. */
  readonly specHash: string;
}

/** A pair as the floor knows it. */
export interface PairFacts {
  /** Four digits and more, e.g. "0417". */
  readonly number: string;
  readonly leftSerial: string;
  readonly rightSerial: string;
  /** Address of the pair's page; the codes add the ski. */
  readonly pageUrl: string;
  readonly pressBy: IsoDate | null;
  readonly readyBy: IsoDate | null;
  readonly promiseClass: PromiseClass;
  readonly skierFirstName: string;
}

export interface StationFact {
  readonly role: StationRole;
  readonly number: number;
  readonly name: string;
  readonly typicalMinutes: number;
  /** Kit, close press, demould and QC are signed by a second person. */
  readonly needsSecondSignOff: boolean;
  /** One line each, from the shop's floor rules. */
  readonly safety: readonly Caution[];
  /** What must have passed before the next station, in words ("rest 24 h before trim"). */
  readonly wait?: string;
}

/** The recipe of press and resin, from the floor rules and the resin's own data sheet. */
export interface PressFacts {
  readonly pressureBar: number;
  readonly heatUpMinutes: number;
  readonly dwellMinutes: number;
  readonly dwellC: number;
  readonly coolMinutes: number;
  /** Core temperature to be reached before demould. */
  readonly demouldBelowC: number;
  readonly restHours: number;
  /** How the press warms a stack; absent where the usual minutes are printed. */
  readonly heating?: HeatingRules;
  /** What the bladder presses on beyond the two skis, mm; absent where no force is printed. */
  readonly cassette?: CassetteMargins;
  /** Both skis are pressed as one panel; the number of the station that parts them. Absent where each has a form of its own. */
  readonly panelPartedAt?: number;
}

/** When strips may be glued. */
export interface WoodFacts {
  readonly moistureFromPercent: number;
  readonly moistureToPercent: number;
  readonly restDays: number;
  readonly roomHumidityFromPercent: number;
  readonly roomHumidityToPercent: number;
}

/** How the stone makes a structure. */
export interface StoneFacts {
  readonly pattern: "linear" | "crossed";
  readonly roughnessUm: readonly [number, number];
  readonly dresserMmPerTurn: number;
  readonly passes: number;
}

export interface ResinFacts {
  readonly system: string;
  /** Hardener parts by weight on 100 of resin. */
  readonly hardenerPer100: number;
  readonly tolerancePercent: number;
  /** Thin-film working time at `atC`; halves per +10 °C. */
  readonly workingMinutes: number;
  readonly atC: number;
  readonly roomFromC: number;
  readonly roomToC: number;
  readonly maxBatchG: number;
  readonly resinLot: string | null;
  readonly hardenerLot: string | null;
}

export interface QcLimit {
  /** In words, as printed: "± 5 %". */
  readonly toTarget: string;
  readonly twins: string;
  /** The same limit as a number, to print the band beside the target; absent where there is none. */
  readonly band?: { readonly kind: "percent" | "absolute"; readonly amount: number };
}

export type QcMeasure =
  | "length"
  | "widths"
  | "sidecut"
  | "mass"
  | "balance"
  | "camber"
  | "splay"
  | "contact"
  | "springCentre"
  | "springEnds"
  | "torsion"
  | "twist"
  | "flatness"
  | "bevels"
  | "visual";

/** Everything of the floor that a build sheet quotes. */
export interface FloorFacts {
  readonly stations: readonly StationFact[];
  readonly press: PressFacts;
  readonly resin: ResinFacts;
  readonly qcLimits: Readonly<Record<QcMeasure, QcLimit>>;
  /** Lines to tick before lay-up. */
  readonly surfacePreparation: readonly string[];
  readonly wax: string;
  /** The rest as far as a release says it. */
  readonly wood?: WoodFacts;
  readonly sidewall?: SidewallBevel;
  readonly stone?: Partial<Readonly<Record<StructureGrade, StoneFacts>>>;
  /** A spring this near to its target reads as the ordered class. */
  readonly classWithinPercent?: number;
  /** Printed size over wanted size of the sheet lot in use; null = measure the lot first. */
  readonly printScaleFactor: number | null;
  /** Which face of the topsheet carries the print; the mirror flag follows from it. */
  readonly printFace: PrintFace;
}

/** Label and value, as printed. `isOption` marks what this order changed from the model's own build. */
export interface Row {
  readonly label: string;
  readonly value: string;
  readonly isOption?: boolean;
  /** The label without its number, where several rows share one. */
  readonly unnumbered?: string;
}

export interface XY {
  readonly x: number;
  readonly y: number;
}

export interface Span {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The ski as it is drawn: everything in mm along x from the tip; outline y is the half width, profile y the height. */
export interface DrawingData {
  readonly lengthMm: number;
  readonly outline: readonly XY[];
  readonly profile: readonly XY[];
  readonly shoulder: { readonly xMm: number; readonly widthMm: number };
  readonly waist: { readonly xMm: number; readonly widthMm: number };
  readonly heel: { readonly xMm: number; readonly widthMm: number };
  readonly mountMm: number;
  /** Of this order against the model's line, positive = towards the tip. */
  readonly mountOffsetMm: number;
  readonly widthAtMountMm: number;
  /** ISO 6289 contact length: between the gauge points of the pressed-flat ski. */
  readonly contact: Span & { readonly lengthMm: number; readonly gaugeMm: number };
  readonly tangent: Span & { readonly lengthMm: number };
  /** Steel along each side (partial) or once around (full). */
  readonly edge: Span & { readonly lengthMm: number; readonly wrap: "partial" | "full" };
  readonly edgeWidthMm: number;
  readonly camberMm: number;
  readonly mouldCamberMm: number;
  readonly tipRiseMm: number;
  readonly tailRiseMm: number;
  readonly projectedLengthMm: number;
  readonly sidecutRadiusM: number;
  readonly federationRadiusM: number;
  readonly planAreaMm2: number;
  readonly windows: readonly (Span & { readonly halfWidthMm: number })[];
  /** Glass under the binding. */
  readonly matZone: Span;
  /** What boot and binding hide of a graphic. */
  readonly bindingZone: Span;
}

export interface CutRow {
  readonly line: number;
  readonly part: string;
  readonly material: string;
  readonly cut: string;
  readonly left: string;
  readonly right: string;
  readonly pair: string;
  readonly isOption: boolean;
}

/** The days an offer tells, and what they wait for. */
export interface OfferedDates {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** Null for days that were told without. */
  readonly shares: string | null;
  readonly confidence: string;
  readonly startsWhen: readonly string[];
}

/** What the shop keeps when an order is cancelled at a stage, and by the terms of a release, and what can hurt as the shop says it today. */
export interface TermFacts {
  readonly cancellation: readonly {
    readonly label: string;
    /** Of the price, in hundredths of a per cent. */
    readonly keepBasisPoints: number;
    readonly keepCents: number;
    readonly keepsArtFee: boolean;
  }[];
  readonly cautions: CautionFacts;
}

/** What a paper says of what can hurt. */
export interface CautionFacts {
  /** What comes before anything said of it. */
  readonly localRules: string;
  readonly lines: readonly Caution[];
}
