import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { policy } from "#auth";
import { keptTexts, sources, withoutComments } from "../support/sources";

/** Files that hold what a rule looks for, apart from the places where it belongs. */
function offenders(pattern: RegExp, places: readonly string[], allowed: readonly string[]): readonly string[] {
  const seen = sources(...places);
  expect(seen.length).toBeGreaterThan(0);
  return seen
    .filter((source) => !allowed.includes(source.path) && pattern.test(withoutComments(source.text)))
    .map((source) => source.path);
}

describe("the house", () => {
  it("reads the environment in lib/config alone", () => {
    const allowed = ["lib/config/config.ts", "instrumentation.ts"];
    expect(
      offenders(/process\.env/, ["lib", "app", "prisma", "proxy.ts", "instrumentation.ts", "next.config.ts"], allowed),
    ).toEqual([]);
  });

  it("asks the clock only at its doors", () => {
    const doors = ["lib/command/main.ts", "prisma/seed.ts", "app/health/route.ts"];
    const found = offenders(/Date\.now\(|new Date\(\)/, ["lib", "prisma", "app"], doors);
    expect(found.filter((file) => !file.startsWith("app/_server/"))).toEqual([]);
  });

  it("makes randomness only where ids and secrets are made", () => {
    const allowed = [
      "lib/data/ids.ts",
      "lib/auth/tokens.ts",
      "lib/config/house-key.ts",
      "lib/data/sealed.ts",
      "lib/services/letters/contact-code.ts",
      "app/_server/faults.ts",
    ];
    const randomness = /Math\.random|randomUUID|randomBytes|randomInt|getRandomValues/;
    expect(offenders(randomness, ["lib", "app", "prisma"], allowed)).toEqual([]);
  });

  it("starts transactions in one file", () => {
    expect(offenders(/\$transaction\b/, ["lib", "app", "prisma"], ["lib/data/transaction.ts"])).toEqual([]);
  });

  it("writes promise dates in one file, where their event is written too", () => {
    const writes = /(updateOrder|order\.update(Many)?)\([^;]*\b(promisedOn|promiseClass)\b/s;
    expect(offenders(writes, ["lib", "app", "prisma"], ["lib/services/promises/set-promise.ts"])).toEqual([]);
  });

  it("mints actors in lib/auth alone", () => {
    const found = offenders(
      /\b(mintStaff|mintGuest)\b|as (StaffActor|Guest|SystemActor|Actor)\b/,
      ["lib", "app", "prisma"],
      [],
    );
    expect(found.filter((file) => !file.startsWith("lib/auth/"))).toEqual([]);
  });

  it("names client components so that the import rules can see them", () => {
    const framework = /(^|\/)(error|global-error)\.tsx$/;
    const files = sources("app").filter((source) => !framework.test(source.path));
    const wrong = files.filter((source) => {
      const saysClient = /^\s*["']use client["']/.test(withoutComments(source.text));
      return saysClient !== /\.client\.tsx?$/.test(source.path);
    });
    expect(files.length).toBeGreaterThan(0);
    expect(wrong.map((source) => source.path)).toEqual([]);
  });

  it("asks the policy in every row of its table", () => {
    const text = sources("lib/services", "lib/auth", "app")
      .filter(({ path: file }) => file !== "lib/auth/policy.ts")
      .map((source) => source.text)
      .join("\n");
    expect(Object.keys(policy).filter((action) => !text.includes(`"${action}"`))).toEqual([]);
  });
});

describe("the repository", () => {
  it("keeps no path of a machine and no address of a registry", () => {
    const telling = /(^|[\s"'`(=])\/(work|home|root|Users)\/|registry\.npmjs|(npm|pypi)\.[\w.-]*(artifactory|nexus)/m;
    const self = "tests/architecture/house-rules.test.ts";
    const found = keptTexts().filter((source) => source.path !== self && telling.test(source.text));
    expect(found.map((source) => source.path)).toEqual([]);
  });

  it("needs nothing beside itself: a relative path in a source leads to something in the project", () => {
    const root = path.resolve(import.meta.dirname, "../..");
    // Tests of planted faults write small programs of their own, as text.
    const files = keptTexts().filter(
      ({ path: file }) => /\.(m?js|tsx?)$/.test(file) && !file.startsWith("tests/architecture/mutants/"),
    );
    // What a run makes for itself is in .cache.
    const isThere = (place: string) =>
      place.startsWith(path.join(root, ".cache")) ||
      (place.startsWith(root) && ["", ".ts", ".tsx", ".json", "/index.ts"].some((end) => existsSync(place + end)));
    const lost = files.flatMap(({ path: file, text }) =>
      [...withoutComments(text).matchAll(/["'`]((?:\.\.\/)+[\w@().[\]/-]*)["'`]/g)]
        .map(([, relative = ""]) => ({ file, relative, place: path.resolve(root, path.dirname(file), relative) }))
        .filter(({ place }) => !isThere(place)),
    );
    expect(files.length).toBeGreaterThan(500);
    expect(lost.map(({ file, relative }) => `${file}: ${relative}`)).toEqual([]);
  });

  it("cites no page that is not here", () => {
    const files = keptTexts();
    const pages = new Set(
      files.map(({ path: file }) => path.posix.basename(file)).filter((name) => name.endsWith(".md")),
    );
    const citing = files
      .filter(({ path: file }) => /^(tests|lib|app|prisma|\.ci)\//.test(file))
      .flatMap(({ path: file, text }) => [...text.matchAll(/[\w-]+\.md\b/g)].map(([page]) => ({ file, page })));
    expect(pages.has("DEVELOPERS.md")).toBe(true);
    expect(citing.filter(({ page }) => !pages.has(page)).map(({ file, page }) => `${file}: ${page}`)).toEqual([]);
  });

  it("locks packages by their digest, not by where they were fetched", () => {
    const file = path.resolve(import.meta.dirname, "../../package-lock.json");
    const { packages } = JSON.parse(readFileSync(file, "utf8")) as {
      packages: Readonly<
        Record<string, { readonly resolved?: string; readonly integrity?: string; readonly inBundle?: boolean }>
      >;
    };
    // A package inside another's archive is covered by that one's digest.
    const entries = Object.entries(packages).filter(([name, entry]) => name !== "" && entry.inBundle !== true);
    expect(entries.length).toBeGreaterThan(100);
    expect(entries.filter(([, entry]) => entry.resolved !== undefined).map(([name]) => name)).toEqual([]);
    expect(entries.filter(([, entry]) => !entry.integrity?.startsWith("sha512-")).map(([name]) => name)).toEqual([]);
  });

  it("has exactly one copy of the embedded database in the tree", () => {
    // Two copies in one process turn known errors into unknown ones: the adapter compares by identity.
    const file = path.resolve(import.meta.dirname, "../../package-lock.json");
    const { packages } = JSON.parse(readFileSync(file, "utf8")) as { packages: Readonly<Record<string, unknown>> };
    expect(Object.keys(packages).filter((name) => name.endsWith("node_modules/@electric-sql/pglite"))).toHaveLength(1);
  });
});
