// npm run bench: speed as ratios to a plain baseline measured in the same run. The measurements are in tests/bench.
import { pathToFileURL } from "node:url";
import { build } from "./build.mjs";
import { bundle } from "./bundle.mjs";
import { fail } from "./lib.mjs";
import { prepare } from "./prepare.mjs";

try {
  await prepare();
  if (!process.argv.includes("--engine")) await build();
  const { main } = await import(pathToFileURL(await bundle("tests/bench/main.ts", "bench")).href);
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  fail(`The bench could not run. ${error?.stack ?? error}`);
}
