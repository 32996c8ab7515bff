/** The drawing thread: takes one document at a time from the server's thread and posts its bytes back. */
import { parentPort } from "node:worker_threads";
import type { Paper } from "#papers/parts/facts";
import { drawDocument } from "./draw";
import type { DocumentData, DocumentKind } from "./kinds";

export interface DrawRequest {
  readonly id: number;
  readonly kind: DocumentKind;
  readonly data: DocumentData[DocumentKind];
  readonly paper: Paper;
}

export type DrawAnswer =
  | { readonly id: number; readonly ok: true; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly id: number; readonly ok: false; readonly message: string };

/** One after the other: two drawings at once would only take turns. */
let queue: Promise<void> = Promise.resolve();

parentPort?.on("message", (request: DrawRequest) => {
  queue = queue.then(() => answer(request));
});

async function answer({ id, kind, data, paper }: DrawRequest): Promise<void> {
  try {
    const bytes = new Uint8Array(await drawDocument(kind, data, paper));
    parentPort?.postMessage({ id, ok: true, bytes } satisfies DrawAnswer, [bytes.buffer]);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    parentPort?.postMessage({ id, ok: false, message } satisfies DrawAnswer);
  }
}
