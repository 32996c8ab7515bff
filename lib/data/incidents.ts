/** What went wrong, and what was decided about it. */
import type { BaseShortage, BreakdownInput, QueueEffect, RemedyOption } from "#schemas/stored/index";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { noticeOrder, readNotice } from "./notices";
import { incidentColumns } from "./records/tables";

const whole = {
  notices: {
    include: noticeOrder,
    orderBy: [{ draftedAt: "asc" }, { id: "asc" }],
  },
} as const satisfies Prisma.IncidentInclude;

function readIncident(row: Prisma.IncidentGetPayload<{ include: typeof whole }>) {
  return {
    ...readRow("incidents", incidentColumns, row, ({ number }) => `INC-${number}`),
    notices: readableRows(row.notices, readNotice),
  };
}

export type IncidentRecord = ReturnType<typeof readIncident>;

export interface NewIncident {
  readonly id: string;
  readonly number: number;
  readonly kind: string;
  readonly input: BreakdownInput;
  readonly note: string;
  readonly effect: QueueEffect;
  readonly options: readonly RemedyOption[];
  readonly base: BaseShortage | null;
  readonly reportedAt: Date;
  readonly reportedByName: string;
}

export async function insertIncident(tx: Tx, incident: NewIncident): Promise<void> {
  const { input, effect, options, base, ...rest } = incident;
  await tx.incident.create({
    data: {
      ...rest,
      state: "open",
      version: 1,
      input: asJson(input),
      effect: asJson(effect),
      options: asJson(options),
      ...(base === null ? {} : { base: asJson(base) }),
    },
  });
}

export async function incidentById(client: Tx, id: string): Promise<IncidentRecord | null> {
  const row = await client.incident.findUnique({ where: { id }, include: whole });
  return row === null ? null : readIncident(row);
}

/** Newest first. */
export async function recentIncidents(client: Tx, take: number): Promise<readonly IncidentRecord[]> {
  const rows = await client.incident.findMany({ include: whole, orderBy: { number: "desc" }, take });
  return readableRows(rows, readIncident);
}

/** False when somebody decided before. */
export async function decideIncident(
  tx: Tx,
  id: string,
  version: number,
  decision: {
    readonly chosen: string;
    readonly reason: string;
    readonly costCents: number;
    readonly at: Date;
    readonly by: string;
  },
): Promise<boolean> {
  const { count } = await tx.incident.updateMany({
    where: { id, version, state: "open" },
    data: {
      state: "decided",
      chosen: decision.chosen,
      chosenReason: decision.reason,
      costCents: decision.costCents,
      decidedAt: decision.at,
      decidedByName: decision.by,
      version: { increment: 1 },
    },
  });
  return count === 1;
}

/** False when it was closed or changed before. */
export async function markIncidentClosed(
  tx: Tx,
  id: string,
  from: { readonly state: string; readonly version: number },
  closed: { readonly at: Date; readonly by: string },
): Promise<boolean> {
  const { count } = await tx.incident.updateMany({
    where: { id, ...from },
    data: { state: "closed", closedAt: closed.at, closedByName: closed.by, version: { increment: 1 } },
  });
  return count === 1;
}

/** Takes back what the incident itself does to the floor; what was decided about it stays. Returns how many changes. */
export async function withdrawIncidentChanges(
  tx: Tx,
  incidentId: string,
  how: { readonly at: Date; readonly by: string; readonly reason: string },
): Promise<number> {
  const { count } = await tx.floorChange.updateMany({
    where: { incidentId, source: "incident", withdrawnAt: null },
    data: { withdrawnAt: how.at, withdrawnByName: how.by, withdrawReason: how.reason },
  });
  return count;
}
