// Counts of every runner, added up, and why a test did not run.
import { existsSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { cacheFolder } from "./lib.mjs";

/** `skips`: name and reason of what did not run; the reason is null where nobody gave one. */
export const noCounts = { passed: 0, failed: 0, skips: [] };

export function add(a, b) {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skips: [...a.skips, ...b.skips] };
}

/** A file a runner writes its results to, removed first so that an old one is never counted. */
export function freshResults(name) {
  const file = path.join(cacheFolder, "results", `${name}.json`);
  rmSync(file, { force: true });
  return file;
}

/** Vitest's JSON, and the reasons that .ci/skip-reporter.mjs wrote. A file that does not even load is one failure. */
export function vitestCounts(file, skipsFile, code) {
  if (!existsSync(file) || !existsSync(skipsFile)) return { ...noCounts, failed: 1 };
  const report = JSON.parse(readFileSync(file, "utf8"));
  const skips = JSON.parse(readFileSync(skipsFile, "utf8"));
  const broken = report.testResults.filter(
    (one) => one.status === "failed" && !one.assertionResults.some((test) => test.status === "failed"),
  ).length;
  // Each runner counts for itself: what the reporter missed is a skip without a reason.
  const untold = report.numPendingTests + report.numTodoTests - skips.length;
  const unnamed = Array.from({ length: Math.max(0, untold) }, () => ({ name: "a test", reason: null }));
  return honest(
    { passed: report.numPassedTests, failed: report.numFailedTests + broken, skips: [...skips, ...unnamed] },
    code,
  );
}

/** Playwright's JSON. A test that passed only on a second try counts as failed. */
export function playwrightCounts(file, code) {
  if (!existsSync(file)) return { ...noCounts, failed: 1 };
  const { stats, errors, suites } = JSON.parse(readFileSync(file, "utf8"));
  return honest(
    {
      passed: stats.expected,
      failed: stats.unexpected + stats.flaky + (errors?.length ?? 0),
      skips: suites.flatMap((suite) => playwrightSkips(suite)),
    },
    code,
  );
}

function playwrightSkips({ title, specs = [], suites = [] }) {
  const own = specs.flatMap((spec) =>
    spec.tests
      .filter((test) => test.status === "skipped")
      .map((test) => ({
        name: `${title} > ${spec.title}`,
        reason: test.annotations.find(({ type }) => type === "skip" || type === "fixme")?.description ?? null,
      })),
  );
  return [...own, ...suites.flatMap((suite) => playwrightSkips(suite))];
}

/**
 * The skips that fail a stage: one without a reason always; on CI, where everything can run, each that is not in the list of
 * expected ones (.ci/expected-skips.json: stage and name).
 */
export function refusedSkips(stage, skips, expected, onCi) {
  return skips.filter(({ name, reason }) => {
    if (!reason) return true;
    return onCi && !expected.some((one) => one.stage === stage && one.name === name);
  });
}

function honest(counts, code) {
  if (code !== 0 && counts.failed === 0) return { ...counts, failed: 1 };
  if (counts.passed + counts.failed + counts.skips.length === 0) return { ...counts, failed: 1 };
  return counts;
}
