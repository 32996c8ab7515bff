/** Fills a flag's words: `{name}` in the catalogue's text becomes the parameter of that name. */
import { fill } from "#engine/units";
import type { FitCoefficients, FitFlag, FitFlagCode, FlagSuggestion, FlagWords, LaterFlagCode } from "./types";

export interface FlagFacts {
  readonly [name: string]: string | number;
}

interface More {
  readonly model?: string;
  readonly suggestion?: FlagSuggestion;
}

export function flag(
  code: Exclude<FitFlagCode, LaterFlagCode>,
  coefficients: FitCoefficients,
  facts: FlagFacts,
  more: More = {},
): FitFlag {
  return inWords(code, coefficients.flags[code], facts, more);
}

/** A flag that older releases do not know: none where the release has no words for it. */
export function laterFlag(
  code: LaterFlagCode,
  coefficients: FitCoefficients,
  facts: FlagFacts,
  more: More = {},
): readonly FitFlag[] {
  const words = coefficients.flags[code];
  return words === undefined ? [] : [inWords(code, words, facts, more)];
}

function inWords(code: FitFlagCode, words: FlagWords, facts: FlagFacts, more: More): FitFlag {
  return {
    code,
    blocks: words.blocks,
    message: fill(words.message, facts),
    script: fill(words.script, facts),
    ...more,
  };
}
