/**
 * Pieces of what stands in JSON columns. Schemas of stored data say what it means, not what may be typed today: a limit
 * that has been tightened since, or a member that is not known any more, does not make an old row unreadable.
 */
import { z } from "zod";
import { type Cents, cents, type IsoDate, isoDate } from "#engine/units";

export const amount = z.number();
export const words = z.string();

/** A calendar day. */
export const storedDay = z.iso.date().transform((text): IsoDate => isoDate(text));
/** An instant as ISO 8601 text in UTC. */
export const storedInstant = z.iso.datetime({ offset: true });
export const storedCents = z.int().transform((value): Cents => cents(value));
export const storedSide = z.enum(["L", "R"]);
/** How the floor's data name a station. */
export const storedStation = z.string();

/** A schema's value when there is something, else null. */
export const orNull = <T extends z.ZodType>(schema: T) => schema.nullable();
/** A list that is read and never written to. */
export const listOf = <T extends z.ZodType>(schema: T) => z.array(schema).readonly();
