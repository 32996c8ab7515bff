// npm run check: format and lint, types, import rules, dead code. Everything runs, then the verdict.

import { bin, run, say } from "./lib.mjs";
import { generate, install, requireNode, typegen } from "./prepare.mjs";

const node = process.execPath;

/** The house has some 900; a tool that is content with fewer has not seen it. */
const leastModules = 500;

/** Each check: its name, the program, and what else must be true of its output. */
const checks = [
  { name: "format and lint", args: [bin("@biomejs/biome/bin/biome"), "check", "--error-on-warnings", "."] },
  { name: "types", args: [bin("typescript/bin/tsc"), "--noEmit"] },
  {
    name: "import rules",
    args: [
      bin("dependency-cruiser/bin/dependency-cruise.mjs"),
      "lib",
      "app",
      "tests",
      "prisma",
      "--config",
      ".dependency-cruiser.cjs",
    ],
    // Without a TypeScript parser it sees nothing and is content with that.
    verdict: (output) => {
      const modules = Number(/\((\d+) modules/.exec(output)?.[1] ?? /(\d+) modules/.exec(output)?.[1] ?? 0);
      return modules > leastModules ? null : `it saw ${modules} modules`;
    },
  },
  { name: "dead code", args: [bin("knip/bin/knip.js"), "--no-progress"] },
];

/** @returns {Promise<{passed: number, failed: number}>} */
export async function check(names = checks.map((one) => one.name)) {
  let failed = 0;
  const chosen = checks.filter((one) => names.includes(one.name));
  for (const { name, args, verdict } of chosen) {
    const began = performance.now();
    const { code, output } = await run(node, args, { quiet: true });
    const objection = code === 0 ? (verdict?.(output) ?? null) : `ended with code ${code}`;
    const seconds = ((performance.now() - began) / 1000).toFixed(1);
    say(
      `${objection === null ? "ok    " : "FAILED"} ${name} (${seconds} s)${objection === null ? "" : `: ${objection}`}`,
    );
    if (objection !== null) {
      failed += 1;
      say(output);
    }
  }
  return { passed: chosen.length - failed, failed };
}

if (process.argv[1] === import.meta.filename) {
  requireNode();
  await install();
  await generate();
  await typegen();
  const names = process.argv.slice(2);
  const { passed, failed } = await check(names.length > 0 ? names : undefined);
  say(`${passed} of ${passed + failed} checks passed`);
  process.exitCode = failed > 0 ? 1 : 0;
}
