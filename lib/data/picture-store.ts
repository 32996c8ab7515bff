/**
 * Where pictures lie: behind one interface, never in the database. A picture's name is made from its contents, so that writing
 * it twice is writing it once, and a file that no row names harms nobody.
 */
import { mkdir, open, readFile, rename, rm } from "node:fs/promises";
import path from "node:path";
import { config, type PictureSettings } from "#config";
import { bucketStore } from "./bucket-store";
import { newId } from "./ids";
import { keyOf, type PictureStore } from "./picture-place";

/** A folder on a disk; several instances share it. */
function folderStore(folder: string): PictureStore {
  const fileOf = (name: string) => path.join(/*turbopackIgnore: true*/ folder, keyOf(name));
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

/** The one that the settings name. */
export function pictureStore(settings: PictureSettings = config().pictures): PictureStore {
  return settings.kind === "folder" ? folderStore(settings.folder) : bucketStore(settings);
}
