// Processor seconds: of this process and of every child it has waited for. A shared machine is slow by the clock alone.
import { readFileSync } from "node:fs";

const ticksPerSecond = 100;

/** Seconds of processor time so far; of this process alone where the system does not tell of its children. */
export function cpuSeconds() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6 + childrenSeconds();
}

/** Linux keeps the times of children that were waited for as fields 16 and 17, after the name in brackets. */
function childrenSeconds() {
  try {
    const text = readFileSync("/proc/self/stat", "utf8");
    const fields = text.slice(text.lastIndexOf(")") + 2).split(" ");
    return (Number(fields[13]) + Number(fields[14])) / ticksPerSecond;
  } catch {
    return 0;
  }
}
