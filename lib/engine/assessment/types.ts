/**
 * The top room of the engine: one sheet in, everything that a skier, a seller or a maker is shown out. The browser calls it
 * for the preview, the server calls it again on every save and its result wins. It knows no date: dates come from the queue.
 */
import type { BuildCatalog, PairSpec } from "../configuration";
import type { FinishTable, FitAnswers, FitCoefficients, Recommendation } from "../fit";
import type { SkiFlex, ThicknessProfile } from "../flex";
import type { PartsList } from "../parts";
import type { Destination, Price, PriceBook } from "../pricing";
import type { Refusal } from "../units";

/** Everything the engine reads of a catalogue release. Plain JSON: it travels to the browser whole. */
export interface EngineCatalog {
  readonly build: BuildCatalog;
  readonly fit: FitCoefficients;
  /** Bevels and structure, see recommendFinish of ../fit. */
  readonly finish: FinishTable;
  readonly priceBook: PriceBook;
}

/** The skier's choices so far. A missing one takes the recommended or the model's default value. */
export interface SheetChoices {
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
  readonly destination?: Destination;
  readonly discounts?: readonly { readonly code: string; readonly reason: string; readonly approvedBy: string }[];
}

/** Answers may be incomplete while the sheet is being filled in. */
export type PartialAnswers = { readonly [K in keyof FitAnswers]?: FitAnswers[K] | undefined };

export interface SheetInput {
  readonly answers: PartialAnswers;
  readonly choices: SheetChoices;
}

export interface Assessment {
  /** Null until height, mass and ability are known. */
  readonly recommendation: Recommendation | null;
  /** Null until a model is chosen or recommended. */
  readonly spec: PairSpec | null;
  readonly flex: SkiFlex | null;
  readonly core: {
    readonly profile: ThicknessProfile;
    readonly achievedRatio: number;
    readonly limitedBy: readonly string[];
  } | null;
  readonly parts: PartsList | null;
  readonly price: Price | null;
  /** Options that clash, with what to do about it. */
  readonly conflicts: readonly (Refusal & {
    readonly ways: readonly { readonly label: string; readonly choices: Partial<SheetChoices> }[];
  })[];
  /** May a quote be made from this sheet as it stands, and if not, why. */
  readonly saleBlockedBy: readonly Refusal[];
  /** May it be released to the floor (a print may be blocked while the sale goes on). */
  readonly buildBlockedBy: readonly Refusal[];
}
