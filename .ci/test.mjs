// npm test: everything, one after the other; then a table of the stages, the slowest files, and one line with the counts.
//   node .ci/test.mjs                       all of it
//   node .ci/test.mjs unit services         some of it: check, unit, services, postgres, browser, pictures
// What takes longer than a sample of it is in .ci/proofs.mjs.
import { readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { hasBrowser, howToGetOne } from "./browser.mjs";
import { build } from "./build.mjs";
import { check } from "./check.mjs";
import { cpuSeconds } from "./cpu.mjs";
import { cacheFolder, programs, root, run, say } from "./lib.mjs";
import { findPostgres } from "./postgres.mjs";
import { generate, install, requireNode, typegen } from "./prepare.mjs";
import { add, freshResults, noCounts, playwrightCounts, refusedSkips, vitestCounts } from "./results.mjs";
import { slowestFiles, stageTable } from "./timing.mjs";

const onCi = Boolean(process.env.CI);
const listIn = (name) => JSON.parse(readFileSync(path.join(root, ".ci", name), "utf8"));
const expectedSkips = listIn("expected-skips.json");
// The product's own settings must not leak into its tests.
for (const name of [
  "DATABASE_URL",
  "PAIRWRIGHT_DATA",
  "PAIRWRIGHT_PICTURES",
  "PAIRWRIGHT_ORIGIN",
  "HOST",
  "PORT",
  "NODE_ENV",
])
  delete process.env[name];

const stages = [
  { name: "check", title: "Format, types, import rules, dead code", work: checkStage },
  { name: "unit", title: "Unit tests", work: () => vitest("unit", "unit") },
  { name: "services", title: "Services on the embedded database", work: () => vitest("services", "services") },
  { name: "postgres", title: "Services on PostgreSQL", work: postgresStage },
  { name: "browser", title: "The browser", work: browserStage },
  { name: "pictures", title: "The README's pictures", work: picturesStage },
];

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !stages.some((stage) => stage.name === name));
if (unknown.length > 0) {
  say(`Unknown part: ${unknown.join(", ")}. There are: ${stages.map((stage) => stage.name).join(", ")}.`);
  process.exit(2);
}

let total = noCounts;
const times = [];
try {
  requireNode();
  await install();
  await generate();
  await typegen();
  for (const stage of stages) {
    if (wanted.length > 0 && !wanted.includes(stage.name)) continue;
    say(`\n== ${stage.title}`);
    const began = { clock: performance.now(), cpu: cpuSeconds() };
    const counts = withoutSilence(stage.name, await stage.work());
    total = add(total, counts);
    const seconds = (performance.now() - began.clock) / 1000;
    times.push({ name: stage.name, seconds, cpu: cpuSeconds() - began.cpu, result: words(counts) });
    say(`${stage.title}: ${words(counts)} (${seconds.toFixed(0)} s)`);
  }
} catch (error) {
  say(`\n${error?.stack ?? error}`);
  total = add(total, { ...noCounts, failed: 1 });
}
say(`\n${stageTable(times)}\n\n${slowestFiles(times.map(({ name }) => name))}`);
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

async function checkStage() {
  return { ...noCounts, ...(await check()) };
}

async function vitest(project, name, { env = {}, files = [] } = {}) {
  const file = freshResults(name);
  const skipsFile = freshResults(`${name}-skips`);
  const cpuFile = freshResults(`${name}-cpu`);
  const args = [
    programs.vitest,
    "run",
    "--project",
    project,
    ...files,
    "--reporter=default",
    "--reporter=json",
    "--reporter=./.ci/skip-reporter.mjs",
    `--outputFile.json=${file}`,
  ];
  const { code } = await run(process.execPath, args, {
    env: { ...env, SKIPS_FILE: skipsFile, CPU_FILE: cpuFile },
  });
  return vitestCounts(file, skipsFile, code);
}

async function postgresStage() {
  if (findPostgres() === null)
    return leaveOut("Services on PostgreSQL", "its programs (initdb, postgres) were not found");
  const files = listIn("on-both-databases.json").map(({ file }) => file);
  return vitest("services", "postgres", { env: { PAIRWRIGHT_TEST_BACKEND: "postgres" }, files });
}

async function browserStage() {
  if (!(await hasBrowser())) return leaveOut("The browser", howToGetOne);
  await build();
  const file = freshResults("browser");
  rmSync(path.join(cacheFolder, "e2e-data"), { recursive: true, force: true });
  const { code } = await run(process.execPath, [programs.playwright, "test"]);
  return playwrightCounts(file, code);
}

/** The shop is a second one, at a fixed instant; the pages are those that the browser stage built. */
async function picturesStage() {
  if (!(await hasBrowser())) return leaveOut("The README's pictures", howToGetOne);
  await build();
  // Read only now: it needs packages, and this file starts on a machine that has none yet.
  const { checkPictures, pictureWords } = await import("./pictures/check.mjs");
  const all = await checkPictures(3220);
  for (const picture of all) say(pictureWords(picture));
  const failed = all.filter(({ isOld }) => isOld).length;
  return { ...noCounts, passed: all.length - failed, failed };
}

/** A whole stage that cannot run here. */
function leaveOut(name, reason) {
  return { ...noCounts, skips: [{ name, reason }] };
}
