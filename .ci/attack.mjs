// npm run attack [-- NAME …] [--seed N] [--short]: kills, races, floods and fuzzes a built copy on both databases, on this
// machine alone, and prints a table. --short is what takes a minute or two of it.
import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { drawn } from "./attack/fuzz.mjs";
import { newName } from "./attack/shop.mjs";
import { firstStarts, flood, hostile, killsUnderLoad, stop, twoInstances, upload } from "./attack/steps.mjs";
import { build } from "./build.mjs";
import { bundleThreads } from "./bundle.mjs";
import { fail, say } from "./lib.mjs";
import { startPostgres } from "./postgres.mjs";
import { prepare } from "./prepare.mjs";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { seed: { type: "string" }, short: { type: "boolean" }, port: { type: "string" } },
});
const seed = Number(values.seed ?? 1);
const port = Number(values.port ?? 3260);
const isShort = values.short ?? false;
if (!Number.isInteger(seed) || seed < 0) fail(`--seed ${values.seed}: must be a whole number.`);

const steps = {
  "first-starts": { work: firstStarts, with: { times: isShort ? 2 : 20 } },
  kills: { work: killsUnderLoad, with: { times: isShort ? 2 : 20 } },
  hostile: { work: hostile, with: { count: isShort ? 300 : 5000 } },
  flood: { work: flood, with: { seconds: isShort ? 4 : 20 } },
  upload: { work: upload, with: {} },
  "two-instances": { work: twoInstances, with: { seconds: isShort ? 6 : 30 }, only: "PostgreSQL" },
  stop: { work: stop, with: {} },
};
const unknown = positionals.filter((name) => !(name in steps));
if (unknown.length > 0) fail(`Unknown: ${unknown.join(", ")}. There are: ${Object.keys(steps).join(", ")}.`);
const chosen = positionals.length > 0 ? positionals : Object.keys(steps);

await prepare();
await build();
await bundleThreads();
const scratch = mkdtempSync(path.join(os.tmpdir(), "pairwright-attack-"));
const postgres = await startPostgres();
const rows = [];
try {
  for (const name of chosen) {
    const { work, with: settings, only } = steps[name];
    for (const make of [embedded, ...(postgres === null ? [] : [onServer])]) {
      const place = await make();
      if (only !== undefined && place.name !== only) continue;
      say(`\n== ${name} on ${place.name} (seed ${seed})`);
      rows.push({ name, on: place.name, ...(await outcome(work, { place, port, draw: drawn(seed), ...settings })) });
      say(`${rows.at(-1).held ? "held  " : "BROKE "} ${rows.at(-1).words}`);
    }
  }
} finally {
  await postgres?.stop();
  rmSync(scratch, { recursive: true, force: true });
}
say(
  `\n${rows.map(({ held, name, on, words }) => `${held ? "held  " : "BROKE "}${name.padEnd(15)}${on.padEnd(12)}${words}`).join("\n")}`,
);
if (postgres === null) say("PostgreSQL's programs were not found: the embedded database alone was attacked.");
process.exit(rows.every(({ held }) => held) ? 0 : 1);

async function outcome(work, asked) {
  try {
    return await work(asked);
  } catch (error) {
    return { held: false, words: String(error?.message ?? error) };
  }
}

/** A new place for a shop's data. */
function embedded() {
  const data = path.join(scratch, newName());
  return {
    name: "embedded",
    settings: { data },
    env: { PAIRWRIGHT_DATA: data, DATABASE_URL: "" },
    empty: async () => rmSync(data, { recursive: true, force: true }),
  };
}

async function onServer() {
  const { default: pg } = await import("pg");
  const data = path.join(scratch, newName());
  const name = `attack_${newName()}`;
  const run = async (...commands) => {
    const client = new pg.Client({ connectionString: postgres.url });
    await client.connect();
    for (const command of commands) await client.query(command);
    await client.end();
  };
  await run(`CREATE DATABASE ${name}`);
  const url = new URL(postgres.url);
  url.pathname = `/${name}`;
  return {
    name: "PostgreSQL",
    settings: { data, databaseUrl: url.href },
    env: { PAIRWRIGHT_DATA: data, DATABASE_URL: url.href },
    empty: () => run(`DROP DATABASE ${name} WITH (FORCE)`, `CREATE DATABASE ${name}`),
  };
}
