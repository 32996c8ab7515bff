/**
 * The hands of the floor: they begin what the board's plan begins now and end what takes its real time. The plan says when;
 * nothing here knows of capacities, crew, presses or what comes before what.
 */

import { dayIndex, minutesPerDay } from "#engine/routing";
import { nextOpen, workCalendar, workEnd, workMinutesBefore } from "#engine/schedule";
import type { IsoDate } from "#engine/units";
import { shopCalendar } from "#lib/engine/routing/floor-problem";
import {
  finishOperation,
  type OperationId,
  type QueueCell,
  queueBoard,
  queueRevision,
  startOperation,
} from "#services";
import { floorCatalog } from "#shop/floor/recipe";
import { instantOfShopMinute, shopMinuteOf } from "#shop/time/shop-time";
import { must } from "../builders/shop";
import { chance, type YearShop } from "./year-shop";

export interface FloorHands {
  /** Ends and begins what is due. Returns when something is due next; null when nothing is. */
  readonly work: (now: Date) => Promise<Date | null>;
  readonly ticks: () => number;
}

interface Running {
  readonly operationId: OperationId;
  readonly version: number;
  readonly endsAt: Date;
}

const pressStation = "press";

export function floorHands(shop: YearShop, firstDay: IsoDate): FloorHands {
  const floor = floorCatalog();
  const zone = floor.hours.timeZone;
  const calendar = workCalendar([shopCalendar(floor, dayIndex(firstDay))]);
  const origin = dayIndex(firstDay) * minutesPerDay;
  const minuteOf = (instant: Date | string) => shopMinuteOf(new Date(instant), zone) - origin;
  let running: Running[] = [];
  let ticks = 0;
  let planned: { readonly revision: number; readonly next: Date | null } | null = null;

  /** Planned work takes 0.8 to 1.3 times as long; a press runs its cycle and is opened when somebody is there. */
  function realEnd({ startsAt, endsAt, freeAt, station, operationId }: QueueCell): Date {
    const [start, end] = [minuteOf(startsAt), minuteOf(endsAt)];
    const planned = workMinutesBefore(calendar, end) - workMinutesBefore(calendar, start);
    const minutes = Math.max(1, Math.round(planned * (0.8 + 0.5 * chance("work", operationId))));
    const minute = station === pressStation ? nextOpen(calendar, minuteOf(freeAt)) : workEnd(calendar, start, minutes);
    return instantOfShopMinute(origin + minute, zone);
  }

  async function end(now: Date): Promise<void> {
    const due = running.filter(({ endsAt }) => endsAt <= now);
    running = running.filter(({ endsAt }) => endsAt > now);
    for (const { operationId, version } of due) {
      // Work that was broken off meanwhile, because the ski is built again, is nobody's any more.
      const { state } = await shop.db.operation.findUniqueOrThrow({ where: { id: operationId } });
      if (state === "redo") continue;
      await shop.change(shop.maker(now), (ctx) => finishOperation(ctx, { operationId, version }));
      ticks += 1;
    }
  }

  return {
    ticks: () => ticks,
    async work(now) {
      const isDue = planned?.next != null && planned.next <= now;
      if (!isDue && planned?.revision === must(await queueRevision(shop.maker(now)))) return planned.next;
      await end(now);
      const board = must(await queueBoard(shop.maker(now), { days: 7 }));
      const ready = board.days.flatMap(({ cells }) => cells).filter(({ state }) => state === "ready");
      for (const cell of ready.filter(({ startsAt }) => new Date(startsAt) <= now)) {
        const { operationId } = cell;
        const { version } = await shop.db.operation.findUniqueOrThrow({ where: { id: operationId } });
        const begun = await shop.change(shop.maker(now), (ctx) => startOperation(ctx, { operationId, version }));
        running.push({ operationId, version: begun.version, endsAt: realEnd(cell) });
        ticks += 1;
      }
      const times = [
        ...running.map(({ endsAt }) => endsAt),
        ...ready.map(({ startsAt }) => new Date(startsAt)).filter((startsAt) => startsAt > now),
      ];
      const next = times.length === 0 ? null : new Date(Math.min(...times.map(Number)));
      planned = { revision: must(await queueRevision(shop.maker(now))), next };
      return next;
    },
  };
}
