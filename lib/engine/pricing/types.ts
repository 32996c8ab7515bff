/** Money is integer cents of one currency; rates are basis points; every rounding is by a named function, once per line. */
import type { Cents, IsoDate } from "../units";

export interface PriceBook {
  readonly id: string;
  readonly currency: "USD";
  readonly effectiveFrom: IsoDate;
  readonly modelCents: Readonly<Record<string, number>>;
  readonly optionCents: Readonly<Record<string, { readonly label: string; readonly cents: number }>>;
  readonly flexOutsideClassesCents: number;
  readonly discounts: readonly DiscountRule[];
  readonly shippingCents: { readonly home: number; readonly abroad: number; readonly collect: number };
  readonly taxBasisPoints: { readonly home: number; readonly elsewhere: number };
  readonly depositBasisPoints: number;
  readonly rush: { readonly basisPoints: number; readonly minimumCents: number };
  readonly quoteValidDays: number;
  readonly printOnly: { readonly setUpCents: number; readonly perSheetCents: number };
}

export interface DiscountRule {
  readonly code: string;
  readonly label: string;
  readonly basisPoints: number;
  /** Whole price or the model's line only. */
  readonly on: "total" | "model";
  readonly needsOwner: boolean;
}

export interface PriceLine {
  readonly code: string;
  readonly label: string;
  readonly quantity: number;
  readonly unitCents: Cents;
  readonly lineCents: Cents;
  readonly taxClass: "goods" | "shipping" | "service";
  /** Discounts: why and by whom. */
  readonly reason?: string;
  readonly approvedBy?: string;
}

export type Destination = "home" | "abroad" | "collect";

export interface Price {
  readonly priceBook: string;
  readonly currency: "USD";
  readonly lines: readonly PriceLine[];
  /** Goods and services, discounts in, before shipping and tax: the total that deposits and fees are on. */
  readonly exTaxCents: Cents;
  readonly shippingCents: Cents;
  readonly taxCents: Cents;
  readonly totalCents: Cents;
  readonly depositCents: Cents;
  readonly balanceCents: Cents;
}
