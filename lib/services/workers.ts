/**
 * Work that nobody waits for: letters go out, and the queue is tidied. Every instance does it; the queue hands each job to one.
 */
import { systemActor } from "#auth";
import { config } from "#config";
import { database } from "#data/client";
import { answerCopyRequest } from "#data/copy-request";
import { jobQueue } from "#data/jobs";
import { openContext } from "#services/context";
import { postLetters } from "#services/letters/letters";
import { openPost } from "#services/letters/post";

const lookEveryMs = 2000;
const copyLookMs = 500;
const tidyEveryMs = 60_000;

type Report = (error: unknown, where: string) => void;

/** Looks for work until the process ends. @param report hears of faults; the next round tries again */
export async function startWorkers(report: Report): Promise<void> {
  const open = await database();
  const queue = jobQueue(open);
  const post = openPost(config().mail);
  every(report, lookEveryMs, "send letters", async () => {
    await postLetters(await openContext(systemActor("the post"), new Date()), queue, post);
  });
  const { database: where } = config();
  if (where.kind === "embedded") {
    every(report, copyLookMs, "copy for a backup", () => answerCopyRequest(open, where.folder));
  }
  every(report, tidyEveryMs, "tidy the queue", () => queue.tidy());
}

/** One round after the other. */
function every(report: Report, pauseMs: number, name: string, work: () => Promise<void>): void {
  const round = async () => {
    try {
      await work();
    } catch (error) {
      report(error, name);
    }
    setTimeout(round, pauseMs).unref();
  };
  setTimeout(round, pauseMs).unref();
}
