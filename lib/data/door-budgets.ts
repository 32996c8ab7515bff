/** The limiter's table: the limiter writes SQL of its own, which runs on the one client of this process. */
import type { Db, Tx } from "./client";
import { translated } from "./transaction";

interface LimiterQuery {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** What the limiter takes for a connection to PostgreSQL. Its statements are single ones, so each is atomic on both databases. */
export function budgetStore(db: Db) {
  return {
    query: async ({ text, values }: LimiterQuery) => {
      const rows = await translated(db.$queryRawUnsafe<Readonly<Record<string, unknown>>[]>(text, ...values));
      return { rows: rows.map(withNumbers), rowCount: rows.length };
    },
  };
}

/** Whole milliseconds come as bigint and are far below what a number holds. */
function withNumbers(row: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => [name, typeof value === "bigint" ? Number(value) : value]),
  );
}

export interface BudgetUse {
  readonly key: string;
  readonly points: number;
  readonly until: Date | null;
}

/** Those whose window has not ended. */
export async function budgetKeys(client: Tx, nowMs: number): Promise<readonly BudgetUse[]> {
  const rows = await client.doorBudget.findMany({ where: { expire: { gt: BigInt(nowMs) } }, orderBy: { key: "asc" } });
  return rows.map(({ key, points, expire }) => ({
    key,
    points,
    until: expire === null ? null : new Date(Number(expire)),
  }));
}

/** @returns how many windows were ended */
export async function dropBudgets(tx: Tx, prefixes: readonly string[]): Promise<number> {
  const { count } = await tx.doorBudget.deleteMany({
    where: { OR: prefixes.map((key) => ({ key: { startsWith: key } })) },
  });
  return count;
}

/** Windows that ended are of no use to anybody. */
export async function sweepBudgets(client: Tx, nowMs: number): Promise<void> {
  await client.doorBudget.deleteMany({ where: { expire: { lt: BigInt(nowMs) } } });
}
