import { permit } from "#auth";
import type { Tx } from "#data/client";
import { bumpQueue, nextNumber } from "#data/counters";
import { recordEvents } from "#data/events";
import { insertPairHolds } from "#data/holds";
import { incidentById, insertIncident } from "#data/incidents";
import { pairById } from "#data/pairs";
import { transaction } from "#data/transaction";
import type { IncidentId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { Context } from "#services/context";
import { startRework } from "#services/floor/rework";
import { eventOf, nameOf } from "#services/record";
import { type Consequence, consequenceOf, type Hold } from "./consequence";
import { weighed } from "./preview";
import { incidentView } from "./read-incidents";
import { storeFloorChange } from "./store-change";
import type { BreakdownInput, IncidentView } from "./views";

/**
 * Stores what went wrong, so that every date reckons with it from now on. Promises stay as they are.
 *
 * @param input.reportId made with the form, so that a form sent twice is one incident
 */
export async function reportBreakdown(
  ctx: Context,
  input: { readonly reportId: string; readonly breakdown: BreakdownInput; readonly note: string },
): Promise<Outcome<IncidentView>> {
  const allowed = permit(ctx.actor, "incident.report");
  if (!allowed.ok) return allowed;
  const before = await incidentById(ctx.db, input.reportId);
  if (before !== null) return accept(await incidentView(ctx, ctx.db, before));
  const found = await consequenceOf(ctx, input.breakdown);
  if (!found.ok) return found;
  const preview = await weighed(ctx, found.value);
  const begun = await rebuildBegun(ctx, input.breakdown, input.note);
  if (!begun.ok) return begun;
  const consequence = begun.value ? { ...found.value, rebuild: null } : found.value;
  return transaction(ctx.db, async (tx) => {
    // Taken first: whoever sends the same form at the same time waits here and then finds it stored.
    await bumpQueue(tx);
    const twin = await incidentById(tx, input.reportId);
    if (twin !== null) return accept(await incidentView(ctx, tx, twin));
    const { kind } = input.breakdown;
    const note = input.note.trim();
    const number = await nextNumber(tx, "incident");
    await insertIncident(tx, {
      id: input.reportId,
      number,
      kind,
      input: input.breakdown,
      note,
      effect: preview.effect,
      options: preview.options,
      base: preview.base,
      reportedAt: ctx.now,
      reportedByName: nameOf(ctx.actor),
    });
    await storeConsequence(ctx, tx, idOf("incident", input.reportId), consequence, note === "" ? kind : note);
    const crossing = preview.effect.crossing.map(({ serial }) => serial);
    const subject = { kind: "incident", id: input.reportId } as const;
    await recordEvents(tx, [eventOf(ctx, "incident-reported", subject, { number, kind, note, crossing })]);
    const stored = await incidentById(tx, input.reportId);
    if (stored === null) throw new Error(`incident ${input.reportId} was there a moment ago`);
    return accept(await incidentView(ctx, tx, stored));
  });
}

/** Who may rebuild begins it at once; whoever may not stops the pair until somebody does. True when it has begun. */
async function rebuildBegun(ctx: Context, breakdown: BreakdownInput, note: string): Promise<Outcome<boolean>> {
  if (breakdown.kind !== "ski-rebuild" || !permit(ctx.actor, "pair.rework").ok) return accept(false);
  const { pairId, side, fromStation, fault } = breakdown;
  const pair = await pairById(ctx.db, pairId);
  if (pair === null) return refuse({ code: "not-found", what: "pair", id: pairId });
  const started = await startRework(ctx, { pairId, side, fromStation, fault, version: pair.version, note });
  return started.ok ? accept(true) : started;
}

async function storeConsequence(
  ctx: Context,
  tx: Tx,
  incidentId: IncidentId,
  { changes, holds, rebuild }: Consequence,
  note: string,
): Promise<void> {
  for (const change of changes) {
    await storeFloorChange(ctx, tx, change, { reason: note, incidentId, source: "incident", costCents: null });
  }
  // A ski to be made again waits until its rebuild is begun: nobody works on the pair by mistake meanwhile.
  const stopped: readonly Hold[] =
    rebuild === null
      ? holds
      : [{ pairId: rebuild.pairId, reason: "decision", station: rebuild.fromStation, expectedOn: null }];
  await insertPairHolds(
    tx,
    stopped.map((hold) => ({
      ...hold,
      id: ctx.newId(),
      note,
      incidentId,
      madeAt: ctx.now,
      madeByName: nameOf(ctx.actor),
    })),
  );
  await recordEvents(
    tx,
    stopped.map(({ pairId, reason, station, expectedOn }) =>
      eventOf(ctx, "pair-held", { kind: "pair", id: pairId }, { reason, station, expectedOn, incidentId }),
    ),
  );
}
