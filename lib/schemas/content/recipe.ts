/** recipe.json: what the build sheet quotes of the floor beside floor.json, as the shop's own data sheets say. */
import { z } from "zod";
import type { CassetteMargins, HeatingRules } from "#engine/parts";
import { formerly, stationRef } from "../earlier-releases";
import { id } from "./shared";

const text = z.string().min(1);
const stationSchema = formerly(
  { number: "station" },
  z.strictObject({
    station: stationRef,
    needsSecondSignOff: z.boolean(),
    /** What must have passed before the next station, in words. */
    wait: text.exactOptional(),
  }),
);

const percent = z.number().min(0).max(100);
const heatProperties = z.strictObject({
  conductivityWMK: z.number().positive().max(500),
  heatCapacityJKgK: z.number().positive().max(5000),
});

/** How the press warms a stack; absent in older releases, whose sheets print the floor's usual minutes. */
const heatingSchema = z.strictObject({
  startC: z.number().min(5).max(40),
  plateMinutes: z.number().nonnegative().max(240),
  withinC: z.number().positive().max(20),
  heats: z.enum(["both-faces", "lower-face"]),
  woodMoisturePercent: percent.max(25),
  cloth: heatProperties,
  sheets: z.record(id, heatProperties),
  otherSheets: heatProperties,
}) satisfies z.ZodType<HeatingRules>;

/** What the bladder presses on beyond the two skis of a pair, mm; absent in older releases, which print no force. */
const cassetteSchema = z.strictObject({
  endMm: z.number().nonnegative().max(300),
  sideMm: z.number().nonnegative().max(200),
  betweenMm: z.number().nonnegative().max(200),
}) satisfies z.ZodType<CassetteMargins>;

/** Both skis of a pair pressed as one panel, and the station that parts them; absent where each has a form of its own. */
const panelSchema = z.strictObject({ partedAt: id });

export const recipeFileSchema = z
  .strictObject({
    about: text,
    stations: z.array(stationSchema).min(1),
    press: z.strictObject({
      pressureBar: z.number().positive().max(10),
      dwellC: z.number().min(15).max(160),
      demouldBelowC: z.number().min(20).max(90),
      restHours: z.number().nonnegative(),
      heating: heatingSchema.exactOptional(),
      cassette: cassetteSchema.exactOptional(),
      panel: panelSchema.exactOptional(),
    }),
    wood: z
      .strictObject({
        moistureFromPercent: percent,
        moistureToPercent: percent,
        restDays: z.number().nonnegative(),
        roomHumidityFromPercent: percent,
        roomHumidityToPercent: percent,
      })
      .exactOptional(),
    resin: z.strictObject({
      tolerancePercent: z.number().positive().max(20),
      workingMinutes: z.number().positive(),
      atC: z.number(),
      roomFromC: z.number(),
      roomToC: z.number(),
      maxBatchG: z.number().positive(),
    }),
    surfacePreparation: z.array(text).min(1),
    printFace: z.enum(["top", "under"]),
  })
  .refine(({ stations }) => new Set(stations.map(({ station }) => station)).size === stations.length, {
    error: "each station stands once",
    path: ["stations"],
  });

export type Recipe = Omit<z.output<typeof recipeFileSchema>, "about">;
