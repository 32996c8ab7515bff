// Counts of every runner, added up.
import { existsSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { cacheFolder } from "./lib.mjs";

export const noCounts = { passed: 0, failed: 0, skipped: 0 };

export function add(a, b) {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/** A file a runner writes its results to, removed first so that an old one is never counted. */
export function freshResults(name) {
  const file = path.join(cacheFolder, "results", `${name}.json`);
  rmSync(file, { force: true });
  return file;
}

/** Vitest's JSON. A file that does not even load is one failure; so is a bad end without any. */
export function vitestCounts(file, code) {
  if (!existsSync(file)) return { ...noCounts, failed: 1 };
  const report = JSON.parse(readFileSync(file, "utf8"));
  const broken = report.testResults.filter(
    (one) => one.status === "failed" && !one.assertionResults.some((test) => test.status === "failed"),
  ).length;
  return honest(
    {
      passed: report.numPassedTests,
      failed: report.numFailedTests + broken,
      skipped: report.numPendingTests + report.numTodoTests,
    },
    code,
  );
}

/** Playwright's JSON. A test that passed only on a second try counts as failed. */
export function playwrightCounts(file, code) {
  if (!existsSync(file)) return { ...noCounts, failed: 1 };
  const { stats, errors } = JSON.parse(readFileSync(file, "utf8"));
  return honest(
    { passed: stats.expected, failed: stats.unexpected + stats.flaky + (errors?.length ?? 0), skipped: stats.skipped },
    code,
  );
}

function honest(counts, code) {
  if (code !== 0 && counts.failed === 0) return { ...counts, failed: 1 };
  if (counts.passed + counts.failed + counts.skipped === 0) return { ...counts, failed: 1 };
  return counts;
}
