/** What a server does in the background, for whoever keeps the time. */
import { config } from "#config";
import { database } from "#data/client";
import { answerCopyRequest } from "#data/copy-request";
import { claimDay } from "#data/counters";
import { jobQueue } from "#data/jobs";
import { translated } from "#data/transaction";
import type { Context } from "./context";
import { postLetters } from "./letters/letters";
import { openPost } from "./letters/post";

export interface Worker {
  /** Sends what is due. @returns how many letters were looked at */
  readonly postLetters: (ctx: Context) => Promise<number>;
  /** Copies the embedded database for a backup that asks for it. */
  readonly answerCopyRequest: () => Promise<void>;
  /** False when this day's backup was made, or another instance makes it. */
  readonly claimBackup: (ctx: Context, day: string) => Promise<boolean>;
  /** Gives back jobs of vanished instances, clears old ones away. */
  readonly tidy: () => Promise<void>;
}

export async function openWorker(): Promise<Worker> {
  const open = await database();
  const queue = jobQueue(open);
  const post = openPost(config().mail);
  const where = config().database;
  return {
    postLetters: (ctx) => postLetters(ctx, queue, post),
    answerCopyRequest: async () => {
      if (where.kind === "embedded") await answerCopyRequest(open, where.folder);
    },
    claimBackup: (ctx, day) => translated(claimDay(ctx.db, "backup", day)),
    tidy: () => queue.tidy(),
  };
}
