/** doors.json: what guests may ask for in an hour. */
import { z } from "zod";
import { numberIn } from "../fields";
import { about } from "./shared";

const budget = (door: string) =>
  z
    .strictObject({
      each: numberIn({ label: `${door}, one guest an hour`, min: 1, max: 10_000, whole: true }),
      all: numberIn({ label: `${door}, all guests an hour`, min: 1, max: 1_000_000, whole: true }),
    })
    .refine(({ each, all }) => each <= all, {
      error: `${door}: all guests together may not ask for less than one of them`,
      path: ["all"],
    });

export const doorsFileSchema = z.strictObject({
  about,
  /** New sheets. */
  sheet: budget("sheet"),
  quote: budget("quote"),
  /** Orders placed. */
  accept: budget("accept"),
  /** Pictures sent. */
  upload: budget("upload"),
  /** Papers drawn. */
  drawing: budget("drawing"),
  /** Questions to the shop. */
  question: budget("question"),
  /** Codes typed, and letters with a code asked for. */
  code: budget("code"),
});

/** What one guest and all guests may ask for in an hour, by door. */
export type DoorBudgets = Omit<z.output<typeof doorsFileSchema>, "about">;
