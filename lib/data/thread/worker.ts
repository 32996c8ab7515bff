/** The database's own thread: the embedded database and its driver live here, and nothing a page does waits for them. */
import { parentPort, workerData } from "node:worker_threads";
import {
  DriverAdapterError,
  type IsolationLevel,
  type SqlDriverAdapter,
  type Transaction,
} from "@prisma/driver-adapter-utils";
import { PrismaPGlite } from "pglite-prisma-adapter";
import { copyDatabase } from "../copy";
import { openLocked } from "../embedded";
import { DatabaseProblem } from "../folder-problem";
import type { Answer, CallName, Calls, Fault, Request, ThreadStart } from "./protocol";

type Takes<C extends CallName> = Calls[C]["takes"];
type Work = { readonly [C in CallName]: (takes: Takes<C>) => Promise<Calls[C]["gives"]> };

const port = parentPort;
if (port === null) throw new Error("the database's thread is started by the server");

try {
  const { folder } = workerData as ThreadStart;
  const pglite = await openLocked(folder);
  const adapter: SqlDriverAdapter = await new PrismaPGlite(pglite).connect();
  const transactions = new Map<number, Transaction>();
  let last = 0;

  const on = (transaction: number | null) => {
    if (transaction === null) return adapter;
    const open = transactions.get(transaction);
    if (open === undefined) throw new Error("the transaction has ended");
    return open;
  };
  const end = async (transaction: number, how: "commit" | "rollback") => {
    const open = transactions.get(transaction);
    transactions.delete(transaction);
    await open?.[how]();
    return null;
  };
  const work: Work = {
    queryRaw: async ({ transaction, query }) => on(transaction).queryRaw(query),
    executeRaw: async ({ transaction, query }) => on(transaction).executeRaw(query),
    begin: async ({ isolationLevel }) => {
      const transaction = await adapter.startTransaction((isolationLevel ?? undefined) as IsolationLevel | undefined);
      last += 1;
      transactions.set(last, transaction);
      return last;
    },
    commit: ({ transaction }) => end(transaction, "commit"),
    rollback: ({ transaction }) => end(transaction, "rollback"),
    run: async ({ sql, values }) => {
      const all = values === null ? await pglite.exec(sql) : [await pglite.query(sql, [...values])];
      return (all.at(-1)?.rows ?? []) as Readonly<Record<string, unknown>>[];
    },
    copyTo: ({ target }) => copyDatabase(pglite, folder, target),
    close: async () => {
      await pglite.close();
      return null;
    },
  };
  port.on("message", ({ id, call, takes }: Request) => {
    // The type of what it takes goes with the call's name.
    (work[call] as (takes: unknown) => Promise<unknown>)(takes).then(
      (gives) => say({ id, gives }),
      (error: unknown) => say({ id, fault: faultOf(error) }),
    );
  });
  say({ id: 0, opened: true });
} catch (error) {
  say({ id: 0, fault: faultOf(error) });
}

function say(answer: Answer): void {
  port?.postMessage(answer);
}

function faultOf(error: unknown): Fault {
  if (!(error instanceof Error))
    return { kind: "other", name: "Error", message: String(error), stack: undefined, more: {} };
  const { name, message, stack } = error;
  const said = { name, message, stack };
  if (error instanceof DriverAdapterError) return { ...said, kind: "driver", more: { cause: error.cause } };
  if (error instanceof DatabaseProblem) return { ...said, kind: "problem", more: { problem: error.problem } };
  const more = Object.fromEntries(Object.entries(error).filter(([, value]) => isPlain(value)));
  return { ...said, kind: "other", more };
}

function isPlain(value: unknown): boolean {
  return value === null || ["string", "number", "boolean"].includes(typeof value);
}
