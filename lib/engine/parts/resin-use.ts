/** How a weighed batch of resin is used: split into pots, mixed within a tolerance, spread before it gels. */
import type { ResinBatch } from "./types";

export interface Pots {
  readonly count: number;
  readonly resinG: number;
  readonly hardenerG: number;
}

/** The fewest equal pots of which none holds more than `maxPotG`: a large pot heats itself and gels early. */
export function potsOf({ resinG, hardenerG }: Pick<ResinBatch, "resinG" | "hardenerG">, maxPotG: number): Pots {
  const count = Math.max(1, Math.ceil((resinG + hardenerG) / maxPotG));
  return { count, resinG: resinG / count, hardenerG: hardenerG / count };
}

/** Hardener by weight on 100 of resin that is still accepted on the scale. */
export function hardenerLimits(
  per100: number,
  tolerancePercent: number,
): { readonly low: number; readonly high: number } {
  const share = tolerancePercent / 100;
  return { low: per100 * (1 - share), high: per100 * (1 + share) };
}

/**
 * Working time at a room temperature, whole minutes rounded down: halves for every 10 °C above the data sheet's
 * temperature, t = t0 / 2^((T − T0)/10) (the usual rule of thumb for epoxies; common practice, no source).
 */
export function workingMinutesAt(
  { workingMinutes, atC }: { readonly workingMinutes: number; readonly atC: number },
  roomC: number,
): number {
  return Math.floor(workingMinutes / 2 ** ((roomC - atC) / 10));
}
