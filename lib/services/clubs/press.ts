/** The club's pairs in the press plan: neighbours with one mould are one group. */
import { planQueue } from "#engine/routing";
import type { Context } from "#services/context";
import { floorCatalog } from "#shop/floor/recipe";
import { plannedSituation } from "#shop/queue/runs";
import { instantOfShopMinute } from "#shop/time/shop-time";
import type { ClubPressGroup } from "./views";

/** @param serials of the club's pairs by pair id @throws Error when the queue does not fit the floor */
export async function clubPress(
  ctx: Context,
  serials: ReadonlyMap<string, string>,
): Promise<readonly ClubPressGroup[]> {
  if (serials.size === 0) return [];
  const plan = planQueue(await plannedSituation(ctx.db, ctx.now));
  if (!plan.ok) throw new Error(`the queue does not fit the floor: ${plan.refusal.code}`);
  const { timeZone } = floorCatalog().hours;
  const groups: (ClubPressGroup & { readonly serials: string[] })[] = [];
  const lastOn = new Map<string, (typeof groups)[number] | null>();
  for (const { pairId, press, mould, startMinute } of plan.value.pressPlan.toSorted(
    (a, b) => a.startMinute - b.startMinute,
  )) {
    const serial = serials.get(pairId);
    const before = lastOn.get(press) ?? null;
    if (serial === undefined) {
      // Somebody else's pair with another mould ends a group; one with the same mould does not change it.
      if (before !== null && before.mould !== mould) lastOn.set(press, null);
      continue;
    }
    if (before !== null && before.mould === mould) {
      before.serials.push(serial);
      continue;
    }
    const from = instantOfShopMinute(startMinute, timeZone).toISOString();
    const group = { mould, press, from, serials: [serial] };
    groups.push(group);
    lastOn.set(press, group);
  }
  return groups;
}
