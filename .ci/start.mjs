// npm start: from a fresh clone to the running shop, and in seconds from then on.
//   node .ci/start.mjs          build when needed and serve
//   node .ci/start.mjs --dev    serve from the sources, reloading on change
import { existsSync, readFileSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { build } from "./build.mjs";
import { bundleThreads } from "./bundle.mjs";
import { fail, hashOf, readStamp, root, run, say, writeStamp } from "./lib.mjs";
import { prepare } from "./prepare.mjs";
import { settings, whereDataIs } from "./settings.mjs";

const began = performance.now();
const dev = process.argv.includes("--dev");
const chosen = settings();

await refuseBusyPort(chosen);
try {
  await prepare();
  if (!dev) await build();
  await bundleThreads();
  await migrate();
  const { serve } = await import("./serve.mjs");
  await serve({ ...chosen, dev });
  await untilHealthy();
} catch (error) {
  fail(`Pairwright did not start. ${error?.message ?? error}`);
}
greet();

/** Looked at before the work, so that nobody waits a minute to hear it. */
async function refuseBusyPort({ host, port }) {
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    fail(`PORT=${process.env.PORT}: must be a whole number from 1 to 65535.`);
  const problem = await new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", resolve);
    probe.listen(port, host, () => probe.close(() => resolve(null)));
  });
  if (problem?.code === "EADDRINUSE") {
    fail(
      `Port ${port} on ${host} is already in use. Stop the other program, or choose another: PORT=${port + 1} npm start`,
    );
  }
  if (problem) fail(`Cannot listen on ${host} port ${port}: ${problem.message}`);
}

/** In its own process, which gives back the memory the first start needs. Skipped when nothing can have changed. */
async function migrate() {
  const stamp = path.join(chosen.dataFolder, "database.stamp");
  const wanted = hashOf(["prisma/migrations"]);
  const isEmbedded = chosen.databaseUrl === null;
  const isThere = existsSync(path.join(chosen.dataFolder, "database", "PG_VERSION"));
  if (isEmbedded && isThere && readStamp(stamp) === wanted) return;
  const { code } = await run(process.execPath, [path.join(root, ".ci/migrate.mjs")]);
  if (code !== 0) process.exit(code);
  if (isEmbedded) writeStamp(stamp, wanted);
}

async function untilHealthy() {
  const host = ["0.0.0.0", "::"].includes(chosen.host) ? "127.0.0.1" : chosen.host;
  const address = `http://${host.includes(":") ? `[${host}]` : host}:${chosen.port}/health`;
  const answer = await fetch(address);
  if (answer.ok) return;
  throw new Error(`The database does not answer (${(await answer.text()).slice(0, 200)}).`);
}

function greet() {
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  say(`\nPairwright is running (ready after ${seconds} s).\n`);
  say(`  Skiers      ${chosen.address}`);
  say(`  The shop    ${chosen.address}/shop`);
  const file = path.join(chosen.dataFolder, "demo-sign-ins.json");
  const signIns = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : [];
  for (const { role, email, password } of signIns) say(`              ${role.padEnd(6)} ${email}   ${password}`);
  say(`  The data    ${whereDataIs(chosen)}`);
  say("\nStop with Ctrl-C. Everything acknowledged is kept.");
}
