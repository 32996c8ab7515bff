import { permit } from "#auth";
import problems from "#content/copy/problems.json";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { decideIncident, type IncidentRecord, incidentById } from "#data/incidents";
import { pairById } from "#data/pairs";
import { transaction } from "#data/transaction";
import type { IncidentId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { draftNotice } from "#services/letters/draft-notice";
import { moveState } from "#services/move";
import { eventOf, nameOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { skiText } from "#shop/names/ski-text";
import { queuedPairs } from "#shop/queue/situation";
import type { PromiseEffect } from "#shop/queue/views";
import { givePlaces } from "../order/places";
import { colourOffer } from "./colour-offer";
import { delayLetter } from "./delay-letter";
import { incidentView } from "./read-incidents";
import { storeFloorChange } from "./store-change";
import type { IncidentView } from "./views";

const w = problems.breakdowns;

/**
 * The owner picks a way on: it is applied as it was shown, and a letter is drafted for every order that still crosses its
 * promise. No promise moves and no letter goes out by itself. Refuses `reason-missing`, `invalid-field`, `changed-meanwhile`,
 * `no-procedure` for a cure with nobody there once the shop names no written procedure any more.
 */
export async function chooseOption(
  ctx: Context,
  input: {
    readonly incidentId: IncidentId;
    readonly version: number;
    readonly option: string;
    readonly reason: string;
  },
): Promise<Outcome<IncidentView>> {
  const allowed = permit(ctx.actor, "incident.decide");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const incident = await incidentById(ctx.db, input.incidentId);
  if (incident === null) return refuse({ code: "not-found", what: "incident", id: input.incidentId });
  const options = incident.options;
  const option = options.find(({ way }) => way === input.option);
  if (option === undefined) {
    return refuse({ code: "invalid-field", path: "option", message: w.wayOn });
  }
  const open = new Set<string>((await queuedPairs(ctx.db)).map(({ id }) => id));
  if (option.way === "overnight-cure" && currentCatalog().remedies.overnightCure.procedure === null) {
    return refuse({ code: "no-procedure", path: "option" });
  }
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    const { id } = incident;
    const decision = { chosen: option.way, reason, costCents: option.costCents, at: ctx.now, by: nameOf(ctx.actor) };
    const apply = async () => {
      for (const [index, change] of option.changes.entries()) {
        // The cost is that of the whole option: it is counted once.
        const costCents = index === 0 ? option.costCents : null;
        await storeFloorChange(ctx, tx, change, { reason, incidentId: id, source: "option", costCents });
      }
      const places = option.places.filter(({ pairId }) => open.has(pairId));
      if (places.length > 0) await givePlaces(ctx, tx, { decisionId: ctx.newId(), reason, places });
      const offers = option.way === "offer-colour" ? await draftOffers(ctx, tx, incident, open) : new Set<string>();
      const others = option.crossing.filter(({ orderId }) => !offers.has(orderId));
      const letters = offers.size + (await draftLetters(ctx, tx, incident, others, open));
      const data = { option: option.way, reason, costCents: option.costCents, notices: letters };
      return [eventOf(ctx, "incident-decided", { kind: "incident", id }, data)];
    };
    const isDecided =
      incident.state === "open" &&
      (await moveState(
        tx,
        { kind: "incident", from: incident.state, to: "decided" },
        () => decideIncident(tx, id, input.version, decision),
        apply,
      ));
    if (!isDecided) return refuse({ code: "changed-meanwhile", what: "incident", id, version: input.version });
    const after = await incidentById(tx, id);
    if (after === null) throw new Error(`incident ${id} was there a moment ago`);
    return accept(await incidentView(ctx, tx, after));
  });
}

/** One offer an order whose base goes short and for which another colour fits. @returns the orders written to */
async function draftOffers(
  ctx: Context,
  tx: Tx,
  incident: IncidentRecord,
  open: ReadonlySet<string>,
): Promise<ReadonlySet<string>> {
  const written = new Set<string>();
  const base = incident.base === null ? null : incident.base;
  const { moved } = incident.effect;
  for (const need of base?.pairs ?? []) {
    if (base === null || need.isServed || need.alternatives.length === 0 || !open.has(need.pairId)) continue;
    if (written.has(need.orderId)) continue;
    const effect = moved.find(({ pairId }) => pairId === need.pairId) ?? null;
    const pair = await pairById(tx, need.pairId);
    if (pair === null) continue;
    const { body, data } = colourOffer(ctx.now, base, need, skiText(pair.spec), effect);
    await draftNotice(ctx, tx, { orderId: need.orderId, incidentId: incident.id, kind: "colour-offer", body, data });
    written.add(need.orderId);
  }
  return written;
}

/** One letter an order, about its latest pair. Returns how many. */
async function draftLetters(
  ctx: Context,
  tx: Tx,
  incident: IncidentRecord,
  crossing: readonly PromiseEffect[],
  open: ReadonlySet<string>,
): Promise<number> {
  const latest = new Map<string, PromiseEffect>();
  for (const effect of crossing) {
    if (!open.has(effect.pairId)) continue;
    const known = latest.get(effect.orderId);
    if (known === undefined || known.after.p90 < effect.after.p90) latest.set(effect.orderId, effect);
  }
  for (const [orderId, effect] of latest) {
    const { body, data } = delayLetter(ctx.now, incident.kind, effect);
    await draftNotice(ctx, tx, { orderId, incidentId: incident.id, kind: "delay", body, data });
  }
  return latest.size;
}
