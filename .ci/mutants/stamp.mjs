import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";

/** What a file held: another text, another stamp; null for a file that is not there. */
export function stampOf(root, file) {
  try {
    return createHash("sha256")
      .update(readFileSync(path.join(root, file)))
      .digest("hex")
      .slice(0, 12);
  } catch {
    return null;
  }
}
