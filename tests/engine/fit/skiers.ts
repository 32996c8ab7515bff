/** Skiers as tests draw them: every ability and use, and adults as they are. */

import type { Ability, FitAnswers } from "#engine/fit";
import { hashText, keyedDraw, normalQuantile, unitFromU32 } from "#engine/math";

export const abilities: readonly Ability[] = ["learning", "improving", "confident", "expert"];

/** What the pair is for, by what is answered. */
export const uses: Readonly<Record<string, Partial<FitAnswers>>> = {
  "piste alone": { offPistePercent: 0 },
  piste: { offPistePercent: 20 },
  unanswered: {},
  mixed: { offPistePercent: 40 },
  "half and half": { offPistePercent: 50 },
  "mostly off": { offPistePercent: 70 },
  off: { offPistePercent: 90 },
  "deep snow": { offPistePercent: 100, homeSnow: "deep" },
  touring: { offPistePercent: 60, touringPercent: 60 },
  park: { offPistePercent: 30, terrain: ["park"] },
  bumps: { offPistePercent: 40, terrain: ["bumps"], temperament: "calm" },
  "short turns": { offPistePercent: 10, turnSize: "short", temperament: "fast" },
  "long turns": { offPistePercent: 50, turnSize: "long" },
  "with a pack": { offPistePercent: 80, packKg: 12, temperament: "fast" },
};

/** Numbers in [0, 1), the same for the same seed. */
export function draws(seed: number, what: string): () => number {
  let turn = 0;
  return () => unitFromU32(keyedDraw(seed, hashText(what), turn++, 0, 0));
}

export interface Adult {
  readonly isMan: boolean;
  readonly answers: FitAnswers;
}

/**
 * Men of 178 ± 7 cm and a body-mass index of 25.5 ± 3.4, women of 165 ± 6.5 cm and 24 ± 3.8, normally spread, in turn; every
 * ability with every use equally often. Means and spreads of adults in Central Europe, rounded, from memory.
 */
export function drawnAdults(count: number, seed: number): readonly Adult[] {
  const draw = draws(seed, "adults");
  const normal = (mean: number, sd: number) => mean + sd * normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, draw())));
  const kinds = Object.values(uses);
  return Array.from({ length: count }, (_, index) => {
    const isMan = index % 2 === 0;
    const heightCm = isMan ? normal(178, 7) : normal(165, 6.5);
    const massKg = (isMan ? normal(25.5, 3.4) : normal(24, 3.8)) * (heightCm / 100) ** 2;
    const ability = abilities[Math.floor(index / 2) % abilities.length] ?? "confident";
    const use = kinds[Math.floor(index / 8) % kinds.length];
    return { isMan, answers: { heightCm, massKg, ability, ...use } };
  });
}
