// npm run sweep [-- --steps N]: every build of the catalogue against the bench rules, at N flexes each (10 unless told).
import { parseArgs } from "node:util";
import { fail, programs, run } from "./lib.mjs";
import { prepare } from "./prepare.mjs";

const { values } = parseArgs({ options: { steps: { type: "string" } } });
const steps = Number(values.steps ?? 10);
if (!Number.isInteger(steps) || steps < 1 || steps > 1000)
  fail(`--steps ${values.steps}: must be a whole number from 1 to 1000.`);

await prepare();
const files = ["tests/engine/configuration/every-build.test.ts"];
const env = { PAIRWRIGHT_SWEEP: "whole", PAIRWRIGHT_SWEEP_STEPS: String(steps) };
const { code } = await run(process.execPath, [programs.vitest, "run", "--project", "unit", ...files], { env });
process.exitCode = code;
