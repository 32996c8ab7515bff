import { permit } from "#auth";
import { bumpQueue } from "#data/counters";
import { clearIncidentHolds } from "#data/holds";
import { incidentById, markIncidentClosed, withdrawIncidentChanges } from "#data/incidents";
import { transaction } from "#data/transaction";
import type { IncidentId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { eventOf, nameOf } from "#services/record";
import { incidentView } from "./read-incidents";
import type { IncidentView } from "./views";

/** It is over: the press runs, the person is back, the material is here. What was decided about it stays in force. */
export async function closeIncident(
  ctx: Context,
  input: { readonly incidentId: IncidentId; readonly version: number },
): Promise<Outcome<IncidentView>> {
  const allowed = permit(ctx.actor, "incident.report");
  if (!allowed.ok) return allowed;
  const id = input.incidentId;
  const incident = await incidentById(ctx.db, id);
  if (incident === null) return refuse({ code: "not-found", what: "incident", id });
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    const how = { at: ctx.now, by: nameOf(ctx.actor) };
    const { state } = incident;
    const isClosed =
      state !== "closed" &&
      (await moveState(
        tx,
        { kind: "incident", from: state, to: "closed" },
        () => markIncidentClosed(tx, id, { state, version: input.version }, how),
        async () => {
          const changes = await withdrawIncidentChanges(tx, id, { ...how, reason: "over" });
          const holds = await clearIncidentHolds(tx, id, how);
          return [eventOf(ctx, "incident-closed", { kind: "incident", id }, { changes, holds })];
        },
      ));
    if (!isClosed) return refuse({ code: "changed-meanwhile", what: "incident", id, version: input.version });
    const after = await incidentById(tx, id);
    if (after === null) throw new Error(`incident ${id} was there a moment ago`);
    return accept(await incidentView(ctx, tx, after));
  });
}
