import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it, vi } from "vitest";
import { openDatabase } from "#data/client";
import { applyMigrations, migrationDifference } from "#data/migrate";

const prismaFolder = path.resolve(import.meta.dirname, "../../prisma");

describe("the migrations", () => {
  it("lead exactly to the models", async () => {
    expect(await migrationDifference(prismaFolder)).toBeNull();
  });

  it("have no semicolon in a comment, where the engine would cut a statement on PostgreSQL", () => {
    const folder = path.join(prismaFolder, "migrations");
    const files = readdirSync(folder).filter((name) => existsSync(path.join(folder, name, "migration.sql")));
    const cut = files.filter((name) =>
      /^\s*--.*;/m.test(readFileSync(path.join(folder, name, "migration.sql"), "utf8")),
    );
    expect(files.length).toBeGreaterThan(3);
    expect(cut).toEqual([]);
  });

  it("apply once, then find nothing to do", async () => {
    const open = await openDatabase({ kind: "memory" });
    const first = await applyMigrations(open, prismaFolder);
    const second = await applyMigrations(open, prismaFolder);
    expect(first.length).toBeGreaterThan(0);
    expect(second).toEqual([]);
    expect(await open.db.staff.count()).toBe(0);
    await open.close();
  });

  it("apply with one engine a process, however often its module is read", async () => {
    const open = await openDatabase({ kind: "memory" });
    const first = await applyMigrations(open, prismaFolder);
    await open.close();
    vi.resetModules();
    const anew = await import("#data/migrate");
    const other = await openDatabase({ kind: "memory" });
    expect(await anew.applyMigrations(other, prismaFolder)).toEqual(first);
    expect(await anew.applyMigrations(other, prismaFolder)).toEqual([]);
    await other.close();
  });
});
