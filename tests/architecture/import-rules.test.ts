import { execFile } from "node:child_process";
import path from "node:path";
import { promisify } from "node:util";
import { describe, expect, it } from "vitest";

const root = path.resolve(import.meta.dirname, "../..");
const program = path.join(root, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");

interface Cruise {
  readonly summary: {
    readonly totalCruised: number;
    readonly violations: readonly {
      readonly from: string;
      readonly to: string;
      readonly rule: { readonly name: string };
    }[];
  };
}

async function cruise(): Promise<Cruise["summary"]> {
  const words = ["lib", "app", "tests", "prisma", "--config", ".dependency-cruiser.cjs", "--output-type", "json"];
  const options = { cwd: root, maxBuffer: 64 * 1024 * 1024 };
  const { stdout } = await promisify(execFile)(process.execPath, [program, ...words], options);
  return (JSON.parse(stdout) as Cruise).summary;
}

describe("the import rules", () => {
  it("see the house and find nothing wrong in it", async () => {
    const { totalCruised, violations } = await cruise();
    expect(violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`)).toEqual([]);
    // Without a TypeScript parser the tool sees no module and is content.
    expect(totalCruised).toBeGreaterThan(200);
  });
});
