/** Fills a flag's words: `{name}` in the catalogue's text becomes the parameter of that name. */
import { fill } from "#engine/units";
import type { FitCoefficients, FitFlag, FitFlagCode, FlagSuggestion } from "./types";

export interface FlagFacts {
  readonly [name: string]: string | number;
}

export function flag(
  code: FitFlagCode,
  coefficients: FitCoefficients,
  facts: FlagFacts,
  more: { readonly model?: string; readonly suggestion?: FlagSuggestion } = {},
): FitFlag {
  const words = coefficients.flags[code];
  return {
    code,
    blocks: words.blocks,
    message: fill(words.message, facts),
    script: fill(words.script, facts),
    ...more,
  };
}
