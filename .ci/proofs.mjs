// npm run proofs -- NAME [--seed N]: the whole of what npm test looks at as a sample. Without a name it says what there is.
import { rmSync } from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { hasBrowser, howToGetOne } from "./browser.mjs";
import { build } from "./build.mjs";
import { cpuSeconds } from "./cpu.mjs";
import { cacheFolder, fail, programs, root, run, say } from "./lib.mjs";
import { findPostgres } from "./postgres.mjs";
import { prepare } from "./prepare.mjs";

const inVitest =
  (project, files, env = {}) =>
  (shared) =>
    run(process.execPath, [programs.vitest, "run", "--project", project, ...files], { env: { ...shared, ...env } });

/** Each proof: what it looks at, what npm test looks at instead, and its work. */
const proofs = {
  seasons: {
    whole:
      "promises of twenty seasons against 85 to 95 of 100, against the best lead time, and after a season of learning",
    sample: "two seasons, and one of each other kind, with the band that so many orders leave",
    work: inVitest("unit", ["tests/engine/routing/season.test.ts", "tests/engine/routing/season-learning.test.ts"]),
  },
  "tiny-shops": {
    whole: "130 tiny shops at the usual iterations against their optima by trying every sequence",
    sample: "the first fifty at a twentieth of the iterations",
    work: inVitest("unit", ["tests/engine/optimise/tiny-shops.test.ts"]),
  },
  "hard-shops": {
    whole: "four hard job shops and four workshops with two presses, median of five seeds at the usual iterations",
    sample: "one and two of them, one seed, at a quarter of the iterations and less",
    work: inVitest("unit", ["tests/engine/optimise/published.test.ts"]),
  },
  year: {
    whole: "a year of the shop with its own use cases, forty customers",
    sample: "the customers of six weeks of autumn, until the last pair is delivered",
    work: inVitest("services", ["tests/services/season.test.ts"]),
  },
  postgres: {
    whole: "every services test on PostgreSQL",
    sample: "the files of .ci/on-both-databases.json: SQL, races, transactions, one journey",
    work: onPostgres,
  },
  lock: {
    whole: "the lock of a data folder against a holder that stands still for a minute",
    sample: "three seconds of it",
    work: inVitest("services", ["tests/data/lock.test.ts"], { PAIRWRIGHT_STALL_SECONDS: "60" }),
  },
  "first-start": {
    whole: "a first start killed at twenty random instants, and the next one",
    sample: "three of them",
    work: inVitest("services", ["tests/data/first-start.test.ts"]),
  },
  audit: {
    whole: "accessibility by axe wherever the browser tests ask for it, on both screens",
    sample: "a third of these places; seeds 1, 2 and 3 together see them all",
    work: audit,
  },
  fit: {
    whole:
      "every skier of 40 to 130 kg and 140 to 205 cm, ability and use beside those a kilogram and a centimetre on; 48,000 drawn adults",
    sample: "two lines through each ability and use; 3,000 drawn adults",
    work: inVitest("unit", ["tests/engine/fit/no-jumps.test.ts", "tests/engine/fit/drawn-adults.test.ts"]),
  },
  scatter: {
    whole:
      "the spread of a ski and its twin against 2,000 simulated pairs; four times 300 sound readings, none suspected",
    sample: "500 simulated pairs, within the band that so many leave; 300 sound readings",
    work: inVitest("unit", ["tests/engine/flex/spread.test.ts", "tests/engine/calibration/calibrate.test.ts"]),
  },
  mutants: {
    whole: "200 planted faults, and how many of them are noticed, room by room",
    sample: "the planter's own tests",
    work: async (_shared, seed) => {
      const mutants = (...wish) => run(process.execPath, [path.join(root, ".ci/mutants.mjs"), ...wish]);
      await mutants("--map");
      return mutants("--seed", String(seed), "--sample", "200");
    },
  },
};

const { values, positionals } = parseArgs({ allowPositionals: true, options: { seed: { type: "string" } } });
const seed = Number(values.seed ?? 1);
if (!Number.isInteger(seed) || seed < 0) fail(`--seed ${values.seed}: must be a whole number.`);
const unknown = positionals.filter((name) => !(name in proofs) && name !== "all");
if (positionals.length === 0 || unknown.length > 0) {
  const lines = Object.entries(proofs).map(
    ([name, { whole, sample }]) => `  ${name.padEnd(12)}${whole}\n${" ".repeat(14)}(npm test: ${sample})`,
  );
  fail(`npm run proofs -- NAME [--seed N], or all of them: npm run proofs -- all\n\n${lines.join("\n")}`);
}

await prepare();
const chosen = positionals.includes("all") ? Object.keys(proofs) : positionals;
for (const name of chosen) {
  say(`\n== ${name}: ${proofs[name].whole} (seed ${seed})`);
  const began = { clock: performance.now(), cpu: cpuSeconds() };
  const { code } = await proofs[name].work({ PAIRWRIGHT_PROOF: name, PAIRWRIGHT_SEED: String(seed) }, seed);
  const seconds = ((performance.now() - began.clock) / 1000).toFixed(0);
  say(
    `${code === 0 ? "ok    " : "FAILED"} ${name} (${seconds} s, ${(cpuSeconds() - began.cpu).toFixed(0)} s of the processor)`,
  );
  if (code !== 0) process.exitCode = 1;
}

function onPostgres(shared) {
  if (findPostgres() === null) fail("PostgreSQL's programs (initdb, postgres) were not found.");
  return inVitest("services", [], { PAIRWRIGHT_TEST_BACKEND: "postgres" })(shared);
}

async function audit(shared) {
  if (!(await hasBrowser())) fail(howToGetOne);
  await build();
  rmSync(path.join(cacheFolder, "e2e-data"), { recursive: true, force: true });
  return run(process.execPath, [programs.playwright, "test"], { env: shared });
}
