/** A change of the floor as it is stored: instants in columns, the rest as the engine has it. */
import type { Tx } from "#data/client";
import { insertFloorChange, type NewFloorChange } from "#data/floor-changes";
import type { FloorChange } from "#engine/routing";
import type { Context } from "#services/context";
import { nameOf } from "#services/record";
import { floorCatalog } from "#shop/floor/recipe";
import { instantOfShopMinute } from "#shop/time/shop-time";

export async function storeFloorChange(
  ctx: Context,
  tx: Tx,
  change: FloorChange,
  why: Pick<NewFloorChange, "reason" | "incidentId" | "source" | "costCents"> & { readonly id?: string },
): Promise<void> {
  const { timeZone } = floorCatalog().hours;
  const instant = (minute: number | null) => (minute === null ? null : instantOfShopMinute(minute, timeZone));
  const times =
    change.kind === "rework-factor"
      ? { fromAt: null, toAt: null }
      : { fromAt: instant(change.fromMinute), toAt: instant(change.toMinute) };
  const { fromMinute: _from, toMinute: _to, ...data } = { fromMinute: null, toMinute: null, ...change };
  await insertFloorChange(tx, {
    id: ctx.newId(),
    ...why,
    ...times,
    kind: change.kind,
    data,
    madeAt: ctx.now,
    madeByName: nameOf(ctx.actor),
  });
}
