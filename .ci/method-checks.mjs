// npm run method-checks: runs the engine's checks and writes their results to content/method-checks.json for the Method page.

import { writeFileSync } from "node:fs";
import path from "node:path";
import { loadBundled } from "./bundle.mjs";
import { root, say } from "./lib.mjs";

const { methodChecks } = await loadBundled("tests/checks/index.ts", "method-checks");
const { about, rows } = methodChecks();
// One row a line, so that a change reads well.
const lines = rows.map((row) => `    ${JSON.stringify(row)}`).join(",\n");
const file = path.join(root, "content", "method-checks.json");
writeFileSync(file, `{\n  "about": ${JSON.stringify(about)},\n  "rows": [\n${lines}\n  ]\n}\n`);
const failed = rows.filter((row) => !row.passed);
for (const { id, name, difference } of failed) say(`FAILED ${id} ${name}: off by ${difference}`);
say(
  `${rows.length - failed.length} of ${rows.length} values within their tolerance, ${path.relative(root, file)} written`,
);
process.exitCode = failed.length > 0 ? 1 : 0;
