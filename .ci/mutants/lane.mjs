// A process of its own that keeps the test runner warm over one copy of the project. Its parent sends a fault and the
// tests that could notice it; it writes the fault into its copy, runs them in that order until one fails, and puts the
// copy right again. What hangs is the parent's to see: it kills the process.
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { BaseSequencer, createVitest } from "vitest/node";

const tree = process.cwd();
const send = (message) => process.send?.(message);

/** Tests run in the order they were asked for. */
class AsAsked extends BaseSequencer {
  async sort(specifications) {
    return specifications;
  }
}

let failure = null;
const nameOf = (module) => path.relative(tree, module.moduleId);
const reporter = {
  onTestModuleQueued(module) {
    send({ kind: "started", test: nameOf(module) });
  },
  onTestCaseResult(test) {
    const { state, errors } = test.result();
    if (state === "failed") fails(nameOf(test.module), `${test.fullName}: ${errors?.[0]?.message ?? ""}`);
  },
  onTestModuleEnd(module) {
    const state = module.state();
    if (state === "failed") fails(nameOf(module), module.errors()[0]?.message ?? "a hook failed");
    send({ kind: "ended", test: nameOf(module), state });
  },
  onTestRunEnd(_modules, errors, reason) {
    if (errors.length > 0 && reason !== "interrupted") fails("", errors[0]?.message ?? "an error outside of any test");
  },
};

function fails(test, message) {
  failure ??= { test, message: message.split("\n")[0].slice(0, 200) };
}

const vitest = await createVitest(
  "test",
  {
    root: tree,
    config: path.join(tree, "vitest.config.ts"),
    watch: false,
    bail: 1,
    fileParallelism: false,
    sequence: { sequencer: AsAsked },
    reporters: [reporter],
    silent: true,
    passWithNoTests: true,
  },
  { logLevel: "silent", cacheDir: path.join(tree, ".cache", "vite"), server: { watch: null } },
);
// A machine that is busy must not look like a fault; what never ends is the parent's to see.
for (const { config } of vitest.projects) config.hookTimeout = Math.max(config.hookTimeout, 120_000);
const specifications = new Map();
for (const one of await vitest.globTestSpecifications()) specifications.set(path.relative(tree, one.moduleId), one);

async function put(file, text, bundles) {
  if (file === null) return;
  const full = path.join(tree, file);
  writeFileSync(full, text);
  vitest.invalidateFile(full);
  if (bundles.length === 0) return;
  const { bundle } = await import(pathToFileURL(path.join(tree, ".ci", "bundle.mjs")).href);
  for (const { entry, name } of bundles) await bundle(entry, name);
}

async function judge({ file, text, bundles, tests }) {
  failure = null;
  const sound = file === null ? "" : readFileSync(path.join(tree, file), "utf8");
  try {
    await put(file, text, bundles);
    const known = tests.map((test) => specifications.get(test)).filter((one) => one !== undefined);
    for (const project of [...new Set(known.map((one) => one.project))]) {
      if (failure !== null) break;
      await vitest.runTestSpecifications(known.filter((one) => one.project === project));
    }
  } catch (error) {
    // A bundle that cannot be built, or a runner that breaks, is noticed by whoever runs the tests.
    fails("", String(error?.message ?? error));
  } finally {
    await put(file, sound, []);
  }
  send({ kind: "judged", failure });
}

process.on("message", (message) => {
  if (message.kind === "judge") judge(message);
  if (message.kind === "stop") vitest.cancelCurrentRun("keyboard-input");
});
process.on("disconnect", () => process.exit(0));
send({ kind: "ready", tests: [...specifications.keys()] });
