/**
 * Global set-up of the services tests. With PAIRWRIGHT_TEST_BACKEND=postgres it starts a throwaway PostgreSQL server and
 * hands its address to the workers; otherwise they use PGlite in memory.
 */
import type { TestProject } from "vitest/node";

declare module "vitest" {
  interface ProvidedContext {
    postgresUrl: string | null;
  }
}

export default async function setup(project: TestProject): Promise<(() => Promise<void>) | undefined> {
  const backend = process.env.PAIRWRIGHT_TEST_BACKEND ?? "pglite";
  if (backend === "pglite") {
    project.provide("postgresUrl", null);
    return undefined;
  }
  if (backend !== "postgres") throw new Error(`PAIRWRIGHT_TEST_BACKEND=${backend}: must be pglite or postgres`);
  const { startPostgres } = await import("../../.ci/postgres.mjs");
  const server = await startPostgres();
  if (server === null) throw new Error("PAIRWRIGHT_TEST_BACKEND=postgres: no PostgreSQL binaries were found");
  project.provide("postgresUrl", server.url);
  return server.stop;
}
