/**
 * Strips for the wanted number of pairs. Pairs are made one after another, each the best that the rest of the stock allows;
 * where that makes too few, thriftier ways are tried and the one that makes the most pairs, then the best, is kept.
 * Deterministic.
 */
import { chooseGroups, type GroupChoice, type Leaning } from "./choose-groups";
import { type Group, groupsFor, isOfKind, mayLieAt, thriftyGroupsFor } from "./groups";
import { splitPair } from "./split-pair";
import type { MatchedPair, MatchedStrips, Strip, StripProblem, UnmetReason } from "./types";

const LEANINGS: readonly Leaning[] = ["none", "soft", "stiff"];

/** One way of making all pairs: which groups may be used, and which end of the stock goes first. */
interface Plan {
  readonly groupsOf: typeof groupsFor;
  readonly leaning: Leaning;
}

/** The finest way first; the others only serve to make more pairs. */
const PLANS: readonly Plan[] = [
  { groupsOf: groupsFor, leaning: "none" },
  { groupsOf: thriftyGroupsFor, leaning: "none" },
  { groupsOf: thriftyGroupsFor, leaning: "soft" },
  { groupsOf: groupsFor, leaning: "soft" },
  { groupsOf: groupsFor, leaning: "stiff" },
];

interface Attempt {
  readonly pairs: readonly MatchedPair[];
  readonly rest: readonly Strip[];
  readonly cost: number;
}

/**
 * @returns the pairs, how many are missing, and why
 * @throws RangeError for a strip listed twice, a modulus or density not above 0, or a need of less than nothing
 */
export function matchStrips(problem: StripProblem): MatchedStrips {
  checkProblem(problem);
  let best: Attempt | null = null;
  for (const plan of PLANS) {
    const attempt = makePairs(problem, plan);
    if (!best || isBetter(attempt, best)) best = attempt;
    if (best.pairs.length === problem.need.pairs) break;
  }
  const pairs = best?.pairs ?? [];
  const unmet = problem.need.pairs - pairs.length;
  return { pairs, unmet, why: unmet > 0 ? whyUnmet({ ...problem, strips: best?.rest ?? problem.strips }) : [] };
}

function isBetter(a: Attempt, b: Attempt): boolean {
  return a.pairs.length > b.pairs.length || (a.pairs.length === b.pairs.length && a.cost < b.cost);
}

function makePairs({ strips, need, limits }: StripProblem, { groupsOf, leaning }: Plan): Attempt {
  let rest = strips;
  let cost = 0;
  const pairs: MatchedPair[] = [];
  while (pairs.length < need.pairs) {
    const choices = chooseGroups(candidatesOf({ strips: rest, need, limits }, groupsOf), need, limits, leaning);
    const made = firstThatSplits(choices, { strips: rest, need, limits });
    if (!made) break;
    const used = new Set(made.groups.flatMap((group) => group.strips.map((strip) => strip.id)));
    rest = rest.filter((strip) => !used.has(strip.id));
    cost += made.cost;
    pairs.push(made.pair);
  }
  return { pairs, rest, cost };
}

function candidatesOf(
  { strips, need, limits }: StripProblem,
  groupsOf: Plan["groupsOf"] = groupsFor,
): readonly (readonly Group[])[] {
  return need.positions.map((position) => groupsOf(position, strips, limits));
}

function firstThatSplits(choices: readonly GroupChoice[], { need, limits }: StripProblem) {
  for (const { groups, cost } of choices) {
    const pair = splitPair(groups, need, limits);
    if (pair) return { pair, groups, cost };
  }
  return null;
}

/** Looks at the stock that is left: what is the first thing that stops one more pair? */
function whyUnmet(problem: StripProblem): readonly UnmetReason[] {
  const { strips, need, limits } = problem;
  const short = need.positions.flatMap((position): UnmetReason[] => {
    const usable = strips.filter((strip) => mayLieAt(strip, position)).length;
    const needed = 2 * position.perSki;
    if (usable >= needed) return [];
    const { name, least } = position;
    const isSize = least !== undefined && strips.filter((strip) => isOfKind(strip, position)).length >= needed;
    return isSize
      ? [{ code: "strips-too-small", position: name, usable, needed, least }]
      : [{ code: "too-few-strips", position: name, usable, needed }];
  });
  if (short.length > 0) return short;
  const candidates = candidatesOf(problem);
  const wide = need.positions.flatMap((position, i): UnmetReason[] =>
    (candidates[i] ?? []).length === 0
      ? [{ code: "spread-too-wide", position: position.name, ...limitOf(limits.groupSpreadPercent) }]
      : [],
  );
  if (wide.length > 0) return wide;
  // Without the target, does a pair come together at all? Two positions may want the same few strips.
  const { targetModulusMpa: _, ...untargeted } = need;
  const together = chooseGroups(candidates, untargeted, limits, "none");
  if (together.length === 0) return [{ code: "groups-overlap", ...limitOf(limits.groupSpreadPercent) }];
  const onTarget = LEANINGS.some((leaning) => chooseGroups(candidates, need, limits, leaning).length > 0);
  return onTarget
    ? [{ code: "twins-differ", ...limitOf(limits.twinPercent) }]
    : [{ code: "off-target", ...limitOf(limits.targetPercent) }];
}

function limitOf(limitPercent: number | undefined): { readonly limitPercent?: number } {
  return limitPercent === undefined ? {} : { limitPercent };
}

function checkProblem({ strips, need }: StripProblem): void {
  if (!(Number.isInteger(need.pairs) && need.pairs >= 0)) {
    throw new RangeError(`need.pairs: ${need.pairs} is not a whole number from 0 up`);
  }
  if (need.positions.length === 0) throw new RangeError("need.positions: a core has at least one position");
  const seen = new Set<string>();
  for (const [i, strip] of strips.entries()) {
    if (seen.has(strip.id)) throw new RangeError(`strips.${i}.id: "${strip.id}" is listed twice`);
    seen.add(strip.id);
    if (!(strip.modulusMpa > 0)) throw new RangeError(`strips.${i}.modulusMpa: ${strip.modulusMpa} is not above 0`);
    if (!(strip.densityKgM3 > 0)) throw new RangeError(`strips.${i}.densityKgM3: ${strip.densityKgM3} is not above 0`);
  }
}
