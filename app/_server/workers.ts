/**
 * Work that nobody waits for: letters go out, and the queue is tidied. Every instance does it; the queue hands each job to one.
 */
import { spawn } from "node:child_process";
import path from "node:path";
import { systemActor } from "#auth";
import { config } from "#config";
import { openContext } from "#services/context";
import { openWorker, type Worker } from "#services/worker";

const lookEveryMs = 2000;
const copyLookMs = 500;
const tidyEveryMs = 60_000;

/** Once a day, by one of the instances, in a process of its own. */
async function backUpWhenDue(worker: Worker, now: Date, report: Report): Promise<void> {
  const { backupAt, backupsKept } = config();
  const instant = now.toISOString();
  if (backupAt === null || instant.slice(11, 16) < backupAt) return;
  const ctx = await openContext(systemActor("the clock"), now);
  if (!(await worker.claimBackup(ctx, instant.slice(0, 10)))) return;
  const script = path.join(/*turbopackIgnore: true*/ process.cwd(), ".ci", "backup.mjs");
  const child = spawn(process.execPath, [script, "--keep", String(backupsKept)], {
    stdio: ["ignore", "ignore", "pipe"],
  });
  let said = "";
  child.stderr.on("data", (part: Buffer) => {
    said = `${said}${part}`.slice(-1000);
  });
  child.once("error", (error) => report(error, "back up"));
  child.once("close", (code) => {
    if (code !== 0) report(new Error(`no backup was made: ${said.trim().split("\n").at(-1)}`), "back up");
  });
}

type Report = (error: unknown, where: string) => void;

/** Looks for work until the process ends. @param report hears of faults; the next round tries again */
export async function startWorkers(report: Report): Promise<void> {
  const worker = await openWorker();
  every(report, lookEveryMs, "send letters", async () => {
    await worker.postLetters(await openContext(systemActor("the post"), new Date()));
  });
  every(report, copyLookMs, "copy for a backup", () => worker.answerCopyRequest());
  every(report, tidyEveryMs, "back up", () => backUpWhenDue(worker, new Date(), report));
  every(report, tidyEveryMs, "tidy the queue", () => worker.tidy());
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
