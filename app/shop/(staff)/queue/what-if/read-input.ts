/** The question in the address, as what the use case takes. */

import { z } from "zod";
import { isoDate } from "#engine/units";
import { settings } from "#services";

const not = (input: unknown) => (input === "" ? "" : `, not “${String(input)}”`);
const day = (label: string) => z.iso.date({ error: `${label}: a day is needed` }).transform(isoDate);
const whole = (label: string) =>
  z
    .string()
    .regex(/^\d{1,3}$/, { error: ({ input }) => `${label}: a whole number is needed${not(input)}` })
    .transform(Number);

const numbers = settings().floor.stations.map(({ number }) => number);
/** Typed by the numbers that people know stations by; told on by their ids. */
const stations = z
  .string()
  .regex(/^\s*\d{1,2}(\s*,\s*\d{1,2})*\s*$/, {
    error: ({ input }) =>
      `Stations: numbers from ${Math.min(...numbers)} to ${Math.max(...numbers)} with commas between them are needed${not(input)}`,
  })
  .transform((text) =>
    text
      .split(",")
      .map(Number)
      .map((number) => settings().floor.stations.find((station) => station.number === number)?.id ?? String(number)),
  );
const factor = z
  .string()
  .regex(/^\d{1,2}([.,]\d{1,3})?$/, {
    error: ({ input }) => `Rework: a number such as 2 or 1.5 is needed${not(input)}`,
  })
  .transform((text) => Number(text.replace(",", ".")));

export const whatIfSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("hire"), stations, from: day("From") }),
  z.object({ kind: z.literal("second-press"), from: day("From") }),
  z.object({ kind: z.literal("closure"), from: day("From"), until: day("Until") }),
  z.object({ kind: z.literal("club-order"), pairs: whole("Pairs") }),
  z.object({ kind: z.literal("rework"), factor }),
  z.object({ kind: z.literal("drop-mould"), mould: z.string().max(60), from: day("From"), until: day("Until") }),
  z.object({
    kind: z.literal("supplier-lead"),
    station: z.string().min(1, { error: "Station: choose one" }).max(60),
    weeks: whole("Weeks"),
  }),
]);

export const whatIfFields = {
  hire: ["stations", "from"],
  "second-press": ["from"],
  closure: ["from", "until"],
  "club-order": ["pairs"],
  rework: ["factor"],
  "drop-mould": ["mould", "from", "until"],
  "supplier-lead": ["station", "weeks"],
} as const;
