import { z } from "zod";
import { about, distinctBy, id, label, sentence } from "./shared";

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
    .array(z.strictObject({ station: id, cautions: z.array(cautionSchema).min(1) }))
    .superRefine(distinctBy((station) => station.station)),
});

/** What is said at each station. */
export type Safety = Omit<z.output<typeof safetyFileSchema>, "about">;
