/**
 * Groups: the strips that fill one position of a pair, two for a single strip a ski, four for a couple. In order of
 * modulus, neighbours make the closest groups; strips of one board make the best twins.
 */
import type { Strip, StripLimits, StripPosition } from "./types";

export interface Group {
  readonly strips: readonly Strip[];
  readonly meanMpa: number;
  /** (max − min)/mean, per cent. */
  readonly spreadPercent: number;
  /** Strips that have their twin from the same board in the group, as a share. */
  readonly sameBoardShare: number;
  /** 0 for the oldest stock to 1 for the newest. */
  readonly freshness: number;
  /** 0 where stock of this modulus is plenty to 1 where it is rare. */
  readonly rarity: number;
}

export function mayLieAt(strip: Strip, position: StripPosition): boolean {
  return isOfKind(strip, position) && isLargeEnough(strip, position);
}

/** Species and grade, whatever its size. */
export function isOfKind(strip: Strip, position: StripPosition): boolean {
  return position.species.includes(strip.species) && (position.grades?.includes(strip.grade) ?? true);
}

function isLargeEnough({ size }: Strip, { least }: StripPosition): boolean {
  if (!size || !least) return true;
  return size.widthMm >= least.widthMm && size.heightMm >= least.heightMm && size.lengthMm >= least.lengthMm;
}

/** All groups worth trying for a position, within the spread limit. */
export function groupsFor(position: StripPosition, strips: readonly Strip[], limits: StripLimits): readonly Group[] {
  const size = 2 * position.perSki;
  const usable = strips.filter((strip) => mayLieAt(strip, position)).toSorted(byModulus);
  const about = surveyOf(usable);
  const groups = [...windows(usable, size), ...windows(boardTwins(usable), size / 2).map((pairs) => pairs.flat())]
    .map((each) => groupOf(each, about))
    .filter((group) => group.spreadPercent <= (limits.groupSpreadPercent ?? Number.POSITIVE_INFINITY));
  return distinct(groups);
}

/**
 * Thrifty groups: couples only from a tiling of the stock into fours that leaves as few strips over as can be (from the
 * softest up, each four as soon as it is close enough), single strips from what is left over, while there is any.
 */
export function thriftyGroupsFor(
  position: StripPosition,
  strips: readonly Strip[],
  limits: StripLimits,
): readonly Group[] {
  const usable = strips.filter((strip) => mayLieAt(strip, position)).toSorted(byModulus);
  const tiles = tilesOf(usable, limits.groupSpreadPercent ?? Number.POSITIVE_INFINITY);
  const groups = groupsFor(position, strips, limits);
  if (position.perSki === 2) {
    const keys = new Set(tiles.map(keyOf));
    return groups.filter((group) => keys.has(keyOf(group.strips)));
  }
  const tiled = new Set(tiles.flat());
  const left = groups.filter((group) => group.strips.every((strip) => !tiled.has(strip)));
  return left.length > 0 ? left : groups;
}

/** From the softest up: takes four neighbours when they are close enough, else passes one by. No tiling has more fours. */
function tilesOf(sorted: readonly Strip[], spreadPercent: number): (readonly Strip[])[] {
  const tiles: (readonly Strip[])[] = [];
  for (let i = 0; i + 4 <= sorted.length; ) {
    const four = sorted.slice(i, i + 4);
    const [softest, stiffest] = [four[0]?.modulusMpa ?? 0, four[3]?.modulusMpa ?? 0];
    const isClose = (100 * (stiffest - softest)) / meanOf(four) <= spreadPercent;
    if (isClose) tiles.push(four);
    i += isClose ? 4 : 1;
  }
  return tiles;
}

function byModulus(a: Strip, b: Strip): number {
  return a.modulusMpa - b.modulusMpa || (a.id < b.id ? -1 : 1);
}

function windows<T>(items: readonly T[], size: number): (readonly T[])[] {
  return Array.from({ length: Math.max(0, items.length - size + 1) }, (_, i) => items.slice(i, i + size));
}

/** Couples of strips from one board, nearest in modulus first taken; in order of modulus. */
function boardTwins(usable: readonly Strip[]): (readonly Strip[])[] {
  const boards = new Map<string, Strip[]>();
  for (const strip of usable) boards.set(strip.board, [...(boards.get(strip.board) ?? []), strip]);
  const twins: (readonly Strip[])[] = [];
  for (const strips of boards.values()) {
    for (let i = 0; i + 1 < strips.length; i += 2) twins.push(strips.slice(i, i + 2));
  }
  return twins.toSorted((a, b) => meanOf(a) - meanOf(b));
}

function meanOf(strips: readonly Strip[]): number {
  return strips.reduce((sum, strip) => sum + strip.modulusMpa, 0) / strips.length;
}

/** Width of the modulus bins that rarity is counted in, MPa (trade practice). */
const BIN_MPA = 500;

interface Survey {
  readonly oldestDays: number;
  readonly perBin: ReadonlyMap<number, number>;
  readonly fullestBin: number;
}

function surveyOf(usable: readonly Strip[]): Survey {
  const perBin = new Map<number, number>();
  for (const strip of usable) perBin.set(binOf(strip), (perBin.get(binOf(strip)) ?? 0) + 1);
  return {
    oldestDays: usable.reduce((oldest, strip) => Math.max(oldest, strip.ageDays ?? 0), 0),
    perBin,
    fullestBin: Math.max(1, ...perBin.values()),
  };
}

function binOf(strip: Strip): number {
  return Math.floor(strip.modulusMpa / BIN_MPA);
}

function groupOf(strips: readonly Strip[], about: Survey): Group {
  const moduli = strips.map((strip) => strip.modulusMpa);
  const meanMpa = meanOf(strips);
  const share = (of: (strip: Strip) => number) => strips.reduce((sum, strip) => sum + of(strip), 0) / strips.length;
  return {
    strips,
    meanMpa,
    spreadPercent: (100 * (Math.max(...moduli) - Math.min(...moduli))) / meanMpa,
    sameBoardShare: share((strip) => (strips.some((each) => each !== strip && each.board === strip.board) ? 1 : 0)),
    freshness: about.oldestDays === 0 ? 0 : share((strip) => 1 - (strip.ageDays ?? 0) / about.oldestDays),
    rarity: share((strip) => 1 - (about.perBin.get(binOf(strip)) ?? 0) / about.fullestBin),
  };
}

function distinct(groups: readonly Group[]): readonly Group[] {
  const seen = new Set<string>();
  return groups.filter(({ strips }) => {
    const key = keyOf(strips);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function keyOf(strips: readonly Strip[]): string {
  return strips
    .map((strip) => strip.id)
    .toSorted()
    .join(" ");
}
