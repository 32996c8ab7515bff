/** Opens the database when the server starts, so that the first visitor does not wait and a fault shows at once. */
import { systemActor } from "@/lib/auth";
import { openContext } from "@/lib/services/context";
import { checkHealth } from "@/lib/services/health";

/** A server without its database is of no use: it says why in a line and ends. */
export async function startUp(): Promise<void> {
  try {
    await checkHealth(await openContext(systemActor("start-up"), new Date()));
  } catch (error) {
    process.stderr.write(`\nPairwright cannot start: ${error instanceof Error ? error.message : String(error)}\n`);
    if (error instanceof Error && error.cause instanceof Error) process.stderr.write(`${error.cause.message}\n`);
    process.exit(1);
  }
}
