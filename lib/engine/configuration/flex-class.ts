/** Flex classes are half-open intervals of the flex ratio: a ratio on an edge belongs to the class above it. */
import type { FlexClass } from "./types";

export function flexClassOf(flexRatio: number, classes: readonly FlexClass[]): FlexClass | null {
  return classes.find((each) => flexRatio >= each.from && flexRatio < each.below) ?? null;
}
