/** For machines: 200 when the database answers, 503 when not. */
import { reportFault } from "#app/_server/faults.ts";
import { systemActor } from "#auth";
import { openContext } from "#services/context";
import { checkHealth } from "#services/health";

export const dynamic = "force-dynamic";

export async function GET(): Promise<Response> {
  const headers = { "cache-control": "no-store" };
  try {
    await checkHealth(await openContext(systemActor("health check"), new Date()));
    return Response.json({ ready: true }, { headers });
  } catch (error) {
    return Response.json({ ready: false, reference: reportFault(error, "health check") }, { status: 503, headers });
  }
}
