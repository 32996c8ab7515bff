import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";

const root = path.resolve(import.meta.dirname, "../..");
const read = (file: string) => readFileSync(path.join(root, file), "utf8");
const bytes = (file: string) => Buffer.byteLength(read(file));

/** Every room that says of itself what lives there. */
const rooms = [
  "lib/engine",
  "lib/engine/flex",
  "lib/engine/optimise",
  "lib/engine/parts",
  "lib/engine/routing",
  "lib/shop",
  "lib/services",
  "lib/data",
  "lib/papers",
  "lib/schemas",
  "app",
  "prisma",
  "tests",
];
const pages = rooms.map((room) => `${room}/README.md`);

describe("the developers' pages", () => {
  it("stay short: the map within 9 kB, a room's page within 5", () => {
    expect(bytes("DEVELOPERS.md")).toBeLessThanOrEqual(9_000);
    for (const page of pages) expect(bytes(page), page).toBeLessThanOrEqual(5_000);
  });

  it("date every decision of a room", () => {
    for (const page of pages) {
      const [, decisions = ""] = read(page).split("\n## Decisions\n");
      const entries = decisions.split("\n").filter((line) => line.startsWith("- "));
      expect(entries.length, page).toBeGreaterThan(0);
      for (const entry of entries) expect(entry, page).toMatch(/^- 20\d\d-\d\d-\d\d \*\*.+\*\*/);
    }
  });

  it("name only files that are there", () => {
    const named = ["DEVELOPERS.md", "README.md", "content/README.md", ...pages].flatMap((page) =>
      [...read(page).matchAll(/`((?:app|lib|content|prisma|tests|public|\.ci)\/[^`*… ]+)`/g)].map(([, file = ""]) => ({
        page,
        file,
      })),
    );
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter(({ file }) => !existsSync(path.join(root, file)))).toEqual([]);
  });

  it("list each use case on the way from call to shelf where it stands", () => {
    const [, way = ""] = read("DEVELOPERS.md").split("\n## One order, from call to shelf\n");
    const [section = ""] = way.split("\n## ");
    const rooms = /^(sheets|quotes|orders|money|graphics|promises|floor|learning|stock|papers)\//;
    const files = [...section.matchAll(/`([a-z/-]+\/[a-z-]+)`/g)].map(([, name = ""]) =>
      rooms.test(name) ? `lib/services/${name}` : /^(services|shop|engine|papers)\//.test(name) ? `lib/${name}` : name,
    );
    const gone = files.filter((file) => ![file, `${file}.ts`].some((each) => existsSync(path.join(root, each))));
    expect(files.length).toBeGreaterThan(10);
    expect(gone).toEqual([]);
  });
});
