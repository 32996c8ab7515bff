/** What forms send, as text, turned into what the use cases' schemas expect. */
import { z } from "zod";
import { shopMinute } from "#engine/routing";
import { isoDate } from "#engine/units";
import { instantOfShopMinute } from "#services/shop-clock";

/** Every form behind a private link carries it. */
export const linkField = { token: z.string().min(1).max(100) };

/** A row's id in a hidden field. */
export const idField = z.string().min(1).max(60);

/** A whole number in a hidden field: a version, a revision. */
export const wholeField = z
  .string()
  .regex(/^\d{1,9}$/, { error: "Number: a whole number is needed" })
  .transform(Number);

/** Which compared pair to take onto the sheet, and what the page showed of it. */
export const takenPairFields = {
  candidate: z.string().min(1).max(60),
  other: z.string().max(400),
  version: wholeField,
};

/** A text that somebody types. */
export const textField = (label: string, most: number, missing = `${label} is missing`) =>
  z.string({ error: missing }).max(most, {
    error: ({ input }) => `${label}: at most ${most} characters, not ${String(input).length}`,
  });

/** A box that must be ticked: sent as "on", or not at all. */
export const tickedField = (label: string) => z.literal("on", { error: `${label}: please tick` });

/** A box that may be ticked. */
export const maybeTicked = z
  .literal("on")
  .optional()
  .transform((value) => value === "on");

/** Boxes of a schema that expects true or false: a ticked one is sent as "on", an unticked one not at all. */
export function withTicks<S extends z.ZodType>(names: readonly string[], schema: S) {
  return z.preprocess((fields) => {
    const sent = fields as Readonly<Record<string, unknown>>;
    return { ...sent, ...Object.fromEntries(names.map((name) => [name, sent[name] === "on"])) };
  }, schema);
}

/** An optional text: an empty field is no text. */
export function withoutEmpty<S extends z.ZodType>(schema: S) {
  return z.preprocess(
    (fields) =>
      Object.fromEntries(
        Object.entries(fields as Readonly<Record<string, unknown>>).filter(([, value]) => value !== ""),
      ),
    schema,
  );
}

const wallClock = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})$/;

/** A day and time as read off the shop's clock, as the instant it is. */
export function shopInstantField(label: string, timeZone: string) {
  return z
    .string()
    .regex(wallClock, { error: `${label}: a day and a time are needed` })
    .transform((text) => {
      const [, day = "", hours = "0", minutes = "0"] = wallClock.exec(text) ?? [];
      return instantOfShopMinute(shopMinute(isoDate(day), Number(hours) * 60 + Number(minutes)), timeZone);
    });
}
