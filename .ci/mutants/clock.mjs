// How long a lane has worked: processor time where the system tells it, as a machine that is busy with other things must
// not decide whether a fault is noticed.
import { readdirSync, readFileSync } from "node:fs";

/** Clock ticks in a second: fixed for programs on Linux, whatever the kernel's own beat. */
const ticksPerSecond = 100;

/**
 * Processor seconds of a process group, with those of its members' children that have ended.
 * @returns {number | null} null where the system does not tell
 */
export function workedSeconds(group, proc = "/proc") {
  let ticks = 0;
  let members = 0;
  for (const name of namesIn(proc)) {
    const stat = statOf(`${proc}/${name}/stat`);
    if (stat === null || stat.group !== group) continue;
    members += 1;
    ticks += stat.ticks;
  }
  return members === 0 ? null : ticks / ticksPerSecond;
}

function namesIn(proc) {
  try {
    return readdirSync(proc).filter((name) => /^\d+$/.test(name));
  } catch {
    return [];
  }
}

function statOf(file) {
  try {
    // The second field is the program's name in brackets and may hold spaces.
    const fields = readFileSync(file, "utf8")
      .replace(/^.*\) /s, "")
      .split(" ");
    const [group, ...times] = [2, 11, 12, 13, 14].map((at) => Number(fields[at]));
    return { group, ticks: times.reduce((sum, one) => sum + one, 0) };
  } catch {
    return null;
  }
}
