/** The one cast between plain readonly data and the client's own idea of a JSON column. */
import type { Prisma } from "./generated/client";

/** Undefined members are dropped, as JSON does. */
export function asJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue;
}

/** Reads back what this layer alone wrote through {@link asJson}. */
export function fromJson<T>(value: unknown): T {
  return value as T;
}
