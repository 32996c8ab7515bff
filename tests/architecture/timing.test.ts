/** What the tests say of their own time. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cpuSeconds } from "../../.ci/cpu.mjs";
import { stageTable } from "../../.ci/timing.mjs";

const tellsOfChildren = existsSync("/proc/self/stat");

describe("the time of a run", () => {
  it("is told by stage and added up", () => {
    const times = [
      { name: "check", seconds: 20.4, cpu: 31.2, result: "4 passed, 0 failed, 0 skipped" },
      { name: "unit", seconds: 60.3, cpu: 99.4, result: "9 passed, 1 failed, 0 skipped" },
    ];
    expect(stageTable(times).split("\n")).toEqual([
      "stage      seconds   cpu s   result",
      "check           20      31   4 passed, 0 failed, 0 skipped",
      "unit            60      99   9 passed, 1 failed, 0 skipped",
      "total           81     131",
    ]);
  });

  it("counts what a child has worked once it has ended", ({ skip }) => {
    skip(!tellsOfChildren, "the system does not tell what children have worked");
    const before = cpuSeconds();
    const work =
      'require("node:crypto").pbkdf2Sync("a", "b", 1_000_000, 64, "sha512"); console.log(process.cpuUsage().user)';
    const { stdout } = spawnSync(process.execPath, ["--eval", work], { encoding: "utf8" });
    const worked = Number(stdout) / 1e6;
    expect(worked).toBeGreaterThan(0.1);
    // The system counts in hundredths; starting and ending the child counts too.
    expect(cpuSeconds() - before).toBeGreaterThan(worked - 0.05);
  });
});
