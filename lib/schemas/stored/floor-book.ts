/** Books for the floor: what dates are made with, and what that rests on. */
import { z } from "zod";
import type { FloorBook, FloorLearning } from "#engine/floor-learning";
import { amount, listOf, orNull, storedDay, storedStation, words } from "./common";

/** What a floor's book was made of, as it stood when it was approved. */
export type FloorBookSummary = Omit<FloorLearning, "proposal" | "leftOut" | "enoughPairs">;

const threePoint = z.object({ low: amount, typ: amount, high: amount });
const interval = z.object({ low: amount, high: amount });
const rate = z.object({ trials: amount, failures: amount, assumed: amount, learnt: amount, interval });

export const storedFloorBook = z.object({
  version: words,
  stations: listOf(z.object({ station: storedStation, minutes: threePoint })),
  rework: listOf(z.object({ loop: words, probability: amount })),
  pressDayLostProbability: amount,
  personDayLostProbability: amount,
  sharedShock: z.object({ probability: amount, delayWorkingDays: interval }),
  weekPaceLogSd: amount,
}) satisfies z.ZodType<FloorBook>;

export const storedFloorBookSummary = z.object({
  fromDate: storedDay,
  toDate: storedDay,
  workingDays: amount,
  pairs: amount,
  stations: listOf(
    z.object({
      station: storedStation,
      visits: amount,
      tooShort: amount,
      forgotten: amount,
      assumed: threePoint,
      assumedMeanMinutes: amount,
      takenMeanMinutes: orNull(amount),
      learnt: threePoint,
      learntMeanMinutes: amount,
      interval,
    }),
  ),
  rework: listOf(rate.extend({ loop: words, afterStation: storedStation })),
  pressDays: rate,
  personDays: rate,
  shocks: rate.extend({
    windowWorkingDays: amount,
    standstills: listOf(z.object({ from: storedDay, workingDays: amount })),
    assumedDelay: interval,
    learntDelay: interval,
  }),
  weeks: z.object({ weeks: amount, visits: amount, assumed: amount, learnt: amount, interval }),
}) satisfies z.ZodType<FloorBookSummary>;
