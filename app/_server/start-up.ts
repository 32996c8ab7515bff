/** Opens the database when the server starts, so that the first visitor does not wait and a fault shows at once. */
import { systemActor } from "@/lib/auth";
import { openContext } from "@/lib/services/context";
import { checkHealth } from "@/lib/services/health";

export async function startUp(): Promise<void> {
  await checkHealth(await openContext(systemActor("start-up"), new Date()));
}
