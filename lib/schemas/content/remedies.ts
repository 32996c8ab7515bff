/** remedies.json: what extra capacity costs, and how far each way on from a breakdown goes. */
import { z } from "zod";
import { numberIn, oneOf, textIn } from "../fields";
import { about, id } from "./shared";

const whole = (label: string, min: number, max: number) => numberIn({ label, min, max, whole: true });
const cents = (label: string) => whole(label, 0, 10_000_000);

export const remediesFileSchema = z.strictObject({
  about,
  /** Evenings after closing time, on working days. */
  overtime: z.strictObject({
    centsPerPersonHour: cents("Overtime, cents an hour"),
    evenings: whole("Evenings of overtime", 1, 60),
    minutesAnEvening: whole("Minutes an evening", 15, 360),
  }),
  /**
   * A pair laid up in the evening that cures with nobody there: who stays, at which stations, and the name of the shop's own
   * written procedure. Without a procedure it is offered nowhere.
   */
  overnightCure: z.strictObject({
    procedure: textIn("Written procedure", 3, 120).nullable(),
    people: whole("People who stay", 1, 10),
    stations: z.array(id).min(1),
  }),
  /** One more person, with what comes on top of the wage. */
  hire: z.strictObject({ centsPerWeek: cents("One more person, cents a week") }),
  secondPress: z.strictObject({
    centsPerWeek: cents("A hired press, cents a week"),
    weeks: whole("Weeks of a hired press", 1, 26),
    kind: oneOf("Kind of press", ["heated", "cold"]),
  }),
  /** A pair with this many working days in hand can let another pass. */
  swap: z.strictObject({ slackToLendWorkingDays: whole("Working days in hand", 0, 60) }),
});

export type RemedySettings = Omit<z.output<typeof remediesFileSchema>, "about">;
