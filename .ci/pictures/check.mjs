// Whether the README's pictures show the product as it is.
import { existsSync, readdirSync, rmSync } from "node:fs";
import path from "node:path";
import { cacheFolder, root } from "../lib.mjs";
import { differentShare } from "./compare.mjs";
import { takePictures } from "./take.mjs";

export const keptFolder = path.join(root, "public", "readme");
/** A picture that differs by more than this share of its pixels no longer shows the product. */
const allowedShare = 0.02;

/**
 * Takes the pictures anew, into .cache/pictures, and compares each with the one that is kept.
 * @returns {Promise<readonly {name: string, differs: number, isOld: boolean}[]>} every picture, taken or kept
 */
export async function checkPictures(port) {
  const fresh = path.join(cacheFolder, "pictures");
  rmSync(fresh, { recursive: true, force: true });
  const taken = await takePictures(fresh, port);
  const all = new Set([...taken, ...(existsSync(keptFolder) ? readdirSync(keptFolder) : [])]);
  return Promise.all(
    [...all].sort().map(async (name) => {
      const both = [path.join(keptFolder, name), path.join(fresh, name)];
      const differs = both.every(existsSync) ? await differentShare(...both) : 1;
      return { name, differs, isOld: differs > allowedShare };
    }),
  );
}

/** One line a picture: what it is, how far off, and the way out. */
export function pictureWords({ name, differs, isOld }) {
  const share = `${(100 * differs).toFixed(2)} % of its pixels differ`;
  return isOld
    ? `FAILED public/readme/${name}: ${share}, at most ${100 * allowedShare} % may. Look at .cache/pictures/${name}; \`npm run screenshots\` makes it anew.`
    : `ok     public/readme/${name}: ${share}`;
}
