/**
 * The one place that knows the shape of the database client's errors, which differs between the two drivers and is not
 * stable between releases.
 */
import { Prisma } from "./generated/client";

/** Two writers met: a value that must be unique exists already, or the database asks to try again. */
export class Conflict extends Error {
  constructor(
    /** Columns of the violated constraint, snake_case; empty when it was a clash of transactions. */
    readonly columns: readonly string[],
    options: { cause: unknown },
  ) {
    super(columns.length > 0 ? `${columns.join(", ")}: already taken` : "two changes met; try again", options);
    this.name = "Conflict";
  }
}

/** A row that had to be there is not. */
export class NotFound extends Error {
  constructor(
    readonly what: string,
    options?: { cause: unknown },
  ) {
    super(`${what} is not there`, options);
    this.name = "NotFound";
  }
}

/** The database cannot be reached or did not answer in time. */
export class Unavailable extends Error {
  constructor(options: { cause: unknown }) {
    super("the database does not answer", options);
    this.name = "Unavailable";
  }
}

/** Text with a sign that the database has no place for (NUL). */
export class Unkeepable extends Error {
  constructor(options: { cause: unknown }) {
    super("a sign in this text cannot be kept", options);
    this.name = "Unkeepable";
  }
}

/** SQLSTATE: not in the repertoire of characters; in JSON, not translatable. */
const unkeepable = /\b(22021|22P05)\b|invalid byte sequence|unsupported Unicode escape/;

const unavailableCodes = new Set([
  "P1000",
  "P1001",
  "P1002",
  "P1003",
  "P1008",
  "P1010",
  "P1011",
  "P1017",
  "P2024",
  "P2028",
  "P2037",
]);
const socketCodes = new Set(["ECONNREFUSED", "ECONNRESET", "ENOENT", "ETIMEDOUT", "EPIPE", "ENOTFOUND"]);

/** SQLSTATE classes after which the same transaction may simply be run again. */
const retrySqlStates = new Set(["40001", "40P01"]);

/** Turns a driver's error into one of ours; anything unknown comes back as it was. */
export function translateError(error: unknown): unknown {
  if (isRetryable(error)) return new Conflict([], { cause: error });
  if (error instanceof Prisma.PrismaClientKnownRequestError) {
    if (error.code === "P2002") return new Conflict(constraintColumns(error), { cause: error });
    if (error.code === "P2025") return new NotFound(modelName(error), { cause: error });
    if (unkeepable.test(`${sqlStateOf(error)} ${error.message}`)) return new Unkeepable({ cause: error });
    if (unavailableCodes.has(error.code)) return new Unavailable({ cause: error });
  }
  if (error instanceof Prisma.PrismaClientInitializationError || socketCodes.has(codeOf(error))) {
    return new Unavailable({ cause: error });
  }
  return error;
}

/** True for a serialization failure or a deadlock, in the client's words (P2034) or a raw statement's (P2010 + SQLSTATE). */
export function isRetryable(error: unknown): boolean {
  if (codeOf(error) === "P2034") return true;
  return error instanceof Prisma.PrismaClientKnownRequestError && retrySqlStates.has(sqlStateOf(error));
}

/** Which unique constraint was violated: adapter-pg names the index, PGlite the columns, both name it in the message. */
function constraintColumns(error: Prisma.PrismaClientKnownRequestError): readonly string[] {
  const cause = driverCause(error);
  const constraint = cause.constraint;
  if (isRecord(constraint) && Array.isArray(constraint.fields)) {
    return constraint.fields.map((field) => String(field).replaceAll('"', ""));
  }
  if (isRecord(constraint) && typeof constraint.index === "string") return [constraint.index];
  const target = error.meta?.target;
  if (Array.isArray(target)) return target.map(String);
  const named = /constraint "([^"]+)"/.exec(String(cause.originalMessage ?? error.message));
  return [named?.[1] ?? "value"];
}

function modelName(error: Prisma.PrismaClientKnownRequestError): string {
  return typeof error.meta?.modelName === "string" ? error.meta.modelName : "the record";
}

function sqlStateOf(error: Prisma.PrismaClientKnownRequestError): string {
  const cause = driverCause(error);
  if (typeof cause.originalCode === "string") return cause.originalCode;
  return typeof error.meta?.code === "string" ? error.meta.code : "";
}

function driverCause(error: Prisma.PrismaClientKnownRequestError): Readonly<Record<string, unknown>> {
  const driverError = error.meta?.driverAdapterError;
  const cause = isRecord(driverError) ? driverError.cause : undefined;
  return isRecord(cause) ? cause : {};
}

function codeOf(error: unknown): string {
  return isRecord(error) && typeof error.code === "string" ? error.code : "";
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null;
}
