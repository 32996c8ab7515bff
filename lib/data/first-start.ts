/**
 * The first start of a new database may end at any instant. Until everything a new shop begins with is in it, the database
 * bears a mark (a schema of its own); a start that finds the mark clears away what the one before left and begins anew.
 * Nothing was acknowledged to anybody before the mark is gone.
 */
import type { OpenDatabase } from "./client";
import { DatabaseProblem } from "./folder-problem";
import { applyMigrations, knownMigrations } from "./migrate";

const mark = "pairwright_first_start";

export interface Prepared<T> {
  /** Names of the migrations applied now. */
  readonly applied: readonly string[];
  /** What an unfinished start left was cleared away. */
  readonly startedOver: boolean;
  /** What `fill` returned; null when the database was not new. */
  readonly filled: T | null;
}

/**
 * Brings a database to where the shop can work with it: new or old, whole or left half-made. Instances that start together
 * wait for each other.
 * @param fill puts into a new database what it begins with; may run again after a start that was ended
 * @throws DatabaseProblem when it is not a database of ours, or a newer program's
 */
export async function prepareDatabase<T>(
  open: OpenDatabase,
  prismaFolder: string,
  fill: () => Promise<T>,
): Promise<Prepared<T>> {
  return open.alone(async () => {
    const found = await lookAt(open);
    if (found === "unfinished") await open.runScript(clearing);
    if (found === "ours") refuseNewer(await appliedMigrations(open), prismaFolder);
    const isNew = found !== "ours";
    if (isNew) await open.runScript(`CREATE SCHEMA IF NOT EXISTS ${mark}`);
    const applied = await applyMigrations(open, prismaFolder);
    const filled = isNew ? await fill() : null;
    if (isNew) await open.runScript(`DROP SCHEMA ${mark}`);
    return { applied, startedOver: found === "unfinished", filled };
  });
}

async function lookAt(open: OpenDatabase): Promise<"empty" | "unfinished" | "ours"> {
  const { rows } = await open.run(`
    SELECT (SELECT count(*)::int FROM pg_namespace WHERE nspname = '${mark}') AS marks,
           (SELECT count(*)::int FROM pg_tables WHERE schemaname = 'public') AS tables,
           (SELECT count(*)::int FROM pg_tables WHERE schemaname = 'public' AND tablename = '_prisma_migrations') AS ours`);
  const [row] = rows;
  if (Number(row?.marks) > 0) return "unfinished";
  if (Number(row?.tables) === 0) return "empty";
  if (Number(row?.ours) === 0) throw new DatabaseProblem({ code: "not-ours" });
  return "ours";
}

async function appliedMigrations(open: OpenDatabase): Promise<readonly string[]> {
  const { rows } = await open.run("SELECT migration_name FROM _prisma_migrations WHERE finished_at IS NOT NULL");
  return rows.map((row) => String(row.migration_name));
}

function refuseNewer(applied: readonly string[], prismaFolder: string): void {
  const known = new Set(knownMigrations(prismaFolder));
  const newer = applied.find((name) => !known.has(name));
  if (newer !== undefined) throw new DatabaseProblem({ code: "newer", migration: newer });
}

/** Everything that migrations and the queue may have made, in one transaction. The mark stays. */
const clearing = `
  DO $clear$
  DECLARE it record;
  BEGIN
    FOR it IN SELECT viewname AS name FROM pg_views WHERE schemaname = 'public' LOOP
      EXECUTE format('DROP VIEW IF EXISTS public.%I CASCADE', it.name);
    END LOOP;
    FOR it IN SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' LOOP
      EXECUTE format('DROP TABLE IF EXISTS public.%I CASCADE', it.name);
    END LOOP;
    FOR it IN SELECT p.oid::regprocedure::text AS name FROM pg_proc p WHERE p.pronamespace = 'public'::regnamespace LOOP
      EXECUTE format('DROP FUNCTION IF EXISTS %s CASCADE', it.name);
    END LOOP;
    FOR it IN SELECT typname AS name FROM pg_type WHERE typnamespace = 'public'::regnamespace AND typtype = 'e' LOOP
      EXECUTE format('DROP TYPE IF EXISTS public.%I CASCADE', it.name);
    END LOOP;
    DROP SCHEMA IF EXISTS pgboss CASCADE;
  END
  $clear$`;
