import path from "node:path";
import { describe, expect, it } from "vitest";
import { openDatabase } from "../../lib/data/client";
import { applyMigrations, migrationDifference } from "../../lib/data/migrate";

const prismaFolder = path.resolve(import.meta.dirname, "../../prisma");

describe("the migrations", () => {
  it("lead exactly to the models", async () => {
    expect(await migrationDifference(prismaFolder)).toBeNull();
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
});
