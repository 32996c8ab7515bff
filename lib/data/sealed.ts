/**
 * Text that a table or a backup must not show: sealed with a key made from the house's own, bound to the row that holds it
 * (AES-256-GCM, NIST SP 800-38D, a fresh nonce of 96 bits each time).
 */
import { createCipheriv, createDecipheriv, randomBytes } from "node:crypto";
import { houseKey } from "#config";

const mark = "sealed-1:";
const nonceBytes = 12;
const tagBytes = 16;

/** Sealed by a key that this shop does not have (any more), or changed since. */
export class Unopenable extends Error {
  constructor(row: string) {
    super(`the text of ${row} was sealed with another key and cannot be opened with this shop's`);
    this.name = "Unopenable";
  }
}

/** @param row what holds the text, such as "letter 4711" */
export function seal(text: string, row: string): string {
  const nonce = randomBytes(nonceBytes);
  const cipher = createCipheriv("aes-256-gcm", houseKey("sealed-texts"), nonce).setAAD(Buffer.from(row));
  const sealed = Buffer.concat([cipher.update(text, "utf8"), cipher.final()]);
  return mark + Buffer.concat([nonce, cipher.getAuthTag(), sealed]).toString("base64");
}

/** The text again; what was stored before texts were sealed is there as it is. @throws Unopenable */
export function unseal(stored: string, row: string): string {
  if (!stored.startsWith(mark)) return stored;
  const bytes = Buffer.from(stored.slice(mark.length), "base64");
  const options = { authTagLength: tagBytes };
  try {
    const nonce = bytes.subarray(0, nonceBytes);
    const decipher = createDecipheriv("aes-256-gcm", houseKey("sealed-texts"), nonce, options);
    decipher.setAAD(Buffer.from(row)).setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes));
    return `${decipher.update(bytes.subarray(nonceBytes + tagBytes)).toString("utf8")}${decipher.final("utf8")}`;
  } catch {
    throw new Unopenable(row);
  }
}
