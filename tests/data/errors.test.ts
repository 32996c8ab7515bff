/** What the database client throws, told as one of ours: the client's published codes (P....) and SQLSTATE classes. */
import { beforeAll, describe, expect, it } from "vitest";
import { Conflict, isRetryable, NotFound, translateError, Unavailable } from "#data/errors";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

type KnownError = new (message: string, more: object) => Error;
/** The client's own class, as it comes with a row that is missing. */
let Known: KnownError = Error as unknown as KnownError;
beforeAll(async () => {
  const missing = await db()
    .staff.update({ where: { id: "nobody" }, data: { name: "x" } })
    .catch((error: unknown) => error);
  Known = (missing as Error).constructor as KnownError;
});

interface Thrown {
  readonly code: string;
  readonly meta?: Record<string, unknown> | undefined;
  readonly message?: string;
}
const known = ({ code, meta, message = "it failed" }: Thrown) =>
  new Known(message, { code, clientVersion: "x", ...(meta ? { meta } : {}) });
const driver = (cause: unknown) => ({ driverAdapterError: { cause } });

describe("a driver's error", () => {
  it.each([
    ["a write conflict", { code: "P2034" }],
    ["a serialization failure of a raw statement", { code: "P2010", meta: { code: "40001" } }],
    ["a deadlock, in the driver's own words", { code: "P2010", meta: driver({ originalCode: "40P01" }) }],
  ])("that may simply be tried again: %s", (_, thrown) => {
    const error = known(thrown);
    expect(isRetryable(error)).toBe(true);
    const told = translateError(error);
    expect(told).toBeInstanceOf(Conflict);
    expect(told).toMatchObject({ columns: [], message: "two changes met; try again", cause: error });
  });

  it.each([{ code: "P2010", meta: { code: "23505" } }, { code: "P2002" }])("that may not: %j", (thrown) => {
    expect(isRetryable(known(thrown))).toBe(false);
  });

  it.each([new Error("x"), { code: 40001 }, null, "P2034"])("of another kind that may not: %j", (error) => {
    expect(isRetryable(error)).toBe(false);
  });

  it.each([
    [driver({ constraint: { fields: ['"email"', "name"] } }), ["email", "name"]],
    [driver({ constraint: { index: "staff_email_key" } }), ["staff_email_key"]],
    [{ target: ["email"] }, ["email"]],
    [driver({ originalMessage: 'violates constraint "staff_pkey"' }), ["staff_pkey"]],
    [driver({}), ["from_message"]],
    [undefined, ["from_message"]],
  ])("about a value that is taken names it: %j", (meta, columns) => {
    const told = translateError(known({ code: "P2002", meta, message: 'unique constraint "from_message"' }));
    expect(told).toBeInstanceOf(Conflict);
    expect((told as Conflict).columns).toEqual(columns);
    expect((told as Conflict).message).toBe(`${columns.join(", ")}: already taken`);
  });

  it("about a value that nothing names says so", () => {
    expect((translateError(known({ code: "P2002" })) as Conflict).columns).toEqual(["value"]);
  });

  it("about a missing row names what is missing", () => {
    expect(translateError(known({ code: "P2025", meta: { modelName: "Pair" } }))).toMatchObject({
      what: "Pair",
      message: "Pair is not there",
    });
    expect(translateError(known({ code: "P2025" }))).toMatchObject({ what: "the record" });
    expect(translateError(known({ code: "P2025" }))).toBeInstanceOf(NotFound);
  });

  it.each(["P1001", "P2024", "P2028"])("that the database is away: %s", (code) => {
    const error = known({ code });
    expect(translateError(error)).toBeInstanceOf(Unavailable);
    expect(translateError(error)).toMatchObject({ cause: error });
  });

  it.each(["ECONNREFUSED", "ETIMEDOUT", "EPIPE"])("of the socket, that the database is away: %s", (code) => {
    expect(translateError(Object.assign(new Error("x"), { code }))).toBeInstanceOf(Unavailable);
  });

  it("that is none of these comes back as it was", () => {
    const others = [
      known({ code: "P2003" }),
      Object.assign(new Error("x"), { code: "EACCES" }),
      new RangeError("ours"),
      undefined,
    ];
    for (const error of others) expect(translateError(error)).toBe(error);
  });
});
