/** A pair and what hangs on it, in the selections that are asked for. */
import { nullable, readableRows, readRow, UnreadableRow } from "../columns";
import type { Prisma } from "../generated/client";
import {
  heldStripColumns,
  holdColumns,
  operationColumns,
  orderColumns,
  pairColumns,
  proofColumns,
  revisionColumns,
  skiColumns,
} from "./tables";

const byId = (row: { readonly id: string }) => row.id;
const bySerial = (row: { readonly serial: string }) => row.serial;

type OperationRow = Prisma.OperationGetPayload<object>;
type ProofRow = Prisma.ProofGetPayload<object>;
type HoldRow = Prisma.PairHoldGetPayload<object>;

export const readOperation = (row: OperationRow) => readRow("operations", operationColumns, row, byId);
export type OperationRecord = ReturnType<typeof readOperation>;

export const readProof = (row: ProofRow) => readRow("proofs", proofColumns, row, byId);
export type ProofRecord = ReturnType<typeof readProof>;

const readHold = (row: HoldRow) => readRow("pair_holds", holdColumns, row, byId);
const readStrip = (row: Prisma.StripGetPayload<object>) => readRow("strips", heldStripColumns, row, byId);
const readStripSide = (row: { readonly id: string; readonly side: string | null }) =>
  readRow("strips", heldStripColumns, row, byId);
const readSki = (row: Prisma.SkiGetPayload<object>) => readRow("skis", skiColumns, row, bySerial);

/** Everything that builds the pair. */
export const wholePair = {
  skis: { orderBy: [{ side: "asc" }, { build: "asc" }] },
  operations: { orderBy: [{ position: "asc" }, { visit: "asc" }] },
  proofs: { orderBy: { revision: "asc" } },
  prints: { orderBy: { print: "asc" } },
  revisions: { orderBy: { revision: "asc" } },
  holds: { where: { clearedAt: null }, orderBy: { madeAt: "asc" } },
  heldStrips: { orderBy: [{ side: "asc" }, { position: "asc" }, { id: "asc" }] },
  order: {
    select: {
      id: true,
      number: true,
      state: true,
      version: true,
      customerId: true,
      quoteId: true,
      depositPaidAt: true,
      promisedOn: true,
      promiseClass: true,
      clockStartedAt: true,
      acceptedAt: true,
      confirmedAt: true,
      estimate: true,
      softHoldUntil: true,
      slotLostAt: true,
      slotLostReason: true,
    },
  },
} as const satisfies Prisma.PairInclude;

type WholePairRow = Prisma.PairGetPayload<{ include: typeof wholePair }>;

/** @throws UnreadableRow when anything of it cannot be read */
export function readPair(row: WholePairRow) {
  const revisionName = ({ revision }: { readonly revision: number }) => `${row.serial} revision ${revision}`;
  return {
    ...readRow("pairs", pairColumns, row, bySerial),
    skis: row.skis.map(readSki),
    operations: row.operations.map(readOperation),
    proofs: row.proofs.map(readProof),
    revisions: row.revisions.map((each) => readRow("pair_revisions", revisionColumns, each, revisionName)),
    holds: row.holds.map(readHold),
    heldStrips: row.heldStrips.map(readStrip),
    order: readRow("orders", orderColumns, row.order, ({ number }) => `O-${number}`),
  };
}
export type PairRecord = ReturnType<typeof readPair>;

/** What the plan and the queue's pages need of a pair: no prints, no skis, no prices, nothing of the quote; of strips the side. */
export const queuedPair = {
  id: true,
  orderId: true,
  serialNumber: true,
  serial: true,
  state: true,
  version: true,
  spec: true,
  releaseHash: true,
  skierName: true,
  mould: true,
  proofState: true,
  specLockedAt: true,
  rightsAt: true,
  rightsNeeded: true,
  proofNeeded: true,
  proofAt: true,
  queuedAt: true,
  placeMinute: true,
  pressSlotAt: true,
  pressSlotPress: true,
  createdAt: true,
  operations: wholePair.operations,
  proofs: wholePair.proofs,
  revisions: { select: { pairId: true, revision: true, spec: true, createdAt: true }, orderBy: { revision: "asc" } },
  holds: wholePair.holds,
  heldStrips: { select: { id: true, side: true } },
  order: {
    select: {
      number: true,
      depositPaidAt: true,
      promisedOn: true,
      promiseClass: true,
      clockStartedAt: true,
      slotLostAt: true,
    },
  },
} as const satisfies Prisma.PairSelect;

type QueuedPairRow = Prisma.PairGetPayload<{ select: typeof queuedPair }>;

/** The queue's columns with a specification that may be missing: a pair that cannot be read keeps its place all the same. */
const queuedColumns = { ...pairColumns, spec: nullable(pairColumns.spec) } as const;

function readQueuedPair(row: QueuedPairRow) {
  const revisionName = ({ revision }: { readonly revision: number }) => `${row.serial} revision ${revision}`;
  return {
    ...readRow("pairs", queuedColumns, row, bySerial),
    operations: row.operations.map(readOperation),
    proofs: row.proofs.map(readProof),
    revisions: row.revisions.map((each) => readRow("pair_revisions", revisionColumns, each, revisionName)),
    holds: row.holds.map(readHold),
    heldStrips: row.heldStrips.map(readStripSide),
    order: readRow("orders", orderColumns, row.order, ({ number }) => `O-${number}`),
    unreadable: null,
  };
}

/** What of a pair is known from plain columns when the rest cannot be read: enough to keep its place. */
function readBarely(row: QueuedPairRow, unreadable: UnreadableRow): QueuedPairRecord {
  const plain = { ...row, spec: null, proofState: "none", proofNeeded: false, rightsNeeded: false };
  const [order = null] = readableRows([row.order], (each) => readRow("orders", orderColumns, each, () => row.serial));
  const noPromise = { promisedOn: null, promiseClass: "estimate" } as const;
  return {
    ...readRow("pairs", queuedColumns, plain, bySerial),
    operations: readableRows(row.operations, readOperation),
    proofs: readableRows(row.proofs, readProof),
    revisions: [],
    holds: readableRows(row.holds, readHold),
    heldStrips: readableRows(row.heldStrips, readStripSide),
    order: order ?? { ...row.order, ...noPromise },
    unreadable,
  };
}

/** A pair of the queue. `unreadable` says what is wrong with one that cannot be read; it then has no specification. */
export type QueuedPairRecord = Omit<ReturnType<typeof readQueuedPair>, "unreadable" | Lists> & {
  readonly [Key in Lists]: readonly ReturnType<typeof readQueuedPair>[Key][number][];
} & { readonly unreadable: UnreadableRow | null };
type Lists = "operations" | "proofs" | "revisions" | "holds" | "heldStrips";

/** Never throws for what stands in the row. */
export function readQueued(row: QueuedPairRow): QueuedPairRecord {
  try {
    return readQueuedPair(row);
  } catch (error) {
    if (error instanceof UnreadableRow) return readBarely(row, error);
    throw error;
  }
}
