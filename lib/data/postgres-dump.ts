/** A dump of a PostgreSQL server and the number of rows of every table, both of one snapshot; nobody waits for it. */
import { spawn } from "node:child_process";
import { listTables } from "./copy";
import type { TableCounts } from "./thread/protocol";

/**
 * @param environment what the program inherits
 * @param pgDump the program; of the server's version or newer
 * @throws Error with what the program says
 */
export async function dumpPostgres(
  url: string,
  pgDump: string,
  environment: NodeJS.ProcessEnv,
): Promise<{ readonly sql: string; readonly rows: TableCounts }> {
  const { default: pg } = await import("pg");
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY");
    const { rows: snapshots } = await client.query<{ id: string }>("SELECT pg_export_snapshot() AS id");
    const rows: Record<string, number> = {};
    const { rows: tables } = await client.query<{ name: string }>(listTables);
    for (const { name } of tables) {
      const counted = await client.query<{ count: number }>(`SELECT count(*)::int AS count FROM ${name}`);
      rows[name] = counted.rows[0]?.count ?? 0;
    }
    const sql = await runDump(pgDump, url, snapshots[0]?.id ?? "", environment);
    return { sql: withoutMetaCommands(sql), rows };
  } finally {
    await client.end();
  }
}

function runDump(program: string, url: string, snapshot: string, environment: NodeJS.ProcessEnv): Promise<string> {
  // The address may hold a password, which a list of processes would show.
  const address = new URL(url);
  const password = decodeURIComponent(address.password);
  address.password = "";
  const env = { ...environment, ...(password === "" ? {} : { PGPASSWORD: password }) };
  const options = [
    `--dbname=${address.href}`,
    "--no-owner",
    "--no-privileges",
    "--rows-per-insert=200",
    `--snapshot=${snapshot}`,
  ];
  return new Promise((resolve, reject) => {
    const child = spawn(program, options, { env, stdio: ["ignore", "pipe", "pipe"] });
    const parts: Buffer[] = [];
    let said = "";
    child.stdout.on("data", (part: Buffer) => parts.push(part));
    child.stderr.on("data", (part: Buffer) => {
      said += part.toString();
    });
    child.once("error", reject);
    child.once("close", (code) => {
      if (code === 0) resolve(Buffer.concat(parts).toString("utf8"));
      else reject(new Error(`pg_dump ended with code ${code}: ${said.trim().slice(0, 500)}`));
    });
  });
}

/** Lines for psql alone; and what PostgreSQL before version 17 does not know. */
function withoutMetaCommands(sql: string): string {
  return sql.replace(/^\\(un)?restrict .*\n/gm, "").replace(/^SET transaction_timeout = 0;\n/m, "");
}
