/**
 * What one choice will feel like, from what it does to the pair: each rule looks at one difference, and what nobody would
 * notice is said to be that. Limits are common practice, no source; the Method page says them.
 */
import type { OptionEffect } from "./use-option-effects.client";
import type { SheetWords } from "./words";

/** Below these nothing is said: per cent of twist under the foot, grams a pair. */
export const noticed = { twistPercent: 4, massG: 50 } as const;

export function choiceFeel(effect: OptionEffect | undefined, { choiceFeel: w }: SheetWords): string {
  if (!effect) return "";
  const { twistPercent, massG } = effect;
  const said = [
    ...(twistPercent >= noticed.twistPercent ? [w.holdsMore] : []),
    ...(twistPercent <= -noticed.twistPercent ? [w.holdsLess] : []),
    ...(massG >= noticed.massG ? [w.heavier] : []),
    ...(massG <= -noticed.massG ? [w.lighter] : []),
  ];
  const [first, ...rest] = said;
  if (first === undefined) return w.hardly;
  return `${first.charAt(0).toUpperCase()}${first.slice(1)}${rest.map((each) => `, ${each}`).join("")}.`;
}
