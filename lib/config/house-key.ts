/** The shop's own key for digests and signatures: from the settings, or made beside the data on first use. */
import { createHmac, randomBytes } from "node:crypto";
import { chmodSync, linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { type Config, config } from "./config";

/** 32 random bytes as text; readable by its owner alone. It is in no backup but an encrypted one: what it protects ends with it. */
const fileName = "house.key";

type KeySettings = Pick<Config, "dataFolder" | "secret">;

const known = new Map<string, string>();

/**
 * A key for one purpose: from the one secret, so that what is signed for one purpose counts for no other.
 *
 * @param purpose names it for ever, such as "contact-codes"
 * @throws Error when the folder of the data cannot be written to
 */
export function houseKey(purpose: string, settings: KeySettings = config()): Buffer {
  const secret = settings.secret ?? keptSecret(settings.dataFolder);
  return createHmac("sha256", secret).update(purpose).digest();
}

/** A digest of a text that only this shop can make. @returns hexadecimal */
export function houseDigest(purpose: string, text: string, settings: KeySettings = config()): string {
  return createHmac("sha256", houseKey(purpose, settings)).update(text).digest("hex");
}

function keptSecret(folder: string): string {
  const file = path.join(/*turbopackIgnore: true*/ folder, fileName);
  const secret = known.get(file) ?? readKey(file) ?? makeKey(folder, file);
  known.set(file, secret);
  return secret;
}

function readKey(file: string): string | null {
  try {
    const secret = readFileSync(file, "utf8").trim();
    if (secret.length >= 32) return secret;
    throw new Error(
      `${file} holds ${secret.length} characters, a key has at least 32. Remove it, and a new one is made.`,
    );
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return null;
    throw error;
  }
}

/** Written whole before it has its name, and named once: whoever comes second reads the first one's. */
function makeKey(folder: string, file: string): string {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const draft = `${file}.${process.pid}.${randomBytes(4).toString("hex")}`;
  writeFileSync(draft, `${randomBytes(32).toString("hex")}\n`, { mode: 0o600 });
  chmodSync(draft, 0o600);
  try {
    linkSync(draft, file);
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
  } finally {
    rmSync(draft, { force: true });
  }
  const secret = readKey(file);
  if (secret === null) throw new Error(`${file} was made and is not there`);
  return secret;
}
