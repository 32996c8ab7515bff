/** recipe.json: what the build sheet quotes of the floor beside floor.json, as the shop's own data sheets say. */
import { z } from "zod";
import { formerly, stationRef } from "../earlier-releases";

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

export const recipeFileSchema = z
  .strictObject({
    about: text,
    stations: z.array(stationSchema).min(1),
    press: z.strictObject({
      pressureBar: z.number().positive().max(10),
      dwellC: z.number().min(15).max(160),
      demouldBelowC: z.number().min(20).max(90),
      restHours: z.number().nonnegative(),
    }),
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
