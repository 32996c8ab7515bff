// The files that the tool reads.
import { readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { isProductCode } from "./rooms.mjs";

const skipped = new Set(["generated", "node_modules", "e2e", "fixtures"]);

function under(root, place) {
  const full = path.join(root, place);
  if (!statSync(full, { throwIfNoEntry: false })) return [];
  if (statSync(full).isFile()) return [place];
  return readdirSync(full, { withFileTypes: true })
    .filter(({ name }) => !skipped.has(name))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap(({ name }) => under(root, path.posix.join(place, name)));
}

const read = (root) => (file) => ({ file, text: readFileSync(path.join(root, file), "utf8") });

/** Product code: where faults are planted. */
export function productSources(root) {
  return ["lib", "app", "proxy.ts"]
    .flatMap((place) => under(root, place))
    .filter(isProductCode)
    .map(read(root));
}

/** Everything else that stands between product code and a test. */
export function testSources(root) {
  return ["tests", "prisma", ".ci", "instrumentation.ts"]
    .flatMap((place) => under(root, place))
    .filter((file) => /\.(tsx?|mjs)$/.test(file) && !/\.d\.m?ts$/.test(file) && !file.startsWith(".ci/mutants/"))
    .map(read(root));
}
