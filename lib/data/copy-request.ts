/**
 * How a backup asks the running shop for a copy: two programs cannot open one data folder, so the one asks by a file and the
 * other, which holds the database, copies. Both files are for their owner alone.
 */
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { setTimeout as sleep } from "node:timers/promises";
import type { OpenDatabase } from "./client";
import type { TableCounts } from "./thread/protocol";

const requestOf = (folder: string) => `${folder}.copy-request`;
const answerOf = (folder: string) => `${folder}.copy-answer`;

type CopyAnswer = { readonly rows: TableCounts } | { readonly problem: string };

/**
 * Asks whoever holds the database of a folder.
 * @returns how many rows every table has in the copy
 * @throws Error when nobody answers in time
 */
export async function requestCopy(folder: string, target: string, patienceMs = 60_000): Promise<TableCounts> {
  rmSync(answerOf(folder), { force: true });
  writeWhole(requestOf(folder), JSON.stringify({ target }));
  const until = performance.now() + patienceMs;
  try {
    while (performance.now() < until) {
      if (existsSync(answerOf(folder))) {
        const answer = JSON.parse(readFileSync(answerOf(folder), "utf8")) as CopyAnswer;
        if ("problem" in answer) throw new Error(answer.problem);
        return answer.rows;
      }
      await sleep(100);
    }
    throw new Error("The running shop did not answer the request for a copy.");
  } finally {
    rmSync(requestOf(folder), { force: true });
    rmSync(answerOf(folder), { force: true });
  }
}

/** Looks for a request and answers it; for the process that holds the database. */
export async function answerCopyRequest(open: OpenDatabase, folder: string): Promise<void> {
  if (open.copyTo === null || !existsSync(requestOf(folder))) return;
  const { target } = JSON.parse(readFileSync(requestOf(folder), "utf8")) as { readonly target: string };
  rmSync(requestOf(folder), { force: true });
  const answer: CopyAnswer = await open.copyTo(target).then(
    (rows) => ({ rows }),
    (error: unknown) => ({ problem: error instanceof Error ? error.message : String(error) }),
  );
  writeWhole(answerOf(folder), JSON.stringify(answer));
}

function writeWhole(file: string, text: string): void {
  writeFileSync(`${file}.${process.pid}`, text, { mode: 0o600 });
  renameSync(`${file}.${process.pid}`, file);
}
