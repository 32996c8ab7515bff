/** What the breakdown's form sends, by address or by post, as what the use case takes. */

import { z } from "zod";
import { shopInstantField, textField } from "#app/_server/fields.ts";
import { reworkFaults } from "#engine/floor";
import { isoDate } from "#engine/units";
import { idOf } from "#schemas/ids";
import { settings } from "#services";

const not = (input: unknown) => (input === "" ? "" : `, not “${String(input)}”`);
const instant = (label: string) =>
  shopInstantField(label, settings().shop.timeZone).transform((at) => at.toISOString());
const day = (label: string) => z.iso.date({ error: `${label}: a day is needed` }).transform(isoDate);
const chosen = (label: string) =>
  z
    .string()
    .min(1, { error: `${label}: choose one` })
    .max(60);
const station = chosen;
const pairId = chosen("Pair").transform((id) => idOf("pair", id));
const faultIds = reworkFaults.map(({ id }) => id);

export const breakdownSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("press-down"), press: chosen("Press"), from: instant("From"), until: instant("Until") }),
  z.object({
    kind: z.literal("person-away"),
    person: chosen("Person"),
    from: instant("From"),
    until: instant("Until"),
  }),
  z.object({
    kind: z.literal("supplier-late"),
    station: station("Station"),
    material: textField("What is late", 500),
    expectedOn: day("Expected on"),
  }),
  z.object({
    kind: z.literal("base-short"),
    colour: z.string().min(1, { error: "Base colour: choose one" }).max(60),
    leftM: z
      .string()
      .trim()
      .regex(/^\d{1,3}([.,]\d{1,3})?$/, {
        error: ({ input }) => `Left on the roll: a number of metres is needed, such as 12.5${not(input)}`,
      })
      .transform((text) => Number(text.replace(",", "."))),
    expectedOn: day("Expected on"),
  }),
  z.object({
    kind: z.literal("ski-rebuild"),
    pairId,
    side: z.enum(["L", "R"]),
    fromStation: station("From station"),
    fault: z.enum(faultIds, { error: "What is wrong: choose one" }),
  }),
  z.object({ kind: z.literal("proof-late"), pairId, expectedOn: day("Expected on") }),
]);

export const breakdownKinds = [
  "press-down",
  "person-away",
  "supplier-late",
  "base-short",
  "ski-rebuild",
  "proof-late",
] as const;
