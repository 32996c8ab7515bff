/** What went wrong as it was entered, and the ways on that were offered. */
import { z } from "zod";
import { type ReworkFault, reworkFaults, type StationId } from "#engine/floor";
import type { FloorChange } from "#engine/routing";
import type { IsoDate, OrderId, PairId } from "#engine/units";
import { idSchema } from "../ids";
import { amount, listOf, storedDay, storedInstant, storedSide, storedStation, words } from "./common";
import { type PromiseEffect, storedPromiseEffect } from "./effects";
import { storedFloorChange } from "./floor-changes";

/** What went wrong, as it is entered. Instants are ISO 8601 text in UTC. */
export type BreakdownInput =
  | { readonly kind: "press-down"; readonly press: string; readonly from: string; readonly until: string }
  | { readonly kind: "person-away"; readonly person: string; readonly from: string; readonly until: string }
  | {
      readonly kind: "supplier-late";
      /** The first station that cannot begin without it: every pair that has not begun there waits. */
      readonly station: StationId;
      readonly material: string;
      readonly expectedOn: IsoDate;
    }
  | {
      readonly kind: "base-short";
      readonly colour: string;
      /** What is left of the roll, m. */
      readonly leftM: number;
      readonly expectedOn: IsoDate;
    }
  | {
      readonly kind: "ski-rebuild";
      readonly pairId: PairId;
      readonly side: "L" | "R";
      readonly fromStation: StationId;
      readonly fault: ReworkFault;
    }
  | { readonly kind: "proof-late"; readonly pairId: PairId; readonly expectedOn: IsoDate };

export type BreakdownKind = BreakdownInput["kind"];

export const remedyCodes = [
  "wait",
  "offer-colour",
  "overtime",
  "overnight-cure",
  "second-press",
  "swap-with-slack",
] as const;
export type RemedyCode = (typeof remedyCodes)[number];

/** One way on, with what it does to the promises and what it costs. What is applied is what stands here. */
export interface RemedyOption {
  readonly way: RemedyCode;
  readonly costCents: number;
  /** What its words say: hours, days, weeks. Absent where they say no number. */
  readonly figures?: Readonly<Record<string, number>>;
  /** The shop's own written procedure that it is done under; absent where it needs none, and in rows of before it was named. */
  readonly procedure?: string;
  readonly changes: readonly FloorChange[];
  /** Places in the queue, as shop minutes to rank by. */
  readonly places: readonly { readonly pairId: string; readonly placeMinute: number }[];
  /** Promises that stand worse than before the breakdown, even so. */
  readonly crossing: readonly PromiseEffect[];
  /** Promises that would stand worse without it and do not with it. */
  readonly saved: number;
  readonly expectedLate: number;
}

/** A colour with what its lot is called: bases of one lot are of one thickness. */
export interface BaseLot {
  readonly colour: string;
  readonly label: string;
  readonly lot: string;
}

/** A pair that asks for a base colour that is short, in the order in which bases are cut by the plan. */
export interface BaseNeed {
  readonly pairId: PairId;
  readonly orderId: OrderId;
  readonly serial: string;
  readonly skierFirstName: string;
  readonly needM: number;
  /** False: what is left does not reach for it. */
  readonly isServed: boolean;
  /** Its letters are counterchanged with this colour: both must come from one thickness lot. Lot null: none on the shelf. */
  readonly counterchangedWith: { readonly label: string; readonly lot: string | null } | null;
  /** Colours on the shelf that could take its place, of a lot that fits. */
  readonly alternatives: readonly BaseLot[];
}

export interface BaseShortage {
  readonly colour: string;
  readonly label: string;
  readonly neededM: number;
  readonly leftM: number;
  readonly shortM: number;
  readonly expectedOn: IsoDate;
  readonly pairs: readonly BaseNeed[];
}

const pairId = idSchema("pair");
const faults = new Set<string>(reworkFaults.map(({ id }) => id));
const isFault = (value: unknown): value is ReworkFault => typeof value === "string" && faults.has(value);
export const storedFault = z.custom<ReworkFault>(isFault, { error: "not a fault that is built again" });

export const storedBreakdown = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("press-down"), press: words, from: storedInstant, until: storedInstant }),
  z.object({ kind: z.literal("person-away"), person: words, from: storedInstant, until: storedInstant }),
  z.object({ kind: z.literal("supplier-late"), station: storedStation, material: words, expectedOn: storedDay }),
  z.object({ kind: z.literal("base-short"), colour: words, leftM: amount, expectedOn: storedDay }),
  z.object({
    kind: z.literal("ski-rebuild"),
    pairId,
    side: storedSide,
    fromStation: storedStation,
    fault: storedFault,
  }),
  z.object({ kind: z.literal("proof-late"), pairId, expectedOn: storedDay }),
]) satisfies z.ZodType<BreakdownInput>;

const remedyOption = z.object({
  way: z.enum(remedyCodes),
  costCents: amount,
  figures: z.record(z.string(), amount).readonly().exactOptional(),
  procedure: words.exactOptional(),
  changes: listOf(storedFloorChange),
  places: listOf(z.object({ pairId: words, placeMinute: amount })),
  crossing: listOf(storedPromiseEffect),
  saved: amount,
  expectedLate: amount,
}) satisfies z.ZodType<RemedyOption>;

export const storedRemedies = listOf(remedyOption);

const baseNeed = z.object({
  pairId,
  orderId: idSchema("order"),
  serial: words,
  skierFirstName: words,
  needM: amount,
  isServed: z.boolean(),
  counterchangedWith: z.object({ label: words, lot: words.nullable() }).nullable(),
  alternatives: listOf(z.object({ colour: words, label: words, lot: words })),
}) satisfies z.ZodType<BaseNeed>;

export const storedShortage = z.object({
  colour: words,
  label: words,
  neededM: amount,
  leftM: amount,
  shortM: amount,
  expectedOn: storedDay,
  pairs: listOf(baseNeed),
}) satisfies z.ZodType<BaseShortage>;
