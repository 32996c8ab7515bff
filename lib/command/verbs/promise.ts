import { readFile } from "node:fs/promises";
import { z } from "zod";
import { resolveSpec } from "#engine/configuration";
import { promiseClasses, states, stationFor } from "#engine/floor";
import {
  dateOfShopMinute,
  type PairOnFloor,
  promiseRuns,
  rangeLevels,
  shopMinute,
  type WaitingOn,
  waitForBought,
  waitReasons,
} from "#engine/routing";
import { accept, type IsoDate, isoDate, type Outcome, refuse } from "#engine/units";
import { catalogue } from "../catalogue";
import { demoQueue } from "../demo-queue";
import { invalidInputs } from "../invalid";
import { verb } from "../verb";
import { flexSpec } from "./schemas";

const minute = z.number().int();
/** A station by its id, or by the number that people know it by. */
const station = z
  .union([z.string().min(1), z.number().int()])
  .transform((given) =>
    typeof given === "string"
      ? given
      : (catalogue().floor.stations.find(({ number }) => number === given)?.id ?? String(given)),
  );
const day = z.iso.date().transform((text) => isoDate(text));

const pairOnFloor = z.strictObject({
  pairId: z.string().min(1),
  route: z.strictObject({
    kind: z.enum(["pair", "print-only"]),
    mould: z.string().nullable(),
    mouldFamily: z.string().nullable(),
    extraMinutes: z.array(z.strictObject({ station, minutes: minute })).default([]),
    hasOwnGraphic: z.boolean().default(false),
    printSheets: z.number().int().min(1).exactOptional(),
  }),
  operations: z
    .array(
      z.strictObject({
        station,
        state: z.enum(states.operation),
        startedAtMinute: minute.exactOptional(),
        doneAtMinute: minute.exactOptional(),
        press: z.string().exactOptional(),
        visit: minute.min(0).exactOptional(),
        minutesShare: z.number().positive().max(1).exactOptional(),
      }),
    )
    .default([]),
  waitingOn: z
    .array(
      z.strictObject({
        reason: z.enum(waitReasons),
        expectedDate: day.exactOptional(),
        holdsUpStation: station,
      }),
    )
    .default([]),
  queuedAtMinute: minute,
  promise: z
    .strictObject({ class: z.enum(promiseClasses), date: day })
    .nullable()
    .default(null),
});

/** Times are minutes of the shop's local clock since 1970-01-01 00:00. */
const queue = z.strictObject({ nowMinute: minute, pairs: z.array(pairOnFloor).max(2000) });

const input = z.strictObject({
  shop: z.union([z.literal("demo"), z.string().min(1), queue]).default("demo"),
  /** The day of the demo queue. */
  today: day.exactOptional(),
  spec: flexSpec,
  ownGraphic: z.boolean().default(false),
  runs: z.number().int().min(1).max(5000).default(400),
  seed: z.number().int().min(0).default(1),
});

type Queue = z.output<typeof queue>;
/** The demo's clock: the morning's first hour of work is over. */
const demoMinuteOfDay = 8 * 60 + 30;

async function queueOf(shop: z.output<typeof input>["shop"], today: IsoDate): Promise<Outcome<Queue>> {
  if (typeof shop === "object") return accept(shop);
  if (shop === "demo") {
    const nowMinute = shopMinute(today, demoMinuteOfDay);
    return accept({ nowMinute, pairs: [...demoQueue(catalogue().floor, today, nowMinute)] as Queue["pairs"] });
  }
  try {
    const parsed = queue.safeParse(JSON.parse(await readFile(shop, "utf8")));
    if (parsed.success) return accept(parsed.data);
    return refuse({ code: "shop-file-invalid", path: "shop", file: shop, invalid: invalidInputs(parsed.error) });
  } catch (error) {
    return refuse({ code: "shop-file-not-readable", path: "shop", file: shop, reason: String(error) });
  }
}

export const promiseVerb = verb({
  name: "promise",
  summary: "a spec and a queue → when one more pair would be ready, from seeded runs of the whole floor",
  input,
  output: z.object({
    ...Object.fromEntries(rangeLevels.map((level) => [level, z.string()])),
    workingDays: z.record(z.string(), z.number()),
    drivers: z.array(
      z.object({
        code: z.string(),
        workingDays: z.number(),
        untilDate: z.string().optional(),
        mouldDays: z.array(z.string()).optional(),
      }),
    ),
  }),
  run: async ({ shop, spec, ownGraphic, runs, seed, ...given }, flags) => {
    const { build } = catalogue();
    const resolved = resolveSpec(spec, build);
    if (!resolved.ok) return resolved;
    const live = await queueOf(shop, given.today ?? flags.today);
    if (!live.ok) return live;
    const { model, reinforcements } = resolved.value;
    const route = {
      kind: "pair",
      mould: model.lengths.find(({ lengthCm }) => lengthCm === spec.lengthCm)?.mould ?? null,
      mouldFamily: model.mouldFamily,
      extraMinutes: reinforcements.flatMap((each) => each.extraMinutes),
      hasOwnGraphic: ownGraphic,
    } as const;
    const { nowMinute, pairs } = live.value;
    const { floor } = catalogue();
    const orderedOn = dateOfShopMinute(nowMinute);
    const waitingOn: readonly WaitingOn[] = [
      ...(ownGraphic ? [{ reason: "proof", holdsUpStation: stationFor(floor, "print").id } as const] : []),
      ...reinforcements.flatMap((part) => waitForBought(part, orderedOn, floor) ?? []),
    ];
    const range = promiseRuns(
      { floor, changes: [], pairs: pairs as readonly PairOnFloor[], now: nowMinute },
      { route, waitingOn },
      { runs, seed },
    );
    if (!range.ok) return range;
    const { dates, workingDays, drivers } = range.value;
    return accept({ ...dates, workingDays, drivers, runs, seed, pairsAhead: pairs.length });
  },
});
