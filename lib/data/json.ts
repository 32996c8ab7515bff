/** Plain readonly data as the client wants a JSON column; how one is read is in columns.ts. */
import type { Prisma } from "./generated/client";

/** Undefined members are dropped, as JSON does. */
export function asJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue;
}
