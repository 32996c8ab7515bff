/** One text for one value: members in order of their names, no spaces. The same value has the same hash for ever. */
import { createHash } from "node:crypto";

export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) => {
    if (typeof inner !== "object" || inner === null || Array.isArray(inner)) return inner;
    const members = Object.entries(inner).toSorted(([left], [right]) => (left < right ? -1 : left > right ? 1 : 0));
    return Object.fromEntries(members);
  });
}

export function sha256Of(value: unknown): string {
  return createHash("sha256").update(canonicalJson(value)).digest("hex");
}
