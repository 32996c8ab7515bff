// A Vitest reporter beside its JSON one, which leaves out why a test was skipped. Writes to the file SKIPS_FILE names.
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";

export default class SkipReporter {
  onTestRunEnd(testModules) {
    const file = process.env.SKIPS_FILE;
    if (!file) throw new Error("SKIPS_FILE: name the file that the reasons of skipped tests are written to");
    const skips = testModules.flatMap((module) =>
      [...module.children.allTests("skipped")].map((test) => ({
        name: `${module.relativeModuleId} > ${test.fullName}`,
        reason: test.result().note ?? null,
      })),
    );
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, JSON.stringify(skips));
  }
}
