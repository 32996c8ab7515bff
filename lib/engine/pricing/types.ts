/** Money is integer cents of one currency; rates are basis points; every rounding is by a named function, once per line. */
import type { CoreBlend, FlexClass, Model, OwnCoreRules, PlateChoice, Reinforcement } from "#engine/configuration";
import type { MaterialLibrary } from "#engine/materials";
import type { Cents, IsoDate } from "#engine/units";

/** home = the shop's own state, domestic = the rest of the country, collect = fetched at the shop. */
export type Destination = "home" | "domestic" | "abroad" | "collect";

/** Goods are the skis, services are work beside them (proof rounds, rush). */
export type TaxClass = "goods" | "shipping" | "service";

/** Codes of the options that follow from a spec itself; blends and reinforcements name their own codes. */
export type FixedOptionCode =
  | "flex-outside-classes"
  | "graphic-own"
  | "graphic-own-pair"
  | "inlay-counterchange"
  | "inlay-complex"
  | "mount-review"
  | "tip-tail-protectors";

export interface PriceBook {
  readonly id: string;
  readonly currency: "USD";
  readonly effectiveFrom: IsoDate;
  readonly modelCents: Readonly<Record<string, number>>;
  readonly optionCents: Readonly<Record<string, { readonly label: string; readonly cents: number }>>;
  /** Flex classes that cost nothing extra. */
  readonly flexClassesIncluded: readonly FlexClass["number"][];
  readonly discounts: readonly DiscountRule[];
  /** One discount a price, at most. */
  readonly maxDiscounts: number;
  readonly shippingCents: Readonly<Record<Destination, number>>;
  /** Of the ex-tax total, by where the goods change hands. */
  readonly taxBasisPoints: Readonly<Record<Destination, number>>;
  /** Of the ex-tax total. */
  readonly depositBasisPoints: number;
  readonly rush: { readonly label: string; readonly basisPoints: number; readonly minimumCents: number };
  readonly quoteValidDays: number;
  readonly printOnly: { readonly setUpCents: number; readonly perSheetCents: number };
}

export interface DiscountRule {
  readonly code: string;
  readonly label: string;
  readonly basisPoints: number;
  /** The rate is a ceiling: a lower one may be given. */
  readonly isCeiling: boolean;
  /** Whole price or the model's line only. */
  readonly on: "total" | "model";
  readonly needsOwner: boolean;
}

export interface GivenDiscount {
  readonly code: string;
  readonly reason: string;
  readonly approvedBy: string;
  /** Only for a rule that is a ceiling; absent = the rule's own rate. */
  readonly basisPoints?: number;
}

/** What pricing reads of the build catalogue: a `BuildCatalog` is one. */
export interface PricedCatalog {
  readonly models: readonly Pick<Model, "id" | "name" | "hasMetal">[];
  readonly blends: readonly CoreBlend[];
  readonly ownCore?: OwnCoreRules;
  readonly materials: MaterialLibrary;
  readonly reinforcements: readonly Pick<Reinforcement, "id" | "placement" | "priceCode">[];
  readonly flexClasses: readonly FlexClass[];
  readonly rules: {
    readonly mountOffsetReviewMm: number;
    readonly lightening?: { readonly priceCode: string };
    readonly plate: { readonly choices?: readonly Pick<PlateChoice, "id" | "priceCode">[] };
  };
}

export interface PriceTerms {
  readonly destination: Destination;
  readonly discounts?: readonly GivenDiscount[];
  /** The core's solver lays other glass than the model's own, to reach the flex. */
  readonly isOtherCloth?: boolean;
  /** A hard date that displaces others; the owner approves it. */
  readonly rush?: { readonly reason: string; readonly approvedBy: string };
  /** Options that are not part of the spec, by price-book code (proof rounds, designer hours…). */
  readonly extras?: readonly { readonly code: string; readonly quantity: number }[];
}

export interface PriceLine {
  readonly code: string;
  readonly label: string;
  readonly quantity: number;
  readonly unitCents: Cents;
  readonly lineCents: Cents;
  readonly taxClass: TaxClass;
  /** This line's share of the tax; the shares sum to the tax. */
  readonly taxCents: Cents;
  /** Discounts and rush: why and by whom. */
  readonly reason?: string;
  readonly approvedBy?: string;
}

export interface Price {
  readonly priceBook: string;
  readonly currency: PriceBook["currency"];
  readonly destination: Destination;
  /** Everything but shipping; their sum is `exTaxCents`. */
  readonly lines: readonly PriceLine[];
  /** Goods and services, discounts in, before shipping and tax: the total that deposits and fees are on. */
  readonly exTaxCents: Cents;
  readonly shippingCents: Cents;
  readonly taxCents: Cents;
  readonly totalCents: Cents;
  readonly depositCents: Cents;
  readonly balanceCents: Cents;
}

export type PriceRefusal =
  | { readonly code: "no-price"; readonly path: string; readonly item: string; readonly priceBook: string }
  | {
      readonly code: "unknown-discount";
      readonly path: string;
      readonly discount: string;
      readonly known: readonly string[];
    }
  | { readonly code: "too-many-discounts"; readonly path: string; readonly given: number; readonly most: number }
  | {
      readonly code: "discount-too-high";
      readonly path: string;
      readonly discount: string;
      readonly basisPoints: number;
      readonly mostBasisPoints: number;
    }
  | { readonly code: "discount-without-reason"; readonly path: string; readonly discount: string };

/** One line of a comparison of two prices. */
export interface PriceDifference {
  readonly code: string;
  readonly label: string;
  readonly change: "same" | "changed" | "added" | "removed";
  readonly beforeCents: Cents;
  readonly afterCents: Cents;
  readonly differenceCents: Cents;
}

export interface PriceComparison {
  readonly lines: readonly PriceDifference[];
  readonly exTaxBeforeCents: Cents;
  readonly exTaxAfterCents: Cents;
  readonly exTaxDifferenceCents: Cents;
  readonly totalDifferenceCents: Cents;
}
