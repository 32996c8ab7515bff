/** The floor's own record as the engine learns from it: whole days only, up to the last midnight of the shop. */
import type { Tx } from "#data/client";
import { type FloorChangeRecord, floorChangeIn } from "#data/floor-changes";
import { type FloorTick, floorChangesSince, floorTicks, reworkEvents } from "#data/floor-ticks";
import type { BuildCatalog } from "#engine/configuration";
import type { FloorHistory, FloorRedo, FloorVisit } from "#engine/floor-learning";
import {
  dateOfDay,
  dateOfShopMinute,
  dayIndex,
  type FloorCatalog,
  isWorkingDay,
  shopMinute,
  workingDaysBetween,
} from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { handbookCatalog, releasedCatalog } from "#shop/catalogue/current";
import { routeOf } from "#shop/floor/facts";
import { instantOfShopMinute, shopDay, shopMinuteOf } from "#shop/time/shop-time";

/** What was begun in the working days looked back at. */
export async function floorHistory(client: Tx, now: Date): Promise<FloorHistory> {
  const { floor, floorLearning } = handbookCatalog();
  const { timeZone } = floor.hours;
  const today = shopDay(now, timeZone);
  const toMinute = shopMinute(today, 0);
  const fromMinute = shopMinute(daysBack(floor, today, floorLearning.lookBackWorkingDays), 0);
  const [from, to] = [fromMinute, toMinute].map((minute) => instantOfShopMinute(minute, timeZone)) as [Date, Date];
  const [ticks, redone, changes] = await Promise.all([
    floorTicks(client, from, to),
    reworkEvents(client, from, to),
    floorChangesSince(client, from),
  ]);
  const builds = await buildsOf(client, ticks);
  const planned = changes.map((change) => isPlanned(change, floor, floorLearning.plannedAheadWorkingDays));
  const first = ticks[0]?.startedAt;
  return {
    // A shop that has kept its record for a month says nothing about the months before.
    fromMinute: first == null ? fromMinute : shopMinute(dateOfShopMinute(shopMinuteOf(first, timeZone)), 0),
    toMinute,
    visits: ticks.flatMap((each) => visitOf(each, builds.get(each.pair.releaseHash), toMinute, timeZone)),
    redos: redone.flatMap(({ facts, subjectId, at }): readonly FloorRedo[] =>
      facts.kind === "rework-started"
        ? [{ pair: subjectId, from: facts.data.from, atMinute: shopMinuteOf(at, timeZone) }]
        : [],
    ),
    // The plan knows of an absence that was planned: only what came as a surprise is a loss.
    changes: changes
      .filter(({ data }, index) => isOfHours(data.kind) || !planned[index])
      .map((change) => floorChangeIn(change, (at) => shopMinuteOf(at, timeZone))),
    plannedShut: changes.flatMap((change, index) => (planned[index] ? daysShut(change, floor) : [])),
  };
}

function daysBack(floor: FloorCatalog, today: IsoDate, count: number): IsoDate {
  let day = dayIndex(today);
  for (let left = count; left > 0; ) {
    day -= 1;
    if (isWorkingDay(floor.hours, dateOfDay(day))) left -= 1;
  }
  return dateOfDay(day);
}

async function buildsOf(client: Tx, ticks: readonly FloorTick[]): Promise<ReadonlyMap<string, BuildCatalog>> {
  const builds = new Map<string, BuildCatalog>();
  for (const hash of new Set(ticks.map(({ pair }) => pair.releaseHash))) {
    const catalog = await releasedCatalog(client, hash);
    if (catalog !== null) builds.set(hash, catalog.build);
  }
  return builds;
}

/** A visit that ended after the last midnight counts as open: whole days are looked at. */
function visitOf(
  { pairId, pair, station, startedAt, startedByName, finishedAt, minutesShare }: FloorTick,
  build: BuildCatalog | undefined,
  toMinute: number,
  timeZone: string,
): readonly FloorVisit[] {
  if (startedAt === null || build === undefined) return [];
  const endMinute = finishedAt === null ? null : shopMinuteOf(finishedAt, timeZone);
  return [
    {
      pair: pairId,
      station,
      startMinute: shopMinuteOf(startedAt, timeZone),
      endMinute: endMinute === null || endMinute > toMinute ? null : endMinute,
      by: startedByName,
      extraMinutes: routeOf(pair.spec, build)
        .extraMinutes.filter((extra) => extra.station === station)
        .reduce((sum, { minutes }) => sum + minutes, 0),
      share: minutesShare ?? 1,
    },
  ];
}

const isOfHours = (kind: string) => kind === "shop-closed" || kind === "overtime";

/** Entered so many working days before it began. */
function isPlanned({ fromAt, madeAt }: FloorChangeRecord, { hours }: FloorCatalog, ahead: number): boolean {
  if (fromAt === null) return false;
  const [made, from] = [shopDay(madeAt, hours.timeZone), shopDay(fromAt, hours.timeZone)];
  return workingDaysBetween(hours, made, from) >= ahead;
}

/** Days of a closure of the whole shop. */
function daysShut({ data, fromAt, toAt }: FloorChangeRecord, { hours }: FloorCatalog): readonly IsoDate[] {
  if (data.kind !== "shop-closed" || fromAt === null || toAt === null) return [];
  const first = dayIndex(shopDay(fromAt, hours.timeZone));
  const last = dayIndex(shopDay(new Date(toAt.getTime() - 1), hours.timeZone));
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => dateOfDay(first + index));
}
