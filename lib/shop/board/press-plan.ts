/** The press by days: pairs that may be pressed, with the changes of mould that this order costs. */
import { dayIndex, type FloorCatalog, weekdayOf } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { openConditions } from "#shop/queue/on-floor";
import type { FloorPlan } from "#shop/queue/plan";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import { shopClock, shopDay } from "#shop/time/shop-time";
import type { PressDay, PressSlot } from "./views";

/** A pair that waits for its customer is left out; who follows it is counted from the mould that is really mounted. */
export function pressDays(plan: FloorPlan, pairs: readonly PairInQueue[], floor: FloorCatalog): readonly PressDay[] {
  const zone = floor.hours.timeZone;
  const byId = new Map(pairs.map((pair) => [pair.id, pair] as const));
  const byDay = new Map<IsoDate, PressSlot[]>();
  const mounted = new Map<string, string | null>();
  const leftOut = new Set<string>();
  for (const slot of plan.pressPlan) {
    const pair = byId.get(slot.pairId);
    if (pair === undefined || openConditions(pair).length > 0) {
      leftOut.add(slot.press);
      continue;
    }
    const before = mounted.get(slot.press) ?? null;
    const followsGap = leftOut.delete(slot.press);
    mounted.set(slot.press, slot.mould);
    const date = shopDay(slot.startsAt, zone);
    const slots = byDay.get(date) ?? [];
    byDay.set(date, slots);
    slots.push({
      press: floor.presses.find(({ id }) => id === slot.press)?.label ?? slot.press,
      pairId: slot.pairId,
      serial: pair.serial,
      mould: slot.mould,
      startsAt: slot.startsAt.toISOString(),
      endsAt: slot.endsAt.toISOString(),
      changeoverMinutes:
        followsGap && before !== null ? changeoverBetween(before, slot.mould, floor) : slot.changeoverMinutes,
      isFixed: slot.isFixed,
      curesPastClosing: isPastClosing(date, slot.endsAt, floor),
    });
  }
  return [...byDay].map(([date, slots]) => ({ date, slots }));
}

function changeoverBetween(from: string, to: string, floor: FloorCatalog): number {
  const { sameMould, sameFamily, otherFamily, hotExtra } = floor.changeoverMinutes;
  if (from === to) return sameMould;
  const family = (id: string) => floor.moulds.find((mould) => mould.id === id)?.family;
  const hot = floor.presses.some(({ kind }) => kind === "heated") ? hotExtra : 0;
  return (family(from) === family(to) ? sameFamily : otherFamily) + hot;
}

/** By the usual hours: an evening of overtime is shown as what it is. */
function isPastClosing(date: IsoDate, endsAt: Date, { hours }: FloorCatalog): boolean {
  const [day = "", time = ""] = shopClock(endsAt, hours.timeZone).split("T");
  if (day !== date) return true;
  const isWorking = hours.workingWeekdays.includes(weekdayOf(dayIndex(date)));
  const closing = isWorking ? Math.max(...hours.windows.map(({ toMinute }) => toMinute)) : 0;
  const [hour = 0, minute = 0] = time.split(":").map(Number);
  return hour * 60 + minute > closing;
}
