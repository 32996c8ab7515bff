/** What the database client throws, told as one of ours: the client's published codes (P....) and SQLSTATE classes. */
import { describe, expect, it } from "vitest";
import { Conflict, isRetryable, NotFound, translateError, Unavailable } from "#data/errors";
import { Prisma } from "../../lib/data/generated/client";

const known = (code: string, meta?: Record<string, unknown>, message = "it failed") =>
  new Prisma.PrismaClientKnownRequestError(message, { code, clientVersion: "x", ...(meta ? { meta } : {}) });
const driver = (cause: unknown) => ({ driverAdapterError: { cause } });

describe("a driver's error", () => {
  it.each([
    ["a write conflict", known("P2034")],
    ["a serialization failure of a raw statement", known("P2010", { code: "40001" })],
    ["a deadlock, in the driver's own words", known("P2010", driver({ originalCode: "40P01" }))],
  ])("that may simply be tried again: %s", (_, error) => {
    expect(isRetryable(error)).toBe(true);
    const told = translateError(error);
    expect(told).toBeInstanceOf(Conflict);
    expect(told).toMatchObject({ columns: [], message: "two changes met; try again", cause: error });
  });

  it.each([known("P2010", { code: "23505" }), known("P2002"), new Error("x"), { code: 40001 }, null, "P2034"])(
    "that may not: %j",
    (error) => {
      expect(isRetryable(error)).toBe(false);
    },
  );

  it.each([
    [driver({ constraint: { fields: ['"email"', "name"] } }), ["email", "name"]],
    [driver({ constraint: { index: "staff_email_key" } }), ["staff_email_key"]],
    [{ target: ["email"] }, ["email"]],
    [driver({ originalMessage: 'violates constraint "staff_pkey"' }), ["staff_pkey"]],
    [driver({}), ["from_message"]],
    [undefined, ["from_message"]],
  ])("about a value that is taken names it: %j", (meta, columns) => {
    const told = translateError(known("P2002", meta, 'unique constraint "from_message"'));
    expect(told).toBeInstanceOf(Conflict);
    expect((told as Conflict).columns).toEqual(columns);
    expect((told as Conflict).message).toBe(`${columns.join(", ")}: already taken`);
  });

  it("about a value that nothing names says so", () => {
    expect((translateError(known("P2002")) as Conflict).columns).toEqual(["value"]);
  });

  it("about a missing row names what is missing", () => {
    expect(translateError(known("P2025", { modelName: "Pair" }))).toMatchObject({
      what: "Pair",
      message: "Pair is not there",
    });
    expect(translateError(known("P2025"))).toMatchObject({ what: "the record" });
    expect(translateError(known("P2025"))).toBeInstanceOf(NotFound);
  });

  it.each([
    known("P1001"),
    known("P2024"),
    known("P2028"),
    Object.assign(new Error("x"), { code: "ECONNREFUSED" }),
    Object.assign(new Error("x"), { code: "ETIMEDOUT" }),
    new Prisma.PrismaClientInitializationError("x", "x"),
  ])("that the database is away: %s", (error) => {
    expect(translateError(error)).toBeInstanceOf(Unavailable);
    expect(translateError(error)).toMatchObject({ cause: error });
  });

  it.each([known("P2003"), Object.assign(new Error("x"), { code: "EACCES" }), new RangeError("ours"), undefined])(
    "that is none of these comes back as it was: %s",
    (error) => {
      expect(translateError(error)).toBe(error);
    },
  );
});
