import type { PairSpec } from "#engine/configuration";
import { type OperationState, openPairStates, type ProofIssueState, pairStatesOnFloor } from "#engine/floor";
import type { Price } from "#engine/pricing";
import type { OrderId, PairId } from "#engine/units";
import type { RightsBasis } from "#schemas/stored/index";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import {
  type OperationRecord,
  type PairRecord,
  type QueuedPairRecord,
  queuedPair,
  readOperation,
  readPair,
  readQueued,
  wholePair,
} from "./records/pair";
import { pairColumns } from "./records/tables";

export type { OperationRecord, PairRecord, ProofRecord, QueuedPairRecord } from "./records/pair";

export interface NewPair {
  readonly id: string;
  readonly orderId: string;
  readonly quoteId: string;
  readonly serialNumber: number;
  readonly serial: string;
  readonly spec: PairSpec;
  readonly specHash: string;
  readonly releaseHash: string;
  readonly skierName: string;
  readonly mould: string;
  readonly rightsNeeded: boolean;
  readonly rightsAt: Date | null;
  readonly rights: RightsBasis | null;
  readonly proofNeeded: boolean;
  readonly createdAt: Date;
  readonly skis: readonly { readonly id: string; readonly side: "L" | "R"; readonly serial: string }[];
  readonly operations: readonly { readonly id: string; readonly station: string; readonly position: number }[];
}

export async function insertPair(tx: Tx, pair: NewPair): Promise<void> {
  const { skis, operations, rights, ...rest } = pair;
  await tx.pair.create({
    data: {
      ...rest,
      state: "waiting",
      version: 1,
      revision: 1,
      proofState: "none",
      queuedAt: pair.createdAt,
      spec: asJson(pair.spec),
      ...(rights === null ? {} : { rights: asJson(rights) }),
    },
  });
  await tx.ski.createMany({ data: skis.map((ski) => ({ ...ski, pairId: pair.id, state: "good" })) });
  await tx.operation.createMany({
    data: operations.map((operation) => ({ ...operation, pairId: pair.id, visit: 0, state: "blocked", version: 1 })),
  });
}

export async function insertPairRevision(
  tx: Tx,
  revision: {
    readonly pairId: string;
    readonly revision: number;
    readonly spec: PairSpec;
    readonly specHash: string;
    readonly price: Price;
    readonly reason: string;
    readonly createdAt: Date;
    readonly createdByName: string;
  },
): Promise<void> {
  await tx.pairRevision.create({
    data: { ...revision, spec: asJson(revision.spec), price: asJson(revision.price) },
  });
}

export async function pairById(client: Tx, id: string): Promise<PairRecord | null> {
  const row = await client.pair.findUnique({ where: { id }, include: wholePair });
  return row === null ? null : readPair(row);
}

/** The order a pair is of, by its plain column; null when there is no such pair. */
export async function orderOfPair(client: Tx, id: string): Promise<OrderId | null> {
  const row = await client.pair.findUnique({ where: { id }, select: { id: true, orderId: true } });
  return row === null ? null : readRow("pairs", pairColumns, row, () => id).orderId;
}

export async function pairBySerialNumber(client: Tx, serialNumber: number): Promise<PairRecord | null> {
  const row = await client.pair.findUnique({ where: { serialNumber }, include: wholePair });
  return row === null ? null : readPair(row);
}

/** What still needs the floor; nobody stands behind an order that is not confirmed. */
const open = {
  state: { in: [...openPairStates] },
  order: { confirmedAt: { not: null } },
} satisfies Prisma.PairWhereInput;

/** Every pair that still needs the floor, in the order it took its place. */
export async function openPairs(client: Tx): Promise<readonly QueuedPairRecord[]> {
  const rows = await client.pair.findMany({
    where: open,
    select: queuedPair,
    orderBy: [{ queuedAt: "asc" }, { serialNumber: "asc" }],
  });
  return rows.map(readQueued);
}

export interface OpenPairVersion {
  readonly id: PairId;
  readonly version: number;
  readonly specHash: string;
  readonly order: { readonly slotLostAt: Date | null };
}

/** As {@link openPairs}, only what tells whether anything about them has changed. */
export async function openPairVersions(client: Tx): Promise<readonly OpenPairVersion[]> {
  const rows = await client.pair.findMany({
    where: open,
    select: { id: true, version: true, specHash: true, order: { select: { slotLostAt: true } } },
    orderBy: [{ queuedAt: "asc" }, { serialNumber: "asc" }],
  });
  return rows.map((row) => readRow("pairs", pairColumns, row, ({ id }) => id));
}

export async function countOpenPairs(client: Tx): Promise<number> {
  return client.pair.count({ where: open });
}

export async function searchPairs(client: Tx, text: string) {
  const rows = await client.pair.findMany({
    where: {
      OR: [
        { serial: { contains: text, mode: "insensitive" } },
        { skis: { some: { serial: { contains: text, mode: "insensitive" } } } },
      ],
    },
    select: { id: true, serial: true, mould: true, state: true },
    orderBy: { serialNumber: "desc" },
    take: 20,
  });
  return readableRows(rows, (row) => readRow("pairs", pairColumns, row, ({ serial }) => serial));
}

/** What may change beside the states, which are moved. */
export type PairChange = Omit<
  Prisma.PairUncheckedUpdateManyInput,
  "id" | "version" | "state" | "proofState" | "spec" | "rights"
> & {
  readonly spec?: PairSpec;
  readonly rights?: RightsBasis;
};

/** Changes the pair if it is still at this version; false when someone was first. */
export async function updatePair(tx: Tx, id: string, version: number, change: PairChange): Promise<boolean> {
  const { count } = await tx.pair.updateMany({
    where: { id, version },
    data: { ...columnsOf(change), version: { increment: 1 } },
  });
  return count === 1;
}

/** What the columns hold: JSON as JSON. */
function columnsOf({ spec, rights, ...rest }: PairChange) {
  return {
    ...rest,
    ...(spec === undefined ? {} : { spec: asJson(spec) }),
    ...(rights === undefined ? {} : { rights: asJson(rights) }),
  };
}

/** Moves the pair on if it is still in this state, and at this version where one is named. */
export async function movePair(
  tx: Tx,
  id: string,
  from: { readonly state: string; readonly version?: number },
  to: string,
  change: PairChange = {},
): Promise<boolean> {
  const { count } = await tx.pair.updateMany({
    where: { id, ...from },
    data: { ...columnsOf(change), state: to, version: { increment: 1 } },
  });
  return count === 1;
}

/** Moves what the pair's proof has come to, if it is still that and the pair still at this version. */
export async function moveProof(
  tx: Tx,
  id: string,
  from: { readonly proofState: string; readonly version: number },
  to: string,
  change: PairChange = {},
): Promise<boolean> {
  const { count } = await tx.pair.updateMany({
    where: { id, ...from },
    data: { ...columnsOf(change), proofState: to, version: { increment: 1 } },
  });
  return count === 1;
}

export async function operationById(client: Tx, id: string): Promise<OperationRecord | null> {
  const row = await client.operation.findUnique({ where: { id } });
  return row === null ? null : readOperation(row);
}

const runningVisit = { pair: { select: { id: true, serial: true } } } as const satisfies Prisma.OperationInclude;

function readRunningVisit(row: Prisma.OperationGetPayload<{ include: typeof runningVisit }>) {
  return { ...readOperation(row), pair: readRow("pairs", pairColumns, row.pair, ({ serial }) => serial) };
}

export type RunningVisit = ReturnType<typeof readRunningVisit>;

/** Work under way on the floor, first begun first. */
export async function runningVisits(client: Tx): Promise<readonly RunningVisit[]> {
  const rows = await client.operation.findMany({
    where: { state: "running", pair: { state: { in: [...pairStatesOnFloor] } } },
    include: runningVisit,
    orderBy: [{ startedAt: "asc" }, { id: "asc" }],
  });
  return readableRows(rows, readRunningVisit);
}

export type OperationChange = Omit<Prisma.OperationUncheckedUpdateManyInput, "id" | "version" | "state">;

/** Moves an operation on if it is still in this state and version. */
export async function moveOperation(
  tx: Tx,
  id: string,
  from: { readonly state: string; readonly version: number },
  to: string,
  change: OperationChange = {},
): Promise<boolean> {
  const { count } = await tx.operation.updateMany({
    where: { id, ...from },
    data: { ...change, state: to, version: { increment: 1 } },
  });
  return count === 1;
}

/** Sets which operations are ready or blocked, after something they wait on changed. */
export async function setOperationStates(
  tx: Tx,
  ids: readonly string[],
  from: Extract<OperationState, "blocked" | "ready">,
  to: Extract<OperationState, "blocked" | "ready">,
): Promise<boolean> {
  const { count } = await tx.operation.updateMany({
    where: { id: { in: [...ids] }, state: from },
    data: { state: to, version: { increment: 1 } },
  });
  return count === ids.length;
}

export async function insertProof(
  tx: Tx,
  proof: {
    readonly id: string;
    readonly pairId: string;
    readonly revision: number;
    readonly specHash: string;
    readonly note: string | null;
    readonly issuedAt: Date;
    readonly issuedByName: string;
  },
): Promise<void> {
  await tx.proof.create({ data: { ...proof, state: "issued" } });
}

/** Answers the proof if it still waits for an answer. */
export async function answerProof(
  tx: Tx,
  id: string,
  answer: {
    readonly state: Extract<ProofIssueState, "approved" | "changes-asked">;
    readonly note: string | null;
    readonly at: Date;
    readonly by: string;
  },
): Promise<boolean> {
  const { count } = await tx.proof.updateMany({
    where: { id, state: "issued" },
    data: {
      state: answer.state,
      answeredAt: answer.at,
      answeredByName: answer.by,
      ...(answer.note === null ? {} : { note: answer.note }),
    },
  });
  return count === 1;
}

export async function voidProof(tx: Tx, id: string, from: string): Promise<boolean> {
  const { count } = await tx.proof.updateMany({ where: { id, state: from }, data: { state: "void" } });
  return count === 1;
}

export async function insertTraveller(
  tx: Tx,
  print: {
    readonly id: string;
    readonly pairId: string;
    readonly print: number;
    readonly pairRevision: number;
    readonly specHash: string;
    readonly printedAt: Date;
    readonly printedByName: string;
  },
): Promise<void> {
  await tx.traveller.create({ data: print });
}

/** Voids every valid print of the pair. */
export async function voidTravellers(tx: Tx, pairId: string, reason: string, now: Date): Promise<void> {
  await tx.traveller.updateMany({ where: { pairId, voidedAt: null }, data: { voidedAt: now, voidReason: reason } });
}

/** Nothing of the work is left: what goes with a visit that begins again. */
export const notBegun = {
  startedAt: null,
  startedByName: null,
  finishedAt: null,
  finishedByName: null,
  nextFrom: null,
  press: null,
} as const satisfies OperationChange;

export async function insertSki(
  tx: Tx,
  ski: {
    readonly id: string;
    readonly pairId: string;
    readonly side: "L" | "R";
    readonly serial: string;
    readonly build: number;
  },
): Promise<void> {
  await tx.ski.create({ data: { ...ski, state: "good" } });
}

/** Moves one ski from a state to another; false when it is no longer there. */
export async function moveSki(
  tx: Tx,
  id: string,
  from: string,
  to: { readonly state: string; readonly location: string | null },
): Promise<boolean> {
  const { count } = await tx.ski.updateMany({ where: { id, state: from }, data: to });
  return count === 1;
}

/** Work that is done again: a new row beside the one that was done. */
export async function insertRedoVisits(
  tx: Tx,
  pairId: string,
  visits: readonly {
    readonly id: string;
    readonly station: string;
    readonly position: number;
    readonly visit: number;
    readonly state: string;
    readonly side: "L" | "R" | null;
    readonly minutesShare: number | null;
  }[],
): Promise<void> {
  await tx.operation.createMany({ data: visits.map((visit) => ({ ...visit, pairId, version: 1 })) });
}

/** Running work that failed: its next visit does it again. */
export async function breakOffOperations(tx: Tx, ids: readonly string[]): Promise<boolean> {
  const { count } = await tx.operation.updateMany({
    where: { id: { in: [...ids] }, state: "running" },
    data: { state: "redo", version: { increment: 1 } },
  });
  return count === ids.length;
}

/** Ends the pair's wait for material at a station, when the material has come or is not needed any more. */
export async function endMaterialHolds(
  tx: Tx,
  pairId: string,
  station: string,
  how: { readonly at: Date; readonly by: string },
): Promise<void> {
  await tx.pairHold.updateMany({
    where: { pairId, station, reason: "material", clearedAt: null },
    data: { clearedAt: how.at, clearedByName: how.by },
  });
}

/** Ends the pair's wait for somebody to begin the rebuild of a ski. */
export async function endRebuildHolds(
  tx: Tx,
  pairId: string,
  how: { readonly at: Date; readonly by: string },
): Promise<void> {
  await tx.pairHold.updateMany({
    where: { pairId, reason: "decision", clearedAt: null, incident: { kind: "ski-rebuild" } },
    data: { clearedAt: how.at, clearedByName: how.by },
  });
}

/** Fixes or gives back a press slot, if the pair is still at this version. */
export async function setPressSlot(
  tx: Tx,
  id: string,
  version: number,
  slot: { readonly at: Date; readonly press: string } | null,
): Promise<boolean> {
  const { count } = await tx.pair.updateMany({
    where: { id, version },
    data: { pressSlotAt: slot?.at ?? null, pressSlotPress: slot?.press ?? null, version: { increment: 1 } },
  });
  return count === 1;
}
