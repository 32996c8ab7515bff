/** What a sheet's page holds that its server does not have yet, and what it comes to when another device was quicker. */
import type { FieldConflict, FieldRecord } from "#services/views";

/** Path → value; null clears. */
export type Patch = Readonly<Record<string, unknown>>;

type Fields = Readonly<Record<string, FieldRecord>>;

/** Kept on the device: the fields, and the version of the sheet they were typed over. */
export interface Left {
  readonly version: number;
  readonly fields: Patch;
}

/** Equal as JSON values; the order of an object's members does not matter. */
export function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(inOrder(a)) === JSON.stringify(inOrder(b));
}

function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (value === null || typeof value !== "object") return value ?? null;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, each]) => [key, inOrder(each)]),
  );
}

/** A measure is its value and its words: they are decided together. */
export function partnersOf(path: string): readonly string[] {
  const [group, key] = path.split(".");
  return group === "typed" || group === "said" ? [`typed.${key}`, `said.${key}`] : [path];
}

/** A patch without the fields of some paths. */
export function without(patch: Patch, paths: readonly string[]): Patch {
  return Object.fromEntries(Object.entries(patch).filter(([path]) => !paths.includes(path)));
}

/** The fields of a patch that are about some paths. */
export function only(patch: Patch, paths: readonly string[]): Patch {
  return Object.fromEntries(Object.entries(patch).filter(([path]) => paths.includes(path)));
}

/**
 * What somebody else changed since `version` and this page has changed too, to something else.
 * @param mine paths that this page itself saved since
 */
export function overtaken(
  waiting: Patch,
  version: number,
  fields: Fields,
  mine: readonly string[] = [],
): readonly FieldConflict[] {
  const found = Object.entries(waiting).flatMap(([path, yours]): readonly FieldConflict[] => {
    const theirs = fields[path];
    if (theirs === undefined || theirs.version <= version || mine.includes(path)) return [];
    return isSame(theirs.value, yours) ? [] : [{ path, yours, theirs: theirs.value, by: theirs.by }];
  });
  // The words of a measure are told with its value.
  return found.filter(
    ({ path }) => !path.startsWith("said.") || !found.some((each) => each.path === partnersOf(path)[0]),
  );
}

export function readLeft(storeKey: string, version: number): Left {
  try {
    const kept = JSON.parse(localStorage.getItem(storeKey) ?? "{}") as Partial<Left> & Patch;
    // Pages of an earlier version kept the fields alone.
    return typeof kept.version === "number" ? (kept as Left) : { version, fields: kept };
  } catch {
    return { version, fields: {} };
  }
}

export function keepLeft(storeKey: string, left: Left): void {
  try {
    if (Object.keys(left.fields).length === 0) localStorage.removeItem(storeKey);
    else localStorage.setItem(storeKey, JSON.stringify(left));
  } catch {
    // A browser without storage still saves to the server.
  }
}
