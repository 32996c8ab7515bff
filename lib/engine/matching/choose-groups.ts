/**
 * One pair's groups, one for each position: a beam search that keeps the weighed modulus near the target while it takes
 * close, old, common and same-board groups. Deterministic: ties fall to the order of the stock.
 */
import type { Group } from "./groups";
import type { StripLimits, StripNeed, StripPosition } from "./types";

/** Partial choices kept after each position. */
const BEAM = 60;

/** Groups tried at each position: those that serve best by themselves, where a stock is very large. */
const MOST_OPTIONS = 300;

/** What counts against a group, beside the distance from the target in units of its limit. */
const COST = { spread: 0.5, board: 0.6, freshness: 0.2, rarity: 0.3 } as const;

export interface GroupChoice {
  /** In the order of the positions. */
  readonly groups: readonly Group[];
  readonly cost: number;
}

/** Which end of the stock to try first, where the target leaves the choice. */
export type Leaning = "none" | "soft" | "stiff";

interface Partial {
  readonly groups: readonly Group[];
  readonly used: ReadonlySet<string>;
  readonly cost: number;
  /** Σ weight·(mean − ideal) so far, MPa. */
  readonly drift: number;
}

/** Complete choices, best first; none when no disjoint groups meet the target. */
export function chooseGroups(
  candidates: readonly (readonly Group[])[],
  need: StripNeed,
  limits: StripLimits,
  leaning: Leaning,
): readonly GroupChoice[] {
  const { positions, targetModulusMpa } = need;
  const weights = positions.map((position) => positionWeight(position));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const ideals = idealModuli(candidates, weights, targetModulusMpa);
  // The scarcest position chooses first.
  const order = positions
    .map((_, i) => i)
    .toSorted((a, b) => (candidates[a]?.length ?? 0) - (candidates[b]?.length ?? 0));
  let beam: readonly Partial[] = [{ groups: [], used: new Set(), cost: 0, drift: 0 }];
  for (const i of order) {
    const steer = (driftMpa: number) => driftCost(driftMpa, targetModulusMpa, limits);
    const options = (candidates[i] ?? [])
      .map((group) => ({
        group,
        cost: groupCost(group, limits, leaning, ideals[i] ?? group.meanMpa),
        drift: ((weights[i] ?? 0) * (group.meanMpa - (ideals[i] ?? group.meanMpa))) / total,
      }))
      .toSorted((a, b) => a.cost + steer(a.drift) - (b.cost + steer(b.drift)))
      .slice(0, MOST_OPTIONS);
    beam = beam
      .flatMap((partial) =>
        options
          .filter(({ group }) => group.strips.every((strip) => !partial.used.has(strip.id)))
          .map((option) => ({
            partial,
            option,
            rank: partial.cost + option.cost + steer(partial.drift + option.drift),
          })),
      )
      .toSorted((a, b) => a.rank - b.rank)
      .slice(0, BEAM)
      .map(({ partial, option }) => ({
        groups: [...partial.groups, option.group],
        used: new Set([...partial.used, ...option.group.strips.map((strip) => strip.id)]),
        cost: partial.cost + option.cost,
        drift: partial.drift + option.drift,
      }));
  }
  const limitMpa = targetLimitMpa(targetModulusMpa, limits);
  return beam
    .filter(({ drift }) => targetModulusMpa === undefined || Math.abs(drift) <= limitMpa)
    .map(({ groups, cost, drift }) => ({
      groups: inPositionOrder(groups, order),
      cost: cost + driftCost(drift, targetModulusMpa, limits),
    }))
    .toSorted((a, b) => a.cost - b.cost);
}

/** How much the strips of one position of a pair count. */
export function positionWeight({ weight = 1, perSki }: StripPosition): number {
  return weight * perSki;
}

/** Each position's share of the target: the middle of its own stock, all scaled alike so that together they meet it. */
function idealModuli(
  candidates: readonly (readonly Group[])[],
  weights: readonly number[],
  targetModulusMpa: number | undefined,
): readonly number[] {
  const middles = candidates.map((groups) => groups.reduce((sum, group) => sum + group.meanMpa, 0) / groups.length);
  if (targetModulusMpa === undefined) return middles;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const now = middles.reduce((sum, middle, i) => sum + middle * (weights[i] ?? 0), 0) / total;
  return middles.map((middle) => (middle * targetModulusMpa) / now);
}

function groupCost(group: Group, limits: StripLimits, leaning: Leaning, idealMpa: number): number {
  const spread = group.spreadPercent / (limits.groupSpreadPercent ?? 5);
  const away = group.meanMpa / idealMpa - 1;
  const lean = leaning === "none" ? 0 : leaning === "soft" ? away : -away;
  return (
    COST.spread * spread +
    COST.board * (1 - group.sameBoardShare) +
    COST.freshness * group.freshness +
    COST.rarity * group.rarity +
    lean * 5
  );
}

function targetLimitMpa(targetModulusMpa: number | undefined, { targetPercent }: StripLimits): number {
  if (targetModulusMpa === undefined || targetPercent === undefined) return Number.POSITIVE_INFINITY;
  return (targetModulusMpa * targetPercent) / 100;
}

function driftCost(driftMpa: number, targetModulusMpa: number | undefined, limits: StripLimits): number {
  if (targetModulusMpa === undefined) return 0;
  return Math.abs(driftMpa) / ((targetModulusMpa * (limits.targetPercent ?? 3)) / 100);
}

function inPositionOrder(groups: readonly Group[], order: readonly number[]): readonly Group[] {
  return order.map((_, position) => groups[order.indexOf(position)]).filter((group) => group !== undefined);
}
