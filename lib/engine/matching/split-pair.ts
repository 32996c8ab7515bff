/**
 * Left or right: from one pair's groups to two skis that bend and weigh alike, and to halves of each ski that do. All ways
 * of sharing out the groups are tried (two for a single strip, six for a couple), then both sides of every couple; a core of
 * more than six positions is cut back to the most even ones on the way.
 */
import { positionWeight } from "./choose-groups";
import type { Group } from "./groups";
import type { MatchedPair, SkiStrips, Strip, StripLimits, StripNeed, StripPosition } from "./types";

interface Share {
  readonly left: readonly Strip[];
  readonly right: readonly Strip[];
}

interface Split {
  readonly shares: readonly Share[];
  readonly twinPercent: number;
  readonly densityPercent: number;
  readonly sameBoardTwins: number;
}

/** The best split within the limits, or null when there is none. */
export function splitPair(groups: readonly Group[], need: StripNeed, limits: StripLimits): MatchedPair | null {
  const within = (value: number, limit: number | undefined) => value <= (limit ?? Number.POSITIVE_INFINITY) + 1e-9;
  const splits = allSplits(groups, need.positions)
    .filter((split) => within(split.twinPercent, limits.twinPercent))
    .filter((split) => within(split.densityPercent, limits.densityPercent))
    .toSorted((a, b) => splitCost(a, limits) - splitCost(b, limits));
  for (const split of splits) {
    const left = balanced(
      split.shares.map((share) => share.left),
      need.positions,
    );
    const right = balanced(
      split.shares.map((share) => share.right),
      need.positions,
    );
    if (!within(left.imbalancePercent, limits.imbalancePercent)) continue;
    if (!within(right.imbalancePercent, limits.imbalancePercent)) continue;
    return matchedPair(groups, split, left, right, need);
  }
  return null;
}

/** A board's twins on both skis are worth a little difference in the sum. */
function splitCost({ twinPercent, densityPercent, sameBoardTwins }: Split, limits: StripLimits): number {
  return (
    twinPercent / (limits.twinPercent ?? 1.5) + densityPercent / (limits.densityPercent ?? 2) - 0.25 * sameBoardTwins
  );
}

/** Kept after each position: all of them for a core of up to six positions, the most even beyond. */
const MOST_SPLITS = 20_000;

function allSplits(groups: readonly Group[], positions: readonly StripPosition[]): Split[] {
  let partial: (readonly Share[])[] = [[]];
  for (const group of groups) {
    const ways = sharesOf(group.strips);
    partial = partial.flatMap((shares) => ways.map((way) => [...shares, way]));
    if (partial.length > MOST_SPLITS) partial = mostEven(partial, positions);
  }
  return partial.map((shares) => measured(shares, positions));
}

function mostEven(partial: (readonly Share[])[], positions: readonly StripPosition[]): (readonly Share[])[] {
  return partial
    .map((shares) => ({ shares, twinPercent: measured(shares, positions).twinPercent }))
    .toSorted((a, b) => a.twinPercent - b.twinPercent)
    .slice(0, MOST_SPLITS / 10)
    .map(({ shares }) => shares);
}

/** Every way of giving half of the strips to the left ski. */
function sharesOf(strips: readonly Strip[]): Share[] {
  const half = strips.length / 2;
  const shares: Share[] = [];
  for (let mask = 0; mask < 1 << strips.length; mask++) {
    const left = strips.filter((_, i) => (mask >> i) & 1);
    if (left.length === half) shares.push({ left, right: strips.filter((_, i) => !((mask >> i) & 1)) });
  }
  return shares;
}

type Weighed = Pick<StripPosition, "weight" | "massWeight">;

function measured(shares: readonly Share[], positions: readonly StripPosition[]): Split {
  type Measure = (strip: Strip, position: Weighed) => number;
  const sum = (side: "left" | "right", of: Measure) =>
    shares.reduce(
      (total, share, i) => total + share[side].reduce((inner, strip) => inner + of(strip, positions[i] ?? {}), 0),
      0,
    );
  const differencePercent = (of: Measure) => {
    const [left, right] = [sum("left", of), sum("right", of)];
    return (200 * Math.abs(left - right)) / (left + right);
  };
  return {
    shares,
    twinPercent: differencePercent(({ modulusMpa }, { weight = 1 }) => weight * modulusMpa),
    densityPercent: differencePercent(
      ({ densityKgM3 }, { weight = 1, massWeight = weight }) => massWeight * densityKgM3,
    ),
    sameBoardTwins: shares.reduce((total, share) => total + boardTwins(share), 0),
  };
}

function boardTwins({ left, right }: Share): number {
  const boards = right.map((strip) => strip.board);
  let twins = 0;
  for (const strip of left) {
    const at = boards.indexOf(strip.board);
    if (at >= 0) {
      boards.splice(at, 1);
      twins++;
    }
  }
  return twins;
}

interface Balanced {
  /** In the order of the positions; a couple's left edge first. */
  readonly strips: readonly (readonly Strip[])[];
  readonly imbalancePercent: number;
}

/** Turns couples about the centre line until the halves of the ski are as alike as they can be. */
export function balanced(strips: readonly (readonly Strip[])[], positions: readonly StripPosition[]): Balanced {
  const couples = strips.map((_, i) => i).filter((i) => strips[i]?.length === 2);
  let best: Balanced | null = null;
  for (let mask = 0; mask < 1 << couples.length; mask++) {
    const turned = strips.map((list, i) =>
      (mask >> couples.indexOf(i)) & 1 && list.length === 2 ? list.toReversed() : list,
    );
    const imbalancePercent = imbalanceOf(turned, positions);
    if (!best || imbalancePercent < best.imbalancePercent - 1e-12) best = { strips: turned, imbalancePercent };
  }
  return best ?? { strips, imbalancePercent: 0 };
}

function imbalanceOf(strips: readonly (readonly Strip[])[], positions: readonly StripPosition[]): number {
  let moment = 0;
  let total = 0;
  for (const [i, list] of strips.entries()) {
    const { weight = 1, offset = i } = positions[i] ?? {};
    const [first, second] = list;
    if (!first || !second) continue;
    moment += weight * offset * (second.modulusMpa - first.modulusMpa);
    total += weight * offset * (second.modulusMpa + first.modulusMpa);
  }
  return total === 0 ? 0 : (100 * Math.abs(moment)) / total;
}

function matchedPair(
  groups: readonly Group[],
  split: Split,
  left: Balanced,
  right: Balanced,
  { positions, targetModulusMpa }: StripNeed,
): MatchedPair {
  const total = positions.reduce((sum, position) => sum + positionWeight(position), 0);
  const modulusMpa =
    groups.reduce((sum, group, i) => {
      const position = positions[i];
      return position ? sum + positionWeight(position) * group.meanMpa : sum;
    }, 0) / total;
  const named = (ski: Balanced): SkiStrips =>
    Object.fromEntries(positions.map((position, i) => [position.name, (ski.strips[i] ?? []).map((strip) => strip.id)]));
  return {
    left: named(left),
    right: named(right),
    modulusMpa,
    twinDifferencePercent: split.twinPercent,
    densityDifferencePercent: split.densityPercent,
    imbalancePercent: { left: left.imbalancePercent, right: right.imbalancePercent },
    targetDifferencePercent: targetModulusMpa === undefined ? null : 100 * (modulusMpa / targetModulusMpa - 1),
    groupSpreadPercent: Object.fromEntries(
      positions.map((position, i) => [position.name, groups[i]?.spreadPercent ?? 0]),
    ),
    sameBoardTwins: split.sameBoardTwins,
  };
}
