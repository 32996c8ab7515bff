/** The only place that starts a transaction. */
import type { Db, Tx } from "./client";
import { isRetryable, translateError } from "./errors";

const attempts = 5;

/**
 * Runs `work` in one transaction and commits when it returns. Wait for nothing but the database inside, and use only
 * `tx`: the root client would wait for itself. `work` may run again after a serialization failure or a deadlock, so it
 * must not have effects outside the database.
 * @throws Conflict, NotFound, Unavailable (see errors.ts), or what `work` throws
 */
export async function transaction<T>(db: Db, work: (tx: Tx) => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await db.$transaction(work);
    } catch (error) {
      if (attempt >= attempts || !isRetryable(error)) throw translateError(error);
      // Later attempts wait longer, so that the parties to a deadlock do not meet again in step.
      await new Promise((resume) => setTimeout(resume, 5 * attempt * attempt));
    }
  }
}

/** Runs one or a few reads or a single write outside a transaction, with errors translated. */
export async function translated<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    throw translateError(error);
  }
}
