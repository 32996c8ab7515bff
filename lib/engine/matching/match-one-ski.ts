/**
 * Wood for one ski that is built again: strips whose weighed modulus meets what the other ski of the pair really has.
 * A depth-first search over the positions, nearest to the other ski's own couple first, cut off by bounds: exact for small
 * stocks, and for large ones the best found within a fixed number of steps. Deterministic.
 */
import { mayLieAt } from "./groups";
import { balanced } from "./split-pair";
import type { SkiStrips, Strip, StripLimits, StripPosition } from "./types";

export interface OneSkiProblem {
  /** What is in stock. */
  readonly strips: readonly Strip[];
  /** Their `perSki` is used, so a couple is two strips here and not four. */
  readonly positions: readonly StripPosition[];
  /** The strips of the ski that stays, by position. */
  readonly other: Readonly<Record<string, readonly Strip[]>>;
  /** `twinPercent`, `densityPercent`, `groupSpreadPercent` and `imbalancePercent` are used. */
  readonly limits: StripLimits;
}

export interface MatchedSki {
  readonly strips: SkiStrips;
  /** Weighed sum of moduli against the other ski's, per cent; positive is stiffer. */
  readonly differencePercent: number;
  /** Weighed sum of densities against the other ski's, per cent. */
  readonly densityDifferencePercent: number;
  readonly imbalancePercent: number;
}

const mostSteps = 150_000;

interface Choice {
  readonly strips: readonly Strip[];
  readonly modulus: number;
  readonly density: number;
  /** How far from the other ski's strips at this position, relative. */
  readonly away: number;
}

/**
 * @returns the closest set within the limits, or null when there is none
 * @throws RangeError when the other ski lacks a strip at a position
 */
export function matchOneSki(problem: OneSkiProblem): MatchedSki | null {
  const { positions, limits } = problem;
  const wanted = positions.map((position) => wantedAt(problem, position));
  const choices = positions.map((position, index) => choicesAt(problem, position, wanted[index] ?? none));
  // The scarcest position chooses first: it cuts the search the most.
  const order = positions.map((_, i) => i).toSorted((a, b) => size(choices, a) - size(choices, b));
  const target = total(wanted);
  const search = new Search(
    order.map((i) => choices[i] ?? []),
    target,
    limits,
    (found) => {
      const inOrder = positions.map((_, i) => found[order.indexOf(i)]?.strips ?? []);
      return balanced(inOrder, positions);
    },
  );
  const best = search.run();
  if (best === null) return null;
  return {
    strips: Object.fromEntries(
      positions.map((position, i) => [position.name, (best.balance.strips[i] ?? []).map(({ id }) => id)]),
    ),
    differencePercent: 100 * (best.modulus / target.modulus - 1),
    densityDifferencePercent: 100 * (best.density / target.density - 1),
    imbalancePercent: best.balance.imbalancePercent,
  };
}

interface Sums {
  readonly modulus: number;
  readonly density: number;
}

const none: Sums = { modulus: 0, density: 0 };

function total(parts: readonly Sums[]): Sums {
  return parts.reduce(
    (sum, part) => ({ modulus: sum.modulus + part.modulus, density: sum.density + part.density }),
    none,
  );
}

function sumsOf(strips: readonly Strip[], { weight = 1, massWeight = weight }: StripPosition): Sums {
  return total(
    strips.map(({ modulusMpa, densityKgM3 }) => ({ modulus: weight * modulusMpa, density: massWeight * densityKgM3 })),
  );
}

function wantedAt({ other }: OneSkiProblem, position: StripPosition): Sums {
  const strips = other[position.name] ?? [];
  if (strips.length !== position.perSki) {
    throw new RangeError(`other.${position.name}: ${strips.length} strips where ${position.perSki} lie`);
  }
  return sumsOf(strips, position);
}

function size(choices: readonly (readonly Choice[])[], index: number): number {
  return choices[index]?.length ?? 0;
}

function choicesAt({ strips, limits }: OneSkiProblem, position: StripPosition, wanted: Sums): readonly Choice[] {
  const usable = strips.filter((strip) => mayLieAt(strip, position));
  const groups = position.perSki === 1 ? usable.map((strip) => [strip]) : couples(usable, limits);
  return groups
    .map((group) => {
      const sums = sumsOf(group, position);
      return { strips: group, ...sums, away: Math.abs(sums.modulus / wanted.modulus - 1) };
    })
    .toSorted((a, b) => a.away - b.away);
}

function couples(usable: readonly Strip[], { groupSpreadPercent = Number.POSITIVE_INFINITY }: StripLimits): Strip[][] {
  return usable.flatMap((first, i) =>
    usable
      .slice(i + 1)
      .filter(({ modulusMpa }) => {
        const mean = (first.modulusMpa + modulusMpa) / 2;
        return (100 * Math.abs(first.modulusMpa - modulusMpa)) / mean <= groupSpreadPercent;
      })
      .map((second) => [first, second]),
  );
}

interface Found extends Sums {
  readonly cost: number;
  readonly balance: ReturnType<typeof balanced>;
}

class Search {
  private steps = 0;
  private best: Found | null = null;
  private readonly used = new Set<string>();
  private readonly chosen: Choice[] = [];
  /** Least and most that the positions from here on can add. */
  private readonly least: number[];
  private readonly most: number[];
  private readonly modulusLimit: number;
  private readonly densityLimit: number;

  constructor(
    private readonly choices: readonly (readonly Choice[])[],
    private readonly target: Sums,
    private readonly limits: StripLimits,
    private readonly balance: (chosen: readonly Choice[]) => ReturnType<typeof balanced>,
  ) {
    const { twinPercent = Number.POSITIVE_INFINITY, densityPercent = Number.POSITIVE_INFINITY } = limits;
    this.modulusLimit = (target.modulus * twinPercent) / 100 + 1e-9;
    this.densityLimit = (target.density * densityPercent) / 100 + 1e-9;
    this.least = suffixes(choices, (values) =>
      values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY),
    );
    this.most = suffixes(choices, (values) => values.reduce((most, value) => Math.max(most, value), 0));
  }

  run(): Found | null {
    this.descend(0, none, 0);
    return this.best;
  }

  private descend(depth: number, sums: Sums, away: number): void {
    if (this.best !== null && away * nearness >= this.best.cost) return;
    if (depth === this.choices.length) {
      this.judge(sums, away);
      return;
    }
    const low = this.target.modulus - this.modulusLimit - (this.most[depth + 1] ?? 0);
    const high = this.target.modulus + this.modulusLimit - (this.least[depth + 1] ?? 0);
    for (const choice of this.choices[depth] ?? []) {
      const modulus = sums.modulus + choice.modulus;
      if (modulus < low || modulus > high) continue;
      if (choice.strips.some(({ id }) => this.used.has(id))) continue;
      if (++this.steps > mostSteps) return;
      for (const { id } of choice.strips) this.used.add(id);
      this.chosen.push(choice);
      this.descend(depth + 1, { modulus, density: sums.density + choice.density }, away + choice.away);
      this.chosen.pop();
      for (const { id } of choice.strips) this.used.delete(id);
    }
  }

  private judge({ modulus, density }: Sums, away: number): void {
    const off = Math.abs(modulus - this.target.modulus);
    if (off > this.modulusLimit || Math.abs(density - this.target.density) > this.densityLimit) return;
    const cost = off / this.target.modulus + away * nearness;
    if (this.best !== null && cost >= this.best.cost) return;
    const balance = this.balance(this.chosen);
    if (balance.imbalancePercent > (this.limits.imbalancePercent ?? Number.POSITIVE_INFINITY) + 1e-9) return;
    this.best = { modulus, density, cost, balance };
  }
}

/** What a position's own distance counts beside the distance of the whole: the sum decides, likeness breaks ties. */
const nearness = 0.05;

function suffixes(choices: readonly (readonly Choice[])[], pick: (values: readonly number[]) => number): number[] {
  const sums = [0];
  for (const list of [...choices].reverse()) {
    const picked = list.length === 0 ? 0 : pick(list.map(({ modulus }) => modulus));
    sums.unshift((sums[0] ?? 0) + picked);
  }
  return sums;
}
