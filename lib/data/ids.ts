/** Row ids: opaque text, never shown to people and never a secret. A use case takes them from its context. */
import { randomUUID } from "node:crypto";

export function newId(): string {
  return randomUUID();
}
