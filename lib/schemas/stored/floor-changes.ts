/** What makes the floor different, as it is kept: the engine's change, with its minutes or with its instants beside it. */
import { z } from "zod";
import type { CrewMember, FloorChange, Press } from "#engine/routing";
import { amount, listOf, storedStation, words } from "./common";

type WithoutMinutes<Change> = Change extends unknown ? Omit<Change, "fromMinute" | "toMinute"> : never;
/** The engine's change without its minutes: its instants stand in columns of their own. */
export type FloorChangeData = WithoutMinutes<FloorChange>;

const press = z.object({
  id: words,
  label: words,
  kind: z.enum(["heated", "cold"]),
  initialMould: words.exactOptional(),
}) satisfies z.ZodType<Press>;

const person = z.object({
  id: words,
  label: words,
  stations: listOf(storedStation),
  isReserve: z.boolean(),
}) satisfies z.ZodType<CrewMember>;

const kinds = {
  pressDown: { kind: z.literal("press-down"), press: words },
  stationDown: { kind: z.literal("station-down"), station: storedStation },
  personAway: { kind: z.literal("person-away"), person: words },
  mouldOut: { kind: z.literal("mould-out"), mould: words },
  shopClosed: { kind: z.literal("shop-closed") },
  overtime: {
    kind: z.literal("overtime"),
    stations: listOf(storedStation).exactOptional(),
    daily: z.object({ fromMinute: amount, toMinute: amount }).exactOptional(),
  },
  extraPress: { kind: z.literal("extra-press"), press },
  extraPerson: { kind: z.literal("extra-person"), person },
  reworkFactor: { kind: z.literal("rework-factor"), factor: amount },
} as const;

export const storedFloorChangeData = z.discriminatedUnion("kind", [
  z.object(kinds.pressDown),
  z.object(kinds.stationDown),
  z.object(kinds.personAway),
  z.object(kinds.mouldOut),
  z.object(kinds.shopClosed),
  z.object(kinds.overtime),
  z.object(kinds.extraPress),
  z.object(kinds.extraPerson),
  z.object(kinds.reworkFactor),
]) satisfies z.ZodType<FloorChangeData>;

const forAWhile = { fromMinute: amount, toMinute: amount };
const fromADayOn = { fromMinute: amount, toMinute: amount.nullable() };

export const storedFloorChange = z.discriminatedUnion("kind", [
  z.object({ ...kinds.pressDown, ...forAWhile }),
  z.object({ ...kinds.stationDown, ...forAWhile }),
  z.object({ ...kinds.personAway, ...forAWhile }),
  z.object({ ...kinds.mouldOut, ...forAWhile }),
  z.object({ ...kinds.shopClosed, ...forAWhile }),
  z.object({ ...kinds.overtime, ...forAWhile }),
  z.object({ ...kinds.extraPress, ...fromADayOn }),
  z.object({ ...kinds.extraPerson, ...fromADayOn }),
  z.object(kinds.reworkFactor),
]) satisfies z.ZodType<FloorChange>;
