import { permit } from "#auth";
import type { Tx } from "#data/client";
import { eventsOf } from "#data/events";
import { type IncidentRecord, incidentById, recentIncidents } from "#data/incidents";
import { translated } from "#data/transaction";
import type { IncidentId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { noticeView } from "#services/letters/notices";
import { readable } from "#services/readable";
import { eventView } from "#shop/names/common-view";
import type { IncidentSummary, IncidentView } from "./views";

const most = 100;

/** Newest first, at most a hundred. */
export async function listIncidents(ctx: Context): Promise<Outcome<readonly IncidentSummary[]>> {
  const allowed = permit(ctx.actor, "queue.read");
  if (!allowed.ok) return allowed;
  return accept((await translated(recentIncidents(ctx.db, most))).map(summary));
}

export async function readIncident(
  ctx: Context,
  input: { readonly incidentId: IncidentId },
): Promise<Outcome<IncidentView>> {
  const allowed = permit(ctx.actor, "queue.read");
  if (!allowed.ok) return allowed;
  const read = await readable(incidentById(ctx.db, input.incidentId));
  if (!read.ok) return read;
  const incident = read.value;
  if (incident === null) return refuse({ code: "not-found", what: "incident", id: input.incidentId });
  return accept(await incidentView(ctx, ctx.db, incident));
}

/** Letters and their customers are shown only to who may send them. */
export async function incidentView(ctx: Context, client: Tx, incident: IncidentRecord): Promise<IncidentView> {
  const { chosen, decidedAt, closedAt } = incident;
  const history = await eventsOf(client, "incident", [incident.id]);
  return {
    ...summary(incident),
    effect: incident.effect,
    options: incident.options,
    base: incident.base === null ? null : incident.base,
    chosen:
      chosen === null || decidedAt === null
        ? null
        : {
            option: chosen,
            reason: incident.chosenReason ?? "",
            costCents: incident.costCents ?? 0,
            at: decidedAt.toISOString(),
            by: incident.decidedByName ?? "",
          },
    closed: closedAt === null ? null : { at: closedAt.toISOString(), by: incident.closedByName ?? "" },
    notices: permit(ctx.actor, "notice.send").ok ? incident.notices.map((notice) => noticeView(notice, null)) : [],
    history: history.map(eventView),
  };
}

function summary(incident: IncidentRecord): IncidentSummary {
  return {
    incidentId: incident.id,
    number: `INC-${incident.number}`,
    state: incident.state,
    version: incident.version,
    input: incident.input,
    note: incident.note,
    crossing: incident.effect.crossing.length,
    reportedAt: incident.reportedAt.toISOString(),
    reportedBy: incident.reportedByName,
  };
}
