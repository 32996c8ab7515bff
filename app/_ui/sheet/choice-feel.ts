/** What one choice will feel like, in the sheet's words; the engine says what would be noticed. */
import { choiceFeel } from "#engine/assessment";
import type { OptionEffect } from "./use-option-effects.client";
import type { SheetWords } from "./words";

export function choiceFeelText(effect: OptionEffect | undefined, { choiceFeel: w }: SheetWords): string {
  if (!effect) return "";
  const [first, ...rest] = choiceFeel({ twist: effect.twistPercent, mass: effect.massG }).map((word) => w[word]);
  if (first === undefined) return w.hardly;
  return `${first.charAt(0).toUpperCase()}${first.slice(1)}${rest.map((each) => `, ${each}`).join("")}.`;
}
