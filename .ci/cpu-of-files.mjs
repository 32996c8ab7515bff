// A Vitest set-up file: writes what each test file cost to the file CPU_FILE names, one line of JSON each. A worker that
// takes several files counts from the end of the last one; what the start of a worker costs is its first file's.
import { appendFileSync, mkdirSync } from "node:fs";
import path from "node:path";
import { afterAll, expect } from "vitest";
import { cpuSeconds } from "./cpu.mjs";

const counted = Symbol.for("pairwright.cpuCounted");

afterAll(() => {
  const file = process.env.CPU_FILE;
  if (!file) return;
  const now = cpuSeconds();
  const cpu = now - (globalThis[counted] ?? 0);
  globalThis[counted] = now;
  const name = path.relative(process.cwd(), expect.getState().testPath ?? "");
  mkdirSync(path.dirname(file), { recursive: true });
  appendFileSync(file, `${JSON.stringify({ name, cpu })}\n`);
});
