/**
 * The top room of the engine: one sheet in, everything that a skier, a seller or a maker is shown out. The browser calls it
 * for the preview, the server calls it again on every save and its result wins. It knows no date: dates come from the queue.
 */
import type { BuildCatalog, PairSpec, SpecChoices } from "#engine/configuration";
import type { FinishTable, FitAnswers, FitCoefficients, Recommendation } from "#engine/fit";
import type { FlexSpread, SkiFlex, ThicknessProfile } from "#engine/flex";
import type { PartsList, PartsRules } from "#engine/parts";
import type { Destination, GivenDiscount, Price, PriceBook } from "#engine/pricing";
import type { SnowBed } from "#engine/snow";
import type { Refusal } from "#engine/units";

/** Everything the engine reads of a catalogue release. Plain JSON: it travels to the browser whole. */
export interface EngineCatalog {
  readonly build: BuildCatalog;
  readonly fit: FitCoefficients;
  /** Bevels and structure, see recommendFinish of ../fit. */
  readonly finish: FinishTable;
  readonly priceBook: PriceBook;
  readonly parts: PartsRules;
  /** What a ski is shown on today. Of no release: absent where one is recomputed. */
  readonly snow?: readonly SnowKind[];
}

/** A snow as a skier calls it. */
export interface SnowKind extends SnowBed {
  readonly id: string;
  readonly label: string;
  /** Shown first to who skis these most, and the usual one to everybody else. */
  readonly homeSnows?: readonly NonNullable<FitAnswers["homeSnow"]>[] | undefined;
  readonly usual?: true | undefined;
  readonly source: string;
}

/** The skier's choices so far. A missing one takes the recommended or the model's default value. */
export interface SheetChoices extends SpecChoices {
  readonly destination?: Destination;
  readonly discounts?: readonly GivenDiscount[];
}

/** Answers may be incomplete while the sheet is being filled in. */
export type PartialAnswers = { readonly [K in keyof FitAnswers]?: FitAnswers[K] | undefined };

export interface SheetInput {
  readonly answers: PartialAnswers;
  readonly choices: SheetChoices;
  /** Whether the skier stated that the uploaded picture may be used. Only the server knows for sure. */
  readonly rightsConfirmed?: boolean;
}

/** One way out of a conflict: these choices instead, and what they change. */
export interface Way {
  readonly code: string;
  readonly label: string;
  readonly choices: Partial<SheetChoices>;
  readonly effect?: WayEffect;
}

/** Difference that a way makes to the pair as it stands. */
export interface WayEffect {
  readonly priceCents: number;
  /** Both skis together. */
  readonly massG: number;
  /** Of the centre spring constant. */
  readonly stiffnessPercent: number;
}

export type Conflict = Refusal & { readonly ways: readonly Way[] };

export interface Assessment {
  /** Null until height, mass and ability are known. */
  readonly recommendation: Recommendation | null;
  /** Null until a model is chosen or recommended. */
  readonly spec: PairSpec | null;
  /** The bare ski, that the flex ratio is about. */
  readonly flex: SkiFlex | null;
  /** The finished ski with plate and mat: what the bench measures and the scale shows. */
  readonly finishedFlex: SkiFlex | null;
  /** How sure springs and mass are; null too where the release says nothing of scatter. */
  readonly spread: FlexSpread | null;
  readonly core: {
    readonly profile: ThicknessProfile;
    readonly achievedRatio: number;
    readonly limitedBy: readonly string[];
  } | null;
  readonly parts: PartsList | null;
  readonly price: Price | null;
  /** Options that clash, with what to do about it. */
  readonly conflicts: readonly Conflict[];
  /** Worth a look, blocks nothing: letters under the binding, a coarse print. */
  readonly warnings: readonly Conflict[];
  /** May a quote be made from this sheet as it stands, and if not, why. */
  readonly saleBlockedBy: readonly Refusal[];
  /** May it be released to the floor (a print may be blocked while the sale goes on). */
  readonly buildBlockedBy: readonly Refusal[];
}
