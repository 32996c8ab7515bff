// npm run screenshots: makes the README's pictures from the product; with -- --check compares them with it instead.
import path from "node:path";
import { hasBrowser, howToGetOne } from "./browser.mjs";
import { build } from "./build.mjs";
import { fail, root, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";

const port = Number(process.env.PORT || 3220);

await prepare();
const { checkPictures, keptFolder, pictureWords } = await import("./pictures/check.mjs");
const { takePictures } = await import("./pictures/take.mjs");
if (!(await hasBrowser())) fail(howToGetOne);
await build();
if (process.argv.includes("--check")) {
  const all = await checkPictures(port);
  for (const picture of all) say(pictureWords(picture));
  process.exitCode = all.some(({ isOld }) => isOld) ? 1 : 0;
} else {
  const names = await takePictures(keptFolder, port);
  say(`In ${path.relative(root, keptFolder)}: ${names.join(", ")}.`);
}
