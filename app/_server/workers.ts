/**
 * Work that nobody waits for: letters go out, and the queue is tidied. Every instance does it; the queue hands each job to one.
 */
import "server-only";
import { systemActor } from "#auth";
import { config } from "#config";
import { database } from "#data/client";
import { jobQueue } from "#data/jobs";
import { postLetters } from "#services";
import { openContext } from "#services/context";
import { openPost } from "#services/letters/post";
import { reportFault } from "./faults";

const lookEveryMs = 2000;
const tidyEveryMs = 60_000;

/** Looks for work until the process ends. */
export async function startWorkers(): Promise<void> {
  const queue = jobQueue(await database());
  const post = openPost(config().mail);
  every(lookEveryMs, "send letters", async () => {
    await postLetters(await openContext(systemActor("the post"), new Date()), queue, post);
  });
  every(tidyEveryMs, "tidy the queue", () => queue.tidy());
}

/** One round after the other; a fault is for the log, and the next round tries again. */
function every(pauseMs: number, name: string, work: () => Promise<void>): void {
  const round = async () => {
    try {
      await work();
    } catch (error) {
      reportFault(error, name);
    }
    setTimeout(round, pauseMs).unref();
  };
  setTimeout(round, pauseMs).unref();
}
