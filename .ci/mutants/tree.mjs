// A copy of the project to break: faults are written there, never in the checkout.
import { cpSync, mkdirSync, readdirSync, symlinkSync } from "node:fs";
import path from "node:path";

const left = new Set([".git", ".next", ".cache", "node_modules", "test-results"]);

/** Copies the project to `to`; packages are shared. */
export function copyProject(root, to) {
  mkdirSync(to, { recursive: true });
  for (const name of readdirSync(root).filter((one) => !left.has(one)))
    cpSync(path.join(root, name), path.join(to, name), { recursive: true });
  symlinkSync(path.join(root, "node_modules"), path.join(to, "node_modules"));
}
