import type { Db } from "#data/client";

/** What reading and working out stands on: the time, how new ids are made, and the database; not who asks. */
export interface ShopContext {
  readonly now: Date;
  readonly newId: () => string;
  /** How many runs a date is estimated from; absent: as many as it is worth. Fewer make a demo's past quickly. */
  readonly promiseRuns?: number;
  /** For services alone; pages never touch it. */
  readonly db: Db;
}
