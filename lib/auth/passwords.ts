/** Staff passwords and short codes: argon2id with 19 MiB, two passes, one lane (OWASP Password Storage Cheat Sheet's first choice, from memory). */
import { hash, verify } from "@node-rs/argon2";

/** Algorithm 2 is argon2id; the package's enum is a const enum, which isolated modules cannot read. */
const settings = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

/** One way of writing for what looks the same (NIST SP 800-63B-4 asks for it); plain letters stay as they are. */
const oneWay = (secret: string) => secret.normalize("NFKC");

/** A password or a short code as it is kept. */
export function hashSecret(secret: string): Promise<string> {
  return hash(oneWay(secret), settings);
}

export async function isSecret(secret: string, secretHash: string): Promise<boolean> {
  try {
    return await verify(secretHash, oneWay(secret));
  } catch {
    return false;
  }
}

let decoy: Promise<string> | undefined;

/** Takes as long as a real check, so that an unknown person cannot be told from a wrong secret by the clock. */
export async function spendSecretTime(secret: string): Promise<void> {
  decoy ??= hashSecret("nobody's password");
  await isSecret(secret, await decoy);
}
