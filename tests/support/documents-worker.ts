/** Papers are drawn by the program that the server would draw them with: as fresh as the sources, never one left over. */
import { mkdirSync } from "node:fs";
import { bundleThreads } from "../../.ci/bundle.mjs";

export default async function freshWorker(): Promise<void> {
  mkdirSync(".cache/test-data", { recursive: true });
  await bundleThreads();
}
