/** A letter is only drafted here: a person reads it and sends it, or not. */
import type { Tx } from "#data/client";
import { recordEvents } from "#data/events";
import { insertNotice, type NewNotice } from "#data/notices";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { eventOf, nameOf } from "#services/record";

export async function draftNotice(
  ctx: Context,
  tx: Tx,
  notice: Pick<NewNotice, "orderId" | "incidentId" | "kind" | "body" | "data">,
): Promise<string> {
  const id = idOf("notice", ctx.newId());
  await insertNotice(tx, { ...notice, id, draftedAt: ctx.now, draftedByName: nameOf(ctx.actor) });
  const subject = { kind: "order", id: notice.orderId } as const;
  await recordEvents(tx, [eventOf(ctx, "notice-drafted", subject, { noticeId: id, kind: notice.kind })]);
  return id;
}
