/** A straight scale with round ticks, for drawings that a browser makes: a whole scale library would be a tenth of its scripts. */
import { nice, ticks } from "d3-array";

export interface LinearScale {
  (value: number): number;
  /** Round values inside the scale, about so many. */
  readonly ticks: (count: number) => readonly number[];
}

/** Values from `from` lie at places from `to`, both in the same order. */
export function linearScale(from: readonly [number, number], to: readonly [number, number]): LinearScale {
  const perUnit = (to[1] - to[0]) / (from[1] - from[0]);
  return Object.assign((value: number) => to[0] + (value - from[0]) * perUnit, {
    ticks: (count: number) => ticks(from[0], from[1], count),
  });
}

/** Zero to a round top at or above `largest`, with about so many ticks above zero. */
export function roundScale(largest: number, steps: number, tickCount: number) {
  const [, max] = nice(0, largest, steps);
  return { max, ticks: ticks(0, max, tickCount).filter((tick) => tick > 0) };
}
