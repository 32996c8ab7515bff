/** Date ranges as they were told. */
import { z } from "zod";
import type { DateDriver } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { amount, listOf, storedDay, storedInstant, storedStation, words } from "./common";

/** When a pair would be ready: half of such orders by `p50`, nine of ten by `p90`. */
export interface DateRange {
  readonly p50: IsoDate;
  readonly p90: IsoDate;
  /** Not in what was stored before these were told. */
  readonly p10?: IsoDate;
  readonly p80?: IsoDate;
  readonly p95?: IsoDate;
  /** Share of the futures that are ready by the close of these two days; not in what was stored before it was told. */
  readonly shares?: DayShares;
  readonly workingDays: { readonly p50: number; readonly p90: number };
  /** What the days are spent on, largest first. */
  readonly drivers: readonly ToldDriver[];
  /** Enough to compute the very same range again. */
  readonly basis: RunsBasis;
}

/** From 0 to 1. */
export interface DayShares {
  readonly p50: number;
  readonly p80?: number;
  readonly p90: number;
}

/** The two days of a range, with their shares where these were told. */
export interface ExpectedDays {
  readonly p50: IsoDate;
  readonly p90: IsoDate;
  readonly shares?: DayShares;
}

/** What the days are spent on, with the station's name as its floor has it: not every floor's stations have words of their own. */
export interface ToldDriver extends DateDriver {
  readonly stationName?: string;
}

/** Which runs of which queue a date came from. `at` is an instant as ISO 8601 text in UTC. */
export interface RunsBasis {
  readonly queueRevision: number;
  readonly runs: number;
  readonly seed: number;
  readonly at: string;
  /** The floor's book in force; absent: the settings alone. */
  readonly floorBook?: string;
}

const driver = z.object({
  code: z.enum([
    "work",
    "rest-and-cure",
    "press-queue",
    "mould",
    "crew",
    "station-queue",
    "proof",
    "deposit",
    "material",
    "other-wait",
    "rework-and-shocks",
  ]),
  workingDays: amount,
  station: storedStation.exactOptional(),
  stationName: words.exactOptional(),
  mould: words.exactOptional(),
  untilDate: storedDay.exactOptional(),
  mouldDays: listOf(storedDay).exactOptional(),
}) satisfies z.ZodType<ToldDriver>;

export const runsBasis = z.object({
  queueRevision: amount,
  runs: amount,
  seed: amount,
  at: storedInstant,
  floorBook: words.exactOptional(),
}) satisfies z.ZodType<RunsBasis>;

export const storedShares = z.object({
  p50: amount,
  p80: amount.exactOptional(),
  p90: amount,
}) satisfies z.ZodType<DayShares>;

export const storedDateRange = z.object({
  p50: storedDay,
  p90: storedDay,
  p10: storedDay.exactOptional(),
  p80: storedDay.exactOptional(),
  p95: storedDay.exactOptional(),
  shares: storedShares.exactOptional(),
  workingDays: z.object({ p50: amount, p90: amount }),
  drivers: listOf(driver),
  basis: runsBasis,
}) satisfies z.ZodType<DateRange>;
