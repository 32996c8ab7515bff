/** The server's end of the database's thread: a driver adapter whose every call is carried out over there. */
import { existsSync } from "node:fs";
import path from "node:path";
import { Worker } from "node:worker_threads";
import {
  DriverAdapterError,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
  type SqlQuery,
  type SqlResultSet,
  type Transaction,
} from "@prisma/driver-adapter-utils";
import { checkFolder, DatabaseProblem, type Problem } from "../folder-problem";
import { lockFolder } from "../lock";
import type { Answer, CallName, Calls, Fault, Request, TableCounts } from "./protocol";

/** Relative to the working directory, where the scripts put it before anything opens a database. */
const program = path.join(".cache", "database-thread.mjs");

export interface ThreadedDatabase {
  readonly adapter: SqlMigrationAwareDriverAdapterFactory;
  readonly run: (sql: string, values?: readonly unknown[]) => Promise<Calls["run"]["gives"]>;
  /** Copies the database's files of one moment to a new folder. @returns how many rows every table had in that moment */
  readonly copyTo: (target: string) => Promise<TableCounts>;
  readonly close: () => Promise<void>;
}

type Ask = <C extends CallName>(call: C, takes: Calls[C]["takes"]) => Promise<Calls[C]["gives"]>;

/**
 * Opens the database of a folder in a thread of its own.
 * @throws FolderInUse, DatabaseProblem
 */
export async function openInThread(folder: string): Promise<ThreadedDatabase> {
  checkFolder(folder);
  // A lock that outlives the process is taken over by the next start; one given back too early would let it in too soon.
  const lock = await lockFolder(folder, { leaveOnExit: true });
  try {
    const { ask, end } = await startThread(folder);
    const close = async () => {
      await ask("close", null);
      await end();
      lock.release();
    };
    return {
      adapter: factoryOn(ask),
      run: (sql, values) => ask("run", { sql, values: values ?? null }),
      copyTo: (target) => ask("copyTo", { target }),
      close,
    };
  } catch (error) {
    lock.release();
    throw error;
  }
}

async function startThread(folder: string): Promise<{ readonly ask: Ask; readonly end: () => Promise<void> }> {
  const file = path.resolve(/* turbopackIgnore: true */ program);
  if (!existsSync(/* turbopackIgnore: true */ file)) throw new Error(`${program} is missing: start with npm start`);
  const worker = new Worker(file, { execArgv: [], workerData: { folder } });
  const waiting = new Map<
    number,
    { readonly resolve: (value: unknown) => void; readonly reject: (error: Error) => void }
  >();
  let isOver: Error | null = null;
  const giveUp = (error: Error) => {
    isOver ??= error;
    for (const { reject } of waiting.values()) reject(isOver);
    waiting.clear();
  };
  worker.on("message", (answer: Answer) => {
    const one = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (waiting.size === 0) worker.unref();
    if ("fault" in answer) one?.reject(errorOf(answer.fault));
    else one?.resolve("gives" in answer ? answer.gives : null);
  });
  worker.on("error", (error) => giveUp(error instanceof Error ? error : new Error(String(error))));
  worker.on("exit", () => giveUp(new Error("the database's thread has ended")));
  const answered = (id: number) =>
    new Promise<unknown>((resolve, reject) => {
      if (isOver !== null) return reject(isOver);
      waiting.set(id, { resolve, reject });
      // Nobody waits: then an idle thread does not keep the process alive.
      worker.ref();
    });
  let last = 0;
  const ask: Ask = (call, takes) => {
    last += 1;
    const answer = answered(last);
    worker.postMessage({ id: last, call, takes } satisfies Request);
    return answer as Promise<never>;
  };
  await answered(0);
  return { ask, end: async () => void (await worker.terminate()) };
}

function factoryOn(ask: Ask): SqlMigrationAwareDriverAdapterFactory {
  const names = { provider: "postgres", adapterName: "pairwright-embedded" } as const;
  const queries = (transaction: number | null) => ({
    ...names,
    queryRaw: (query: SqlQuery) => ask("queryRaw", { transaction, query }) as Promise<SqlResultSet>,
    executeRaw: (query: SqlQuery) => ask("executeRaw", { transaction, query }),
  });
  const begin = async (isolationLevel?: string): Promise<Transaction> => {
    const transaction = await ask("begin", { isolationLevel: isolationLevel ?? null });
    return {
      ...queries(transaction),
      // Begin and commit are the database's own, not statements of the client's.
      options: { usePhantomQuery: true },
      commit: async () => void (await ask("commit", { transaction })),
      rollback: async () => void (await ask("rollback", { transaction })),
    };
  };
  const adapter: SqlDriverAdapter = {
    ...queries(null),
    executeScript: async (sql) => void (await ask("run", { sql, values: null })),
    startTransaction: begin,
    getConnectionInfo: () => ({ supportsRelationJoins: true }),
    dispose: async () => {},
  };
  return {
    ...names,
    connect: async () => ({ ...adapter }),
    connectToShadowDb: () => Promise.reject(new Error("schemas are compared in memory")),
  };
}

function errorOf({ kind, name, message, stack, more }: Fault): Error {
  if (kind === "driver")
    return new DriverAdapterError(more.cause as ConstructorParameters<typeof DriverAdapterError>[0]);
  if (kind === "problem") return new DatabaseProblem(more.problem as Problem);
  const error = Object.assign(new Error(message), more);
  error.name = name;
  if (stack !== undefined) error.stack = stack;
  return error;
}
