/** The table of lib/auth/asvs.md against itself and the project: numbers, standings, and the files that are to show them. */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";

const root = path.resolve(import.meta.dirname, "../..");
const page = readFileSync(path.join(root, "lib/auth/asvs.md"), "utf8");

const rows = page
  .split("\n")
  .filter((line) => /^\| V\d/.test(line))
  .map((line) => {
    const [, number = "", level = "", asks = "", standing = "", why = "", ...rest] = line
      .split("|")
      .map((cell) => cell.trim());
    return { number, level, asks, standing, why, rest };
  });

const filesIn = (text: string) =>
  [...text.matchAll(/`((?:app|lib|content|prisma|tests|public|\.ci)\/[^`]+|[\w.-]+\.(?:ts|json|md))`/g)].map(
    ([, file = ""]) => file,
  );

describe("the table of requirements", () => {
  it("has every requirement of levels 1 and 2 once (OWASP ASVS 5.0.0: 70 of level 1, 183 of level 2)", () => {
    expect(rows.filter(({ number, rest }) => !/^V\d{1,2}(\.\d{1,2}){2}$/.test(number) || rest.join("") !== "")).toEqual(
      [],
    );
    expect(new Set(rows.map(({ number }) => number)).size).toBe(rows.length);
    const ofLevel = (level: string) => rows.filter((row) => row.level === level).length;
    expect([ofLevel("1"), ofLevel("2"), rows.length]).toEqual([70, 183, 253]);
    expect(rows.filter(({ asks }) => asks === "")).toEqual([]);
  });

  it("shows what is met by a file, and gives a reason for the rest", () => {
    const isReason = (text: string) => text.replaceAll(/`[^`]*`/g, "").trim().length >= 8;
    const unproved = rows.filter(({ standing, why }) =>
      standing === "met"
        ? filesIn(why).length === 0
        : !["partly", "not met", "does not apply"].includes(standing) || !isReason(why),
    );
    expect(unproved).toEqual([]);
  });

  it("names only files that are there", () => {
    const named = [...new Set(filesIn(page))];
    expect(named.length).toBeGreaterThan(80);
    expect(named.filter((file) => !existsSync(path.join(root, file)))).toEqual([]);
  });
});
