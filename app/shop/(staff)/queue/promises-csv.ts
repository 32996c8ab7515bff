/** The list of promises in its order, and as it is taken away: all of it, whatever page is shown. */
import type { Cell } from "#app/_ui/csv.ts";
import type { QueuePair } from "#services";

/** Exact for two hundred runs: 89.5 is not safe and must not read as 90, which is. */
export const percent = (share: number) => Math.round(share * 1000) / 10;

/** The tightest first; without a promise last. */
export function bySlack(pairs: readonly QueuePair[]): readonly QueuePair[] {
  return [...pairs].sort((a, b) => (a.slackDays ?? 1e6) - (b.slackDays ?? 1e6) || a.serial.localeCompare(b.serial));
}

export const promisesHead = [
  "pair",
  "model",
  "length_cm",
  "station",
  "done",
  "of",
  "planned_ready",
  "half_by",
  "nine_of_ten_by",
  "promised_on",
  "promise_class",
  "slack_days",
  "standing",
  "kept_percent",
] as const;

export const promiseCells = (row: QueuePair): readonly Cell[] => [
  row.serial,
  row.modelName,
  row.lengthCm,
  row.now?.stationNumber ?? "",
  row.doneOperations,
  row.allOperations,
  row.plannedReady ?? "",
  row.expected?.p50 ?? "",
  row.expected?.p90 ?? "",
  row.promisedOn ?? "",
  row.promiseClass,
  row.slackDays ?? "",
  row.standing,
  row.chanceKept === null ? "" : percent(row.chanceKept),
];
