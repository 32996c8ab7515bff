// npm test: everything, one after the other, and one closing line with the counts.
//   node .ci/test.mjs                       all of it
//   node .ci/test.mjs unit services         some of it: types, unit, services, postgres, browser
import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { hasBrowser, howToGetOne } from "./browser.mjs";
import { build } from "./build.mjs";
import { check } from "./check.mjs";
import { cacheFolder, programs, root, run, say } from "./lib.mjs";
import { findPostgres } from "./postgres.mjs";
import { generate, install, requireNode, typegen } from "./prepare.mjs";
import { add, freshResults, noCounts, playwrightCounts, refusedSkips, vitestCounts } from "./results.mjs";

const onCi = Boolean(process.env.CI);
const expectedSkips = JSON.parse(readFileSync(path.join(root, ".ci/expected-skips.json"), "utf8"));
// The product's own settings must not leak into its tests.
for (const name of ["DATABASE_URL", "PAIRWRIGHT_DATA", "PAIRWRIGHT_ORIGIN", "HOST", "PORT", "NODE_ENV"])
  delete process.env[name];

const stages = [
  { name: "types", title: "Types", work: typesStage },
  { name: "unit", title: "Unit tests", work: () => vitest("unit", "unit") },
  { name: "services", title: "Services on the embedded database", work: () => vitest("services", "services") },
  { name: "postgres", title: "Services on PostgreSQL", work: postgresStage },
  { name: "browser", title: "The browser", work: browserStage },
];

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !stages.some((stage) => stage.name === name));
if (unknown.length > 0) {
  say(`Unknown part: ${unknown.join(", ")}. There are: ${stages.map((stage) => stage.name).join(", ")}.`);
  process.exit(2);
}

let total = noCounts;
try {
  requireNode();
  await install();
  await generate();
  await typegen();
  for (const stage of stages) {
    if (wanted.length > 0 && !wanted.includes(stage.name)) continue;
    say(`\n== ${stage.title}`);
    const began = performance.now();
    const counts = withoutSilence(stage.name, await stage.work());
    total = add(total, counts);
    say(`${stage.title}: ${words(counts)} (${((performance.now() - began) / 1000).toFixed(0)} s)`);
  }
} catch (error) {
  say(`\n${error?.stack ?? error}`);
  total = add(total, { ...noCounts, failed: 1 });
}
process.stdout.write(`\n${words(total)}\n`);
process.exitCode = total.failed > 0 ? 1 : 0;

function words({ passed, failed, skips }) {
  return `${passed} passed, ${failed} failed, ${skips.length} skipped`;
}

/** Says of every test that did not run why; a skip that is refused counts as failed. */
function withoutSilence(stage, counts) {
  const refused = refusedSkips(stage, counts.skips, expectedSkips, onCi);
  for (const skip of counts.skips)
    say(`SKIPPED${refused.includes(skip) ? " AND REFUSED" : ""}: ${skip.name}: ${skip.reason ?? "no reason given"}`);
  return {
    ...counts,
    failed: counts.failed + refused.length,
    skips: counts.skips.filter((skip) => !refused.includes(skip)),
  };
}

async function typesStage() {
  return { ...noCounts, ...(await check(["types"])) };
}

async function vitest(project, name, env = {}) {
  const file = freshResults(name);
  const skipsFile = freshResults(`${name}-skips`);
  const args = [
    programs.vitest,
    "run",
    "--project",
    project,
    "--reporter=default",
    "--reporter=json",
    "--reporter=./.ci/skip-reporter.mjs",
    `--outputFile.json=${file}`,
  ];
  const { code } = await run(process.execPath, args, { env: { ...env, SKIPS_FILE: skipsFile } });
  return vitestCounts(file, skipsFile, code);
}

async function postgresStage() {
  if (findPostgres() === null)
    return leaveOut("Services on PostgreSQL", "its programs (initdb, postgres) were not found");
  return vitest("services", "postgres", { PAIRWRIGHT_TEST_BACKEND: "postgres" });
}

async function browserStage() {
  if (!(await hasBrowser())) return leaveOut("The browser", howToGetOne);
  await build();
  const file = freshResults("browser");
  rmSync(path.join(cacheFolder, "e2e-data"), { recursive: true, force: true });
  const { code } = await run(process.execPath, [programs.playwright, "test"]);
  return playwrightCounts(file, code);
}

/** A whole stage that cannot run here. */
function leaveOut(name, reason) {
  return { ...noCounts, skips: [{ name, reason }] };
}
