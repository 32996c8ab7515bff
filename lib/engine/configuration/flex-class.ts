/** Flex classes are half-open intervals of the flex ratio: a ratio on an edge belongs to the class above it. */
import type { FlexClass } from "./types";

export function flexClassOf(flexRatio: number, classes: readonly FlexClass[]): FlexClass | null {
  return classes.find((each) => flexRatio >= each.from && flexRatio < each.below) ?? null;
}

/** Slack for decimal edges that binary numbers miss. */
const EDGE_SLACK = 1e-9;

/** Another class whose edge is no farther than `withinRatio`, if any. */
export function nearFlexClassOf(
  flexRatio: number,
  classes: readonly FlexClass[],
  withinRatio = 0.02,
): FlexClass | null {
  const own = flexClassOf(flexRatio, classes);
  return (
    classes.find((each) => {
      if (each.number === own?.number) return false;
      const distance = flexRatio < each.from ? each.from - flexRatio : flexRatio - each.below;
      return distance <= withinRatio + EDGE_SLACK;
    }) ?? null
  );
}
