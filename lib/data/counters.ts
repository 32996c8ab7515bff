/** Human numbers and revisions, one row a sequence. Taking one locks its row until the transaction ends. */
import type { Tx } from "./client";

/** First value handed out, where it is not 1. */
const firstValues: Readonly<Record<string, number>> = { quote: 101, order: 301, pair: 401, club: 21 };

export type Sequence = "quote" | "order" | "pair" | "incident" | "club";

/** The next number of a sequence; inside a transaction that rolls back it was never taken. */
export async function nextNumber(tx: Tx, sequence: Sequence): Promise<number> {
  const first = firstValues[sequence] ?? 1;
  const row = await tx.counter.upsert({
    where: { name: sequence },
    create: { name: sequence, value: first },
    update: { value: { increment: 1 } },
  });
  return row.value;
}

const queueRevision = "queue-revision";

/** Says that the queue changed: what was computed from it is computed anew. Also serialises those who change it. */
export async function bumpQueue(tx: Tx): Promise<number> {
  const row = await tx.counter.upsert({
    where: { name: queueRevision },
    create: { name: queueRevision, value: 1 },
    update: { value: { increment: 1 } },
  });
  return row.value;
}

export async function currentQueueRevision(client: Tx): Promise<number> {
  const row = await client.counter.findUnique({ where: { name: queueRevision } });
  return row?.value ?? 0;
}

const demoMark = "demo";

/** Says that what is in here is the demo, invented: only there may be used what exists for it. */
export async function markDemoShop(tx: Tx): Promise<void> {
  await tx.counter.upsert({ where: { name: demoMark }, create: { name: demoMark, value: 1 }, update: {} });
}

export async function isDemoShop(client: Tx): Promise<boolean> {
  return (await client.counter.count({ where: { name: demoMark } })) === 1;
}

/** A write that means nothing, to see that there is one. */
export async function touchCounter(client: Tx, name: string): Promise<void> {
  await client.$executeRaw`
    INSERT INTO counters AS c (name, value) VALUES (${name}, 1)
    ON CONFLICT (name) DO UPDATE SET value = (c.value + 1) % 1000`;
}

/** Claims a day for something that is done once a day. @returns false when it was done, or somebody else does it */
export async function claimDay(client: Tx, name: string, day: string): Promise<boolean> {
  const value = Number(day.replaceAll("-", ""));
  const rows = await client.$queryRaw<unknown[]>`
    INSERT INTO counters AS c (name, value) VALUES (${name}, ${value})
    ON CONFLICT (name) DO UPDATE SET value = ${value} WHERE c.value < ${value}
    RETURNING value`;
  return rows.length === 1;
}
