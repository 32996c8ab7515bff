import path from "node:path";
import { defineConfig } from "vitest/config";

const alias = {
  "server-only": path.resolve(import.meta.dirname, ".ci/nothing.mjs"),
};

/** What a page asks of its request. Files of one worker share their modules, so that a mock of one file comes too late. */
const pageRequests = path.resolve(import.meta.dirname, "tests/support/page-requests.ts");
const requestAlias = { ...alias, "next/headers": pageRequests, "next/cache": pageRequests };

/** The zone is far from the shop's and has a 45-minute offset, so that a forgotten zone shows at once. */
const env = {
  TZ: "Asia/Kathmandu",
  PAIRWRIGHT_DATA: ".cache/test-data",
  PAIRWRIGHT_SECRET: "a key for tests alone, of no use else",
};

/** The second notes which of the product's functions each test file runs; npm run mutants asks for it. */
const setupFiles = [".ci/cpu-of-files.mjs", ...(process.env.WHAT_RUNS ? [".ci/mutants/note-what-runs.mjs"] : [])];

export default defineConfig({
  resolve: { alias },
  test: {
    env,
    projects: [
      {
        resolve: { alias },
        test: {
          name: "unit",
          env,
          include: [
            "tests/{config,engine,schemas,catalog,command,papers,architecture}/**/*.test.{ts,tsx}",
            "tests/app/{_ui,_visuals,views}/**/*.test.{ts,tsx}",
          ],
          globalSetup: ["tests/support/documents-worker.ts"],
          setupFiles,
          // Vitest would leave one of two cores to itself, which it hardly uses.
          maxWorkers: 2,
          testTimeout: 60_000,
        },
      },
      {
        // One database per worker, emptied before each test: loading the client anew for every file would cost seconds.
        // PAIRWRIGHT_TEST_BACKEND=postgres runs the same files on a throwaway PostgreSQL server.
        resolve: { alias: requestAlias },
        test: {
          name: "services",
          env,
          include: ["tests/{data,auth,services,app}/**/*.test.{ts,tsx}"],
          exclude: ["tests/app/{_ui,_visuals,views}/**"],
          globalSetup: ["tests/support/postgres.ts", "tests/support/documents-worker.ts"],
          setupFiles,
          isolate: false,
          fileParallelism: true,
          maxWorkers: 2,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
