/** Staff passwords: argon2id with 19 MiB, two passes, one lane (OWASP Password Storage Cheat Sheet's first choice, from memory). */
import { hash, verify } from "@node-rs/argon2";

/** Algorithm 2 is argon2id; the package's enum is a const enum, which isolated modules cannot read. */
const settings = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export const passwordLength = { min: 10, max: 200 } as const;

export function hashPassword(password: string): Promise<string> {
  return hash(password, settings);
}

export async function isPassword(password: string, passwordHash: string): Promise<boolean> {
  try {
    return await verify(passwordHash, password);
  } catch {
    return false;
  }
}

let decoy: Promise<string> | undefined;

/** Takes as long as a real check, so that an unknown address cannot be told from a wrong password by the clock. */
export async function spendPasswordTime(password: string): Promise<void> {
  decoy ??= hashPassword("nobody's password");
  await isPassword(password, await decoy);
}
