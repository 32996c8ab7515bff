import type { Tx } from "./client";

/** Waits until no other transaction holds this name, and holds it until this one ends. */
export async function lockName(tx: Tx, name: string): Promise<void> {
  await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtextextended(${name}, 0))::text`;
}
