/** Opens the database when the server starts, so that the first visitor does not wait and a fault shows at once. */
import { systemActor } from "#auth";
import { log } from "#lib/log";
import { freezePressSlots, renewEstimates, sweepSlots } from "#services";
import { openContext } from "#services/context";
import { checkHealth } from "#services/health";
import { reportFault } from "./faults";
import { answerFinished } from "./finished/pages";

const sweepEveryMs = 15 * 60_000;

/** Gives up places whose time is over and fixes the press slots of the next days. A fault is for the log: the next round tries again. */
async function sweep(): Promise<void> {
  try {
    const ctx = await openContext(systemActor("the clock"), new Date());
    await sweepSlots(ctx);
    await freezePressSlots(ctx);
  } catch (error) {
    reportFault(error, "give up places");
  }
}

/** Takes some seconds in the morning, so nobody waits for it. */
async function renew(): Promise<void> {
  try {
    await renewEstimates(await openContext(systemActor("the clock"), new Date()));
  } catch (error) {
    reportFault(error, "renew estimates");
  }
}

/** Where `.ci/serve.mjs` looks for what answers finished pages. */
const shelf = globalThis as typeof globalThis & { pairwrightFinishedPages?: typeof answerFinished };

/** A server without its database is of no use: it says why, to the log and to whoever started it, and ends. */
export async function startUp(): Promise<void> {
  try {
    await checkHealth(await openContext(systemActor("start-up"), new Date()));
    await sweep();
    void renew();
    shelf.pairwrightFinishedPages = answerFinished;
    setInterval(() => sweep().then(renew), sweepEveryMs).unref();
  } catch (error) {
    log("fatal", "cannot start", { where: "start", error });
    process.stderr.write(`\nPairwright cannot start: ${error instanceof Error ? error.message : String(error)}\n`);
    if (error instanceof Error && error.cause instanceof Error) process.stderr.write(`${error.cause.message}\n`);
    process.exit(1);
  }
}
