/** safety.json: the hazards of making, selling and carrying skis, and where each is told. */
import { z } from "zod";
import {
  allStationRoles,
  cautionIcons,
  cautionLabels,
  cautionPages,
  cautionPapers,
  type Hazard,
  type StationRole,
} from "#engine/floor";
import { about, distinctBy, id, label, modelUseSchema, sentence } from "./shared";

const roles = z.enum(allStationRoles as readonly [StationRole, ...StationRole[]]);
const places = <T extends string>(of: readonly [T, ...T[]]) => z.array(z.enum(of)).default([]);

const hazardSchema = z
  .strictObject({
    id,
    icon: z.enum(cautionIcons),
    /** One line for the station's screen, the page and the paper. */
    line: z.string().min(5).max(100),
    full: sentence,
    reference: label,
    stations: z.array(roles).default([]),
    pages: places(cautionPages),
    papers: places(cautionPapers),
    labels: places(cautionLabels),
    onlyFor: z
      .strictObject({
        uses: z.array(modelUseSchema).min(1).exactOptional(),
        offPisteFromPercent: z.number().min(0).max(100).exactOptional(),
        belowAgeYears: z.int().min(1).max(120).exactOptional(),
      })
      .refine((only) => Object.keys(only).length > 0, { error: "says for whom" })
      .exactOptional(),
  })
  .refine(({ stations, pages, papers, labels }) => stations.length + pages.length + papers.length + labels.length > 0, {
    error: "is told somewhere",
  })
  .refine(({ onlyFor, stations, labels }) => onlyFor === undefined || stations.length + labels.length === 0, {
    error: "what holds for some skis alone is told on pages and papers; a station works on all of them",
  }) satisfies z.ZodType<Hazard>;

export const safetyFileSchema = z.strictObject({
  about,
  /** Said with every full text. */
  localRules: sentence,
  /** Month and day, `MM-DD`, on which the shop's season begins: everybody is asked for a yes again. */
  seasonStartsOn: z.string().regex(/^(0[1-9]|1[0-2])-(0[1-9]|1\d|2[0-8])$/),
  hazards: z
    .array(hazardSchema)
    .min(1)
    .superRefine(distinctBy((hazard) => hazard.id)),
});

/** What is said where something can hurt. */
export type Safety = Omit<z.output<typeof safetyFileSchema>, "about">;
