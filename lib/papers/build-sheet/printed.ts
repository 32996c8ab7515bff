/** What a build sheet prints: plain words and numbers, composed from the facts of a pair. */
import type {
  CutRow,
  DrawingData,
  PairFacts,
  PrintStamp,
  Row,
  ShopFacts,
  SkiSide,
  Span,
  StationFact,
  XY,
} from "#papers/parts/facts";

export interface ProfileStation {
  readonly name: string;
  readonly xMm: number;
  readonly plannedMm: number;
}

export interface CoreDrawing {
  /** Names the thickness programme: two cores with the same name are milled alike. */
  readonly profileId: string;
  readonly wood: Span;
  /** Core thickness along x; y in mm. */
  readonly thickness: readonly XY[];
  readonly stations: readonly ProfileStation[];
  /** From the centre line outward, both sides alike. */
  readonly strips: readonly {
    readonly position: string;
    readonly innerMm: number;
    readonly outerMm: number;
    readonly species: string;
  }[];
  readonly sidewall: { readonly widthMm: number; readonly material: string };
  readonly pocket:
    | (Span & {
        readonly widthMm: number;
        readonly depthMm: number;
        readonly plateLengthMm: number;
        readonly plateWidthMm: number;
        readonly plateMm: number;
        readonly rubberMm: number;
        readonly plate: string;
      })
    | null;
  /** Lightening pockets, the fore one first; empty for a whole core. */
  readonly hollows: readonly (Span & { readonly widthMm: number; readonly depthMm: number })[];
  readonly spacers: {
    readonly tipMm: number;
    readonly tailMm: number;
    readonly scarfMm: number;
    readonly tipThicknessMm: number;
    readonly tailThicknessMm: number;
    readonly material: string;
  };
  /** Wood of one core as milled, pocket out; from the strips' own densities where measured. */
  readonly plannedG: { readonly L: number; readonly R: number };
  /** Of the strips when they are glued, in words; empty where a release does not say. */
  readonly moisture: string;
  /** At the mount line. */
  readonly thicknessAtMountMm: number;
}

/** From and to as shares of the ski's length, tip first. */
export interface StretchOfSki {
  readonly fromShare: number;
  readonly toShare: number;
}

export interface StackLayer {
  readonly name: string;
  readonly detail: string;
  readonly role: "base" | "edge" | "rubber" | "fabric" | "metal" | "core" | "plate" | "mat" | "topsheet";
  /** Null: varies, see the core drawing. */
  readonly thicknessMm: number | null;
  /** Which ways the fibres run, degrees from the ski's axis; empty for what is no cloth and no wood. */
  readonly fibresDeg: readonly number[];
  readonly extent: string;
  /** How the picture draws it: over the whole ski, as bands along it, short under the binding, or at both ends. */
  readonly lies: "whole" | "bands" | "under-binding" | "ends" | StretchOfSki;
  /** Numbers of its parts in the shop's list; none where a release tells places in words alone. */
  readonly lines: readonly number[];
  readonly isOption: boolean;
}

export interface StripRow {
  readonly position: string;
  readonly place: "left" | "centre" | "right";
  readonly species: string;
  readonly id: string;
  readonly bin: string;
  readonly board: string;
  readonly modulus: string;
  readonly density: string;
}

export interface QcRow {
  readonly measure: string;
  readonly method: string;
  readonly target: string;
  readonly toTarget: string;
  readonly twins: string;
}

export interface BuildSheetData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly title: string;
  readonly identity: readonly Row[];
  readonly options: readonly string[];
  readonly bases: readonly {
    readonly ski: SkiSide;
    readonly colour: string;
    readonly hex: string;
    readonly inlay: string;
  }[];
  readonly graphic: readonly Row[];
  readonly finish: readonly Row[];
  readonly notes: readonly string[];
  readonly drawing: DrawingData;
  readonly core: CoreDrawing;
  readonly stack: readonly StackLayer[];
  readonly strips: {
    readonly areAllocated: boolean;
    readonly left: readonly StripRow[];
    readonly right: readonly StripRow[];
    /** How long and where they lay before glueing; empty where a release does not say. */
    readonly rest: string;
  };
  readonly cuts: readonly CutRow[];
  readonly resin: readonly Row[];
  readonly press: readonly Row[];
  readonly workingTimes: readonly { readonly roomC: number; readonly minutes: number }[];
  readonly surfacePreparation: readonly string[];
  readonly stations: readonly StationFact[];
  readonly qc: readonly QcRow[];
  /** Ordered class and k, and the band the bench must read. */
  readonly orderedClass: string;
  readonly classBands: readonly Row[];
}
