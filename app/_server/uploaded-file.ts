/** A body that is too large for memory: streamed into a file that is gone when the work with it is done. */
import { mkdir, open, rm } from "node:fs/promises";
import { hostname } from "node:os";
import path from "node:path";
import "server-only";
import { config } from "#config";

export interface UploadedFile {
  readonly file: string;
  readonly size: number;
}

let last = 0;

function nextNumber(): number {
  last += 1;
  return last;
}

/** @param work gets null when the body is larger than `most` bytes; nothing beyond that is read */
export async function withUploadedFile<T>(
  request: Request,
  most: number,
  work: (upload: UploadedFile | null) => Promise<T>,
): Promise<T> {
  const folder = path.join(/*turbopackIgnore: true*/ config().dataFolder, "uploads");
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const file = path.join(folder, `${hostname()}-${process.pid}-${nextNumber()}`);
  try {
    const size = await stream(request, file, most);
    return await work(size === null ? null : { file, size });
  } finally {
    await rm(file, { force: true });
  }
}

async function stream(request: Request, file: string, most: number): Promise<number | null> {
  const handle = await open(file, "w", 0o600);
  const reader = request.body?.getReader();
  let size = 0;
  try {
    while (reader) {
      const { done, value } = await reader.read();
      if (done) break;
      size += value.length;
      if (size > most) {
        await reader.cancel();
        return null;
      }
      await handle.write(value);
    }
    return size;
  } finally {
    await handle.close();
  }
}
