/** The shop of a simulated year: its people at any moment, its days, and one way to do what changes the queue. */
import { expect } from "vitest";
import { type Actor, systemActor } from "#auth";
import type { Db } from "#data/client";
import { hashText, keyedDraw, unitFromU32 } from "#engine/math";
import { addWorkingDays, dateOfShopMinute, shopMinute } from "#engine/routing";
import type { IsoDate, Outcome } from "#engine/units";
import { type Context, queueRevision } from "#services";
import { floorCatalog } from "#shop/floor/recipe";
import { instantOfShopMinute, shopMinuteOf } from "#shop/time/shop-time";
import { must, type TestShop } from "../builders/shop";

export interface YearShop {
  readonly db: Db;
  readonly desk: (now: Date) => Context;
  readonly maker: (now: Date) => Context;
  readonly owner: (now: Date) => Context;
  readonly clock: (now: Date) => Context;
  /** Does what changes the queue, which must say so by a higher revision. */
  readonly change: <T>(ctx: Context, act: (ctx: Context) => Promise<Outcome<T>>) => Promise<T>;
}

/** Few runs: what is looked at is that nothing breaks, not fine quantiles. */
const promiseRuns = 20;

export function yearShop(db: Db, shop: TestShop): YearShop {
  const as = (actor: Actor) => (now: Date) => ({ ...shop.as(actor, now), promiseRuns });
  return {
    db,
    desk: as(shop.desk),
    maker: as(shop.maker),
    owner: as(shop.owner),
    clock: as(systemActor("slots")),
    async change(ctx, act) {
      const desk = as(shop.desk)(ctx.now);
      const before = must(await queueRevision(desk));
      const value = must(await act(ctx));
      expect(must(await queueRevision(desk))).toBeGreaterThan(before);
      return value;
    },
  };
}

/** A time of the working day that lies so many working days after a date. */
export function workingTime(date: IsoDate, workingDays: number, hour: number, minute = 0): Date {
  const { hours } = floorCatalog();
  const day = addWorkingDays(hours, date, workingDays);
  return instantOfShopMinute(shopMinute(day, hour * 60 + minute), hours.timeZone);
}

/** The shop's date of an instant. */
export function dateAt(now: Date): IsoDate {
  return dateOfShopMinute(shopMinuteOf(now, floorCatalog().hours.timeZone));
}

/** The same number in [0, 1) for the same words. */
export function chance(...words: readonly (string | number)[]): number {
  return unitFromU32(keyedDraw(2027, hashText(words.join(" ")), 0, 0, 0));
}
