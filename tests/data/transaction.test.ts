import { describe, expect, it } from "vitest";
import { insertStaff } from "#data/access";
import { Conflict, NotFound, translateError } from "#data/errors";
import { transaction, translated } from "#data/transaction";
import { testNow } from "../support/clock";
import { databaseForTests, testBackend } from "../support/db";

const db = databaseForTests();

function person(id: string, email = `${id}@thistle-yard.example`) {
  return { id, email, name: id, role: "desk", passwordHash: "x", createdAt: testNow } as const;
}

describe("transaction", () => {
  it("keeps nothing when the work throws", async () => {
    const work = transaction(db(), async (tx) => {
      await insertStaff(tx, person("a"));
      throw new Error("stop");
    });
    await expect(work).rejects.toThrow("stop");
    expect(await db().staff.count()).toBe(0);
  });

  it("tells a taken value as a Conflict with the column", async () => {
    await insertStaff(db(), person("a", "same@thistle-yard.example"));
    const error = await transaction(db(), (tx) => insertStaff(tx, person("b", "same@thistle-yard.example"))).catch(
      (caught: unknown) => caught,
    );
    expect(error).toBeInstanceOf(Conflict);
    expect((error as Conflict).columns.join()).toContain("email");
  });

  it("tells a missing row as NotFound", async () => {
    const work = translated(db().staff.update({ where: { id: "nobody" }, data: { name: "x" } }));
    await expect(work).rejects.toBeInstanceOf(NotFound);
  });

  it("lets exactly one of two racing conditional updates through", async () => {
    await insertStaff(db(), person("a"));
    const close = () =>
      transaction(db(), async (tx) => {
        const { count } = await tx.staff.updateMany({
          where: { id: "a", closedAt: null },
          data: { closedAt: testNow },
        });
        return count;
      });
    const counts = await Promise.all(Array.from({ length: 12 }, close));
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(1);
  });

  it("runs again after a deadlock, so both parties finish", async ({ skip }) => {
    skip((await testBackend()) !== "postgres", "one connection cannot deadlock with itself; runs on PostgreSQL");
    await insertStaff(db(), person("a"));
    await insertStaff(db(), person("b"));
    let firstSteps = 0;
    const both = async (first: string, second: string) =>
      transaction(db(), async (tx) => {
        await tx.staff.update({ where: { id: first }, data: { name: `${first}${second}` } });
        firstSteps += 1;
        // Wait inside only to make the parties meet: each holds one row before asking for the other's.
        for (let turn = 0; turn < 200 && firstSteps < 2; turn += 1) await tx.$queryRaw`SELECT 1`;
        await tx.staff.update({ where: { id: second }, data: { name: `${first}${second}` } });
      });
    await Promise.all([both("a", "b"), both("b", "a")]);
    expect(firstSteps).toBeGreaterThan(2);
    const names = await db().staff.findMany({ select: { name: true } });
    expect(new Set(names.map((row) => row.name)).size).toBe(1);
  });

  it("runs again after a serialization failure in a raw statement", async () => {
    let runs = 0;
    const result = await transaction(db(), async (tx) => {
      runs += 1;
      if (runs < 3) await tx.$executeRawUnsafe("DO $$ BEGIN RAISE EXCEPTION 'again' USING ERRCODE = '40001'; END $$");
      return "done";
    });
    expect([result, runs]).toEqual(["done", 3]);
  });

  it("gives up as a Conflict when the database keeps asking to try again", async () => {
    const work = transaction(db(), (tx) =>
      tx.$executeRawUnsafe("DO $$ BEGIN RAISE EXCEPTION 'again' USING ERRCODE = '40001'; END $$"),
    );
    await expect(work).rejects.toBeInstanceOf(Conflict);
  });
});

describe("translateError", () => {
  it("leaves what it does not know as it was", () => {
    const error = new TypeError("x");
    expect(translateError(error)).toBe(error);
  });
});

describe("timestamps", () => {
  it("come back as the instant that was stored, whatever the zone of the process or the server", async () => {
    await insertStaff(db(), person("a"));
    const [row] = await db().staff.findMany();
    const raw = await db().$queryRaw<
      { epoch: number }[]
    >`SELECT extract(epoch FROM created_at)::float8 AS epoch FROM staff`;
    expect(row?.createdAt.toISOString()).toBe(testNow.toISOString());
    expect(raw[0]?.epoch).toBe(testNow.getTime() / 1000);
    expect(await db().staff.count({ where: { createdAt: testNow } })).toBe(1);
  });
});
