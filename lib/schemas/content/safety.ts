import { z } from "zod";
import { about, distinctBy, label, sentence } from "./shared";

const cautionSchema = z.strictObject({
  icon: z.enum([
    "gloves",
    "no-gloves",
    "mask",
    "goggles",
    "hearing",
    "hot",
    "fire",
    "dust",
    "crush",
    "blade",
    "two-people",
    "ventilate",
    "wait",
    "note",
  ]),
  /** One line for the station's screen and the build sheet. */
  line: z.string().min(5).max(100),
  full: sentence,
  reference: label,
});

export const safetyFileSchema = z.strictObject({
  about,
  general: z.array(sentence).min(1),
  binding: sentence,
  acknowledge: sentence,
  stations: z
    .array(z.strictObject({ station: z.int().min(1).max(14), cautions: z.array(cautionSchema).min(1) }))
    .superRefine(distinctBy((station) => station.station))
    .refine((stations) => stations.length === 14, { error: "each of the 14 stations needs its cautions" }),
});

/** What is said at each station. */
export type Safety = Omit<z.output<typeof safetyFileSchema>, "about">;
