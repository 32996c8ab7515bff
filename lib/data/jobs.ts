/**
 * Work that must happen, in a queue inside the database (pg-boss): taken up in the transaction that asks for it, done once by
 * whichever instance comes first, tried again with growing pauses, and given up after the last try. The queue's own tables are
 * in the schema `pgboss`; the queue makes and migrates them itself.
 */
import PgBoss from "pg-boss";
import type { OpenDatabase, Tx } from "./client";

/** What there is to do. A job carries the id of its row and nothing about a person. */
export const jobKinds = ["letter"] as const;
export type JobKind = (typeof jobKinds)[number];

export interface Job {
  readonly id: string;
  /** The row it is about. */
  readonly rowId: string;
  /** No try comes after this one. */
  readonly isLastTry: boolean;
}

export interface JobQueue {
  /** The jobs that are due, each handed out once; at most `most`. */
  take(kind: JobKind, most: number): Promise<readonly Job[]>;
  done(kind: JobKind, job: Job): Promise<void>;
  /** It comes back after a pause, or rests with the failed ones after its last try. */
  failed(kind: JobKind, job: Job, why: string): Promise<void>;
  /** Gives back what a vanished instance had taken, and clears old ones away. */
  tidy(): Promise<void>;
}

/** Pauses of about ½, 1, 2, 4, 8, 16, 32 and 60 minutes: two hours in all. */
const tries = { retryLimit: 8, retryDelay: 30, retryBackoff: true } as const;
/** Whoever holds a job longer than this has vanished. */
const expireInSeconds = 120;

/** Makes or migrates the queue's tables; part of every migration of the database. */
export async function prepareJobs(open: Pick<OpenDatabase, "run">): Promise<void> {
  const boss = bossOn(open.run, true);
  await boss.start();
  const made = new Set((await boss.getQueues()).map(({ name }) => name));
  for (const name of jobKinds) {
    if (!made.has(name)) await boss.createQueue(name, { name, policy: "standard", ...tries, expireInSeconds });
  }
  await boss.stop({ graceful: false });
}

/** Asks for work in the caller's transaction: it is there when that commits, and not when it does not. */
export async function addJob(tx: Tx, kind: JobKind, rowId: string): Promise<void> {
  const db = {
    executeSql: async (sql: string, values: readonly unknown[]) => ({
      rows: await tx.$queryRawUnsafe<unknown[]>(sql, ...values),
    }),
  };
  const id = await sender.send(kind, { rowId }, { ...tries, expireInSeconds, db });
  if (id === null) throw new Error(`the queue took no job of kind ${kind}: was the database migrated?`);
}

/** The queue as a worker sees it. */
export function jobQueue(open: Pick<OpenDatabase, "run">): JobQueue {
  const boss = bossOn(open.run, false);
  return {
    take: async (kind, most) => {
      const jobs = await boss.fetch<{ rowId: string }>(kind, { batchSize: most, includeMetadata: true });
      return jobs.map(({ id, data, retryCount, retryLimit }) => ({
        id,
        rowId: data.rowId,
        isLastTry: retryCount >= retryLimit,
      }));
    },
    done: (kind, { id }) => boss.complete(kind, id),
    failed: (kind, { id }, why) => boss.fail(kind, id, { why }),
    tidy: () => boss.maintain(),
  };
}

/** Nothing in it runs by itself: no timer, no worker, no connection of its own. */
function bossOn(run: OpenDatabase["run"], migrate: boolean): PgBoss {
  const db = {
    executeSql: async (sql: string, values?: readonly unknown[]) => ({ rows: [...(await run(sql, values)).rows] }),
  };
  const boss = new PgBoss({ db, migrate, supervise: false, schedule: false });
  boss.on("error", () => {
    // Every call is awaited and throws by itself.
  });
  return boss;
}

const sender = bossOn(() => {
  throw new Error("a job is added inside a transaction");
}, false);
