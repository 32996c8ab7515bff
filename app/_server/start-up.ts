/** Opens the database when the server starts, so that the first visitor does not wait and a fault shows at once. */
import { mkdirSync } from "node:fs";
import { fill } from "#app/_ui/words.ts";
import { offerFirstOwner, systemActor } from "#auth";
import { config } from "#config";
import words from "#content/copy/people.json";
import { log } from "#lib/log";
import { applyRetention, freezePressSlots, renewEstimates, sweepDoors, sweepSlots } from "#services";
import { openContext } from "#services/context";
import { checkHealth } from "#services/health";
import { reportFault } from "./faults";
import { answerFinished } from "./finished/pages";
import { startWorkers } from "./workers";

const sweepEveryMs = 15 * 60_000;

/** Gives up places whose time is over and fixes the press slots of the next days. A fault is for the log: the next round tries again. */
async function sweep(): Promise<void> {
  try {
    const ctx = await openContext(systemActor("the clock"), new Date());
    await sweepSlots(ctx);
    await freezePressSlots(ctx);
    await sweepDoors(ctx);
  } catch (error) {
    reportFault(error, "give up places");
  }
}

/** Takes some seconds in the morning, so nobody waits for it. What is due to be forgotten is, as the owner has set it. */
async function renew(): Promise<void> {
  try {
    const ctx = await openContext(systemActor("the clock"), new Date());
    await renewEstimates(ctx);
    await applyRetention(ctx);
  } catch (error) {
    reportFault(error, "renew estimates");
  }
}

/** In the terminal alone: never in the log, which may be sent elsewhere. */
async function offerOwnership(): Promise<void> {
  const code = await offerFirstOwner(new Date());
  if (code === null) return;
  const told = fill(words.terminal.firstOwner, { address: `${config().publicOrigin}/shop/first-owner` });
  process.stderr.write(`\n  ${told}\n\n      ${code}\n\n`);
}
/** Where `.ci/serve.mjs` looks for what answers finished pages. */
const shelf = globalThis as typeof globalThis & { pairwrightFinishedPages?: typeof answerFinished };

/** A server without its database is of no use: it says why, to the log and to whoever started it, and ends. */
export async function startUp(): Promise<void> {
  try {
    mkdirSync(config().dataFolder, { recursive: true, mode: 0o700 });
    await checkHealth(await openContext(systemActor("start-up"), new Date()));
    await offerOwnership();
    await sweep();
    void renew();
    await startWorkers(reportFault);
    shelf.pairwrightFinishedPages = answerFinished;
    setInterval(() => sweep().then(renew), sweepEveryMs).unref();
  } catch (error) {
    log("fatal", "cannot start", { where: "start", error });
    process.stderr.write(`\nPairwright cannot start: ${error instanceof Error ? error.message : String(error)}\n`);
    if (error instanceof Error && error.cause instanceof Error) process.stderr.write(`${error.cause.message}\n`);
    process.exit(1);
  }
}
