// What earlier runs have shown: how long test files take, and which pass on this very code.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";

/**
 * @param {string} hash of everything that decides whether a test passes
 * @param {ReadonlyMap<string, number>} noted seconds of test files, where no run has shown them yet
 */
export function openMemory(file, hash, noted = new Map()) {
  const kept = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
  const seconds = new Map([...noted, ...Object.entries(kept.seconds ?? {})]);
  const sound = new Map(kept.hash === hash ? Object.entries(kept.sound ?? {}) : []);
  return {
    /** @returns {number | null} */
    seconds: (test) => seconds.get(test) ?? null,
    /** @returns {boolean | null} null while it is not known */
    isSound: (test) => sound.get(test) ?? null,
    decide(test, isSound) {
      sound.set(test, isSound);
    },
    /** The shortest time seen: a machine that is busy makes everything longer. */
    learn(passed) {
      for (const [test, took] of passed) seconds.set(test, Math.min(seconds.get(test) ?? took, took));
    },
    failing: () => [...sound].filter(([, isSound]) => !isSound).map(([test]) => test),
    save() {
      mkdirSync(path.dirname(file), { recursive: true });
      const all = { hash, seconds: Object.fromEntries(seconds), sound: Object.fromEntries(sound) };
      writeFileSync(file, JSON.stringify(all));
    },
  };
}
