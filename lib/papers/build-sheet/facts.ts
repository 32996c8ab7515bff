/** What a build sheet is about; kit list and labels take their share of it. */
import type { BuildCatalog, ClothChoice, PairSpec } from "#engine/configuration";
import type { CoreSolution, SkiBuild, SkiFlex } from "#engine/flex";
import type { ShapeMeasures, SkiShape } from "#engine/geometry";
import type { PartsList } from "#engine/parts";
import type { FloorFacts, PairFacts, PrintStamp, ShopFacts, SkiSide } from "#papers/parts/facts";

/** One strip taken from stock for one place in one core. */
export interface AllocatedStrip {
  readonly ski: SkiSide;
  readonly position: "C" | "I" | "M" | "O";
  /** Which of the position's two places, seen from above with the tip away: C has only "centre". */
  readonly place: "left" | "centre" | "right";
  readonly id: string;
  readonly bin: string;
  readonly species: string;
  readonly board: string | null;
  /** As measured on the strip bench; null when the strip was not measured. */
  readonly modulusMpa: number | null;
  readonly densityKgM3: number | null;
}

/** Where a part lies and which lot it comes from. Kept by the stock; absent before stock is kept. */
export interface LotFact {
  readonly code: string;
  readonly lot: string | null;
  readonly location: string | null;
  /** A part taken instead, and who approved it. */
  readonly substitution?: { readonly instead: string; readonly approvedBy: string };
}

/** What the maker must know beside the specification. */
export type PairNote =
  /** Other wood at one position, with the core milled to another thickness for it. */
  | {
      readonly kind: "other-species";
      readonly position: string;
      readonly species: string;
      readonly insteadOf: string;
      readonly thicknessMm: number;
    }
  /** Strips stiffer or softer than the design by some per cent, with the core milled to another thickness for them. */
  | { readonly kind: "other-thickness"; readonly modulusPercent: number; readonly thicknessMm: number }
  /** One ski alone is built again, at these stations. */
  | { readonly kind: "one-ski"; readonly serial: string; readonly stations: readonly (number | string)[] }
  | { readonly kind: "parked"; readonly serial: string; readonly location: string }
  /** The letters that the standing ski would have given are to be cut anew. */
  | { readonly kind: "extra-letters"; readonly colour: string }
  /** Somebody's own words. */
  | { readonly kind: "said"; readonly text: string };

/** The engine's answer for this spec: pass on what solveSpec returned. */
export interface SolvedSki {
  readonly build: SkiBuild;
  readonly core: CoreSolution;
  readonly cloth: ClothChoice;
  /** Without plate and mat: what k is about. */
  readonly flex: SkiFlex;
  /** With plate and mat: what the flex bench will read. */
  readonly flexWithPlate: SkiFlex;
}

/** Everything a build sheet is composed from. */
export interface BuildSheetFacts {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly pair: PairFacts;
  readonly catalog: BuildCatalog;
  readonly spec: PairSpec;
  readonly shape: SkiShape;
  readonly measures: ShapeMeasures;
  readonly solved: SolvedSki;
  readonly parts: PartsList;
  /** Null before strips are allocated: the sheet then prints boxes to fill in, and says so. */
  readonly strips: readonly AllocatedStrip[] | null;
  readonly lots: readonly LotFact[];
  readonly floor: FloorFacts;
  /** Cassette chosen for this press run, or null: write it in. */
  readonly cassette: string | null;
  /** Notes for the makers, no personal or health words. */
  readonly notes: readonly PairNote[];
}
