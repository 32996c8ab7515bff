/**
 * Documents as bytes without holding up the server: drawing blocks for up to a second, so it happens in one long-lived
 * worker thread. The thread's program is bundled to `.cache/documents-worker.mjs` before the server starts; where it is
 * absent (the command line) the document is drawn in this process.
 */
import { existsSync } from "node:fs";
import path from "node:path";
import { Worker } from "node:worker_threads";
import type { Paper } from "#papers/parts/facts";
import type { DocumentData, DocumentKind } from "./kinds";
import type { DrawAnswer, DrawRequest } from "./worker";

/** Relative to the working directory, where the start script puts it. */
const WORKER_FILE = path.join(".cache", "documents-worker.mjs");

interface Waiting {
  readonly resolve: (bytes: Uint8Array) => void;
  readonly reject: (error: Error) => void;
}

interface DrawingThread {
  readonly worker: Worker;
  readonly waiting: Map<number, Waiting>;
  lastId: number;
}

/** Page bundles may hold several copies of this module; the thread is one per process all the same. */
const holder: typeof globalThis & { documentsThread?: Map<string, DrawingThread> } = globalThis;

/**
 * PDF bytes of one document. Requests queue in the thread; the server's own thread only posts and waits.
 *
 * @throws Error when the document cannot be drawn or the thread dies; the next call starts a fresh thread
 */
export async function renderDocument<K extends DocumentKind>(
  kind: K,
  data: DocumentData[K],
  paper: Paper,
  workerFile: string = WORKER_FILE,
): Promise<Uint8Array> {
  const file = path.resolve(/* turbopackIgnore: true */ workerFile);
  if (!existsSync(/* turbopackIgnore: true */ file)) {
    // Kept out of the pages' own bundle: a server never draws on its own thread, not even by mistake.
    const { drawDocument } = await import(/* turbopackIgnore: true */ "./draw");
    return drawDocument(kind, data, paper);
  }
  const thread = threadOf(file);
  thread.lastId += 1;
  const request: DrawRequest = { id: thread.lastId, kind, data, paper };
  return new Promise((resolve, reject) => {
    thread.waiting.set(request.id, { resolve, reject });
    thread.worker.ref();
    thread.worker.postMessage(request);
  });
}

function threadOf(file: string): DrawingThread {
  holder.documentsThread ??= new Map();
  const known = holder.documentsThread.get(file);
  if (known) return known;
  const thread: DrawingThread = { worker: new Worker(file, { execArgv: [] }), waiting: new Map(), lastId: 0 };
  thread.worker.on("message", (answer: DrawAnswer) => settle(thread, answer));
  thread.worker.on("error", (error) => give(thread, file, error instanceof Error ? error : new Error(String(error))));
  thread.worker.on("exit", (code) => give(thread, file, new Error(`the drawing thread ended with code ${code}`)));
  thread.worker.unref();
  holder.documentsThread.set(file, thread);
  return thread;
}

function settle(thread: DrawingThread, answer: DrawAnswer): void {
  const waiting = thread.waiting.get(answer.id);
  thread.waiting.delete(answer.id);
  // An idle thread does not keep the process alive.
  if (thread.waiting.size === 0) thread.worker.unref();
  if (answer.ok) waiting?.resolve(answer.bytes);
  else waiting?.reject(new Error(answer.message));
}

/** Gives up a dead thread: everything that waits for it fails, and the next document gets a new one. */
function give(thread: DrawingThread, file: string, error: Error): void {
  if (holder.documentsThread?.get(file) === thread) holder.documentsThread.delete(file);
  for (const { reject } of thread.waiting.values()) reject(error);
  thread.waiting.clear();
}
