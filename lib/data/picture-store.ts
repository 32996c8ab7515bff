/**
 * Where pictures lie: behind one interface, never in the database. A picture's name is made from its contents, so that writing
 * it twice is writing it once, and a file that no row names harms nobody.
 */
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import path from "node:path";
import { config } from "#config";
import { newId } from "./ids";

export interface PictureStore {
  /** Resolves when the picture is kept. @throws Error when it is not */
  put(name: string, bytes: Uint8Array): Promise<void>;
  /** @throws Error when it is not there */
  get(name: string): Promise<Uint8Array>;
  /** Resolves when it is not there any more. */
  remove(name: string): Promise<void>;
}

/** A folder on a disk; several instances share it. */
export function folderStore(folder: string): PictureStore {
  const fileOf = (name: string) => {
    if (!/^[a-z0-9]{8,}[a-z0-9.-]*$/.test(name)) throw new RangeError(`"${name}" is no name of a picture`);
    return path.join(folder, name.slice(0, 2), name);
  };
  return {
    put: async (name, bytes) => {
      const file = fileOf(name);
      await mkdir(path.dirname(file), { recursive: true, mode: 0o700 });
      const draft = `${file}.${newId()}`;
      const handle = await open(draft, "wx", 0o600);
      try {
        await handle.writeFile(bytes);
        await handle.sync();
      } finally {
        await handle.close();
      }
      await rename(draft, file);
    },
    get: async (name) => new Uint8Array(await readFile(fileOf(name))),
    remove: (name) => rm(fileOf(name), { force: true }),
  };
}

/** The shop's own. */
export function pictureStore(): PictureStore {
  return folderStore(path.join(/*turbopackIgnore: true*/ config().dataFolder, "pictures"));
}
